//! What a teaspoon and a tablespoon of a dried herb or spice weigh: United States Department of
//! Agriculture, release 27, file WEIGHT. Real spoons differ by a quarter either way.

use crate::bibliography::{Source, Work};

/// One herb by the spoon, in grams.
#[derive(Debug)]
pub struct Spoon {
    /// As the table names it.
    pub words: &'static str,
    /// A teaspoon.
    pub teaspoon: f64,
    /// A tablespoon, where it is printed.
    pub tablespoon: Option<f64>,
}

/// Where all of them are printed.
pub const SPOONS_FROM: Source =
    Source::published(Work::NutrientDatabase, "file WEIGHT: a teaspoon, a tablespoon");

/// By name.
pub static SPOONS: &[Spoon] = &[
    Spoon { words: "anise seed", teaspoon: 2.1, tablespoon: Some(6.7) },
    Spoon { words: "basil leaf", teaspoon: 0.7, tablespoon: Some(2.1) },
    Spoon { words: "cardamom", teaspoon: 2.0, tablespoon: Some(5.8) },
    Spoon { words: "cinnamon", teaspoon: 2.6, tablespoon: Some(7.8) },
    Spoon { words: "cloves", teaspoon: 2.1, tablespoon: Some(6.5) },
    Spoon { words: "fennel seed", teaspoon: 2.0, tablespoon: Some(5.8) },
    Spoon { words: "ginger", teaspoon: 1.8, tablespoon: Some(5.2) },
    Spoon { words: "marjoram", teaspoon: 0.6, tablespoon: Some(1.7) },
    Spoon { words: "nutmeg", teaspoon: 2.2, tablespoon: Some(7.0) },
    Spoon { words: "oregano leaf", teaspoon: 1.0, tablespoon: None },
    Spoon { words: "rosemary", teaspoon: 1.2, tablespoon: Some(3.3) },
    Spoon { words: "sage", teaspoon: 0.7, tablespoon: Some(2.0) },
    Spoon { words: "spearmint", teaspoon: 0.5, tablespoon: Some(1.6) },
    Spoon { words: "thyme leaf", teaspoon: 1.0, tablespoon: Some(2.7) },
];

/// The herb of that name.
pub fn spoon(words: &str) -> Option<&'static Spoon> {
    SPOONS.iter().find(|spoon| spoon.words == words)
}

#[cfg(test)]
mod tests {
    use super::*;

    // Three teaspoons to the tablespoon; the table's own rounding parts them by up to a tenth or so.
    #[test]
    fn tablespoons_hold_three_teaspoons() {
        for spoon in SPOONS {
            if let Some(tablespoon) = spoon.tablespoon {
                let by_three = spoon.teaspoon * 3.0;
                assert!((by_three - tablespoon).abs() <= 0.12 * tablespoon, "{}", spoon.words);
            }
        }
    }
}
