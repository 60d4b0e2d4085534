//! The file of checks, read as strictly as a recipe.

use super::{Check, Given, Printed, Subject, UNITS};
use crate::bibliography::Standing;
use crate::diagnostic::{Code, Finding, nearest};
use crate::span::Spanned;
use crate::yaml::{self, Node};

/// Every check of a file.
///
/// # Errors
/// Every finding, where there is one.
pub fn read(text: &str) -> Result<Vec<Check>, Vec<Finding>> {
    let tree = yaml::read(text, 0)?;
    let mut findings = Vec::new();
    let nodes = tree.list("the checks", &mut findings).unwrap_or(&[]);
    let checks: Vec<Check> = nodes.iter().filter_map(|node| check(node, &mut findings)).collect();
    if findings.is_empty() { Ok(checks) } else { Err(findings) }
}

fn check(node: &Node, findings: &mut Vec<Finding>) -> Option<Check> {
    let mut fields = node.map("a check", findings)?;
    let mut text = |key: &str, example: &str, findings: &mut Vec<Finding>| {
        let node = fields.need(key, example, findings)?;
        node.text(key, findings)
    };
    let id = text("id", "id: sucrose-density-40", findings);
    let about = text("about", "about: Sugar of 40 % by weight, its density", findings);
    let subject = text("subject", "subject: sucrose-density", findings);
    let printed = text("printed", "printed: 1176.5", findings);
    let within = text("within", "within: 0.3", findings);
    let source = text("source", "source: where it is printed", findings);
    let standing = text("standing", "standing: published", findings);
    let unit = fields.take("unit").and_then(|node| node.text("the unit", findings));
    let given = fields.take("with");
    let wrong = fields.take("wrong").and_then(|node| node.text("why it is wrong", findings));
    fields.finish(findings);
    let subject = subject.and_then(|text| known(text, Subject::ALL, |subject| subject.id(), findings))?;
    let given = given.map_or_else(|| Some(Given::default()), |node| self::given(node, findings))?;
    let takes = subject.takes();
    if takes.len() != given.names().count() || !given.names().all(|name| takes.contains(&name)) {
        let message = format!("`{}` takes {}", subject.id(), takes.join(", ").replace('_', "-"));
        findings.push(Finding::error(Code::WrongShape, node.span, message));
    }
    let unit = match unit {
        Some(text) => known(text, UNITS, |unit: &Printed| unit.text, findings)?,
        None => UNITS[0],
    };
    let standings = [("published", Standing::Published), ("memory", Standing::FromMemory)];
    let standing = known(standing?, &standings, |(text, _)| text, findings)?.1;
    let printed = printed?;
    let places = printed.value.split_once('.').map_or(0, |(_, places)| places.len());
    let value = match subject.says() {
        [] => number(printed, findings)?,
        says => known(printed, says, |say| say, findings)
            .and_then(|say| says.iter().position(|s| *s == say))? as f64,
    };
    Some(Check {
        id: id?.value.to_string(),
        about: about?.value.to_string(),
        subject,
        given,
        printed: value,
        places: u8::try_from(places).unwrap_or(u8::MAX - 1),
        unit,
        within: number(within?, findings)?,
        source: source?.value.to_string(),
        standing,
        wrong: wrong.map(|text| text.value.to_string()),
    })
}

fn given(node: &Node, findings: &mut Vec<Finding>) -> Option<Given> {
    let mut fields = node.map("the numbers", findings)?;
    let mut entries = Vec::new();
    for (name, node) in fields.rest() {
        let text = node.text(&name.value, findings)?;
        entries.push((name.value.clone(), text.value.to_string()));
    }
    fields.finish(findings);
    Some(Given::new(entries))
}

/// The one of a list that is written here.
fn known<T: Copy>(
    text: Spanned<&str>,
    list: &[T],
    name: impl Fn(&T) -> &'static str,
    findings: &mut Vec<Finding>,
) -> Option<T> {
    let found = list.iter().find(|one| name(one) == text.value).copied();
    if found.is_none() {
        let finding =
            Finding::error(Code::UnknownName, text.span, format!("`{}` is not known here", text.value));
        findings.push(match nearest(text.value, list.iter().map(&name)) {
            Some(near) => finding.write(near),
            None => finding,
        });
    }
    found
}

fn number(text: Spanned<&str>, findings: &mut Vec<Finding>) -> Option<f64> {
    let number = text.value.parse().ok().filter(|number: &f64| number.is_finite());
    if number.is_none() {
        findings.push(Finding::error(Code::WrongShape, text.span, format!("`{}` is no number", text.value)));
    }
    number
}
