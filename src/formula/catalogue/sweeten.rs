//! Sweeteners: how much, what they weigh, what they take up, what is dissolved in the end.

use super::formulas;
use crate::bibliography::{Source, Work};
use crate::formula::expr::{look, number, sum};
use crate::materia::HONEY_GRAVITY;

formulas! {
    /// A sweetener as a share of the finished, by volume.
    OfFinishedVolume "of-finished-volume" { liquid: one "Y" ML, share: one "s" ONE }
        gives "sweetener" "H" ML = liquid * share / (number(1.0) - share);
        Source::reckoned("if the sweetener is the share s of the finished, the liquid is the share 1 − s"); "volumes that add";
    /// A sweetener as a share of the finished, by weight.
    OfFinishedWeight "of-finished-weight" { liquid: one "Y" G, share: one "s" ONE }
        gives "sweetener by weight" "H" G = liquid * share / (number(1.0) - share);
        Source::reckoned("if the sweetener is the share s of the finished, the liquid is the share 1 − s"); "always";
    /// Density of honey by its water.
    HoneyDensity "honey-density" { moisture: one "u" PER_CENT, water: one "d" G_PER_ML }
        gives "density of honey" "D" G_PER_ML = look(&HONEY_GRAVITY, moisture) * water;
        Source::from_memory(Work::HoneyDensity, "specific gravity by moisture"); "honey of 13 to 21 % water at 20 °C";
    /// What a dissolved solid takes up.
    TakesUp "takes-up" { weight: one "S" G, each_gram: one "c" ML_PER_G }
        gives "volume once dissolved" "V" ML = weight * each_gram;
        Source::published(Work::Usp32, "Syrup: 850 g of sucrose make 1,000 mL"); "syrups of 60 to 70 % sugar within 0.2 %; thinner ones within 0.3 %";
    /// What is not water.
    DrySolids "dry-solids" { weight: one "M" G, water: one "u" PER_CENT }
        gives "dissolved solids" "S" G = weight * (number(1.0) - water);
        Source::reckoned("what is not water"); "always";
    /// Dissolved solids as a share of everything.
    Solids "solids" { solids: many "S" G, everything: one "M" G }
        gives "dissolved solids, by weight" "B" PER_CENT_WW = sum(solids) / everything;
        Source::published(Work::PreservingSyrups, "strength of a syrup as per cent by weight"); "what the plants give to the liquid (1 to 3 %) is left out";
    /// Water as a share of everything.
    Moisture "moisture" { water: one "w" G, everything: one "M" G }
        gives "moisture" "u" PER_CENT_WW = water / everything;
        Source::reckoned("per cent by weight"); "always";
    /// A component by its share of a weight.
    Component "component" { weight: one "M" G, share: one "p" PER_CENT }
        gives "component" "m" G = weight * share;
        Source::reckoned("plain proportion"); "always";
}
