//! What would move a recipe: every way is tried as a recipe of its own, worked from the start.

use super::*;
use stillroom::keeping::{Moved, Mover};

const TAKE: &str = "\ntake: {amount: 1 tsp, daily: 3}";

/// A recipe of two cups strained with a dose, and the ways out of its class.
fn ways(then: &str) -> (Tried, Vec<Mover>) {
    let (worked, found) = work(&format!("name: T\npreparation: syrup\n{}{TAKE}", syrup(then)));
    let worked = worked.unwrap_or_else(|| panic!("{found:?}"));
    let ways = movers(&worked.recipe, &book(), &worked.base.laid);
    (tried(&(syrup(then) + TAKE)), ways)
}

#[track_caller]
fn way(ways: &[Mover], class: &str, what: &str) -> Moved {
    let way = ways.iter().find(|way| way.class == class && way.what.contains(what));
    way.and_then(|way| way.moved).unwrap_or_else(|| panic!("no way to {class} by {what}: {ways:?}"))
}

/// The changed recipe by itself comes to the limit at the careful end, and usually to the finished and the plant in a dose that were told.
#[track_caller]
fn comes_to(then: &str, moved: Moved, id: Id, limit: f64) {
    let alone = tried(&(syrup(then) + TAKE));
    let low = alone.ranges[alone.line(id).index()].low;
    assert!((low - limit).abs() < 1e-6 * limit, "{then}: {low} against {limit}");
    assert!((alone.of(Id::Finished) - moved.finished).abs() < 1e-6 * moved.finished, "{then}");
    let plant = moved.plant_per_dose.expect("a dose is taken");
    assert!((alone.of(Id::PlantPerDose) - plant).abs() < 1e-9, "{then}");
}

/// A gram of hips keeps half a millilitre more or less of two cups: the careful end asks that much more.
#[track_caller]
fn a_little_more(what: &str, got: f64, usual: f64) {
    assert!(
        got >= usual * (1.0 - 1e-9) && got < usual * 1.005,
        "{what}: {got}, at the usual figures {usual}"
    );
}

#[test]
fn each_way_worked_by_itself() {
    // UNC, Preserving Syrups: 65 %; 18 % of the free water. FDA on vinegar: 4 g in 100 mL. Glycerin of 55 % by
    // volume: common practice, no source.
    for (class, base) in [
        ("D", "{sweeten: {honey: 1/2 of the liquid by volume}}"),
        ("C", "{sweeten: {honey: equal to the liquid by volume}}"),
        ("B", "{sweeten: {honey: 2 of the liquid by volume}}"),
        ("C", "{sweeten: {maple syrup: 2 of the liquid by volume}}"),
        ("B", "{sweeten: {sugar: 2 of the liquid by volume}}"),
        ("W", "{cool: 38 °C}"),
    ] {
        let (now, ways) = ways(base);
        assert_eq!(judge(&now, None).rung.class, class, "{base}");
        let sweet = ["honey", "maple syrup", "sugar"].into_iter().find(|name| base.contains(name));
        let sugar = way(&ways, "A", sweet.unwrap_or("sugar"));
        assert!(sugar.by_weight);
        let more = format!("{{sweeten: {{{}: {} g}}}}", sweet.unwrap_or("sugar"), sugar.amount);
        comes_to(&more, sugar, Id::Solids, 0.65);
        let spirit = way(&ways, "A", "spirit");
        let then = format!("{base}, {{fortify: {{spirit: {} mL, strength: 40 %}}}}", spirit.amount);
        comes_to(&then, spirit, Id::Covered, 0.18);
        let free =
            now.laid.working.line(Id::FreeWater).map_or(now.of(Id::Finished), |_| now.of(Id::FreeWater));
        a_little_more("spirit", spirit.amount, 0.18 * free / (0.40 - 0.18));
        let vinegar = way(&ways, "F", "vinegar");
        a_little_more("four times the batch", vinegar.amount, 4.0 * now.of(Id::Finished));
        let then = format!("{base}, {{acidify: {{vinegar: {} mL, acidity: 5 %}}}}", vinegar.amount);
        comes_to(&then, vinegar, Id::Acidity, 0.04);
        let glycerin = way(&ways, "E", "glycerin");
        let then = format!("{base}, {{sweeten: {{glycerin: {} mL}}}}", glycerin.amount);
        comes_to(&then, glycerin, Id::Glycerin, 0.55);
    }
}

#[test]
fn what_hardly_or_never_reaches() {
    // Maple syrup holds 67.6 % itself (USDA, 19353), so 65 % takes 25 times the liquid's weight.
    let (now, found) = ways("{sweeten: {maple syrup: 2 of the liquid by volume}}");
    let maple = way(&found, "A", "maple");
    // A wringing hand may get half a millilitre more out of the gram of hips, and that asks for more.
    let liquid = (now.of(Id::Strained) + 0.5) * 0.9982;
    per_cent("maple", maple.amount, liquid * 0.65 / (0.6761 - 0.65), 0.01);
    // Nothing that sweetens here is thinner than 65 %; spirit as weak as the limit itself covers nothing.
    let (worked, _) = work(&format!(
        "name: T\npreparation: syrup\n{}",
        syrup("{sweeten: {honey: equal to the liquid by volume}}")
    ));
    let worked = worked.expect("worked");
    for (spirit, reaches) in [(0.18, false), (0.17, false), (0.20, true)] {
        let mut own = book();
        own.course.kitchen.spirits = vec![spirit];
        let ways = movers(&worked.recipe, &own, &worked.base.laid);
        let way = ways.iter().find(|way| way.what.starts_with("spirit")).expect("spirit is tried");
        assert_eq!(way.moved.is_some(), reaches, "{spirit}: {way:?}");
    }
    // Glycerin sweetens and dissolves no solids: sugar is what is offered.
    let (_, found) = ways("{sweeten: {glycerin: 100 mL}}");
    assert!(found.iter().any(|way| way.class == "A" && way.what == "sugar" && way.moved.is_some()));
}

#[test]
fn the_class_that_is_told_is_the_class_that_comes() {
    // No outside source: what this book says of itself, for two cups of which little is kept and for a litre
    // of which the hips keep from 40 to 100 mL. Honey may do better: its activity is S.
    let hips = |then: &str| {
        format!(
            "plants: {{hips: 40 g dried}}\nliquid: {{water: 600 mL}}\nmethod: [{{steep: 1 h}}, {{strain: squeezed}}, {then}]"
        )
    };
    let recipes: [&dyn Fn(&str) -> String; 2] = [&|then| syrup(then), &hips];
    for recipe in recipes {
        for base in [
            "{sweeten: {sugar: equal to the liquid by volume}}",
            "{sweeten: {honey: equal to the liquid by volume}}",
            "{sweeten: {honey: 2 of the liquid by volume}}",
        ] {
            let (worked, found) = work(&format!("name: T\npreparation: syrup\n{}", recipe(base)));
            let worked = worked.unwrap_or_else(|| panic!("{found:?}"));
            for way in movers(&worked.recipe, &book(), &worked.base.laid) {
                let amount = way.moved.expect("every way is open here").amount;
                let then = match way.class {
                    "F" => format!("{base}, {{acidify: {{vinegar: {amount} mL, acidity: 5 %}}}}"),
                    "E" => format!("{base}, {{sweeten: {{glycerin: {amount} mL}}}}"),
                    _ if way.what.starts_with("spirit") => {
                        format!("{base}, {{fortify: {{spirit: {amount} mL, strength: 40 %}}}}")
                    }
                    _ => format!("{{sweeten: {{{}: {amount} g}}}}", way.what),
                };
                let class = judge(&tried(&recipe(&then)), None).rung.class;
                assert!(class == way.class || (way.what == "honey" && class == "S"), "{then}: {class}");
            }
        }
    }
}
