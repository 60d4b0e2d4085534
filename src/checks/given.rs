//! The numbers and words a check is worked with. A number with a unit is read as an author's is.

use crate::measure::amount;

/// Names and what stands behind them, as written.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Given(Vec<(String, String)>);

impl Given {
    /// From names as the file has them, with hyphens.
    pub fn new(entries: Vec<(String, String)>) -> Given {
        Given(entries.into_iter().map(|(name, text)| (name.replace('-', "_"), text)).collect())
    }

    /// The names.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.0.iter().map(|(name, _)| name.as_str())
    }

    /// What is written under a name; nothing where there is none.
    pub fn word(&self, name: &str) -> &str {
        self.0.iter().find(|(known, _)| known == name).map_or("", |(_, text)| text)
    }

    /// The number under a name, in the base unit; not a number where there is none.
    pub fn number(&self, name: &str) -> f64 {
        let text = self.word(name);
        match text.parse() {
            Ok(number) => number,
            Err(_) => amount(text).map_or(f64::NAN, |amount| amount.low),
        }
    }
}
