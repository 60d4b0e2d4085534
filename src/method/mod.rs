//! The method: a recipe's steps laid down as lines of a working, one file a kind of step.
//!
//! Each step says its formulas, its sentence, its time and what it needs; the account at the end
//! closes the books. A fault in the order or the basis of steps is a finding with its place.

mod account;
mod add;
mod again;
mod boil_to;
mod bottle;
mod combine;
mod cool;
mod dilute;
mod dough;
mod kind;
mod laid;
mod laying;
mod liquid;
mod melt;
mod order;
mod percolate;
mod pour;
mod put_in;
mod reduce;
mod simmer;
mod spread;
mod steep;
mod strain;
mod sweeten;
mod weighed;

pub(crate) use account::activity_is_known;
pub use laid::{Done, Hazard, Ingredient, Laid, Level, Say};

use laying::{Aside, InPan, Kept, Laying};

use crate::batch::ALL_WATER;
use crate::diagnostic::{Code, Finding, stops};
use crate::formula::Line;
use crate::formula::catalogue::pan::{AddTimes, AddVolumes, AddWeights};
use crate::formulary::Formulary;
use crate::recipe::{Recipe, Step};
use crate::span::Spanned;
use crate::working::{Id, MOST_ASSUMPTIONS, Working};

/// Lays a recipe down. None where a fault leaves nothing to evaluate; the faults are findings.
pub fn lay_down(recipe: &Recipe, book: &Formulary, findings: &mut Vec<Finding>) -> Option<Laid> {
    let before = findings.len();
    let mut at = Laying::new(recipe, book, Working::new(), findings);
    kind::check(&mut at);
    at.lay_steps();
    kind::check_made(&mut at);
    account::close(&mut at);
    order::tell_idle(&mut at);
    let Laying {
        mut work,
        ingredients,
        done,
        to_hand,
        batch,
        hazards,
        marc,
        sweet_given,
        poured,
        plant_ids,
        findings,
        faulty,
        ..
    } = at;
    // Without one of its plants its sums would be about something else.
    if faulty || stops(&findings[before..]) {
        return None;
    }
    work.close();
    check(&work, recipe, findings);
    if stops(&findings[before..]) {
        return None;
    }
    let honey = batch.holds_honey();
    Some(Laid {
        working: work,
        preparation: Some(recipe.preparation.value),
        ingredients,
        steps: done,
        to_hand,
        honey,
        batch,
        hazards,
        at_first: marc.at_first,
        sweet_given,
        poured,
        plants: plant_ids,
    })
}

/// Nothing below nothing: at the usual values an error, at an end of the range a warning.
fn check(work: &Working, recipe: &Recipe, findings: &mut Vec<Finding>) {
    if work.assumptions() > MOST_ASSUMPTIONS {
        let message =
            format!("{} assumptions meet in one recipe; no reader could weigh them", work.assumptions());
        findings.push(Finding::error(Code::BelowNothing, recipe.name.span, message));
        return;
    }
    let values = work.evaluate(&[]);
    let step_of = |line: Line| {
        let step = recipe.method.get(work.entry(line).step.wrapping_sub(1));
        step.map(|step| &step.value)
    };
    let fault = |line: Line, value: f64| {
        let entry = work.entry(line);
        let at = recipe.method.get(entry.step.wrapping_sub(1)).map_or(recipe.name.span, |step| step.span);
        let amount = crate::measure::show(value, entry.unit, crate::measure::usual_places(value, entry.unit));
        (at, format!("`{}` comes to {amount}", entry.name))
    };
    if let Some(line) = work.impossible(&values) {
        let (at, message) = fault(line, values[line.index()]);
        // All the water there is comes to less than nothing only where a syrup is boiled down past its sugar.
        let reduced = recipe.method.iter().find(|step| matches!(step.value, Step::Reduce(_)));
        if let Some(step) = reduced.filter(|_| work.entry(line).name.starts_with(ALL_WATER)) {
            let less = "it is to be boiled down to less than what does not boil away";
            findings.push(
                Finding::error(Code::BelowNothing, step.span, less)
                    .why(message)
                    .write("- reduce: ... before - sweeten: {...}, or to more"),
            );
            return;
        }
        findings.push(match step_of(line) {
            Some(Step::Reduce(_)) => {
                Finding::error(Code::BelowNothing, at, "it is to be boiled down to more than there is")
                    .why(message)
                    .write("to 1/2 of the liquid")
            }
            Some(Step::Combine { of, .. }) => {
                let message = format!("{message}: more is poured than was made");
                Finding::error(Code::BelowNothing, at, message)
                    .why("pour less of it, or make more where it is made")
                    .write(format!("combine: {{{}: 50 mL}}", of.value))
            }
            Some(step @ (Step::MakeUp(_) | Step::Dilute(_))) => {
                let less = format!("`{}` is to less than there is already", step.name());
                Finding::error(Code::BelowNothing, at, less).why(message).write("a larger amount")
            }
            _ => Finding::error(Code::BelowNothing, at, message)
                .why("more is taken away than there is")
                .write("more water, less plant, or less time on the stove"),
        });
        return;
    }
    too_few(work, recipe, &values, findings);
    let lows: Vec<f64> = work.range(&[]).into_iter().map(|range| range.low).collect();
    if let Some(line) = work.impossible(&lows) {
        let (at, message) = fault(line, lows[line.index()]);
        let why = match step_of(line) {
            Some(Step::Combine { .. }) => "less of it may be made than is poured; pour less, or make more",
            Some(Step::MakeUp(_) | Step::Dilute(_)) => "there may be more already",
            _ => "the pan may boil dry in another kitchen",
        };
        let message = format!("{message} if the assumptions fall badly");
        findings.push(Finding::warning(Code::BelowNothing, at, message).why(why));
    }
}

/// Less than one piece, or less than one dose, is a slip of the pen.
fn too_few(work: &Working, recipe: &Recipe, values: &[f64], findings: &mut Vec<Finding>) {
    let cut = recipe.method.iter().find_map(|step| match &step.value {
        Step::Cut(piece) => Some(piece.span),
        _ => None,
    });
    let taken = recipe.take.as_ref().map(|take| take.amount.span);
    for (id, span, words) in [(Id::Pieces, cut, "piece"), (Id::Doses, taken, "dose")] {
        if let (Some(line), Some(span)) = (work.line(id), span)
            && values[line.index()] < 1.0
        {
            let message = format!("one {words} would be more than there is in all");
            findings.push(
                Finding::error(Code::BadNumber, span, message)
                    .why(format!(
                        "the whole comes to {} of one",
                        crate::measure::rounded(values[line.index()], 2)
                    ))
                    .write(format!("a smaller {words}")),
            );
        }
    }
}

impl<'a> Laying<'a> {
    /// What is put in, and every step.
    fn lay_steps(&mut self) {
        put_in::lay(self);
        let recipe = self.recipe;
        for (number, step) in recipe.method.iter().enumerate() {
            self.number = number + 1;
            self.work.at_step(self.number);
            if order::refused(self, step) {
                continue;
            }
            let (done, told) = (self.done.len(), self.findings.len());
            self.step(step);
            if self.done.len() == done && self.findings.len() == told {
                order::idle(self, step.span, step.value.name());
            }
            // Water is poured through a marc, and on it, directly after the straining.
            if !matches!(step.value, Step::Strain(_)) {
                self.marc.kept = None;
            }
        }
        self.work.at_step(recipe.method.len());
    }

    fn step(&mut self, step: &'a Spanned<Step>) {
        let at = step.span;
        match &step.value {
            Step::Simmer { time, lid, hard } => simmer::lay(self, at, time, lid.value, *hard),
            Step::Steep { time, start } => steep::lay(self, at, time, start),
            Step::Percolate(time) => percolate::lay(self, at, time),
            Step::Add(plants) => add::lay(self, at, plants),
            Step::Strain(hand) => strain::lay(self, at, *hand),
            Step::Reduce(to) => reduce::lay(self, at, to),
            Step::Cool(to) => cool::lay(self, at, to),
            Step::Sweeten(sweets) => sweeten::lay(self, at, sweets),
            Step::Fortify { amount, strength } => pour::fortify(self, at, amount, strength.as_ref()),
            Step::Acidify { amount, acidity } => pour::acidify(self, at, amount, acidity.as_ref()),
            Step::Combine { of, amount } => combine::lay(self, at, of, amount),
            Step::MakeUp(to) => again::make_up(self, at, to),
            Step::PourAgain(water) => again::pour(self, at, water),
            Step::Melt(waxes) => melt::lay(self, at, waxes),
            Step::Knead(parts) => dough::knead(self, at, parts),
            Step::BoilTo(stage) => boil_to::lay(self, at, stage),
            Step::Cut(piece) => dough::cut(self, at, piece),
            Step::Dry(time) => dough::dry(self, at, time),
            Step::Dilute(diluted) => dilute::lay(self, at, diluted),
            Step::Spread(thick) => spread::lay(self, at, thick),
            Step::Bottle(size) => bottle::lay(self, at, size),
        }
    }
}

/// "a, b and c".
pub(crate) fn list_of(words: &[&str]) -> String {
    match words {
        [] => String::new(),
        [one] => (*one).to_string(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

/// Times added, or the one time.
fn add_times(work: &mut Working, name: &str, times: Vec<Line>) -> Line {
    work.one_or(times, |work, each| work.work(name, AddTimes { each }))
}

/// Words of a sentence.
fn words(text: impl Into<String>) -> Say {
    Say::Words(text.into())
}

/// Volumes added, or the one volume.
fn add_volumes(work: &mut Working, name: &str, each: Vec<Line>) -> Line {
    work.one_or(each, |work, each| work.work(name, AddVolumes { each }))
}

/// Weights added, or the one weight.
fn add_weights(work: &mut Working, name: &str, each: Vec<Line>) -> Line {
    work.one_or(each, |work, each| work.work(name, AddWeights { each }))
}
