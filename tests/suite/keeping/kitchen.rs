//! The kitchen's own figures: from the text of `formulary.yaml` into the lines of a recipe.

use super::*;
use stillroom::formulary::Stove;
use stillroom::variation::{self, Worked};

/// A kitchen as written, and what is found in it.
fn kitchen(lines: &str) -> (stillroom::formulary::Course, Vec<stillroom::diagnostic::Finding>) {
    let mut told = Vec::new();
    let text = format!("book: B\ntitle: T\nkitchen:\n  {lines}\n");
    let course = read_course(&Source::new("formulary.yaml", text), &mut told);
    (course, told)
}

/// A recipe worked in a kitchen.
fn in_kitchen(lines: &str, recipe: &str) -> Worked {
    let (course, told) = kitchen(lines);
    assert!(told.is_empty(), "{lines}: {told:?}");
    let (worked, found) = work(&format!("name: T\npreparation: syrup\n{recipe}"));
    assert!(!stillroom::diagnostic::stops(&found), "{recipe}: {found:?}");
    let recipe = worked.expect("worked").recipe;
    let mut own = book();
    own.course = course;
    let mut told = Vec::new();
    let worked = variation::work(recipe, &own, &mut told).expect("worked");
    assert!(!stillroom::diagnostic::stops(&told), "{told:?}");
    worked.base
}

const SOUR: &str = "plants: {hips: 1 g dried}\nliquid: {water: 475 mL}\nmethod: [{steep: 1 h}, {strain: squeezed}, {acidify: {vinegar: 100 mL}}]";
const SWEET: &str = "plants: {hips: 1 g dried}\nliquid: {water: 475 mL}\nmethod: [{steep: 1 h}, {strain: squeezed}, {sweeten: {honey: 100 mL}}]";

/// How the line that starts with these words came by its value, and the value.
#[track_caller]
fn line(worked: &Worked, words: &str) -> (How, f64) {
    let at = worked.laid.working.entries().iter().position(|entry| entry.name.starts_with(words));
    let at = at.unwrap_or_else(|| panic!("no line starts with {words}"));
    (worked.laid.working.entries()[at].how.clone(), worked.values[at])
}

#[test]
fn a_measured_value_beats_the_default_and_says_so() {
    // No outside source: what this kitchen wrote down is what its lines are worked from.
    for (lines, recipe, words, value, place) in [
        ("honey moisture: 18 %", SWEET, "water in the honey", 0.18, "honey, measured"),
        ("vinegar: 6 %", SOUR, "acid of the vinegar", 0.06, "vinegar, by its label"),
    ] {
        let worked = in_kitchen(lines, recipe);
        let (how, got) = line(&worked, words);
        assert!((got - value).abs() < 1e-12, "{lines}: {got}");
        assert!(matches!(&how, How::Published { source, .. } if source.place.contains(place)), "{how:?}");
        // A measured value has no range.
        let (how, _) = line(&in_kitchen("altitude: 0 m", recipe), words);
        assert!(matches!(how, How::Assumed { .. }), "{how:?}");
    }
    // 100 mL of 6 % in 573 mL: 1.05 %.
    let acid = in_kitchen("vinegar: 6 %", SOUR).value(Id::Acidity).expect("acid");
    assert!((acid - 6.0 / 573.0).abs() < 1e-9, "{acid}");
}

#[test]
fn the_recipes_own_figure_beats_the_kitchens() {
    let pot = "plants: {hips: 20 g dried}\nliquid: {water: 1 L}\nmethod: [{simmer: {time: 30 min, lid: off}}, {strain: squeezed}]";
    for (lines, recipe, words, own, value) in [
        ("honey moisture: 18 %", SWEET, "water in the honey", "honey-moisture: 16 %", 0.16),
        ("pot: {lost: 240 mL, in: 20 min}", pot, "boiled off a minute", "lid-off: 9 mL", 9.0),
    ] {
        let worked = in_kitchen(lines, &format!("{recipe}\nassume: {{{own}}}"));
        let (how, got) = line(&worked, words);
        assert!((got - value).abs() < 1e-12, "{own}: {got}");
        assert!(
            matches!(&how, How::Assumed { source, .. } if source.place.contains("recipe's own")),
            "{how:?}"
        );
    }
    // Vinegar's own strength stands in its step, and beats the kitchen's.
    let own = SOUR.replace("100 mL}}", "100 mL, acidity: 4 %}}");
    let acid = in_kitchen("vinegar: 6 %", &own).value(Id::Acidity).expect("acid");
    assert!((acid - 4.0 / 573.0).abs() < 1e-9, "{acid}");
}

#[test]
fn the_only_spirit_at_hand_needs_no_strength() {
    let lines = "plants: {hips: 1 g dried}\nliquid: {water: 475 mL}\nmethod: [{steep: 1 h}, {strain: squeezed}, {fortify: {spirit: 100 mL}}]";
    let mut own = book();
    own.course = kitchen("spirits: [43 %]").0;
    let text = format!("name: T\npreparation: syrup\n{lines}");
    let found = work(&text).1;
    assert!(found.iter().any(|finding| finding.code == Code::NoBasis), "no kitchen, no strength: {found:?}");
    let named = text.replace("100 mL}}]", "100 mL, strength: 50 %}}]");
    let mut recipe = work(&named).0.expect("worked").recipe;
    for step in &mut recipe.method {
        if let stillroom::recipe::Step::Fortify { strength, .. } = &mut step.value {
            *strength = None;
        }
    }
    let worked = variation::work(recipe, &own, &mut Vec::new()).expect("worked").base;
    assert!((worked.value(Id::Abv).expect("alcohol") - 43.0 / 573.0).abs() < 1e-9);
}

#[test]
fn the_stove_and_the_altitude_as_read() {
    let (course, told) = kitchen("altitude: 5000 ft\n  stove: {kind: induction, power: 2000 W}");
    assert!(told.is_empty(), "{told:?}");
    let altitude = course.kitchen.altitude.expect("an altitude").value;
    assert!((altitude - 1524.0).abs() < 1e-9, "{altitude}");
    let (kind, power) = course.kitchen.stove.expect("a stove");
    assert_eq!(kind, Stove::Induction);
    // 1 kcal is 4,184 J: 2,000 W are 28.68 kcal a minute.
    assert!((power.value - 2000.0 * 60.0 / 4184.0).abs() < 1e-6, "{}", power.value);
}

#[test]
fn a_wrong_value_is_told_at_its_place() {
    for wrong in [
        "honey moisture: 30 %",
        "vinegar: 80 %",
        "spirits: [400 %]",
        "altitude: 9000 m",
        "stove: {kind: coal, power: 2000 W}",
        "stove: {kind: gas, power: 20 min}",
        "pot: {lost: 200 mL, in: 20 g}",
    ] {
        let (_, told) = kitchen(wrong);
        assert_eq!(told.len(), 1, "{wrong}: {told:?}");
        let text = format!("book: B\ntitle: T\nkitchen:\n  {wrong}\n");
        let span = told[0].span.expect("a place");
        let value = wrong.rsplit_once(": ").map_or(wrong, |(_, value)| value);
        let value = value.trim_matches(|c| "[]{}".contains(c));
        let marked = &text[span.start..span.end];
        let named = marked.contains(value) || wrong.contains(marked);
        assert!(span.start >= text.find(wrong).expect("there") && named, "{wrong}: {marked:?}");
    }
}

#[test]
fn every_assumption_takes_a_figure_of_its_own_unit() {
    // The recipe's own figure stands in the working, whatever it is a figure of.
    let recipe = |assume: &str| {
        tried(&format!(
            "plants: {{hips: 10 g dried}}\nliquid: {{vinegar: 500 mL}}\nassume: {{{assume}}}\n\
             method: [{{simmer: {{time: 10 min, lid: on}}}}, {{strain: squeezed}}, {{cool: 30 °C}}]"
        ))
    };
    let acid = recipe("vinegar-acidity: 4 %");
    assert!((acid.named("acid of the vinegar") - 0.04).abs() < 1e-12);
    let pace = recipe("cooling-pace: 20–30 min");
    assert!((pace.named("pace at which a pot cools") - 25.0).abs() < 1e-12);
    let lid = recipe("lid-on: 4 mL");
    assert!((lid.of(Id::BoiledOff) - 40.0).abs() < 1e-9);
}

#[test]
fn a_plant_that_joins_the_honey_later_lends_as_much_water() {
    // The same dry plants, whether all at once or in two lots: the definition of moisture knows no order.
    let moisture = |plants: &str, add: &str| {
        tried(&format!(
            "plants: {{{plants}}}\nliquid: {{honey: 340 g}}\nmethod: [{{steep: 1 week}}{add}, {{steep: 1 week}}, {{strain: squeezed}}]"
        ))
        .of(Id::Moisture)
    };
    let (once, twice) = (
        moisture("leaf: 20 g dried, root: 20 g dried", ""),
        moisture("leaf: 20 g dried", ", {add: {root: 20 g dried}}"),
    );
    assert!((once - twice).abs() < 1e-12, "{once} at once, {twice} in two lots");
}
