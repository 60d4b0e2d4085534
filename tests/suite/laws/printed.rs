//! What a student sees: each figure worked again from the figures printed gives the figure printed.

use proptest::prelude::*;
use stillroom::formula::{Line, evaluate};
use stillroom::measure::decimal;
use stillroom::variation::Worked;
use stillroom::working::{How, recomputes};

use super::draft::Draft;
use super::{config, kinds, worked};

/// More decimals than this help nobody.
const MOST: u8 = 8;

/// The digits that a line prints, without its unit.
fn digits(recipe: &Worked, line: Line) -> String {
    let shown = recipe.shown(line);
    shown.split('\u{a0}').next().unwrap_or_default().to_string()
}

/// What a student types in: the printed digits as a number, in the unit the working keeps.
fn typed(recipe: &Worked, line: Line) -> f64 {
    let digits = digits(recipe, line).replace(',', "").replace('−', "-");
    let number: f64 = digits.parse().unwrap_or(f64::NAN);
    number / recipe.laid.working.entry(line).unit.printed
}

fn again(recipe: &Worked) -> Result<(), TestCaseError> {
    let working = &recipe.laid.working;
    for line in working.lines() {
        let (entry, places) = (working.entry(line), recipe.places[line.index()]);
        prop_assert!(places <= MOST, "`{}` prints {places} decimals", entry.name);
        let How::Worked(by) = &entry.how else { continue };
        let mut printed = recipe.values.clone();
        for input in entry.how.inputs() {
            printed[input.index()] = typed(recipe, input);
        }
        let value = evaluate(&by.formula.is, &by.with, &printed, 0);
        let (again, shown) = (decimal(value * entry.unit.printed, places), digits(recipe, line));
        let says = recomputes(working, &recipe.values, &recipe.places, line);
        prop_assert_eq!(says, again == shown, "`{}` is said to recompute", entry.name);
        // Where an input prints all the decimals there are, the last of its result may be beyond them.
        let worn = entry.how.inputs().any(|input| recipe.places[input.index()] == MOST);
        let near = worn && (value - typed(recipe, line)).abs() <= value.abs() * 1e-6;
        let inputs = || entry.how.inputs().map(|input| recipe.shown(input)).collect::<Vec<_>>();
        prop_assert!(near || again == shown, "`{}`: {again} of {:?}, printed {shown}", entry.name, inputs());
    }
    Ok(())
}

/// What the author wrote is printed as written: no place is lost to rounding.
fn given(recipe: &Worked) -> Result<(), TestCaseError> {
    let working = &recipe.laid.working;
    for line in working.lines() {
        let entry = working.entry(line);
        if let How::Given { value, .. } = entry.how {
            let short = (value * entry.unit.printed * 1e4).fract() == 0.0;
            prop_assert!(!short || (typed(recipe, line) - value).abs() <= 1e-9 * value, "`{}`", entry.name);
        }
    }
    Ok(())
}

fn student(draft: &Draft, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    again(&recipe)?;
    given(&recipe)?;
    let set = recipe.laid.working.batch(by);
    let larger = recipe.with(&set);
    match larger.laid.working.impossible(&larger.values) {
        None => again(&larger),
        Some(_) => Ok(()),
    }
}

proptest! {
    #![proptest_config(config())]

    /// A page that prints rounded figures must print enough of them: a student with a pocket calculator, who
    /// has nothing but the page, has to come to what stands there. So it is for a batch of any size.
    #[test]
    fn a_student_comes_to_what_is_printed(draft in kinds::recipe(), by in 0.3f64..5.0) {
        student(&draft, by)?;
    }

    /// Declared figures stand on the page as the author wrote them.
    #[test]
    fn declared_figures_are_printed_in_full(draft in kinds::recipe()) {
        given(&worked(&draft)?)?;
    }
}
