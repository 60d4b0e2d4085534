//! Figures printed elsewhere beside what this program makes of them.
//!
//! The file of checks holds what others print, each with its source; a subject says how the same is
//! worked here, by the formulas and figures every recipe uses. A printed figure that is wrong stands
//! as one that must not be met.

mod given;
pub mod ours;
mod read;
mod subject;

pub use given::Given;
pub use read::read;
pub use subject::Subject;

use crate::bibliography::Standing;
use crate::diagnostic::Finding;
use crate::measure::decimal;

/// The file as shipped.
pub const FILE: &str = include_str!("../../tests/data/checks.yaml");

/// A figure printed elsewhere.
#[derive(Clone, PartialEq, Debug)]
pub struct Check {
    /// Its own name.
    pub id: String,
    /// What is worked, in a sentence.
    pub about: String,
    /// How it is worked here.
    pub subject: Subject,
    /// With what.
    pub given: Given,
    /// What is printed: a number in `unit`, or the place of an answer in words.
    pub printed: f64,
    /// Decimals it is printed with.
    pub places: u8,
    /// Its unit.
    pub unit: Printed,
    /// How far ours may be off.
    pub within: f64,
    /// Where it is printed.
    pub source: String,
    /// Whether it was seen there, or is recalled.
    pub standing: Standing,
    /// Why the printed figure is wrong, where it is.
    pub wrong: Option<String>,
}

/// A unit figures are printed in.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Printed {
    /// As printed after the number.
    pub text: &'static str,
    /// What one of the engine's unit is in it.
    factor: f64,
    /// What is added then.
    plus: f64,
}

const fn unit(text: &'static str, factor: f64) -> Printed {
    Printed { text, factor, plus: 0.0 }
}

/// Every unit a check may be printed in.
static UNITS: &[Printed] = &[
    unit("", 1.0),
    unit("mL", 1.0),
    unit("L", 0.001),
    unit("g", 1.0),
    unit("mg", 1000.0),
    unit("g/mL", 1.0),
    unit("mL/g", 1.0),
    unit("kg/m³", 1000.0),
    unit("g/L", 1000.0),
    unit("g to 100 g of water", 1.0),
    unit("%", 100.0),
    unit("% w/w", 100.0),
    unit("% v/v", 100.0),
    unit("% w/v", 100.0),
    unit("°C", 1.0),
    Printed { text: "°F", factor: 1.8, plus: 32.0 },
    unit("Pa", 1.0),
    unit("kJ/kg", 4184.0),
    unit("min", 1.0),
    unit("h", 1.0),
    unit("days", 1.0 / 1440.0),
    unit("months", 1.0 / 43_830.0),
    unit("drops/mL", 1.0),
    unit("parts", 100.0),
    unit("units", 1.0),
    unit("drinks", 1.0),
    unit("g/g", 1.0),
    unit("kcal in 100 g", 100.0),
    unit("g in 100 g", 100.0),
];

/// A check and what came of it.
#[derive(Clone, PartialEq, Debug)]
pub struct Row {
    /// The check.
    pub check: Check,
    /// What this program makes of it, in the printed unit.
    pub ours: f64,
}

impl Check {
    /// Works it.
    pub fn work(self) -> Row {
        let ours = self.subject.ours(&self.given) * self.unit.factor + self.unit.plus;
        Row { check: self, ours }
    }
}

impl Row {
    /// How far ours is from what is printed.
    pub fn difference(&self) -> f64 {
        self.ours - self.check.printed
    }

    /// Whether ours is the printed figure within its tolerance and what floating point parts.
    pub fn meets(&self) -> bool {
        self.difference().abs() <= self.check.within + 1e-12 * self.check.printed.abs().max(1.0)
    }

    /// Whether it is as it should be: met, or, where the printed figure is wrong, not met.
    pub fn agrees(&self) -> bool {
        self.ours.is_finite() && self.meets() != self.check.wrong.is_some()
    }

    /// What is printed, with its unit or in words.
    pub fn printed_text(&self) -> String {
        self.text(self.check.printed, self.check.places)
    }

    /// Ours with a place more.
    pub fn ours_text(&self) -> String {
        self.text(self.ours, self.check.places + 1)
    }

    /// The difference with a place more; nothing where the answer is in words.
    pub fn difference_text(&self) -> String {
        if self.check.subject.says().is_empty() {
            decimal(self.difference(), self.check.places + 1)
        } else {
            String::new()
        }
    }

    /// What is allowed, in the fewest digits.
    pub fn within_text(&self) -> String {
        let within = self.check.within;
        let places = (0..9).find(|&places| (crate::measure::rounded(within, places) - within).abs() < 1e-12);
        decimal(within, places.unwrap_or(9))
    }

    fn text(&self, value: f64, places: u8) -> String {
        let says = self.check.subject.says();
        if !says.is_empty() {
            return says.get(value as usize).copied().unwrap_or("—").to_string();
        }
        let number = decimal(value, places);
        if self.check.unit.text.is_empty() {
            number
        } else {
            format!("{number}\u{a0}{}", self.check.unit.text)
        }
    }
}

/// Every check of the shipped file, worked.
///
/// # Errors
/// What is wrong with the file.
pub fn rows() -> Result<Vec<Row>, Vec<Finding>> {
    Ok(read(FILE)?.into_iter().map(Check::work).collect())
}
