//! Amounts as people write them: `1 1/2 cups`, `2–3 min`, `12 fl oz`, `38 °C`. Nothing is guessed; what
//! could be read two ways is handed back with both ways written out.

use super::dimension::Dimension;
use super::kitchen_unit::Measure;
use super::misread::Misread;
use super::ratio::Ratio;
use super::read_number::{number, rest, skip_space, unreadable};
use crate::diagnostic::Code;

/// More than this many grams, millilitres or minutes is a slip of the pen.
const BEYOND_KITCHENS: f64 = 1e9;

/// A value in its base unit: g, mL, min, °C, kcal, or a plain number.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Quantity {
    /// How much.
    pub value: f64,
    /// Of what.
    pub dimension: Dimension,
}

/// An amount an author wrote: one value, or a range.
#[derive(Clone, PartialEq, Debug)]
pub struct Amount {
    /// The value in the base unit; of a range, the lower.
    pub low: f64,
    /// The same as `low`, or the upper value of a range.
    pub high: f64,
    /// The unit it was written in.
    pub measure: Measure,
    /// As written, without the space around it.
    pub written: String,
    exact: Ratio,
}

impl Amount {
    /// The value, of a range the lower, with its dimension.
    pub fn quantity(&self) -> Quantity {
        Quantity { value: self.low, dimension: self.dimension() }
    }

    /// Whether two values were written.
    pub fn is_range(&self) -> bool {
        self.low != self.high
    }

    /// What it is an amount of.
    pub fn dimension(&self) -> Dimension {
        self.measure.dimension()
    }

    /// The lower value in the base unit, not rounded at all.
    pub fn exact(&self) -> Ratio {
        self.exact
    }
}

/// What a caller has a use for.
#[derive(Clone, Copy)]
struct Wanted {
    words: &'static str,
    dimensions: &'static [Dimension],
    units: &'static [Measure],
    zero: bool,
}

const ANY: Wanted = Wanted {
    words: "an amount",
    dimensions: &[],
    units: &[Measure::G, Measure::OzWeight, Measure::Ml, Measure::FlOz, Measure::Cup, Measure::Tsp],
    zero: false,
};
const VOLUME: Wanted = Wanted {
    words: "a volume",
    dimensions: &[Dimension::VOLUME],
    units: &[Measure::Ml, Measure::FlOz, Measure::Cup, Measure::Tbsp, Measure::Tsp, Measure::L],
    zero: false,
};
const MASS: Wanted = Wanted {
    words: "a weight",
    dimensions: &[Dimension::MASS],
    units: &[Measure::G, Measure::Kg, Measure::OzWeight, Measure::Lb],
    zero: false,
};
const MASS_OR_VOLUME: Wanted = Wanted {
    words: "a weight or a volume",
    dimensions: &[Dimension::MASS, Dimension::VOLUME],
    units: ANY.units,
    zero: false,
};
const PER_CENT: Wanted = Wanted {
    words: "a share in per cent",
    dimensions: &[Dimension::NONE],
    units: &[Measure::PerCent],
    zero: false,
};
const TIME: Wanted = Wanted {
    words: "a time",
    dimensions: &[Dimension::TIME],
    units: &[Measure::Minute, Measure::Hour, Measure::Day, Measure::Week],
    zero: false,
};
const LENGTH: Wanted = Wanted {
    words: "a length",
    dimensions: &[Dimension::LENGTH],
    units: &[Measure::Millimetre, Measure::Centimetre],
    zero: false,
};
const TEMPERATURE: Wanted = Wanted {
    words: "a temperature",
    dimensions: &[Dimension::TEMPERATURE],
    units: &[Measure::Celsius, Measure::Fahrenheit],
    zero: true,
};

/// An amount of anything, above nothing.
pub fn amount(text: &str) -> Result<Amount, Misread> {
    read(text, ANY)
}

/// An amount of anything; nothing is allowed too.
pub fn amount_or_zero(text: &str) -> Result<Amount, Misread> {
    read(text, Wanted { zero: true, ..ANY })
}

/// A volume. A bare `oz` is handed back: it may be a weight.
pub fn volume(text: &str) -> Result<Amount, Misread> {
    read(text, VOLUME)
}

/// A mass. A bare `oz` is a weight here, since nothing else can be meant.
pub fn mass(text: &str) -> Result<Amount, Misread> {
    read(text, MASS)
}

/// A share in per cent.
pub fn per_cent(text: &str) -> Result<Amount, Misread> {
    read(text, PER_CENT)
}

/// A share in per cent between two ends.
pub fn share_between(text: &str, least: f64, most: f64) -> Result<f64, Misread> {
    let amount = per_cent(text)?;
    if (least..=most).contains(&amount.low) {
        return Ok(amount.low);
    }
    let ends = |x: f64| super::decimal(x * 100.0, 0);
    let message = format!("`{text}` is not between {} and {} %", ends(least), ends(most));
    Err(Misread::new(0..text.len(), Code::BadNumber, message))
}

/// A mass or a volume. A bare `oz` is handed back: it may be either.
pub fn mass_or_volume(text: &str) -> Result<Amount, Misread> {
    read(text, MASS_OR_VOLUME)
}

/// A dose: by weight, by volume, or by the piece.
pub fn dose(text: &str) -> Result<Amount, Misread> {
    match amount(text) {
        Ok(pieces) if pieces.measure == Measure::Piece => Ok(pieces),
        _ => mass_or_volume(text),
    }
}

/// A length.
pub fn length(text: &str) -> Result<Amount, Misread> {
    read(text, LENGTH)
}

/// A length of time.
pub fn time(text: &str) -> Result<Amount, Misread> {
    read(text, TIME)
}

/// A temperature; nothing is one.
pub fn temperature(text: &str) -> Result<Amount, Misread> {
    read(text, TEMPERATURE)
}

fn read(text: &str, wanted: Wanted) -> Result<Amount, Misread> {
    let written = text.trim();
    if written.is_empty() {
        let misread = Misread::of(text, Code::BadNumber, format!("{} is missing here", wanted.words));
        return Err(with_units(misread, "1", wanted));
    }
    let Some(low) = number(text, 0)? else {
        let message = format!("{} starts with a number; `{written}` does not", wanted.words);
        return Err(with_units(Misread::of(text, Code::BadNumber, message), "1", wanted));
    };
    let start = skip_space(text, 0);
    let (high, end) = match range_dash(text, low.end) {
        None => (low.value, low.end),
        Some(after) => {
            let Some(high) = number(text, after)? else {
                let message = format!("`{written}`: the second number of the range is missing");
                return Err(Misread::of(text, Code::BadNumber, message).why(
                    "a range is two numbers with a dash between them and the unit behind both: 2–3 min",
                ));
            };
            if high.value < low.value {
                return Err(backwards(text, (start, low.end), after, high.end));
            }
            (high.value, high.end)
        }
    };
    let measure = unit(text, start, end, wanted)?;
    let amount = worth(text, (low.value, high), (start, end), measure, wanted)?;
    suits(text, &text[start..end], amount, wanted)
}

/// The amount in base units, where it is above nothing and within reason.
fn worth(
    text: &str,
    (low, high): (Ratio, Ratio),
    (start, end): (usize, usize),
    measure: Measure,
    wanted: Wanted,
) -> Result<Amount, Misread> {
    if low <= Ratio::ZERO && !wanted.zero {
        let message = format!("`{}` is nothing; an amount must be more", text.trim());
        return Err(
            Misread::of(text, Code::BadNumber, message).why("what is not put in is left out of the recipe")
        );
    }
    let exact = measure.to_base(low).map_err(|error| unreadable(start, end, error))?;
    let top = measure.to_base(high).map_err(|error| unreadable(start, end, error))?.to_f64();
    if top > BEYOND_KITCHENS {
        let message = format!("`{}` is more than any kitchen holds", text.trim());
        let most = "a thousand million grams, millilitres or minutes are the most that is read";
        return Err(Misread::new(start..end, Code::BadNumber, message).why(most));
    }
    Ok(Amount { low: exact.to_f64(), high: top, measure, written: text.trim().to_string(), exact })
}

/// Whether the amount is of what the caller has a use for.
fn suits(text: &str, digits: &str, amount: Amount, wanted: Wanted) -> Result<Amount, Misread> {
    if amount.measure.is_ambiguous() && wanted.dimensions.contains(&Dimension::VOLUME) {
        let message = format!("`{}` may be a volume or a weight", amount.written);
        let misread = Misread::of(text, Code::NoBasis, message)
            .why("a fluid ounce is a volume, 29.6 mL; an ounce of weight is 28.3 g")
            .write(format!("{digits} fl oz"));
        // A reading that would be refused next is none.
        let both = wanted.dimensions.contains(&Dimension::MASS);
        return Err(if both { misread.write(format!("{digits} oz weight")) } else { misread });
    }
    let dimension = amount.dimension();
    if !wanted.dimensions.is_empty() && !wanted.dimensions.contains(&dimension) {
        let is = if dimension == Dimension::NONE { "a share".to_string() } else { dimension.with_article() };
        let message = format!("{} was wanted; `{}` is {is}", wanted.words, amount.written);
        let units: Vec<&str> = wanted.units.iter().map(|unit| unit.text()).collect();
        return Err(Misread::of(text, Code::WrongDimension, message).why(format!(
            "{} is written in {}",
            wanted.words,
            units.join(", ")
        )));
    }
    Ok(amount)
}

/// Where the second number of a range starts, if a dash or `to` follows the first.
fn range_dash(text: &str, end: usize) -> Option<usize> {
    let at = skip_space(text, end);
    let tail = rest(text, at);
    if tail.starts_with("to ") || tail.starts_with("to\u{a0}") {
        return Some(at + 2);
    }
    tail.chars().next().filter(|dash| matches!(dash, '-' | '–' | '—' | '−')).map(|dash| at + dash.len_utf8())
}

fn backwards(text: &str, (start, low_end): (usize, usize), after: usize, end: usize) -> Misread {
    let (low, high, tail) = (&text[start..low_end], text[after..end].trim(), rest(text, end).trim());
    let misread =
        Misread::new(start..end, Code::BadNumber, format!("`{}` runs backwards", &text[start..end]))
            .write(format!("{high}–{low} {tail}").trim());
    // `1-1/2 cups` is one and a half to many cooks.
    if high.contains('/') && !low.contains('/') {
        misread.write(format!("{low} {high} {tail}").trim())
    } else {
        misread
    }
}

fn unit(text: &str, start: usize, end: usize, wanted: Wanted) -> Result<Measure, Misread> {
    let digits = &text[start..end];
    let from = skip_space(text, end);
    let words = rest(text, from).trim_end();
    let at = from..from + words.len();
    if words.is_empty() {
        let message = format!("`{digits}` has no unit");
        return Err(with_units(Misread::new(start..end, Code::NoUnit, message), digits, wanted));
    }
    if let Some(measure) = Measure::spelled(words) {
        return Ok(measure);
    }
    if words.contains(|letter: char| letter.is_numeric()) {
        let message =
            format!("`{}` holds more than one amount; one number and one unit are read", text.trim());
        return Err(Misread::of(text, Code::BadNumber, message)
            .why("a range has its unit once, after both numbers: 2–3 min"));
    }
    if let Some((known, length)) = leading_unit(words) {
        let more = words[length..].trim();
        let message = format!("`{digits} {}` is an amount; `{more}` after it is not read", known.plural());
        return Err(Misread::new(from + words.len() - more.len()..at.end, Code::UnknownUnit, message)
            .write(text[start..from + length].trim()));
    }
    let misread = Misread::new(at, Code::UnknownUnit, format!("`{words}` is not a unit known here"));
    Err(with_units(misread, digits, wanted))
}

/// A unit that the words start with, and how many bytes of them it takes.
fn leading_unit(words: &str) -> Option<(Measure, usize)> {
    // No spelling is longer than this, and a paragraph written by mistake should not be tried throughout.
    let tried = words.char_indices().take(40).collect::<Vec<_>>();
    let ends = tried.into_iter().rev().filter(|(_, letter)| letter.is_whitespace() || *letter == ',');
    ends.map(|(at, _)| at).find_map(|at| Measure::spelled(&words[..at]).map(|measure| (measure, at)))
}

/// The same misread, with the digits written before each unit that would do.
fn with_units(misread: Misread, digits: &str, wanted: Wanted) -> Misread {
    let many = !matches!(digits, "1" | "1/2" | "½" | "1/4" | "¼" | "1/3" | "⅓" | "3/4" | "¾" | "2/3" | "⅔");
    wanted.units.iter().fold(misread, |misread, unit| {
        misread.write(format!("{digits} {}", if many { unit.plural() } else { unit.text() }))
    })
}

#[cfg(test)]
#[path = "read_tests.rs"]
mod tests;
