//! Amounts, plants, liquids and steps as chance picks them: what every kind of recipe is put together of.

use proptest::prelude::*;
use proptest::sample::{select, subsequence};

use super::draft::{Brings, Herb, Liquid, Much, Step, grows, list};

/// A number in halves.
pub fn halves(from: u32, to: u32) -> impl Strategy<Value = f64> {
    (from * 2..=to * 2).prop_map(|n| f64::from(n) / 2.0)
}

/// Some or none of what a strategy gives.
pub fn maybe<T: std::fmt::Debug + Clone>(of: impl Strategy<Value = T>) -> impl Strategy<Value = Vec<T>> {
    prop::option::of(of).prop_map(|one| one.into_iter().collect())
}

/// One to three plants, by weight or by the cup.
pub fn herbs(fresh: bool) -> impl Strategy<Value = Vec<Herb>> {
    let much = prop_oneof![3 => halves(4, 60).prop_map(Much::Grams), 1 => halves(1, 2).prop_map(|n| Much::Cups(n / 2.0))];
    let each = subsequence(vec!["hips", "berries", "root", "leaf"], 1..=3);
    (each, prop::collection::vec((much, prop::bool::weighted(0.3)), 3)).prop_map(move |(ids, more)| {
        let herb = |(id, (much, is_fresh)): (&'static str, (Much, bool))| {
            let is_fresh = fresh && is_fresh && matches!(id, "hips" | "leaf");
            Herb { id, fresh: is_fresh, much }
        };
        ids.into_iter().zip(more).map(herb).collect()
    })
}

/// Plants in parts, and what they weigh together.
pub fn parts() -> impl Strategy<Value = (Vec<Herb>, Option<f64>)> {
    let each = subsequence(vec!["hips", "berries", "root", "leaf"], 1..=4);
    (each, prop::collection::vec(1u32..6, 4), halves(20, 400)).prop_map(|(ids, parts, weight)| {
        let herb = |(id, parts)| Herb { id, fresh: false, much: Much::Parts(f64::from(parts)) };
        (ids.into_iter().zip(parts).map(herb).collect(), Some(weight))
    })
}

/// Plants by themselves or in parts.
pub fn plants(fresh: bool) -> impl Strategy<Value = (Vec<Herb>, Option<f64>)> {
    prop_oneof![4 => herbs(fresh).prop_map(|herbs| (herbs, None)), 1 => parts()]
}

/// A time with its unit, and its middle in minutes; one in five is a range.
pub fn time(from: u32, to: u32, unit: &'static str, each: f64) -> impl Strategy<Value = (String, f64)> {
    (from..=to, 1u32..6, 0u32..5).prop_map(move |(low, more, kind)| match kind {
        0 => (format!("{low}–{} {unit}", low + more), (f64::from(low) + f64::from(more) / 2.0) * each),
        _ => (format!("{low} {unit}"), f64::from(low) * each),
    })
}

/// So much of a liquid: by a ratio to the plants, or measured.
fn amount(ratio: (u32, u32), measured: (u32, u32)) -> impl Strategy<Value = String> {
    let basis = select(vec!["w/v of dried", "w/v of dried", "w/w of dried"]);
    prop_oneof![
        (ratio.0..=ratio.1, basis).prop_map(|(n, basis)| format!("1:{n} {basis}")),
        halves(measured.0, measured.1).prop_map(|ml| format!("{} mL", grows(ml))),
        halves(measured.0, measured.1).prop_map(|ml| format!("{} L", grows(ml / 1000.0))),
    ]
}

fn liquid(kind: &'static str, amount: String, more: &str, brings: Brings) -> Liquid {
    Liquid { kind, says: format!("{{{kind}: {amount}{more}}}"), brings }
}

pub fn water() -> impl Strategy<Value = Liquid> {
    amount((6, 25), (500, 2500)).prop_map(|amount| liquid("water", amount, "", Brings::default()))
}

/// Strengths of spirit that the tables print a density of, per cent by volume.
pub const STRENGTHS: [u32; 6] = [20, 40, 50, 60, 70, 95];

pub fn spirit(least: u32) -> impl Strategy<Value = Liquid> {
    let strengths: Vec<u32> = STRENGTHS.into_iter().filter(|strength| *strength >= least).collect();
    (amount((4, 10), (400, 1500)), select(strengths), any::<bool>()).prop_map(|(amount, strength, mixed)| {
        let from = if mixed && strength < 95 { ", from: 95 %" } else { "" };
        let brings = Brings { alcohol: f64::from(strength) / 100.0, ..Brings::default() };
        liquid("spirit", amount, &format!(", strength: {strength} %{from}"), brings)
    })
}

pub fn vinegar() -> impl Strategy<Value = Liquid> {
    (amount((5, 15), (400, 1500)), prop::option::of(4u32..=10)).prop_map(|(amount, acid)| {
        let more = acid.map_or(String::new(), |acid| format!(", acidity: {acid} %"));
        let brings = Brings { acid: f64::from(acid.unwrap_or(5)) / 100.0, ..Brings::default() };
        liquid("vinegar", amount, &more, brings)
    })
}

pub fn glycerin() -> impl Strategy<Value = Liquid> {
    (halves(400, 1500), 4u32..10, any::<bool>(), prop::option::of(5u32..=9)).prop_map(
        |(ml, n, ratio, tenths)| {
            let amount = if ratio { format!("1:{n} w/v of dried") } else { format!("{} mL", grows(ml)) };
            let more = tenths.map_or(String::new(), |tenths| format!(", strength: {tenths}0 %"));
            let brings = Brings { glycerin: f64::from(tenths.unwrap_or(10)) / 10.0, ..Brings::default() };
            liquid("glycerin", amount, &more, brings)
        },
    )
}

pub fn honey() -> impl Strategy<Value = Liquid> {
    let weighed = halves(500, 1500).prop_map(|g| format!("{} g", grows(g)));
    prop_oneof![amount((4, 10), (400, 1200)), weighed]
        .prop_map(|amount| liquid("honey", amount, "", Brings::default()))
}

pub fn oil() -> impl Strategy<Value = Liquid> {
    let weighed = halves(500, 1500).prop_map(|g| format!("{} g", grows(g)));
    prop_oneof![amount((5, 12), (500, 1200)), weighed]
        .prop_map(|amount| liquid("oil", amount, "", Brings::default()))
}

/// A simmer or a boil.
pub fn over_heat() -> impl Strategy<Value = Step> {
    let lid = select(vec!["on", "ajar", "off"]);
    (select(vec!["simmer", "simmer", "boil"]), time(2, 25, "min", 1.0), lid).prop_map(
        |(name, (time, minutes), lid)| Step::new(name, format!("{{time: {time}, lid: {lid}}}")).of(minutes),
    )
}

/// Standing as it is: hours or weeks.
pub fn standing(unit: &'static str) -> impl Strategy<Value = Step> {
    let each = if unit == "weeks" { 10_080.0 } else { 60.0 };
    time(2, 8, unit, each).prop_map(|(time, minutes)| Step::new("steep", time).of(minutes))
}

/// Kept warm.
pub fn warm() -> impl Strategy<Value = Step> {
    (time(2, 8, "h", 60.0), 35u32..48).prop_map(|((time, minutes), at)| {
        Step::new("steep", format!("{{time: {time}, at: {at} °C}}")).of(minutes)
    })
}

/// More plants.
pub fn add(fresh: bool) -> impl Strategy<Value = Step> {
    herbs(fresh).prop_map(|herbs| Step { herbs: herbs.clone(), ..Step::new("add", list(&herbs)) })
}

pub fn strain() -> impl Strategy<Value = Step> {
    select(vec!["drained", "squeezed", "pressed"]).prop_map(|hand| Step::new("strain", hand))
}

/// Water with plants in it, until it is strained.
pub fn in_water() -> impl Strategy<Value = Vec<Step>> {
    let boiling = time(5, 30, "min", 1.0).prop_map(|(time, minutes)| {
        Step::new("steep", format!("{{time: {time}, from: boiling}}")).of(minutes)
    });
    let simmered = (maybe(standing("h")), over_heat(), maybe(over_heat()), maybe((add(true), standing("h"))))
        .prop_map(|(cold, first, second, added)| {
            let added = added.into_iter().flat_map(|(add, steep)| [add, steep]);
            cold.into_iter().chain([first]).chain(second).chain(added).collect::<Vec<Step>>()
        });
    let one = prop_oneof![boiling, standing("h"), warm()].prop_map(|step| vec![step]);
    (prop_oneof![one, simmered], strain()).prop_map(|(mut steps, strain)| {
        steps.push(strain);
        steps
    })
}

/// The same marc with fresh water.
pub fn again() -> impl Strategy<Value = Vec<Step>> {
    (halves(300, 1200), prop_oneof![over_heat(), standing("h")], strain()).prop_map(|(ml, step, strain)| {
        vec![Step::new("pour again", format!("{} mL", grows(ml))).of(ml), step, strain]
    })
}

/// Water poured through the marc.
pub fn make_up() -> impl Strategy<Value = Step> {
    halves(1800, 5000).prop_map(|ml| Step::new("make up", format!("{} mL", grows(ml))).of(ml))
}

/// Boiled down; of a syrup a little, for of one that is glycerin to two thirds the third is all its water.
pub fn reduce(watery: bool) -> impl Strategy<Value = Step> {
    let shares = vec!["to 1/2 of the liquid", "by 1/4", "to 2/3", "to 40 %", "to 1/5 of the water"];
    let share = select(shares).prop_map(move |share| if watery { share } else { "to 3/4" });
    prop_oneof![
        4 => share.prop_map(|share| Step::new("reduce", share)),
        1 => halves(60, 200).prop_map(|ml| Step::new("reduce", format!("to {} mL", grows(ml)))),
    ]
}

/// One sweetener and how much of it.
fn sweet() -> impl Strategy<Value = (&'static str, String)> {
    let name = select(vec!["honey", "sugar", "maple syrup", "glycerin"]);
    let share = select(vec!["1/4", "1/2", "2/3", "equal to", "40 %", "1 1/2"]);
    let basis = select(vec![
        "the liquid by volume",
        "the liquid by weight",
        "the finished by volume",
        "the finished by weight",
    ]);
    let share = (share, basis).prop_map(|(share, basis)| match (share, basis.contains("finished")) {
        ("equal to", false) => format!("equal to {basis}"),
        ("equal to" | "1 1/2", true) => format!("3/5 of {basis}"),
        _ => format!("{share} of {basis}"),
    });
    let measured =
        (halves(50, 800), select(vec!["g", "mL"])).prop_map(|(n, unit)| format!("{} {unit}", grows(n)));
    (name, prop_oneof![2 => share, 1 => measured]).prop_map(|(name, much)| match name {
        "sugar" => (name, much.replace("finished by volume", "finished by weight")),
        _ => (name, much),
    })
}

/// One or two sweeteners, never the same twice.
pub fn sweeten() -> impl Strategy<Value = Step> {
    prop::collection::vec(sweet(), 1..=2).prop_map(|mut sweets| {
        sweets.sort();
        sweets.dedup_by_key(|sweet| sweet.0);
        let each: Vec<String> = sweets.iter().map(|(name, much)| format!("{name}: {much}")).collect();
        let glycerin = sweets.iter().any(|sweet| sweet.0 == "glycerin");
        let brings = Brings { glycerin: f64::from(u8::from(glycerin)), ..Brings::default() };
        Step { brings, ..Step::new("sweeten", format!("{{{}}}", each.join(", "))) }
    })
}

pub fn fortify() -> impl Strategy<Value = Step> {
    (halves(20, 300), select(&STRENGTHS[..])).prop_map(|(ml, strength)| Step {
        brings: Brings { alcohol: f64::from(strength) / 100.0, ..Brings::default() },
        ..Step::new("fortify", format!("{{spirit: {} mL, strength: {strength} %}}", grows(ml))).of(ml)
    })
}

pub fn acidify() -> impl Strategy<Value = Step> {
    (halves(20, 300), prop::option::of(4u32..=10)).prop_map(|(ml, acid)| {
        let more = acid.map_or(String::new(), |acid| format!(", acidity: {acid} %"));
        Step {
            brings: Brings { acid: f64::from(acid.unwrap_or(5)) / 100.0, ..Brings::default() },
            ..Step::new("acidify", format!("{{vinegar: {} mL{more}}}", grows(ml))).of(ml)
        }
    })
}

pub fn cool() -> impl Strategy<Value = Step> {
    (25u32..60).prop_map(|to| Step::new("cool", format!("{to} °C")))
}

pub fn bottle() -> impl Strategy<Value = Step> {
    select(vec!["30 mL", "250 mL", "4 fl oz", "1 cup"]).prop_map(|size| Step::new("bottle", size))
}

/// A dose by the spoon, or weighed, or by the piece.
pub fn take(amounts: &'static [&'static str]) -> impl Strategy<Value = Option<String>> {
    let dose = (select(amounts), 1u32..=6, prop::option::of(2u32..4)).prop_map(|(amount, daily, people)| {
        let people = people.map_or(String::new(), |people| format!(", people: {people}"));
        format!("{{amount: {amount}, daily: {daily}{people}}}")
    });
    prop::option::of(dose)
}

pub const SPOONS: &[&str] = &["1 tsp", "1–2 tsp", "5 mL", "1 tbsp"];
