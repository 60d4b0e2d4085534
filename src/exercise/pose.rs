//! An exercise put as the question of one version, with its answer.

use super::ask::{Holes, fill};
use super::draw::Seed;
use super::ground::{Ground, formula_of, ground, in_words};
use super::judge::{Asked, judge};
use super::posed::{Answered, Posed, Right, Stage};
use super::{Answer, Draw, Exercise, Within};
use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::measure::{Dimension, Measure, decimal, show, show_usual, usual_places, whole};
use crate::span::Spanned;
use crate::working::{Id, Rounds};

/// Where a list of texts begins is drawn below this.
const MOST_TEXTS: usize = 1000;

/// The exercise as the question of the `version`-th class of a book's `seed`.
///
/// # Errors
/// What cannot be asked: a line or a figure that is not there, numbers that cannot be.
pub fn pose(exercise: &Exercise, stage: &Stage, seed: u64, version: usize) -> Result<Posed, Box<Finding>> {
    // Two recipes may have an exercise of one name.
    let of = stage.recipe.map_or("", |recipe| recipe.base.name.as_str());
    let key = format!("{} / {of}", exercise.name.value);
    let mut numbers = Seed::of(seed, &key, 0);
    let mut drawn: Vec<(Spanned<String>, Spanned<String>)> = Vec::new();
    // Lists of one length go together: a plant and its own moisture.
    let first = numbers.below(MOST_TEXTS);
    let one = |draw: &Draw| draw.get((first + version) % draw.len().max(1)).cloned();
    for (name, draw) in &exercise.with {
        drawn.extend(one(draw).map(|text| (name.clone(), text)));
    }
    let make = exercise.make.as_ref().and_then(one);
    let ground = ground(exercise, stage, &drawn, make.as_ref())?;
    if let Some(line) = ground.worked.laid.working.impossible(&ground.worked.values) {
        let name = &ground.worked.laid.working.entry(line).name;
        let message = format!(
            "version {} cannot be worked: `{name}` comes to nothing or less",
            super::LETTERS[version % super::LETTERS.len()]
        );
        let finding = Finding::error(Code::BadNumber, exercise.name.span, message);
        return Err(Box::new(finding.why("with the numbers it draws more goes out than there is")));
    }
    // A seed of its own for what is chosen, so that a new number does not shuffle the options.
    let mut choices = Seed::of(seed, &key, version + 1);
    let mut posed = match &exercise.answer {
        Answer::Lines(lines, unit) => figures(&ground, lines, *unit, &stage.book.course.prices.currency)?,
        other => {
            let asked = Asked { ground: &ground, stage, drawn: &drawn, make: make.as_ref(), version };
            judge(other, &asked, &mut choices)?
        }
    };
    posed.name = exercise.name.value.clone();
    posed.within = match posed.right {
        Right::Figures(_) => exercise.within,
        _ => Within::Exact,
    };
    let holes = Holes { ground: &ground, drawn: &drawn, make: make.as_ref(), stage };
    if let Some(hint) = &exercise.hint {
        posed.hint = fill(&Spanned::new(hint.clone(), exercise.name.span), &holes)?;
    }
    let own = std::mem::take(&mut posed.ask);
    posed.ask = match exercise.ask.value.is_empty() {
        true => own,
        false => fill(&exercise.ask, &holes)?,
    };
    Ok(posed)
}

/// A question that is answered in figures.
fn figures(
    ground: &Ground,
    names: &[Spanned<String>],
    unit: Option<Measure>,
    currency: &str,
) -> Result<Posed, Box<Finding>> {
    let lines: Vec<Line> = names.iter().map(|name| ground.line(name)).collect::<Result<_, _>>()?;
    let answers = lines.iter().map(|line| answered(ground, *line, unit, currency)).collect::<Vec<_>>();
    let other = |(answer, _): &(&Answered, &Spanned<String>)| {
        unit.is_some_and(|unit| answer.unit.dimension != unit.dimension())
    };
    if let (Some(unit), Some((answer, name))) = (unit, answers.iter().zip(names).find(other)) {
        let message = format!("`{}` is not measured in {}", name.value, unit.plural());
        let finding = Finding::error(Code::WrongDimension, name.span, message);
        let why = format!("it is {}", answer.unit.dimension.with_article());
        return Err(Box::new(finding.why(why)));
    }
    let first = lines.first().copied();
    Ok(Posed {
        hint: first.map_or(String::new(), |line| in_words(&ground.worked, line)),
        formula: first.and_then(|line| formula_of(&ground.worked, line)),
        worked: Some((ground.worked.clone(), lines)),
        ..Posed::of(Right::Figures(answers))
    })
}

/// A line as an answer: what people count is whole.
fn answered(ground: &Ground, line: Line, asked_in: Option<Measure>, currency: &str) -> Answered {
    let worked = &ground.worked;
    let entry = worked.laid.working.entry(line);
    let counted = worked.laid.working.id_of(line).is_some_and(|id: Id| id.rounds() == Rounds::Down);
    let value = if counted { whole(worked.at(line)) } else { worked.at(line) };
    let own = match counted {
        true => show(value, entry.unit, 0),
        false => show_usual(value, entry.unit),
    };
    let money = entry.unit.dimension == Dimension::MONEY;
    let text = match asked_in {
        None if money => format!("{currency}{own}"),
        None => own,
        Some(unit) => {
            let count = unit.of_base(value);
            let number = decimal(count, usual_places(count, &crate::measure::unit::ONE));
            format!("{number}\u{a0}{} ({own})", if count > 1.0 { unit.plural() } else { unit.text() })
        }
    };
    let own = if money { currency } else { entry.unit.text };
    let blank = match asked_in {
        Some(unit) => unit.plural(),
        None => own,
    };
    Answered { name: entry.name.clone(), value, unit: entry.unit, asked_in, blank: blank.to_string(), text }
}
