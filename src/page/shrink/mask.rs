//! A template with every tag masked by a mark no HTML rule touches, and the way back.

use super::Spot;
use crate::span::Span;

/// A mark is `OPEN=number=CLOSE`. The equals sign keeps quotes around an attribute that holds one.
const OPEN: char = '\u{e000}';
const CLOSE: char = '\u{e001}';

/// Elements that begin and end a line of their own: blanks beside one are never seen.
const BLOCKS: &[&str] = &[
    "html",
    "head",
    "body",
    "meta",
    "link",
    "title",
    "base",
    "main",
    "header",
    "footer",
    "nav",
    "section",
    "article",
    "aside",
    "div",
    "p",
    "h1",
    "h2",
    "h3",
    "h4",
    "h5",
    "h6",
    "ul",
    "ol",
    "li",
    "dl",
    "dt",
    "dd",
    "table",
    "thead",
    "tbody",
    "tfoot",
    "tr",
    "th",
    "td",
    "caption",
    "colgroup",
    "col",
    "figure",
    "figcaption",
    "blockquote",
    "details",
    "summary",
    "form",
    "fieldset",
    "legend",
    "hr",
    "address",
    "dialog",
    "menu",
    "search",
    "option",
    "optgroup",
];

/// Elements whose content is text to their closing tag.
const RAW: &[&str] = &["script", "style", "textarea", "title"];

/// What stood last, or stands next, as far as blanks are concerned.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Beside {
    Block,
    Inline,
    /// `{% %}` or `{# #}`, which shows nothing itself.
    Silent,
    Words,
}

/// An opening or closing tag, in order.
#[derive(Clone, PartialEq, Eq)]
struct Element {
    name: String,
    closes: bool,
    at: usize,
}

/// A template ready for the minifying crate.
pub(super) struct Masked {
    /// The HTML with marks.
    pub(super) html: String,
    /// What each mark stands for: bytes of the template, or one blank that has to stay.
    marks: Vec<Option<Span>>,
    elements: Vec<Element>,
}

struct Scan<'a> {
    text: &'a str,
    at: usize,
    out: Masked,
    last: Beside,
    /// Inside how many elements that keep their blanks.
    kept: usize,
}

impl Masked {
    pub(super) fn new(text: &str) -> Result<Masked, Spot> {
        if let Some(at) = text.find([OPEN, CLOSE]) {
            return Err(Spot::new(
                text,
                Span::new(at, at + 3),
                "U+E000 and U+E001 have no meaning and may not be used",
            ));
        }
        let out = Masked { html: String::new(), marks: Vec::new(), elements: Vec::new() };
        let mut scan = Scan { text, at: 0, out, last: Beside::Block, kept: 0 };
        while scan.at < text.len() {
            scan.content()?;
        }
        Ok(scan.out)
    }

    /// The tags put back. Everything that could have been lost on the way is looked for.
    pub(super) fn restore(&self, text: &str, small: &str) -> Result<String, Spot> {
        if ["{{", "{%", "{#"].iter().any(|tag| small.contains(tag)) {
            let message = "a brace is written as &#123; or the like; write it in a tag: {{ \"{\" }}";
            return Err(Spot::new(text, Span::new(0, 0), message));
        }
        // The crate drops what is closed without having been opened: in another file, perhaps.
        let left =
            Masked::new(&small.replace([OPEN, CLOSE], "")).map(|masked| masked.elements).unwrap_or_default();
        let same = |(a, b): &(&Element, &Element)| a.name == b.name && a.closes == b.closes;
        let alike = self.elements.iter().zip(&left).take_while(same).count();
        if alike < self.elements.len().max(left.len()) {
            let at = self.elements.get(alike).map_or(0, |element| element.at);
            let message = "elements have to open and close in the same file, one within the other";
            return Err(Spot::new(text, Span::new(at, at + 1), message));
        }
        let mut seen = vec![0; self.marks.len()];
        let mut out = String::with_capacity(text.len());
        let mut runs = small.split(OPEN);
        out.push_str(runs.next().unwrap_or(""));
        for run in runs {
            let (mark, rest) = run.split_once(CLOSE).unwrap_or((run, ""));
            let number: Option<usize> = mark.trim_matches('=').parse().ok();
            if let Some(number) = number.filter(|&number| number < seen.len()) {
                seen[number] += 1;
                out.push_str(self.marks[number].map_or(" ", |span| &text[span.start..span.end]));
            }
            out.push_str(rest);
        }
        for (mark, seen) in self.marks.iter().zip(seen) {
            if let (Some(span), true) = (mark, seen != 1) {
                let message = "a template tag cannot stand here: this value or element keeps no text";
                return Err(Spot::new(text, *span, message));
            }
        }
        Ok(out)
    }
}

impl Scan<'_> {
    fn rest(&self) -> &str {
        &self.text[self.at..]
    }

    fn spot(&self, start: usize, end: usize, message: &str) -> Spot {
        Spot::new(self.text, Span::new(start, end), message)
    }

    fn mark(&mut self, what: Option<Span>) {
        let number = self.out.marks.len();
        self.out.marks.push(what);
        self.out.html.push_str(&format!("{OPEN}={number}={CLOSE}"));
    }

    /// One character as it is.
    fn copy(&mut self) -> Option<char> {
        let c = self.rest().chars().next()?;
        self.out.html.push(c);
        self.at += c.len_utf8();
        Some(c)
    }

    fn tag_next(&self) -> bool {
        ["{{", "{%", "{#"].iter().any(|tag| self.rest().starts_with(tag))
    }

    /// Where the template tag that starts here ends. Strings in it are passed over; `raw` ends at its own end.
    fn tag_end(&self) -> Result<usize, Spot> {
        let rest = self.rest();
        let open = || self.spot(self.at, self.at + 2, "this template tag is not closed");
        if rest.starts_with("{#") {
            return rest.find("#}").map(|end| self.at + end + 2).ok_or_else(open);
        }
        let close = if rest.starts_with("{{") { "}}" } else { "%}" };
        let mut quote = None;
        let mut end = None;
        for (at, c) in rest.char_indices().skip(2) {
            match quote {
                Some(open) if c == open => quote = None,
                Some(_) => {}
                None if matches!(c, '"' | '\'' | '`') => quote = Some(c),
                None if rest[at..].starts_with(close) => {
                    end = Some(at + 2);
                    break;
                }
                None => {}
            }
        }
        let end = end.ok_or_else(open)?;
        if keyword(&rest[..end]) == "raw" {
            let mut from = end;
            while let Some(next) = rest[from..].find("{%") {
                let start = from + next;
                let stop = start + rest[start..].find("%}").ok_or_else(open)? + 2;
                if keyword(&rest[start..stop]) == "endraw" {
                    return Ok(self.at + stop);
                }
                from = stop;
            }
            return Err(open());
        }
        Ok(self.at + end)
    }

    /// One thing of text between elements.
    fn content(&mut self) -> Result<(), Spot> {
        let rest = self.rest();
        if self.tag_next() {
            let silent = !rest.starts_with("{{") && keyword(rest) != "raw";
            self.masked_tag()?;
            self.last = if silent { Beside::Silent } else { Beside::Words };
        } else if rest.starts_with("<!--") {
            let end = rest.find("-->").map_or(self.text.len(), |end| self.at + end + 3);
            while self.at < end {
                if self.tag_next() {
                    let message = "a template tag in an HTML comment is worked out all the same; write {# #}";
                    return Err(self.spot(self.at, self.at + 2, message));
                }
                self.at += self.rest().chars().next().map_or(1, char::len_utf8);
            }
        } else if let Some((name, closes)) = element(rest) {
            self.element(name, closes)?;
        } else if rest.starts_with("<!") || rest.starts_with("<?") {
            let end = rest.find('>').map_or(self.text.len(), |end| self.at + end + 1);
            while self.at < end {
                self.copy();
            }
            self.last = Beside::Block;
        } else if rest.starts_with('<') && rest[1..].starts_with('{') {
            self.at += 1;
            return Err(self.spot(self.at, self.at + 2, "the name of an element has to be written out"));
        } else if self.kept == 0 && rest.starts_with(|c: char| c.is_ascii_whitespace()) {
            self.blanks();
        } else {
            self.copy();
            self.last = Beside::Words;
        }
        Ok(())
    }

    /// A run of blanks. Beside a tag that shows nothing the crate would keep one, between two
    /// elements in running text it would drop all: it cannot tell which of them is needed.
    fn blanks(&mut self) {
        let run = self.rest().len() - self.rest().trim_ascii_start().len();
        let (start, end) = (self.at, self.at + run);
        self.at = end;
        let next = if self.at == self.text.len() {
            Beside::Block
        } else if self.tag_next() {
            if self.rest().starts_with("{{") { Beside::Words } else { Beside::Silent }
        } else {
            match element(self.rest()) {
                Some((name, _)) if BLOCKS.contains(&name.as_str()) => Beside::Block,
                Some(_) => Beside::Inline,
                None => Beside::Words,
            }
        };
        match (self.last, next) {
            (Beside::Block, Beside::Silent) | (Beside::Silent, Beside::Block) => {}
            (Beside::Inline, Beside::Inline) => self.mark(None),
            _ => self.out.html.push_str(&self.text[start..end]),
        }
    }

    fn masked_tag(&mut self) -> Result<(), Spot> {
        let end = self.tag_end()?;
        self.mark(Some(Span::new(self.at, end)));
        self.at = end;
        Ok(())
    }

    /// An element's tag, and the text it holds if that is no HTML.
    fn element(&mut self, name: String, closes: bool) -> Result<(), Spot> {
        let start = self.at;
        for _ in 0..name.len() + 1 + usize::from(closes) {
            self.copy();
        }
        let mut value = false;
        loop {
            if self.tag_next() {
                let message =
                    "a template tag may stand in text or inside a quoted value, not between attributes";
                return Err(self.spot(self.at, self.at + 2, message));
            }
            match self.copy() {
                None | Some('>') => break,
                Some('=') => value = true,
                Some(quote @ ('"' | '\'')) if value => {
                    self.value(quote)?;
                    value = false;
                }
                Some(c) if c.is_ascii_whitespace() => {}
                Some(_) => value = false,
            }
        }
        self.last = if BLOCKS.contains(&name.as_str()) { Beside::Block } else { Beside::Inline };
        if name == "pre" || name == "code" {
            self.kept = if closes { self.kept.saturating_sub(1) } else { self.kept + 1 };
        }
        if RAW.contains(&name.as_str()) && !closes {
            while self.at < self.text.len() && element(self.rest()) != Some((name.clone(), true)) {
                if self.tag_next() {
                    self.masked_tag()?;
                } else {
                    self.copy();
                }
            }
        }
        self.out.elements.push(Element { name, closes, at: start });
        Ok(())
    }

    /// A quoted value. The crate sorts attributes, so what opens in one has to close in it.
    fn value(&mut self, quote: char) -> Result<(), Spot> {
        let start = self.at;
        let mut open = 0;
        loop {
            if self.tag_next() {
                let word = if self.rest().starts_with("{%") { keyword(self.rest()) } else { "" };
                open += i32::from(["if", "for", "filter", "block"].contains(&word))
                    - i32::from(word.starts_with("end"));
                self.masked_tag()?;
                continue;
            }
            match self.copy() {
                None => break,
                Some(c) if c == quote => break,
                Some(_) => {}
            }
        }
        if open != 0 {
            return Err(self.spot(
                start,
                self.at,
                "what a template tag opens in a value has to be closed in that value",
            ));
        }
        Ok(())
    }
}

/// The first word of a template tag.
fn keyword(tag: &str) -> &str {
    let inner = tag.get(2..).unwrap_or("").trim_start_matches('-').trim_start();
    inner.split(|c: char| !c.is_ascii_alphanumeric() && c != '_').next().unwrap_or("")
}

/// The name of the element whose tag starts here, in lower case, and whether it is the closing one.
fn element(rest: &str) -> Option<(String, bool)> {
    let inner = rest.strip_prefix('<')?;
    let (inner, closes) = inner.strip_prefix('/').map_or((inner, false), |inner| (inner, true));
    if !inner.starts_with(|c: char| c.is_ascii_alphabetic()) {
        return None;
    }
    let end =
        inner.find(|c: char| !(c.is_ascii_alphanumeric() || c == '-' || c == ':')).unwrap_or(inner.len());
    Some((inner[..end].to_ascii_lowercase(), closes))
}
