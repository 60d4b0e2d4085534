//! Simmering or boiling the plants in their water.

use super::{Hazard, Laying, Level, Say, words};
use crate::formula::catalogue::pan::{BoilOff, Lose};
use crate::formulary::Aromatic;
use crate::materia::{BRING_UP, LID_AJAR, LID_OFF, LID_ON};
use crate::measure::{Amount, unit::MIN};
use crate::recipe::Lid;
use crate::span::{Span, Spanned};

/// An aromatic plant may stand at the boil so many minutes before what it gives is gone: the rule
/// of the old dispensatories, put into minutes by common practice.
const AROMATIC_MINUTES: f64 = 5.0;

pub(super) fn lay(at: &mut Laying, span: Span, time: &Spanned<Amount>, lid: Lid, hard: bool) {
    let name = if hard { "boil" } else { "simmer" };
    let Some(before) = at.volume else { return };
    if at.strained {
        at.order(
            span,
            format!("`{name}` stands after the straining"),
            "once the marc is out, boiling only reduces; that is a step of its own, with a mark on the pot",
            "reduce: to 1/2 of the liquid",
        );
        return;
    }
    let minutes = at.declared(&format!("minutes at a {name}"), &MIN, &time.value, false, time.span);
    let rate = at.assume(match lid {
        Lid::On => &LID_ON,
        Lid::Ajar => &LID_AJAR,
        Lid::Off => &LID_OFF,
    });
    let gone = at.work.work("boiled off", BoilOff { rate, time: minutes });
    at.boiled.push(gone);
    let left = at.work.work(format!("in the pan after the {name}"), Lose { before, losses: vec![gone] });
    let mut times = Vec::new();
    if !at.hot {
        times.push(at.allowance(&BRING_UP, true));
    }
    at.takes(minutes, true);
    times.push(minutes);
    for in_pan in &at.plants {
        if in_pan.plant.aromatic != Aromatic::No && time.value.high > AROMATIC_MINUTES {
            at.hazards.push(Hazard::AromaticBoiled { plant: in_pan.plant.id.clone(), at: span });
        }
    }
    at.hazards.push(Hazard::HotLiquid);
    at.need("a pan with a lid");
    let (lid_words, condition) = match lid {
        Lid::On => ("put the lid on", "lid on"),
        Lid::Ajar => ("set the lid ajar", "lid ajar"),
        Lid::Off => ("leave the lid off", "lid off"),
    };
    let verb = if hard { "boil" } else { "simmer" };
    let say = if at.hot {
        vec![words(format!("Bring back to a {name} and {verb}; {lid_words}."))]
    } else {
        let plants = at.plant_words();
        vec![
            words(format!("Cover the {plants} with ")),
            Say::Volume(before),
            words(format!(" of cold water in a pan, bring up, {lid_words} and {verb}.")),
        ]
    };
    at.hot = true;
    at.off_heat = false;
    at.cooled = None;
    at.volume = Some(left);
    let level = Level {
        words: if hard { "Boil" } else { "Simmer" },
        volume: left,
        liquid: vec![left],
        sweet: Vec::new(),
        kept: None,
        gone: Some(gone),
        change: vec![Say::Volume(gone), words(" boiled off")],
    };
    at.finish_step(name, say, times, condition.to_string(), Some(level));
}
