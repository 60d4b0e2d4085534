//! What dissolves and what preserves: densities of solutions, molar masses, and the constants of
//! water activity and of the pharmacy's free-water rule.

use super::{ETHANOL_BY_VOLUME, Law};
use crate::bibliography::{Source, Work};
use crate::measure::unit::{
    CELSIUS, G_PER_ML, G_PER_MOL, ML_PER_G, ONE, PER_CENT, PER_CENT_VV, PER_CENT_WV, PER_CENT_WW,
};

const NORRISH: Source =
    Source::from_memory(Work::Norrish, "constants after Chirife, Ferro Fontán and Benmergui 1980");
const MOLAR: Source = Source::reckoned("from standard atomic weights");

figures! {
    ETHANOL_DENSITY "ethanol-density" "density of pure alcohol at 20 °C" = 0.78924 G_PER_ML;
        Source::published(Work::OimlR22, "100 % at 20 °C: 789.24 kg/m³");
    ACETIC_IN_VINEGAR "vinegar-least" "least acetic acid in vinegar" = 0.04 PER_CENT_WV;
        Source::published(Work::VinegarPolicy, "4 g in 100 mL at 20 °C");
    VINEGAR_DENSITY "vinegar-density" "density of vinegar, a cup of 239 g" = 1.0102 G_PER_ML;
        Source::published(Work::NutrientDatabase, "vinegar, cider: 1 cup 239 g");
    WATER_MOLAR "water-molar" "molar mass of water" = 18.015 G_PER_MOL; MOLAR;
    SUCROSE_MOLAR "sucrose-molar" "molar mass of sucrose" = 342.297 G_PER_MOL; MOLAR;
    HEXOSE_MOLAR "hexose-molar" "molar mass of glucose and fructose" = 180.156 G_PER_MOL; MOLAR;
    GLYCEROL_MOLAR "glycerol-molar" "molar mass of glycerol" = 92.094 G_PER_MOL; MOLAR;
    SUCROSE_K "sucrose-k" "Norrish constant of sucrose" = 6.47 ONE; NORRISH;
    GLUCOSE_K "glucose-k" "Norrish constant of glucose" = 2.25 ONE; NORRISH;
    FRUCTOSE_K "fructose-k" "Norrish constant of fructose" = 2.25 ONE; NORRISH;
    GLYCEROL_K "glycerol-k" "Norrish constant of glycerol" = 1.16 ONE; NORRISH;
    HONEY_GLUCOSE "honey-glucose" "glucose and galactose in honey" = 0.3885 PER_CENT;
        Source::published(Work::NutrientDatabase, "19296, honey: glucose 35.75, galactose 3.10 g in 100 g");
    HONEY_FRUCTOSE "honey-fructose" "fructose in honey" = 0.4094 PER_CENT;
        Source::published(Work::NutrientDatabase, "19296, honey: fructose 40.94 g in 100 g");
    HONEY_SUCROSE "honey-sucrose" "sucrose and maltose in honey" = 0.0233 PER_CENT;
        Source::published(Work::NutrientDatabase, "19296, honey: sucrose 0.89, maltose 1.44 g in 100 g");
    GLYCEROL_MOST "glycerol-most" "most glycerol for which water activity is worked" = 0.6 PER_CENT_WW;
        Source::from_memory(Work::Norrish, "against the glycerol relation of ASTM D5032 the equation misses by 0.007 at 60 % and 0.023 at 70 %");
    SUCROSE_MOST "sucrose-most" "most sugar for which water activity is worked" = 0.68 PER_CENT_WW;
        Source::from_memory(Work::Norrish, "held against measurements to saturation, 67.5 % at 25 °C");
    SUGAR_PRESERVES "sugar-preserves" "water that a gram of sugar preserves" = 0.53 ML_PER_G;
        Source::published(Work::PreservingSyrups, "450 mL preserved by 850 g");
    SUGAR_OCCUPIES "sugar-occupies" "what a gram of sugar is said to occupy" = 0.647 ML_PER_G;
        Source::published(Work::PreservingSyrups, "550 mL occupied by 850 g; a convention of the rule, no density");
    ALCOHOL_COVERS "alcohol-covers" "alcohol that preserves free water" = 0.18 PER_CENT;
        Source::published(Work::PreservingSyrups, "18 % of the free water");
    ALCOHOL_COVERS_ACID "alcohol-covers-acid" "alcohol that preserves free water at pH 5 or below" = 0.15 PER_CENT;
        Source::published(Work::PreservingSyrups, "15 % near pH 5");
}

assumptions! {
    VINEGAR_ACIDITY "vinegar-acidity" "acid of the vinegar" = 0.04 0.05 0.06 PER_CENT_WV;
        Source::practice("the label says; 5 % is usual, 4 % the least allowed");
        "Read the label and write it in the recipe or in the kitchen's facts.";
}

relations! {
    SUCROSE_DENSITY "sucrose-density" "density of sugar in water at 20 °C": PER_CENT_WW gives G_PER_ML within 0.0, 0.84;
        Law::Series(&[0.998_201_23, 0.385_176_1, 0.135_370_5, 0.040_929_9, -0.003_964_3, 0.013_485_3, -0.017_289_0]);
        Source::published(Work::Sps4, "at 20 °C, where the temperature terms are nothing");
    SUCROSE_SHARE "sucrose-share" "sugar by the density of its water at 20 °C": G_PER_ML gives PER_CENT_WW within 0.998_201_23, 1.439_1;
        Law::Inverse(&SUCROSE_DENSITY);
        Source::published(Work::Sps4, "at 20 °C, turned round");
    SUCROSE_SOLUBLE "sucrose-soluble" "most sugar that water holds": CELSIUS gives PER_CENT_WW within 0.0, 100.0;
        Law::Series(&[0.644_47, 0.000_822_2, 1.6169e-5, -1.558e-8, -4.63e-10]);
        Source::from_memory(Work::Vavrinecz, "series of 1962, taken up by ICUMSA; an older table has 0.4 more at 20 °C");
    SPIRIT_DENSITY "spirit-density" "density of alcohol in water at 20 °C": PER_CENT_WW gives G_PER_ML within 0.0, 1.0;
        Law::Series(&[0.998_201_23, -0.192_976_949_5, 0.389_123_895_8, -1.668_103_923, 13.522_154_41, -88.292_783_88,
                      306.287_404_2, -613.838_123_4, 747.017_299_8, -547.846_135_4, 223.446_033_4, -39.032_854_26]);
        Source::published(Work::OimlR22, "general formula at 20 °C");
    SPIRIT_SHARE "spirit-share" "alcohol by weight": PER_CENT_VV gives PER_CENT_WW within 0.0, 1.0;
        Law::Inverse(&ETHANOL_BY_VOLUME);
        Source::published(Work::OimlR22, "general formula at 20 °C, turned round");
    GLYCEROL_DENSITY "glycerol-density" "density of glycerol in water at 20 °C": PER_CENT_WW gives G_PER_ML within 0.0, 1.0;
        Law::Table(&[(0.0, 0.9982), (0.1, 1.0221), (0.2, 1.0469), (0.3, 1.0727), (0.4, 1.0993), (0.5, 1.1263),
                     (0.6, 1.1538), (0.7, 1.1813), (0.8, 1.2085), (0.9, 1.2351), (1.0, 1.2611)]);
        Source::from_memory(Work::GlycerolTable, "10 % steps at 20 °C; only the ends and 50 % were seen");
    HONEY_ACTIVITY "honey-activity" "water activity of honey as it comes": PER_CENT_WW gives ONE within 0.15, 0.21;
        Law::Series(&[0.262, 1.79]);
        Source::from_memory(Work::HoneyActivity, "a straight line by moisture; its fit was seen, its figures were not");
}

#[cfg(test)]
mod tests {
    use super::*;

    // OIML R 22, printed table at 20 °C: 40 % by volume is 33.30 % by weight, 948.05 kg/m³; 96 %: 93.838.
    #[test]
    fn strengths_by_volume_and_by_weight() {
        assert!((SPIRIT_SHARE.at(0.40) - 0.33300).abs() < 1e-5);
        assert!((SPIRIT_SHARE.at(0.96) - 0.93838).abs() < 1e-5);
        assert!((SPIRIT_DENSITY.at(SPIRIT_SHARE.at(0.40)) - 0.94805).abs() < 1e-5);
    }

    // Vavrinecz (from memory): 66.72 % at 20 °C. Handbook table after NBS Circular 440: 1.1765 at 40 %.
    #[test]
    fn sugar_in_water() {
        assert!((SUCROSE_SOLUBLE.at(20.0) - 0.6672).abs() < 2e-4);
        assert!((SUCROSE_DENSITY.at(0.40) - 1.1765).abs() < 3e-4);
    }
}
