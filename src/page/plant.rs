//! A plant's page and the list of plants.

use super::show::cite;
use super::view::{CautionRow, FactRow, Frame, Latin, Link, PlantPage, PlantsPage};
use crate::formulary::{Aromatic, Cited, Formulary, Plant, PlantForm};
use crate::measure::unit::{G, ML_PER_G, PER_CENT};
use crate::measure::{Measure, Unit, show, usual_places};

/// The view of a plant.
pub fn page(frame: Frame, plant: &Plant, prose_html: String, users: Vec<Link>) -> PlantPage {
    let root = frame.root.clone();
    let mut facts = vec![
        fact("Family", plant.family.clone()),
        fact("Part", plant.part.clone()),
        fact(
            "Aromatic",
            match plant.aromatic {
                Aromatic::No => "not: it may be boiled and reduced",
                Aromatic::Lightly => "lightly: brief heat, covered",
                Aromatic::Yes => "strongly: steeped and covered, never boiled long or reduced",
            }
            .to_string(),
        ),
    ];
    for (name, form) in [("dried", &plant.dried), ("fresh", &plant.fresh)] {
        if let Some(form) = form {
            of_form(name, form, &root, &mut facts);
        }
    }
    let cautions = plant.cautions.iter().enumerate().map(|(n, caution)| CautionRow {
        id: format!("caution-{}", n + 1),
        level: if caution.note { "note" } else { "warning" }.to_string(),
        lead: super::recipe::with_stop(&caution.lead),
        text: caution.text.clone(),
        source_html: cite(&caution.source, &root),
    });
    PlantPage {
        latin: Latin { name: plant.latin.clone(), author: plant.author.clone(), part: String::new() },
        facts,
        cautions: cautions.collect(),
        prose_html,
        users,
        frame,
    }
}

fn fact(term: &str, value: String) -> FactRow {
    FactRow { term: term.to_string(), value, source_html: String::new() }
}

fn of_form(name: &str, form: &PlantForm, root: &str, facts: &mut Vec<FactRow>) {
    let mut add = |term: String, cited: &Cited, unit: &Unit, after: &str| {
        let value = show(cited.value, unit, usual_places(cited.value, unit));
        facts.push(FactRow {
            term,
            value: format!("{value}{after}"),
            source_html: cite(&cited.source, root),
        });
    };
    for (of, holds) in [("", &form.holds), ("oil, ", &form.holds_oil), ("honey, ", &form.holds_honey)] {
        if let Some(holds) = holds {
            add(format!("Keeps back, {of}{name}"), holds, &ML_PER_G, ", squeezed by hand");
        }
    }
    for weight in &form.weights {
        add(format!("A {}, {name}", spoon(weight.measure)), &weight.weighs, &G, "");
    }
    if let Some(moisture) = &form.moisture {
        add(format!("Water, {name}"), moisture, &PER_CENT, " by weight");
    }
}

const fn spoon(measure: Measure) -> &'static str {
    match measure {
        Measure::Tsp => "teaspoonful",
        Measure::Tbsp => "tablespoonful",
        _ => "cupful",
    }
}

/// The list of plants, by their names.
pub fn list(frame: Frame, book: &Formulary) -> PlantsPage {
    let plants = book.plants.values().map(|plant| Link {
        text: super::recipe::capital(&plant.words),
        href: format!("plants/{}.html", plant.id),
        current: false,
    });
    PlantsPage { plants: plants.collect(), frame }
}
