//! An exercise's own sum: its numbers and its formulas laid down as lines, like a recipe's.

use std::collections::BTreeMap;

use super::Step;
use crate::aim;
use crate::diagnostic::{Code, Finding, nearest};
use crate::formula::{Line, Use};
use crate::materia;
use crate::measure::Unit;
use crate::span::Spanned;
use crate::working::Working;

/// A working and its lines by name.
pub(super) type Laid = (Working, BTreeMap<String, Line>);

/// Lays down the numbers drawn, then the lines of the sum; a word that only `ask` has is no number. A name that is
/// neither is a figure or a guess of the book's own, by its name on *Method and sources*.
pub(super) fn lay(
    sum: &[Step],
    drawn: &[(Spanned<String>, Spanned<String>)],
    ask: &str,
) -> Result<Laid, Box<Finding>> {
    let mut work = Working::new();
    let mut lines: BTreeMap<String, Line> = BTreeMap::new();
    for (name, text) in drawn {
        let Some(unit) = unit_of(sum, &name.value) else {
            // A word that the question alone has: the plant whose figures are drawn.
            if ask.contains(&format!("{{{}}}", name.value)) {
                continue;
            }
            let message = format!("no line of the sum takes `{}`", name.value);
            let finding = Finding::error(Code::UnknownName, name.span, message);
            return Err(Box::new(finding.why("a number is given for a line to be worked with it")));
        };
        let value = aim::value(&text.value, unit).map_err(|unmet| {
            let message = format!("`{}` is no figure for `{}`", text.value, name.value);
            Box::new(Finding::error(Code::BadNumber, text.span, message).why(unmet.why))
        })?;
        lines.insert(name.value.clone(), work.given(name.value.as_str(), unit, value, false, text.span));
    }
    for step in sum {
        let mut with = Vec::new();
        for (symbol, names) in step.formula.with.iter().zip(&step.with) {
            let mut bound = Vec::new();
            for name in names {
                let line = match lines.get(&name.value) {
                    Some(line) => *line,
                    None => known(&mut work, name, lines.keys())?,
                };
                let (unit, wanted) = (work.entry(line).unit, symbol.unit);
                if unit.dimension != wanted.dimension {
                    let symbol = symbol.words.replace('_', " ");
                    let message = format!(
                        "`{symbol}` is {}; `{}` is {}",
                        wanted.dimension.with_article(),
                        name.value,
                        unit.dimension.with_article()
                    );
                    let finding = Finding::error(Code::WrongDimension, name.span, message);
                    return Err(Box::new(
                        finding.why("what each symbol stands for is on the page Method and sources"),
                    ));
                }
                bound.push(line);
            }
            with.push(bound);
        }
        same_length(step, &with)?;
        let line = work.work(step.name.value.as_str(), Use { formula: step.formula, with });
        lines.insert(step.name.value.clone(), line);
    }
    work.close();
    Ok((work, lines))
}

/// Lists that a formula goes through together are as long as one another, or hold one for all.
fn same_length(step: &Step, with: &[Vec<Line>]) -> Result<(), Box<Finding>> {
    let many = step.formula.with.iter().zip(with).filter(|(symbol, _)| symbol.many);
    let lengths: Vec<usize> = many.map(|(_, lines)| lines.len()).filter(|length| *length != 1).collect();
    let message = match lengths[..] {
        _ if lengths.contains(&0) => format!("a list of `{}` is empty", step.formula.id),
        [first, ..] if lengths.iter().any(|length| *length != first) => {
            format!("the lists of `{}` are not of one length", step.formula.id)
        }
        _ => return Ok(()),
    };
    let finding = Finding::error(Code::WrongShape, step.name.span, message);
    Err(Box::new(finding.why("the first of one list goes with the first of the other")))
}

/// The unit a number is kept in: that of the first symbol it is bound to.
fn unit_of(sum: &[Step], name: &str) -> Option<&'static Unit> {
    let bound = sum.iter().flat_map(|step| step.formula.with.iter().zip(&step.with));
    bound
        .into_iter()
        .find(|(_, names)| names.iter().any(|bound| bound.value == name))
        .map(|(symbol, _)| symbol.unit)
}

/// A figure or a guess of the book's own.
fn known<'a>(
    work: &mut Working,
    name: &Spanned<String>,
    own: impl Iterator<Item = &'a String>,
) -> Result<Line, Box<Finding>> {
    if let Some(figure) = materia::figures().find(|figure| figure.id == name.value) {
        return Ok(work.figure(figure));
    }
    if let Some(guess) = materia::assumptions().find(|guess| guess.id == name.value) {
        // A sum on paper goes by the usual figure, without a range.
        return Ok(work.published(guess.words, guess.id, guess.unit, guess.usual, guess.source.clone()));
    }
    let message = format!("no line, figure or guess is called `{}`", name.value);
    if name.value.parse::<f64>().is_ok() {
        let finding = Finding::error(Code::UnknownName, name.span, message);
        return Err(Box::new(
            finding.why("a formula takes names; a number gets one under `with`").write("with: {share: 0.5}"),
        ));
    }
    let finding = Finding::error(Code::UnknownName, name.span, message)
        .why("lines above it, numbers under `with`, and the figures of Method and sources can be named");
    let figures =
        materia::figures().map(|figure| figure.id).chain(materia::assumptions().map(|guess| guess.id));
    Err(Box::new(match nearest(&name.value, own.map(String::as_str).chain(figures)) {
        Some(near) => finding.write(near),
        None => finding,
    }))
}
