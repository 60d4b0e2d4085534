//! Which files a formulary's folder holds, and their texts. Sorted, links not followed.

use std::path::{Path, PathBuf};

use walkdir::WalkDir;

use super::Trouble;
use crate::diagnostic::{Code, Finding, Level};
use crate::span::Source;

/// The files of a formulary by what they are; paths below its folder, with forward slashes, sorted.
#[derive(Clone, Debug, Default)]
pub struct Gathered {
    /// The folder.
    pub dir: PathBuf,
    /// Whether `formulary.yaml` is there.
    pub course: bool,
    /// Whether `glossary.yaml` is there.
    pub glossary: bool,
    /// Whether `home.md` is there.
    pub home: bool,
    /// `lessons/*.md`.
    pub lessons: Vec<String>,
    /// `plants/*.md`.
    pub plants: Vec<String>,
    /// `pantry/*.md`.
    pub pantry: Vec<String>,
    /// `pictures/...`, files of any kind.
    pub pictures: Vec<String>,
    /// `themes/NAME/...`, files of any kind.
    pub themes: Vec<String>,
    /// Files that no page is made of.
    pub strange: Vec<String>,
}

/// Looks through the folder.
///
/// # Errors
/// The folder is not there or cannot be read.
pub fn gather(dir: &Path) -> Result<Gathered, Trouble> {
    if !dir.is_dir() {
        return Err(Trouble::NoFolder(dir.to_path_buf()));
    }
    let mut found = Gathered { dir: dir.to_path_buf(), ..Gathered::default() };
    // A site pressed into the formulary's own folder is no part of the formulary.
    let is_site = |entry: &walkdir::DirEntry| entry.depth() > 0 && entry.path().join(super::MARK).is_file();
    let walk = WalkDir::new(dir).sort_by_file_name().follow_links(false).into_iter();
    for entry in walk.filter_entry(|entry| !is_site(entry)) {
        let entry = entry.map_err(|error| Trouble::Disk {
            path: error.path().unwrap_or(dir).to_path_buf(),
            error: error
                .into_io_error()
                .unwrap_or_else(|| std::io::Error::other("a folder that contains itself")),
        })?;
        if !entry.file_type().is_file() {
            continue;
        }
        let below = entry.path().strip_prefix(dir).unwrap_or(entry.path());
        let parts: Vec<_> = below.components().map(|part| part.as_os_str().to_string_lossy()).collect();
        let path = parts.join("/");
        match (path.split_once('/'), path.ends_with(".md")) {
            _ if parts.iter().any(|part| part.starts_with('.')) => {}
            (None, _) if path == "formulary.yaml" => found.course = true,
            (None, _) if path == "glossary.yaml" => found.glossary = true,
            (None, _) if path == "home.md" => found.home = true,
            (Some(("lessons", _)), true) => found.lessons.push(path),
            (Some(("plants", _)), true) => found.plants.push(path),
            (Some(("pantry", _)), true) => found.pantry.push(path),
            (Some(("pictures", _)), _) => found.pictures.push(path),
            (Some(("themes", below)), _) if below.contains('/') => found.themes.push(path),
            _ => found.strange.push(path),
        }
    }
    Ok(found)
}

/// Reads one file as it is.
///
/// # Errors
/// The file cannot be read.
pub fn read_bytes(dir: &Path, path: &str) -> Result<Vec<u8>, Trouble> {
    let full = dir.join(path);
    std::fs::read(&full).map_err(Trouble::at(&full))
}

/// Reads one file as text, a byte order mark taken off. What is not text, or empty, is a finding.
///
/// # Errors
/// The file cannot be read.
pub fn read_source(dir: &Path, path: &str, findings: &mut Vec<Finding>) -> Result<Option<Source>, Trouble> {
    let bytes = read_bytes(dir, path)?;
    let text = match String::from_utf8(bytes) {
        Ok(text) => text,
        Err(error) => {
            let at = error.utf8_error().valid_up_to();
            let line = error.as_bytes()[..at].iter().filter(|&&byte| byte == b'\n').count() + 1;
            findings.push(
                Finding::of_file(Level::Error, Code::NotText, path, format!("line {line} is not UTF-8 text"))
                    .why("the file was saved in another encoding")
                    .write("save the file as UTF-8"),
            );
            return Ok(None);
        }
    };
    let text = text.strip_prefix('\u{feff}').map(str::to_string).unwrap_or(text);
    if text.trim().is_empty() {
        findings.push(
            Finding::of_file(Level::Error, Code::EmptyFile, path, "the file is empty")
                .why("write what belongs in it, or take it out of the folder"),
        );
        return Ok(None);
    }
    Ok(Some(Source::new(path, text)))
}
