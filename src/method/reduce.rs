//! Boiling down, lid off, to a mark.

use super::laying::SPIRIT;
use super::{Hazard, Laying, Level, Say, words};
use crate::formula::catalogue::pan::{ShareOfVolume, TimeToLose};
use crate::formulary::Aromatic;
use crate::materia::LID_OFF;
use crate::measure::unit::{ML, ONE};
use crate::measure::{LeftOf, Reduction};
use crate::recipe::Menstruum;
use crate::span::Span;
use crate::working::Id;

pub(super) fn lay(at: &mut Laying, span: Span, to: &Reduction) {
    let Some(before) = at.volume else { return };
    if !at.strained {
        at.too_early(
            span,
            "`reduce` stands before the straining",
            "while the plants are in the pan they hide the mark, and what they keep would be boiled twice",
            "- strain: squeezed and then - reduce: to 1/2 of the liquid",
        );
        return;
    }
    if at.batch.holds_spirit() {
        let write = match at.recipe.menstruum() {
            Some(Menstruum::Spirit) => "liquid: {spirit: 1:3 w/v, ...} where it is to be stronger",
            _ => "- reduce: ... before - fortify: {...}",
        };
        let message = "spirit is in the pan that is to be reduced";
        at.unfit(span, SPIRIT, message, "its vapour catches fire, and the alcohol leaves", write);
        return;
    }
    if at.batch.holds_vinegar() {
        at.order(
            span,
            "vinegar is in the pan that is to be reduced",
            "part of its acid leaves with the steam, and how much is in no table: what it keeps by could not be told",
            "less liquid at the start, or - reduce: ... before - acidify: {...}",
        );
        return;
    }
    let left = match to {
        Reduction::ToShare { share, of } => {
            let share = at.work.given("share left after reducing", &ONE, *share, false, span);
            let whole = match of {
                LeftOf::Liquid => before,
                LeftOf::Water => at.work.line(Id::Water).unwrap_or(before),
            };
            at.work.work("reduced", ShareOfVolume { share, whole })
        }
        Reduction::ToVolume(amount) => at.declared("reduced", &ML, amount, true, span),
    };
    at.pans.push(before);
    let mixed = !at.batch.is_water();
    let away = at.batch.boil_down(before, left, &mut at.work);
    let rate = at.assume(&LID_OFF);
    let minutes = at.work.work("minutes to reduce", TimeToLose { away, rate });
    at.takes(minutes, true);
    at.work.claim(Id::ReducedBy, away);
    at.work.claim(Id::Reduced, left);
    at.work.measurable(left);
    let uses = at.recipe.plants.iter().chain(at.recipe.method.iter().flat_map(|step| step.value.adds()));
    for used in uses {
        if let Some(plant) = at.book.plants.get(&used.plant.value)
            && plant.aromatic != Aromatic::No
        {
            at.hazards.push(Hazard::AromaticBoiled { plant: plant.id.clone(), minutes: None, at: span });
        }
    }
    at.hazards.push(Hazard::HotLiquid);
    at.need("a pan with a lid");
    at.need("a clean stick to mark the level");
    let say = vec![
        words("Mark the pan at "),
        Say::Volume(left),
        words(" with a clean stick. Simmer, lid off, down to the mark"),
        words(if mixed { ", stirring: what is sweet catches." } else { "." }),
    ];
    at.hot = true;
    at.cooled = None;
    at.volume = Some(left);
    let (liquid, sweet) = if mixed { at.batch.layers() } else { (vec![left], Vec::new()) };
    let level = Level {
        words: "Reduce to the mark",
        volume: left,
        liquid,
        sweet,
        kept: None,
        gone: Some(away),
        change: vec![Say::Volume(away), words(" boiled away")],
    };
    at.finish_step("reduce", say, vec![minutes], "lid off".to_string(), Some(level));
}
