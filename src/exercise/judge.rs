//! Questions that are answered by choosing or putting in order: claims, keeping, comparisons, mistakes, steps, labels.

use super::bill::cost;
use super::draw::Seed;
use super::ground::{Ground, formula_of, in_words, set_up};
use super::posed::{Posed, Right, Stage};
use super::{Answer, Compared, Wrong};
use crate::aim;
use crate::calendar::Day;
use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::keeping::{self, Verdict};
use crate::measure::show;
use crate::method::{Done, Say};
use crate::span::{Span, Spanned};
use crate::variation::Worked;

/// More steps than these in one question are a puzzle, not an exercise.
const MOST_STEPS: usize = 8;

/// More figures than these are not looked through.
const MOST_SHOWN: usize = 10;

/// What a version's question is made of.
#[derive(Clone, Copy)]
pub(super) struct Asked<'a> {
    pub(super) ground: &'a Ground,
    pub(super) stage: &'a Stage<'a>,
    pub(super) drawn: &'a [(Spanned<String>, Spanned<String>)],
    pub(super) make: Option<&'a Spanned<String>>,
    pub(super) version: usize,
}

/// The question and what is right, of what is not answered by a recipe's lines in figures.
pub(super) fn judge(answer: &Answer, asked: &Asked, choices: &mut Seed) -> Result<Posed, Box<Finding>> {
    let Asked { ground, stage, version, .. } = *asked;
    match answer {
        Answer::Claim { line, least, limit } => claim(ground, line, *least, limit),
        Answer::Keeps => keeps(ground, stage),
        Answer::Compare(Compared::Lines(one, other)) => two_lines(ground, one, other),
        Answer::Compare(Compared::Variation(line, with)) => with_variation(asked, line, turn(with, version)?),
        Answer::Spot { lines, wrong, shown } => {
            spot(ground, lines, turn(wrong, version)?, turn(shown, version)?)
        }
        Answer::Order => order(ground, choices),
        Answer::UseBy(made) => use_by(ground, stage, made, choices, version),
        Answer::Cost(what) => cost(ground, stage, *what),
        // Worked where the figures are: see `pose`.
        Answer::Lines(..) => Err(nothing_there()),
    }
}

fn nothing_there() -> Box<Finding> {
    let finding = Finding::error(Code::MissingKey, Span::default(), "there is nothing to choose from");
    Box::new(finding.why("a list stands empty").write("one entry or more"))
}

/// Version by version the next of a list.
fn turn<T>(of: &[T], version: usize) -> Result<&T, Box<Finding>> {
    of.get(version % of.len().max(1)).ok_or_else(nothing_there)
}

fn yes_no(right: bool) -> Posed {
    let options = vec!["yes".to_string(), "no".to_string()];
    Posed { options, ..Posed::of(Right::Option(usize::from(!right))) }
}

fn claim(
    ground: &Ground,
    name: &Spanned<String>,
    least: bool,
    limit: &Spanned<String>,
) -> Result<Posed, Box<Finding>> {
    let line = ground.line(name)?;
    let worked = &ground.worked;
    let unit = worked.laid.working.entry(line).unit;
    let value = aim::value(&limit.value, unit).map_err(|unmet| {
        let message = format!("`{}` is no figure for `{}`", limit.value, name.value);
        Box::new(Finding::error(Code::BadNumber, limit.span, message).why(unmet.why))
    })?;
    let at = worked.at(line);
    // What is printed alike counts as reached: a student has no other figures.
    let places = worked.places[line.index()];
    let alike = show(at, unit, places) == show(value, unit, places);
    let right = alike || if least { at >= value } else { at <= value };
    Ok(Posed {
        hint: in_words(worked, line),
        formula: formula_of(worked, line),
        because: format!("{}: {}", worked.laid.working.entry(line).name, worked.shown(line)),
        worked: Some((worked.clone(), vec![line])),
        ..yes_no(right)
    })
}

fn keeps(ground: &Ground, stage: &Stage) -> Result<Posed, Box<Finding>> {
    let worked = &ground.worked;
    let ph = stage.recipe.and_then(|recipe| recipe.recipe.ph());
    let judged = keeping::judge(worked, ph);
    let options =
        vec!["it keeps".to_string(), "it does not".to_string(), "no published rule decides".to_string()];
    let place = match judged.rung.verdict {
        Verdict::Keeps => 0,
        Verdict::DoesNot => 1,
        Verdict::CannotTell => 2,
    };
    Ok(Posed {
        ask: format!("Does {} keep out of the cold, even where what is not known falls badly?", worked.name),
        options,
        hint: "Hold its figures against the limits that the page shows, from what binds first.".to_string(),
        because: format!("class {}: {}", judged.rung.class, judged.because(worked)),
        ..Posed::of(Right::Option(place))
    })
}

fn two_lines(ground: &Ground, one: &Spanned<String>, other: &Spanned<String>) -> Result<Posed, Box<Finding>> {
    let (a, b) = (ground.line(one)?, ground.line(other)?);
    let working = &ground.worked.laid.working;
    let (first, second) = (working.entry(a), working.entry(b));
    if a == b {
        let message = format!("`{}` and `{}` are one line", one.value, other.value);
        let finding = Finding::error(Code::WrongShape, other.span, message);
        return Err(Box::new(finding.why("a line is neither more nor less than itself")));
    }
    if first.unit.dimension != second.unit.dimension {
        let message = format!("`{}` and `{}` are of two kinds", one.value, other.value);
        let kinds = [first, second].map(|entry| entry.unit.dimension.with_article());
        let finding = Finding::error(Code::WrongDimension, other.span, message);
        return Err(Box::new(finding.why(format!("{} is not more or less than {}", kinds[0], kinds[1]))));
    }
    let names = [first.name.clone(), second.name.clone()];
    Ok(compared((&ground.worked, a), (&ground.worked, b), names, "which is more"))
}

fn with_variation(
    asked: &Asked,
    line: &Spanned<String>,
    with: &Spanned<String>,
) -> Result<Posed, Box<Finding>> {
    let Asked { ground, stage, .. } = *asked;
    let variations = stage.recipe.map_or(&[][..], |recipe| &recipe.variations);
    let Some(other) = variations.iter().find(|other| other.name == with.value) else {
        let known: Vec<&str> = variations.iter().map(|other| other.name.as_str()).collect();
        let why =
            if known.is_empty() { "it has none".to_string() } else { format!("it has {}", known.join("; ")) };
        let message = format!("the recipe has no variation `{}`", with.value);
        return Err(Box::new(Finding::error(Code::UnknownName, with.span, message).why(why)));
    };
    // Set alike, or the batch would be what is compared.
    let other = &set_up(other, asked.drawn, asked.make)?;
    let a = ground.line(line)?;
    let b = aim::line(other, &line.value).map_err(|unmet| {
        let message = format!("`{}` has no `{}`", with.value, line.value);
        Box::new(Finding::error(Code::UnknownName, line.span, message).why(unmet.why))
    })?;
    let worked = &ground.worked;
    let name = worked.laid.working.entry(a).name.clone();
    let names = [worked.name.clone(), other.name.clone()];
    let mut posed = compared((worked, a), (other, b), names, &name);
    posed.ask = format!("Which has more of “{name}”: the recipe as it stands, or “{}”?", other.name);
    Ok(posed)
}

fn compared(one: (&Worked, Line), other: (&Worked, Line), names: [String; 2], what: &str) -> Posed {
    let ((a, at_a), (b, at_b)) = (one, other);
    let (x, y) = (a.at(at_a), b.at(at_b));
    let same = a.shown(at_a) == b.shown(at_b);
    let place = if same { 2 } else { usize::from(x < y) };
    let [first, second] = names;
    Posed {
        ask: format!("Of these two, {what}: {first} or {second}?"),
        because: format!("{first}: {}; {second}: {}", a.shown(at_a), b.shown(at_b)),
        options: vec![first, second, "both alike".to_string()],
        hint: in_words(a, at_a),
        formula: formula_of(a, at_a),
        worked: Some((a.clone(), vec![at_a])),
        ..Posed::of(Right::Option(place))
    }
}

fn spot(
    ground: &Ground,
    names: &[Spanned<String>],
    wrong: &Spanned<String>,
    shown: &Wrong,
) -> Result<Posed, Box<Finding>> {
    let worked = &ground.worked;
    let working = &worked.laid.working;
    let bad = ground.line(wrong)?;
    let mut seen: Vec<Line> = Vec::new();
    for name in names {
        let line = ground.line(name)?;
        if seen.contains(&line) || seen.len() == MOST_SHOWN {
            let message = format!("`{}` is shown already, or is one too many", name.value);
            let finding = Finding::error(Code::TwiceWritten, name.span, message);
            return Err(Box::new(finding.why("each figure is shown once, and ten at the most")));
        }
        seen.push(line);
    }
    let entry = working.entry(bad);
    let (value, figure) = match shown {
        Wrong::As(text) => {
            let value = aim::value(text, entry.unit).map_err(|unmet| {
                let message = format!("`{text}` is no figure for `{}`", wrong.value);
                Box::new(Finding::error(Code::BadNumber, wrong.span, message).why(unmet.why))
            })?;
            (value, Some(text.replace(' ', "\u{a0}")))
        }
        Wrong::Times(times) => (worked.at(bad) * times, None),
    };
    let as_shown = show(value, entry.unit, worked.places[bad.index()]);
    if as_shown == worked.shown(bad) {
        let message = format!("`{}` is shown as what it is", wrong.value);
        let finding = Finding::error(Code::BadNumber, wrong.span, message);
        return Err(Box::new(
            finding.why("then nothing is wrong, and there is nothing to find").write("times: 2"),
        ));
    }
    let figure = figure.unwrap_or(as_shown);
    let rows: Vec<[String; 2]> = seen
        .iter()
        .map(|line| {
            let shown = if *line == bad { figure.clone() } else { worked.shown(*line) };
            [working.entry(*line).name.clone(), shown]
        })
        .collect();
    let place = seen.iter().position(|line| *line == bad).unwrap_or(0);
    Ok(Posed {
        ask: "One of these figures is wrong. Which?".to_string(),
        options: rows.iter().map(|[name, _]| name.clone()).collect(),
        shown: rows,
        // The wrong one's own formula would name it.
        hint: "Work each from those it follows from, and hold it against what is shown.".to_string(),
        because: format!("{}: {}", entry.name, worked.shown(bad)),
        worked: Some((worked.clone(), vec![bad])),
        ..Posed::of(Right::Option(place))
    })
}

/// What a step is called where it stands among others: its first sentence, without figures that would give its place
/// away.
fn in_short(done: &Done) -> String {
    let words: String = done
        .say
        .iter()
        .map(|say| match say {
            Say::Words(words) => words.clone(),
            Say::Strong(_) => String::new(),
            _ => "…".to_string(),
        })
        .collect();
    let first = words.split(". ").next().unwrap_or(&words).trim().trim_end_matches('.').to_string();
    format!("{}: {first}", done.name)
}

fn order(ground: &Ground, choices: &mut Seed) -> Result<Posed, Box<Finding>> {
    let steps: Vec<String> = ground.worked.laid.steps.iter().take(MOST_STEPS).map(in_short).collect();
    let alike = steps.iter().enumerate().any(|(n, step)| steps[..n].contains(step));
    if steps.len() < 2 || alike {
        let message = "the recipe has no steps that can be put in order";
        let finding = Finding::error(Code::WrongShape, Span::default(), message);
        return Err(Box::new(
            finding
                .why("one step is in order by itself, and of two alike either may be first")
                .write("another question"),
        ));
    }
    let shuffled = choices.shuffled(steps.len());
    // The option that stands at each place of the right order.
    let right = (0..steps.len()).filter_map(|step| shuffled.iter().position(|place| *place == step));
    Ok(Posed {
        ask: match ground.worked.laid.steps.len() > MOST_STEPS {
            true => format!("Put the first {MOST_STEPS} steps of {} in order.", ground.worked.name),
            false => format!("Put the steps of {} in order.", ground.worked.name),
        },
        right: Right::Order(right.collect()),
        options: shuffled.iter().filter_map(|place| steps.get(*place).cloned()).collect(),
        hint: "What has to be there before the next step can be done? The order of work says it.".to_string(),
        ..Posed::of(Right::Option(0))
    })
}

fn use_by(
    ground: &Ground,
    stage: &Stage,
    made: &[Spanned<String>],
    choices: &mut Seed,
    version: usize,
) -> Result<Posed, Box<Finding>> {
    let worked = &ground.worked;
    let ph = stage.recipe.and_then(|recipe| recipe.recipe.ph());
    let rung = keeping::judge(worked, ph).rung;
    let mut days = Vec::new();
    for text in made {
        days.push(Day::read(&text.value).map_err(|misread| {
            let finding = Finding::error(Code::BadNumber, text.span, misread.message);
            Box::new(finding.write("2026-10-12"))
        })?);
    }
    let Some(made) = turn(&days, version).ok().copied().or(stage.made) else {
        let message = "no day is said on which it is made";
        return Err(Box::new(Finding::error(Code::MissingKey, Span::default(), message)));
    };
    // What comes of reading a week as a month, or one row too far down.
    let other = [7, 21, 30, 60, 90, 180, 365].into_iter().filter(|days| *days != rung.days);
    let mut days: Vec<u32> = other.take(3).chain([rung.days]).collect();
    let shuffled = choices.shuffled(days.len());
    days = shuffled.iter().filter_map(|place| days.get(*place).copied()).collect();
    let place = days.iter().position(|days| *days == rung.days).unwrap_or(0);
    Ok(Posed {
        ask: format!(
            "The label says: {}, class {}, made on {}. By what day is it used?",
            worked.name,
            rung.class,
            made.words()
        ),
        options: days.iter().map(|days| made.after(*days).words()).collect(),
        hint: "The class says where it is kept and how many days it has.".to_string(),
        because: format!("class {}: {}", rung.class, rung.words),
        ..Posed::of(Right::Option(place))
    })
}
