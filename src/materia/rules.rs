//! Constants of the pharmacy's and the food inspector's rules: child doses of history, ceilings of
//! constituents, drinks, proof, drops, wax.

use crate::bibliography::{Source, Work};
use crate::measure::unit::{
    CELSIUS, DAY, G, G_PER_ML, KG, M2, MG_PER_G, MG_PER_KG, ML, MONTH, ONE, PER_CENT, PER_CENT_VV,
    PER_CENT_WW, YEAR,
};

const COUMARIN: Source = Source::published(
    Work::Coumarin,
    "0.1 mg a day for each kilogram of the body; a Norwegian reckoning of 2012 has 0.07",
);
const DRINK: Source = Source::published(Work::StandardDrinks, "figures of national health services");
const PROOF_US: Source = Source::published(Work::Cfr27, "proof is twice the per cent by volume at 60 °F");

figures! {
    YOUNG_YEARS "young-years" "years that Young's rule adds" = 6_311_520.0 YEAR;
        Source::published(Work::ChildDose, "Young: age over age and 12 years");
    COWLING_YEARS "cowling-years" "years that Cowling's rule divides by" = 12_623_040.0 YEAR;
        Source::from_memory(Work::ChildDose, "Cowling: age at the next birthday over 24");
    FRIED_MONTHS "fried-months" "months that Fried's rule divides by" = 6_574_500.0 MONTH;
        Source::published(Work::ChildDose, "Fried: months over 150");
    CLARK_WEIGHT "clark-weight" "an adult by Clark's rule, 150 lb" = 68_038.855_5 KG;
        Source::published(Work::ChildDose, "Clark: pounds over 150");
    ADULT_SURFACE "adult-surface" "surface of an adult's body" = 1.73 M2;
        Source::published(Work::ChildDose, "surface over 1.73 m²");
    COUMARIN_DAILY "coumarin-daily" "coumarin a day, for the body's weight" = 1.0e-7 MG_PER_KG; COUMARIN;
    ADULT_WEIGHT "adult-weight" "weight of an adult" = 60_000.0 KG;
        Source::published(Work::Coumarin, "an adult of 60 kg; a course may state another");
    CASSIA_COUMARIN "cassia-coumarin" "coumarin in cassia cinnamon" = 0.003 MG_PER_G;
        Source::published(Work::Coumarin, "2 g a day at 60 kg, so 3 mg in a gram");
    GLYCYRRHIZIN_DAILY "glycyrrhizin-daily" "glycyrrhizin a day" = 0.1 G;
        Source::published(Work::Glycyrrhizin, "100 mg a day is unlikely to harm most adults");
    LIQUORICE_HOLDS "liquorice-holds" "glycyrrhizin in liquorice root" = 0.04 PER_CENT;
        Source::published(Work::CommissionE, "5 to 15 g of root hold 200 to 600 mg");
    LIQUORICE_TEA "liquorice-tea" "glycyrrhizin in liquorice tea" = 0.000_126 G_PER_ML;
        Source::published(Work::Glycyrrhizin, "126 mg in a litre, the mean of teas");
    DRINK_US "drink-us" "alcohol in a drink, United States" = 14.0 G; DRINK;
    DRINK_10 "drink-10" "alcohol in a drink, Australia and the WHO" = 10.0 G; DRINK;
    UNIT_UK "unit-uk" "alcohol in a unit, United Kingdom" = 10.0 ML; DRINK;
    PROOF_OF_ALCOHOL "proof-of-alcohol" "proof of pure alcohol, United States" = 200.0 ONE; PROOF_US;
    BRITISH_PROOF "british-proof" "alcohol of old British proof spirit" = 0.5715 PER_CENT_VV;
        Source::published(Work::StandardDrinks, "57.15 % by volume; as heavy as 12/13 of its volume of water at 51 °F");
    FIRM_SALVE "firm-salve" "oil to a part of wax, firm salve" = 4.0 ONE; Source::practice("by weight");
    OLIVE_OIL_DENSITY "olive-oil-density" "density of olive oil, a cup of 216 g" = 0.913 G_PER_ML;
        Source::published(Work::NutrientDatabase, "oil, olive: 1 cup 216 g");
    HONEY_MOISTURE_MOST "honey-moisture-most" "most water allowed in honey" = 0.20 PER_CENT_WW;
        Source::from_memory(Work::CodexHoney, "20 %; heather honey 23 %");
    LOW_ACID "low-acid" "pH above which a food is low-acid" = 4.6 ONE;
        Source::published(Work::Cfr114, "pH above 4.6 and water activity above 0.85");
    DATE_MARK "date-mark" "days a prepared food may stand cold" = 10_080.0 DAY;
        Source::published(Work::FoodCode, "3-501.17: 7 days at 41 °F; that the day of making is the first is from memory");
    HONEY_AGE "honey-age" "age below which no honey is given" = 525_960.0 MONTH;
        Source::published(Work::HoneyInfants, "not under 12 months, in no food and no drink");
}

assumptions! {
    SOFT_SALVE "soft-salve" "oil to a part of wax, soft salve" = 5.0 5.5 6.0 ONE;
        Source::practice("by weight");
        "Set a drop on a cold plate before you pour.";
    BEESWAX_MELTS "beeswax-melts" "melting point of beeswax" = 62.0 63.0 64.0 CELSIUS;
        Source::published(Work::Beeswax, "62 to 64 °C; others print 61 to 67");
        "Melt it over water, and take it off once it is clear.";
}
