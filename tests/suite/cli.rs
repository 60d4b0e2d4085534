//! The program as a teacher runs it, in a fresh folder: exit codes, streams, and what it leaves on
//! the disk. What the pages say is looked at in `demo.rs` and `pages.rs`.

mod work;

use crate::kit;
use std::fs;
use std::io::Read;
use std::path::Path;
use std::process::{Command, Stdio};

const LESSON: &str = "---\ntitle: Thyme syrup\nsummary: A syrup.\n---\n\nText.\n\n```recipe\nname: Thyme syrup\n\
    preparation: syrup\nplants:\n  thyme: 40 g dried\nliquid: {water: 1:12 w/v}\nmethod:\n  - steep: 30 min\n  \
    - strain: squeezed\n  - cool: 38 °C\n  - sweeten: {honey: equal to the liquid by volume}\n  - bottle: 118 mL\n\
    keep: refrigerator\ntake: {amount: 1 tsp, daily: 3}\n```\n";

/// What a run came to.
struct Ran {
    code: i32,
    out: String,
    err: String,
}

impl Ran {
    /// Exits so, and says what is asked for on each stream; an empty word asks for silence.
    #[track_caller]
    fn says(&self, code: i32, out: &str, err: &str) {
        let all = format!("exit {}\nstdout: {}\nstderr: {}", self.code, self.out, self.err);
        assert_eq!(self.code, code, "{all}");
        for (stream, word) in [(&self.out, out), (&self.err, err)] {
            assert!(
                if word.is_empty() { stream.is_empty() } else { stream.contains(word) },
                "{word:?} in\n{all}"
            );
        }
        assert!(!self.err.contains("panicked"), "{all}");
        assert!(!self.out.contains('\u{1b}') && !self.err.contains('\u{1b}'), "colour in a pipe: {all}");
    }
}

fn stillroom(folder: &Path) -> Command {
    let mut command = Command::new(assert_cmd::cargo::cargo_bin!("stillroom"));
    command.current_dir(folder).env_remove("NO_COLOR");
    command
}

fn ran(command: &mut Command) -> Ran {
    let output = command.output().expect("the program starts");
    let text = |bytes| String::from_utf8(bytes).expect("the program speaks UTF-8");
    let code = output.status.code().expect("the program ends by itself");
    Ran { code, out: text(output.stdout), err: text(output.stderr) }
}

fn run(folder: &Path, words: &[&str]) -> Ran {
    ran(stillroom(folder).args(words))
}

fn put(folder: &Path, path: &str, text: &str) {
    let path = folder.join(path);
    fs::create_dir_all(path.parent().expect("a file stands in a folder")).expect("a folder can be made");
    fs::write(path, text).expect("a file can be written");
}

/// A formulary of one lesson below `at`, with the demo's thyme.
fn formulary(folder: &Path, at: &str) {
    put(folder, &format!("{at}formulary.yaml"), "book: The Book\ntitle: The Course\n");
    put(folder, &format!("{at}lessons/01-thyme-syrup.md"), LESSON);
    put(folder, &format!("{at}plants/thyme.md"), &kit::read(&kit::root().join("content/plants/thyme.md")));
}

/// A fresh folder with a formulary in `content`.
fn book() -> tempfile::TempDir {
    let folder = kit::fresh_folder();
    formulary(folder.path(), "content/");
    folder
}

fn spoil(folder: &Path) {
    put(folder, "content/lessons/01-thyme-syrup.md", &LESSON.replace("40 g dried", "40 stones dried"));
}

/// Every file below, with its bytes.
fn whole(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let read = |path: String| (path.clone(), fs::read(folder.join(&path)).expect("a file can be read"));
    kit::files(folder, "", "").into_iter().map(read).collect()
}

#[test]
fn a_sound_book_is_proofed_and_pressed() {
    let folder = book();
    let before = whole(folder.path());
    run(folder.path(), &["proof"]).says(0, "Proofed 1 lesson, 1 recipe, 0 variations in ", "");
    assert_eq!(whole(folder.path()), before, "a proof writes nothing");
    run(folder.path(), &["press"]).says(0, "in site, in ", "");
    let site = kit::files(folder.path(), "site", "");
    for page in
        ["site/index.html", "site/lessons/thyme-syrup.html", "site/plants/thyme.html", "site/stillroom.txt"]
    {
        assert!(site.iter().any(|path| path == page), "{page} in {site:?}");
    }
    let pages = site.iter().filter(|path| path.ends_with(".html")).count();
    run(folder.path(), &["press"]).says(0, &format!("onto {pages} pages in site"), "");
    assert_eq!(kit::files(folder.path(), "site", ""), site);
    let beside: Vec<_> = fs::read_dir(folder.path()).expect("the folder").collect();
    assert_eq!(beside.len(), 2, "nothing is left beside content and site: {beside:?}");
}

#[test]
fn an_error_is_told_and_nothing_written() {
    let folder = book();
    spoil(folder.path());
    let before = whole(folder.path());
    run(folder.path(), &["proof"]).says(1, "Proofed", "lessons/01-thyme-syrup.md:12");
    run(folder.path(), &["press"]).says(1, "Nothing was written", "40 stones dried");
    run(folder.path(), &["work", "thyme-syrup"]).says(1, "", "40 stones dried");
    assert_eq!(whole(folder.path()), before);
    let plain = run(folder.path(), &["--sentences", "proof"]);
    plain.says(1, "Proofed", "lessons/01-thyme-syrup.md");
    assert!(!plain.err.contains("^^") && !plain.err.contains('|'), "no marked line: {}", plain.err);
}

#[test]
fn the_old_site_stays_whole_on_an_error() {
    let folder = book();
    run(folder.path(), &["press"]).says(0, "Pressed", "");
    let before = whole(&folder.path().join("site"));
    spoil(folder.path());
    run(folder.path(), &["press"]).says(1, "Nothing was written", "error");
    assert_eq!(whole(&folder.path().join("site")), before);
    assert_eq!(fs::read_dir(folder.path()).expect("the folder").count(), 2);
}

#[test]
fn a_warning_is_told_and_does_not_stop() {
    let folder = book();
    put(folder.path(), "content/notes.txt", "x");
    run(folder.path(), &["proof"]).says(0, "Proofed", "notes.txt");
    run(folder.path(), &["press"]).says(0, "Pressed", "warning");
}

#[test]
fn a_folder_of_someone_else_is_refused() {
    let folder = book();
    put(folder.path(), "site/mine.txt", "mine");
    put(folder.path(), "other/stillroom/mine.txt", "mine");
    let before = whole(folder.path());
    run(folder.path(), &["press"]).says(2, "", "was not made by stillroom");
    run(folder.path(), &["press", "--to", "other"]).says(2, "", "--to");
    // A file in the way is no folder of ours either.
    run(folder.path(), &["press", "--to", "site/mine.txt"]).says(2, "", "was not made by stillroom");
    // Nor is the formulary itself, nor a folder around it.
    for to in ["content", "content/", ".", "./"] {
        run(folder.path(), &["press", "--to", to]).says(2, "", "stillroom: ");
    }
    assert_eq!(whole(folder.path()), before);
    // An empty folder belongs to nobody.
    fs::create_dir(folder.path().join("empty")).expect("a folder");
    run(folder.path(), &["press", "--to", "empty"]).says(0, "onto", "");
}

#[test]
fn a_site_folder_left_behind_by_others_is_not_cleared() {
    let folder = book();
    put(folder.path(), "site.new/mine.txt", "mine");
    put(folder.path(), "site.old/mine.txt", "mine");
    let before = whole(folder.path());
    run(folder.path(), &["press"]).says(2, "", "site.new was not made by stillroom");
    assert_eq!(whole(folder.path()), before);
}

#[test]
fn a_press_cut_off_is_mended_by_the_next() {
    let folder = book();
    run(folder.path(), &["press"]).says(0, "Pressed", "");
    let before = whole(&folder.path().join("site"));
    fs::rename(folder.path().join("site"), folder.path().join("site.old")).expect("a folder can be moved");
    put(folder.path(), "site.new/stillroom.txt", "half a site");
    spoil(folder.path());
    run(folder.path(), &["press"]).says(1, "Nothing was written", "error");
    assert_eq!(whole(&folder.path().join("site")), before, "the old site is put back");
}

#[test]
fn folders_have_defaults() {
    let folder = kit::fresh_folder();
    formulary(folder.path(), "book/");
    // Without `content` the current folder is the formulary, and the site goes beside it, not into it.
    let inside = folder.path().join("book");
    let before = whole(&inside);
    run(&inside, &["proof"]).says(0, "Proofed 1 lesson", "");
    run(&inside, &["work", "thyme-syrup"]).says(0, "Thyme syrup", "");
    run(&inside, &["press"]).says(0, "Pressed", "");
    assert_eq!(whole(&inside), before, "the formulary is left as it is");
    assert!(folder.path().join("site/index.html").is_file());
    run(folder.path(), &["press", "book"]).says(0, "onto", "");
    run(folder.path(), &["press", "book/"]).says(0, "onto", "");
    run(folder.path(), &["press", "book", "--to", "a/b/public"]).says(0, "a/b/public", "");
    assert_eq!(whole(&folder.path().join("a/b/public")), whole(&folder.path().join("site")));
    assert_eq!(whole(&inside), before, "the formulary is left as it is");
    run(folder.path(), &["work", "thyme-syrup", "--of", "book"]).says(0, "Thyme syrup", "");
}

#[test]
fn what_is_not_there_is_told() {
    let folder = kit::fresh_folder();
    for words in [&["proof", "no"][..], &["press", "no"], &["work", "x", "--of", "no"]] {
        run(folder.path(), words).says(2, "", "stillroom: there is no folder no");
    }
    // An empty folder is a formulary with everything still to be written.
    run(folder.path(), &["proof"]).says(1, "Proofed 0 lessons", "formulary.yaml");
    assert!(whole(folder.path()).is_empty());
}

#[test]
fn an_unknown_lesson_gets_a_suggestion() {
    let folder = book();
    run(folder.path(), &["work", "thime-syrup"]).says(2, "", "did you mean `thyme-syrup`?");
    for wrong in ["thyme-syrup#2", "thyme-syrup#0", "thyme-syrup#x", "thyme-syrup#"] {
        run(folder.path(), &["work", wrong]).says(2, "", "1 recipe");
    }
    let first = run(folder.path(), &["work", "thyme-syrup#1"]);
    first.says(0, "finished", "");
    assert_eq!(first.out, run(folder.path(), &["work", "thyme-syrup"]).out);
    assert_eq!(first.out, run(folder.path(), &["work", "lessons/01-thyme-syrup.md"]).out);
}

#[test]
fn wrong_usage_is_two_and_help_is_nought() {
    let folder = kit::fresh_folder();
    for words in [&["pres"][..], &["press", "a", "b"], &["press", "--to"], &["work"], &["proof", "--json"]] {
        run(folder.path(), words).says(2, "", "try '--help'");
    }
    run(folder.path(), &[]).says(2, "", "Usage: stillroom");
    run(folder.path(), &["pres"]).says(2, "", "press");
    run(folder.path(), &["--version"]).says(0, concat!("stillroom ", env!("CARGO_PKG_VERSION"), "\n"), "");
    let help = run(folder.path(), &["--help"]);
    help.says(0, "Usage: stillroom", "");
    for command in ["proof", "press", "work"] {
        assert!(help.out.contains(&format!("\n  {command} ")), "{}", help.out);
        let one = run(folder.path(), &[command, "--help"]);
        one.says(0, &format!("Usage: stillroom {command}"), "");
        assert!(one.out.to_lowercase().contains("formulary"), "{}", one.out);
    }
    for word in ["thread", "config", "YAML", "parse", "stdout", "directory"] {
        assert!(!help.out.contains(word), "no word for a teacher: {word}");
    }
    assert!(help.out.lines().all(|line| line.chars().count() <= 100), "{}", help.out);
}

#[test]
fn no_colour_and_no_progress_in_a_pipe() {
    let folder = book();
    put(folder.path(), "content/notes.txt", "x");
    let plain = run(folder.path(), &["press"]);
    plain.says(0, "Pressed", "notes.txt");
    assert!(!plain.err.contains('\r') && !plain.err.contains("1 lessons"), "{}", plain.err);
    let asked = ran(stillroom(folder.path()).env("NO_COLOR", "1").arg("press"));
    asked.says(0, "Pressed", "notes.txt");
    assert_eq!(asked.err, plain.err);
}

#[test]
fn a_reader_that_goes_away_is_no_fault() {
    let folder = book();
    put(folder.path(), "content/notes.txt", "x");
    for words in [
        &["work", "--json", "thyme-syrup"][..],
        &["work", "thyme-syrup"],
        &["proof"],
        &["press"],
        &["--help"],
    ] {
        for read in [0, 10] {
            let mut command = stillroom(folder.path());
            let mut child =
                command.args(words).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("it starts");
            let mut out = child.stdout.take().expect("its output");
            out.read_exact(&mut vec![0; read]).expect("its first words");
            drop(out);
            let output = child.wait_with_output().expect("it ends");
            let err = String::from_utf8_lossy(&output.stderr);
            assert!(!err.contains("panicked") && !err.contains("Broken pipe"), "{words:?}: {err}");
            assert_eq!(output.status.code(), Some(0), "{words:?}: {err}");
        }
    }
}
