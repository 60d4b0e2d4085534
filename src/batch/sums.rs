//! What follows from a batch's composition, laid down when it is asked for.

use super::lot::Made;
use super::{ALL_WATER, Batch, Part};
use crate::formula::Line;
use crate::formula::catalogue::composition::{
    HoneyActivity, MoleFraction, Moles, Norrish, SucroseShare, WaterActivity, WaterActivityHoney,
};
use crate::formula::catalogue::dose::{AddEnergy, EnergyOf};
use crate::formula::catalogue::pan::{AddVolumes, AddWeights};
use crate::formula::catalogue::spirit::{
    AcidOf, Acidity, AlcoholByVolume, Covered, FreeWater, HeldByGlycerin, HeldBySugar, ShareOfFinished,
    ShareOfTwo,
};
use crate::formula::catalogue::sweeten::{Component, DrySolids, Moisture, Solids};
use crate::materia::{
    FRUCTOSE_K, Figure, GLUCOSE_K, GLYCEROL_K, GLYCEROL_MOLAR, HEXOSE_MOLAR, SUCROSE_K, SUCROSE_MOLAR,
    WATER_MOLAR,
};
use crate::working::Working;

/// The solutes of water activity: part, name, molar mass, Norrish constant.
const SOLUTES: &[(Part, &str, &Figure, &Figure)] = &[
    (Part::Sucrose, "sucrose", &SUCROSE_MOLAR, &SUCROSE_K),
    (Part::Glucose, "glucose", &HEXOSE_MOLAR, &GLUCOSE_K),
    (Part::Fructose, "fructose", &HEXOSE_MOLAR, &FRUCTOSE_K),
    (Part::Glycerol, "glycerol", &GLYCEROL_MOLAR, &GLYCEROL_K),
];

impl Batch {
    /// The weight of one part of everything, g; none where there is none.
    pub fn part(&self, part: Part, name: &str, work: &mut Working) -> Option<Line> {
        let mut each = Vec::new();
        for lot in &self.lots {
            each.extend(lot.part(part, work));
        }
        if each.is_empty() {
            return None;
        }
        let all = work.one_or(each, |work, each| work.work(name, AddWeights { each }));
        Some(if part == Part::Water { self.less_the_boiled(name, all, work) } else { all })
    }

    /// What is dissolved, thing by thing, g.
    pub(crate) fn solids_of_each(&self, work: &mut Working) -> Vec<Line> {
        let mut solids = Vec::new();
        for lot in &self.lots {
            let Made::Of(sweetener, water) = &lot.made else { continue };
            if !sweetener.kind.has_sugars() {
                continue;
            }
            let weight = lot.weigh(work);
            solids.push(match water {
                None => weight,
                Some(water) => work
                    .work(format!("solids in the {}", sweetener.words), DrySolids { weight, water: *water }),
            });
        }
        solids
    }

    /// Dissolved solids as a share of the weight; none where nothing is dissolved.
    pub fn solids(&self, work: &mut Working) -> Option<Line> {
        let solids = self.solids_of_each(work);
        if solids.is_empty() {
            return None;
        }
        let everything = self.weight_of_liquid("weight of everything", work);
        Some(work.work("dissolved solids", Solids { solids, everything }))
    }

    /// Sugars in all, g; none where there are none.
    pub fn sugars(&self, work: &mut Working) -> Option<Line> {
        let mut each = Vec::new();
        for lot in &self.lots {
            let Made::Of(sweetener, _) = &lot.made else { continue };
            let Some(fact) = &sweetener.sugars else { continue };
            let (weight, share) = (lot.weigh(work), work.fact(fact));
            each.push(work.work(format!("sugars in the {}", sweetener.words), Component { weight, share }));
        }
        (!each.is_empty())
            .then(|| work.one_or(each, |work, each| work.work("sugars in all", AddWeights { each })))
    }

    /// Energy of what sweetens, kcal; none where there is none to speak of.
    pub fn energy(&self, work: &mut Working) -> Option<Line> {
        let mut each = Vec::new();
        for lot in &self.lots {
            let Made::Of(sweetener, _) = &lot.made else { continue };
            let Some(fact) = &sweetener.energy else { continue };
            let (weight, each_gram) = (lot.weigh(work), work.fact(fact));
            each.push(
                work.work(format!("energy in the {}", sweetener.words), EnergyOf { weight, each_gram }),
            );
        }
        (!each.is_empty())
            .then(|| work.one_or(each, |work, each| work.work("energy in all", AddEnergy { each })))
    }

    /// Pure alcohol in all, mL; none where there is none.
    pub fn alcohol(&self, work: &mut Working) -> Option<Line> {
        let mut each = Vec::new();
        for lot in &self.lots {
            each.extend(lot.alcohol(work));
        }
        (!each.is_empty())
            .then(|| work.one_or(each, |work, each| work.work("pure alcohol in all", AddVolumes { each })))
    }

    /// Alcohol by volume of the finished; none where there is none.
    pub fn by_volume(&self, finished: Line, work: &mut Working) -> Option<Line> {
        let alcohol = self.alcohol(work)?;
        Some(work.work("alcohol by volume", AlcoholByVolume { alcohol, finished }))
    }

    /// Acetic acid of the finished, weight in volume; none where there is none.
    pub fn acidity(&self, finished: Line, work: &mut Working) -> Option<Line> {
        let mut each = Vec::new();
        for lot in &self.lots {
            let Made::Vinegar(_, acidity) = lot.made else { continue };
            each.push(work.work("acetic acid", AcidOf { vinegar: lot.volume, acidity }));
        }
        if each.is_empty() {
            return None;
        }
        let acid = work.one_or(each, |work, each| work.work("acetic acid in all", AddWeights { each }));
        Some(work.work("acidity", Acidity { acid, finished }))
    }

    /// Water against everything, by weight, where honey is what extracts; none where nothing is.
    pub fn moisture(&self, work: &mut Working) -> Option<Line> {
        let water = self.part(Part::Water, ALL_WATER, work)?;
        let everything = self.weight_of_liquid("weight of everything", work);
        Some(work.work("moisture", Moisture { water, everything }))
    }

    /// Water that stands in oil, mL.
    pub fn water_in_oil(&self, work: &mut Working) -> Line {
        let lots = self.lots.iter().filter(|lot| matches!(lot.made, Made::Water));
        let each = lots.map(|lot| lot.volume).collect();
        work.work("water in the oil", AddVolumes { each })
    }

    /// Volumes of glycerin, mL.
    fn glycerin_volumes(&self) -> Vec<Line> {
        let lots = self.lots.iter();
        lots.filter(|lot| matches!(&lot.made, Made::Of(item, _) if !item.kind.has_sugars()))
            .map(|lot| lot.volume)
            .collect()
    }

    /// Glycerin by volume of the finished; none where there is none.
    pub fn glycerin(&self, finished: Line, work: &mut Working) -> Option<Line> {
        let each = self.glycerin_volumes();
        if each.is_empty() {
            return None;
        }
        let part = work.one_or(each, |work, each| work.work("glycerin in all", AddVolumes { each }));
        Some(work.work("glycerin by volume", ShareOfFinished { part, finished }))
    }

    /// Glycerol against glycerol and water, by weight: the domain of its water activity. None without any.
    pub fn glycerol_share(&self, work: &mut Working) -> Option<Line> {
        let part = self.part(Part::Glycerol, "glycerol in all", work)?;
        let other = self.part(Part::Water, ALL_WATER, work)?;
        Some(work.work("glycerol in glycerol and water", ShareOfTwo { part, other }))
    }

    /// Free water by the pharmacy's rule, mL, and the alcohol in it; none where nothing but water is in the pan.
    pub fn free_water(&self, finished: Line, work: &mut Working) -> Option<(Line, Line)> {
        if self.holds_oil() {
            return None;
        }
        let solids = self.solids_of_each(work);
        let glycerin = self.glycerin_volumes();
        let alcohol = self.alcohol(work);
        if solids.is_empty() && glycerin.is_empty() && alcohol.is_none() {
            return None;
        }
        let mut held = Vec::new();
        if !solids.is_empty() {
            held.push(work.work("held by sugar", HeldBySugar { solids }));
        }
        for glycerin in glycerin {
            held.push(work.work("held by glycerin", HeldByGlycerin { glycerin }));
        }
        let free = work.work("free water", FreeWater { finished, held });
        let alcohol = alcohol.into_iter().collect();
        let covered = work.work("alcohol in the free water", Covered { alcohol, free });
        Some((free, covered))
    }

    /// Water activity. None where nothing is dissolved, and where spirit is in it: no data carry that.
    pub fn water_activity(&self, work: &mut Working) -> Option<Line> {
        if self.holds_spirit() || self.holds_oil() {
            return None;
        }
        // Honey with nothing watery in it has a line of its own, measured on honeys.
        if let [lot] = &self.lots[..]
            && let Made::Of(item, Some(moisture)) = &lot.made
            && item.is_honey()
        {
            return Some(work.work("water activity", HoneyActivity { moisture: *moisture }));
        }
        let water = self.part(Part::Water, ALL_WATER, work)?;
        let molar = work.figure(&WATER_MOLAR);
        let mut each = Vec::new();
        for (part, name, molar_mass, constant) in SOLUTES {
            let Some(weight) = self.part(*part, &format!("{name} in all"), work) else { continue };
            let in_water = work.work("water, in moles", Moles { weight: water, molar });
            let molar = work.figure(molar_mass);
            let solute = work.work(format!("{name}, in moles"), Moles { weight, molar });
            let fraction =
                work.work(format!("mole fraction of {name}"), MoleFraction { solute, water: in_water });
            let constant = work.figure(constant);
            each.push(work.work(format!("water activity by {name}"), Norrish { fraction, constant }));
        }
        if each.is_empty() {
            return None;
        }
        Some(if self.holds_honey() {
            work.work("water activity", WaterActivityHoney { each })
        } else {
            work.work("water activity", WaterActivity { each })
        })
    }

    /// Sucrose against sucrose and water, by weight, for the crystallising warning; none without any,
    /// and none with honey, whose own sugars hinder crystals.
    pub fn sucrose_share(&self, work: &mut Working) -> Option<Line> {
        if self.holds_honey() {
            return None;
        }
        let sucrose = self.part(Part::Sucrose, "sucrose in all", work)?;
        let water = self.part(Part::Water, ALL_WATER, work)?;
        Some(work.work("sugar in sugar and water", SucroseShare { sucrose, water }))
    }
}
