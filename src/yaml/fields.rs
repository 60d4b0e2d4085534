//! One map, asked key by key; at the end, every key that nobody asked for is a finding.

use super::{Node, Value};
use crate::diagnostic::{Code, Finding, nearest};
use crate::span::{Span, Spanned};

/// The entries of one map, and which keys were asked for.
///
/// Close it with [`Fields::finish`], also where a key was found missing, so that a mistyped key
/// and the key it stands for are told together.
#[must_use = "call `finish`, or mistyped keys go unnoticed"]
pub struct Fields<'a> {
    entries: &'a [(Spanned<String>, Node)],
    span: Span,
    what: String,
    asked: Vec<String>,
}

impl<'a> Fields<'a> {
    pub(super) fn new(entries: &'a [(Spanned<String>, Node)], span: Span, what: &str) -> Fields<'a> {
        Fields { entries, span, what: what.to_string(), asked: Vec::new() }
    }

    /// The place of the whole map.
    pub const fn span(&self) -> Span {
        self.span
    }

    /// The value of `key`, where it is written.
    pub fn take(&mut self, key: &str) -> Option<&'a Node> {
        self.entry(key).map(|(_, node)| node)
    }

    /// The key as written, with its place, and its value.
    pub fn entry(&mut self, key: &str) -> Option<(&'a Spanned<String>, &'a Node)> {
        if !self.asked_for(key) {
            self.asked.push(key.to_string());
        }
        self.entries.iter().find(|(written, _)| written.value == key).map(|(key, node)| (key, node))
    }

    /// The value of a key that has to be there; where it is not, a finding that shows `example`.
    pub fn need(&mut self, key: &str, example: &str, findings: &mut Vec<Finding>) -> Option<&'a Node> {
        let (span, message) = match self.entry(key) {
            Some((_, node)) if !is_blank(node) => return Some(node),
            Some((written, _)) => (written.span, format!("nothing is written for `{key}`")),
            None => (self.opening(), format!("{} has no `{key}`", self.what)),
        };
        findings.push(Finding::error(Code::MissingKey, span, message).write(example));
        None
    }

    /// One value or a list of values under `key`, each as text; `what` names them in the author's words.
    pub fn texts(&mut self, key: &str, what: &str, findings: &mut Vec<Finding>) -> Vec<Spanned<String>> {
        self.take(key).map_or(Vec::new(), |node| node.texts(what, findings))
    }

    /// The entries nobody asked for yet, of a map whose keys are names the author chooses. They
    /// count as asked for.
    pub fn rest(&mut self) -> Vec<(&'a Spanned<String>, &'a Node)> {
        let left: Vec<_> = self.unasked().map(|(key, node)| (key, node)).collect();
        self.asked.extend(left.iter().map(|(key, _)| key.value.clone()));
        left
    }

    /// Tells every key nobody asked for, with the nearest known one to write instead.
    pub fn finish(self, findings: &mut Vec<Finding>) {
        for (key, _) in self.unasked() {
            let message = format!("`{}` is not a key of {}", key.value, self.what);
            let mut finding = Finding::error(Code::UnknownKey, key.span, message);
            if !self.asked.is_empty() {
                let keys = if self.asked.len() == 1 { "only key" } else { "keys" };
                let are = if self.asked.len() == 1 { "is" } else { "are" };
                finding = finding.why(format!("the {keys} of {} {are} {}", self.what, listed(&self.asked)));
            }
            // A key that is already there is no suggestion: it would then stand twice.
            let free = self.asked.iter().filter(|asked| !self.is_written(asked));
            if let Some(near) = nearest(&key.value, free.map(String::as_str)) {
                finding = finding.write(format!("{near}:"));
            }
            findings.push(finding);
        }
    }

    fn unasked(&self) -> impl Iterator<Item = &'a (Spanned<String>, Node)> {
        let entries = self.entries;
        entries.iter().filter(|(key, _)| !self.asked_for(&key.value))
    }

    fn asked_for(&self, key: &str) -> bool {
        self.asked.iter().any(|asked| asked == key)
    }

    fn is_written(&self, key: &str) -> bool {
        self.entries.iter().any(|(written, _)| written.value == key)
    }

    /// Where a map shows itself: its first key, or its opening brace and what follows.
    fn opening(&self) -> Span {
        match self.entries.first() {
            Some((key, _)) if key.span.start == self.span.start => key.span,
            _ => self.span,
        }
    }
}

/// Nothing, or a text of blanks: `""` says as little as no value.
fn is_blank(node: &Node) -> bool {
    match &node.value {
        Value::Nothing => true,
        Value::Scalar(scalar) => scalar.text.trim().is_empty(),
        Value::List(_) | Value::Map(_) => false,
    }
}

/// `a`, `b` and `c`
fn listed(keys: &[String]) -> String {
    match keys {
        [] => String::new(),
        [only] => format!("`{only}`"),
        [before @ .., last] => {
            let before: Vec<String> = before.iter().map(|key| format!("`{key}`")).collect();
            format!("{} and `{last}`", before.join(", "))
        }
    }
}
