//! Writing a site: into a folder beside it, then swapped in whole. The old site stays as it is until
//! the new one is complete, and a folder without our mark is never touched.

use std::fs;
use std::path::{Path, PathBuf};

use super::Trouble;

/// The file that says a folder was made here.
pub const MARK: &str = "stillroom.txt";
const MARK_TEXT: &str =
    "This folder is pressed by stillroom and replaced whole at each press. Keep nothing of your own in it.\n";

/// A site being written.
#[derive(Debug)]
pub struct Stage {
    site: PathBuf,
    /// Where the new one grows.
    new: PathBuf,
    /// Where the old one waits while the new one takes its place.
    old: PathBuf,
}

impl Stage {
    /// Makes room beside `site`.
    ///
    /// # Errors
    /// `site` exists and was not made by Stillroom, or the disk refuses.
    pub fn open(site: &Path) -> Result<Stage, Trouble> {
        let beside = |suffix: &str| {
            let name = site.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned());
            site.with_file_name(format!("{name}{suffix}"))
        };
        let stage = Stage { site: site.to_path_buf(), new: beside(".new"), old: beside(".old") };
        // A press that was cut off between the two renames left the old site aside: put it back.
        if !stage.site.exists() && is_ours(&stage.old) {
            rename(&stage.old, &stage.site)?;
        }
        for path in [&stage.site, &stage.new, &stage.old] {
            if path.exists() && !is_ours(path) && !is_empty(path) {
                return Err(Trouble::NotOurs(path.clone()));
            }
        }
        clear(&stage.new)?;
        clear(&stage.old)?;
        fs::create_dir_all(&stage.new).map_err(Trouble::at(&stage.new))?;
        stage.write(MARK, MARK_TEXT.as_bytes())?;
        Ok(stage)
    }

    /// Writes one file of the new site; `path` is below its root, with forward slashes.
    ///
    /// # Errors
    /// The disk refuses.
    pub fn write(&self, path: &str, bytes: &[u8]) -> Result<(), Trouble> {
        let full = self.new.join(path);
        if let Some(folder) = full.parent() {
            fs::create_dir_all(folder).map_err(Trouble::at(folder))?;
        }
        fs::write(&full, bytes).map_err(Trouble::at(&full))
    }

    /// The new site takes the old one's place.
    ///
    /// # Errors
    /// The disk refuses; the old site is then put back.
    pub fn swap_in(self) -> Result<(), Trouble> {
        let had_one = self.site.exists();
        if had_one {
            rename(&self.site, &self.old)?;
        }
        if let Err(trouble) = rename(&self.new, &self.site) {
            if had_one {
                rename(&self.old, &self.site)?;
            }
            return Err(trouble);
        }
        clear(&self.old)
    }

    /// Throws the new site away; the old one was never touched.
    ///
    /// # Errors
    /// The disk refuses.
    pub fn abandon(self) -> Result<(), Trouble> {
        clear(&self.new)
    }
}

/// Whether a site would take the place of the formulary it is made of.
pub fn replaces(site: &Path, formulary: &Path) -> bool {
    match (site.canonicalize(), formulary.canonicalize()) {
        (Ok(site), Ok(formulary)) => formulary.starts_with(site),
        _ => false,
    }
}

fn is_ours(path: &Path) -> bool {
    path.join(MARK).is_file()
}

fn is_empty(path: &Path) -> bool {
    fs::read_dir(path).is_ok_and(|mut entries| entries.next().is_none())
}

fn rename(from: &Path, to: &Path) -> Result<(), Trouble> {
    fs::rename(from, to).map_err(Trouble::at(from))
}

/// Removes a folder that is ours or empty; `open` has looked.
fn clear(path: &Path) -> Result<(), Trouble> {
    if path.exists() { fs::remove_dir_all(path).map_err(Trouble::at(path)) } else { Ok(()) }
}
