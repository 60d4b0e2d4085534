//! Reading a value of a block by one of the readers of `measure`.

use super::{Node, Value};
use crate::diagnostic::{Code, Finding};
use crate::measure::Misread;
use crate::span::{Span, Spanned};

/// What a reader stumbled over, as a finding at the value's place in the file.
pub fn finding(misread: Misread, span: Span, quoted: bool) -> Finding {
    // Inside quotes an escape may stand for more bytes than it has, so the whole value is marked.
    let span = if quoted { span } else { span.part(misread.at) };
    let mut finding = Finding::error(misread.code, span, misread.message);
    finding.why = misread.why;
    finding.write = misread.write;
    if finding.why.is_none() && finding.write.is_empty() {
        finding.why = Some("an amount is a number above nothing and its unit, such as `200 g`".to_string());
    }
    finding
}

impl Node {
    /// The value read by `by`, with its place. `what` is what it is in the author's words.
    pub fn read<T>(
        &self,
        what: &str,
        by: impl FnOnce(&str) -> Result<T, Misread>,
        findings: &mut Vec<Finding>,
    ) -> Option<Spanned<T>> {
        let text = self.text(what, findings)?;
        let quoted = matches!(&self.value, Value::Scalar(scalar) if scalar.quoted);
        match by(text.value) {
            Ok(value) => Some(Spanned::new(value, self.span)),
            Err(misread) => {
                findings.push(finding(misread, self.span, quoted));
                None
            }
        }
    }

    /// One of a closed list of words.
    pub fn one_of<T: Copy>(
        &self,
        what: &str,
        list: &[(&str, T)],
        findings: &mut Vec<Finding>,
    ) -> Option<Spanned<T>> {
        let text = self.text(what, findings)?;
        if let Some((_, value)) = list.iter().find(|(word, _)| *word == text.value) {
            return Some(Spanned::new(*value, self.span));
        }
        findings.push(unknown(what, text, list.iter().map(|(word, _)| *word)));
        None
    }
}

/// A word that is not in its list, with the nearest that is and the list itself.
pub fn unknown<'a>(
    what: &str,
    written: Spanned<&str>,
    known: impl Iterator<Item = &'a str> + Clone,
) -> Finding {
    let list: Vec<&str> = known.clone().collect();
    let mut finding = Finding::error(
        Code::UnknownName,
        written.span,
        format!("`{}` is not {what} this book knows", written.value),
    )
    .why(format!("the words known here are {}", list.join(", ")));
    if let Some(near) = crate::diagnostic::nearest(written.value, known) {
        finding = finding.write(near);
    }
    finding
}
