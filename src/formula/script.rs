//! The fourth reading of a formula: a function of a page's script, that a student can read.
//!
//! The tree is written as it stands, in its own order, with our own `exp`, `ln` and `pow`: the script gets the same
//! bits as [`super::evaluate`]. A test runs both and compares them.

use std::collections::BTreeMap;
use std::fmt::Write;

use super::expr::{Expr, Fold, Formula, Function, Op};
use crate::materia::{Law, Relation};

/// What formulas are made of, written once: the exact functions, and how a table or a series is read.
const GROUND: &str = include_str!("ground.js");

/// How tightly a piece of text holds together: what is looser stands in brackets inside what is tighter.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Holds {
    Sum,
    Product,
    Whole,
}

/// A script that holds these formulas, each a function of its own under its name in the catalogue, with a comment that
/// says what it gives, where it comes from and where it holds. It stores them in `globalThis.stillroomFormulas`: the
/// functions in `formulas`, the tables and series they read in `relations`, and what a search over them needs.
pub fn script(formulas: &[&Formula]) -> String {
    let mut relations = BTreeMap::new();
    formulas.iter().for_each(|formula| note_relations(&formula.is, &mut relations));
    let mut text = String::from(GROUND);
    text.push_str("\n  // Published tables and series, each read inside its domain only.\n");
    for relation in relations.values() {
        let _ = writeln!(text, "  relations[{:?}] = {};", relation.id, law(relation));
    }
    text.push_str("\n  // The formulas.\n");
    for formula in formulas {
        text.push_str(&function(formula));
    }
    text.push_str("\n  globalThis.stillroomFormulas = { formulas, relations, pow, greater };\n})();\n");
    text
}

fn function(formula: &Formula) -> String {
    let names: Vec<String> = formula.with.iter().map(|symbol| camel(symbol.words)).collect();
    let source = [formula.source.work.map_or("", |work| work.title()), formula.source.place.as_ref()]
        .into_iter()
        .filter(|text| !text.is_empty())
        .collect::<Vec<_>>()
        .join(", ");
    let body =
        write(&formula.is, &names, &formula.with.iter().map(|symbol| symbol.many).collect::<Vec<_>>(), false)
            .0;
    let comment = [formula.gives.words, &source, formula.holds].into_iter().filter(|text| !text.is_empty());
    format!(
        "\n  // {}.\n  formulas[{:?}] = ({}) =>\n    {body};\n",
        comment.collect::<Vec<_>>().join("; ").replace('\n', " "),
        formula.id,
        names.join(", ")
    )
}

/// `each_gram_keeps` as a name in a script.
fn camel(words: &str) -> String {
    let mut name = String::new();
    let mut upper = false;
    for c in words.chars() {
        match c {
            '_' | ' ' => upper = true,
            c if upper => {
                name.extend(c.to_uppercase());
                upper = false;
            }
            c => name.push(c),
        }
    }
    name
}

/// An expression as text, and how tightly it holds. `each` is true inside a sum or product, where a symbol of many
/// lines stands for one of them.
fn write(expr: &Expr, names: &[String], many: &[bool], each: bool) -> (String, Holds) {
    let inner = |expr: &Expr| write(expr, names, many, each);
    let bare = |expr: &Expr| inner(expr).0;
    match expr {
        Expr::Number(number) => literal(*number),
        Expr::Figure(figure) => literal(figure.value),
        Expr::Symbol(symbol) => {
            let name = &names[symbol.index()];
            let text = match (each, many[symbol.index()]) {
                (true, true) => format!("one({name}, i)"),
                (false, true) => format!("one({name}, 0)"),
                _ => name.clone(),
            };
            (text, Holds::Whole)
        }
        Expr::One(Function::Exp, of) => (format!("exp({})", bare(of)), Holds::Whole),
        Expr::One(Function::Ln, of) => (format!("ln({})", bare(of)), Holds::Whole),
        Expr::One(Function::Up, of) => (format!("Math.ceil({} - PARTED)", bare(of)), Holds::Whole),
        Expr::One(Function::Down, of) => (format!("Math.floor({} + PARTED)", bare(of)), Holds::Whole),
        Expr::Two(op, a, b) => {
            let (sign, holds) = match op {
                Op::Add => (" + ", Holds::Sum),
                Op::Sub => (" - ", Holds::Sum),
                Op::Mul => (" * ", Holds::Product),
                Op::Div => (" / ", Holds::Product),
                Op::Min => return (format!("lesser({}, {})", bare(a), bare(b)), Holds::Whole),
                Op::Max => return (format!("greater({}, {})", bare(a), bare(b)), Holds::Whole),
                Op::Pow => return (format!("pow({}, {})", bare(a), bare(b)), Holds::Whole),
            };
            // Brackets wherever leaving them out would change the order: on the right already for what holds alike.
            let (a, holds_a) = inner(a);
            let (b, holds_b) = inner(b);
            let a = if holds_a < holds { format!("({a})") } else { a };
            let b = if holds_b <= holds { format!("({b})") } else { b };
            (format!("{a}{sign}{b}"), holds)
        }
        Expr::Each(fold, of) => {
            let lists =
                symbols(of).into_iter().filter(|symbol| many[*symbol]).map(|symbol| names[symbol].as_str());
            let fold = match fold {
                Fold::Sum => "sum",
                Fold::Product => "product",
            };
            let text = write(of, names, many, true).0;
            (format!("{fold}([{}], (i) => {text})", lists.collect::<Vec<_>>().join(", ")), Holds::Whole)
        }
        Expr::Look(relation, of) => (format!("look({:?}, {})", relation.id, bare(of)), Holds::Whole),
        Expr::Choose(parts) => {
            let [a, b, then, otherwise] = &**parts;
            (format!("({} < {} ? {} : {})", bare(a), bare(b), bare(then), bare(otherwise)), Holds::Whole)
        }
    }
}

/// A number in the fewest digits that read back to the same bits; one below nothing stands in brackets.
fn literal(number: f64) -> (String, Holds) {
    let text = format!("{number:?}");
    (if number < 0.0 { format!("({text})") } else { text }, Holds::Whole)
}

/// The symbols of an expression, each once, in the order in which they stand.
fn symbols(expr: &Expr) -> Vec<usize> {
    fn walk(expr: &Expr, found: &mut Vec<usize>) {
        match expr {
            Expr::Number(_) | Expr::Figure(_) => {}
            Expr::Symbol(symbol) if found.contains(&symbol.index()) => {}
            Expr::Symbol(symbol) => found.push(symbol.index()),
            Expr::One(_, of) | Expr::Each(_, of) | Expr::Look(_, of) => walk(of, found),
            Expr::Two(_, a, b) => {
                walk(a, found);
                walk(b, found);
            }
            Expr::Choose(parts) => parts.iter().for_each(|part| walk(part, found)),
        }
    }
    let mut found = Vec::new();
    walk(expr, &mut found);
    found
}

fn note_relations(expr: &Expr, found: &mut BTreeMap<&'static str, &'static Relation>) {
    match expr {
        Expr::Number(_) | Expr::Figure(_) | Expr::Symbol(_) => {}
        Expr::One(_, of) | Expr::Each(_, of) => note_relations(of, found),
        Expr::Two(_, a, b) => {
            note_relations(a, found);
            note_relations(b, found);
        }
        Expr::Look(relation, of) => {
            note_relation(relation, found);
            note_relations(of, found);
        }
        Expr::Choose(parts) => parts.iter().for_each(|part| note_relations(part, found)),
    }
}

/// A relation, and those that it is made of.
fn note_relation(relation: &'static Relation, found: &mut BTreeMap<&'static str, &'static Relation>) {
    match &relation.law {
        Law::Product(other, _) | Law::Inverse(other) => note_relation(other, found),
        Law::Table(_) | Law::Series(_) => {}
    }
    found.insert(relation.id, relation);
}

/// A relation as plain data.
fn law(relation: &Relation) -> String {
    let (low, high) = relation.within;
    let law = match &relation.law {
        Law::Table(points) => {
            let points: Vec<String> = points.iter().map(|(x, y)| format!("[{x:?}, {y:?}]")).collect();
            format!("table: [{}]", points.join(", "))
        }
        Law::Series(coefficients) => {
            let each: Vec<String> = coefficients.iter().map(|c| format!("{c:?}")).collect();
            format!("series: [{}]", each.join(", "))
        }
        Law::Product(other, figure) => format!("product: {:?}, over: {:?}", other.id, figure.value),
        Law::Inverse(other) => format!("inverse: {:?}", other.id),
    };
    format!("{{ within: [{low:?}, {high:?}], {law} }}")
}
