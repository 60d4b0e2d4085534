//! What goes into the pan, what leaves it, and how long that takes.

use super::formulas;
use crate::bibliography::{Source, Work};
use crate::formula::expr::{figure, number, sum};
use crate::materia::CUBIC;

const BALANCE: Source = Source::reckoned("a balance: what is taken away is missing");
const SUM: Source = Source::reckoned("plain addition");
const PROPORTION: Source = Source::reckoned("plain proportion");
const DENSITY: Source = Source::reckoned("the definition of density");

formulas! {
    /// Weights added.
    AddWeights "add-weights" { each: many "m" G }
        gives "weight in all" "M" G = sum(each);
        SUM; "always";
    /// Volumes added.
    AddVolumes "add-volumes" { each: many "v" ML }
        gives "volume in all" "V" ML = sum(each);
        Source::memory("honey, syrups and watery liquids add to within about 1 %"); "watery liquids, honey and syrups; spirits shrink by 1 to 4 %";
    /// Times added.
    AddTimes "add-times" { each: many "t" MIN }
        gives "time in all" "T" MIN = sum(each);
        SUM; "steps that follow one another";
    /// One plant's part of a weight.
    PartOf "part-of" { whole: one "M" G, part: one "p" ONE, parts: many "q" ONE }
        gives "weight of a part" "m" G = whole * part / sum(parts);
        PROPORTION; "parts by weight";
    /// Liquid by a ratio of weight in volume: grams of plant to millilitres of liquid.
    ForEachGram "for-each-gram" { each_gram_takes: one "n" ML_PER_G, plants: one "m" G }
        gives "liquid" "W" ML = each_gram_takes * plants;
        Source::reckoned("the ratio 1:n, weight in volume"); "a ratio in grams and millilitres";
    /// Liquid by a ratio of weights.
    ForEachGramByWeight "for-each-gram-by-weight" { each_gram_takes: one "n" ONE, plants: one "m" G }
        gives "liquid by weight" "M" G = each_gram_takes * plants;
        Source::reckoned("the ratio 1:n, weight in weight"); "a ratio of weights";
    /// What boils away.
    BoilOff "boil-off" { rate: one "e" ML_PER_MIN, time: one "t" MIN }
        gives "boiled off" "B" ML = rate * time;
        Source::published(Work::DecoctingMachine, "water to add counts the evaporation by the minute");
        "a steady simmer in one pot; it does not grow with the batch";
    /// How long it takes to boil so much away.
    TimeToLose "time-to-lose" { away: one "B" ML, rate: one "e" ML_PER_MIN }
        gives "minutes at a simmer" "t" MIN = away / rate;
        Source::published(Work::DecoctingMachine, "the same sum turned round"); "a steady open simmer in one pot";
    /// What one plant keeps back.
    Hold "hold" { each_gram_keeps: one "a" ML_PER_G, plant: one "m" G }
        gives "kept by a plant" "h" ML = each_gram_keeps * plant;
        Source::published(Work::DecoctingMachine, "water to add counts the absorption by weight, 1.5 to 2.0 mL a gram");
        "dried plants, soaked through";
    /// What the marc keeps back, by how it is strained.
    HoldBack "hold-back" { how_wet: one "k" ONE, kept: many "h" ML }
        gives "held back" "H" ML = how_wet * sum(kept);
        Source::published(Work::FreshPlantTincture, "yield by hand and by press"); "one way of straining for the whole pan";
    /// What is left after losses.
    Lose "lose" { before: one "V" ML, losses: many "L" ML }
        gives "what is left" "Y" ML = before - sum(losses);
        BALANCE; "what goes off is water";
    /// Weight left after losses.
    LoseWeight "lose-weight" { before: one "M" G, losses: many "L" G }
        gives "weight left" "m" G = before - sum(losses);
        BALANCE; "what goes off is water";
    /// What has to go.
    Away "away" { before: one "V" ML, after: one "Y" ML }
        gives "to boil away" "B" ML = before - after;
        BALANCE; "what goes off is water";
    /// A share of a volume.
    ShareOfVolume "share-of-volume" { share: one "r" ONE, whole: one "V" ML }
        gives "share of a volume" "v" ML = share * whole;
        PROPORTION; "always";
    /// A share of a weight.
    ShareOfWeight "share-of-weight" { share: one "r" ONE, whole: one "M" G }
        gives "share of a weight" "m" G = share * whole;
        PROPORTION; "always";
    /// What share of a volume passed on.
    Passed "passed" { after: one "Y" ML, before: one "V" ML }
        gives "share passed on" "q" ONE = after / before;
        PROPORTION; "the liquid is the same throughout, so its share is the share of what it holds";
    /// Weighing a liquid by its density.
    Weigh "weigh" { volume: one "V" ML, density: one "d" G_PER_ML }
        gives "weight" "M" G = volume * density;
        DENSITY; "at 20 °C";
    /// Measuring a weight by its density.
    MeasureOut "measure-out" { weight: one "M" G, density: one "d" G_PER_ML }
        gives "volume" "V" ML = weight / density;
        DENSITY; "at 20 °C";
    /// Sugar boiled down to a stage: its weight with the water that stays in it.
    BoiledDown "boiled-down" { solids: many "S" G, water: one "u" PER_CENT_WW }
        gives "weight at that stage" "M" G = sum(solids) / (number(1.0) - water);
        BALANCE; "what boils away is water";
    /// How many pieces a weight makes.
    Pieces "pieces" { finished: one "M" G, piece: one "p" G }
        gives "pieces" "n" ONE = finished / piece;
        PROPORTION; "pieces of one weight";
    /// Skin that a poultice covers.
    Covers "covers" { volume: one "V" ML, thickness: one "t" MM }
        gives "covers" "A" CM2 = volume * figure(&CUBIC) / thickness;
        Source::reckoned("a volume is an area times a thickness"); "laid on evenly";
    /// Water that a plant brings of its own.
    PlantWater "plant-water" { plant: one "m" G, moisture: one "u" PER_CENT }
        gives "water in the plant" "w" G = plant * moisture;
        Source::reckoned("the definition of moisture"); "fresh plants; a dried plant's own few per cent are left out in watery liquids";
    /// What a fresh plant would weigh dried: the same dry matter with less water.
    AsDried "as-dried" { fresh: one "m" G, fresh_moisture: one "u" PER_CENT, dried_moisture: one "w" PER_CENT }
        gives "as dried" "k" G = fresh * (number(1.0) - fresh_moisture) / (number(1.0) - dried_moisture);
        Source::reckoned("the same dry matter, fresh and dried"); "always";
    /// Weight of a plant measured by the cup.
    WeighByCup "weigh-by-cup" { volume: one "V" ML, bulk: one "b" G_PER_ML }
        gives "weight" "m" G = volume * bulk;
        Source::reckoned("the weight of a cupful, from the plant's page"); "cut as the plant's page says; cups of loose herb differ by 40 %";
    /// Weight of a plant counted by the piece.
    WeighByPiece "weigh-by-piece" { count: one "n" ONE, piece: one "w" G }
        gives "weight" "m" G = count * piece;
        Source::reckoned("the weight of a piece, from the plant's page"); "pieces as large as the page's";
}
