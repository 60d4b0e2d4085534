//! Spirit or vinegar poured in, off the heat.

use super::{Ingredient, Laying, Level, Say, words};
use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::formula::catalogue::pan::ShareOfVolume;
use crate::materia::{Item, Kind, VINEGAR_ACIDITY};
use crate::measure::decimal;
use crate::measure::unit::{ML, ONE, PER_CENT_VV, PER_CENT_WV};
use crate::recipe::Much;
use crate::span::{Span, Spanned};
use crate::working::Id;
use std::sync::Arc;

pub(super) fn fortify(
    at: &mut Laying,
    span: Span,
    of: &Spanned<String>,
    amount: &Spanned<Much>,
    strength: Option<&Spanned<f64>>,
) {
    if !ready(at, span, "fortify") {
        return;
    }
    let Some(item) = at.shelf(of, "a spirit", |kind| kind == Kind::Spirit, &[]) else { return };
    let Some(strength) = spirit_strength(at, span, Some(&item), strength) else { return };
    let Some(volume) = measured(at, &item, amount) else { return };
    at.batch.fortify(volume, strength);
    at.work.claim(Id::Spirit, volume);
    poured(at, "fortify", &item, volume, amount);
}

/// How much is poured in, mL: what a target may move is the amount, or the share.
fn measured(at: &mut Laying, item: &Item, amount: &Spanned<Much>) -> Option<Line> {
    match &amount.value {
        Much::Measured(much) => {
            let line = at.declared(&item.words, &ML, much, true, amount.span);
            at.poured = Some(line);
            Some(line)
        }
        Much::Share(proportion) => {
            let whole = at.volume?;
            let name = format!("{} to one of liquid", item.words);
            let share = at.work.given(name, &ONE, proportion.share, false, amount.span);
            at.poured = Some(share);
            Some(at.work.work(item.words.as_str(), ShareOfVolume { share, whole }))
        }
    }
}

/// The strength the recipe says, else the spirit's own page, else that of the kitchen's only spirit.
pub(super) fn spirit_strength(
    at: &mut Laying,
    span: Span,
    item: Option<&Arc<Item>>,
    strength: Option<&Spanned<f64>>,
) -> Option<Line> {
    if let Some(strength) = strength {
        return Some(at.work.given(
            "strength of the spirit",
            &PER_CENT_VV,
            strength.value,
            false,
            strength.span,
        ));
    }
    if let Some(own) = item.and_then(|item| item.strength.as_ref()) {
        return Some(at.work.fact(own));
    }
    let at_hand = &at.book.course.kitchen.spirits;
    if let [only] = at_hand[..] {
        let source = crate::bibliography::Source::formulary("the only spirit this kitchen has at hand");
        return Some(at.work.published(
            "strength of the spirit",
            "spirit-at-hand",
            &PER_CENT_VV,
            only,
            source,
        ));
    }
    let extracts = at.volume.is_none();
    let mut finding = Finding::error(Code::NoBasis, span, "how strong the spirit is, is not said")
        .why("what keeps is the alcohol in it, and spirits run from 20 to 96 % by volume");
    for strength in if at_hand.is_empty() { &[0.4][..] } else { at_hand } {
        let strength = decimal(strength * 100.0, 0);
        finding = finding.write(match extracts {
            true => format!("liquid: {{spirit: 1:5 w/v, strength: {strength} %}}"),
            false => format!("fortify: {{spirit: 80 mL, strength: {strength} %}}"),
        });
    }
    at.findings.push(finding);
    None
}

pub(super) fn acidify(
    at: &mut Laying,
    span: Span,
    of: &Spanned<String>,
    amount: &Spanned<Much>,
    acidity: Option<&Spanned<f64>>,
) {
    if !ready(at, span, "acidify") {
        return;
    }
    let Some(item) = at.shelf(of, "a vinegar", |kind| kind == Kind::Vinegar, &[]) else { return };
    let acidity = acid(at, &item, acidity);
    let Some(volume) = measured(at, &item, amount) else { return };
    at.batch.acidify(item.clone(), volume, acidity);
    poured(at, "acidify", &item, volume, amount);
}

/// The acid the recipe says, else the vinegar's own page, else the kitchen's, else what vinegar has as a rule.
pub(super) fn acid(at: &mut Laying, item: &Item, declared: Option<&Spanned<f64>>) -> Line {
    match (declared, &item.strength) {
        (Some(acidity), _) => {
            at.work.given("acid of the vinegar", &PER_CENT_WV, acidity.value, false, acidity.span)
        }
        (None, Some(own)) => at.work.fact(own),
        (None, None) => at.assume(&VINEGAR_ACIDITY),
    }
}

fn ready(at: &mut Laying, span: Span, name: &str) -> bool {
    if at.volume.is_some() && !at.strained {
        at.order(
            span,
            format!("`{name}` stands before the straining"),
            "the marc would keep part of it back, unmeasured",
            "- strain: squeezed",
        );
    }
    at.volume.is_some() && at.strained
}

fn poured(at: &mut Laying, name: &'static str, item: &Item, volume: Line, amount: &Spanned<Much>) {
    let what = &item.words;
    at.ingredients.push(Ingredient {
        volume: Some(volume),
        written: amount.value.written().map(str::to_string),
        keeps: true,
        ..Ingredient::of(item)
    });
    let mixed = at.batch.volume(&format!("with the {what}"), &mut at.work);
    at.volume = Some(mixed);
    at.sweetened = true;
    let (liquid, sweet) = at.batch.layers();
    let level = Level {
        words: if name == "fortify" { "Fortify" } else { "Acidify" },
        volume: mixed,
        liquid,
        sweet,
        kept: None,
        gone: None,
        change: vec![Say::Volume(volume), words(format!(" of {what} added"))],
    };
    let say = vec![words("Off the heat, stir in "), Say::Volume(volume), words(format!(" of {what}."))];
    at.finish_step(name, say, Vec::new(), "off the heat".to_string(), Some(level));
}
