//! The pan: water, what boils away, what the marc keeps, and allowances of time.

use crate::bibliography::{Source, Work};
use crate::measure::unit::{
    G_PER_ML, M3_PER_ML, MIN, ML_PER_G, ML_PER_MIN, ONE, PER_CENT, PER_CENT_VV, PER_CENT_WW,
};

const CUSTOM: Source = Source::practice("an allowance a class can keep to; time your own");

figures! {
    WATER_DENSITY "water-density" "density of water at 20 °C" = 0.9982 G_PER_ML;
        Source::published(Work::OimlR22, "0 % at 20 °C: 998.20 kg/m³");
    CUBIC "cubic" "room that a millilitre takes up" = 0.000_001 M3_PER_ML;
        Source::published(Work::Sp811, "Appendix B: the litre is a cubic decimetre");
    BRING_UP "bring-up" "bringing the pan up to the heat" = 10.0 MIN; CUSTOM;
    POUR_ON "pour-on" "boiling the kettle and pouring on" = 5.0 MIN; CUSTOM;
    MIXING "mixing" "weighing and mixing" = 15.0 MIN; CUSTOM;
    STRAINING "straining" "straining and measuring" = 10.0 MIN; CUSTOM;
    STIRRING_IN "stirring-in" "stirring in until it runs clear" = 5.0 MIN; CUSTOM;
    PERCOLATES "percolates" "least alcohol that percolates" = 0.5 PER_CENT_VV;
        Source::practice("below it a packed plant swells shut; old pharmacopoeias percolate with strong spirit");
    MELTING "melting" "melting the wax and pouring" = 20.0 MIN; CUSTOM;
    KNEADING "kneading" "sieving, kneading and rolling out" = 30.0 MIN; CUSTOM;
    CUTTING "cutting" "cutting or dropping the pieces" = 20.0 MIN; CUSTOM;
    BOILING_SUGAR "boiling-sugar" "boiling sugar to a stage" = 25.0 MIN; CUSTOM;
    FILLING_A_BATH "filling-a-bath" "pouring into the bath water and stirring" = 5.0 MIN; CUSTOM;
    PACKING "packing" "moistening, packing and pouring on" = 45.0 MIN; CUSTOM;
    LAYING_ON "laying-on" "mashing and laying on" = 10.0 MIN; CUSTOM;
    BEESWAX_DENSITY "beeswax-density" "density of beeswax" = 0.96 G_PER_ML;
        Source::from_memory(Work::Beeswax, "0.958 to 0.970 at 15 °C");
    BOTTLING "bottling" "pouring, lidding and labelling" = 15.0 MIN; CUSTOM;
}

assumptions! {
    LID_OFF "lid-off" "boiled off a minute, lid off" = 8.0 10.0 12.0 ML_PER_MIN;
        Source::from_memory(Work::SyrupNotes, "32 fl oz halved in 45 to 50 minutes comes to about 10 mL a minute");
        "Time your own pot: measure, simmer 20 minutes, measure again.";
    LID_AJAR "lid-ajar" "boiled off a minute, lid ajar" = 3.0 5.0 8.0 ML_PER_MIN;
        Source::practice("between an open and a covered pot");
        "Time your own pot: measure, simmer 20 minutes, measure again.";
    LID_ON "lid-on" "boiled off a minute, lid on" = 1.0 2.0 3.0 ML_PER_MIN;
        Source::practice("a covered household pot at a low simmer");
        "Time your own pot: measure, simmer 20 minutes, measure again.";
    PLANT_HOLDS "plant-holds" "what a gram of dried plant keeps" = 1.5 2.0 3.0 ML_PER_G;
        Source::practice("squeezed by hand: seeds and bark keep about 1, roots and berries 1.5 to 2, leaf and flower 2 to 4");
        "Give the plant's page its own figure, or measure what you strain.";
    OIL_HELD "oil-held" "oil that a gram of dried plant keeps" = 1.0 1.5 2.0 ML_PER_G;
        Source::practice("squeezed by hand; oil swells a plant less than water does");
        "Give the plant's page its own figure, or measure what you strain.";
    HONEY_HELD "honey-held" "honey that a gram of dried plant keeps" = 0.7 1.0 1.4 ML_PER_G;
        Source::practice("strained warm: about one and a half times its weight");
        "Give the plant's page its own figure, or weigh what you strain.";
    DRIED_MOISTURE "dried-moisture" "water in dried plants" = 0.08 0.1 0.12 PER_CENT;
        Source::practice("herbs dried until they snap hold about a tenth of water");
        "Give the plant's page its own figure.";
    POWDER_TAKES_UP "powder-takes-up" "what a gram of powder takes up in a paste" = 0.6 0.7 0.8 ML_PER_G;
        Source::practice("dry plant matter is about half as heavy again as water");
        "Weigh the jar instead: weights are sure.";
    SOFT_CRACK_WATER "soft-crack-water" "water left in sugar at the soft crack" = 0.04 0.05 0.06 PER_CENT_WW;
        Source::from_memory(Work::FoodAndCooking, "soft crack about 95 % sugar");
        "Weigh the drops.";
    CRACK_WATER "crack-water" "water left in sugar at the hard crack" = 0.01 0.02 0.03 PER_CENT_WW;
        Source::from_memory(Work::FoodAndCooking, "hard crack about 98 to 99 % sugar");
        "Weigh the drops.";
    DRAINED "drained" "how wet draining leaves the marc, against squeezing" = 1.25 1.5 2.0 ONE;
        Source::practice("drained plants hold about half as much again as squeezed ones");
        "Measure what you strain.";
    SQUEEZED "squeezed" "how wet this hand leaves the marc" = 0.75 1.0 1.25 ONE;
        Source::practice("hands differ by about a quarter either way");
        "Measure what you strain.";
    PERCOLATED "percolated" "how wet a drained percolator leaves the marc, against squeezing" = 0.75 1.0 1.25 ONE;
        Source::practice("what is not pressed out at the end stays, about as much as squeezing leaves");
        "Press the marc at the end, and put it by for the next.";
    PRESSED "pressed" "how wet a press leaves the marc, against squeezing" = 0.4 0.5 0.7 ONE;
        Source::published(Work::FreshPlantTincture, "4 oz of herb in 20 fl oz gives 13 to 14 fl oz by hand and 17 by press");
        "Measure what you strain.";
}
