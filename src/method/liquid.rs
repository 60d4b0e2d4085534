//! The extracting liquid: how much of it, what is in it, and the water that dried plants lend to honey.

use super::put_in::counted;
use super::sweeten;
use super::{Ingredient, Laying, Say, words};
use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::formula::catalogue::pan::{
    AddVolumes, Away, ForEachGram, ForEachGramByWeight, MeasureOut, ShareOfVolume, Weigh,
};
use crate::formula::catalogue::spirit::{ShareByWeight, SpiritDensity, SpiritFor, WaterToAdd};
use crate::materia::{Item, WATER_DENSITY};
use crate::measure::unit::{G, ML, ML_PER_G, ONE, PER_CENT_VV};
use crate::measure::{Dimension, Form, LiquidRatio, RatioBasis};
use crate::recipe::{LiquidAmount, Menstruum};
use crate::span::Span;
use crate::working::Id;
use std::sync::Arc;

/// How much, as the recipe measures it.
enum Poured {
    Volume(Line),
    Weight(Line),
}

/// Puts the liquid in; gives its volume, mL.
pub(super) fn lay(at: &mut Laying) -> Option<Line> {
    let liquid = at.recipe.liquid.as_ref()?;
    let (kind, item, span) = (liquid.value.kind, liquid.value.item.clone(), liquid.span);
    if let Some(item) = &item {
        at.note_item(item);
    }
    let strength = strength(at, kind, item.as_ref(), span)?;
    at.strength =
        strength.filter(|_| kind == Menstruum::Spirit).map(|line| at.work.evaluate(&[])[line.index()]);
    if !mixable(at, kind) {
        return None;
    }
    let (poured, written) = match &liquid.value.amount {
        LiquidAmount::Measured(amount) => {
            let by_weight = amount.dimension() == Dimension::MASS;
            let unit = if by_weight { &G } else { &ML };
            let line = at.declared(kind.words(), unit, amount, true, span);
            let poured = if by_weight { Poured::Weight(line) } else { Poured::Volume(line) };
            (poured, Some(amount.written.clone()))
        }
        LiquidAmount::Ratio(ratio, form) => (by_ratio(at, ratio, *form, span)?, None),
    };
    let (volume, weight) = match poured {
        Poured::Volume(volume) => (volume, None),
        Poured::Weight(_) if kind == Menstruum::Glycerin && strength.is_some() => {
            at.findings.push(
                Finding::error(Code::NoBasis, span, "glycerin of a strength is measured by volume")
                    .why("how much a mixture of glycerin and water weighs is not in these tables")
                    .write("liquid: {glycerin: 1:5 w/v, strength: 60 %}"),
            );
            return None;
        }
        Poured::Weight(weight) => {
            let density = density(at, kind, item.as_deref(), strength);
            (at.work.work(kind.words(), MeasureOut { weight, density }), Some(weight))
        }
    };
    // A percolation's ratio counts what is collected; what the marc keeps is poured besides.
    let volume = match super::percolate::kept_besides(at) {
        Some(held) => {
            at.collected = Some(volume);
            at.work.work(format!("{} to pour", kind.words()), AddVolumes { each: vec![volume, held] })
        }
        None => volume,
    };
    let weight = fill(at, kind, item.as_ref(), strength, volume, weight);
    at.work.claim(
        match kind {
            Menstruum::Water => Id::Water,
            Menstruum::Spirit => Id::Spirit,
            _ => Id::Liquid,
        },
        volume,
    );
    if mixed(at, volume, strength) || (kind == Menstruum::Glycerin && watered(at, volume, strength)) {
        return Some(volume);
    }
    at.ingredients.push(Ingredient {
        weight,
        volume: Some(volume),
        written,
        keeps: matches!(kind, Menstruum::Spirit | Menstruum::Honey | Menstruum::Vinegar),
        item: item.map(|item| item.id.clone()),
        ..Ingredient::named(with_strength(at, kind))
    });
    Some(volume)
}

/// Whether `from` names a stronger spirit, where it is said at all.
fn mixable(at: &mut Laying, kind: Menstruum) -> bool {
    let Some(from) = at.recipe.liquid.as_ref().and_then(|liquid| liquid.value.from.clone()) else {
        return true;
    };
    let (message, why, write) = match at.strength {
        None => {
            let message = format!("{} is not mixed from anything stronger", kind.words());
            (message, "only spirit is", "no `from`")
        }
        Some(strength) if from.value <= strength => (
            "it is to be mixed from a spirit that is no stronger".to_string(),
            "water only makes it weaker",
            "liquid: {spirit: 1:5 w/v, strength: 50 %, from: 95 %}",
        ),
        Some(_) => return true,
    };
    at.findings.push(Finding::error(Code::WrongShape, from.span, message).why(why).write(write));
    false
}

/// A spirit that is mixed from a stronger one and water: both are what is put in.
fn mixed(at: &mut Laying, finished: Line, wanted: Option<Line>) -> bool {
    let recipe = at.recipe;
    let (Some(from), Some(wanted)) =
        (recipe.liquid.as_ref().and_then(|liquid| liquid.value.from.as_ref()), wanted)
    else {
        return false;
    };
    let strength =
        at.work.given("strength of the stronger spirit", &PER_CENT_VV, from.value, false, from.span);
    let spirit = at.work.work("stronger spirit", SpiritFor { finished, wanted, strength });
    at.work.claim(Id::StrongSpirit, spirit);
    let share = at.work.work("alcohol in the stronger, by weight", ShareByWeight { strength });
    let density = at.work.work("density of the stronger", SpiritDensity { share });
    let weight = at.work.work("stronger spirit, weighed", Weigh { volume: spirit, density });
    let thin = at.work.work("alcohol in the spirit, by weight", ShareByWeight { strength: wanted });
    let water = at.work.work("water to add, weighed", WaterToAdd { spirit: weight, share, wanted: thin });
    let density = at.work.figure(&WATER_DENSITY);
    let water = at.work.work("water to add", MeasureOut { weight: water, density });
    at.work.claim(Id::WaterToAdd, water);
    let strong = strong(recipe.extracts(), from.value);
    let say = vec![
        words("Mix "),
        Say::Volume(spirit),
        words(format!(" of {strong} with ")),
        Say::Volume(water),
        words(" of water and let it cool: it warms, and shrinks a little."),
    ];
    at.finish_step("mix", say, Vec::new(), "away from flames".to_string(), None);
    put_in(at, Ingredient::named(strong), spirit, None);
    put_in(at, Ingredient::named("water for the spirit"), water, None);
    true
}

/// Glycerin with water in it: both are what is put in.
fn watered(at: &mut Laying, whole: Line, share: Option<Line>) -> bool {
    let item = at.recipe.liquid.as_ref().and_then(|liquid| liquid.value.item.clone());
    let (Some(share), Some(item)) = (share, item) else { return false };
    let pure = at.work.work("pure glycerin", ShareOfVolume { share, whole });
    let density = sweeten::density(at, &item);
    let weight = at.work.work("glycerin, weighed", Weigh { volume: pure, density });
    let water = at.work.work("water with the glycerin", Away { before: whole, after: pure });
    put_in(at, Ingredient::of(&item), pure, Some(weight));
    put_in(at, Ingredient::named("water for the glycerin"), water, None);
    true
}

fn put_in(at: &mut Laying, what: Ingredient, volume: Line, weight: Option<Line>) {
    at.ingredients.push(Ingredient { weight, volume: Some(volume), keeps: true, ..what });
}

/// "spirit of 40 %", or the liquid's word where it has no strength to tell.
fn with_strength(at: &Laying, kind: Menstruum) -> String {
    match (kind, at.strength) {
        (Menstruum::Spirit, Some(strength)) => strong(at.recipe.extracts(), strength),
        _ => at.recipe.extracts().to_string(),
    }
}

/// "spirit of 40 %".
pub(super) fn strong(spirit: &str, strength: f64) -> String {
    format!("{spirit} of {}\u{a0}%", crate::measure::rounded(strength * 100.0, 1))
}

/// The line of a liquid's strength; the outer none is a fault, the inner a liquid without one.
fn strength(at: &mut Laying, kind: Menstruum, item: Option<&Arc<Item>>, span: Span) -> Option<Option<Line>> {
    let declared = at.recipe.liquid.as_ref().and_then(|liquid| liquid.value.strength.clone());
    Some(match kind {
        Menstruum::Spirit => Some(super::pour::spirit_strength(at, span, item, declared.as_ref())?),
        Menstruum::Vinegar => Some(super::pour::acid(at, item?, declared.as_ref())),
        Menstruum::Glycerin => declared.map(|share| {
            at.work.given("glycerin in the liquid", &PER_CENT_VV, share.value, false, share.span)
        }),
        Menstruum::Water | Menstruum::Honey | Menstruum::Oil => {
            if let Some(strength) = declared {
                let message = format!("{} has no strength to give", kind.words());
                at.findings.push(
                    Finding::error(Code::UnknownKey, strength.span, message)
                        .why("spirit, vinegar and glycerin have one"),
                );
                return None;
            }
            None
        }
    })
}

/// The density the whole liquid is measured by.
fn density(at: &mut Laying, kind: Menstruum, item: Option<&Item>, strength: Option<Line>) -> Line {
    match (kind, strength) {
        (Menstruum::Spirit, Some(strength)) => {
            let share = at.work.work("alcohol in the spirit, by weight", ShareByWeight { strength });
            at.work.work("density of the spirit", SpiritDensity { share })
        }
        _ => match item {
            Some(item) => sweeten::density(at, item),
            None => at.work.figure(&WATER_DENSITY),
        },
    }
}

/// Fills the batch; gives the weight of a liquid that is better weighed.
fn fill(
    at: &mut Laying,
    kind: Menstruum,
    item: Option<&Arc<Item>>,
    strength: Option<Line>,
    volume: Line,
    weight: Option<Line>,
) -> Option<Line> {
    let Some(item) = item else {
        at.batch.add_water(volume);
        return weight;
    };
    match (kind, strength) {
        (Menstruum::Spirit, Some(strength)) => at.batch.fortify(volume, strength),
        (Menstruum::Vinegar, Some(acidity)) => at.batch.acidify(Arc::clone(item), volume, acidity),
        (Menstruum::Oil, _) => at.batch.add_oil(Arc::clone(item), volume),
        (Menstruum::Honey, _) => {
            let density = sweeten::density(at, item);
            let weight = weight.unwrap_or_else(|| {
                at.work.work(format!("{}, weighed", item.words), Weigh { volume, density })
            });
            let water = sweeten::water(at, item);
            at.batch.stir_in(Arc::clone(item), volume, weight, water);
            return Some(weight);
        }
        (Menstruum::Glycerin, share) => {
            let pure = match share {
                Some(share) => at.work.work("pure glycerin", ShareOfVolume { share, whole: volume }),
                None => volume,
            };
            let density = sweeten::density(at, item);
            let weight = at.work.work("glycerin, weighed", Weigh { volume: pure, density });
            at.batch.stir_in(Arc::clone(item), pure, weight, None);
            if share.is_some() {
                let water = at.work.work("water with the glycerin", Away { before: volume, after: pure });
                at.batch.add_water(water);
            }
            return Some(weight);
        }
        _ => at.batch.add_water(volume),
    }
    weight
}

/// By a ratio: a volume, or a weight where the ratio is one of weights.
fn by_ratio(at: &mut Laying, ratio: &LiquidRatio, form: Option<Form>, span: Span) -> Option<Poured> {
    let fresh: Vec<&str> = at
        .marc
        .plants
        .iter()
        .filter(|plant| plant.form == Form::Fresh)
        .map(|plant| plant.plant.words.as_str())
        .collect();
    let of = match form {
        Some(form) => form,
        None if fresh.is_empty() => Form::Dried,
        None => {
            let message = format!(
                "the ratio does not say whether it counts the {} fresh or as dried",
                fresh.join(", ")
            );
            at.findings.push(
                Finding::error(Code::FreshOrDried, span, message)
                    .why("a fresh plant weighs from two to eleven times what it weighs dried")
                    .write(format!("{} of fresh", ratio.written()))
                    .write(format!("{} of dried", ratio.written())),
            );
            return None;
        }
    };
    if of == Form::Fresh && fresh.len() < at.marc.plants.len() {
        let message = "the ratio counts fresh plants, and some of these are dried";
        at.findings.push(
            Finding::error(Code::FreshOrDried, span, message)
                .why("a fresh plant can be counted as what it would weigh dried, not the other way round")
                .write(format!("{} of dried", ratio.written())),
        );
        return None;
    }
    let counted = counted(at, of, span)?;
    let each =
        at.work.given("liquid for each gram", ratio_unit(ratio.by), ratio.liquid / ratio.plant, false, span);
    let named = at.recipe.extracts();
    match ratio.by {
        RatioBasis::WeightInVolume => {
            Some(Poured::Volume(at.work.work(named, ForEachGram { each_gram_takes: each, plants: counted })))
        }
        RatioBasis::WeightInWeight => {
            let by = ForEachGramByWeight { each_gram_takes: each, plants: counted };
            Some(Poured::Weight(at.work.work(format!("{named}, by weight"), by)))
        }
        RatioBasis::VolumeInVolume => {
            at.findings.push(
                Finding::error(
                    Code::NoBasis,
                    span,
                    "v/v measures the plants by volume; a working weighs them",
                )
                .why("a cup of the same plant weighs more or less by its cut")
                .write(LiquidRatio { by: RatioBasis::WeightInVolume, ..*ratio }.written()),
            );
            None
        }
    }
}

const fn ratio_unit(by: RatioBasis) -> &'static crate::measure::Unit {
    match by {
        RatioBasis::WeightInVolume => &ML_PER_G,
        _ => &ONE,
    }
}
