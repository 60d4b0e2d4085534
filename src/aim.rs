//! A recipe turned round on one of its declared numbers, so that a line of it comes to a target; and lines set or
//! measured by name. What the terminal, a recipe's `aim` and a page ask is the same.

use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::measure::{self, Dimension, Unit};
use crate::recipe::Aim;
use crate::span::Spanned;
use crate::variation::{Worked, WorkedRecipe};
use crate::wanted::{Unmet, in_words};
use crate::working::{How, Id, turn_round};

/// An amount is looked for between a thousandth and a thousand times the recipe's.
const SPAN: f64 = 1000.0;

/// A recipe turned round.
#[derive(Clone, Debug)]
pub struct Aimed {
    /// The declared number that was moved.
    pub input: Line,
    /// The line that comes to the target.
    pub line: Line,
    /// Everything with it.
    pub worked: Worked,
}

/// The recipe with `by` moved until `line` comes to `to`, what is set in it left so, lines in `measured` as they were
/// measured.
///
/// # Errors
/// A name that no line has, a target of another kind, one that nothing or several amounts meet, or one that a
/// measurement already settles.
pub fn aimed(recipe: &Worked, aim: &Aim, measured: &[(Line, f64)]) -> Result<Aimed, Unmet> {
    let line = line(recipe, &aim.line.value)?;
    let input = declared(recipe, &aim.by.value)?;
    let target = value(&aim.to.value, recipe.laid.working.entry(line).unit)?;
    let working = &recipe.laid.working;
    // What was measured stays. A number that it came of is past; one that is still to come can be moved.
    let between = |of: &Line| working.leads_to(*of, line) && (working.leads_to(input, *of) || *of == line);
    if let Some((settled, _)) = measured.iter().find(|(of, _)| between(of)) {
        let name = &working.entry(*settled).name;
        return unmet(format!("`{name}` was measured, and `{}` follows from it", working.entry(line).name));
    }
    if !working.leads_to(input, line) {
        let (of, by) = (&working.entry(line).name, &working.entry(input).name);
        return unmet(format!("`{of}` does not depend on `{by}`"));
    }
    let now = recipe.at(input);
    let ask =
        |value: f64| recipe.set.iter().chain(measured).copied().chain([(input, value)]).collect::<Vec<_>>();
    let found = turn_round(working, ask, line, target, (now / SPAN, now * SPAN))
        .map_err(|none| Unmet { why: in_words(recipe, line, &none) })?;
    Ok(Aimed { input, line, worked: recipe.with(&ask(found)) })
}

fn unmet<T>(why: String) -> Result<T, Unmet> {
    Err(Unmet { why })
}

/// The line of that id or name.
///
/// # Errors
/// None is called so: with the ids there are.
pub fn line(recipe: &Worked, name: &str) -> Result<Line, Unmet> {
    let working = &recipe.laid.working;
    let by_id = Id::ALL.iter().find(|id| id.text() == name).and_then(|id| working.line(*id));
    let by_name = || working.lines().find(|line| working.entry(*line).name == name);
    by_id.or_else(by_name).ok_or_else(|| {
        let known: Vec<&str> = working.claimed().map(|(id, _)| id.text()).collect();
        Unmet { why: format!("no line is called `{name}`; those with a short name are {}", known.join(", ")) }
    })
}

/// The declared number of that name, or whose name begins with it: "honey" for "honey to one of liquid".
///
/// # Errors
/// None or several begin so: with all there are.
pub fn declared(recipe: &Worked, name: &str) -> Result<Line, Unmet> {
    let working = &recipe.laid.working;
    let given = |line: &Line| matches!(working.entry(*line).how, How::Given { .. });
    let all: Vec<Line> = working.lines().filter(given).collect();
    let plant = recipe.laid.ingredients.iter().find(|item| item.plant.as_deref() == Some(name));
    let name = plant.map_or(name, |item| item.words.as_str());
    let called = |line: &&Line| working.entry(**line).name == name;
    let begins = |line: &&Line| working.entry(**line).name.starts_with(name);
    if let Some(line) = all.iter().find(called) {
        return Ok(*line);
    }
    let known = || all.iter().map(|line| working.entry(*line).name.as_str()).collect::<Vec<_>>().join(", ");
    match all.iter().filter(begins).collect::<Vec<_>>()[..] {
        [line] => Ok(*line),
        [] => unmet(format!("nothing that is written is called `{name}`; what is written is {}", known())),
        _ => unmet(format!("several numbers begin with `{name}`: {}", known())),
    }
}

/// A line that a student may measure.
///
/// # Errors
/// It is none: with those there are.
pub fn measurable(recipe: &Worked, name: &str) -> Result<Line, Unmet> {
    let found = line(recipe, name)?;
    let working = &recipe.laid.working;
    if working.entry(found).measurable {
        return Ok(found);
    }
    let known: Vec<&str> = working
        .claimed()
        .filter(|(_, line)| working.entry(*line).measurable)
        .map(|(id, _)| id.text())
        .collect();
    unmet(format!("`{name}` is not measured in a kitchen; what can be is {}", known.join(", ")))
}

/// A text as a value of a line, in the unit it is kept in.
///
/// # Errors
/// It is of another kind, or no number.
pub fn value(text: &str, unit: &Unit) -> Result<f64, Unmet> {
    let text = text.trim();
    let read = match unit.dimension {
        _ if unit.text.starts_with('%') => measure::per_cent(text),
        Dimension::NONE => match measure::plain_number(text) {
            Some(plain) if plain > 0.0 => return Ok(plain / unit.printed),
            _ if text.ends_with('%') => measure::per_cent(text),
            _ => return unmet(format!("`{text}` is no plain number above nothing, such as 0.75")),
        },
        Dimension::MASS => measure::mass(text),
        Dimension::VOLUME => measure::volume(text),
        Dimension::TIME => measure::time(text),
        Dimension::TEMPERATURE => measure::temperature(text),
        // Liquid for each gram, and the like: a plain number in the line's own unit.
        _ => match text.trim_end_matches(unit.text).trim().parse::<f64>() {
            Ok(plain) if plain > 0.0 && plain.is_finite() => return Ok(plain / unit.printed),
            _ => measure::amount(text),
        },
    };
    let amount = read.map_err(|misread| Unmet { why: misread.message })?;
    if amount.low != amount.high {
        return unmet(format!("`{text}` is two numbers; write one"));
    }
    if amount.dimension() == unit.dimension || unit.text.starts_with('%') || unit.dimension == Dimension::NONE
    {
        return Ok(amount.low);
    }
    unmet(format!("`{text}` is {}; the line is in {}", amount.dimension().with_article(), unit.text))
}

/// What a recipe aims at and cannot be.
pub fn findings(recipe: &WorkedRecipe, into: &mut Vec<Finding>) {
    for aim in &recipe.recipe.aims {
        if let Err(none) = aimed(&recipe.base, aim, &[]) {
            let message = format!("`{}` cannot be brought to {}", aim.line.value, aim.to.value);
            let unknown = |name: &Spanned<String>, is: bool| is.then_some(name.span);
            let span = unknown(&aim.line, line(&recipe.base, &aim.line.value).is_err())
                .or_else(|| unknown(&aim.by, declared(&recipe.base, &aim.by.value).is_err()))
                .unwrap_or(aim.to.span);
            into.push(Finding::error(Code::BadNumber, span, message).why(none.why));
        }
    }
}
