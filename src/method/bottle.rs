//! Filling bottles.

use super::{Hazard, Laying, Level, Say, words};
use crate::formula::catalogue::dose::Bottles;
use crate::materia::BOTTLING;
use crate::measure::{Amount, unit::ML};
use crate::span::Span;
use crate::working::Id;

pub(super) fn lay(at: &mut Laying, span: Span, size: &Amount) {
    if at.dough.dry.is_some() {
        at.order(
            span,
            "what is weighed is filled by its volume",
            "pieces are counted, and what is laid on is used at once",
            "no bottle step; say in the text what it is put into",
        );
        return;
    }
    let Some(finished) = at.volume else { return };
    if !at.strained {
        at.too_early(
            span,
            "the bottles are filled before the straining",
            "the marc is still in the liquid",
            "- strain: squeezed and then - bottle: 250 mL",
        );
        return;
    }
    let (_, several) = at.recipe.preparation.value.vessel.words();
    let bottle = at.declared("one bottle", &ML, size, false, span);
    let count = at.work.work(several, Bottles { finished, bottle });
    at.work.claim(Id::Bottles, count);
    let minutes = at.allowance(&BOTTLING, false);
    if at.hot {
        at.hazards.push(Hazard::HotGlass);
    }
    at.need(&format!("clean {several} with lids"));
    at.need("labels");
    let say = vec![
        words(format!("Pour into clean {several} of ")),
        Say::Size(bottle),
        words(", lid and label them."),
    ];
    let (liquid, sweet) = at.batch.layers();
    let level =
        Level { words: "Fill", volume: finished, liquid, sweet, kept: None, gone: None, change: Vec::new() };
    at.finish_step("bottle", say, vec![minutes], String::new(), Some(level));
}
