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
mod possible;
mod pour;
mod put_in;
mod put_in_each;
mod reduce;
mod simmer;
mod spread;
mod steep;
mod strain;
mod sweeten;
mod weighed;

pub(crate) use account::activity_is_known;
pub use laid::{CeilingLine, Done, Hazard, Ingredient, Laid, Level, Say};

use laying::{Aside, InPan, Kept, Laying};

use crate::diagnostic::{Finding, stops};
use crate::formula::Line;
use crate::formula::catalogue::pan::{AddTimes, AddVolumes, AddWeights};
use crate::formulary::Formulary;
use crate::recipe::{Recipe, Step};
use crate::span::Spanned;
use crate::working::Working;

/// Lays a recipe down. None where a fault leaves nothing to evaluate; the faults are findings.
pub fn lay_down(recipe: &Recipe, book: &Formulary, findings: &mut Vec<Finding>) -> Option<Laid> {
    let before = findings.len();
    let mut at = Laying::new(recipe, book, Working::new(), findings);
    kind::check(&mut at);
    at.lay_steps();
    kind::check_made(&mut at);
    account::close(&mut at);
    put_in_each::note_cooked(&mut at);
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
        ceilings,
        daily,
        pantry,
        pans,
        faulty,
        ..
    } = at;
    // Without one of its plants its sums would be about something else.
    if faulty || stops(&findings[before..]) {
        return None;
    }
    work.close();
    possible::check(&work, recipe, findings);
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
        ceilings,
        daily,
        pantry,
        pans,
        at_first: marc.at_first,
        sweet_given,
        poured,
        plants: plant_ids,
    })
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
            Step::Fortify { of, amount, strength } => pour::fortify(self, at, of, amount, strength.as_ref()),
            Step::Acidify { of, amount, acidity } => pour::acidify(self, at, of, amount, acidity.as_ref()),
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
