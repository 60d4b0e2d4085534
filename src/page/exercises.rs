//! Exercises and their key: a question as a student sees it, and its answer as a ledger.

use serde_json::{Value, json};

use super::ledger::lines_of;
use super::show::data_element;
use super::view::{KeyRow, Link, Question};
use crate::exercise::{LETTERS, Posed, Right, Within};
use crate::measure::unit::ONE;
use crate::measure::{decimal, usual_places};
use crate::reader::unit_row;

/// The question under `id`. While its answer is held back there is nothing to check with.
pub fn question(posed: &Posed, id: String, number: usize, held: bool, root: &str) -> Question {
    let blanks = match &posed.right {
        Right::Figures(answers) => {
            answers.iter().map(|answer| [answer.name.clone(), answer.blank.clone()]).collect()
        }
        _ => Vec::new(),
    };
    let check_html = match held {
        true => String::new(),
        false => data_element("application/json", "check-data", &check(posed)),
    };
    Question {
        id,
        number,
        name: posed.name.clone(),
        ask: posed.ask.clone(),
        shown: posed.shown.clone(),
        options: posed.options.clone(),
        ordered: matches!(posed.right, Right::Order(_)),
        blanks,
        hint: posed.hint.clone(),
        formula: posed.formula.map(|formula| Link {
            text: formula.gives.words.to_string(),
            href: format!("{root}method.html#formula-{}", formula.id),
            current: false,
        }),
        within: within(posed),
        check_html,
    }
}

/// How near is right: "5 %", or nothing where only the figure itself is.
fn within(posed: &Posed) -> String {
    match posed.within {
        Within::Share(share) => {
            let places = u8::from((share * 100.0).fract() > 1e-9);
            format!("{}\u{a0}%", decimal(share * 100.0, places))
        }
        Within::Exact => String::new(),
    }
}

/// What the page's script checks with.
fn check(posed: &Posed) -> Value {
    match &posed.right {
        Right::Figures(answers) => {
            let share = match posed.within {
                Within::Share(share) => share,
                Within::Exact => 0.0,
            };
            let rows = answers.iter().map(|answer| {
                let usual = answer.asked_in.map_or("", |unit| unit.text());
                // To the last place shown: less than half of it either way.
                let (shown, one) = match answer.asked_in {
                    Some(unit) => (unit.of_base(answer.value), unit.factor().to_f64()),
                    None => (answer.value * answer.unit.printed, 1.0 / answer.unit.printed),
                };
                let unit = if answer.asked_in.is_some() { &ONE } else { answer.unit };
                let places = usual_places(shown / unit.printed, unit);
                let half = (0..places).fold(0.5 - 1e-9, |half, _| half / 10.0) * one;
                json!([answer.value, unit_row(answer.unit), usual, (share * answer.value.abs()).max(half)])
            });
            json!({"figures": rows.collect::<Vec<_>>()})
        }
        Right::Option(place) => json!({"option": place}),
        Right::Order(places) => json!({"order": places}),
    }
}

/// The answer of each version, and the first one's worked.
pub fn key_row(versions: &[Posed], number: usize, root: &str) -> Option<KeyRow> {
    let first = versions.first()?;
    let rows = match &first.worked {
        Some((worked, lines)) => lines_of(worked, lines, &format!("answer-{number}"), root),
        None => Vec::new(),
    };
    Some(KeyRow {
        id: format!("answer-{number}"),
        number,
        name: first.name.clone(),
        answers: versions.iter().map(Posed::answer).collect(),
        within: within(first),
        figures: matches!(first.right, Right::Figures(_)),
        ask: first.ask.clone(),
        because: first.because.clone(),
        rows,
    })
}

/// The letters of so many versions.
pub fn letters(count: usize) -> Vec<String> {
    LETTERS.iter().take(count).map(|letter| (*letter).to_string()).collect()
}
