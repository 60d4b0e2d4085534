//! What things cost: packs as they are bought, each with its price.

use std::collections::{BTreeMap, BTreeSet};

use crate::diagnostic::{Code, Finding, nearest};
use crate::measure::unit::{G, ML};
use crate::measure::{self, Dimension, Misread, Unit};
use crate::pantry::Pantry;
use crate::span::Spanned;
use crate::yaml::Node;

/// Prices, where the formulary has any.
#[derive(Clone, Debug, Default)]
pub struct Prices {
    /// What they are in: "£", "USD".
    pub currency: String,
    packs: BTreeMap<String, Spanned<Pack>>,
}

/// So much for such a price.
#[derive(Clone, PartialEq, Debug)]
pub struct Pack {
    /// Its price, in the currency.
    pub price: f64,
    /// What is in it, in its unit.
    pub holds: f64,
    /// Grams or millilitres.
    pub unit: &'static Unit,
    /// What is in it, as written.
    pub written: String,
}

impl Prices {
    /// The pack that something is bought in: a plant by its name, `fresh` before it where it is; an item by its id.
    pub fn pack(&self, of: &str) -> Option<&Pack> {
        self.packs.get(of).map(|pack| &pack.value)
    }

    /// Holds the names to what the book has; an item of the pantry may be called by any of its names.
    pub fn settle<'a>(
        &mut self,
        plants: impl Iterator<Item = &'a str>,
        faulty: &BTreeSet<String>,
        pantry: &Pantry,
        findings: &mut Vec<Finding>,
    ) {
        let plants: Vec<&str> = plants.collect();
        for (name, pack) in std::mem::take(&mut self.packs) {
            let bare = name.strip_prefix("fresh ").unwrap_or(&name);
            let known = match pantry.item(&name) {
                Some(item) => Some(item.id.clone()),
                None => (plants.contains(&bare) || faulty.contains(bare)).then(|| name.clone()),
            };
            match known {
                Some(known) => {
                    if let Some(first) = self.packs.insert(known, pack) {
                        let message = format!("`{name}` has a price already, under another of its names");
                        findings.push(
                            Finding::error(Code::TwiceWritten, first.span, message)
                                .why("it is bought at one price"),
                        );
                    }
                }
                None => {
                    let message =
                        format!("a price for `{name}`, which no plant and nothing in the pantry is called");
                    let names = plants.iter().copied().chain(pantry.names(|_| true));
                    let finding = Finding::error(Code::UnknownName, pack.span, message)
                        .why("a plant is called as its file is, `fresh` before it where it is bought fresh");
                    findings.push(match nearest(bare, names) {
                        // Fresh stays fresh: the dried plant has another price.
                        Some(near) if bare != name && plants.contains(&near) => {
                            finding.write(format!("fresh {near}"))
                        }
                        Some(near) => finding.write(near),
                        None => finding,
                    });
                }
            }
        }
    }
}

/// Reads `prices`: the currency, then `rosehip: 9.00 for 500 g`.
pub(super) fn read_prices(node: &Node, findings: &mut Vec<Finding>) -> Option<Prices> {
    let mut fields = node.map("the price list", findings)?;
    let currency = fields
        .need("currency", "prices: {currency: £, rosehip: 9.00 for 500 g}", findings)
        .and_then(|node| node.text("the currency", findings))
        .map(|text| text.value.to_string());
    let others = node.entries().iter().filter(|(key, _)| key.value != "currency");
    let packs = others.filter_map(|(key, node)| {
        let pack = node.read("a price", pack, findings)?;
        Some((key.value.clone(), Spanned::new(pack.value, key.span)))
    });
    Some(Prices { packs: packs.collect(), currency: currency? })
}

/// "9.00 for 500 g".
fn pack(text: &str) -> Result<Pack, Misread> {
    let wrong = || {
        let message = format!("`{text}` is no price for an amount");
        let mut misread = Misread::new(0..text.len(), Code::BadNumber, message);
        misread.why = Some("what is paid, and for how much by weight or volume".to_string());
        misread.write = vec!["9.00 for 500 g".to_string()];
        misread
    };
    let (price, holds) = text.split_once(" for ").ok_or_else(wrong)?;
    let price = price.trim();
    if !price.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.') {
        return Err(wrong());
    }
    let price =
        price.parse::<f64>().ok().filter(|price| *price > 0.0 && price.is_finite()).ok_or_else(wrong)?;
    let amount = measure::amount(holds.trim()).map_err(|_| wrong())?;
    let unit = match amount.dimension() {
        Dimension::MASS => &G,
        Dimension::VOLUME => &ML,
        _ => return Err(wrong()),
    };
    if amount.low != amount.high {
        return Err(wrong());
    }
    Ok(Pack { price, holds: amount.low, unit, written: holds.trim().to_string() })
}
