//! One pass over a parsed body: HTML written, everything else noted on the way.

use super::anchor::Anchors;
use super::holes::{self, Hole};
use super::lines::Lines;
use super::notes::{back, call, drop_doubles, footnote};
use super::pass::{Pass, mark, take, words};
use super::running::{TERM, in_running_text, join_lines, text};
use super::{Block, Heading, LinkFound, Manuscript, Terms};
use crate::diagnostic::{Code, Finding};
use crate::span::{Source, Span, Spanned};
use comrak::html::{ChildRendering, Context, format_document_with_formatter, format_node_default};
use comrak::nodes::{Node, NodeCodeBlock, NodeValue, Sourcepos, TableAlignment};
use comrak::options::Plugins;
use comrak::{Arena, Options, parse_document};
use std::fmt::{Error, Write};

const TO_DO: &str = "To do";

pub(super) fn read(source: &Source, body: Span, ours: &[&str], terms: &Terms) -> Manuscript {
    let mut pass = Pass {
        lines: Lines::new(source, body),
        ours: ours.iter().map(ToString::to_string).collect(),
        anchors: Anchors::default(),
        found: Manuscript::default(),
        open: Vec::new(),
        columns: Vec::new(),
        column: 0,
        footnote: 0,
        terms,
        seen: Vec::new(),
    };
    let arena = Arena::new();
    let options = options();
    let root = parse_document(&arena, pass.lines.text(), &options);
    drop_doubles(root, &mut pass);
    if !terms.is_empty() {
        join_lines(root);
    }
    let mut html = String::new();
    let plugins = Plugins::default();
    // Writing to a String cannot fail, so the pass always comes back.
    let Ok(pass) = format_document_with_formatter(root, &options, &mut html, &plugins, write, pass) else {
        return Manuscript::default();
    };
    let mut found = pass.found;
    (found.body, found.notes) = holes::cut(&html);
    found.findings = found.findings.into_iter().map(|finding| finding.locate(source)).collect();
    found.findings.sort_by_key(|finding| finding.span);
    found
}

fn options() -> Options<'static> {
    let mut options = Options::default();
    options.extension.table = true;
    options.extension.footnotes = true;
    options.extension.tasklist = true;
    options.extension.description_lists = true;
    options.extension.strikethrough = true;
    options.parse.smart = true;
    options
}

type Step = Result<ChildRendering, Error>;

/// Writes one node; what the Markdown crate writes well enough is left to it.
fn write<'n>(out: &mut Context<Pass>, node: Node<'n>, entering: bool) -> Step {
    let at = node.data().sourcepos;
    match node.data().value {
        NodeValue::Document => {
            if !entering && out.user.footnote > 0 {
                out.write_str("</ol>\n</section>\n")?;
            }
        }
        NodeValue::CodeBlock(ref block) if entering => code(out, node, block, at)?,
        NodeValue::CodeBlock(_) => {}
        NodeValue::Heading(ref heading) => return head(out, node, heading.level, at, entering),
        NodeValue::HtmlBlock(ref html) if entering => {
            out.cr()?;
            out.write_str("<pre>")?;
            out.escape(html.literal.trim_end())?;
            out.write_str("</pre>\n")?;
            raw(out, at);
        }
        NodeValue::HtmlInline(ref html) if entering => {
            out.escape(html)?;
            raw(out, at);
        }
        NodeValue::HtmlBlock(_) | NodeValue::HtmlInline(_) => {}
        NodeValue::Link(ref link) => {
            if entering {
                let span = out.user.lines.span(at);
                let text = words(node);
                let (href, title) = (link.url.clone(), link.title.clone());
                out.user.seen.extend(href.strip_prefix(TERM).map(str::to_string));
                let number = take(out, LinkFound { href, text, title, picture: false, span });
                out.user.open.push(number);
                mark(out, number.map(Hole::Open))?;
            } else {
                let number = out.user.open.pop().flatten();
                mark(out, number.map(Hole::Close))?;
            }
        }
        NodeValue::Image(ref link) if entering => {
            let span = out.user.lines.span(at);
            let text = words(node);
            let (href, title) = (link.url.clone(), link.title.clone());
            let number = take(out, LinkFound { href, text: text.clone(), title, picture: true, span });
            match number {
                Some(_) => mark(out, number.map(Hole::Picture))?,
                None => out.escape(&text)?,
            }
            return Ok(ChildRendering::Skip);
        }
        NodeValue::Image(_) => {}
        NodeValue::Text(ref words) if entering && in_running_text(node) => text(out, words, at)?,
        NodeValue::LineBreak if entering => out.write_str("<br>\n")?,
        NodeValue::ThematicBreak if entering => {
            out.cr()?;
            out.write_str("<hr>\n")?;
        }
        NodeValue::LineBreak | NodeValue::ThematicBreak => {}
        NodeValue::Table(ref table) => {
            out.user.columns = table.alignments.clone();
            return format_node_default(out, node, entering);
        }
        NodeValue::TableRow(_) => {
            out.user.column = 0;
            return format_node_default(out, node, entering);
        }
        NodeValue::TableCell => cell(out, node, entering)?,
        NodeValue::TaskItem(ref item) => task(out, node, item.symbol.is_some(), entering)?,
        NodeValue::Paragraph => return paragraph(out, node, entering),
        NodeValue::FootnoteDefinition(ref note) => footnote(out, node, note.total_references, entering)?,
        NodeValue::FootnoteReference(ref note) if entering => {
            let call = call(note.ix, note.ref_num);
            write!(
                out,
                "<sup><a href=\"#note--{0}\" id=\"{call}\" role=\"doc-noteref\">{0}</a></sup>",
                note.ix
            )?;
        }
        NodeValue::FootnoteReference(_) => {}
        _ => return format_node_default(out, node, entering),
    }
    Ok(ChildRendering::HTML)
}

fn raw(out: &mut Context<Pass>, at: Sourcepos) {
    let finding =
        Finding::warning(Code::NotUsed, out.user.lines.span(at), "HTML is shown as written, not used")
            .why("a page is laid out by the theme; what stands in a text is text");
    out.user.found.findings.push(finding);
}

fn head(out: &mut Context<Pass>, node: Node<'_>, level: u8, at: Sourcepos, entering: bool) -> Step {
    let shown = level.clamp(2, 6);
    if entering {
        let span = out.user.lines.span(at);
        let text = words(node);
        let pass = &mut out.user;
        if level == 1 {
            let message = "the title stands in the front matter; start at ##";
            pass.found.findings.push(
                Finding::warning(Code::WrongShape, span, message)
                    .why("a page has one title, and the headings below it are counted from there")
                    .write(format!("## {text}")),
            );
        }
        let anchor = pass.anchors.take(&text);
        out.cr()?;
        write!(out, "<h{shown} id=\"{anchor}\">")?;
        out.user.found.headings.push(Heading { level: shown, text, anchor, span });
    } else {
        writeln!(out, "</h{shown}>")?;
    }
    Ok(ChildRendering::HTML)
}

/// A fenced block is kept apart if it is ours and stands where its bytes are exactly its text.
fn code(out: &mut Context<Pass>, node: Node<'_>, block: &NodeCodeBlock, at: Sourcepos) -> Result<(), Error> {
    let pass = &mut out.user;
    let (line, fence) = pass.lines.line(at.start.line);
    let kind = block.info.split_whitespace().next().unwrap_or("").to_string();
    let ours = block.fenced && pass.ours.contains(&kind);
    // From the first backtick of the line on: a block in a list or a quotation has other marks before it.
    let from = fence.find(char::from(block.fence_char)).unwrap_or(0);
    let opening = Span::new(line.start + from, line.end);
    let outermost = node.parent().is_some_and(|parent| matches!(parent.data().value, NodeValue::Document));
    if block.fenced && !block.closed {
        let close = char::from(block.fence_char).to_string().repeat(block.fence_length.max(3));
        let message = "the block opened here is not closed";
        pass.found.findings.push(
            Finding::error(Code::OpenBlock, opening, message)
                .why("everything below it is taken for part of the block")
                .write(close),
        );
    } else if ours && !(outermost && block.fence_offset == 0 && from == 0) {
        let message =
            format!("this `{kind}` block has to stand at the left edge, outside lists and quotations");
        pass.found.findings.push(
            Finding::error(Code::WrongShape, opening, message)
                .why("its lines are counted from the left edge, so that every finding inside it shows the right place")
                .write(format!("```{kind}")),
        );
    } else if ours {
        let info = fence.trim_start_matches(char::from(block.fence_char));
        let blank = info.len() - info.trim_start().len();
        let start = line.start + fence.len() - info.len() + blank;
        let info = Span::new(start, start + info.trim().len());
        let inside = Span::new(pass.lines.start(at.start.line + 1), pass.lines.start(at.end.line));
        let text = pass.lines.slice(inside).to_string();
        let parts = pass.ours.first() == Some(&kind);
        let block = Block { kind, info, text: Spanned::new(text, inside) };
        if !parts {
            pass.found.asides.push(block);
            return Ok(());
        }
        pass.found.blocks.push(block);
        out.cr()?;
        return Hole::Block.mark(out);
    }
    out.cr()?;
    out.write_str("<pre><code")?;
    if !kind.is_empty() {
        out.write_str(" class=\"language-")?;
        out.escape(&kind)?;
        out.write_str("\"")?;
    }
    out.write_str(">")?;
    out.escape(&block.literal)?;
    out.write_str("</code></pre>\n")
}

/// Alignment by class: the attribute for it is obsolete.
fn cell(out: &mut Context<Pass>, node: Node<'_>, entering: bool) -> Result<(), Error> {
    let head = node.parent().is_some_and(|row| matches!(row.data().value, NodeValue::TableRow(true)));
    // An empty corner names no column, so it is no heading.
    let head = head && node.first_child().is_some();
    if !entering {
        return out.write_str(if head { "</th>" } else { "</td>" });
    }
    let column = out.user.columns.get(out.user.column).copied();
    out.user.column += 1;
    out.cr()?;
    out.write_str(if head { "<th scope=\"col\"" } else { "<td" })?;
    out.write_str(match column {
        Some(TableAlignment::Right) => " class=\"num\">",
        Some(TableAlignment::Center) => " class=\"mid\">",
        _ => ">",
    })
}

fn checkbox(out: &mut Context<Pass>, done: bool, label: &str) -> Result<(), Error> {
    let done = if done { " checked" } else { "" };
    write!(out, "<input type=\"checkbox\"{done} disabled{label}>")
}

/// The words of a task stand in its label; a label may hold only one paragraph's words.
fn task(out: &mut Context<Pass>, node: Node<'_>, done: bool, entering: bool) -> Result<(), Error> {
    if !entering {
        return out.write_str("</li>\n");
    }
    out.cr()?;
    out.write_str("<li class=\"task\">")?;
    match node.first_child() {
        Some(child) if matches!(child.data().value, NodeValue::Paragraph) => Ok(()),
        _ => checkbox(out, done, &format!(" aria-label=\"{TO_DO}\"")),
    }
}

fn paragraph(out: &mut Context<Pass>, node: Node<'_>, entering: bool) -> Step {
    if let Some(caption) = alone(node) {
        if entering {
            out.cr()?;
            out.write_str("<figure>")?;
        } else {
            if !caption.is_empty() {
                out.write_str("<figcaption>")?;
                out.escape(&caption)?;
                out.write_str("</figcaption>")?;
            }
            out.write_str("</figure>\n")?;
        }
        return Ok(ChildRendering::HTML);
    }
    let parent = node.parent();
    let done = parent.and_then(|parent| match parent.data().value {
        NodeValue::TaskItem(ref item) if node.previous_sibling().is_none() => Some(item.symbol.is_some()),
        _ => None,
    });
    if let (Some(_), false) = (done, entering) {
        out.write_str("</label>")?;
    }
    if let (false, Some(parent), None) = (entering, parent, node.next_sibling())
        && let NodeValue::FootnoteDefinition(ref note) = parent.data().value
    {
        // Written here, the way back stands on the note's last line, not on one of its own.
        back(out, note.total_references, true)?;
        out.write_str("</p>\n")?;
        return Ok(ChildRendering::HTML);
    }
    let step = format_node_default(out, node, entering)?;
    if let (Some(done), true) = (done, entering) {
        out.write_str("<label>")?;
        checkbox(out, done, "")?;
        out.write_str(" ")?;
    }
    Ok(step)
}

/// The caption of a picture that is all of a paragraph; it may be empty.
fn alone(paragraph: Node<'_>) -> Option<String> {
    let only = paragraph.first_child().filter(|child| child.next_sibling().is_none())?;
    let outermost = paragraph.parent().is_some_and(|at| matches!(at.data().value, NodeValue::Document));
    match only.data().value {
        NodeValue::Image(ref link) if outermost => Some(link.title.clone()),
        _ => None,
    }
}
