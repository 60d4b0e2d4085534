//! Turned round: which amount meets a wanted result.
//!
//! Boil-off does not grow with the batch, so this is a search, not a proportion: 33 looks evenly
//! spaced in ratio, then halving, and the miss checked at the end. It gives the same bits in any
//! language that follows it step by step.

use super::Working;
use crate::formula::{Line, exact};

/// How many looks are taken over the whole span.
const LOOKS: usize = 33;
/// Halvings after a crossing is found: enough to reach the last bit from any two looks.
const HALVINGS: usize = 60;
/// A result this near to the wanted one, relative to it, meets it.
const MISS: f64 = 1e-9;

/// Why no single amount meets the wanted result.
#[derive(Clone, PartialEq, Debug)]
pub enum NoAnswer {
    /// The result only goes from `low` to `high` over the span looked at.
    OutOfReach {
        /// Least reached.
        low: f64,
        /// Most reached.
        high: f64,
    },
    /// More than one amount meets it; these do.
    Several(Vec<f64>),
    /// The result jumps past it at about this amount.
    JumpedOver(f64),
}

/// The amount within `within` (both ends above nothing) for which `line` comes to `target`.
///
/// `ask` says which lines an amount sets. Amounts for which any line cannot be are passed over.
///
/// # Errors
/// None or several amounts meet the target: the reachable range, or the several.
pub fn turn_round(
    working: &Working,
    ask: impl Fn(f64) -> Vec<(Line, f64)>,
    line: Line,
    target: f64,
    within: (f64, f64),
) -> Result<f64, NoAnswer> {
    let result = |amount: f64| {
        let values = working.evaluate(&ask(amount));
        working.impossible(&values).is_none().then(|| values[line.index()])
    };
    let step = within.1 / within.0;
    let looks: Vec<(f64, f64)> = (0..LOOKS)
        .map(|look| within.0 * exact::pow(step, look as f64 / (LOOKS - 1) as f64))
        .filter_map(|amount| result(amount).map(|found| (amount, found)))
        .collect();
    let mut answers: Vec<f64> = Vec::new();
    let mut jumped = None;
    for pair in looks.windows(2) {
        let ((mut low, at_low), (mut high, at_high)) = (pair[0], pair[1]);
        if (at_low < target) == (at_high < target) {
            if at_low == target && !answers.contains(&low) {
                answers.push(low);
            }
            continue;
        }
        for _ in 0..HALVINGS {
            let middle = (low + high) / 2.0;
            match result(middle) {
                Some(found) if (found < target) == (at_low < target) => low = middle,
                _ => high = middle,
            }
        }
        match result(high) {
            Some(found) if (found - target).abs() <= MISS * target.abs().max(MISS) => answers.push(high),
            _ => jumped = Some(high),
        }
    }
    match (answers.len(), jumped) {
        (1, _) => Ok(answers[0]),
        (0, Some(at)) => Err(NoAnswer::JumpedOver(at)),
        (0, None) => Err(NoAnswer::OutOfReach {
            low: looks.iter().map(|look| look.1).fold(f64::INFINITY, f64::min),
            high: looks.iter().map(|look| look.1).fold(f64::NEG_INFINITY, f64::max),
        }),
        _ => Err(NoAnswer::Several(answers)),
    }
}
