//! What a page shows, as plain data: finished strings and flags. A template arranges it and never
//! computes. Fields named `html` hold safe markup; all others are text.

mod classwork;
mod facts;
mod lists;
mod pages;
mod paper;
mod recipe;

pub use classwork::*;
pub use facts::*;
pub use lists::*;
pub use pages::*;
pub use paper::*;
pub use recipe::*;

use serde::Serialize;

/// A link: its words and its relative address.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Link {
    /// Words shown.
    pub text: String,
    /// Relative address.
    pub href: String,
    /// Whether it leads to the page it stands on (or to that page's section).
    pub current: bool,
}

/// What every page carries around its text.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Frame {
    /// Language of the text, as in HTML `lang`.
    pub lang: String,
    /// The book's name, in the running head.
    pub book: String,
    /// The page's own title.
    pub title: String,
    /// One sentence for `meta description`.
    pub description: String,
    /// From this page to the site's root: "" or "../".
    pub root: String,
    /// The page's whole address; empty where the course has none.
    pub canonical: String,
    /// The site's whole address, with its last slash; empty where the course has none.
    pub site: String,
    /// The feed's whole address; empty where there is none.
    pub feed: String,
    /// Running-head links.
    pub running: Vec<Link>,
    /// Lines of the colophon: printing, date, licence, and the sentence on practitioners.
    pub colophon: Vec<String>,
    /// Previous lesson ("Turn back: ..."), the contents, the next lesson (catchword).
    pub back: Option<Link>,
    /// The contents page; none on the home page.
    pub contents: Option<Link>,
    /// The next lesson.
    pub catchword: Option<Link>,
}

/// What kind of knowledge a value is (the mark before it and the word beside it).
#[derive(Clone, Copy, PartialEq, Eq, Debug, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Kind {
    /// Computed from what the recipe says.
    Worked,
    /// An input nobody declared: a stated guess with a range.
    Assumed,
    /// A guideline.
    Advised,
    /// Tradition.
    Handed,
    /// As the recipe says; no mark.
    Declared,
}

/// A plant's Latin name.
#[derive(Clone, Debug, Serialize)]
pub struct Latin {
    /// In italic: "Rosa canina".
    pub name: String,
    /// In roman: "L.".
    pub author: String,
    /// "the dried hips".
    pub part: String,
}

/// A line of the list of parts.
#[derive(Clone, Debug, Default, Serialize)]
pub struct PartLink {
    /// Number within the recipe.
    pub number: usize,
    /// Which: `gather`; the theme's words for it are `part-gather`.
    pub part: String,
    /// Anchor, without #.
    pub anchor: String,
}

/// A note in the margin.
#[derive(Clone, Debug, Serialize)]
pub struct Note {
    /// What kind of knowledge.
    pub kind: Kind,
    /// Its words; source titles in italic.
    pub html: String,
}
