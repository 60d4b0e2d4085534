//! The rules of this program as a script: rounding, kitchen measures, a pass over lines, targets, keeping, cautions.
//!
//! Each part says which file of this program it repeats; a test runs both over random settings and compares what they
//! show. What is data here is data there: the ladder, the measures, the limits are written out of it.

use serde_json::{Value, json};

use crate::caution::{RULES, Rule};
use crate::formula::Formula;
use crate::formula::equation::places_of;
use crate::formula::expr::{Expr, Fold, Function, Op};
use crate::keeping::{LADDER, Rung, Test};
use crate::materia::{Figure, GLYCEROL_MOST, SUCROSE_MOST};
use crate::measure::{Measure, decimal, kitchen, show};
use crate::working::{Id, Rounds};

use super::kind;

const PARTS: [&str; 4] = [
    include_str!("measure.js"),
    include_str!("working.js"),
    include_str!("equation.js"),
    include_str!("rules.js"),
];

/// What a theme's script may ask.
const ASKED: &str = "open, work, batch, leadsTo, turn, impossible, evaluate, equation, shown, plainly, between, other, \
                     kitchenVolume, kitchenWeight, judge, because, cautions, odd, read, showUsual";

/// The script, for a site that uses these formulas. It needs that of the formulas before it, and stores itself in
/// `globalThis.stillroomReader`.
pub fn script(formulas: &[&Formula]) -> String {
    let mut text = String::from(
        "\"use strict\";\n// The rules that this book's numbers were worked by, for a reader who puts in her own: the same \
         steps in the same order\n// as in the program that pressed it. What a formula is stands in formulas.js.\n(() => {\n  \
         const { formulas, pow, greater } = globalThis.stillroomFormulas;\n",
    );
    text.push_str(&format!("  const book = {};\n", book(formulas)));
    for part in PARTS {
        text.push('\n');
        text.push_str(part);
    }
    text.push_str(&format!(
        "\n  globalThis.stillroomReader = {{\n    {ASKED},\n    first: book.first,\n  }};\n}})();\n"
    ));
    text
}

/// What the rules go by, as data.
fn book(formulas: &[&Formula]) -> Value {
    let of = |value: fn(&Formula) -> Option<Value>| -> serde_json::Map<String, Value> {
        formulas.iter().filter_map(|formula| Some((formula.id.to_string(), value(formula)?))).collect()
    };
    let many = |formula: &Formula| {
        let places = formula.with.iter().enumerate().filter(|(_, symbol)| symbol.many);
        Some(json!(places.map(|(at, _)| at).collect::<Vec<_>>()))
    };
    let rounds = Id::ALL.iter().filter_map(|id| match id.rounds() {
        Rounds::Near => None,
        Rounds::Up => Some((id.text().to_string(), json!("up"))),
        Rounds::Down => Some((id.text().to_string(), json!("down"))),
    });
    let first: Vec<&str> = Id::ALL.iter().filter(|id| id.first()).map(|id| id.text()).collect();
    let units = Measure::all().filter_map(|measure| {
        let kind = kind(measure.dimension(), measure == Measure::PerCent);
        let factor = measure.factor();
        (!kind.is_empty()).then(|| {
            json!([measure.spellings(), kind, [factor.numerator() as f64, factor.denominator() as f64]])
        })
    });
    json!({
        "trees": of(|formula| Some(tree(&formula.is))),
        "many": of(many),
        "accuracy": of(|formula| formula.accuracy.map(|accuracy| json!(accuracy))),
        "rounds": rounds.collect::<serde_json::Map<_, _>>(),
        "first": first,
        "rungs": kitchen::measures(),
        "ounce": Measure::OzWeight.factor().to_f64(),
        "fluidOunce": Measure::FlOz.factor().to_f64(),
        "units": units.collect::<Vec<_>>(),
        "activityKnown": [
            [json!(Id::GlycerolInWater.text()), json!(GLYCEROL_MOST.value)],
            [json!(Id::SugarInWater.text()), json!(SUCROSE_MOST.value)],
        ],
        "cautions": RULES.iter().filter(|rule| rule.watched.is_some()).map(caution).collect::<serde_json::Map<_, _>>(),
        "ladder": LADDER.iter().map(rung).collect::<Vec<_>>(),
    })
}

fn rung(rung: &Rung) -> Value {
    json!({
        "class": rung.class,
        "words": rung.words,
        "verdict": rung.verdict.words(),
        "because": rung.because,
        "all": rung.all.iter().map(test).collect::<Vec<_>>(),
    })
}

/// A rule that figures decide: how much it weighs, and its words.
fn caution(rule: &Rule) -> (String, Value) {
    (rule.id.to_string(), json!([rule.weight.word(), rule.lead, rule.text]))
}

fn test(test: &Test) -> Value {
    let row = |kind: &str, id: Id, limit: &Figure| {
        json!([kind, id.text(), limit.value, show(limit.value, limit.unit, 2.min(limit.unit.places))])
    };
    match *test {
        Test::AtLeast(id, limit) => row("least", id, limit),
        Test::AtMost(id, limit) => row("most", id, limit),
        Test::Has(id) => json!(["has", id.text()]),
        Test::Is(id) => json!(["is", id.text()]),
        Test::HasNot(id) => json!(["has-not", id.text()]),
        Test::MeasuredAcid(limit) => json!(["acid", "", limit.value]),
    }
}

/// An expression as data: a number as it is printed, a symbol as its place, else `[op, ...]`.
fn tree(expr: &Expr) -> Value {
    match expr {
        Expr::Number(number) => json!(decimal(*number, places_of(*number))),
        Expr::Figure(figure) => {
            json!(show(figure.value, figure.unit, places_of(figure.value * figure.unit.printed)))
        }
        Expr::Symbol(symbol) => json!(symbol.index()),
        Expr::One(Function::Exp, of) => json!(["exp", tree(of)]),
        Expr::One(Function::Ln, of) => json!(["ln", tree(of)]),
        Expr::One(Function::Up, of) => json!(["up", tree(of)]),
        Expr::One(Function::Down, of) => json!(["down", tree(of)]),
        Expr::Two(op, a, b) => {
            let op = match op {
                Op::Add => "+",
                Op::Sub => "-",
                Op::Mul => "*",
                Op::Div => "/",
                Op::Min => "min",
                Op::Max => "max",
                Op::Pow => "^",
            };
            json!([op, tree(a), tree(b)])
        }
        Expr::Each(Fold::Sum, of) => json!(["sum", tree(of)]),
        Expr::Each(Fold::Product, of) => json!(["product", tree(of)]),
        Expr::Look(relation, of) => json!(["look", relation.words, tree(of)]),
        Expr::Choose(parts) => {
            let [a, b, then, otherwise] = &**parts;
            json!(["if", tree(a), tree(b), tree(then), tree(otherwise)])
        }
    }
}
