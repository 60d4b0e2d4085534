//! What would move it: the same working turned round, so that a rung's limit is just reached.

use crate::formula::Line;
use crate::formulary::Formulary;
use crate::materia::{ACETIC_IN_VINEGAR, ALCOHOL_COVERS, Figure, GLYCERIN_KEEPS, SELF_PRESERVING};
use crate::measure::{self, Amount};
use crate::method::{Laid, lay_down};
use crate::recipe::{Recipe, Step, Sweet};
use crate::span::{Span, Spanned};
use crate::working::{Id, turn_round};

/// One way to another class.
#[derive(Clone, PartialEq, Debug)]
pub struct Mover {
    /// The class it reaches.
    pub class: &'static str,
    /// What is added or changed.
    pub what: String,
    /// How much of it in all; none where no amount does.
    pub moved: Option<Moved>,
}

/// What it then comes to.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Moved {
    /// How much to use in all, mL or g.
    pub amount: f64,
    /// Whether the amount is a weight.
    pub by_weight: bool,
    /// Finished, mL.
    pub finished: f64,
    /// Plant in a dose, g, where the recipe says how it is taken.
    pub plant_per_dose: Option<f64>,
}

/// The ways out of a class that does not keep: more sugar, spirit, vinegar, glycerin.
pub fn movers(recipe: &Recipe, book: &Formulary, laid: &Laid) -> Vec<Mover> {
    let mut ways = vec![more_sweetener(recipe, book, laid)];
    let kitchen = &book.course.kitchen;
    let strength = kitchen.spirits.first().copied().unwrap_or(0.4);
    let per_cent = |share: f64| measure::decimal(share * 100.0, 0);
    let amount = |text: &str| measure::volume(text).ok().map(|amount| Spanned::new(amount, Span::default()));
    if let Some(amount) = amount("100 mL") {
        let fortify =
            Step::Fortify { amount: amount.clone(), strength: Some(Spanned::new(strength, Span::default())) };
        let what = format!("spirit of {} %", per_cent(strength));
        ways.push(poured(recipe, book, fortify, "A", what, (Id::Covered, &ALCOHOL_COVERS)));
        let acidify = Step::Acidify {
            amount: amount.clone(),
            acidity: Some(Spanned::new(sour(book), Span::default())),
        };
        let what = format!("vinegar of {} %", per_cent(sour(book)));
        ways.push(poured(recipe, book, acidify, "F", what, (Id::Acidity, &ACETIC_IN_VINEGAR)));
        let glycerin = sweeten("glycerin", amount.value);
        ways.push(poured(
            recipe,
            book,
            glycerin,
            "E",
            "glycerin".to_string(),
            (Id::Glycerin, &GLYCERIN_KEEPS),
        ));
    }
    ways
}

/// The kitchen's vinegar, else one of 5 %.
fn sour(book: &Formulary) -> f64 {
    book.course.kitchen.vinegar.unwrap_or(crate::materia::VINEGAR_ACIDITY.usual)
}

fn sweeten(name: &str, amount: Amount) -> Step {
    let name = Spanned::new(name.to_string(), Span::default());
    Step::Sweeten(vec![(name, Spanned::new(Sweet::Measured(amount), Span::default()))])
}

/// More of the recipe's own sweetener, or sugar where it has none.
fn more_sweetener(recipe: &Recipe, book: &Formulary, laid: &Laid) -> Mover {
    let sweetened = laid.working.line(Id::Solids).is_some();
    if let Some(line) = laid.sweet_given.filter(|_| sweetened) {
        let names: Vec<&str> =
            laid.ingredients.iter().filter(|item| item.sweetens()).map(|item| item.words.as_str()).collect();
        let what = crate::method::list_of(&names);
        return turned(laid, line, "A", what, (Id::Solids, &SELF_PRESERVING), Id::SweetenerWeight);
    }
    match measure::mass("100 g") {
        Ok(amount) => poured(
            recipe,
            book,
            sweeten("sugar", amount),
            "A",
            "sugar".to_string(),
            (Id::Solids, &SELF_PRESERVING),
        ),
        Err(_) => Mover { class: "A", what: "sugar".to_string(), moved: None },
    }
}

/// The recipe with one more step before its bottles, turned round on that step's amount.
fn poured(
    recipe: &Recipe,
    book: &Formulary,
    step: Step,
    class: &'static str,
    what: String,
    to: (Id, &'static Figure),
) -> Mover {
    let mut changed = recipe.clone();
    let at = changed.method.iter().position(|step| matches!(step.value, Step::Bottle(_)));
    changed.method.insert(at.unwrap_or(changed.method.len()), Spanned::new(step, Span::default()));
    // A trial of our own: what it finds is no fault of the author's.
    let laid = lay_down(&changed, book, &mut Vec::new());
    match laid.as_ref().and_then(|laid| Some((laid, laid.poured?))) {
        Some((laid, line)) => {
            let by_weight = laid.working.entry(line).unit.dimension == measure::Dimension::MASS;
            let amount = if by_weight { Id::SweetenerWeight } else { Id::Spirit };
            turned(laid, line, class, what, to, amount)
        }
        None => Mover { class, what, moved: None },
    }
}

/// Turns a laid recipe round on a declared line. `amount` is the line that tells how much that comes to.
fn turned(
    laid: &Laid,
    line: Line,
    class: &'static str,
    what: String,
    (id, limit): (Id, &'static Figure),
    amount: Id,
) -> Mover {
    let work = &laid.working;
    let now = work.evaluate(&[])[line.index()];
    let reached = work.line(id).and_then(|wanted| {
        turn_round(work, |value| vec![(line, value)], wanted, limit.value, (now / 1000.0, now * 1000.0)).ok()
    });
    let moved = reached.map(|value| {
        let values = work.evaluate(&[(line, value)]);
        let of = |id: Id| work.line(id).map(|line| values[line.index()]);
        let by_weight = amount == Id::SweetenerWeight;
        Moved {
            amount: if by_weight { of(amount).unwrap_or(value) } else { value },
            by_weight,
            finished: of(Id::Finished).unwrap_or(f64::NAN),
            plant_per_dose: of(Id::PlantPerDose),
        }
    });
    Mover { class, what, moved }
}
