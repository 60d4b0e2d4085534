//! Recipes turned round on a declared number, against students' exercises (common practice, no source).

use crate::bench::{Tried, tried};
use stillroom::aim::{aimed, line, measurable, value};
use stillroom::recipe::Aim;
use stillroom::span::{Span, Spanned};
use stillroom::working::Id;

fn turned(recipe: &Tried, what: &str, to: &str, by: &str) -> Result<Tried, String> {
    let at = |text: &str| Spanned::new(text.to_string(), Span::default());
    let aim = Aim { line: at(what), to: at(to), by: at(by) };
    aimed(recipe, &aim, &[]).map(|found| Tried::from(found.worked)).map_err(|unmet| unmet.why)
}

#[track_caller]
fn near(what: &str, ours: f64, printed: f64, within: f64) {
    assert!((ours - printed).abs() <= within, "{what}: {ours}, printed {printed}");
}

const QUART: f64 = 946.352_946;

/// Exactly one quart of a syrup of two parts honey to one of liquid: F r/(1+r) of honey, F/(1+r) of liquid.
#[test]
fn a_quart_exactly() {
    let syrup = tried(
        "preparation: syrup\nplants: {hips: 10 g dried}\nliquid: {water: 1 L}\nassume: {squeezed: 100 %}\n\
         method: [{steep: 1 h}, {strain: squeezed}, {sweeten: {honey: 2 of the liquid by volume}}]",
    );
    let quart = turned(&syrup, "finished", "1 quart", "water").expect("it is in reach");
    near("honey", quart.of(Id::Sweetener), QUART * 2.0 / 3.0, 1e-3);
    near("liquid", quart.of(Id::Strained), QUART / 3.0, 1e-3);
    near("finished", quart.of(Id::Finished), QUART, 1e-3);
}

/// 100 g of fresh leaf, four fifths water, in pure glycerin: of 60 % where g/(g+80) is 0.6, so 120 mL at the least.
#[test]
fn the_least_glycerin_for_a_fresh_leaf() {
    let glycerite = tried(
        "plants: {leaf: 100 g fresh}\nliquid: {glycerin: 300 mL}\nmethod: [{steep: 4 weeks}, {strain: squeezed}]",
    );
    let least = turned(&glycerite, "glycerin", "60 %", "glycerin").expect("it is in reach");
    // The water of the leaf is measured by its density at 20 °C: a seventh of a millilitre more.
    near("glycerin", least.at(least.declared("glycerin")), 120.0, 0.3);
}

#[test]
fn what_cannot_be_is_told_in_words() {
    let syrup = tried(
        "preparation: syrup\nplants: {hips: 50 g dried}\nliquid: {water: 1 L}\n\
         method: [{simmer: {time: 30 min, lid: on}}, {strain: squeezed}, {sweeten: {honey: 1/2 of the liquid by volume}}]",
    );
    let why = |what: &str, to: &str, by: &str| turned(&syrup, what, to, by).expect_err("it cannot be");
    assert!(why("solids", "90 %", "honey").contains("can come to"), "{}", why("solids", "90 %", "honey"));
    assert!(why("strained", "2 L", "honey").contains("does not depend"));
    assert!(why("solid", "60 %", "honey").contains("no line is called `solid`"));
    assert!(why("solids", "60 %", "sugar").contains("nothing that is written is called `sugar`"));
    assert!(why("finished", "60 %", "water").contains("60 %"));
}

/// A target is refused by a number that something measured came of: what was measured settles it.
#[test]
fn a_measurement_settles_what_follows_from_it() {
    let syrup = tried(
        "preparation: syrup\nplants: {hips: 50 g dried}\nliquid: {water: 1 L}\n\
         method: [{steep: 1 h}, {strain: squeezed}, {sweeten: {honey: 1/2 of the liquid by volume}}]",
    );
    let strained = measurable(&syrup, "strained").expect("it can be measured");
    assert!(measurable(&syrup, "held-back").is_err_and(|unmet| unmet.why.contains("strained")));
    let at = |text: &str| Spanned::new(text.to_string(), Span::default());
    let aim = Aim { line: at("finished"), to: at("1 L"), by: at("water") };
    let refused = aimed(&syrup, &aim, &[(strained, 700.0)]).expect_err("it is settled");
    assert!(refused.why.contains("was measured"), "{}", refused.why);
    // The honey is still to come: so much of it as the liquid that is there needs.
    let aim = Aim { line: at("finished"), to: at("1 L"), by: at("honey") };
    let sweetened = aimed(&syrup, &aim, &[(strained, 700.0)]).expect("honey is not in it yet").worked;
    near("honey", sweetened.value(Id::Sweetener).expect("it is sweetened"), 300.0, 1e-6);
    assert_eq!(line(&syrup, "finished").ok(), Some(syrup.line(Id::Finished)));
    let unit = syrup.laid.working.entry(strained).unit;
    assert!((value("1 quart", unit).expect("a volume") - QUART).abs() < 1e-6);
}

/// What is guessed and matters most: squeezed hips keep from one to three times their weight, and nothing else moves the
/// syrup as far.
#[test]
fn what_matters_most_is_named() {
    let syrup = tried(
        "preparation: syrup\nplants: {root: 200 g dried}\nliquid: {water: 1 L}\n\
         method: [{simmer: {time: 30 min, lid: on}}, {strain: squeezed}, {sweeten: {sugar: 100 g}}]",
    );
    let (_, range) = syrup.laid.working.matters_most(&[], syrup.line(Id::Finished)).expect("something does");
    let all = syrup.laid.working.range(&[])[syrup.line(Id::Finished).index()];
    assert!(range.low < syrup.of(Id::Finished) && syrup.of(Id::Finished) < range.high);
    assert!(range.high - range.low <= all.high - all.low + 1e-9, "one alone is no more than all together");
    let measured = [(syrup.line(Id::Strained), 700.0)];
    assert!(
        syrup.laid.working.matters_most(&measured, syrup.line(Id::Finished)).is_none(),
        "measured, nothing is left"
    );
}
