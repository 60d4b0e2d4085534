//! What a reader hands back instead of a value: where it stumbled, why, and what to write.

use std::ops::Range;

use crate::diagnostic::Code;

/// A text that was not read. The caller knows the file and turns it into a finding.
#[derive(Clone, PartialEq, Debug)]
pub struct Misread {
    /// Bytes of the text that was handed in.
    pub at: Range<usize>,
    /// Which kind of fault.
    pub code: Code,
    /// What is wrong: one sentence, lower case first, no full stop.
    pub message: String,
    /// Why it matters, or what each reading would mean.
    pub why: Option<String>,
    /// What to write, ready to copy.
    pub write: Vec<String>,
}

impl Misread {
    /// A fault at these bytes.
    pub fn new(at: Range<usize>, code: Code, message: impl Into<String>) -> Misread {
        Misread { at, code, message: message.into(), why: None, write: Vec::new() }
    }

    /// A fault of the whole text, the space around it left out.
    pub(crate) fn of(text: &str, code: Code, message: impl Into<String>) -> Misread {
        let start = text.len() - text.trim_start().len();
        Misread::new(start..start.max(text.trim_end().len()), code, message)
    }

    /// The same with its reason.
    pub(crate) fn why(mut self, why: impl Into<String>) -> Misread {
        self.why = Some(why.into());
        self
    }

    /// The same with one more thing to write.
    pub(crate) fn write(mut self, write: impl Into<String>) -> Misread {
        self.write.push(write.into());
        self
    }

    /// The same, for a text that starts `by` bytes into a longer one.
    pub(super) fn shifted(mut self, by: usize) -> Misread {
        self.at = self.at.start + by..self.at.end + by;
        self
    }
}
