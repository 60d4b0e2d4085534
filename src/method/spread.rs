//! Plants laid on skin, so thick: the area they cover.

use super::{Laying, Say, add_volumes, add_weights, words};
use crate::diagnostic::{Code, Finding};
use crate::formula::catalogue::pan::{Covers, MeasureOut};
use crate::materia::LAYING_ON;
use crate::measure::{
    Amount,
    unit::{G_PER_ML, MM},
};
use crate::span::{Span, Spanned};
use crate::working::Id;

pub(super) fn lay(at: &mut Laying, span: Span, thick: &Spanned<Amount>) {
    let plants = if !at.marc.left_in.is_empty() { at.marc.left_in.clone() } else { at.marc.plants.clone() };
    if plants.is_empty() {
        return;
    }
    if at.volume.is_some() && at.marc.left_in.is_empty() {
        at.order(
            span,
            "what is spread is not the plants",
            "a poultice is the plants themselves; a cloth in their liquid is a compress",
            "- strain: not before - spread: 6 mm",
        );
        return;
    }
    let names: Vec<&str> = plants.iter().map(|in_pan| in_pan.plant.words.as_str()).collect();
    let named = super::list_of(&names);
    let mut volumes = Vec::new();
    for in_pan in &plants {
        let Some(bulk) = in_pan.plant.form(in_pan.form).and_then(|form| form.bulk()) else {
            at.findings.push(
                Finding::error(
                    Code::NoBasis,
                    span,
                    format!("what a cup of {} {} weighs is not on its page", in_pan.form, in_pan.plant.words),
                )
                .why("how far it covers comes from its room, and that from the weight of a cup")
                .write(format!("cup: ... under `{}` in plants/{}.md", in_pan.form, in_pan.plant.id)),
            );
            return;
        };
        let words = format!("weight of a millilitre of {}", in_pan.plant.words);
        let density = at.work.published(words, in_pan.plant.id.clone(), &G_PER_ML, bulk.value, bulk.source);
        let by = MeasureOut { weight: in_pan.weight, density };
        volumes.push(at.work.work(format!("{}, by the cup", in_pan.plant.words), by));
    }
    let volume = add_volumes(&mut at.work, "room the plants take up", volumes);
    at.work.claim(Id::Room, volume);
    let thickness = at.declared("laid on", &MM, &thick.value, false, thick.span);
    let area = at.work.work("skin covered", Covers { volume, thickness });
    at.work.claim(Id::Area, area);
    let mut weights: Vec<_> = plants.iter().map(|in_pan| in_pan.weight).collect();
    if at.volume.take().is_some() {
        weights = vec![at.batch.weight("plants with their water", &mut at.work)];
    } else {
        at.passed_on.append(&mut at.marc.weights.clone());
    }
    at.dough.dry = Some(add_weights(&mut at.work, "laid on, weighed", weights));
    at.closed = Some("spread");
    at.strained = true;
    at.need("a clean cloth");
    let minutes = at.allowance(&LAYING_ON, false);
    let say = vec![
        words(format!("Mash the {named}, spread it on a cloth ")),
        words(thick.value.written.clone()),
        words(" thick, lay it on whole skin and cover it: enough for "),
        Say::Area(area),
        words("."),
    ];
    at.finish_step("spread", say, vec![minutes], String::new(), None);
}
