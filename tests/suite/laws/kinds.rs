//! Recipes of every preparation as chance writes them: each makes sense, and nearly all can be worked.

use proptest::prelude::*;
use proptest::sample::select;

use super::draft::{Draft, Herb, Liquid, Step, grows};
use super::poured::*;

type Parts = (Vec<Herb>, Option<f64>);

fn draft(
    preparation: &'static str,
    (herbs, weight): Parts,
    liquid: Option<Liquid>,
    steps: Vec<Step>,
) -> Draft {
    Draft { name: "Tried", preparation, herbs, weight, liquid, steps, ..Draft::default() }
}

/// The author's own figures for what is assumed.
fn own() -> impl Strategy<Value = Vec<&'static str>> {
    let figures =
        vec!["squeezed: 90 %", "plant-holds: 1.5–2.5 mL", "lid-on: 2 mL", "honey-moisture: 16–18 %"];
    prop_oneof![4 => Just(Vec::new()), 1 => prop::sample::subsequence(figures, 1..=2)]
}

fn with_take(
    draft: impl Strategy<Value = Draft> + 'static,
    amounts: &'static [&'static str],
) -> BoxedStrategy<Draft> {
    (draft, take(amounts), own()).prop_map(|(draft, take, assume)| Draft { take, assume, ..draft }).boxed()
}

/// Water, its plants strained out; with a second boil, or water through the marc.
fn extracted(words: Vec<&'static str>) -> impl Strategy<Value = Draft> {
    let more = (prop::bool::weighted(0.3), again(), prop::bool::weighted(0.2), make_up());
    (select(words), plants(true), water(), in_water(), more).prop_map(
        |(word, plants, water, mut steps, (twice, again, full, make_up))| {
            // What is in parts is all told at the start; what is added then is not.
            if plants.1.is_some() {
                steps.retain(|step| step.name != "add");
            }
            if twice {
                steps.extend(again);
            }
            if full {
                steps.push(make_up);
            }
            draft(word, plants, Some(water), steps)
        },
    )
}

/// Standing, or simmered where that may be.
fn stewed(standing: BoxedStrategy<Step>) -> BoxedStrategy<Step> {
    prop_oneof![2 => standing, 1 => over_heat()].boxed()
}

pub fn watery() -> BoxedStrategy<Draft> {
    let words = vec!["decoction", "infusion", "cold infusion"];
    let drunk = (extracted(words), maybe(reduce(true)), maybe(bottle()));
    let drunk = drunk.prop_map(|(mut draft, reduce, bottle)| {
        draft.steps.extend(reduce.into_iter().chain(bottle));
        draft
    });
    let whole = (select(vec!["infusion", "steam"]), plants(true), water(), stewed(standing("h").boxed()))
        .prop_map(|(word, plants, water, steep)| {
            draft(word, plants, Some(water), vec![steep, Step::new("strain", "not")])
        });
    let worn = extracted(vec!["compress", "steam"]).prop_map(|draft| Draft { take: None, ..draft });
    let gargle = (extracted(vec!["gargle"]), maybe(acidify())).prop_map(|(mut draft, acidify)| {
        draft.steps.extend(acidify);
        draft
    });
    prop_oneof![4 => with_take(drunk, SPOONS), 1 => whole, 2 => worn, 1 => gargle].boxed()
}

pub fn syrup() -> BoxedStrategy<Draft> {
    let poured = (prop::bool::weighted(0.3), fortify(), prop::bool::weighted(0.2), acidify());
    let more = (maybe(reduce(true)), maybe(cool()), sweeten(), poured, maybe(reduce(false)), maybe(bottle()));
    let syrup = (extracted(vec!["syrup"]), more).prop_map(
        |(mut draft, (reduce, cool, sweeten, (strong, fortify, sour, acidify), thicken, bottle))| {
            draft.steps.extend(reduce.into_iter().chain(cool).chain([sweeten]));
            draft.steps.extend(sour.then_some(acidify));
            match strong {
                true => draft.steps.push(fortify),
                false => draft.steps.extend(thicken),
            }
            draft.steps.extend(bottle);
            draft
        },
    );
    with_take(syrup, SPOONS)
}

/// Something that is not water, steeped and strained.
fn steeped(
    words: Vec<&'static str>,
    liquid: impl Strategy<Value = Liquid>,
    steep: impl Strategy<Value = Step>,
) -> impl Strategy<Value = Draft> {
    (select(words), plants(true), liquid, steep, strain()).prop_map(
        |(word, plants, liquid, steep, strain)| draft(word, plants, Some(liquid), vec![steep, strain]),
    )
}

fn then(
    draft: impl Strategy<Value = Draft>,
    more: impl Strategy<Value = Vec<Step>>,
) -> impl Strategy<Value = Draft> {
    (draft, more).prop_map(|(mut draft, more)| {
        draft.steps.extend(more);
        draft
    })
}

pub fn sour() -> BoxedStrategy<Draft> {
    let steep = || prop_oneof![standing("weeks"), warm()];
    let oxymel = prop_oneof![
        then(
            steeped(vec!["oxymel"], vinegar(), stewed(steep().boxed())),
            sweeten().prop_map(|step| vec![step])
        ),
        then(steeped(vec!["oxymel"], honey(), steep()), acidify().prop_map(|step| vec![step])),
    ];
    let vinegar = then(steeped(vec!["infused vinegar"], vinegar(), stewed(steep().boxed())), maybe(bottle()));
    prop_oneof![with_take(oxymel, SPOONS), with_take(vinegar, SPOONS)].boxed()
}

const JAR: &[&str] = &["1 tsp", "2 g", "1–3 g"];

pub fn sweet() -> BoxedStrategy<Draft> {
    let steep = || prop_oneof![standing("weeks"), warm()];
    let honey_jar = then(steeped(vec!["infused honey"], honey(), steep()), maybe(bottle()));
    let glycerite = then(steeped(vec!["glycerite"], glycerin(), steep()), maybe(bottle()));
    let paste = (plants(true), prop_oneof![honey(), glycerin()], maybe(bottle())).prop_map(
        |(plants, liquid, bottle)| {
            let steps = [Step::new("strain", "not")].into_iter().chain(bottle).collect();
            draft("electuary", plants, Some(liquid), steps)
        },
    );
    prop_oneof![with_take(honey_jar, JAR), with_take(glycerite, SPOONS), with_take(paste, JAR)].boxed()
}

pub fn strong() -> BoxedStrategy<Draft> {
    let jar = |least| steeped(vec!["tincture", "elixir"], spirit(least), standing("weeks"));
    let tincture = then(jar(20), maybe(bottle()));
    let elixir = then(jar(40), sweeten().prop_map(|step| vec![step]));
    let dripped = (plants(false), spirit(50), 12u32..48, maybe(bottle())).prop_map(
        |(plants, spirit, hours, bottle)| {
            let steps = [Step::new("percolate", format!("{hours} h"))].into_iter().chain(bottle).collect();
            draft("tincture", plants, Some(spirit), steps)
        },
    );
    let liniment = steeped(vec!["liniment"], prop_oneof![spirit(40), vinegar()], standing("weeks"));
    prop_oneof![
        2 => with_take(tincture, SPOONS),
        1 => with_take(elixir, SPOONS),
        1 => with_take(dripped, SPOONS),
        1 => liniment,
    ]
    .boxed()
}

/// Wax by its share of the oil or of the whole, by its ratio to the oil, or weighed.
fn melt() -> impl Strategy<Value = Step> {
    let shares = select(vec!["1/5 of the liquid by weight", "1:7 w/w", "12 % of the finished by weight"]);
    let share = shares.prop_map(str::to_string);
    let weighed = halves(5, 60).prop_map(|g| format!("{} g", grows(g)));
    prop_oneof![share, weighed].prop_map(|wax| Step::new("melt", format!("{{beeswax: {wax}}}")))
}

pub fn oily() -> BoxedStrategy<Draft> {
    let steep = || prop_oneof![standing("weeks"), warm()];
    let once = || steeped(vec!["infused oil", "liniment"], oil(), steep());
    let second = (add(true), steep(), strain()).prop_map(|(add, steep, strain)| vec![add, steep, strain]);
    let twice = then(once(), second).prop_filter("parts are told at once", |draft| draft.weight.is_none());
    let oil = prop_oneof![2 => once(), 1 => twice];
    let waxed = (oil, prop::option::of((select(vec!["salve", "lip balm"]), melt())), maybe(bottle()));
    waxed
        .prop_map(|(draft, wax, bottle)| {
            let mut steps = draft.steps;
            let mut preparation = draft.preparation;
            if let Some((word, melt)) = wax {
                preparation = word;
                steps.push(melt);
            }
            steps.extend(bottle);
            Draft { preparation, steps, ..draft }
        })
        .boxed()
}

/// What a dough is kneaded with, each by weight or by a ratio.
fn knead() -> impl Strategy<Value = Step> {
    // A pinch of gum; its weight is the step's number, for what sweetens has an id.
    let sugar = prop_oneof![
        (2u32..9).prop_map(|n| format!("1:{n} w/w")),
        halves(50, 400).prop_map(|g| format!("{} g", grows(g)))
    ];
    (
        select(vec!["sugar", "honey"]),
        sugar,
        prop::option::of((select(vec!["gum arabic", "tragacanth"]), halves(1, 8))),
        prop::option::of(halves(5, 30)),
    )
        .prop_map(|(sweet, much, gum, water)| {
            let grams = gum.map_or(0.0, |(_, g)| g);
            let gum = gum.map_or(String::new(), |(gum, g)| format!(", {gum}: {} g", grows(g)));
            let water = water.map_or(String::new(), |ml| format!(", water: {} mL", grows(ml)));
            Step::new("knead", format!("{{{sweet}: {much}{gum}{water}}}")).of(grams)
        })
}

fn cut() -> impl Strategy<Value = Step> {
    select(vec!["1 g", "1.5 g", "0.5 g", "800 mg"]).prop_map(|piece| Step::new("cut", piece))
}

const PIECES: &[&str] = &["1 piece", "2 pieces", "1–2 pieces", "2 g"];

pub fn small() -> BoxedStrategy<Draft> {
    let dried = (6u32..20).prop_map(|hours| Step::new("dry", format!("{hours} h")));
    let wet = prop::option::of((extracted(vec!["decoction"]), halves(5, 20)));
    let dough = (select(vec!["lozenge", "pastille"]), plants(false), wet, knead(), cut(), dried).prop_map(
        |(word, plants, wet, knead, cut, dry)| {
            let (mut steps, mut products) = (Vec::new(), Vec::new());
            if let Some((product, ml)) = wet {
                steps.push(Step::new("combine", format!("{{First: {} mL}}", grows(ml))).of(ml));
                products.push(Draft { name: "First", ..product });
            }
            steps.extend([knead, cut, dry]);
            Draft { products, ..draft(word, plants, None, steps) }
        },
    );
    let stage = select(vec!["hard crack", "soft crack"]).prop_map(|stage| Step::new("boil to", stage));
    let sugar = (halves(100, 900), prop::option::of(halves(20, 100))).prop_map(|(sugar, honey)| {
        let honey = honey.map_or(String::new(), |g| format!(", honey: {} g", grows(g)));
        Step::new("sweeten", format!("{{sugar: {} g{honey}}}", grows(sugar))).of(sugar)
    });
    let drops = (sugar, stage, cut()).prop_map(|(sugar, stage, cut)| vec![sugar, stage, cut]);
    let drops = then(extracted(vec!["hard drop"]), drops);
    prop_oneof![with_take(dough, PIECES), with_take(drops, PIECES)].boxed()
}

pub fn blend() -> BoxedStrategy<Draft> {
    let blend = plants(false).prop_map(|plants| draft("tea blend", plants, None, Vec::new()));
    with_take(blend, &["2 g", "1.5–2.5 g"])
}

fn spread(thick: u32) -> Step {
    Step::new("spread", format!("{thick} mm")).of(f64::from(thick))
}

pub fn laid_on() -> BoxedStrategy<Draft> {
    let warm = (halves(20, 150), prop::option::of((30u32..40, 60u32..95))).prop_map(|(litres, warm)| {
        let to = format!("{} L", grows(litres));
        let says = match warm {
            Some((water, liquid)) => format!("{{to: {to}, water: {water} °C, liquid: {liquid} °C}}"),
            None => to,
        };
        Step::new("dilute", says)
    });
    let bath = then(extracted(vec!["bath", "foot soak"]), warm.prop_map(|step| vec![step]));
    let bag = (plants(true), halves(20, 150)).prop_map(|(plants, litres)| {
        draft("bath", plants, None, vec![Step::new("dilute", format!("{} L", grows(litres)))])
    });
    let wet = (plants(true), water(), stewed(standing("h").boxed()), 3u32..15).prop_map(
        |(plants, water, step, thick)| {
            let steps = vec![step, Step::new("strain", "not"), spread(thick)];
            draft("poultice", plants, Some(water), steps)
        },
    );
    let dry = (plants(true), 3u32..15)
        .prop_map(|(plants, thick)| draft("poultice", plants, None, vec![spread(thick)]));
    prop_oneof![2 => bath, 1 => bag, 1 => wet, 1 => dry].boxed()
}

/// Two products poured together, or one with something stirred in.
pub fn combined() -> BoxedStrategy<Draft> {
    let honey_jar = || steeped(vec!["infused honey"], honey(), standing("weeks"));
    let sour_jar = || steeped(vec!["infused vinegar"], vinegar(), standing("weeks"));
    let strong_jar = || steeped(vec!["tincture"], spirit(20), standing("weeks"));
    let sweet_jar = || then(extracted(vec!["syrup"]), sweeten().prop_map(|step| vec![step]));
    let oil_jar = || steeped(vec!["infused oil"], oil(), standing("weeks"));
    let both = prop_oneof![
        (Just("oxymel"), sour_jar().boxed(), honey_jar().boxed()),
        (Just("elixir"), strong_jar().boxed(), sweet_jar().boxed()),
        (Just("tincture"), strong_jar().boxed(), strong_jar().boxed()),
        (Just("syrup"), extracted(vec!["decoction"]).boxed(), sweet_jar().boxed()),
        (Just("salve"), oil_jar().boxed(), oil_jar().boxed()),
    ];
    let poured = (halves(10, 150), halves(10, 150));
    (both, poured, melt(), maybe(bottle()))
        .prop_map(|((word, first, second), (one, other), melt, bottle)| {
            let combine =
                |name: &str, ml: f64| Step::new("combine", format!("{{{name}: {} mL}}", grows(ml))).of(ml);
            let mut steps = vec![combine("First", one), combine("Second", other)];
            steps.extend((word == "salve").then_some(melt));
            steps.extend(bottle);
            let products = vec![Draft { name: "First", ..first }, Draft { name: "Second", ..second }];
            Draft { products, ..draft(word, (Vec::new(), None), None, steps) }
        })
        .boxed()
}

/// A recipe of any preparation.
pub fn recipe() -> BoxedStrategy<Draft> {
    prop_oneof![
        3 => watery(),
        3 => syrup(),
        2 => sour(),
        2 => sweet(),
        2 => strong(),
        2 => oily(),
        2 => small(),
        1 => blend(),
        2 => laid_on(),
        2 => combined(),
    ]
    .boxed()
}
