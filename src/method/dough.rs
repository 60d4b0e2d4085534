//! Powders kneaded, cut and dried: lozenges and pastilles; and anything else cut into pieces.

use super::{Ingredient, Laying, Say, add_weights, words};
use crate::batch::{Batch, Part};
use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::formula::catalogue::composition::Rest;
use crate::formula::catalogue::pan::{ForEachGramByWeight, MeasureOut, Weigh};
use crate::materia::{CUTTING, Item, KNEADING, Kind, WATER_DENSITY};
use crate::measure::unit::{G, MIN, ML, ONE};
use crate::measure::{Amount, Dimension, RatioBasis};
use crate::recipe::Kneaded;
use crate::span::{Span, Spanned};
use crate::working::Id;
use std::sync::Arc;

/// What only wets.
const WATER: &str = "water";

pub(super) fn knead(at: &mut Laying, span: Span, parts: &[(Spanned<String>, Spanned<Kneaded>)]) {
    if at.marc.plants.is_empty() && at.passed_on.is_empty() {
        return;
    }
    if at.volume.is_some() && !at.strained {
        at.order(
            span,
            "powders are kneaded into what is not strained",
            "a dough is made of powders, and of little liquid",
            "- strain: squeezed before - knead: {...}",
        );
        return;
    }
    let plants = at.plant_words();
    let mut dry: Vec<Line> = std::mem::take(&mut at.marc.plants).iter().map(|in_pan| in_pan.weight).collect();
    at.passed_on.extend(dry.clone());
    // What wets it goes again in drying; what is dissolved in it stays.
    let mut wet = Vec::new();
    if at.volume.take().is_some() {
        let whole = at.batch.weight("what wets it, weighed", &mut at.work);
        if at.batch.is_water() {
            wet.push(whole);
        } else if at.batch.holds_honey() {
            // Honey keeps the water that is its own, and with it what is mixed into it.
            dry.push(whole);
        } else {
            let parts = [(Part::Water, "water in it"), (Part::Ethanol, "alcohol in it")];
            wet.extend(parts.into_iter().filter_map(|(part, name)| at.batch.part(part, name, &mut at.work)));
            let part = add_weights(&mut at.work, "what dries off", wet.clone());
            dry.push(at.work.work("left of it once dry", Rest { whole, part }));
        }
    } else {
        at.batch = Batch::default();
    }
    let mut say = vec![words(format!("Sieve the {plants} to a fine powder and knead with "))];
    for (n, (name, much)) in parts.iter().enumerate() {
        let item = match name.value == WATER {
            true => None,
            false => match at.shelf(name, "anything to knead with", kneads, &[WATER]) {
                None => continue,
                item => item,
            },
        };
        let Some(line) = amount(at, name, much, item.as_ref()) else { continue };
        if n > 0 {
            say.push(words(if n + 1 == parts.len() { " and " } else { ", " }));
        }
        let is_water = name.value == WATER;
        say.push(if is_water { Say::Volume(line) } else { Say::Weight(line) });
        say.push(words(format!(" of {}", name.value)));
        if is_water {
            let density = at.work.figure(&WATER_DENSITY);
            wet.push(at.work.work("water, weighed", Weigh { volume: line, density }));
        } else {
            dry.push(line);
        }
        at.ingredients.push(Ingredient {
            weight: (!is_water).then_some(line),
            volume: is_water.then_some(line),
            ..item.as_ref().map_or_else(|| Ingredient::named(WATER), |item| Ingredient::of(item))
        });
    }
    say.push(words(", a little at a time, to a stiff dough. Roll it out on a dusting of sugar."));
    let solid = add_weights(&mut at.work, "dough, dry", dry.clone());
    at.dough.dry = Some(solid);
    at.closed = Some("knead");
    at.dough.wet = wet;
    at.strained = true;
    at.need("scales");
    at.need("a fine sieve");
    at.need("a rolling pin");
    let minutes = at.allowance(&KNEADING, false);
    at.finish_step("knead", say, vec![minutes], String::new(), None);
}

/// What a dough may be kneaded with, besides water: what sweetens, and what binds.
fn kneads(kind: Kind) -> bool {
    kind.sweetens() || kind == Kind::Gum
}

/// How much of one thing: its weight, g; of water the volume, mL.
fn amount(
    at: &mut Laying,
    name: &Spanned<String>,
    much: &Spanned<Kneaded>,
    item: Option<&Arc<Item>>,
) -> Option<Line> {
    let wrong = |at: &mut Laying, why: &str, write: &str| {
        let message = format!("how much {} cannot be told", name.value);
        at.findings.push(Finding::error(Code::NoBasis, much.span, message).why(why).write(write));
        None
    };
    let line = match &much.value {
        Kneaded::Measured(amount) if amount.dimension() == Dimension::MASS && name.value != WATER => {
            at.declared(&name.value, &G, amount, true, much.span)
        }
        Kneaded::Measured(amount) if amount.dimension() == Dimension::VOLUME && name.value == WATER => {
            at.declared(&name.value, &ML, amount, true, much.span)
        }
        Kneaded::Measured(_) if name.value == WATER => {
            return wrong(at, "water is measured by the spoon or the millilitre", "water: 12 mL");
        }
        Kneaded::Measured(_) => {
            return wrong(at, "what a dough is made of is weighed", &format!("{}: 70 g", name.value));
        }
        Kneaded::Ratio(ratio) if ratio.by == RatioBasis::WeightInWeight && name.value != WATER => {
            let Some(plants) = at.work.line(Id::Plants) else {
                return wrong(
                    at,
                    "there is no plant that the ratio could count",
                    &format!("{}: 70 g", name.value),
                );
            };
            let each = format!("{} for each gram", name.value);
            let each_gram_takes = at.work.given(each, &ONE, ratio.liquid / ratio.plant, false, much.span);
            at.work.work(name.value.as_str(), ForEachGramByWeight { each_gram_takes, plants })
        }
        Kneaded::Ratio(_) => {
            return wrong(
                at,
                "a dough's ratio is one of weights, of plants to what they are kneaded with",
                "sugar: 1:7 w/w",
            );
        }
    };
    if let Some(item) = item.filter(|item| item.kind.sweetens()) {
        let density = super::sweeten::density(at, item);
        let volume = at.work.work(format!("{}, measured", item.words), MeasureOut { weight: line, density });
        let water = super::sweeten::water(at, item);
        at.batch.stir_in(Arc::clone(item), volume, line, water);
        at.work.claim(Id::SweetenerWeight, line);
    }
    Some(line)
}

pub(super) fn cut(at: &mut Laying, span: Span, piece: &Spanned<Amount>) {
    if at.has_faults() {
        return;
    }
    if at.dough.piece.is_some() {
        at.order(span, "it is cut twice", "pieces have one weight", "one `cut`");
        return;
    }
    if at.dough.dry.is_none() {
        at.order(
            span,
            "what is to be cut is still liquid",
            "pieces are cut of a dough, or dropped of boiled sugar",
            "- knead: {...} or - boil to: hard crack before it",
        );
        return;
    }
    let line = at.declared("a piece, dry", &G, &piece.value, false, piece.span);
    at.dough.piece = Some(line);
    let minutes = at.allowance(&CUTTING, false);
    let say = match at.closed {
        Some("boil to") => vec![
            words("Drop it at once, before it sets, onto oiled paper: pieces of "),
            Say::Weight(line),
            words("."),
        ],
        _ => vec![words("Cut it into pieces that weigh "), Say::Weight(line), words(" each once dry.")],
    };
    at.finish_step("cut", say, vec![minutes], String::new(), None);
}

/// What wetted the dough dries off; honey keeps the water that is its own.
pub(super) fn dry(at: &mut Laying, span: Span, time: &Spanned<Amount>) {
    if at.dough.dry.is_none() {
        if at.has_faults() {
            return;
        }
        at.order(span, "there is no dough to dry", "a dough is kneaded first", "- knead: {...} before it");
        return;
    }
    let minutes = at.declared("minutes drying", &MIN, &time.value, false, time.span);
    at.takes(minutes, false);
    at.dough.wet.clear();
    at.need("a rack or a board");
    let say =
        vec![words("Leave them to dry in a warm, airy place, turned once, until they no longer stick.")];
    at.finish_step("dry", say, vec![minutes], "uncovered".to_string(), None);
}
