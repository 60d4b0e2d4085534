//! The jar label: a recipe at a glance.

use super::company::with_reasons;
use super::keeping::use_by;
use super::show::{TUB, about, between, duration, plainly, size_of, volume_both, whole_bottles};
use super::view::{Kind, LabelRow, Link};
use crate::calendar::Day;
use crate::caution::{Caution, Company};
use crate::keeping::{Judged, Verdict};
use crate::measure::{decimal, kitchen, whole};
use crate::recipe::Keep;
use crate::variation::{Worked, WorkedRecipe};
use crate::working::Id;

/// What the rows on people are called: whom it is not for, and who asks first.
const COMPANY: [&str; 2] = ["Never for", "Ask first"];

pub(super) fn label(
    worked: &WorkedRecipe,
    judged: &Judged,
    made: Option<Day>,
    cautions: &[Caution],
    id: &str,
) -> Vec<LabelRow> {
    let (base, recipe) = (&worked.base, &worked.recipe);
    let working = &base.laid.working;
    let row = |term: &str, kind, value: String, notes: Vec<String>| LabelRow {
        term: term.to_string(),
        kind,
        value,
        notes,
        stop: false,
        link: None,
    };
    let mut rows = Vec::new();
    if let Some(finished) = working.line(Id::Finished) {
        let mut notes = Vec::new();
        let value = match working.line(Id::Bottles) {
            Some(bottles) => {
                notes.push(format!("{} in all", about(base, finished)));
                whole_bottles(base, base.at(bottles)) + &bottle_size(base)
            }
            None if base.at(finished) >= TUB => volume_both(base, finished).text(),
            None => format!("{} ({})", about(base, finished), kitchen::fl_oz(base.at(finished))),
        };
        notes.push(match between(base, finished) {
            Some(range) => format!("worked: {range}"),
            None => "worked".to_string(),
        });
        rows.push(row("Makes", Kind::Worked, value, notes));
    }
    if let (None, Some(weight)) = (working.line(Id::Finished), working.line(Id::FinishedWeight)) {
        let weighed = format!("{} ({})", about(base, weight), kitchen::oz(base.at(weight)));
        let (value, mut notes) = match working.line(Id::Pieces) {
            Some(pieces) => {
                let count = decimal(whole(base.at(pieces)), 0);
                let each = size_of(base, Id::Pieces);
                let each = each.map_or(String::new(), |size| format!(" of {}", plainly(base, size)));
                (format!("{count} pieces{each}"), vec![format!("{weighed} in all")])
            }
            None => (weighed, Vec::new()),
        };
        notes.push("worked".to_string());
        rows.push(row("Makes", Kind::Worked, value, notes));
    }
    if let Some(area) = working.line(Id::Area) {
        rows.push(row("Covers", Kind::Worked, about(base, area), vec!["worked".to_string()]));
    }
    if let Some(minutes) = working.line(Id::Minutes) {
        let stove = working.line(Id::StoveMinutes).map(|line| duration(base.at(line)));
        let stove = stove.map_or(String::new(), |stove| format!(", of which {stove} at the stove"));
        rows.push(row(
            "Takes",
            Kind::Worked,
            duration(base.at(minutes)) + &stove,
            vec!["worked, with allowances".into()],
        ));
    }
    let class = match judged.rung.verdict {
        Verdict::CannotTell => "advised: cannot tell how it keeps".to_string(),
        _ => format!("advised: class {}", judged.rung.class),
    };
    let mut notes = vec![class, use_by(judged.rung.days, made)];
    if matches!(&recipe.keep, Some(keep) if keep.value == Keep::Freezer) {
        notes.push("or in the freezer, as the recipe says".to_string());
    }
    rows.push(row("Keeps", Kind::Advised, judged.rung.words.to_string(), notes));
    if let Some(take) = &recipe.take {
        let daily = match take.daily.value {
            1.0 => "once a day".to_string(),
            2.0 => "twice a day".to_string(),
            n => format!("{} times a day", decimal(n, 0)),
        };
        let value = format!("{}, {daily}", take.amount.value.written);
        let mut notes = vec!["handed down: no trial".to_string()];
        if let Some(doses) = working.line(Id::Doses) {
            let larger = if take.amount.value.is_range() { " of the larger" } else { "" };
            notes.push(format!("{} doses{larger}", decimal(whole(base.at(doses)), 0)));
        }
        rows.push(row("Taken", Kind::Handed, value, notes));
    }
    let company = Company::of(cautions);
    for (term, list, stop) in [(COMPANY[0], company.not_for, true), (COMPANY[1], company.ask_first, false)] {
        if list.is_empty() {
            continue;
        }
        let mut people = row(term, Kind::Declared, with_reasons(&list), Vec::new());
        people.stop = stop;
        people.link = Some(Link { text: "Cautions".into(), href: format!("#{id}-cautions"), current: false });
        rows.push(people);
    }
    rows
}

/// The rows of a label that say whom something is not for.
pub(super) fn company_rows(rows: &[LabelRow]) -> Vec<LabelRow> {
    rows.iter().filter(|row| COMPANY.contains(&row.term.as_str())).cloned().collect()
}

/// " of 250 mL (8.5 fl oz)".
pub(super) fn bottle_size(worked: &Worked) -> String {
    size_of(worked, Id::Bottles).map_or(String::new(), |size| {
        format!(" of {} ({})", plainly(worked, size), kitchen::fl_oz(worked.at(size)))
    })
}
