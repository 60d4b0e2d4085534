//! The variations table: the recipe first, then each variation, every column computed.

use super::show::{duration, whole};
use super::view::{Cell, Head, PartLink, VariationRow, Variations};
use crate::keeping::judge;
use crate::measure::{decimal, usual_places};
use crate::variation::{Worked, WorkedRecipe};
use crate::working::{Id, Rounds};

/// A column: the line it shows, its head, its head on a phone, and whether a group begins there.
const COLUMNS: &[(Id, &str, &str, bool)] = &[
    (Id::Water, "Water, mL", "Water, mL", false),
    (Id::Liquid, "Liquid, mL", "Liquid, mL", false),
    (Id::Spirit, "Spirit, mL", "Spirit, mL", false),
    (Id::StrongSpirit, "Strong spirit, mL", "Strong, mL", false),
    (Id::WaterToAdd, "Water to it, mL", "Water to it, mL", false),
    (Id::Wax, "Wax, g", "Wax, g", false),
    (Id::Strained, "Strained, mL", "Strained, mL", false),
    (Id::Reduced, "Reduced to, mL", "Reduced, mL", false),
    (Id::Sweetener, "To add, mL", "To add, mL", true),
    (Id::SweetenerWeight, "To add, g", "To add, g", false),
    (Id::Finished, "Made, mL", "Made, mL", true),
    (Id::FinishedWeight, "Made, g", "Made, g", false),
    (Id::Pieces, "Pieces", "Pieces", false),
    (Id::Area, "Covers, cm²", "Covers, cm²", false),
    (Id::Temperature, "Bath, °C", "Bath, °C", false),
    (Id::Strength, "Plant, % w/v", "Plant, % w/v", false),
    (Id::Solids, "Solids, %", "Solids, %", false),
    (Id::Abv, "Alcohol, %", "Alcohol, %", false),
    (Id::Acidity, "Acid, %", "Acid, %", false),
    (Id::PlantPerDose, "Plant a dose, g", "Plant/dose, g", true),
    (Id::SugarPerDose, "Sugars a dose, g", "Sugars/dose, g", false),
    (Id::Doses, "Doses", "Doses", false),
    (Id::Minutes, "Ready in", "Ready in", true),
];

/// The table; none where the recipe has no variation.
pub fn variations(worked: &WorkedRecipe, part: PartLink) -> Option<Variations> {
    if worked.variations.is_empty() {
        return None;
    }
    let all: Vec<&Worked> = std::iter::once(&worked.base).chain(&worked.variations).collect();
    let columns: Vec<_> =
        COLUMNS.iter().filter(|(id, ..)| all.iter().any(|worked| shows(*id, worked))).collect();
    let mut heads: Vec<Head> = columns
        .iter()
        .map(|(_, text, short, group)| Head {
            text: (*text).into(),
            short: (*short).into(),
            group: *group,
            words: false,
        })
        .collect();
    heads.push(Head { text: "Keeping".into(), short: "Keeping".into(), group: true, words: true });
    let kept = |row: &Worked| {
        let declared = worked.recipe.variations.iter().find(|other| other.name.value == row.name);
        judge(row, declared.map_or(worked.recipe.ph(), |other| other.recipe.ph())).rung
    };
    let class_of_base = judge(&worked.base, worked.recipe.ph()).rung.class;
    let rows = all
        .iter()
        .enumerate()
        .map(|(n, row)| {
            let mut cells: Vec<Cell> =
                columns.iter().map(|(id, _, short, _)| cell(*id, row, &worked.base, short)).collect();
            let rung = kept(row);
            cells.push(Cell {
                text: format!("{}: {}", rung.class, rung.brief),
                mark: if rung.class == class_of_base { "" } else { "other" }.to_string(),
                label: "Keeping".to_string(),
            });
            VariationRow { name: row.name.clone(), base: n == 0, change: String::new(), cells }
        })
        .collect();
    let caption = "Each row is worked in full. ▲ more than the recipe, ▼ less, no mark the same; words that differ are bold.";
    Some(Variations { part, caption: caption.to_string(), heads, rows })
}

/// Whether a working has a figure for a column: what is liquid shows its volume, and no weight beside it.
fn shows(id: Id, worked: &Worked) -> bool {
    let liquid = id == Id::FinishedWeight && worked.value(Id::Finished).is_some();
    // How strong it is says what a dose holds, where doses are taken.
    let told = id == Id::Strength && worked.value(Id::PlantPerDose).is_some();
    worked.value(id).is_some() && !liquid && !told
}

fn cell(id: Id, row: &Worked, base: &Worked, label: &str) -> Cell {
    let text = printed(id, row);
    let mark = match (row.value(id), base.value(id)) {
        // What prints alike is the same to a reader.
        _ if text == printed(id, base) => "",
        (Some(here), Some(there)) if here > there => "more",
        (Some(_), Some(_)) => "less",
        _ => "other",
    };
    Cell { text, mark: mark.to_string(), label: label.to_string() }
}

/// The figure alone: the unit stands in the head. Counts for people are rounded down.
fn printed(id: Id, worked: &Worked) -> String {
    let Some(line) = worked.laid.working.line(id) else {
        return "–".to_string();
    };
    let (value, unit) = (worked.at(line), worked.laid.working.entry(line).unit);
    match (id, id.rounds()) {
        (Id::Minutes, _) => duration(value),
        (Id::Doses | Id::Pieces, Rounds::Down) => decimal(whole(value), 0),
        _ => decimal(value * unit.printed, usual_places(value, unit)),
    }
}
