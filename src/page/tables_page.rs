//! The tables of ratios, strengths and yields, a page a preparation, and their list.

use super::recipe::caution_rows;
use super::show::capital;
use super::variations;
use super::view::{Frame, Link, PartLink, StageRow, Stages, TablePage, TableRow, TablesPage};
use crate::caution::{self, Seen};
use crate::formulary::Formulary;
use crate::materia::STAGES;
use crate::measure::{decimal, kitchen};
use crate::specimens::{Specimen, stages};

/// The address of a preparation's table, from the site's root.
pub fn address(word: &str) -> String {
    format!("tables/{}.html", word.replace(' ', "-"))
}

/// "Infused oil by ratio".
pub fn title(word: &str) -> String {
    format!("{} by ratio", capital(word))
}

/// The list of tables.
pub fn list(frame: Frame, kitchen: Vec<TableRow>, specimens: &[Specimen]) -> TablesPage {
    let rows = specimens.iter().map(|specimen| TableRow {
        link: Link {
            text: capital(specimen.kind.word),
            href: format!("{}{}", frame.root, address(specimen.kind.word)),
            current: false,
        },
        what: specimen.what.to_string(),
    });
    TablesPage {
        kitchen,
        rows: rows.collect(),
        lead: "One table a preparation, each row worked in full from the same formulas as the recipes. The plants in \
               them are of no particular kind: what a gram keeps is assumed, and your plant's own page knows better."
            .to_string(),
        frame,
    }
}

/// One table.
pub fn page(frame: Frame, specimen: &Specimen, taught: Vec<Link>) -> TablePage {
    let mut table = variations::variations(&specimen.worked, None, PartLink::default()).unwrap_or_default();
    for cell in table.rows.iter_mut().flat_map(|row| &mut row.cells) {
        cell.mark.clear();
    }
    table.caption = match specimen.worked.base.laid.ingredients.iter().any(|item| item.plant.is_some()) {
        true => format!("Worked for {}.", put_in(specimen)),
        false => String::new(),
    };
    let root = frame.root.clone();
    let (base, recipe) = (&specimen.worked.base, &specimen.worked.recipe);
    let cautions =
        caution::cautions(&Seen { worked: base, recipe, book: &Formulary::default(), whole: None });
    TablePage {
        what: specimen.what.to_string(),
        table,
        stages: if specimen.kind.word == "hard drop" { by_altitude() } else { Stages::default() },
        cautions: caution_rows(&cautions, "table", &root),
        closing: caution::CLOSING.to_string(),
        taught,
        frame,
    }
}

/// "20 g of dried leaf", where the rows do not say otherwise.
fn put_in(specimen: &Specimen) -> String {
    let base = &specimen.worked.base;
    let plants: Vec<String> = base
        .laid
        .ingredients
        .iter()
        .filter_map(|item| {
            let (form, weight) = (item.form?, item.weight?);
            Some(format!("{} of {form} {}", super::show::plainly(base, weight), item.words))
        })
        .collect();
    let words: Vec<&str> = plants.iter().map(String::as_str).collect();
    format!("{} where the row does not say otherwise", crate::method::list_of(&words))
}

/// The stages of boiled sugar, and what they are higher up.
fn by_altitude() -> Stages {
    const ALTITUDES: [f64; 4] = [0.0, 1000.0, 2000.0, 3000.0];
    let foot = crate::measure::Measure::Foot.factor().to_f64();
    let heads = ALTITUDES.iter().map(|metres| {
        format!(
            "{}\u{a0}m, {}\u{a0}ft",
            decimal(*metres, 0),
            decimal((metres / foot / 100.0).round() * 100.0, 0)
        )
    });
    let columns = ALTITUDES.map(stages);
    let rows = STAGES.iter().enumerate().map(|(n, stage)| StageRow {
        name: capital(stage.name),
        cells: columns.iter().map(|column| kitchen::temperature_text(column[n].begins)).collect(),
    });
    Stages {
        caption: "Where each stage begins. A guide: thermometers differ, so try a drop in cold water."
            .to_string(),
        heads: heads.collect(),
        rows: rows.collect(),
    }
}
