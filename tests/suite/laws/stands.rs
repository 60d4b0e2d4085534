//! Worked or told: no recipe panics, none is passed over in silence, and no figure is none.

use std::collections::BTreeMap;

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use stillroom::diagnostic::{Code, stops};
use stillroom::recipe::PREPARATIONS;
use stillroom::variation::Worked;

use super::draft::Draft;
use super::{config, kinds, wild, work};

/// Every step that a method may hold.
const STEPS: [&str; 22] = [
    "simmer",
    "boil",
    "steep",
    "add",
    "strain",
    "reduce",
    "cool",
    "sweeten",
    "fortify",
    "acidify",
    "combine",
    "percolate",
    "make up",
    "pour again",
    "melt",
    "knead",
    "boil to",
    "cut",
    "dry",
    "dilute",
    "spread",
    "bottle",
];

fn figures(recipe: &Worked) -> Result<(), TestCaseError> {
    let working = &recipe.laid.working;
    for line in working.lines() {
        let (entry, value, range) = (working.entry(line), recipe.at(line), recipe.ranges[line.index()]);
        prop_assert!(value.is_finite(), "`{}` is {value}", entry.name);
        prop_assert!(value >= 0.0, "`{}` is {value}", entry.name);
        let ends = range.low.is_finite() && range.high.is_finite();
        prop_assert!(ends, "`{}`: {range:?}", entry.name);
    }
    Ok(())
}

fn stands(draft: &Draft) -> Result<(), TestCaseError> {
    let (worked, findings) = work(draft, &draft.text());
    let Some(worked) = worked else {
        prop_assert!(stops(&findings), "it is not worked, and nothing says why");
        return Ok(());
    };
    figures(&worked.base)?;
    let below = |range: &stillroom::working::Range| range.low < -1e-9;
    if worked.base.ranges.iter().any(below) {
        let told = findings.iter().any(|finding| finding.code == Code::BelowNothing);
        prop_assert!(told, "a range goes below nothing, and nothing says so");
    }
    Ok(())
}

proptest! {
    #![proptest_config(config())]

    /// What an author writes is never a reason to stop, to print no number, or to say nothing: a student who
    /// is shown neither a figure nor a fault cannot go on.
    #[test]
    fn a_recipe_is_worked_or_told_why_not(draft in kinds::recipe()) {
        stands(&draft)?;
    }

    /// The same of recipes that nobody would write on purpose.
    #[test]
    fn a_spoiled_recipe_is_worked_or_told_why_not(draft in wild::recipe()) {
        stands(&draft)?;
    }
}

/// The laws say nothing where nothing is worked: chance writes every preparation and every step so that it
/// can be worked, and nine in ten of its recipes can.
#[test]
fn chance_reaches_every_preparation_and_step() {
    let mut runner = TestRunner::deterministic();
    let (mut words, mut steps) = (BTreeMap::<&str, u32>::new(), BTreeMap::<&str, u32>::new());
    let (mut all, mut can) = (0, 0);
    let recipes = kinds::recipe();
    for _ in 0..600 {
        let draft = recipes.new_tree(&mut runner).expect("a recipe").current();
        let (worked, findings) = work(&draft, &draft.text());
        all += 1;
        if let Some(worked) = worked.filter(|_| !stops(&findings)) {
            can += 1;
            *words.entry(worked.recipe.preparation.value.word).or_default() += 1;
            for step in &worked.recipe.method {
                *steps.entry(step.value.name()).or_default() += 1;
            }
        }
    }
    let too_few = |name: &&str, found: &BTreeMap<&str, u32>| found.get(*name).is_none_or(|times| *times < 3);
    let missing: Vec<&str> =
        PREPARATIONS.iter().map(|row| row.word).filter(|word| too_few(word, &words)).collect();
    assert!(missing.is_empty(), "hardly ever worked: {missing:?} of {words:?}");
    let missing: Vec<&str> = STEPS.into_iter().filter(|name| too_few(name, &steps)).collect();
    assert!(missing.is_empty(), "hardly ever worked: {missing:?} of {steps:?}");
    assert!(can * 10 >= all * 8, "only {can} of {all} can be worked");
}
