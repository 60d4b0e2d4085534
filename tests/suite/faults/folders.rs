//! Faults that no text file can hold: folders that are missing, empty, foreign or in one another,
//! bytes that are no text, and books of a size no teacher writes.

use std::path::Path;
use std::time::{Duration, Instant};

use stillroom::diagnostic::{Code, Finding, Look, print};
use stillroom::press::{self, Outcome};
use stillroom::site::Trouble;

use super::book::{Book, FORMULARY, LESSON, put};
use super::line;

fn press(book: &Book) -> Outcome {
    press::press(book.dir(), book.site(), None, &|| {}).expect("the folders can be used")
}

fn lines(findings: &[Finding]) -> Vec<String> {
    findings.iter().map(line).collect()
}

/// Presses, and asserts that nothing at all was written.
#[track_caller]
fn stopped(book: &Book, wanted: &[&str]) -> Vec<Finding> {
    let before = book.everything();
    let outcome = press(book);
    assert_eq!(lines(&outcome.findings), wanted);
    assert!(!outcome.written);
    assert!(before == book.everything(), "something was written");
    outcome.findings
}

/// A good formulary with this lesson.
fn with_lesson(bytes: &[u8]) -> Book {
    let book = Book::good();
    book.write("formulary.yaml", FORMULARY.as_bytes());
    book.write("lessons/01-syrup.md", bytes);
    book
}

#[test]
fn a_missing_folder_is_trouble_and_leaves_no_folder_behind() {
    let book = Book::empty();
    let before = book.everything();
    let missing = book.root().join("contnet/deeper");
    for site in [book.site().to_path_buf(), press::site_beside(&missing), book.root().join("new/site")] {
        let trouble = press::press(&missing, &site, None, &|| {}).expect_err("no folder");
        assert!(matches!(&trouble, Trouble::NoFolder(path) if *path == missing));
        assert!(trouble.to_string().contains("write `stillroom press DIR`"), "{trouble}");
    }
    assert!(matches!(press::proof(&missing), Err(Trouble::NoFolder(_))));
    assert!(before == book.everything());
}

#[test]
fn an_empty_folder_is_told_both_things_it_wants() {
    let findings =
        stopped(&Book::empty(), &["error formulary.yaml 0:0 missing-file", "error lessons 0:0 missing-file"]);
    assert!(findings.iter().all(|finding| !finding.write.is_empty()));
}

#[test]
fn a_formulary_of_another_ending_is_strange_and_missed() {
    let book = with_lesson(LESSON.as_bytes());
    std::fs::rename(book.dir().join("formulary.yaml"), book.dir().join("formulary.yml")).expect("renamed");
    stopped(&book, &["error formulary.yaml 0:0 missing-file", "warning formulary.yml 0:0 unknown-name"]);
}

#[test]
fn bytes_that_are_no_text_name_their_line() {
    let latin = [b"---\ntitle: S\xfc\xdfer Saft\n---\n".as_slice(), b"\n"].concat();
    let findings = stopped(&with_lesson(&latin), &["error lessons/01-syrup.md 0:0 not-text"]);
    assert_eq!(findings[0].message, "line 2 is not UTF-8 text");
    let book = with_lesson(LESSON.as_bytes());
    book.write("formulary.yaml", b"book: \xff");
    book.write("plants/thyme.md", b"\xfe\xff\0-\0-\0-");
    stopped(&book, &["error formulary.yaml 0:0 not-text", "error plants/thyme.md 0:0 not-text"]);
}

#[test]
fn a_folder_that_is_not_ours_is_left_as_it_is() {
    let book = with_lesson(LESSON.as_bytes());
    put(&book.root().join("garden/photo.jpg"), b"\xff\xd8");
    put(&book.root().join("notes"), b"a file, not a folder");
    put(&book.root().join("taken.new/mine.txt"), b"x");
    let before = book.everything();
    let foreign = |site: &Path| {
        let trouble = press::press(book.dir(), site, None, &|| {}).expect_err("not ours");
        assert!(matches!(trouble, Trouble::NotOurs(_)), "{trouble}");
        assert!(before == book.everything(), "{} was touched", site.display());
    };
    for name in ["garden", "notes", "taken", "content", "content/lessons", "content/../content"] {
        foreign(&book.root().join(name));
    }
    foreign(book.root());
}

#[test]
fn a_site_around_its_formulary_is_refused_though_it_bears_our_mark() {
    let book = Book::empty();
    let inside = book.site().join("content");
    put(&inside.join("formulary.yaml"), FORMULARY.as_bytes());
    put(&inside.join("lessons/01-syrup.md"), LESSON.as_bytes());
    let before = book.everything();
    let trouble =
        press::press(&inside, book.site(), None, &|| {}).expect_err("it would replace its formulary");
    assert!(matches!(trouble, Trouble::NotOurs(_)));
    assert!(before == book.everything());
}

#[test]
fn a_press_cut_off_between_two_renames_is_made_good() {
    let book = with_lesson(b"");
    std::fs::rename(book.site(), book.root().join("site.old")).expect("renamed");
    put(&book.root().join("site.new/stillroom.txt"), b"half a site");
    assert!(!press(&book).written);
    let left: Vec<_> = book.everything().into_keys().filter(|path| !path.starts_with("content/")).collect();
    let whole =
        ["site/", "site/index.html", "site/lessons/", "site/lessons/syrup.html", "site/stillroom.txt"];
    assert_eq!(left, whole);
}

/// Reads a book of great size in a few seconds, also unoptimised.
#[track_caller]
fn soon(book: &Book) -> Outcome {
    let start = Instant::now();
    let outcome = press(book);
    assert!(start.elapsed() < Duration::from_secs(20), "it took {:?}", start.elapsed());
    outcome
}

#[test]
fn two_megabytes_of_text_are_pressed() {
    let text =
        format!("{LESSON}\n{}", "A sentence about hips, *haws* and [thyme](plant:thyme).\n\n".repeat(36_000));
    assert!(text.len() > 2_000_000);
    assert!(soon(&with_lesson(text.as_bytes())).written);
    // All of it in the recipe.
    let inside = LESSON.replace("keep:", &format!("{}keep:", "# a remark\n".repeat(190_000)));
    let outcome = soon(&with_lesson(inside.as_bytes()));
    assert_eq!(lines(&outcome.findings), ["error lessons/01-syrup.md 8:1 bad-yaml"]);
}

#[test]
fn five_hundred_plants_are_weighed() {
    let thyme = super::kit::read(&super::kit::root().join("content/plants/thyme.md"));
    let names: Vec<String> = (0..500).map(|n| format!("thyme-{n}")).collect();
    let uses: Vec<String> = names.iter().map(|name| format!("{name}: 1 g dried")).collect();
    let recipe = LESSON
        .replace("rosehip: 200 g dried", &uses.join(", "))
        .replace("- simmer: {time: 30 min, lid: on}", "- steep: 1 h");
    let book = with_lesson(recipe.as_bytes());
    for name in &names {
        book.write(
            &format!("plants/{name}.md"),
            thyme.replacen("name: thyme", &format!("name: {name}"), 1).as_bytes(),
        );
    }
    let outcome = soon(&book);
    assert_eq!(lines(&outcome.findings), [""; 0]);
    assert!(outcome.written);
}

#[test]
fn methods_and_variations_beyond_measure_are_refused_at_once() {
    let steps = LESSON.replace("  - cool: 38 °C\n", &"  - cool: 38 °C\n".repeat(2000));
    let outcome = soon(&with_lesson(steps.as_bytes()));
    assert_eq!(lines(&outcome.findings), ["error lessons/01-syrup.md 13:3 wrong-shape"]);
    assert!(outcome.findings[0].message.contains("2004 steps"));
    let many: String =
        (0..5000).map(|n| format!("  - {{name: Number {n}, change: {{keep: freezer}}}}\n")).collect();
    let variations = LESSON.replace("daily: 3}\n", &format!("daily: 3}}\nvariations:\n{many}"));
    let outcome = soon(&with_lesson(variations.as_bytes()));
    assert_eq!(lines(&outcome.findings), ["error lessons/01-syrup.md 21:12 wrong-shape"]);
}

#[test]
fn a_hundred_steps_are_worked() {
    let reduced = LESSON.replace("  - cool: 38 °C\n", &"  - reduce: to 99 % of the liquid\n".repeat(90));
    assert_eq!(soon(&with_lesson(reduced.as_bytes())).recipes, 1);
}

#[test]
fn deep_nesting_everywhere_is_a_finding() {
    for (open, close) in [("[", "]"), ("{a: ", "}"), ("- ", "")] {
        let deep = format!("{}x{}", open.repeat(3000), close.repeat(3000));
        for text in [
            LESSON.replace("title: ", &format!("summary: {deep}\ntitle: ")),
            LESSON.replace("keep: ", &format!("keep: {deep}\nkept: ")),
            LESSON.replace("There are", &format!("{}\n\nThere are", "> ".repeat(3000) + &open.repeat(3000))),
        ] {
            let outcome = soon(&with_lesson(text.as_bytes()));
            assert!(outcome.written || !outcome.findings.is_empty());
        }
    }
}

#[test]
fn trouble_speaks_plainly() {
    let book = Book::empty();
    let told = [
        press::press(&book.root().join("content"), book.dir(), None, &|| {}).expect_err("the same folder"),
        press::proof(&book.root().join("contnet")).expect_err("no folder"),
    ];
    for trouble in told {
        let said = trouble.to_string();
        assert!(!said.contains("os error") && !said.contains("Trouble"), "{said}");
    }
    let finding = Finding::of_file(stillroom::diagnostic::Level::Error, Code::NotText, "lessons/a.md", "x");
    assert!(print(&finding, Look::Sentences).starts_with("lessons/a.md.\nError, not-text: x."));
}

/// Two addresses that differ in capitals alone, or are one: a theme's own file in a page's place. Only a disk that
/// tells capitals apart can hold the first two.
#[test]
#[cfg(not(any(target_os = "macos", windows)))]
fn files_of_one_address_are_told() {
    let book = Book::good();
    book.write("formulary.yaml", FORMULARY.as_bytes());
    let lesson = format!("{LESSON}\n![A](jar.svg) ![B](Jar.svg)\n");
    book.write("lessons/01-syrup.md", lesson.as_bytes());
    let drawing = b"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"4\" height=\"3\"></svg>";
    book.write("pictures/jar.svg", drawing);
    book.write("pictures/Jar.svg", drawing);
    let found = |outcome: &Outcome| -> Vec<(Code, String)> {
        let path =
            |finding: &Finding| finding.place.as_ref().map_or(String::new(), |place| place.path.clone());
        outcome.findings.iter().map(|finding| (finding.code, path(finding))).collect()
    };
    assert_eq!(found(&press(&book)), [(Code::BadAddress, "pictures/jar.svg".to_string())]);
    // A theme's file in a page's place is told with the author's file.
    book.write("themes/stillroom/plants.html", b"<p>mine");
    let outcome = press(&book);
    assert_eq!(found(&outcome), [(Code::BadAddress, "themes/stillroom/plants.html".to_string())]);
    assert!(!outcome.written);
}
