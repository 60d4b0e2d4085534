//! Rounding: half goes away from nothing, and a kitchen measure is as near as it says and on its side.

use proptest::prelude::*;
use proptest::sample::select;
use stillroom::measure::kitchen::{mass_metric, mass_us, volume_metric, volume_us};
use stillroom::measure::{Close, Kitchen, Toward, decimal, rounded, show, unit, usual_places};

use super::config;

/// The US gallon, mL: 231 cubic inches. The other measures are parts of it.
const GALLON: f64 = 3_785.411_784;

/// US measures, mL, and the ounce and the pound of 1959, g.
const MEASURES: &[(&str, f64)] = &[
    ("tsp", GALLON / 768.0),
    ("tbsp", GALLON / 256.0),
    ("cup", GALLON / 16.0),
    ("cups", GALLON / 16.0),
    ("pint", GALLON / 8.0),
    ("pints", GALLON / 8.0),
    ("quart", GALLON / 4.0),
    ("quarts", GALLON / 4.0),
    ("gallon", GALLON),
    ("gallons", GALLON),
    ("oz", 28.349_523_125),
    ("lb", 453.592_37),
    ("mL", 1.0),
    ("g", 1.0),
];

/// What a kitchen measure says, added up: `1 1/2 cups + 2 tbsp`, `2 lb 3 oz`.
fn said(text: &str) -> Result<(f64, usize), TestCaseError> {
    let (mut sum, mut count, mut number) = (0.0, 0, 0.0);
    for word in text.split(['\u{a0}', ' ']).filter(|word| *word != "+") {
        if let Some((_, each)) = MEASURES.iter().find(|measure| measure.0 == word) {
            sum += number * each;
            (count, number) = (count + 1, 0.0);
        } else {
            number += match word.split_once('/') {
                Some((over, under)) => {
                    let read = |text: &str| text.parse::<f64>().unwrap_or(f64::NAN);
                    read(over) / read(under)
                }
                None => word.replace(',', "").parse().unwrap_or(f64::NAN),
            };
        }
    }
    prop_assert!(number == 0.0 && sum > 0.0, "`{text}` is no measure");
    Ok((sum, count))
}

/// How far a measure may be off, as a share: what is documented of both.
const fn share(close: Close) -> f64 {
    match close {
        Close::Five => 0.05,
        Close::Two => 0.02,
    }
}

fn side(kitchen: &Kitchen, toward: Toward, exact: f64) -> Result<f64, TestCaseError> {
    let (said, _) = said(&kitchen.text)?;
    let error = (said - exact) / exact;
    prop_assert!((error - kitchen.error).abs() <= 1e-9, "{kitchen:?} of {exact}: {error}");
    match toward {
        Toward::Nearest => {}
        Toward::Up => prop_assert!(error >= -1e-9, "{kitchen:?} is less than {exact}"),
        Toward::Down => prop_assert!(error <= 1e-9, "{kitchen:?} is more than {exact}"),
    }
    Ok(error)
}

fn closely(exact: f64, close: Close, toward: Toward) -> Result<(), TestCaseError> {
    for kitchen in [volume_us(exact, close, toward), mass_us(exact, close, toward)].iter().flatten() {
        let error = side(kitchen, toward, exact)?;
        prop_assert!(error.abs() <= share(close) + 1e-9, "{kitchen:?} of {exact} is off by {error}");
        prop_assert!(said(&kitchen.text)?.1 <= 2, "{} takes more than two measures", kitchen.text);
    }
    Ok(())
}

/// A measure that is there in the drawer is told by itself.
fn exactly(measure: (&str, f64), toward: Toward) -> Result<(), TestCaseError> {
    let (number, each) = measure;
    let kitchen = volume_us(each, Close::Two, toward);
    let text = kitchen.map(|kitchen| kitchen.text.replace('\u{a0}', " ")).unwrap_or_default();
    prop_assert_eq!(text, number);
    Ok(())
}

/// The marks of a jug, mL, and of a scale, g, and up to where each is the step.
const JUG: [(f64, f64); 6] =
    [(5.0, 0.1), (20.0, 1.0), (100.0, 5.0), (500.0, 10.0), (1000.0, 25.0), (f64::INFINITY, 50.0)];
const SCALE: [(f64, f64); 4] = [(5.0, 0.1), (20.0, 1.0), (200.0, 5.0), (f64::INFINITY, 10.0)];

fn by_marks(exact: f64, toward: Toward) -> Result<(), TestCaseError> {
    for (kitchen, marks) in
        [(volume_metric(exact, toward), &JUG[..]), (mass_metric(exact, toward), &SCALE[..])]
    {
        let step = marks.iter().find(|mark| exact < mark.0).map_or(0.0, |mark| mark.1);
        let (said, _) = match kitchen.text.starts_with("0\u{a0}") {
            true => (0.0, 0),
            false => said(&kitchen.text)?,
        };
        let steps = said / step;
        prop_assert!((steps - steps.round()).abs() < 1e-6, "{kitchen:?} of {exact} is between two marks");
        let (low, high) = match toward {
            Toward::Nearest => (exact - step / 2.0, exact + step / 2.0),
            Toward::Up => (exact, exact + step),
            Toward::Down => (exact - step, exact),
        };
        let tiny = exact * 1e-9;
        prop_assert!(low - tiny <= said && said <= high + tiny, "{kitchen:?} of {exact}");
    }
    Ok(())
}

/// `numerator / 2^halvings` to so many places, half away from nothing, in whole numbers alone.
fn by_hand(numerator: i64, halvings: u32, places: u32) -> String {
    let (under, times) = (1i128 << halvings, 10i128.pow(places));
    let size = (i128::from(numerator.abs()) * times * 2 + under) / (under * 2);
    let (whole, part) = (size / times, size % times);
    let whole = whole.to_string();
    let mut text = String::new();
    for (n, digit) in whole.chars().enumerate() {
        if n > 0 && (whole.len() - n) % 3 == 0 {
            text.push(',');
        }
        text.push(digit);
    }
    if places > 0 {
        text.push_str(&format!(".{part:0>width$}", width = places as usize));
    }
    if numerator < 0 && size > 0 { format!("−{text}") } else { text }
}

fn halves(numerator: i64, halvings: u32, places: u32) -> Result<(), TestCaseError> {
    let value = numerator as f64 / (1u64 << halvings) as f64;
    let text = by_hand(numerator, halvings, places);
    let places = places as u8;
    prop_assert_eq!(decimal(value, places), text.clone());
    let read: f64 = text.replace(',', "").replace('−', "-").parse().expect("digits");
    prop_assert_eq!(rounded(value, places), read);
    prop_assert_eq!(rounded(-value, places), -read);
    prop_assert_eq!(rounded(read, places), read, "rounded twice");
    Ok(())
}

fn in_order(one: f64, other: f64, places: u8) -> Result<(), TestCaseError> {
    let (low, high) = if one < other { (one, other) } else { (other, one) };
    prop_assert!(rounded(low, places) <= rounded(high, places));
    let half = 0.5 / 10f64.powi(i32::from(places));
    prop_assert!((rounded(low, places) - low).abs() <= half * (1.0 + 1e-6) + low.abs() * 1e-12);
    Ok(())
}

/// A figure as usually printed is off by less than a twentieth of itself, unless it is nothing to speak of.
fn as_usual(value: f64) -> Result<(), TestCaseError> {
    for unit in [&unit::G, &unit::ML, &unit::PER_CENT, &unit::G_PER_ML] {
        let text = show(value, unit, usual_places(value, unit));
        let digits = text.split('\u{a0}').next().unwrap_or_default().replace(',', "");
        let read: f64 = digits.parse().unwrap_or(f64::NAN);
        let exact = value * unit.printed;
        prop_assert!(exact < 0.1 || (read - exact).abs() <= exact * 0.05, "{exact} is printed {text}");
    }
    Ok(())
}

fn toward() -> impl Strategy<Value = Toward> {
    select(vec![Toward::Nearest, Toward::Up, Toward::Down])
}

proptest! {
    #![proptest_config(config())]

    /// A half is as near to both sides: the rule sends it away from nothing, as whole numbers reckon it.
    #[test]
    fn a_half_goes_away_from_nothing(numerator in -1_000_000i64..1_000_000, halvings in 0u32..11, places in 0u32..7) {
        halves(numerator, halvings, places)?;
        // And where the halves are, on purpose.
        halves(numerator * 2 + 1, 1, 0)?;
    }

    /// Rounding keeps the order and moves nothing by more than half a place.
    #[test]
    fn rounding_keeps_the_order(one in -1e6f64..1e6, other in -1e6f64..1e6, places in 0u8..7) {
        in_order(one, other, places)?;
        in_order(one, one + other * 1e-9, places)?;
    }

    /// Three figures or so are printed of anything.
    #[test]
    fn what_is_printed_is_near(value in prop_oneof![0.001f64..2.0, 2.0f64..20.0, 20.0f64..20_000.0]) {
        as_usual(value)?;
    }

    /// A measure stands for the exact figure only where it is as near as it has to be; what must not run
    /// short is never less, what must not run over never more.
    #[test]
    fn a_kitchen_measure_is_near_and_on_its_side(
        exact in prop_oneof![0.05f64..50.0, 50.0f64..5_000.0, 5_000.0f64..500_000.0],
        close in select(vec![Close::Five, Close::Two]), toward in toward(),
    ) {
        closely(exact, close, toward)?;
    }

    /// What one measure holds to the drop is told as that measure, whichever way is rounded.
    #[test]
    fn a_whole_measure_is_itself(
        which in select(vec![("1 tsp", 0), ("1 tbsp", 1), ("1 cup", 2), ("1 quart", 6), ("1 gallon", 8)]), toward in toward(),
    ) {
        exactly((which.0, MEASURES[which.1].1), toward)?;
    }

    /// A jug and a scale are read at their marks: the nearest, the next above, or the next below.
    #[test]
    fn metric_measures_stand_at_a_mark(exact in prop_oneof![0.1f64..30.0, 30.0f64..3_000.0], toward in toward()) {
        by_marks(exact, toward)?;
    }
}
