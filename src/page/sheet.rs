//! A recipe for paper: what a handout, a card and a jar's label need of it, taken from its page's own view.

use super::label::company_rows;
use super::ledger::every;
use super::view::{Recipe, Sheet, Weighed};
use crate::formulary::Formulary;
use crate::keeping::judge;
use crate::proportion;
use crate::variation::WorkedRecipe;
use crate::working::Id;

use super::show::plainly;

/// No more labels than these are printed of one recipe.
const MOST_LABELS: usize = 8;
/// And no fewer, so that one may be spoilt.
const LEAST_LABELS: usize = 2;

/// The sheet of a recipe, from its page's view.
pub fn sheet(recipe: &Recipe, worked: &WorkedRecipe, book: &Formulary) -> Sheet {
    let base = &worked.base;
    let rung = judge(base, worked.recipe.ph()).rung;
    let bottles = base.value(Id::Bottles).map_or(LEAST_LABELS, |count| count.floor() as usize);
    let row = |term: &str| recipe.label.iter().find(|row| row.term == term).cloned();
    Sheet {
        id: recipe.id.clone(),
        name: recipe.name.clone(),
        plants: weighed(worked, book),
        proportions: proportion::of(base, &worked.recipe),
        makes: row("Makes").or_else(|| row("Covers")),
        taken: row("Taken"),
        company: company_rows(&recipe.label),
        gathering: recipe.gathering.rows.clone(),
        steps: recipe.order.steps.clone(),
        lines: recipe.ledger.rows.iter().filter(|row| row.closed || row.measurable).cloned().collect(),
        every: every(base),
        blanks: recipe.slate.blanks.clone(),
        cautions: recipe.cautions.rows.iter().filter(|row| row.level != "note").cloned().collect(),
        storage: rung.words.to_string(),
        class: rung.class.to_string(),
        labels: (0..bottles.clamp(LEAST_LABELS, MOST_LABELS)).collect(),
    }
}

/// Plants by their Latin names, the heaviest first, as a label's law of the land usually asks.
fn weighed(worked: &WorkedRecipe, book: &Formulary) -> Vec<Weighed> {
    let base = &worked.base;
    let mut all: Vec<(f64, Weighed)> = base
        .laid
        .ingredients
        .iter()
        .filter_map(|item| {
            let plant = book.plants.get(item.plant.as_ref()?)?;
            let weight = item.weight?;
            let form = item.form.map_or(String::new(), |form| format!("{form} "));
            let weighed = Weighed {
                latin: plant.latin.clone(),
                part: format!("{form}{}", plant.part),
                weight: plainly(base, weight),
            };
            Some((base.at(weight), weighed))
        })
        .collect();
    all.sort_by(|a, b| b.0.total_cmp(&a.0));
    all.into_iter().map(|(_, weighed)| weighed).collect()
}
