//! Amounts for a wanted result: a row each, the recipe's own batch first.

use super::show::{capital, duration, plainly, size_of};
use super::view::{Cell, Head, PartLink, VariationRow, Variations};
use crate::formula::Line;
use crate::measure::kitchen::{self, Close, Toward};
use crate::method::Ingredient;
use crate::variation::{Worked, WorkedRecipe};
use crate::wanted;
use crate::working::Id;

/// The table; none where nothing is wanted, or nothing can be had.
pub fn wanted(worked: &WorkedRecipe, part: PartLink) -> Option<Variations> {
    let base = &worked.base;
    let mut all = vec![("As above".to_string(), base.clone(), 1.0)];
    for wanted in &worked.recipe.wanted {
        let scaled = wanted::worked(base, &wanted.value).ok()?;
        all.push((capital(&wanted.value.written), scaled, wanted.value.pots));
    }
    if all.len() == 1 {
        return None;
    }
    let ingredients = &base.laid.ingredients;
    let made = [Id::Bottles, Id::Pieces, Id::Area, Id::Finished, Id::FinishedWeight]
        .into_iter()
        .filter(|id| base.value(*id).is_some())
        .take(2);
    let made: Vec<(Id, String)> = made
        .map(|id| match id {
            Id::Bottles => {
                let vessel = base.laid.preparation.map_or("Bottles", |kind| kind.vessel.heading());
                let size =
                    size_of(base, id).map_or(String::new(), |size| format!(" of {}", plainly(base, size)));
                (id, vessel.to_string() + &size)
            }
            Id::Pieces => (id, "Pieces".into()),
            Id::Area => (id, "Covers".into()),
            Id::Finished => (id, "Made".into()),
            _ => (id, "Weight".into()),
        })
        .collect();
    let mut heads: Vec<Head> = Vec::new();
    let mut head = |text: String, group: bool, words: bool| {
        heads.push(Head { short: text.clone(), text, group, words });
    };
    ingredients.iter().for_each(|ingredient| head(capital(&ingredient.words), false, false));
    made.iter().for_each(|(_, text)| head(text.clone(), true, false));
    head("Ready in".to_string(), true, true);
    let rows = all.iter().enumerate().map(|(n, (name, scaled, pots))| {
        let mut texts: Vec<[String; 2]> =
            ingredients.iter().map(|ingredient| amount(scaled, ingredient)).collect();
        texts.extend(made.iter().map(|(id, _)| [result(scaled, *id), String::new()]));
        texts.push([scaled.value(Id::Minutes).map_or(String::new(), duration), String::new()]);
        let cells = texts.into_iter().zip(&heads).map(|([text, us], head)| Cell {
            text,
            us,
            label: head.short.clone(),
            ..Cell::default()
        });
        // One pot's amounts stand in the row: that is what is put in at once.
        let change = match *pots {
            1.0 => String::new(),
            pots => format!("each of {} pots", crate::measure::decimal(pots, 0)),
        };
        VariationRow { name: name.clone(), base: n == 0, change, cells: cells.collect() }
    });
    let caption = "What to put in for so much in the end. What boils off and how long it takes do not grow with the \
                   batch, so these are worked, not multiplied.";
    Some(Variations { part, caption: caption.to_string(), rows: rows.collect(), heads: heads.clone() })
}

/// What is taken of it, metric and as a kitchen with US measures has it.
fn amount(worked: &Worked, ingredient: &Ingredient) -> [String; 2] {
    let toward = if ingredient.keeps { Toward::Up } else { Toward::Nearest };
    let close = if ingredient.keeps { Close::Two } else { Close::Five };
    if let Some(weight) = ingredient.weight {
        let g = worked.at(weight);
        let us = kitchen::mass_us(g, close, toward).map_or_else(|| kitchen::oz(g), |found| found.text);
        return [plainly(worked, weight), us];
    }
    let both = |volume: Line| {
        let ml = worked.at(volume);
        let us = kitchen::volume_us(ml, close, toward).map_or_else(|| kitchen::fl_oz(ml), |found| found.text);
        [plainly(worked, volume), us]
    };
    ingredient.volume.map_or_else(Default::default, both)
}

fn result(worked: &Worked, id: Id) -> String {
    let Some(line) = worked.laid.working.line(id) else { return String::new() };
    match id {
        Id::Bottles | Id::Pieces => crate::measure::decimal(crate::measure::whole(worked.at(line)), 0),
        _ => plainly(worked, line),
    }
}
