//! The repository as a tree of files: what stands at its top, and what no text in it may say.

use super::none;
use crate::kit;
use std::collections::BTreeSet;
use std::process::Command;

/// What may stand at the top.
const TOP: &[&str] = &[
    "Cargo.toml",
    "Cargo.lock",
    "README.md",
    "DEVELOPERS.md",
    "CHANGELOG.md",
    "LICENSE-MIT",
    "LICENSE-APACHE",
    ".gitignore",
    ".rustfmt.toml",
    ".gitattributes",
    ".ci",
    "src",
    "content",
    "themes",
    "tests",
    "site",
];

/// Where Cargo says every locked crate comes from, without its scheme.
const INDEX: &str = "github.com/rust-lang/crates.io-index";

/// Every file of the repository: those git tracks, or, where there is no git, those that are there.
fn tracked() -> Vec<String> {
    let git = Command::new("git").args(["ls-files", "-z"]).current_dir(kit::root()).output();
    let listed = git
        .ok()
        .filter(|git| git.status.success())
        .map(|git| String::from_utf8_lossy(&git.stdout).into_owned());
    let listed: Vec<_> =
        listed.iter().flat_map(|listed| listed.split_terminator('\0')).map(String::from).collect();
    if listed.iter().any(|path| path == "Cargo.toml") {
        return listed;
    }
    let apart = |path: &String| matches!(path.split('/').next(), Some(".git" | "target"));
    kit::files(kit::root(), "", "").into_iter().filter(|path| !apart(path)).collect()
}

fn strangers(paths: &[String]) -> BTreeSet<String> {
    let tops = paths.iter().map(|path| path.split('/').next().unwrap_or(path));
    tops.filter(|top| !TOP.contains(top)).map(String::from).collect()
}

/// Words that tell of the machine or the place a text was written at. Put together here, so that this
/// file does not hold them; a leading `/` counts only where a path begins.
fn workplace() -> Vec<String> {
    let halves = [
        ("/wo", "rk/"),
        ("/tm", "p/"),
        ("/ho", "me/"),
        ("/ro", "ot/"),
        ("/mn", "t/"),
        ("/Use", "rs/"),
        ("\\Use", "rs\\"),
        ("../sha", "red"),
        ("://crates", ".io"),
        ("index.crates", ".io"),
        ("static.crates", ".io"),
        ("target-sha", "red"),
        ("CARGO_TARGET", "_DIR"),
        ("codebases", ".md"),
        ("work", "tree"),
        ("sub", "agent"),
    ];
    halves.iter().map(|(one, two)| format!("{one}{two}")).collect()
}

fn word_faults(path: &str, text: &str) -> Vec<String> {
    let (words, mut faults) = (workplace(), Vec::new());
    for (number, line) in text.lines().enumerate() {
        for word in &words {
            let begins = |at: usize| {
                let before = line[..at].chars().next_back();
                !word.starts_with('/') || !before.is_some_and(|c| c.is_alphanumeric() || "._-~})".contains(c))
            };
            if line.match_indices(word).any(|(at, _)| begins(at)) {
                faults.push(format!("{path}:{}: `{word}`", number + 1));
            }
        }
        let elsewhere = path == "Cargo.lock" && line.starts_with("source =") && !line.contains(INDEX);
        if elsewhere {
            faults.push(format!("{path}:{}: a crate from elsewhere than the public index", number + 1));
        }
    }
    faults
}

#[test]
fn the_top_level_is_closed() {
    none(
        strangers(&tracked()).into_iter().collect(),
        "These may not stand at the top of the repository. Put them in the folder whose subject they are: a theme\n\
         in themes, a lesson in content, a helper of tests in tests/suite. TOP in this file is the list.",
    );
}

#[test]
fn no_text_tells_of_the_machine_it_was_written_on() {
    let mut faults = Vec::new();
    for path in tracked() {
        // A file that is deleted but still listed, or that is not text, says nothing.
        if let Ok(text) = std::fs::read_to_string(kit::root().join(&path)) {
            faults.extend(word_faults(&path, &text));
        }
    }
    none(
        faults,
        "Write paths from the repository's root, and keep the place where the work was done out of it.",
    );
}

#[test]
fn trees_can_fail() {
    let paths =
        ["src/lib.rs", "Cargo.toml", "scripts/x/y.sh", "notes.md", ".ci/run", "srcs"].map(String::from);
    assert_eq!(strangers(&paths), BTreeSet::from(["notes.md", "scripts", "srcs"].map(String::from)));
    for word in workplace() {
        assert_eq!(
            word_faults("README.md", &format!("fine\nsee {word}x")),
            [format!("README.md:2: `{word}`")]
        );
        assert_eq!(word_faults("README.md", &format!("\"{word}\"")).len(), 1);
    }
    let (work, home) = (&workplace()[0], &workplace()[2]);
    assert!(
        word_faults("README.md", &format!("src{work} ..{work} https://a.example{home} {}", &work[1..]))
            .is_empty()
    );
    let source =
        |from: &str| word_faults("Cargo.lock", &format!("source = \"registry+https://{from}\"")).len();
    assert_eq!((source(INDEX), source("mirror.example/index")), (0, 1));
}

#[test]
fn the_tree_is_read() {
    let tracked = tracked();
    for path in ["Cargo.toml", "src/lib.rs"] {
        assert!(
            tracked.iter().any(|known| known == path),
            "{path} is not among the {} files found",
            tracked.len()
        );
    }
}

/// The developers' table has every module, in the reading order of `src/lib.rs`.
#[test]
fn the_developers_table_is_in_reading_order() {
    let lib = kit::read(&kit::root().join("src/lib.rs"));
    let order: Vec<&str> =
        lib.lines().filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';')).collect();
    let text = kit::read(&kit::root().join("DEVELOPERS.md"));
    let table =
        text.split("| module | what |").nth(1).expect("a table").split("\n\n").next().expect("its rows");
    let firsts = table.lines().filter_map(|row| row.strip_prefix("| ")?.split(" | ").next());
    let named: Vec<&str> =
        firsts.flat_map(|cell| cell.split(", ")).map(|name| name.trim_matches('`')).collect();
    assert_eq!(named, order);
}
