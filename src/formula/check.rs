//! The dimension of an expression, worked out from its symbols: a test over the whole catalogue.
//!
//! No author ever sees a clash from here: authors' numbers are checked where they are declared.

use super::expr::{Expr, Formula, Op, Stands};
use crate::measure::Dimension;

/// Two dimensions that do not go together, and where.
#[derive(Clone, PartialEq, Debug)]
pub struct Clash(pub String);

/// Whether the expression gives what the formula says it gives.
///
/// # Errors
/// The first clash of dimensions, in words.
pub fn check(formula: &Formula) -> Result<(), Clash> {
    let wanted = formula.gives.unit.dimension;
    match dimension(&formula.is, &formula.with)? {
        None => Ok(()),
        Some(found) if found == wanted => Ok(()),
        Some(found) => {
            Err(Clash(format!("{} gives {wanted}, but its expression comes to {found}", formula.id)))
        }
    }
}

/// The dimension of an expression; none for a literal 0, which is nothing of anything.
fn dimension(expr: &Expr, with: &[Stands]) -> Result<Option<Dimension>, Clash> {
    let plain = |inner: &Expr, what: &str| match dimension(inner, with)? {
        None | Some(Dimension::NONE) => Ok(()),
        Some(found) => Err(Clash(format!("{what} takes a plain number, not {found}"))),
    };
    match expr {
        Expr::Number(number) if *number == 0.0 => Ok(None),
        Expr::Number(_) => Ok(Some(Dimension::NONE)),
        Expr::Symbol(symbol) => Ok(Some(with[symbol.index()].unit.dimension)),
        Expr::Figure(figure) => Ok(Some(figure.unit.dimension)),
        Expr::One(_, inner) => {
            plain(inner, "exp, ln or a whole number")?;
            Ok(Some(Dimension::NONE))
        }
        Expr::Two(op, a, b) => {
            let (left, right) = (dimension(a, with)?, dimension(b, with)?);
            match op {
                Op::Add | Op::Sub | Op::Min | Op::Max => same(left, right),
                Op::Mul => Ok(Some(left.unwrap_or(Dimension::NONE).times(right.unwrap_or(Dimension::NONE)))),
                Op::Div => Ok(Some(left.unwrap_or(Dimension::NONE).per(right.unwrap_or(Dimension::NONE)))),
                Op::Pow => power(left, b, with),
            }
        }
        Expr::Each(super::expr::Fold::Sum, inner) => dimension(inner, with),
        Expr::Each(super::expr::Fold::Product, inner) => {
            plain(inner, "a product over lines")?;
            Ok(Some(Dimension::NONE))
        }
        Expr::Look(relation, inner) => {
            same(Some(relation.of.dimension), dimension(inner, with)?)?;
            Ok(Some(relation.gives.dimension))
        }
        Expr::Choose(parts) => {
            let [a, b, then, otherwise] = &**parts;
            same(dimension(a, with)?, dimension(b, with)?)?;
            same(dimension(then, with)?, dimension(otherwise, with)?)
        }
    }
}

/// A power: of a plain number to anything plain, or of a quantity to a small whole number.
fn power(base: Option<Dimension>, exponent: &Expr, with: &[Stands]) -> Result<Option<Dimension>, Clash> {
    let base = base.unwrap_or(Dimension::NONE);
    if let Expr::Number(n) = exponent
        && (1.0..=4.0).contains(n)
        && *n == n.floor()
    {
        let mut result = base;
        for _ in 1..(*n as usize) {
            result = result.times(base);
        }
        return Ok(Some(result));
    }
    match (base, dimension(exponent, with)?) {
        (Dimension::NONE, None | Some(Dimension::NONE)) => Ok(Some(Dimension::NONE)),
        (base, _) => Err(Clash(format!("{base} to a power that is no small whole number"))),
    }
}

fn same(a: Option<Dimension>, b: Option<Dimension>) -> Result<Option<Dimension>, Clash> {
    match (a, b) {
        (None, other) | (other, None) => Ok(other),
        (Some(a), Some(b)) if a == b => Ok(Some(a)),
        (Some(a), Some(b)) => Err(Clash(format!("{a} and {b} do not add or compare"))),
    }
}
