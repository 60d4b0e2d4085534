//! Sweetening: how much by the stated basis, what it weighs, what it takes up.

use super::{Hazard, Ingredient, Laying, Level, Say, add_volumes, add_weights, words};
use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::formula::catalogue::pan::{MeasureOut, ShareOfVolume, ShareOfWeight, Weigh};
use crate::formula::catalogue::sweeten::{HoneyDensity, OfFinishedVolume, OfFinishedWeight, TakesUp};
use crate::materia::{Fact, HONEY_MOISTURE, Item, Kind, STIRRING_IN, SUCROSE_TAKES_UP, WATER_DENSITY};
use crate::measure::unit::{G, ML, ONE};
use crate::measure::{Amount, By, Dimension, Of, Proportion, Unit};
use crate::recipe::Much;
use crate::span::{Span, Spanned};
use crate::working::Id;

/// One sweetener as it goes in.
struct Measured {
    volume: Line,
    weight: Line,
    /// Its volume in the liquid: its own, or what it takes up once dissolved.
    in_liquid: Line,
}

pub(super) fn lay(at: &mut Laying, span: Span, sweets: &[(Spanned<String>, Spanned<Much>)]) {
    let Some(liquid) = at.volume else { return };
    if !at.strained {
        at.too_early(
            span,
            "the liquid is sweetened before it is strained",
            "the marc would keep sweetener back, and what you measure the sweetener against is not yet there",
            "- strain: squeezed and then - sweeten: {...}",
        );
        return;
    }
    let (mut all, mut say, mut sweet_lines, mut honey) =
        (Vec::new(), vec![words("Stir in ")], Vec::new(), false);
    for (n, (name, sweet)) in sweets.iter().enumerate() {
        let Some(item) = at.shelf(name, "a sweetener", Kind::sweetens, &[]) else { continue };
        let Some(measured) = measure(at, &item, sweet, liquid) else {
            continue;
        };
        let water = water(at, &item);
        at.batch.stir_in(item.clone(), measured.in_liquid, measured.weight, water);
        at.ingredients.push(Ingredient {
            weight: Some(measured.weight),
            volume: Some(measured.volume),
            keeps: true,
            ..Ingredient::of(&item)
        });
        if n > 0 {
            say.push(words(" and "));
        }
        say.push(Say::Measured(measured.volume, measured.weight));
        say.push(words(format!(" of {}", item.words)));
        honey |= item.is_honey();
        sweet_lines.push(measured.in_liquid);
        all.push(measured);
    }
    if all.is_empty() {
        return;
    }
    let volumes: Vec<Line> = all.iter().map(|measured| measured.volume).collect();
    let weights: Vec<Line> = all.iter().map(|measured| measured.weight).collect();
    let volume = add_volumes(&mut at.work, "sweetener", volumes);
    let weight = add_weights(&mut at.work, "sweetener, weighed", weights);
    at.work.claim(Id::Sweetener, volume);
    at.work.claim(Id::SweetenerWeight, weight);
    at.work.measurable(weight);
    if honey && (at.hot || at.cooled.is_some()) {
        at.hazards.push(Hazard::HotHoney { cooled: at.cooled.filter(|_| !at.hot), at: span });
    }
    say.push(words(" until it runs clear."));
    let finished = at.batch.volume("sweetened", &mut at.work);
    let minutes = at.allowance(&STIRRING_IN, false);
    at.sweetened = true;
    at.volume = Some(finished);
    let level = Level {
        words: "Sweeten",
        volume: finished,
        liquid: vec![liquid],
        sweet: sweet_lines,
        kept: None,
        gone: None,
        change: vec![Say::Volume(volume), words(" added")],
    };
    at.finish_step("sweeten", say, vec![minutes], String::new(), Some(level));
}

/// How much of one sweetener, by its basis.
fn measure(at: &mut Laying, item: &Item, sweet: &Spanned<Much>, liquid: Line) -> Option<Measured> {
    let density = density(at, item);
    let (volume, weight) = match &sweet.value {
        Much::Measured(amount) if amount.dimension() == Dimension::MASS => {
            (None, Some(given(at, &weighed(item), &G, amount, sweet.span)))
        }
        Much::Measured(amount) => (Some(given(at, &item.words, &ML, amount, sweet.span)), None),
        Much::Share(share) => share_of(at, item, share, sweet.span, liquid)?,
    };
    // One of the two is known; the density gives the other.
    let weight = match (weight, volume) {
        (Some(weight), _) => weight,
        (None, Some(volume)) => at.work.work(weighed(item), Weigh { volume, density }),
        (None, None) => return None,
    };
    let volume = volume.unwrap_or_else(|| at.work.work(item.words.as_str(), MeasureOut { weight, density }));
    let in_liquid = if item.kind == Kind::Sugar {
        let each_gram = at.work.figure(&SUCROSE_TAKES_UP);
        at.work.work(format!("{} once dissolved", item.words), TakesUp { weight, each_gram })
    } else {
        volume
    };
    Some(Measured { volume, weight, in_liquid })
}

fn weighed(item: &Item) -> String {
    format!("{}, weighed", item.words)
}

/// A share by its basis: of the liquid or of the finished, by volume or by weight.
fn share_of(
    at: &mut Laying,
    item: &Item,
    proportion: &Proportion,
    span: Span,
    liquid: Line,
) -> Option<(Option<Line>, Option<Line>)> {
    let dissolves = item.kind == Kind::Sugar;
    if dissolves && proportion.by == By::Volume && proportion.of == Of::Finished {
        at.findings.push(
            Finding::error(
                Code::NoBasis,
                span,
                format!("{} has no volume of its own in the finished syrup", item.words),
            )
            .why(format!("{} melts into the liquid", item.words))
            .write(format!("{} of the finished by weight", part(proportion)))
            .write(format!("{} of the liquid by volume", part(proportion))),
        );
        return None;
    }
    let name = match proportion.of {
        Of::Liquid => format!("{} to one of liquid", item.words),
        Of::Finished => format!("{} in one of finished", item.words),
    };
    let share = at.work.given(name, &ONE, proportion.share, false, span);
    at.sweet_given.get_or_insert(share);
    Some(match (proportion.by, proportion.of) {
        (By::Volume, Of::Liquid) => {
            (Some(at.work.work(item.words.as_str(), ShareOfVolume { share, whole: liquid })), None)
        }
        (By::Volume, Of::Finished) => {
            (Some(at.work.work(item.words.as_str(), OfFinishedVolume { liquid, share })), None)
        }
        (By::Weight, of) => {
            let density = at.work.figure(&WATER_DENSITY);
            let whole = at.work.work("weight of the liquid", Weigh { volume: liquid, density });
            let weight = match of {
                Of::Liquid => at.work.work(weighed(item), ShareOfWeight { share, whole }),
                Of::Finished => at.work.work(weighed(item), OfFinishedWeight { liquid: whole, share }),
            };
            (None, Some(weight))
        }
    })
}

fn part(proportion: &Proportion) -> String {
    crate::measure::decimal(proportion.share * 100.0, 0) + " %"
}

/// The density an item is measured by: honey's follows its water.
pub(super) fn density(at: &mut Laying, item: &Item) -> Line {
    if item.is_honey() {
        let moisture = honey_moisture(at, item);
        let water = at.work.figure(&WATER_DENSITY);
        return at.work.work(format!("density of the {}", item.words), HoneyDensity { moisture, water });
    }
    match &item.density {
        Some(density) => at.work.fact(density),
        None => at.work.figure(&WATER_DENSITY),
    }
}

/// The share of water in an item; none where there is none to speak of.
pub(super) fn water(at: &mut Laying, item: &Item) -> Option<Line> {
    if item.is_honey() {
        return Some(honey_moisture(at, item));
    }
    item.water.as_ref().map(|water| at.work.fact(water))
}

/// Water in the honey: as the recipe says, else as the kitchen measured it, else as the honey's own page says.
fn honey_moisture(at: &mut Laying, item: &Item) -> Line {
    match &item.water {
        Some(own @ Fact::Own { .. }) if !at.knows(&HONEY_MOISTURE) => at.work.fact(own),
        _ => at.assume(&HONEY_MOISTURE),
    }
}

/// A measured amount of sweetener, noted as what a target may move.
fn given(at: &mut Laying, name: &str, unit: &'static Unit, amount: &Amount, span: Span) -> Line {
    let line = at.declared(name, unit, amount, true, span);
    at.sweet_given.get_or_insert(line);
    at.poured = Some(line);
    line
}
