//! The glossary, and a lesson's own words of it.

use super::view::{Frame, GlossaryPage, Link, TermRow};
use crate::formulary::{Formulary, Term};

/// Where the glossary stands.
pub const PLACE: &str = "glossary.html";

/// The whole glossary; `users` gives the lessons that a word stands in.
pub fn page(frame: Frame, book: &Formulary, users: impl Fn(&str) -> Vec<Link>) -> GlossaryPage {
    let rows = book.glossary.iter().map(|term| TermRow { lessons: users(&term.id), ..row(term, book, "") });
    GlossaryPage { rows: rows.collect(), frame }
}

/// The words that a lesson links to, in the order in which they stand there.
pub fn of_lesson<'a>(book: &Formulary, hrefs: impl Iterator<Item = &'a str>, root: &str) -> Vec<TermRow> {
    let mut rows: Vec<TermRow> = Vec::new();
    for id in hrefs.filter_map(|href| href.strip_prefix("term:")) {
        let term = book.glossary.iter().find(|term| term.id == id);
        rows.extend(term.filter(|_| rows.iter().all(|row| row.id != id)).map(|term| row(term, book, root)));
    }
    rows
}

fn row(term: &Term, book: &Formulary, root: &str) -> TermRow {
    let place = |id: &str| format!("{root}{PLACE}#{id}");
    let see = term.see.iter().filter_map(|see| {
        let other = book.glossary.iter().find(|other| other.word.value == see.value)?;
        Some(Link { text: other.word.value.clone(), href: place(&other.id), current: false })
    });
    let also: Vec<&str> = term.also.iter().map(|form| form.value.as_str()).collect();
    TermRow {
        id: term.id.clone(),
        word: term.word.value.clone(),
        href: place(&term.id),
        means: term.means.clone(),
        also: also.join(", "),
        see: see.collect(),
        lessons: Vec::new(),
    }
}
