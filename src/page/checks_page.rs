//! *Checks*: figures printed elsewhere beside ours, by subject, and those that are wrong where they
//! are printed.

use super::view::{CheckGroup, CheckRow, ChecksPage, Frame};
use crate::bibliography::Standing;
use crate::checks::{Row, Subject};
use crate::measure::{decimal, rounded};

/// The view of *Checks*.
pub fn page(frame: Frame, rows: &[Row]) -> ChecksPage {
    let (wrong, right): (Vec<&Row>, Vec<&Row>) = rows.iter().partition(|row| row.check.wrong.is_some());
    let groups = Subject::HEADS.iter().enumerate().map(|(n, head)| CheckGroup {
        id: format!("checks-{}", n + 1),
        name: head.to_string(),
        rows: right.iter().filter(|row| row.check.subject.head() == *head).map(|row| view(row)).collect(),
    });
    ChecksPage {
        frame,
        prose_html: prose(&right, wrong.len()),
        groups: groups.filter(|group| !group.rows.is_empty()).collect(),
        wrong: wrong.into_iter().map(view).collect(),
    }
}

fn view(row: &Row) -> CheckRow {
    let check = &row.check;
    let within =
        if check.within < 1e-6 { "exactly".to_string() } else { format!("within {}", row.within_text()) };
    let differs = match (&check.wrong, row.difference_text()) {
        (Some(_), difference) => format!("off by {difference}, as it should be"),
        (None, difference) if difference.is_empty() => {
            if row.agrees() { "the same" } else { "another" }.to_string()
        }
        (None, _) if rounded(row.difference(), check.places + 1) == 0.0 => "the same".to_string(),
        (None, difference) => format!("off by {difference}, {within}"),
    };
    CheckRow {
        id: format!("check-{}", check.id),
        about: match &check.wrong {
            Some(why) => format!("{}: {why}", check.about),
            None => check.about.clone(),
        },
        printed: row.printed_text(),
        ours: row.ours_text(),
        differs: if row.agrees() { differs } else { format!("{differs}: it does not agree") },
        source: check.source.clone(),
        memory: check.standing == Standing::FromMemory,
        agrees: row.agrees(),
    }
}

fn prose(right: &[&Row], wrong: usize) -> String {
    let count = |rows: usize| decimal(rows as f64, 0);
    let memory = right.iter().filter(|row| row.check.standing == Standing::FromMemory).count();
    let agree = right.iter().filter(|row| row.agrees()).count();
    let agree = if agree == right.len() { "all".to_string() } else { count(agree) };
    format!(
        "<p>These {} figures were printed by others. Beside each stands what this book makes of it, with one place more, by the \
         same formulas that work its recipes; {agree} agree within what is said. {} of them were recalled and not looked up, and \
         say so. {} more are wrong where they are printed: they stand last, and the book does not meet them.</p>\
         <p>Where the book takes a published figure as it stands, its row only shows that it was copied right.</p>",
        count(right.len()),
        count(memory),
        count(wrong)
    )
}
