//! Work it yourself: a recipe's lines for the page's script, and the same sums with blanks for a pencil.

use super::show::data_element;
use super::view::{Blank, PartLink, Slate};
use crate::formula::Line;
use crate::formula::equation::{Form, Writer, escape};
use crate::formula::expr::Symbol;
use crate::formulary::Formulary;
use crate::reader;
use crate::variation::{Worked, WorkedRecipe};
use crate::working::How;

/// Stands in a sum where a blank is to come; no text holds it.
const OPEN: char = '\u{1}';
/// A blank to write in.
const BLANK: &str = "<span class=\"blank\"></span>";
/// A sum of more figures than this besides the measured one is no sum for a kitchen.
const MOST_FIGURES: usize = 3;

/// The view of a recipe's slate.
pub(super) fn slate(whole: &WorkedRecipe, book: &Formulary, part: PartLink) -> Slate {
    Slate {
        part,
        data_html: data_element("application/json", "slate-data", &reader::slate(whole, book)),
        blanks: blanks(&whole.base),
    }
}

/// For each line that is measured, the first result of the short sum that follows from it at once.
fn blanks(worked: &Worked) -> Vec<Blank> {
    let working = &worked.laid.working;
    let measured = working.lines().filter(|line| working.entry(*line).measurable);
    measured.filter_map(|line| first_after(worked, line)).collect()
}

fn first_after(worked: &Worked, measured: Line) -> Option<Blank> {
    let working = &worked.laid.working;
    let few = |line: &Line| working.entry(*line).how.inputs().count() <= MOST_FIGURES;
    let gives = working.following(measured).map(|(_, line)| line).find(few)?;
    let How::Worked(by) = &working.entry(gives).how else { return None };
    let unit = |line: Line| working.entry(line).unit.text;
    let open =
        |line: Line| format!("{OPEN}{}{}", if unit(line).is_empty() { "" } else { "\u{a0}" }, unit(line));
    let atom = |symbol: Symbol, at: usize| match by.with[symbol.index()][at] {
        line if line == measured => open(line),
        line => worked.shown(line),
    };
    let sum = Writer { form: Form::Plain, atom: &atom, with: Some(&by.with) }.write(&by.formula.is);
    Some(Blank {
        measured: working.entry(measured).name.clone(),
        unit: unit(measured).to_string(),
        sum_html: escape(&sum).replace(OPEN, BLANK),
        gives: working.entry(gives).name.clone(),
        gives_unit: unit(gives).to_string(),
        usual: worked.shown(measured),
    })
}
