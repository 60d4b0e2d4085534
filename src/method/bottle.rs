//! Filling bottles.

use super::{Hazard, Laying, Level, Say, words};
use crate::formula::catalogue::dose::Bottles;
use crate::materia::BOTTLING;
use crate::measure::{Amount, unit::ML};
use crate::span::Span;
use crate::working::Id;

pub(super) fn lay(at: &mut Laying, span: Span, size: &Amount) {
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
    let bottle = at.declared("one bottle", &ML, size, false, span);
    let count = at.work.work("bottles", Bottles { finished, bottle });
    at.work.claim(Id::Bottles, count);
    let minutes = at.allowance(&BOTTLING, false);
    if at.hot {
        at.hazards.push(Hazard::HotGlass);
    }
    at.need("clean bottles with lids");
    at.need("labels");
    let say = vec![words("Pour into clean bottles of "), Say::Size(bottle), words(", lid and label them.")];
    let (liquid, sweet) = at.batch.layers();
    let level = Level {
        words: "Bottle",
        volume: finished,
        liquid,
        sweet,
        kept: None,
        gone: None,
        change: Vec::new(),
    };
    at.finish_step("bottle", say, vec![minutes], String::new(), Some(level));
}
