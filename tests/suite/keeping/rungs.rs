//! The ladder: its rows against recipes, read a second time without the judge's own code.

use super::*;

/// Recipes that between them reach every kind of line.
const RECIPES: &[(&str, &str)] = &[
    ("?", "{acidify: {vinegar: 100 mL, acidity: 5 %}}"),
    ("?", "{fortify: {spirit: 100 mL, strength: 40 %}}"),
    ("?", "{sweeten: {glycerin: 100 mL}}"),
    ("W", "{cool: 38 °C}"),
    ("D", "{sweeten: {honey: 1/2 of the liquid by volume}}"),
    ("C", "{sweeten: {sugar: equal to the liquid by volume}}"),
    ("B", "{sweeten: {sugar: 2 of the liquid by volume}}"),
    // At the usual figures its activity is just below 0.85, which would be S.
    ("B", "{sweeten: {honey: 2 of the liquid by volume}}"),
    ("A", "{sweeten: {sugar: 2 of the liquid by weight}}"),
    ("A", "{sweeten: {honey: 100 mL}}, {fortify: {spirit: 500 mL, strength: 40 %}}"),
    ("S", "{sweeten: {honey: 3 of the liquid by volume}}"),
    ("E", "{sweeten: {glycerin: 60 % of the finished by volume}}"),
    ("F", "{acidify: {vinegar: 2400 mL, acidity: 5 %}}"),
];

#[test]
fn the_first_rung_whose_limits_hold_at_the_careful_end() {
    for (class, then) in RECIPES {
        let worked = two_cups(then);
        let judged = judge(&worked, None);
        assert_eq!(judged.rung.class, *class, "{then}");
        let range = |id: Id| worked.laid.working.line(id).map(|line| worked.ranges[line.index()]);
        // A line that is not there passes no test, whichever way the test looks.
        let holds = |test: &Test| match test {
            Test::AtLeast(id, limit) => range(*id).is_some_and(|range| range.low > limit.value - 1e-9),
            Test::AtMost(id, limit) => range(*id).is_some_and(|range| range.high < limit.value + 1e-9),
            Test::Has(id) | Test::Is(id) => range(*id).is_some(),
            Test::HasNot(id) => range(*id).is_none(),
            Test::MeasuredAcid(_) => false,
        };
        let first =
            LADDER.iter().find(|rung| rung.all.iter().all(holds)).expect("the last rung asks nothing");
        assert!(std::ptr::eq(first, judged.rung), "{then}: {} against {}", first.class, judged.rung.class);
    }
}

#[test]
fn nothing_undecided_sounds_like_keeping() {
    // No source: a rule of this book. A reader who sees "keeps" must be able to rely on it.
    for rung in LADDER.iter().filter(|rung| rung.verdict != Verdict::Keeps) {
        for words in [rung.words, rung.brief, rung.because] {
            assert!(!words.contains("keeps"), "class {}: {words}", rung.class);
        }
    }
    for (_, then) in RECIPES.iter().filter(|(class, _)| *class == "?") {
        let worked = two_cups(then);
        let judged = judge(&worked, None);
        assert_eq!((judged.rung.verdict, judged.rung.days), (Verdict::CannotTell, 1), "{then}");
        assert!(!judged.because(&worked).contains("keeps"), "{then}");
    }
}

#[test]
fn acid_counts_only_where_it_was_measured() {
    // UNC, Preserving Syrups: 15 % of the free water at pH 5 or below, 18 % where neutral.
    let then =
        "{sweeten: {honey: equal to the liquid by volume}}, {fortify: {spirit: 190 mL, strength: 40 %}}";
    let worked = two_cups(then);
    assert!((0.15..0.18).contains(&worked.of(Id::Covered)), "{}", worked.of(Id::Covered));
    let class = |ph: Option<f64>| judge(&worked, ph).rung.class;
    assert_eq!((class(Some(5.0)), class(Some(5.1))), ("A", class(None)));
    assert_ne!(class(None), "A");
    // Read from the recipe's own text.
    let text = format!("name: T\npreparation: syrup\n{}\nmeasured: {{pH: 4.5}}", syrup(then));
    let recipe = work(&text).0.expect("worked");
    assert_eq!(judge(&recipe.base, recipe.recipe.ph()).rung.class, "A");
}

#[test]
fn the_range_of_an_activity_holds_its_value() {
    for then in ["{sweeten: {sugar: 400 g}}", "{sweeten: {honey: 500 mL}}", "{sweeten: {glycerin: 200 mL}}"] {
        let worked = two_cups(then);
        let (range, value) =
            (worked.ranges[worked.line(Id::WaterActivity).index()], worked.of(Id::WaterActivity));
        assert!(range.low < value && value < range.high && range.high < 1.04, "{then}: {range:?}");
    }
    // Honey with nothing watery in it has a line of its own, a published fit from memory: 0.262 + 1.79 of its
    // water, so 0.568 at 17.1 %; laboratories differ by 0.03.
    let jar = "plants: {hips: 20 g dried}\nliquid: {honey: 339 g}\nassume: {honey-moisture: 17.1 %}\nmethod: [{steep: 2 weeks}, {strain: squeezed}]";
    let honey = tried(jar);
    let moisture = honey.of(Id::Moisture);
    match honey.value(Id::WaterActivity) {
        Some(activity) => {
            let range = honey.ranges[honey.line(Id::WaterActivity).index()];
            assert!(range.low < activity && activity < range.high && range.high < 0.85, "{range:?}");
        }
        None => panic!("honey of {moisture} water has no activity"),
    }
}
