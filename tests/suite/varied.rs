//! Variations asked for by a word, and variations crossed with one another.

use std::collections::BTreeSet;

use crate::bench;
use crate::kit;
use stillroom::diagnostic::{Code, stops};
use stillroom::recipe::PREPARATIONS;
use stillroom::variation::{Worked, WorkedRecipe};
use stillroom::working::Id;

fn worked(text: &str) -> (WorkedRecipe, Vec<stillroom::diagnostic::Finding>) {
    let mut book = bench::book();
    bench::plant(&mut book, "flower", "dried: {moisture: 10 %, cup: 12 g, source: common practice}");
    bench::plant(&mut book, "powder", "dried: {moisture: 10 %, cup: 95 g, source: common practice}");
    let (worked, findings) = bench::work_in(&book, text);
    (worked.unwrap_or_else(|| panic!("{text}\n{findings:#?}")), findings)
}

/// Every figure that tools rely on, to tell two workings apart.
fn figures(worked: &Worked) -> Vec<(Id, u64)> {
    Id::ALL.iter().filter_map(|id| Some((*id, worked.value(*id)?.to_bits()))).collect()
}

/// The usual variations of every preparation: two at least, none like the recipe or like another, none at fault.
#[test]
fn every_preparation_has_its_usual_variations() {
    for kind in PREPARATIONS {
        let file = format!("src/specimens/{}.yaml", kind.word.replace(' ', "-"));
        let text = kit::read(&kit::root().join(file));
        let own = text.split("variations:").next().expect("the recipe");
        let (whole, findings) = worked(&format!("{own}variations: usual\n"));
        assert!(!stops(&findings), "{}: {findings:#?}", kind.word);
        let least = if kind.word == "elixir" { 1 } else { 2 };
        assert!(whole.variations.len() >= least, "{}: {}", kind.word, whole.variations.len());
        let mut seen = BTreeSet::from([figures(&whole.base)]);
        for variation in &whole.variations {
            assert!(seen.insert(figures(variation)), "{}: {} is there already", kind.word, variation.name);
        }
    }
}

/// What a syrup is shown with, as teachers do it: 1:4, 1:8, 1:16 boiled to half; honey, maple, sugar, glycerin; half,
/// equal, double; with spirit (common practice, no source).
#[test]
fn the_usual_syrups() {
    let text = "name: T\npreparation: syrup\nplants: {hips: 200 g dried}\nliquid: {water: 1:8 w/v}\nmethod:\n  - simmer: {time: 30 min, lid: on}\n  - strain: squeezed\n  - cool: 38 °C\n  - sweeten: {honey: 1/2 of the liquid by volume}\nvariations: usual\n";
    let (whole, findings) = worked(text);
    assert!(!stops(&findings), "{findings:#?}");
    let names: Vec<&str> = whole.variations.iter().map(|variation| variation.name.as_str()).collect();
    // 1:8, honey and half are the recipe itself.
    let wanted = [
        "1:4",
        "1:16, then to half",
        "Maple syrup",
        "Sugar, equal by weight",
        "Glycerin",
        "Equal",
        "Double",
        "With spirit",
    ];
    assert_eq!(names, wanted);
    let of = |name: &str, id: Id| {
        let found = whole.variations.iter().find(|variation| variation.name == name);
        found.and_then(|variation| variation.value(id)).unwrap_or_else(|| panic!("{name}: {}", id.text()))
    };
    // By hand: 200 g at 2 mL a gram keep 400 mL; 30 minutes under a lid lose 60.
    assert!((of("1:4", Id::Strained) - (800.0 - 60.0 - 400.0)).abs() < 1e-9);
    assert!((of("1:16, then to half", Id::Reduced) - (3200.0 - 60.0 - 400.0) / 2.0).abs() < 1e-9);
    // A fifth of 1,140 mL of strained liquid and 570 of honey is 342 mL of spirit, which makes 2,052 mL of 6.7 %.
    assert!((of("With spirit", Id::Spirit) - 342.0).abs() < 1e-9);
    assert!((of("With spirit", Id::Finished) - 2052.0).abs() < 1e-9);
    assert!((of("With spirit", Id::Abv) - 342.0 * 0.4 / 2052.0).abs() < 1e-12);
}

/// Two ratios by two sweeteners: each of the four is what both changes by hand make.
#[test]
fn crossed_variations_are_both_changes() {
    let recipe = |variations: &str| {
        format!(
            "name: T\npreparation: syrup\nplants: {{hips: 100 g dried}}\nliquid: {{water: 1:8 w/v}}\nmethod:\n  - simmer: {{time: 30 min, lid: on}}\n  - strain: squeezed\n  - sweeten: {{sugar: 100 g}}\nvariations:\n{variations}"
        )
    };
    let crossed = "  - cross:\n      - 1 to 4: {liquid: {water: 1:4 w/v}}\n        1 to 16: {liquid: {water: 1:16 w/v}}\n      - honey: {sweeten: {honey: equal to the liquid by volume}}\n        maple: {sweeten: {maple syrup: equal to the liquid by volume}}\n";
    let (whole, _) = worked(&recipe(crossed));
    let names: Vec<&str> = whole.variations.iter().map(|variation| variation.name.as_str()).collect();
    assert_eq!(names, ["1 to 4, honey", "1 to 4, maple", "1 to 16, honey", "1 to 16, maple"]);
    for (variation, (ratio, sweet)) in whole.variations.iter().zip([
        ("1:4", "honey"),
        ("1:4", "maple syrup"),
        ("1:16", "honey"),
        ("1:16", "maple syrup"),
    ]) {
        let by_hand = format!(
            "  - name: H\n    change: {{liquid: {{water: {ratio} w/v}}, sweeten: {{{sweet}: equal to the liquid by volume}}}}\n"
        );
        let (hand, _) = worked(&recipe(&by_hand));
        assert_eq!(figures(variation), figures(&hand.variations[0]), "{}", variation.name);
    }
}

#[test]
fn spirit_by_a_share_of_the_liquid() {
    let text = |amount: &str| {
        format!(
            "name: T\npreparation: syrup\nplants: {{hips: 50 g dried}}\nliquid: {{water: 500 mL}}\nmethod: [{{steep: 1 h}}, {{strain: squeezed}}, {{fortify: {{spirit: {amount}, strength: 40 %}}}}]"
        )
    };
    let (share, _) = worked(&text("1/4 of the liquid by volume"));
    let (said, _) = worked(&text("100 mL"));
    // 500 mL less 2 mL a gram of 50 g is 400 mL; a quarter of it is 100.
    assert_eq!(share.base.value(Id::Finished), said.base.value(Id::Finished));
    assert_eq!(share.base.value(Id::Abv), said.base.value(Id::Abv));
    let (_, findings) = bench::work(&text("1/4 of the finished by volume"));
    assert!(findings.iter().any(|finding| finding.code == Code::NoBasis), "{findings:#?}");
}
