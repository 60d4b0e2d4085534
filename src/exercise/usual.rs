//! The usual exercises of any recipe: find, convert, spot the error, compare, order the steps, check a claim, read a
//! label, budget. What a recipe has no lines for is left out.

use super::{Answer, Compared, Cost, Exercise, Within, Wrong};
use crate::calendar::Day;
use crate::cost::bill;
use crate::formula::Line;
use crate::formulary::Formulary;
use crate::measure::{Dimension, Measure, decimal, show_usual};
use crate::span::{Span, Spanned};
use crate::variation::{Worked, WorkedRecipe};
use crate::working::{Id, Rounds};

/// What is measured comes out so many times what the book has, version by version.
const OFF: [f64; 6] = [0.8, 1.2, 0.9, 1.1, 0.75, 1.25];
/// A figure is shown wrong by so much: two ways to slip with a half and a double, and a place of the point.
const SLIPS: [f64; 3] = [2.0, 0.5, 10.0];
/// Fewer steps than these have no order to ask for.
const LEAST_STEPS: usize = 4;
/// Lines shown where one of them is wrong.
const SHOWN: usize = 4;
/// Where a lesson has no date, it is made on a day of this month.
const SOME_DAY: &str = "2026-10-05";

/// The usual exercises of a recipe, asked for at `at`.
pub fn usual(whole: &WorkedRecipe, book: &Formulary, made: Option<Day>, at: Span) -> Vec<Exercise> {
    let make = Make { base: &whole.base, at };
    [
        make.find(),
        make.count(),
        make.convert(),
        make.spot(),
        make.compare(whole),
        make.order(),
        make.keeps(),
        make.label(made),
        make.cost(book, "What it costs", Cost::Used),
        make.cost(book, "What is paid for it", Cost::Bought),
    ]
    .into_iter()
    .flatten()
    .collect()
}

struct Make<'a> {
    base: &'a Worked,
    at: Span,
}

impl Make<'_> {
    fn text(&self, text: impl Into<String>) -> Spanned<String> {
        Spanned::new(text.into(), self.at)
    }

    /// An exercise about the recipe as it stands.
    fn plain(&self, name: &str, answer: Answer) -> Exercise {
        Exercise {
            name: self.text(name),
            ask: self.text(""),
            recipe: None,
            with: Vec::new(),
            make: None,
            sum: Vec::new(),
            answer,
            within: Within::Share(0.05),
            hint: None,
            span: self.at,
        }
    }

    /// The name by which a line is found again.
    fn name(&self, line: Line) -> String {
        let working = &self.base.laid.working;
        working.id_of(line).map_or(working.entry(line).name.clone(), |id| id.text().to_string())
    }

    fn words(&self, line: Line) -> &str {
        &self.base.laid.working.entry(line).name
    }

    /// The first line that is measured and an amount of the short sum that follows from it.
    fn measured(&self) -> Option<(Line, Line)> {
        let working = &self.base.laid.working;
        let measured = working.lines().filter(|line| working.entry(*line).measurable);
        measured.into_iter().find_map(|line| {
            let amount = |(id, _): &(Id, Line)| id.rounds() != Rounds::Down;
            working.following(line).find(amount).map(|(_, result)| (line, result))
        })
    }

    /// Figures a kitchen could have measured of a line.
    fn near(&self, line: Line) -> Vec<Spanned<String>> {
        let unit = self.base.laid.working.entry(line).unit;
        let figure = |off: &f64| {
            let value = self.base.at(line) * off * unit.printed;
            let step = match value {
                small if small < 20.0 => 1.0,
                small if small < 200.0 => 5.0,
                _ => 10.0,
            };
            self.text(format!("{} {}", decimal((value / step).round().max(1.0) * step, 0), unit.text))
        };
        OFF.iter().map(figure).collect()
    }

    fn find(&self) -> Option<Exercise> {
        let (measured, result) = self.measured()?;
        let (from, to) = (self.words(measured), self.words(result));
        let name = self.name(measured);
        let exercise = self.plain("What follows", Answer::Lines(vec![self.text(self.name(result))], None));
        Some(Exercise {
            ask: self.text(format!(
                "{{recipe}}: in your own pot “{from}” comes to {{{name}}}. How much is “{to}” then?"
            )),
            with: vec![(self.text(name), self.near(measured))],
            ..exercise
        })
    }

    fn count(&self) -> Option<Exercise> {
        let working = &self.base.laid.working;
        let id = [Id::Doses, Id::Bottles, Id::Pieces].into_iter().find(|id| working.line(*id).is_some())?;
        // A count is what there is, by the size of one.
        let mut inputs = working.entry(working.line(id)?).how.inputs();
        let (of, size) = (inputs.next()?, inputs.next()?);
        working.entry(of).measurable.then_some(())?;
        let vessel = self.base.laid.preparation.map(|kind| kind.vessel.words().1);
        let counted = vessel.filter(|_| id == Id::Bottles).unwrap_or(id.text());
        let name = self.name(of);
        let exercise = self.plain("How many", Answer::Lines(vec![self.text(id.text())], None));
        Some(Exercise {
            ask: self.text(format!(
                "{{recipe}}: “{}” comes to {{{name}}}. How many whole {counted} is that, at {{{}}} each?",
                self.words(of),
                self.words(size)
            )),
            with: vec![(self.text(name), self.near(of))],
            within: Within::Exact,
            ..exercise
        })
    }

    fn convert(&self) -> Option<Exercise> {
        let line = self.base.made()?;
        let entry = self.base.laid.working.entry(line);
        let (unit, words) = match entry.unit.dimension {
            Dimension::VOLUME => (Measure::FlOz, "fluid ounces"),
            Dimension::MASS => (Measure::OzWeight, "ounces by weight"),
            _ => return None,
        };
        let name = self.name(line);
        let exercise =
            self.plain("In another measure", Answer::Lines(vec![self.text(name.as_str())], Some(unit)));
        Some(Exercise {
            ask: self
                .text(format!("{{recipe}}, {{make}} the batch, makes {{{name}}}. How many {words} is that?")),
            make: Some(self.batches()),
            within: Within::Share(0.02),
            hint: Some(format!("One {} is {}.", unit.text(), show_usual(unit.factor().to_f64(), entry.unit))),
            ..exercise
        })
    }

    fn spot(&self) -> Option<Exercise> {
        let working = &self.base.laid.working;
        let mut lines: Vec<Line> = Vec::new();
        for (id, line) in working.claimed() {
            let worked = working.entry(line).how.inputs().next().is_some();
            let there = id.first() && worked && self.base.at(line) > 0.0;
            if there && !lines.contains(&line) && lines.len() < SHOWN {
                lines.push(line);
            }
        }
        let lines: Vec<Spanned<String>> = lines.iter().map(|line| self.text(self.name(*line))).collect();
        // From the middle on, so that the first version does not begin with the first line.
        let wrong: Vec<Spanned<String>> =
            lines.iter().cycle().skip(lines.len() / 2).take(lines.len()).cloned().collect();
        let shown = SLIPS.iter().map(|slip| Wrong::Times(*slip)).collect();
        (lines.len() > 1).then(|| self.plain("Find the mistake", Answer::Spot { lines, wrong, shown }))
    }

    fn compare(&self, whole: &WorkedRecipe) -> Option<Exercise> {
        const LINES: [Id; 6] =
            [Id::Solids, Id::Abv, Id::Strength, Id::PlantPerDose, Id::Finished, Id::FinishedWeight];
        let differs = |id: Id, other: &Worked| matches!((self.base.value(id), other.value(id)), (Some(a), Some(b)) if (a - b).abs() > 0.01 * a.abs());
        let others = |id: Id| -> Vec<Spanned<String>> {
            let differing = whole.variations.iter().filter(|other| differs(id, other));
            differing.map(|other| self.text(other.name.as_str())).collect()
        };
        let (id, others) =
            LINES.iter().map(|id| (*id, others(*id))).find(|(_, others)| !others.is_empty())?;
        let compared = Compared::Variation(self.text(id.text()), others);
        Some(self.plain("Which has more", Answer::Compare(compared)))
    }

    fn order(&self) -> Option<Exercise> {
        (self.base.laid.steps.len() >= LEAST_STEPS).then(|| self.plain("In order", Answer::Order))
    }

    /// Batches of other sizes than the recipe's.
    fn batches(&self) -> Vec<Spanned<String>> {
        OFF.iter().map(|off| self.text(format!("{} times", decimal(off * 2.0, 1)))).collect()
    }

    fn cost(&self, book: &Formulary, name: &str, what: Cost) -> Option<Exercise> {
        bill(self.base, &book.course.prices)?;
        Some(Exercise { make: Some(self.batches()), ..self.plain(name, Answer::Cost(what)) })
    }

    fn keeps(&self) -> Option<Exercise> {
        self.base.value(Id::Finished).map(|_| self.plain("Does it keep", Answer::Keeps))
    }

    fn label(&self, made: Option<Day>) -> Option<Exercise> {
        let first = made.or(Day::read(SOME_DAY).ok())?;
        let days = (0..6).map(|n| self.text(first.after(n * 5).iso())).collect();
        Some(self.plain("Read the label", Answer::UseBy(days)))
    }
}
