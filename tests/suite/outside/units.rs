//! Units: the published definitions, and every factor against the crate `uom`.

use super::*;
use uom::si::f64::{Energy, Length, Mass, ThermodynamicTemperature, Time, Volume};
use uom::si::{energy, length, mass, thermodynamic_temperature as temperature, time, volume};

fn one(text: &str) -> f64 {
    amount(text).unwrap_or_else(|misread| panic!("{text}: {misread:?}")).low
}

#[test]
fn units_are_what_the_law_says() {
    // NIST Handbook 44, Appendix C, and NIST SP 811: the gallon is 231 cubic inches, the inch 2.54 cm, the
    // pound 453.59237 g, all exact.
    for (text, ml) in [
        ("1 gallon", 3785.411784),
        ("1 quart", 946.352946),
        ("1 pint", 473.176473),
        ("1 cup", 236.5882365),
        ("1 fl oz", 29.5735295625),
        ("1 tbsp", 14.78676478125),
        ("1 tsp", 4.92892159375),
    ] {
        near(text, one(text), ml, 1e-9);
    }
    near("1 lb", one("1 lb"), 453.59237, 1e-9);
    near("1 oz weight", one("1 oz weight"), 28.349523125, 1e-9);
    near("a fluid ounce of this suite", one("1 fl oz"), FL_OZ, 1e-12);
    // A chemistry answer page prints 235 °F, the start of soft ball, as 112.78 °C.
    near("235 °F", one("235 °F"), 112.78, 0.005);
}

#[test]
fn label_measures_are_whole_numbers() {
    // 21 CFR 101.9(b)(5)(viii). The label's cup is 1.442 % larger: arithmetic on the two.
    assert_eq!(
        [LABEL_TSP_ML, LABEL_TBSP_ML, LABEL_FL_OZ_ML, LABEL_CUP_ML, LABEL_OZ_G],
        [5.0, 15.0, 30.0, 240.0, 28.0]
    );
    near("label cup", (LABEL_CUP_ML / one("1 cup") - 1.0) * 100.0, 1.442, 0.001);
    // USP <1101> and UNC, calibrated droppers: 20 drops of water a millilitre, within a tenth.
    near("drops", WATER_DROPS_PER_ML, 20.0, 2.0);
}

/// One of a unit in the base unit here (mL, g, min, °C, kcal, m) by `uom`, and how many digits `uom` prints of it:
/// none where it has the exact factor. Units that `uom` lacks, or has no business with, give none.
fn by_uom(measure: Measure) -> Option<(f64, Option<i32>)> {
    let ml = |volume: Volume| volume.get::<volume::milliliter>();
    let g = |mass: Mass| mass.get::<mass::gram>();
    let min = |time: Time| time.get::<time::minute>();
    let kcal = |energy: Energy| energy.get::<energy::kilocalorie>();
    let celsius = |at: ThermodynamicTemperature| at.get::<temperature::degree_celsius>();
    Some(match measure {
        Measure::Tsp => (ml(Volume::new::<volume::teaspoon>(1.0)), Some(7)),
        Measure::Tbsp => (ml(Volume::new::<volume::tablespoon>(1.0)), Some(7)),
        Measure::FlOz => (ml(Volume::new::<volume::fluid_ounce>(1.0)), Some(7)),
        Measure::Cup => (ml(Volume::new::<volume::cup>(1.0)), Some(7)),
        Measure::Pint => (ml(Volume::new::<volume::pint_liquid>(1.0)), Some(7)),
        Measure::Quart => (ml(Volume::new::<volume::quart_liquid>(1.0)), Some(7)),
        Measure::Gallon => (ml(Volume::new::<volume::gallon>(1.0)), Some(7)),
        Measure::ImperialFlOz => (ml(Volume::new::<volume::fluid_ounce_imperial>(1.0)), Some(7)),
        Measure::ImperialGallon => (ml(Volume::new::<volume::gallon_imperial>(1.0)), None),
        Measure::Ml => (ml(Volume::new::<volume::milliliter>(1.0)), None),
        Measure::Cl => (ml(Volume::new::<volume::centiliter>(1.0)), None),
        Measure::Dl => (ml(Volume::new::<volume::deciliter>(1.0)), None),
        Measure::L => (ml(Volume::new::<volume::liter>(1.0)), None),
        Measure::Mg => (g(Mass::new::<mass::milligram>(1.0)), None),
        Measure::G => (g(Mass::new::<mass::gram>(1.0)), None),
        Measure::Kg => (g(Mass::new::<mass::kilogram>(1.0)), None),
        Measure::Oz | Measure::OzWeight => (g(Mass::new::<mass::ounce>(1.0)), Some(7)),
        Measure::Lb => (g(Mass::new::<mass::pound>(1.0)), Some(7)),
        Measure::Grain => (g(Mass::new::<mass::grain>(1.0)), None),
        Measure::Metre => (Length::new::<length::meter>(1.0).get::<length::meter>(), None),
        Measure::Foot => (Length::new::<length::foot>(1.0).get::<length::meter>(), None),
        Measure::Millimetre => (Length::new::<length::millimeter>(1.0).get::<length::meter>(), None),
        Measure::Centimetre => (Length::new::<length::centimeter>(1.0).get::<length::meter>(), None),
        Measure::Inch => (Length::new::<length::inch>(1.0).get::<length::meter>(), None),
        Measure::Watt => (kcal(Energy::new::<energy::joule>(60.0)), None),
        Measure::Second => (min(Time::new::<time::second>(1.0)), None),
        Measure::Minute => (min(Time::new::<time::minute>(1.0)), None),
        Measure::Hour => (min(Time::new::<time::hour>(1.0)), None),
        Measure::Day => (min(Time::new::<time::day>(1.0)), None),
        Measure::Celsius => {
            (celsius(ThermodynamicTemperature::new::<temperature::degree_celsius>(1.0)), None)
        }
        Measure::Fahrenheit => {
            (celsius(ThermodynamicTemperature::new::<temperature::degree_fahrenheit>(1.0)), None)
        }
        Measure::Kcal => (kcal(Energy::new::<energy::kilocalorie>(1.0)), None),
        Measure::Kj => (kcal(Energy::new::<energy::kilojoule>(1.0)), None),
        Measure::ImperialPint
        | Measure::ImperialQuart
        | Measure::Week
        | Measure::Drop
        | Measure::PerCent
        | Measure::SquareCentimetre
        | Measure::Piece
        | Measure::Stick
        | Measure::Slice
        | Measure::Pod
        | Measure::Clove
        | Measure::Head
        | Measure::Part => {
            return None;
        }
    })
}

#[test]
fn every_factor_is_that_of_uom() {
    let (mut rounded, mut lacking) = (Vec::new(), Vec::new());
    for measure in Measure::all() {
        let ours = one(&format!("1 {}", measure.text()));
        let Some((theirs, digits)) = by_uom(measure) else {
            lacking.push(measure.text());
            continue;
        };
        let size = 10f64.powi(theirs.abs().log10().floor() as i32);
        // Half of the last digit printed, or the last bits of a product; °C is taken from 273.15 K.
        let within = digits.map_or(size * 1e-12, |digits| size * 0.5001 * 10f64.powi(1 - digits));
        near(measure.text(), ours, theirs, within);
        if (ours - theirs).abs() > size * 1e-12 {
            rounded.push(measure.text());
        }
    }
    // Where `uom` prints seven digits of a longer factor; there the definition above decides.
    assert_eq!(
        rounded,
        ["tsp", "tbsp", "fl oz", "cup", "pint", "quart", "gallon", "imp fl oz", "oz", "oz weight", "lb"]
    );
    assert_eq!(
        lacking,
        [
            "imp pint",
            "imp quart",
            "week",
            "drop",
            "%",
            "piece",
            "stick",
            "slice",
            "pod",
            "clove",
            "head",
            "part",
            "cm²"
        ]
    );
}
