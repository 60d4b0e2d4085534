//! Ranges: what every open assumption may do to a figure lies between its two ends.

use proptest::prelude::*;
use stillroom::formula::Line;
use stillroom::variation::Worked;
use stillroom::working::{How, Range, Working};

use super::draft::Draft;
use super::{config, corner, kinds, wild, worked};

/// Up to here every assumption is crossed with every other at its low, usual and high end.
const CROSSED: usize = 6;

fn holds(range: Range, value: f64) -> bool {
    // What cannot be (a pan boiled dry) is no value.
    !value.is_finite() || (range.low <= value && value <= range.high)
}

fn each_within(recipe: &Worked, set: &[(Line, f64)]) -> Result<(), TestCaseError> {
    let working = &recipe.laid.working;
    let values = working.evaluate(set);
    for line in working.lines() {
        let (name, value) = (&working.entry(line).name, values[line.index()]);
        let range = recipe.ranges[line.index()];
        prop_assert!(holds(range, value), "`{name}` is {value} outside {range:?} with {set:?}");
    }
    Ok(())
}

/// Whether an assumption leads to a line, line by line.
fn led_to(working: &Working) -> Vec<bool> {
    let mut led: Vec<bool> = Vec::new();
    for entry in working.entries() {
        let own = matches!(entry.how, How::Assumed { .. });
        led.push(own || entry.how.inputs().any(|input| led[input.index()]));
    }
    led
}

fn within(draft: &Draft, bits: u64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    let working = &recipe.laid.working;
    each_within(&recipe, &[])?;
    let corner = corner(working, bits);
    each_within(&recipe, &corner)?;
    if corner.len() <= CROSSED {
        for line in corner.iter().map(|(line, _)| *line) {
            if let How::Assumed { low, high, .. } = working.entry(line).how {
                each_within(&recipe, &[(line, low)])?;
                each_within(&recipe, &[(line, high)])?;
            }
        }
    }
    // Nothing is less sure than it has to be.
    let accuracy = |line: Line| match &working.entry(line).how {
        How::Worked(by) => by.formula.accuracy.unwrap_or(0.0),
        _ => 0.0,
    };
    for (line, _) in working.lines().zip(led_to(working)).filter(|(_, led)| !led) {
        let (range, value) = (recipe.ranges[line.index()], recipe.at(line));
        let (name, accuracy) = (&working.entry(line).name, accuracy(line));
        prop_assert_eq!((range.low, range.high), (value - accuracy, value + accuracy), "{}", name);
    }
    Ok(())
}

/// A larger batch is as unsure as the one it is made of: its values lie within its ranges too.
fn within_a_batch(draft: &Draft, bits: u64, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    let set = recipe.laid.working.batch(by);
    let larger = recipe.with(&set);
    each_within(&larger, &set)?;
    each_within(&larger, &[set, corner(&recipe.laid.working, bits)].concat())
}

proptest! {
    #![proptest_config(config())]

    /// A range is what the low, usual and high of every assumption come to, crossed. So the usual value lies
    /// in it, and what one assumption alone may do; and a figure that none of them leads to has no range.
    #[test]
    fn every_value_lies_within_its_range(draft in wild::any_recipe(), bits: u64) {
        within(&draft, bits)?;
    }

    /// The same when the amounts are another batch's.
    #[test]
    fn a_batch_lies_within_its_ranges(draft in kinds::recipe(), bits: u64, by in 0.25f64..4.0) {
        within_a_batch(&draft, bits, by)?;
    }
}
