//! What is gathered while a body is written, and how links are noted in it.

use super::anchor::Anchors;
use super::holes::Hole;
use super::lines::Lines;
use super::{LinkFound, Manuscript, Terms, links};
use comrak::html::Context;
use comrak::nodes::{Node, TableAlignment};
use std::fmt::Error;

/// What is gathered while the body is written.
pub(super) struct Pass<'a> {
    pub(super) lines: Lines<'a>,
    pub(super) ours: Vec<String>,
    pub(super) anchors: Anchors,
    pub(super) found: Manuscript,
    /// Links that are open, with their number; a refused one has none.
    pub(super) open: Vec<Option<usize>>,
    pub(super) columns: Vec<TableAlignment>,
    pub(super) column: usize,
    pub(super) footnote: u32,
    pub(super) terms: &'a Terms,
    /// Words of the glossary that have been linked.
    pub(super) seen: Vec<String>,
}

pub(super) fn mark(out: &mut Context<Pass>, hole: Option<Hole>) -> Result<(), Error> {
    hole.map_or(Ok(()), |hole| hole.mark(out))
}

/// A node's words without marks, those of pictures inside it too.
pub(super) fn words(node: Node<'_>) -> String {
    node.collect_text().split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Notes a link; its number, if it is one that can be taken.
pub(super) fn take(out: &mut Context<Pass>, link: LinkFound) -> Option<usize> {
    let found = &mut out.user.found;
    match links::check(&link) {
        Ok(finding) => {
            found.findings.extend(finding);
            found.links.push(link);
            Some(found.links.len() - 1)
        }
        Err(finding) => {
            found.findings.push(finding);
            None
        }
    }
}
