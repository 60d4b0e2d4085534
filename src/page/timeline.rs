//! The timeline of a recipe: how long each step takes, over heat, standing or by hand, as inline SVG.
//!
//! Percentages across, so that its words keep their size at every width. A wait much longer than the rest is drawn
//! short, with a break in it, and says how long it is.

use super::show::{clock, duration};
use super::view::Timeline;
use crate::formula::equation::escape;
use crate::measure::decimal;
use crate::variation::Worked;
use crate::working::Id;

/// A wait is drawn no longer than so many times all the rest together.
const AT_MOST: f64 = 1.5;
/// The narrowest band that has room for its number, per cent.
const ROOM: f64 = 4.0;

/// What is done in a stretch of time.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum How {
    Heat,
    Stands,
    Hand,
}

impl How {
    /// Its class in the drawing; the theme's words for it are `time-CLASS`.
    const fn class(self) -> &'static str {
        match self {
            How::Heat => "heat",
            How::Stands => "stands",
            How::Hand => "hand",
        }
    }
}

struct Stretch {
    step: usize,
    name: &'static str,
    how: How,
    minutes: f64,
}

/// The picture; none where nothing takes time.
pub(super) fn timeline(worked: &Worked) -> Option<Timeline> {
    let stretches = stretches(worked);
    let all: f64 = stretches.iter().map(|stretch| stretch.minutes).sum();
    if all <= 0.0 {
        return None;
    }
    let drawn = drawn(&stretches);
    let whole: f64 = drawn.iter().sum();
    let mut svg = String::new();
    let mut at = 0.0;
    for (stretch, length) in stretches.iter().zip(&drawn) {
        let width = length / whole * 100.0;
        let (x, middle) = (decimal(at, 1), decimal(at + width / 2.0, 1));
        svg.push_str(&format!(
            "<rect class=\"band {}\" x=\"{x}%\" y=\"22\" width=\"{}%\" height=\"16\"></rect>",
            stretch.how.class(),
            decimal(width, 1)
        ));
        if width >= ROOM {
            svg.push_str(&format!("<text x=\"{middle}%\" y=\"15\">{}</text>", stretch.step));
        }
        if *length < stretch.minutes {
            svg.push_str(&broken(&middle, &duration(stretch.minutes)));
        }
        at += width;
    }
    let total = duration(worked.value(Id::Minutes).unwrap_or(all));
    let words = in_words(&stretches, &total);
    let ends = format!(
        "<text class=\"from\" x=\"0%\" y=\"56\">{}</text><text class=\"to\" x=\"100%\" y=\"56\">{}</text>",
        clock(0.0),
        escape(&total)
    );
    let mut kinds: Vec<String> = Vec::new();
    for how in [How::Heat, How::Stands, How::Hand] {
        if stretches.iter().any(|stretch| stretch.how == how) {
            kinds.push(how.class().to_string());
        }
    }
    Some(Timeline {
        svg: format!(
            "<svg class=\"timeline\" width=\"100%\" height=\"62\" role=\"img\" aria-label=\"{}\">{svg}{ends}</svg>",
            escape(&words)
        ),
        kinds,
    })
}

/// A gap in a band, and under it how long it really is.
fn broken(middle: &str, long: &str) -> String {
    format!(
        "<svg class=\"gap\" aria-hidden=\"true\" x=\"{middle}%\" y=\"18\" width=\"12\" height=\"24\" overflow=\"visible\">\
         <path d=\"M-6 24L-1 0M1 24L6 0\"></path></svg><text x=\"{middle}%\" y=\"56\">{}</text>",
        escape(long)
    )
}

fn stretches(worked: &Worked) -> Vec<Stretch> {
    let mut all = Vec::new();
    for (n, done) in worked.laid.steps.iter().enumerate() {
        let still = if done.stands() { How::Stands } else { How::Hand };
        for line in &done.minutes {
            let how = if done.stove.contains(line) { How::Heat } else { still };
            let minutes = worked.at(*line);
            match all.last_mut() {
                Some(Stretch { step, how: before, minutes: so_far, .. })
                    if *step == n + 1 && *before == how =>
                {
                    *so_far += minutes;
                }
                _ if minutes > 0.0 => all.push(Stretch { step: n + 1, name: done.name, how, minutes }),
                _ => {}
            }
        }
    }
    all
}

/// How long each is drawn: as it is, but for waits that would leave no room for the others.
fn drawn(stretches: &[Stretch]) -> Vec<f64> {
    let all: f64 = stretches.iter().map(|stretch| stretch.minutes).sum();
    let long = |stretch: &Stretch| stretch.how == How::Stands && stretch.minutes > 0.6 * all;
    let rest: f64 = stretches.iter().filter(|stretch| !long(stretch)).map(|stretch| stretch.minutes).sum();
    let most = if rest > 0.0 { rest * AT_MOST } else { all };
    stretches
        .iter()
        .map(|stretch| if long(stretch) { stretch.minutes.min(most) } else { stretch.minutes })
        .collect()
}

/// The same facts as text.
fn in_words(stretches: &[Stretch], total: &str) -> String {
    let each: Vec<String> = stretches
        .iter()
        .map(|stretch| {
            let how = match stretch.how {
                How::Heat => "over heat",
                How::Stands => "standing",
                How::Hand => "by hand",
            };
            format!("{}, {}: {} {how}", stretch.step, stretch.name, duration(stretch.minutes))
        })
        .collect();
    format!("{}; in all {total}", each.join("; "))
}
