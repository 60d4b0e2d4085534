//! Cooling to a temperature.

use super::{Laying, Say, words};
use crate::materia::COOLING;
use crate::measure::{Amount, unit::CELSIUS};
use crate::span::Span;

pub(super) fn lay(at: &mut Laying, span: Span, to: &Amount) {
    at.declared("cooled to", &CELSIUS, to, false, span);
    let minutes = at.allowance(&COOLING, false);
    at.need("a thermometer");
    at.cooled = Some(to.high);
    at.hot = false;
    let say = vec![words("Let it cool to "), Say::Temperature(to.high), words(".")];
    at.finish_step("cool", say, vec![minutes], "an allowance; longer for a full pot".to_string(), None);
}
