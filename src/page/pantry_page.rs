//! A pantry item's page and the list of the pantry.

use super::monograph::{Facts, before, caution_rows};
use super::show::capital;
use super::show::sentence;
use super::view::{FactRow, Frame, Link, ListGroup, ListPage, Monograph, UserRow};
use crate::caution::{self, CLOSING};
use crate::formula::catalogue::spirit::ShareByWeight;
use crate::formula::equation::escape;
use crate::formula::{Line, Use, evaluate};
use crate::formulary::Formulary;
use crate::materia::{Fact, HONEY_MOISTURE, Kind, built_in};
use crate::measure::unit::{G, PER_CENT, PER_CENT_WV, PER_CENT_WW};
use crate::measure::{Measure, decimal, show, show_usual};
use crate::pantry::Shelf;

/// The kinds with their headings, in the order of the list.
const GROUPS: &[(&str, &[Kind])] = &[
    ("Sweet", &[Kind::Honey, Kind::Syrup, Kind::Sugar, Kind::Glycerin]),
    ("Strong and sour", &[Kind::Spirit, Kind::Vinegar, Kind::Juice]),
    ("Fat and wax", &[Kind::Oil, Kind::Wax]),
    ("Dry", &[Kind::Gum, Kind::Salt]),
];

/// The view of an item.
pub fn page(
    frame: Frame,
    shelf: &Shelf,
    book: &Formulary,
    prose_html: String,
    users: Vec<UserRow>,
) -> Monograph {
    let root = frame.root.clone();
    let cautions = caution::about_item(shelf);
    Monograph {
        list: Link { text: "Pantry".into(), href: format!("{root}pantry.html"), current: false },
        belongs: shelf.item.kind.word().to_string(),
        also: shelf.page.as_ref().map_or(String::new(), |page| page.also.join(", ")),
        latin: Vec::new(),
        before: before(&cautions),
        facts: facts(shelf, book, &root),
        cautions: caution_rows(&cautions, &root),
        closing: CLOSING.to_string(),
        prose_html,
        users,
        frame,
    }
}

fn facts(shelf: &Shelf, book: &Formulary, root: &str) -> Vec<FactRow> {
    let item = &shelf.item;
    let before = built_in().into_iter().find(|other| other.words == item.words);
    let before = before.as_ref();
    let mut facts = Facts::new(root);
    facts.plain("Kind", item.kind.word());
    let figure = |term: &str, fact: &Option<Fact>, built: Option<&Option<Fact>>, facts: &mut Facts| {
        if let Some(fact) = fact {
            of_fact(term, fact, built.and_then(Option::as_ref), facts);
        }
    };
    if item.is_honey() && item.water.is_none() {
        let usual = show(HONEY_MOISTURE.usual, &PER_CENT, 1);
        let value = format!("{usual} by weight, unless the recipe or the kitchen says otherwise");
        facts.cited("Water", &value, &HONEY_MOISTURE.source);
    }
    let strength = if item.kind == Kind::Vinegar { "Acid" } else { "Alcohol" };
    figure(strength, &item.strength, before.map(|item| &item.strength), &mut facts);
    figure("Density", &item.density, before.map(|item| &item.density), &mut facts);
    figure("Water", &item.water, before.map(|item| &item.water), &mut facts);
    figure("Sugars", &item.sugars, before.map(|item| &item.sugars), &mut facts);
    figure("Energy", &item.energy, before.map(|item| &item.energy), &mut facts);
    by_weight(shelf, &mut facts);
    let Some(page) = &shelf.page else { return facts.rows };
    for (sugar, share) in &page.single_sugars {
        let value = format!("{} by weight", show_usual(share.value, &PER_CENT));
        facts.cited(&capital(sugar), &value, &share.source);
    }
    if let Some(acid) = &page.other_acid {
        let value = show_usual(acid.value, &PER_CENT_WV);
        facts.cited("Acid", &format!("{value}; not vinegar's, so no sum here counts it"), &acid.source);
    }
    for (measure, weighs) in &page.weights {
        let what = match measure {
            Measure::Tsp => "teaspoon",
            Measure::Tbsp => "tablespoon",
            other => other.text(),
        };
        let value = show_usual(weighs.value, &G);
        facts.cited(&format!("A {what} weighs"), &value, &weighs.source);
    }
    if let Some(keeps) = &page.keeps {
        facts.cited("Keeps", &keeps.words, &keeps.source);
    }
    facts.substitutes(&page.substitutes, |what| {
        let other = book.pantry.item(what)?;
        Some((other.words.clone(), format!("{root}pantry/{}.html", other.id)))
    });
    facts.rows
}

/// A figure that sums use: this book's own, or as built in; where it stands in place of one, both are shown.
fn of_fact(term: &str, fact: &Fact, built: Option<&Fact>, facts: &mut Facts) {
    let shown = |fact: &Fact| show_usual(fact.value(), fact.unit());
    let by = if fact.unit().text == "%" { " by weight" } else { "" };
    let value = match (fact.is_own(), built) {
        (true, Some(built)) => {
            format!("{}{by}; this book’s own, in place of {}", shown(fact), shown(built))
        }
        (true, None) => format!("{}{by}; this book’s own", shown(fact)),
        (false, _) => format!("{}{by}", shown(fact)),
    };
    facts.cited(term, &value, fact.source());
}

/// What it is made of by weight, where that follows from its strength.
fn by_weight(shelf: &Shelf, facts: &mut Facts) {
    let item = &shelf.item;
    let (words, share) = match (item.kind, &item.strength, &item.density) {
        (Kind::Spirit, Some(strength), _) => {
            let by = Use::from(ShareByWeight { strength: Line(0) });
            ("alcohol", evaluate(&by.formula.is, &by.with, &[strength.value()], 0))
        }
        (Kind::Vinegar, Some(acid), Some(density)) => ("acetic acid", acid.value() / density.value()),
        _ => return,
    };
    let per_cent = |share: f64| decimal(share * PER_CENT_WW.printed, 1);
    let rest = 1.0 - share;
    let value = format!("{} % {words}, {} % water and the rest", per_cent(share), per_cent(rest));
    facts.rows.push(FactRow {
        term: "By weight".into(),
        html: escape(&value),
        source_html: sentence("worked from its strength"),
        worked: true,
    });
}

/// The pantry by kind.
pub fn list(frame: Frame, book: &Formulary) -> ListPage {
    let groups = GROUPS.iter().map(|(name, kinds)| {
        let items = book.pantry.shelves().filter(|shelf| kinds.contains(&shelf.item.kind));
        let links = items.map(|shelf| Link {
            text: capital(&shelf.item.words),
            href: format!("pantry/{}.html", shelf.item.id),
            current: false,
        });
        ListGroup {
            name: (*name).to_string(),
            id: name.to_lowercase().replace(' ', "-"),
            links: links.collect(),
        }
    });
    ListPage {
        lead:
            "What is not a plant: what it is made of, how it is measured, and where each figure comes from."
                .into(),
        groups: groups.filter(|group| !group.links.is_empty()).collect(),
        frame,
    }
}
