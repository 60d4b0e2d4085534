//! A wanted result: `500 mL`, `12 of 30 mL`, `12 tins of 30 mL`, `80 lozenges of 1 g`, `24 pieces`, `300 cm²`.

use super::kitchen_unit::Measure;
use super::misread::Misread;
use super::read::{Amount, amount, mass_or_volume};
use super::read_number::{number, rest};
use crate::diagnostic::Code;

/// How many, and how much of each: a volume, a weight, an area or pieces.
///
/// # Errors
/// What is of no such kind, with the two ways to write it.
pub fn wanted(text: &str) -> Result<(f64, Amount), Misread> {
    // What is counted or laid on is no weight and no volume.
    if let Ok(whole) = amount(text)
        && matches!(whole.measure, Measure::Piece | Measure::SquareCentimetre)
    {
        return Ok((1.0, whole));
    }
    let Some((before, each)) = text.split_once(" of ") else {
        return mass_or_volume(text).map(|each| (1.0, each));
    };
    let at = text.len() - each.len();
    let each = mass_or_volume(each).map_err(|misread| misread.shifted(at))?;
    match number(before, 0)? {
        Some(count) if rest(before, count.end).chars().all(|c| c.is_alphabetic() || c.is_whitespace()) => {
            Ok((count.value.to_f64(), each))
        }
        _ => {
            let message = format!("`{}` does not begin with how many are wanted", text.trim());
            Err(Misread::of(text, Code::BadNumber, message)
                .write(format!("12 of {}", each.written))
                .write(each.written))
        }
    }
}

/// A plain count above nothing.
///
/// # Errors
/// No number, none above nothing, or beyond a million.
pub fn count(text: &str) -> Result<f64, Misread> {
    match text.trim().parse::<f64>() {
        Ok(value) if value > 0.0 && value <= 1e6 => Ok(value),
        _ => {
            let message = format!("a number above nothing, in digits, was wanted; `{text}` is not one");
            let mut misread = Misread::new(0..text.len(), Code::BadNumber, message);
            misread.write.push("3".to_string());
            Err(misread)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn so_many_of_so_much() {
        let read = |text: &str| wanted(text).map(|(count, each)| (count, each.low));
        assert_eq!(read("500 mL"), Ok((1.0, 500.0)));
        assert_eq!(read("12 tins of 30 mL"), Ok((12.0, 30.0)));
        assert_eq!(read("12 of 30 mL"), Ok((12.0, 30.0)));
        assert_eq!(read("80 lozenges of 1 g"), Ok((80.0, 1.0)));
        assert_eq!(read("80 lozenges"), Ok((1.0, 80.0)));
        assert_eq!(read("300 cm²"), Ok((1.0, 0.03)));
        assert_eq!(read("tins of 30 mL").expect_err("how many?").code, Code::BadNumber);
        assert_eq!(read("12 of 30 min").expect_err("a time").code, Code::WrongDimension);
    }
}
