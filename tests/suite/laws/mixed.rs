//! Mixtures: alcohol, acid and glycerin lie between the weakest and the strongest of what was mixed.

use proptest::prelude::*;
use stillroom::working::Id;

use super::draft::{Brings, Draft};
use super::{Seen, config, kinds, worked};

const IDS: [(Id, fn(&Brings) -> f64); 3] = [
    (Id::Abv, |brings| brings.alcohol),
    (Id::Acidity, |brings| brings.acid),
    (Id::Glycerin, |brings| brings.glycerin),
];

/// Everything that is poured in a recipe; plants may bring water of their own, and that is a part too.
fn parts(draft: &Draft) -> Vec<Brings> {
    let stirred = draft.steps.iter().filter(|step| matches!(step.name, "sweeten" | "fortify" | "acidify"));
    let mut parts: Vec<Brings> = stirred.map(|step| step.brings).collect();
    parts.extend(draft.liquid.as_ref().map(|liquid| liquid.brings));
    let honey = draft.liquid.as_ref().is_some_and(|liquid| liquid.kind == "honey");
    // Of two sweeteners one may be no glycerin, and what is left in takes up room.
    let watered =
        honey || draft.unstrained() || draft.every_herb().any(|herb| herb.fresh) || draft.has("sweeten");
    parts.extend(watered.then(Brings::default));
    for product in &draft.products {
        parts.extend(self::parts(product));
    }
    parts
}

/// Vinegar of no stated acidity may have any that is assumed.
fn slack(draft: &Draft, seen: &Seen<'_>, id: Id) -> f64 {
    let assumed = seen.figure("vinegar-acidity").unwrap_or(0.05);
    let unsaid = |draft: &Draft| {
        let liquid = draft.liquid.as_ref().map(|liquid| liquid.says.as_str());
        let steps = draft.all("acidify").map(|step| step.says.as_str());
        liquid.into_iter().chain(steps).any(|says| says.contains("vinegar") && !says.contains("acidity"))
    };
    match id == Id::Acidity && (unsaid(draft) || draft.products.iter().any(unsaid)) {
        true => (assumed - 0.05).abs(),
        false => 0.0,
    }
}

fn between(draft: &Draft, bits: u64, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    let parts = parts(draft);
    // Water boiled out of a mixture leaves the rest stronger; the least stays the least.
    let thickened = draft.has("reduce") || draft.products.iter().any(|product| product.has("reduce"));
    for seen in Seen::thrice(&recipe, bits, by) {
        for (id, of) in IDS {
            let least = parts.iter().map(of).fold(f64::INFINITY, f64::min);
            let most = parts.iter().map(of).fold(0.0, f64::max);
            let Some(share) = seen.get(id) else {
                prop_assert!(most == 0.0, "{} of it is in it, and none is told", id.text());
                continue;
            };
            let slack = slack(draft, &seen, id) + 1e-9;
            prop_assert!(share > 0.0, "{} is told of what holds none", id.text());
            prop_assert!(share >= least - slack, "{} is {share}, and {least} the weakest", id.text());
            prop_assert!(
                thickened || share <= most + slack,
                "{} is {share}, and {most} the strongest",
                id.text()
            );
        }
    }
    Ok(())
}

/// What one liquid on dried plants is, what is strained of it is.
fn unchanged(draft: &Draft, bits: u64, by: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    let brings = draft.liquid.as_ref().map(|liquid| liquid.brings).unwrap_or_default();
    for seen in Seen::thrice(&recipe, bits, by) {
        for (id, of) in IDS {
            let (share, slack) = (seen.of(id), slack(draft, &seen, id) + 1e-9);
            prop_assert!((share - of(&brings)).abs() <= slack, "{} is {share} of {brings:?}", id.text());
        }
    }
    Ok(())
}

/// Whether it is one liquid, dried plants, and nothing else.
fn is_plain(draft: &Draft) -> bool {
    let stirred = ["sweeten", "fortify", "acidify"].into_iter().any(|name| draft.has(name));
    !stirred && !draft.unstrained() && draft.every_herb().all(|herb| !herb.fresh)
}

proptest! {
    #![proptest_config(config())]

    /// A mixture is no stronger than the strongest of what was mixed and no weaker than the weakest, whatever
    /// the amounts: each part brings its own and takes up its own room.
    #[test]
    fn a_mixture_is_as_strong_as_something_between_its_parts(
        draft in prop_oneof![kinds::syrup(), kinds::sour(), kinds::sweet(), kinds::strong(), kinds::combined()],
        bits: u64, by in 0.5f64..3.0,
    ) {
        between(&draft, bits, by)?;
    }

    /// Dried plants bring nothing that counts in spirit, vinegar or glycerin, and the cloth keeps all parts
    /// alike: what runs through is as strong as what was poured on.
    #[test]
    fn straining_changes_no_strength(
        draft in prop_oneof![kinds::sour(), kinds::sweet(), kinds::strong()].prop_filter("plain", is_plain),
        bits: u64, by in 0.5f64..3.0,
    ) {
        unchanged(&draft, bits, by)?;
    }
}
