//! The pantry: the formulary's own figures in place of what is built in.

use super::{book, near, worked};
use crate::kit;
use stillroom::formulary::Formulary;
use stillroom::pantry::{Pantry, read_item};
use stillroom::span::Source;
use stillroom::working::Id;

/// A book with one more pantry page.
fn with(page: &str) -> Formulary {
    let mut book = book();
    let mut findings = Vec::new();
    let source = Source::new("pantry/own.md", format!("---\n{page}---\n\nWords.\n"));
    let read = read_item(&source, "own", &Pantry::default(), &mut findings);
    assert!(findings.is_empty(), "{findings:#?}");
    let (item, page) = read.expect("an item");
    drop(book.pantry.put(item, page));
    book
}

const SYRUP: &str = "name: T\npreparation: syrup\nplants: {rosehip: 50 g dried}\nliquid: {water: 500 mL}\nmethod: [{simmer: {time: 30 min, lid: on}}, {strain: squeezed}, {sweeten: {SWEET: 100 mL}}]\ntake: {amount: 10 mL, daily: 1}";

/// Honey of 20 % water weighs 1.4027 times what water does: table after White and Wedmore, from memory.
#[test]
fn honey_of_its_own_water() {
    let mut book = with("name: honey\nkind: honey\nwater: {amount: 20 %, source: memory}\n");
    book.course.kitchen.honey_moisture = None;
    let (whole, _) = worked(&book, &SYRUP.replace("SWEET", "honey"));
    near("weight", whole.base.value(Id::SweetenerWeight).expect("a weight"), 140.27 * 0.9982, 0.01);
    // What the kitchen measured beats the page, and what the recipe says beats both.
    book.course.kitchen.honey_moisture = Some(0.17);
    let (whole, _) = worked(&book, &SYRUP.replace("SWEET", "honey"));
    near("weight", whole.base.value(Id::SweetenerWeight).expect("a weight"), 142.37 * 0.9982, 0.01);
    let said = format!("{}\nassume: {{honey-moisture: 15 %}}", SYRUP.replace("SWEET", "honey"));
    let (whole, _) = worked(&book, &said);
    near("weight", whole.base.value(Id::SweetenerWeight).expect("a weight"), 143.50 * 0.9982, 0.01);
}

/// A syrup that is not built in: 100 mL of 1.35 g/mL, 30 % of it water. By hand: 135 g, 94.5 g of solids.
#[test]
fn a_syrup_of_its_own() {
    let page = "name: own syrup\nkind: syrup\ndensity: 1.35 g/mL\nwater: 30 %\nsugars: 67 %\nenergy: 269 kcal\nsource: memory\n";
    let book = with(page);
    let (whole, _) = worked(&book, &SYRUP.replace("SWEET", "own syrup"));
    let value = |id| whole.base.value(id).expect("a line");
    near("weight", value(Id::SweetenerWeight), 135.0, 1e-9);
    near("solids", value(Id::Solids) * value(Id::FinishedWeight), 94.5, 1e-6);
    near("sugars in a dose", value(Id::SugarPerDose), 135.0 * 0.67 * 10.0 / value(Id::Finished), 1e-9);
    near("energy in a dose", value(Id::EnergyPerDose), 135.0 * 2.69 * 10.0 / value(Id::Finished), 1e-9);
}

/// A spirit whose page says its strength needs none in the recipe: vodka, 80 proof, is 40 % (27 CFR 5.11).
#[test]
fn a_spirit_and_a_vinegar_by_name() {
    let book = book();
    let tincture = |liquid: &str| {
        format!(
            "name: T\npreparation: tincture\nplants: {{hawthorn: 50 g dried}}\nliquid: {{{liquid}}}\nmethod: [{{steep: 4 weeks}}, {{strain: squeezed}}]"
        )
    };
    let (named, _) = worked(&book, &tincture("vodka: 250 mL"));
    let (said, _) = worked(&book, &tincture("spirit: 250 mL, strength: 40 %"));
    assert_eq!(named.base.value(Id::Abv), said.base.value(Id::Abv));
    assert_eq!(named.base.laid.pantry, ["vodka"]);
    assert!(named.base.laid.ingredients.iter().any(|item| item.words.starts_with("vodka of 40")));
    let own = with("name: weak vinegar\nkind: vinegar\nacid: {amount: 3 %, source: memory}\n");
    let vinegar = "name: T\npreparation: infused vinegar\nplants: {nettle: 30 g dried}\nliquid: {weak vinegar: 300 mL}\nmethod: [{steep: 2 weeks}, {strain: squeezed}]";
    let (weak, _) = worked(&own, vinegar);
    near("acid", weak.base.value(Id::Acidity).expect("acid"), 0.03, 1e-9);
}

/// Where a page's figure stands in place of a built-in one, both are printed: maple syrup by two releases of the
/// same table of foods, 60.46 and 67.90 g of sugars in 100 g.
#[test]
fn the_page_says_what_it_replaces() {
    let folder = kit::fresh_folder();
    let site = folder.path().join("site");
    let outcome = stillroom::press::press(&kit::root().join("content"), &site, Some(kit::today()), &|| {})
        .expect("pressed");
    assert!(outcome.written);
    let page = kit::read(&site.join("pantry/maple-syrup.html")).replace('\u{a0}', " ");
    assert!(page.contains("60.5 % by weight; this book’s own, in place of 67.9 %"), "{page}");
    assert!(page.contains("1.331 g/mL") && !page.contains("1.331 g/mL; this"), "as built in");
}
