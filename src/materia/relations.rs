//! Published tables and series, one row each, read inside their domain only.

use super::{Law, Relation};
use crate::bibliography::{Source, Work};
use crate::measure::unit::{ONE, PER_CENT};

/// Specific gravity of honey at 20/20 °C by its water.
pub static HONEY_GRAVITY: Relation = Relation {
    id: "honey-gravity",
    words: "specific gravity of honey at 20 °C",
    of: &PER_CENT,
    gives: &ONE,
    law: Law::Table(&[
        (0.13, 1.4457),
        (0.14, 1.4404),
        (0.15, 1.4350),
        (0.16, 1.4295),
        (0.17, 1.4237),
        (0.18, 1.4171),
        (0.19, 1.4101),
        (0.20, 1.4027),
        (0.21, 1.3950),
    ]),
    within: (0.13, 0.21),
    source: Source::from_memory(Work::HoneyDensity, "13 to 21 % water; only the row for 17 % was seen"),
};

/// Every relation.
pub static RELATIONS: &[&Relation] = &[&HONEY_GRAVITY];
