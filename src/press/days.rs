//! The sums of what lessons say is taken on one day.

use super::lesson::{Done, all_noted};
use super::noted::{Noted, unknown};
use super::put::{Put, lesson_link};
use crate::day::{Part, sums};
use crate::diagnostic::{Code, Finding, stops};
use crate::formulary::LessonHead;
use crate::measure::show_usual;
use crate::page::day_page::{self, Day};
use crate::site::Trouble;

/// Sums the days, tells what passes a ceiling, and writes the page where there is a day at all.
pub(super) fn press(done: &[Done], put: &mut Put) -> Result<(), Trouble> {
    let days = put.of_lessons(|head, found| (!head.one_day.is_empty()).then(|| day(head, done, found)))?;
    if days.is_empty() {
        return Ok(());
    }
    let frame = put.desk.titled("one-day", "one-day.html");
    put.page("one-day.html", "one-day.html", &day_page::page(frame, &days))
}

fn day(head: &LessonHead, done: &[Done], findings: &mut Vec<Finding>) -> Day {
    let all: Vec<&Noted> = all_noted(done).collect();
    let mut taken: Vec<&Noted> = Vec::new();
    for name in &head.one_day {
        match all.iter().find(|noted| noted.link.text == name.value) {
            Some(noted) => taken.push(noted),
            // A recipe with a fault was not worked: the name may be its.
            None if done.iter().any(|lesson| stops(&lesson.findings)) => {}
            None => findings.push(unknown(name, all.iter().map(|noted| noted.link.text.as_str()))),
        }
    }
    let parts: Vec<Part> = taken.iter().flat_map(|noted| noted.day.iter().cloned()).collect();
    let sums = sums(&parts);
    for sum in sums.iter().filter(|sum| sum.passes()) {
        let high = sum.worked.ranges[sum.total.index()].high;
        let unit = sum.worked.laid.working.entry(sum.total).unit;
        let most = sum.worked.at(sum.most);
        let message = format!(
            "on one day these come to {} of {} against {}",
            show_usual(high, unit),
            sum.of,
            show_usual(most, unit),
        );
        let at = head.one_day.first().map_or_else(Default::default, |name| name.span);
        findings.push(
            Finding::error(Code::CeilingPassed, at, message)
                .why("each may be within its ceiling, and the sum is what one body takes; the careful end of what is not known decides")
                .write("fewer of them on one day, or smaller doses"),
        );
    }
    Day {
        slug: head.slug.clone(),
        lesson: lesson_link(head, ""),
        recipes: taken.iter().map(|noted| noted.link.clone()).collect(),
        sums,
    }
}
