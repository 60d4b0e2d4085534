//! Cooling to a temperature.

use super::simmer::boiling;
use super::{Laying, Say, words};
use crate::diagnostic::{Code, Finding};
use crate::formula::catalogue::heat::CoolingTime;
use crate::materia::{COOLING_PACE, ROOM};
use crate::measure::{Amount, unit::CELSIUS};
use crate::span::Span;

pub(super) fn lay(at: &mut Laying, span: Span, to: &Amount) {
    if to.low <= ROOM.value {
        at.findings.push(
            Finding::error(Code::BadNumber, span, format!("nothing cools to {} by standing", to.written))
                .why("a room is reckoned at 20 °C; what is colder was put into the cold, and how long that takes is not worked")
                .write("cool: 25 °C"),
        );
        return;
    }
    let down_to = at.declared("cooled to", &CELSIUS, to, false, span);
    let (from, around) = (boiling(at), at.work.figure(&ROOM));
    let pace = at.assume(&COOLING_PACE);
    let minutes = at.work.work("minutes to cool", CoolingTime { pace, from, to: down_to, around });
    at.takes(minutes, false);
    at.need("a thermometer");
    at.cooled = Some(down_to);
    at.hot = false;
    let say = vec![words("Let it cool to "), Say::Temperature(to.high), words(".")];
    at.finish_step("cool", say, vec![minutes], "an estimate; go by the thermometer".to_string(), None);
}
