//! Sugar boiled to a stage: what stays is sugar with a little water.

use super::laying::SPIRIT;
use super::simmer::altitude;
use super::{Hazard, Laying, Say, words};
use crate::bibliography::{Source, Work};
use crate::formula::catalogue::heat::StageHere;
use crate::formula::catalogue::pan::BoiledDown;
use crate::materia::{BOILING_SUGAR, CRACK_WATER, CRACKS, SOFT_CRACK_WATER, Stage};
use crate::measure::unit::CELSIUS;
use crate::span::{Span, Spanned};
use crate::working::Id;

pub(super) fn lay(at: &mut Laying, span: Span, stage: &Spanned<&'static Stage>) {
    if at.volume.is_none() {
        return;
    }
    if at.batch.holds_spirit() {
        at.unfit(
            span,
            SPIRIT,
            "spirit is in the pan that is to be boiled",
            "its vapour catches fire, and the alcohol leaves",
            "- fortify: {...} left out",
        );
        return;
    }
    let solids = if at.strained { at.batch.solids_of_each(&mut at.work) } else { Vec::new() };
    if solids.is_empty() {
        at.order(
            span,
            "nothing sweet is in the pan that is to be boiled to a stage",
            "the stages are those of sugar",
            "- strain: squeezed and then - sweeten: {sugar: 400 g}",
        );
        return;
    }
    let water = at.assume(if stage.value.name == CRACKS[0] { &SOFT_CRACK_WATER } else { &CRACK_WATER });
    let weight = at.work.work("boiled down", BoiledDown { solids, water });
    at.dough.dry = Some(weight);
    at.closed = Some("boil to");
    at.volume = None;
    let source = Source::published(Work::FoodAndCooking, "stages of boiled sugar at the sea");
    let name = format!("{}, at the sea", stage.value.name);
    let mut here = at.work.published(name, "stages", &CELSIUS, stage.value.from, source);
    if let Some(altitude) = altitude(at) {
        here = at
            .work
            .work(format!("{} in this kitchen", stage.value.name), StageHere { stage: here, altitude });
    }
    at.work.claim(Id::Stage, here);
    let begins = at.work.evaluate(&[])[here.index()];
    let ends = begins + (stage.value.to - stage.value.from);
    at.hazards.push(Hazard::HotSugar);
    at.hot = true;
    at.need("a heavy pan, twice as deep as the syrup");
    at.need("a sugar thermometer");
    at.need("a bowl of cold water");
    let minutes = at.allowance(&BOILING_SUGAR, true);
    let say = vec![
        words("Boil without stirring to "),
        Say::Temperature(begins),
        words(" and not above "),
        Say::Temperature(ends),
        words(format!(": the {}. Try a drop in cold water.", stage.value.name)),
    ];
    at.finish_step("boil to", say, vec![minutes], "an estimate; go by the thermometer".to_string(), None);
}
