//! A plant's page and the list of plants.

use super::monograph::{Facts, before, caution_rows, linked};
use super::show::capital;
use super::show::sentence;
use super::view::{FactRow, Frame, LabelRow, Latin, Link, ListGroup, ListPage, Monograph, UserRow};
use crate::caution::{self, CLOSING};
use crate::cited::Cited;
use crate::formula::equation::escape;
use crate::formulary::{Aromatic, Ceiling, Danger, Formulary, Most, Plant, PlantForm};
use crate::materia::ADULT_WEIGHT;
use crate::measure::unit::{G, MG, MG_PER_G, MG_PER_KG, ML_PER_G, PER_CENT};
use crate::measure::{Measure, Unit, decimal, kitchen, show_usual};
use crate::tables;

/// The view of a plant.
pub fn page(
    frame: Frame,
    plant: &Plant,
    book: &Formulary,
    prose_html: String,
    users: Vec<UserRow>,
) -> Monograph {
    let root = frame.root.clone();
    let cautions = caution::about_plant(plant);
    let mut label = before(&cautions);
    label.extend(told_from(plant));
    Monograph {
        list: Link { text: "Plants".into(), href: format!("{root}plants.html"), current: false },
        belongs: plant.family.clone(),
        also: plant.also.join(", "),
        latin: vec![Latin {
            name: plant.latin.clone(),
            author: plant.author.clone(),
            part: plant.synonym.as_ref().map_or(String::new(), |other| format!("also {other}")),
        }],
        before: label,
        facts: facts(plant, book, &root),
        cautions: caution_rows(&cautions, &root),
        closing: CLOSING.to_string(),
        prose_html,
        users,
        frame,
    }
}

/// What harms and is taken for it.
fn told_from(plant: &Plant) -> Option<LabelRow> {
    let harmful = plant.look_alikes.iter().filter(|other| other.danger != Danger::Harmless);
    let told: Vec<String> =
        harmful.map(|other| format!("{} ({}): {}", other.what, other.danger.word(), other.tell)).collect();
    (!told.is_empty()).then(|| LabelRow {
        term: "Told from".into(),
        kind: super::view::Kind::Declared,
        value: told.join("; "),
        notes: Vec::new(),
        stop: false,
        link: None,
    })
}

fn facts(plant: &Plant, book: &Formulary, root: &str) -> Vec<FactRow> {
    let mut facts = Facts::new(root);
    facts.plain("Part used", &plant.part);
    if !plant.sold.is_empty() {
        let sold: Vec<&str> = plant.sold.iter().map(|sold| sold.word()).collect();
        facts.plain("Sold", &sold.join(", "));
    }
    facts.plain(
        "Aromatic",
        match plant.aromatic {
            Aromatic::No => "not: it may be boiled and reduced",
            Aromatic::Lightly => "lightly: brief heat, covered",
            Aromatic::Yes => "strongly: steeped and covered, never boiled long or reduced",
        },
    );
    if let Some(cook) = &plant.cook {
        facts.cited(
            "Never raw",
            &format!("at the boil for at least {}", kitchen::minutes(cook.value)),
            &cook.source,
        );
    }
    if let Some(source) = &plant.sour {
        facts.cited("Sour", "takes aluminium, copper and iron", source);
    }
    if let Some(source) = &plant.hairs {
        facts.cited("Hairs", "irritate: strained twice, through cloth", source);
    }
    if let Some((seasons, source)) = &plant.season {
        let seasons: Vec<&str> = seasons.iter().map(|season| season.word()).collect();
        facts.cited("Gathered in", &crate::method::list_of(&seasons), source);
    }
    for (name, form) in [("dried", &plant.dried), ("fresh", &plant.fresh)] {
        if let Some(form) = form {
            of_form(name, form, &mut facts);
        }
    }
    fresh_for_dried(plant, &mut facts);
    if let Some(made) = &plant.made_into {
        let links: Vec<String> = made.kinds.iter().map(|kind| table_link(kind.word, root)).collect();
        facts.html("Usually made into", links.join(", "), &made.source);
    }
    for unfit in &plant.unfit {
        let html = format!("{}: {}", table_link(unfit.kind.word, root), escape(&unfit.because));
        facts.html("Not made into", html, &unfit.source);
    }
    if let Some(dose) = &plant.dose {
        let daily = match dose.daily {
            Some((low, high)) if low == high => format!(", {} a day", times(low)),
            Some((low, high)) => format!(", {}–{} a day", decimal(low, 0), times(high)),
            None => " to the cup".to_string(),
        };
        facts.cited("An adult takes", &format!("{}{daily}", dose.amount.written), &dose.source);
    }
    for ceiling in &plant.ceilings {
        of_ceiling(plant, ceiling, book, &mut facts);
    }
    if let Some(limit) = &plant.no_longer {
        facts.cited(
            "No longer than",
            &format!("{} without a pause", kitchen::minutes(limit.value)),
            &limit.source,
        );
    }
    for other in &plant.look_alikes {
        facts.cited(
            "Taken for it",
            &format!("{} ({}): {}", other.what, other.danger.word(), other.tell),
            &other.source,
        );
    }
    facts.substitutes(&plant.substitutes, |what| {
        let other = book.plants.get(what)?;
        Some((other.words.clone(), format!("{root}plants/{what}.html")))
    });
    if let Some(status) = &plant.status {
        facts.cited("Standing", &status.words, &status.source);
    }
    facts.rows
}

fn times(count: f64) -> String {
    match count {
        1.0 => "once".to_string(),
        2.0 => "twice".to_string(),
        n => format!("{} times", decimal(n, 0)),
    }
}

fn table_link(word: &str, root: &str) -> String {
    linked(word, &format!("{root}{}", super::tables_page::address(word)))
}

fn of_form(name: &str, form: &PlantForm, facts: &mut Facts) {
    let shown = |cited: &Cited, unit: &Unit| show_usual(cited.value, unit);
    for (of, holds) in [("", &form.holds), (" of oil", &form.holds_oil), (" of honey", &form.holds_honey)] {
        if let Some(holds) = holds {
            let value = format!("{}{of}, squeezed by hand", shown(holds, &ML_PER_G));
            facts.cited(&format!("Keeps back, {name}"), &value, &holds.source);
        }
    }
    for weight in &form.weights {
        let what = match weight.measure {
            Measure::Tsp => "teaspoon",
            Measure::Tbsp => "tablespoon",
            other => other.text(),
        };
        facts.cited(&format!("A {what} weighs, {name}"), &shown(&weight.weighs, &G), &weight.weighs.source);
    }
    if let Some(moisture) = &form.moisture {
        let value = format!("{} by weight", shown(moisture, &PER_CENT));
        facts.cited(&format!("Water, {name}"), &value, &moisture.source);
    }
}

/// How many grams fresh stand for one dried, by the formula that recipes use.
fn fresh_for_dried(plant: &Plant, facts: &mut Facts) {
    let Some((by, [fresh, dried])) = tables::fresh_for_dried(plant) else { return };
    let value = format!("{} g fresh for each gram dried", decimal(by, 1));
    let per_cent = |share: f64| show_usual(share, &PER_CENT);
    let source = format!("from {} of water fresh and {} dried", per_cent(fresh), per_cent(dried));
    facts.rows.push(FactRow {
        term: "Fresh for dried".into(),
        html: escape(&value),
        source_html: sentence(&format!("worked {}", escape(&source))),
        worked: true,
    });
}

/// A ceiling, and what it comes to for the course's adult and for the child its source names.
fn of_ceiling(plant: &Plant, ceiling: &Ceiling, book: &Formulary, facts: &mut Facts) {
    let of = ceiling.of.as_deref().unwrap_or(&plant.words);
    let grams = |weight: f64| show_usual(weight, &G);
    let mg = |weight: f64| show_usual(weight, &MG);
    let in_plant = |weight: f64| {
        let holds = ceiling.holds.as_ref()?;
        // Of a content between two the higher: the careful end.
        Some(format!(", which {} of {} hold", grams(weight / holds.high), plant.words))
    };
    let value = match ceiling.most {
        Most::ADay(most) if ceiling.of.is_none() => format!("{} a day", grams(most)),
        Most::ADay(most) => format!("{} a day{}", mg(most), in_plant(most).unwrap_or_default()),
        Most::ForTheBody(each) => {
            let adult = book.course.adult.unwrap_or(ADULT_WEIGHT.value);
            let bodies = std::iter::once(adult).chain(ceiling.child);
            let worked = bodies.map(|body| {
                let most = body * each;
                let kg = decimal(body / 1000.0, 0);
                format!("at {kg} kg {}{}", mg(most), in_plant(most).unwrap_or_default())
            });
            let each = show_usual(each, &MG_PER_KG);
            format!("{each} a day; {}", worked.collect::<Vec<_>>().join("; "))
        }
    };
    facts.cited(&format!("At most, {of}"), &value, &ceiling.source);
    match (&ceiling.of, &ceiling.holds) {
        (Some(of), Some(holds)) => {
            let shown = |share: f64| show_usual(share, &MG_PER_G);
            let value = match holds.low == holds.high {
                true => shown(holds.low),
                false => format!("{}–{}", decimal(holds.low * MG_PER_G.printed, 0), shown(holds.high)),
            };
            facts.cited(&format!("Holds, {of}"), &value, &holds.source);
        }
        (Some(of), None) => facts.plain(&format!("Holds, {of}"), "not known well enough to reckon with"),
        (None, _) => {}
    }
}

/// The list of plants, by their names.
pub fn list(frame: Frame, book: &Formulary) -> ListPage {
    let links = book.plants.values().map(|plant| Link {
        text: capital(&plant.words),
        href: format!("plants/{}.html", plant.id),
        current: false,
    });
    let mut links: Vec<Link> = links.collect();
    links.sort_by(|a, b| a.text.cmp(&b.text));
    ListPage {
        lead: "Each with its facts, where they come from, who must not take it, and what is made of it here."
            .into(),
        groups: vec![ListGroup { name: String::new(), id: "all".into(), links }],
        frame,
    }
}
