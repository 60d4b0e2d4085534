//! The preparations, a row each: what the word asks of a recipe. How it is made, its steps say.

use super::Menstruum;

/// How a preparation meets the body: what its cautions speak of.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Use {
    /// Eaten or drunk.
    Swallowed,
    /// Held in the mouth and spat out.
    Rinsed,
    /// On whole skin.
    OnSkin,
    /// Its steam, over a bowl.
    Breathed,
}

/// What a recipe of it is made of.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Shape {
    /// A liquid that extracts, or products poured together.
    Poured,
    /// Plants by themselves or with a liquid.
    Either,
    /// Powders kneaded into a dough, no liquid of their own.
    Kneaded,
    /// Dried plants mixed; its one step is known.
    Dry,
}

/// What it is filled into.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Vessel {
    /// Poured out again.
    Bottle,
    /// Spooned out.
    Jar,
    /// Wiped out.
    Tin,
}

impl Vessel {
    /// One, and several.
    pub const fn words(self) -> (&'static str, &'static str) {
        match self {
            Vessel::Bottle => ("bottle", "bottles"),
            Vessel::Jar => ("jar", "jars"),
            Vessel::Tin => ("tin", "tins"),
        }
    }

    /// At the head of a column.
    pub const fn heading(self) -> &'static str {
        match self {
            Vessel::Bottle => "Bottles",
            Vessel::Jar => "Jars",
            Vessel::Tin => "Tins",
        }
    }
}

/// A step without which it is something else.
#[derive(PartialEq, Debug)]
pub struct Need {
    /// The step's name.
    pub step: &'static str,
    /// What is wrong, after the recipe's name.
    pub without: &'static str,
    /// Why.
    pub why: &'static str,
    /// What to write.
    pub write: &'static str,
}

/// A kind of preparation.
#[derive(PartialEq, Debug)]
pub struct Preparation {
    /// As written in a recipe, and in running text.
    pub word: &'static str,
    /// How it meets the body.
    pub used: Use,
    /// What a recipe of it is made of.
    pub shape: Shape,
    /// What it is filled into.
    pub vessel: Vessel,
    /// What may extract in it; a recipe made of products alone has none.
    pub liquids: &'static [Menstruum],
    /// Steps it cannot do without.
    pub needs: &'static [Need],
}

const WAX: Need = Need {
    step: "melt",
    without: "has no wax in it",
    why: "without wax it is an oil: it runs, and no tin holds it",
    write: "- melt: {beeswax: 1/5 of the liquid by weight}",
};
const WHOLE: Need = Need {
    step: "strain: not",
    without: "is strained",
    why: "the powder stays in it: that is what makes it a paste; strained, it is an infused honey",
    write: "- strain: not",
};
const LAID_ON: Need = Need {
    step: "spread",
    without: "is never spread",
    why: "how far it goes depends on how thick it is laid on",
    write: "- spread: 6 mm",
};
const DRIED: Need = Need {
    step: "dry",
    without: "is never dried",
    why: "a moist dough moulds in its tin",
    write: "- dry: 12 h",
};
const CUT: Need = Need {
    step: "cut",
    without: "is never cut",
    why: "without the weight of a piece nobody can say what one holds",
    write: "- cut: 1 g",
};
const BOILED: Need = Need {
    step: "boil to",
    without: "is never boiled to a stage",
    why: "what is boiled less than to the crack stays soft and sticks",
    write: "- boil to: hard crack",
};
const THIN: Need = Need {
    step: "dilute",
    without: "is never poured into its water",
    why: "how strong it is depends on how much water there is",
    write: "- dilute: 150 L",
};

use Menstruum::{Glycerin, Honey, Oil, Spirit, Vinegar, Water};
use Shape::{Dry, Either, Kneaded, Poured};
use Use::{Breathed, OnSkin, Rinsed, Swallowed};
use Vessel::{Bottle, Jar, Tin};

/// Every preparation, rows of `word used shape vessel liquids needs`.
macro_rules! preparations {
    ($($word:literal $used:ident $shape:ident $vessel:ident [$($liquid:ident)*] [$($need:ident)*];)*) => {
        /// Every preparation, in the order in which they are taught.
        pub static PREPARATIONS: &[Preparation] = &[$(Preparation {
            word: $word, used: $used, shape: $shape, vessel: $vessel,
            liquids: &[$($liquid),*], needs: &[$($need),*],
        },)*];
    };
}

preparations! {
    "infusion" Swallowed Poured Bottle [Water] [];
    "cold infusion" Swallowed Poured Bottle [Water] [];
    "decoction" Swallowed Poured Bottle [Water] [];
    "syrup" Swallowed Poured Bottle [Water] [];
    "oxymel" Swallowed Poured Bottle [Vinegar Honey] [];
    "infused honey" Swallowed Poured Jar [Honey] [];
    "electuary" Swallowed Poured Jar [Honey Glycerin] [WHOLE];
    "tincture" Swallowed Poured Bottle [Spirit] [];
    "glycerite" Swallowed Poured Bottle [Glycerin] [];
    "infused vinegar" Swallowed Poured Bottle [Vinegar] [];
    "elixir" Swallowed Poured Bottle [Spirit] [];
    "lozenge" Swallowed Kneaded Tin [] [CUT DRIED];
    "pastille" Swallowed Kneaded Tin [] [CUT DRIED];
    "hard drop" Swallowed Poured Tin [Water] [BOILED CUT];
    "tea blend" Swallowed Dry Jar [] [];
    "gargle" Rinsed Poured Bottle [Water Vinegar] [];
    "infused oil" OnSkin Poured Bottle [Oil] [];
    "salve" OnSkin Poured Tin [Oil] [WAX];
    "lip balm" OnSkin Poured Tin [Oil] [WAX];
    "liniment" OnSkin Poured Bottle [Spirit Vinegar Oil] [];
    "compress" OnSkin Poured Bottle [Water Vinegar] [];
    "poultice" OnSkin Either Jar [Water] [LAID_ON];
    "bath" OnSkin Either Bottle [Water] [THIN];
    "foot soak" OnSkin Either Bottle [Water] [THIN];
    "steam" Breathed Poured Bottle [Water] [];
}

impl Preparation {
    /// Words and rows, as a recipe's reader looks them up.
    pub fn named() -> Vec<(&'static str, &'static Preparation)> {
        PREPARATIONS.iter().map(|row| (row.word, row)).collect()
    }

    /// With its article: "an oxymel".
    pub fn with_article(&self) -> String {
        let an = if self.word.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
        format!("{an} {}", self.word)
    }
}
