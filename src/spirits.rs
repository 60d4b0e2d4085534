//! Spirit and water: a wanted strength from what is at hand, exact by weight, the kitchen's rule beside it.
//!
//! Small workings of their own, laid down like a recipe's and shown by the same ledger.

use crate::formula::Line;
use crate::formula::catalogue::composition::Rest;
use crate::formula::catalogue::pan::{AddVolumes, AddWeights, Away, MeasureOut, PlantWater, Weigh};
use crate::formula::catalogue::rules::{PartsOfStrong, PartsOfWeak, StrongOf};
use crate::formula::catalogue::spirit::{
    AlcoholByVolume, AlcoholWeight, ByVolume, PureAlcohol, ShareByWeight, ShareOfTwo, SpiritDensity,
    SpiritFor, WaterByRule, WaterToAdd,
};
use crate::materia::WATER_DENSITY;
use crate::measure::unit::{G, ML, PER_CENT, PER_CENT_VV};
use crate::span::Span;
use crate::variation::Worked;
use crate::working::Working;

/// A dilution worked: the lines that its table and its page show.
pub struct Dilution {
    /// The working.
    pub worked: Worked,
    /// Spirit to take, mL.
    pub spirit: Line,
    /// Water to add, mL, exact by weight.
    pub water: Line,
    /// Water to add by the kitchen's rule, mL.
    pub by_rule: Line,
}

fn here(work: &mut Working, name: &str, unit: &'static crate::measure::Unit, value: f64) -> Line {
    work.given(name, unit, value, false, Span::default())
}

/// Alcohol by weight in a spirit of that strength.
fn by_weight(work: &mut Working, name: &str, strength: Line) -> Line {
    work.work(format!("{name}, by weight"), ShareByWeight { strength })
}

fn weigh_spirit(work: &mut Working, name: &str, volume: Line, share: Line) -> Line {
    let density = work.work(format!("density of {name}"), SpiritDensity { share });
    work.work(format!("weight of {name}"), Weigh { volume, density })
}

/// `make` mL of the wanted strength from a stronger spirit and water. Strengths are shares by volume.
pub fn dilute(strength: f64, wanted: f64, make: f64) -> Dilution {
    let mut work = Working::new();
    let strength = here(&mut work, "strength at hand", &PER_CENT_VV, strength);
    let wanted = here(&mut work, "strength wanted", &PER_CENT_VV, wanted);
    let finished = here(&mut work, "to make", &ML, make);
    let spirit = work.work("spirit to take", SpiritFor { finished, wanted, strength });
    let share = by_weight(&mut work, "strength at hand", strength);
    let wanted_share = by_weight(&mut work, "strength wanted", wanted);
    let weight = weigh_spirit(&mut work, "the spirit", spirit, share);
    let water =
        work.work("water to add, by weight", WaterToAdd { spirit: weight, share, wanted: wanted_share });
    let density = work.figure(&WATER_DENSITY);
    let water = work.work("water to add", MeasureOut { weight: water, density });
    let by_rule = work.work("water by the kitchen's rule", WaterByRule { spirit, strength, wanted });
    work.work("what the rule falls short by", Away { before: water, after: by_rule });
    work.close();
    Dilution { worked: Worked::of("Spirit and water", work), spirit, water, by_rule }
}

/// Two spirits crossed.
pub struct Crossing {
    /// The working.
    pub worked: Worked,
    /// Parts of the strong and of the weak.
    pub parts: (Line, Line),
    /// Volumes to take, mL.
    pub take: (Line, Line),
}

/// `make` mL of the wanted strength from a strong and a weak spirit, by the crossed square.
pub fn cross(strong: f64, weak: f64, wanted: f64, make: f64) -> Crossing {
    let mut work = Working::new();
    let strong = here(&mut work, "the strong", &PER_CENT_VV, strong);
    let weak = here(&mut work, "the weak", &PER_CENT_VV, weak);
    let wanted = here(&mut work, "the wanted", &PER_CENT_VV, wanted);
    let make = here(&mut work, "to make", &ML, make);
    let of_strong = work.work("parts of the strong", PartsOfStrong { wanted, weak });
    let of_weak = work.work("parts of the weak", PartsOfWeak { strong, wanted });
    let take = |work: &mut Working, name: &str, strong_parts, weak_parts| {
        work.work(name, StrongOf { whole: make, strong_parts, weak_parts })
    };
    let a = take(&mut work, "strong to take", of_strong, of_weak);
    let b = take(&mut work, "weak to take", of_weak, of_strong);
    work.close();
    Crossing { worked: Worked::of("Two spirits crossed", work), parts: (of_strong, of_weak), take: (a, b) }
}

/// A fresh plant's own water in a spirit, exact by weight, and by the kitchen's rule.
pub fn with_fresh_plant(plant: f64, moisture: f64, spirit: f64, strength: f64) -> Worked {
    let mut work = Working::new();
    let plant = here(&mut work, "fresh plant", &G, plant);
    let moisture = here(&mut work, "moisture of the plant", &PER_CENT, moisture);
    let spirit = here(&mut work, "spirit", &ML, spirit);
    let strength = here(&mut work, "strength of the spirit", &PER_CENT_VV, strength);
    let alcohol = work.work("pure alcohol", PureAlcohol { spirit, strength });
    let ethanol = work.work("pure alcohol, weighed", AlcoholWeight { alcohol });
    let share = by_weight(&mut work, "the spirit", strength);
    let whole = weigh_spirit(&mut work, "the spirit", spirit, share);
    let in_spirit = work.work("water in the spirit", Rest { whole, part: ethanol });
    let in_plant = work.work("water in the plant", PlantWater { plant, moisture });
    let water = work.work("water in all", AddWeights { each: vec![in_spirit, in_plant] });
    let final_share = work.work("alcohol by weight in the end", ShareOfTwo { part: ethanol, other: water });
    work.work("alcohol by volume in the end", ByVolume { share: final_share });
    let density = work.figure(&WATER_DENSITY);
    let volume = work.work("the plant's water, measured", MeasureOut { weight: in_plant, density });
    let finished = work.work("volumes added", AddVolumes { each: vec![spirit, volume] });
    work.work("alcohol by the kitchen's rule", AlcoholByVolume { alcohol, finished });
    work.close();
    Worked::of("A fresh plant in spirit", work)
}
