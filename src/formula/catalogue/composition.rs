//! What is in the pan by weight, and the water activity that follows from it.

use super::formulas;
use crate::bibliography::{Source, Work};
use crate::formula::expr::{exp, look, number, product, sum};
use crate::materia::{HONEY_ACTIVITY, SUCROSE_SOLUBLE};

formulas! {
    /// A sugar of honey: its printed share, scaled to the solids this honey has.
    SugarInHoney "sugar-in-honey" { weight: one "M" G, printed: one "p" PER_CENT, moisture: one "u" PER_CENT, printed_water: one "w" PER_CENT }
        gives "sugar in the honey" "m" G = weight * printed * (number(1.0) - moisture) / (number(1.0) - printed_water);
        Source::reckoned("drier honey holds the same sugars in less water"); "blossom honeys";
    /// Water of an ingredient by its moisture.
    WaterOf "water-of" { weight: one "M" G, moisture: one "u" PER_CENT }
        gives "water in an ingredient" "w" G = weight * moisture;
        Source::reckoned("the definition of moisture"); "always";
    /// What is left of a weight without a part.
    Rest "rest" { whole: one "M" G, part: one "m" G }
        gives "the rest" "r" G = whole - part;
        Source::reckoned("a balance"); "always";
    /// Amount of substance.
    Moles "moles" { weight: one "m" G, molar: one "M" G_PER_MOL }
        gives "amount of substance" "n" MOL = weight / molar;
        Source::reckoned("the definition of molar mass"); "always";
    /// Mole fraction of one solute in all the water.
    MoleFraction "mole-fraction" { solute: one "n" MOL, water: one "w" MOL }
        gives "mole fraction" "x" ONE = solute / (solute + water);
        Source::reckoned("the definition of the mole fraction"); "one solute taken alone in all the water";
    /// Water activity by one solute.
    Norrish "norrish" { fraction: one "x" ONE, constant: one "K" ONE }
        gives "water activity by one solute" "a" ONE = (number(1.0) - fraction) * exp(number(0.0) - constant * fraction * fraction);
        Source::from_memory(Work::Norrish, "the equation was seen, the constants were not"); "sucrose to 67 %, glycerol to 60 % by weight";
    /// Water activity of the mixture, sugars and glycerol.
    WaterActivity "water-activity" { each: many "a" ONE }
        gives "water activity" "A" ONE = product(each);
        Source::published(Work::Ross, "the product of each solute's own water activity");
        "syrups; it errs high, on the safe side; not for spirits", within 0.01;
    /// Water activity of a mixture with honey in it.
    WaterActivityHoney "water-activity-honey" { each: many "a" ONE }
        gives "water activity" "A" ONE = product(each);
        Source::published(Work::Ross, "the product of each solute's own water activity");
        "liquids sweetened with honey; laboratories differ by 0.03 on honey", within 0.03;
    /// Water activity of honey as it comes.
    HoneyActivity "honey-activity" { moisture: one "u" PER_CENT_WW }
        gives "water activity" "A" ONE = look(&HONEY_ACTIVITY, moisture);
        Source::from_memory(Work::HoneyActivity, "straight line by moisture"); "honey with nothing watery in it, 15 to 21 % water", within 0.03;
    /// The most sugar that water holds at a temperature.
    Saturation "saturation" { temperature: one "t" CELSIUS }
        gives "most sugar that stays dissolved" "s" PER_CENT_WW = look(&SUCROSE_SOLUBLE, temperature);
        Source::from_memory(Work::Vavrinecz, "series"); "cane and beet sugar in water, 0 to 100 °C";
    /// Sucrose against the water and itself only.
    SucroseShare "sucrose-share" { sucrose: one "S" G, water: one "W" G }
        gives "sugar in sugar and water" "b" PER_CENT_WW = sucrose / (sucrose + water);
        Source::reckoned("per cent by weight"); "what else is dissolved is left out";
    /// Several of one kind added, as plain shares.
    AddShares "add-shares" { each: many "s" ONE }
        gives "shares in all" "S" ONE = sum(each);
        Source::reckoned("plain addition"); "always";
}
