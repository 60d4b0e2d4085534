//! Ids of the lines that outside tools rely on: a closed list. Every other line has only its name.

macro_rules! ids {
    ($($name:ident $text:literal $first:literal $rounds:ident $meaning:literal;)*) => {
        /// A line others rely on.
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
        pub enum Id { $(#[doc = $meaning] $name,)* }

        impl Id {
            /// Every id, in the order a working shows them.
            pub const ALL: &'static [Id] = &[$(Id::$name,)*];

            /// The id as tools write it.
            pub const fn text(self) -> &'static str {
                match self { $(Id::$name => $text,)* }
            }

            /// Whether it stands in the short sum (times and counts stand in "at a glance").
            pub const fn first(self) -> bool {
                match self { $(Id::$name => $first,)* }
            }

            /// Which way people round it.
            pub const fn rounds(self) -> Rounds {
                match self { $(Id::$name => Rounds::$rounds,)* }
            }

            /// What it is.
            pub const fn meaning(self) -> &'static str {
                match self { $(Id::$name => $meaning,)* }
            }
        }
    };
}

/// Which way a kitchen rounds a figure.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Rounds {
    /// To the nearest.
    Near,
    /// Up: what preserves, what is bought.
    Up,
    /// Down: doses, servings, bottles filled.
    Down,
}

ids! {
    Plants "plants" true Near "plant put in, g";
    Water "water" true Near "water put in, mL";
    Liquid "liquid" true Near "any other menstruum, mL";
    Spirit "spirit" true Up "spirit as poured, mL";
    StrongSpirit "strong-spirit" true Up "stronger spirit that a spirit is mixed from, mL";
    WaterToAdd "water-to-add" true Near "water that it is mixed with, by weight, as mL";
    Wax "wax" true Near "wax, g";
    BoiledOff "boiled-off" true Near "lost to boiling before straining, every simmer together, mL";
    HeldBack "held-back" true Near "kept by the marc, mL";
    Strained "strained" true Near "what runs through the cloth, mL";
    ReducedBy "reduced-by" true Near "boiled away after straining, mL";
    Reduced "reduced" true Near "what is left of it, mL";
    Sweetener "sweetener" true Up "what sweetens, as a kitchen measures it, mL";
    SweetenerWeight "sweetener-weight" true Up "what sweetens, g";
    Finished "finished" true Near "the finished preparation, mL";
    FinishedWeight "finished-weight" true Near "the finished preparation, g";
    Solids "solids" true Near "dissolved solids, % w/w";
    WaterActivity "water-activity" true Near "water activity, 1";
    Abv "abv" true Near "alcohol, % v/v";
    Acidity "acidity" true Near "acetic acid, % w/v";
    Glycerin "glycerin" true Near "glycerin, % v/v";
    WaterInOil "water-in-oil" true Near "water that plants bring into oil, mL";
    Moisture "moisture" true Near "water, % w/w";
    FreeWater "free-water" true Near "water that nothing dissolved preserves, mL";
    Covered "covered" false Near "alcohol in the free water, %";
    SugarInWater "sugar-in-water" false Near "sucrose against sucrose and water, % w/w";
    GlycerolInWater "glycerol-in-water" false Near "glycerol against glycerol and water, % w/w";
    Strength "strength" true Near "plant that passed into the liquid, % w/v of the finished";
    Doses "doses" true Down "doses, 1";
    Days "days" false Down "days they last, 1";
    Bottles "bottles" false Down "bottles filled, 1";
    Pieces "pieces" true Down "pieces, 1";
    PlantPerDose "plant-per-dose" true Near "plant in a dose, only the share that left the marc, g";
    SugarPerDose "sugar-per-dose" true Near "sugars in a dose, g";
    AlcoholPerDose "alcohol-per-dose" true Near "pure alcohol in a dose, g";
    EnergyPerDose "energy-per-dose" true Near "energy in a dose, kcal";
    BathWater "bath-water" true Near "bath water in all, mL";
    Temperature "temperature" true Near "temperature of the mixture, °C";
    Room "room" true Near "room that plants laid on take up, mL";
    Area "area" true Near "skin covered, cm²";
    Stage "stage" true Near "temperature of the sugar at its stage in this kitchen, °C";
    Boiling "boiling" false Near "temperature at which water boils in this kitchen, °C";
    Minutes "minutes" false Up "all steps from start to bottle, min";
    StoveMinutes "stove-minutes" false Up "those over heat, min";
}
