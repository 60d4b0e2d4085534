//! The units an author may write, each with its spellings and its exact worth: a closed list.
//!
//! Customary US measures are meant unless Imperial is written out. The round measures of US nutrition
//! labels stand apart ([`LABEL_CUP_ML`] and its like) and never enter a recipe's sums.

use super::dimension::Dimension;
use super::ratio::{Ratio, RatioError};

/// A teaspoon on a nutrition label, 21 CFR 101.9(b)(5)(viii).
pub const LABEL_TSP_ML: f64 = 5.0;
/// A tablespoon on a nutrition label, 21 CFR 101.9(b)(5)(viii).
pub const LABEL_TBSP_ML: f64 = 15.0;
/// A fluid ounce on a nutrition label, 21 CFR 101.9(b)(5)(viii).
pub const LABEL_FL_OZ_ML: f64 = 30.0;
/// A cup on a nutrition label, 21 CFR 101.9(b)(5)(viii).
pub const LABEL_CUP_ML: f64 = 240.0;
/// An ounce of weight on a nutrition label, 21 CFR 101.9(b)(5)(viii).
pub const LABEL_OZ_G: f64 = 28.0;
/// Drops of water in a millilitre from an official dropper, within a tenth (USP <1101>). Other liquids
/// and other droppers differ, so a recipe's drops are counts, never volumes.
pub const WATER_DROPS_PER_ML: f64 = 20.0;

/// Whose measure a unit is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum System {
    /// US customary.
    Us,
    /// British Imperial.
    Imperial,
    /// Metric.
    Metric,
    /// Used alike in both: minutes, drops, per cent.
    Both,
}

/// A unit an author may write.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
#[allow(missing_docs, reason = "each name is its unit; the table below says the rest")]
pub enum Measure {
    Tsp,
    Tbsp,
    FlOz,
    Cup,
    Pint,
    Quart,
    Gallon,
    ImperialFlOz,
    ImperialPint,
    ImperialQuart,
    ImperialGallon,
    Ml,
    Cl,
    Dl,
    L,
    Mg,
    G,
    Kg,
    /// A bare `oz`: a weight where only a weight can be meant, refused where a volume could be.
    Oz,
    /// An ounce said to be a weight.
    OzWeight,
    Lb,
    Grain,
    Second,
    Minute,
    Hour,
    Day,
    Week,
    Celsius,
    Fahrenheit,
    Metre,
    Foot,
    Watt,
    Kcal,
    Kj,
    /// A drop is counted; how large it is depends on the dropper and the liquid.
    Drop,
    PerCent,
    /// A lozenge, a pastille, a drop of sugar.
    Piece,
    /// Of bark, rolled.
    Stick,
    /// Of a root.
    Slice,
    /// With its seeds in it.
    Pod,
    /// Of a bulb.
    Clove,
    /// Of a flower.
    Head,
    /// A share of a mixture, by weight, whose whole is said elsewhere.
    Part,
    Millimetre,
    Centimetre,
    Inch,
    /// Of skin.
    SquareCentimetre,
}

impl Measure {
    /// What some plants are counted by; a plant's own page says what one weighs.
    pub const PIECES: &'static [Measure] =
        &[Measure::Stick, Measure::Slice, Measure::Pod, Measure::Clove, Measure::Head, Measure::Piece];
}

struct Row {
    measure: Measure,
    text: &'static str,
    plural: &'static str,
    spellings: &'static [&'static str],
    dimension: Dimension,
    factor: Ratio,
    system: System,
}

const fn row(
    measure: Measure,
    text: &'static str,
    plural: &'static str,
    spellings: &'static [&'static str],
    dimension: Dimension,
    factor: Ratio,
    system: System,
) -> Row {
    Row { measure, text, plural, spellings, dimension, factor, system }
}

/// US fluid ounces by the gallon of 231 cubic inches, the inch of 2.54 cm: `share` of them to a gallon.
const fn of_gallon(share: i128) -> Ratio {
    Ratio::exact(231 * 254 * 254 * 254, 1_000_000 * share)
}

/// Parts of the Imperial gallon, 4.54609 L.
const fn of_imperial_gallon(share: i128) -> Ratio {
    Ratio::exact(454_609, 100 * share)
}

/// Parts of the avoirdupois pound, 453.59237 g.
const fn of_pound(share: i128) -> Ratio {
    Ratio::exact(45_359_237, 100_000 * share)
}

use Dimension as D;
use Measure as U;
use System as S;

/// Every unit, in the order of [`Measure`].
///
/// Gallon, inch, pound and Imperial gallon: NIST Handbook 44, Appendix C, and NIST SP 811; all are exact
/// definitions. The calorie is the thermochemical one of SP 811, 4.184 J. Spellings are lower case,
/// without points or hyphens, except where case tells two units apart: a capital C is a degree.
#[rustfmt::skip]
static ROWS: [Row; 47] = [
    row(U::Tsp, "tsp", "tsp", &["tsp", "tsps", "teaspoon", "teaspoons", "us tsp"], D::VOLUME, of_gallon(768), S::Us),
    row(U::Tbsp, "tbsp", "tbsp", &["tbsp", "tbsps", "tablespoon", "tablespoons", "tbs", "us tbsp"], D::VOLUME, of_gallon(256), S::Us),
    row(U::FlOz, "fl oz", "fl oz", &["fl oz", "floz", "fluid ounce", "fluid ounces", "fl ounce", "fl ounces", "us fl oz", "fluid oz"], D::VOLUME, of_gallon(128), S::Us),
    row(U::Cup, "cup", "cups", &["cup", "cups", "us cup", "us cups"], D::VOLUME, of_gallon(16), S::Us),
    row(U::Pint, "pint", "pints", &["pint", "pints", "pt", "pts", "us pint", "us pints"], D::VOLUME, of_gallon(8), S::Us),
    row(U::Quart, "quart", "quarts", &["quart", "quarts", "qt", "qts", "us quart", "us quarts"], D::VOLUME, of_gallon(4), S::Us),
    row(U::Gallon, "gallon", "gallons", &["gallon", "gallons", "gal", "gals", "us gallon", "us gallons"], D::VOLUME, of_gallon(1), S::Us),
    row(U::ImperialFlOz, "imp fl oz", "imp fl oz", &["imp fl oz", "imperial fl oz", "imperial fluid ounce", "imperial fluid ounces"], D::VOLUME, of_imperial_gallon(160), S::Imperial),
    row(U::ImperialPint, "imp pint", "imp pints", &["imp pint", "imp pints", "imperial pint", "imperial pints"], D::VOLUME, of_imperial_gallon(8), S::Imperial),
    row(U::ImperialQuart, "imp quart", "imp quarts", &["imp quart", "imp quarts", "imperial quart", "imperial quarts"], D::VOLUME, of_imperial_gallon(4), S::Imperial),
    row(U::ImperialGallon, "imp gallon", "imp gallons", &["imp gallon", "imp gallons", "imperial gallon", "imperial gallons"], D::VOLUME, of_imperial_gallon(1), S::Imperial),
    row(U::Ml, "mL", "mL", &["ml", "mls", "millilitre", "millilitres", "milliliter", "milliliters"], D::VOLUME, Ratio::ONE, S::Metric),
    row(U::Cl, "cL", "cL", &["cl", "centilitre", "centilitres", "centiliter", "centiliters"], D::VOLUME, Ratio::whole(10), S::Metric),
    row(U::Dl, "dL", "dL", &["dl", "decilitre", "decilitres", "deciliter", "deciliters"], D::VOLUME, Ratio::whole(100), S::Metric),
    row(U::L, "L", "L", &["l", "litre", "litres", "liter", "liters"], D::VOLUME, Ratio::whole(1000), S::Metric),
    row(U::Mg, "mg", "mg", &["mg", "milligram", "milligrams"], D::MASS, Ratio::exact(1, 1000), S::Metric),
    row(U::G, "g", "g", &["g", "gram", "grams", "gm", "gms"], D::MASS, Ratio::ONE, S::Metric),
    row(U::Kg, "kg", "kg", &["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"], D::MASS, Ratio::whole(1000), S::Metric),
    row(U::Oz, "oz", "oz", &["oz", "ozs", "ounce", "ounces"], D::MASS, of_pound(16), S::Us),
    row(U::OzWeight, "oz weight", "oz weight", &["oz weight", "oz by weight", "oz wt", "ounce by weight", "ounces by weight", "wt oz"], D::MASS, of_pound(16), S::Us),
    row(U::Lb, "lb", "lb", &["lb", "lbs", "pound", "pounds"], D::MASS, of_pound(1), S::Us),
    row(U::Grain, "grain", "grains", &["grain", "grains"], D::MASS, of_pound(7000), S::Us),
    row(U::Second, "s", "s", &["s", "sec", "secs", "second", "seconds"], D::TIME, Ratio::exact(1, 60), S::Both),
    row(U::Minute, "min", "min", &["min", "mins", "minute", "minutes"], D::TIME, Ratio::ONE, S::Both),
    row(U::Hour, "h", "h", &["h", "hr", "hrs", "hour", "hours"], D::TIME, Ratio::whole(60), S::Both),
    row(U::Day, "day", "days", &["day", "days"], D::TIME, Ratio::whole(1440), S::Both),
    row(U::Week, "week", "weeks", &["week", "weeks"], D::TIME, Ratio::whole(10_080), S::Both),
    row(U::Celsius, "°C", "°C", &["°c", "° c", "C", "celsius", "degrees c", "degrees celsius", "deg c"], D::TEMPERATURE, Ratio::ONE, S::Metric),
    row(U::Fahrenheit, "°F", "°F", &["°f", "° f", "F", "fahrenheit", "degrees f", "degrees fahrenheit", "deg f"], D::TEMPERATURE, Ratio::exact(5, 9), S::Us),
    row(U::Metre, "m", "m", &["m", "metre", "metres", "meter", "meters"], D::LENGTH, Ratio::ONE, S::Metric),
    row(U::Foot, "ft", "ft", &["ft", "foot", "feet"], D::LENGTH, Ratio::exact(381, 1250), S::Us),
    row(U::Watt, "W", "W", &["w", "watt", "watts"], D::ENERGY.per(D::TIME), Ratio::exact(60, 4184), S::Metric),
    row(U::Kcal, "kcal", "kcal", &["kcal", "kcals", "kilocalorie", "kilocalories"], D::ENERGY, Ratio::ONE, S::Both),
    row(U::Kj, "kJ", "kJ", &["kj", "kilojoule", "kilojoules"], D::ENERGY, Ratio::exact(1000, 4184), S::Metric),
    row(U::Drop, "drop", "drops", &["drop", "drops"], D::COUNT, Ratio::ONE, S::Both),
    row(U::PerCent, "%", "%", &["%", "per cent", "percent"], D::NONE, Ratio::exact(1, 100), S::Both),
    row(U::Piece, "piece", "pieces", &["piece", "pieces", "lozenge", "lozenges", "pastille", "pastilles"], D::COUNT, Ratio::ONE, S::Both),
    row(U::Stick, "stick", "sticks", &["stick", "sticks"], D::COUNT, Ratio::ONE, S::Both),
    row(U::Slice, "slice", "slices", &["slice", "slices"], D::COUNT, Ratio::ONE, S::Both),
    row(U::Pod, "pod", "pods", &["pod", "pods"], D::COUNT, Ratio::ONE, S::Both),
    row(U::Clove, "clove", "cloves", &["clove", "cloves"], D::COUNT, Ratio::ONE, S::Both),
    row(U::Head, "head", "heads", &["head", "heads"], D::COUNT, Ratio::ONE, S::Both),
    row(U::Part, "part", "parts", &["part", "parts"], D::COUNT, Ratio::ONE, S::Both),
    row(U::Millimetre, "mm", "mm", &["mm", "millimetre", "millimetres", "millimeter", "millimeters"], D::LENGTH, Ratio::exact(1, 1000), S::Metric),
    row(U::Centimetre, "cm", "cm", &["cm", "centimetre", "centimetres", "centimeter", "centimeters"], D::LENGTH, Ratio::exact(1, 100), S::Metric),
    row(U::Inch, "inch", "inches", &["inch", "inches"], D::LENGTH, Ratio::exact(127, 5000), S::Us),
    row(U::SquareCentimetre, "cm²", "cm²", &["cm²", "cm2", "square centimetre", "square centimetres", "square centimeter", "square centimeters"], D::LENGTH.times(D::LENGTH), Ratio::exact(1, 10_000), S::Metric),
];

impl Measure {
    fn row(self) -> &'static Row {
        // A test holds the table to the order of the names.
        &ROWS[self as usize]
    }

    /// Every unit, in the order of the table.
    pub fn all() -> impl Iterator<Item = Measure> {
        ROWS.iter().map(|row| row.measure)
    }

    /// The unit as Stillroom writes it after one or less: `cup`.
    pub fn text(self) -> &'static str {
        self.row().text
    }

    /// The unit as Stillroom writes it after more than one: `cups`.
    pub fn plural(self) -> &'static str {
        self.row().plural
    }

    /// What it measures.
    pub fn dimension(self) -> Dimension {
        self.row().dimension
    }

    /// Whose measure it is.
    pub fn system(self) -> System {
        self.row().system
    }

    /// Its spellings: lower case, but for a capital that is a degree.
    pub fn spellings(self) -> &'static [&'static str] {
        self.row().spellings
    }

    /// How much of the base unit (g, mL, min, °C, kcal) one of it is; of a temperature, one degree.
    pub fn factor(self) -> Ratio {
        self.row().factor
    }

    /// Whether a cook may have meant either a weight or a volume.
    pub fn is_ambiguous(self) -> bool {
        self == Measure::Oz
    }

    /// So many of it in the base unit. Temperatures do not start at nothing, so they are named here.
    pub fn to_base(self, value: Ratio) -> Result<Ratio, RatioError> {
        let value = if self == Measure::Fahrenheit { value.minus(Ratio::whole(32))? } else { value };
        value.times(self.factor())
    }

    /// How many of it a value in the base unit is, as it is read off: 100 °C are 212 °F.
    pub fn of_base(self, value: f64) -> f64 {
        let zero = if self == Measure::Fahrenheit { 32.0 } else { 0.0 };
        value / self.factor().to_f64() + zero
    }

    /// The unit this text spells.
    pub fn spelled(text: &str) -> Option<Measure> {
        let text: String = text
            .replace('℃', "°C")
            .replace('℉', "°F")
            .chars()
            .filter(|letter| !matches!(letter, '.' | '(' | ')'))
            .map(|letter| match letter {
                'º' | '˚' => '°',
                '-' => ' ',
                other => other,
            })
            .collect();
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        let lower = text.to_lowercase();
        ROWS.iter()
            .find(|row| row.spellings.iter().any(|known| *known == text || *known == lower))
            .map(|row| row.measure)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn one(measure: Measure) -> f64 {
        measure.factor().to_f64()
    }

    #[test]
    fn the_table_stands_in_the_order_of_the_names_and_no_spelling_twice() {
        let mut seen = std::collections::BTreeSet::new();
        for (index, row) in ROWS.iter().enumerate() {
            assert_eq!(row.measure as usize, index);
            assert_eq!(Measure::spelled(row.text), Some(row.measure), "{}", row.text);
            assert_eq!(Measure::spelled(row.plural), Some(row.measure), "{}", row.plural);
            for spelling in row.spellings {
                assert!(seen.insert(*spelling), "{spelling} stands twice");
            }
        }
        assert_eq!(Measure::spelled("fl. oz."), Some(Measure::FlOz));
        assert_eq!(Measure::spelled("fl-oz"), Some(Measure::FlOz));
        assert_eq!(Measure::spelled("oz (weight)"), Some(Measure::OzWeight));
        assert_eq!(Measure::spelled("c"), None);
        // By definition: water boils at 212 °F, and a quart is four cups.
        assert_eq!(Measure::Fahrenheit.of_base(100.0), 212.0);
        assert_eq!(Measure::Cup.of_base(946.352946), 4.0);
    }

    #[test]
    fn us_volumes_are_the_gallon_divided() {
        // NIST Handbook 44, Appendix C, and SP 811: gallon = 231 in³, in = 2.54 cm, exact.
        assert_eq!(one(Measure::Gallon), 3785.411784);
        assert_eq!(one(Measure::Quart), 946.352946);
        assert_eq!(one(Measure::Pint), 473.176473);
        assert_eq!(one(Measure::Cup), 236.5882365);
        assert_eq!(one(Measure::FlOz), 29.5735295625);
        // A published table prints 14.78676 and 4.928922; the full digits follow from the gallon.
        assert_eq!(one(Measure::Tbsp), 14.78676478125);
        assert_eq!(one(Measure::Tsp), 4.92892159375);
    }

    #[test]
    fn weights_are_the_pound_divided() {
        // NIST SP 811 and Handbook 44, Appendix C: exact since 1959.
        assert_eq!(one(Measure::Lb), 453.59237);
        assert_eq!(one(Measure::OzWeight), 28.349523125);
        assert_eq!(one(Measure::Oz), one(Measure::OzWeight));
        // 7,000 grains to the pound: from memory.
        assert_eq!(one(Measure::Grain), 0.06479891);
    }

    #[test]
    fn imperial_volumes_are_their_own_gallon_divided() {
        // 4.54609 L: from memory (UK Weights and Measures Act 1985).
        assert_eq!(one(Measure::ImperialGallon), 4546.09);
        assert_eq!(one(Measure::ImperialPint), 568.26125);
        assert_eq!(one(Measure::ImperialFlOz), 28.4130625);
    }

    #[test]
    fn label_measures_are_whole_and_stand_apart() {
        // 21 CFR 101.9(b)(5)(viii).
        assert_eq!((LABEL_TSP_ML, LABEL_TBSP_ML, LABEL_FL_OZ_ML), (5.0, 15.0, 30.0));
        assert_eq!((LABEL_CUP_ML, LABEL_OZ_G), (240.0, 28.0));
        // Derived from the two exact cups: the label's is 1.442 % larger.
        let larger = (LABEL_CUP_ML / one(Measure::Cup) - 1.0) * 100.0;
        assert!((larger - 1.442).abs() <= 0.001);
    }

    #[test]
    fn drops_are_counted_by_the_dropper() {
        // UNC Pharmaceutics Lab and USP <1101>: 20 drops of water a millilitre, within a tenth.
        assert!((WATER_DROPS_PER_ML - 20.0).abs() <= 2.0);
        // U. Houston pharmacy course: 35 drops fill 2 mL, so 17.5 drops a millilitre.
        assert_eq!(Ratio::exact(35, 2).to_f64(), 17.5);
        assert_eq!(Measure::Drop.dimension(), Dimension::COUNT);
    }

    #[test]
    fn fahrenheit_is_read_as_celsius() {
        // A chemistry answer page works 235 °F, the start of soft ball, to 112.78 °C.
        let celsius = Measure::Fahrenheit.to_base(Ratio::whole(235)).expect("small").to_f64();
        assert!((celsius - 112.78).abs() <= 0.005);
        assert_eq!(Measure::Fahrenheit.to_base(Ratio::whole(212)), Ok(Ratio::whole(100)));
    }
}
