//! What a batch costs, against cost sheets kept on paper (common practice, no source; the prices are made up there).

use crate::bench;
use std::collections::BTreeSet;
use stillroom::cost::{Bill, bill};
use stillroom::formulary::{Formulary, Prices, read_course};
use stillroom::span::Source;

fn prices(lines: &str) -> Prices {
    let mut findings = Vec::new();
    let text = format!("book: B\ntitle: T\nprices:\n  currency: $\n{lines}");
    let mut prices = read_course(&Source::new("formulary.yaml", text), &mut findings).prices;
    let book = bench::book();
    prices.settle(book.plants.keys().map(String::as_str), &BTreeSet::new(), &book.pantry, &mut findings);
    assert!(findings.is_empty(), "{findings:?}");
    prices
}

fn cost(recipe: &str, lines: &str) -> Bill {
    let tried = bench::tried(recipe);
    bill(&tried, &prices(lines)).expect("something has a price")
}

#[track_caller]
fn near(what: &str, ours: f64, printed: f64) {
    // Printed to the hundredth.
    assert!((ours - printed).abs() <= 0.005 + 1e-9, "{what}: {ours}, printed {printed}");
}

/// A student's exercise: 3 oz are needed, 4 oz are sold at $9: $9.00 for the batch, $6.75 of it used.
#[test]
fn three_ounces_of_four() {
    let bill = cost(
        "plants: {hips: 3 oz dried}\nliquid: {water: 1 L}\nmethod: [{steep: 1 h}, {strain: squeezed}]",
        "  hips: 9 for 4 oz weight\n",
    );
    near("bought", bill.bought(), 9.00);
    near("used", bill.used(), 6.75);
    assert!(bill.unpriced.is_empty(), "water is from the tap: {:?}", bill.unpriced);
}

/// The sheet of a class of twelve: hips 2.2 oz of 4 oz at 7.00 (used 3.85), honey 3.29 lb of 5 lb at 32.00 (used 21.06);
/// thyme 132 g of 4 oz at 6.00 takes two packs, 12.00 (used 6.99 on the sheet, which rounds the ounces first).
#[test]
fn a_class_on_paper() {
    let bill = cost(
        "preparation: syrup\nplants: {hips: 2.2 oz dried, leaf: 132 g dried}\nliquid: {water: 1 L}\n\
         method: [{steep: 1 h}, {strain: squeezed}, {sweeten: {honey: 3.29 lb}}]",
        "  hips: 7.00 for 4 oz weight\n  honey: 32.00 for 5 lb\n  leaf: 6.00 for 4 oz weight\n",
    );
    let of = |words: &str| bill.items.iter().find(|item| item.words.contains(words)).expect(words);
    near("hips", of("hips").used(), 3.85);
    near("honey", of("honey").used(), 21.06);
    near("leaf used", of("leaf").used(), 6.98);
    near("leaf bought", of("leaf").bought(), 12.00);
    near("bought", bill.bought(), 7.00 + 32.00 + 12.00);
}

/// What is just a pack is one pack; what is a little more is two; fresh has its own price, and what has none is named.
#[test]
fn whole_packs() {
    let packs = |weight: &str, form: &str| {
        let recipe = format!(
            "plants: {{hips: {weight} {form}, berries: 10 g dried}}\nliquid: {{water: 3 L}}\nmethod: [{{steep: 1 h}}, {{strain: squeezed}}]"
        );
        let bill = cost(&recipe, "  hips: 5.00 for 100 g\n  fresh hips: 2.00 for 1 kg\n");
        assert_eq!(bill.unpriced, ["berries"]);
        (bill.items[0].packs(), bill.bought())
    };
    assert_eq!(packs("100 g", "dried"), (1.0, 5.0));
    assert_eq!(packs("101 g", "dried"), (2.0, 10.0));
    assert_eq!(packs("100 g", "fresh"), (1.0, 2.0));
}

/// A volume is priced by a pack of that measure; by weight only where the weight is worked.
#[test]
fn packs_by_volume() {
    let recipe = "plants: {hips: 10 g dried}\nliquid: {vinegar: 1.32 L}\nmethod: [{steep: 2 weeks}, {strain: squeezed}]";
    let bill = cost(recipe, "  vinegar: 4.00 for 32 fl oz\n  hips: 1 for 1 kg\n");
    // Of the same sheet: 1.32 L of vinegar, 32 fl oz at 4.00: two bottles, 8.00; used 5.58.
    if let Some(item) = bill.items.iter().find(|item| item.words.contains("vinegar")) {
        near("vinegar", item.used(), 5.58);
        near("bottles", item.bought(), 8.00);
    } else {
        panic!("vinegar has a price: {bill:?}");
    }
    let nothing = Formulary::default().course.prices;
    assert!(bill_of_nothing(recipe, &nothing).is_none());
}

fn bill_of_nothing(recipe: &str, prices: &Prices) -> Option<Bill> {
    bill(&bench::tried(recipe), prices)
}
