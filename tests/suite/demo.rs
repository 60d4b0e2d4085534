//! The demo: `content` pressed is `site`, byte for byte, whoever presses it and wherever; and what its
//! pages print is what the library works out. Run with UPDATE=1 to press `site` anew.

use crate::kit;
use scraper::{ElementRef, Html, Selector};
use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;
use stillroom::cost::bill;
use stillroom::measure::{decimal, kitchen, usual_places};
use stillroom::page::cost::money;
use stillroom::press;
use stillroom::variation::{Worked, WorkedRecipe};
use stillroom::working::Id;

/// Every file of a site by its path.
type Site = BTreeMap<String, Vec<u8>>;

fn site(folder: &Path) -> Site {
    let read = |path: String| (path.clone(), std::fs::read(folder.join(&path)).expect("a file can be read"));
    kit::files(folder, "", "").into_iter().map(read).collect()
}

/// Presses the demo by the program, from another folder and with other settings.
fn pressed(to: &Path, from: &Path, settings: &[(&str, &str)]) -> Site {
    let mut command = Command::new(assert_cmd::cargo::cargo_bin!("stillroom"));
    command.current_dir(from).envs(settings.iter().copied());
    command.arg("press").arg(kit::root().join("content")).arg("--to").arg(to);
    let output = command.output().expect("the program starts");
    let err = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success() && err.is_empty(), "the demo has no error and no warning, but:\n{err}");
    site(to)
}

/// Tells which files differ, and where; not the bytes themselves.
#[track_caller]
fn same(left: &Site, right: &Site, advice: &str) {
    let mut told = Vec::new();
    for path in left.keys().chain(right.keys().filter(|path| !left.contains_key(*path))) {
        match (left.get(path), right.get(path)) {
            (Some(left), Some(right)) if left == right => {}
            (Some(left), Some(right)) => {
                let at = left.iter().zip(right).take_while(|(left, right)| left == right).count();
                let near = |bytes: &[u8]| {
                    let end = bytes.len().min(at + 60);
                    String::from_utf8_lossy(&bytes[at.saturating_sub(40).min(end)..end]).into_owned()
                };
                told.push(format!("{path}, byte {at}:\n  {}\n  {}", near(left), near(right)));
            }
            (left, _) => {
                told.push(format!("{path}: only {}", if left.is_some() { "pressed" } else { "kept" }))
            }
        }
    }
    assert!(told.is_empty(), "\n{}\n\n{advice}\n", told.join("\n"));
}

#[test]
fn the_site_kept_is_the_demo_pressed() {
    let folder = kit::fresh_folder();
    let pressed = pressed(&folder.path().join("site"), kit::root(), &[]);
    let kept = kit::root().join("site");
    if std::env::var_os("UPDATE").is_some_and(|update| update == "1") {
        // Only what changed: other tests read the site meanwhile.
        let old = site(&kept);
        for path in old.keys().filter(|path| !pressed.contains_key(*path)) {
            std::fs::remove_file(kept.join(path)).expect("an old file can be taken away");
        }
        for (path, bytes) in pressed.iter().filter(|(path, bytes)| old.get(*path) != Some(*bytes)) {
            let path = kept.join(path);
            std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder can be made");
            std::fs::write(path, bytes).expect("a file can be written");
        }
    }
    same(
        &pressed,
        &site(&kept),
        "`site` is not what `content` presses to. Look at the difference; if it is meant, run this test with\n\
         UPDATE=1, or `cargo run -- press`, and commit `site` with the change.",
    );
}

#[test]
fn whoever_presses_gets_the_same_bytes() {
    let folder = kit::fresh_folder();
    let deep = folder.path().join("a folder with spaces/ü");
    std::fs::create_dir_all(&deep).expect("a folder");
    let first = pressed(&folder.path().join("site"), kit::root(), &[("RAYON_NUM_THREADS", "1")]);
    let settings: [&[(&str, &str)]; 4] = [
        &[("RAYON_NUM_THREADS", "1")],
        &[
            ("RAYON_NUM_THREADS", "4"),
            ("TZ", "Pacific/Kiritimati"),
            ("LANG", "tr_TR.UTF-8"),
            ("LC_ALL", "tr_TR.UTF-8"),
        ],
        &[("TZ", "America/Los_Angeles"), ("LANG", "de_DE.UTF-8"), ("SOURCE_DATE_EPOCH", "0")],
        &[("LANG", "C"), ("NO_COLOR", "1"), ("HOME", "/")],
    ];
    for settings in settings {
        // Twice into one place, the second over the first.
        same(
            &first,
            &pressed(&deep.join("site"), &deep, settings),
            "A press hangs on where or how it is run.",
        );
    }
}

#[test]
fn the_order_of_files_on_the_disk_is_of_no_account() {
    let folder = kit::fresh_folder();
    let mut files: Vec<_> = site(&kit::root().join("content")).into_iter().collect();
    files.reverse();
    for (path, bytes) in files {
        let path = folder.path().join("content").join(path);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder can be made");
        std::fs::write(path, bytes).expect("a file can be written");
    }
    let to = folder.path().join("site");
    let outcome = press::press(&folder.path().join("content"), &to, Some(kit::today()), &|| {})
        .expect("it can be pressed");
    assert!(outcome.written && outcome.findings.is_empty(), "{:?}", outcome.findings);
    let usual = pressed(&folder.path().join("usual"), kit::root(), &[]);
    same(&site(&to), &usual, "A press hangs on the order of the folder.");
}

/// The demo's lessons, read and worked by the library: each name in addresses and its recipes.
fn worked() -> Vec<(String, Vec<WorkedRecipe>)> {
    let content = kit::root().join("content");
    let mut findings = Vec::new();
    let (_, book) = press::open_book(&content, &mut findings).expect("the demo can be read");
    let lessons = book.lessons.iter().enumerate().map(|(n, head)| {
        let read =
            press::read_lesson(&content, &book, n).expect("the lesson can be read").expect("it is text");
        findings.extend(read.findings);
        (head.slug.clone(), read.recipes.into_iter().map(|recipe| recipe.expect("it works")).collect())
    });
    let lessons = lessons.collect();
    assert!(findings.is_empty(), "{findings:?}");
    lessons
}

fn page(slug: &str) -> Html {
    in_folder("lessons", slug)
}

fn in_folder(folder: &str, slug: &str) -> Html {
    Html::parse_document(&kit::read(&kit::root().join(format!("site/{folder}/{slug}.html"))))
}

fn all<'a>(of: ElementRef<'a>, what: &str) -> Vec<ElementRef<'a>> {
    of.select(&Selector::parse(what).expect("a selector")).collect()
}

fn text(of: ElementRef) -> String {
    of.text().collect::<String>().split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn the_lessons_show_all_that_a_lesson_needs() {
    let lessons = worked();
    assert!(lessons.len() >= 3);
    for (slug, recipes) in &lessons {
        let page = page(slug);
        let root = page.root_element();
        assert_eq!(recipes.len(), all(root, ".recipe").len(), "{slug}");
        let sheets = in_folder("workings", slug);
        let lines =
            all(sheets.root_element(), "table.every").into_iter().map(|sheet| all(sheet, "tbody tr").len());
        let wanted = recipes.iter().map(|recipe| recipe.base.laid.working.entries().len());
        assert!(lines.eq(wanted), "{slug}: every line");
        for (shown, recipe) in all(root, ".recipe").into_iter().zip(recipes) {
            let ingredients = all(shown, ".gathering tbody tr");
            assert_eq!(ingredients.len(), recipe.base.laid.ingredients.len(), "{slug}: ingredients");
            assert!(!ingredients.is_empty(), "{slug}: ingredients");
            for row in ingredients {
                let amounts: Vec<_> = all(row, ".amount").into_iter().map(text).collect();
                assert!(
                    amounts.len() == 2 && amounts.iter().all(|amount| !amount.is_empty()),
                    "{slug}: {amounts:?}"
                );
            }
            assert_eq!(all(shown, "ol.work > li").len(), recipe.base.laid.steps.len(), "{slug}: steps");
            assert!(all(shown, "table.ledger > tbody > tr.line math").len() >= 2, "{slug}: sums");
            assert!(!all(shown, ".slate-data").is_empty(), "{slug}: the slate");
            assert_eq!(all(shown, "table.fold-out:not(.wanted, .cost)").len(), 1, "{slug}: variations");
            assert!(!all(shown, ".caution").is_empty(), "{slug}: cautions");
            assert!(!all(shown, ".fair-copy .copied").is_empty(), "{slug}: as written");
        }
    }
}

/// A figure as the table prints it: the value in its unit, times and counts as people read them.
fn figure(worked: &Worked, id: Id) -> String {
    let Some(value) = worked.value(id) else {
        return "–".to_string();
    };
    let line = worked.laid.working.line(id).expect("it has a value");
    let unit = worked.laid.working.entry(line).unit;
    match id {
        // Whole days where it stands for days, else to five minutes.
        Id::Minutes if value >= 2880.0 => {
            kitchen::minutes((value / 1440.0).floor() * 1440.0).replace('\u{a0}', " ")
        }
        Id::Minutes => kitchen::minutes(kitchen::to_five_minutes(value)).replace('\u{a0}', " "),
        Id::Doses | Id::Pieces => decimal((value + 1e-9).floor(), 0),
        _ => decimal(value * unit.printed, usual_places(value, unit)),
    }
}

#[test]
fn every_figure_of_the_variations_is_the_librarys() {
    let columns = BTreeMap::from([
        ("Water, mL", Id::Water),
        ("Liquid, mL", Id::Liquid),
        ("Spirit, mL", Id::Spirit),
        ("Strained, mL", Id::Strained),
        ("Reduced to, mL", Id::Reduced),
        ("To add, mL", Id::Sweetener),
        ("To add, g", Id::SweetenerWeight),
        ("Made, mL", Id::Finished),
        ("Made, g", Id::FinishedWeight),
        ("Strong spirit, mL", Id::StrongSpirit),
        ("Water to it, mL", Id::WaterToAdd),
        ("Wax, g", Id::Wax),
        ("Pieces", Id::Pieces),
        ("Covers, cm²", Id::Area),
        ("Bath, °C", Id::Temperature),
        ("Solids, %", Id::Solids),
        ("Alcohol, %", Id::Abv),
        ("Acid, %", Id::Acidity),
        ("Plant, % w/v", Id::Strength),
        ("Plant a dose, g", Id::PlantPerDose),
        ("Sugars a dose, g", Id::SugarPerDose),
        ("Doses", Id::Doses),
        ("Ready in", Id::Minutes),
    ]);
    let mut looked_at = 0;
    let (_, book) =
        press::open_book(&kit::root().join("content"), &mut Vec::new()).expect("the demo can be read");
    let prices = book.course.prices;
    for (slug, recipes) in worked() {
        let page = page(&slug);
        let tables = all(page.root_element(), "table.fold-out:not(.wanted, .cost)");
        assert_eq!(tables.len(), recipes.len(), "{slug}");
        for (table, recipe) in tables.into_iter().zip(&recipes) {
            let heads: Vec<_> = all(table, "thead th").into_iter().skip(1).map(text).collect();
            let rows = all(table, "tbody tr");
            let versions: Vec<_> = std::iter::once(&recipe.base).chain(&recipe.variations).collect();
            assert_eq!(rows.len(), versions.len(), "{slug}: the recipe and each variation");
            assert_eq!(recipe.variations.len(), recipe.recipe.variations.len(), "{slug}: none is left out");
            for (row, version) in rows.into_iter().zip(versions) {
                let name = text(all(row, "th")[0]);
                assert!(name.starts_with(&version.name), "{slug}: {name} for {}", version.name);
                let cells = all(row, "td");
                assert_eq!(cells.len(), heads.len(), "{slug}: {name}");
                for (cell, head) in
                    cells.into_iter().zip(&heads).filter(|(_, head)| *head != "Keeping, and never for")
                {
                    let Some(id) = columns.get(head.as_str()).copied() else {
                        if head == "Cost, £" {
                            let used = bill(version, &prices).map(|bill| match bill.unpriced[..] {
                                [] => money(bill.used()),
                                _ => format!(
                                    "{}without {}",
                                    money(bill.used()),
                                    bill.unpriced.join(", ").replace('\u{a0}', " ")
                                ),
                            });
                            let shown = text(cell);
                            let bare = shown.trim_start_matches(['▲', '▼', ' ']);
                            assert_eq!(bare, used.as_deref().unwrap_or("–"), "{slug}: {name}: {head}");
                            continue;
                        }
                        part(&text(cell), head, version, &slug);
                        continue;
                    };
                    let (shown, want) = (text(cell), figure(version, id));
                    let bare = shown.trim_start_matches(['▲', '▼', ' ']);
                    assert_eq!(bare, want, "{slug}: {name}: {head}");
                    let (here, base) = (version.value(id), recipe.base.value(id));
                    let mark = match (here, base) {
                        _ if want == figure(&recipe.base, id) => "",
                        (Some(here), Some(base)) if here > base => "▲ ",
                        (Some(_), Some(_)) => "▼ ",
                        _ => "",
                    };
                    assert_eq!(shown.trim_end_matches(bare), mark, "{slug}: {name}: {head}: its mark");
                    looked_at += 1;
                }
            }
        }
    }
    assert!(looked_at > 150, "only {looked_at} figures were looked at");
}

/// A column of a mixture in parts: what a plant weighs in it.
#[track_caller]
fn part(shown: &str, head: &str, version: &Worked, slug: &str) {
    let name = head.strip_suffix(", g").unwrap_or_else(|| panic!("no column {head} is known here"));
    let item = version.laid.ingredients.iter().find(|item| item.words.eq_ignore_ascii_case(name));
    let want = item.and_then(|item| item.weight).map_or("–".to_string(), |line| {
        let (g, unit) = (version.at(line), version.laid.working.entry(line).unit);
        decimal(g, usual_places(g, unit))
    });
    assert_eq!(shown.trim_start_matches(['▲', '▼', ' ']), want, "{slug}: {}: {head}", version.name);
}

#[test]
fn every_line_of_the_ledger_is_the_librarys() {
    for (slug, recipes) in worked() {
        let page = page(&slug);
        for (shown, recipe) in all(page.root_element(), ".recipe").into_iter().zip(&recipes) {
            let id = shown.value().attr("id").expect("a recipe has an anchor");
            let mut lines = 0;
            for (claimed, line) in recipe.base.laid.working.claimed().filter(|(id, _)| id.first()) {
                let rows = all(shown, &format!("#{id}-{} > .result > b", claimed.text()));
                // A line that several ids share stands there under the first of them.
                if recipe.base.laid.working.id_of(line) == Some(claimed) {
                    let want = recipe.base.shown(line).split_whitespace().collect::<Vec<_>>().join(" ");
                    assert_eq!(
                        rows.into_iter().map(text).collect::<Vec<_>>(),
                        [want],
                        "{slug}: {}",
                        claimed.text()
                    );
                    lines += 1;
                }
            }
            assert!(lines >= 3, "{slug}: {lines}");
        }
    }
}
