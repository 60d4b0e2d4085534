//! What is wrong with a block, in words for a teacher who never learnt YAML.
//!
//! A reader of YAML notices a fault later than the writer made it: an unclosed brace shows up at the
//! colon of the next line. So the words are chosen from the kind of fault and what stands around it.

use crate::diagnostic::{Code, Finding};
use crate::span::Span;

/// The faults of writing that are told apart.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Fault {
    Tab,
    Colon,
    Comma,
    NoColon,
    OpenQuote,
    AfterQuote,
    Backslash,
    OpenBracket,
    WrongBracket,
    LoneBracket,
    Character,
    NoBlank,
    Comment,
    Dash,
    Indentation,
    Deep,
    Anchor,
    Tag,
    Directive,
    Other,
}

/// What was read before the fault.
pub(super) struct Surroundings<'a> {
    pub(super) text: &'a str,
    /// The last value without quotes, which may run on over line ends.
    pub(super) last_plain: Option<Span>,
    /// The innermost bracket or brace still open.
    pub(super) bracket: Option<usize>,
}

const SWALLOWS: &str = "until it is closed, everything below is read as part of this value";

const INDENTED: &str = "entries that belong together start under one another; what belongs to a key stands two \
                        blanks further in";

const LISTED: &str = "the entries of a list stand on lines of their own under their key, each after a dash and a \
                      blank";

impl Surroundings<'_> {
    /// The finding for a fault that showed itself at byte `at`.
    pub(super) fn word(&self, fault: Fault, at: usize) -> Finding {
        let text = self.text;
        let at = at.min(text.trim_end().len());
        let rest = rest_of_line(text, at);
        if let Some(blank) = odd_indentation(text, at) {
            return odd_blank(text, blank);
        }
        match fault {
            Fault::Tab => tab(text, at),
            Fault::Colon | Fault::Comma if text[at..].starts_with(':') => self.colon(at),
            Fault::Colon | Fault::Comma => bad(rest, "a comma or a closing bracket is missing before this"),
            Fault::NoColon => self.no_colon(at),
            Fault::OpenQuote => bad(rest, "this quote is never closed").why(SWALLOWS),
            Fault::AfterQuote => after_quote(text, at, self.bracket.is_some()),
            Fault::Backslash => backslash(text, at),
            Fault::OpenBracket => open_bracket(text, at),
            Fault::WrongBracket => bad(rest, "this opens with one kind of bracket and closes with another")
                .why("[ ] hold a list, { } hold keys and values"),
            Fault::LoneBracket => bad(one(text, at), "this bracket closes nothing that was opened"),
            Fault::Character => {
                self.in_quotes(at, "a value cannot begin with this character unless it stands in quotes")
            }
            Fault::NoBlank => bad(rest, "a blank is missing behind a colon here")
                .why("a colon makes a key only with a blank behind it"),
            Fault::Comment => bad(rest, "a comment cannot stand here").why(
                "a # begins one behind a blank and after a whole value; a value that holds # wants quotes",
            ),
            Fault::Dash => bad(rest, "a list cannot begin here").why(LISTED),
            Fault::Indentation => {
                bad(whole_line(text, at), "this line does not line up with the entries above it")
                    .why(INDENTED)
            }
            Fault::Deep => too_deep(at),
            Fault::Anchor => {
                let sign = first(text, at);
                feature(text, one(text, at), "an anchor or an alias", sign, self.bracket.is_some())
            }
            Fault::Tag => feature(text, one(text, at), "a tag", '!', self.bracket.is_some()),
            Fault::Directive => {
                Finding::error(Code::NotUsed, rest, "a line that begins with % is an order to YAML")
                    .why("a block of a formulary holds entries only")
            }
            Fault::Other => bad(rest, "from here on the block cannot be read")
                .why("each line wants `key: value` or `- value`; a value with signs of its own wants quotes"),
        }
    }

    /// A colon where no key can be: in a value, after a missing comma, or one line too late.
    fn colon(&self, at: usize) -> Finding {
        let text = self.text;
        let value = self.last_plain.filter(|plain| {
            plain.start <= at && text[plain.start..at].trim_end().len() + plain.start <= plain.end
        });
        let start = value.map_or(line_start(text, at), |plain| plain.start);
        let (upper, lower) = (line_start(text, start), line_start(text, at));
        let key = Span::new(lower + indent(text, lower), at);
        if let Some(open) = self.bracket {
            if line_start(text, open) < lower && indent(text, lower) <= indent(text, line_start(text, open)) {
                return open_bracket(text, open);
            }
            if upper < lower {
                return bad(key, "a comma is missing at the end of the line above");
            }
            return self
                .in_quotes(start, "a second colon stands in this entry")
                .why("either a comma is missing, or the value wants quotes");
        }
        if upper == lower {
            return self
                .in_quotes(start, "a colon with a blank behind it stands inside a value")
                .why("it would start a new key; in quotes it is plain text");
        }
        let before = text[upper..start].trim();
        if !before.is_empty() && before != "-" {
            return bad(key, "this line is set further in than the one above, which already has its value")
                .why(INDENTED);
        }
        self.no_colon(start)
    }

    fn no_colon(&self, at: usize) -> Finding {
        let line = line_start(self.text, at);
        let span = rest_of_line(self.text, at.max(line + indent(self.text, line)));
        let written = &self.text[span.start..span.end];
        let finding = bad(span, "this line has no key with a colon and a blank behind it");
        let parted = written.split_once(':').or_else(|| written.split_once(char::is_whitespace));
        match parted {
            Some((key, value)) if !key.is_empty() && !value.starts_with(' ') => {
                finding.write(format!("{}: {}", key.trim(), value.trim()))
            }
            _ => finding,
        }
    }

    fn in_quotes(&self, at: usize, message: &str) -> Finding {
        let span = value_at(self.text, at, self.bracket.is_some());
        bad(span, message).write(quoted(&self.text[span.start..span.end]))
    }
}

fn bad(span: Span, message: &str) -> Finding {
    Finding::error(Code::BadYaml, span, message)
}

fn open_bracket(text: &str, at: usize) -> Finding {
    let close = if first(text, at) == '{' { '}' } else { ']' };
    bad(one(text, at), &format!("this bracket is never closed; its `{close}` is missing")).why(SWALLOWS)
}

/// Marks the tab itself: the fault may show itself at the end of the line before.
fn tab(text: &str, at: usize) -> Finding {
    let line = line_start(text, at);
    let next = at + text[at..].find('\n').map_or(0, |end| end + 1);
    let led = |line: usize| text[line..line + indent(text, line)].find('\t').map(|tab| line + tab);
    bad(one(text, led(line).or_else(|| led(next)).unwrap_or(at)), "a tab cannot set this line in")
        .why("tabs have no fixed width; two plain blanks for each step inwards show what belongs together")
}

fn backslash(text: &str, at: usize) -> Finding {
    let span = rest_of_line(text, at);
    let finding = bad(span, "between double quotes a backslash has a meaning of its own")
        .why("between single quotes it is a plain character");
    let inside = text[span.start..span.end].strip_prefix('"').and_then(|rest| rest.strip_suffix('"'));
    match inside.filter(|inside| !inside.contains('"')) {
        Some(inside) => finding.write(quoted(inside)),
        None => finding,
    }
}

fn after_quote(text: &str, at: usize, bracketed: bool) -> Finding {
    let line = line_start(text, at);
    let before = text[line..at].trim_end();
    let quote = before.chars().next_back().unwrap_or('"');
    let end = line + before.len();
    if before.matches(quote).count() % 2 == 1 {
        let closing = Span::new(end - quote.len_utf8(), end);
        return bad(closing, "a quote that was opened in a line above is closed only here").why(SWALLOWS);
    }
    let finding = bad(value_at(text, at, bracketed), "something follows the closing quote");
    if bracketed {
        return finding.why("either a comma is missing, or the quotes do not hold the whole value");
    }
    let finding = finding.why("quotes hold a whole value, not a part of it");
    let opening = [": ", "- "].iter().find_map(|sign| before.rfind(&format!("{sign}{quote}")));
    match opening.map(|opening| value_at(text, line + opening + 2, false)) {
        Some(value) => finding.write(quoted(&text[value.start..value.end])),
        None => finding,
    }
}

/// A feature of YAML that a formulary has no use for; the sign that calls it may be meant as text.
pub(super) fn feature(text: &str, span: Span, name: &str, sign: char, bracketed: bool) -> Finding {
    let value = value_at(text, span.start, bracketed);
    let message = format!("a value that begins with {sign} is {name} to YAML; Stillroom does not use those");
    let finding = Finding::error(Code::NotUsed, span, message);
    // An anchor or tag alone on its line belongs to the entries below it: no text to quote.
    if value.end <= span.end && sign != '*' {
        return finding.why("every value is written where it stands, and its kind is known from its key");
    }
    finding
        .why("every value is written where it stands; in quotes the sign is plain text")
        .write(quoted(&text[value.start..value.end]))
}

/// A second document in one block.
pub(super) fn second_document(span: Span) -> Finding {
    Finding::error(
        Code::NotUsed,
        span,
        "a line of --- begins something new here; a block holds only one thing",
    )
    .why("a recipe ends where its block ends; leave the line out")
}

/// `<<`, which would pull another map's entries in.
pub(super) fn merge_key(span: Span) -> Finding {
    Finding::error(Code::NotUsed, span, "`<<` pulls entries in from elsewhere; Stillroom does not use it")
        .why("a recipe shows all its entries where they stand")
}

/// A list, a map or a `?` line as a key.
pub(super) fn complex_key(span: Span) -> Finding {
    Finding::error(Code::NotUsed, span, "a key is one plain word or phrase; this is more")
        .why("a key is looked up by its name, and a list or a line after ? has none")
}

/// Whether `?` stands before the key, which is YAML's way of asking for any value as a key.
pub(super) fn asks_for_complex_key(text: &str, key: usize) -> bool {
    let before = &text[line_start(text, key)..key];
    let bare = before.trim_end_matches([' ', '\t']);
    let marker = bare.strip_suffix('?').map(str::trim_end);
    bare.len() < before.len()
        && marker.is_some_and(|before| before.is_empty() || before.ends_with(['-', '{', '[', ',']))
}

/// A colon with nothing before it.
pub(super) fn empty_key(span: Span) -> Finding {
    bad(span, "a key is missing before this colon").why("what a value is for is known from the key before it")
}

/// A key that already stands in the same map.
pub(super) fn twice(key: &str, span: Span) -> Finding {
    Finding::error(Code::TwiceWritten, span, format!("`{key}` is already written above"))
        .why("only one of the two can count, and nothing says which")
}

/// A block beyond the size that is read.
pub(super) fn too_large(text: &str) -> Finding {
    let message = format!("this block is longer than {} letters", super::read::SIZE);
    bad(rest_of_line(text, 0), &message)
        .why("it is longer than a thick book; a quote or a fence may be missing")
}

/// Lists and maps nested beyond what is read.
pub(super) fn too_deep(at: usize) -> Finding {
    bad(Span::new(at, at), &format!("lists and keys are nested more than {} deep here", super::read::DEPTH))
        .why("a recipe needs four; too many brackets may be opened")
}

/// A control character, which no editor shows and no page can print.
pub(super) fn unseen_character(text: &str) -> Option<Finding> {
    let unseen = |c: char| c.is_control() && !matches!(c, '\t' | '\n' | '\r' | '\u{85}');
    let (at, _) = text.char_indices().find(|&(_, c)| unseen(c))?;
    Some(
        bad(one(text, at), "a character that cannot be seen stands here")
            .why("it is part of no word; delete it and type the place anew"),
    )
}

/// A key or line that begins with a blank of another kind than the space bar makes.
pub(super) fn odd_blank(text: &str, span: Span) -> Finding {
    bad(one(text, span.start), "this blank is not the one the space bar makes").why(
        "copied from a web page, it is a letter to YAML and sets nothing in; type plain blanks in its place",
    )
}

fn odd_indentation(text: &str, at: usize) -> Option<Span> {
    let start = line_start(text, at);
    let line = &text[start..];
    let (odd, found) = line.char_indices().find(|&(_, c)| c != ' ')?;
    let odd_kind = found.is_whitespace() && !found.is_ascii_whitespace();
    odd_kind.then(|| one(text, start + odd))
}

/// The innermost bracket that is open at `at` and was opened on the same line.
pub(super) fn open_on_line(text: &str, at: usize) -> Option<usize> {
    let line = line_start(text, at);
    let (mut open, mut quote, mut before) = (Vec::new(), None, ':');
    for (here, sign) in text[line..at].char_indices() {
        // Quotes and brackets inside a word are letters: they count where a value begins.
        let begins = matches!(before, ':' | '-' | ',' | '[' | '{');
        match (quote, sign) {
            (Some(closing), _) if closing == sign => quote = None,
            (Some(_), _) => {}
            (None, '"' | '\'') if begins => quote = Some(sign),
            (None, '[' | '{') if begins => open.push(line + here),
            (None, ']' | '}') => drop(open.pop()),
            _ => {}
        }
        before = if sign.is_whitespace() { before } else { sign };
    }
    open.pop()
}

fn line_start(text: &str, at: usize) -> usize {
    text[..at].rfind('\n').map_or(0, |end| end + 1)
}

fn indent(text: &str, line: usize) -> usize {
    text[line..].len() - text[line..].trim_start_matches([' ', '\t']).len()
}

fn first(text: &str, at: usize) -> char {
    text[at..].chars().next().unwrap_or(' ')
}

fn one(text: &str, at: usize) -> Span {
    Span::new(at, at + text[at..].chars().next().map_or(0, char::len_utf8))
}

fn whole_line(text: &str, at: usize) -> Span {
    let line = line_start(text, at);
    rest_of_line(text, line + indent(text, line))
}

fn rest_of_line(text: &str, at: usize) -> Span {
    let line = text[at..].split(['\n', '\r']).next().unwrap_or("");
    Span::new(at, at + line.trim_end().len())
}

/// A value without quotes from `at` on: to the line's end or a comment, in brackets to the next comma.
fn value_at(text: &str, at: usize, bracketed: bool) -> Span {
    let line = &text[at..rest_of_line(text, at).end];
    let line = line.split(" #").next().unwrap_or(line);
    let line = if bracketed { line.split([',', ']', '}']).next().unwrap_or(line) } else { line };
    Span::new(at, at + line.trim_end().len())
}

/// A value in the quotes that leave it as it is.
fn quoted(value: &str) -> String {
    match value.contains(['"', '\\']) {
        true => format!("'{}'", value.replace('\'', "''")),
        false => format!("\"{value}\""),
    }
}
