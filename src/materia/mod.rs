//! Published figures, tables and assumptions: data only, each row with its source.
//!
//! Outside `materia` no published constant stands anywhere. A table is read inside its own domain
//! and nowhere else.

/// Figures, one row each: `NAME "id" "words" = value UNIT; source;`
macro_rules! figures {
    ($($name:ident $id:literal $words:literal = $value:literal $unit:ident; $source:expr;)*) => {
        $(#[doc = $words] pub static $name: crate::materia::Figure =
            crate::materia::Figure { id: $id, words: $words, value: $value, unit: &$unit, source: $source };)*
        pub(super) static FIGURES: &[&crate::materia::Figure] = &[$(&$name,)*];
    };
}

/// Relations, one row each: `NAME "id" "words": OF gives UNIT within low, high; law; source;`
macro_rules! relations {
    ($($name:ident $id:literal $words:literal: $of:ident gives $gives:ident within $low:literal, $high:literal;
       $law:expr; $source:expr;)*) => {
        $(#[doc = $words] pub static $name: crate::materia::Relation = crate::materia::Relation {
            id: $id, words: $words, of: &$of, gives: &$gives, law: $law, within: ($low, $high), source: $source };)*
        pub(super) static RELATIONS: &[&crate::materia::Relation] = &[$(&$name,)*];
    };
}

/// Assumptions, one row each: `NAME "id" "words" = low usual high UNIT; source; "advice";`
macro_rules! assumptions {
    ($($name:ident $id:literal $words:literal = $low:literal $usual:literal $high:literal $unit:ident;
       $source:expr; $advice:literal;)*) => {
        $(#[doc = $words] pub static $name: crate::materia::Assumption = crate::materia::Assumption {
            id: $id, words: $words, low: $low, usual: $usual, high: $high, unit: &$unit,
            source: $source, advice: $advice };)*
        pub(super) static ASSUMPTIONS: &[&crate::materia::Assumption] = &[$(&$name,)*];
    };
}

mod composition;
pub mod food_code;
mod heat;
mod keeping;
mod pan;
mod pantry;
mod rules;
pub mod spoons;
mod sweet;

pub use composition::*;
pub use heat::*;
pub use keeping::*;
pub use pan::*;
pub use pantry::*;
pub use rules::*;
pub use sweet::*;

/// Alcohol by volume from alcohol by weight: `p × density(p) ÷ 0.78924`, the series of the density
/// taken up one power. Only its inverse is of use, so it is no row of the list.
static ETHANOL_BY_VOLUME: Relation = Relation {
    id: "spirit-by-volume",
    words: "alcohol by volume",
    of: &crate::measure::unit::PER_CENT_WW,
    gives: &crate::measure::unit::PER_CENT_VV,
    law: Law::Product(&SPIRIT_DENSITY, &ETHANOL_DENSITY),
    within: (0.0, 1.0),
    source: Source::published(crate::bibliography::Work::OimlR22, "general formula at 20 °C"),
};

/// Every figure, subject by subject.
pub fn figures() -> impl Iterator<Item = &'static Figure> {
    [pan::FIGURES, sweet::FIGURES, composition::FIGURES, keeping::FIGURES, heat::FIGURES, rules::FIGURES]
        .into_iter()
        .flatten()
        .copied()
}

/// Every relation.
pub fn relations() -> impl Iterator<Item = &'static Relation> {
    [sweet::RELATIONS, composition::RELATIONS, heat::RELATIONS].into_iter().flatten().copied()
}

/// Every assumption.
pub fn assumptions() -> impl Iterator<Item = &'static Assumption> + Clone {
    [pan::ASSUMPTIONS, sweet::ASSUMPTIONS, composition::ASSUMPTIONS, heat::ASSUMPTIONS, rules::ASSUMPTIONS]
        .into_iter()
        .flatten()
        .copied()
}

use crate::bibliography::Source;
use crate::measure::Unit;

/// A published figure, as its source prints it (a share where the source prints per cent).
#[derive(Debug)]
pub struct Figure {
    /// Anchor on *Method and sources*.
    pub id: &'static str,
    /// What it is.
    pub words: &'static str,
    /// Its value in `unit`.
    pub value: f64,
    /// The unit.
    pub unit: &'static Unit,
    /// Where it is printed.
    pub source: Source,
}

/// How a relation gives a value.
#[derive(Debug)]
pub enum Law {
    /// Points in rising order, read by straight lines between them.
    Table(&'static [(f64, f64)]),
    /// Coefficients from the constant up: `c0 + c1 x + c2 x² ...`.
    Series(&'static [f64]),
    /// `x × relation(x) ÷ figure`: a share by weight as a share by volume.
    Product(&'static Relation, &'static Figure),
    /// Another relation, which rises throughout, read the other way round.
    Inverse(&'static Relation),
}

/// A published table or series of one quantity by another.
#[derive(Debug)]
pub struct Relation {
    /// Anchor on *Method and sources*.
    pub id: &'static str,
    /// What it gives.
    pub words: &'static str,
    /// The unit it is read at.
    pub of: &'static Unit,
    /// The unit it gives.
    pub gives: &'static Unit,
    /// Table or series.
    pub law: Law,
    /// The domain, both ends included.
    pub within: (f64, f64),
    /// Where it is printed.
    pub source: Source,
}

impl Relation {
    /// The value at `x`, in `gives`; not a number outside the domain (never an extrapolation).
    pub fn at(&self, x: f64) -> f64 {
        if x.is_nan() || x < self.within.0 || x > self.within.1 {
            return f64::NAN;
        }
        match &self.law {
            Law::Series(coefficients) => coefficients.iter().rev().fold(0.0, |sum, c| sum * x + c),
            Law::Product(relation, figure) => x * relation.at(x) / figure.value,
            Law::Inverse(relation) => relation.turned(x),
            Law::Table(points) => {
                let after = points.partition_point(|point| point.0 < x).max(1);
                let ((x0, y0), (x1, y1)) = (points[after - 1], points[after]);
                y0 + (y1 - y0) * ((x - x0) / (x1 - x0))
            }
        }
    }
}

impl Relation {
    /// The `x` at which a relation that rises throughout gives `y`: halving, 60 times, so that any
    /// language that follows it gets the same bits.
    fn turned(&self, y: f64) -> f64 {
        let (mut low, mut high) = self.within;
        for _ in 0..60 {
            let middle = (low + high) / 2.0;
            if self.at(middle) < y { low = middle } else { high = middle }
        }
        (low + high) / 2.0
    }
}

/// An input nobody declared: a stated guess with its range.
#[derive(Debug)]
pub struct Assumption {
    /// Anchor on *Method and sources*; also its name under a recipe's `assume`.
    pub id: &'static str,
    /// What it is.
    pub words: &'static str,
    /// The least it may well be.
    pub low: f64,
    /// What it usually is.
    pub usual: f64,
    /// The most it may well be.
    pub high: f64,
    /// The unit.
    pub unit: &'static Unit,
    /// Where the three come from.
    pub source: Source,
    /// What to do about it.
    pub advice: &'static str,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tables_rise_and_cover_their_domain() {
        for relation in relations() {
            if let Law::Table(points) = relation.law {
                assert!(points.windows(2).all(|pair| pair[0].0 < pair[1].0), "{} does not rise", relation.id);
                assert_eq!((points[0].0, points[points.len() - 1].0), relation.within, "{}", relation.id);
            }
            assert!(relation.at(relation.within.0).is_finite() && relation.at(relation.within.1).is_finite());
            assert!(
                relation.at(relation.within.1 + 1e-6).is_nan(),
                "{} is read outside its table",
                relation.id
            );
        }
    }

    #[test]
    fn assumptions_enclose_what_is_usual_and_ids_differ() {
        let mut ids = std::collections::BTreeSet::new();
        for assumption in assumptions() {
            assert!(
                assumption.low < assumption.usual && assumption.usual < assumption.high,
                "{}",
                assumption.id
            );
            assert!(ids.insert(assumption.id));
        }
        assert!(figures().all(|figure| ids.insert(figure.id)));
        assert!(relations().all(|relation| ids.insert(relation.id)));
    }
}
