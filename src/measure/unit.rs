//! The units that the lines of a working are kept and printed in: one a dimension, plus the per cents.
//!
//! What an author may *write* is another list: see `kitchen_unit.rs`.

use super::dimension::Dimension;

/// A unit of a working: how a value is kept, and how it is printed.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Unit {
    /// What stands after the number; empty for a bare number.
    pub text: &'static str,
    /// What it measures.
    pub dimension: Dimension,
    /// Usual decimals of a value below 100.
    pub places: u8,
    /// What a kept value is multiplied by for printing: 100 for per cents, which are kept as shares.
    pub printed: f64,
}

const fn plain(text: &'static str, dimension: Dimension, places: u8) -> Unit {
    Unit { text, dimension, places, printed: 1.0 }
}

const fn per_cent(text: &'static str, dimension: Dimension) -> Unit {
    Unit { text, dimension, places: 1, printed: 100.0 }
}

/// A bare number, such as a ratio or a factor.
pub const ONE: Unit = plain("", Dimension::NONE, 2);
/// A share, printed in per cent.
pub const PER_CENT: Unit = per_cent("%", Dimension::NONE);
/// Grams in 100 mL; kept in g/mL.
pub const PER_CENT_WV: Unit = per_cent("% w/v", Dimension::MASS.per(Dimension::VOLUME));
/// Grams in 100 g.
pub const PER_CENT_WW: Unit = per_cent("% w/w", Dimension::NONE);
/// Millilitres in 100 mL.
pub const PER_CENT_VV: Unit = per_cent("% v/v", Dimension::NONE);
/// Grams.
pub const G: Unit = plain("g", Dimension::MASS, 1);
/// Kilograms, of a body; kept in grams.
pub const KG: Unit = Unit { text: "kg", dimension: Dimension::MASS, places: 1, printed: 0.001 };
/// Milligrams, of a constituent; kept in grams.
pub const MG: Unit = Unit { text: "mg", dimension: Dimension::MASS, places: 1, printed: 1000.0 };
/// Millilitres.
pub const ML: Unit = plain("mL", Dimension::VOLUME, 1);
/// Minutes.
pub const MIN: Unit = plain("min", Dimension::TIME, 1);
/// Degrees Celsius.
pub const CELSIUS: Unit = plain("°C", Dimension::TEMPERATURE, 1);
/// Kilocalories, the Calories of a label.
pub const KCAL: Unit = plain("kcal", Dimension::ENERGY, 0);
/// Money. It has no text: the currency is the formulary's, and its sign may stand in front.
pub const MONEY: Unit = plain("", Dimension::MONEY, 2);
/// Things counted.
pub const COUNT: Unit = plain("", Dimension::COUNT, 1);
/// Density.
pub const G_PER_ML: Unit = plain("g/mL", Dimension::MASS.per(Dimension::VOLUME), 3);
/// Liquid to plant, or liquid kept back by a plant.
pub const ML_PER_G: Unit = plain("mL/g", Dimension::VOLUME.per(Dimension::MASS), 2);
/// How fast a pot loses water.
pub const ML_PER_MIN: Unit = plain("mL/min", Dimension::VOLUME.per(Dimension::TIME), 1);
/// Molar mass.
pub const G_PER_MOL: Unit = plain("g/mol", Dimension::MASS.per(Dimension::AMOUNT), 2);
/// Amount of substance.
pub const MOL: Unit = plain("mol", Dimension::AMOUNT, 3);
/// Pressure.
pub const PA: Unit = plain("Pa", Dimension::PRESSURE, 0);
/// Pressure of the air; kept in pascals.
pub const KPA: Unit = Unit { text: "kPa", dimension: Dimension::PRESSURE, places: 1, printed: 0.001 };
/// How the air thins.
pub const PER_M: Unit = plain("/m", Dimension::NONE.per(Dimension::LENGTH), 7);
/// A temperature by altitude.
pub const CELSIUS_PER_M: Unit = plain("°C/m", Dimension::TEMPERATURE.per(Dimension::LENGTH), 5);
/// Heat that warms a gram by a degree.
pub const KCAL_PER_G_DEGREE: Unit =
    plain("kcal/g °C", Dimension::ENERGY.per(Dimension::MASS).per(Dimension::TEMPERATURE), 3);
/// Power of a stove.
pub const KCAL_PER_MIN: Unit = plain("kcal/min", Dimension::ENERGY.per(Dimension::TIME), 1);
/// Energy of a food.
pub const KCAL_PER_G: Unit = plain("kcal/g", Dimension::ENERGY.per(Dimension::MASS), 2);
/// Metres, of altitude.
pub const M: Unit = plain("m", Dimension::LENGTH, 0);
/// Square metres, of the body's surface.
pub const M2: Unit = plain("m²", Dimension::LENGTH.times(Dimension::LENGTH), 2);
/// Millimetres, of what is laid on; kept in metres.
pub const MM: Unit = Unit { text: "mm", dimension: Dimension::LENGTH, places: 0, printed: 1000.0 };
/// Square centimetres, of skin; kept in square metres.
pub const CM2: Unit =
    Unit {
        text: "cm²", dimension: Dimension::LENGTH.times(Dimension::LENGTH), places: 0, printed: 10_000.0
    };
/// Room that a measured volume takes up, printed in cubic centimetres; kept in cubic metres.
pub const M3_PER_ML: Unit = Unit {
    text: "cm³/mL",
    dimension: Dimension::LENGTH.times(Dimension::LENGTH).times(Dimension::LENGTH).per(Dimension::VOLUME),
    places: 0,
    printed: 1_000_000.0,
};
/// Drops to a millilitre.
pub const DROPS_PER_ML: Unit = plain("drops/mL", Dimension::COUNT.per(Dimension::VOLUME), 1);
/// Days; kept in minutes.
pub const DAY: Unit = Unit { text: "days", dimension: Dimension::TIME, places: 0, printed: 1.0 / 1440.0 };
/// Months, a twelfth of a year; kept in minutes.
pub const MONTH: Unit =
    Unit { text: "months", dimension: Dimension::TIME, places: 0, printed: 1.0 / 43_830.0 };
/// Years of 365.25 days; kept in minutes.
pub const YEAR: Unit =
    Unit { text: "years", dimension: Dimension::TIME, places: 0, printed: 1.0 / 525_960.0 };
/// A weight for a body's weight; kept as a share.
pub const MG_PER_KG: Unit =
    Unit { text: "mg/kg", dimension: Dimension::NONE, places: 2, printed: 1_000_000.0 };
/// A constituent of a plant; kept as a share.
pub const MG_PER_G: Unit = Unit { text: "mg/g", dimension: Dimension::NONE, places: 1, printed: 1000.0 };
