//! What an author is told about every fault: which findings, at which places, in which words, and
//! that a formulary with a fault leaves the old site as it was.
//!
//! A case is a lesson in `tests/data/faults`, or a folder laid over a good formulary; `NAME.expect`
//! beside it lists what must be found, a line each: `error 12:5 no-basis`, with the file before the
//! place where a folder has several, `0:0` for a whole file, and nothing for a book that is pressed.
//! The words stand in one golden text a group of cases, to be read aloud.

mod book;
mod folders;
mod mutations;

use std::collections::BTreeMap;
use std::path::Path;

use rayon::prelude::*;
use stillroom::diagnostic::{Finding, Level, Look, print, stops};
use stillroom::press::{self, Outcome};

use crate::kit;
use book::{Book, FORMULARY};

const CASES: &str = "tests/data/faults";

/// One fault: its group and name, its files, and what must be found.
struct Case {
    group: String,
    name: String,
    files: Vec<(String, Vec<u8>)>,
    expected: Vec<String>,
}

impl Case {
    fn read(path: &str) -> Case {
        let stem = path.trim_end_matches(".expect");
        let (before, name) = stem.rsplit_once('/').expect("a case stands in a group's folder");
        let group = before.rsplit('/').next().unwrap_or(before);
        let single = format!("lessons/{name}.md");
        let bytes = |path: &str| std::fs::read(kit::root().join(path)).expect("a case's file is there");
        let lesson = kit::root().join(format!("{stem}.md"));
        let alone = lesson.is_file();
        let files = if alone {
            vec![(single.clone(), bytes(&format!("{stem}.md")))]
        } else {
            let within = kit::files(kit::root(), stem, "");
            within.iter().map(|file| (file[stem.len() + 1..].to_string(), bytes(file))).collect()
        };
        let wanted = kit::read(&kit::root().join(path));
        let whole = |line: &str| match (alone, line.split_once(' ')) {
            (true, Some((level, rest))) => format!("{level} {single} {rest}"),
            _ => line.to_string(),
        };
        Case { group: group.into(), name: name.into(), files, expected: wanted.lines().map(whole).collect() }
    }

    /// The case's formulary, every file of it passed through `turn`.
    fn book(&self, turn: impl Fn(&[u8]) -> Vec<u8>) -> Book {
        let book = Book::good();
        book.write("formulary.yaml", FORMULARY.as_bytes());
        for (path, bytes) in &self.files {
            book.write(path, &turn(bytes));
        }
        book
    }

    fn faults(&self, turned: &str, outcome: &Outcome) -> Option<String> {
        let found: Vec<String> = outcome.findings.iter().map(line).collect();
        (found != self.expected).then(|| {
            format!("{}/{}{turned}\n  wanted {:#?}\n  found {found:#?}", self.group, self.name, self.expected)
        })
    }
}

/// A finding as a case lists it.
fn line(finding: &Finding) -> String {
    let level = match finding.level {
        Level::Error => "error",
        Level::Warning => "warning",
        Level::Note => "note",
    };
    let place = finding.place.as_ref().expect("every finding of a press has its place");
    format!("{level} {} {}:{} {}", place.path, place.line, place.column, finding.code.text())
}

fn cases() -> Vec<Case> {
    let cases: Vec<Case> =
        kit::files(kit::root(), CASES, ".expect").iter().map(|path| Case::read(path)).collect();
    assert!(cases.len() > 150, "only {} cases were found", cases.len());
    cases
}

#[track_caller]
fn none(faults: Vec<String>) {
    assert!(faults.is_empty(), "{} cases fail:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn exactly_these_findings_and_the_old_site_stays_whole() {
    let faults = cases().into_par_iter().filter_map(|case| {
        let book = case.book(<[u8]>::to_vec);
        let before = book.everything();
        let outcome = press::press(book.dir(), book.site(), None, &|| {}).expect("the folders can be used");
        let stopped = stops(&outcome.findings);
        assert_eq!(outcome.written, !stopped, "{}", case.name);
        let after = book.everything();
        if stopped {
            assert_eq!(before, after, "{}: something was written", case.name);
        } else {
            assert!(after.keys().any(|path| path.starts_with("site/lessons/")), "{}", case.name);
        }
        case.faults("", &outcome)
    });
    none(faults.collect());
}

#[test]
fn windows_line_ends_and_a_byte_order_mark_move_no_finding() {
    let windows = |bytes: &[u8]| String::from_utf8_lossy(bytes).replace('\n', "\r\n").into_bytes();
    let marked = |bytes: &[u8]| ["\u{feff}".as_bytes(), bytes].concat();
    let faults = cases().into_par_iter().flat_map_iter(|case| {
        let proof = |book: Book| press::proof(book.dir()).expect("the folder can be read");
        let found = [
            case.faults(" with Windows line ends", &proof(case.book(windows))),
            case.faults(" with a byte order mark", &proof(case.book(marked))),
            case.faults(" with both", &proof(case.book(|bytes| marked(&windows(bytes))))),
        ];
        found.into_iter().flatten()
    });
    none(faults.collect());
}

#[test]
fn findings_in_words() {
    let mut groups: BTreeMap<String, String> = BTreeMap::new();
    for case in cases() {
        let book = case.book(<[u8]>::to_vec);
        let outcome = press::proof(book.dir()).expect("the folder can be read");
        let told: Vec<String> = outcome.findings.iter().map(|finding| print(finding, Look::Plain)).collect();
        let told = if told.is_empty() { "Nothing found.".to_string() } else { told.join("\n\n") };
        let text = groups.entry(case.group).or_default();
        text.push_str(&format!("== {}\n{told}\n\n", case.name));
    }
    for (group, text) in groups {
        insta::with_settings!({
            snapshot_path => "../data/faults",
            prepend_module_to_snapshot => false,
            omit_expression => true,
        }, { insta::assert_snapshot!(group, text) });
    }
}

/// Words of the trade of programming, of the crates used, or of the disk a book is read from.
const FOREIGN: &[&str] = &[
    "::", "None", "Some(", "Ok(", "Err(", "f64", "i128", "usize", "u16", "NaN (", "struct", "enum", "panic",
    "serde", "saphyr", "granit", "comrak", "tera", "parse", "token", "scalar", "mapping", "sequence",
    "overflow", "invalid", "null", "UTF8", "stdin", "regex", "schema", "syntax", "/tmp", "/var", "\\\\",
];

#[test]
fn findings_speak_plainly() {
    let mut faults = Vec::new();
    for case in cases() {
        let book = case.book(<[u8]>::to_vec);
        let folder = book.root().to_string_lossy().into_owned();
        for finding in press::proof(book.dir()).expect("the folder can be read").findings {
            let mut say =
                |fault: &str| faults.push(format!("{}/{}: {fault}: {finding:?}", case.group, case.name));
            let texts = [&finding.message].into_iter().chain(&finding.why).chain(&finding.write);
            for text in texts {
                let written = finding.place.as_ref().map_or("", |place| place.text.as_str());
                let foreign = |word: &&&str| text.contains(**word) && !written.contains(**word);
                if let Some(word) = FOREIGN.iter().find(foreign) {
                    say(&format!("`{word}` is not a teacher's word"));
                }
                if text.contains(&folder) {
                    say("a path of the disk");
                }
            }
            let sentence = |text: &str| !text.ends_with('.') || text.ends_with("...");
            if !sentence(&finding.message) || !finding.why.as_deref().is_none_or(sentence) {
                say("ends with a full stop");
            }
            if finding.message.starts_with(|first: char| first.is_uppercase() && first != 'H') {
                say("begins with a capital");
            }
            if finding.why.is_none() && finding.write.is_empty() {
                say("says neither why nor what to write");
            }
        }
    }
    none(faults);
}

#[test]
fn every_case_stands_in_the_book_it_says() {
    let ours = |path: &String| {
        let stem = path.trim_end_matches(".expect");
        Path::new(stem).extension().is_none() && {
            let stem = kit::root().join(stem);
            stem.is_dir() || stem.with_extension("md").is_file()
        }
    };
    let strays: Vec<_> =
        kit::files(kit::root(), CASES, ".expect").into_iter().filter(|path| !ours(path)).collect();
    assert!(strays.is_empty(), "no lesson and no folder beside {strays:?}");
}
