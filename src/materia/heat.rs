//! Heat: air and boiling by altitude, what boiling costs, how a pot cools, the stages of sugar.

use super::Law;
use crate::bibliography::{Source, Work};
use crate::measure::unit::{CELSIUS, CELSIUS_PER_M, KCAL_PER_G, KCAL_PER_G_DEGREE, MIN, ONE, PA, PER_M};

const ATMOSPHERE: Source =
    Source::published(Work::StandardAtmosphere, "sea level, lapse rate and exponent of the lowest layer");
const ANTOINE: Source = Source::from_memory(Work::Antoine, "water, 1 to 100 °C, in °C and mm of mercury");

figures! {
    SEA_PRESSURE "sea-pressure" "pressure of the air at the sea" = 101_325.0 PA; ATMOSPHERE;
    AIR_LAPSE "air-lapse" "how the air thins with altitude" = 2.25577e-5 PER_M; ATMOSPHERE;
    AIR_EXPONENT "air-exponent" "exponent of the standard atmosphere" = 5.25588 ONE; ATMOSPHERE;
    MERCURY "mercury" "a millimetre of mercury" = 133.322 PA; Source::published(Work::Sp811, "Appendix B");
    ANTOINE_A "antoine-a" "first constant of Antoine for water" = 8.07131 ONE; ANTOINE;
    ANTOINE_B "antoine-b" "second constant of Antoine for water" = 1730.63 CELSIUS; ANTOINE;
    ANTOINE_C "antoine-c" "third constant of Antoine for water" = 233.426 CELSIUS; ANTOINE;
    BOILING_AT_SEA "boiling-at-sea" "boiling water, no altitude given" = 100.0 CELSIUS;
        Source::reckoned("the sea-level value; write the kitchen's altitude for its own");
    WATER_HEAT "water-heat" "heat that warms water by a degree" = 0.001 KCAL_PER_G_DEGREE;
        Source::reckoned("the definition of the calorie, 4.184 J");
    STAGE_DROP "stage-drop" "sugar stages with altitude" = 0.003_280_84 CELSIUS_PER_M;
        Source::published(Work::FoodAndCooking, "1 °C lower for each 1,000 ft");
    TAP "tap" "cold water" = 15.0 CELSIUS; Source::practice("as it comes from the tap");
}

assumptions! {
    COOLING_PACE "cooling-pace" "pace at which a pot cools" = 15.0 25.0 60.0 MIN;
        Source::practice("an estimate by Newton's law: a small pot in a cold sink, a pot on the table, a full pot under its lid");
        "Use a thermometer; a sink of cold water halves it.";
    GAS_REACHES "gas" "share of a gas flame that reaches the water" = 0.3 0.35 0.45 ONE;
        Source::practice("pans and flames differ; from memory about a third");
        "Time your own pot.";
    RADIANT_REACHES "radiant" "share of a glowing ring that reaches the water" = 0.6 0.7 0.8 ONE;
        Source::practice("pans and rings differ; from memory about seven tenths");
        "Time your own pot.";
    INDUCTION_REACHES "induction" "share of an induction ring that reaches the water" = 0.8 0.85 0.9 ONE;
        Source::practice("from memory about 85 %");
        "Time your own pot.";
}

relations! {
    LATENT_HEAT "latent-heat" "heat that turns water to steam": CELSIUS gives KCAL_PER_G within 80.0, 100.0;
        // 2,308.0, 2,282.5, 2,269.5 and 2,256.4 kJ/kg as printed, over 4.184.
        Law::Table(&[(80.0, 0.551_625), (90.0, 0.545_530), (95.0, 0.542_423), (100.0, 0.539_293)]);
        Source::from_memory(Work::SteamTables, "saturation, 80 to 100 °C");
}

/// A stage of boiled sugar.
#[derive(Debug)]
pub struct Stage {
    /// Its name in the trade.
    pub name: &'static str,
    /// Where it begins at sea level, °C.
    pub from: f64,
    /// Where it ends, °C.
    pub to: f64,
}

/// Stages of boiled sugar at sea level: On Food and Cooking. Tables differ by a degree or two.
pub static STAGES: &[Stage] = &[
    Stage { name: "thread", from: 102.0, to: 113.0 },
    Stage { name: "soft ball", from: 113.0, to: 116.0 },
    Stage { name: "firm ball", from: 118.0, to: 121.0 },
    Stage { name: "hard ball", from: 121.0, to: 130.0 },
    Stage { name: "soft crack", from: 132.0, to: 143.0 },
    Stage { name: "hard crack", from: 149.0, to: 154.0 },
];

/// The stages at which sugar sets hard, by name.
pub static CRACKS: [&str; 2] = ["soft crack", "hard crack"];

#[cfg(test)]
mod tests {
    use super::*;

    // CRC-style steam table, from memory: 2,295 kJ/kg at 85 °C within 0.1 %.
    #[test]
    fn steam_between_the_printed_points() {
        assert!((LATENT_HEAT.at(85.0) * 4184.0 - 2295.0).abs() < 2.0);
        assert!(LATENT_HEAT.at(70.0).is_nan());
    }

    #[test]
    fn stages_rise() {
        assert!(STAGES.iter().all(|stage| stage.from < stage.to));
        assert!(STAGES.windows(2).all(|pair| pair[0].to <= pair[1].from));
    }
}
