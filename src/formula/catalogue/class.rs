//! What a class costs and what it asks: packs, prices, places; and small sums of the kitchen that a student turns round.

use super::formulas;
use crate::bibliography::{Source, Work};
use crate::formula::expr::{figure, whole_down, whole_up};
use crate::materia::PROOF_OF_ALCOHOL;

const PROPORTION: Source = Source::reckoned("plain proportion");
const SHEET: Source = Source::practice("as a cost sheet is kept on paper");

formulas! {
    /// Whole packs of a weight.
    Packs "packs" { needed: one "m" G, holds: one "M" G }
        gives "whole packs" "n" ONE = whole_up(needed / holds);
        SHEET; "weighed goods";
    /// Whole packs of a volume.
    PacksByVolume "packs-by-volume" { needed: one "v" ML, holds: one "V" ML }
        gives "whole packs" "n" ONE = whole_up(needed / holds);
        SHEET; "measured goods";
    /// What so many packs cost.
    CostOfPacks "cost-of-packs" { packs: one "n" ONE, price: one "p" MONEY }
        gives "bought, with whole packs" "c" MONEY = packs * price;
        SHEET; "one price a pack";
    /// What a weight out of a pack costs.
    CostUsed "cost-used" { needed: one "m" G, holds: one "M" G, price: one "p" MONEY }
        gives "as used" "c" MONEY = needed / holds * price;
        SHEET; "weighed goods; the rest of the pack is kept";
    /// What a volume out of a pack costs.
    CostUsedByVolume "cost-used-by-volume" { needed: one "v" ML, holds: one "V" ML, price: one "p" MONEY }
        gives "as used" "c" MONEY = needed / holds * price;
        SHEET; "measured goods; the rest of the pack is kept";
    /// Costs added.
    AddCosts "add-costs" { each: many "c" MONEY }
        gives "costs together" "C" MONEY = crate::formula::expr::sum(each);
        SHEET; "always";
    /// A cost shared out.
    CostEach "cost-each" { cost: one "c" MONEY, count: one "n" ONE }
        gives "cost of each" "e" MONEY = cost / count;
        SHEET; "shared alike";
    /// Places that pay for a class.
    BreakEven "break-even" { fixed: one "K" MONEY, fee: one "f" MONEY, variable: one "v" MONEY }
        gives "students that pay for it" "n" ONE = whole_up(fixed / (fee - variable));
        SHEET; "a fee above what each student costs";
    /// A count for people, down to the whole one.
    WholeOf "whole-of" { count: one "n" ONE }
        gives "whole ones" "N" ONE = whole_down(count);
        PROPORTION; "what is not full is not counted";
    /// Liquid to each gram.
    LiquidToEach "liquid-to-each" { liquid: one "V" ML, plants: one "m" G }
        gives "liquid to each gram" "n" ML_PER_G = liquid / plants;
        PROPORTION; "by weight and volume";
    /// How fast a pot loses water, from a trial.
    PotTest "pot-test" { away: one "B" ML, time: one "t" MIN }
        gives "lost in a minute" "e" ML_PER_MIN = away / time;
        Source::practice("measured before and after, at a steady simmer"); "that pot, that stove, that lid";
    /// Strength of a proof, United States.
    OfProof "of-proof" { proof: one "P" ONE }
        gives "alcohol by volume" "q" PER_CENT_VV = proof / figure(&PROOF_OF_ALCOHOL);
        Source::published(Work::Cfr27, "twice the per cent by volume"); "United States, at 60 °F";
    /// Volume of drops.
    VolumeOfDrops "volume-of-drops" { drops: one "n" COUNT, dropper: one "k" DROPS_PER_ML }
        gives "volume of the drops" "v" ML = drops / dropper;
        PROPORTION; "a dropper that was counted out";
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formula::Sum;

    // A cost sheet by hand: 3 oz needed, sold in packs of 4 oz at 9 dollars: one pack, 9.00 bought, 6.75 as used, 0.75
    // each for twelve. Fixed costs of 120, a fee of 45, 18 for each student: 120 over 27 is 4.4, so five.
    #[test]
    fn a_cost_sheet_by_hand() {
        let mut sum = Sum::default();
        let (needed, holds, price) = (sum.line(3.0), sum.line(4.0), sum.line(9.0));
        let packs = sum.work(Packs { needed, holds });
        let bought = sum.work(CostOfPacks { packs, price });
        let count = sum.line(12.0);
        let each = sum.work(CostEach { cost: bought, count });
        let used = sum.gives(CostUsed { needed, holds, price });
        assert_eq!((sum.at(packs), sum.at(bought), sum.at(each), used), (1.0, 9.0, 0.75, 6.75));
        let (fixed, fee, variable) = (sum.line(120.0), sum.line(45.0), sum.line(18.0));
        assert_eq!(sum.gives(BreakEven { fixed, fee, variable }), 5.0);
        // Eight of four ounces are two packs, and not three for a last bit.
        let (needed, holds) = (sum.line(0.3), sum.line(0.1));
        assert_eq!(sum.gives(Packs { needed, holds }), 3.0);
    }

    // A pot test by hand: 32 fl oz, after 25 minutes 24: 8 fl oz of 29.57 mL in 25 min are 9.5 mL a minute. 151 proof is
    // 75.5 %; 30 drops of a dropper that gives 20 to the millilitre are 1.5 mL.
    #[test]
    fn small_sums_by_hand() {
        let mut sum = Sum::default();
        let (away, time) = (sum.line(8.0 * 29.5735295625), sum.line(25.0));
        assert!((sum.gives(PotTest { away, time }) - 9.5).abs() < 0.05);
        let proof = sum.line(151.0);
        assert!((sum.gives(OfProof { proof }) - 0.755).abs() < 1e-12);
        let (drops, dropper) = (sum.line(30.0), sum.line(20.0));
        assert_eq!(sum.gives(VolumeOfDrops { drops, dropper }), 1.5);
    }
}
