//! The state between two steps, and what every step asks of it.

use super::put_in_each::PutIn;
use super::{CeilingLine, Done, Hazard, Ingredient, Level, Say, add_weights, list_of};
use crate::batch::Batch;
use crate::bibliography::Source;
use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::formulary::{Formulary, Plant};
use crate::materia::{Assumption, Figure, Item, Kind};
use crate::measure::{Amount, Dimension, Form, Unit};
use crate::recipe::{Menstruum, Recipe, Step};
use crate::span::{Span, Spanned};
use crate::working::{Id, Working};
use crate::yaml;
use std::sync::Arc;

/// The word of what burns.
pub(super) const SPIRIT: &str = "spirit";

/// A plant in the pan.
#[derive(Clone, Copy)]
pub(super) struct InPan<'a> {
    pub(super) plant: &'a Plant,
    pub(super) form: Form,
    pub(super) weight: Line,
    /// Where it is put in.
    pub(super) at: Span,
    /// Water it brought along, g, where that is counted.
    pub(super) water: Option<Line>,
}

/// What a marc keeps that has just been strained out.
#[derive(Clone)]
pub(super) struct Kept {
    /// Liquid in it, mL.
    pub(super) held: Line,
    /// Plant whose strength was in the pan with it, g.
    pub(super) can_give: Line,
    /// What passes on where water washes it out: plants whole, g.
    pub(super) washed: Vec<Line>,
}

/// A first liquid standing by while fresh water is on its marc.
pub(super) struct Aside {
    pub(super) batch: Batch,
    pub(super) volume: Line,
    pub(super) passed_on: Vec<Line>,
}

/// The plants, and the liquid on them, from putting in to straining and again.
#[derive(Default)]
pub(super) struct Marc<'a> {
    /// Plants whose marc is in the pan.
    pub(super) plants: Vec<InPan<'a>>,
    /// Plants whose marc was strained out last.
    pub(super) spent: Vec<InPan<'a>>,
    /// Plants that are not strained out, but stay in what is finished.
    pub(super) left_in: Vec<InPan<'a>>,
    /// Weights of every plant put in so far, g.
    pub(super) weights: Vec<Line>,
    /// Plants put in at the start, g.
    pub(super) at_first: Option<Line>,
    /// Liquid put in before straining: water, and what fresh plants bring, mL.
    pub(super) put_in: Vec<Line>,
    /// Boiled off since the marc went in, mL.
    pub(super) boiled: Vec<Line>,
    /// Boiled off before an earlier straining, mL.
    pub(super) boiled_before: Vec<Line>,
    /// What the marc strained out last keeps; none once another step has been done.
    pub(super) kept: Option<Kept>,
    /// Plant whose strength the marc in the pan can still give, g, where it has given some before.
    pub(super) can_give: Option<Line>,
    /// The liquid of an earlier straining.
    pub(super) aside: Option<Aside>,
}

/// What is weighed in the end and not poured: a dough, boiled sugar, what is laid on.
#[derive(Default)]
pub(super) struct Dough {
    /// Its weight dry, g; none where what is finished is poured.
    pub(super) dry: Option<Line>,
    /// What still wets a dough, g.
    pub(super) wet: Vec<Line>,
    /// Weight of a piece that it is cut into, g.
    pub(super) piece: Option<Line>,
}

/// The state between two steps.
pub(super) struct Laying<'a> {
    pub(super) recipe: &'a Recipe,
    pub(super) book: &'a Formulary,
    pub(super) work: Working,
    pub(super) findings: &'a mut Vec<Finding>,
    pub(super) marc: Marc<'a>,
    pub(super) dough: Dough,
    /// The step after which nothing but what belongs to it may be done: a dough, boiled sugar, a bath.
    pub(super) closed: Option<&'static str>,
    /// The first step that laid nothing down.
    pub(super) idle: Option<(Span, String)>,
    /// What the next sentence pours, where that is not all that is in the pan, mL.
    pub(super) to_pour: Option<Line>,
    /// Products taken, each once.
    pub(super) taken: Vec<String>,
    /// How many findings there were before this recipe.
    pub(super) found_before: usize,
    /// What plants written as parts weigh together, g, and the parts of each by its place.
    pub(super) parts: Option<(Line, Vec<(Span, Line)>)>,
    /// The number of the step, from 1.
    pub(super) number: usize,
    /// Alcohol by volume of the spirit that extracts, as a share.
    pub(super) strength: Option<f64>,
    /// What a percolation collects, mL.
    pub(super) collected: Option<Line>,
    /// What is in the pan.
    pub(super) batch: Batch,
    /// Volume in the pan now, mL.
    pub(super) volume: Option<Line>,
    pub(super) strained: bool,
    pub(super) sweetened: bool,
    /// Whether what is in the pan has been heated and not cooled since.
    pub(super) hot: bool,
    /// Whether the pan has been taken off the heat and covered.
    pub(super) off_heat: bool,
    /// What a step has cooled it to, °C.
    pub(super) cooled: Option<Line>,
    /// Plant whose strength is in the liquid, g.
    pub(super) passed_on: Vec<Line>,
    /// Every plant in it, those of combined products too, each once.
    pub(super) plant_ids: Vec<String>,
    pub(super) times: Vec<Line>,
    pub(super) stove: Vec<Line>,
    pub(super) ingredients: Vec<Ingredient>,
    pub(super) done: Vec<Done>,
    pub(super) to_hand: Vec<String>,
    pub(super) hazards: Vec<Hazard>,
    pub(super) sweet_given: Option<Line>,
    pub(super) poured: Option<Line>,
    /// What of the pantry is in it, each once.
    pub(super) pantry: Vec<String>,
    /// What stands in the pot where a heating begins, mL.
    pub(super) pans: Vec<Line>,
    /// Every plant put in, those of combined products too.
    pub(super) put_in: Vec<PutIn>,
    /// What is taken a day of what has a ceiling.
    pub(super) ceilings: Vec<CeilingLine>,
    /// How many doses a day one person takes.
    pub(super) daily: Option<Line>,
    /// Whether a plant of the recipe has a fault on its own page.
    pub(super) faulty: bool,
}

impl<'a> Laying<'a> {
    pub(super) fn new(
        recipe: &'a Recipe,
        book: &'a Formulary,
        work: Working,
        findings: &'a mut Vec<Finding>,
    ) -> Laying<'a> {
        Laying {
            recipe,
            book,
            work,
            marc: Marc::default(),
            dough: Dough::default(),
            closed: None,
            idle: None,
            to_pour: None,
            taken: Vec::new(),
            found_before: findings.len(),
            parts: None,
            number: 0,
            strength: None,
            collected: None,
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
            pantry: Vec::new(),
            pans: Vec::new(),
            put_in: Vec::new(),
            ceilings: Vec::new(),
            daily: None,
            faulty: false,
            findings,
        }
    }

    /// An assumption, with the recipe's own figure for it, else the kitchen's, where they have one.
    pub(super) fn assume(&mut self, assumption: &'static Assumption) -> Line {
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

    /// Whether the recipe or the kitchen has a figure of its own for an assumption.
    pub(super) fn knows(&self, assumption: &Assumption) -> bool {
        self.recipe.assume.iter().any(|own| own.what.id == assumption.id)
            || self.book.course.kitchen.own(assumption).is_some()
    }

    /// The pantry item of that name, where it is of a kind that will do; else a finding. `besides` are words that
    /// would do too. Notes that it is in the recipe.
    pub(super) fn shelf(
        &mut self,
        name: &Spanned<String>,
        what: &str,
        will_do: fn(Kind) -> bool,
        besides: &[&str],
    ) -> Option<Arc<Item>> {
        if let Some(item) = self.book.pantry.fit(&name.value, will_do) {
            self.note_item(item);
            return Some(Arc::clone(item));
        }
        let names = self.book.pantry.names(will_do);
        let known = names.into_iter().chain(besides.iter().copied());
        self.findings.push(yaml::unknown(what, Spanned::new(name.value.as_str(), name.span), known));
        None
    }

    /// Notes that an item is in the recipe.
    pub(super) fn note_item(&mut self, item: &Item) {
        if !self.pantry.contains(&item.id) {
            self.pantry.push(item.id.clone());
        }
    }

    /// An amount the recipe declares. A range of a time is the author's own latitude: an assumption, its
    /// middle taken as usual. What is put in is one number, or the batch could not be scaled.
    pub(super) fn declared(
        &mut self,
        name: &str,
        unit: &'static Unit,
        amount: &Amount,
        grows: bool,
        at: Span,
    ) -> Line {
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
    pub(super) fn takes(&mut self, minutes: Line, over_heat: bool) {
        self.times.push(minutes);
        if over_heat {
            self.stove.push(minutes);
        }
    }

    pub(super) fn allowance(&mut self, figure: &'static Figure, over_heat: bool) -> Line {
        let line = self.work.figure(figure);
        self.takes(line, over_heat);
        line
    }

    pub(super) fn need(&mut self, thing: &str) {
        if !self.to_hand.iter().any(|have| have == thing) {
            self.to_hand.push(thing.to_string());
        }
    }

    pub(super) fn finish_step(
        &mut self,
        name: &'static str,
        say: Vec<Say>,
        minutes: Vec<Line>,
        condition: String,
        level: Option<Level>,
    ) {
        let stove = minutes.iter().filter(|line| self.stove.contains(line)).copied().collect();
        self.done.push(Done { name, say, minutes, stove, condition, level });
    }

    pub(super) fn note_plants(&mut self, ids: Vec<String>) {
        for id in ids {
            if !self.plant_ids.contains(&id) {
                self.plant_ids.push(id);
            }
        }
    }

    /// The liquid as it is poured on cold.
    pub(super) fn cold_liquid(&self) -> String {
        match (self.recipe.menstruum(), self.strength) {
            (Some(Menstruum::Water) | None, _) => "cold water".to_string(),
            (Some(Menstruum::Spirit), Some(strength)) => {
                super::liquid::strong(self.recipe.extracts(), strength)
            }
            (Some(_), _) => self.recipe.extracts().to_string(),
        }
    }

    /// Whether something stops the recipe that is being laid down.
    pub(super) fn has_faults(&self) -> bool {
        crate::diagnostic::stops(&self.findings[self.found_before..])
    }

    /// What is in the pan that does not belong over heat, and why; none for water and vinegar.
    pub(super) fn unfit_for_heat(&self) -> Option<(&'static str, &'static str)> {
        let kind = match self.recipe.menstruum() {
            Some(Menstruum::Water | Menstruum::Vinegar) | None if self.batch.holds_spirit() => {
                Menstruum::Spirit
            }
            None if self.batch.holds_oil() => Menstruum::Oil,
            None if self.batch.holds_honey() => Menstruum::Honey,
            other => other?,
        };
        Some((kind.words(), super::simmer::unfit(kind)?))
    }

    /// The weights of everything put in so far are what `plants` means.
    pub(super) fn claim_plants(&mut self) {
        let all = add_weights(&mut self.work, "plants in all", self.marc.weights.clone());
        self.work.claim(Id::Plants, all);
    }

    /// Whether a later step strains.
    pub(super) fn strains_later(&self) -> bool {
        let rest = self.recipe.method.iter().skip(self.number);
        rest.map(|step| &step.value).any(|step| matches!(step, Step::Strain(_)))
    }

    /// The plants in the pan in running text: "the rose hips and hibiscus".
    pub(super) fn plant_words(&self) -> String {
        let mut words: Vec<&str> = Vec::new();
        for in_pan in &self.marc.plants {
            if !words.contains(&in_pan.plant.words.as_str()) {
                words.push(&in_pan.plant.words);
            }
        }
        list_of(&words)
    }

    /// A step that stands before the straining. Where the method never strains, that is told once,
    /// and not again for each step that waits for it.
    pub(super) fn too_early(&mut self, at: Span, message: &str, why: &str, write: &str) {
        if self.recipe.method.iter().any(|step| matches!(step.value, Step::Strain(_))) {
            self.order(at, message, why, write);
        }
    }

    /// What is no liquid for heat: of spirit a stop, of anything else a fault of the order.
    pub(super) fn unfit(&mut self, at: Span, kind: &str, message: impl Into<String>, why: &str, write: &str) {
        let code = if kind == SPIRIT { Code::AlcoholOverFlame } else { Code::StepOrder };
        self.findings.push(Finding::error(code, at, message).why(why).write(write));
    }

    pub(super) fn order(&mut self, at: Span, message: impl Into<String>, why: &str, write: &str) {
        self.findings.push(Finding::error(Code::StepOrder, at, message).why(why).write(write));
    }
}
