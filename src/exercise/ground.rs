//! What a version's question is worked from: the recipe's lines with what it sets, or a sum of its own.

use std::collections::BTreeMap;

use super::posed::Stage;
use super::{Exercise, sum};
use crate::aim;
use crate::diagnostic::{Code, Finding};
use crate::formula::equation::{Form, Writer};
use crate::formula::expr::Symbol;
use crate::formula::{Formula, Line};
use crate::measure::wanted;
use crate::span::{Span, Spanned};
use crate::variation::Worked;
use crate::wanted;
use crate::working::How;

/// What a version's question is worked from.
pub(super) struct Ground {
    pub(super) worked: Worked,
    /// Lines of a sum of its own, by their names there.
    pub(super) own: Option<BTreeMap<String, Line>>,
}

impl Ground {
    /// The line of that name or id.
    pub(super) fn line(&self, name: &Spanned<String>) -> Result<Line, Box<Finding>> {
        let found = match &self.own {
            Some(lines) => lines.get(&name.value).copied().ok_or_else(|| {
                let known: Vec<&str> = lines.keys().map(String::as_str).collect();
                format!("the sum has no line `{}`; it has {}", name.value, known.join(", "))
            }),
            None => aim::line(&self.worked, &name.value).map_err(|unmet| unmet.why),
        };
        found.map_err(|why| {
            let message = format!("an exercise asks for `{}`, which is not there", name.value);
            Box::new(Finding::error(Code::UnknownName, name.span, message).why(why))
        })
    }
}

/// The lines, with what the version sets.
pub(super) fn ground(
    exercise: &Exercise,
    stage: &Stage,
    drawn: &[(Spanned<String>, Spanned<String>)],
    make: Option<&Spanned<String>>,
) -> Result<Ground, Box<Finding>> {
    if !exercise.sum.is_empty() {
        let (working, lines) = sum::lay(&exercise.sum, drawn, &exercise.ask.value)?;
        return Ok(Ground { worked: Worked::of(&exercise.name.value, working), own: Some(lines) });
    }
    let Some(recipe) = stage.recipe else {
        let message = "the exercise is about a recipe, and there is none";
        return Err(Box::new(Finding::error(Code::NoRecipe, exercise.span, message)));
    };
    Ok(Ground { worked: set_up(&recipe.base, drawn, make)?, own: None })
}

/// A recipe, or a variation of it, with what a version sets and in the batch it asks for.
pub(super) fn set_up(
    base: &Worked,
    drawn: &[(Spanned<String>, Spanned<String>)],
    make: Option<&Spanned<String>>,
) -> Result<Worked, Box<Finding>> {
    let mut set: Vec<(Line, f64)> = Vec::new();
    for (name, text) in drawn {
        let fault = |code: Code, at: Span, why: String| {
            let message = format!("`{}` cannot be set to `{}`", name.value, text.value);
            Box::new(Finding::error(code, at, message).why(why))
        };
        let line = settable(base, &name.value).map_err(|why| fault(Code::UnknownName, name.span, why))?;
        let value = aim::value(&text.value, base.laid.working.entry(line).unit)
            .map_err(|unmet| fault(Code::BadNumber, text.span, unmet.why))?;
        set.push((line, value));
    }
    let worked = base.with(&set);
    let Some(make) = make else { return Ok(worked) };
    let misread = |why: String| {
        let message = format!("no batch makes `{}`", make.value);
        Box::new(Finding::error(Code::BadNumber, make.span, message).why(why))
    };
    let batch = wanted(&make.value).map_err(|found| misread(found.message))?;
    wanted::worked(&worked, &batch).map_err(|unmet| misread(unmet.why))
}

/// A line that an exercise may set: what is declared, what is measured, and what the book guesses or has from a source,
/// which a class may put otherwise.
fn settable(base: &Worked, name: &str) -> Result<Line, String> {
    let declared = match aim::declared(base, name) {
        Ok(line) => return Ok(line),
        Err(unmet) => unmet.why,
    };
    match (aim::measurable(base, name), aim::line(base, name)) {
        (Ok(line), _) => Ok(line),
        (Err(_), Ok(line)) if !matches!(base.laid.working.entry(line).how, How::Worked(_)) => Ok(line),
        (Err(measured), Ok(_)) => Err(measured.why),
        (Err(_), Err(_)) => Err(declared),
    }
}

/// A line's sum in words: "strained × honey to one of liquid".
pub(super) fn in_words(worked: &Worked, line: Line) -> String {
    let working = &worked.laid.working;
    match &working.entry(line).how {
        How::Worked(by) => {
            let name = |symbol: Symbol, at: usize| working.entry(by.with[symbol.index()][at]).name.clone();
            let sum = Writer { form: Form::Plain, atom: &name, with: Some(&by.with) }.write(&by.formula.is);
            format!("{} = {sum}", working.entry(line).name)
        }
        _ => String::new(),
    }
}

/// The formula a line is worked by.
pub(super) fn formula_of(worked: &Worked, line: Line) -> Option<&'static Formula> {
    match &worked.laid.working.entry(line).how {
        How::Worked(by) => Some(by.formula),
        _ => None,
    }
}
