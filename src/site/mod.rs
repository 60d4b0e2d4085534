//! The disk: the one place that reads a formulary and the one that writes a site.

mod gather;
mod publish;

pub use gather::{Gathered, gather, read_bytes, read_source};
pub use publish::{MARK, Stage, replaces};

use std::path::PathBuf;

/// What the machine or the folders make impossible; no fault of any text.
#[derive(Debug, thiserror::Error)]
pub enum Trouble {
    /// The formulary's folder is not there.
    #[error("there is no folder {}; write `stillroom press DIR` with the folder of your formulary", .0.display())]
    NoFolder(PathBuf),
    /// A folder in the way that Stillroom did not make.
    #[error(
        "{} was not made by stillroom, so it is left as it is. Name another folder with --to, or move this one away",
        .0.display()
    )]
    NotOurs(PathBuf),
    /// Reading or writing failed.
    #[error("{}: {error}", path.display())]
    Disk {
        /// Where.
        path: PathBuf,
        /// What the system says.
        error: std::io::Error,
    },
}

impl Trouble {
    fn at(path: &std::path::Path) -> impl FnOnce(std::io::Error) -> Trouble + '_ {
        move |error| Trouble::Disk { path: path.to_path_buf(), error }
    }
}
