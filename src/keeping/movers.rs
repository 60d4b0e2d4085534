//! What would move it: the same working turned round, so that a rung's limit is just reached, and reached
//! at the careful end of every guess, where the ladder judges.

use crate::formula::Line;
use crate::formulary::Formulary;
use crate::materia::{ACETIC_IN_VINEGAR, ALCOHOL_COVERS, Figure, GLYCERIN_KEEPS, Kind, SELF_PRESERVING};
use crate::measure::{self, Amount};
use crate::method::{Laid, lay_down};
use crate::recipe::{Much, Recipe, Step};
use crate::span::{Span, Spanned};
use crate::working::{Id, Working, turn_round};

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
    /// How much to use in all, mL or g: enough however the guesses fall.
    pub amount: f64,
    /// Whether the amount is a weight.
    pub by_weight: bool,
    /// Finished at the usual figures, mL.
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
    if let Ok(amount) = measure::volume("100 mL") {
        let much = Spanned::new(Much::Measured(amount.clone()), Span::default());
        let of = |name: &str| Spanned::new(name.to_string(), Span::default());
        let strong = |share: f64| Some(Spanned::new(share, Span::default()));
        let fortify = Step::Fortify { of: of("spirit"), amount: much.clone(), strength: strong(strength) };
        let what = format!("spirit of {} %", per_cent(strength));
        ways.push(poured(recipe, book, fortify, "A", what, (Id::Covered, &ALCOHOL_COVERS)));
        let acidify = Step::Acidify { of: of("vinegar"), amount: much, acidity: strong(sour(book)) };
        let what = format!("vinegar of {} %", per_cent(sour(book)));
        ways.push(poured(recipe, book, acidify, "F", what, (Id::Acidity, &ACETIC_IN_VINEGAR)));
        let glycerin = sweeten("glycerin", amount);
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
    Step::Sweeten(vec![(name, Spanned::new(Much::Measured(amount), Span::default()))])
}

/// More of the recipe's own sweetener, or sugar where it has none: by weight, since a share of the liquid
/// would come to more or less of it as the guesses fall.
fn more_sweetener(recipe: &Recipe, book: &Formulary, laid: &Laid) -> Mover {
    let to = (Id::Solids, &SELF_PRESERVING);
    let Ok(amount) = measure::mass("100 g") else {
        return Mover { class: "A", what: "sugar".to_string(), moved: None };
    };
    let mut changed = recipe.clone();
    let own = changed.method.iter_mut().find_map(|step| match &mut step.value {
        Step::Sweeten(sweets) => {
            sweets.iter_mut().find(|(name, _)| book.pantry.fit(&name.value, Kind::has_sugars).is_some())
        }
        _ => None,
    });
    match own.filter(|_| laid.working.line(Id::Solids).is_some()) {
        Some((name, sweet)) => {
            sweet.value = Much::Measured(amount);
            let what = name.value.clone();
            trial(&changed, book, "A", what, to, |laid| laid.sweet_given)
        }
        None => poured(recipe, book, sweeten("sugar", amount), "A", "sugar".to_string(), to),
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
    trial(&changed, book, class, what, to, |laid| laid.poured)
}

/// A recipe of our own laid down and turned round on one of its declared amounts; what it finds is no fault
/// of the author's.
fn trial(
    recipe: &Recipe,
    book: &Formulary,
    class: &'static str,
    what: String,
    to: (Id, &'static Figure),
    on: impl Fn(&Laid) -> Option<Line>,
) -> Mover {
    let laid = lay_down(recipe, book, &mut Vec::new());
    let moved = laid.as_ref().and_then(|laid| turned(&laid.working, on(laid)?, to));
    Mover { class, what, moved }
}

/// Turns a working round on a declared amount of it.
fn turned(work: &Working, line: Line, (id, limit): (Id, &'static Figure)) -> Option<Moved> {
    let now = work.evaluate(&[])[line.index()];
    let amount = careful(work, line, work.line(id)?, limit.value, (now / 1000.0, now * 1000.0))?;
    let values = work.evaluate(&[(line, amount)]);
    let of = |id: Id| work.line(id).map(|line| values[line.index()]);
    Some(Moved {
        amount,
        by_weight: work.entry(line).unit.dimension == measure::Dimension::MASS,
        finished: of(Id::Finished).unwrap_or(f64::NAN),
        plant_per_dose: of(Id::PlantPerDose),
    })
}

/// The amount of `line` at which `wanted` reaches `limit` however the assumptions fall. They fall worst in one
/// way for little and perhaps in another for much, so the worst is looked for again at each answer.
fn careful(work: &Working, line: Line, wanted: Line, limit: f64, within: (f64, f64)) -> Option<f64> {
    const LOOKS: usize = 6;
    let mut falls: Vec<(Line, f64)> = Vec::new();
    for _ in 0..LOOKS {
        let ask = |value| falls.iter().copied().chain([(line, value)]).collect();
        let amount = turn_round(work, ask, wanted, limit, within).ok()?;
        let worst = work.careful(&[(line, amount)], wanted);
        if work.evaluate(&worst)[wanted.index()] >= limit * (1.0 - 1e-9) {
            return Some(amount);
        }
        falls = worst.into_iter().filter(|(of, _)| *of != line).collect();
    }
    None
}
