//! The variations table: the recipe first, then each variation, every column computed.

use super::company::{against_base, in_short};
use super::cost::money;
use super::show::{capital, duration};
use super::view::{Cell, Head, PartLink, VariationRow, Variations};
use crate::caution::{Company, Seen, cautions};
use crate::compare::Stands;
use crate::cost::{Bill, bill};
use crate::formulary::Formulary;
use crate::keeping::judge;
use crate::measure::unit::G;
use crate::measure::{decimal, usual_places, whole};
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

/// The table; none where the recipe has no variation. Who must not take each row is told with the book whose
/// plants are in it.
pub fn variations(worked: &WorkedRecipe, book: Option<&Formulary>, part: PartLink) -> Option<Variations> {
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
    let prices = book.map(|book| &book.course.prices);
    let costs: Vec<Option<Bill>> = all.iter().map(|worked| bill(worked, prices?)).collect();
    let priced = costs.iter().any(Option::is_some);
    if priced {
        let currency = prices.map_or("", |prices| &prices.currency);
        let text = format!("Cost, {currency}");
        // Before the time, which stands alone at the end of the figures.
        heads.insert(heads.len() - 1, Head { short: text.clone(), text, group: true, words: false });
    }
    let last = if book.is_some() { "Keeping, and never for" } else { "Keeping" };
    heads.push(Head { text: last.into(), short: "Keeping".into(), group: true, words: true });
    let parts = part_columns(worked, &all);
    heads.splice(
        0..0,
        parts.iter().map(|name| Head {
            text: format!("{}, g", capital(name)),
            short: format!("{}, g", capital(name)),
            group: false,
            words: false,
        }),
    );
    let class_of_base = judge(&worked.base, worked.recipe.ph()).rung.class;
    let mut company_of_base = None;
    let rows = worked
        .each()
        .enumerate()
        .map(|(n, (row, recipe))| {
            let mut cells: Vec<Cell> = parts.iter().map(|name| part_cell(name, row, &worked.base)).collect();
            cells.extend(columns.iter().map(|(id, _, short, _)| cell(*id, row, &worked.base, short)));
            if priced {
                let label = &heads[heads.len() - 3].short;
                cells.insert(cells.len() - 1, cost_cell(costs[n].as_ref(), costs[0].as_ref(), label));
            }
            let rung = judge(row, recipe.ph()).rung;
            let company =
                book.map(|book| Company::of(&cautions(&Seen { worked: row, recipe, book, whole: None })));
            let of_base = company_of_base.get_or_insert_with(|| company.clone());
            let (under, under_differs) = match (&company, of_base) {
                (Some(own), Some(base)) if n > 0 => against_base(own, base),
                (Some(own), _) => (in_short(own), false),
                (None, _) => (String::new(), false),
            };
            cells.push(Cell {
                text: rung.in_short(),
                mark: if rung.class == class_of_base { "" } else { "other" }.to_string(),
                label: "Keeping".to_string(),
                under,
                under_differs,
                ..Cell::default()
            });
            VariationRow { name: row.name.clone(), base: n == 0, change: String::new(), cells }
        })
        .collect();
    let caption = "Each row is worked in full. ▲ more than the recipe, ▼ less, no mark the same; words that differ are bold.";
    Some(Variations { part, caption: caption.to_string(), heads, rows })
}

/// The plants of a mixture written as parts: what each weighs is what is asked of it.
fn part_columns(worked: &WorkedRecipe, all: &[&Worked]) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    if worked.recipe.weight.is_some() {
        for item in all.iter().flat_map(|row| &row.laid.ingredients).filter(|item| item.plant.is_some()) {
            if !names.contains(&item.words) {
                names.push(item.words.clone());
            }
        }
    }
    names
}

fn part_cell(name: &str, row: &Worked, base: &Worked) -> Cell {
    let weight = |of: &Worked| {
        let item = of.laid.ingredients.iter().find(|item| item.plant.is_some() && item.words == name)?;
        Some(of.at(item.weight?))
    };
    let shown = |of: &Worked| weight(of).map_or("–".to_string(), |g| decimal(g, usual_places(g, &G)));
    let mark = Stands::of((&shown(row), weight(row)), (&shown(base), weight(base)));
    Cell {
        text: shown(row),
        mark: mark.mark().to_string(),
        label: format!("{}, g", capital(name)),
        ..Cell::default()
    }
}

/// Whether a working has a figure for a column: what is liquid shows its volume, and no weight beside it.
fn shows(id: Id, worked: &Worked) -> bool {
    let liquid = id == Id::FinishedWeight && worked.value(Id::Finished).is_some();
    // How strong it is says what a dose holds, where doses are taken.
    let told = id == Id::Strength && worked.value(Id::PlantPerDose).is_some();
    worked.value(id).is_some() && !liquid && !told
}

/// What is used of a bill, against the recipe's; under it what has no price.
fn cost_cell(bill: Option<&Bill>, base: Option<&Bill>, label: &str) -> Cell {
    let shown = |bill: Option<&Bill>| bill.map_or("–".to_string(), |bill| money(bill.used()));
    let mark = Stands::of((&shown(bill), bill.map(Bill::used)), (&shown(base), base.map(Bill::used)));
    let without = bill.filter(|bill| !bill.unpriced.is_empty()).map(|bill| bill.unpriced.join(", "));
    Cell {
        text: shown(bill),
        mark: mark.mark().to_string(),
        label: label.to_string(),
        under: without.map_or(String::new(), |names| format!("without {names}")),
        ..Cell::default()
    }
}

fn cell(id: Id, row: &Worked, base: &Worked, label: &str) -> Cell {
    let text = printed(id, row);
    let mark = Stands::of((&text, row.value(id)), (&printed(id, base), base.value(id)));
    Cell { text, mark: mark.mark().to_string(), label: label.to_string(), ..Cell::default() }
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
