//! Footnotes: each called where its number stands, all of them below the text, with the ways back.

use super::holes::Hole;
use super::pass::Pass;
use crate::diagnostic::{Code, Finding};
use comrak::html::Context;
use comrak::nodes::{Node, NodeValue};
use std::fmt::{Error, Write};

/// Named for readers who hear the page: the section of footnotes, and the way back from one.
const NOTES: &str = "Notes";
const BACK: &str = "Back to where this is noted";

/// Of two footnotes of one name the Markdown crate fills in the later and leaves the other where it
/// stood, counting no call of it. Left there, it would open the section of notes in mid-text.
pub(super) fn drop_doubles(root: Node<'_>, pass: &mut Pass) {
    let doubles: Vec<Node<'_>> = root
        .descendants()
        .filter(|node| matches!(node.data().value, NodeValue::FootnoteDefinition(ref note) if note.total_references == 0))
        .collect();
    for node in doubles {
        let span = pass.lines.span(node.data().sourcepos);
        let message = "a footnote of this name stands again further down";
        pass.found
            .findings
            .push(Finding::error(Code::TwiceWritten, span, message).why("only the later one would be shown"));
        node.detach();
    }
}

pub(super) fn call(note: u32, time: u32) -> String {
    if time > 1 { format!("call--{note}-{time}") } else { format!("call--{note}") }
}

/// The ways back from a note, one for each place that calls it.
pub(super) fn back(out: &mut Context<Pass>, calls: u32, after_words: bool) -> Result<(), Error> {
    let note = out.user.footnote;
    for time in 1..=calls {
        let (call, which) = (call(note, time), if calls > 1 { format!(", {time}") } else { String::new() });
        let gap = if time > 1 || after_words { " " } else { "" };
        write!(
            out,
            "{gap}<a href=\"#{call}\" role=\"doc-backlink\" aria-label=\"{BACK}{which}\">↩\u{fe0e}</a>"
        )?;
    }
    Ok(())
}

pub(super) fn footnote(
    out: &mut Context<Pass>,
    node: Node<'_>,
    calls: u32,
    entering: bool,
) -> Result<(), Error> {
    if entering {
        if out.user.footnote == 0 {
            out.cr()?;
            Hole::Notes.mark(out)?;
            writeln!(out, "<section class=\"notes\" role=\"doc-endnotes\" aria-label=\"{NOTES}\">\n<ol>")?;
        }
        out.user.footnote += 1;
        let note = out.user.footnote;
        return write!(out, "<li id=\"note--{note}\">");
    }
    let ends_in_words =
        node.last_child().is_some_and(|last| matches!(last.data().value, NodeValue::Paragraph));
    if !ends_in_words {
        out.write_str("<p>")?;
        back(out, calls, false)?;
        out.write_str("</p>\n")?;
    }
    out.write_str("</li>\n")
}
