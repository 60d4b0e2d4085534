//! What is put in at the start: the plants and the water.

use super::put_in_each::PutIn;
use super::{InPan, Ingredient, Laying, add_weights, liquid};
use crate::diagnostic::{Code, Finding, nearest};
use crate::formula::Line;
use crate::formula::catalogue::pan::{AsDried, MeasureOut, PartOf, PlantWater, WeighByCup, WeighByPiece};
use crate::formulary::Plant;
use crate::materia::{DRIED_MOISTURE, WATER_DENSITY};
use crate::measure::unit::{G, G_PER_ML, ML, ONE, PER_CENT};
use crate::measure::{Dimension, Form, Measure};
use crate::recipe::{Menstruum, PlantUse};
use crate::span::Span;
use crate::working::Id;

pub(super) fn lay(at: &mut Laying) {
    let uses: &[PlantUse] = &at.recipe.plants;
    plants(at, uses);
    if at.marc.plants.is_empty() {
        return;
    }
    at.claim_plants();
    at.marc.at_first = at.work.line(Id::Plants);
    if at.recipe.liquid.is_none() {
        return;
    }
    let Some(volume) = liquid::lay(at) else { return };
    at.marc.put_in.insert(0, volume);
    at.volume = Some(volume);
    at.need("scales");
    at.need("a measuring jug marked in millilitres");
}

/// Puts plants into the pan: each weighed, a fresh one with the water it brings.
pub(super) fn plants(at: &mut Laying, uses: &[PlantUse]) {
    for used in uses {
        if at.book.faulty.contains(&used.plant.value) {
            at.faulty = true;
            continue;
        }
        let Some(plant) = at.book.plants.get(&used.plant.value) else {
            let known = at.book.plants.keys().map(String::as_str);
            let mut finding = Finding::error(
                Code::UnknownName,
                used.plant.span,
                format!("the book has no plant `{}`", used.plant.value),
            )
            .why("a recipe takes its cautions and its figures from the plant's page");
            finding = match nearest(&used.plant.value, known) {
                Some(near) => finding.write(near),
                None => finding.write(format!("a page plants/{}.md", used.plant.value)),
            };
            at.findings.push(finding);
            continue;
        };
        if let Some(weight) = weigh(at, plant, used) {
            let form = used.amount.value.form;
            at.ingredients.push(Ingredient {
                plant: Some(plant.id.clone()),
                form: Some(form),
                weight: Some(weight),
                written: Some(used.amount.value.amount.written.clone()),
                ..Ingredient::named(plant.words.clone())
            });
            at.note_plants(vec![plant.id.clone()]);
            at.marc.weights.push(weight);
            // A dried plant's few per cent of water are left out in watery liquids; in honey they count.
            let honey = at.recipe.menstruum() == Some(Menstruum::Honey) || at.batch.holds_honey();
            let water = match form {
                Form::Dried if !honey => None,
                _ => own_water(at, plant, form, weight, used.amount.span),
            };
            let span = used.amount.span;
            at.put_in.push(PutIn {
                plant: plant.id.clone(),
                form,
                weight,
                at: span,
                boiled: Some(Vec::new()),
            });
            at.marc.plants.push(InPan { plant, form, weight, at: span, water });
        }
    }
}

fn weigh(at: &mut Laying, plant: &Plant, used: &PlantUse) -> Option<Line> {
    let PlantUse { amount, .. } = used;
    let (amount, form, span) = (&amount.value.amount, amount.value.form, amount.span);
    if plant.form(form).is_none() {
        at.findings.push(
            Finding::error(
                Code::FreshOrDried,
                span,
                format!("the page of {} has no figures for it when {form}", plant.words),
            )
            .why("how much liquid it keeps and how much water is in it differ, fresh and dried")
            .write(format!("{form}: {{moisture: 10 %, source: common practice}} in plants/{}.md", plant.id)),
        );
        return None;
    }
    if amount.dimension() == Dimension::MASS {
        return Some(at.declared(&plant.words, &G, amount, true, span));
    }
    if amount.measure == Measure::Part {
        return part(at, plant, span);
    }
    if amount.dimension() == Dimension::COUNT {
        return by_piece(at, plant, used);
    }
    let Some(bulk) = plant.form(form).and_then(|form| form.bulk()) else {
        at.findings.push(
            Finding::error(
                Code::NoBasis,
                span,
                format!("what a cup of {form} {} weighs is not on its page", plant.words),
            )
            .why("a cup of herb weighs from 10 to 130 g, by the plant and the cut")
            .write(format!("a weight, such as `50 g {form}`"))
            .write(format!("cup: ... under `{form}` in plants/{}.md", plant.id)),
        );
        return None;
    };
    let volume = at.declared(&format!("{}, by the cup", plant.words), &ML, amount, true, span);
    let bulk = at.work.published(
        format!("weight of a millilitre of {}", plant.words),
        plant.id.clone(),
        &G_PER_ML,
        bulk.value,
        bulk.source,
    );
    Some(at.work.work(plant.words.as_str(), WeighByCup { volume, bulk }))
}

/// Weighed by the stick, the slice or the pod.
fn by_piece(at: &mut Laying, plant: &Plant, used: &PlantUse) -> Option<Line> {
    let (amount, form, span) = (&used.amount.value.amount, used.amount.value.form, used.amount.span);
    let word = amount.measure.text();
    let Some(weighs) = plant.form(form).and_then(|form| form.piece(amount.measure)) else {
        let message = format!("what a {word} of {form} {} weighs is not on its page", plant.words);
        at.findings.push(
            Finding::error(Code::NoBasis, span, message)
                .why("a working weighs the plants; sticks and pods come in all sizes")
                .write(format!("a weight, such as `5 g {form}`"))
                .write(format!("{word}: ... under `{form}` in plants/{}.md", plant.id)),
        );
        return None;
    };
    let count = at.declared(&format!("{}, by the {word}", plant.words), &ONE, amount, true, span);
    let name = format!("weight of a {word} of {}", plant.words);
    let piece = at.work.published(name, plant.id.clone(), &G, weighs.value, weighs.source.clone());
    Some(at.work.work(plant.words.as_str(), WeighByPiece { count, piece }))
}

/// A plant's part of what the parts weigh together.
fn part(at: &mut Laying, plant: &Plant, span: Span) -> Option<Line> {
    if at.parts.is_none() {
        at.parts = Some(parts(at, span)?);
    }
    let (whole, parts) = at.parts.clone()?;
    let part = parts.iter().find(|(of, _)| *of == span).map(|(_, part)| *part)?;
    let parts = parts.into_iter().map(|(_, part)| part).collect();
    Some(at.work.work(plant.words.as_str(), PartOf { whole, part, parts }))
}

/// What the parts weigh together, and how many parts each plant is.
fn parts(at: &mut Laying, span: Span) -> Option<(Line, Vec<(Span, Line)>)> {
    let recipe = at.recipe;
    let Some(weight) = &recipe.weight else {
        at.findings.push(
            Finding::error(Code::NoBasis, span, "what the parts weigh together is not said")
                .why("parts go by weight, and a weight can be bought and mixed")
                .write("weight: 340 g"),
        );
        return None;
    };
    let whole = at.declared("plants together", &G, &weight.value, true, weight.span);
    let added = recipe.method.iter().flat_map(|step| step.value.adds());
    let mut parts = Vec::new();
    for used in recipe.plants.iter().chain(added) {
        let amount = &used.amount;
        if amount.value.amount.measure != Measure::Part {
            continue;
        }
        let name = at
            .book
            .plants
            .get(&used.plant.value)
            .map_or(used.plant.value.clone(), |plant| plant.words.clone());
        let part = at.declared(&format!("parts of {name}"), &ONE, &amount.value.amount, false, amount.span);
        parts.push((amount.span, part));
    }
    Some((whole, parts))
}

/// The water a plant brings joins what is put in; gives its weight. Of a dried plant it is assumed where its page
/// does not say.
fn own_water(at: &mut Laying, plant: &Plant, form: Form, weight: Line, span: Span) -> Option<Line> {
    let known = plant.form(form).is_some_and(|figures| figures.moisture.is_some());
    let moisture = match form {
        Form::Dried if !known => at.assume(&DRIED_MOISTURE),
        _ => moisture(at, plant, form, span)?,
    };
    let water = at.work.work(format!("water in the {}", plant.words), PlantWater { plant: weight, moisture });
    let density = at.work.figure(&WATER_DENSITY);
    let volume =
        at.work.work(format!("water from the {}", plant.words), MeasureOut { weight: water, density });
    at.marc.put_in.push(volume);
    at.batch.add_water(volume);
    Some(water)
}

/// The moisture of a plant in a form, from its page.
pub(super) fn moisture(at: &mut Laying, plant: &Plant, form: Form, span: Span) -> Option<Line> {
    let Some(moisture) = plant.form(form).and_then(|form| form.moisture.clone()) else {
        at.findings.push(
            Finding::error(
                Code::FreshOrDried,
                span,
                format!("the moisture of {form} {} is not on its page", plant.words),
            )
            .why("a fresh plant brings its own water into the pan")
            .write(format!("{form}: {{moisture: 80 %, source: ...}} in plants/{}.md", plant.id)),
        );
        return None;
    };
    Some(at.work.published(
        format!("moisture of {form} {}", plant.words),
        plant.id.clone(),
        &PER_CENT,
        moisture.value,
        moisture.source,
    ))
}

/// The weight a ratio counts: as it stands, or fresh plants as what they would weigh dried.
pub(super) fn counted(at: &mut Laying, of: Form, span: Span) -> Option<Line> {
    let mut each = Vec::new();
    for n in 0..at.marc.plants.len() {
        let InPan { plant, form, weight, .. } = at.marc.plants[n];
        if of == Form::Dried && form == Form::Fresh {
            let fresh_moisture = moisture(at, plant, Form::Fresh, span)?;
            let dried_moisture = moisture(at, plant, Form::Dried, span)?;
            let by = AsDried { fresh: weight, fresh_moisture, dried_moisture };
            each.push(at.work.work(format!("{} as dried", plant.words), by));
        } else {
            each.push(weight);
        }
    }
    Some(add_weights(&mut at.work, "plants the ratio counts", each))
}
