//! Cautions that hang on a figure, as data: when one holds, and what it says then.
//!
//! The press reads them for the pages; the same rows go to a page's script, so that what a reader puts in sets off
//! the same cautions.

use super::rule::Found;
use crate::formula::Line;
use crate::keeping::{Verdict, judge};
use crate::measure::show_usual;
use crate::span::Span;
use crate::variation::Worked;

/// Minutes of a day.
const DAY: f64 = 1440.0;

/// A case of a rule that figures decide.
#[derive(Clone, PartialEq, Debug)]
pub struct Watch {
    /// Which case it is, as in [`Found`].
    pub key: String,
    /// When it holds.
    pub when: When,
    /// What is put for `{}` in the rule's words.
    pub says: Vec<Piece>,
    /// Where in the recipe.
    pub at: Option<Span>,
}

/// What a figure has to be. The careful end of a line is the end of its range that is worse here.
#[derive(Clone, PartialEq, Debug)]
pub enum When {
    /// Whatever the figures are.
    Always,
    /// A line is at least so much.
    AtLeast(Line, f64),
    /// A line is more than so much.
    More(Line, f64),
    /// Lines together are less than so much, at the careful end.
    Under(Vec<Line>, f64),
    /// A line is more than so much, at the careful end.
    Over(Line, f64),
    /// A line is more than another, at the careful end.
    Passes(Line, Line),
    /// It does not keep.
    Unkept,
}

/// A piece of what a caution says.
#[derive(Clone, PartialEq, Debug)]
pub enum Piece {
    /// Words as they stand.
    Words(String),
    /// A line as its own row prints it.
    Shown(Line),
    /// A line as running text prints it.
    Plain(Line),
    /// A line times another, in the first one's unit.
    Times(Line, Line),
    /// The greater end of a line's range.
    High(Line),
    /// ", 210 mg at the careful end"; nothing where the line has no range.
    CarefulEnd(Line),
    /// "; what is made here would last 120 days", where a line of days comes to more than so many minutes.
    Lasts(Line, f64),
}

impl Watch {
    /// A case that always holds.
    pub(super) fn always(says: Vec<Piece>) -> Watch {
        Watch { key: String::new(), when: When::Always, says, at: None }
    }

    /// The case, where it holds. `ph` is that of the finished preparation, where it was measured.
    pub fn found(&self, worked: &Worked, ph: Option<f64>) -> Option<Found> {
        self.when.holds(worked, ph).then(|| Found {
            key: self.key.clone(),
            of: self.says.iter().map(|piece| piece.text(worked)).collect(),
            at: self.at,
            ..Found::default()
        })
    }
}

impl When {
    fn holds(&self, worked: &Worked, ph: Option<f64>) -> bool {
        let range = |line: &Line| worked.ranges[line.index()];
        match self {
            When::Always => true,
            When::AtLeast(line, least) => worked.at(*line) >= *least,
            When::More(line, most) => worked.at(*line) > *most,
            When::Under(lines, least) => lines.iter().fold(0.0, |sum, line| sum + range(line).low) < *least,
            When::Over(line, most) => range(line).high > *most,
            // What floating point alone parts counts as reached.
            When::Passes(line, most) => range(line).high > worked.at(*most) * (1.0 + 1e-9),
            When::Unkept => judge(worked, ph).rung.verdict != Verdict::Keeps,
        }
    }
}

impl Piece {
    fn text(&self, worked: &Worked) -> String {
        let unit = |line: &Line| worked.laid.working.entry(*line).unit;
        match self {
            Piece::Words(words) => words.clone(),
            Piece::Shown(line) => worked.shown(*line),
            Piece::Plain(line) => show_usual(worked.at(*line), unit(line)),
            Piece::Times(line, by) => show_usual(worked.at(*line) * worked.at(*by), unit(line)),
            Piece::High(line) => show_usual(worked.ranges[line.index()].high, unit(line)),
            Piece::CarefulEnd(line) => worked
                .between(*line)
                .map_or(String::new(), |(_, high)| format!(", {high} at the careful end")),
            Piece::Lasts(days, limit) if worked.at(*days) * DAY > *limit => {
                let days = crate::measure::decimal(worked.at(*days).floor(), 0);
                format!("; what is made here would last {days} days")
            }
            Piece::Lasts(..) => String::new(),
        }
    }
}
