//! What lessons set side by side.

use super::lesson::{Done, all_noted};
use super::noted::{Beside, called, unknown};
use super::put::{Put, lesson_link};
use crate::diagnostic::{Finding, stops};
use crate::formulary::LessonHead;
use crate::page::sides_page::{self, Side, Sides};
use crate::page::view::Link;
use crate::site::Trouble;

/// Writes the page where a lesson sets two side by side.
pub(super) fn press(done: &[Done], put: &mut Put) -> Result<(), Trouble> {
    let all = put.of_lessons(|head, found| pairs(head, done, found))?;
    if all.is_empty() {
        return Ok(());
    }
    let frame = put.desk.titled("side-by-side", "side-by-side.html");
    put.page("side-by-side.html", "side-by-side.html", &sides_page::page(frame, &all))
}

fn pairs<'a>(head: &LessonHead, done: &'a [Done], findings: &mut Vec<Finding>) -> Vec<Sides<'a>> {
    let mut pairs = Vec::new();
    for names in &head.side_by_side {
        let [left, right] = names.each_ref().map(|name| {
            let found = find(&name.value, done);
            // A recipe with a fault was not worked: the name may be its.
            if found.is_none() && !done.iter().any(|lesson| stops(&lesson.findings)) {
                let known = known(done);
                findings.push(unknown(name, known.iter().map(String::as_str)));
            }
            found
        });
        if let (Some(left), Some(right)) = (left, right) {
            let id = format!("{}-{}", head.slug, pairs.len() + 1);
            pairs.push(Sides { id, lesson: lesson_link(head, ""), both: [left, right] });
        }
    }
    pairs
}

fn find<'a>(name: &str, done: &'a [Done]) -> Option<Side<'a>> {
    all_noted(done)
        .flat_map(|noted| noted.beside.iter().map(move |beside| (noted, beside)))
        .find(|(_, beside)| beside.called == name)
        .map(|(noted, Beside { called, worked, keeps })| Side {
            link: Link { text: called.clone(), ..noted.link.clone() },
            worked,
            keeps,
        })
}

/// What every recipe and variation of the book is called.
fn known(done: &[Done]) -> Vec<String> {
    let names = all_noted(done).flat_map(|noted| {
        noted.companies.iter().map(|(variation, _)| called(&noted.link.text, variation.as_deref()))
    });
    names.collect()
}
