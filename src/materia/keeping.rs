//! Limits of keeping: what a class begins at.

use crate::bibliography::{Source, Work};
use crate::measure::unit::{CELSIUS, ML, ONE, PER_CENT_VV, PER_CENT_WW};

const BAND: Source = Source::practice("bands of a teaching guideline");

figures! {
    ACTIVITY_LIMIT "activity-limit" "water activity below which bacteria of food poisoning do not grow" = 0.85 ONE;
        Source::published(Work::Cfr114, "a food of water activity 0.85 or less is no low-acid food");
    SELF_PRESERVING "self-preserving" "sugar that keeps a neutral syrup" = 0.65 PER_CENT_WW;
        Source::published(Work::PreservingSyrups, "least sucrose, 65 % by weight");
    CLASS_B_SOLIDS "class-b" "solids of class B" = 0.6 PER_CENT_WW; BAND;
    CLASS_C_SOLIDS "class-c" "solids of class C" = 0.45 PER_CENT_WW; BAND;
    GLYCERIN_KEEPS "glycerin-keeps" "glycerin of class E" = 0.55 PER_CENT_VV; BAND;
    TINCTURE_KEEPS "tincture-keeps" "alcohol of class J" = 0.25 PER_CENT_VV; BAND;
    HONEY_KEEPS "honey-keeps" "most water of honey that keeps" = 0.186 PER_CENT_WW;
        Source::published(Work::HoneyGrades, "US Grade A: not more than 18.6 % moisture");
    NO_WATER "no-water" "no water at all" = 0.0 ML; Source::reckoned("nothing");
    TRACE "trace" "water that no spoon shows" = 0.001 ML; Source::reckoned("a thousandth of a millilitre");
    HONEY_FERMENTS "honey-ferments" "water above which honey ferments" = 0.19 PER_CENT_WW;
        Source::from_memory(Work::BeekeepingHandbook, "above 19 % expect it whatever the yeast count");
    ACID_ENOUGH "acid-enough" "pH at or below which 15 % of alcohol preserves" = 5.0 ONE;
        Source::published(Work::PreservingSyrups, "15 % near pH 5, 18 % where neutral");
    ROOM "room" "a room" = 20.0 CELSIUS; Source::reckoned("the temperature of the tables");
    REFRIGERATOR "refrigerator" "a refrigerator" = 5.0 CELSIUS; Source::practice("41 °F, as food codes ask");
}
