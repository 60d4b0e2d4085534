//! Amounts for a wanted batch: the recipe's working turned round on its size.
//!
//! Not a proportion: what boils off, the minutes and the pot do not grow with the batch.

use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::measure::{Amount, Dimension, Wanted, WantedBy, show_usual};
use crate::variation::{Worked, WorkedRecipe};
use crate::working::{Id, NoAnswer, turn_round};

/// A batch is looked for between a thousandth and a thousand times the recipe's.
const BATCH: (f64, f64) = (0.001, 1000.0);

/// Why no batch gives what is wanted.
#[derive(Clone, PartialEq, Debug)]
pub struct Unmet {
    /// In words.
    pub why: String,
}

/// The recipe's batch that comes to what is wanted, worked in full; where it is made in several pots, one of them.
///
/// # Errors
/// The recipe is not measured that way, or no batch comes to it: with the reach there is.
pub fn worked(recipe: &Worked, wanted: &Wanted) -> Result<Worked, Unmet> {
    let working = &recipe.laid.working;
    let more = (1.0 + wanted.over) / wanted.pots;
    let by = match &wanted.by {
        WantedBy::Times(times) => times * more,
        by => {
            let (line, target) = target(recipe, by)?;
            turn_round(working, |by| working.batch_of(by, &recipe.set), line, target * more, BATCH)
                .map_err(|none| Unmet { why: in_words(recipe, line, &none) })?
        }
    };
    Ok(recipe.with(&working.batch_of(by, &recipe.set)))
}

/// The line that is to come to so much, in its unit.
fn target(recipe: &Worked, by: &WantedBy) -> Result<(Line, f64), Unmet> {
    match by {
        WantedBy::Made(count, each) => made(recipe, *count, each),
        WantedBy::From(amount, what) => stock(recipe, amount, what),
        WantedBy::Doses(doses) => dosed(recipe).map(|(line, _)| (line, *doses)),
        WantedBy::People(people, minutes) => {
            dosed(recipe).map(|(line, daily)| (line, daily * people * minutes / A_DAY))
        }
        WantedBy::Times(_) => Err(Unmet { why: "so many times is no target".to_string() }),
    }
}

/// Minutes of a day.
const A_DAY: f64 = 1440.0;

/// The line of doses, and how many a day one person takes.
fn dosed(recipe: &Worked) -> Result<(Line, f64), Unmet> {
    let daily = recipe.laid.daily.map(|line| recipe.at(line));
    recipe.laid.working.line(Id::Doses).zip(daily).ok_or_else(|| Unmet {
        why: "it does not say how it is taken: take: {amount: 1 tsp, daily: 3}".to_string(),
    })
}

/// So much of something that is put in, by the name of the plant or of the thing.
fn stock(recipe: &Worked, amount: &Amount, what: &str) -> Result<(Line, f64), Unmet> {
    let ingredients = &recipe.laid.ingredients;
    let named = ingredients.iter().find(|item| {
        let plain = item.words.split(" of ").next().unwrap_or(&item.words);
        [Some(item.words.as_str()), Some(plain), item.plant.as_deref(), item.item.as_deref()]
            .contains(&Some(what))
    });
    let Some(item) = named else {
        let known: Vec<&str> = ingredients.iter().map(|item| item.words.as_str()).collect();
        return Err(Unmet { why: format!("what is put in is {}", crate::method::list_of(&known)) });
    };
    let line = match amount.dimension() {
        Dimension::MASS => item.weight,
        Dimension::VOLUME => item.volume,
        _ => None,
    };
    line.map(|line| (line, amount.low)).ok_or_else(|| Unmet {
        why: format!(
            "{} is measured by {}",
            item.words,
            if item.weight.is_some() { "weight" } else { "volume" }
        ),
    })
}

fn made(recipe: &Worked, count: f64, each: &Amount) -> Result<(Line, f64), Unmet> {
    let id = match each.dimension() {
        Dimension::VOLUME => Id::Finished,
        Dimension::MASS => Id::FinishedWeight,
        Dimension::COUNT => Id::Pieces,
        _ => Id::Area,
    };
    let Some(line) = recipe.laid.working.line(id) else {
        let measured = match recipe.laid.working.line(Id::Finished) {
            Some(_) => "it is measured by volume: 500 mL",
            None if recipe.value(Id::Pieces).is_some() => "it is counted or weighed: 80 pieces, 80 of 1 g",
            None => "it is weighed: 500 g",
        };
        return Err(Unmet { why: measured.to_string() });
    };
    Ok((line, count * each.low))
}

/// Why no one amount brings a line to a target, with what it can come to.
pub fn in_words(recipe: &Worked, line: Line, none: &NoAnswer) -> String {
    let entry = recipe.laid.working.entry(line);
    let shown = |value: f64| show_usual(value, entry.unit);
    match none {
        NoAnswer::OutOfReach { low, high } if low.is_finite() && high.is_finite() => {
            format!("`{}` can come to {} up to {}", entry.name, shown(*low), shown(*high))
        }
        NoAnswer::OutOfReach { .. } => "no batch of it can be worked".to_string(),
        NoAnswer::Several(batches) => {
            format!("{} amounts come to it; say which by writing one", batches.len())
        }
        NoAnswer::JumpedOver(_) => format!("`{}` jumps past it", entry.name),
    }
}

/// The most that stands in the pot at once, mL; none where nothing is heated in it.
pub fn in_the_pot(worked: &Worked) -> Option<f64> {
    worked.laid.pans.iter().map(|line| worked.at(*line)).reduce(f64::max)
}

/// What is wanted and cannot be had, and what does not fit into the kitchen's pot, mL.
pub fn findings(recipe: &WorkedRecipe, pot: Option<f64>, into: &mut Vec<Finding>) {
    let name = &recipe.recipe.name;
    too_small(&recipe.base, pot, &name.value, name.span, 1.0, into);
    for wanted in &recipe.recipe.wanted {
        match worked(&recipe.base, &wanted.value) {
            Ok(scaled) => {
                too_small(&scaled, pot, &wanted.value.written, wanted.span, wanted.value.pots, into);
            }
            Err(unmet) => {
                let message = format!("no amounts of this recipe make {}", wanted.value.written);
                into.push(Finding::error(Code::BadNumber, wanted.span, message).why(unmet.why));
            }
        }
    }
}

fn too_small(
    worked: &Worked,
    pot: Option<f64>,
    what: &str,
    at: crate::span::Span,
    pots: f64,
    into: &mut Vec<Finding>,
) {
    let (Some(pot), Some(most)) = (pot, in_the_pot(worked)) else { return };
    if most <= pot {
        return;
    }
    let litres = |ml: f64| crate::measure::decimal(ml / 1000.0, 1);
    let wanted = (most * pots / pot).ceil();
    let message = format!("`{what}` does not fit into the pot: {} L stand in it at once", litres(most));
    into.push(
        Finding::warning(Code::PotTooSmall, at, message)
            .why(format!(
                "the kitchen's pot holds {} L; what boils off is the pot's, so two halves are no whole",
                litres(pot)
            ))
            .write(format!("wanted: ... in {} pots", crate::measure::decimal(wanted, 0))),
    );
}
