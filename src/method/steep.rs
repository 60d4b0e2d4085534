//! Standing covered, off the heat.

use super::{Hazard, Laying, Say, words};
use crate::materia::POUR_ON;
use crate::measure::{Amount, unit::MIN};
use crate::span::{Span, Spanned};

pub(super) fn lay(at: &mut Laying, span: Span, time: &Spanned<Amount>, from_boiling: bool) {
    let Some(volume) = at.volume else { return };
    if at.strained {
        at.order(
            span,
            "`steep` stands after the straining",
            "nothing is left in the liquid to steep",
            "- steep: 20 min before - strain: squeezed",
        );
        return;
    }
    let minutes = at.declared("minutes steeping", &MIN, &time.value, false, time.span);
    let mut times = Vec::new();
    let plants = at.plant_words();
    let say = if from_boiling {
        times.push(at.allowance(&POUR_ON, true));
        at.hazards.push(Hazard::HotLiquid);
        at.need("a kettle");
        at.need("a jug or pot with a lid");
        vec![
            words("Boil "),
            Say::Volume(volume),
            words(format!(" of water, take it off the boil, pour it over the {plants} and cover at once.")),
        ]
    } else if at.off_heat {
        vec![words("Leave to stand, covered.")]
    } else if at.hot {
        vec![words("Take off the heat, cover and leave to stand.")]
    } else {
        vec![
            words(format!("Cover the {plants} with ")),
            Say::Volume(volume),
            words(format!(" of {} and leave to stand, covered.", at.cold_liquid())),
        ]
    };
    at.takes(minutes, false);
    times.push(minutes);
    at.hot |= from_boiling;
    at.finish_step("steep", say, times, "covered, off the heat".to_string(), None);
}
