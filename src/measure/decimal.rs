//! The one rounding rule: how a number becomes digits. A browser script repeats it step by step, so it
//! uses only what both languages do alike: multiply, add one half, floor, and place the point.

use super::dimension::Dimension;
use super::unit::Unit;

/// Powers of ten by table: a power function may differ in its last bit from one machine to the next.
const TENS: [f64; 10] = [1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];

/// A space that no line breaks at, between a number and its unit.
pub(super) const NBSP: char = '\u{a0}';

fn scale(places: u8) -> f64 {
    TENS[usize::from(places).min(TENS.len() - 1)]
}

/// The value times ten to the `places`, rounded half away from zero, without its sign.
fn scaled(value: f64, places: u8) -> f64 {
    (value.abs() * scale(places) + 0.5).floor()
}

/// A count this far from a whole one is a whole one: floating point alone parts them.
pub const PARTED: f64 = 1e-9;

/// A count for people: down to the whole one.
pub fn whole(count: f64) -> f64 {
    (count + PARTED).floor()
}

/// The value rounded half away from zero to so many decimals (nine at most).
pub fn rounded(value: f64, places: u8) -> f64 {
    let size = scaled(value, places) / scale(places);
    if value < 0.0 && size > 0.0 { -size } else { size }
}

/// The value in digits: half away from zero, commas from 1,000 up, a true minus, never a minus zero.
///
/// A value that is not a number, or has no end, is a dash: the working says why, the digits cannot.
pub fn decimal(value: f64, places: u8) -> String {
    if !value.is_finite() {
        return "—".to_string();
    }
    let places = places.min(9);
    let size = scaled(value, places);
    // The digits of a whole number; `as` keeps to the largest u128 where a value is beyond all kitchens.
    let digits = format!("{:0>width$}", size as u128, width = usize::from(places) + 1);
    let (whole, part) = digits.split_at(digits.len() - usize::from(places));
    let mut text = String::new();
    if value < 0.0 && size > 0.0 {
        text.push('−');
    }
    for (index, digit) in whole.chars().enumerate() {
        if index > 0 && (whole.len() - index).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    if places > 0 {
        text.push('.');
        text.push_str(part);
    }
    text
}

/// How many decimals a value of this unit usually shows.
///
/// None from 100 up, at most one from 10 up, the unit's own below; weights, volumes and per cents below 1 show
/// one more, for 0.2 g would hide a fifth of itself, and below 0.1 two. Money always shows its cents. A value that is whole as
/// printed shows none: `25 g` is what the author wrote, and `25.0 g` would claim a finer scale.
pub fn usual_places(value: f64, unit: &Unit) -> u8 {
    let size = (value * unit.printed).abs();
    if unit.dimension == Dimension::MONEY {
        return unit.places;
    }
    if (size - size.round()).abs() < 1e-9 {
        return 0;
    }
    let fine =
        unit.dimension == Dimension::MASS || unit.dimension == Dimension::VOLUME || unit.printed == 100.0;
    if size >= 100.0 {
        0
    } else if size >= 10.0 {
        unit.places.min(1)
    } else if size < 0.1 && fine {
        unit.places + 2
    } else if size < 1.0 && fine {
        unit.places + 1
    } else {
        unit.places
    }
}

/// The value with the places its unit usually prints.
pub fn show_usual(value: f64, unit: &Unit) -> String {
    show(value, unit, usual_places(value, unit))
}

/// The value as printed: number, a space that does not break, unit.
pub fn show(value: f64, unit: &Unit, places: u8) -> String {
    let mut text = decimal(value * unit.printed, places);
    if !unit.text.is_empty() {
        text.push(NBSP);
        text.push_str(unit.text);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::super::unit::{G, G_PER_ML, ML, MONEY, ONE, PER_CENT, PER_CENT_WV};
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn halves_go_away_from_zero() {
        assert_eq!(decimal(0.5, 0), "1");
        assert_eq!(decimal(2.5, 0), "3");
        assert_eq!(decimal(-2.5, 0), "−3");
        assert_eq!(decimal(0.125, 2), "0.13");
        assert_eq!(decimal(-0.4, 0), "0");
        assert_eq!(decimal(-0.0, 1), "0.0");
        assert_eq!(rounded(-0.4, 0).to_bits(), 0.0f64.to_bits());
        assert_eq!(rounded(-2.25, 1), -2.3);
    }

    #[test]
    fn commas_stand_from_a_thousand_up() {
        assert_eq!(decimal(999.4, 0), "999");
        assert_eq!(decimal(999.5, 0), "1,000");
        assert_eq!(decimal(1_234_567.891, 2), "1,234,567.89");
        assert_eq!(decimal(0.05, 3), "0.050");
        assert_eq!(decimal(f64::NAN, 1), "—");
        assert_eq!(decimal(f64::NEG_INFINITY, 1), "—");
        assert_eq!(decimal(1.0, 200), "1.000000000");
    }

    #[test]
    fn usual_places_follow_size() {
        let usual = |value, unit: &Unit| show(value, unit, usual_places(value, unit));
        assert_eq!(usual(0.2, &G), "0.20\u{a0}g");
        assert_eq!(usual(3.86, &G), "3.9\u{a0}g");
        assert_eq!(usual(56.699, &G), "56.7\u{a0}g");
        assert_eq!(usual(236.588, &G), "237\u{a0}g");
        assert_eq!(usual(25.0, &G), "25\u{a0}g");
        assert_eq!(usual(1301.2, &ML), "1,301\u{a0}mL");
        assert_eq!(usual(1.4178, &G_PER_ML), "1.418\u{a0}g/mL");
        assert_eq!(usual(0.07, &PER_CENT), "7\u{a0}%");
        assert_eq!(usual(0.614, &PER_CENT_WV), "61.4\u{a0}% w/v");
        assert_eq!(usual(128.0, &MONEY), "128.00");
        assert_eq!(usual(0.3333, &ONE), "0.33");
    }

    proptest! {
        #[test]
        fn digits_stay_within_half_a_place(value in -1e9f64..1e9, places in 0u8..6) {
            let text = decimal(value, places).replace(',', "").replace('−', "-");
            let read: f64 = text.parse().expect("digits");
            prop_assert!((read - value).abs() <= 0.5 / scale(places) + 1e-6);
            prop_assert!(text != "-0");
        }
    }
}
