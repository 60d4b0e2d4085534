//! The steps of a method as declared: what each says, with the places of its values.

use super::PlantUse;
use crate::materia::Stage;
use crate::measure::{Amount, LiquidRatio, Proportion, Reduction};
use crate::span::Spanned;

/// How a pan is covered.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Lid {
    /// Closed.
    On,
    /// Open by a finger's breadth.
    Ajar,
    /// Open.
    Off,
}

/// How the marc is parted from the liquid.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Hand {
    /// Left to drip.
    Drained,
    /// Wrung by hand.
    Squeezed,
    /// In a press.
    Pressed,
    /// Not at all: the plants stay in.
    Not,
}

/// What a steep begins with.
#[derive(Clone, PartialEq, Debug)]
pub enum Start {
    /// Cold liquid, or what is in the pan as it is.
    AsItIs,
    /// Boiling water is poured on.
    Boiling,
    /// Kept warm all the while, at this temperature.
    Warm(Spanned<Amount>),
}

/// How much of something kneaded in.
#[derive(Clone, PartialEq, Debug)]
pub enum Kneaded {
    /// By a ratio to the plants.
    Ratio(LiquidRatio),
    /// So much.
    Measured(Amount),
}

/// Bath water that a liquid is poured into.
#[derive(Clone, PartialEq, Debug)]
pub struct Diluted {
    /// How much there is in all.
    pub to: Spanned<Amount>,
    /// Temperatures of the water and of the liquid, where both are said.
    pub warm: Option<(Spanned<Amount>, Spanned<Amount>)>,
}

/// How much of what is stirred in, melted in or poured in.
#[derive(Clone, PartialEq, Debug)]
pub enum Much {
    /// A share of the liquid or of the finished, by weight or by volume.
    Share(Proportion),
    /// So much.
    Measured(Amount),
}

impl Much {
    /// The measured amount as written.
    pub fn written(&self) -> Option<&str> {
        match self {
            Much::Measured(amount) => Some(&amount.written),
            Much::Share(_) => None,
        }
    }
}

/// One step of the method.
#[derive(Clone, Debug)]
pub enum Step {
    /// Kept just under the boil, or boiled.
    Simmer {
        /// How long, once it simmers.
        time: Spanned<Amount>,
        /// How it is covered.
        lid: Spanned<Lid>,
        /// Boiled hard rather than simmered.
        hard: bool,
    },
    /// Left to stand, covered, off the heat.
    Steep {
        /// How long.
        time: Spanned<Amount>,
        /// What it begins with.
        start: Start,
    },
    /// Let drip through packed powder, and collected to the ratio; so long it stands before.
    Percolate(Spanned<Amount>),
    /// More plants, off the heat.
    Add(Vec<PlantUse>),
    /// The liquid parted from the marc.
    Strain(Hand),
    /// Water poured through the marc until there is so much.
    MakeUp(Spanned<Amount>),
    /// Fresh water on the same marc.
    PourAgain(Spanned<Amount>),
    /// Boiled down, lid off.
    Reduce(Reduction),
    /// Cooled to a temperature.
    Cool(Amount),
    /// Sweetened.
    Sweeten(Vec<(Spanned<String>, Spanned<Much>)>),
    /// Spirit poured in.
    Fortify {
        /// Which.
        of: Spanned<String>,
        /// How much: measured, or a share of the liquid by volume.
        amount: Spanned<Much>,
        /// Its alcohol by volume, as a share; none where the kitchen's only spirit is meant.
        strength: Option<Spanned<f64>>,
    },
    /// Vinegar poured in.
    Acidify {
        /// Which.
        of: Spanned<String>,
        /// How much: measured, or a share of the liquid by volume.
        amount: Spanned<Much>,
        /// Its acid in g/mL; none where the kitchen's vinegar is meant.
        acidity: Option<Spanned<f64>>,
    },
    /// The product of another recipe poured in.
    Combine {
        /// Its name.
        of: Spanned<String>,
        /// How much of it.
        amount: Spanned<Amount>,
    },
    /// Wax melted in.
    Melt(Vec<(Spanned<String>, Spanned<Much>)>),
    /// Powdered plants kneaded into a dough with these.
    Knead(Vec<(Spanned<String>, Spanned<Kneaded>)>),
    /// Sugar boiled to a stage.
    BoilTo(Spanned<&'static Stage>),
    /// Cut, or dropped, into pieces of this weight, dry.
    Cut(Spanned<Amount>),
    /// What wetted it dries off.
    Dry(Spanned<Amount>),
    /// Poured into bath water.
    Dilute(Diluted),
    /// Laid on this thick.
    Spread(Spanned<Amount>),
    /// Filled into bottles, jars or tins of this size.
    Bottle(Amount),
}

impl Step {
    /// The plants it adds.
    pub fn adds(&self) -> &[PlantUse] {
        match self {
            Step::Add(plants) => plants,
            _ => &[],
        }
    }

    /// The step's name in a recipe.
    pub const fn name(&self) -> &'static str {
        match self {
            Step::Simmer { hard: false, .. } => "simmer",
            Step::Simmer { hard: true, .. } => "boil",
            Step::Steep { .. } => "steep",
            Step::Add(_) => "add",
            Step::Strain(_) => "strain",
            Step::Reduce(_) => "reduce",
            Step::Cool(_) => "cool",
            Step::Sweeten(_) => "sweeten",
            Step::Fortify { .. } => "fortify",
            Step::Acidify { .. } => "acidify",
            Step::Combine { .. } => "combine",
            Step::Percolate(_) => "percolate",
            Step::MakeUp(_) => "make up",
            Step::PourAgain(_) => "pour again",
            Step::Melt(_) => "melt",
            Step::Knead(_) => "knead",
            Step::BoilTo(_) => "boil to",
            Step::Cut(_) => "cut",
            Step::Dry(_) => "dry",
            Step::Dilute(_) => "dilute",
            Step::Spread(_) => "spread",
            Step::Bottle(_) => "bottle",
        }
    }
}
