//! Amounts for a wanted result, against the trade's worked examples (common practice, no source: class
//! handouts' own arithmetic), and against working the told amounts forward.

use crate::bench::{Tried, last_of, tried};
use stillroom::measure;
use stillroom::wanted::worked;
use stillroom::working::Id;

fn wanted(recipe: &Tried, text: &str) -> Result<Tried, String> {
    let wanted = measure::wanted(text).expect("it can be read");
    worked(recipe, &wanted).map(Tried::from).map_err(|unmet| unmet.why)
}

#[track_caller]
fn per_cent(what: &str, got: f64, printed: f64, within: f64) {
    assert!((got - printed).abs() <= printed * within / 100.0, "{what}: {got}, printed {printed}");
}

const FL_OZ: f64 = 29.573_529_562_5;

#[test]
fn twelve_tins_of_an_ounce() {
    // 216 g of oil and 28 g of wax fill 9.0 fl oz; twelve tins take 288 g and 38 g.
    let salve = tried(
        "preparation: salve\nplants: {root: 40 g dried}\nliquid: {oil: 236.6 mL}\nassume: {oil-held: 0.001 mL, squeezed: 100 %}\n\
         method: [{steep: 4 weeks}, {strain: squeezed}, {melt: {beeswax: 28 g}}, {bottle: 1 fl oz}]",
    );
    per_cent("volume", salve.of(Id::Finished) / FL_OZ, 9.0, 2.0);
    let tins = wanted(&salve, "12 tins of 1 fl oz").expect("it is in reach");
    per_cent("tins", tins.of(Id::Bottles), 12.0, 1e-7);
    per_cent("wax", tins.of(Id::Wax), 38.0, 2.0);
    per_cent("oil", tins.of(Id::FinishedWeight) - tins.of(Id::Wax), 288.0, 2.0);
}

#[test]
fn eighty_lozenges_of_a_gram() {
    // 10 g of root and 70 g of sugar make 80 of 1 g.
    let lozenge = tried(
        "preparation: lozenge\nplants: {root: 25 g dried}\n\
         method: [{knead: {sugar: 1:7 w/w, water: 33 mL}}, {cut: 1 g}, {dry: 12 h}]\ntake: {amount: 1 piece, daily: 8}",
    );
    for text in ["80 of 1 g", "80 lozenges of 1 g", "80 lozenges", "80 g"] {
        let eighty = wanted(&lozenge, text).expect("it is in reach");
        per_cent(text, eighty.of(Id::Pieces), 80.0, 1e-7);
        per_cent("root", eighty.of(Id::Plants), 10.0, 1e-7);
        per_cent("sugar", eighty.of(Id::SweetenerWeight), 70.0, 1e-7);
        per_cent("days", eighty.of(Id::Days), 10.0, 1e-7);
    }
    assert!(wanted(&lozenge, "500 mL").expect_err("it has no volume").contains("counted or weighed"));
}

#[test]
fn half_a_litre_of_tincture_of_sixty() {
    // 1:5, a gram keeping 1.7 mL: 500 mL come back of 757.6 mL on 151.5 g; 60 % from 95 % takes 0.6/0.95 of it.
    let tincture = tried(
        "plants: {hips: 100 g dried}\nliquid: {spirit: 1:5 w/v, strength: 60 %, from: 95 %}\nassume: {squeezed: 85 %}\n\
         method: [{steep: 4 weeks}, {strain: squeezed}]",
    );
    let half = wanted(&tincture, "500 mL").expect("it is in reach");
    per_cent("plant", half.of(Id::Plants), 500.0 / 3.3, 1e-6);
    per_cent("spirit", half.of(Id::Spirit), 5.0 * 500.0 / 3.3, 1e-6);
    per_cent("strong", half.of(Id::StrongSpirit), 5.0 * 500.0 / 3.3 * 0.60 / 0.95, 1e-6);
    assert!((half.of(Id::Abv) - 0.60).abs() < 1e-9, "it is as strong as before");
}

#[test]
fn what_boils_off_does_not_grow() {
    // 20 minutes at 10 mL: 200 mL off, whatever the batch. 1 oz in a litre keeps 42.5 mL, so twice what is strained
    // takes less than twice of everything.
    let lines = "plants: {root: 28.35 g dried}\nliquid: {water: 1 L}\n\
                 method: [{simmer: {time: 20 min, lid: off}}, {strain: squeezed}]";
    let once = tried(lines);
    let twice = wanted(&once, &format!("{} mL", once.of(Id::Finished) * 2.0)).expect("it is in reach");
    let by = twice.of(Id::Water) / once.of(Id::Water);
    // (2 × (1000 − 200 − 42.5) + 200) over (1000 − 42.5): the sum on paper.
    per_cent("water", by, (2.0 * (1000.0 - 200.0 - 42.525) + 200.0) / (1000.0 - 42.525), 0.01);
    assert!((twice.of(Id::BoiledOff) - once.of(Id::BoiledOff)).abs() < 1e-9);
    // Forward again: a recipe that declares those amounts makes what was wanted.
    let (water, root) = (twice.of(Id::Water), twice.of(Id::Plants));
    let again = tried(&lines.replace("1 L", &format!("{water} mL")).replace("28.35 g", &format!("{root} g")));
    per_cent("forward", again.of(Id::Finished), once.of(Id::Finished) * 2.0, 1e-6);
}

#[test]
fn a_product_grows_with_what_it_goes_into() {
    let recipes = |more: &str| {
        let oil = "name: Oil\npreparation: infused oil\nplants: {root: 80 g dried}\nliquid: {oil: 400 mL}\nmethod: [{steep: 4 weeks}, {strain: squeezed}]";
        let salve = format!(
            "name: Salve\npreparation: salve\nmethod: [combine: {{Oil: {more}}}, melt: {{beeswax: 1/8 of the liquid by weight}}]"
        );
        last_of(&[oil, &salve])
    };
    let once = recipes("150 mL");
    let more = wanted(&once, "500 mL").expect("it is in reach");
    per_cent("finished", more.of(Id::Finished), 500.0, 1e-7);
    let poured = more.at(more.declared("oil"));
    // The 80 g and 400 mL of the oil's own recipe grow alike, so there is enough of it.
    per_cent("poured", poured, 150.0 * 500.0 / once.of(Id::Finished), 1e-6);
}

#[test]
fn a_poultice_for_a_chest() {
    // 24 g of mashed leaf cover 100 cm² at 6 mm, so 300 cm² take 72 g.
    let poultice = tried("preparation: poultice\nplants: {leaf: 24 g fresh}\nmethod: [{spread: 6 mm}]");
    let chest = wanted(&poultice, "300 cm²").expect("it is in reach");
    per_cent("area", chest.of(Id::Area) * 1e4, 300.0, 1e-6);
    per_cent("leaf", chest.of(Id::Plants) / poultice.of(Id::Plants), 0.03 / poultice.of(Id::Area), 1e-6);
    assert!(wanted(&poultice, "500 mL").expect_err("nothing is poured").contains("weighed"));
}

/// One class worked through on paper (common practice, no source): twelve students take home 4 fl oz each, 10 % is lost;
/// hips an ounce to 16 fl oz of strained decoction, reduced to half, two parts of honey to one. The notebook's figures.
#[test]
fn twelve_bottles_and_a_tenth_over() {
    let syrup = tried(
        "preparation: syrup\nplants: {hips: 31.2 g dried}\nliquid: {water: 19.7 fl oz}\nassume: {squeezed: 100 %, lid-off: 10 mL}\n\
         method: [{steep: {time: 10 min, from: boiling}}, {strain: squeezed}, {reduce: 1/2}, {sweeten: {honey: 2 of the liquid by volume}}]\n\
         take: {amount: 2 tsp, daily: 3}",
    );
    let class = wanted(&syrup, "12 of 4 fl oz + 10 %").expect("it is in reach");
    let fl_oz = |id: Id| class.of(id) / FL_OZ;
    per_cent("finished", fl_oz(Id::Finished), 52.8, 1e-7);
    per_cent("honey", fl_oz(Id::Sweetener), 35.2, 0.1);
    per_cent("honey, weighed", class.of(Id::SweetenerWeight), 1490.0, 1.0);
    per_cent("after reducing", fl_oz(Id::Reduced), 17.6, 0.1);
    per_cent("hips", class.of(Id::Plants), 62.0, 1.0);
    per_cent("water to start", fl_oz(Id::Water), 39.4, 0.5);
    // 52 minutes in one pot; 26 in each of two.
    per_cent("minutes to reduce", class.named("minutes to reduce"), 52.0, 0.5);
    let two = wanted(&syrup, "12 of 4 fl oz + 10 % in 2 pots").expect("it is in reach");
    per_cent("minutes in each", two.named("minutes to reduce"), 26.0, 0.5);
    per_cent("half of it", two.of(Id::Finished) * 2.0, class.of(Id::Finished), 1e-7);
}

/// A student's exercise (common practice, no source): 198 servings of 2 teaspoons last a family of four, three a day
/// each, 16.5 days. Turned round, four people for 16.5 days want 198 servings, 66 fl oz.
#[test]
fn a_family_for_so_many_days() {
    let syrup = tried(
        "preparation: syrup\nplants: {hips: 10 g dried}\nliquid: {water: 500 mL}\nassume: {squeezed: 100 %}\n\
         method: [{steep: 1 h}, {strain: squeezed}, {sweeten: {honey: 2 of the liquid by volume}}]\ntake: {amount: 2 tsp, daily: 3, people: 4}",
    );
    for text in ["4 people for 16.5 days", "198 doses"] {
        let family = wanted(&syrup, text).expect("it is in reach");
        per_cent(text, family.of(Id::Doses), 198.0, 1e-7);
        per_cent(text, family.of(Id::Finished) / FL_OZ, 66.0, 0.01);
        per_cent(text, family.of(Id::Days), 16.5, 1e-7);
    }
    assert!(wanted(&tried("plants: {hips: 10 g dried}\nliquid: {water: 500 mL}\nmethod: [{steep: 1 h}, {strain: squeezed}]"), "4 people for 2 days").is_err());
}

/// By what there is: 250 g of hips at 1:8 take 2 L of water, and the other way round; three times is three times.
#[test]
fn by_the_plant_in_hand_and_by_the_water() {
    let decoction = tried(
        "plants: {hips: 100 g dried}\nliquid: {water: 1:8 w/v}\nmethod: [{simmer: {time: 20 min, lid: on}}, {strain: squeezed}]",
    );
    let of = |text: &str, id: Id| wanted(&decoction, text).expect("it is in reach").of(id);
    per_cent("water", of("from 250 g hips", Id::Water), 2000.0, 1e-7);
    per_cent("plants", of("from 2 L water", Id::Plants), 250.0, 1e-7);
    per_cent("plants", of("3 times", Id::Plants), 300.0, 1e-7);
    // What boils off is the pot's: three times the batch is more than three times the decoction.
    let once = decoction.of(Id::Strained);
    assert!(of("3 times", Id::Strained) > 3.0 * once + 50.0);
    assert!((of("3 times", Id::BoiledOff) - decoction.of(Id::BoiledOff)).abs() < 1e-9);
    assert!(wanted(&decoction, "from 250 g honey").is_err_and(|why| why.contains("hips")));
    assert!(wanted(&decoction, "from 250 mL hips").is_err_and(|why| why.contains("weight")));
}
