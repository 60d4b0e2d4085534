//! The plants' strength: what is in the finished was put in, and all of it is there where nothing was kept.

use proptest::prelude::*;
use stillroom::working::Id;

use super::draft::Draft;
use super::{Seen, config, kinds, same, worked};

/// Plant whose strength is in what is finished, g: of what is poured by its share of the volume, of what is
/// weighed by what all doses hold. None where nothing says it.
fn in_it(seen: &Seen<'_>) -> Option<f64> {
    match (seen.get(Id::Strength), seen.get(Id::Finished)) {
        (Some(strength), Some(finished)) => Some(strength * finished),
        _ => Some(seen.get(Id::PlantPerDose)? * seen.get(Id::Doses)?),
    }
}

/// Whether no marc kept any of it: the plants are in it, fresh liquid washed them out, or they hang in it.
fn is_whole(draft: &Draft) -> bool {
    let straining = draft.steps.iter().rposition(|step| step.name == "strain");
    let washed = draft.steps.iter().rposition(|step| step.name == "make up");
    straining.is_none() || draft.unstrained() || washed > straining
}

fn no_more_than_put_in(draft: &Draft, bits: u64, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    for seen in Seen::thrice(&recipe, bits, by) {
        let put_in = draft.weigh(draft.every_herb()) * seen.by;
        let Some(plant) = in_it(&seen) else { continue };
        if draft.products.is_empty() {
            same("plants put in", seen.of(Id::Plants), put_in)?;
            prop_assert!(plant <= put_in * (1.0 + 1e-9), "{plant} g of {put_in} g");
            let runs = seen.get(Id::Strained).is_none_or(|strained| strained > 1e-6);
            prop_assert!(plant > 0.0 || !runs, "nothing of the plants is in it");
        }
        match is_whole(draft) {
            true if draft.products.is_empty() => same("plant in it", plant, put_in)?,
            false => prop_assert!(plant < put_in, "the marc keeps some of {put_in} g"),
            _ => {}
        }
        if let (Some(dose), Some(doses)) = (seen.get(Id::PlantPerDose), seen.get(Id::Doses)) {
            same("plant in every dose", dose * doses, plant)?;
        }
    }
    Ok(())
}

/// What runs through the cloth holds its share of the plants: kept liquid is as strong as what ran.
fn shared(draft: &Draft, bits: u64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    for seen in Seen::thrice(&recipe, bits, 1.0) {
        let (strained, held) = (seen.of(Id::Strained), seen.of(Id::HeldBack));
        let by_hand = draft.weigh(draft.every_herb()) * strained / (strained + held);
        if let Some(plant) = in_it(&seen) {
            same("plant in it", plant, by_hand)?;
        }
    }
    Ok(())
}

fn of_both(draft: &Draft) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    let seen = Seen { working: &recipe.laid.working, by: 1.0, values: recipe.values.clone() };
    let mut by_hand = 0.0;
    for (product, step) in draft.products.iter().zip(draft.all("combine")) {
        let product = worked(product)?;
        by_hand += product.value(Id::Strength).unwrap_or_default() * step.amount;
    }
    same("plant in both", in_it(&seen).unwrap_or_default(), by_hand)
}

proptest! {
    #![proptest_config(config())]

    /// No step makes more of a plant than was put in; where no marc keeps any (the powder stays in, water is
    /// poured through until it is all out, spirit drives it out), it is all there.
    #[test]
    fn no_more_plant_is_in_it_than_was_put_in(
        draft in kinds::recipe().prop_filter("its own", |draft| draft.products.is_empty()),
        bits: u64, by in 0.5f64..3.0,
    ) {
        no_more_than_put_in(&draft, bits, by)?;
    }

    /// The liquid left in the marc is as strong as what ran through: the plant parts as the liquid does.
    #[test]
    fn plant_parts_as_the_liquid_does(
        draft in prop_oneof![kinds::watery(), kinds::strong(), kinds::sweet(), kinds::oily()].prop_filter(
            "strained once", |draft| draft.all("strain").count() == 1 && !is_whole(draft) && !draft.has("pour again"),
        ),
        bits: u64,
    ) {
        shared(&draft, bits)?;
    }

    /// Two jars poured together hold what was poured of each.
    #[test]
    fn a_mixture_holds_the_plants_of_both(draft in kinds::combined()) {
        of_both(&draft)?;
    }
}
