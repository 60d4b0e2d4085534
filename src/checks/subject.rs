//! What can be checked: a closed list, each subject with the numbers it takes and how this program
//! works it. Nothing is stated here that the catalogue or `materia` states.

use super::given::Given;
use super::ours;
use crate::formula::Sum;
use crate::formula::catalogue::composition::{HoneyActivity, Saturation};
use crate::formula::catalogue::dose::{PlantPerDose, Strength};
use crate::formula::catalogue::heat::{HeatToBoilOff, TimeOnStove};
use crate::formula::catalogue::pan::{AddWeights, AsDried, Hold, MeasureOut, ShareOfVolume, Weigh};
use crate::formula::catalogue::rules as rule;
use crate::formula::catalogue::spirit;
use crate::formula::catalogue::sweeten::{Component, DrySolids, OfFinishedWeight, Solids, TakesUp};
use crate::formula::catalogue::{composition::Rest, composition::SucroseShare};
use crate::materia::food_code::{COOLING, FoodCode, GROWTH, Table, food_code, low_acid};
use crate::materia::spoons::spoon;
use crate::materia::*;
use crate::measure::Measure;
use crate::measure::kitchen_unit as label;

/// Entries: `Name "id" (numbers) [words] => what this program makes of them;`, head by head.
macro_rules! subjects {
    ($($head:literal { $($name:ident $id:literal ($($number:ident),*) [$($word:ident),*] $(says [$($say:literal),*])? => $body:expr;)* })*) => {
        /// What is checked.
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
        pub enum Subject { $($(#[doc = $id] $name,)*)* }

        impl Subject {
            /// Every subject, in the order of the page.
            pub const ALL: &'static [Subject] = &[$($(Subject::$name,)*)*];

            /// The heads, in the order of the page.
            pub const HEADS: &'static [&'static str] = &[$($head,)*];

            /// Its name in the file of checks.
            pub const fn id(self) -> &'static str {
                match self { $($(Subject::$name => $id,)*)* }
            }

            /// The head it stands under.
            pub const fn head(self) -> &'static str {
                match self { $($(Subject::$name => $head,)*)* }
            }

            /// The numbers and words it takes.
            pub const fn takes(self) -> &'static [&'static str] {
                match self { $($(Subject::$name => &[$(stringify!($number),)* $(stringify!($word),)*],)*)* }
            }

            /// The answers it may give, where they are words: an answer is its place in the list.
            pub const fn says(self) -> &'static [&'static str] {
                match self { $($(Subject::$name => &[$($($say),*)?],)*)* }
            }

            /// What this program makes of it, in the engine's own unit.
            pub fn ours(self, given: &Given) -> f64 {
                match self { $($(Subject::$name => {
                    $(let $number = given.number(stringify!($number));)*
                    $(let $word = given.word(stringify!($word));)*
                    $body
                })*)* }
            }
        }
    };
}

/// A formula with these values for its symbols, each bound to one line.
macro_rules! work {
    (@value $field:ident) => { $field };
    (@value $field:ident $value:expr) => { $value };
    ($($formula:ident)::+ { $($field:ident $(: $value:expr)?),* $(,)? }) => {{
        // All are worked before one is hidden by the line of its name.
        $(let $field = work!(@value $field $($value)?);)*
        let mut sum = Sum::default();
        $(let $field = sum.line($field);)*
        sum.gives($($formula)::+ { $($field),* })
    }};
}

fn class(found: FoodCode) -> f64 {
    if found == FoodCode::NonTcs { 0.0 } else { 1.0 }
}

fn stage(name: &str) -> f64 {
    STAGES.iter().find(|stage| stage.name == name).map_or(f64::NAN, |stage| stage.from)
}

fn medial(volumes: [f64; 3], strengths: [f64; 3]) -> f64 {
    let mut sum = Sum::default();
    let volume = volumes.map(|volume| sum.line(volume)).to_vec();
    let strength = strengths.map(|strength| sum.line(strength)).to_vec();
    sum.gives(rule::MixedStrength { volume, strength })
}

fn free_water(finished: f64, sugar: f64) -> f64 {
    let mut sum = Sum::default();
    let (finished, sugar) = (sum.line(finished), sum.line(sugar));
    let held = sum.work(spirit::HeldBySugar { solids: vec![sugar] });
    sum.gives(spirit::FreeWater { finished, held: vec![held] })
}

fn water_to_add(volume: f64, strength: f64, wanted: f64) -> f64 {
    let mut sum = Sum::default();
    let (volume, strength, wanted) = (sum.line(volume), sum.line(strength), sum.line(wanted));
    let share = sum.work(spirit::ShareByWeight { strength });
    let density = sum.work(spirit::SpiritDensity { share });
    let weight = sum.work(Weigh { volume, density });
    let wanted = sum.work(spirit::ShareByWeight { strength: wanted });
    let weight = sum.work(spirit::WaterToAdd { spirit: weight, share, wanted });
    let density = sum.figure(&WATER_DENSITY);
    sum.gives(MeasureOut { weight, density })
}

fn thinner(weight: f64, share: f64, wanted: f64) -> f64 {
    let mut sum = Sum::default();
    let (strong, share, wanted) = (sum.line(weight), sum.line(share), sum.line(wanted));
    let whole = sum.work(rule::DilutedWeight { strong, share, wanted });
    sum.gives(Rest { whole, part: strong })
}

fn acid(vinegar: f64, acidity: f64) -> f64 {
    work!(spirit::AcidOf { vinegar, acidity })
}

fn strong_of(whole: f64, strong: f64, weak: f64, wanted: f64) -> f64 {
    let mut sum = Sum::default();
    let (whole, strong, weak, wanted) = (sum.line(whole), sum.line(strong), sum.line(weak), sum.line(wanted));
    let strong_parts = sum.work(rule::PartsOfStrong { wanted, weak });
    let weak_parts = sum.work(rule::PartsOfWeak { strong, wanted });
    sum.gives(rule::StrongOf { whole, strong_parts, weak_parts })
}

fn honeyed(honey: f64, moisture: f64, liquid: f64) -> f64 {
    let mut sum = Sum::default();
    let (weight, water, volume) = (sum.line(honey), sum.line(moisture), sum.line(liquid));
    let solids = sum.work(DrySolids { weight, water });
    let density = sum.figure(&WATER_DENSITY);
    let liquid = sum.work(Weigh { volume, density });
    let everything = sum.work(AddWeights { each: vec![weight, liquid] });
    sum.gives(Solids { solids: vec![solids], everything })
}

fn to_boil_off(weight: f64, temperature: f64, power: f64) -> f64 {
    let heat = work!(HeatToBoilOff { weight, temperature });
    work!(TimeOnStove { heat, power, reaches: 1.0 })
}

const YEAR: f64 = 525_960.0;
const MONTH: f64 = YEAR / 12.0;

subjects! {
    "Units and drops" {
        Amount "amount" (amount) [] => amount;
        LabelTeaspoon "label-teaspoon" () [] => label::LABEL_TSP_ML;
        LabelTablespoon "label-tablespoon" () [] => label::LABEL_TBSP_ML;
        LabelFluidOunce "label-fluid-ounce" () [] => label::LABEL_FL_OZ_ML;
        LabelCup "label-cup" () [] => label::LABEL_CUP_ML;
        LabelOunce "label-ounce" () [] => label::LABEL_OZ_G;
        LabelCupLarger "label-cup-larger" () [] => label::LABEL_CUP_ML / Measure::Cup.factor().to_f64() - 1.0;
        WaterDrops "water-drops" () [] => label::WATER_DROPS_PER_ML;
        Dropper "dropper" (drops, volume) [] => work!(rule::DropsToMl { drops, volume });
    }
    "Sugar in water" {
        SucroseDensity "sucrose-density" (share) [] => SUCROSE_DENSITY.at(share);
        SucroseInLitre "sucrose-in-litre" (share) [] => work!(Component { weight: SUCROSE_DENSITY.at(share), share });
        ShareByGravity "share-by-gravity" (gravity) [] => SUCROSE_SHARE.at(gravity * WATER_DENSITY.value);
        SpecificVolume "specific-volume" (share) [] => ours::specific_volume(share);
        MadeUpGravity "made-up-gravity" (sugar, finished) [] => ours::made_up_gravity(sugar, finished);
        MadeUpShare "made-up-share" (sugar, finished) [] => ours::made_up_share(sugar, finished);
        Soluble "soluble" (temperature) [] => work!(Saturation { temperature });
        ToWater "to-water" (share) [] => work!(OfFinishedWeight { liquid: 100.0, share });
        ShareOfSugar "share-of-sugar" (sugar, water) [] => work!(SucroseShare { sucrose: sugar, water });
        SyrupVolume "syrup-volume" (sugar, water) [] => ours::syrup_volume(sugar, water);
    }
    "Boiling" {
        SyrupBoils "syrup-boils" (share) [] => ours::syrup_boils(share, 0.0);
        SyrupAbove "syrup-above" (share) [] => ours::syrup_boils(share, 0.0) - ours::boils(0.0);
        SugarStage "sugar-stage" () [stage_name] => stage(stage_name);
        AirPressure "air-pressure" (altitude) [] => ours::pressure(altitude);
        WaterBoils "water-boils" (altitude) [] => ours::boils(altitude);
        Steam "steam" (temperature) [] => LATENT_HEAT.at(temperature);
        BoilOff "boil-off" (weight, power) [] => to_boil_off(weight, 100.0, power);
    }
    "Water activity" {
        MolalActivity "molal-activity" (molality) [] => ours::molal_activity(molality);
        SugarActivity "sugar-activity" (sugar, water) [] => ours::sugar_activity(sugar, water);
        HoneyBySugars "honey-by-sugars" (moisture) [] => ours::honey_activity(moisture);
        HoneyByMoisture "honey-by-moisture" (moisture) [] => work!(HoneyActivity { moisture });
        GlycerolActivity "glycerol-activity" (share) [] => if share > GLYCEROL_MOST.value { f64::NAN } else {
            let mut sum = Sum::default();
            let (solute, water) = (sum.line(share), sum.line(1.0 - share));
            let line = ours::activity(&mut sum, solute, water, &GLYCEROL_MOLAR, &GLYCEROL_K);
            sum.at(line)
        };
        Growth "growth" () [kind] => GROWTH.iter().find(|row| row.words == kind).map_or(f64::NAN, |row| row.least);
    }
    "The food inspector’s rules" {
        FoodCodeA "food-code-a" (activity, ph) [] says ["needs no control", "product assessment"] => class(food_code(Table::A, activity, ph));
        FoodCodeB "food-code-b" (activity, ph) [] says ["needs no control", "product assessment"] => class(food_code(Table::B, activity, ph));
        LowAcid "low-acid" (activity, ph) [] says ["not low-acid", "low-acid"] => f64::from(u8::from(low_acid(activity, ph)));
        CoolingTime "cooling-time" (from, to) [] => COOLING.iter().find(|row| row.from == from && row.to == to).map_or(f64::NAN, |row| row.hours);
        DateMark "date-mark" () [] => DATE_MARK.value;
        HoneyAge "honey-age" () [] => HONEY_AGE.value;
        HoneyMoisture "honey-moisture" () [] => HONEY_MOISTURE_MOST.value;
    }
    "Sweeteners, oil and wax" {
        HoneyWeighs "honey-weighs" (volume, moisture) [] => ours::honey_weighs(volume, moisture);
        SugarWeighs "sugar-weighs" (volume) [] => work!(Weigh { volume, density: SUGAR_BULK.value });
        SyrupWeighs "syrup-weighs" (volume, share) [] => work!(Weigh { volume, density: SUCROSE_DENSITY.at(share) });
        OilWeighs "oil-weighs" (volume) [] => work!(Weigh { volume, density: OLIVE_OIL_DENSITY.value });
        VinegarWeighs "vinegar-weighs" (volume) [] => work!(Weigh { volume, density: VINEGAR_DENSITY.value });
        OilDensity "oil-density" () [] => OLIVE_OIL_DENSITY.value;
        HoneyGravity "honey-gravity" (moisture) [] => HONEY_GRAVITY.at(moisture);
        HoneyEnergy "honey-energy" () [] => HONEY_ENERGY.value;
        MapleEnergy "maple-energy" () [] => MAPLE_ENERGY.value;
        SugarEnergy "sugar-energy" () [] => SUGAR_ENERGY.value;
        MapleWater "maple-water" () [] => MAPLE_WATER.value;
        MapleSolids "maple-solids" () [] => work!(DrySolids { weight: 1.0, water: MAPLE_WATER.value });
        WaxMelts "wax-melts" () [] => BEESWAX_MELTS.usual;
        Wax "wax" (batch) [] => work!(rule::WaxFor { batch, oil: FIRM_SALVE.value });
    }
    "Alcohol" {
        SpiritDensity "spirit-density" (strength) [] => SPIRIT_DENSITY.at(work!(spirit::ShareByWeight { strength }));
        SpiritShare "spirit-share" (strength) [] => work!(spirit::ShareByWeight { strength });
        DensityByWeight "density-by-weight" (share) [] => work!(spirit::SpiritDensity { share });
        MixedShare "mixed-share" (spirit, strength, water) [] => ours::mixed(spirit, strength, water).share;
        MixedDensity "mixed-density" (spirit, strength, water) [] => ours::mixed(spirit, strength, water).density;
        MixedVolume "mixed-volume" (spirit, strength, water) [] => ours::mixed(spirit, strength, water).volume;
        MixedStrength "mixed-strength" (spirit, strength, water) [] => ours::mixed(spirit, strength, water).strength;
        Contraction "contraction" (each, spirit, water, mixture) [] => ours::contraction(each, spirit, water, mixture);
        WaterToAdd "water-to-add" (spirit, strength, wanted) [] => water_to_add(spirit, strength, wanted);
        DilutedVolume "diluted-volume" (spirit, strength, wanted) [] => work!(spirit::DilutedVolume { strong: spirit, strength, wanted });
        Proof "proof" (strength) [] => work!(rule::Proof { strength });
        BritishProof "british-proof" (proof) [] => work!(rule::OfBritishProof { proof });
        DrinkVolume "drink-volume" () [] => work!(MeasureOut { weight: DRINK_US.value, density: ETHANOL_DENSITY.value });
        UnitsUk "units-uk" (spirit, strength) [] => work!(rule::DrinksByVolume { alcohol: work!(spirit::PureAlcohol { spirit, strength }), unit: UNIT_UK.value });
        Drinks10 "drinks-10" (spirit, strength) [] => work!(rule::DrinksByWeight {
            alcohol: work!(spirit::AlcoholWeight { alcohol: work!(spirit::PureAlcohol { spirit, strength }) }), drink: DRINK_10.value });
        Occupied "occupied" (sugar) [] => work!(TakesUp { weight: sugar, each_gram: SUGAR_OCCUPIES.value });
        FreeWater "free-water" (finished, sugar) [] => free_water(finished, sugar);
        AlcoholForFree "alcohol-for-free" (finished, sugar) [] => work!(ShareOfVolume { share: ALCOHOL_COVERS.value, whole: free_water(finished, sugar) });
        FreeOfSyrup "free-of-syrup" (sugar, water) [] => free_water(ours::syrup_volume(sugar, water), sugar);
        SpiritForSyrup "spirit-for-syrup" (sugar, water, strength) [] => work!(spirit::SpiritFor {
            finished: free_water(ours::syrup_volume(sugar, water), sugar), wanted: ALCOHOL_COVERS.value, strength });
        CoversAcid "covers-acid" () [] => ALCOHOL_COVERS_ACID.value;
        CoversNeutral "covers-neutral" () [] => ALCOHOL_COVERS.value;
    }
    "Strengths mixed and changed" {
        Medial "medial" (first, of_first, second, of_second, third, of_third) [] => medial([first, second, third], [of_first, of_second, of_third]);
        PartsOfStrong "parts-of-strong" (wanted, weak) [] => work!(rule::PartsOfStrong { wanted, weak });
        PartsOfWeak "parts-of-weak" (strong, wanted) [] => work!(rule::PartsOfWeak { strong, wanted });
        StrongOf "strong-of" (whole, strong, weak, wanted) [] => strong_of(whole, strong, weak, wanted);
        WaterByRule "water-by-rule" (spirit, strength, wanted) [] => work!(spirit::WaterByRule { spirit, strength, wanted });
        SpiritFor "spirit-for" (finished, wanted, strength) [] => work!(spirit::SpiritFor { finished, wanted, strength });
        Thinner "thinner" (weight, share, wanted) [] => thinner(weight, share, wanted);
        PureToAdd "pure-to-add" (weight, share, wanted) [] => work!(rule::PureToAdd { weight, share, wanted });
        VinegarLeast "vinegar-least" () [] => ACETIC_IN_VINEGAR.value;
        VinegarMixed "vinegar-mixed" (vinegar, acidity, finished) [] => work!(spirit::Acidity { acid: acid(vinegar, acidity), finished });
        VinegarMost "vinegar-most" (vinegar, acidity) [] => work!(rule::DilutedTo { held: acid(vinegar, acidity), wanted: ACETIC_IN_VINEGAR.value });
    }
    "Plants" {
        Coumarin "coumarin" (body) [] => work!(rule::ForTheBody { body, each: COUMARIN_DAILY.value });
        Cassia "cassia" (body) [] => work!(rule::HoldsCeiling { ceiling: work!(rule::ForTheBody { body, each: COUMARIN_DAILY.value }), content: CASSIA_COUMARIN.value });
        Liquorice "liquorice" () [] => work!(rule::HoldsCeiling { ceiling: GLYCYRRHIZIN_DAILY.value, content: LIQUORICE_HOLDS.value });
        LiquoriceTea "liquorice-tea" () [] => work!(rule::DilutedTo { held: GLYCYRRHIZIN_DAILY.value, wanted: LIQUORICE_TEA.value });
        Infusion "infusion" (plant, finished) [] => work!(Strength { plant, finished });
        Represents "represents" (plant, finished, part) [] => work!(PlantPerDose { plant, dose: part, finished });
        Kept "kept" (plant) [] => work!(Hold { each_gram_keeps: PLANT_HOLDS.usual, plant });
        // The same dry matter with more water: the formula read from the dried plant.
        FreshForDried "fresh-for-dried" (fresh_water, dried_water) [] => work!(AsDried { fresh: 1.0, fresh_moisture: dried_water, dried_moisture: fresh_water });
        Teaspoon "teaspoon" () [herb] => spoon(herb).map_or(f64::NAN, |spoon| spoon.teaspoon);
        SolidsWithHoney "solids-with-honey" (honey, moisture, liquid) [] => honeyed(honey, moisture, liquid);
    }
    "Child doses of history: for teaching only, not a dose" {
        Clark "clark" (adult, body) [] => work!(rule::Clark { adult, body });
        Young "young" (adult, years) [] => work!(rule::Young { adult, age: years * YEAR });
        Fried "fried" (adult, months) [] => work!(rule::Fried { adult, age: months * MONTH });
        Surface "surface" (adult, square_metres) [] => work!(rule::BySurface { adult, surface: square_metres });
    }
}
