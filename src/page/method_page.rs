//! *Method and sources*: every formula, figure and assumption that the book uses, and where.

use std::collections::BTreeMap;

use super::ledger::formula_row;
use super::show::cite;
use super::view::{FigureRow, FormulaRow, Frame, Link, MethodPage, WorkRow};
use crate::bibliography::Work;
use crate::formula::Formula;
use crate::formula::catalogue;
use crate::formula::equation::escape;
use crate::materia::{assumptions, figures, relations};
use crate::measure::{show, show_usual};
use crate::variation::Worked;
use crate::working::How;

/// Which pages use what: from the id of a formula, figure or assumption to the links of its users.
pub type Users = BTreeMap<String, Vec<Link>>;

/// Notes every formula, figure and assumption of a working as used by `link`.
pub fn note_users(worked: &Worked, link: &Link, users: &mut Users) {
    for entry in worked.laid.working.entries() {
        let id = match &entry.how {
            How::Worked(by) => format!("formula-{}", by.formula.id),
            How::Assumed { id, .. } | How::Published { id, .. } => format!("figure-{id}"),
            How::Given { .. } => continue,
        };
        let links = users.entry(id).or_default();
        if !links.iter().any(|known| known.href == link.href) {
            links.push(link.clone());
        }
    }
}

/// The formulas that are used, in the catalogue's order.
pub fn used(users: &Users) -> Vec<&'static Formula> {
    catalogue::all()
        .into_iter()
        .filter(|formula| users.contains_key(&format!("formula-{}", formula.id)))
        .collect()
}

const HOW: &str = "<p>A recipe is declared once. Its method is laid down as lines: each line is what the recipe says, a \
published figure, an assumption, or a formula from lines above it. The same formula gives the value, the range and \
the equation you read, so what stands on a page is what was computed.</p>\
<p>Full precision is kept until a figure is printed; then it is rounded once, half away from zero. Where a sum worked \
again from the printed figures would differ in its last place, its inputs print a place more. A calculator and this \
page therefore agree.</p>\
<p>A range comes from the assumptions: the least, the usual and the most of each, crossed with one another. Measuring \
what you strained removes most of it.</p>\
<p>Three kinds of knowledge are kept apart. <b>Worked</b> is computed. <b>Advised</b> and <b>assumed</b> are guidelines \
and guesses, with a source or the words “common practice, no source”. <b>Handed down</b> is tradition; the book passes it \
on and does not vouch for it.</p>\
<p>The formulas of this book are also there as <a href=\"formulas.js\">functions of a script</a>, to be read and run: a test holds \
them to the same results, to the last bit.</p>\
<p>What others print of the same stands beside ours in <a href=\"checks.html\">Checks</a>.</p>\
<p>Where sources differ, this is what the book takes, and custom stands beside it.</p>\
<ul><li>Keeping: 65\u{a0}% of sugar by weight keeps a neutral syrup by the pharmacy's rule, though its water activity is near \
0.87. Such a syrup is called class A, cool, and cold once opened; only a water activity of 0.85 or less, its uncertainty added, \
is called a shelf.</li>\
<li>Honey: its density follows its water, about 336\u{a0}g to a US cup at 17\u{a0}%; the table of foods prints 339\u{a0}g.</li>\
<li>Plant in a dose: only what left the marc is counted. Custom counts the whole plant, which comes to more.</li>\
<li>Sugar that water holds: the series of 1962, 66.7\u{a0}% at 20\u{a0}°C; an older table has 67.1.</li>\
<li>Spirit: weights add and volumes shrink; the kitchen's rule, which adds volumes, stands beside the exact figure.</li>\
<li>Spirit to cover free water: the spirit's own volume is counted in; the pharmacy's rule gives the pure alcohol for the \
syrup as it stands.</li>\
<li>Dissolved sugar takes up 0.63\u{a0}mL a gram; the 0.647 of the free-water rule is that rule's own convention, no density.</li>\
</ul>";

/// The view of *Method and sources*.
pub fn page(frame: Frame, users: &Users) -> MethodPage {
    let of = |id: &str| users.get(id).cloned().unwrap_or_default();
    let root = frame.root.clone();
    let formulas: Vec<FormulaRow> = used(users)
        .into_iter()
        .map(|formula| {
            let mut row = formula_row(formula, &root);
            row.users = of(&row.id);
            row
        })
        .collect();
    let published = figures().map(|figure| {
        let places = (0..6).find(|&places| {
            let value = figure.value * figure.unit.printed;
            (crate::measure::rounded(value, places) - value).abs() < 1e-9
        });
        FigureRow {
            id: format!("figure-{}", figure.id),
            name: figure.words.to_string(),
            value: show(figure.value, figure.unit, places.unwrap_or(5)),
            between: String::new(),
            source_html: cite(&figure.source, &root),
            users: of(&format!("figure-{}", figure.id)),
        }
    });
    let tables = relations().map(|relation| {
        let end = |x: f64| show_usual(x, relation.of);
        FigureRow {
            id: format!("figure-{}", relation.id),
            name: relation.words.to_string(),
            value: "a table".to_string(),
            between: format!("{} to {}", end(relation.within.0), end(relation.within.1)),
            source_html: cite(&relation.source, &root),
            users: Vec::new(),
        }
    });
    let assumed = assumptions().map(|assumption| {
        let value = |x: f64| show_usual(x, assumption.unit);
        FigureRow {
            id: format!("figure-{}", assumption.id),
            name: assumption.words.to_string(),
            value: value(assumption.usual),
            between: format!("{} to {}", value(assumption.low), value(assumption.high)),
            source_html: format!("{}. {}", cite(&assumption.source, &root), escape(assumption.advice)),
            users: of(&format!("figure-{}", assumption.id)),
        }
    });
    let works = Work::ALL.iter().map(|work| {
        let year = if work.year().is_empty() { String::new() } else { format!(", {}", work.year()) };
        let html = format!("<cite>{}</cite>. {}{year}", escape(work.title()), escape(work.maker()));
        WorkRow { id: format!("work-{}", work.id()), html }
    });
    MethodPage {
        formulas,
        figures: published.chain(tables).collect(),
        assumptions: assumed.collect(),
        works: works.collect(),
        prose_html: HOW.to_string(),
        frame,
    }
}
