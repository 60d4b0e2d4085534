//! Figures a kitchen looks up, worked by the formulas that recipes use: where water boils, what spoons and cups
//! weigh, how much fresh stands for dried.

use crate::bibliography::Source;
use crate::checks::ours::{boils, honey_weighs, pressure};
use crate::formula::Sum;
use crate::formula::catalogue::pan::{AsDried, Weigh};
use crate::formula::catalogue::spirit::{ShareByWeight, SpiritDensity};
use crate::formulary::{Kitchen, Plant, PlantForm};
use crate::materia::{HONEY_MOISTURE, Item};
use crate::measure::Measure;
use crate::pantry::Shelf;

/// An altitude.
#[derive(Clone, Copy, Debug)]
pub struct Height {
    /// Above the sea, m.
    pub metres: f64,
    /// The same to the nearest ten feet.
    pub feet: f64,
    /// Pressure of the air, Pa.
    pub pressure: f64,
    /// Where water boils, °C.
    pub boils: f64,
}

/// Altitudes of the table, m: where people live and cook.
const METRES: [f64; 9] = [0.0, 250.0, 500.0, 750.0, 1000.0, 1500.0, 2000.0, 2500.0, 3000.0];

/// Where water boils higher up.
pub fn heights() -> Vec<Height> {
    let foot = Measure::Foot.factor().to_f64();
    let height = |metres| Height {
        metres,
        feet: (metres / foot / 10.0_f64).round() * 10.0,
        pressure: pressure(metres),
        boils: boils(metres),
    };
    METRES.map(height).to_vec()
}

/// The measures of the household table.
pub const MEASURES: [Measure; 3] = [Measure::Tsp, Measure::Tbsp, Measure::Cup];

/// What a pantry item weighs in each of [`MEASURES`], g, and where each figure comes from; none of what is only
/// weighed. What the item's own page says of a measure goes before its density.
pub fn household(shelf: &Shelf, kitchen: &Kitchen) -> Option<([f64; 3], Vec<Source>)> {
    let own = shelf.page.as_ref().map_or(&[][..], |page| &page.weights);
    let (mut weights, mut sources) = ([0.0; 3], Vec::new());
    for (weighs, measure) in weights.iter_mut().zip(MEASURES) {
        let (value, source) = match own.iter().find(|(known, _)| *known == measure) {
            Some((_, cited)) => (cited.value, cited.source.clone()),
            None => weight(&shelf.item, measure.factor().to_f64(), kitchen)?,
        };
        *weighs = value;
        sources.push(source);
    }
    Some((weights, sources))
}

/// What so many mL of an item weigh, g, and where the figure comes from that says so.
fn weight(item: &Item, volume: f64, kitchen: &Kitchen) -> Option<(f64, Source)> {
    if item.is_honey() {
        let own =
            kitchen.honey_moisture.map(|moisture| (moisture, Source::formulary("this kitchen's honey")));
        let (moisture, source) = own.unwrap_or((HONEY_MOISTURE.usual, HONEY_MOISTURE.source.clone()));
        return Some((honey_weighs(volume, moisture), source));
    }
    let mut sum = Sum::default();
    let volume = sum.line(volume);
    let (density, source) = match (&item.density, &item.strength) {
        (Some(density), _) => (sum.line(density.value()), density.source().clone()),
        (None, Some(strength)) => {
            let strength = sum.line(strength.value());
            let share = sum.work(ShareByWeight { strength });
            (sum.work(SpiritDensity { share }), SpiritDensity::formula().source.clone())
        }
        (None, None) => return None,
    };
    Some((sum.gives(Weigh { volume, density }), source))
}

/// Grams of a plant fresh for a gram of it dried, and the moisture of both; none where either is not known.
pub fn fresh_for_dried(plant: &Plant) -> Option<(f64, [f64; 2])> {
    let moisture = |form: &Option<PlantForm>| form.as_ref()?.moisture.as_ref().map(|water| water.value);
    let both = [moisture(&plant.fresh)?, moisture(&plant.dried)?];
    let mut sum = Sum::default();
    let (fresh, [fresh_moisture, dried_moisture]) = (sum.line(1.0), both.map(|moisture| sum.line(moisture)));
    Some((1.0 / sum.gives(AsDried { fresh, fresh_moisture, dried_moisture }), both))
}
