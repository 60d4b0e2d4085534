//! Steps that stir something in: what, and how much of it.

use super::{Diluted, Kneaded, Much, Step};
use crate::diagnostic::{Code, Finding};
use crate::materia::{CRACKS, STAGES, Stage};
use crate::measure::{self, Amount, By, LiquidRatio, Of, Proportion, RatioBasis};
use crate::span::Spanned;
use crate::yaml::Node;

/// Names with an amount each, at least one.
fn each<T>(
    node: &Node,
    (what, none, example): (&str, &str, &str),
    by: impl Fn(&str) -> Result<T, measure::Misread>,
    findings: &mut Vec<Finding>,
) -> Vec<(Spanned<String>, Spanned<T>)> {
    let Some(mut fields) = node.map(what, findings) else {
        return Vec::new();
    };
    let entries = fields.rest();
    fields.finish(findings);
    if entries.is_empty() {
        findings.push(Finding::error(Code::MissingKey, node.span, none).write(example));
    }
    let read = |(key, node): (&Spanned<String>, &Node), findings: &mut Vec<Finding>| {
        Some((key.clone(), node.read(&format!("how much {}", key.value), &by, findings)?))
    };
    entries.into_iter().filter_map(|entry| read(entry, findings)).collect()
}

/// What sweetens.
pub(super) fn read_sweeten(node: &Node, findings: &mut Vec<Finding>) -> Option<Step> {
    let words = ("what sweetens", "nothing is named that sweetens", "{honey: 1/2 of the liquid by volume}");
    let sweets = each(node, words, share_or_amount, findings);
    (!sweets.is_empty()).then_some(Step::Sweeten(sweets))
}

/// Wax, and how much of it.
pub(super) fn read_melt(node: &Node, findings: &mut Vec<Finding>) -> Option<Step> {
    let words = ("what is melted in", "no wax is named", "{beeswax: 1/5 of the liquid by weight}");
    let waxes = each(node, words, wax, findings);
    (!waxes.is_empty()).then_some(Step::Melt(waxes))
}

/// A ratio of weights; only that is offered where the basis is missing.
fn by_weight(text: &str) -> Result<LiquidRatio, measure::Misread> {
    measure::liquid_ratio(text).map_err(|mut misread| {
        misread.write.retain(|write| !write.contains("/v"));
        misread.why = Some("both are weighed here, and a ratio of weights is written w/w".to_string());
        misread
    })
}

/// How warm bath water may be written: below the boil.
fn warmth(text: &str) -> Result<Amount, measure::Misread> {
    let warm = measure::temperature(text)?;
    if warm.high < 100.0 {
        return Ok(warm);
    }
    let message = format!("`{}` is hotter than boiling water", text.trim());
    let mut misread = measure::Misread::new(0..text.len(), Code::BadNumber, message);
    misread.write.push("35 °C".to_string());
    Err(misread)
}

/// Wax by a share of the oil's weight, by the ratio of wax to oil, or weighed.
fn wax(text: &str) -> Result<Much, measure::Misread> {
    if text.contains(':') {
        let ratio = by_weight(text)?;
        if ratio.by == RatioBasis::WeightInWeight {
            let written = text.trim().to_string();
            let share = ratio.plant / ratio.liquid;
            return Ok(Much::Share(Proportion { share, by: By::Weight, of: Of::Liquid, written }));
        }
    }
    share_or_amount(text).map_err(|mut misread| {
        misread.write.retain(|write| !write.contains("volume") && !write.contains("mL"));
        misread
    })
}

/// What makes powders a dough.
pub(super) fn read_knead(node: &Node, findings: &mut Vec<Finding>) -> Option<Step> {
    let words =
        ("what is kneaded in", "nothing is named that makes a dough", "{sugar: 1:7 w/w, water: 12 mL}");
    let by = |text: &str| match text.contains(':') {
        true => by_weight(text).map(Kneaded::Ratio),
        false => measure::mass_or_volume(text).map(Kneaded::Measured),
    };
    let parts = each(node, words, by, findings);
    (!parts.is_empty()).then_some(Step::Knead(parts))
}

/// The product of another recipe, and how much of it.
pub(super) fn read_combine(node: &Node, findings: &mut Vec<Finding>) -> Option<Step> {
    let mut fields = node.map("what is combined", findings)?;
    let entries = fields.rest();
    fields.finish(findings);
    let [(name, amount)] = entries[..] else {
        findings.push(
            Finding::error(Code::WrongShape, node.span, "one product is combined in a step")
                .why("each is a step of its own, so that the order can be read")
                .write("- combine: {Thyme vinegar: 150 mL}"),
        );
        return None;
    };
    let amount = amount.read("how much of it", measure::volume, findings)?;
    Some(Step::Combine { of: name.clone(), amount })
}

/// What is poured in, how much, and how strong it is where that is said.
pub(super) type Poured = (Spanned<String>, Spanned<Much>, Option<Spanned<f64>>);

/// A liquid poured in.
pub(super) fn read_poured(
    node: &Node,
    what: &str,
    how_strong: &str,
    ends: (f64, f64),
    findings: &mut Vec<Finding>,
) -> Option<Poured> {
    let mut fields = node.map(&format!("the {what}"), findings)?;
    let strong = match fields.take(how_strong) {
        Some(node) => {
            let read = |text: &str| measure::share_between(text, ends.0, ends.1);
            node.read(&format!("the {how_strong}"), read, findings).map(Some)
        }
        None => Some(None),
    };
    // Whichever of the pantry it is, its own page knows: the method looks it up.
    let named = fields.rest();
    let (span, several) = (fields.span(), named.len() > 1);
    fields.finish(findings);
    let poured = named.first().and_then(|(name, node)| {
        Some(((*name).clone(), node.read(&format!("the {what}"), volume_or_share, findings)?))
    });
    if named.is_empty() || several {
        let message =
            if several { "more than one thing is poured in" } else { "what is poured in is not named" };
        let example = format!("{what}: 80 mL");
        findings.push(Finding::error(Code::MissingKey, span, message).write(example));
        return None;
    }
    let (of, amount) = poured?;
    Some((of, amount, strong?))
}

/// A volume, or a share of the liquid by volume.
fn volume_or_share(text: &str) -> Result<Much, measure::Misread> {
    if !text.contains(" of ") && !text.contains(" to ") {
        return measure::volume(text).map(Much::Measured);
    }
    let share = measure::proportion(text)?;
    if share.by == By::Volume && share.of == Of::Liquid {
        return Ok(Much::Share(share));
    }
    let message = format!("`{}` is no share of the liquid by volume", text.trim());
    let mut misread = measure::Misread::new(0..text.len(), Code::NoBasis, message);
    misread.why = Some("what is poured in is measured in a jug, against what is in the pan".to_string());
    misread.write.push("1/5 of the liquid by volume".to_string());
    Err(misread)
}

/// A share with its basis, or a weight or volume.
fn share_or_amount(text: &str) -> Result<Much, measure::Misread> {
    // Only what names a unit and no whole is a measured amount; all else must say of what it is a share.
    match measure::mass_or_volume(text) {
        Ok(amount) => Ok(Much::Measured(amount)),
        Err(misread) if misread.code == Code::NoBasis && text.contains("oz") => Err(misread),
        Err(_) => measure::proportion(text).map(Much::Share),
    }
}

/// Bath water: how much in all, and how warm.
pub(super) fn read_dilute(node: &Node, findings: &mut Vec<Finding>) -> Option<Step> {
    if node.is_scalar() {
        let to = node.read("how much water in all", measure::volume, findings)?;
        return Some(Step::Dilute(Diluted { to, warm: None }));
    }
    let mut fields = node.map("dilute", findings)?;
    let to = fields
        .need("to", "to: 7.5 L", findings)
        .and_then(|node| node.read("how much water in all", measure::volume, findings));
    let mut warmth = |key: &str, findings: &mut Vec<Finding>| {
        Some(fields.take(key)?.read(&format!("how warm the {key} is"), warmth, findings))
    };
    let (water, liquid) = (warmth("water", findings), warmth("liquid", findings));
    let span = fields.span();
    fields.finish(findings);
    let warm = match (water, liquid) {
        (Some(water), Some(liquid)) => Some((water?, liquid?)),
        (None, None) => None,
        _ => {
            findings.push(
                Finding::error(Code::MissingKey, span, "only one of the two temperatures is said")
                    .why("how warm the bath is comes from both: of the water, and of the liquid poured in")
                    .write("dilute: {to: 7.5 L, water: 35 °C, liquid: 85 °C}"),
            );
            return None;
        }
    };
    Some(Step::Dilute(Diluted { to: to?, warm }))
}

/// A stage at which boiled sugar sets hard: before, it is a syrup or a fudge.
pub(super) fn read_stage(node: &Node, findings: &mut Vec<Finding>) -> Option<Step> {
    let sets = STAGES.iter().filter(|stage| CRACKS.contains(&stage.name));
    let stages: Vec<(&str, &'static Stage)> = sets.map(|stage| (stage.name, stage)).collect();
    node.one_of("a stage of boiled sugar", &stages, findings).map(Step::BoilTo)
}
