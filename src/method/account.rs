//! Closing the account: what is finished, what is dissolved in it, and what a dose holds.

use super::{Laying, add_times, add_weights, put_in_each, weighed};
use crate::batch::Part;
use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::formula::catalogue::dose::{Days, Doses, EnergyPerDose, PlantPerDose, Strength, WeightPerDose};
use crate::formula::catalogue::spirit::AlcoholPerDose;
use crate::materia::{GLYCEROL_MOST, SUCROSE_MOST};
use crate::measure::Dimension;
use crate::measure::unit::{ML, ONE};
use crate::recipe::{Menstruum, Shape, Take, Vessel};
use crate::working::{Id, Range, Working};

pub(super) fn close(at: &mut Laying) {
    if at.recipe.preparation.value.shape == Shape::Dry {
        weighed::blend(at);
        return;
    }
    if let Some(weight) = at.dough.dry {
        weighed::close(at, weight);
        return;
    }
    let Some(volume) = at.volume else { return };
    if !at.strained {
        at.findings.push(
            Finding::error(Code::StepOrder, at.recipe.name.span, "the method never strains")
                .why("what is finished is what runs through the cloth")
                .write("- strain: squeezed"),
        );
        return;
    }
    let finished = volume;
    at.work.claim(Id::Finished, finished);
    if at.sweetened {
        at.work.rename(finished, "finished");
    }
    at.work.measurable(finished);
    let weight = at.batch.weight("finished, weighed", &mut at.work);
    at.work.claim(Id::FinishedWeight, weight);
    if let Some(solids) = at.batch.solids(&mut at.work) {
        at.work.claim(Id::Solids, solids);
    }
    kept(at, finished);
    let passed_on = at.passed_on.clone();
    let plant = add_weights(&mut at.work, "plant in the liquid", passed_on);
    let strength = at.work.work("plant in the finished", Strength { plant, finished });
    at.work.claim(Id::Strength, strength);
    if let Some(take) = at.recipe.take.clone() {
        doses(at, &take, finished, weight, plant);
    }
    times(at);
}

/// Minutes in all, and at the stove.
pub(super) fn times(at: &mut Laying) {
    let times = at.times.clone();
    if times.is_empty() {
        return;
    }
    let minutes = add_times(&mut at.work, "minutes in all", times);
    at.work.claim(Id::Minutes, minutes);
    let stove = at.stove.clone();
    if !stove.is_empty() {
        let stove = add_times(&mut at.work, "minutes at the stove", stove);
        at.work.claim(Id::StoveMinutes, stove);
    }
}

pub(super) fn wrong_dose(at: &mut Laying, take: &Take, why: &str, write: &str) {
    let message =
        format!("`{}` is {}", take.amount.value.written, take.amount.value.dimension().with_article());
    at.findings.push(Finding::error(Code::WrongDimension, take.amount.span, message).why(why).write(write));
}

/// Doses and how long they last.
/// Gives the line of how many a day.
pub(super) fn days(at: &mut Laying, take: &Take, doses: Line) -> Line {
    at.work.claim(Id::Doses, doses);
    let daily = at.work.given("doses a day", &ONE, take.daily.value, false, take.daily.span);
    at.daily = Some(daily);
    let people = at.work.given("people", &ONE, take.people.value, false, take.people.span);
    let days = at.work.work("days", Days { doses, daily, people });
    at.work.claim(Id::Days, days);
    daily
}

/// What keeping is judged by: water activity, alcohol, acid, glycerin, free water, crystals.
fn kept(at: &mut Laying, finished: Line) {
    if let Some(abv) = at.batch.by_volume(finished, &mut at.work) {
        at.work.claim(Id::Abv, abv);
    }
    if let Some(acidity) = at.batch.acidity(finished, &mut at.work) {
        at.work.claim(Id::Acidity, acidity);
    }
    if let Some(glycerin) = at.batch.glycerin(finished, &mut at.work) {
        at.work.claim(Id::Glycerin, glycerin);
    }
    if at.recipe.menstruum() == Some(Menstruum::Honey)
        && let Some(moisture) = at.batch.moisture(&mut at.work)
    {
        at.work.claim(Id::Moisture, moisture);
    }
    if at.batch.holds_oil() {
        let water = at.batch.water_in_oil(&mut at.work);
        at.work.claim(Id::WaterInOil, water);
    }
    if let Some((free, covered)) = at.batch.free_water(finished, &mut at.work) {
        at.work.claim(Id::FreeWater, free);
        at.work.claim(Id::Covered, covered);
    }
    if let Some(share) = at.batch.sucrose_share(&mut at.work) {
        at.work.claim(Id::SugarInWater, share);
    }
    if let Some(share) = at.batch.glycerol_share(&mut at.work) {
        at.work.claim(Id::GlycerolInWater, share);
    }
    let ranges = at.work.range(&[]);
    if activity_is_known(&at.work, &ranges)
        && let Some(activity) = at.batch.water_activity(&mut at.work)
    {
        at.work.claim(Id::WaterActivity, activity);
    }
}

/// Whether a mixture is one that the equations of water activity were measured on. Above 60 % glycerol they read
/// too dry, on the unsafe side, and nothing holds them above saturated sugar: no figure is better than that.
pub(crate) fn activity_is_known(work: &Working, ranges: &[Range]) -> bool {
    let within = |id: Id, most: f64| work.line(id).is_none_or(|line| ranges[line.index()].high <= most);
    within(Id::GlycerolInWater, GLYCEROL_MOST.value) && within(Id::SugarInWater, SUCROSE_MOST.value)
}

/// Doses by the larger amount taken: fewer doses, and the most that one holds.
fn doses(at: &mut Laying, take: &Take, finished: Line, weight: Line, plant: Line) {
    match take.amount.value.dimension() {
        Dimension::VOLUME => {}
        // What is spooned out of a jar may as well be weighed.
        Dimension::MASS if at.recipe.preparation.value.vessel == Vessel::Jar => {
            return weighed::doses(at, take, weight, None);
        }
        _ => {
            let why = "a dose of a liquid is measured by the spoon or the millilitre";
            return wrong_dose(at, take, why, "1 tsp");
        }
    }
    let dose = at.work.given("larger dose", &ML, take.amount.value.high, false, take.amount.span);
    let doses = at.work.work("doses", Doses { finished, dose });
    let daily = days(at, take, doses);
    let in_dose = at.work.work("plant in a dose", PlantPerDose { plant, dose, finished });
    at.work.claim(Id::PlantPerDose, in_dose);
    if let Some(sugars) = at.batch.sugars(&mut at.work) {
        let sugar = at.work.work("sugars in a dose", WeightPerDose { weight: sugars, dose, finished });
        at.work.claim(Id::SugarPerDose, sugar);
    }
    if let Some(alcohol) = at.batch.part(Part::Ethanol, "pure alcohol, weighed", &mut at.work) {
        let alcohol = at.work.work("alcohol in a dose", AlcoholPerDose { alcohol, dose, finished });
        at.work.claim(Id::AlcoholPerDose, alcohol);
    }
    if let Some(energy) = at.batch.energy(&mut at.work) {
        let energy = at.work.work("energy in a dose", EnergyPerDose { energy, dose, finished });
        at.work.claim(Id::EnergyPerDose, energy);
    }
    put_in_each::ceilings(at, daily, |work, name, plant| {
        work.work(name, PlantPerDose { plant, dose, finished })
    });
}
