//! Parting the liquid from the marc: what is held back, what runs through, what passed on.

use super::{InPan, Laying, Level, Say, add_volumes, add_weights, words};
use crate::bibliography::Source;
use crate::formula::Line;
use crate::formula::catalogue::dose::PassedOn;
use crate::formula::catalogue::pan::{Hold, HoldBack, Lose, Passed};
use crate::materia::{DRAINED, PLANT_HOLDS, PRESSED, SQUEEZED, STRAINING};
use crate::measure::{Form, unit::ML_PER_G};
use crate::recipe::Hand;
use crate::span::Span;
use crate::working::Id;

pub(super) fn lay(at: &mut Laying, span: Span, hand: Hand) {
    if at.strained {
        at.order(
            span,
            "the liquid is strained twice",
            "after the first straining there is no marc in the pan",
            "one `strain`; say in the text how many cloths it goes through",
        );
        return;
    }
    if at.put_in.is_empty() || at.plants.is_empty() {
        return;
    }
    let kept = (0..at.plants.len()).map(|n| keep(at, n)).collect();
    let how_wet = at.assume(match hand {
        Hand::Drained => &DRAINED,
        Hand::Squeezed => &SQUEEZED,
        Hand::Pressed => &PRESSED,
    });
    let held = at.work.work("held back", HoldBack { how_wet, kept });
    at.work.claim(Id::HeldBack, held);
    let put_in = add_volumes(&mut at.work, "liquid in all", at.put_in.clone());
    let mut losses = Vec::new();
    let boiled = at.boiled.clone();
    if !boiled.is_empty() {
        let boiled = add_volumes(&mut at.work, "boiled off in all", boiled);
        at.work.claim(Id::BoiledOff, boiled);
        losses.push(boiled);
    }
    // What stood in the pan before straining: the share that runs through is counted against it.
    let in_pan = if losses.is_empty() {
        put_in
    } else {
        at.work.work("in the pan before straining", Lose { before: put_in, losses: losses.clone() })
    };
    losses.push(held);
    let strained = at.work.work("strained", Lose { before: put_in, losses });
    at.work.claim(Id::Strained, strained);
    at.work.measurable(strained);
    let share = at.work.work("share that passed on", Passed { after: strained, before: in_pan });
    let plants: Vec<Line> = at.plants.iter().map(|in_pan| in_pan.weight).collect();
    let all = add_weights(&mut at.work, "plants in all", plants);
    let passed = at.work.work("plant in the liquid", PassedOn { plants: all, share });
    at.passed_on.push(passed);
    let minutes = at.allowance(&STRAINING, false);
    let plants = at.plant_words();
    let how = match hand {
        Hand::Drained => "Strain through a cloth and let it drain without squeezing. ",
        Hand::Squeezed => "Strain through a cloth and wring it out well. ",
        Hand::Pressed => "Strain through a press cloth and press it out. ",
    };
    at.need(if hand == Hand::Pressed { "a press and its cloth" } else { "a straining cloth" });
    let say = vec![
        words(how),
        Say::Strong("Write down what you have."),
        words(" It should be about "),
        Say::Volume(strained),
        words("."),
    ];
    at.strained = true;
    at.volume = Some(strained);
    if at.batch.is_water() {
        at.batch = crate::batch::Batch::of_water(strained);
    } else {
        at.batch.keep(share, "the strained", &mut at.work);
    }
    let (liquid, sweet) = at.batch.layers();
    let level = Level {
        words: "Strain",
        volume: strained,
        liquid,
        sweet,
        kept: Some(held),
        gone: None,
        change: vec![Say::Volume(held), words(format!(" kept by the {plants}"))],
    };
    at.finish_step("strain", say, vec![minutes], String::new(), Some(level));
}

/// What one plant keeps back when squeezed, from its page or assumed.
fn keep(at: &mut Laying, n: usize) -> Line {
    let InPan { plant, form, weight } = at.plants[n];
    let figures = plant.form(form);
    let words = format!("a gram of {} keeps", plant.words);
    let each_gram_keeps = match figures.and_then(|figures| figures.holds.clone()) {
        Some(holds) => at.work.published(words, plant.id.clone(), &ML_PER_G, holds.value, holds.source),
        // A fresh plant comes full: it keeps about as much water as it brings.
        None if form == Form::Fresh => {
            let moisture =
                figures.and_then(|figures| figures.moisture.as_ref()).map_or(0.0, |cited| cited.value);
            let custom = Source::practice("a fresh plant keeps about as much water as it brings");
            at.work.published(words, plant.id.clone(), &ML_PER_G, moisture, custom)
        }
        None => at.assume(&PLANT_HOLDS),
    };
    at.work.work(format!("kept by the {}", plant.words), Hold { each_gram_keeps, plant: weight })
}
