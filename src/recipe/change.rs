//! Variations: the recipe's tree with stated changes, read again as a recipe of its own.
//!
//! A change names what it replaces: a key of the recipe (`liquid`), a step (`sweeten`), a place for
//! a new step (`after strain`, `before bottle`), or a step to leave out (`without: reduce`).

use super::read::read_tree;
use super::step::STEPS;
use super::Variation;
use crate::diagnostic::{Code, Finding, nearest};
use crate::span::{Span, Spanned};
use crate::yaml::{Node, Value};

/// Keys of a recipe that a change may replace.
const KEYS: &[&str] = &["plants", "liquid", "keep", "take", "assume"];

/// Reads the variations of a recipe's tree, each with the recipe as it then stands.
pub(super) fn read_variations(tree: &Node, span: Span, findings: &mut Vec<Finding>) -> Vec<Variation> {
    let Value::Map(entries) = &tree.value else { return Vec::new() };
    let Some((_, list)) = entries.iter().find(|(key, _)| key.value == "variations") else { return Vec::new() };
    let mut variations: Vec<Variation> = Vec::new();
    for node in list.list("variations", findings).unwrap_or_default() {
        if let Some(variation) = read_variation(node, tree, span, findings) {
            if variations.iter().any(|other| other.name.value == variation.name.value) {
                let message = format!("two variations are called `{}`", variation.name.value);
                findings.push(Finding::error(Code::TwiceWritten, variation.name.span, message));
                continue;
            }
            variations.push(variation);
        }
    }
    variations
}

fn read_variation(node: &Node, tree: &Node, span: Span, findings: &mut Vec<Finding>) -> Option<Variation> {
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
    let recipe = read_tree(&changed, span, &mut found);
    let here = node.span;
    findings.extend(found.into_iter().filter(|finding| {
        finding.span.is_some_and(|span| span.start >= here.start && span.end <= here.end)
    }));
    let mut recipe = recipe?;
    recipe.name = name.clone();
    Some(Variation { name, changes, recipe: Box::new(recipe) })
}

fn apply(tree: &mut Node, key: &Spanned<String>, value: &Node) -> Result<(), Box<Finding>> {
    let Value::Map(entries) = &mut tree.value else { return Ok(()) };
    let words: Vec<&str> = key.value.split_whitespace().collect();
    match words[..] {
        [name] if KEYS.contains(&name) => {
            match entries.iter_mut().find(|(written, _)| written.value == name) {
                Some((_, node)) => *node = value.clone(),
                None => entries.push((key.clone(), value.clone())),
            }
            return Ok(());
        }
        _ => {}
    }
    let Some(steps) = entries.iter_mut().find(|(written, _)| written.value == "method") else { return Ok(()) };
    let Value::List(steps) = &mut steps.1.value else { return Ok(()) };
    match words[..] {
        ["without"] => {
            let Value::Scalar(name) = &value.value else { return Err(unknown_change(key)) };
            let name = Spanned::new(name.text.clone(), value.span);
            let at = find(steps, &name)?;
            steps.remove(at);
        }
        [place @ ("after" | "before"), name] => {
            let at = find(steps, &Spanned::new(name.to_string(), key.span))?;
            steps.insert(if place == "after" { at + 1 } else { at }, value.clone());
        }
        [name] if is_step(name) => {
            let at = find(steps, key)?;
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
        Box::new(Finding::error(Code::UnknownName, name.span, message).write("after strain: {reduce: 1/2}"))
    })
}

fn unknown_change(key: &Spanned<String>) -> Box<Finding> {
    let message = format!("`{}` is not a key or a step that a variation may change", key.value);
    let known = KEYS.iter().copied().chain(STEPS.iter().map(|(name, _)| *name));
    let mut finding = Finding::error(Code::UnknownKey, key.span, message).why(format!(
        "known: {}, and `after`, `before` or `without` a step",
        known.clone().collect::<Vec<_>>().join(", ")
    ));
    if let Some(near) = nearest(&key.value, known) {
        finding = finding.write(near);
    }
    Box::new(finding)
}
