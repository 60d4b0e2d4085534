//! Ratios of plant to liquid, shares of one thing added to another, and how far a liquid is boiled down.

use super::dimension::Dimension;
use super::misread::Misread;
use super::ratio::Ratio;
use super::read::{Amount, amount};
use super::read_number::{Number, number, rest, share, share_text, skip_space, unreadable};
use crate::diagnostic::Code;

/// How the two sides of a ratio are measured.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum RatioBasis {
    /// `w/v`: grams of plant to millilitres of liquid.
    WeightInVolume,
    /// `w/w`: grams to grams.
    WeightInWeight,
    /// `v/v`: a volume to a volume.
    VolumeInVolume,
}

/// `1:4 w/v`.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LiquidRatio {
    /// Parts of plant.
    pub plant: f64,
    /// Parts of liquid.
    pub liquid: f64,
    /// How the parts are measured.
    pub by: RatioBasis,
}

impl LiquidRatio {
    /// As an author writes it.
    pub fn written(&self) -> String {
        let part = |value: f64| super::decimal::rounded(value, 3).to_string();
        let by = match self.by {
            RatioBasis::WeightInVolume => "w/v",
            RatioBasis::WeightInWeight => "w/w",
            RatioBasis::VolumeInVolume => "v/v",
        };
        format!("{}:{} {by}", part(self.plant), part(self.liquid))
    }
}

/// What a share is measured by.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum By {
    /// On the scale.
    Weight,
    /// In the jug.
    Volume,
}

/// What a share is a share of.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Of {
    /// The liquid it is added to.
    Liquid,
    /// The finished preparation, what was added within it.
    Finished,
}

/// `1/2 of the liquid by volume`.
#[derive(Clone, PartialEq, Debug)]
pub struct Proportion {
    /// The share, 0.5 for a half.
    pub share: f64,
    /// What it is measured by.
    pub by: By,
    /// What it is a share of.
    pub of: Of,
    /// As written.
    pub written: String,
}

/// What part is left when a liquid has been boiled down.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum LeftOf {
    /// Of the liquid in the pan when the reducing starts.
    Liquid,
    /// Of the water put in at first.
    Water,
}

/// How far a liquid is boiled down.
#[derive(Clone, PartialEq, Debug)]
pub enum Reduction {
    /// Until this share is left.
    ToShare {
        /// What is left, 0.5 for a half.
        share: f64,
        /// Of what.
        of: LeftOf,
    },
    /// Until this volume is left.
    ToVolume(Amount),
}

/// A ratio of plant to liquid; by what it is measured is never guessed.
pub fn liquid_ratio(text: &str) -> Result<LiquidRatio, Misread> {
    let shape = || {
        let message = format!("a ratio of plant to liquid was wanted; `{}` is not one", text.trim());
        Misread::of(text, Code::WrongShape, message).write("1:4 w/v")
    };
    let plant = number(text, 0)?.ok_or_else(shape)?;
    let colon = skip_space(text, plant.end);
    if !rest(text, colon).starts_with(':') {
        return Err(shape());
    }
    let liquid = number(text, colon + 1)?.ok_or_else(shape)?;
    let parts = text[..liquid.end].trim_start();
    for side in [plant, liquid] {
        within_reason(text, side)?;
    }
    let by = match rest(text, liquid.end).trim().to_lowercase().as_str() {
        "w/v" => RatioBasis::WeightInVolume,
        "w/w" => RatioBasis::WeightInWeight,
        "v/v" => RatioBasis::VolumeInVolume,
        other => {
            let message = if other.is_empty() {
                format!("`{parts}` does not say what its parts are measured by")
            } else {
                format!("`{other}` does not say what the parts of a ratio are measured by")
            };
            let (p, l) = (share_text(plant.value), share_text(liquid.value));
            return Err(Misread::of(text, Code::NoBasis, message)
                .why(format!(
                    "w/v is {p} g of plant to {l} mL of liquid, w/w is {p} g of plant to {l} g of liquid"
                ))
                .write(format!("{parts} w/v"))
                .write(format!("{parts} w/w")));
        }
    };
    Ok(LiquidRatio { plant: plant.value.to_f64(), liquid: liquid.value.to_f64(), by })
}

/// A share of the liquid or of the finished preparation, by weight or by volume: all three are needed.
pub fn proportion(text: &str) -> Result<Proportion, Misread> {
    let Some(part) = share(text, 0)? else {
        let message = format!("a share was wanted; `{}` does not start with one", text.trim());
        return Err(Misread::of(text, Code::WrongShape, message)
            .write("1/2 of the liquid by volume")
            .write("equal to the liquid by weight"));
    };
    within_reason(text, part)?;
    let (mut of, mut by, mut stray) = (None, None, None);
    let mut words = rest(text, part.end).split_whitespace();
    while let Some(word) = words.next() {
        match word.to_lowercase().as_str() {
            "of" | "the" | "as" | "much" | "times" => {}
            "liquid" if of.is_none() => of = Some(Of::Liquid),
            "finished" if of.is_none() => of = Some(Of::Finished),
            "by" if by.is_none() => match words.next().map(str::to_lowercase).as_deref() {
                Some("weight" | "mass") => by = Some(By::Weight),
                Some("volume") => by = Some(By::Volume),
                _ => stray = Some("by"),
            },
            _ => stray = stray.or(Some(word)),
        }
    }
    let (Some(share_of), Some(measured_by), None) = (of, by, stray) else {
        return Err(unsaid(text, part.value, of, by, stray));
    };
    if share_of == Of::Finished && part.value >= Ratio::ONE {
        let message = format!(
            "`{}`: what is added is only a part of the finished preparation, so its share is below 1",
            text.trim()
        );
        return Err(Misread::of(text, Code::BadNumber, message).write(proportion_text(
            part.value,
            Of::Liquid,
            measured_by,
        )));
    }
    Ok(Proportion {
        share: part.value.to_f64(),
        by: measured_by,
        of: share_of,
        written: text.trim().to_string(),
    })
}

fn proportion_text(value: Ratio, of: Of, by: By) -> String {
    let of = if of == Of::Liquid { "liquid" } else { "finished" };
    let by = if by == By::Weight { "weight" } else { "volume" };
    if value == Ratio::ONE {
        format!("equal to the {of} by {by}")
    } else {
        format!("{} of the {of} by {by}", share_text(value))
    }
}

/// A share whose "of what" or "by what" is missing, with every reading written out.
fn unsaid(text: &str, value: Ratio, of: Option<Of>, by: Option<By>, stray: Option<&str>) -> Misread {
    let message = match stray {
        Some(word) => {
            format!("`{word}` is not read in `{}`: it says neither of what nor by what", text.trim())
        }
        None => {
            let missing = match (of, by) {
                (None, None) => "of what it is a share, and by weight or by volume",
                (None, Some(_)) => "of what it is a share",
                _ => "whether it goes by weight or by volume",
            };
            format!("`{}` does not say {missing}", text.trim())
        }
    };
    let mut misread = Misread::of(text, Code::NoBasis, message).why(meaning(value));
    let ofs = [Of::Liquid, Of::Finished].into_iter().filter(|kind| of.is_none_or(|of| of == *kind));
    for of in ofs.filter(|of| *of == Of::Liquid || value < Ratio::ONE) {
        for by in [By::Volume, By::Weight].into_iter().filter(|kind| by.is_none_or(|by| by == *kind)) {
            misread = misread.write(proportion_text(value, of, by));
        }
    }
    misread
}

/// What a share comes to, of the liquid and of the finished preparation.
fn meaning(value: Ratio) -> String {
    let times = |ratio: Result<Ratio, _>| ratio.map_or_else(|_| "many".to_string(), share_text);
    let whole = times(value.plus(Ratio::ONE));
    let of_liquid =
        format!("{} of the liquid makes the finished {whole} times the liquid", share_text(value));
    if value >= Ratio::ONE {
        return of_liquid;
    }
    let added = Ratio::ONE.minus(value).and_then(|left| value.over(left));
    let adds = if added == Ok(Ratio::ONE) {
        "as much as the liquid".to_string()
    } else {
        format!("{} times the liquid", times(added))
    };
    format!("{of_liquid}; {} of the finished adds {adds}", share_text(value))
}

/// How far to boil down: `1/2`, `to 1/3`, `by 1/3`, `to 1/2 of the water`, `to 16 fl oz`.
///
/// To a half and by a half are the same; any other bare share could be either and is handed back.
pub fn reduction(text: &str) -> Result<Reduction, Misread> {
    let start = skip_space(text, 0);
    let word = rest(text, start).split_whitespace().next().unwrap_or("").to_lowercase();
    let (to, by) = (word == "to", word == "by");
    let from = if to || by { start + word.len() } else { start };
    let half = Ratio::exact(1, 2);
    let read = share(text, from)?;
    let said = read.map(|part| rest(text, part.end).to_lowercase());
    let of = said.as_deref().map(|said| said.split_whitespace().collect::<Vec<_>>());
    let of = match of.as_deref() {
        Some([] | ["liquid"] | ["of", "liquid"] | ["of", "the", "liquid"] | ["the", "liquid"]) => {
            LeftOf::Liquid
        }
        Some(["of", "water"] | ["of", "the", "water"] | ["the", "water"]) => LeftOf::Water,
        _ => return to_volume(text, from, to),
    };
    let Some(part) = read else {
        return to_volume(text, from, to);
    };
    if part.value >= Ratio::ONE || part.value <= Ratio::ZERO {
        let message = format!("`{}`: a liquid is boiled down to a share between nothing and 1", text.trim());
        return Err(Misread::of(text, Code::BadNumber, message).write("1/2").write("to 16 fl oz"));
    }
    let left = Ratio::ONE.minus(part.value).map_err(|error| unreadable(from, part.end, error))?;
    let (p, l) = (share_text(part.value), share_text(left));
    if of == LeftOf::Water && !to {
        let message =
            format!("`{}` does not say whether it is what is left or what is boiled away", text.trim());
        return Err(Misread::of(text, Code::NoBasis, message)
            .why("of the water put in at first, only what is left can be measured: the plants keep some")
            .write(format!("to {p} of the water"))
            .write(format!("by {p}")));
    }
    if !to && !by && part.value != half {
        let message =
            format!("`{}` does not say whether it is what is left or what is boiled away", text.trim());
        return Err(Misread::of(text, Code::NoBasis, message)
            .why(format!("to {p} leaves {p}; by {p} leaves {l}"))
            .write(format!("to {p}"))
            .write(format!("by {p}")));
    }
    let share = if by { left } else { part.value }.to_f64();
    Ok(Reduction::ToShare { share, of })
}

fn to_volume(text: &str, from: usize, to: bool) -> Result<Reduction, Misread> {
    let inner = rest(text, from);
    if number(inner, 0)?.is_none() {
        let message = format!("how far to boil down was wanted; `{}` does not say", text.trim());
        return Err(Misread::of(text, Code::WrongShape, message)
            .write("1/2")
            .write("to 1/3")
            .write("to 1/2 of the water")
            .write("to 16 fl oz"));
    }
    if !to && amount(inner).is_ok_and(|amount| amount.dimension() == Dimension::VOLUME) {
        let message = format!("`{}` does not say that it is what is left", text.trim());
        return Err(Misread::of(text, Code::NoBasis, message).write(format!("to {}", inner.trim())));
    }
    super::read::volume(inner).map(Reduction::ToVolume).map_err(|misread| {
        // What is to be copied must be the whole of it.
        let mut misread = misread.shifted(from);
        misread.write.iter_mut().for_each(|write| write.insert_str(0, "to "));
        misread
    })
}

/// Parts between nothing and a thousand.
fn within_reason(text: &str, part: Number) -> Result<(), Misread> {
    if part.value > Ratio::ZERO && part.value <= Ratio::whole(1000) {
        return Ok(());
    }
    let message = format!("`{}` holds a part that is nothing or beyond any kitchen", text.trim());
    Err(Misread::of(text, Code::BadNumber, message).why("each part is more than 0 and at most 1000"))
}

#[cfg(test)]
#[path = "read_ratio_tests.rs"]
mod tests;
