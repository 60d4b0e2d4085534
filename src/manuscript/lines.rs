//! The Markdown crate's lines and columns turned into bytes of the whole file.

use crate::span::{Source, Span};
use comrak::nodes::Sourcepos;

/// Where each line of a body starts. Markdown ends a line at a lone carriage return too, which
/// [`Source`] does not, so the two counts are kept apart.
pub(super) struct Lines<'a> {
    source: &'a Source,
    body: Span,
    starts: Vec<usize>,
}

impl<'a> Lines<'a> {
    pub(super) fn new(source: &'a Source, body: Span) -> Lines<'a> {
        let body = Span::new(source.floor(body.start.min(body.end)), source.floor(body.end));
        let bytes = &source.text.as_bytes()[body.start..body.end];
        let mut starts = vec![body.start];
        for (at, &byte) in bytes.iter().enumerate() {
            let ends = byte == b'\n' || (byte == b'\r' && bytes.get(at + 1) != Some(&b'\n'));
            if ends {
                starts.push(body.start + at + 1);
            }
        }
        Lines { source, body, starts }
    }

    /// The Markdown itself.
    pub(super) fn text(&self) -> &'a str {
        &self.source.text[self.body.start..self.body.end]
    }

    /// The byte at which a line of the body (from 1) starts; the body's end past the last line.
    pub(super) fn start(&self, line: usize) -> usize {
        self.starts.get(line.saturating_sub(1)).copied().unwrap_or(self.body.end)
    }

    /// The bytes of a span, as they stand in the file.
    pub(super) fn slice(&self, span: Span) -> &'a str {
        self.source.text.get(span.start..span.end).unwrap_or("")
    }

    /// A line of the body with its place, without its line end.
    pub(super) fn line(&self, line: usize) -> (Span, &'a str) {
        let (start, end) = (self.start(line), self.start(line + 1));
        let text = self.source.text[start..end].trim_end_matches(['\n', '\r']);
        (Span::new(start, start + text.len()), text)
    }

    /// The bytes a node was written at.
    pub(super) fn span(&self, at: Sourcepos) -> Span {
        let start = self.byte(at.start.line, at.start.column.saturating_sub(1));
        // The end names the last byte, which may stand inside a character.
        let mut end = self.byte(at.end.line, 0).saturating_add(at.end.column).min(self.body.end);
        while !self.source.text.is_char_boundary(end) {
            end += 1;
        }
        Span::new(start, end.max(start))
    }

    fn byte(&self, line: usize, column: usize) -> usize {
        let start = self.start(line);
        self.source.floor((start + column).min(self.start(line + 1)))
    }
}
