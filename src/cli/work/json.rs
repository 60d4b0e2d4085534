//! A recipe's working as JSON, for other tools.

use serde_json::{Map, Value, json};

use crate::bibliography::{Source, Standing};
use crate::caution::{self, Barred, Company, Seen};
use crate::cost::bill;
use crate::formula::Line;
use crate::formulary::Formulary;
use crate::keeping::judge;
use crate::measure::Unit;
use crate::page::cost::money;
use crate::recipe::Recipe;
use crate::variation::{Worked, WorkedRecipe};
use crate::working::{How, Id};

pub(super) fn as_json(recipe: &WorkedRecipe, book: &Formulary) -> String {
    let mut all = Map::new();
    all.insert("recipe".into(), json!(recipe.base.name));
    all.extend(of(&recipe.base, &recipe.recipe, book, Some(recipe)));
    let variations: Vec<Value> = recipe
        .each()
        .skip(1)
        .map(|(variation, declared)| {
            let mut one = Map::new();
            one.insert("name".into(), json!(variation.name));
            one.extend(of(variation, declared, book, None));
            Value::Object(one)
        })
        .collect();
    all.insert("variations".into(), Value::Array(variations));
    format!("{:#}", Value::Object(all))
}

fn of(
    worked: &Worked,
    declared: &Recipe,
    book: &Formulary,
    whole: Option<&WorkedRecipe>,
) -> Map<String, Value> {
    let working = &worked.laid.working;
    let mut lines: Vec<Value> = Vec::new();
    for line in working.lines() {
        let ids: Vec<Id> =
            working.claimed().filter(|(_, claimed)| *claimed == line).map(|(id, _)| id).collect();
        // A line that several ids share is there once under each.
        match ids[..] {
            [] => lines.push(line_json(worked, line, None)),
            _ => lines.extend(ids.iter().map(|id| line_json(worked, line, Some(*id)))),
        }
    }
    let raised = caution::cautions(&Seen { worked, recipe: declared, book, whole });
    let company = Company::of(&raised);
    let people = |list: &[Barred]| -> Vec<Value> {
        list.iter()
            .map(|barred| json!({"who": barred.who.word().replace('\u{a0}', " "), "of": barred.of}))
            .collect()
    };
    let cautions: Vec<Value> = raised
        .iter()
        .map(|caution| {
            json!({
                "id": caution.id,
                "stop": caution.weight == caution::Weight::Stop,
                "text": format!("{}. {}", caution.lead.trim_end_matches('.'), caution.text),
                "acknowledged": caution.reason,
                "source": source(&caution.source),
            })
        })
        .collect();
    let mut out = Map::new();
    out.insert("lines".into(), Value::Array(lines));
    let judged = judge(worked, declared.ph());
    let keeping = json!({
        "class": judged.rung.class,
        "days": judged.rung.days,
        "because": format!("{}; {}", judged.rung.verdict.words(), judged.because(worked).replace('\u{a0}', " ")),
    });
    out.insert("keeping".into(), keeping);
    let prices = &book.course.prices;
    let cost = bill(worked, prices).map(|bill| {
        json!({
            "currency": prices.currency,
            "used": money(bill.used()).replace(',', ""),
            "bought": money(bill.bought()).replace(',', ""),
            "unpriced": bill.unpriced,
        })
    });
    out.insert("cost".into(), json!(cost));
    out.insert("cautions".into(), Value::Array(cautions));
    out.insert("never_for".into(), Value::Array(people(&company.not_for)));
    out.insert("ask_first".into(), Value::Array(people(&company.ask_first)));
    out
}

fn line_json(worked: &Worked, line: Line, id: Option<Id>) -> Value {
    let working = &worked.laid.working;
    let entry = working.entry(line);
    let range = worked.ranges[line.index()];
    let (formula, with) = match &entry.how {
        How::Worked(by) => {
            let with: Map<String, Value> = by
                .formula
                .with
                .iter()
                .zip(&by.with)
                .map(|(stands, lines)| {
                    let names: Vec<&str> =
                        lines.iter().map(|line| working.entry(*line).name.as_str()).collect();
                    (stands.words.to_string(), json!(names))
                })
                .collect();
            (Some(by.formula.id), Value::Object(with))
        }
        _ => (None, Value::Null),
    };
    let from = match &entry.how {
        How::Given { .. } => "as the recipe says".to_string(),
        How::Assumed { source: from, .. } | How::Published { source: from, .. } => source(from),
        How::Worked(by) => source(&by.formula.source),
    };
    let (unit, times) = unit(entry.unit);
    json!({
        "id": id.map(Id::text),
        "name": entry.name,
        "value": worked.at(line) * times,
        "low": range.low * times,
        "high": range.high * times,
        "unit": unit,
        "formula": formula,
        "with": with,
        "source": from,
    })
}

/// Units as tools read them, and what a kept value is multiplied by: every per cent is `%`, every weight `g`, a
/// plain number `1`, a content in a gram and a limit for a kilogram too.
fn unit(unit: &Unit) -> (&'static str, f64) {
    match unit.text {
        "" | "mg/g" | "mg/kg" => ("1", 1.0),
        "mg" | "kg" => ("g", 1.0),
        text if text.starts_with('%') => ("%", unit.printed),
        text => (text, unit.printed),
    }
}

fn source(source: &Source) -> String {
    let title = source.work.map(|work| work.title().to_string());
    let place = (!source.place.is_empty()).then(|| source.place.to_string());
    let standing = match source.standing {
        Standing::FromMemory => Some("from memory".to_string()),
        Standing::CommonPractice => Some("common practice, no source".to_string()),
        Standing::Published | Standing::Reckoned | Standing::Formulary => None,
    };
    [title, place, standing].into_iter().flatten().collect::<Vec<_>>().join("; ")
}
