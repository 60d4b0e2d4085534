//! A lesson's page: its text with every reference filled in or checked, and its recipes.

use super::changes_page::corrections;
use super::glossary_page::of_lesson;
use super::recipe::recipe;
use super::reference::{Anchored, Lesson, Reference, anchor, refer};
use super::view::{Copybook, Frame, LessonPage, Piece};
use crate::diagnostic::Finding;
use crate::manuscript::{LinkFound, LinkTo, render};

/// The findings of a text's links and numbers, and its links to places on other pages, which are looked at when
/// those are made.
pub fn check(lesson: &Lesson) -> (Vec<Finding>, Vec<Anchored>) {
    let (mut findings, mut anchored) = (Vec::new(), Vec::new());
    for link in &lesson.manuscript.links {
        match refer(lesson, link) {
            Reference::Fault(finding) => findings.push(*finding),
            Reference::Anchored(_, place) => anchored.push(*place),
            Reference::Link(_) => {}
        }
    }
    (findings, anchored)
}

/// Where a link leads.
fn to(lesson: &Lesson, link: &LinkFound) -> LinkTo {
    match refer(lesson, link) {
        Reference::Link(to) | Reference::Anchored(to, _) => to,
        Reference::Fault(_) => LinkTo::Broken,
    }
}

/// The HTML of a text that holds no recipe, such as a plant's.
pub fn prose(text: &Lesson) -> String {
    let rendered = render(text.manuscript, |link| to(text, link));
    rendered.pieces.concat() + &rendered.notes
}

/// The view of a lesson; `copybooks` are the exercises of its recipes, one a block.
pub fn page(lesson: &Lesson, frame: Frame, mut copybooks: Vec<Option<Copybook>>) -> LessonPage {
    let rendered = render(lesson.manuscript, |link| to(lesson, link));
    let root = frame.root.clone();
    let mut pieces: Vec<Piece> = Vec::new();
    for (n, prose) in rendered.pieces.into_iter().enumerate() {
        let block = lesson.manuscript.blocks.get(n);
        let recipe = block.zip(lesson.recipes.get(n).and_then(Option::as_ref)).map(|(block, worked)| {
            let copybook = copybooks.get_mut(n).and_then(Option::take);
            let id = anchor(lesson, n);
            recipe(worked, lesson.book, &id, &block.text.value, &root, lesson.head.date, copybook)
        });
        pieces.push(Piece { prose_html: prose, recipe });
    }
    if let Some(last) = pieces.last_mut() {
        last.prose_html.push_str(&rendered.notes);
    }
    LessonPage {
        frame,
        linked_html: String::new(),
        on_paper: Vec::new(),
        evening: lesson.head.evening.clone(),
        one_day: (!lesson.head.one_day.is_empty())
            .then(|| format!("{root}one-day.html#{}", lesson.head.slug)),
        side_by_side: (!lesson.head.side_by_side.is_empty())
            .then(|| format!("{root}side-by-side.html#{}-1", lesson.head.slug)),
        corrections: corrections(&lesson.head.corrections, None).into_iter().map(|(_, row)| row).collect(),
        words: of_lesson(lesson.book, lesson.manuscript.links.iter().map(|link| link.href.as_str()), &root),
        pieces,
        single: lesson.manuscript.blocks.len() == 1,
    }
}
