//! Amounts read, and amounts handed back.

use super::*;
use crate::measure::{decimal, plant_amount};
use proptest::prelude::*;

fn low(text: &str) -> f64 {
    amount(text).unwrap_or_else(|misread| panic!("{text}: {misread:?}")).low
}

#[test]
fn amounts_are_read_as_people_write_them() {
    assert_eq!(low("1 1/2 cups"), 354.88235475);
    assert_eq!(low("1½ cups"), 354.88235475);
    assert_eq!(low("½ tsp"), 2.464460796875);
    assert_eq!(low("1.5 L"), 1500.0);
    assert_eq!(low("1,000 mL"), 1000.0);
    assert_eq!(low("30min"), 30.0);
    assert_eq!(low("  2\u{a0}weeks "), 20_160.0);
    assert_eq!(low("38 °C"), 38.0);
    assert_eq!(low("212F"), 100.0);
    assert_eq!(low("50 %"), 0.5);
    assert_eq!(low("1 imperial pint"), 568.26125);
    assert_eq!(low("4.184 kJ"), 1.0);
    assert_eq!(amount(" 12 fl oz").expect("readable").written, "12 fl oz");
    assert_eq!(amount("1/3 cup").expect("readable").exact(), Ratio::exact(2_365_882_365, 30_000_000));
}

#[test]
fn ranges_take_a_hyphen_a_dash_or_to() {
    for text in ["2-3 min", "2–3 min", "2 – 3 min", "2 to 3 min"] {
        let range = amount(text).expect("a range");
        assert_eq!((range.low, range.high, range.is_range()), (2.0, 3.0, true), "{text}");
        assert_eq!(range.quantity().value, 2.0);
    }
    assert_eq!(amount("1 1/2-2 cups").expect("a range").measure, Measure::Cup);
    let misread = amount("1-1/2 cups").expect_err("backwards");
    assert_eq!(misread.write, ["1/2–1 cups", "1 1/2 cups"]);
    assert_eq!(amount("3–2 min").expect_err("backwards").code, Code::BadNumber);
    assert_eq!(amount("3– min").expect_err("half a range").code, Code::BadNumber);
}

#[test]
fn what_is_no_amount_says_why() {
    for text in ["", "  ", "NaN L", "inf mL", "∞ mL", "-2 g", "−2 g", "0 g", "1e5 g", "1,5 L", "1/0 cup"]
    {
        assert!(amount(text).is_err(), "{text}");
    }
    for text in ["2000000 kg", "1 lb 2 oz", "1 cup 2 tbsp", "2 min to 3 min"] {
        assert_eq!(amount(text).expect_err(text).code, Code::BadNumber, "{text}");
    }
    assert_eq!(amount_or_zero("0 g").expect("nothing is allowed").low, 0.0);
    assert_eq!(temperature("0 °C").expect("freezing").low, 0.0);
    let misread = volume("12").expect_err("no unit");
    assert_eq!((misread.code, misread.at), (Code::NoUnit, 0..2));
    assert_eq!(misread.write[..3], ["12 mL", "12 fl oz", "12 cups"]);
    let misread = volume("2 cpus").expect_err("no such unit");
    assert_eq!((misread.code, misread.at), (Code::UnknownUnit, 2..6));
    assert_eq!(misread.message, "`cpus` is not a unit known here");
    let misread = volume("1 cup of honey").expect_err("more than an amount");
    assert_eq!((misread.code, misread.at), (Code::UnknownUnit, 6..14));
    assert_eq!(misread.write, ["1 cup"]);
}

#[test]
fn a_bare_ounce_is_a_weight_only_where_nothing_else_can_be_meant() {
    assert_eq!(mass("2 oz").expect("a weight").low, 56.69904625);
    for reader in [volume, mass_or_volume] {
        let misread = reader("12 oz").expect_err("two readings");
        assert_eq!(misread.code, Code::NoBasis);
        // A volume was asked for, so a weight is no way out there.
        let weighed: &[&str] = if reader("12 oz weight").is_ok() { &["12 oz weight"] } else { &[] };
        assert_eq!(misread.write, [&["12 fl oz"], weighed].concat());
        for write in &misread.write {
            assert!(amount(write).is_ok_and(|amount| !amount.measure.is_ambiguous()));
        }
    }
    assert_eq!(mass_or_volume("12 oz by weight").expect("said").measure, Measure::OzWeight);
}

#[test]
fn the_wrong_dimension_is_named() {
    let misread = volume("200 g").expect_err("a mass");
    assert_eq!(misread.code, Code::WrongDimension);
    assert_eq!(misread.message, "a volume was wanted; `200 g` is a weight");
    assert_eq!(mass("12 fl oz").expect_err("a volume").code, Code::WrongDimension);
    assert_eq!(time("2 cups").expect_err("a volume").code, Code::WrongDimension);
    assert_eq!(mass("50 %").expect_err("a share").message, "a weight was wanted; `50 %` is a share");
}

#[test]
fn what_a_misread_proposes_can_be_read() {
    for text in ["", "12", "2 cpus", "1,5 L", "1-1/2 cups", "3–2 min", "cup"] {
        for write in amount(text).expect_err(text).write {
            assert!(amount(&write).is_ok(), "{text} proposes {write}");
        }
    }
}

proptest! {
    #[test]
    fn decimals_written_are_read_back(tenths in 1u32..10_000_000, index in 0usize..33) {
        let measure = Measure::all().nth(index).expect("in the table");
        let value = f64::from(tenths) / 10.0;
        let text = format!("{} {}", decimal(value, 1), measure.plural());
        let exact = measure.to_base(Ratio::exact(i128::from(tenths), 10)).expect("small");
        match amount(&text) {
            Ok(read) => prop_assert_eq!(read.low, exact.to_f64()),
            Err(_) => prop_assert!(exact.to_f64() > BEYOND_KITCHENS),
        }
    }

    #[test]
    fn kitchen_fractions_written_are_read_back(whole in 0i128..100, eighths in 1i128..8) {
        let part = Ratio::exact(eighths, 8);
        let text = format!("{whole} {}/{} cups", part.numerator(), part.denominator());
        let want = Measure::Cup.to_base(Ratio::whole(whole).plus(part).expect("small")).expect("small");
        prop_assert_eq!(amount(&text).expect("readable").exact(), want);
    }

    #[test]
    fn any_text_is_read_or_handed_back(text in ".*") {
        never_panics(&text)?;
    }

    #[test]
    fn any_near_amount_is_read_or_handed_back(text in "[0-9½⅓/⁄., \u{a0}–−to%-]{0,10}[a-zA-Z°℃ :/,½0-9]{0,10}") {
        never_panics(&text)?;
    }
}

fn never_panics(text: &str) -> Result<(), TestCaseError> {
    for reader in [amount, amount_or_zero, volume, mass, mass_or_volume, time, temperature] {
        match reader(text) {
            Ok(amount) => prop_assert!(amount.low.is_finite() && amount.low <= amount.high),
            Err(misread) => prop_assert!(text.get(misread.at).is_some()),
        }
    }
    if let Err(misread) = plant_amount(text) {
        prop_assert!(text.get(misread.at).is_some());
    }
    Ok(())
}
