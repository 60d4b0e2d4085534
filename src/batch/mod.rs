//! What is in the pan: lots, each with its composition, as lines of the working.
//!
//! Nothing is computed here ahead of need: a batch is line references, and asking it for its volume
//! or its solids lays the lines down. Volumes go by lots, not by composition: water, honey and
//! syrups add; dissolved sugar takes up what its relation says.

use crate::formula::Line;
use crate::formula::catalogue::dose::EnergyOf;
use crate::formula::catalogue::pan::{
    AddVolumes, AddWeights, Away, Lose, ShareOfVolume, ShareOfWeight, Weigh,
};
use crate::formula::catalogue::sweeten::{Component, DrySolids, Solids};
use crate::materia::{Sweetener, WATER_DENSITY};
use crate::working::Working;

/// What a lot is made of.
#[derive(Clone, Debug)]
enum Made {
    /// Water, or a watery liquid whose few per cent of solids are left out.
    Water,
    /// A sweetener; the share of water in it, where there is any.
    Of(&'static Sweetener, Option<Line>),
}

/// One thing that went into the pan.
#[derive(Clone, Debug)]
struct Lot {
    made: Made,
    volume: Line,
    /// Worked from the volume when first asked for, where it is not known before.
    weight: Option<Line>,
}

/// What is in the pan.
#[derive(Clone, Debug, Default)]
pub struct Batch {
    lots: Vec<Lot>,
    /// Water boiled out of the mixture, mL.
    boiled: Vec<Line>,
}

impl Batch {
    /// A watery liquid of that volume, mL.
    pub fn of_water(volume: Line) -> Batch {
        Batch { lots: vec![Lot { made: Made::Water, volume, weight: None }], boiled: Vec::new() }
    }

    /// Whether nothing but watery liquid is in it.
    pub fn is_water(&self) -> bool {
        self.boiled.is_empty() && matches!(self.lots[..], [Lot { made: Made::Water, .. }])
    }

    /// Whether honey is in it.
    pub fn holds_honey(&self) -> bool {
        self.lots.iter().any(|lot| matches!(lot.made, Made::Of(sweetener, _) if sweetener.honey))
    }

    /// Stirs in a sweetener: its volume once in the liquid (mL), its weight (g) and the share of water in
    /// it, where there is any.
    pub fn stir_in(
        &mut self,
        sweetener: &'static Sweetener,
        volume: Line,
        weight: Line,
        water: Option<Line>,
    ) {
        self.lots.push(Lot { made: Made::Of(sweetener, water), volume, weight: Some(weight) });
    }

    /// Pours another batch in.
    pub fn pour_in(&mut self, other: Batch) {
        self.lots.extend(other.lots);
        self.boiled.extend(other.boiled);
    }

    /// The volume, mL.
    pub fn volume(&self, name: &str, work: &mut Working) -> Line {
        let each: Vec<Line> = self.lots.iter().map(|lot| lot.volume).collect();
        let all = work.one_or(each, |work, each| work.work(name, AddVolumes { each }));
        if self.boiled.is_empty() {
            return all;
        }
        work.work(name, Lose { before: all, losses: self.boiled.clone() })
    }

    /// Boils water away until `left` (mL) is in the pan; says how much goes, mL.
    pub fn boil_down(&mut self, before: Line, left: Line, work: &mut Working) -> Line {
        let away = work.work("to boil away", Away { before, after: left });
        if self.is_water() {
            *self = Batch::of_water(left);
        } else {
            self.boiled.push(away);
        }
        away
    }

    /// Keeps a share of everything (what the cloth lets through, what is poured out).
    pub fn keep(&mut self, share: Line, of: &str, work: &mut Working) {
        for lot in &mut self.lots {
            let words = lot.made.words();
            lot.volume = work.work(format!("{words} in {of}"), ShareOfVolume { share, whole: lot.volume });
            if let Some(weight) = lot.weight {
                lot.weight = Some(
                    work.work(format!("weight of {words} in {of}"), ShareOfWeight { share, whole: weight }),
                );
            }
        }
        for boiled in &mut self.boiled {
            *boiled = work.work(format!("boiled away from {of}"), ShareOfVolume { share, whole: *boiled });
        }
    }

    /// The weight, g.
    pub fn weight(&self, name: &str, work: &mut Working) -> Line {
        let mut each = Vec::new();
        for lot in &self.lots {
            each.push(lot.weigh(work));
        }
        let all = work.one_or(each, |work, each| work.work(name, AddWeights { each }));
        self.less_the_boiled(name, all, work)
    }

    /// Takes off the weight of the water boiled out of the mixture.
    fn less_the_boiled(&self, name: &str, all: Line, work: &mut Working) -> Line {
        let mut losses = Vec::new();
        for boiled in &self.boiled {
            let density = work.figure(&WATER_DENSITY);
            losses.push(work.work("weight boiled away", Weigh { volume: *boiled, density }));
        }
        if losses.is_empty() {
            return all;
        }
        work.work(name, crate::formula::catalogue::pan::LoseWeight { before: all, losses })
    }

    /// Dissolved solids as a share of the weight; none where nothing is dissolved.
    pub fn solids(&self, work: &mut Working) -> Option<Line> {
        let mut solids = Vec::new();
        for lot in &self.lots {
            let Made::Of(sweetener, water) = &lot.made else {
                continue;
            };
            if sweetener.sugars.is_none() {
                continue;
            }
            let weight = lot.weigh(work);
            solids.push(match water {
                None => weight,
                Some(water) => work
                    .work(format!("solids in the {}", sweetener.words), DrySolids { weight, water: *water }),
            });
        }
        if solids.is_empty() {
            return None;
        }
        let everything = self.weight("weight of everything", work);
        Some(work.work("dissolved solids", Solids { solids, everything }))
    }

    /// Sugars in all, g; none where there are none.
    pub fn sugars(&self, work: &mut Working) -> Option<Line> {
        let mut each = Vec::new();
        for lot in &self.lots {
            let Made::Of(sweetener, _) = lot.made else {
                continue;
            };
            let Some(figure) = sweetener.sugars else {
                continue;
            };
            let (weight, share) = (lot.weigh(work), work.figure(figure));
            each.push(work.work(format!("sugars in the {}", sweetener.words), Component { weight, share }));
        }
        (!each.is_empty())
            .then(|| work.one_or(each, |work, each| work.work("sugars in all", AddWeights { each })))
    }

    /// Energy in all, kcal; none where there is none to speak of.
    pub fn energy(&self, work: &mut Working) -> Option<Line> {
        let mut each = Vec::new();
        for lot in &self.lots {
            let Made::Of(sweetener, _) = lot.made else {
                continue;
            };
            let (weight, each_gram) = (lot.weigh(work), work.figure(sweetener.energy));
            each.push(
                work.work(format!("energy in the {}", sweetener.words), EnergyOf { weight, each_gram }),
            );
        }
        (!each.is_empty()).then(|| {
            work.one_or(each, |work, each| {
                work.work("energy in all", crate::formula::catalogue::dose::AddEnergy { each })
            })
        })
    }

    /// Volumes of the lots that are watery liquid and of those that are not, for the batch picture.
    pub fn layers(&self) -> (Vec<Line>, Vec<Line>) {
        let (water, other): (Vec<&Lot>, Vec<&Lot>) =
            self.lots.iter().partition(|lot| matches!(lot.made, Made::Water));
        (water.iter().map(|lot| lot.volume).collect(), other.iter().map(|lot| lot.volume).collect())
    }
}

impl Lot {
    /// The lot's weight, g.
    fn weigh(&self, work: &mut Working) -> Line {
        self.weight.unwrap_or_else(|| {
            let density = work.figure(&WATER_DENSITY);
            work.work(format!("weight of the {}", self.made.words()), Weigh { volume: self.volume, density })
        })
    }
}

impl Made {
    fn words(&self) -> &'static str {
        match self {
            Made::Water => "liquid",
            Made::Of(sweetener, _) => sweetener.words,
        }
    }
}
