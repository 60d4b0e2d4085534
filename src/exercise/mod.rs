//! Exercises: a question about a recipe's working, or about a small sum of its own, with numbers that differ from
//! version to version and an answer that is worked as every number of the book is.
//!
//! [`read`] reads a block, [`usual`] makes the usual ones of any recipe, [`pose`] puts one as a version's question with
//! its answer.

mod ask;
mod bill;
mod draw;
mod ground;
mod judge;
mod pose;
mod posed;
mod read;
mod sum;
mod usual;

pub use draw::{LETTERS, Seed};
pub use pose::pose;
pub use posed::{Answered, Posed, Right, Stage, letter};
pub use read::read;
pub use usual::usual;

use crate::formula::Formula;
use crate::measure::Measure;
use crate::span::{Span, Spanned};

/// An exercise as declared.
#[derive(Clone, Debug)]
pub struct Exercise {
    /// Its name.
    pub name: Spanned<String>,
    /// The question; names in braces are filled in. Empty where the kind of answer has a question of its own.
    pub ask: Spanned<String>,
    /// The recipe of the lesson it is about, where it is not the one before it.
    pub recipe: Option<Spanned<String>>,
    /// Numbers it sets, each by the name of a line, as texts to draw from.
    pub with: Vec<(Spanned<String>, Draw)>,
    /// The batch the recipe is worked for.
    pub make: Option<Draw>,
    /// A sum of its own in place of a recipe's: lines in order.
    pub sum: Vec<Step>,
    /// What is asked for.
    pub answer: Answer,
    /// How near is right.
    pub within: Within,
    /// A hint of the author's own, in place of the formula's words.
    pub hint: Option<String>,
    /// Where it was written.
    pub span: Span,
}

/// What a number may be, as texts.
pub type Draw = Vec<Spanned<String>>;

/// A line of an exercise's own sum.
#[derive(Clone, Debug)]
pub struct Step {
    /// Its name.
    pub name: Spanned<String>,
    /// The formula of the catalogue.
    pub formula: &'static Formula,
    /// Its symbols in order, each bound to lines by their names.
    pub with: Vec<Vec<Spanned<String>>>,
}

/// How near an answer in figures has to be.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Within {
    /// So much of it, as a share.
    Share(f64),
    /// To the last place shown.
    Exact,
}

/// What is asked for.
#[derive(Clone, Debug)]
pub enum Answer {
    /// Lines, in figures; in a unit of the kitchen where one is said.
    Lines(Vec<Spanned<String>>, Option<Measure>),
    /// Whether a line is at least, or at most, so much.
    Claim {
        /// The line.
        line: Spanned<String>,
        /// At least rather than at most.
        least: bool,
        /// So much.
        limit: Spanned<String>,
    },
    /// Whether it keeps out of the cold.
    Keeps,
    /// Of which there is more: of a line in the recipe and in a variation of it, or of two lines.
    Compare(Compared),
    /// Which of the lines shown is wrong.
    Spot {
        /// The lines shown.
        lines: Vec<Spanned<String>>,
        /// The one that is shown wrong, version by version.
        wrong: Vec<Spanned<String>>,
        /// What it is shown as: so many times what it is, or this.
        shown: Vec<Wrong>,
    },
    /// The order of the steps.
    Order,
    /// The day it is used by, made on one of these.
    UseBy(Draw),
    /// What it costs.
    Cost(Cost),
}

/// What is compared.
#[derive(Clone, Debug)]
pub enum Compared {
    /// A line of the recipe with the same of a variation, version by version another.
    Variation(Spanned<String>, Vec<Spanned<String>>),
    /// Two lines.
    Lines(Spanned<String>, Spanned<String>),
}

/// How a figure is shown wrong.
#[derive(Clone, Debug)]
pub enum Wrong {
    /// So many times what it is.
    Times(f64),
    /// As this.
    As(String),
}

/// What of a bill is asked for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Cost {
    /// As used.
    Used,
    /// With whole packs.
    Bought,
}

impl Cost {
    /// The words for it, as an author writes them.
    pub const NAMES: &'static [(&'static str, Cost)] = &[("used", Cost::Used), ("bought", Cost::Bought)];
}
