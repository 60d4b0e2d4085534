//! What a page's script works with: a recipe's lines as data, and the rules of this program as a script.
//!
//! [`slate`] lays out one recipe; [`script`] gives what every page shares. A theme's own script only asks these:
//! it holds no formula, no limit and no rounding.

mod script;

pub use script::script;

use serde_json::{Map, Value, json};

use crate::bibliography::Standing;
use crate::caution::{Caution, Piece, RULES, Seen, Watch, When, cautions};
use crate::formula::Line;
use crate::formulary::Formulary;
use crate::measure::{Dimension, Unit};
use crate::method::Ingredient;
use crate::variation::{Worked, WorkedRecipe};
use crate::working::{Entry, How, Working};

/// Ids of kitchen figures that stand under a name of their own, not under that of the guess they settle.
const KITCHEN: &str = "kitchen-";
/// Ids of ranges that a recipe itself declares begin so.
const LATITUDE: &str = "recipe-";

/// A recipe and its variations as a page's script reads them.
pub fn slate(whole: &WorkedRecipe, book: &Formulary) -> Value {
    let mut units: Vec<&'static Unit> = Vec::new();
    let base = cautions(&Seen { worked: &whole.base, recipe: &whole.recipe, book, whole: None });
    let ways: Vec<Value> = whole
        .each()
        .map(|(worked, recipe)| {
            let seen = Seen { worked, recipe, book, whole: None };
            let mut way = way(&seen, &whole.base, &mut units);
            // What the page does not say already: this way's own cautions, and those that fall away with it.
            let own = cautions(&seen);
            let beyond = |these: &[Caution], those: &[Caution]| -> Vec<Value> {
                let told = |caution: &&Caution| {
                    !those.iter().any(|other| other.id == caution.id) && !is_watched(&caution.rule)
                };
                let row = |caution: &Caution| json!([caution.weight.word(), caution.lead, caution.text]);
                these.iter().filter(told).map(row).collect()
            };
            way.insert("more".to_string(), json!(beyond(&own, &base)));
            way.insert("less".to_string(), json!(beyond(&base, &own)));
            Value::Object(way)
        })
        .collect();
    json!({"units": units.iter().map(|unit| unit_row(unit)).collect::<Vec<_>>(), "ways": ways})
}

fn is_watched(rule: &str) -> bool {
    RULES.iter().any(|other| other.id == rule && other.watched.is_some())
}

/// One way of making it.
fn way(seen: &Seen, base: &Worked, units: &mut Vec<&'static Unit>) -> Map<String, Value> {
    let Seen { worked, recipe, .. } = seen;
    let working = &worked.laid.working;
    let mut place = |unit: &'static Unit| {
        let known = units.iter().position(|other| std::ptr::eq(*other, unit) || **other == *unit);
        known.unwrap_or_else(|| {
            units.push(unit);
            units.len() - 1
        })
    };
    let lines: Vec<Value> = working
        .lines()
        .map(|of| {
            let entry = working.entry(of);
            let unit = place(entry.unit);
            // What the recipe itself has is told by its place there.
            match twin(worked, of, base) {
                Some(same) => json!(same.index()),
                None => line(entry, unit),
            }
        })
        .collect();
    let ids: Map<String, Value> =
        working.claimed().map(|(id, line)| (id.text().to_string(), json!(line.index()))).collect();
    let measurable = working.lines().filter(|line| working.entry(*line).measurable);
    let mut way = Map::new();
    let mut put = |key: &str, value: Value| way.insert(key.to_string(), value);
    put("name", json!(worked.name));
    put("ph", json!(recipe.ph()));
    put("ids", Value::Object(ids));
    put("lines", json!(lines));
    put("measured", json!(measurable.map(Line::index).collect::<Vec<_>>()));
    put("made", json!(worked.made().map(Line::index)));
    put("vessel", json!(worked.laid.preparation.map(|kind| [kind.vessel.words().0, kind.vessel.words().1])));
    put("put-in", json!(worked.laid.ingredients.iter().map(ingredient).collect::<Vec<_>>()));
    put("watched", json!(watched(seen)));
    way
}

/// The line of the recipe itself that is the same in a variation: of the same name, with the same number or worked alike
/// from lines of the same names; none for the recipe's own lines.
fn twin(worked: &Worked, line: Line, base: &Worked) -> Option<Line> {
    if std::ptr::eq(worked, base) {
        return None;
    }
    let (entry, of) = (worked.laid.working.entry(line), &base.laid.working);
    let same = of.lines().find(|other| of.entry(*other).name == entry.name)?;
    let other = of.entry(same);
    let alike = match (&entry.how, &other.how) {
        (How::Worked(by), How::Worked(other)) => {
            let names = |working: &Working, with: &[Vec<Line>]| -> Vec<Vec<String>> {
                let name = |line: &Line| working.entry(*line).name.clone();
                with.iter().map(|lines| lines.iter().map(name).collect()).collect()
            };
            let alike = names(&worked.laid.working, &by.with) == names(of, &other.with);
            by.formula.id == other.formula.id && alike
        }
        (ours, theirs) => ours == theirs,
    };
    (alike && entry.unit == other.unit).then_some(same)
}

/// `[name, unit, kind, ...]`: see `working.js`.
fn line(entry: &Entry, unit: usize) -> Value {
    let Entry { name, .. } = entry;
    match &entry.how {
        How::Given { value, grows } => json!([name, unit, if *grows { "g" } else { "r" }, value]),
        How::Assumed { id, low, usual, high, .. } => {
            json!([name, unit, if id.starts_with(LATITUDE) { "l" } else { "a" }, low, usual, high])
        }
        How::Published { id, value, source } => {
            let own = source.standing == Standing::Formulary
                && (id.starts_with(KITCHEN) || crate::materia::assumptions().any(|guess| guess.id == id));
            json!([name, unit, if own { "k" } else { "p" }, value])
        }
        How::Worked(by) => {
            let bound = by.with.iter().map(|lines| match lines[..] {
                [one] => json!(one.index()),
                _ => json!(lines.iter().map(|line| line.index()).collect::<Vec<_>>()),
            });
            json!([name, unit, "w", by.formula.id, bound.collect::<Vec<_>>()])
        }
    }
}

/// Which dimension, in a word; empty where no unit of a kitchen has it.
fn kind(dimension: Dimension, per_cent: bool) -> &'static str {
    match dimension {
        Dimension::VOLUME => "volume",
        Dimension::MASS => "mass",
        Dimension::TIME => "time",
        Dimension::TEMPERATURE => "temperature",
        Dimension::MONEY => "money",
        Dimension::LENGTH => "length",
        Dimension::ENERGY => "energy",
        Dimension::COUNT => "count",
        Dimension::NONE if per_cent => "%",
        _ => "",
    }
}

/// A unit as the script knows it.
pub fn unit_row(unit: &Unit) -> Value {
    json!({
        "text": unit.text,
        "kind": kind(unit.dimension, unit.printed == 100.0),
        "places": unit.places,
        "printed": unit.printed,
    })
}

/// `[name, weight, volume, keeps]`.
fn ingredient(item: &Ingredient) -> Value {
    let form = item.form.map_or(String::new(), |form| format!(", {form}"));
    json!([
        format!("{}{form}", item.words),
        item.weight.map(Line::index),
        item.volume.map(Line::index),
        item.keeps
    ])
}

/// The cautions that figures decide: `[rule, id, when, says]`.
fn watched(seen: &Seen) -> Vec<Value> {
    let mut rows = Vec::new();
    for rule in RULES {
        for Watch { key, when, says, .. } in rule.watches(seen) {
            let id = rule.case_id(&key);
            rows.push(json!([rule.id, id, when_row(&when), says.iter().map(piece_row).collect::<Vec<_>>()]));
        }
    }
    rows
}

fn when_row(when: &When) -> Value {
    let places = |lines: &[Line]| lines.iter().map(|line| line.index()).collect::<Vec<_>>();
    match when {
        When::Always => json!(["always"]),
        When::AtLeast(line, least) => json!(["at-least", line.index(), least]),
        When::More(line, most) => json!(["more", line.index(), most]),
        When::Under(lines, least) => json!(["under", places(lines), least]),
        When::Over(line, most) => json!(["over", line.index(), most]),
        When::Passes(line, most) => json!(["passes", line.index(), most.index()]),
        When::Unkept => json!(["unkept"]),
    }
}

fn piece_row(piece: &Piece) -> Value {
    match piece {
        Piece::Words(words) => json!(["words", words]),
        Piece::Shown(line) => json!(["shown", line.index()]),
        Piece::Plain(line) => json!(["plain", line.index()]),
        Piece::Times(line, by) => json!(["times", line.index(), by.index()]),
        Piece::High(line) => json!(["high", line.index()]),
        Piece::CarefulEnd(line) => json!(["careful-end", line.index()]),
        Piece::Lasts(days, limit) => json!(["lasts", days.index(), limit]),
    }
}
