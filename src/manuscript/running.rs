//! Running text: the words of the glossary in it become links where they first stand.

use super::LinkFound;
use super::holes::Hole;
use super::pass::{Pass, mark, take};
use comrak::html::Context;
use comrak::nodes::{Node, NodeValue, Sourcepos};
use std::fmt::Error;

/// How a link to a word of the glossary begins.
pub(super) const TERM: &str = "term:";

/// Lines of running text as one, so that a word of two words is found across a line's end.
pub(super) fn join_lines(root: Node<'_>) {
    let lines: Vec<Node<'_>> =
        root.descendants().filter(|node| matches!(node.data().value, NodeValue::Text(_))).collect();
    for node in lines {
        // Drawn into the text before it.
        if node.parent().is_none() {
            continue;
        }
        while let Some(next) = node.next_sibling() {
            let more = match next.data().value {
                NodeValue::Text(ref text) => text.to_string(),
                NodeValue::SoftBreak => "\n".to_string(),
                _ => break,
            };
            if let NodeValue::Text(ref mut text) = node.data_mut().value {
                text.to_mut().push_str(&more);
            }
            next.detach();
        }
    }
}

/// Whether a text is the author's own running text, and not the words of a link, a heading or a picture.
pub(super) fn in_running_text(node: Node<'_>) -> bool {
    node.ancestors().all(|above| {
        !matches!(above.data().value, NodeValue::Link(_) | NodeValue::Heading(_) | NodeValue::Image(_))
    })
}

/// Running text, with what the glossary knows linked where it first stands.
pub(super) fn text(out: &mut Context<Pass>, words: &str, at: Sourcepos) -> Result<(), Error> {
    let terms = out.user.terms;
    let found = terms.first_uses(words, &mut out.user.seen);
    let mut done = 0;
    for term in found {
        out.escape(&words[done..term.start])?;
        let span = out.user.lines.span(at);
        let link = LinkFound {
            href: format!("{TERM}{}", term.id),
            text: words[term.start..term.end].to_string(),
            title: String::new(),
            picture: false,
            span,
        };
        let number = take(out, link);
        mark(out, number.map(Hole::Open))?;
        out.escape(&words[term.start..term.end])?;
        mark(out, number.map(Hole::Close))?;
        done = term.end;
    }
    out.escape(&words[done..])
}
