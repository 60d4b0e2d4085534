//! Variations: the recipe's tree with stated changes, read again as a recipe of its own.
//!
//! A change names what it replaces: a key of the recipe (`liquid`), a step (`sweeten`), a place for
//! a new step (`after strain`, `before bottle`), or a step to leave out (`without: reduce`).

use super::Variation;
use super::read::read_tree;
use super::read_step::STEPS;
use crate::diagnostic::{Code, Finding, nearest};
use crate::pantry::Pantry;
use crate::span::{Span, Spanned};
use crate::yaml::{Node, Value};

/// Keys of a recipe that a change may replace.
const KEYS: &[&str] = &["plants", "weight", "liquid", "keep", "take", "from age", "measured", "assume"];

/// Variations of one recipe; each is worked in full.
const MOST: usize = 100;

/// Reads the variations of a recipe's tree, each with the recipe as it then stands.
pub(super) fn read_variations(
    tree: &Node,
    span: Span,
    pantry: &Pantry,
    findings: &mut Vec<Finding>,
) -> Vec<Variation> {
    let Value::Map(entries) = &tree.value else {
        return Vec::new();
    };
    let Some((_, list)) = entries.iter().find(|(key, _)| key.value == "variations") else {
        return Vec::new();
    };
    let mut variations: Vec<Variation> = Vec::new();
    let list = list.list("variations", findings).unwrap_or_default();
    if list.len() > MOST {
        let message =
            format!("the recipe has {} variations; {MOST} are the most that are worked", list.len());
        let first = list.first().map_or(span, |node| node.span);
        findings.push(Finding::error(Code::WrongShape, first, message).why("nobody could compare them"));
        return Vec::new();
    }
    for node in list {
        if let Some(variation) = read_variation(node, tree, span, pantry, findings) {
            if variations.iter().any(|other| other.name.value == variation.name.value) {
                let message = format!("two variations are called `{}`", variation.name.value);
                findings.push(
                    Finding::error(Code::TwiceWritten, variation.name.span, message)
                        .why("a reader tells variations apart by their names"),
                );
                continue;
            }
            variations.push(variation);
        }
    }
    variations
}

fn read_variation(
    node: &Node,
    tree: &Node,
    span: Span,
    pantry: &Pantry,
    findings: &mut Vec<Finding>,
) -> Option<Variation> {
    let mut fields = node.map("a variation", findings)?;
    let name = fields
        .need("name", "name: Twice as much honey", findings)
        .and_then(|node| node.text("the name", findings))
        .map(|name| name.map(str::to_string));
    let change = fields.need("change", "change: {liquid: {water: 1:8 w/v}}", findings);
    fields.finish(findings);
    let (name, mut change) = (name?, change?.map("the change", findings)?);
    let changes: Vec<(Spanned<String>, Node)> =
        change.rest().into_iter().map(|(key, node)| (key.clone(), node.clone())).collect();
    change.finish(findings);
    let mut changed = tree.clone();
    for (key, value) in &changes {
        if let Err(finding) = apply(&mut changed, key, value) {
            findings.push(*finding);
            return None;
        }
    }
    // What is wrong in the base recipe is told there, once: only faults inside this variation count.
    let mut found = Vec::new();
    let recipe = read_tree(&changed, span, pantry, &mut found);
    let here = node.span;
    let (inside, outside): (Vec<Finding>, Vec<Finding>) = found.into_iter().partition(|finding| {
        finding.span.is_some_and(|span| span.start >= here.start && span.end <= here.end)
    });
    // A change may take away what a key elsewhere stood on: then the variation is what is at fault.
    if recipe.is_none() && inside.is_empty() {
        let told = |finding: &Finding| {
            findings.iter().any(|told| (told.code, told.span) == (finding.code, finding.span))
        };
        if let Some(mut finding) = outside.into_iter().find(|finding| !told(finding)) {
            finding.message = format!("in `{}`: {}", name.value, finding.message);
            finding.span = Some(name.span);
            findings.push(finding);
        }
    }
    findings.extend(inside);
    let mut recipe = recipe?;
    recipe.name = name.clone();
    Some(Variation { name, changes, recipe: Box::new(recipe) })
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
