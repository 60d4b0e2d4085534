//! A file cut into the facts between two lines of `---` and the Markdown below them.

use crate::diagnostic::{Code, Finding, Level};
use crate::span::{Source, Span, Spanned};
use crate::yaml::{self, Node};

/// A content file's two parts.
#[derive(Clone, PartialEq, Debug)]
pub struct Parts<'a> {
    /// The lines between the first two lines of `---`, if the file opens with one.
    pub front: Option<Spanned<&'a str>>,
    /// Everything below.
    pub body: Spanned<&'a str>,
}

/// The facts that a page opens with, as a tree; `what` is the page in the author's words, `example` how they begin. A
/// page without them is told of, and no page.
pub fn facts(source: &Source, what: &str, example: &str, findings: &mut Vec<Finding>) -> Option<Node> {
    let found = parts(source).map_err(|finding| vec![finding]).and_then(|parts| {
        let front = parts.front.ok_or_else(|| {
            let message = format!("{what} opens with its facts between two lines of ---");
            let finding = Finding::of_file(Level::Error, Code::NoFrontMatter, &source.path, message);
            vec![finding.write(format!("---\n{example}\n---"))]
        })?;
        yaml::read(front.value, front.span.start)
    });
    found.map_err(|found| findings.extend(found)).ok()
}

/// Cuts a file. A byte order mark, empty lines above and Windows line ends do no harm.
pub fn parts(source: &Source) -> Result<Parts<'_>, Finding> {
    let text = source.text.as_str();
    let first = if text.starts_with('\u{feff}') { '\u{feff}'.len_utf8() } else { 0 };
    let mut at = first;
    let mut open: Option<(Span, usize)> = None;
    for line in text[first..].split_inclusive('\n') {
        let next = at + line.len();
        let words = line.trim_end();
        match open {
            None if words.is_empty() => {}
            None if words == "---" => open = Some((Span::new(at, at + words.len()), next)),
            None => break,
            Some((_, start)) if words == "---" => {
                return Ok(Parts {
                    front: Some(piece(text, start, at)),
                    body: piece(text, next, text.len()),
                });
            }
            Some(_) => {}
        }
        at = next;
    }
    match open {
        None => Ok(Parts { front: None, body: piece(text, first, text.len()) }),
        Some((span, _)) => {
            Err(Finding::error(Code::NoFrontMatter, span, "the facts opened here are not closed")
                .why("without a second line of --- nothing tells the facts from the text below them")
                .write("---")
                .locate(source))
        }
    }
}

fn piece(text: &str, start: usize, end: usize) -> Spanned<&str> {
    Spanned::new(&text[start..end], Span::new(start, end))
}
