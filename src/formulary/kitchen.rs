//! The course's own kitchen: where it stands, what its pot loses, what is in its cupboard. A measured
//! value beats a default, and the working says which it used.

use crate::bibliography::Source as Cite;
use crate::diagnostic::{Code, Finding};
use crate::materia::{Assumption, HONEY_MOISTURE, LID_OFF, VINEGAR_ACIDITY};
use crate::measure::{self, Amount, Dimension, Misread};
use crate::span::Spanned;
use crate::yaml::Node;

/// What the pot stands on.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Stove {
    /// A gas flame.
    Gas,
    /// A ring or a glass top that glows.
    Radiant,
    /// Induction.
    Induction,
}

/// The pot's own loss, measured.
#[derive(Clone, PartialEq, Debug)]
pub struct Pot {
    /// Boiled away, mL.
    pub lost: f64,
    /// In this time, min.
    pub time: f64,
    /// What it holds, mL, where that is said.
    pub holds: Option<f64>,
}

/// The course's kitchen.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Kitchen {
    /// Metres above the sea.
    pub altitude: Option<Spanned<f64>>,
    /// What it cooks on, and its power, kcal/min.
    pub stove: Option<(Stove, Spanned<f64>)>,
    /// The pot, lid off, at an open simmer.
    pub pot: Option<Pot>,
    /// Water in the house honey, a share.
    pub honey_moisture: Option<f64>,
    /// Acetic acid of the house vinegar, g/mL.
    pub vinegar: Option<f64>,
    /// Strengths of the spirits at hand, alcohol by volume as shares, rising.
    pub spirits: Vec<f64>,
    /// What the page on spirits works.
    pub crossing: Option<Crossing>,
    /// A fresh plant to work there.
    pub fresh: Option<FreshPlant>,
}

/// A strength wanted, and how much of it.
#[derive(Clone, PartialEq, Debug)]
pub struct Crossing {
    /// Alcohol by volume, a share.
    pub wanted: f64,
    /// To make, mL.
    pub make: f64,
}

/// A fresh plant in spirit.
#[derive(Clone, PartialEq, Debug)]
pub struct FreshPlant {
    /// The plant, g.
    pub plant: f64,
    /// Water in it, a share.
    pub moisture: f64,
    /// Spirit on it, mL.
    pub spirit: f64,
}

impl Kitchen {
    /// The kitchen's own value for an assumption, and how it came by it.
    pub fn own(&self, assumption: &Assumption) -> Option<(f64, Cite)> {
        if assumption.id == LID_OFF.id {
            let pot = self.pot.as_ref()?;
            return Some((pot.lost / pot.time, Cite::formulary("this kitchen's pot, measured")));
        }
        if assumption.id == HONEY_MOISTURE.id {
            return Some((self.honey_moisture?, Cite::formulary("this kitchen's honey, measured")));
        }
        if assumption.id == VINEGAR_ACIDITY.id {
            return Some((self.vinegar?, Cite::formulary("this kitchen's vinegar, by its label")));
        }
        None
    }
}

/// Reads `kitchen` of `formulary.yaml`.
pub(super) fn read_kitchen(node: &Node, findings: &mut Vec<Finding>) -> Kitchen {
    let mut kitchen = Kitchen::default();
    let Some(mut fields) = node.map("the kitchen", findings) else { return kitchen };
    if let Some(node) = fields.take("altitude") {
        kitchen.altitude =
            node.read("the altitude", altitude, findings).map(|read| read.map(|amount| amount.low));
    }
    if let Some(node) = fields.take("stove") {
        kitchen.stove = read_stove(node, findings);
    }
    if let Some(node) = fields.take("pot") {
        kitchen.pot = read_pot(node, findings);
    }
    if let Some(node) = fields.take("honey moisture") {
        kitchen.honey_moisture = node
            .read("the water in the honey", |text| measure::share_between(text, 0.13, 0.21), findings)
            .map(|read| read.value);
    }
    if let Some(node) = fields.take("vinegar") {
        kitchen.vinegar = node
            .read("the acid of the vinegar", |text| measure::share_between(text, 0.01, 0.30), findings)
            .map(|read| read.value);
    }
    if let Some(node) = fields.take("spirits") {
        for node in node.list("the spirits at hand", findings).unwrap_or_default() {
            let read = node.read("the strength of a spirit", strength, findings);
            kitchen.spirits.extend(read.map(|read| read.value));
        }
        kitchen.spirits.sort_by(f64::total_cmp);
    }
    if let Some(node) = fields.take("crossing") {
        kitchen.crossing = read_crossing(node, findings);
    }
    if let Some(node) = fields.take("fresh") {
        kitchen.fresh = read_fresh(node, findings);
    }
    fields.finish(findings);
    kitchen
}

fn read_crossing(node: &Node, findings: &mut Vec<Finding>) -> Option<Crossing> {
    const EXAMPLE: &str = "crossing: {wanted: 60 %, make: 500 mL}";
    let mut fields = node.map("the crossing", findings)?;
    let wanted = fields
        .need("wanted", EXAMPLE, findings)
        .and_then(|node| node.read("the strength wanted", strength, findings));
    let make = fields
        .need("make", EXAMPLE, findings)
        .and_then(|node| node.read("how much", measure::volume, findings));
    fields.finish(findings);
    Some(Crossing { wanted: wanted?.value, make: make?.value.low })
}

fn read_fresh(node: &Node, findings: &mut Vec<Finding>) -> Option<FreshPlant> {
    const EXAMPLE: &str = "fresh: {plant: 200 g, moisture: 80 %, spirit: 400 mL}";
    let mut fields = node.map("the fresh plant", findings)?;
    let plant = fields
        .need("plant", EXAMPLE, findings)
        .and_then(|node| node.read("the plant", measure::mass, findings));
    let moisture = fields.need("moisture", EXAMPLE, findings).and_then(|node| {
        node.read("the moisture", |text| measure::share_between(text, 0.05, 0.97), findings)
    });
    let spirit = fields
        .need("spirit", EXAMPLE, findings)
        .and_then(|node| node.read("the spirit", measure::volume, findings));
    fields.finish(findings);
    Some(FreshPlant { plant: plant?.value.low, moisture: moisture?.value, spirit: spirit?.value.low })
}

fn read_stove(node: &Node, findings: &mut Vec<Finding>) -> Option<(Stove, Spanned<f64>)> {
    let mut fields = node.map("the stove", findings)?;
    let stoves = [("gas", Stove::Gas), ("radiant", Stove::Radiant), ("induction", Stove::Induction)];
    let kind = fields
        .need("kind", "stove: {kind: gas, power: 2000 W}", findings)
        .and_then(|node| node.one_of("a stove", &stoves, findings));
    let power = fields
        .need("power", "stove: {kind: gas, power: 2000 W}", findings)
        .and_then(|node| node.read("the stove's power", power, findings));
    fields.finish(findings);
    Some((kind?.value, power?))
}

/// Watts, as kcal/min.
fn power(text: &str) -> Result<f64, Misread> {
    let amount = measure::amount(text)?;
    if amount.dimension() == Dimension::ENERGY.per(Dimension::TIME) {
        return Ok(amount.low);
    }
    Err(Misread::new(0..text.len(), Code::WrongDimension, format!("`{text}` is not a power such as 2000 W")))
}

fn read_pot(node: &Node, findings: &mut Vec<Finding>) -> Option<Pot> {
    let mut fields = node.map("the pot", findings)?;
    let lost = fields
        .need("lost", "pot: {lost: 200 mL, in: 20 min}", findings)
        .and_then(|node| node.read("what the pot lost", measure::volume, findings));
    let time = fields
        .need("in", "pot: {lost: 200 mL, in: 20 min}", findings)
        .and_then(|node| node.read("the time", measure::time, findings));
    let holds =
        fields.take("holds").and_then(|node| node.read("what the pot holds", measure::volume, findings));
    fields.finish(findings);
    let holds = holds.map(|holds| holds.value.low);
    Some(Pot { lost: lost?.value.low, time: time?.value.low, holds })
}

/// Metres or feet, from the sea to where the standard atmosphere of a kitchen ends.
fn altitude(text: &str) -> Result<Amount, Misread> {
    let amount = measure::amount_or_zero(text)?;
    if amount.dimension() == Dimension::LENGTH && (0.0..=5000.0).contains(&amount.low) {
        return Ok(amount);
    }
    let message = format!("`{text}` is not an altitude between 0 and 5,000 m");
    Err(Misread::new(0..text.len(), Code::WrongDimension, message))
}

/// A strength of spirit: alcohol by volume as a share.
fn strength(text: &str) -> Result<f64, Misread> {
    measure::share_between(text, 0.01, 1.0)
}
