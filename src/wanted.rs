//! Amounts for a wanted result: the recipe's working turned round on the size of its batch.
//!
//! Not a proportion: what boils off, and the minutes, do not grow with the batch.

use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::measure::{Dimension, show};
use crate::recipe::Wanted;
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

/// The recipe's batch that comes to what is wanted, worked in full.
///
/// # Errors
/// The recipe is not measured that way, or no batch comes to it: with the reach there is.
pub fn worked(recipe: &Worked, wanted: &Wanted) -> Result<Worked, Unmet> {
    let working = &recipe.laid.working;
    let (line, target) = target(recipe, wanted)?;
    let by = turn_round(working, |by| working.batch(by), line, target, BATCH)
        .map_err(|none| Unmet { why: in_words(recipe, line, &none) })?;
    Ok(recipe.with(&working.batch(by)))
}

/// The line that is to come to so much, in its unit.
fn target(recipe: &Worked, wanted: &Wanted) -> Result<(Line, f64), Unmet> {
    let (dimension, amount) = (wanted.each.dimension(), wanted.count * wanted.each.low);
    let id = match dimension {
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
    Ok((line, amount))
}

fn in_words(recipe: &Worked, line: Line, none: &NoAnswer) -> String {
    let entry = recipe.laid.working.entry(line);
    let shown = |value: f64| show(value, entry.unit, 0);
    match none {
        NoAnswer::OutOfReach { low, high } if low.is_finite() && high.is_finite() => {
            format!("`{}` can come to {} up to {}", entry.name, shown(*low), shown(*high))
        }
        NoAnswer::OutOfReach { .. } => "no batch of it can be worked".to_string(),
        NoAnswer::Several(batches) => {
            format!("{} batches come to it; say which by the amounts", batches.len())
        }
        NoAnswer::JumpedOver(_) => format!("`{}` jumps past it", entry.name),
    }
}

/// What is wanted and cannot be had.
pub fn findings(recipe: &WorkedRecipe, into: &mut Vec<Finding>) {
    for wanted in &recipe.recipe.wanted {
        if let Err(unmet) = worked(&recipe.base, &wanted.value) {
            let message = format!("no amounts of this recipe make {}", wanted.value.written);
            into.push(Finding::error(Code::BadNumber, wanted.span, message).why(unmet.why));
        }
    }
}
