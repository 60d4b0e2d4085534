//! Measures: what authors write, what a working keeps, and what a kitchen can measure.
//!
//! - [`Dimension`] and [`unit`]: what a line of a working is an amount of, and the unit it prints in.
//! - [`Ratio`] and [`Measure`]: exact fractions, and the closed list of units an author may write.
//! - [`amount`] and its narrower kin, [`plant_amount`], [`liquid_ratio`], [`proportion`], [`reduction`]:
//!   reading; what could mean two things comes back as a [`Misread`] with both written out.
//! - [`decimal`] and [`show`]: the one rounding rule. [`kitchen`]: exact figures as spoons, cups and jars.

mod decimal;
mod dimension;
pub mod kitchen;
pub mod kitchen_unit;
mod misread;
mod ratio;
mod read;
mod read_number;
mod read_plant;
mod read_ratio;
mod read_wanted;
pub mod unit;

pub use decimal::{PARTED, decimal, rounded, show, show_usual, usual_places, whole};
pub use dimension::Dimension;
pub use kitchen::{Close, Kitchen, Toward};
pub use kitchen_unit::{Measure, System};
pub use misread::Misread;
pub use ratio::{Ratio, RatioError};
pub use read::{
    Amount, Quantity, amount, amount_or_zero, dose, length, mass, mass_or_volume, per_cent, share_between,
    temperature, time, volume,
};
pub use read_number::{leading_number, plain_number};
pub use read_plant::{Form, PlantAmount, plant_amount};
pub use read_ratio::{
    By, LeftOf, LiquidRatio, Of, Proportion, RatioBasis, Reduction, liquid_ratio, proportion, reduction,
};
pub use read_wanted::{By as WantedBy, Wanted, count, wanted};
pub use unit::Unit;
