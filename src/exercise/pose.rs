//! An exercise put as the question of one version, with its answer.

use std::collections::BTreeMap;

use super::ask::{Holes, fill};
use super::draw::Seed;
use super::judge::{Asked, judge};
use super::{Answer, Draw, Exercise, Within, sum};
use crate::aim;
use crate::calendar::Day;
use crate::diagnostic::{Code, Finding};
use crate::formula::equation::{Form, Writer};
use crate::formula::expr::Symbol;
use crate::formula::{Formula, Line};
use crate::formulary::Formulary;
use crate::measure::{Dimension, Measure, Unit, decimal, show, show_usual, usual_places, wanted, whole};
use crate::span::{Span, Spanned};
use crate::variation::{Worked, WorkedRecipe};
use crate::wanted;
use crate::working::{How, Id, Rounds};

/// Where a list of texts begins is drawn below this.
const MOST_TEXTS: usize = 1000;

/// What an exercise stands in.
#[derive(Clone, Copy)]
pub struct Stage<'a> {
    /// The recipe it is about; none in a lesson without one.
    pub recipe: Option<&'a WorkedRecipe>,
    /// The book.
    pub book: &'a Formulary,
    /// When the lesson's recipes are made, where it has a date.
    pub made: Option<Day>,
}

/// An answer in figures.
#[derive(Clone, Debug)]
pub struct Answered {
    /// What is asked for: the line's name.
    pub name: String,
    /// In the line's unit.
    pub value: f64,
    /// The line's unit.
    pub unit: &'static Unit,
    /// The unit the student is asked to answer in; none where it is the line's own.
    pub asked_in: Option<Measure>,
    /// What stands behind the blank: "cups", "mL", "£".
    pub blank: String,
    /// As printed in the key.
    pub text: String,
}

/// What a student is to find.
#[derive(Clone, Debug)]
pub enum Right {
    /// Figures, one a blank.
    Figures(Vec<Answered>),
    /// One of the options, by its place.
    Option(usize),
    /// The options in this order.
    Order(Vec<usize>),
}

/// A question with its answer.
#[derive(Clone, Debug)]
pub struct Posed {
    /// The exercise's name.
    pub name: String,
    /// The question, figures filled in.
    pub ask: String,
    /// What is shown to be judged: a name and a figure a row.
    pub shown: Vec<[String; 2]>,
    /// What can be chosen, or put in order.
    pub options: Vec<String>,
    /// What is right.
    pub right: Right,
    /// How near is right.
    pub within: Within,
    /// Which formula helps, in words.
    pub hint: String,
    /// That formula.
    pub formula: Option<&'static Formula>,
    /// Why, in a sentence; empty where the lines say it.
    pub because: String,
    /// The working the answer comes of, and which of its lines lead there.
    pub worked: Option<(Worked, Vec<Line>)>,
}

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

/// The lines, with what the version sets.
fn ground(
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

impl Posed {
    /// A question of which only the answer is known.
    pub(super) fn of(right: Right) -> Posed {
        Posed {
            name: String::new(),
            ask: String::new(),
            shown: Vec::new(),
            options: Vec::new(),
            right,
            within: Within::Exact,
            hint: String::new(),
            formula: None,
            because: String::new(),
            worked: None,
        }
    }

    /// Whether there is anything to find: not nothing, and more than one to choose from.
    pub fn is_worth_asking(&self) -> bool {
        match &self.right {
            Right::Figures(answers) => answers.iter().all(|answer| answer.value > 0.0),
            Right::Option(_) => self.options.len() > 1,
            Right::Order(places) => places.len() > 1,
        }
    }

    /// The answer as the key prints it.
    pub fn answer(&self) -> String {
        let letter = |place: &usize| letter(*place);
        match &self.right {
            Right::Figures(answers) => match &answers[..] {
                [one] => one.text.clone(),
                _ => {
                    let each = answers.iter().map(|answer| format!("{}: {}", answer.name, answer.text));
                    each.collect::<Vec<_>>().join("; ")
                }
            },
            Right::Option(place) => {
                let option = self.options.get(*place).map_or("", String::as_str);
                format!("{}: {option}", letter(place))
            }
            Right::Order(places) => places.iter().map(letter).collect::<Vec<_>>().join(" "),
        }
    }
}

/// The letter an option stands under: "a".
pub fn letter(place: usize) -> String {
    char::from(b'a' + (place % 26) as u8).to_string()
}
