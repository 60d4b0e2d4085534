//! Larger batches: what grows with them and what does not, and a batch for a wanted result.

use proptest::prelude::*;
use proptest::sample::select;
use stillroom::formula::Line;
use stillroom::measure;
use stillroom::variation::Worked;
use stillroom::wanted;
use stillroom::working::{How, Id, Working};

use super::draft::Draft;
use super::{Seen, config, kinds, near, wild, worked};

/// Formulas whose result does not grow with a batch though a line of time or of heat goes into it.
const BOILING: [&str; 2] = ["boil-off", "time-to-lose"];

/// A dose against the whole: the larger the batch, the smaller its share.
const OF_THE_WHOLE: [&str; 2] = ["share-of-whole", "share-of-pieces"];

/// What every id does in a batch: it grows, or it stays.
const fn grows(id: Id) -> bool {
    match id {
        Id::Plants | Id::Water | Id::Liquid | Id::Spirit | Id::StrongSpirit | Id::WaterToAdd | Id::Wax => {
            true
        }
        Id::HeldBack | Id::Strained | Id::ReducedBy | Id::Reduced | Id::Sweetener | Id::SweetenerWeight => {
            true
        }
        Id::Finished | Id::FinishedWeight | Id::WaterInOil | Id::FreeWater | Id::BathWater | Id::Area => true,
        Id::Doses | Id::Days | Id::Bottles | Id::Pieces | Id::Room => true,
        Id::BoiledOff | Id::Minutes | Id::StoveMinutes | Id::Boiling | Id::Stage | Id::Temperature => false,
        Id::Solids | Id::WaterActivity | Id::Abv | Id::Acidity | Id::Glycerin | Id::Moisture => false,
        Id::Covered | Id::SugarInWater | Id::GlycerolInWater | Id::Strength => false,
        Id::PlantPerDose | Id::SugarPerDose | Id::AlcoholPerDose | Id::EnergyPerDose => false,
    }
}

/// Whether a boiling leads to a line, line by line.
fn boiled(working: &Working) -> Vec<bool> {
    let mut boiled: Vec<bool> = Vec::new();
    for entry in working.entries() {
        let own = matches!(&entry.how, How::Worked(by) if BOILING.contains(&by.formula.id));
        boiled.push(own || entry.how.inputs().any(|input| boiled[input.index()]));
    }
    boiled
}

fn batch(draft: &Draft, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    let working = &recipe.laid.working;
    let (once, larger) = (&recipe.values, working.evaluate(&working.batch(by)));
    for (line, boiled) in working.lines().zip(boiled(working)) {
        let (entry, value, grown) = (working.entry(line), once[line.index()], larger[line.index()]);
        if let How::Given { grows, .. } = entry.how {
            let expected = if grows { value * by } else { value };
            prop_assert_eq!(grown, expected, "`{}`", entry.name);
        }
        if boiled {
            continue;
        }
        let against_the_whole =
            matches!(&entry.how, How::Worked(by) if OF_THE_WHOLE.contains(&by.formula.id));
        let may = [value, if against_the_whole { value / by } else { value * by }];
        prop_assert!(may.contains(&grown), "`{}` goes from {value} to {grown}", entry.name);
        if let Some(id) = working.id_of(line) {
            let expected = if grows(id) { value * by } else { value };
            prop_assert_eq!(grown, expected, "{}", id.text());
        }
    }
    Ok(())
}

/// The batch, and the recipe written out with its amounts so many times as large.
fn written_out(draft: &Draft, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    let larger = recipe.with(&recipe.laid.working.batch(by));
    if recipe.laid.working.impossible(&larger.values).is_some() {
        return Ok(());
    }
    let written = worked(&draft.grown(by))?;
    for (id, line) in larger.laid.working.claimed() {
        let written = written.value(id);
        prop_assert!(written.is_some(), "{} is not in the recipe written out", id.text());
        near(id.text(), larger.at(line), written.unwrap_or_default(), 1e-6)?;
    }
    Ok(())
}

fn want(recipe: &Worked, amount: f64, unit: &str) -> Result<Worked, String> {
    let text = format!("{amount} {unit}");
    let wanted = measure::wanted(&text).expect("an amount");
    wanted::worked(recipe, &wanted).map_err(|unmet| unmet.why)
}

/// The line that a wanted result is measured by, and its unit.
fn measured(recipe: &Worked) -> Option<(Line, &'static str)> {
    let line = |id| recipe.laid.working.line(id);
    let by_volume = line(Id::Finished).map(|line| (line, "mL"));
    by_volume.or_else(|| line(Id::FinishedWeight).map(|line| (line, "g")))
}

/// A search looks at batches so many times apart, 33 of them over a million; between one that can be and
/// one that cannot it does not look, and tells a reach that ends at the last that can.
const APART: f64 = 1.55;

/// A batch that can be is found again from what it comes to.
fn turned(draft: &Draft, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    let Some((line, unit)) = measured(&recipe) else { return Ok(()) };
    let working = &recipe.laid.working;
    let values = working.evaluate(&working.batch(by));
    if working.impossible(&values).is_some() {
        return Ok(());
    }
    let amount = (values[line.index()] * 1e3).round() / 1e3;
    match want(&recipe, amount, unit) {
        Ok(found) => {
            near("wanted", found.at(line), amount, 1e-6)?;
            // Forward: the same lines set to what was found.
            let plants = found.value(Id::Plants).unwrap_or_default();
            let times = plants / recipe.value(Id::Plants).unwrap_or(1.0);
            if draft.products.is_empty() && plants > 0.0 {
                let forward = worked(&draft.grown(times))?;
                let again = working.id_of(line).and_then(|id| forward.value(id)).unwrap_or_default();
                near("forward", again, amount, 1e-6)?;
            }
        }
        Err(why) => {
            let cannot = |by: f64| working.impossible(&working.evaluate(&working.batch(by))).is_some();
            let at_the_edge = cannot(by * APART) || cannot(by / APART);
            prop_assert!(at_the_edge, "{amount} {unit} is what {by} times makes, and yet: {why}");
        }
    }
    Ok(())
}

fn met_or_told(draft: &Draft, amount: f64, unit: &str) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    match want(&recipe, amount, unit) {
        Ok(found) => {
            let id = if unit == "g" { Id::FinishedWeight } else { Id::Finished };
            near("wanted", found.value(id).unwrap_or_default(), amount, 1e-6)?;
            let working = &found.laid.working;
            prop_assert!(working.impossible(&found.values).is_none(), "it cannot be made");
        }
        Err(why) => prop_assert!(!why.is_empty() && !why.contains("NaN") && !why.contains('—'), "{why}"),
    }
    Ok(())
}

/// What a boiling leads to lags behind its batch: the pot loses as much of a large one as of a small one.
fn lags(draft: &Draft, bits: u64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    // The second and the third are one corner of the assumptions.
    if let [_, small, large] = &Seen::thrice(&recipe, bits, 2.0)[..] {
        prop_assert_eq!(small.of(Id::BoiledOff), large.of(Id::BoiledOff));
        // What is not strained is what is finished.
        let id = if draft.unstrained() { Id::Finished } else { Id::Strained };
        let more = large.of(id) - 2.0 * small.of(id);
        near("left of twice", more, small.of(Id::BoiledOff), 1e-6)?;
    }
    Ok(())
}

proptest! {
    #![proptest_config(config())]

    /// Twice of everything put in is twice of everything that follows, and shares, strengths and minutes stay:
    /// only what a pot boils off goes by the clock. By a power of two it holds to the last bit.
    #[test]
    fn a_batch_is_so_many_times_the_recipe(
        draft in wild::any_recipe(), by in select(vec![0.125, 0.25, 0.5, 2.0, 4.0, 16.0]),
    ) {
        batch(&draft, by)?;
    }

    /// A batch is what the recipe gives with its amounts written so many times as large.
    #[test]
    fn a_batch_is_the_recipe_written_out_larger(draft in kinds::recipe(), by in select(vec![0.5, 1.5, 2.25, 3.0])) {
        written_out(&draft, by)?;
    }

    /// The clock boils off as much of a large batch as of a small one: twice leaves twice, and that once more.
    #[test]
    fn a_pot_loses_by_the_clock(draft in kinds::watery(), bits: u64) {
        lags(&draft, bits)?;
    }

    /// What a batch comes to is found again when it is wanted, and the amounts told for it, worked forward,
    /// make it.
    #[test]
    fn what_a_batch_makes_can_be_wanted(draft in kinds::recipe(), by in 0.6f64..6.0) {
        turned(&draft, by)?;
    }

    /// Any other result is made to a millionth, or it is said why not.
    #[test]
    fn what_is_wanted_is_made_or_told(
        draft in kinds::recipe(), amount in 0.5f64..50_000.0, unit in select(vec!["mL", "g"]),
    ) {
        met_or_told(&draft, amount, unit)?;
    }
}
