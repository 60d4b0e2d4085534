//! One thing in the pan, and the weight of each of its parts.

use crate::formula::Line;
use crate::formula::catalogue::composition::{Rest, SugarInHoney, WaterOf};
use crate::formula::catalogue::pan::Weigh;
use crate::formula::catalogue::spirit::{AcidOf, AlcoholWeight, PureAlcohol, ShareByWeight, SpiritDensity};
use crate::formula::catalogue::sweeten::DrySolids;
use crate::materia::{HONEY_FRUCTOSE, HONEY_GLUCOSE, HONEY_SUCROSE, HONEY_WATER, Item, WATER_DENSITY};
use crate::working::Working;
use std::sync::Arc;

/// Parts of a composition by weight. What a plant gives to the liquid (1 to 3 %) is left out.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Part {
    /// Water.
    Water,
    /// Pure alcohol.
    Ethanol,
    /// Sucrose, maltose with it.
    Sucrose,
    /// Glucose, galactose with it.
    Glucose,
    /// Fructose.
    Fructose,
    /// Glycerol.
    Glycerol,
    /// Acetic acid.
    AceticAcid,
}

/// What a lot is made of.
#[derive(Clone, Debug)]
pub(super) enum Made {
    /// Water, or a watery liquid whose few per cent of solids are left out.
    Water,
    /// A sweetener; the share of water in it, where there is any.
    Of(Arc<Item>, Option<Line>),
    /// Spirit, by its alcohol by volume.
    Spirit(Line),
    /// Vinegar, by its acid, weight in volume.
    Vinegar(Arc<Item>, Line),
    /// Oil.
    Oil(Arc<Item>),
    /// Wax melted into it.
    Wax(Arc<Item>),
}

/// One thing that went into the pan.
#[derive(Clone, Debug)]
pub(super) struct Lot {
    pub made: Made,
    pub volume: Line,
    /// Worked from the volume when first asked for, where it is not known before.
    pub weight: Option<Line>,
}

impl Made {
    pub(super) fn words(&self) -> &str {
        match self {
            Made::Water => "liquid",
            Made::Of(item, _) => &item.words,
            Made::Spirit(_) => "spirit",
            Made::Vinegar(..) => "vinegar",
            Made::Oil(_) => "oil",
            Made::Wax(_) => "wax",
        }
    }
}

impl Lot {
    /// The lot's weight, g.
    pub(super) fn weigh(&self, work: &mut Working) -> Line {
        self.weight.unwrap_or_else(|| {
            let density = match &self.made {
                &Made::Spirit(strength) => {
                    let share = work.work("alcohol in the spirit, by weight", ShareByWeight { strength });
                    work.work("density of the spirit", SpiritDensity { share })
                }
                Made::Vinegar(item, _) | Made::Oil(item) | Made::Wax(item) | Made::Of(item, _) => {
                    match &item.density {
                        Some(density) => work.fact(density),
                        None => work.figure(&WATER_DENSITY),
                    }
                }
                Made::Water => work.figure(&WATER_DENSITY),
            };
            work.work(format!("weight of the {}", self.made.words()), Weigh { volume: self.volume, density })
        })
    }

    /// Pure alcohol in it, mL; none where there is none.
    pub(super) fn alcohol(&self, work: &mut Working) -> Option<Line> {
        let Made::Spirit(strength) = self.made else { return None };
        Some(work.work("pure alcohol", PureAlcohol { spirit: self.volume, strength }))
    }

    /// The weight of one part of it, g; none where it holds none.
    pub(super) fn part(&self, part: Part, work: &mut Working) -> Option<Line> {
        match &self.made {
            Made::Water => (part == Part::Water).then(|| self.weigh(work)),
            Made::Oil(_) | Made::Wax(_) => None,
            Made::Of(item, moisture) => self.part_of(item, *moisture, part, work),
            Made::Spirit(_) => {
                let alcohol = self.alcohol(work)?;
                let ethanol = work.work("pure alcohol, weighed", AlcoholWeight { alcohol });
                self.that_or_rest(part, Part::Ethanol, ethanol, work)
            }
            Made::Vinegar(_, acidity) => {
                let acid = work.work("acetic acid", AcidOf { vinegar: self.volume, acidity: *acidity });
                self.that_or_rest(part, Part::AceticAcid, acid, work)
            }
        }
    }

    /// A lot of one dissolved thing and water: the thing, or the water.
    fn that_or_rest(&self, part: Part, that: Part, weight: Line, work: &mut Working) -> Option<Line> {
        match part {
            part if part == that => Some(weight),
            Part::Water => {
                let whole = self.weigh(work);
                Some(work.work(format!("water in the {}", self.made.words()), Rest { whole, part: weight }))
            }
            _ => None,
        }
    }

    fn part_of(&self, item: &Item, moisture: Option<Line>, part: Part, work: &mut Working) -> Option<Line> {
        let weight = self.weigh(work);
        let words = &item.words;
        match (part, moisture) {
            (Part::Water, Some(moisture)) => {
                Some(work.work(format!("water in the {words}"), WaterOf { weight, moisture }))
            }
            (Part::Sucrose | Part::Glucose | Part::Fructose, Some(moisture)) if item.is_honey() => {
                let (figure, sugar) = match part {
                    Part::Sucrose => (&HONEY_SUCROSE, "sucrose"),
                    Part::Glucose => (&HONEY_GLUCOSE, "glucose"),
                    _ => (&HONEY_FRUCTOSE, "fructose"),
                };
                let (printed, printed_water) = (work.figure(figure), work.figure(&HONEY_WATER));
                let by = SugarInHoney { weight, printed, moisture, printed_water };
                Some(work.work(format!("{sugar} in the {words}"), by))
            }
            (Part::Sucrose, Some(water)) if item.kind.has_sugars() => {
                Some(work.work(format!("solids in the {words}"), DrySolids { weight, water }))
            }
            (Part::Sucrose, None) if item.kind.has_sugars() => Some(weight),
            (Part::Glycerol, None) if !item.kind.has_sugars() => Some(weight),
            _ => None,
        }
    }
}
