//! One struct for everything Stillroom has to tell an author, and its printing.
//!
//! A finding says what is wrong in the writer's own words, where, why, and what to write instead.
//! The module that finds the fault makes the finding; nothing else words it.

mod code;
mod print;
mod suggest;

pub use code::Code;
pub use print::{Look, in_order, print, summary};
pub use suggest::nearest;

use crate::span::{Source, Span};

/// How much a finding weighs.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Level {
    /// Stops a press.
    Error,
    /// Pressed all the same, and counted.
    Warning,
    /// Worth knowing.
    Note,
}

/// One thing to tell the author.
#[derive(Clone, PartialEq, Debug)]
pub struct Finding {
    /// Which kind of fault, from a closed list.
    pub code: Code,
    /// How much it weighs.
    pub level: Level,
    /// What is wrong, one sentence without a full stop, lower case first.
    pub message: String,
    /// Why it matters, with the source where there is one.
    pub why: Option<String>,
    /// What to write, ready to copy; one or several readings to choose from.
    pub write: Vec<String>,
    /// Where in the text under reading; none where a whole file is meant.
    pub span: Option<Span>,
    /// File, line and column, filled in by [`Finding::locate`].
    pub place: Option<Place>,
}

/// A place that stands on its own: it carries the line it points into, so that no text need be kept.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Place {
    /// Path below the formulary's folder.
    pub path: String,
    /// Line from 1; 0 where the whole file is meant.
    pub line: usize,
    /// Column from 1, in characters; 0 where the whole file is meant.
    pub column: usize,
    /// The line as written.
    pub text: String,
    /// The marked bytes of that line.
    pub mark: std::ops::Range<usize>,
}

impl Finding {
    /// A finding that stops a press.
    pub fn error(code: Code, span: Span, message: impl Into<String>) -> Finding {
        Finding::new(Level::Error, code, Some(span), message)
    }

    /// A finding that is pressed all the same.
    pub fn warning(code: Code, span: Span, message: impl Into<String>) -> Finding {
        Finding::new(Level::Warning, code, Some(span), message)
    }

    /// A finding about a whole file.
    pub fn of_file(level: Level, code: Code, path: &str, message: impl Into<String>) -> Finding {
        let mut finding = Finding::new(level, code, None, message);
        finding.place =
            Some(Place { path: path.to_string(), line: 0, column: 0, text: String::new(), mark: 0..0 });
        finding
    }

    fn new(level: Level, code: Code, span: Option<Span>, message: impl Into<String>) -> Finding {
        Finding { code, level, message: message.into(), why: None, write: Vec::new(), span, place: None }
    }

    /// The same finding with its reason.
    pub fn why(mut self, why: impl Into<String>) -> Finding {
        self.why = Some(why.into());
        self
    }

    /// The same finding with one more thing the author may write.
    pub fn write(mut self, write: impl Into<String>) -> Finding {
        self.write.push(write.into());
        self
    }

    /// The same finding with its place worked out from the text it was found in.
    pub fn locate(mut self, source: &Source) -> Finding {
        if self.place.is_some() {
            return self;
        }
        let Some(span) = self.span else {
            return Finding {
                place: Finding::of_file(self.level, self.code, &source.path, "").place,
                ..self
            };
        };
        let (line, column) = source.line_column(span.start);
        let text = source.line(line).to_string();
        let start = source.floor(span.start) - source.line_start(line);
        let end = source.floor(span.end).saturating_sub(source.line_start(line));
        let mark = start.min(text.len())..end.clamp(start, text.len().max(start)).min(text.len());
        self.place = Some(Place { path: source.path.clone(), line, column, text, mark });
        self
    }
}

/// Whether any of the findings stops a press.
pub fn stops(findings: &[Finding]) -> bool {
    findings.iter().any(|finding| finding.level == Level::Error)
}
