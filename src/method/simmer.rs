//! Simmering or boiling the plants in their water.

use super::{Hazard, Laying, Level, Say, words};
use crate::bibliography::Source;
use crate::formula::Line;
use crate::formula::catalogue::heat::{AirPressure, Boiling, HeatToWarm, Rise, ThinAir, TimeOnStove};
use crate::formula::catalogue::pan::{BoilOff, Lose, Weigh};
use crate::formulary::{Aromatic, Stove};
use crate::materia::{
    BOILING_AT_SEA, BRING_UP, GAS_REACHES, INDUCTION_REACHES, LID_AJAR, LID_OFF, LID_ON, RADIANT_REACHES,
    TAP, WATER_DENSITY,
};
use crate::measure::Amount;
use crate::measure::unit::{KCAL_PER_MIN, M, MIN};
use crate::recipe::{Lid, Menstruum};
use crate::span::{Span, Spanned};
use crate::working::Id;

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
    if let Some((liquid, why)) = at.unfit_for_heat() {
        at.unfit(
            span,
            liquid,
            format!("{liquid} stands in the pan that is to {name}"),
            why,
            "steep: 2 weeks",
        );
        return;
    }
    at.pans.push(before);
    let minutes = at.declared(&format!("minutes at a {name}"), &MIN, &time.value, false, time.span);
    let rate = at.assume(match lid {
        Lid::On => &LID_ON,
        Lid::Ajar => &LID_AJAR,
        Lid::Off => &LID_OFF,
    });
    let gone = at.work.work("boiled off", BoilOff { rate, time: minutes });
    at.marc.boiled.push(gone);
    let left = at.work.work(format!("in the pan after the {name}"), Lose { before, losses: vec![gone] });
    let mut times = Vec::new();
    if !at.hot {
        times.push(bring_up(at, before));
    }
    at.takes(minutes, true);
    times.push(minutes);
    for in_pan in &at.marc.plants {
        let same = at.put_in.iter_mut().filter(|put_in| put_in.at == in_pan.at);
        same.filter_map(|put_in| put_in.boiled.as_mut()).for_each(|boiled| boiled.push(minutes));
        if in_pan.plant.aromatic != Aromatic::No {
            let plant = in_pan.plant.id.clone();
            at.hazards.push(Hazard::AromaticBoiled { plant, minutes: Some(minutes), at: span });
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
        vec![
            words(format!("Bring back to a {name}, {lid_words} and {verb} for ")),
            Say::Time(minutes),
            words("."),
        ]
    } else {
        let plants = at.plant_words();
        vec![
            words(format!("Cover the {plants} with ")),
            Say::Volume(at.to_pour.take().unwrap_or(before)),
            words(format!(" of {} in a pan, bring up, {lid_words} and {verb} for ", at.cold_liquid())),
            Say::Time(minutes),
            words("."),
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

/// Why a liquid does not belong over heat; none for water and vinegar.
pub(super) const fn unfit(liquid: Menstruum) -> Option<&'static str> {
    match liquid {
        Menstruum::Water | Menstruum::Vinegar => None,
        Menstruum::Spirit => Some("its vapour catches fire, and the alcohol leaves"),
        Menstruum::Honey => Some("boiled honey is honey no more; plants are steeped in it, warm at most"),
        Menstruum::Oil => Some("oil does not simmer at all: it fries what is in it"),
        Menstruum::Glycerin => Some("glycerin is steeped; over heat it scorches"),
    }
}

/// This kitchen's altitude, m, where it is given.
pub(super) fn altitude(at: &mut Laying) -> Option<Line> {
    let altitude = at.book.course.kitchen.altitude.as_ref()?.value;
    let source = Source::formulary("this kitchen's altitude");
    Some(at.work.published("altitude", "kitchen-altitude", &M, altitude, source))
}

/// The temperature at which water boils in this kitchen, °C.
pub(super) fn boiling(at: &mut Laying) -> Line {
    let Some(altitude) = altitude(at) else {
        return at.work.figure(&BOILING_AT_SEA);
    };
    let thin = at.work.work("how thin the air is", ThinAir { altitude });
    let pressure = at.work.work("pressure of the air", AirPressure { thin });
    let boils = at.work.work("water boils at", Boiling { pressure });
    at.work.claim(Id::Boiling, boils);
    boils
}

/// Minutes until the pan simmers: by the kitchen's stove, else an allowance.
fn bring_up(at: &mut Laying, volume: Line) -> Line {
    let Some((stove, power)) = at.book.course.kitchen.stove.clone() else {
        return at.allowance(&BRING_UP, true);
    };
    let source = Source::formulary("this kitchen's stove");
    let power = at.work.published("power of the stove", "kitchen-stove", &KCAL_PER_MIN, power.value, source);
    let reaches = at.assume(match stove {
        Stove::Gas => &GAS_REACHES,
        Stove::Radiant => &RADIANT_REACHES,
        Stove::Induction => &INDUCTION_REACHES,
    });
    let density = at.work.figure(&WATER_DENSITY);
    let weight = at.work.work("water put in, weighed", Weigh { volume, density });
    let (from, to) = (at.work.figure(&TAP), boiling(at));
    let rise = at.work.work("rise in temperature", Rise { from, to });
    let heat = at.work.work("heat to bring it up", HeatToWarm { weight, rise });
    let minutes = at.work.work("minutes to bring it up", TimeOnStove { heat, power, reaches });
    at.takes(minutes, true);
    minutes
}
