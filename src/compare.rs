//! Two workings side by side: every line that tools rely on, in one order, with what each comes to.

use crate::measure::{show, usual_places};
use crate::variation::Worked;
use crate::working::Id;

/// A line of both.
#[derive(Clone, PartialEq, Debug)]
pub struct Row {
    /// Its id.
    pub id: Id,
    /// Its name, as the first that has it calls it.
    pub name: String,
    /// What it comes to on the left, as printed.
    pub left: Option<String>,
    /// And on the right.
    pub right: Option<String>,
    /// How many times as much the right is, where both have it.
    pub times: Option<f64>,
    /// Whether they print differently.
    pub differs: bool,
}

/// The lines of both, in the order of [`Id::ALL`]; what neither has is left out.
pub fn rows(left: &Worked, right: &Worked) -> Vec<Row> {
    let rows = Id::ALL.iter().filter_map(|id| {
        let line = |of: &Worked| of.laid.working.line(*id);
        let shown = |of: &Worked| {
            let line = line(of)?;
            let unit = of.laid.working.entry(line).unit;
            Some(show(of.at(line), unit, usual_places(of.at(line), unit)))
        };
        let name = |of: &Worked| Some(of.laid.working.entry(line(of)?).name.clone());
        let (a, b) = (shown(left), shown(right));
        Some(Row {
            id: *id,
            name: name(left).or_else(|| name(right))?,
            times: left.value(*id).zip(right.value(*id)).filter(|(left, _)| *left != 0.0).map(|(l, r)| r / l),
            differs: a != b,
            left: a,
            right: b,
        })
    });
    rows.collect()
}
