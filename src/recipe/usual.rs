//! The trade's usual variations of a preparation, for a recipe that asks for them.

use std::sync::LazyLock;

use crate::span::{Span, Spanned};
use crate::yaml::{self, Node, Value};

/// A usual variation: its name and what it changes.
pub(super) struct Usual {
    pub(super) name: String,
    pub(super) changes: Vec<(Spanned<String>, Node)>,
}

/// The file, read once; it is the program's own, and a test reads it whole.
static FILE: LazyLock<Option<Node>> = LazyLock::new(|| yaml::read(include_str!("usual.yaml"), 0).ok());

/// The usual variations of a preparation, filled in from the recipe's tree; every place is that of `at`, where the
/// author asked for them.
pub(super) fn usual(preparation: &str, tree: &Node, at: Span) -> Vec<Usual> {
    let Some(Value::Map(kinds)) = FILE.as_ref().map(|file| &file.value) else { return Vec::new() };
    let rows = kinds.iter().find(|(kind, _)| kind.value == preparation).map(|(_, rows)| &rows.value);
    let Some(Value::Map(rows)) = rows else { return Vec::new() };
    let own = Own::of(tree);
    let read = rows.iter().filter_map(|(name, change)| {
        let change = own.fill(change.clone().placed(at))?;
        let Value::Map(changes) = change.value else { return None };
        Some(Usual { name: name.value.clone(), changes })
    });
    read.collect()
}

/// What of the recipe stands in for the words in capitals.
struct Own {
    liquid: Option<String>,
    strength: Option<String>,
    sweet: Option<(String, String)>,
}

impl Own {
    fn of(tree: &Node) -> Own {
        const STRENGTHS: [&str; 3] = ["strength", "acidity", "from"];
        let liquid = tree.under("liquid").map(Node::entries).unwrap_or_default();
        let steps = tree.under("method").map(Node::items).unwrap_or_default();
        // The last of several: the one a change means.
        let sweet =
            steps.iter().rev().find_map(|step| step.under("sweeten")).map(Node::entries).unwrap_or_default();
        Own {
            liquid: liquid
                .iter()
                .map(|(key, _)| key.value.clone())
                .find(|key| !STRENGTHS.contains(&key.as_str())),
            strength: liquid
                .iter()
                .find(|(key, _)| key.value == "strength")
                .and_then(|(_, node)| node.plain()),
            sweet: sweet.first().and_then(|(key, node)| Some((key.value.clone(), node.plain()?))),
        }
    }

    /// The words in capitals filled in; none where the recipe has nothing to fill them with. A strength that nobody
    /// writes is left out.
    fn fill(&self, mut node: Node) -> Option<Node> {
        match &mut node.value {
            Value::Map(entries) => {
                let mut filled = Vec::new();
                for (mut key, value) in std::mem::take(entries) {
                    match key.value.as_str() {
                        "LIQUID" => key.value.clone_from(self.liquid.as_ref()?),
                        "SWEET" => key.value.clone_from(&self.sweet.as_ref()?.0),
                        _ if value.plain().as_deref() == Some("STRENGTH") && self.strength.is_none() => {
                            continue;
                        }
                        _ => {}
                    }
                    filled.push((key, self.fill(value)?));
                }
                *entries = filled;
            }
            Value::Scalar(scalar) => match scalar.text.as_str() {
                "STRENGTH" => scalar.text.clone_from(self.strength.as_ref()?),
                "AS IT IS" => scalar.text.clone_from(&self.sweet.as_ref()?.1),
                _ => {}
            },
            Value::List(_) | Value::Nothing => {}
        }
        Some(node)
    }
}
