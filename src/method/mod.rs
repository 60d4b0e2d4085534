//! The method: a recipe's steps laid down as lines of a working, one file a kind of step.
//!
//! Each step says its formulas, its sentence, its time and what it needs; the account at the end
//! closes the books. A fault in the order or the basis of steps is a finding with its place.

mod account;
mod add;
mod bottle;
mod combine;
mod cool;
mod laid;
mod liquid;
mod pour;
mod put_in;
mod reduce;
mod simmer;
mod steep;
mod strain;
mod sweeten;

pub use laid::{Done, Hazard, Ingredient, Laid, Level, Say};

use crate::batch::Batch;
use crate::bibliography::Source;
use crate::diagnostic::{Code, Finding, stops};
use crate::formula::Line;
use crate::formula::catalogue::pan::{AddTimes, AddVolumes, AddWeights};
use crate::formulary::{Formulary, Plant};
use crate::materia::{Assumption, Figure};
use crate::measure::{Amount, Dimension, Form, Unit};
use crate::recipe::{Menstruum, Recipe, Step};
use crate::span::{Span, Spanned};
use crate::working::{MOST_ASSUMPTIONS, Working};

/// A plant in the pan.
struct InPan<'a> {
    plant: &'a Plant,
    form: Form,
    weight: Line,
}

/// The state between two steps.
struct Laying<'a> {
    recipe: &'a Recipe,
    book: &'a Formulary,
    work: Working,
    findings: &'a mut Vec<Finding>,
    /// Plants whose marc is still in the pan.
    plants: Vec<InPan<'a>>,
    /// Liquid put in before straining: water, and what fresh plants bring, mL.
    put_in: Vec<Line>,
    /// Boiled off before straining, mL.
    boiled: Vec<Line>,
    /// What is in the pan.
    batch: Batch,
    /// Volume in the pan now, mL.
    volume: Option<Line>,
    strained: bool,
    sweetened: bool,
    /// Whether what is in the pan has been heated and not cooled since.
    hot: bool,
    /// Whether the pan has been taken off the heat and covered.
    off_heat: bool,
    /// °C, once a step has cooled it.
    cooled: Option<f64>,
    /// Plant whose strength is in the liquid, g.
    passed_on: Vec<Line>,
    /// Every plant in it, those of combined products too, each once.
    plant_ids: Vec<String>,
    times: Vec<Line>,
    stove: Vec<Line>,
    ingredients: Vec<Ingredient>,
    done: Vec<Done>,
    to_hand: Vec<String>,
    hazards: Vec<Hazard>,
    sweet_given: Option<Line>,
    poured: Option<Line>,
    /// Whether a plant of the recipe has a fault on its own page.
    faulty: bool,
}

/// Lays a recipe down. None where a fault leaves nothing to evaluate; the faults are findings.
pub fn lay_down(recipe: &Recipe, book: &Formulary, findings: &mut Vec<Finding>) -> Option<Laid> {
    let before = findings.len();
    let mut at = Laying::new(recipe, book, Working::new(), findings);
    at.lay_steps();
    account::close(&mut at);
    let Laying {
        mut work,
        ingredients,
        done,
        to_hand,
        batch,
        hazards,
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
        ingredients,
        steps: done,
        to_hand,
        honey,
        batch,
        hazards,
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
            _ => Finding::error(Code::BelowNothing, at, message)
                .why("more is taken away than there is")
                .write("more water, less plant, or less time on the stove"),
        });
        return;
    }
    let lows: Vec<f64> = work.range(&[]).into_iter().map(|range| range.low).collect();
    if let Some(line) = work.impossible(&lows) {
        let (at, message) = fault(line, lows[line.index()]);
        findings.push(
            Finding::warning(Code::BelowNothing, at, format!("{message} if the assumptions fall badly"))
                .why("the pan may boil dry in another kitchen"),
        );
    }
}

impl<'a> Laying<'a> {
    fn new(
        recipe: &'a Recipe,
        book: &'a Formulary,
        work: Working,
        findings: &'a mut Vec<Finding>,
    ) -> Laying<'a> {
        Laying {
            recipe,
            book,
            work,
            findings,
            plants: Vec::new(),
            put_in: Vec::new(),
            boiled: Vec::new(),
            batch: Batch::default(),
            volume: None,
            strained: false,
            sweetened: false,
            hot: false,
            off_heat: false,
            cooled: None,
            passed_on: Vec::new(),
            plant_ids: Vec::new(),
            times: Vec::new(),
            stove: Vec::new(),
            ingredients: Vec::new(),
            done: Vec::new(),
            to_hand: Vec::new(),
            hazards: Vec::new(),
            sweet_given: None,
            poured: None,
            faulty: false,
        }
    }

    /// What is put in, and every step.
    fn lay_steps(&mut self) {
        put_in::lay(self);
        let recipe = self.recipe;
        for (number, step) in recipe.method.iter().enumerate() {
            self.work.at_step(number + 1);
            self.step(step);
        }
        self.work.at_step(recipe.method.len());
    }

    fn step(&mut self, step: &'a Spanned<Step>) {
        let at = step.span;
        match &step.value {
            Step::Simmer { time, lid, hard } => simmer::lay(self, at, time, lid.value, *hard),
            Step::Steep { time, from_boiling } => steep::lay(self, at, time, *from_boiling),
            Step::Add(plants) => add::lay(self, at, plants),
            Step::Strain(hand) => strain::lay(self, at, *hand),
            Step::Reduce(to) => reduce::lay(self, at, to),
            Step::Cool(to) => cool::lay(self, at, to),
            Step::Sweeten(sweets) => sweeten::lay(self, at, sweets),
            Step::Fortify { amount, strength } => pour::fortify(self, at, amount, strength.as_ref()),
            Step::Acidify { amount, acidity } => pour::acidify(self, at, amount, acidity.as_ref()),
            Step::Combine { of, amount } => combine::lay(self, at, of, amount),
            Step::Bottle(size) => bottle::lay(self, at, size),
        }
    }

    /// An assumption, with the recipe's own figure for it, else the kitchen's, where they have one.
    fn assume(&mut self, assumption: &'static Assumption) -> Line {
        let in_recipe = self.recipe.assume.iter().any(|own| own.what.id == assumption.id);
        if !in_recipe && let Some((value, source)) = self.book.course.kitchen.own(assumption) {
            return self.work.published(assumption.words, assumption.id, assumption.unit, value, source);
        }
        let own = self.recipe.assume.iter().find(|own| own.what.id == assumption.id).map(|own| {
            let amount = &own.amount.value;
            (
                amount.low,
                (amount.low + amount.high) / 2.0,
                amount.high,
                Source::formulary("the recipe's own figure"),
            )
        });
        self.work.assumed(assumption, own)
    }

    /// An amount the recipe declares. A range of a time is the author's own latitude: an assumption, its
    /// middle taken as usual. What is put in is one number, or the batch could not be scaled.
    fn declared(&mut self, name: &str, unit: &'static Unit, amount: &Amount, grows: bool, at: Span) -> Line {
        if amount.is_range() && unit.dimension == Dimension::TIME {
            return self.work.latitude(name, unit, (amount.low, amount.high), at);
        }
        if amount.is_range() {
            self.findings.push(
                Finding::error(
                    Code::BadNumber,
                    at,
                    format!("`{}` is two numbers where one is used", amount.written),
                )
                .why("every other figure is worked from this one; only times and doses may be ranges"),
            );
        }
        self.work.given(name, unit, amount.low, grows, at)
    }

    /// Notes the time of a step.
    fn takes(&mut self, minutes: Line, over_heat: bool) {
        self.times.push(minutes);
        if over_heat {
            self.stove.push(minutes);
        }
    }

    fn allowance(&mut self, figure: &'static Figure, over_heat: bool) -> Line {
        let line = self.work.figure(figure);
        self.takes(line, over_heat);
        line
    }

    fn need(&mut self, thing: &str) {
        if !self.to_hand.iter().any(|have| have == thing) {
            self.to_hand.push(thing.to_string());
        }
    }

    fn finish_step(
        &mut self,
        name: &'static str,
        say: Vec<Say>,
        minutes: Vec<Line>,
        condition: String,
        level: Option<Level>,
    ) {
        self.done.push(Done { name, say, minutes, condition, level });
    }

    fn note_plants(&mut self, ids: Vec<String>) {
        for id in ids {
            if !self.plant_ids.contains(&id) {
                self.plant_ids.push(id);
            }
        }
    }

    /// The liquid as it is poured on cold.
    fn cold_liquid(&self) -> &'static str {
        match self.recipe.menstruum() {
            Some(Menstruum::Water) | None => "cold water",
            Some(other) => other.words(),
        }
    }

    /// The plants in the pan in running text: "the rose hips and hibiscus".
    fn plant_words(&self) -> String {
        let mut words: Vec<&str> = Vec::new();
        for in_pan in &self.plants {
            if !words.contains(&in_pan.plant.words.as_str()) {
                words.push(&in_pan.plant.words);
            }
        }
        list_of(&words)
    }

    /// A step that stands before the straining. Where the method never strains, that is told once,
    /// and not again for each step that waits for it.
    fn too_early(&mut self, at: Span, message: &str, why: &str, write: &str) {
        if self.recipe.method.iter().any(|step| matches!(step.value, Step::Strain(_))) {
            self.order(at, message, why, write);
        }
    }

    fn order(&mut self, at: Span, message: impl Into<String>, why: &str, write: &str) {
        self.findings.push(Finding::error(Code::StepOrder, at, message).why(why).write(write));
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
