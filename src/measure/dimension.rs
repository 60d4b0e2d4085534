//! What a quantity is a quantity *of*: a mass, a volume, a mass per volume.

use std::fmt;

/// The bases, in the order of a [`Dimension`]'s exponents.
const NAMES: [&str; 10] = [
    "mass",
    "volume",
    "time",
    "temperature",
    "energy",
    "sum of money",
    "count",
    "length",
    "pressure",
    "amount of substance",
];

/// A product of bases, kept as one exponent a base.
///
/// Volume is a base of its own and not length cubed: a kitchen measures it directly, and a working that
/// mixed the two would be a mistake worth catching.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug, Default)]
pub struct Dimension([i8; 10]);

impl Dimension {
    /// A plain number, a share, a ratio of two like things.
    pub const NONE: Dimension = Dimension([0; 10]);
    /// Weight on the scale.
    pub const MASS: Dimension = Dimension::base(0);
    /// What a jug or a spoon measures.
    pub const VOLUME: Dimension = Dimension::base(1);
    /// Time by the clock.
    pub const TIME: Dimension = Dimension::base(2);
    /// Temperature by the thermometer.
    pub const TEMPERATURE: Dimension = Dimension::base(3);
    /// Food energy.
    pub const ENERGY: Dimension = Dimension::base(4);
    /// Money, in the formulary's own currency.
    pub const MONEY: Dimension = Dimension::base(5);
    /// Things counted: servings, drops, jars.
    pub const COUNT: Dimension = Dimension::base(6);
    /// Length, height.
    pub const LENGTH: Dimension = Dimension::base(7);
    /// Pressure of the air or of a vapour.
    pub const PRESSURE: Dimension = Dimension::base(8);
    /// Amount of substance, in moles.
    pub const AMOUNT: Dimension = Dimension::base(9);

    const fn base(index: usize) -> Dimension {
        let mut exponents = [0; 10];
        exponents[index] = 1;
        Dimension(exponents)
    }

    /// The dimension of a product.
    pub const fn times(self, other: Dimension) -> Dimension {
        self.joined(other, 1)
    }

    /// The dimension of a quotient.
    pub const fn per(self, other: Dimension) -> Dimension {
        self.joined(other, -1)
    }

    const fn joined(self, other: Dimension, sign: i8) -> Dimension {
        let mut exponents = self.0;
        let mut index = 0;
        while index < exponents.len() {
            exponents[index] = exponents[index].saturating_add(other.0[index].saturating_mul(sign));
            index += 1;
        }
        Dimension(exponents)
    }

    /// The words with an article in front, for a sentence: "a mass", "an energy", "a plain number".
    pub fn with_article(self) -> String {
        // Cooks weigh.
        let words = if self == Dimension::MASS { "weight".to_string() } else { self.to_string() };
        if words.starts_with("a ") {
            words
        } else if words.starts_with(['a', 'e']) {
            format!("an {words}")
        } else {
            format!("a {words}")
        }
    }

    /// The bases whose exponent has this sign, each with its power in words.
    fn words(self, sign: i8) -> String {
        let mut words = Vec::new();
        for (name, exponent) in NAMES.iter().zip(self.0) {
            match exponent.saturating_mul(sign) {
                i8::MIN..=0 => {}
                1 => words.push((*name).to_string()),
                2 => words.push(format!("{name} squared")),
                3 => words.push(format!("{name} cubed")),
                power => words.push(format!("{name} to the power {power}")),
            }
        }
        words.join(" times ")
    }
}

impl fmt::Display for Dimension {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (above, below) = (self.words(1), self.words(-1));
        match (above.is_empty(), below.is_empty()) {
            (true, true) => f.write_str("a plain number"),
            (false, true) => f.write_str(&above),
            (true, false) => write!(f, "number per {below}"),
            (false, false) => write!(f, "{above} per {below}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dimensions_are_said_in_words() {
        assert_eq!(Dimension::NONE.to_string(), "a plain number");
        assert_eq!(Dimension::MASS.per(Dimension::VOLUME).to_string(), "mass per volume");
        assert_eq!(Dimension::VOLUME.per(Dimension::TIME).to_string(), "volume per time");
        assert_eq!(Dimension::NONE.per(Dimension::TIME).to_string(), "number per time");
        assert_eq!(Dimension::MASS.times(Dimension::MASS).to_string(), "mass squared");
        assert_eq!(Dimension::NONE.with_article(), "a plain number");
        assert_eq!(Dimension::MASS.with_article(), "a weight");
        assert_eq!(Dimension::ENERGY.with_article(), "an energy");
        assert_eq!(Dimension::AMOUNT.with_article(), "an amount of substance");
    }

    #[test]
    fn a_product_is_undone_by_its_quotient() {
        let density = Dimension::MASS.per(Dimension::VOLUME);
        assert_eq!(density.times(Dimension::VOLUME), Dimension::MASS);
        assert_eq!(density.per(density), Dimension::NONE);
    }
}
