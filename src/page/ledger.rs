//! Worked numbers: the short sum, what unfolds under each line, and the whole working.

use super::show::{between, cite, in_other_system, kind, other, plainly, source_of};
use super::view::{EveryRow, Fold, FormulaRow, Kind, Ledger, LedgerRow, Link, PartLink};
use crate::formula::equation::{Form, Writer, escape};
use crate::formula::expr::Symbol;
use crate::formula::{Formula, Line, Use};
use crate::measure::{decimal, show_usual, whole};
use crate::variation::Worked;
use crate::working::{How, Id};

/// The ledger of a recipe; anchors start with `prefix`.
pub fn ledger(worked: &Worked, prefix: &str, root: &str, part: PartLink) -> Ledger {
    let working = &worked.laid.working;
    let mut first: Vec<Line> = Vec::new();
    for (_, line) in working.claimed().filter(|(id, _)| id.first()) {
        if !first.contains(&line) {
            first.push(line);
        }
    }
    let under = working.under(&first);
    let rows = first
        .iter()
        .zip(&under)
        .map(|(line, under)| {
            let mut row = row(worked, *line, prefix, root);
            row.fold = fold(worked, *line, under, prefix, root);
            row
        })
        .collect();
    Ledger { part, short_sum: short_sum(worked), matters: matters(worked), rows, whole: None }
}

/// Every line of a working that is no recipe's, in order.
pub fn lines(worked: &Worked, prefix: &str, root: &str) -> Vec<LedgerRow> {
    let lines = worked.laid.working.lines();
    lines.map(|line| as_asked(worked, line, row(worked, line, prefix, root))).collect()
}

/// Where nothing stands in a recipe, and where a question sets it, what is given was asked for.
fn as_asked(worked: &Worked, line: Line, row: LedgerRow) -> LedgerRow {
    let set = worked.set.iter().any(|(of, _)| *of == line);
    let asked = set || (row.kind == Kind::Declared && worked.laid.preparation.is_none());
    if !asked || row.between == AS_MEASURED {
        return row;
    }
    LedgerRow {
        kind: Kind::Declared,
        between: "as asked".to_string(),
        source_html: "As asked.".to_string(),
        ..row
    }
}

/// Lines of a working with what each is worked from at once, in order: what a key shows of an answer.
pub fn lines_of(worked: &Worked, lines: &[Line], prefix: &str, root: &str) -> Vec<LedgerRow> {
    let working = &worked.laid.working;
    let inputs = lines.iter().flat_map(|line| working.entry(*line).how.inputs());
    let mut all: Vec<Line> = inputs.chain(lines.iter().copied()).collect();
    all.sort();
    all.dedup();
    all.into_iter().map(|line| as_asked(worked, line, row(worked, line, prefix, root))).collect()
}

/// One sentence that says the sum in the fewest figures.
fn short_sum(worked: &Worked) -> String {
    let shown = |id: Id| worked.laid.working.line(id).map(|line| plainly(worked, line));
    let mut says = Vec::new();
    let poured = [(Id::Water, "water"), (Id::Spirit, "spirit"), (Id::Liquid, liquid(worked))]
        .into_iter()
        .find_map(|(id, words)| Some((shown(id)?, words)));
    if let (Some((poured, words)), Some(strained)) = (&poured, shown(Id::Strained)) {
        says.push(format!("of {poured} of {words}, {strained} runs through the cloth"));
    }
    if let Some(reduced) = shown(Id::Reduced) {
        says.push(format!("reducing leaves {reduced}"));
    }
    if let (Some(sweetener), Some(weight), Some(finished)) =
        (shown(Id::Sweetener), shown(Id::SweetenerWeight), shown(Id::Finished))
    {
        let names = crate::method::list_of(&sweeteners(worked));
        says.push(format!("{sweetener} of {names} ({weight}) makes it {finished}"));
    }
    if let (Some(wax), Some(finished)) = (shown(Id::Wax), shown(Id::Finished)) {
        says.push(format!("{wax} of wax sets it, {finished} in all"));
    }
    if let (Some(plants), Some(area)) = (shown(Id::Plants), shown(Id::Area)) {
        says.push(format!("{plants} of plants cover {area}"));
    }
    if let (Some(weight), Some(pieces)) = (shown(Id::FinishedWeight), worked.value(Id::Pieces)) {
        says.push(format!("{weight} in all make {} pieces", decimal(whole(pieces), 0)));
    }
    if says.is_empty() {
        let doses = worked.value(Id::Doses).map(|doses| decimal(whole(doses), 0));
        says.push(match (shown(Id::Plants), shown(Id::Finished), doses) {
            (Some(plants), None, Some(doses)) => format!("{plants} of plants are {doses} doses"),
            (Some(plants), Some(made), _) => format!("{plants} of plants in {made}"),
            (_, made, _) => made.or(shown(Id::FinishedWeight)).unwrap_or_default() + " in all",
        });
    }
    format!("The short sum: {}. Every line that leads there is below.", says.join("; "))
}

/// What nobody wrote down that moves the result most, and what to do about it; empty where nothing does.
pub fn matters(worked: &Worked) -> String {
    let working = &worked.laid.working;
    let Some((line, (assumed, range))) =
        worked.made().and_then(|line| Some((line, working.matters_most(&worked.set, line)?)))
    else {
        return String::new();
    };
    let How::Assumed { advice, .. } = &working.entry(assumed).how else { return String::new() };
    let unit = working.entry(line).unit;
    let shown = |value: f64| show_usual(value, unit);
    format!(
        "What matters most here is a guess: {}. By itself it takes “{}” from {} to {}. {advice}",
        working.entry(assumed).name,
        working.entry(line).name,
        shown(range.low),
        shown(range.high),
    )
}

/// What extracts, by the word it was put in under.
fn liquid(worked: &Worked) -> &str {
    let line = worked.laid.working.line(Id::Liquid);
    let item = worked.laid.ingredients.iter().find(|item| line.is_some() && item.volume == line);
    item.map_or("liquid", |item| item.words.as_str())
}

fn sweeteners(worked: &Worked) -> Vec<&str> {
    let ingredients = worked.laid.ingredients.iter();
    ingredients
        .filter(|ingredient| ingredient.sweetens())
        .map(|ingredient| ingredient.words.as_str())
        .collect()
}

/// One line as a row, without what unfolds under it.
fn row(worked: &Worked, line: Line, prefix: &str, root: &str) -> LedgerRow {
    let working = &worked.laid.working;
    let entry = working.entry(line);
    let id = working.id_of(line);
    let anchor = match id {
        Some(id) => format!("{prefix}-{}", id.text()),
        None => format!("{prefix}-line-{}", line.index() + 1),
    };
    // What was measured follows from nothing.
    let measured = worked.set.iter().any(|(of, _)| *of == line) && matches!(entry.how, How::Worked(_));
    let (words, figures_html, spoken, long) = match &entry.how {
        How::Worked(by) if !measured => equation(worked, by),
        How::Worked(_) => Default::default(),
        How::Assumed { .. } | How::Given { .. } | How::Published { .. } => Default::default(),
    };
    let range = between(worked, line);
    let ranged = range.is_some();
    let between = range.unwrap_or_else(|| match entry.how {
        How::Given { .. } => AS_SAID.to_string(),
        How::Published { .. } => AS_PUBLISHED.to_string(),
        How::Worked(_) if measured => AS_MEASURED.to_string(),
        _ if worked.ranges[line.index()].is_wide() => "firm to the last place".to_string(),
        _ => "exact".to_string(),
    });
    LedgerRow {
        id: anchor,
        name: entry.name.clone(),
        words,
        figures_html,
        spoken,
        long,
        result: worked.shown(line),
        other: other(worked, line),
        other_us: in_other_system(worked, line),
        between,
        ranged,
        closed: id.is_some() && working.line(Id::Finished) == Some(line),
        measurable: entry.measurable,
        kind: if measured { Kind::Declared } else { kind(&entry.how) },
        source_html: if measured { "As measured.".to_string() } else { source_of(&entry.how, root) },
        fold: None,
    }
}

/// Every line of a working, in order.
pub fn every(worked: &Worked) -> Vec<EveryRow> {
    worked.laid.working.lines().map(|line| in_short(worked, line)).collect()
}

/// One line of the whole working.
fn in_short(worked: &Worked, line: Line) -> EveryRow {
    let entry = worked.laid.working.entry(line);
    EveryRow {
        name: entry.name.clone(),
        sum: match &entry.how {
            How::Worked(by) => {
                let figure = |symbol: Symbol, at: usize| worked.shown(by.with[symbol.index()][at]);
                Writer { form: Form::Plain, atom: &figure, with: Some(&by.with) }.write(&by.formula.is)
            }
            How::Given { .. } => AS_SAID.to_string(),
            How::Published { .. } => AS_PUBLISHED.to_string(),
            How::Assumed { .. } => "assumed".to_string(),
        },
        result: worked.shown(line),
        between: between(worked, line).unwrap_or_default(),
    }
}

/// What stands in place of a range where a number was declared, and where it is published.
const AS_SAID: &str = "as the recipe says";
const AS_PUBLISHED: &str = "as published";
/// The same where somebody measured.
const AS_MEASURED: &str = "as measured";

/// The equation in words, with the figures put in (MathML), spoken, and whether it is long.
fn equation(worked: &Worked, by: &Use) -> (String, String, String, bool) {
    let working = &worked.laid.working;
    let bound = |symbol: Symbol, at: usize| by.with[symbol.index()][at];
    let name = |symbol: Symbol, at: usize| working.entry(bound(symbol, at)).name.clone();
    let figure = |symbol: Symbol, at: usize| worked.shown(bound(symbol, at));
    let writer = |form, atom| Writer { form, atom, with: Some(&by.with) };
    let words = writer(Form::Plain, &name).write(&by.formula.is);
    let spoken = writer(Form::Spoken, &figure).write(&by.formula.is);
    let plain = writer(Form::Plain, &figure).write(&by.formula.is);
    let mathml = writer(Form::MathMl, &figure);
    let (inner, long) = match mathml.column(&by.formula.is) {
        Some(terms) => (column(&terms), true),
        None => (mathml.write(&by.formula.is), plain.chars().count() > 17),
    };
    (words, math(&inner, &spoken), spoken, long)
}

/// More than three terms stand in a column, one a line, as a sum on paper.
fn column(terms: &[(char, String)]) -> String {
    let rows: String = terms
        .iter()
        .enumerate()
        .map(|(n, (sign, term))| {
            let sign = if n == 0 && *sign == '+' { String::new() } else { format!("<mo>{sign}</mo>") };
            format!("<mtr><mtd>{sign}</mtd><mtd>{term}</mtd></mtr>")
        })
        .collect();
    format!("<mtable>{rows}</mtable>")
}

fn math(inner: &str, spoken: &str) -> String {
    format!("<math aria-label=\"{}\">{inner}</math>", escape(spoken))
}

fn fold(worked: &Worked, line: Line, under: &[Line], prefix: &str, root: &str) -> Option<Fold> {
    let working = &worked.laid.working;
    let rows: Vec<LedgerRow> = under.iter().map(|line| row(worked, *line, prefix, root)).collect();
    match &working.entry(line).how {
        How::Worked(by) => {
            let formula = formula_row(by.formula, root);
            Some(Fold {
                rows,
                symbols_html: formula.symbols_html,
                where_text: formula.where_text,
                holds: formula.holds,
                formula: Some(Link {
                    text: "The formula and its source".to_string(),
                    href: format!("{root}method.html#formula-{}", by.formula.id),
                    current: false,
                }),
            })
        }
        _ if rows.is_empty() => None,
        _ => Some(Fold {
            rows,
            symbols_html: String::new(),
            where_text: String::new(),
            holds: String::new(),
            formula: None,
        }),
    }
}

/// A formula in symbols, as *Method and sources* and the folds print it.
pub fn formula_row(formula: &'static Formula, root: &str) -> FormulaRow {
    let sign = |symbol: Symbol, _: usize| formula.with[symbol.index()].sign.to_string();
    let words = |symbol: Symbol, _: usize| formula.with[symbol.index()].words.replace('_', " ");
    let spoken = format!(
        "{} is {}",
        formula.gives.words,
        Writer { form: Form::Spoken, atom: &words, with: None }.write(&formula.is)
    );
    let right = Writer { form: Form::MathMl, atom: &sign, with: None }.write(&formula.is);
    let inner = format!("<mrow><mi>{}</mi><mo>=</mo>{right}</mrow>", escape(formula.gives.sign));
    let explain = std::iter::once(&formula.gives).chain(&formula.with).map(|stands| {
        let unit = stands.unit.text;
        let unit = if unit.is_empty() { String::new() } else { format!(", {unit}") };
        format!("{}\u{a0}= {}{unit}", stands.sign, stands.words.replace('_', " "))
    });
    FormulaRow {
        id: format!("formula-{}", formula.id),
        name: formula.gives.words.to_string(),
        symbols_html: math(&inner, &spoken),
        spoken,
        where_text: explain.collect::<Vec<_>>().join("; "),
        holds: match formula.accuracy {
            Some(accuracy) => format!(
                "{}; within {}",
                formula.holds,
                crate::measure::show(accuracy, formula.gives.unit, formula.gives.unit.places)
            ),
            None => formula.holds.to_string(),
        },
        source_html: cite(&formula.source, root),
        users: Vec::new(),
    }
}
