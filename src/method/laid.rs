//! What a method leaves behind: lines, and what else the pages need to say about them. Data only.

use crate::batch::Batch;
use crate::formula::Line;
use crate::materia::Item;
use crate::measure::Form;
use crate::recipe::Preparation;
use crate::span::Span;
use crate::working::Working;

/// A recipe laid down: its lines, and what else its pages need to say about them.
#[derive(Clone, Debug, Default)]
pub struct Laid {
    /// The lines.
    pub working: Working,
    /// What kind of preparation; none for a working that is no recipe's.
    pub preparation: Option<&'static Preparation>,
    /// What is put in, in order.
    pub ingredients: Vec<Ingredient>,
    /// The steps, in order.
    pub steps: Vec<Done>,
    /// Equipment, each once.
    pub to_hand: Vec<String>,
    /// Whether honey is in it.
    pub honey: bool,
    /// What is in the pan at the end.
    pub batch: Batch,
    /// What is taken a day of what has a ceiling.
    pub ceilings: Vec<CeilingLine>,
    /// What the order and the heat of the steps call for caution about.
    pub hazards: Vec<Hazard>,
    /// How many doses a day one person takes.
    pub daily: Option<Line>,
    /// Every plant in it, those of combined products too, each once.
    pub plants: Vec<String>,
    /// What of the pantry is in it, each once.
    pub pantry: Vec<String>,
    /// What stands in the pot where a heating begins, mL.
    pub pans: Vec<Line>,
    /// The declared line that says how much sweetener, where there is one: what a target may move.
    pub sweet_given: Option<Line>,
    /// Plants put in at the start, g.
    pub at_first: Option<Line>,
    /// The declared line of what was poured in last.
    pub poured: Option<Line>,
}

/// What is taken a day of something with a daily ceiling.
#[derive(Clone, PartialEq, Debug)]
pub struct CeilingLine {
    /// The plant.
    pub plant: String,
    /// The constituent; none where the plant itself has the ceiling.
    pub of: Option<String>,
    /// Taken a day, g.
    pub taken: Line,
    /// The most a day, g.
    pub most: Line,
    /// The one against the other.
    pub share: Line,
}

/// Something a step does that a caution speaks of.
#[derive(Clone, PartialEq, Debug)]
pub enum Hazard {
    /// An aromatic plant over heat for a time, or in a pot being reduced.
    AromaticBoiled {
        /// The plant.
        plant: String,
        /// How long it is at the boil, min; none in a pot being reduced.
        minutes: Option<Line>,
        /// The step.
        at: Span,
    },
    /// A plant that must be cooked.
    MustCook {
        /// The plant.
        plant: String,
        /// Its times at the boil, min.
        boiled: Vec<Line>,
        /// How long it needs, min.
        needs: f64,
        /// Where it is put in.
        at: Span,
    },
    /// Honey stirred into liquid that was hot.
    HotHoney {
        /// What it was cooled to, °C; none where no step cooled it.
        cooled: Option<Line>,
        /// The step.
        at: Span,
    },
    /// A pan of hot liquid.
    HotLiquid,
    /// Hot liquid into glass.
    HotGlass,
    /// Wax melted over heat.
    HotWax,
    /// Sugar boiled to a stage.
    HotSugar,
    /// Someone sits in warm water.
    Bath,
    /// A bath whose temperature the sums say.
    WarmBath {
        /// How warm, °C.
        temperature: Line,
        /// The step.
        at: Span,
    },
}

/// One thing put in.
#[derive(Clone, Debug)]
pub struct Ingredient {
    /// Its name in running text.
    pub words: String,
    /// The plant, where it is one.
    pub plant: Option<String>,
    /// The pantry item, where it is one.
    pub item: Option<String>,
    /// Fresh or dried.
    pub form: Option<Form>,
    /// Its weight, g.
    pub weight: Option<Line>,
    /// Its volume as a kitchen measures it, mL.
    pub volume: Option<Line>,
    /// How the author wrote it, where an amount was written.
    pub written: Option<String>,
    /// Whether keeping depends on it, so that it is rounded closely and up.
    pub keeps: bool,
    /// Where its own recipe stands, from the site's root, where it is another recipe's product.
    pub href: Option<String>,
}

/// A piece of a step's sentence.
#[derive(Clone, Debug)]
pub enum Say {
    /// Words as they stand.
    Words(String),
    /// A volume, in both systems.
    Volume(Line),
    /// A volume that is measured on the way: about so much, and between what and what it usually falls.
    About(Line),
    /// A weight.
    Weight(Line),
    /// What sweetens: its volume in both systems and its weight.
    Measured(Line, Line),
    /// The size of a bottle, as written and in fluid ounces.
    Size(Line),
    /// A time, as a clock on the wall tells it.
    Time(Line),
    /// An area of skin.
    Area(Line),
    /// A temperature in °C, in both systems.
    Temperature(f64),
    /// A bold sentence.
    Strong(&'static str),
}

/// A step as done.
#[derive(Clone, Debug)]
pub struct Done {
    /// Its name in a recipe.
    pub name: &'static str,
    /// Its sentence.
    pub say: Vec<Say>,
    /// Its times, min, one after the other.
    pub minutes: Vec<Line>,
    /// Which of them over heat.
    pub stove: Vec<Line>,
    /// "lid on", "off the heat".
    pub condition: String,
    /// The pan after it, where that has changed.
    pub level: Option<Level>,
}

impl Done {
    /// Whether its time asks nobody to be there.
    pub fn stands(&self) -> bool {
        ["steep", "cool", "dry", "percolate"].contains(&self.name)
    }
}

/// The pan after a step.
#[derive(Clone, Debug)]
pub struct Level {
    /// What the step is called under the picture.
    pub words: &'static str,
    /// Volume in the pan, mL.
    pub volume: Line,
    /// Watery liquid, mL.
    pub liquid: Vec<Line>,
    /// Sweeteners in it, mL.
    pub sweet: Vec<Line>,
    /// What the marc kept back, mL.
    pub kept: Option<Line>,
    /// What boiled away, mL.
    pub gone: Option<Line>,
    /// What changed.
    pub change: Vec<Say>,
}

impl Ingredient {
    /// A thing of that name, its amount yet to be said.
    pub(super) fn named(words: impl Into<String>) -> Ingredient {
        Ingredient {
            words: words.into(),
            plant: None,
            item: None,
            form: None,
            weight: None,
            volume: None,
            written: None,
            keeps: false,
            href: None,
        }
    }

    /// An item of the pantry, its amount yet to be said.
    pub(super) fn of(item: &Item) -> Ingredient {
        Ingredient { item: Some(item.id.clone()), ..Ingredient::named(item.words.as_str()) }
    }

    /// Whether it is measured by weight and by volume, as sweeteners are.
    pub const fn sweetens(&self) -> bool {
        self.keeps && self.weight.is_some()
    }
}
