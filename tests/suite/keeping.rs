//! Keeping: the trade's own table of syrups, the ladder rung by rung, and what would move a recipe.

use crate::bench::{Tried, book, found, text, tried, work};
use stillroom::bibliography::Standing;
use stillroom::diagnostic::{Code, Level};
use stillroom::formulary::read_course;
use stillroom::keeping::{LADDER, Test, Verdict, findings, judge, movers};
use stillroom::span::Source;
use stillroom::working::{How, Id};

mod dates;
mod kitchen;
mod moved;
mod rows;
mod rungs;

const CUP: f64 = 236.588_236_5;

/// Two cups strained, to the drop: a gram of hips keeps 2 mL, give or take half of one.
fn two_cups(then: &str) -> Tried {
    tried(&syrup(then))
}

fn syrup(then: &str) -> String {
    let water = 2.0 * CUP + 2.0;
    format!(
        "plants: {{hips: 1 g dried}}\nliquid: {{water: {water:.3} mL}}\nassume: {{honey-moisture: 17.1 %}}\n\
         method: [{{steep: 1 h}}, {{strain: squeezed}}, {then}]"
    )
}

#[track_caller]
fn per_cent(what: &str, got: f64, printed: f64, within: f64) {
    assert!(
        (got - printed).abs() <= printed * within / 100.0,
        "{what}: {got}, printed {printed} ± {within} %"
    );
}

/// What is stirred in, finished mL, solids %, class, spirit of 40 % that covers the free water.
type Row = (&'static str, f64, f64, &'static str, Option<f64>);

// Common practice, no source: a teaching table of honey and sugar syrups from two cups strained, honey at
// 339 g a cup. Ours weighs 336 g by its moisture, so solids and spirit may differ by 1 and 2 per cent, and the third of a cup of brandy that covers honey two to one is 95 mL, not 80.
const TABLE: &[Row] = &[
    ("{sweeten: {honey: 1/2 of the liquid by volume}}", 710.0, 35.0, "D", Some(310.0)),
    ("{sweeten: {honey: equal to the liquid by volume}}", 946.0, 49.0, "C", Some(233.0)),
    ("{sweeten: {honey: 1 1/2 of the liquid by volume}}", 1183.0, 57.0, "C", Some(156.0)),
    ("{sweeten: {honey: 2 of the liquid by volume}}", 1420.0, 61.0, "B", Some(79.0)),
    ("{sweeten: {honey: equal to the liquid by weight}}", 803.0, 41.0, "D", Some(280.0)),
    ("{sweeten: {sugar: equal to the liquid by volume}}", 725.0, 46.0, "C", Some(208.0)),
    ("{sweeten: {sugar: equal to the liquid by weight}}", 771.0, 50.0, "C", Some(175.0)),
    ("{sweeten: {sugar: 2 of the liquid by volume}}", 977.0, 63.0, "B", Some(29.0)),
    ("{sweeten: {sugar: 2 of the liquid by weight}}", 1069.0, 67.0, "A", None),
    ("{sweeten: {maple syrup: 2 of the liquid by volume}}", 1420.0, 49.0, "C", Some(341.0)),
];

#[test]
fn the_trades_table_of_syrups() {
    for (then, finished, solids, class, spirit) in TABLE {
        let syrup = two_cups(then);
        per_cent(then, syrup.of(Id::Finished), *finished, 0.5);
        per_cent(then, syrup.of(Id::Solids) * 100.0, *solids, 1.7);
        assert_eq!(judge(&syrup, None).rung.class, *class, "{then}");
        // The spirit's own volume is counted in: 0.18 of the free water over 0.40 − 0.18.
        let covers = 0.18 * syrup.of(Id::FreeWater) / (0.40 - 0.18);
        match spirit {
            Some(spirit) => {
                // Three grams less to a cup of honey are 2.4 mL more of spirit; four cups make the widest gap.
                assert!((covers - spirit).abs() < 11.0, "{then}: {covers}");
            }
            None => assert!(covers < 1.0, "{then}: {covers}"),
        }
    }
}

#[test]
fn spirit_in_a_syrup() {
    // The same table: brandy to 10 and to 20 %, and a third of a cup to honey two to one.
    let honey = "{sweeten: {honey: equal to the liquid by volume}}";
    for (ml, finished, abv) in [(315.5, 1262.0, 10.0), (946.4, 1893.0, 20.0)] {
        let fortified = two_cups(&format!("{honey}, {{fortify: {{spirit: {ml} mL, strength: 40 %}}}}"));
        per_cent("finished", fortified.of(Id::Finished), finished, 0.2);
        per_cent("alcohol", fortified.of(Id::Abv) * 100.0, abv, 0.2);
        assert_eq!(judge(&fortified, None).rung.class, "A");
    }
    let two = "{sweeten: {honey: 2 of the liquid by volume}}";
    let little = two_cups(&format!("{two}, {{fortify: {{spirit: 95 mL, strength: 40 %}}}}"));
    assert!(little.of(Id::Solids) < two_cups(two).of(Id::Solids), "brandy lowers the solids");
    assert_eq!(judge(&little, None).rung.class, "A");
    assert_eq!(judge(&two_cups(two), None).rung.class, "B");
}

#[test]
fn syrup_of_the_pharmacopoeia_has_no_free_water_and_a_high_activity() {
    // UNC, Preserving Syrups: 850 g in 1,000 mL leaves none free. Norrish gives 0.868 at 64.7 %: no shelf.
    let syrup = two_cups("{sweeten: {sugar: 867 g}}");
    assert!(syrup.of(Id::FreeWater) < 5.0, "{}", syrup.of(Id::FreeWater));
    assert!((syrup.of(Id::WaterActivity) - 0.868).abs() < 0.003);
    assert_ne!(judge(&syrup, None).rung.class, "S");
}

#[test]
fn every_rung_that_a_recipe_reaches() {
    let of = |lines: &str, ph: Option<f64>| judge(&tried(lines), ph).rung.class;
    let jar = |plants: &str, liquid: &str| {
        format!(
            "plants: {{{plants}}}\nliquid: {{{liquid}}}\nassume: {{honey-moisture: 17.1 %}}\nmethod: [{{steep: 2 weeks}}, {{strain: squeezed}}]"
        )
    };
    assert_eq!(of(&jar("hips: 20 g dried", "water: 500 mL"), None), "W");
    assert_eq!(of(&jar("hips: 20 g dried", "spirit: 1:5 w/v, strength: 40 %"), None), "J");
    assert_eq!(of(&jar("hips: 20 g dried", "spirit: 1:5 w/v, strength: 20 %"), None), "A");
    assert_eq!(of(&jar("hips: 20 g dried", "vinegar: 1:10 w/v, acidity: 5 %"), None), "F");
    assert_eq!(of(&jar("hips: 20 g dried", "glycerin: 1:6 w/v, strength: 60 %"), None), "E");
    assert_eq!(of(&jar("hips: 20 g dried", "oil: 1:10 w/v"), None), "H");
    assert_eq!(of(&jar("hips: 30 g fresh", "oil: 300 mL"), None), "I");
    // A published table of infused honey, from memory: 20 g of dried thyme in 339 g is 17.5 %, 50 g fresh 25 %.
    assert_eq!(of(&jar("hips: 20 g dried", "honey: 339 g"), None), "G");
    assert_eq!(of(&jar("leaf: 50 g fresh", "honey: 339 g"), None), "M");
    assert_eq!(of(&syrup("{sweeten: {honey: 3 of the liquid by volume}}"), None), "S");
    // 15 % is enough where a pH of 5 or less was measured: UNC, Preserving Syrups.
    let sour = syrup(
        "{sweeten: {honey: equal to the liquid by volume}}, {fortify: {spirit: 190 mL, strength: 40 %}}",
    );
    assert_eq!((of(&sour, None), of(&sour, Some(4.5))), ("D", "A"));
}

#[test]
fn custom_alone_never_keeps() {
    for rung in LADDER.iter().filter(|rung| rung.verdict == Verdict::Keeps) {
        assert_ne!(rung.source.standing, Standing::CommonPractice, "class {}", rung.class);
        let published = rung.all.iter().any(|test| match test {
            Test::AtLeast(_, limit) | Test::AtMost(_, limit) | Test::MeasuredAcid(limit) => {
                matches!(limit.source.standing, Standing::Published | Standing::Reckoned)
            }
            Test::Has(_) | Test::Is(_) | Test::HasNot(_) => false,
        });
        assert!(published, "class {} keeps by no published limit", rung.class);
    }
    assert!(!Verdict::CannotTell.words().contains("keeps") && !Verdict::DoesNot.words().contains("keeps"));
    assert!(LADDER.last().is_some_and(|last| last.all.is_empty() && last.verdict == Verdict::CannotTell));
}

#[test]
fn the_careful_end_decides() {
    // 200 g of hips keep from 300 to 500 mL of 1,000: the same 850 g of sugar is strong or weak in what is left.
    let lines = "plants: {hips: 200 g dried}\nliquid: {water: 1 L}\nmethod: [{steep: 1 h}, {strain: squeezed}, {sweeten: {sugar: 1150 g}}]";
    let judged = judge(&tried(lines), None);
    let usual = judged.usually.expect("another class at the usual figures");
    assert_ne!(judged.rung.class, usual.class);
    assert!(judged.rung.days <= usual.days);
}

#[test]
fn what_would_move_it_just_does() {
    let (worked, _) = work(&format!(
        "name: Tried\npreparation: syrup\n{}",
        syrup("{sweeten: {honey: equal to the liquid by volume}}")
    ));
    let worked = worked.expect("worked");
    let ways = movers(&worked.recipe, &book(), &worked.base.laid);
    let way = |class: &str, what: &str| {
        let way = ways.iter().find(|way| way.class == class && way.what.contains(what)).expect("a way");
        way.moved.expect("an amount")
    };
    let honey = way("A", "honey");
    let forward = two_cups(&format!("{{sweeten: {{honey: {} g}}}}", honey.amount));
    let solids = forward.of(Id::Solids);
    assert!((0.65..0.6505).contains(&solids), "{solids}");
    assert!((forward.of(Id::Finished) - honey.finished).abs() < 1e-3);
    let free = worked.base.value(Id::FreeWater).expect("free water");
    // The careful end asks a little more than the usual figures.
    per_cent("F15", way("A", "spirit").amount, 0.18 * free / (0.40 - 0.18), 0.3);
    // 5 % vinegar in four times as much as there was comes to 4 %.
    let finished = worked.base.value(Id::Finished).expect("finished");
    per_cent("vinegar", way("F", "vinegar").amount, 4.0 * finished, 0.3);
    // Glycerin to 55 % by volume: 0.55 ÷ 0.45 of what there was.
    per_cent("glycerin", way("E", "glycerin").amount, finished * 0.55 / 0.45, 0.3);
    let mut weak = book();
    weak.course.kitchen.vinegar = Some(0.04);
    let ways = movers(&worked.recipe, &weak, &worked.base.laid);
    assert!(
        ways.iter().any(|way| way.class == "F" && way.moved.is_none()),
        "no amount of 4 % vinegar reaches 4 %"
    );
}

#[test]
fn the_kitchens_own_figures_beat_the_defaults() {
    let text = "book: B\ntitle: T\nkitchen:\n  altitude: 5000 ft\n  pot: {lost: 240 mL, in: 20 min}\n  honey moisture: 18 %\n  vinegar: 6 %\n  spirits: [95 %, 40 %]\n";
    let mut told = Vec::new();
    let course = read_course(&Source::new("formulary.yaml", text), &mut told);
    assert!(told.is_empty(), "{told:?}");
    assert_eq!(course.kitchen.spirits, [0.40, 0.95]);
    let mut own = book();
    own.course = course;
    let lines = "name: T\npreparation: syrup\nplants: {hips: 50 g dried}\nliquid: {water: 1 L}\nmethod: [{simmer: {time: 30 min, lid: off}}, {strain: squeezed}, {cool: 38 °C}, {sweeten: {honey: 100 mL}}]";
    let whole = stillroom::span::Spanned::new(lines, stillroom::span::Span::new(0, lines.len()));
    let mut told = Vec::new();
    let recipe = stillroom::recipe::read(&whole, &own.pantry, &mut told).expect("read");
    let worked = stillroom::variation::work(recipe, &own, &mut told).expect("worked").base;
    assert_eq!(worked.value(Id::BoiledOff), Some(360.0), "12 mL a minute, measured");
    // The Complete Guide to Home Canning has 203 °F at 5,000 ft.
    let boils = worked.value(Id::Boiling).expect("boiling");
    assert!((boils * 1.8 + 32.0 - 203.0).abs() < 0.25, "{boils}");
    let pot =
        worked.laid.working.entries().iter().find(|entry| entry.name.starts_with("boiled off a minute"));
    assert!(
        matches!(&pot.expect("a rate").how, How::Published { source, .. } if source.place.contains("measured"))
    );
    for (wrong, code) in [
        ("altitude: 9000 m", Code::WrongDimension),
        ("honey moisture: 30 %", Code::BadNumber),
        ("pot: {lost: 200 mL}", Code::MissingKey),
        ("stove: gas", Code::WrongShape),
        ("spirits: [400 %]", Code::BadNumber),
    ] {
        let text = format!("book: B\ntitle: T\nkitchen:\n  {wrong}\n");
        let mut told = Vec::new();
        read_course(&Source::new("formulary.yaml", text), &mut told);
        assert_eq!(told.iter().map(|finding| finding.code).collect::<Vec<_>>(), [code], "{wrong}");
        assert!(told[0].span.is_some_and(|span| span.start > 20), "{wrong}: {:?}", told[0].span);
    }
}

#[test]
fn no_activity_where_none_is_to_be_had() {
    let spirit = two_cups("{sweeten: {honey: 100 mL}}, {fortify: {spirit: 100 mL, strength: 40 %}}");
    assert!(spirit.value(Id::WaterActivity).is_none(), "not used for spirits");
    let glycerin = two_cups("{sweeten: {glycerin: 800 mL}}");
    assert!(glycerin.value(Id::WaterActivity).is_none(), "above 60 % glycerol it is refused");
    assert!(two_cups("{sweeten: {glycerin: 200 mL}}").value(Id::WaterActivity).is_some());
}

#[test]
fn a_shelf_that_the_sums_refuse_is_told() {
    let told = |lines: &str| {
        let (worked, _) = work(&format!("{}\nkeep: shelf\n", text(lines)));
        let mut told = Vec::new();
        findings(&worked.expect("worked"), &mut told);
        told.into_iter().map(|finding| (finding.code, finding.level)).collect::<Vec<_>>()
    };
    let thin = syrup("{sweeten: {honey: equal to the liquid by volume}}");
    assert_eq!(told(&thin), [(Code::KeepDisagrees, Level::Warning)]);
    assert_eq!(told(&syrup("{sweeten: {sugar: 2 of the liquid by weight}}")), []);
    // Oklahoma, Idaho and Maine extension services: no fresh plant in oil out of the cold. It stops a press.
    let oil =
        "plants: {hips: 30 g fresh}\nliquid: {oil: 300 mL}\nmethod: [{steep: 1 week}, {strain: squeezed}]";
    assert_eq!(told(oil), [(Code::KeepDisagrees, Level::Error)]);
}

#[test]
fn no_spirit_and_no_honey_over_a_flame() {
    for (liquid, method) in [
        ("spirit: 500 mL, strength: 40 %", "[{simmer: {time: 10 min, lid: on}}, {strain: squeezed}]"),
        ("honey: 500 g", "[{boil: {time: 10 min, lid: on}}, {strain: squeezed}]"),
        (
            "water: 1 L",
            "[{steep: 1 h}, {strain: squeezed}, {fortify: {spirit: 100 mL, strength: 40 %}}, {reduce: 1/2}]",
        ),
    ] {
        let found = found(&format!("plants: {{hips: 20 g dried}}\nliquid: {{{liquid}}}\nmethod: {method}"));
        let wanted = if liquid.starts_with("honey") { Code::StepOrder } else { Code::AlcoholOverFlame };
        assert!(found.iter().any(|finding| finding.code == wanted), "{liquid}: {found:?}");
    }
}
