//! Balances: what is put in is boiled off, kept by the marc, or there; by volume and by weight.

use proptest::prelude::*;
use stillroom::working::Id;

use super::draft::{Draft, Herb, WATER};
use super::{Seen, config, kinds, near, same, worked};

/// Densities, g/mL: vinegar, oil and glycerin as the book's tables have them, by hand from there.
const VINEGAR: f64 = 1.0102;
const OIL: f64 = 0.913;
const GLYCERIN: f64 = 1.261;

/// Density of spirit by its alcohol, % v/v at 20 °C, g/mL: the alcoholometric tables of OIML R 22, from
/// memory and to five places.
const SPIRIT: &[(f64, f64)] =
    &[(20.0, 0.97356), (40.0, 0.94805), (50.0, 0.93014), (60.0, 0.90911), (70.0, 0.88556), (95.0, 0.81138)];

fn spirit(alcohol: f64) -> f64 {
    let row = SPIRIT.iter().find(|row| (row.0 - alcohol * 100.0).abs() < 1e-9);
    row.map(|row| row.1).expect("a strength of the table")
}

/// What a lid lets off, mL a minute, and how wet a hand leaves the marc: the usual of what is assumed.
const LIDS: [(&str, f64); 3] = [("lid: on", 2.0), ("lid: ajar", 5.0), ("lid: off", 10.0)];
const HANDS: [(&str, f64); 3] = [("drained", 1.5), ("squeezed", 1.0), ("pressed", 0.5)];

/// What is poured on, mL, as the working has it.
fn poured_on(draft: &Draft, seen: &Seen<'_>) -> f64 {
    match draft.liquid.as_ref().map(|liquid| liquid.kind) {
        Some("water") => seen.of(Id::Water),
        Some("spirit") => seen.of(Id::Spirit),
        Some(_) => seen.of(Id::Liquid),
        None => 0.0,
    }
}

/// Water that the plants bring into it, mL.
fn brought(draft: &Draft, seen: &Seen<'_>) -> f64 {
    let honey = draft.liquid.as_ref().is_some_and(|liquid| liquid.kind == "honey");
    let dried = honey.then(|| seen.figure("dried-moisture").unwrap_or_default());
    draft.brought(draft.every_herb(), dried) * seen.by
}

fn volumes(draft: &Draft, bits: u64, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    for seen in Seen::thrice(&recipe, bits, by) {
        // What is poured on is that of both times, where a marc is used again.
        let put_in = poured_on(draft, &seen) + brought(draft, &seen);
        same("put in", put_in, seen.of(Id::BoiledOff) + seen.of(Id::HeldBack) + seen.of(Id::Strained))?;
    }
    let seen = Seen { working: &recipe.laid.working, by: 1.0, values: recipe.values.clone() };
    if !draft.assume.is_empty() || draft.has("percolate") {
        return Ok(());
    }
    let rate = |says: &str| LIDS.iter().find(|lid| says.contains(lid.0)).map_or(0.0, |lid| lid.1);
    let boiled: f64 = draft.steps.iter().map(|step| step.amount * rate(&step.says)).sum();
    same("boiled off", seen.of(Id::BoiledOff), boiled)?;
    let hand = draft.all("strain").next_back().map_or("", |step| &step.says);
    let wet = HANDS.iter().find(|known| known.0 == hand).map_or(0.0, |known| known.1);
    if draft.liquid.as_ref().is_some_and(|liquid| !matches!(liquid.kind, "honey" | "oil")) {
        same("kept by the marc", seen.of(Id::HeldBack), wet * draft.kept(draft.every_herb()))?;
    }
    Ok(())
}

/// Whether it is one liquid on plants that are strained out, all of which has an id.
fn is_strained(draft: &Draft) -> bool {
    let oil_twice = draft.liquid.as_ref().is_some_and(|liquid| liquid.kind == "oil") && draft.has("add");
    draft.liquid.is_some() && !draft.unstrained() && !oil_twice
}

/// What is finished weighs, g: all that was poured on and brought, less what boiled off; of it the share
/// that runs through the cloth; with what was stirred in, less what was boiled away then.
fn by_hand(draft: &Draft, seen: &Seen<'_>) -> Option<f64> {
    let liquid = draft.liquid.as_ref()?;
    let (volume, brought) = (poured_on(draft, seen), brought(draft, seen));
    let strong = liquid.brings;
    let density = match liquid.kind {
        "water" => WATER,
        "spirit" => spirit(strong.alcohol),
        "vinegar" => VINEGAR,
        "oil" => OIL,
        "glycerin" => strong.glycerin * GLYCERIN + (1.0 - strong.glycerin) * WATER,
        _ => seen.named("density of the honey").next()?,
    };
    // Water steams off as water; vinegar as what is in the pan, acid and all.
    let steams = match liquid.kind {
        "vinegar" => (volume * density + brought * WATER) / (volume + brought),
        _ => WATER,
    };
    let boiled = seen.of(Id::BoiledOff) * steams;
    let mut weight = if draft.unstrained() {
        // Water of fresh plants, and what dried ones lend to honey, is in their own weight.
        volume * density - boiled + draft.weigh(draft.every_herb()) * seen.by
    } else {
        let (strained, held) = (seen.of(Id::Strained), seen.of(Id::HeldBack));
        match liquid.kind {
            "water" => strained * WATER,
            "oil" => {
                let water = seen.of(Id::WaterInOil);
                (strained - water) * OIL + water * WATER
            }
            _ => (volume * density + brought * WATER - boiled) * strained / (strained + held),
        }
    };
    for step in &draft.steps {
        let amount = step.amount * seen.by;
        match step.name {
            "make up" => weight = amount * WATER,
            "fortify" => weight += amount * spirit(step.brings.alcohol),
            "acidify" => weight += amount * VINEGAR,
            _ => {}
        }
    }
    let away: f64 = seen.named("to boil away").sum();
    Some(weight + seen.of(Id::SweetenerWeight) + seen.of(Id::Wax) - away * WATER)
}

fn weights(draft: &Draft, bits: u64, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    for seen in Seen::thrice(&recipe, bits, by) {
        let Some(weight) = by_hand(draft, &seen) else { continue };
        // The table of spirits has five places.
        let spirit = draft.has("fortify") || draft.liquid.as_ref().is_some_and(|it| it.kind == "spirit");
        let within = if spirit { 1e-5 } else { 1e-9 };
        near("finished, weighed", seen.of(Id::FinishedWeight), weight, within)?;
    }
    Ok(())
}

fn oil(draft: &Draft, bits: u64, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    for seen in Seen::thrice(&recipe, bits, by) {
        let (water, brought) = (seen.of(Id::WaterInOil), brought(draft, &seen));
        let (strained, held) = (seen.of(Id::Strained), seen.of(Id::HeldBack));
        match draft.has("add") {
            false => same("water in the oil", water, brought * strained / (strained + held))?,
            true => prop_assert!(water <= brought * (1.0 + 1e-9), "{water} of {brought} mL are in the oil"),
        }
    }
    Ok(())
}

fn made_of(draft: &Draft) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    let seen = Seen { working: &recipe.laid.working, by: 1.0, values: recipe.values.clone() };
    let (mut weight, mut volume) = (seen.of(Id::Wax), seen.of(Id::Wax) / 0.96);
    for (product, step) in draft.products.iter().zip(draft.all("combine")) {
        let product = worked(product)?;
        let whole = |id| product.value(id).unwrap_or_default();
        weight += whole(Id::FinishedWeight) * step.amount / whole(Id::Finished);
        volume += step.amount;
    }
    same("finished, weighed", seen.of(Id::FinishedWeight), weight)?;
    same("finished", seen.of(Id::Finished), volume)
}

/// The plants of a draft that are fresh.
fn fresh(draft: &Draft) -> impl Iterator<Item = &Herb> {
    draft.every_herb().filter(|herb| herb.fresh)
}

proptest! {
    #![proptest_config(config())]

    /// Water is neither made nor lost: what went into the pan, with what fresh plants brought, boiled off,
    /// stays in the marc, or ran through the cloth. A second boil adds its water, and only the last marc
    /// still holds any. So does it go for every other liquid that is strained.
    #[test]
    fn what_is_put_in_boils_off_is_kept_or_runs_through(
        draft in prop_oneof![3 => kinds::watery(), 1 => kinds::syrup(), 1 => kinds::sour(), 1 => kinds::sweet(),
            1 => kinds::strong(), 1 => kinds::oily()].prop_filter("strained", is_strained),
        bits: u64, by in 0.5f64..3.0,
    ) {
        volumes(&draft, bits, by)?;
    }

    /// Weights add, whatever volumes do: what is finished weighs what went in, less what boiled off, what the
    /// cloth kept and what was boiled away.
    #[test]
    fn what_is_finished_weighs_what_went_in_less_what_was_taken_away(
        draft in prop_oneof![kinds::watery(), kinds::syrup(), kinds::sour(), kinds::sweet(), kinds::strong(), kinds::oily()],
        bits: u64, by in 0.5f64..3.0,
    ) {
        weights(&draft, bits, by)?;
    }

    /// The cloth lets oil and the water in it through alike.
    #[test]
    fn oil_holds_its_share_of_what_fresh_plants_bring(
        draft in kinds::oily().prop_filter("fresh", |draft| fresh(draft).next().is_some()),
        bits: u64, by in 0.5f64..3.0,
    ) {
        oil(&draft, bits, by)?;
    }

    /// What is poured out of two jars weighs its share of each, and takes up as much as was poured.
    #[test]
    fn what_is_combined_is_its_shares(draft in kinds::combined()) {
        made_of(&draft)?;
    }
}
