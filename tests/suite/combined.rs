//! Products combined: nothing is gained or lost on the way from one recipe into the next.
//!
//! Conservation of mass, and each part by the share that is poured, are the check from outside: the
//! joined working must give what the two workings give when their results are mixed by hand.

use crate::bench::{Tried, last_of, tried};
use stillroom::working::Id;

const VINEGAR: &str = "plants: {leaf: 30 g dried}\nliquid: {vinegar: 1:10 w/v, acidity: 5 %}\n\
    method: [{steep: 3 weeks}, {strain: squeezed}]\nkeep: cool and dark";
const HONEY: &str = "plants: {root: 20 g dried}\nliquid: {honey: 340 g}\n\
    method: [{steep: 3 weeks}, {strain: squeezed}]\nkeep: cool and dark";
const TINCTURE: &str = "plants: {root: 50 g dried}\nliquid: {spirit: 1:5 w/v, strength: 50 %}\n\
    method: [{steep: 4 weeks}, {strain: squeezed}]\nkeep: cool and dark";
const SYRUP: &str = "plants: {leaf: 20 g dried}\nliquid: {water: 400 mL}\n\
    method: [{steep: 1 h}, {strain: squeezed}, {sweeten: {sugar: equal to the liquid by weight}}]\nkeep: refrigerator";

fn named(name: &str, preparation: &str, lines: &str) -> String {
    format!("name: {name}\npreparation: {preparation}\n{lines}")
}

fn oxymel(vinegar: f64, honey: f64) -> Tried {
    last_of(&[
        &named("Leaf vinegar", "infused vinegar", VINEGAR),
        &named("Root honey", "infused honey", HONEY),
        &named(
            "Both",
            "oxymel",
            &format!(
                "method: [combine: {{Leaf vinegar: {vinegar} mL}}, combine: {{Root honey: {honey} mL}}]\nkeep: refrigerator"
            ),
        ),
    ])
}

fn elixir(tincture: f64, syrup: f64) -> Tried {
    last_of(&[
        &named("Root tincture", "tincture", TINCTURE),
        &named("Leaf syrup", "syrup", SYRUP),
        &named(
            "Both",
            "elixir",
            &format!(
                "method: [combine: {{Root tincture: {tincture} mL}}, combine: {{Leaf syrup: {syrup} mL}}]\nkeep: refrigerator"
            ),
        ),
    ])
}

#[track_caller]
fn same(what: &str, got: f64, expected: f64) {
    assert!((got - expected).abs() <= expected.abs() * 1e-9, "{what}: {got}, by hand {expected}");
}

#[test]
fn the_whole_weighs_what_its_shares_weigh() {
    for (first, second) in [(150.0, 150.0), (40.0, 200.0), (10.0, 5.0)] {
        let (vinegar, honey) = (tried(VINEGAR), tried(HONEY));
        let by_hand = vinegar.of(Id::FinishedWeight) * first / vinegar.of(Id::Finished)
            + honey.of(Id::FinishedWeight) * second / honey.of(Id::Finished);
        same("an oxymel's weight", oxymel(first, second).of(Id::FinishedWeight), by_hand);

        let (tincture, syrup) = (tried(TINCTURE), tried(SYRUP));
        let by_hand = tincture.of(Id::FinishedWeight) * first / tincture.of(Id::Finished)
            + syrup.of(Id::FinishedWeight) * second / syrup.of(Id::Finished);
        same("an elixir's weight", elixir(first, second).of(Id::FinishedWeight), by_hand);
    }
}

/// Dissolved solids by weight do not depend on how volumes add.
#[test]
fn an_elixirs_solids_are_its_syrups_thinned() {
    let (tincture, syrup) = (tried(TINCTURE), tried(SYRUP));
    let of_syrup = syrup.of(Id::FinishedWeight) * 200.0 / syrup.of(Id::Finished);
    let of_tincture = tincture.of(Id::FinishedWeight) * 50.0 / tincture.of(Id::Finished);
    let both = elixir(50.0, 200.0);
    same("solids", both.of(Id::Solids), syrup.of(Id::Solids) * of_syrup / (of_syrup + of_tincture));
}

/// Twice of each is twice the whole, and as strong.
#[test]
fn strength_does_not_depend_on_how_much() {
    let (once, twice) = (oxymel(70.0, 50.0), oxymel(140.0, 100.0));
    same("volume", twice.of(Id::Finished), 2.0 * once.of(Id::Finished));
    same("acidity", twice.of(Id::Acidity), once.of(Id::Acidity));
    let (once, twice) = (elixir(30.0, 90.0), elixir(60.0, 180.0));
    same("alcohol", twice.of(Id::Abv), once.of(Id::Abv));
}

/// Alcohol is kept by volume: the tincture's, over what both come to.
#[test]
fn an_elixirs_alcohol_is_its_tinctures() {
    let tincture = tried(TINCTURE);
    let both = elixir(50.0, 200.0);
    let expected = tincture.of(Id::Abv) * 50.0 / both.of(Id::Finished);
    same("alcohol", both.of(Id::Abv), expected);
}

/// What a plant was in stays known: its cautions come along.
#[test]
fn the_plants_of_both_are_the_whole_ones() {
    let both = oxymel(100.0, 100.0);
    assert_eq!(both.laid.plants, ["leaf", "root"]);
}
