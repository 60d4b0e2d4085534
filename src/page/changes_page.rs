//! What was corrected, and what is new.

use super::view::{ChangeRow, Link};
use crate::calendar::Day;
use crate::formulary::{Change, Correction};

/// A lesson's corrections, the latest first; `lesson` is the link to it, where the page is another.
pub fn corrections(all: &[Correction], lesson: Option<&Link>) -> Vec<(Day, ChangeRow)> {
    let rows = all.iter().map(|correction| {
        let row = ChangeRow {
            lesson: lesson.cloned(),
            was: correction.was.clone(),
            now: correction.now.clone(),
            why: correction.why.clone(),
            ..dated(correction.date)
        };
        (correction.date, row)
    });
    latest_first(rows.collect())
}

/// What is new in the book.
pub fn changes(all: &[Change]) -> Vec<(Day, ChangeRow)> {
    let rows = all.iter().map(|change| {
        (change.date, ChangeRow { id: change.anchor(), now: change.what.clone(), ..dated(change.date) })
    });
    latest_first(rows.collect())
}

/// The latest first; what is of one day stays in its order.
pub fn latest_first(mut rows: Vec<(Day, ChangeRow)>) -> Vec<(Day, ChangeRow)> {
    rows.sort_by_key(|(date, _)| std::cmp::Reverse(*date));
    rows
}

fn dated(date: Day) -> ChangeRow {
    ChangeRow {
        id: String::new(),
        date: date.words(),
        iso: date.iso(),
        lesson: None,
        was: String::new(),
        now: String::new(),
        why: String::new(),
    }
}
