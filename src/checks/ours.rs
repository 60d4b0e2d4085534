//! What several subjects work alike: syrups, honey, spirits, the boil.

use crate::formula::Line;
use crate::formula::Sum;
use crate::formula::catalogue::composition::Rest;
use crate::formula::catalogue::composition::{
    MoleFraction, Moles, Norrish, SucroseShare, SugarInHoney, WaterActivity,
};
use crate::formula::catalogue::heat::{AirPressure, Boiling, SyrupPressure, ThinAir};
use crate::formula::catalogue::pan::Away;
use crate::formula::catalogue::pan::{AddVolumes, AddWeights, MeasureOut, Weigh};
use crate::formula::catalogue::spirit::{
    AlcoholByVolume, AlcoholWeight, PureAlcohol, ShareByWeight, ShareOfTwo, SpiritDensity,
};
use crate::formula::catalogue::sweeten::{HoneyDensity, TakesUp};
use crate::materia::{
    FRUCTOSE_K, Figure, GLUCOSE_K, HEXOSE_MOLAR, HONEY_FRUCTOSE, HONEY_GLUCOSE, HONEY_SUCROSE, HONEY_WATER,
    SUCROSE_DENSITY, SUCROSE_K, SUCROSE_MOLAR, SUCROSE_TAKES_UP, WATER_DENSITY, WATER_MOLAR,
};

/// Water activity of one solute: so many grams of it in so many of water.
pub fn activity(sum: &mut Sum, solute: Line, water: Line, molar: &Figure, constant: &Figure) -> Line {
    let (molar, constant) = (sum.figure(molar), sum.figure(constant));
    let solute = sum.work(Moles { weight: solute, molar });
    by_moles(sum, solute, water, constant)
}

fn by_moles(sum: &mut Sum, solute: Line, water: Line, constant: Line) -> Line {
    let molar = sum.figure(&WATER_MOLAR);
    let water = sum.work(Moles { weight: water, molar });
    let fraction = sum.work(MoleFraction { solute, water });
    sum.work(Norrish { fraction, constant })
}

/// Water activity of sugar in water, by grams of each.
pub fn sugar_activity(sugar: f64, water: f64) -> f64 {
    let mut sum = Sum::default();
    let (sugar, water) = (sum.line(sugar), sum.line(water));
    let line = activity(&mut sum, sugar, water, &SUCROSE_MOLAR, &SUCROSE_K);
    sum.at(line)
}

/// The same by moles of sugar in a kilogram of water.
pub fn molal_activity(molality: f64) -> f64 {
    let mut sum = Sum::default();
    let (sugar, water, constant) = (sum.line(molality), sum.line(1000.0), sum.figure(&SUCROSE_K));
    let line = by_moles(&mut sum, sugar, water, constant);
    sum.at(line)
}

/// Water activity of honey from its sugars, each taken alone in all the water.
pub fn honey_activity(moisture: f64) -> f64 {
    let mut sum = Sum::default();
    let (weight, water) = (sum.line(100.0), sum.line(100.0 * moisture));
    let (moisture, printed_water) = (sum.line(moisture), sum.figure(&HONEY_WATER));
    let sugars = [
        (&HONEY_GLUCOSE, &HEXOSE_MOLAR, &GLUCOSE_K),
        (&HONEY_FRUCTOSE, &HEXOSE_MOLAR, &FRUCTOSE_K),
        (&HONEY_SUCROSE, &SUCROSE_MOLAR, &SUCROSE_K),
    ];
    let each = sugars
        .into_iter()
        .map(|(share, molar, constant)| {
            let printed = sum.figure(share);
            let sugar = sum.work(SugarInHoney { weight, printed, moisture, printed_water });
            activity(&mut sum, sugar, water, molar, constant)
        })
        .collect();
    sum.gives(WaterActivity { each })
}

/// Volume of sugar and water by the density of their solution.
pub fn syrup_volume(sugar: f64, water: f64) -> f64 {
    let mut sum = Sum::default();
    let (sugar, water) = (sum.line(sugar), sum.line(water));
    let share = sum.work(SucroseShare { sucrose: sugar, water });
    let weight = sum.work(AddWeights { each: vec![sugar, water] });
    let density = SUCROSE_DENSITY.at(sum.at(share));
    let density = sum.line(density);
    sum.gives(MeasureOut { weight, density })
}

/// What a gram of sugar adds to the water's volume, by the density of the solution.
pub fn specific_volume(share: f64) -> f64 {
    let mut sum = Sum::default();
    let (sugar, water) = (100.0 * share, sum.line(100.0 * (1.0 - share)));
    let whole = syrup_volume(sugar, 100.0 * (1.0 - share));
    let (before, density) = (sum.line(whole), sum.figure(&WATER_DENSITY));
    let after = sum.work(MeasureOut { weight: water, density });
    sum.gives(Away { before, after }) / sugar
}

/// Sugar and weight of so much sugar made up to a volume.
fn made_up(sum: &mut Sum, sugar: f64, finished: f64) -> (Line, Line, Line) {
    let (sugar, finished, each_gram) = (sum.line(sugar), sum.line(finished), sum.figure(&SUCROSE_TAKES_UP));
    let taken = sum.work(TakesUp { weight: sugar, each_gram });
    let water = sum.work(Away { before: finished, after: taken });
    let density = sum.figure(&WATER_DENSITY);
    let water = sum.work(Weigh { volume: water, density });
    (sugar, water, finished)
}

/// Specific gravity of sugar made up to a volume.
pub fn made_up_gravity(sugar: f64, finished: f64) -> f64 {
    let mut sum = Sum::default();
    let (sugar, water, finished) = made_up(&mut sum, sugar, finished);
    let weight = sum.work(AddWeights { each: vec![sugar, water] });
    let density = sum.figure(&WATER_DENSITY);
    // As much water weighs:
    let water = sum.work(Weigh { volume: finished, density });
    sum.at(weight) / sum.at(water)
}

/// Per cent by weight of sugar made up to a volume.
pub fn made_up_share(sugar: f64, finished: f64) -> f64 {
    let mut sum = Sum::default();
    let (sucrose, water, _) = made_up(&mut sum, sugar, finished);
    sum.gives(SucroseShare { sucrose, water })
}

/// Weight of a volume of honey of that moisture.
pub fn honey_weighs(volume: f64, moisture: f64) -> f64 {
    let mut sum = Sum::default();
    let (volume, moisture, water) = (sum.line(volume), sum.line(moisture), sum.figure(&WATER_DENSITY));
    let density = sum.work(HoneyDensity { moisture, water });
    sum.gives(Weigh { volume, density })
}

/// A spirit with water: share by weight, density, volume, strength by volume.
pub struct Mixed {
    /// Alcohol by weight.
    pub share: f64,
    /// Grams in a millilitre.
    pub density: f64,
    /// Millilitres.
    pub volume: f64,
    /// Alcohol by volume.
    pub strength: f64,
}

/// A spirit poured together with water, by weight.
pub fn mixed(spirit: f64, strength: f64, water: f64) -> Mixed {
    let mut sum = Sum::default();
    let (volume, strength, water) = (sum.line(spirit), sum.line(strength), sum.line(water));
    let alcohol = sum.work(PureAlcohol { spirit: volume, strength });
    let alcohol_weight = sum.work(AlcoholWeight { alcohol });
    let share = sum.work(ShareByWeight { strength });
    let density = sum.work(SpiritDensity { share });
    let spirit = sum.work(Weigh { volume, density });
    let water_density = sum.figure(&WATER_DENSITY);
    let water = sum.work(Weigh { volume: water, density: water_density });
    let weight = sum.work(AddWeights { each: vec![spirit, water] });
    let other = sum.work(Rest { whole: weight, part: alcohol_weight });
    let share = sum.work(ShareOfTwo { part: alcohol_weight, other });
    let density = sum.work(SpiritDensity { share });
    let finished = sum.work(MeasureOut { weight, density });
    let strength = sum.gives(AlcoholByVolume { alcohol, finished });
    Mixed { share: sum.at(share), density: sum.at(density), volume: sum.at(finished), strength }
}

/// Share of two volumes that is missing once they are mixed, from the three densities.
pub fn contraction(each: f64, spirit: f64, water: f64, mixture: f64) -> f64 {
    let mut sum = Sum::default();
    let volume = sum.line(each);
    let (spirit, water, mixture) = (sum.line(spirit), sum.line(water), sum.line(mixture));
    let weights = [spirit, water].map(|density| sum.work(Weigh { volume, density }));
    let weight = sum.work(AddWeights { each: weights.to_vec() });
    let after = sum.work(MeasureOut { weight, density: mixture });
    let before = sum.work(AddVolumes { each: vec![volume, volume] });
    let part = sum.work(Away { before, after });
    sum.gives(crate::formula::catalogue::spirit::ShareOfFinished { part, finished: before })
}

/// Pressure of the air.
pub fn pressure(altitude: f64) -> f64 {
    let mut sum = Sum::default();
    let altitude = sum.line(altitude);
    let thin = sum.work(ThinAir { altitude });
    sum.gives(AirPressure { thin })
}

/// Where water boils.
pub fn boils(altitude: f64) -> f64 {
    let mut sum = Sum::default();
    let pressure = sum.line(pressure(altitude));
    sum.gives(Boiling { pressure })
}

/// Where a syrup of that share of sugar boils.
pub fn syrup_boils(share: f64, altitude: f64) -> f64 {
    let mut sum = Sum::default();
    let (pressure, activity) = (sum.line(pressure(altitude)), sum.line(sugar_activity(share, 1.0 - share)));
    let pressure = sum.work(SyrupPressure { pressure, activity });
    sum.gives(Boiling { pressure })
}
