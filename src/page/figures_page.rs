//! Tables of figures for the wall of a kitchen: altitude, household weights, fresh for dried, classes of keeping.

use super::show::{capital, cite, sentence};
use super::view::{FigureTableRow, FiguresPage, Frame};
use crate::bibliography::Source;
use crate::formula::catalogue::{heat, pan};
use crate::formula::equation::escape;
use crate::formula::expr::Formula;
use crate::formulary::Formulary;
use crate::keeping::LADDER;
use crate::measure::unit::{CELSIUS, G, KPA, ML, PER_CENT};
use crate::measure::{Measure, decimal, kitchen, show, show_usual};
use crate::tables::{MEASURES, fresh_for_dried, heights, household};

/// Where water boils by altitude.
pub fn altitude(frame: Frame) -> FiguresPage {
    let rows = heights().into_iter().map(|height| FigureTableRow {
        name: format!("{}\u{a0}m", decimal(height.metres, 0)),
        href: String::new(),
        cells: vec![
            format!("{}\u{a0}ft", decimal(height.feet, 0)),
            show_usual(height.pressure, &KPA),
            show(height.boils, &CELSIUS, 1),
            kitchen::temperature_both(height.boils)[1].clone(),
        ],
        source_html: String::new(),
    });
    let root = frame.root.clone();
    let of = |formula: &Formula| {
        let what = capital(formula.gives.words);
        sentence(&format!("{what}: {}; {}", escape(formula.holds), cite(&formula.source, &root)))
    };
    FiguresPage {
        caption: "In average weather; a storm moves it by about a degree. A simmer is cooler higher up, so it takes longer, \
                  and jars for a shelf are no business of this table: follow a tested recipe for your altitude."
            .to_string(),
        heads: heads(&["Altitude", "Feet", "Pressure of the air", "Water boils at", "Fahrenheit"]),
        rows: rows.collect(),
        worded: false,
        sourced: false,
        notes_html: vec![of(heat::AirPressure::formula()), of(heat::Boiling::formula())],
        frame,
    }
}

/// What spoons and cups weigh.
pub fn weights(frame: Frame, book: &Formulary) -> FiguresPage {
    let root = frame.root.clone();
    let items = book.pantry.shelves().filter_map(|shelf| {
        let (weights, sources) = household(shelf, &book.course.kitchen)?;
        Some(FigureTableRow {
            name: capital(&shelf.item.words),
            href: format!("{root}pantry/{}.html", shelf.item.id),
            cells: weights.iter().map(|weighs| show_usual(*weighs, &G)).collect(),
            source_html: cite_all(sources, &root),
        })
    });
    let plants = book.plants.values().flat_map(|plant| {
        let forms = [("dried", &plant.dried), ("fresh", &plant.fresh)];
        let known = forms.into_iter().filter_map(|(name, form)| Some((name, form.as_ref()?)));
        known.filter_map(|(name, form)| {
            let cell = |measure: Measure| form.weights.iter().find(|weight| weight.measure == measure);
            let sources: Vec<Source> =
                MEASURES.iter().filter_map(|measure| Some(cell(*measure)?.weighs.source.clone())).collect();
            if sources.is_empty() {
                return None;
            }
            let shown = |measure: &Measure| {
                cell(*measure).map_or("–".to_string(), |weight| show_usual(weight.weighs.value, &G))
            };
            Some(FigureTableRow {
                name: format!("{}, {name}", capital(&plant.words)),
                href: format!("{root}plants/{}.html", plant.id),
                cells: MEASURES.iter().map(shown).collect(),
                source_html: cite_all(sources, &root),
            })
        })
    });
    FiguresPage {
        caption: format!(
            "Level US measures: a teaspoon is {}, a tablespoon {}, a cup {}. Loose plants differ from bag to bag; weigh them \
             where you can.",
            holds(Measure::Tsp),
            holds(Measure::Tbsp),
            holds(Measure::Cup)
        ),
        heads: heads(&["What", "A teaspoon", "A tablespoon", "A cup"]),
        rows: items.chain(plants.collect::<Vec<_>>()).collect(),
        worded: false,
        sourced: true,
        notes_html: Vec::new(),
        frame,
    }
}

/// How much fresh plant stands for dried.
pub fn fresh(frame: Frame, book: &Formulary) -> FiguresPage {
    let root = frame.root.clone();
    let rows = book.plants.values().filter_map(|plant| {
        let (by, [fresh, dried]) = fresh_for_dried(plant)?;
        Some(FigureTableRow {
            name: capital(&plant.words),
            href: format!("{root}plants/{}.html", plant.id),
            cells: vec![
                format!("{} : 1", decimal(by, 1)),
                show_usual(fresh, &PER_CENT),
                show_usual(dried, &PER_CENT),
            ],
            source_html: String::new(),
        })
    });
    let formula = pan::AsDried::formula();
    FiguresPage {
        caption: "A plant and what it was before it dried hold the same dry matter. A fresh plant brings its water with it: \
                  a recipe for dried plants needs less liquid, and may not keep."
            .to_string(),
        heads: heads(&["Plant", "Fresh to dried", "Water, fresh", "Water, dried"]),
        rows: rows.collect(),
        worded: false,
        sourced: false,
        notes_html: vec![sentence(&format!("{}; {}", capital(formula.gives.words), cite(&formula.source, &root)))],
        frame,
    }
}

/// The classes of keeping, from what binds first.
pub fn classes(frame: Frame) -> FiguresPage {
    let root = frame.root.clone();
    let mut rows: Vec<FigureTableRow> = Vec::new();
    for rung in LADDER {
        let cells = vec![capital(rung.words), capital(rung.because), capital(rung.verdict.words())];
        // Two rungs may differ in their tests alone.
        if rows.iter().any(|row| row.name == rung.class && row.cells == cells) {
            continue;
        }
        let source_html = sentence(&cite(&rung.source, &root));
        rows.push(FigureTableRow { name: rung.class.to_string(), href: String::new(), cells, source_html });
    }
    FiguresPage {
        caption: "The first class whose tests all hold decides, at the careful end of every range. A class is a guideline \
                  with its reason, never a promise: what fizzes, smells off or grows anything goes to the bin."
            .to_string(),
        heads: heads(&["Class", "Where and how long", "Why", "What that means"]),
        rows,
        worded: true,
        sourced: true,
        notes_html: Vec::new(),
        frame,
    }
}

/// What a measure holds.
fn holds(measure: Measure) -> String {
    show_usual(measure.factor().to_f64(), &ML)
}

/// Several sources, each once.
fn cite_all(sources: Vec<Source>, root: &str) -> String {
    let mut said: Vec<String> = Vec::new();
    for source in &sources {
        let words = cite(source, root);
        if !said.contains(&words) {
            said.push(words);
        }
    }
    sentence(&said.join("; "))
}

fn heads(words: &[&str]) -> Vec<String> {
    words.iter().map(ToString::to_string).collect()
}
