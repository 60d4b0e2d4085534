//! Whether a step may stand where it does: what holds for several steps at once. Each step has its own rules too.

use super::Laying;
use crate::recipe::{Shape, Step};
use crate::span::{Span, Spanned};

/// Tells a step that cannot be done here; gives whether it was told.
pub(super) fn refused(at: &mut Laying, step: &Spanned<Step>) -> bool {
    let (span, name) = (step.span, step.value.name());
    if let Some(closed) = at.closed
        && !may_follow(closed, &step.value)
    {
        let message = format!("`{name}` stands after `{closed}`");
        let write = match name == closed {
            true => format!("one `{name}`"),
            false => format!("- {name}: ... before - {closed}: ..."),
        };
        at.order(span, message, after(closed), &write);
        return true;
    }
    if !at.marc.left_in.is_empty() && needs_clear(&step.value) {
        let message = format!("`{name}` is to be done with the plants still in it");
        at.order(
            span,
            message,
            "they would be boiled, weighed and poured with the rest",
            "- strain: squeezed in place of - strain: not",
        );
        return true;
    }
    if at.batch.holds_oil() && is_watery(&step.value) {
        let message = format!("`{name}` is to be done to oil");
        let why = "oil does not mix with anything watery, nor does it boil away; water shut into it breeds what cannot be smelt";
        at.order(span, message, why, "a recipe of its own, without the oil");
        return true;
    }
    if at.batch.holds_wax() && matches!(step.value, Step::Add(_) | Step::Steep { .. } | Step::Strain(_)) {
        at.order(
            span,
            format!("`{name}` stands after the wax is melted in"),
            "the plants would set in it, and the cloth would keep the wax",
            "- melt: ... after the straining",
        );
        return true;
    }
    false
}

/// Whether nothing more may be wrong with the recipe than that a step had nothing to do.
pub(super) fn idle(at: &mut Laying, span: Span, name: &str) {
    if at.idle.is_none() {
        at.idle = Some((span, name.to_string()));
    }
}

/// Tells the first step that laid nothing down, where nothing else is wrong that may have caused it.
pub(super) fn tell_idle(at: &mut Laying) {
    if at.faulty || at.has_faults() {
        return;
    }
    let Some((span, name)) = at.idle.take() else { return };
    let why = match at.recipe.preparation.value.shape {
        Shape::Kneaded => "the powders are not kneaded yet, or there is no liquid in the pan",
        _ => "nothing is in the pan that it could be done to",
    };
    at.order(span, format!("`{name}` has nothing to do where it stands"), why, "leave it out, or move it");
}

fn may_follow(closed: &str, step: &Step) -> bool {
    match closed {
        "knead" => matches!(step, Step::Cut(_) | Step::Dry(_)),
        "boil to" => matches!(step, Step::Cut(_)),
        _ => false,
    }
}

fn after(closed: &str) -> &'static str {
    match closed {
        "knead" => "a dough is cut and dried, and nothing else",
        "boil to" => "boiled sugar sets: it is cut into drops, and nothing else",
        "dilute" => "bath water is used as it is",
        _ => "what is laid on is used up",
    }
}

/// Steps that want the plants out first.
fn needs_clear(step: &Step) -> bool {
    matches!(
        step,
        Step::Reduce(_)
            | Step::BoilTo(_)
            | Step::Melt(_)
            | Step::Dilute(_)
            | Step::Knead(_)
            | Step::Simmer { .. }
            | Step::Strain(_)
            | Step::PourAgain(_)
            | Step::MakeUp(_)
    )
}

/// Steps that pour or boil something watery.
fn is_watery(step: &Step) -> bool {
    matches!(
        step,
        Step::Reduce(_)
            | Step::Fortify { .. }
            | Step::Acidify { .. }
            | Step::Sweeten(_)
            | Step::BoilTo(_)
            | Step::Knead(_)
            | Step::MakeUp(_)
            | Step::PourAgain(_)
            | Step::Dilute(_)
    )
}
