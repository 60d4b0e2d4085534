//! A wanted batch: by what it makes (`500 mL`, `12 tins of 30 mL`, `24 pieces`, `300 cm²`), by who takes it (`60 doses`,
//! `4 people for 2 weeks`), by what there is (`from 250 g rosehip`, `from 2 L water`), or so many `times`.

use super::kitchen_unit::Measure;
use super::misread::Misread;
use super::read::{Amount, amount, mass_or_volume, per_cent, time};
use super::read_number::{number, rest};
use crate::diagnostic::Code;

/// What a wanted batch is measured by.
#[derive(Clone, PartialEq, Debug)]
pub enum By {
    /// So many of so much: a volume, a weight, an area or pieces.
    Made(f64, Amount),
    /// So many times the recipe.
    Times(f64),
    /// So many doses.
    Doses(f64),
    /// So many people for so long, min.
    People(f64, f64),
    /// So much of something that is put in.
    From(Amount, String),
}

/// A wanted batch.
#[derive(Clone, PartialEq, Debug)]
pub struct Wanted {
    /// What it is measured by.
    pub by: By,
    /// How much more is made, for what is lost on the way: a share.
    pub over: f64,
    /// In so many pots alike.
    pub pots: f64,
    /// As written.
    pub written: String,
}

/// Reads a wanted batch: `12 of 120 mL + 10 % in 2 pots`.
///
/// # Errors
/// What is of no such kind, with the ways to write it.
pub fn wanted(text: &str) -> Result<Wanted, Misread> {
    let (rest, pots) = match text.rsplit_once(" in ") {
        Some((rest, pots)) if pots.trim_end().ends_with("pots") || pots.trim_end().ends_with("pot") => {
            let number = pots.trim().trim_end_matches('s').trim_end_matches("pot");
            (rest, whole(number.trim(), text)?)
        }
        _ => (text, 1.0),
    };
    let (rest, over) = match rest.rsplit_once('+') {
        Some((rest, over)) => {
            (rest, per_cent(over).map_err(|misread| misread.shifted(text.len() - over.len()))?.low)
        }
        None => (rest, 0.0),
    };
    Ok(Wanted { by: by(rest.trim_end())?, over, pots, written: text.trim().to_string() })
}

fn by(text: &str) -> Result<By, Misread> {
    if let Some(stock) = text.trim_start().strip_prefix("from ") {
        return from(text, stock);
    }
    if let Some((people, long)) = text.split_once(" for ") {
        let people = people.trim().trim_end_matches("people").trim_end_matches("person").trim();
        let at = text.len() - long.len();
        return Ok(By::People(whole(people, text)?, time(long).map_err(|misread| misread.shifted(at))?.low));
    }
    for (word, by) in [("times", By::Times as fn(f64) -> By), ("doses", By::Doses), ("dose", By::Doses)] {
        if let Some(number) = text.trim().strip_suffix(word) {
            return count(number.trim()).map(by);
        }
    }
    made(text).map(|(count, each)| By::Made(count, each))
}

/// `from 250 g rosehip`: an amount, then a name.
fn from(text: &str, stock: &str) -> Result<By, Misread> {
    let stock = stock.trim();
    // The longest beginning that is an amount.
    let ends = stock.match_indices(' ').map(|(at, _)| at).collect::<Vec<_>>();
    let read = ends.into_iter().rev().find_map(|at| Some((amount(&stock[..at]).ok()?, stock[at..].trim())));
    match read {
        Some((amount, name)) if !name.is_empty() => {
            let name = name.strip_prefix("of ").unwrap_or(name);
            Ok(By::From(amount, name.to_string()))
        }
        _ => {
            let message = format!("`{}` does not say how much there is, and of what", text.trim());
            Err(Misread::of(text, Code::BadNumber, message)
                .write("from 250 g rosehip")
                .write("from 2 L water"))
        }
    }
}

fn whole(number: &str, text: &str) -> Result<f64, Misread> {
    count(number).ok().filter(|count| count.fract() == 0.0).ok_or_else(|| {
        Misread::of(text, Code::BadNumber, format!("`{number}` is no whole number"))
            .write("4 people for 2 weeks")
            .write("20 L in 3 pots")
    })
}

/// How many, and how much of each: a volume, a weight, an area or pieces.
fn made(text: &str) -> Result<(f64, Amount), Misread> {
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
    match super::plain_number(text) {
        Some(value) if value > 0.0 && value <= 1e6 => Ok(value),
        _ => {
            let message =
                format!("a number above nothing and up to a million was wanted; `{text}` is not one");
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
        let read = |text: &str| made(text).map(|(count, each)| (count, each.low));
        assert_eq!(read("500 mL"), Ok((1.0, 500.0)));
        assert_eq!(read("12 tins of 30 mL"), Ok((12.0, 30.0)));
        assert_eq!(read("12 of 30 mL"), Ok((12.0, 30.0)));
        assert_eq!(read("80 lozenges of 1 g"), Ok((80.0, 1.0)));
        assert_eq!(read("80 lozenges"), Ok((1.0, 80.0)));
        assert_eq!(read("300 cm²"), Ok((1.0, 0.03)));
        assert_eq!(read("tins of 30 mL").expect_err("how many?").code, Code::BadNumber);
        assert_eq!(read("12 of 30 min").expect_err("a time").code, Code::WrongDimension);
    }

    #[test]
    fn batches_by_people_by_stock_and_by_number() {
        let read = |text: &str| wanted(text).map(|wanted| (wanted.by, wanted.over, wanted.pots));
        assert_eq!(read("3 times"), Ok((By::Times(3.0), 0.0, 1.0)));
        assert_eq!(read("60 doses + 10 %"), Ok((By::Doses(60.0), 0.10, 1.0)));
        assert_eq!(read("4 people for 2 weeks"), Ok((By::People(4.0, 20_160.0), 0.0, 1.0)));
        let Ok((By::From(amount, what), over, pots)) = read("from 250 g rose hips in 2 pots") else {
            panic!("stock")
        };
        assert_eq!((amount.low, what.as_str(), over, pots), (250.0, "rose hips", 0.0, 2.0));
        let Ok((By::Made(12.0, each), 0.10, 3.0)) = read("12 of 120 mL + 10 % in 3 pots") else {
            panic!("made")
        };
        assert_eq!(each.low, 120.0);
        for text in
            ["from rosehip", "from 250 g", "some people for 2 weeks", "500 mL in 1.5 pots", "500 mL + some"]
        {
            assert!(wanted(text).is_err(), "{text}");
        }
    }
}
