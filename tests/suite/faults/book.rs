//! A formulary of a test's own, with the demo's plants and an old site beside it.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use stillroom::site::MARK;

use crate::kit;

/// A course without a fault.
pub const FORMULARY: &str = "book: A Book of Faults\ntitle: What Goes Wrong\n";

/// A lesson without a fault.
pub const LESSON: &str = include_str!("../../data/faults/good/plain.md");

/// The plants that the cases are made of: a press of every plant, a thousand times over, would take minutes.
const PLANTS: &[&str] = &[
    "calendula",
    "cassia",
    "dandelion",
    "elderberry",
    "garlic",
    "hawthorn",
    "hibiscus",
    "lavender",
    "lemon-balm",
    "liquorice",
    "marshmallow",
    "nettle",
    "peppermint",
    "plantain",
    "rosehip",
    "sage",
    "thyme",
];

/// The folders of one test.
pub struct Book {
    root: tempfile::TempDir,
    dir: PathBuf,
    site: PathBuf,
}

impl Book {
    /// Some of the demo's plants, an old site, and nothing else yet.
    pub fn good() -> Book {
        let book = Book::empty();
        for plant in PLANTS {
            let path = format!("plants/{plant}.md");
            let bytes = std::fs::read(kit::root().join("content").join(&path));
            book.write(&path, &bytes.expect("the demo's plants are there"));
        }
        book
    }

    /// An empty folder and an old site.
    pub fn empty() -> Book {
        let root = kit::fresh_folder();
        let (dir, site) = (root.path().join("content"), root.path().join("site"));
        let book = Book { root, dir, site };
        std::fs::create_dir_all(&book.dir).expect("a folder can be made");
        put(&book.site.join(MARK), b"the mark of an older press");
        put(&book.site.join("index.html"), b"<p>the old site");
        put(&book.site.join("lessons/syrup.html"), b"<p>an old lesson \xff");
        book
    }

    /// Writes one file of the formulary.
    pub fn write(&self, path: &str, bytes: &[u8]) {
        put(&self.dir.join(path), bytes);
    }

    /// The folder all of it stands in.
    pub fn root(&self) -> &Path {
        self.root.path()
    }

    /// The formulary.
    pub fn dir(&self) -> &Path {
        &self.dir
    }

    /// The site.
    pub fn site(&self) -> &Path {
        &self.site
    }

    /// Every file and folder there is, with its bytes.
    pub fn everything(&self) -> BTreeMap<String, Vec<u8>> {
        let mut found = BTreeMap::new();
        let mut open = vec![self.root.path().to_path_buf()];
        while let Some(folder) = open.pop() {
            for entry in std::fs::read_dir(&folder).expect("a folder of the test") {
                let path = entry.expect("an entry").path();
                let below = path.strip_prefix(self.root.path()).expect("below the root");
                let name = below.to_string_lossy().replace('\\', "/");
                if path.is_dir() {
                    found.insert(name + "/", Vec::new());
                    open.push(path);
                } else {
                    found.insert(name, std::fs::read(&path).expect("a file of the test"));
                }
            }
        }
        found
    }
}

/// Writes a file and the folders above it.
pub fn put(path: &Path, bytes: &[u8]) {
    let folder = path.parent().expect("a file stands in a folder");
    std::fs::create_dir_all(folder).expect("a folder can be made");
    std::fs::write(path, bytes).expect("a file can be written");
}
