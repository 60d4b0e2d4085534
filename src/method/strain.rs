//! Parting the liquid from the marc: what is held back, what runs through, what passed on.

use super::{InPan, Kept, Laying, Level, Say, add_volumes, add_weights, words};
use crate::batch::Batch;
use crate::bibliography::Source;
use crate::formula::Line;
use crate::formula::catalogue::composition::Rest;
use crate::formula::catalogue::dose::PassedOn;
use crate::formula::catalogue::pan::{Hold, HoldBack, Lose, Passed};
use crate::formula::catalogue::sweeten::TakesUp;
use crate::materia::{
    Assumption, DRAINED, HONEY_HELD, OIL_HELD, PLANT_HOLDS, POWDER_TAKES_UP, PRESSED, SQUEEZED, STRAINING,
};
use crate::measure::{Form, unit::ML_PER_G};
use crate::recipe::{Hand, Menstruum};
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
    if at.marc.put_in.is_empty() || at.marc.plants.is_empty() {
        return;
    }
    let in_pan = in_pan(at);
    boiled_off_the_batch(at, in_pan);
    if hand == Hand::Not {
        leave_in(at, span, in_pan);
        return;
    }
    let held = held_back(
        at,
        match hand {
            Hand::Drained => &DRAINED,
            Hand::Squeezed | Hand::Not => &SQUEEZED,
            Hand::Pressed => &PRESSED,
        },
    );
    let put_in = put_in_all(at);
    let mut losses = Vec::new();
    if !at.marc.boiled.is_empty() {
        losses.push(add_volumes(&mut at.work, BOILED, at.marc.boiled.clone()));
    }
    losses.push(held);
    let run = at.work.work("strained", Lose { before: put_in, losses });
    let share = at.work.work("share that passed on", Passed { after: run, before: in_pan });
    let mut kept = pass_on(at, share, held);
    if at.batch.is_water() {
        at.batch = Batch::of_water(run);
    } else {
        at.batch.keep(share, "the strained", &mut at.work);
    }
    let strained = join_the_first(at, run, &mut kept);
    at.marc.kept = Some(kept);
    at.work.claim(Id::Strained, strained);
    at.work.measurable(strained);
    let minutes = at.allowance(&STRAINING, false);
    let plants = at.plant_words();
    let how = match hand {
        Hand::Drained => "Strain through a cloth and let it drain without squeezing. ",
        Hand::Pressed => "Strain through a press cloth and press it out. ",
        Hand::Squeezed | Hand::Not => "Strain through a cloth and wring it out well. ",
    };
    at.need(if hand == Hand::Pressed { "a press and its cloth" } else { "a straining cloth" });
    let mut say = vec![words(how), Say::Strong("Write down what you have.")];
    if strained == run {
        say.extend([words(" It should be "), Say::About(run), words(".")]);
    } else {
        let all = [
            words(" It should be "),
            Say::About(run),
            words(". Pour it to what was strained before, and it is "),
            Say::About(strained),
            words(" in all."),
        ];
        say.extend(all);
    }
    at.strained = true;
    at.marc.spent = std::mem::take(&mut at.marc.plants);
    at.marc.put_in.clear();
    let boiled = std::mem::take(&mut at.marc.boiled);
    at.marc.boiled_before.extend(boiled);
    at.volume = Some(strained);
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

const BOILED: &str = "boiled off in all";

fn put_in_all(at: &mut Laying) -> Line {
    add_volumes(&mut at.work, "liquid in all", at.marc.put_in.clone())
}

/// What stands in the pan before straining: put in, less what boiled off since.
fn in_pan(at: &mut Laying) -> Line {
    let put_in = put_in_all(at);
    if at.marc.boiled.is_empty() {
        return put_in;
    }
    let boiled = add_volumes(&mut at.work, BOILED, at.marc.boiled.clone());
    let ever = at.marc.boiled_before.iter().chain(&at.marc.boiled).copied().collect();
    let ever = add_volumes(&mut at.work, BOILED, ever);
    at.work.claim(Id::BoiledOff, ever);
    at.work.work("in the pan before straining", Lose { before: put_in, losses: vec![boiled] })
}

/// What is in the pan after the boiling. From water and syrups water leaves; what leaves vinegar is nearly as sour
/// as the vinegar, so none of its acid is counted as staying behind.
fn boiled_off_the_batch(at: &mut Laying, in_pan: Line) {
    if at.marc.boiled.is_empty() {
        return;
    }
    if at.batch.is_water() {
        at.batch = Batch::of_water(in_pan);
    } else if at.batch.holds_vinegar() {
        let before = put_in_all(at);
        let share = at.work.work("share that boiling left", Passed { after: in_pan, before });
        at.batch.keep(share, "the pan", &mut at.work);
    } else {
        let boiled = add_volumes(&mut at.work, BOILED, at.marc.boiled.clone());
        at.batch.boil_off(boiled);
    }
}

/// The share of the plants' strength that runs through, and what is left for fresh water to take.
fn pass_on(at: &mut Laying, share: Line, held: Line) -> Kept {
    let mut washed = at.passed_on.clone();
    for line in &mut at.passed_on {
        *line = at.work.work("plant from before", PassedOn { plants: *line, share });
    }
    let can_give = at.marc.can_give.take().unwrap_or_else(|| {
        let weights: Vec<Line> = at.marc.plants.iter().map(|in_pan| in_pan.weight).collect();
        add_weights(&mut at.work, "plants in the pan", weights)
    });
    let passed = at.work.work("plant in the liquid", PassedOn { plants: can_give, share });
    at.passed_on.push(passed);
    washed.push(can_give);
    Kept { held, can_give, washed }
}

/// The liquid of an earlier straining joins this one.
fn join_the_first(at: &mut Laying, run: Line, kept: &mut Kept) -> Line {
    let Some(first) = at.marc.aside.take() else { return run };
    at.batch.pour_in(first.batch);
    kept.washed.splice(0..0, first.passed_on.iter().copied());
    at.passed_on.splice(0..0, first.passed_on);
    add_volumes(&mut at.work, "strained, both together", vec![first.volume, run])
}

/// Nothing is strained: the plants stay in, with all they have.
fn leave_in(at: &mut Laying, span: Span, in_pan: Line) {
    if at.marc.aside.is_some() || !at.passed_on.is_empty() {
        at.order(
            span,
            "the plants are to stay in a liquid that was strained before",
            "the plants that it was strained from are gone; only those put in since could stay",
            "- strain: squeezed",
        );
        return;
    }
    let thick = matches!(at.recipe.menstruum(), Some(Menstruum::Honey | Menstruum::Glycerin));
    for n in 0..at.marc.plants.len() {
        let InPan { plant, weight, water, .. } = at.marc.plants[n];
        at.passed_on.push(weight);
        let dry = match water {
            Some(part) => {
                at.work.work(format!("{} without their water", plant.words), Rest { whole: weight, part })
            }
            None => weight,
        };
        // In a thin liquid powder sinks and swells, and the jug shows the liquid.
        let volume = thick.then(|| {
            let each_gram = at.assume(&POWDER_TAKES_UP);
            at.work.work(format!("{} in the paste", plant.words), TakesUp { weight: dry, each_gram })
        });
        at.batch.leave_in(dry, volume);
    }
    let poured = at.volume.unwrap_or(in_pan);
    let volume = if thick { at.batch.volume("with the plants in it", &mut at.work) } else { in_pan };
    at.strained = true;
    at.volume = Some(volume);
    let plants = at.plant_words();
    at.marc.left_in = std::mem::take(&mut at.marc.plants);
    let say = match thick && at.done.is_empty() {
        true => vec![
            words(format!("Stir the powdered {plants} into ")),
            Say::Volume(poured),
            words(format!(" of {}, a little at a time. Nothing is strained.", at.cold_liquid())),
        ],
        false => vec![words("Do not strain: the plants stay in.")],
    };
    at.finish_step("strain", say, Vec::new(), String::new(), None);
}

/// What the plants in the pan keep back, by how wet the marc is left, mL.
pub(super) fn held_back(at: &mut Laying, how_wet: &'static Assumption) -> Line {
    let kept = (0..at.marc.plants.len()).map(|n| keep(at, n)).collect();
    let how_wet = at.assume(how_wet);
    let held = at.work.work("held back", HoldBack { how_wet, kept });
    at.work.claim(Id::HeldBack, held);
    held
}

/// What one plant keeps back when squeezed, from its page or assumed. Oil and honey are kept less than water.
fn keep(at: &mut Laying, n: usize) -> Line {
    let InPan { plant, form, weight, .. } = at.marc.plants[n];
    let figures = plant.form(form);
    let (own, guess) = match at.recipe.menstruum() {
        _ if at.batch.holds_oil() => (figures.and_then(|figures| figures.holds_oil.clone()), &OIL_HELD),
        Some(Menstruum::Honey) => (figures.and_then(|figures| figures.holds_honey.clone()), &HONEY_HELD),
        _ => (figures.and_then(|figures| figures.holds.clone()), &PLANT_HOLDS),
    };
    let words = format!("a gram of {} keeps", plant.words);
    let each_gram_keeps = match own {
        Some(holds) => at.work.published(words, plant.id.clone(), &ML_PER_G, holds.value, holds.source),
        // A fresh plant comes full: it keeps about as much water as it brings.
        None if form == Form::Fresh => {
            let moisture =
                figures.and_then(|figures| figures.moisture.as_ref()).map_or(0.0, |cited| cited.value);
            let custom = Source::practice("a fresh plant keeps about as much water as it brings");
            at.work.published(words, plant.id.clone(), &ML_PER_G, moisture, custom)
        }
        None => at.assume(guess),
    };
    at.work.work(format!("kept by the {}", plant.words), Hold { each_gram_keeps, plant: weight })
}
