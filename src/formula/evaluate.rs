//! The first reading of a formula: its value.

use super::exact;
use super::expr::{Expr, Fold, Function, Line, Op};
use crate::measure::{PARTED, whole};

/// The value of an expression whose symbols are bound to lines with these values.
///
/// `at` is which of the lines is meant inside a sum or product; 0 outside. Every operation is one
/// that IEEE 754 fixes to the bit, in the tree's own order, so that any other reader of the same
/// tree gets the same bits.
pub fn evaluate(expr: &Expr, with: &[Vec<Line>], values: &[f64], at: usize) -> f64 {
    let value = |inner: &Expr| evaluate(inner, with, values, at);
    match expr {
        Expr::Number(number) => *number,
        Expr::Symbol(symbol) => {
            let lines = &with[symbol.index()];
            // A symbol bound to one line stands for it also inside a sum over another symbol.
            let line = if lines.len() == 1 { lines[0] } else { lines[at] };
            values[line.index()]
        }
        Expr::Figure(figure) => figure.value,
        Expr::One(Function::Exp, inner) => exact::exp(value(inner)),
        Expr::One(Function::Ln, inner) => exact::ln(value(inner)),
        Expr::One(Function::Up, inner) => (value(inner) - PARTED).ceil(),
        Expr::One(Function::Down, inner) => whole(value(inner)),
        Expr::Two(op, a, b) => apply(*op, value(a), value(b)),
        Expr::Each(fold, inner) => {
            let count = times(inner, with);
            let each = (0..count).map(|at| evaluate(inner, with, values, at));
            match fold {
                Fold::Sum => each.fold(0.0, |sum, term| sum + term),
                Fold::Product => each.fold(1.0, |product, term| product * term),
            }
        }
        Expr::Look(relation, inner) => relation.at(value(inner)),
        Expr::Choose(parts) => {
            let [a, b, then, otherwise] = &**parts;
            if value(a) < value(b) { value(then) } else { value(otherwise) }
        }
    }
}

fn apply(op: Op, a: f64, b: f64) -> f64 {
    match op {
        Op::Add => a + b,
        Op::Sub => a - b,
        Op::Mul => a * b,
        Op::Div => a / b,
        Op::Min => {
            if a < b {
                a
            } else {
                b
            }
        }
        Op::Max => {
            if a > b {
                a
            } else {
                b
            }
        }
        Op::Pow => exact::pow(a, b),
    }
}

/// How many terms a sum or product has: as many as the longest list bound to a symbol in it.
/// An empty list wins over everything: the sum of no terms is nothing.
pub(super) fn times(expr: &Expr, with: &[Vec<Line>]) -> usize {
    fn lengths(expr: &Expr, with: &[Vec<Line>], found: &mut Vec<usize>) {
        match expr {
            Expr::Number(_) | Expr::Figure(_) => {}
            Expr::Symbol(symbol) => found.push(with[symbol.index()].len()),
            Expr::One(_, inner) | Expr::Each(_, inner) | Expr::Look(_, inner) => lengths(inner, with, found),
            Expr::Two(_, a, b) => {
                lengths(a, with, found);
                lengths(b, with, found);
            }
            Expr::Choose(parts) => parts.iter().for_each(|part| lengths(part, with, found)),
        }
    }
    let mut found = Vec::new();
    lengths(expr, with, &mut found);
    if found.contains(&0) { 0 } else { found.into_iter().max().unwrap_or(0) }
}
