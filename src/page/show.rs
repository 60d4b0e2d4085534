//! How values and sources are written for readers: the second unit, ranges, times, citations.

use serde::Serialize;

use crate::bibliography::{Source, Standing};
use crate::formula::Line;
use crate::formula::equation::escape;
use crate::measure::kitchen::{self, Close, Toward};
use crate::measure::{Dimension, decimal, show_usual, whole};
use crate::method::Say;
use crate::variation::Worked;
use crate::working::{How, Id, Rounds};

use super::view::Kind;

/// A line as its unit prints it, with "about" where it has a range.
pub fn about(worked: &Worked, line: Line) -> String {
    match worked.between(line) {
        Some(_) => format!("about {}", plainly(worked, line)),
        None => plainly(worked, line),
    }
}

/// A line's range: "450–490 mL"; none where it has none.
pub fn between(worked: &Worked, line: Line) -> Option<String> {
    let (low, high) = worked.between(line)?;
    let bare = low.split('\u{a0}').next().unwrap_or(&low).to_string();
    Some(format!("{bare}\u{2060}–\u{2060}{high}"))
}

/// The other system under a line's value: fluid ounces, cups for what sweetens, ounces.
pub fn other(worked: &Worked, line: Line) -> String {
    let (value, entry) = (worked.at(line), worked.laid.working.entry(line));
    let id = worked.laid.working.id_of(line);
    let toward = id.map_or(Toward::Nearest, |id| toward(id.rounds()));
    match entry.unit.dimension {
        Dimension::VOLUME if id == Some(Id::Sweetener) => kitchen::volume_us(value, Close::Two, toward)
            .map_or_else(|| kitchen::fl_oz(value), |found| found.text),
        Dimension::VOLUME if value >= 1.0 => kitchen::fl_oz(value),
        Dimension::MASS if value >= 14.0 => {
            kitchen::mass_us(value, Close::Five, toward).map_or_else(String::new, |found| found.text)
        }
        Dimension::TIME if value >= 60.0 && entry.unit.printed == 1.0 => kitchen::minutes(value),
        Dimension::TEMPERATURE => kitchen::temperature_text(value),
        _ if entry.unit.text == "% w/w" => "by weight".to_string(),
        _ if id.is_some_and(|id| id.rounds() == Rounds::Down) => {
            format!("so {}", decimal(whole(value), 0))
        }
        _ => String::new(),
    }
}

/// The direction a kitchen rounds a line of that kind.
pub const fn toward(rounds: Rounds) -> Toward {
    match rounds {
        Rounds::Near => Toward::Nearest,
        Rounds::Up => Toward::Up,
        Rounds::Down => Toward::Down,
    }
}

/// A line for running text and pictures: rounded once, without the places a sum needs.
pub fn plainly(worked: &Worked, line: Line) -> String {
    let (value, unit) = (worked.at(line), worked.laid.working.entry(line).unit);
    show_usual(value, unit)
}

/// What a step says, for a picture or a plain line: rounded once.
pub fn said_plainly(worked: &Worked, say: &Say) -> String {
    match say {
        Say::Words(words) => words.clone(),
        Say::Strong(words) => (*words).to_string(),
        Say::Temperature(celsius) => kitchen::temperature_text(*celsius),
        Say::Time(line) => duration(worked.at(*line)),
        Say::About(line) => about(worked, *line),
        Say::Volume(line)
        | Say::Weight(line)
        | Say::Area(line)
        | Say::Measured(line, _)
        | Say::Size(line) => plainly(worked, *line),
    }
}

/// From here on a volume is a tub's, mL: in whole litres and gallons.
pub const TUB: f64 = 10_000.0;

/// A figure in both systems, the one to measure with first.
#[derive(Clone, PartialEq, Debug)]
pub struct Both {
    us: String,
    metric: String,
    us_first: bool,
}

impl Both {
    /// With the metric first: `250 mL (8.5 fl oz)`.
    pub fn metric_first(metric: String, us: String) -> Both {
        Both { us, metric, us_first: false }
    }

    /// For running text.
    pub fn text(&self) -> String {
        let (first, second) = self.in_order();
        format!("{} ({})", first.1, second.1)
    }

    /// The same as markup, each system by itself, so that a reader can choose one.
    pub fn html(&self) -> String {
        let (first, second) = self.in_order();
        let span = |(class, text): (&str, &str)| format!("<span class=\"{class}\">{}</span>", escape(text));
        format!("{}<span class=\"and\"> (</span>{}<span class=\"and\">)</span>", span(first), span(second))
    }

    fn in_order(&self) -> ((&'static str, &str), (&'static str, &str)) {
        let (us, metric) = (("us", self.us.as_str()), ("metric", self.metric.as_str()));
        if self.us_first { (us, metric) } else { (metric, us) }
    }
}

/// A volume as a kitchen measures it with the metric figure beside: "1 cup (237 mL)", or
/// "800 mL (27.1 fl oz)" where no measure comes close.
pub fn volume_both(worked: &Worked, line: Line) -> Both {
    let (ml, metric) = (worked.at(line), plainly(worked, line));
    if ml >= TUB {
        let gallons = ml / crate::measure::Measure::Gallon.factor().to_f64();
        let litres = format!("{}\u{a0}L", decimal(ml / 1000.0, 0));
        return Both::metric_first(litres, format!("{}\u{a0}gallons", decimal(gallons, 0)));
    }
    let (close, toward) = closeness(worked, line);
    match kitchen::volume_us(ml, close, toward) {
        Some(found) => Both { us: found.text, metric, us_first: true },
        None => Both::metric_first(metric, kitchen::fl_oz(ml)),
    }
}

/// How closely a kitchen measures a line, and which way it rounds: what keeps the preparation closely and up.
pub fn closeness(worked: &Worked, line: Line) -> (Close, Toward) {
    match worked.laid.working.id_of(line).map(Id::rounds) {
        Some(Rounds::Up) => (Close::Two, Toward::Up),
        Some(Rounds::Down) => (Close::Two, Toward::Down),
        _ => (Close::Five, Toward::Nearest),
    }
}

/// A sweetener's volume, closely and up, since keeping depends on it, with its weight in grams.
pub fn sweet_both(worked: &Worked, volume: Line, weight: Line) -> Both {
    let ml = worked.at(volume);
    let (metric, weight) = (plainly(worked, volume), plainly(worked, weight));
    match kitchen::volume_us(ml, Close::Two, Toward::Up) {
        Some(found) => Both { us: found.text, metric: format!("{metric}, {weight}"), us_first: true },
        None => Both::metric_first(metric, format!("{}, {weight}", kitchen::fl_oz(ml))),
    }
}

/// Whether [`other`] gives a line in the other system, and not something else about it.
pub fn in_other_system(worked: &Worked, line: Line) -> bool {
    matches!(worked.laid.working.entry(line).unit.dimension, Dimension::VOLUME | Dimension::MASS)
}

/// The size of what is filled, or of the pieces that are cut: what their count is reckoned by.
pub fn size_of(worked: &Worked, count: Id) -> Option<Line> {
    match &worked.laid.working.entry(worked.laid.working.line(count)?).how {
        How::Worked(by) => Some(by.with[1][0]),
        _ => None,
    }
}

/// "1 bottle", "6 tins": counts are whole, rounded down; the vessel is the preparation's.
pub fn whole_bottles(worked: &Worked, count: f64) -> String {
    let whole = whole(count);
    let (one, several) = worked.laid.preparation.map_or(("bottle", "bottles"), |kind| kind.vessel.words());
    format!("{} {}", decimal(whole, 0), if whole == 1.0 { one } else { several })
}

/// Minutes from the start as a clock: "at 1:05", to five minutes; from two days on "after 3 weeks".
pub fn clock(minutes: f64) -> String {
    const DAY: f64 = 1440.0;
    if minutes >= 2.0 * DAY {
        return format!("after {}", kitchen::minutes((minutes / DAY).floor() * DAY));
    }
    let minutes = if minutes < 2.5 { 0.0 } else { kitchen::to_five_minutes(minutes) };
    let hours = (minutes / 60.0).floor();
    format!("at {}:{:0>2}", decimal(hours, 0), decimal(minutes - hours * 60.0, 0))
}

/// A duration: to five minutes from a quarter of an hour up.
pub fn duration(minutes: f64) -> String {
    kitchen::minutes(told_minutes(minutes))
}

/// The minutes of a duration as it is told.
pub fn told_minutes(minutes: f64) -> f64 {
    // Beside weeks of standing, the minutes of straining tell nobody anything.
    if minutes >= 2.0 * 1440.0 {
        return (minutes / 1440.0).floor() * 1440.0;
    }
    if minutes >= 15.0 { kitchen::to_five_minutes(minutes) } else { minutes }
}

/// What kind of knowledge a line is.
pub fn kind(how: &How) -> Kind {
    match how {
        How::Given { .. } => Kind::Declared,
        How::Assumed { .. } => Kind::Assumed,
        How::Published { source, .. } if source.standing == Standing::CommonPractice => Kind::Advised,
        How::Published { .. } => Kind::Worked,
        How::Worked(_) => Kind::Worked,
    }
}

/// Where a line comes from.
pub fn source_of(how: &How, root: &str) -> String {
    match how {
        How::Given { .. } => "As the recipe says.".to_string(),
        How::Assumed { source, advice, .. } => {
            format!("{}. {}", capital_html(&cite(source, root)), escape(advice))
        }
        How::Published { source, .. } => sentence(&cite(source, root)),
        How::Worked(by) => sentence(&cite(&by.formula.source, root)),
    }
}

/// A citation as a sentence.
pub fn sentence(text: &str) -> String {
    format!("{}.", capital_html(text))
}

/// The first letter as a capital, unless markup stands first.
fn capital_html(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}

/// A source in the fewest words; titles in italic and linked to *Method and sources*.
pub fn cite(source: &Source, root: &str) -> String {
    let place = escape(&source.place);
    let work = source.work.map(|work| {
        format!("<a href=\"{root}method.html#work-{}\"><cite>{}</cite></a>", work.id(), escape(work.title()))
    });
    let named = match (work, place.is_empty()) {
        (Some(work), true) => work,
        (Some(work), false) => format!("{work}, {place}"),
        (None, _) => place,
    };
    match source.standing {
        Standing::Published | Standing::Reckoned | Standing::Formulary => named,
        Standing::FromMemory if named.is_empty() => "from memory".to_string(),
        Standing::FromMemory => format!("{named}; from memory"),
        Standing::CommonPractice if named.is_empty() => "common practice, no source".to_string(),
        Standing::CommonPractice => format!("{named}: common practice, no source"),
    }
}

/// Data on a page, for its script or for machines, as one element. It holds no `<`, so no markup can end it.
pub fn data_element(kind: &str, class: &str, data: &impl Serialize) -> String {
    let text = serde_json::to_string(data).unwrap_or_default().replace('<', "\\u003c");
    let class = if class.is_empty() { String::new() } else { format!(" class=\"{class}\"") };
    format!("<script type=\"{kind}\"{class}>{text}</script>")
}

/// Markup's signs as the letters they stand for.
pub fn unescaped(text: &str) -> String {
    let named = text.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"");
    named.replace("&#39;", "'").replace("&#x27;", "'").replace("&nbsp;", "\u{a0}").replace("&amp;", "&")
}

/// The text with its first letter as a capital.
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}
