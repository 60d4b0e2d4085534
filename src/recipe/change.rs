//! Variations: the recipe's tree with stated changes, read again as a recipe of its own.
//!
//! A change names what it replaces: a key of the recipe (`liquid`), a step (`sweeten`), a place for
//! a new step (`after strain`, `before bottle`), or a step to leave out (`without: reduce`).

use super::Variation;
use super::read::read_tree;
use super::read_step::STEPS;
use super::usual::usual;
use crate::diagnostic::{Code, Finding, nearest};
use crate::pantry::Pantry;
use crate::span::{Span, Spanned};
use crate::yaml::{Node, Value};

/// Keys of a recipe that a change may replace.
const KEYS: &[&str] = &["plants", "weight", "liquid", "keep", "take", "from age", "measured", "assume"];

/// Variations of one recipe; each is worked in full.
const MOST: usize = 100;

/// What one entry of the list asks for.
struct Asked {
    name: Spanned<String>,
    changes: Vec<(Spanned<String>, Node)>,
    /// Asked for by one word: what does not suit the recipe is left out and not told.
    usual: bool,
}

/// Reads the variations of a recipe's tree, each with the recipe as it then stands.
pub(super) fn read_variations(
    tree: &Node,
    span: Span,
    pantry: &Pantry,
    findings: &mut Vec<Finding>,
) -> Vec<Variation> {
    let Some(list) = tree.under("variations") else { return Vec::new() };
    let asked = asked(list, tree, findings);
    if asked.len() > MOST {
        let message =
            format!("the recipe has {} variations; {MOST} are the most that are worked", asked.len());
        let first = asked.first().map_or(span, |asked| asked.name.span);
        findings.push(Finding::error(Code::WrongShape, first, message).why("nobody could compare them"));
        return Vec::new();
    }
    let (mut variations, mut trees): (Vec<Variation>, Vec<Node>) = (Vec::new(), vec![tree.clone()]);
    for asked in asked {
        let twin = variations.iter().any(|other| other.name.value == asked.name.value);
        let usual = asked.usual;
        let Some((variation, changed)) = vary(asked, tree, span, pantry, findings) else { continue };
        if usual && (twin || trees.iter().any(|tree| tree.says_as(&changed))) {
            continue;
        }
        if twin {
            let message = format!("two variations are called `{}`", variation.name.value);
            findings.push(
                Finding::error(Code::TwiceWritten, variation.name.span, message)
                    .why("a reader tells variations apart by their names"),
            );
            continue;
        }
        trees.push(changed);
        variations.push(variation);
    }
    variations
}

/// Every variation that the list asks for: named ones, every pair of crossed ones, the usual ones.
fn asked(list: &Node, tree: &Node, findings: &mut Vec<Finding>) -> Vec<Asked> {
    let nodes = match list.is_scalar() {
        true => std::slice::from_ref(list),
        false => list.list("variations", findings).unwrap_or_default(),
    };
    let mut all = Vec::new();
    for node in nodes {
        let one_word = node.plain().is_some_and(|text| !text.contains(char::is_whitespace));
        if one_word {
            all.extend(usual_of(node, tree, findings));
        } else if node.under("cross").is_some() {
            all.extend(crossed(node, findings));
        } else {
            all.extend(named(node, findings));
        }
    }
    all
}

fn usual_of(node: &Node, tree: &Node, findings: &mut Vec<Finding>) -> Vec<Asked> {
    if node.one_of("a set of variations", &[("usual", ())], findings).is_none() {
        return Vec::new();
    }
    let kind = tree.under("preparation").and_then(Node::plain).unwrap_or_default();
    let rows = usual(&kind, tree, node.span).into_iter();
    rows.map(|row| Asked { name: Spanned::new(row.name, node.span), changes: row.changes, usual: true })
        .collect()
}

fn named(node: &Node, findings: &mut Vec<Finding>) -> Option<Asked> {
    let mut fields = node.map("a variation", findings)?;
    let name = fields
        .need("name", "name: Twice as much honey", findings)
        .and_then(|node| node.text("the name", findings))
        .map(|name| name.map(str::to_string));
    let change = fields.need("change", "change: {liquid: {water: 1:8 w/v}}", findings);
    fields.finish(findings);
    let (name, change) = (name?, change?);
    Some(Asked { name, changes: changes(change, findings)?, usual: false })
}

fn changes(change: &Node, findings: &mut Vec<Finding>) -> Option<Vec<(Spanned<String>, Node)>> {
    let mut fields = change.map("the change", findings)?;
    let changes = fields.rest().into_iter().map(|(key, node)| (key.clone(), node.clone())).collect();
    fields.finish(findings);
    Some(changes)
}

/// Every choice of the first list with every choice of the next: `cross: [{A: ..., B: ...}, {C: ..., D: ...}]`.
fn crossed(node: &Node, findings: &mut Vec<Finding>) -> Vec<Asked> {
    let Some(mut fields) = node.map("a variation", findings) else { return Vec::new() };
    let axes = fields.take("cross").and_then(|axes| axes.list("what is crossed", findings));
    fields.finish(findings);
    let none = Asked { name: Spanned::new(String::new(), node.span), changes: Vec::new(), usual: false };
    let mut all = vec![none];
    for axis in axes.unwrap_or_default() {
        let Some(mut choices) = axis.map("one side of what is crossed", findings) else { return Vec::new() };
        let named = choices.rest();
        choices.finish(findings);
        let mut read = Vec::new();
        for (name, change) in named {
            let Some(own) = changes(change, findings) else { return Vec::new() };
            read.push((name, own));
        }
        let with = |before: &Asked, (name, own): &(&Spanned<String>, Vec<(Spanned<String>, Node)>)| Asked {
            name: Spanned::new(joined(&before.name.value, &name.value), name.span),
            changes: before.changes.iter().chain(own).cloned().collect(),
            usual: false,
        };
        all = all.iter().flat_map(|before| read.iter().map(move |choice| with(before, choice))).collect();
        if all.len() > MOST {
            break;
        }
    }
    all.retain(|asked| !asked.changes.is_empty());
    all
}

fn joined(before: &str, name: &str) -> String {
    if before.is_empty() { name.to_string() } else { format!("{before}, {name}") }
}

/// A variation, and the recipe's tree as it then stands.
fn vary(
    asked: Asked,
    tree: &Node,
    span: Span,
    pantry: &Pantry,
    findings: &mut Vec<Finding>,
) -> Option<(Variation, Node)> {
    let Asked { name, changes, usual } = asked;
    let mut changed = tree.clone();
    for (key, value) in &changes {
        if let Err(finding) = apply(&mut changed, key, value) {
            if !usual {
                findings.push(*finding);
            }
            return None;
        }
    }
    let mut found = Vec::new();
    let recipe = read_tree(&changed, span, pantry, &mut found);
    if usual && crate::diagnostic::stops(&found) {
        return None;
    }
    tell(&name, &changes, recipe.is_none(), found, findings);
    let mut recipe = recipe?;
    recipe.name = name.clone();
    Some((Variation { name, changes, recipe: Box::new(recipe), usual }, changed))
}

/// What is wrong in the base recipe is told there, once: only faults inside a variation's changes count here.
fn tell(
    name: &Spanned<String>,
    changes: &[(Spanned<String>, Node)],
    unread: bool,
    found: Vec<Finding>,
    findings: &mut Vec<Finding>,
) {
    let inside = |at: Span| {
        let holds = |outer: Span| outer.start <= at.start && at.end <= outer.end;
        holds(name.span) || changes.iter().any(|(key, node)| holds(key.span) || holds(node.span))
    };
    let (own, outside): (Vec<Finding>, Vec<Finding>) =
        found.into_iter().partition(|finding| finding.span.is_some_and(inside));
    // A change may take away what a key elsewhere stood on: then the variation is what is at fault.
    if unread && own.is_empty() {
        let told = |finding: &Finding| {
            findings.iter().any(|told| (told.code, told.span) == (finding.code, finding.span))
        };
        if let Some(mut finding) = outside.into_iter().find(|finding| !told(finding)) {
            finding.message = format!("in `{}`: {}", name.value, finding.message);
            finding.span = Some(name.span);
            findings.push(finding);
        }
    }
    findings.extend(own);
}

fn apply(tree: &mut Node, key: &Spanned<String>, value: &Node) -> Result<(), Box<Finding>> {
    let Value::Map(entries) = &mut tree.value else {
        return Ok(());
    };
    let name = key.value.as_str();
    if KEYS.contains(&name) {
        match entries.iter_mut().find(|(written, _)| written.value == name) {
            Some((_, node)) => *node = value.clone(),
            None => entries.push((key.clone(), value.clone())),
        }
        return Ok(());
    }
    let Some(steps) = entries.iter_mut().find(|(written, _)| written.value == "method") else {
        return Ok(());
    };
    let Value::List(steps) = &mut steps.1.value else {
        return Ok(());
    };
    let beside =
        |place: &str| name.strip_prefix(place).map(|step| Spanned::new(step.trim().to_string(), key.span));
    match (beside("after "), beside("before ")) {
        _ if name == "without" => {
            let names: &[Node] = match &value.value {
                Value::List(names) => names,
                _ => std::slice::from_ref(value),
            };
            for name in names {
                let Value::Scalar(text) = &name.value else {
                    return Err(Box::new(
                        Finding::error(Code::WrongShape, name.span, "`without` names the steps to leave out")
                            .write("without: reduce")
                            .write("without: [cool, reduce]"),
                    ));
                };
                let at = find(steps, &Spanned::new(text.text.clone(), name.span))?;
                steps.remove(at);
            }
        }
        (Some(step), _) => {
            let at = find(steps, &step)?;
            steps.insert(at + 1, value.clone());
        }
        (_, Some(step)) => {
            let at = find(steps, &step)?;
            steps.insert(at, value.clone());
        }
        _ if is_step(name) => {
            // A step that is not there to be changed can be put in.
            let put_in = |example: &str| format!("after strain: {{{example}}}");
            let example = STEPS.iter().find(|(step, _)| *step == name).map(|(_, example)| put_in(example));
            let at = find(steps, key)
                .map_err(|finding| Box::new(Finding { write: example.into_iter().collect(), ..*finding }))?;
            if let Value::Map(step) = &mut steps[at].value
                && let Some((written, node)) = step.first_mut()
            {
                *written = key.clone();
                *node = value.clone();
            }
        }
        _ => return Err(unknown_change(key)),
    }
    Ok(())
}

fn is_step(name: &str) -> bool {
    STEPS.iter().any(|(step, _)| *step == name)
}

/// The last step of that name: a change means the one that decides.
fn find(steps: &[Node], name: &Spanned<String>) -> Result<usize, Box<Finding>> {
    let is_it = |node: &Node| match &node.value {
        Value::Map(entries) => entries.first().is_some_and(|(key, _)| key.value == name.value),
        _ => false,
    };
    steps.iter().rposition(is_it).ok_or_else(|| {
        let message = format!("the recipe has no step `{}` to change", name.value);
        let known = steps.iter().filter_map(|node| match &node.value {
            Value::Map(entries) => entries.first().map(|(key, _)| key.value.as_str()),
            _ => None,
        });
        let finding = Finding::error(Code::UnknownName, name.span, message);
        let finding = match known.clone().next() {
            None => finding,
            Some(_) => finding.why(format!("its steps are {}", known.collect::<Vec<_>>().join(", "))),
        };
        Box::new(finding)
    })
}

fn unknown_change(key: &Spanned<String>) -> Box<Finding> {
    let message = format!("`{}` is not a key or a step that a variation may change", key.value);
    let known = KEYS.iter().copied().chain(STEPS.iter().map(|(name, _)| *name));
    let mut finding = Finding::error(Code::UnknownKey, key.span, message).why(format!(
        "what a variation may change is {}; it may also put a step `after` or `before` another, or do `without` one",
        known.clone().collect::<Vec<_>>().join(", ")
    ));
    if let Some(near) = nearest(&key.value, known) {
        finding = finding.write(near);
    }
    Box::new(finding)
}
