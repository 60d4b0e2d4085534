//! What is taken on one day: the sums of everything with a ceiling.

use super::ledger::lines;
use super::show::plainly;
use super::view::{DayPart, DaySum, DaysPage, Frame, Kind, Link};
use crate::caution::CLOSING;
use crate::day::Sum;
use crate::formula::equation::escape;
use crate::manuscript::plain;

/// A day as its lesson says it.
pub struct Day {
    /// The lesson's name in addresses.
    pub slug: String,
    /// The lesson.
    pub lesson: Link,
    /// What is taken.
    pub recipes: Vec<Link>,
    /// What that comes to.
    pub sums: Vec<Sum>,
}

/// The view.
pub fn page(frame: Frame, days: &[Day]) -> DaysPage {
    let root = frame.root.clone();
    let parts = days.iter().map(|day| DayPart {
        id: day.slug.clone(),
        lesson: day.lesson.clone(),
        recipes: day.recipes.clone(),
        sums: day.sums.iter().map(|sum| shown(sum, &day.slug, &root)).collect(),
    });
    DaysPage {
        lead: "Where a lesson says that several of its recipes are taken on one day, everything with a daily ceiling is \
               added up here. The whole plant counts, as if nothing of it stayed in the marc; where its content is \
               not known, the careful end of the range decides."
            .to_string(),
        days: parts.collect(),
        closing: CLOSING.to_string(),
        frame,
    }
}

fn shown(sum: &Sum, slug: &str, root: &str) -> DaySum {
    let id = format!("{slug}-{}", plain(&sum.of));
    let mut rows = lines(&sum.worked, &id, root);
    // What a recipe gives is worked there: neither published nor assumed.
    for (row, href) in rows.iter_mut().zip(&sum.hrefs) {
        row.kind = Kind::Worked;
        row.source_html =
            format!("<a href=\"{root}{}\">At its recipe</a>, the larger dose each time.", escape(href));
        if row.between == "as published" {
            row.between = "exact".to_string();
        }
    }
    let up_to = sum.worked.between(sum.total).map_or(String::new(), |(_, high)| format!(", {high} at most"));
    DaySum {
        of: sum.of.clone(),
        lead: format!(
            "Together {}{up_to}, against a ceiling of {}.",
            plainly(&sum.worked, sum.total),
            plainly(&sum.worked, sum.most)
        ),
        rows,
        id,
    }
}
