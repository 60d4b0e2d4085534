//! `stillroom work`: a recipe's working as a table at 80 columns, or as JSON for other tools.

use std::path::Path;
use std::process::ExitCode;

use serde_json::{Map, Value, json};

use super::say;
use crate::bibliography::{Source, Standing};
use crate::caution::{self, Barred, Company, Seen};
use crate::diagnostic::{self, Look, nearest, stops};
use crate::formula::Line;
use crate::formulary::Formulary;
use crate::keeping::judge;
use crate::measure::{self, Unit};
use crate::page::company::with_reasons;
use crate::page::show::{between, plainly};
use crate::press::{open_book, read_lesson};
use crate::recipe::Recipe;
use crate::site::Trouble;
use crate::variation::{Worked, WorkedRecipe};
use crate::wanted;
use crate::working::{How, Id};

pub(super) fn run(
    dir: &Path,
    wanted: &str,
    make: Option<&str>,
    json: bool,
    look: Look,
) -> Result<ExitCode, Trouble> {
    let mut stderr = std::io::stderr();
    let mut findings = Vec::new();
    let (_, book) = open_book(dir, &mut findings)?;
    let (slug, number) = wanted.split_once('#').unwrap_or((wanted, "1"));
    let Some(at) = book.lessons.iter().position(|head| head.slug == slug || head.path == slug) else {
        let near = nearest(slug, book.lessons.iter().map(|head| head.slug.as_str()));
        let near = near.map_or(String::new(), |near| format!("; did you mean `{near}`?"));
        say(&mut stderr, &format!("stillroom: there is no lesson `{slug}`{near}"));
        return Ok(ExitCode::from(2));
    };
    let read = read_lesson(dir, &book, at)?;
    let (recipes, found) = read.map_or((Vec::new(), Vec::new()), |read| (read.recipes, read.findings));
    findings.extend(found);
    for finding in findings
        .iter()
        .filter(|finding| finding.place.as_ref().is_none_or(|place| place.path == book.lessons[at].path))
    {
        say(&mut stderr, &format!("{}\n", diagnostic::print(finding, look)));
    }
    let n = number.parse::<usize>().unwrap_or(0);
    let Some(recipe) = n.checked_sub(1).and_then(|n| recipes.get(n)) else {
        say(
            &mut stderr,
            &format!("stillroom: `{slug}` has {} recipe(s); there is no #{number}", recipes.len()),
        );
        return Ok(ExitCode::from(2));
    };
    let Some(recipe) = recipe else {
        return Ok(ExitCode::from(1));
    };
    let scaled = match make.map(|make| scaled(recipe, make)) {
        None => None,
        Some(Ok(scaled)) => Some(scaled),
        Some(Err(why)) => {
            say(&mut stderr, &format!("stillroom: {why}"));
            return Ok(ExitCode::from(2));
        }
    };
    let recipe = scaled.as_ref().unwrap_or(recipe);
    let text = if json { as_json(recipe, &book) } else { as_table(recipe, &book) };
    say(&mut std::io::stdout(), text.trim_end());
    Ok(ExitCode::from(u8::from(stops(&findings))))
}

/// The recipe in the batch that comes to what is wanted; its variations are left out, being of another size.
fn scaled(recipe: &WorkedRecipe, make: &str) -> Result<WorkedRecipe, String> {
    let wanted = measure::wanted(make).map_err(|misread| {
        let write = misread.write.first().map_or(String::new(), |write| format!("; write `{write}`"));
        format!("{}{write}", misread.message)
    })?;
    let base = wanted::worked(&recipe.base, &wanted)
        .map_err(|unmet| format!("no amounts of this recipe make {make}: {}", unmet.why))?;
    Ok(WorkedRecipe { base, variations: Vec::new(), recipe: recipe.recipe.clone() })
}

/// The short sum as a table, then the variations by their finished volume, then who must not take it.
fn as_table(recipe: &WorkedRecipe, book: &Formulary) -> String {
    let base = &recipe.base;
    let mut out = format!("{}\n{}\n", base.name, "-".repeat(base.name.chars().count()));
    for (id, line) in base.laid.working.claimed() {
        let entry = base.laid.working.entry(line);
        let shown = base.shown(line).replace('\u{a0}', " ");
        let range =
            between(base, line).unwrap_or_default().replace(['\u{a0}', '\u{2060}'], " ").replace(" – ", "–");
        // The unit stands beside the value already.
        let range = range.strip_suffix(entry.unit.text).unwrap_or(&range).trim_end();
        out.push_str(
            format!("{:<18}{:<32}{:>12}  {}\n", id.text(), cut(&entry.name, 31), shown, range).trim_end(),
        );
        out.push('\n');
    }
    let seen = Seen { worked: base, recipe: &recipe.recipe, book, whole: None };
    let company = Company::of(&caution::cautions(&seen));
    for (head, list) in [("Never for", &company.not_for), ("Ask first", &company.ask_first)] {
        if !list.is_empty() {
            out.push_str(&format!("\n{head}\n{}", folded(&with_reasons(list).replace('\u{a0}', " "))));
        }
    }
    if !recipe.variations.is_empty() {
        out.push_str("\nVariations\n");
        for variation in &recipe.variations {
            let made = variation
                .laid
                .working
                .line(Id::Finished)
                .or(variation.laid.working.line(Id::FinishedWeight))
                .map_or(String::new(), |line| plainly(variation, line));
            out.push_str(&format!("{:<50}{:>12}\n", cut(&variation.name, 49), made.replace('\u{a0}', " ")));
        }
    }
    out
}

/// A text in lines of 80 columns, two blanks before each.
fn folded(text: &str) -> String {
    const WIDE: usize = 78;
    let mut lines = vec![String::new()];
    for word in text.split(' ') {
        let last = lines.last().map_or(0, |line| line.chars().count());
        if last > 0 && last + 1 + word.chars().count() > WIDE {
            lines.push(String::new());
        }
        if let Some(line) = lines.last_mut() {
            if !line.is_empty() {
                line.push(' ');
            }
            line.push_str(word);
        }
    }
    lines.into_iter().map(|line| format!("  {line}\n")).collect()
}

/// A text cut to a column, with a mark where something is missing.
fn cut(text: &str, columns: usize) -> String {
    if text.chars().count() <= columns {
        return text.to_string();
    }
    text.chars().take(columns - 1).chain(['…']).collect()
}

fn as_json(recipe: &WorkedRecipe, book: &Formulary) -> String {
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
