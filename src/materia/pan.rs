//! The pan: water, what boils away, what the marc keeps, and allowances of time.

use crate::bibliography::{Source, Work};
use crate::measure::unit::{G_PER_ML, MIN, ML_PER_G, ML_PER_MIN, ONE, PER_CENT};

const CUSTOM: Source = Source::practice("an allowance a class can keep to; time your own");

figures! {
    WATER_DENSITY "water-density" "density of water at 20 °C" = 0.9982 G_PER_ML;
        Source::published(Work::OimlR22, "0 % at 20 °C: 998.20 kg/m³");
    BRING_UP "bring-up" "bringing the pan up to the heat" = 10.0 MIN; CUSTOM;
    POUR_ON "pour-on" "boiling the kettle and pouring on" = 5.0 MIN; CUSTOM;
    MIXING "mixing" "weighing and mixing" = 15.0 MIN; CUSTOM;
    STRAINING "straining" "straining and measuring" = 10.0 MIN; CUSTOM;
    STIRRING_IN "stirring-in" "stirring in until it runs clear" = 5.0 MIN; CUSTOM;
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
    DRIED_MOISTURE "dried-moisture" "water in dried plants" = 0.08 0.1 0.12 PER_CENT;
        Source::practice("herbs dried until they snap hold about a tenth of water");
        "Give the plant's page its own figure.";
    DRAINED "drained" "how wet draining leaves the marc, against squeezing" = 1.25 1.5 2.0 ONE;
        Source::practice("drained plants hold about half as much again as squeezed ones");
        "Measure what you strain.";
    SQUEEZED "squeezed" "how wet this hand leaves the marc" = 0.75 1.0 1.25 ONE;
        Source::practice("hands differ by about a quarter either way");
        "Measure what you strain.";
    PRESSED "pressed" "how wet a press leaves the marc, against squeezing" = 0.4 0.5 0.7 ONE;
        Source::published(Work::FreshPlantTincture, "4 oz of herb in 20 fl oz gives 13 to 14 fl oz by hand and 17 by press");
        "Measure what you strain.";
}
