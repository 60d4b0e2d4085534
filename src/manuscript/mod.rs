//! A content file: its facts, its Markdown, the fenced blocks that are ours, and its HTML.
//!
//! This folder is the only place that knows the Markdown crate. [`parts`] cuts a file into facts and
//! body; [`read`] goes through the body once and keeps everything a page needs; [`render`] fills in
//! where each link leads, which is known only after every file has been read.

mod anchor;
mod format;
mod holes;
mod lines;
mod links;
mod notes;
mod parts;
mod pass;
mod running;
mod terms;
#[cfg(test)]
mod tests;

use crate::diagnostic::Finding;
use crate::span::{Source, Span, Spanned};

pub use anchor::{PLAIN, plain, recipe_anchor};
pub use parts::{Parts, facts, parts};
pub use terms::Terms;

/// A fenced block that is ours, at the outermost level of the body.
#[derive(Clone, PartialEq, Debug)]
pub struct Block {
    /// First word after the opening fence.
    pub kind: String,
    /// What stands after the opening fence, the kind included.
    pub info: Span,
    /// The lines between the fences, byte for byte as in the file.
    pub text: Spanned<String>,
}

/// A heading of the body.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Heading {
    /// Level on the page: 2 to 6.
    pub level: u8,
    /// Its words, without marks.
    pub text: String,
    /// Its `id`, once on the page.
    pub anchor: String,
    /// Where it was written.
    pub span: Span,
}

/// A link or a picture as written.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LinkFound {
    /// What it points to, as written: `plant:rosehip`, `number:strained`, `../notes.md`.
    pub href: String,
    /// Its words without marks; a picture's words for those who cannot see it. May be empty.
    pub text: String,
    /// The words shown on hovering, if the author wrote any; under a picture that stands by itself.
    pub title: String,
    /// Whether it shows a picture instead of leading somewhere.
    pub picture: bool,
    /// Where it was written.
    pub span: Span,
}

/// What a link becomes on the page.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum LinkTo {
    /// Leads there, with the author's words.
    Address(String),
    /// A picture from there, so many pixels wide and high.
    Picture {
        /// Where it is fetched from.
        address: String,
        /// Its width, px.
        width: u32,
        /// Its height, px.
        height: u32,
    },
    /// No link: this text in its place.
    Words(String),
    /// Leads there, with this text in place of the author's words.
    AddressAndWords(String, String),
    /// No link: the author's words only. Whoever says this also makes the finding.
    Broken,
}

/// A body gone through once: plain data that can be kept and sent between threads.
#[derive(Clone, Debug, Default)]
pub struct Manuscript {
    /// Our blocks of the kind that parts the text, in order.
    pub blocks: Vec<Block>,
    /// Our blocks of the other kinds, in order: they stand aside and leave no trace in the text.
    pub asides: Vec<Block>,
    /// Headings, in order.
    pub headings: Vec<Heading>,
    /// Links and pictures, in order; refused ones are not among them.
    pub links: Vec<LinkFound>,
    /// What is to be told, places worked out.
    pub findings: Vec<Finding>,
    body: Vec<holes::Hole>,
    notes: Vec<holes::Hole>,
}

/// The HTML of a body.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Rendered {
    /// What stands before, between and after our blocks: one piece more than there are blocks.
    pub pieces: Vec<String>,
    /// The footnotes as one section, to be put below everything else; empty if there are none.
    pub notes: String,
}

/// Goes through the Markdown at `body`. Fenced blocks of a kind among `ours` are kept apart: those of the first kind part
/// the text, those of the others stand aside. Every other block is shown as written. Where one of `terms` first stands in running text it becomes a link
/// `term:NAME`, as if the author had written one.
pub fn read(source: &Source, body: Span, ours: &[&str], terms: &Terms) -> Manuscript {
    format::read(source, body, ours, terms)
}

/// The HTML, every link led where `resolve` says.
pub fn render(manuscript: &Manuscript, resolve: impl Fn(&LinkFound) -> LinkTo) -> Rendered {
    let targets: Vec<LinkTo> = manuscript.links.iter().map(resolve).collect();
    let mut notes = holes::fill(&manuscript.notes, &manuscript.links, &targets);
    Rendered {
        pieces: holes::fill(&manuscript.body, &manuscript.links, &targets),
        notes: notes.pop().unwrap_or_default(),
    }
}
