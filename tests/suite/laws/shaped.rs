//! What is weighed and not poured: doughs, blends, drops, and what is laid on; a bath with them.

use proptest::prelude::*;
use stillroom::working::Id;

use super::draft::{Draft, WATER};
use super::{Seen, config, kinds, near, same, worked};

/// A US cup, mL: a sixteenth of the gallon of 231 cubic inches.
const CUP: f64 = 236.588_236_5;

/// Grams to one gram of plant, where a step says so as a ratio.
fn ratio(says: &str) -> Option<f64> {
    let (_, behind) = says.split_once("1:")?;
    behind.split_once(" w/w")?.0.parse().ok()
}

fn dough(draft: &Draft, seen: &Seen<'_>) -> Result<(), TestCaseError> {
    let plants = draft.weigh(&draft.herbs) * seen.by;
    let Some(knead) = draft.all("knead").next() else { return Ok(()) };
    let sweet = seen.of(Id::SweetenerWeight);
    if let Some(each) = ratio(&knead.says) {
        same("what sweetens", sweet, each * plants)?;
    }
    same("dough, dry", seen.of(Id::FinishedWeight), plants + sweet + knead.amount * seen.by)
}

fn drops(draft: &Draft, seen: &Seen<'_>) -> Result<(), TestCaseError> {
    let Some(sweeten) = draft.all("sweeten").next() else { return Ok(()) };
    let sugar = sweeten.amount * seen.by;
    let honey = seen.of(Id::SweetenerWeight) - sugar;
    let dry = sugar + honey * (1.0 - seen.figure("honey-moisture").unwrap_or_default());
    let hard = draft.all("boil to").any(|step| step.says == "hard crack");
    let water = seen.figure(if hard { "crack-water" } else { "soft-crack-water" }).unwrap_or_default();
    prop_assert!(water > 0.0, "some water stays in it");
    same("drops", seen.of(Id::FinishedWeight) * (1.0 - water), dry)
}

/// Pieces of one weight are the whole; doses of so many pieces, or so many grams, are all of it.
fn counted(seen: &Seen<'_>, draft: &Draft) -> Result<(), TestCaseError> {
    if let (Some(pieces), Some(cut)) = (seen.get(Id::Pieces), draft.all("cut").next()) {
        let (number, unit) = cut.says.split_once(' ').unwrap_or_default();
        let number: f64 = number.parse().expect("a number");
        let piece = if unit == "mg" { number / 1000.0 } else { number };
        same("pieces", pieces * piece, seen.of(Id::FinishedWeight))?;
    }
    Ok(())
}

fn small(draft: &Draft, bits: u64, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    for seen in Seen::thrice(&recipe, bits, by) {
        match draft.has("knead") {
            true => dough(draft, &seen)?,
            false => drops(draft, &seen)?,
        }
        counted(&seen, draft)?;
    }
    Ok(())
}

fn blend(draft: &Draft, bits: u64, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    for seen in Seen::thrice(&recipe, bits, by) {
        let all = draft.weigh(&draft.herbs) * seen.by;
        same("a blend", seen.of(Id::FinishedWeight), all)?;
        if let Some(weight) = draft.weight {
            same("its parts", all, weight * seen.by)?;
        }
    }
    Ok(())
}

fn laid_on(draft: &Draft, bits: u64, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    for seen in Seen::thrice(&recipe, bits, by) {
        let plants = draft.weigh(&draft.herbs) * seen.by;
        let Some(spread) = draft.all("spread").next() else {
            same("bath water", seen.of(Id::FinishedWeight), seen.of(Id::BathWater) * WATER)?;
            continue;
        };
        let water = (seen.of(Id::Water) - seen.of(Id::BoiledOff)) * WATER;
        same("laid on", seen.of(Id::FinishedWeight), plants + water)?;
        // Cups of plant, each of its room, so many millimetres high.
        let room = draft.cups(&draft.herbs) * seen.by * CUP;
        near("skin covered", seen.of(Id::Area), room * 1e-6 / (spread.amount * 1e-3), 1e-9)?;
    }
    Ok(())
}

proptest! {
    #![proptest_config(config())]

    /// What wets a dough dries off, and nothing else does: dry, it weighs its powders. Of boiled sugar the
    /// sugar stays, with the little water that its stage leaves.
    #[test]
    fn small_sweets_weigh_what_is_dry_in_them(draft in kinds::small(), bits: u64, by in 0.5f64..3.0) {
        small(&draft, bits, by)?;
    }

    /// A blend is its plants, and parts are parts of what they weigh together.
    #[test]
    fn a_blend_weighs_its_plants(draft in kinds::blend(), bits: u64, by in 0.5f64..3.0) {
        blend(&draft, bits, by)?;
    }

    /// What is laid on is the plants with the water that has not boiled off, and covers what their room makes
    /// at its thickness; a bath is what its tub holds.
    #[test]
    fn what_is_laid_on_is_all_that_is_there(draft in kinds::laid_on(), bits: u64, by in 0.5f64..3.0) {
        laid_on(&draft, bits, by)?;
    }
}
