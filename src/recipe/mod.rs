//! A recipe as declared: what the block says, each value with its place. Nothing is worked here.

mod change;
mod preparation;
mod read;
mod step;
mod stir;

pub use preparation::{Need, PREPARATIONS, Preparation, Shape, Use, Vessel};
pub use read::read;

use crate::materia::Stage;
use crate::measure::{Amount, LiquidRatio, PlantAmount, Proportion, Reduction};
use crate::span::{Span, Spanned};
use crate::yaml::Node;

/// A declared preparation.
#[derive(Clone, Debug)]
pub struct Recipe {
    /// Its name.
    pub name: Spanned<String>,
    /// What kind of preparation.
    pub preparation: Spanned<&'static Preparation>,
    /// Plants put in at the start, by their names.
    pub plants: Vec<PlantUse>,
    /// What plants written as parts weigh together.
    pub weight: Option<Spanned<Amount>>,
    /// What extracts; none for a dry blend.
    pub liquid: Option<Spanned<Liquid>>,
    /// Steps in order.
    pub method: Vec<Spanned<Step>>,
    /// Where it is kept.
    pub keep: Option<Spanned<Keep>>,
    /// How it is taken.
    pub take: Option<Take>,
    /// pH of the finished preparation, measured.
    pub ph: Option<Spanned<f64>>,
    /// The author's own figures for assumptions.
    pub assume: Vec<Assume>,
    /// Results for which the amounts are shown.
    pub wanted: Vec<Spanned<Wanted>>,
    /// The recipe with stated changes, as declared.
    pub variations: Vec<Variation>,
    /// Place of the whole block's text in the file.
    pub span: Span,
}

impl Recipe {
    /// What extracts, where anything does.
    pub fn menstruum(&self) -> Option<Menstruum> {
        self.liquid.as_ref().map(|liquid| liquid.value.kind)
    }

    /// The products it combines, by their names.
    pub fn combines(&self) -> impl Iterator<Item = &Spanned<String>> {
        self.method.iter().filter_map(|step| match &step.value {
            Step::Combine { of, .. } => Some(of),
            _ => None,
        })
    }

    /// The measured pH.
    pub fn ph(&self) -> Option<f64> {
        self.ph.as_ref().map(|ph| ph.value)
    }
}

/// A plant and how much of it.
#[derive(Clone, Debug)]
pub struct PlantUse {
    /// Its name, as in the formulary.
    pub plant: Spanned<String>,
    /// How much, fresh or dried.
    pub amount: Spanned<PlantAmount>,
}

/// What is wanted of a recipe in the end.
#[derive(Clone, PartialEq, Debug)]
pub struct Wanted {
    /// How many; one where only an amount is written.
    pub count: f64,
    /// How much, of each where it is several.
    pub each: Amount,
    /// As written.
    pub written: String,
}

/// What extracts: the menstruum, and how much of it.
#[derive(Clone, Debug)]
pub struct Liquid {
    /// What it is.
    pub kind: Menstruum,
    /// How much.
    pub amount: LiquidAmount,
    /// Alcohol, glycerin or acid in it, as a share, where the recipe says.
    pub strength: Option<Spanned<f64>>,
    /// Alcohol of the stronger spirit that it is mixed from with water, where it is.
    pub from: Option<Spanned<f64>>,
}

/// Kinds of extracting liquid.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Menstruum {
    /// Water.
    Water,
    /// Vinegar, by its acid.
    Vinegar,
    /// Spirit, by its alcohol.
    Spirit,
    /// Glycerin, pure or with water.
    Glycerin,
    /// Honey.
    Honey,
    /// Oil.
    Oil,
}

impl Menstruum {
    /// As written in a recipe, and in running text.
    pub const NAMES: &'static [(&'static str, Menstruum)] = &[
        ("water", Menstruum::Water),
        ("vinegar", Menstruum::Vinegar),
        ("spirit", Menstruum::Spirit),
        ("glycerin", Menstruum::Glycerin),
        ("honey", Menstruum::Honey),
        ("oil", Menstruum::Oil),
    ];

    /// Its word.
    pub fn words(self) -> &'static str {
        Menstruum::NAMES.iter().find(|(_, kind)| *kind == self).map_or("liquid", |(word, _)| *word)
    }
}

/// How much of a liquid.
#[derive(Clone, Debug)]
pub enum LiquidAmount {
    /// By a ratio to the plants; of which form the plants are weighed in it, where the author says.
    Ratio(LiquidRatio, Option<crate::measure::Form>),
    /// So much.
    Measured(Amount),
}

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

/// How much of a sweetener.
#[derive(Clone, PartialEq, Debug)]
pub enum Sweet {
    /// A share of the liquid or of the finished, by weight or by volume.
    Share(Proportion),
    /// So much.
    Measured(Amount),
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
    Sweeten(Vec<(Spanned<String>, Spanned<Sweet>)>),
    /// Spirit poured in.
    Fortify {
        /// How much.
        amount: Spanned<Amount>,
        /// Its alcohol by volume, as a share; none where the kitchen's only spirit is meant.
        strength: Option<Spanned<f64>>,
    },
    /// Vinegar poured in.
    Acidify {
        /// How much.
        amount: Spanned<Amount>,
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
    Melt(Vec<(Spanned<String>, Spanned<Sweet>)>),
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

/// Where it is kept.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Keep {
    /// Used the same day.
    SameDay,
    /// In the refrigerator.
    Refrigerator,
    /// In the freezer.
    Freezer,
    /// Cool and dark.
    CoolDark,
    /// On a shelf.
    Shelf,
}

impl Keep {
    /// As written in a recipe.
    pub const NAMES: &'static [(&'static str, Keep)] = &[
        ("same day", Keep::SameDay),
        ("refrigerator", Keep::Refrigerator),
        ("freezer", Keep::Freezer),
        ("cool and dark", Keep::CoolDark),
        ("shelf", Keep::Shelf),
    ];

    /// In running text.
    pub const fn words(self) -> &'static str {
        match self {
            Keep::SameDay => "the same day only",
            Keep::Refrigerator => "in the refrigerator",
            Keep::Freezer => "in the freezer",
            Keep::CoolDark => "cool and dark",
            Keep::Shelf => "on a shelf",
        }
    }
}

/// How it is taken.
#[derive(Clone, Debug)]
pub struct Take {
    /// One dose; of a range the working takes the larger.
    pub amount: Spanned<Amount>,
    /// How many a day.
    pub daily: Spanned<f64>,
    /// How many people share it.
    pub people: Spanned<f64>,
}

/// The author's own figure for an assumption.
#[derive(Clone, Debug)]
pub struct Assume {
    /// Which.
    pub what: &'static crate::materia::Assumption,
    /// One value, or a range, in base units.
    pub amount: Spanned<Amount>,
}

/// The recipe with stated changes.
#[derive(Clone, Debug)]
pub struct Variation {
    /// Its name.
    pub name: Spanned<String>,
    /// The changes, key by key, as written.
    pub changes: Vec<(Spanned<String>, Node)>,
    /// The recipe as it then stands.
    pub recipe: Box<Recipe>,
}
