//! What a spoonful holds, how many there are, and how long they last.

use super::formulas;
use crate::bibliography::Source;
use crate::formula::expr::sum;

const PROPORTION: Source = Source::reckoned("plain proportion");

formulas! {
    /// How many doses.
    Doses "doses" { finished: one "F" ML, dose: one "d" ML }
        gives "doses" "N" ONE = finished / dose;
        PROPORTION; "as many as are poured out level";
    /// How many doses of a dry blend.
    DosesByWeight "doses-by-weight" { finished: one "F" G, dose: one "d" G }
        gives "doses" "N" ONE = finished / dose;
        PROPORTION; "well mixed";
    /// How many doses of what is cut.
    DosesByPiece "doses-by-piece" { pieces: one "n" ONE, dose: one "d" ONE }
        gives "doses" "N" ONE = pieces / dose;
        PROPORTION; "pieces of one weight";
    /// A dose against the whole, by weight.
    ShareOfWhole "share-of-whole" { dose: one "d" G, finished: one "F" G }
        gives "a dose of the whole" "q" ONE = dose / finished;
        PROPORTION; "well mixed";
    /// A dose against the whole, by pieces.
    ShareOfPieces "share-of-pieces" { dose: one "d" ONE, pieces: one "n" ONE }
        gives "a dose of the whole" "q" ONE = dose / pieces;
        PROPORTION; "pieces of one weight";
    /// A share of an energy.
    ShareOfEnergy "share-of-energy" { share: one "q" ONE, energy: one "E" KCAL }
        gives "energy in a dose" "e" KCAL = share * energy;
        PROPORTION; "what the plants give is left out";
    /// How many days they last.
    Days "days" { doses: one "N" ONE, daily: one "k" ONE, people: one "p" ONE }
        gives "days" "D" ONE = doses / (daily * people);
        PROPORTION; "nobody misses a dose";
    /// How many bottles.
    Bottles "bottles" { finished: one "F" ML, bottle: one "b" ML }
        gives "bottles" "n" ONE = finished / bottle;
        PROPORTION; "bottles filled to their measure";
    /// Plant whose strength left the marc.
    PassedOn "passed-on" { plants: one "m" G, share: one "q" ONE }
        gives "plant in the liquid" "P" G = plants * share;
        Source::reckoned("the liquid left in the marc is full strength, so its share is not in the bottle"); "what is not volatile";
    /// Plant in a dose.
    PlantPerDose "plant-per-dose" { plant: one "P" G, dose: one "d" ML, finished: one "F" ML }
        gives "plant in a dose" "p" G = plant * dose / finished;
        PROPORTION; "a well stirred bottle";
    /// Sugars, or energy's weight, in a dose.
    WeightPerDose "weight-per-dose" { weight: one "S" G, dose: one "d" ML, finished: one "F" ML }
        gives "in a dose" "s" G = weight * dose / finished;
        PROPORTION; "a well stirred bottle";
    /// What the doses of a day come to.
    PlantPerDay "plant-per-day" { dose: one "p" G, daily: one "k" ONE }
        gives "plant a day" "P" G = dose * daily;
        PROPORTION; "the larger dose each time";
    /// What a plant holds of a constituent.
    Contained "contained" { plant: one "P" G, content: one "k" MG_PER_G }
        gives "of a constituent" "c" MG = plant * content;
        PROPORTION; "as if all of it passed into the liquid; the content differs from lot to lot";
    /// A day's amount against its ceiling.
    ShareOfCeiling "share-of-ceiling" { taken: one "c" MG, most: one "C" MG }
        gives "against the ceiling" "q" PER_CENT = taken / most;
        PROPORTION; "one day";
    /// A day's amounts of the same, from several recipes.
    TakenTogether "taken-together" { each: many "c" MG }
        gives "on one day, together" "T" MG = sum(each);
        Source::reckoned("plain addition"); "every recipe taken as often as it says";
    /// Energy of a weight.
    EnergyOf "energy-of" { weight: one "M" G, each_gram: one "e" KCAL_PER_G }
        gives "energy" "E" KCAL = weight * each_gram;
        PROPORTION; "always";
    /// Energies added.
    AddEnergy "add-energy" { each: many "e" KCAL }
        gives "energy in all" "E" KCAL = sum(each);
        Source::reckoned("plain addition"); "always";
    /// Energy in a dose.
    EnergyPerDose "energy-per-dose" { energy: one "E" KCAL, dose: one "d" ML, finished: one "F" ML }
        gives "energy in a dose" "e" KCAL = energy * dose / finished;
        PROPORTION; "a well stirred bottle; what the plants give is left out";
    /// Strength of the finished, weight in volume.
    Strength "strength" { plant: one "P" G, finished: one "F" ML }
        gives "plant in the finished" "c" PER_CENT_WV = plant / finished;
        Source::reckoned("per cent weight in volume: grams in 100 mL"); "what is not volatile";
}
