//! Standing covered, off the heat: cold, kept warm, or with boiling water poured on.

use super::laying::SPIRIT;
use super::{Hazard, Laying, Say, words};
use crate::diagnostic::{Code, Finding};
use crate::formulary::Aromatic;
use crate::materia::POUR_ON;
use crate::measure::{Amount, unit::MIN};
use crate::recipe::Start;
use crate::span::{Span, Spanned};

/// What stands longer than this waits in a jar and not in the pan, min.
const A_DAY: f64 = 1440.0;
/// Honey kept above this is honey no more, °C: common practice, no source.
const HONEY_WARM: f64 = 50.0;

pub(super) fn lay(at: &mut Laying, span: Span, time: &Spanned<Amount>, start: &Start) {
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
    if refused(at, span, time, start) {
        return;
    }
    let minutes = at.declared("minutes steeping", &MIN, &time.value, false, time.span);
    let mut times = Vec::new();
    let plants = at.plant_words();
    let volume = at.to_pour.take().unwrap_or(volume);
    let cold = vec![
        words(format!("Cover the {plants} with ")),
        Say::Volume(volume),
        words(format!(" of {}", at.cold_liquid())),
    ];
    let say = match start {
        Start::Boiling => {
            times.push(at.allowance(&POUR_ON, true));
            at.hazards.push(Hazard::HotLiquid);
            at.need("a kettle");
            at.need("a jug or pot with a lid");
            vec![
                words("Boil "),
                Say::Volume(volume),
                words(format!(
                    " of water, take it off the boil, pour it over the {plants}, cover at once and leave it for "
                )),
                Say::Time(minutes),
                words("."),
            ]
        }
        Start::Warm(warm) => {
            at.need("a thermometer");
            at.need("a clean dry jar with a lid");
            let cold = if at.off_heat { vec![words("Cover it")] } else { cold };
            let kept = [
                words(", close the jar, and keep it at "),
                Say::Temperature(warm.value.high),
                words(" in a water bath for "),
                Say::Time(minutes),
                words("."),
            ];
            cold.into_iter().chain(kept).collect()
        }
        Start::AsItIs if at.off_heat => {
            vec![words("Leave to stand, covered, for "), Say::Time(minutes), words(".")]
        }
        Start::AsItIs if at.hot => {
            vec![words("Take off the heat, cover and leave to stand for "), Say::Time(minutes), words(".")]
        }
        Start::AsItIs => {
            if time.value.high > A_DAY {
                at.need("a clean dry jar with a lid");
            }
            let stand = [words(" and leave to stand, covered, for "), Say::Time(minutes), words(".")];
            cold.into_iter().chain(stand).collect()
        }
    };
    at.takes(minutes, matches!(start, Start::Warm(_)));
    times.push(minutes);
    at.hot |= *start == Start::Boiling;
    let condition =
        if matches!(start, Start::Warm(_)) { "covered, kept warm" } else { "covered, off the heat" };
    at.finish_step("steep", say, times, condition.to_string(), None);
}

/// What is no steep of this liquid, or of these plants.
fn refused(at: &mut Laying, span: Span, time: &Spanned<Amount>, start: &Start) -> bool {
    let unfit = at.unfit_for_heat();
    let cold = format!("steep: {}", time.value.written);
    match start {
        Start::AsItIs => false,
        Start::Boiling if unfit.is_some() => {
            let (kind, why) = unfit.unwrap_or_default();
            at.unfit(span, kind, format!("{kind} would be boiled and poured on"), why, &cold);
            true
        }
        Start::Boiling if at.off_heat || at.hot => {
            let message = "what is in the pan already would be boiled and poured on again";
            at.order(span, message, "boiling water is poured on plants that are still dry", &cold);
            true
        }
        Start::Boiling => only_roots(at, span),
        Start::Warm(warm) => {
            let (kind, why) = match unfit {
                Some((kind @ SPIRIT, _)) => (kind, "warm spirit gives off a vapour that catches fire"),
                Some((kind @ "honey", _)) if warm.value.high > HONEY_WARM => {
                    (kind, "honey kept so warm is as good as boiled: it darkens, and its scent goes")
                }
                _ => return false,
            };
            let message = format!("{kind} is kept at {}", warm.value.written);
            at.unfit(warm.span, kind, message, why, &cold);
            true
        }
    }
}

/// Root, bark and wood give little to water that only cools on them; what is aromatic is lost in a simmer.
fn only_roots(at: &mut Laying, span: Span) -> bool {
    let hard = |plant: &crate::formulary::Plant| plant.hard && plant.aromatic == Aromatic::No;
    if at.marc.plants.is_empty() || !at.marc.plants.iter().all(|in_pan| hard(in_pan.plant)) {
        return false;
    }
    let message = format!("a hot infusion of nothing but {}", at.plant_words());
    let why = "root, bark and wood give little to water that only cools on them: they are simmered, or stand cold for hours";
    at.findings.push(
        Finding::error(Code::WrongKind, span, message)
            .why(why)
            .write("simmer: {time: 20 min, lid: on}")
            .write("steep: 8 h"),
    );
    true
}
