//! Building the tree: the events of the YAML crate, each with its bytes, become nodes of our own.
//!
//! The crate's typed readers would turn `no` into a truth value and `1:4` into a number of another
//! base; its event stream hands over every scalar as text and every place as bytes, so this file
//! reads the events. No other file names the crate.

use std::collections::BTreeSet;

use serde_yaml::granit_parser::{self as events, ErrorKind, Event, ScalarStyle, ScanError, StructureStyle};

use super::fault::{self, Fault, Surroundings};
use super::{Node, Scalar, Value};
use crate::diagnostic::{Code, Finding};
use crate::span::{Span, Spanned};

/// Levels of nesting; a recipe needs four, a slip of the keyboard makes hundreds.
pub(super) const DEPTH: usize = 32;

/// Largest block read, in bytes; beyond any recipe, and small enough to read at once.
pub(super) const SIZE: usize = 1 << 20;

/// Reads one block of YAML; every span counts `offset` bytes more than the block's own text, for a
/// block that stands inside a larger file.
///
/// # Errors
/// Every finding up to the first place past which the text cannot be followed.
pub fn read(text: &str, offset: usize) -> Result<Node, Vec<Finding>> {
    let mut reading = Reading::new(text);
    if text.len() > SIZE {
        reading.findings.push(fault::too_large(text));
    } else if let Some(finding) = fault::unseen_character(text) {
        reading.findings.push(finding);
    } else {
        reading.run();
    }
    let Reading { root, findings, .. } = reading;
    if findings.is_empty() {
        let mut node = root.unwrap_or(Node { value: Value::Nothing, span: Span::new(0, 0) });
        node.shift(offset);
        return Ok(node);
    }
    Err(findings
        .into_iter()
        .map(|finding| Finding { span: finding.span.map(|span| span.shifted(offset)), ..finding })
        .collect())
}

/// A list or map whose end has not come yet.
struct Open {
    start: usize,
    /// Where the last thing inside ended: block lists and maps end there, not at the next line.
    end: usize,
    bracket: bool,
    inside: Inside,
}

enum Inside {
    List(Vec<Node>),
    Map { entries: Vec<(Spanned<String>, Node)>, key: Option<Spanned<String>>, seen: BTreeSet<String> },
}

struct Reading<'a> {
    text: &'a str,
    open: Vec<Open>,
    root: Option<Node>,
    last_plain: Option<Span>,
    findings: Vec<Finding>,
}

impl<'a> Reading<'a> {
    fn new(text: &'a str) -> Reading<'a> {
        Reading { text, open: Vec::new(), root: None, last_plain: None, findings: Vec::new() }
    }

    fn run(&mut self) {
        // An alias without its anchor is most often a value that wants quotes: it is kept as a
        // node, so that reading goes on and the other findings of the block come with it.
        let options = events::options! {
            emit_unresolved_aliases: true,
            emit_anchor_events: true,
            emit_comments: false,
            disallow_directives: true,
            flow_nesting_limit: DEPTH,
            block_nesting_limit: DEPTH,
        };
        let mut documents = 0;
        for event in events::Parser::new_from_str_with_options(self.text, options) {
            let (event, place) = match event {
                Ok(read) => read,
                Err(error) => return self.broken(&error),
            };
            let tag = place.tag_span().map(|tag| self.span(&tag));
            let span = self.span(&place);
            if matches!(event, Event::DocumentStart(..)) {
                documents += 1;
                if documents > 1 {
                    return self.findings.push(fault::second_document(span));
                }
            }
            if let Some(tag) = tag {
                self.findings.push(fault::feature(self.text, tag, "a tag", '!', self.in_brackets()));
            }
            self.take(event, span);
            if self.open.len() > DEPTH {
                return self.findings.push(fault::too_deep(span.start));
            }
        }
    }

    fn take(&mut self, event: Event<'_>, span: Span) {
        match event {
            Event::Scalar(text, style, ..) => self.scalar(&text, style, span),
            Event::SequenceStart(style, ..) => self.begin(Inside::List(Vec::new()), style, span),
            Event::MappingStart(style, ..) => {
                self.begin(
                    Inside::Map { entries: Vec::new(), key: None, seen: BTreeSet::new() },
                    style,
                    span,
                );
            }
            Event::SequenceEnd | Event::MappingEnd => self.end(span),
            Event::Anchor(..) => {
                self.findings.push(fault::feature(self.text, span, "an anchor", '&', self.in_brackets()));
            }
            Event::Alias(_) | Event::UnresolvedAlias(_) => {
                self.findings.push(fault::feature(self.text, span, "an alias", '*', self.in_brackets()));
                self.place(Value::Nothing, span, false);
            }
            _ => {}
        }
    }

    fn scalar(&mut self, text: &str, style: ScalarStyle, span: Span) {
        let plain = style == ScalarStyle::Plain;
        // The crate reports a value that is not there as an empty place with a `~` of its own.
        if plain && span.start == span.end {
            return self.place(Value::Nothing, span, true);
        }
        if plain {
            self.last_plain = Some(span);
        }
        let block = matches!(style, ScalarStyle::Literal | ScalarStyle::Folded);
        let (text, span) = match block {
            // The last line end belongs to the block's layout, not to what the author wrote.
            true => (text.trim_end_matches('\n'), self.without_blanks(span)),
            false => (text, span),
        };
        self.place(Value::Scalar(Scalar { text: text.to_string(), quoted: !plain }), span, plain);
    }

    fn begin(&mut self, inside: Inside, style: StructureStyle, span: Span) {
        if self.key_is_due() {
            self.findings.push(fault::complex_key(span));
        }
        let start = match inside {
            Inside::List(_) if !self.open.is_empty() => self.dash(span.start),
            _ => span.start,
        };
        // A lone pair in a list, `[a: b]`, counts as braces to the crate but has none.
        let bracket = style == StructureStyle::Flow && span.start < span.end;
        self.open.push(Open { start, end: span.end, bracket, inside });
    }

    fn end(&mut self, span: Span) {
        let Some(open) = self.open.pop() else { return };
        let end = if open.bracket { span.end } else { open.end };
        let value = match open.inside {
            Inside::List(list) => Value::List(list),
            Inside::Map { entries, .. } => Value::Map(entries),
        };
        self.place(value, Span::new(open.start, end.max(open.start)), false);
    }

    fn key_is_due(&self) -> bool {
        matches!(self.open.last(), Some(Open { inside: Inside::Map { key: None, .. }, .. }))
    }

    /// The dash of a list that stands no further in than its key: the crate places such a list at
    /// its first entry. A list straight inside a list has its dash behind another's.
    fn dash(&self, start: usize) -> usize {
        let within_map = matches!(self.open.last(), Some(Open { inside: Inside::Map { .. }, .. }));
        let before = self.text.get(..start).unwrap_or("").trim_end_matches([' ', '\t']);
        if within_map && before.ends_with('-') { before.len() - 1 } else { start }
    }

    fn in_brackets(&self) -> bool {
        self.open.iter().any(|open| open.bracket)
    }

    /// Puts a finished value where it belongs: into the list, as key, as value, or as the whole.
    fn place(&mut self, value: Value, span: Span, plain: bool) {
        if self.key_is_due() {
            return self.key(value, span, plain);
        }
        let node = Node { value, span };
        let Some(open) = self.open.last_mut() else {
            self.root = Some(node);
            return;
        };
        open.end = open.end.max(span.end);
        match &mut open.inside {
            Inside::List(list) => list.push(node),
            Inside::Map { entries, key, .. } => entries.extend(key.take().map(|key| (key, node))),
        }
    }

    fn key(&mut self, value: Value, span: Span, plain: bool) {
        let written = self.text.get(span.start..span.end).unwrap_or("");
        let (name, scalar) = match value {
            Value::Scalar(scalar) => (scalar.text, true),
            Value::Nothing if plain => {
                self.findings.push(fault::empty_key(span));
                (String::new(), false)
            }
            // Already found fault with; the source text keeps the entry apart from the others.
            _ => (written.to_string(), false),
        };
        if scalar && fault::asks_for_complex_key(self.text, span.start) {
            self.findings.push(fault::complex_key(span));
        } else if plain && name == "<<" {
            self.findings.push(fault::merge_key(span));
        } else if scalar && name.starts_with(char::is_whitespace) {
            self.findings.push(fault::odd_blank(self.text, span));
        }
        let Some(Open { end, inside: Inside::Map { key, seen, .. }, .. }) = self.open.last_mut() else {
            return;
        };
        *end = (*end).max(span.end);
        if scalar && name != "<<" && !seen.insert(name.clone()) {
            self.findings.push(fault::twice(&name, span));
        }
        *key = Some(Spanned::new(name, span));
    }

    fn without_blanks(&self, span: Span) -> Span {
        let written = self.text.get(span.start..span.end).unwrap_or("");
        Span::new(span.start, span.start + written.trim_end().len())
    }

    /// The crate's place as bytes of the text, kept inside it whatever the crate says.
    fn span(&self, place: &events::Span) -> Span {
        let end = self.at(place.end.byte_offset());
        Span::new(self.at(place.start.byte_offset()).min(end), end)
    }

    fn at(&self, byte: Option<usize>) -> usize {
        let mut at = byte.unwrap_or(self.text.len()).min(self.text.len());
        while !self.text.is_char_boundary(at) {
            at -= 1;
        }
        at
    }

    fn broken(&mut self, error: &ScanError) {
        let bracket = self.open.iter().rev().find(|open| open.bracket).map(|open| open.start);
        let at = self.at(error.marker().byte_offset());
        // A bracket that may yet turn out to begin a key is not told before its line is through.
        let bracket = bracket.or_else(|| fault::open_on_line(self.text, at));
        let around = Surroundings { text: self.text, last_plain: self.last_plain, bracket };
        // A sign that wants quotes often breaks the rest of its line, too: one fault, one finding.
        let told = self.findings.last().filter(|last| last.code == Code::NotUsed).and_then(|last| last.span);
        let same_line =
            |span: Span| self.text.get(span.end..at).is_some_and(|between| !between.contains('\n'));
        if told.is_some_and(same_line) {
            return;
        }
        // A blank that sets nothing in has put its line elsewhere: what follows from that is no other fault.
        if self.findings.last().is_some_and(|last| last.code == Code::BadYaml) {
            return;
        }
        self.findings.push(around.word(fault_of(error.kind()), at));
    }
}

/// The crate's many kinds of error as the few a writer tells apart.
fn fault_of(kind: &ErrorKind) -> Fault {
    use ErrorKind as Kind;
    match kind {
        Kind::TabNotAllowed
        | Kind::TabInBlockIndentation
        | Kind::TabAtBlockScalarStart
        | Kind::TabInIndentation
        | Kind::TabInPlainScalar => Fault::Tab,
        Kind::MappingValueNotAllowed | Kind::InvalidColonPlacement => Fault::Colon,
        Kind::ExpectedFlowMappingSeparator | Kind::ExpectedFlowSequenceSeparator => Fault::Comma,
        Kind::SimpleKeyExpected | Kind::InvalidSimpleKey => Fault::NoColon,
        Kind::UnclosedQuotedScalar | Kind::DocumentIndicatorInQuotedScalar => Fault::OpenQuote,
        Kind::InvalidTrailingSingleQuotedScalar | Kind::InvalidTrailingDoubleQuotedScalar => {
            Fault::AfterQuote
        }
        Kind::UnknownQuotedScalarEscape
        | Kind::InvalidQuotedScalarHexEscape
        | Kind::InvalidLowSurrogateHexEscape
        | Kind::InvalidLowSurrogate
        | Kind::MissingLowSurrogate
        | Kind::UnpairedLowSurrogate
        | Kind::InvalidUnicodeEscape => Fault::Backslash,
        Kind::UnclosedFlowCollection { .. }
        | Kind::UnexpectedEofFlowSequence
        | Kind::UnexpectedEofFlowMapping
        | Kind::UnexpectedEofImplicitFlowMapping => Fault::OpenBracket,
        Kind::MismatchedFlowCollectionEnd { .. } => Fault::WrongBracket,
        Kind::MisplacedFlowCollectionEnd => Fault::LoneBracket,
        Kind::UnexpectedCharacter { .. }
        | Kind::InvalidBlockScalarHeader
        | Kind::ZeroBlockScalarIndent
        | Kind::PlainScalarStartsWithDashFlowIndicator
        | Kind::MappingKeyNotAllowed => Fault::Character,
        Kind::InvalidMappingValueWhitespace | Kind::FlowMappingValueAdjacentCollection => Fault::NoBlank,
        Kind::CommentNotSeparated | Kind::CommentInterceptedScalar => Fault::Comment,
        Kind::BlockSequenceEntryNotAllowed | Kind::BlockEntryInFlowCollection => Fault::Dash,
        Kind::ExpectedBlockMappingKey
        | Kind::ExpectedBlockSequenceEntry
        | Kind::InvalidIndentation
        | Kind::InvalidBlockScalarIndent
        | Kind::InvalidQuotedScalarIndent
        | Kind::InvalidFlowScalarIndent => Fault::Indentation,
        Kind::RecursionLimitExceeded => Fault::Deep,
        Kind::MissingAnchorOrAliasName => Fault::Anchor,
        Kind::ExpectedTagBang
        | Kind::InvalidGlobalTagCharacter
        | Kind::UndeclaredTagHandle
        | Kind::InvalidTagTerminator
        | Kind::MissingTagUri
        | Kind::UnclosedVerbatimTag
        | Kind::InvalidTagEscape
        | Kind::InvalidTagUtf8LeadingByte
        | Kind::InvalidTagUtf8TrailingByte
        | Kind::InvalidTagUtf8 => Fault::Tag,
        Kind::DirectiveDisallowed => Fault::Directive,
        _ => Fault::Other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_kind_without_words_of_its_own_still_has_a_finding() {
        let around = Surroundings { text: "a: 1\n", last_plain: None, bracket: None };
        let finding = around.word(fault_of(&ErrorKind::UnexpectedEof), 99);
        assert_eq!((finding.code, finding.span), (Code::BadYaml, Some(Span::new(4, 4))));
    }
}
