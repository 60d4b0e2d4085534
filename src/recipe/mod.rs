//! A recipe as declared: what the block says, each value with its place. Nothing is worked here.

mod change;
mod preparation;
mod read;
mod read_step;
mod steps;
mod stir;
mod usual;

pub use preparation::{Need, PREPARATIONS, Preparation, Shape, Use, Vessel};
pub use read::read;
pub use steps::{Diluted, Hand, Kneaded, Lid, Much, Start, Step};

use crate::materia::{Item, Kind};
use crate::measure::{Amount, LiquidRatio, PlantAmount, Wanted};
use crate::span::{Span, Spanned};
use crate::yaml::Node;
use std::sync::Arc;

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
    /// From which age it is taken, months, where that is said.
    pub from_age: Option<Spanned<u16>>,
    /// Cautions the author goes on under, by name, each with the reason.
    pub acknowledge: Vec<(Spanned<String>, Spanned<String>)>,
    /// pH of the finished preparation, measured.
    pub ph: Option<Spanned<f64>>,
    /// The author's own figures for assumptions.
    pub assume: Vec<Assume>,
    /// Results for which the amounts are shown.
    pub wanted: Vec<Spanned<Wanted>>,
    /// Lines to be brought to a target by moving a declared number.
    pub aims: Vec<Aim>,
    /// Where the usual exercises are asked for.
    pub exercises: Option<Span>,
    /// The recipe with stated changes, as declared.
    pub variations: Vec<Variation>,
    /// Place of the whole block's text in the file.
    pub span: Span,
}

impl Recipe {
    /// What extracts, as its own page or the recipe calls it: "olive oil".
    pub fn extracts(&self) -> &str {
        let liquid = self.liquid.as_ref().map(|liquid| &liquid.value);
        let item = liquid.and_then(|liquid| liquid.item.as_ref());
        item.map_or_else(|| liquid.map_or("liquid", |liquid| liquid.kind.words()), |item| &item.words)
    }

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

/// A line to be brought to a target.
#[derive(Clone, PartialEq, Debug)]
pub struct Aim {
    /// Its id, or its name.
    pub line: Spanned<String>,
    /// The target, as written.
    pub to: Spanned<String>,
    /// The declared number that is moved, by its name or how that begins.
    pub by: Spanned<String>,
}

/// What extracts: the menstruum, and how much of it.
#[derive(Clone, Debug)]
pub struct Liquid {
    /// What kind of liquid it is.
    pub kind: Menstruum,
    /// Which of the pantry; none for water.
    pub item: Option<Arc<Item>>,
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

    /// What a pantry item of that kind extracts as; none where it does not.
    pub const fn of(kind: Kind) -> Option<Menstruum> {
        match kind {
            Kind::Vinegar => Some(Menstruum::Vinegar),
            Kind::Spirit => Some(Menstruum::Spirit),
            Kind::Glycerin => Some(Menstruum::Glycerin),
            Kind::Honey => Some(Menstruum::Honey),
            Kind::Oil => Some(Menstruum::Oil),
            Kind::Syrup | Kind::Sugar | Kind::Wax | Kind::Gum | Kind::Salt | Kind::Juice => None,
        }
    }

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
    /// One of the trade's usual ones, asked for by that word: one that cannot be worked is left out.
    pub usual: bool,
}

impl Variation {
    /// Whether a place stands in what the variation changes.
    pub fn changed(&self, at: Span) -> bool {
        let holds = |outer: Span| outer.start <= at.start && at.end <= outer.end;
        self.changes.iter().any(|(key, node)| holds(key.span) || holds(node.span))
    }
}
