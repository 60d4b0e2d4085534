//! Pages that lead to others: recipes by several ways, the glossary, corrections.

use super::lesson::{Done, all_noted};
use super::put::{Put, lesson_link};
use crate::formulary::Formulary;
use crate::page::recipes_page::{self, Listed};
use crate::page::view::{ChangeRow, CorrectionsPage, Link};
use crate::page::{changes_page, glossary_page};
use crate::site::Trouble;

/// Makes and writes them.
pub(super) fn press(done: &[Done], changes: Vec<ChangeRow>, put: &mut Put) -> Result<(), Trouble> {
    let desk = put.desk;
    let listed: Vec<Listed> = all_noted(done).map(|noted| noted.listed.clone()).collect();
    let view = recipes_page::page(desk.titled("recipes", "recipes.html"), &listed);
    put.page("recipes.html", "recipes.html", &view)?;
    if !desk.book.glossary.is_empty() {
        let users = |id: &str| -> Vec<Link> {
            let lessons = desk.book.lessons.iter().zip(done);
            let using = lessons.filter(|(_, done)| done.terms.iter().any(|term| term == id));
            using.map(|(head, _)| lesson_link(head, "")).collect()
        };
        let view = glossary_page::page(desk.titled("glossary", "glossary.html"), desk.book, users);
        put.page(glossary_page::PLACE, "glossary.html", &view)?;
    }
    if !changes.is_empty() {
        let view = CorrectionsPage { frame: desk.titled("corrections", "corrections.html"), rows: changes };
        put.page("corrections.html", "corrections.html", &view)?;
    }
    Ok(())
}

/// Every correction and change of the book, the latest first.
pub(super) fn changes(book: &Formulary) -> Vec<ChangeRow> {
    let corrected = book
        .lessons
        .iter()
        .flat_map(|head| changes_page::corrections(&head.corrections, Some(&lesson_link(head, ""))));
    let all = corrected.chain(changes_page::changes(&book.course.changes)).collect();
    changes_page::latest_first(all).into_iter().map(|(_, row)| row).collect()
}
