//! A formula as a value: an expression over its own symbols, and what is known about it.
//!
//! Expressions are written with the ordinary operators in the catalogue; the readers beside this
//! file walk them, each in one exhaustive `match`.

use std::ops::{Add, Div, Mul, Sub};

use crate::bibliography::Source;
use crate::materia::{Figure, Relation};
use crate::measure::Unit;

/// A line of a working, by its place in it. Formulas bind their symbols to lines.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct Line(pub(crate) u16);

impl Line {
    /// The line at a place, from 0.
    pub fn at(place: usize) -> Line {
        Line(u16::try_from(place).unwrap_or(u16::MAX))
    }

    /// Its place in the working, from 0.
    pub const fn index(self) -> usize {
        self.0 as usize
    }
}

/// A symbol: its place among the symbols of its own formula.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Symbol(pub(crate) u8);

impl Symbol {
    /// Its place in [`Formula::with`].
    pub const fn index(self) -> usize {
        self.0 as usize
    }
}

/// Functions of one number, such that they agree everywhere.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Function {
    /// e to the power of.
    Exp,
    /// The natural logarithm of.
    Ln,
    /// The next whole number up; what floating point alone adds is none.
    Up,
    /// The next whole number down; what floating point alone takes away is none.
    Down,
}

/// Operations on two numbers.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Op {
    /// a + b
    Add,
    /// a − b
    Sub,
    /// a × b
    Mul,
    /// a ÷ b
    Div,
    /// The lesser.
    Min,
    /// The greater.
    Max,
    /// a to the power b; b is a plain number.
    Pow,
}

/// How many lines bound to one symbol are taken together.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Fold {
    /// All of them added.
    Sum,
    /// All of them multiplied.
    Product,
}

/// An expression.
#[derive(Clone, Debug)]
pub enum Expr {
    /// A plain number. Numbers with a unit are figures or lines, never written here (0 excepted).
    Number(f64),
    /// What a symbol is bound to.
    Symbol(Symbol),
    /// A published figure that is always the same here (a molar mass).
    Figure(&'static Figure),
    /// A function of one number.
    One(Function, Box<Expr>),
    /// Two numbers.
    Two(Op, Box<Expr>, Box<Expr>),
    /// The inner expression for each line of the symbols bound to many, folded.
    Each(Fold, Box<Expr>),
    /// A published table or series, inside its domain; not a number outside.
    Look(&'static Relation, Box<Expr>),
    /// `if a < b then c else d`.
    Choose(Box<[Expr; 4]>),
}

/// What a symbol (or the result) stands for.
#[derive(Clone, Copy, Debug)]
pub struct Stands {
    /// Its name in the catalogue, in words ("each gram keeps").
    pub words: &'static str,
    /// The letter on *Method and sources*.
    pub sign: &'static str,
    /// The unit lines bound to it are kept in.
    pub unit: &'static Unit,
    /// Whether any number of lines may be bound.
    pub many: bool,
}

/// A formula of the catalogue.
#[derive(Debug)]
pub struct Formula {
    /// Its name in the catalogue, a plain id.
    pub id: &'static str,
    /// What it gives.
    pub gives: Stands,
    /// Its symbols, in the order of [`Symbol`].
    pub with: Vec<Stands>,
    /// The expression.
    pub is: Expr,
    /// Where it comes from.
    pub source: Source,
    /// Where it holds, in words.
    pub holds: &'static str,
    /// Its own accuracy: the result may be off by so much either way. None where it is exact.
    pub accuracy: Option<f64>,
}

/// A formula with each symbol bound to lines of a working: what a catalogue struct turns into.
#[derive(Clone, Debug)]
pub struct Use {
    /// Which formula.
    pub formula: &'static Formula,
    /// Lines bound, a list a symbol.
    pub with: Vec<Vec<Line>>,
}

impl PartialEq for Use {
    fn eq(&self, other: &Use) -> bool {
        self.formula.id == other.formula.id && self.with == other.with
    }
}

impl From<Symbol> for Expr {
    fn from(symbol: Symbol) -> Expr {
        Expr::Symbol(symbol)
    }
}

/// Both sides boxed under one operation.
fn two(op: Op, a: impl Into<Expr>, b: impl Into<Expr>) -> Expr {
    Expr::Two(op, Box::new(a.into()), Box::new(b.into()))
}

/// Symbols are plain places and may stand in an expression any number of times, so the operators
/// take either side as a symbol or as an expression.
macro_rules! operator {
    ($trait:ident $method:ident $op:ident) => {
        impl<T: Into<Expr>> $trait<T> for Expr {
            type Output = Expr;
            fn $method(self, other: T) -> Expr {
                two(Op::$op, self, other)
            }
        }

        impl<T: Into<Expr>> $trait<T> for Symbol {
            type Output = Expr;
            fn $method(self, other: T) -> Expr {
                two(Op::$op, self, other)
            }
        }
    };
}

operator!(Add add Add);
operator!(Sub sub Sub);
operator!(Mul mul Mul);
operator!(Div div Div);

/// A plain number in an expression.
pub fn number(value: f64) -> Expr {
    Expr::Number(value)
}

/// A published figure in an expression.
pub fn figure(figure: &'static Figure) -> Expr {
    Expr::Figure(figure)
}

/// The sum of the inner expression over every line of the symbols bound to many.
pub fn sum(inner: impl Into<Expr>) -> Expr {
    Expr::Each(Fold::Sum, Box::new(inner.into()))
}

/// The product of the inner expression over every line of the symbols bound to many.
pub fn product(inner: impl Into<Expr>) -> Expr {
    Expr::Each(Fold::Product, Box::new(inner.into()))
}

/// A relation of `materia` read at an expression.
pub fn look(relation: &'static Relation, at: impl Into<Expr>) -> Expr {
    Expr::Look(relation, Box::new(at.into()))
}

/// e to the power of an expression.
pub fn exp(inner: impl Into<Expr>) -> Expr {
    Expr::One(Function::Exp, Box::new(inner.into()))
}

/// The natural logarithm of an expression.
pub fn ln(inner: impl Into<Expr>) -> Expr {
    Expr::One(Function::Ln, Box::new(inner.into()))
}

/// The next whole number up from an expression.
pub fn whole_up(inner: impl Into<Expr>) -> Expr {
    Expr::One(Function::Up, Box::new(inner.into()))
}

/// The next whole number down from an expression.
pub fn whole_down(inner: impl Into<Expr>) -> Expr {
    Expr::One(Function::Down, Box::new(inner.into()))
}

/// An expression to a plain power.
pub fn pow(base: impl Into<Expr>, exponent: impl Into<Expr>) -> Expr {
    two(Op::Pow, base, exponent)
}

/// The greater of two expressions.
pub fn greater(a: impl Into<Expr>, b: impl Into<Expr>) -> Expr {
    two(Op::Max, a, b)
}

/// The lesser of two expressions.
pub fn lesser(a: impl Into<Expr>, b: impl Into<Expr>) -> Expr {
    two(Op::Min, a, b)
}

/// `if a < b then c else d`.
pub fn choose(
    a: impl Into<Expr>,
    b: impl Into<Expr>,
    then: impl Into<Expr>,
    otherwise: impl Into<Expr>,
) -> Expr {
    Expr::Choose(Box::new([a.into(), b.into(), then.into(), otherwise.into()]))
}
