//! Helpers shared by the suite; no test of Stillroom itself stands here.

use std::path::{Path, PathBuf};
use stillroom::calendar::Day;

/// The repository's root.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// An empty folder of the test's own, gone when the value is dropped.
pub fn fresh_folder() -> tempfile::TempDir {
    tempfile::Builder::new().prefix("stillroom-").tempdir().expect("a fresh folder can be made")
}

/// A file as text, with plain line ends whatever the checkout made of them.
pub fn read(path: &Path) -> String {
    let text = std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    text.replace("\r\n", "\n")
}

/// The day on which the demo is pressed by the tests: after every day that it sets.
pub fn today() -> Day {
    Day::read("2026-11-27").expect("a day")
}

/// Every file below `folder` whose name ends in `ending`, as paths from `root` with `/` between, sorted.
/// A folder that is not there holds no files.
pub fn files(root: &Path, folder: &str, ending: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut open = vec![PathBuf::from(folder)];
    while let Some(folder) = open.pop() {
        let Ok(entries) = std::fs::read_dir(root.join(&folder)) else {
            continue;
        };
        for entry in entries {
            let entry = entry.expect("an entry of an open folder");
            let path = folder.join(entry.file_name());
            if entry.file_type().expect("an entry's type").is_dir() {
                open.push(path);
            } else if path.to_string_lossy().ends_with(ending) {
                let parts: Vec<_> =
                    path.components().map(|part| part.as_os_str().to_string_lossy()).collect();
                found.push(parts.join("/"));
            }
        }
    }
    found.sort();
    found
}

#[test]
fn files_are_found_below_and_sorted() {
    let folder = fresh_folder();
    std::fs::create_dir_all(folder.path().join("src/b")).expect("a folder");
    for name in ["src/c.rs", "src/b/a.rs", "src/a.rs", "src/a.txt", "other.rs"] {
        std::fs::write(folder.path().join(name), "").expect("a file");
    }
    assert_eq!(files(folder.path(), "src", ".rs"), ["src/a.rs", "src/b/a.rs", "src/c.rs"]);
    assert!(files(folder.path(), "tests", ".rs").is_empty());
}
