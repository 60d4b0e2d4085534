//! Closing the account of what is weighed and not poured: blends, lozenges, drops, poultices.

use super::account::{days, times, wrong_dose};
use super::{Laying, add_weights, put_in_each, words};
use crate::formula::Line;
use crate::formula::catalogue::dose::{
    DosesByPiece, DosesByWeight, ShareOfEnergy, ShareOfPieces, ShareOfWhole,
};
use crate::formula::catalogue::pan::{Pieces, ShareOfWeight};
use crate::materia::MIXING;
use crate::measure::Dimension;
use crate::measure::unit::{G, ONE};
use crate::recipe::Take;
use crate::working::Id;

/// A dry blend: what is put in is what there is.
pub(super) fn blend(at: &mut Laying) {
    let Some(weight) = at.work.line(Id::Plants) else { return };
    at.passed_on = at.marc.weights.clone();
    let minutes = at.allowance(&MIXING, false);
    let say = vec![words(
        "Weigh each plant. Mix from the smallest to the largest, tumble well, and let the jar rest a day before you taste.",
    )];
    at.need("scales");
    at.need("a dry jar with a lid");
    at.finish_step("mix", say, vec![minutes], String::new(), None);
    close(at, weight);
}

/// What is finished weighs so much, g.
pub(super) fn close(at: &mut Laying, weight: Line) {
    let wet = std::mem::take(&mut at.dough.wet);
    let weight = match wet[..] {
        [] => weight,
        _ => add_weights(&mut at.work, "moist, weighed", wet.into_iter().chain([weight]).collect()),
    };
    at.work.claim(Id::FinishedWeight, weight);
    at.work.measurable(weight);
    let pieces = at.dough.piece.map(|piece| {
        let pieces = at.work.work("pieces", Pieces { finished: weight, piece });
        at.work.claim(Id::Pieces, pieces);
        pieces
    });
    if let Some(take) = at.recipe.take.clone() {
        doses(at, &take, weight, pieces);
    }
    times(at);
}

/// Doses by the piece or by weight: how many, and what one holds.
pub(super) fn doses(at: &mut Laying, take: &Take, finished: Line, pieces: Option<Line>) {
    let amount = &take.amount;
    let (doses, share) = match (amount.value.dimension(), pieces) {
        (Dimension::COUNT, Some(pieces)) => {
            let dose = at.work.given("larger dose", &ONE, amount.value.high, false, amount.span);
            let share = at.work.work("a dose of the whole", ShareOfPieces { dose, pieces });
            (at.work.work("doses", DosesByPiece { pieces, dose }), share)
        }
        (Dimension::MASS, _) => {
            let dose = at.work.given("larger dose", &G, amount.value.high, false, amount.span);
            let share = at.work.work("a dose of the whole", ShareOfWhole { dose, finished });
            (at.work.work("doses", DosesByWeight { finished, dose }), share)
        }
        (_, Some(_)) => return wrong_dose(at, take, "what is cut is taken by the piece", "1 piece"),
        _ => {
            let why = "a dose of what is weighed is weighed; a spoon of it may hold one gram or three";
            return wrong_dose(at, take, why, "2 g");
        }
    };
    let daily = days(at, take, doses);
    let passed_on = at.passed_on.clone();
    if !passed_on.is_empty() {
        let plant = add_weights(&mut at.work, "plant in it", passed_on);
        let in_dose = at.work.work("plant in a dose", ShareOfWeight { share, whole: plant });
        at.work.claim(Id::PlantPerDose, in_dose);
    }
    if let Some(sugars) = at.batch.sugars(&mut at.work) {
        let sugar = at.work.work("sugars in a dose", ShareOfWeight { share, whole: sugars });
        at.work.claim(Id::SugarPerDose, sugar);
    }
    if let Some(energy) = at.batch.energy(&mut at.work) {
        let energy = at.work.work("energy in a dose", ShareOfEnergy { share, energy });
        at.work.claim(Id::EnergyPerDose, energy);
    }
    put_in_each::ceilings(at, daily, |work, name, whole| work.work(name, ShareOfWeight { share, whole }));
}
