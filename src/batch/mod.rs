//! What is in the pan: lots, each with its composition, as lines of the working.
//!
//! Nothing is computed here ahead of need: a batch is line references, and asking it for its volume
//! or its solids lays the lines down. Volumes go by lots, not by composition: water, honey and
//! syrups add; dissolved sugar takes up what its relation says.

mod lot;
mod sums;

pub use lot::Part;

use lot::{Lot, Made};

use crate::formula::Line;
use crate::formula::catalogue::pan::{
    AddVolumes, AddWeights, Away, Lose, ShareOfVolume, ShareOfWeight, Weigh,
};
use crate::materia::{Item, WATER_DENSITY};
use crate::working::Working;
use std::sync::Arc;

/// The name of the line of all the water in a batch.
pub const ALL_WATER: &str = "water in all";

/// What is in the pan.
#[derive(Clone, Debug, Default)]
pub struct Batch {
    lots: Vec<Lot>,
    /// Water boiled out of the mixture, mL.
    boiled: Vec<Line>,
    /// Plants left in: their weight, g, and the room they take up, mL, where that counts. They are no part
    /// of the liquid, and so of none of its shares.
    left_in: Vec<(Line, Option<Line>)>,
}

impl Batch {
    /// A watery liquid of that volume, mL.
    pub fn of_water(volume: Line) -> Batch {
        Batch { lots: vec![Lot { made: Made::Water, volume, weight: None }], ..Batch::default() }
    }

    /// Whether nothing but watery liquid is in it.
    pub fn is_water(&self) -> bool {
        self.boiled.is_empty() && self.lots.iter().all(|lot| matches!(lot.made, Made::Water))
    }

    /// Whether oil is in it.
    pub fn holds_oil(&self) -> bool {
        self.lots.iter().any(|lot| matches!(lot.made, Made::Oil(_)))
    }

    /// Whether wax is in it.
    pub fn holds_wax(&self) -> bool {
        self.lots.iter().any(|lot| matches!(lot.made, Made::Wax(_)))
    }

    /// Whether glycerin is in it.
    pub fn holds_glycerin(&self) -> bool {
        self.lots.iter().any(|lot| matches!(&lot.made, Made::Of(item, _) if !item.kind.has_sugars()))
    }

    /// Whether vinegar is in it.
    pub fn holds_vinegar(&self) -> bool {
        self.lots.iter().any(|lot| matches!(lot.made, Made::Vinegar(..)))
    }

    /// Pours in water: its volume, mL.
    pub fn add_water(&mut self, volume: Line) {
        self.lots.push(Lot { made: Made::Water, volume, weight: None });
    }

    /// Pours in oil: its volume, mL.
    pub fn add_oil(&mut self, item: Arc<Item>, volume: Line) {
        self.lots.push(Lot { made: Made::Oil(item), volume, weight: None });
    }

    /// Whether honey is in it.
    pub fn holds_honey(&self) -> bool {
        self.lots.iter().any(|lot| matches!(&lot.made, Made::Of(item, _) if item.is_honey()))
    }

    /// Whether spirit is in it.
    pub fn holds_spirit(&self) -> bool {
        self.lots.iter().any(|lot| matches!(lot.made, Made::Spirit(_)))
    }

    /// Stirs in a sweetener: its volume once in the liquid (mL), its weight (g) and the share of water in
    /// it, where there is any.
    pub fn stir_in(&mut self, item: Arc<Item>, volume: Line, weight: Line, water: Option<Line>) {
        self.lots.push(Lot { made: Made::Of(item, water), volume, weight: Some(weight) });
    }

    /// Pours in spirit: its volume (mL) and its strength (alcohol by volume).
    pub fn fortify(&mut self, volume: Line, strength: Line) {
        self.lots.push(Lot { made: Made::Spirit(strength), volume, weight: None });
    }

    /// Pours in vinegar: its volume (mL) and its acid (weight in volume).
    pub fn acidify(&mut self, item: Arc<Item>, volume: Line, acidity: Line) {
        self.lots.push(Lot { made: Made::Vinegar(item, acidity), volume, weight: None });
    }

    /// Melts wax in: its volume once melted (mL) and its weight (g).
    pub fn melt_in(&mut self, item: Arc<Item>, volume: Line, weight: Line) {
        self.lots.push(Lot { made: Made::Wax(item), volume, weight: Some(weight) });
    }

    /// Leaves plants in: their weight without water (g) and the room they take up (mL), where that counts.
    pub fn leave_in(&mut self, weight: Line, volume: Option<Line>) {
        self.left_in.push((weight, volume));
    }

    /// Pours another batch in.
    pub fn pour_in(&mut self, other: Batch) {
        self.lots.extend(other.lots);
        self.boiled.extend(other.boiled);
        self.left_in.extend(other.left_in);
    }

    /// The volume, mL.
    pub fn volume(&self, name: &str, work: &mut Working) -> Line {
        let left_in = self.left_in.iter().filter_map(|(_, volume)| *volume);
        let each: Vec<Line> = self.lots.iter().map(|lot| lot.volume).chain(left_in).collect();
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

    /// Takes off water that has boiled away, mL.
    pub fn boil_off(&mut self, boiled: Line) {
        self.boiled.push(boiled);
    }

    /// Keeps a share of everything (what the cloth lets through, what is poured out).
    pub fn keep(&mut self, share: Line, of: &str, work: &mut Working) {
        for lot in &mut self.lots {
            let words = lot.made.words().to_string();
            lot.volume = work.work(format!("{words} in {of}"), ShareOfVolume { share, whole: lot.volume });
            if let Some(weight) = lot.weight {
                lot.weight = Some(
                    work.work(format!("weight of {words} in {of}"), ShareOfWeight { share, whole: weight }),
                );
            }
        }
        for (weight, volume) in &mut self.left_in {
            *weight = work.work(format!("plants in {of}"), ShareOfWeight { share, whole: *weight });
            if let Some(volume) = volume {
                let by = ShareOfVolume { share, whole: *volume };
                *volume = work.work(format!("room of the plants in {of}"), by);
            }
        }
        for boiled in &mut self.boiled {
            *boiled = work.work(format!("boiled away from {of}"), ShareOfVolume { share, whole: *boiled });
        }
    }

    /// The weight, g, with the plants left in.
    pub fn weight(&self, name: &str, work: &mut Working) -> Line {
        if self.left_in.is_empty() {
            return self.weight_of_liquid(name, work);
        }
        let liquid = self.weight_of_liquid("liquid, weighed", work);
        let each = self.left_in.iter().map(|(weight, _)| *weight).chain([liquid]).collect();
        work.work(name, AddWeights { each })
    }

    /// The weight of the liquid alone, g.
    fn weight_of_liquid(&self, name: &str, work: &mut Working) -> Line {
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

    /// Volumes of the lots that are thin liquid and of those that sweeten, for the batch picture.
    pub fn layers(&self) -> (Vec<Line>, Vec<Line>) {
        let (water, other): (Vec<&Lot>, Vec<&Lot>) =
            self.lots.iter().partition(|lot| !matches!(lot.made, Made::Of(..)));
        (water.iter().map(|lot| lot.volume).collect(), other.iter().map(|lot| lot.volume).collect())
    }
}
