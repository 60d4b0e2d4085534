//! Look up: everything the book has a page or a place for, and the index the script finds it by.

use super::classwork::{ANSWERS, EXERCISES};
use super::lesson::{Done, all_noted};
use super::paper::SHEETS;
use super::put::{Desk, Put, lesson_link, page_link};
use crate::page::glossary_page;
use crate::page::look_up::{Entry, index, page};
use crate::page::show::capital;
use crate::page::view::Link;
use crate::site::Trouble;

/// Makes the page and its index. Every other page has been made before.
pub(super) fn press(done: &[Done], put: &mut Put) -> Result<(), Trouble> {
    let desk = put.desk;
    let entries = entries(desk, done);
    put.page("look-up.html", "look-up.html", &page(desk.titled("look-up", "look-up.html"), &entries))?;
    let text = index(&entries, &desk.made().leaves, |kind| desk.word(&format!("is-a-{kind}")));
    desk.write("look-up-index.js", text.as_bytes())
}

fn entries(desk: &Desk, done: &[Done]) -> Vec<Entry> {
    let book = desk.book;
    let entry = |kind, link, also| Entry { link, kind, also };
    let mut all: Vec<Entry> =
        book.lessons.iter().map(|head| entry("lesson", lesson_link(head, ""), Vec::new())).collect();
    // A lesson of one recipe that has its name is there already.
    let named = |link: &Link| {
        let page = link.href.split('#').next().unwrap_or_default();
        book.lessons.iter().any(|head| head.title == link.text && lesson_link(head, "").href == page)
    };
    let recipes = all_noted(done).map(|noted| noted.link.clone()).filter(|link| !named(link));
    all.extend(recipes.map(|link| entry("recipe", link, Vec::new())));
    for plant in book.plants.values() {
        let mut also = vec![plant.latin.clone()];
        also.extend(plant.synonym.clone());
        also.extend(plant.also.iter().cloned());
        all.push(entry("plant", page_link("plants", &plant.id, &plant.words), also));
    }
    for shelf in book.pantry.shelves() {
        let also = shelf.page.as_ref().map_or(Vec::new(), |page| page.also.clone());
        all.push(entry("pantry", page_link("pantry", &shelf.item.id, &shelf.item.words), also));
    }
    for term in &book.glossary {
        let href = format!("{}#{}", glossary_page::PLACE, term.id);
        let also = term.also.iter().map(|form| form.value.clone()).collect();
        all.push(entry("word", Link { text: capital(&term.word.value), href, current: false }, also));
    }
    // What is left are the book's own pages, under the titles they have.
    let made = desk.made();
    let on_paper = |path: &str| {
        SHEETS
            .iter()
            .chain(&[EXERCISES, ANSWERS])
            .any(|folder| path.split('/').next() == Some(*folder) && path.contains('/'))
    };
    let other = made
        .leaves
        .iter()
        .filter(|(path, leaf)| !path.starts_with("lessons/") && !on_paper(path) && !leaf.leads_on);
    let other = other.filter(|(path, _)| all.iter().all(|entry| entry.link.href != **path));
    let other: Vec<Entry> = other
        .map(|(path, leaf)| {
            let kind = if path.starts_with("tables/") { "table" } else { "page" };
            let text = leaf.own_title(&book.course.book).to_string();
            entry(kind, Link { text, href: path.clone(), current: false }, Vec::new())
        })
        .collect();
    all.extend(other);
    all
}
