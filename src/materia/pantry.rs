//! What is not a plant: its composition by mass and how it is measured.

use super::{
    Assumption, Figure, GLYCERIN_DENSITY, GLYCERIN_ENERGY, HONEY_ENERGY, HONEY_MOISTURE, HONEY_SUGARS,
    MAPLE_DENSITY, MAPLE_ENERGY, MAPLE_SUGARS, MAPLE_WATER, SUGAR_BULK, SUGAR_ENERGY, SUGAR_SUGARS,
};

/// How a pantry item takes its place in a liquid.
#[derive(Debug)]
pub enum State {
    /// A liquid: its volume adds, weighed by this density.
    Liquid(&'static Figure),
    /// Honey: a liquid whose density follows its water.
    Honey,
    /// Dissolves; measured dry by its bulk density, takes up less once dissolved.
    Dissolves(&'static Figure),
}

/// Water in a pantry item.
#[derive(Debug)]
pub enum Moisture {
    /// None to speak of.
    None,
    /// As published.
    Figure(&'static Figure),
    /// Differs from jar to jar.
    Assumed(&'static Assumption),
}

/// A pantry item that sweetens.
#[derive(Debug)]
pub struct Sweetener {
    /// As written in a recipe.
    pub id: &'static str,
    /// Its name in running text.
    pub words: &'static str,
    /// How it takes its place.
    pub state: State,
    /// Water in it, by weight; the rest is dissolved solids.
    pub moisture: Moisture,
    /// Sugars in it, by weight; none for glycerin.
    pub sugars: Option<&'static Figure>,
    /// Energy in it.
    pub energy: &'static Figure,
    /// Never for a child under twelve months.
    pub honey: bool,
}

/// Every sweetener Stillroom knows of itself.
pub static SWEETENERS: &[Sweetener] = &[
    Sweetener {
        id: "honey",
        words: "honey",
        state: State::Honey,
        moisture: Moisture::Assumed(&HONEY_MOISTURE),
        sugars: Some(&HONEY_SUGARS),
        energy: &HONEY_ENERGY,
        honey: true,
    },
    Sweetener {
        id: "sugar",
        words: "sugar",
        state: State::Dissolves(&SUGAR_BULK),
        moisture: Moisture::None,
        sugars: Some(&SUGAR_SUGARS),
        energy: &SUGAR_ENERGY,
        honey: false,
    },
    Sweetener {
        id: "maple syrup",
        words: "maple syrup",
        state: State::Liquid(&MAPLE_DENSITY),
        moisture: Moisture::Figure(&MAPLE_WATER),
        sugars: Some(&MAPLE_SUGARS),
        energy: &MAPLE_ENERGY,
        honey: false,
    },
    Sweetener {
        id: "glycerin",
        words: "glycerin",
        state: State::Liquid(&GLYCERIN_DENSITY),
        moisture: Moisture::None,
        sugars: None,
        energy: &GLYCERIN_ENERGY,
        honey: false,
    },
];

/// The sweetener of that name.
pub fn sweetener(id: &str) -> Option<&'static Sweetener> {
    SWEETENERS.iter().find(|sweetener| sweetener.id == id)
}
