//! A plant: its facts, each with its source. Data only; `read` fills it from a page's front matter.

mod read;

pub use read::read_plant;

use crate::bibliography::Source as Cite;
use crate::cited::{Between, Cited, PageCaution, Substitute, Told};
use crate::measure::{Amount, Dimension, Form, kitchen_unit::Measure};
use crate::people::Who;
use crate::recipe::Preparation;
use crate::span::Spanned;

/// How volatile what the plant gives is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Aromatic {
    /// Not: it may be boiled and reduced.
    No,
    /// A little: brief heat.
    Lightly,
    /// Volatile: kept covered, never boiled long or reduced.
    Yes,
}

/// What it is sold as.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Sold {
    /// As it grew.
    Whole,
    /// Cut and sifted.
    Cut,
    /// As powder.
    Powder,
    /// Fresh.
    Fresh,
}

impl Sold {
    /// As written on a page, and in running text.
    pub const NAMES: &'static [(&'static str, Sold)] =
        &[("whole", Sold::Whole), ("cut", Sold::Cut), ("powder", Sold::Powder), ("fresh", Sold::Fresh)];

    /// Its word.
    pub fn word(self) -> &'static str {
        Sold::NAMES.iter().find(|(_, sold)| *sold == self).map_or("", |(word, _)| *word)
    }
}

/// A season.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Season {
    /// From March.
    Spring,
    /// From June.
    Summer,
    /// From September.
    Autumn,
    /// From December.
    Winter,
}

impl Season {
    /// As written on a page, and in running text.
    pub const NAMES: &'static [(&'static str, Season)] = &[
        ("spring", Season::Spring),
        ("summer", Season::Summer),
        ("autumn", Season::Autumn),
        ("winter", Season::Winter),
    ];

    /// Its word.
    pub fn word(self) -> &'static str {
        Season::NAMES.iter().find(|(_, season)| *season == self).map_or("", |(word, _)| *word)
    }
}

/// A plant measured by a household measure.
#[derive(Clone, PartialEq, Debug)]
pub struct Weight {
    /// The measure it fills.
    pub measure: Measure,
    /// What that weighs, g.
    pub weighs: Cited,
}

/// A plant in one form.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct PlantForm {
    /// Watery liquid a gram keeps when squeezed by hand, mL.
    pub holds: Option<Cited>,
    /// Oil a gram keeps likewise, mL.
    pub holds_oil: Option<Cited>,
    /// Honey a gram keeps likewise, mL.
    pub holds_honey: Option<Cited>,
    /// Weight of a cup, a teaspoon, a stick, a pod.
    pub weights: Vec<Weight>,
    /// Water in it, by weight.
    pub moisture: Option<Cited>,
}

/// What is usually made of it.
#[derive(Clone, PartialEq, Debug)]
pub struct MadeInto {
    /// Preparations, in the page's order.
    pub kinds: Vec<&'static Preparation>,
    /// Where that comes from.
    pub source: Cite,
}

/// What it is not fit for.
#[derive(Clone, PartialEq, Debug)]
pub struct Unfit {
    /// The preparation.
    pub kind: &'static Preparation,
    /// Why.
    pub because: String,
    /// Where that comes from.
    pub source: Cite,
}

/// How much of it an adult usually takes as tea.
#[derive(Clone, PartialEq, Debug)]
pub struct UsualDose {
    /// Each time, g.
    pub amount: Amount,
    /// How often a day, from and to; none where that is not known.
    pub daily: Option<(f64, f64)>,
    /// Where that comes from.
    pub source: Cite,
}

/// The most that is taken of something a day.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Most {
    /// So much, g.
    ADay(f64),
    /// So much for each gram of the body, g.
    ForTheBody(f64),
}

/// A daily ceiling.
#[derive(Clone, PartialEq, Debug)]
pub struct Ceiling {
    /// Of which constituent; none where the plant itself is meant, dried.
    pub of: Option<String>,
    /// The most a day.
    pub most: Most,
    /// What a gram of the dried plant holds of it, g.
    pub holds: Option<Between>,
    /// Weight of a child that the source works it for, g.
    pub child: Option<f64>,
    /// Where it comes from.
    pub source: Cite,
}

/// How badly it ends when a look-alike is taken for it.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Danger {
    /// It kills.
    Deadly,
    /// It harms.
    Toxic,
    /// It does nothing, or nothing bad.
    Harmless,
}

impl Danger {
    /// As written on a page, and in running text.
    pub const NAMES: &'static [(&'static str, Danger)] =
        &[("deadly", Danger::Deadly), ("toxic", Danger::Toxic), ("harmless", Danger::Harmless)];

    /// Its word.
    pub fn word(self) -> &'static str {
        Danger::NAMES.iter().find(|(_, danger)| *danger == self).map_or("", |(word, _)| *word)
    }
}

/// A plant that is mistaken for this one.
#[derive(Clone, PartialEq, Debug)]
pub struct LookAlike {
    /// Its name.
    pub what: String,
    /// How bad that is.
    pub danger: Danger,
    /// How they are told apart.
    pub tell: String,
    /// Where that comes from.
    pub source: Cite,
}

/// A plant.
#[derive(Clone, PartialEq, Debug)]
pub struct Plant {
    /// Its name in recipes and addresses.
    pub id: String,
    /// In running text: "rose hips".
    pub words: String,
    /// Other common names.
    pub also: Vec<String>,
    /// Names it had in addresses before.
    pub formerly: Vec<Spanned<String>>,
    /// Genus and species.
    pub latin: String,
    /// The author of the Latin name.
    pub author: String,
    /// Another Latin name with its author.
    pub synonym: Option<String>,
    /// Family.
    pub family: String,
    /// The part used.
    pub part: String,
    /// Whether that is root, bark or wood alone, which a hot steep hardly touches.
    pub hard: bool,
    /// What it is sold as.
    pub sold: Vec<Sold>,
    /// How volatile.
    pub aromatic: Aromatic,
    /// Sour enough to take metal; where that is said.
    pub sour: Option<Cite>,
    /// Hairs that irritate; where that is said.
    pub hairs: Option<Cite>,
    /// At least so long at the boil, never raw, min.
    pub cook: Option<Cited>,
    /// Dried.
    pub dried: Option<PlantForm>,
    /// Fresh.
    pub fresh: Option<PlantForm>,
    /// When it is gathered; where that is said.
    pub season: Option<(Vec<Season>, Cite)>,
    /// What is usually made of it.
    pub made_into: Option<MadeInto>,
    /// What it is not fit for.
    pub unfit: Vec<Unfit>,
    /// How much is usually taken.
    pub dose: Option<UsualDose>,
    /// The most a day.
    pub ceilings: Vec<Ceiling>,
    /// The longest it is taken without a pause, min.
    pub no_longer: Option<Cited>,
    /// Cautions.
    pub cautions: Vec<PageCaution>,
    /// What is mistaken for it.
    pub look_alikes: Vec<LookAlike>,
    /// What may stand in for it.
    pub substitutes: Vec<Substitute>,
    /// How it stands in the wild.
    pub status: Option<Told>,
}

impl Plant {
    /// The plant in that form, where its file knows it.
    pub const fn form(&self, form: Form) -> Option<&PlantForm> {
        match form {
            Form::Dried => self.dried.as_ref(),
            Form::Fresh => self.fresh.as_ref(),
        }
    }

    /// The genus: the first word of its Latin name.
    pub fn genus(&self) -> &str {
        self.latin.split(' ').next().unwrap_or_default()
    }

    /// Who must not take it, by its own page.
    pub fn not_for(&self) -> impl Iterator<Item = Who> + '_ {
        self.cautions.iter().flat_map(|caution| caution.not_for.iter().copied())
    }
}

impl PlantForm {
    /// Weight of a millilitre when measured loosely, g: by the cup before the spoon.
    pub fn bulk(&self) -> Option<Cited> {
        let loose = self.weights.iter().filter(|weight| weight.measure.dimension() == Dimension::VOLUME);
        let weight = loose.max_by_key(|weight| weight.measure == Measure::Cup)?;
        let holds = weight.measure.factor().to_f64();
        Some(Cited { value: weight.weighs.value / holds, source: weight.weighs.source.clone() })
    }

    /// What a stick, a slice or a pod weighs, g.
    pub fn piece(&self, measure: Measure) -> Option<&Cited> {
        self.weights.iter().find(|weight| weight.measure == measure).map(|weight| &weight.weighs)
    }
}
