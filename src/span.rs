//! Places in a text, and the text itself as it was read. Data only: nothing here touches the disk.

use std::ops::Range;

/// Bytes `start..end` of one file's text.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug, Default)]
pub struct Span {
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
}

impl Span {
    /// The bytes `start..end`.
    pub const fn new(start: usize, end: usize) -> Span {
        Span { start, end }
    }

    /// The same place in a text that has `by` more bytes in front.
    pub const fn shifted(self, by: usize) -> Span {
        Span { start: self.start + by, end: self.end + by }
    }

    /// The part of this span that `within` names, counted from this span's start.
    pub const fn part(self, within: Range<usize>) -> Span {
        Span { start: self.start + within.start, end: self.start + within.end }
    }
}

/// A value with the place it was written at.
#[derive(Clone, PartialEq, Debug)]
pub struct Spanned<T> {
    /// What was written.
    pub value: T,
    /// Where.
    pub span: Span,
}

impl<T> Spanned<T> {
    /// A value and its place.
    pub const fn new(value: T, span: Span) -> Spanned<T> {
        Spanned { value, span }
    }

    /// Another value at the same place.
    pub fn map<U>(self, turn: impl FnOnce(T) -> U) -> Spanned<U> {
        Spanned { value: turn(self.value), span: self.span }
    }

    /// The same place, the value borrowed.
    pub const fn as_ref(&self) -> Spanned<&T> {
        Spanned { value: &self.value, span: self.span }
    }
}

/// One text file: its path below the formulary's folder (with `/`), and what it says.
#[derive(Clone, Debug)]
pub struct Source {
    /// Path as findings print it, with forward slashes.
    pub path: String,
    /// The text, line ends as written.
    pub text: String,
    starts: Vec<usize>,
}

impl Source {
    /// A file's text under the path findings shall print.
    pub fn new(path: impl Into<String>, text: impl Into<String>) -> Source {
        let text = text.into();
        let starts = std::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1)).collect();
        Source { path: path.into(), text, starts }
    }

    /// Line and column of a byte, both from 1; the column counts characters.
    pub fn line_column(&self, at: usize) -> (usize, usize) {
        let at = self.floor(at);
        let line = self.starts.partition_point(|&start| start <= at);
        let start = self.starts[line - 1];
        (line, self.text[start..at].chars().count() + 1)
    }

    /// The byte at which line `line` (from 1) starts; the text's end for a line past the last.
    pub fn line_start(&self, line: usize) -> usize {
        self.starts.get(line.saturating_sub(1)).copied().unwrap_or(self.text.len())
    }

    /// The text of line `line` (from 1) without its line end.
    pub fn line(&self, line: usize) -> &str {
        let rest = &self.text[self.line_start(line)..];
        rest.split('\n').next().unwrap_or("").trim_end_matches('\r')
    }

    /// The nearest character boundary at or before `at`.
    pub fn floor(&self, at: usize) -> usize {
        let mut at = at.min(self.text.len());
        while !self.text.is_char_boundary(at) {
            at -= 1;
        }
        at
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_and_columns_count_characters_from_one() {
        let source = Source::new("a.md", "ein\r\n½ tsp\nend");
        assert_eq!(source.line_column(0), (1, 1));
        assert_eq!(source.line_column(source.text.find("tsp").expect("written above")), (2, 3));
        assert_eq!(source.line(1), "ein");
        assert_eq!(source.line(3), "end");
        assert_eq!(source.line_column(999), (3, 4));
    }
}
