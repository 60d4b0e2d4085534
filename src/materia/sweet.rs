//! Sweeteners: densities, water, sugars, energy.

use super::Law;
use crate::bibliography::{Source, Work};
use crate::measure::unit::{G_PER_ML, KCAL_PER_G, ML_PER_G, ONE, PER_CENT};

const fn usda(place: &'static str) -> Source {
    Source::published(Work::NutrientDatabase, place)
}

figures! {
    SUCROSE_TAKES_UP "sucrose-takes-up" "what dissolved sugar takes up" = 0.63 ML_PER_G;
        Source::published(Work::Usp32, "850 g in 1,000 mL at a specific gravity of 1.313 leaves about 463 g of water, so 0.63 mL a gram");
    SUGAR_BULK "sugar-bulk" "granulated sugar, a cup of 200 g" = 0.84535 G_PER_ML;
        usda("19335, sugars, granulated: 1 cup 200 g");
    MAPLE_DENSITY "maple-density" "density of maple syrup, a cup of 315 g" = 1.3314 G_PER_ML;
        usda("19353, syrups, maple: 1 cup 315 g");
    OIL_DENSITY "oil-density" "density of olive oil, a cup of 216 g" = 0.913 G_PER_ML;
        usda("04053, oil, olive: 1 cup 216 g");
    GLYCERIN_DENSITY "glycerin-density" "density of glycerin at 20 °C" = 1.261 G_PER_ML;
        Source::memory("handbook value, 1.261 g/mL at 20 °C");
    HONEY_WATER "honey-water" "water in honey, as the table of foods has it" = 0.171 PER_CENT;
        usda("19296, honey: water 17.10 g in 100 g");
    HONEY_SUGARS "honey-sugars" "sugars in honey" = 0.8212 PER_CENT;
        usda("19296, honey: sugars 82.12 g in 100 g");
    HONEY_ENERGY "honey-energy" "energy in honey" = 3.04 KCAL_PER_G;
        usda("19296, honey: 304 kcal in 100 g");
    MAPLE_WATER "maple-water" "water in maple syrup" = 0.3239 PER_CENT;
        usda("19353, syrups, maple: water 32.39 g in 100 g");
    MAPLE_SUGARS "maple-sugars" "sugars in maple syrup" = 0.679 PER_CENT;
        usda("19353, syrups, maple: sugars 67.90 g in 100 g (a later release prints 60.46)");
    MAPLE_ENERGY "maple-energy" "energy in maple syrup" = 2.6 KCAL_PER_G;
        usda("19353, syrups, maple: 260 kcal in 100 g");
    SUGAR_SUGARS "sugar-sugars" "sugars in granulated sugar" = 0.998 PER_CENT;
        usda("19335, sugars, granulated: sugars 99.80 g in 100 g");
    SUGAR_ENERGY "sugar-energy" "energy in granulated sugar" = 3.87 KCAL_PER_G;
        usda("19335, sugars, granulated: 387 kcal in 100 g");
    GLYCERIN_ENERGY "glycerin-energy" "energy in glycerin" = 4.32 KCAL_PER_G;
        Source::memory("4.32 kcal a gram, as food labelling reckons it");
}

assumptions! {
    HONEY_MOISTURE "honey-moisture" "water in the honey" = 0.155 0.171 0.186 PER_CENT;
        Source::published(Work::NutrientDatabase, "19296, honey: 17.10 g in 100 g; the most is that of US Grade A, 18.6 %");
        "A refractometer for honey reads it; most jars lie between these.";
}

relations! {
    HONEY_GRAVITY "honey-gravity" "specific gravity of honey at 20 °C": PER_CENT gives ONE within 0.13, 0.21;
        Law::Table(&[(0.13, 1.4457), (0.14, 1.4404), (0.15, 1.4350), (0.16, 1.4295), (0.17, 1.4237), (0.18, 1.4171), (0.19, 1.4101), (0.20, 1.4027), (0.21, 1.3950)]);
        Source::from_memory(Work::HoneyDensity, "13 to 21 % water; only the row for 17 % was seen");
}
