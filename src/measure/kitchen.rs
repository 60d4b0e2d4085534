//! Exact amounts as a kitchen measures them: the nearest spoon, cup or jar, and how far off it is.
//!
//! Only what is printed is rounded; a working goes on from the exact figure. What must not run short
//! (sugar, spirit, jars) is rounded up, what must not run over (doses, servings) down.

use super::decimal::{NBSP, decimal};
use super::kitchen_unit::Measure;

/// How close a kitchen measure has to come to be printed in place of the exact figure.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Close {
    /// Within 5 %: for most of a recipe.
    Five,
    /// Within 2 %: for spirit, for what keeps a preparation, for doses.
    Two,
}

impl Close {
    /// As a share.
    pub const fn share(self) -> f64 {
        match self {
            Close::Five => 0.05,
            Close::Two => 0.02,
        }
    }
}

/// Which way rounding may go.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Toward {
    /// Whichever is closer.
    Nearest,
    /// Never less than the exact figure.
    Up,
    /// Never more than the exact figure.
    Down,
}

impl Toward {
    /// Whether `measured` may stand for `exact`; what floating point alone parts counts as equal.
    fn allows(self, measured: f64, exact: f64) -> bool {
        match self {
            Toward::Nearest => true,
            Toward::Up => measured >= exact * (1.0 - TINY),
            Toward::Down => measured <= exact * (1.0 + TINY),
        }
    }

    /// A whole number of steps.
    fn steps(self, value: f64) -> f64 {
        match self {
            Toward::Nearest => (value + 0.5).floor(),
            Toward::Up => (value * (1.0 - TINY)).ceil(),
            Toward::Down => (value * (1.0 + TINY)).floor(),
        }
    }
}

const TINY: f64 = 1e-12;

/// A measure as printed, and how far it is from the exact figure.
#[derive(Clone, PartialEq, Debug)]
pub struct Kitchen {
    /// `3 1/2 cups`, with spaces that no line breaks at inside each measure.
    pub text: String,
    /// (printed − exact) / exact.
    pub error: f64,
}

impl Kitchen {
    fn new(text: String, measured: f64, exact: f64) -> Kitchen {
        let error = if exact > 0.0 { (measured - exact) / exact } else { 0.0 };
        Kitchen { text, error }
    }
}

/// One rung of the ladder: so many parts of a measure.
#[derive(Clone, Copy)]
struct Rung {
    whole: u32,
    part: (u32, u32),
    unit: Measure,
}

impl Rung {
    fn ml(self) -> f64 {
        let (num, den) = self.part;
        (f64::from(self.whole) + f64::from(num) / f64::from(den)) * self.unit.factor().to_f64()
    }

    fn text(self) -> String {
        counted(self.whole, self.part, self.unit.text(), self.unit.plural())
    }
}

/// Number, fraction and unit in one unbroken piece.
fn counted(whole: u32, (num, den): (u32, u32), one: &str, many: &str) -> String {
    let unit = if whole > 1 || (whole == 1 && num > 0) { many } else { one };
    match (whole, num) {
        (_, 0) => format!("{whole}{NBSP}{unit}"),
        (0, _) => format!("{num}/{den}{NBSP}{unit}"),
        _ => format!("{whole}{NBSP}{num}/{den}{NBSP}{unit}"),
    }
}

/// Spoons first: what a drawer holds, smallest first.
const SPOONS: [(u32, (u32, u32), Measure); 11] = [
    (0, (1, 8), Measure::Tsp),
    (0, (1, 4), Measure::Tsp),
    (0, (1, 2), Measure::Tsp),
    (0, (3, 4), Measure::Tsp),
    (1, (0, 1), Measure::Tsp),
    (1, (1, 2), Measure::Tsp),
    (2, (0, 1), Measure::Tsp),
    (1, (0, 1), Measure::Tbsp),
    (1, (1, 2), Measure::Tbsp),
    (2, (0, 1), Measure::Tbsp),
    (3, (0, 1), Measure::Tbsp),
];

/// Pints, quarts and half gallons, up to the gallon.
const JARS: [(u32, (u32, u32), Measure); 8] = [
    (1, (0, 1), Measure::Quart),
    (3, (0, 1), Measure::Pint),
    (0, (1, 2), Measure::Gallon),
    (5, (0, 1), Measure::Pint),
    (3, (0, 1), Measure::Quart),
    (7, (0, 1), Measure::Pint),
    (1, (0, 1), Measure::Gallon),
    (1, (1, 2), Measure::Gallon),
];

/// The whole ladder, smallest rung first.
fn ladder() -> Vec<Rung> {
    let rung = |(whole, part, unit): (u32, (u32, u32), Measure)| Rung { whole, part, unit };
    let mut rungs: Vec<Rung> = SPOONS.map(rung).to_vec();
    let cup = |whole, part| Rung { whole, part, unit: Measure::Cup };
    rungs.extend([(1, 4), (1, 3), (1, 2), (2, 3), (3, 4)].map(|part| cup(0, part)));
    for whole in 1..4 {
        rungs.extend([(0, 1), (1, 4), (1, 2), (3, 4)].map(|part| cup(whole, part)));
    }
    rungs.extend(JARS.map(rung));
    // Beyond a gallon and a half only whole gallons: a bucket has no finer mark.
    rungs.extend((2..=50).map(|whole| Rung { whole, part: (0, 1), unit: Measure::Gallon }));
    rungs
}

/// Every measure of the ladder, smallest first: millilitres, and what it is called.
pub fn measures() -> Vec<(f64, String)> {
    ladder().into_iter().map(|rung| (rung.ml(), rung.text())).collect()
}

/// A volume in US spoons, cups and jars: the nearest single rung within closeness, else two, else none.
pub fn volume_us(ml: f64, close: Close, toward: Toward) -> Option<Kitchen> {
    if !ml.is_finite() || ml <= 0.0 {
        return None;
    }
    let fits = |measured: f64| {
        toward.allows(measured, ml) && (measured - ml).abs() <= close.share() * ml * (1.0 + TINY)
    };
    let ladder = ladder();
    let nearest =
        |left: &&Rung, right: &&Rung, to: f64| (left.ml() - to).abs().total_cmp(&(right.ml() - to).abs());
    let single = ladder.iter().filter(|rung| fits(rung.ml())).min_by(|a, b| nearest(a, b, ml));
    if let Some(rung) = single {
        return Some(Kitchen::new(rung.text(), rung.ml(), ml));
    }
    // The largest measure that fits under the amount, then one smaller for what is still missing. A
    // second measure below a quarter of the closeness is not worth fetching a spoon for.
    let first = ladder.iter().rev().find(|rung| rung.ml() <= ml)?;
    let missing = ml - first.ml();
    let worth = close.share() / 4.0 * ml;
    let second = ladder
        .iter()
        .filter(|rung| rung.ml() < first.ml() && rung.ml() >= worth && fits(first.ml() + rung.ml()))
        .min_by(|a, b| nearest(a, b, missing))?;
    let text = format!("{} + {}", first.text(), second.text());
    Some(Kitchen::new(text, first.ml() + second.ml(), ml))
}

/// A weight in pounds and ounces: quarter ounces under a pound, halves under ten, whole ones above.
pub fn mass_us(g: f64, close: Close, toward: Toward) -> Option<Kitchen> {
    if !g.is_finite() || g <= 0.0 {
        return None;
    }
    let one = Measure::OzWeight.factor().to_f64();
    let ounces = g / one;
    if ounces > 1e6 {
        return None;
    }
    let parts = match ounces {
        small if small < 16.0 => 4,
        middle if middle < 160.0 => 2,
        _ => 1,
    };
    let steps = toward.steps(ounces * f64::from(parts));
    let measured = steps / f64::from(parts) * one;
    if steps < 1.0 || (measured - g).abs() > close.share() * g * (1.0 + TINY) {
        return None;
    }
    let steps = steps as u32;
    let (pounds, over) = (steps / (16 * parts), steps % (16 * parts));
    let (whole, part) = (over / parts, over % parts);
    // Two quarters are a half.
    let part = if part == 2 && parts == 4 { (1, 2) } else { (part, parts) };
    let ounces = counted(whole, part, "oz", "oz");
    let text = match (pounds, over) {
        (0, _) => ounces,
        (_, 0) => format!("{pounds}{NBSP}lb"),
        _ => format!("{pounds}{NBSP}lb {ounces}"),
    };
    Some(Kitchen::new(text, measured, g))
}

fn metric(value: f64, toward: Toward, unit: Measure, step: f64) -> Kitchen {
    if !value.is_finite() || value <= 0.0 {
        return Kitchen::new(format!("0{NBSP}{}", unit.text()), 0.0, 0.0);
    }
    // Tenths are counted in tens to a unit: a step of 0.1 itself is not exact in binary.
    let measured =
        if step < 1.0 { toward.steps(value * 10.0) / 10.0 } else { toward.steps(value / step) * step };
    let places = u8::from(step < 1.0 && measured.fract() != 0.0);
    Kitchen::new(format!("{}{NBSP}{}", decimal(measured, places), unit.text()), measured, value)
}

/// Millilitres as a jug shows them: tenths under 5, ones under 20, fives under 100, tens under 500,
/// twenty-fives under 1,000, fifties above.
pub fn volume_metric(ml: f64, toward: Toward) -> Kitchen {
    let step = match ml {
        ml if ml < 5.0 => 0.1,
        ml if ml < 20.0 => 1.0,
        ml if ml < 100.0 => 5.0,
        ml if ml < 500.0 => 10.0,
        ml if ml < 1000.0 => 25.0,
        _ => 50.0,
    };
    metric(ml, toward, Measure::Ml, step)
}

/// Grams as a scale is read: tenths under 5, ones under 20, fives to 200, tens above.
pub fn mass_metric(g: f64, toward: Toward) -> Kitchen {
    let step = match g {
        g if g < 5.0 => 0.1,
        g if g < 20.0 => 1.0,
        g if g <= 200.0 => 5.0,
        _ => 10.0,
    };
    metric(g, toward, Measure::G, step)
}

fn ounces(ml: f64, unit: Measure) -> String {
    let text = decimal(ml / unit.factor().to_f64(), 1);
    format!("{}{NBSP}{}", text.strip_suffix(".0").unwrap_or(&text), unit.text())
}

/// US fluid ounces, one decimal at most.
pub fn fl_oz(ml: f64) -> String {
    ounces(ml, Measure::FlOz)
}

/// Ounces by weight to one decimal, where no kitchen fraction comes close.
pub fn oz(g: f64) -> String {
    format!("{}{NBSP}oz", decimal(g / Measure::OzWeight.factor().to_f64(), 1))
}

/// Imperial fluid ounces, one decimal at most; only for what the author measured by Imperial.
pub fn volume_imperial(ml: f64) -> String {
    ounces(ml, Measure::ImperialFlOz)
}

/// A time in minutes, hours, days or weeks: `36 min`, `2 h 5 min`, `4 weeks`.
pub fn minutes(min: f64) -> String {
    if !min.is_finite() || min < 0.0 {
        return decimal(min, 0);
    }
    if min > 0.0 && min < 0.5 {
        return format!("under 1{NBSP}min");
    }
    let count = |number: u64, one: &str, many: &str| {
        format!("{}{NBSP}{}", decimal(number as f64, 0), if number == 1 { one } else { many })
    };
    let all = (min + 0.5).floor() as u64;
    let (days, hours, rest) = (all / 1440, all / 60, all % 60);
    // Up to two days people count in hours: 36 h, 48 h.
    if all > 2880 {
        let over = (all % 1440) / 60;
        return match (days % 7, over, rest) {
            (0, 0, 0) if days >= 14 => count(days / 7, "week", "weeks"),
            (_, 0, 0) => count(days, "day", "days"),
            _ => format!("{} {}", count(days, "day", "days"), minutes((all % 1440) as f64)),
        };
    }
    match (hours, rest) {
        (0, _) => count(rest, "min", "min"),
        (_, 0) => count(hours, "h", "h"),
        _ => format!("{} {}", count(hours, "h", "h"), count(rest, "min", "min")),
    }
}

/// A time to the nearest five minutes, and five at least.
pub fn to_five_minutes(min: f64) -> f64 {
    ((min / 5.0 + 0.5).floor() * 5.0).max(5.0)
}

/// A temperature on both scales: `38 °C (100 °F)`.
pub fn temperature_text(celsius: f64) -> String {
    let [metric, us] = temperature_both(celsius);
    format!("{metric} ({us})")
}

/// A temperature, °C, on each scale by itself: `38 °C` and `100 °F`.
pub fn temperature_both(celsius: f64) -> [String; 2] {
    let fahrenheit = celsius * 1.8 + 32.0;
    [format!("{}{NBSP}°C", decimal(celsius, 0)), format!("{}{NBSP}°F", decimal(fahrenheit, 0))]
}

#[cfg(test)]
#[path = "kitchen_tests.rs"]
mod tests;
