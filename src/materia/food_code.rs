//! Rules of food inspection as data: tables A and B of the Food Code, low-acid food, growth limits,
//! cooling. They sort; they prove nothing safe.

use super::{ACTIVITY_LIMIT, LOW_ACID};
use crate::bibliography::{Source, Work};

/// What the tables say.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum FoodCode {
    /// Needs no control of time and temperature.
    NonTcs,
    /// A laboratory has to say; until it does, keep it cold.
    ProductAssessment,
}

/// Which table.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Table {
    /// Heated enough to kill growing cells, then packaged.
    A,
    /// Not heated, or heated and not packaged.
    B,
}

/// The upper edge of a class.
#[derive(Clone, Copy, Debug)]
enum Edge {
    /// Up to it and including it.
    To(f64),
    /// Up to it and without it.
    Below(f64),
    /// Whatever is left.
    Any,
}

impl Edge {
    fn holds(self, value: f64) -> bool {
        match self {
            Edge::To(edge) => value <= edge,
            Edge::Below(edge) => value < edge,
            Edge::Any => true,
        }
    }
}

use Edge::{Any, Below, To};

/// Classes of pH of table A.
const A_PH: &[Edge] = &[To(4.6), To(5.6), Any];
/// Classes of water activity of table A, each with how many of the classes of pH need no control.
const A: &[(Edge, usize)] = &[(To(0.92), 3), (To(0.95), 2), (Any, 1)];
/// Classes of pH of table B.
const B_PH: &[Edge] = &[Below(4.2), To(4.6), To(5.0), Any];
/// Classes of water activity of table B.
const B: &[(Edge, usize)] = &[(Below(0.88), 4), (To(0.90), 3), (To(0.92), 2), (Any, 1)];

/// Where the tables stand. Two states print "<0.92" in the first row of A; the Food Code has "≤0.92".
pub const TABLES: Source = Source::published(Work::FoodCode, "1-201.10(B), tables A and B");

/// The class of a food by water activity and pH; a figure that is not a number needs an assessment.
pub fn food_code(table: Table, activity: f64, ph: f64) -> FoodCode {
    let (rows, columns) = match table {
        Table::A => (A, A_PH),
        Table::B => (B, B_PH),
    };
    let free = rows.iter().find(|(edge, _)| edge.holds(activity)).map_or(0, |(_, free)| *free);
    let column = columns.iter().position(|edge| edge.holds(ph)).unwrap_or(columns.len());
    if activity.is_nan() || ph.is_nan() || column >= free {
        FoodCode::ProductAssessment
    } else {
        FoodCode::NonTcs
    }
}

/// Whether a food is low-acid by 21 CFR 114.3: both figures above their limits.
pub fn low_acid(activity: f64, ph: f64) -> bool {
    ph > LOW_ACID.value && activity > ACTIVITY_LIMIT.value
}

/// The least water activity at which a kind of microbe grows.
#[derive(Debug)]
pub struct Growth {
    /// The kind.
    pub words: &'static str,
    /// The least water activity.
    pub least: f64,
    /// Where it is printed.
    pub source: Source,
}

const LIMITS: Source =
    Source::published(Work::GrowthLimits, "others print 0.87 for yeasts and 0.61 for the driest");

/// From the most water to the least.
pub static GROWTH: &[Growth] = &[
    Growth { words: "most bacteria", least: 0.91, source: LIMITS },
    Growth { words: "most yeasts", least: 0.88, source: LIMITS },
    Growth { words: "most moulds", least: 0.80, source: LIMITS },
    Growth { words: "bacteria of brine", least: 0.75, source: LIMITS },
    Growth { words: "moulds of dry food", least: 0.65, source: LIMITS },
    Growth { words: "yeasts of honey", least: 0.60, source: LIMITS },
];

/// A stage of cooling.
#[derive(Debug)]
pub struct Cooling {
    /// What it says.
    pub words: &'static str,
    /// From, in degrees Fahrenheit as printed.
    pub from: f64,
    /// To, in degrees Fahrenheit.
    pub to: f64,
    /// Within so many hours.
    pub hours: f64,
    /// Where it is printed.
    pub source: Source,
}

const COOL: Source = Source::published(Work::FoodCode, "3-501.14; older codes begin at 140 °F");

/// How fast a cooked food has to cool.
pub static COOLING: &[Cooling] = &[
    Cooling { words: "out of the heat", from: 135.0, to: 70.0, hours: 2.0, source: COOL },
    Cooling { words: "until cold, from the start", from: 135.0, to: 41.0, hours: 6.0, source: COOL },
    Cooling {
        words: "made from what was at room temperature",
        from: 70.0,
        to: 41.0,
        hours: 4.0,
        source: COOL,
    },
];

#[cfg(test)]
mod tests {
    use super::*;

    // Every cell, just inside its edges: Food Code 1-201.10(B).
    #[test]
    fn every_cell_of_both_tables() {
        let cell = |table, activity, ph| food_code(table, activity, ph) == FoodCode::NonTcs;
        let row = |table, activity, phs: &[f64]| {
            phs.iter().map(|ph| cell(table, activity, *ph)).collect::<Vec<_>>()
        };
        let a = [4.6, 5.6, 5.601];
        assert_eq!(row(Table::A, 0.92, &a), [true, true, true]);
        assert_eq!(row(Table::A, 0.95, &a), [true, true, false]);
        assert_eq!(row(Table::A, 0.951, &a), [true, false, false]);
        let b = [4.19, 4.2, 4.6, 5.0, 5.01];
        assert_eq!(row(Table::B, 0.879, &b), [true; 5]);
        assert_eq!(row(Table::B, 0.88, &b), [true, true, true, true, false]);
        assert_eq!(row(Table::B, 0.92, &b), [true, true, true, false, false]);
        assert_eq!(row(Table::B, 0.921, &b), [true, false, false, false, false]);
        assert!(!cell(Table::A, f64::NAN, 4.0) && !cell(Table::B, 0.5, f64::NAN));
    }

    #[test]
    fn low_acid_needs_both() {
        assert!(low_acid(0.86, 4.7) && !low_acid(0.85, 4.7) && !low_acid(0.86, 4.6));
    }

    #[test]
    fn limits_fall() {
        assert!(GROWTH.windows(2).all(|pair| pair[0].least > pair[1].least));
    }
}
