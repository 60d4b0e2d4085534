//! The working: a recipe's lines, each with its formula and the lines it is bound to.
//!
//! Laying down and evaluating are two things. Lines are laid down once; a value, a range, a
//! measurement or a target is the same plain pass over them with other inputs.

mod id;
mod pass;
mod places;
mod turned;

pub use id::{Id, Rounds};
pub use pass::{MOST_ASSUMPTIONS, Range};
pub use places::{places, recomputes};
pub use turned::{NoAnswer, turn_round};

use std::collections::BTreeMap;

use crate::bibliography::Source;
use crate::formula::{Line, Use};
use crate::materia::{Assumption, Fact, Figure};
use crate::measure::Unit;
use crate::span::Span;

/// Where a line's value comes from.
#[derive(Clone, PartialEq, Debug)]
pub enum How {
    /// The recipe says so.
    Given {
        /// In the line's unit.
        value: f64,
        /// Whether it grows with the batch (an amount does, a ratio or a time does not).
        grows: bool,
    },
    /// Nobody said; a stated guess.
    Assumed {
        /// Anchor of the assumption, or of the plant whose figure it is.
        id: String,
        /// Least, usual, most.
        low: f64,
        /// What it usually is.
        usual: f64,
        /// The most.
        high: f64,
        /// Where the three come from.
        source: Source,
        /// What to do about it.
        advice: &'static str,
    },
    /// A published figure.
    Published {
        /// Its anchor.
        id: String,
        /// In the line's unit.
        value: f64,
        /// Where it is printed.
        source: Source,
    },
    /// Worked by a formula from other lines.
    Worked(Use),
}

/// One line.
#[derive(Clone, PartialEq, Debug)]
pub struct Entry {
    /// Its name in words, unique in the working once [`Working::close`] has run.
    pub name: String,
    /// The unit its value is kept in.
    pub unit: &'static Unit,
    /// Where its value comes from.
    pub how: How,
    /// The step that laid it down, from 1; 0 for what is put in.
    pub step: usize,
    /// Where the author wrote it; none for worked lines.
    pub at: Option<Span>,
    /// Whether a student may measure it instead.
    pub measurable: bool,
}

/// A recipe's lines.
#[derive(Clone, Debug, Default)]
pub struct Working {
    entries: Vec<Entry>,
    ids: BTreeMap<Id, Line>,
    step: usize,
    /// The product whose lines are laid down, where it is another recipe's.
    product: Option<String>,
}

/// A recipe's state while the lines of a product that goes into it are laid down.
#[derive(Clone, Debug)]
pub struct Outer {
    ids: BTreeMap<Id, Line>,
    step: usize,
    product: Option<String>,
}

impl Working {
    /// No lines yet.
    pub fn new() -> Working {
        Working::default()
    }

    /// From here on lines are those of another recipe's product: named after it, and claimed by nobody.
    /// Gives back what [`Working::part`] needs to go on with this recipe.
    pub fn join(&mut self, product: &str) -> Outer {
        Outer { ids: self.ids.clone(), step: self.step, product: self.product.replace(product.to_string()) }
    }

    /// Back from a product to the recipe it goes into.
    pub fn part(&mut self, outer: Outer) {
        self.ids = outer.ids;
        self.step = outer.step;
        self.product = outer.product;
    }

    /// From here on lines belong to step `step` (0: what is put in).
    pub fn at_step(&mut self, step: usize) {
        self.step = step;
    }

    /// A number the recipe declares. Two declared numbers never share a line, equal or not.
    pub fn given(
        &mut self,
        name: impl Into<String>,
        unit: &'static Unit,
        value: f64,
        grows: bool,
        at: Span,
    ) -> Line {
        self.push(name.into(), unit, How::Given { value, grows }, Some(at))
    }

    /// A range the recipe itself declares: low, the middle, high. Never shared between two lines.
    pub fn latitude(&mut self, name: &str, unit: &'static Unit, ends: (f64, f64), at: Span) -> Line {
        let how = How::Assumed {
            id: format!("recipe-{}", at.start),
            low: ends.0,
            usual: (ends.0 + ends.1) / 2.0,
            high: ends.1,
            source: Source::formulary("as the recipe says"),
            advice: "Go by what the step says.",
        };
        self.push(name.to_string(), unit, how, Some(at))
    }

    /// An input nobody declared. `own` is the author's own low, usual and high for it.
    pub fn assumed(&mut self, assumption: &'static Assumption, own: Option<(f64, f64, f64, Source)>) -> Line {
        let (low, usual, high, source) =
            own.unwrap_or((assumption.low, assumption.usual, assumption.high, assumption.source.clone()));
        let how = How::Assumed {
            id: assumption.id.to_string(),
            low,
            usual,
            high,
            source,
            advice: assumption.advice,
        };
        self.once(assumption.words.to_string(), assumption.unit, how)
    }

    /// A guess of the formulary's own files: one whose `how` is assumed.
    pub fn guess(&mut self, name: impl Into<String>, unit: &'static Unit, how: How) -> Line {
        self.once(name.into(), unit, how)
    }

    /// A published figure.
    pub fn figure(&mut self, figure: &'static Figure) -> Line {
        self.published(figure.words, figure.id, figure.unit, figure.value, figure.source.clone())
    }

    /// A figure of the pantry, built in or the formulary's own.
    pub fn fact(&mut self, fact: &Fact) -> Line {
        match fact {
            Fact::Built(figure) => self.figure(figure),
            Fact::Own { id, words, value, unit, source } => {
                self.published(words.clone(), id.clone(), unit, *value, source.clone())
            }
        }
    }

    /// A figure of the formulary's own files.
    pub fn published(
        &mut self,
        name: impl Into<String>,
        id: impl Into<String>,
        unit: &'static Unit,
        value: f64,
        source: Source,
    ) -> Line {
        self.once(name.into(), unit, How::Published { id: id.into(), value, source })
    }

    /// A line worked by a formula. A line equal to an earlier one *is* the earlier one.
    pub fn work(&mut self, name: impl Into<String>, by: impl Into<Use>) -> Line {
        let by = by.into();
        let unit = by.formula.gives.unit;
        debug_assert!(self.fits(&by), "{} is bound to lines of other dimensions", by.formula.id);
        self.once(name.into(), unit, How::Worked(by))
    }

    /// The one line of several, or their sum by `add`.
    pub fn one_or(&mut self, lines: Vec<Line>, add: impl FnOnce(&mut Working, Vec<Line>) -> Line) -> Line {
        match lines[..] {
            [line] => line,
            _ => add(self, lines),
        }
    }

    /// Marks a line as one that a student may measure.
    pub fn measurable(&mut self, line: Line) {
        self.entries[line.index()].measurable = true;
    }

    /// Gives a line another name: what is sweetened last is the finished preparation.
    pub fn rename(&mut self, line: Line, name: &str) {
        self.entries[line.index()].name = name.to_string();
    }

    /// Gives a line the id that outside tools rely on; the last claim wins.
    pub fn claim(&mut self, id: Id, line: Line) {
        self.ids.insert(id, line);
    }

    /// Takes an id from its line, which is no answer to it any more.
    pub fn disown(&mut self, id: Id) {
        self.ids.remove(&id);
    }

    /// The line of an id.
    pub fn line(&self, id: Id) -> Option<Line> {
        self.ids.get(&id).copied()
    }

    /// Ids and their lines, in the order of [`Id::ALL`].
    pub fn claimed(&self) -> impl Iterator<Item = (Id, Line)> + '_ {
        self.ids.iter().map(|(id, line)| (*id, *line))
    }

    /// The first id a line carries.
    pub fn id_of(&self, line: Line) -> Option<Id> {
        self.claimed().find(|(_, claimed)| *claimed == line).map(|(id, _)| id)
    }

    /// An entry.
    pub fn entry(&self, line: Line) -> &Entry {
        &self.entries[line.index()]
    }

    /// Every line, in order.
    pub fn lines(&self) -> impl DoubleEndedIterator<Item = Line> + use<> {
        (0..self.entries.len() as u16).map(Line)
    }

    /// Entries in order.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// Ends the laying down: where a name occurs twice, each of them gets its step.
    pub fn close(&mut self) {
        let mut seen: BTreeMap<String, usize> = BTreeMap::new();
        for entry in &self.entries {
            *seen.entry(entry.name.clone()).or_default() += 1;
        }
        let mut taken: BTreeMap<String, usize> = BTreeMap::new();
        for entry in &mut self.entries {
            if seen[&entry.name] > 1 {
                entry.name = match entry.step {
                    0 => format!("{}, put in", entry.name),
                    step => format!("{}, step {step}", entry.name),
                };
            }
            let again = taken.entry(entry.name.clone()).or_default();
            *again += 1;
            if *again > 1 {
                entry.name = format!("{} ({again})", entry.name);
            }
        }
    }

    fn push(&mut self, name: String, unit: &'static Unit, how: How, at: Option<Span>) -> Line {
        let name = match &self.product {
            Some(product) => format!("{name}, {product}"),
            None => name,
        };
        // A recipe's lines are some tens; 65,535 are out of reach of any method that reads.
        let line = Line(self.entries.len() as u16);
        self.entries.push(Entry { name, unit, how, step: self.step, at, measurable: false });
        line
    }

    fn once(&mut self, name: String, unit: &'static Unit, how: How) -> Line {
        let equal = |entry: &Entry| entry.how == how && entry.unit == unit;
        match self.entries.iter().position(equal) {
            Some(at) => Line(at as u16),
            None => self.push(name, unit, how, None),
        }
    }

    fn fits(&self, by: &Use) -> bool {
        by.formula.with.iter().zip(&by.with).all(|(stands, lines)| {
            lines.iter().all(|line| self.entry(*line).unit.dimension == stands.unit.dimension)
        })
    }
}

impl How {
    /// The lines a worked line is bound to.
    pub fn inputs(&self) -> impl Iterator<Item = Line> + '_ {
        let with = match self {
            How::Worked(by) => &by.with[..],
            _ => &[],
        };
        with.iter().flatten().copied()
    }
}
