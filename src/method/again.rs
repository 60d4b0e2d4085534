//! A marc used again: water poured through it, or fresh water put on it.

use super::{Aside, Ingredient, Kept, Laying, Level, Say, words};
use crate::batch::Batch;
use crate::formula::catalogue::pan::{Away, LoseWeight};
use crate::measure::{Amount, unit::ML};
use crate::span::{Span, Spanned};
use crate::working::Id;

/// Water poured through the marc until there is so much: what the marc kept is washed out into it.
pub(super) fn make_up(at: &mut Laying, span: Span, to: &Spanned<Amount>) {
    let (Some(strained), Some(kept)) = (at.volume, at.marc.kept.clone()) else {
        not_strained(at, span, "make up");
        return;
    };
    if !at.batch.is_water() {
        at.order(
            span,
            "water would be poured through the marc into something other than water",
            "it would thin what keeps it",
            "- make up: ... directly after the straining of an infusion or a decoction",
        );
        return;
    }
    let full = at.declared("made up to", &ML, &to.value, true, to.span);
    let poured = at.work.work("water poured through the marc", Away { before: full, after: strained });
    // The marc then keeps water, and nothing else.
    at.passed_on = kept.washed;
    at.batch = Batch::of_water(full);
    at.volume = Some(full);
    let level = Level {
        words: "Make up",
        volume: full,
        liquid: vec![full],
        sweet: Vec::new(),
        kept: None,
        gone: None,
        change: vec![Say::Volume(poured), words(" poured through")],
    };
    let say = vec![
        words("Pour fresh water slowly through the marc in its cloth, about "),
        Say::Volume(poured),
        words(", until there is "),
        Say::Volume(full),
        words(" in the jug."),
    ];
    at.finish_step("make up", say, Vec::new(), String::new(), Some(level));
}

/// Fresh water on the marc; the first liquid stands by until this one is strained too.
pub(super) fn pour(at: &mut Laying, span: Span, water: &Spanned<Amount>) {
    let (Some(volume), Some(Kept { held, can_give, .. })) = (at.volume, at.marc.kept.clone()) else {
        not_strained(at, span, "pour again");
        return;
    };
    if !at.strains_later() {
        at.order(
            span,
            "the second water is never strained",
            "what is finished is what runs through the cloth",
            "- strain: squeezed",
        );
        return;
    }
    if !at.batch.is_water() {
        at.order(
            span,
            "water is poured on a marc that came out of something other than water",
            "it would thin what keeps it",
            "- pour again: ... directly after the straining of a decoction",
        );
        return;
    }
    let fresh = at.declared("fresh water", &ML, &water.value, true, water.span);
    if let Some(first) = at.work.line(Id::Water) {
        let both = super::add_volumes(&mut at.work, "water, both times", vec![first, fresh]);
        at.work.claim(Id::Water, both);
    }
    let passed_on = std::mem::take(&mut at.passed_on);
    if let Some(passed) = passed_on.last() {
        let left = LoseWeight { before: can_give, losses: vec![*passed] };
        at.marc.can_give = Some(at.work.work("plant still in the marc", left));
    }
    at.marc.aside = Some(Aside { batch: std::mem::take(&mut at.batch), volume, passed_on });
    at.marc.plants = std::mem::take(&mut at.marc.spent);
    at.marc.put_in = vec![held, fresh];
    let in_pan = super::add_volumes(&mut at.work, "on the marc", vec![held, fresh]);
    at.batch = Batch::of_water(in_pan);
    at.volume = Some(in_pan);
    at.strained = false;
    at.to_pour = Some(fresh);
    at.hot = false;
    at.off_heat = false;
    at.ingredients.push(Ingredient {
        volume: Some(fresh),
        written: Some(water.value.written.clone()),
        ..Ingredient::named("water, for the second time")
    });
    let plants = at.plant_words();
    let say =
        vec![words(format!("Keep what was strained by itself, and put the {plants} back into the pan."))];
    at.finish_step("pour again", say, Vec::new(), String::new(), None);
}

fn not_strained(at: &mut Laying, span: Span, name: &str) {
    let message = format!("`{name}` does not follow a straining");
    let why = "it uses the marc that the straining has just left in the cloth";
    at.order(span, message, why, &format!("- strain: squeezed and then - {name}: ..."));
}
