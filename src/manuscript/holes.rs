//! HTML with holes where our blocks and the links' targets come in.
//!
//! While a body is written, a hole is a NUL, a letter, a number and a NUL. No author can forge one:
//! a NUL in Markdown or in an entity becomes U+FFFD before it is ever written.

use super::{LinkFound, LinkTo};
use comrak::html::{escape, escape_href};
use std::fmt::Write;

/// A run of HTML, or something to be filled in.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(super) enum Hole {
    /// HTML as it is.
    Html(String),
    /// One of our blocks stood here.
    Block,
    /// The link of that number opens.
    Open(usize),
    /// It closes.
    Close(usize),
    /// The picture of that number.
    Picture(usize),
    /// The footnotes begin.
    Notes,
}

impl Hole {
    /// Marks the hole in a text being written.
    pub(super) fn mark(&self, out: &mut dyn Write) -> std::fmt::Result {
        match self {
            Hole::Html(html) => out.write_str(html),
            Hole::Block => out.write_str("\0b0\0"),
            Hole::Open(link) => write!(out, "\0o{link}\0"),
            Hole::Close(link) => write!(out, "\0c{link}\0"),
            Hole::Picture(link) => write!(out, "\0p{link}\0"),
            Hole::Notes => out.write_str("\0n0\0"),
        }
    }

    fn read(mark: &str) -> Option<Hole> {
        let link = mark.get(1..)?.parse().ok()?;
        match mark.as_bytes()[0] {
            b'b' => Some(Hole::Block),
            b'o' => Some(Hole::Open(link)),
            b'c' => Some(Hole::Close(link)),
            b'p' => Some(Hole::Picture(link)),
            b'n' => Some(Hole::Notes),
            _ => None,
        }
    }
}

/// A written text cut at its marks: the body, and the footnotes.
pub(super) fn cut(html: &str) -> (Vec<Hole>, Vec<Hole>) {
    let (mut body, mut notes) = (Vec::new(), Vec::new());
    let mut below = false;
    for (number, run) in html.split('\0').enumerate() {
        let hole = if number % 2 == 0 { Some(Hole::Html(run.to_string())) } else { Hole::read(run) };
        match hole {
            Some(Hole::Notes) => below = true,
            Some(Hole::Html(run)) if run.is_empty() => {}
            Some(hole) if below => notes.push(hole),
            Some(hole) => body.push(hole),
            None => {}
        }
    }
    (body, notes)
}

/// The HTML before, between and after our blocks.
pub(super) fn fill(holes: &[Hole], links: &[LinkFound], targets: &[LinkTo]) -> Vec<String> {
    let mut pieces = vec![String::new()];
    // The link whose own words are being left out, because others stand in their place.
    let mut silent = None;
    for hole in holes {
        let Some(out) = pieces.last_mut() else { break };
        match hole {
            Hole::Block => pieces.push(String::new()),
            Hole::Close(link) => {
                silent = silent.filter(|silent| silent != link);
                if matches!(targets.get(*link), Some(LinkTo::Address(_) | LinkTo::AddressAndWords(..))) {
                    out.push_str("</a>");
                }
            }
            _ if silent.is_some() => {}
            Hole::Html(html) => out.push_str(html),
            Hole::Open(number) => {
                if let (Some(link), Some(target)) = (links.get(*number), targets.get(*number)) {
                    open(out, link, target);
                    if matches!(target, LinkTo::Words(_) | LinkTo::AddressAndWords(..)) {
                        silent = Some(*number);
                    }
                }
            }
            Hole::Picture(number) => {
                if let (Some(link), Some(target)) = (links.get(*number), targets.get(*number)) {
                    picture(out, link, target);
                }
            }
            Hole::Notes => {}
        }
    }
    pieces
}

fn open(out: &mut String, link: &LinkFound, target: &LinkTo) {
    let (address, words) = match target {
        LinkTo::Address(address) => (Some(address), None),
        LinkTo::Words(words) => (None, Some(words)),
        LinkTo::AddressAndWords(address, words) => (Some(address), Some(words)),
        LinkTo::Broken | LinkTo::Picture { .. } => (None, None),
    };
    if let Some(address) = address {
        attribute(out, "<a href=\"", address, true);
        title(out, link);
        out.push('>');
    }
    if let Some(words) = words {
        attribute(out, "", words, false);
    }
}

fn picture(out: &mut String, link: &LinkFound, target: &LinkTo) {
    let LinkTo::Picture { address, width, height } = target else {
        return attribute(out, "", &link.text, false);
    };
    attribute(out, "<img src=\"", address, true);
    attribute(out, " alt=\"", &link.text, false);
    // Its size is known before it is fetched, and it is fetched when it is near: nothing on the page jumps.
    let _ = write!(out, "\" width=\"{width}\" height=\"{height}\" loading=\"lazy\" decoding=\"async\">");
}

fn title(out: &mut String, link: &LinkFound) {
    if !link.title.is_empty() {
        attribute(out, " title=\"", &link.title, false);
        out.push('"');
    }
}

/// `before` as it is, then the value escaped; an address is closed by its quote here too.
fn attribute(out: &mut String, before: &str, value: &str, address: bool) {
    out.push_str(before);
    // Writing to a String cannot fail.
    if address {
        let _ = escape_href(out, value, false);
        out.push('"');
    } else {
        let _ = escape(out, value);
    }
}
