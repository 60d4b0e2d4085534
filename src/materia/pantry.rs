//! What is not a plant: what it is made of by weight, how it is measured, and where each figure comes from.

use super::{
    BEESWAX_DENSITY, Figure, GLYCERIN_DENSITY, GLYCERIN_ENERGY, HONEY_ENERGY, HONEY_SUGARS, MAPLE_DENSITY,
    MAPLE_ENERGY, MAPLE_SUGARS, MAPLE_WATER, OIL_DENSITY, SUGAR_BULK, SUGAR_ENERGY, SUGAR_SUGARS,
    VINEGAR_DENSITY,
};
use crate::bibliography::Source;
use crate::measure::Unit;

/// What kind of thing: how it takes its place in a liquid.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Kind {
    /// A liquid whose density follows its water; never under twelve months.
    Honey,
    /// A liquid of sugars and water.
    Syrup,
    /// Dissolves: measured dry, it takes up less once dissolved.
    Sugar,
    /// A liquid that preserves and holds no sugars.
    Glycerin,
    /// Alcohol and water.
    Spirit,
    /// Acetic acid and water.
    Vinegar,
    /// Fat that stays liquid.
    Oil,
    /// Sets oil.
    Wax,
    /// Binds a dough.
    Gum,
    /// Salt.
    Salt,
    /// The juice of a fruit.
    Juice,
}

impl Kind {
    /// As a page writes it.
    pub const NAMES: &'static [(&'static str, Kind)] = &[
        ("honey", Kind::Honey),
        ("syrup", Kind::Syrup),
        ("sugar", Kind::Sugar),
        ("glycerin", Kind::Glycerin),
        ("spirit", Kind::Spirit),
        ("vinegar", Kind::Vinegar),
        ("oil", Kind::Oil),
        ("wax", Kind::Wax),
        ("gum", Kind::Gum),
        ("salt", Kind::Salt),
        ("juice", Kind::Juice),
    ];

    /// Its word.
    pub fn word(self) -> &'static str {
        Kind::NAMES.iter().find(|(_, kind)| *kind == self).map_or("", |(word, _)| *word)
    }

    /// Whether it may be stirred in to sweeten.
    pub const fn sweetens(self) -> bool {
        matches!(self, Kind::Honey | Kind::Syrup | Kind::Sugar | Kind::Glycerin)
    }

    /// Whether what it sweetens with is sugars.
    pub const fn has_sugars(self) -> bool {
        matches!(self, Kind::Honey | Kind::Syrup | Kind::Sugar)
    }
}

/// A figure of a pantry item.
#[derive(Clone, Debug)]
pub enum Fact {
    /// Built in.
    Built(&'static Figure),
    /// The formulary's own, from the item's page.
    Own {
        /// Anchor of the item's page.
        id: String,
        /// What it is: "density of date syrup".
        words: String,
        /// In this unit.
        value: f64,
        /// The unit.
        unit: &'static Unit,
        /// Where the page has it from.
        source: Source,
    },
}

impl Fact {
    /// Its value, in its unit.
    pub const fn value(&self) -> f64 {
        match self {
            Fact::Built(figure) => figure.value,
            Fact::Own { value, .. } => *value,
        }
    }

    /// Its unit.
    pub const fn unit(&self) -> &'static Unit {
        match self {
            Fact::Built(figure) => figure.unit,
            Fact::Own { unit, .. } => unit,
        }
    }

    /// Where it comes from.
    pub const fn source(&self) -> &Source {
        match self {
            Fact::Built(figure) => &figure.source,
            Fact::Own { source, .. } => source,
        }
    }

    /// Whether it is the formulary's own.
    pub const fn is_own(&self) -> bool {
        matches!(self, Fact::Own { .. })
    }
}

/// A pantry item.
#[derive(Clone, Debug)]
pub struct Item {
    /// Its name in addresses.
    pub id: String,
    /// As written in a recipe, and in running text.
    pub words: String,
    /// What kind of thing.
    pub kind: Kind,
    /// What it is measured by, g/mL; none for honey and spirit, whose density follows what is in them.
    pub density: Option<Fact>,
    /// Water in it, by weight; none where there is none to speak of, or the working says how much.
    pub water: Option<Fact>,
    /// Sugars in it, by weight.
    pub sugars: Option<Fact>,
    /// Energy in it, kcal/g.
    pub energy: Option<Fact>,
    /// Alcohol by volume, or acid by weight in volume, of what has a strength.
    pub strength: Option<Fact>,
}

/// Rows of `"name" Kind { density: FIGURE, ... }`.
macro_rules! items {
    ($($words:literal $kind:ident { $($field:ident: $figure:ident),* })*) => {
        /// Everything Stillroom knows of itself.
        pub fn built_in() -> Vec<Item> {
            vec![$(Item { $($field: Some(Fact::Built(&$figure)),)* ..Item::bare($words, Kind::$kind) },)*]
        }
    };
}

impl Item {
    /// An item of that name without any figure.
    pub fn bare(words: &str, kind: Kind) -> Item {
        Item {
            id: words.replace(' ', "-"),
            words: words.to_string(),
            kind,
            density: None,
            water: None,
            sugars: None,
            energy: None,
            strength: None,
        }
    }

    /// Whether it is honey.
    pub fn is_honey(&self) -> bool {
        self.kind == Kind::Honey
    }
}

items! {
    "honey" Honey { sugars: HONEY_SUGARS, energy: HONEY_ENERGY }
    "sugar" Sugar { density: SUGAR_BULK, sugars: SUGAR_SUGARS, energy: SUGAR_ENERGY }
    "maple syrup" Syrup { density: MAPLE_DENSITY, water: MAPLE_WATER, sugars: MAPLE_SUGARS, energy: MAPLE_ENERGY }
    "glycerin" Glycerin { density: GLYCERIN_DENSITY, energy: GLYCERIN_ENERGY }
    "spirit" Spirit {}
    "vinegar" Vinegar { density: VINEGAR_DENSITY }
    "oil" Oil { density: OIL_DENSITY }
    "beeswax" Wax { density: BEESWAX_DENSITY }
    "gum arabic" Gum {}
    "tragacanth" Gum {}
}
