//! YAML as a tree of our own, with the place of every key and value.
//!
//! Scalars stay the text the author wrote: what a text means is for the module that asked for it.
//! Readers take a list of findings and go on, so that one press shows every fault of a block.

mod amounts;
mod fault;
mod fields;
mod read;
#[cfg(test)]
mod tests;

pub use amounts::{finding, unknown};
pub use fields::Fields;
pub use read::read;

use crate::diagnostic::{Code, Finding};
use crate::span::{Span, Spanned};

/// One value and where it is written.
#[derive(Clone, PartialEq, Debug)]
pub struct Node {
    /// What is written.
    pub value: Value,
    /// Where: brackets and quotes included; lists and maps without them from the first entry to the
    /// end of the last. A value that is missing has an empty place behind its key.
    pub span: Span,
}

/// What a node holds.
#[derive(Clone, PartialEq, Debug)]
pub enum Value {
    /// One value, as text.
    Scalar(Scalar),
    /// Entries in order.
    List(Vec<Node>),
    /// Keys and values in order.
    Map(Vec<(Spanned<String>, Node)>),
    /// A key or dash with nothing behind it, or an empty text.
    Nothing,
}

/// A value as text, never taken for a number, a date or a truth value.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Scalar {
    /// The text: `1/2`, `012` and `no` as written; quotes taken off, folded lines joined.
    pub text: String,
    /// Whether it stands in quotes or in a block after `|` or `>`, and so is surely meant as text.
    pub quoted: bool,
}

impl Node {
    /// Whether this is one value: neither list nor map, nor missing.
    pub const fn is_scalar(&self) -> bool {
        matches!(self.value, Value::Scalar(_))
    }

    /// Whether nothing is written here.
    pub const fn is_nothing(&self) -> bool {
        matches!(self.value, Value::Nothing)
    }

    /// The keys and values of a map; none of anything else.
    pub fn entries(&self) -> &[(Spanned<String>, Node)] {
        match &self.value {
            Value::Map(entries) => entries,
            _ => &[],
        }
    }

    /// The entries of a list; none of anything else.
    pub fn items(&self) -> &[Node] {
        match &self.value {
            Value::List(items) => items,
            _ => &[],
        }
    }

    /// What stands under a key of a map.
    pub fn under(&self, key: &str) -> Option<&Node> {
        self.entries().iter().find(|(written, _)| written.value == key).map(|(_, node)| node)
    }

    /// The text of one value.
    pub fn plain(&self) -> Option<String> {
        match &self.value {
            Value::Scalar(scalar) => Some(scalar.text.clone()),
            _ => None,
        }
    }

    /// The same tree with every place that of `at`: for what an author asks for by one word.
    pub fn placed(mut self, at: Span) -> Node {
        self.span = at;
        self.value = match self.value {
            Value::List(items) => Value::List(items.into_iter().map(|item| item.placed(at)).collect()),
            Value::Map(entries) => {
                let placed =
                    |(key, node): (Spanned<String>, Node)| (Spanned::new(key.value, at), node.placed(at));
                Value::Map(entries.into_iter().map(placed).collect())
            }
            other => other,
        };
        self
    }

    /// Whether both say the same, wherever they stand.
    pub fn says_as(&self, other: &Node) -> bool {
        let nowhere = Span::new(0, 0);
        self.clone().placed(nowhere) == other.clone().placed(nowhere)
    }

    /// The keys and values of a map; `what` names it in the author's words ("a recipe").
    pub fn map<'a>(&'a self, what: &str, findings: &mut Vec<Finding>) -> Option<Fields<'a>> {
        match &self.value {
            Value::Map(entries) => Some(Fields::new(entries, self.span, what)),
            _ => self.wrong_shape("`key: value` entries were", what, findings),
        }
    }

    /// One value as text; `what` names it in the author's words ("the name").
    pub fn text(&self, what: &str, findings: &mut Vec<Finding>) -> Option<Spanned<&str>> {
        match &self.value {
            Value::Scalar(scalar) if scalar.text.chars().any(|c| c.is_control() && !"\n\t".contains(c)) => {
                let message = format!("a sign that cannot be shown stands in {what}");
                let finding = Finding::error(Code::BadYaml, self.span, message)
                    .why("no page, feed or printer can hold it; it may have come with a copied text");
                findings.push(finding);
                None
            }
            Value::Scalar(scalar) => Some(Spanned::new(scalar.text.as_str(), self.span)),
            _ => self.wrong_shape("one value was", what, findings),
        }
    }

    /// The entries of a list; `what` names it in the author's words ("the method").
    pub fn list(&self, what: &str, findings: &mut Vec<Finding>) -> Option<&[Node]> {
        match &self.value {
            Value::List(entries) => Some(entries),
            _ => self.wrong_shape("a list was", what, findings),
        }
    }

    /// The entries of a list; one value alone counts as a list of one.
    pub fn each<'a>(&'a self, what: &str, findings: &mut Vec<Finding>) -> &'a [Node] {
        match self.is_scalar() {
            true => std::slice::from_ref(self),
            false => self.list(what, findings).unwrap_or_default(),
        }
    }

    /// One value or a list of values, each as text; `what` names them in the author's words ("former names").
    pub fn texts(&self, what: &str, findings: &mut Vec<Finding>) -> Vec<Spanned<String>> {
        let nodes = self.each(what, findings);
        let texts = nodes.iter().filter_map(|node| node.text(what, findings));
        texts.map(|text| text.map(str::to_string)).collect()
    }

    fn wrong_shape<T>(&self, wanted: &str, what: &str, findings: &mut Vec<Finding>) -> Option<T> {
        let found = match &self.value {
            Value::Scalar(_) => "this is one value",
            Value::List(_) => "this is a list",
            Value::Map(_) => "these are `key: value` entries",
            Value::Nothing => "nothing is written",
        };
        let message = format!("{wanted} wanted for {what}; {found}");
        let why = match (&self.value, wanted.as_bytes().first()) {
            (Value::Nothing, _) => {
                "what belongs to a key stands behind its colon, or below it and further in"
            }
            (_, Some(b'`')) => {
                "an entry is a key, a colon, a blank and its value, such as `strain: squeezed`"
            }
            (_, Some(b'a')) => "the entries of a list stand one under another, each after a dash and a blank",
            _ => "brackets, dashes and colons make several values of it; a text that holds them wants quotes",
        };
        let mut finding = Finding::error(Code::WrongShape, self.span, message).why(why);
        if let (Value::Scalar(scalar), true) = (&self.value, wanted.starts_with('`')) {
            // `name:Rose` is one word to YAML: the blank behind the colon makes the key.
            if let Some((key, value)) = scalar.text.split_once(':').filter(|_| !scalar.quoted) {
                finding = finding.write(format!("{}: {}", key.trim(), value.trim()));
            }
        }
        findings.push(finding);
        None
    }

    /// Moves the whole tree, for a text that stands further on in its file.
    fn shift(&mut self, by: usize) {
        self.span = self.span.shifted(by);
        match &mut self.value {
            Value::List(entries) => entries.iter_mut().for_each(|node| node.shift(by)),
            Value::Map(entries) => {
                for (key, node) in entries {
                    key.span = key.span.shifted(by);
                    node.shift(by);
                }
            }
            Value::Scalar(_) | Value::Nothing => {}
        }
    }
}
