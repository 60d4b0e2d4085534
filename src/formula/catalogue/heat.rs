//! Heat: boiling by altitude, what boiling costs, how a pot cools.

use super::formulas;
use crate::bibliography::{Source, Work};
use crate::formula::expr::{figure, ln, look, number, pow};
use crate::materia::{
    AIR_EXPONENT, AIR_LAPSE, ANTOINE_A, ANTOINE_B, ANTOINE_C, LATENT_HEAT, MERCURY, SEA_PRESSURE, STAGE_DROP,
    WATER_HEAT,
};

/// The natural logarithm of ten, which turns `ln` into the decimal logarithm.
const LN_10: f64 = std::f64::consts::LN_10;
const HEAT: Source = Source::reckoned("heat is weight times what a gram takes");

formulas! {
    /// How thin the air is at an altitude.
    ThinAir "thin-air" { altitude: one "h" M }
        gives "how thin the air is" "d" ONE = number(1.0) - figure(&AIR_LAPSE) * altitude;
        Source::published(Work::StandardAtmosphere, "lowest layer"); "0 to 5,000 m";
    /// Pressure of the air by altitude.
    AirPressure "air-pressure" { thin: one "d" ONE }
        gives "pressure of the air" "P" PA = figure(&SEA_PRESSURE) * pow(thin, figure(&AIR_EXPONENT));
        Source::published(Work::StandardAtmosphere, "lowest layer"); "0 to 5,000 m, in average weather";
    /// Boiling temperature of water by pressure.
    Boiling "boiling" { pressure: one "P" PA }
        gives "water boils at" "T" CELSIUS = figure(&ANTOINE_B) / (figure(&ANTOINE_A) - ln(pressure / figure(&MERCURY)) / number(LN_10)) - figure(&ANTOINE_C);
        Source::from_memory(Work::Antoine, "water, 1 to 100 °C"); "55 to 130 kPa", within 0.1;
    /// The pressure at which plain water would boil where a syrup boils.
    SyrupPressure "syrup-pressure" { pressure: one "P" PA, activity: one "A" ONE }
        gives "pressure over the water activity" "p" PA = pressure / activity;
        Source::reckoned("a syrup's vapour is that of water times its water activity"); "syrups to 70 % by weight; beyond, a table of stages";
    /// A stage of sugar at an altitude.
    StageHere "stage-here" { stage: one "S" CELSIUS, altitude: one "h" M }
        gives "stage at this altitude" "s" CELSIUS = stage - altitude * figure(&STAGE_DROP);
        Source::published(Work::FoodAndCooking, "1 °C lower for each 1,000 ft"); "a guide; test in cold water", within 2.0;
    /// By how much it is warmed.
    Rise "rise" { from: one "a" CELSIUS, to: one "b" CELSIUS }
        gives "rise in temperature" "r" CELSIUS = to - from;
        Source::reckoned("plain subtraction"); "always";
    /// Heat to warm water.
    HeatToWarm "heat-to-warm" { weight: one "m" G, rise: one "r" CELSIUS }
        gives "heat to warm it" "Q" KCAL = weight * figure(&WATER_HEAT) * rise;
        HEAT; "watery liquids; the pan's own warming is left out";
    /// Heat to turn water into steam.
    HeatToBoilOff "heat-to-boil-off" { weight: one "m" G, temperature: one "T" CELSIUS }
        gives "heat to boil it off" "Q" KCAL = weight * look(&LATENT_HEAT, temperature);
        HEAT; "80 to 100 °C";
    /// How long a stove needs for a heat.
    TimeOnStove "time-on-stove" { heat: one "Q" KCAL, power: one "w" KCAL_PER_MIN, reaches: one "n" ONE }
        gives "time on the stove" "t" MIN = heat / (power * reaches);
        Source::reckoned("heat over what reaches the water a minute"); "within a third either way";
    /// How long a pot takes to cool.
    CoolingTime "cooling-time" { pace: one "k" MIN, from: one "a" CELSIUS, to: one "b" CELSIUS, around: one "r" CELSIUS }
        gives "time to cool" "t" MIN = pace * ln((from - around) / (to - around));
        Source::reckoned("Newton's law of cooling"); "an estimate: lid, size and draught decide";
}
