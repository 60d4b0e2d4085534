//! The catalogue: each formula once, as a value, and its readers.
//!
//! A formula is stated in [`catalogue`] with operators on its own symbols. One reader gives its
//! value ([`evaluate`]), one its dimension ([`check`]), one the equation as a reader sees it
//! ([`equation`]). A use binds the symbols to lines of a working; nothing here knows what a line is
//! beyond its place.

pub mod catalogue;
pub mod equation;
pub mod exact;
pub mod expr;

mod check;
mod evaluate;
mod script;
mod sum;

pub use check::{Clash, check};
pub use evaluate::evaluate;
pub use expr::{Expr, Formula, Line, Stands, Use};
pub use script::script;
pub use sum::Sum;
