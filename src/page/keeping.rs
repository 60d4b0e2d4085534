//! Keeping: the class with its reason, where it stands between limits, and what would move it.

use super::show::{between, cite, plainly, sentence};
use super::view::{Keeping, KeepingRule, Kind, MoverRow, Note, PartLink};
use crate::calendar::Day;
use crate::formula::Line;
use crate::formula::equation::escape;
use crate::formulary::Formulary;
use crate::keeping::{Judged, Mover, Verdict, judge, movers};
use crate::materia::food_code::{FoodCode, Table, food_code};
use crate::materia::{
    ACETIC_IN_VINEGAR, ACTIVITY_LIMIT, ALCOHOL_COVERS, CLASS_B_SOLIDS, CLASS_C_SOLIDS, Figure,
    GLYCERIN_KEEPS, REFRIGERATOR, ROOM, SELF_PRESERVING, SUCROSE_SOLUBLE,
};
use crate::measure::kitchen::{self, Close, Toward};
use crate::measure::{decimal, show};
use crate::recipe::{Keep, Use};
use crate::variation::{Worked, WorkedRecipe};
use crate::working::Id;

/// What a keeping rule shows: a line, the ends of the rule, and the limits with the band after each.
struct Scale {
    id: Id,
    from: f64,
    to: f64,
    first: &'static str,
    bands: &'static [(&'static Figure, &'static str)],
}

const SCALES: &[Scale] = &[
    Scale {
        id: Id::Solids,
        from: 0.2,
        to: 0.75,
        first: "D",
        bands: &[(&CLASS_C_SOLIDS, "C"), (&CLASS_B_SOLIDS, "B"), (&SELF_PRESERVING, "A")],
    },
    Scale {
        id: Id::Covered,
        from: 0.0,
        to: 0.4,
        first: "not covered",
        bands: &[(&ALCOHOL_COVERS, "covered")],
    },
    Scale { id: Id::Acidity, from: 0.0, to: 0.07, first: "not enough", bands: &[(&ACETIC_IN_VINEGAR, "F")] },
    Scale { id: Id::Glycerin, from: 0.0, to: 1.0, first: "not enough", bands: &[(&GLYCERIN_KEEPS, "E")] },
];

/// The view of a recipe's keeping. `made` is when it is made, where the lesson has a date.
pub(super) fn view(
    worked: &WorkedRecipe,
    book: &Formulary,
    judged: &Judged,
    made: Option<Day>,
    root: &str,
    part: PartLink,
) -> Keeping {
    let (base, rung) = (&worked.base, judged.rung);
    let doubt = judged.usually.map_or(String::new(), |usual| {
        format!(
            "At the usual figures it would be class {}; the careful end of the range decides.",
            usual.class
        )
    });
    let mut rows: Vec<MoverRow> = Vec::new();
    // What is outside the body, or weighed in the end, is not moved by more sugar or spirit.
    let moves = worked.recipe.preparation.value.used == Use::Swallowed && base.value(Id::Finished).is_some();
    if rung.verdict != Verdict::Keeps && moves {
        rows.extend(movers(&worked.recipe, book, &base.laid).iter().map(|mover| told(mover, base)));
    }
    rows.push(MoverRow {
        term: "To the bin".to_string(),
        text: "if it fizzes, smells off, bulges or grows anything; when in doubt, too".to_string(),
    });
    let mut notes = vec![Note { kind: Kind::Advised, html: sentence(&cite(&rung.source, root)) }];
    notes.push(Note {
        kind: Kind::Advised,
        html: "Times are a guideline, on the careful side; not a tested recipe.".to_string(),
    });
    Keeping {
        part,
        class: rung.class.to_string(),
        verdict: rung.verdict.words().to_string(),
        words: rung.words.to_string(),
        because: judged.because(base),
        doubt,
        use_by: use_by(rung.days, made),
        remarks: remarks(worked),
        rules: SCALES.iter().filter_map(|scale| rule(scale, base)).collect(),
        movers: rows,
        notes,
    }
}

/// "Made on 22 September 2026, use it by 29 September 2026.", or in days.
pub(super) fn use_by(days: u32, made: Option<Day>) -> String {
    match made {
        _ if days == 0 => "use it as soon as it is made".to_string(),
        Some(made) => format!("made on {}, use by {}", made.words(), made.after(days).words()),
        None if days == 1 => "use by the day after it is made".to_string(),
        None => format!("use within {} days of making it", decimal(f64::from(days), 0)),
    }
}

/// What else the sums say.
fn remarks(worked: &WorkedRecipe) -> Vec<String> {
    let base = &worked.base;
    let line = |id: Id| base.laid.working.line(id);
    let mut remarks = Vec::new();
    if let Some(activity) = line(Id::WaterActivity) {
        let range = base.ranges[activity.index()];
        let reaches = if range.high <= ACTIVITY_LIMIT.value { "below" } else { "not surely below" };
        remarks.push(format!(
            "Water activity {} ({}), {reaches} the {} of the regulations.",
            show(base.at(activity), ACTIVITY_LIMIT.unit, 2),
            between(base, activity).unwrap_or_default(),
            show(ACTIVITY_LIMIT.value, ACTIVITY_LIMIT.unit, 2),
        ));
    }
    if line(Id::WaterActivity).is_some() && judge(base, worked.recipe.ph()).rung.verdict == Verdict::Keeps {
        remarks.push(
            "What poisons does not grow in it; moulds may down to 0.80, and yeasts that like sugar down to 0.60. Look \
             at it before you use it."
                .to_string(),
        );
    }
    if let (Some(activity), Some(ph)) = (line(Id::WaterActivity), worked.recipe.ph()) {
        // Table B is the stricter: it asks nothing of the packing.
        let class = match food_code(Table::B, base.ranges[activity.index()].high, ph) {
            FoodCode::NonTcs => "no control of time and temperature is asked",
            FoodCode::ProductAssessment => "a product assessment is asked; until then keep it cold",
        };
        remarks.push(format!("Food Code, table B, at the measured pH of {}: {class}.", decimal(ph, 1)));
    }
    if let Some(share) = line(Id::SugarInWater) {
        for (place, words) in [(&ROOM, "at room temperature"), (&REFRIGERATOR, "in the refrigerator")] {
            if base.at(share) > SUCROSE_SOLUBLE.at(place.value) {
                remarks.push(format!("It holds more sugar than stays dissolved {words}: expect crystals."));
            }
        }
    }
    if matches!(&worked.recipe.keep, Some(keep) if keep.value == Keep::Freezer) {
        remarks.push("The recipe freezes it: the days above count from thawing.".to_string());
    }
    remarks
}

/// A way to another class in words.
fn told(mover: &Mover, base: &Worked) -> MoverRow {
    let term = format!("To {}", mover.class);
    let Some(moved) = mover.moved else {
        return MoverRow { term, text: format!("no amount of {} does", mover.what) };
    };
    let ml = |value: f64| format!("{}\u{a0}mL", decimal(value, 0));
    // Rounded up, or the rounding would fall short of the limit.
    let enough = moved.amount.ceil();
    let amount = if moved.by_weight {
        format!("{}\u{a0}g", decimal(enough, 0))
    } else {
        match kitchen::volume_us(enough, Close::Two, Toward::Up) {
            Some(found) => format!("{} ({})", ml(enough), found.text),
            None => ml(enough),
        }
    };
    let own = base.laid.sweet_given.is_some() && base.laid.working.line(Id::Solids).is_some();
    let verb = if moved.by_weight && own { "use" } else { "add" };
    let in_all = if verb == "use" { " in all" } else { "" };
    let mut text = format!("{verb} {amount} of {}{in_all}; that makes {}", mover.what, ml(moved.finished));
    if let Some(plant) = moved.plant_per_dose {
        text.push_str(&format!(", with {}\u{a0}g of plant in a dose", decimal(plant, 2)));
    }
    MoverRow { term, text }
}

/// A rule with its bands, and a pin where the recipe stands. Percentages across, so that its words keep
/// their size at every width.
fn rule(scale: &Scale, base: &Worked) -> Option<KeepingRule> {
    let line = base.laid.working.line(scale.id)?;
    // Without spirit nothing is covered: a rule of nothing tells nothing.
    if scale.id == Id::Covered && base.laid.working.line(Id::Abv).is_none() {
        return None;
    }
    let value = base.at(line);
    let across = |value: f64| ((value - scale.from) / (scale.to - scale.from)).clamp(0.0, 1.0) * 100.0;
    let at = |value: f64| decimal(across(value), 1);
    let mut starts = vec![(scale.from, scale.first)];
    starts.extend(scale.bands.iter().map(|(figure, name)| (figure.value, *name)));
    let words = facts(scale, base, line);
    let mut svg = format!(
        "<svg class=\"keeping-rule\" width=\"100%\" height=\"104\" role=\"img\" aria-label=\"{}\">",
        escape(&words)
    );
    for (n, (start, name)) in starts.iter().enumerate() {
        let end = starts.get(n + 1).map_or(scale.to, |next| next.0);
        let fill = match (n, n + 1 == starts.len()) {
            (0, _) => "blank",
            (_, true) => "solid",
            (1, _) => "liquid",
            _ => "sweetener",
        };
        let (x, width) = (at(*start), decimal(across(end) - across(*start), 1));
        svg.push_str(&format!(
            "<rect class=\"band {fill}\" x=\"{x}%\" y=\"46\" width=\"{width}%\" height=\"14\"></rect>"
        ));
        let middle = decimal((across(*start) + across(end)) / 2.0, 1);
        svg.push_str(&format!("<text class=\"band-name\" x=\"{middle}%\" y=\"76\">{}</text>", escape(name)));
        if n > 0 {
            let limit = decimal(start * 100.0, 0);
            svg.push_str(&format!("<text class=\"band-limit\" x=\"{x}%\" y=\"96\">{limit}</text>"));
        }
    }
    let (x, past) = (at(value), across(value) > 50.0);
    let (side, dx) = if past { ("before", -9) } else { ("after", 9) };
    svg.push_str(&format!(
        "<line class=\"pin\" x1=\"{x}%\" x2=\"{x}%\" y1=\"24\" y2=\"60\"></line><circle class=\"pin-head\" cx=\"{x}%\" cy=\"22\" r=\"5\"></circle>\
         <text class=\"pin-words {side}\" x=\"{x}%\" y=\"26\" dx=\"{dx}\">here {}</text></svg>",
        escape(&plainly(base, line))
    ));
    Some(KeepingRule { svg, words })
}

/// The facts of a rule in words.
fn facts(scale: &Scale, base: &Worked, line: Line) -> String {
    let limits: Vec<String> = scale
        .bands
        .iter()
        .map(|(figure, name)| format!("{name} from {}\u{a0}%", decimal(figure.value * 100.0, 0)))
        .collect();
    let name = &base.laid.working.entry(line).name;
    format!("{name}: {}; {}", plainly(base, line), limits.join(", "))
}
