//! Rules of the pharmacy: strengths mixed and changed, child doses of history, ceilings, drinks and
//! proof, drops, temperatures mixed, wax for a salve.

use super::formulas;
use crate::bibliography::{Source, Work};
use crate::formula::expr::{figure, number, sum};
use crate::materia::{
    ADULT_SURFACE, BRITISH_PROOF, CLARK_WEIGHT, COWLING_YEARS, FRIED_MONTHS, PROOF_OF_ALCOHOL, YOUNG_YEARS,
};

const BALANCE: Source = Source::reckoned("what is dissolved stays the same");
const PROPORTION: Source = Source::reckoned("plain proportion");
const ALLIGATION: Source = Source::published(Work::PharmaceuticalCalculations, "alligation");
const CHILD: Source = Source::published(Work::ChildDose, "a rule of history");

formulas! {
    /// Strength of a mixture of volumes (alligation medial).
    MixedStrength "mixed-strength" { volume: many "v" ML, strength: many "q" PER_CENT_VV }
        gives "strength of the mixture" "Q" PER_CENT_VV = sum(volume * strength) / sum(volume);
        ALLIGATION; "volumes taken as if they added";
    /// Strength of a mixture of weights (alligation medial).
    MixedShare "mixed-share" { weight: many "m" G, share: many "p" PER_CENT_WW }
        gives "share in the mixture" "P" PER_CENT_WW = sum(weight * share) / sum(weight);
        ALLIGATION; "always";
    /// Parts of the strong for a strength between (alligation alternate).
    PartsOfStrong "parts-of-strong" { wanted: one "w" PER_CENT, weak: one "l" PER_CENT }
        gives "parts of the strong" "s" PER_CENT = wanted - weak;
        ALLIGATION; "a strength between the two; weights, or volumes taken as if they added";
    /// Parts of the weak for a strength between.
    PartsOfWeak "parts-of-weak" { strong: one "h" PER_CENT, wanted: one "w" PER_CENT }
        gives "parts of the weak" "r" PER_CENT = strong - wanted;
        ALLIGATION; "a strength between the two; weights, or volumes taken as if they added";
    /// The strong in so much of the mixture.
    StrongOf "strong-of" { whole: one "V" ML, strong_parts: one "s" PER_CENT, weak_parts: one "r" PER_CENT }
        gives "of the strong" "v" ML = whole * strong_parts / (strong_parts + weak_parts);
        ALLIGATION; "volumes taken as if they added";
    /// Weight after thinning by weight.
    DilutedWeight "diluted-weight" { strong: one "m" G, share: one "p" PER_CENT_WW, wanted: one "w" PER_CENT_WW }
        gives "weight of the thinned" "M" G = strong * share / wanted;
        BALANCE; "always";
    /// Volume after thinning a weight in volume.
    DilutedTo "diluted-to" { held: one "m" G, wanted: one "c" PER_CENT_WV }
        gives "volume it makes" "V" ML = held / wanted;
        BALANCE; "made up to the mark";
    /// Pure drug that strengthens a mixture.
    PureToAdd "pure-to-add" { weight: one "m" G, share: one "p" PER_CENT_WW, wanted: one "w" PER_CENT_WW }
        gives "pure drug to add" "a" G = weight * (wanted - share) / (number(1.0) - wanted);
        Source::published(Work::PharmaceuticalCalculations, "the drug counts as 100 %"); "always";
    /// Young's rule.
    Young "young" { adult: one "d" G, age: one "y" YEAR }
        gives "child's dose by Young" "D" G = adult * age / (age + figure(&YOUNG_YEARS));
        CHILD; "history, for teaching only; not a dose";
    /// Cowling's rule.
    Cowling "cowling" { adult: one "d" G, next_birthday: one "y" YEAR }
        gives "child's dose by Cowling" "D" G = adult * next_birthday / figure(&COWLING_YEARS);
        Source::from_memory(Work::ChildDose, "a rule of history"); "history, for teaching only; not a dose";
    /// Clark's rule.
    Clark "clark" { adult: one "d" G, body: one "b" KG }
        gives "child's dose by Clark" "D" G = adult * body / figure(&CLARK_WEIGHT);
        CHILD; "history, for teaching only; not a dose";
    /// Fried's rule.
    Fried "fried" { adult: one "d" G, age: one "n" MONTH }
        gives "infant's dose by Fried" "D" G = adult * age / figure(&FRIED_MONTHS);
        CHILD; "history, for teaching only; not a dose";
    /// The rule of the body's surface.
    BySurface "by-surface" { adult: one "d" G, surface: one "f" M2 }
        gives "child's dose by surface" "D" G = adult * surface / figure(&ADULT_SURFACE);
        CHILD; "history, for teaching only; not a dose";
    /// What a body bears daily, by its weight.
    ForTheBody "for-the-body" { body: one "b" KG, each: one "k" MG_PER_KG }
        gives "a day at most" "c" MG = body * each;
        PROPORTION; "every day for a lifetime, unless its source says otherwise";
    /// Weight of a plant that holds so much of a constituent.
    HoldsCeiling "holds-ceiling" { ceiling: one "c" G, content: one "k" MG_PER_G }
        gives "plant at most" "m" G = ceiling / content;
        PROPORTION; "the content differs from lot to lot";
    /// Drinks by the weight of their alcohol.
    DrinksByWeight "drinks-by-weight" { alcohol: one "m" G, drink: one "e" G }
        gives "drinks" "n" ONE = alcohol / drink;
        PROPORTION; "a count, not a limit";
    /// Units by the volume of their alcohol.
    DrinksByVolume "drinks-by-volume" { alcohol: one "a" ML, unit: one "e" ML }
        gives "units of alcohol" "n" ONE = alcohol / unit;
        PROPORTION; "a count, not a limit";
    /// Proof, United States.
    Proof "proof" { strength: one "q" PER_CENT_VV }
        gives "proof" "P" ONE = strength * figure(&PROOF_OF_ALCOHOL);
        Source::published(Work::Cfr27, "twice the per cent by volume"); "United States, at 60 °F";
    /// Strength of an old British proof.
    OfBritishProof "of-british-proof" { proof: one "P" PER_CENT }
        gives "alcohol by volume" "q" PER_CENT_VV = proof * figure(&BRITISH_PROOF);
        Source::published(Work::StandardDrinks, "100° proof is 57.15 % by volume"); "British labels before 1980";
    /// A dropper counted out.
    DropsToMl "drops-to-ml" { drops: one "n" COUNT, volume: one "v" ML }
        gives "drops to a millilitre" "k" DROPS_PER_ML = drops / volume;
        PROPORTION; "that dropper and that liquid";
    /// Drops of a volume.
    DropsOf "drops-of" { volume: one "v" ML, dropper: one "k" DROPS_PER_ML }
        gives "drops" "n" COUNT = volume * dropper;
        PROPORTION; "a dropper that was counted out; water from an official one, within a tenth";
    /// Temperature of liquids poured together.
    MixedTemperature "mixed-temperature" { weight: many "m" G, temperature: many "t" CELSIUS }
        gives "temperature of the mixture" "T" CELSIUS = sum(weight * temperature) / sum(weight);
        Source::reckoned("heat lost by the one is gained by the other"); "watery liquids; the pot's own heat is left out";
    /// Wax for a salve.
    WaxFor "wax-for" { batch: one "M" G, oil: one "n" ONE }
        gives "wax" "x" G = batch / (number(1.0) + oil);
        PROPORTION; "by weight";
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formula::{Line, Use, evaluate};

    fn gives(by: impl Into<Use>, values: &[f64]) -> f64 {
        let by = by.into();
        evaluate(&by.formula.is, &by.with, values, 0)
    }

    // By hand: what has no printed figure among the checks.
    #[test]
    fn what_nobody_prints() {
        // Cowling, from memory: 6 at the next birthday is a quarter of 24.
        assert_eq!(gives(Cowling { adult: Line(0), next_birthday: Line(1) }, &[0.1, 6.0 * 525_960.0]), 0.025);
        // A litre off the boil on three of cold water.
        let mixed = MixedTemperature { weight: vec![Line(0), Line(1)], temperature: vec![Line(2), Line(3)] };
        assert_eq!(gives(mixed, &[1000.0, 3000.0, 100.0, 20.0]), 40.0);
        // 70 and 20 to make 30, by weight: one part in five.
        let mixed = MixedShare { weight: vec![Line(0), Line(1)], share: vec![Line(2), Line(3)] };
        assert!((gives(mixed, &[10.0, 40.0, 0.70, 0.20]) - 0.30).abs() < 1e-12);
        assert_eq!(gives(DropsOf { volume: Line(0), dropper: Line(1) }, &[2.0, 17.5]), 35.0);
    }
}
