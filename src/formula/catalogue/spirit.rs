//! Alcohol, acid and glycerin: how strong, and whether they cover the free water.

use super::formulas;
use crate::bibliography::{Source, Work};
use crate::formula::expr::{choose, figure, greater, look, number, sum};
use crate::materia::{ETHANOL_DENSITY, SPIRIT_DENSITY, SPIRIT_SHARE, SUGAR_OCCUPIES, SUGAR_PRESERVES, TRACE};

const RULE: Source = Source::published(Work::PreservingSyrups, "free water and the alcohol that covers it");

formulas! {
    /// Pure alcohol in a spirit, by volume.
    PureAlcohol "pure-alcohol" { spirit: one "v" ML, strength: one "q" PER_CENT_VV }
        gives "pure alcohol" "a" ML = spirit * strength;
        Source::reckoned("the definition of per cent by volume"); "at 20 °C";
    /// Pure alcohol by weight.
    AlcoholWeight "alcohol-weight" { alcohol: one "a" ML }
        gives "pure alcohol by weight" "m" G = alcohol * figure(&ETHANOL_DENSITY);
        Source::published(Work::OimlR22, "789.24 kg/m³ at 20 °C"); "at 20 °C";
    /// Alcohol by weight from alcohol by volume.
    ShareByWeight "share-by-weight" { strength: one "q" PER_CENT_VV }
        gives "alcohol by weight" "p" PER_CENT_WW = look(&SPIRIT_SHARE, strength);
        Source::published(Work::OimlR22, "general formula at 20 °C, turned round"); "alcohol and water at 20 °C", within 0.00005;
    /// Density of a spirit.
    SpiritDensity "spirit-density" { share: one "p" PER_CENT_WW }
        gives "density of the spirit" "d" G_PER_ML = look(&SPIRIT_DENSITY, share);
        Source::published(Work::OimlR22, "general formula at 20 °C"); "alcohol and water at 20 °C", within 0.00001;
    /// Alcohol by volume of what is finished.
    AlcoholByVolume "alcohol-by-volume" { alcohol: one "a" ML, finished: one "F" ML }
        gives "alcohol by volume" "q" PER_CENT_VV = alcohol / finished;
        Source::memory("volumes of spirit and syrup are added; no measurements were found, so 1.5 % is allowed for");
        "spirit stirred into a syrup";
    /// Alcohol in a dose, by weight.
    AlcoholPerDose "alcohol-per-dose" { alcohol: one "m" G, dose: one "d" ML, finished: one "F" ML }
        gives "alcohol in a dose" "s" G = alcohol * dose / finished;
        Source::reckoned("plain proportion"); "a well stirred bottle";
    /// Water that sugar preserves and room that it takes.
    HeldBySugar "held-by-sugar" { solids: many "S" G }
        gives "held by sugar" "h" ML = sum(solids) * (figure(&SUGAR_PRESERVES) + figure(&SUGAR_OCCUPIES));
        RULE; "honey's solids are counted as sugar";
    /// Water that glycerin preserves and room that it takes.
    HeldByGlycerin "held-by-glycerin" { glycerin: one "g" ML }
        gives "held by glycerin" "h" ML = number(2.0) * glycerin;
        RULE; "glycerin preserves an equal volume beside its own";
    /// Free water of a syrup: what neither sugar nor glycerin preserves.
    FreeWater "free-water" { finished: one "F" ML, held: many "h" ML }
        gives "free water" "W" ML = greater(number(0.0), finished - sum(held));
        RULE; "a screen used in teaching, not a test of shelf life";
    /// Alcohol against the free water.
    Covered "covered" { alcohol: many "a" ML, free: one "W" ML }
        gives "alcohol in the free water" "c" PER_CENT = choose(figure(&TRACE), free, sum(alcohol) / free, number(1.0));
        RULE; "where no water is free, all of it is covered";
    /// Acetic acid of a mixture.
    Acidity "acidity" { acid: one "m" G, finished: one "F" ML }
        gives "acetic acid" "c" PER_CENT_WV = acid / finished;
        Source::reckoned("per cent weight in volume"); "vinegar in watery liquids";
    /// Acetic acid brought by vinegar.
    AcidOf "acid-of" { vinegar: one "v" ML, acidity: one "c" PER_CENT_WV }
        gives "acetic acid brought" "m" G = vinegar * acidity;
        Source::reckoned("per cent weight in volume"); "always";
    /// Share of one volume in the finished.
    ShareOfFinished "share-of-finished" { part: one "v" ML, finished: one "F" ML }
        gives "share by volume" "s" PER_CENT_VV = part / finished;
        Source::reckoned("per cent by volume"); "volumes that add";
    /// Share of one weight in a sum of two.
    ShareOfTwo "share-of-two" { part: one "m" G, other: one "n" G }
        gives "share by weight" "s" PER_CENT_WW = part / (part + other);
        Source::reckoned("per cent by weight"); "always";
    /// Final volume of a dilution by volume.
    DilutedVolume "diluted-volume" { strong: one "v" ML, strength: one "q" PER_CENT_VV, wanted: one "w" PER_CENT_VV }
        gives "volume of the diluted spirit" "F" ML = strong * strength / wanted;
        Source::reckoned("the pure alcohol stays the same"); "made up to the mark";
    /// Spirit needed for a volume at a strength.
    SpiritFor "spirit-for" { finished: one "F" ML, wanted: one "w" PER_CENT_VV, strength: one "q" PER_CENT_VV }
        gives "spirit to take" "v" ML = finished * wanted / strength;
        Source::reckoned("the pure alcohol stays the same"); "made up to the mark";
    /// Water to add to a spirit, exact by weight.
    WaterToAdd "water-to-add" { spirit: one "m" G, share: one "p" PER_CENT_WW, wanted: one "w" PER_CENT_WW }
        gives "water to add, by weight" "W" G = spirit * share / wanted - spirit;
        Source::published(Work::OimlR22, "weights add where volumes shrink"); "alcohol and water";
    /// The kitchen's rule for the same: volumes taken as if they added.
    WaterByRule "water-by-rule" { spirit: one "v" ML, strength: one "q" PER_CENT_VV, wanted: one "w" PER_CENT_VV }
        gives "water to add, by the kitchen's rule" "R" ML = spirit * strength / wanted - spirit;
        Source::practice("volumes are taken as if they added"); "near enough below 60 % by volume";
    /// Alcohol by volume from alcohol by weight.
    ByVolume "by-volume" { share: one "p" PER_CENT_WW }
        gives "alcohol by volume" "q" PER_CENT_VV = share * look(&SPIRIT_DENSITY, share) / figure(&ETHANOL_DENSITY);
        Source::published(Work::OimlR22, "general formula at 20 °C"); "alcohol and water at 20 °C", within 0.00005;
}
