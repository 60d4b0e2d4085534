//! The steps of a method, read one by one.

use super::read::is_scalar;
use super::stir::{read_combine, read_dilute, read_knead, read_melt, read_poured, read_stage, read_sweeten};
use super::{Hand, Lid, PlantUse, Start, Step};
use crate::diagnostic::{Code, Finding};
use crate::measure;
use crate::span::Spanned;
use crate::yaml::{self, Node};

/// Steps by their names in a recipe, with an example of each.
pub(super) const STEPS: &[(&str, &str)] = &[
    ("simmer", "simmer: {time: 30 min, lid: on}"),
    ("boil", "boil: {time: 5 min, lid: off}"),
    ("steep", "steep: 1 h"),
    ("add", "add: {thyme: 10 g dried}"),
    ("strain", "strain: squeezed"),
    ("reduce", "reduce: to 1/2 of the liquid"),
    ("cool", "cool: 38 °C"),
    ("sweeten", "sweeten: {honey: 1/2 of the liquid by volume}"),
    ("fortify", "fortify: {spirit: 80 mL, strength: 40 %}"),
    ("acidify", "acidify: {vinegar: 100 mL, acidity: 5 %}"),
    ("combine", "combine: {Thyme vinegar: 150 mL}"),
    ("percolate", "percolate: 24 h"),
    ("make up", "make up: 1 L"),
    ("pour again", "pour again: 500 mL"),
    ("melt", "melt: {beeswax: 1/5 of the liquid by weight}"),
    ("knead", "knead: {sugar: 1:7 w/w, water: 12 mL}"),
    ("boil to", "boil to: hard crack"),
    ("cut", "cut: 1 g"),
    ("dry", "dry: 12 h"),
    ("dilute", "dilute: 150 L"),
    ("spread", "spread: 6 mm"),
    ("bottle", "bottle: 250 mL"),
];

const LIDS: &[(&str, Lid)] = &[("on", Lid::On), ("ajar", Lid::Ajar), ("off", Lid::Off)];
const HANDS: &[(&str, Hand)] = &[
    ("drained", Hand::Drained),
    ("squeezed", Hand::Squeezed),
    ("pressed", Hand::Pressed),
    ("not", Hand::Not),
];

/// Steps of one method; beyond any recipe, and few enough to be worked at once.
const MOST_STEPS: usize = 100;

/// Reads the list of steps.
pub(super) fn read_method(node: &Node, findings: &mut Vec<Finding>) -> Vec<Spanned<Step>> {
    let Some(steps) = node.list("the steps", findings) else {
        return Vec::new();
    };
    if steps.is_empty() {
        findings.push(
            Finding::error(Code::MissingKey, node.span, "the method has no step")
                .write(format!("- {}", STEPS[0].1)),
        );
    }
    if steps.len() > MOST_STEPS {
        let message =
            format!("the method has {} steps; {MOST_STEPS} are the most that are read", steps.len());
        findings.push(
            Finding::error(Code::WrongShape, node.span, message)
                .why("nobody could follow them; several recipes can"),
        );
        return Vec::new();
    }
    steps.iter().filter_map(|node| read_step(node, findings)).collect()
}

fn read_step(node: &Node, findings: &mut Vec<Finding>) -> Option<Spanned<Step>> {
    let mut fields = node.map("a step", findings)?;
    let entries = fields.rest();
    fields.finish(findings);
    let [(key, value)] = entries[..] else {
        findings.push(
            Finding::error(Code::WrongShape, node.span, "a step is one name and what belongs to it")
                .why("each step begins with its own dash")
                .write(format!("- {}", STEPS[0].1)),
        );
        return None;
    };
    let step = match key.value.as_str() {
        "simmer" => read_simmer(value, false, findings),
        "boil" => read_simmer(value, true, findings),
        "steep" => read_steep(value, findings),
        "add" => Some(Step::Add(read_plants(value, "the plants to add", findings))),
        "strain" => value.one_of("a way of straining", HANDS, findings).map(|hand| Step::Strain(hand.value)),
        "reduce" => {
            value.read("how far it is reduced", measure::reduction, findings).map(|to| Step::Reduce(to.value))
        }
        "cool" => value.read("a temperature", below_the_boil, findings).map(|to| Step::Cool(to.value)),
        "sweeten" => read_sweeten(value, findings),
        "combine" => read_combine(value, findings),
        "fortify" => {
            let (of, amount, strength) = read_poured(value, "spirit", "strength", (0.01, 1.0), findings)?;
            Some(Step::Fortify { of, amount, strength })
        }
        "acidify" => {
            let (of, amount, acidity) = read_poured(value, "vinegar", "acidity", (0.01, 0.3), findings)?;
            Some(Step::Acidify { of, amount, acidity })
        }
        "percolate" => value.read("how long it stands", measure::time, findings).map(Step::Percolate),
        "make up" => value.read("how much in all", measure::volume, findings).map(Step::MakeUp),
        "pour again" => value.read("how much water", measure::volume, findings).map(Step::PourAgain),
        "melt" => read_melt(value, findings),
        "knead" => read_knead(value, findings),
        "boil to" => read_stage(value, findings),
        "cut" => value.read("the weight of a piece", measure::mass, findings).map(Step::Cut),
        "dry" => value.read("how long it dries", measure::time, findings).map(Step::Dry),
        "dilute" => read_dilute(value, findings),
        "spread" => value.read("how thick", measure::length, findings).map(Step::Spread),
        "bottle" => {
            value.read("the size of a bottle", measure::volume, findings).map(|size| Step::Bottle(size.value))
        }
        _ => {
            let known = STEPS.iter().map(|(name, _)| *name);
            findings.push(yaml::unknown("a step", Spanned::new(&key.value, key.span), known));
            None
        }
    };
    step.map(|step| Spanned::new(step, key.span))
}

fn read_simmer(node: &Node, hard: bool, findings: &mut Vec<Finding>) -> Option<Step> {
    let name = if hard { "boil" } else { "simmer" };
    if is_scalar(node) {
        let time = node.read("the time", measure::time, findings)?;
        findings.push(
            Finding::error(Code::NoBasis, node.span, "whether the lid is on is not said")
                .why("an open pot loses about five times as much as a covered one")
                .write(format!("{name}: {{time: {}, lid: on}}", time.value.written))
                .write(format!("{name}: {{time: {}, lid: ajar}}", time.value.written))
                .write(format!("{name}: {{time: {}, lid: off}}", time.value.written)),
        );
        return None;
    }
    let mut fields = node.map(name, findings)?;
    let time = fields
        .need("time", "time: 30 min", findings)
        .and_then(|node| node.read("the time", measure::time, findings));
    let lid = fields
        .need("lid", "lid: on", findings)
        .and_then(|node| node.one_of("a way of covering", LIDS, findings));
    fields.finish(findings);
    Some(Step::Simmer { time: time?, lid: lid?, hard })
}

fn read_steep(node: &Node, findings: &mut Vec<Finding>) -> Option<Step> {
    if is_scalar(node) {
        let time = node.read("the time", measure::time, findings)?;
        return Some(Step::Steep { time, start: Start::AsItIs });
    }
    let mut fields = node.map("steep", findings)?;
    let time = fields
        .need("time", "time: 20 min", findings)
        .and_then(|node| node.read("the time", measure::time, findings));
    let from = fields
        .take("from")
        .and_then(|node| node.one_of("a start", &[("boiling", true), ("cold", false)], findings));
    let warm = fields.take("at").map(|node| node.read("how warm it is kept", below_the_boil, findings));
    let span = fields.span();
    fields.finish(findings);
    let start = match (from, warm) {
        (Some(_), Some(_)) => {
            findings.push(
                Finding::error(Code::WrongShape, span, "`from` and `at` stand beside each other")
                    .why("what is kept warm has one temperature all the while")
                    .write("steep: {time: 6 h, at: 45 °C}")
                    .write("steep: {time: 10 min, from: boiling}"),
            );
            return None;
        }
        (Some(from), None) if from.value => Start::Boiling,
        (_, None) => Start::AsItIs,
        (None, Some(warm)) => Start::Warm(warm?),
    };
    Some(Step::Steep { time: time?, start })
}

/// A temperature that liquid can be cooled to.
fn below_the_boil(text: &str) -> Result<measure::Amount, measure::Misread> {
    let to = measure::temperature(text)?;
    if to.high < BOIL {
        return Ok(to);
    }
    let message =
        format!("`{}` is no cooling: what is made with water is never hotter than 100 °C", text.trim());
    let mut misread = measure::Misread::new(0..text.len(), Code::BadNumber, message);
    misread.write.push("38 °C".to_string());
    Err(misread)
}

/// Water boils, °C.
const BOIL: f64 = 100.0;

/// Plants by name with their amounts.
pub(super) fn read_plants(node: &Node, what: &str, findings: &mut Vec<Finding>) -> Vec<PlantUse> {
    let Some(mut fields) = node.map(what, findings) else {
        return Vec::new();
    };
    let mut plants = Vec::new();
    let entries = fields.rest();
    if entries.is_empty() {
        findings.push(
            Finding::error(Code::MissingKey, node.span, "no plant is named here")
                .write("{rosehip: 200 g dried}"),
        );
    }
    for (key, node) in entries {
        if let Some(amount) = node.read("an amount of plant", measure::plant_amount, findings) {
            plants.push(PlantUse { plant: key.clone(), amount });
        }
    }
    fields.finish(findings);
    plants
}

/// Whether the first step, well written or not, combines a product.
pub(super) fn begins_with_a_product(method: &Node) -> bool {
    let mut untold = Vec::new();
    let first = method.list("the steps", &mut untold).and_then(|steps| steps.first());
    first
        .and_then(|step| step.map("a step", &mut untold))
        .is_some_and(|mut step| step.take("combine").is_some())
}
