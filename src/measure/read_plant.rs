//! How much of a plant: an amount, said to be fresh or dried.

use std::fmt;

use super::dimension::Dimension;
use super::kitchen_unit::Measure;
use super::misread::Misread;
use super::read::{Amount, amount};
use crate::diagnostic::Code;

/// Whether a plant is weighed fresh or dried.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Form {
    /// As picked, its water in it.
    Fresh,
    /// Dried for keeping.
    Dried,
}

impl Form {
    fn spelled(word: &str) -> Option<Form> {
        match word.to_lowercase().as_str() {
            "fresh" => Some(Form::Fresh),
            "dried" | "dry" => Some(Form::Dried),
            _ => None,
        }
    }
}

impl fmt::Display for Form {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Form::Fresh => "fresh",
            Form::Dried => "dried",
        })
    }
}

/// `200 g dried`, `25 g fresh, chopped`, `2 parts dried`.
#[derive(Clone, PartialEq, Debug)]
pub struct PlantAmount {
    /// How much; a mass, a volume, or parts by weight.
    pub amount: Amount,
    /// Fresh or dried.
    pub form: Form,
    /// What was written after a comma: how it is cut.
    pub cut: Option<String>,
}

/// How much of a plant. A bare `oz` is a weight here: plants are not poured.
pub fn plant_amount(text: &str) -> Result<PlantAmount, Misread> {
    // A comma before a digit parts thousands.
    let comma = text
        .match_indices(',')
        .map(|(at, _)| at)
        .find(|at| !text[at + 1..].starts_with(|next: char| next.is_ascii_digit()));
    let (head, tail) = match comma {
        Some(at) => (&text[..at], text[at + 1..].trim()),
        None => (text, ""),
    };
    let head = head.trim_end();
    let split = head
        .rfind(char::is_whitespace)
        .map_or(0, |at| at + head[at..].chars().next().map_or(0, char::len_utf8));
    let (measured, form, cut) = match (Form::spelled(&head[split..]), Form::spelled(tail)) {
        (Some(form), _) => (&head[..split], form, tail),
        (None, Some(form)) => (head, form, ""),
        (None, None) => {
            let amount = amount(head)?;
            plant_measure(head, &amount)?;
            let cut = if tail.is_empty() { String::new() } else { format!(", {tail}") };
            let message = format!("`{}` does not say whether the plant is fresh or dried", text.trim());
            return Err(Misread::of(text, Code::FreshOrDried, message)
                .why("a fresh plant is mostly water, so the same weight holds far less of the plant")
                .write(format!("{} dried{cut}", amount.written))
                .write(format!("{} fresh{cut}", amount.written)));
        }
    };
    // What is to be copied must be the whole of it: the form and the cut stand behind the amount.
    let behind = text[measured.len()..].trim();
    let gap = if behind.starts_with(',') { "" } else { " " };
    let amount = amount(measured).map_err(|mut misread| {
        misread.write.iter_mut().for_each(|write| *write = format!("{write}{gap}{behind}"));
        misread
    })?;
    plant_measure(measured, &amount)?;
    Ok(PlantAmount { amount, form, cut: if cut.is_empty() { None } else { Some(cut.to_string()) } })
}

fn plant_measure(text: &str, amount: &Amount) -> Result<(), Misread> {
    let dimension = amount.dimension();
    let counted = amount.measure == Measure::Part || Measure::PIECES.contains(&amount.measure);
    if dimension == Dimension::MASS || dimension == Dimension::VOLUME || counted {
        return Ok(());
    }
    let is = if dimension == Dimension::NONE { "a share".to_string() } else { dimension.with_article() };
    let message = format!("a plant is measured by weight or by volume; `{}` is {is}", amount.written);
    Err(Misread::of(text, Code::WrongDimension, message).why("such as 50 g dried, or 2 cups fresh"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plants_are_fresh_or_dried() {
        let read = plant_amount("200 g dried").expect("readable");
        assert_eq!((read.amount.low, read.form, read.cut), (200.0, Form::Dried, None));
        let read = plant_amount("25 g fresh, chopped").expect("readable");
        assert_eq!((read.form, read.cut.as_deref()), (Form::Fresh, Some("chopped")));
        let read = plant_amount("1,000 g, dried").expect("readable");
        assert_eq!((read.amount.low, read.form), (1000.0, Form::Dried));
        let read = plant_amount("2 oz dried").expect("a weight");
        assert_eq!((read.amount.low, read.amount.measure), (56.69904625, Measure::Oz));
        assert_eq!(plant_amount("1 cup dried").expect("readable").amount.measure, Measure::Cup);
    }

    #[test]
    fn plants_may_be_counted() {
        let read = plant_amount("3 sticks dried").expect("readable");
        assert_eq!((read.amount.low, read.amount.measure, read.form), (3.0, Measure::Stick, Form::Dried));
        assert_eq!(plant_amount("4 cloves fresh, crushed").expect("readable").amount.measure, Measure::Clove);
        assert_eq!(
            plant_amount("20 drops dried").expect_err("no plant is dropped").code,
            Code::WrongDimension
        );
    }

    #[test]
    fn a_plant_without_its_form_gets_both() {
        let misread = plant_amount("200 g, chopped").expect_err("no form");
        assert_eq!(misread.code, Code::FreshOrDried);
        assert_eq!(misread.write, ["200 g dried, chopped", "200 g fresh, chopped"]);
        assert_eq!(plant_amount("200 dried").expect_err("no unit").code, Code::NoUnit);
        assert_eq!(plant_amount("dried").expect_err("no number").code, Code::BadNumber);
        assert_eq!(plant_amount("3 min dried").expect_err("a time").code, Code::WrongDimension);
    }
}
