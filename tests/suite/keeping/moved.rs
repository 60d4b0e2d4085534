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

/// The changed recipe by itself comes to the limit, the finished and the plant in a dose that were told.
#[track_caller]
fn comes_to(then: &str, moved: Moved, id: Id, limit: f64) {
    let alone = tried(&(syrup(then) + TAKE));
    assert!((alone.of(id) - limit).abs() < 1e-9, "{then}: {} against {limit}", alone.of(id));
    assert!((alone.of(Id::Finished) - moved.finished).abs() < 1e-6 * moved.finished, "{then}");
    let plant = moved.plant_per_dose.expect("a dose is taken");
    assert!((alone.of(Id::PlantPerDose) - plant).abs() < 1e-9, "{then}");
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
        per_cent("spirit", spirit.amount, 0.18 * free / (0.40 - 0.18), 1e-6);
        let vinegar = way(&ways, "F", "vinegar");
        per_cent("four times the batch", vinegar.amount, 4.0 * now.of(Id::Finished), 1e-6);
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
    let liquid = now.of(Id::Strained) * 0.9982;
    per_cent("maple", maple.amount, liquid * 0.65 / (0.6761 - 0.65), 0.1);
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
fn the_class_that_is_told_comes_at_the_usual_figures() {
    // No outside source: what this book says of itself. The ladder judges the careful end, so the amount told
    // may still be too little there; at the usual figures it is enough. Honey may do better: its activity is S.
    for base in [
        "{sweeten: {sugar: equal to the liquid by volume}}",
        "{sweeten: {honey: equal to the liquid by volume}}",
        "{sweeten: {honey: 2 of the liquid by volume}}",
    ] {
        let (_, ways) = ways(base);
        for way in &ways {
            // A drop more than the amount told, which is where the limit just begins.
            let amount = way.moved.expect("every way is open here").amount * 1.000_001;
            let then = match way.class {
                "F" => format!("{base}, {{acidify: {{vinegar: {amount} mL, acidity: 5 %}}}}"),
                "E" => format!("{base}, {{sweeten: {{glycerin: {amount} mL}}}}"),
                _ if way.what.starts_with("spirit") => {
                    format!("{base}, {{fortify: {{spirit: {amount} mL, strength: 40 %}}}}")
                }
                _ => format!("{{sweeten: {{{}: {amount} g}}}}", way.what),
            };
            let judged = judge(&two_cups(&then), None);
            let usual = judged.usually.unwrap_or(judged.rung);
            assert!(usual.class == way.class || (way.what == "honey" && usual.class == "S"), "{then}");
            assert!(judged.rung.days <= usual.days || usual.class == "S", "{then}");
        }
    }
}
