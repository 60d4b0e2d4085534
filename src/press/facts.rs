//! The pages of facts: plants, pantry, cautions, people.

use std::collections::BTreeMap;

use super::lesson::{Done, all_noted};
use super::noted::{Held, Noted};
use super::put::{Put, page_link};
use crate::caution::{self, Caution};
use crate::page::cautions_page::{self, ForThem};
use crate::page::show::capital;
use crate::page::view::{Link, UserRow};
use crate::page::{pantry_page, plant};
use crate::people::Who;
use crate::site::Trouble;

/// Makes and writes them.
pub(super) fn press(done: &[Done], put: &mut Put) -> Result<(), Trouble> {
    let desk = put.desk;
    let book = desk.book;
    put.page("plants.html", "list.html", &plant::list(desk.titled("plants", "plants.html"), book))?;
    for file in &desk.gathered.plants {
        let id = super::stem(file);
        let Some(plant) = book.plants.get(id) else { continue };
        let prose = put.text(Some(file), "../")?;
        let title = capital(&plant.words);
        let about = format!("{title}, {}: facts, cautions and where this book uses it.", plant.latin);
        let users = users(done, |noted| &noted.plants, id, "../");
        let path = format!("plants/{id}.html");
        let view = plant::page(desk.frame(&title, &about, &path), plant, book, prose, users);
        put.page(&path, "monograph.html", &view)?;
    }
    put.page("pantry.html", "list.html", &pantry_page::list(desk.titled("pantry", "pantry.html"), book))?;
    for shelf in book.pantry.shelves() {
        let file = shelf.page.as_ref().map(|page| page.path.as_str());
        let prose = put.text(file, "../")?;
        let (id, title) = (&shelf.item.id, capital(&shelf.item.words));
        let about = format!("{title}: what it is made of, its cautions and where this book uses it.");
        let users = users(done, |noted| &noted.pantry, id, "../");
        let path = format!("pantry/{id}.html");
        let view = pantry_page::page(desk.frame(&title, &about, &path), shelf, book, prose, users);
        put.page(&path, "monograph.html", &view)?;
    }
    cautions(done, put)
}

fn away(link: &Link, root: &str) -> Link {
    Link { href: format!("{root}{}", link.href), ..link.clone() }
}

/// The recipes that something stands in, and in which of their variations alone.
fn users(done: &[Done], of: impl Fn(&Noted) -> &Vec<Held>, name: &str, root: &str) -> Vec<UserRow> {
    let held =
        all_noted(done).filter_map(|noted| Some((noted, of(noted).iter().find(|held| held.name == name)?)));
    held.map(|(noted, held)| UserRow { link: away(&noted.link, root), only: only(&held.only_in) }).collect()
}

fn only(variations: &[String]) -> String {
    match variations {
        [] => String::new(),
        [one] => format!("in the variation “{one}”"),
        several => {
            let names: Vec<String> = several.iter().map(|name| format!("“{name}”")).collect();
            format!("in the variations {}", names.join(", "))
        }
    }
}

fn cautions(done: &[Done], put: &mut Put) -> Result<(), Trouble> {
    let desk = put.desk;
    let book = desk.book;
    let mut by_rule: BTreeMap<String, Vec<UserRow>> = BTreeMap::new();
    for noted in all_noted(done) {
        for held in &noted.cautions {
            let row = UserRow { link: noted.link.clone(), only: only(&held.only_in) };
            by_rule.entry(held.name.clone()).or_default().push(row);
        }
    }
    let plants = book.plants.values().map(|plant| {
        (
            page_link("plants", &plant.id, &plant.words),
            caution::about_plant(plant),
            !plant.cautions.is_empty(),
        )
    });
    let items = book.pantry.shelves().map(|shelf| {
        let own = shelf.page.as_ref().is_some_and(|page| !page.cautions.is_empty());
        (page_link("pantry", &shelf.item.id, &shelf.item.words), caution::about_item(shelf), own)
    });
    let pages: Vec<(Link, Vec<Caution>, bool)> = plants.chain(items).collect();
    let own = pages.iter().filter(|(.., own)| *own).map(|(link, ..)| link.clone()).collect();
    let view = cautions_page::page(desk.titled("cautions", "cautions.html"), &by_rule, own);
    put.page("cautions.html", "cautions.html", &view)?;
    let view = cautions_page::people(desk.titled("who-must-not", "who-must-not.html"), &index(done, &pages));
    put.page("who-must-not.html", "people.html", &view)
}

/// For each of the people named anywhere, what is not for them and what they ask about.
fn index(done: &[Done], pages: &[(Link, Vec<Caution>, bool)]) -> BTreeMap<Who, ForThem> {
    let mut index: BTreeMap<Who, ForThem> = BTreeMap::new();
    for noted in all_noted(done) {
        // Whether a variation alone bars somebody is told by its name.
        let mut note = |who: Who, never: bool, variation: Option<&String>| {
            let them = index.entry(who).or_default();
            let rows = if never { &mut them.never } else { &mut them.ask };
            if rows.iter().any(|row| row.link.href == noted.link.href) {
                return;
            }
            let only = variation.map_or(String::new(), |name| only(std::slice::from_ref(name)));
            rows.push(UserRow { link: noted.link.clone(), only });
        };
        for (variation, company) in &noted.companies {
            company.not_for.iter().for_each(|barred| note(barred.who, true, variation.as_ref()));
            company.ask_first.iter().for_each(|barred| note(barred.who, false, variation.as_ref()));
        }
    }
    for (link, cautions, _) in pages {
        let named = cautions.iter().flat_map(|caution| caution.not_for.iter().chain(&caution.ask_first));
        for who in named {
            let them = index.entry(*who).or_default();
            if !them.pages.iter().any(|known| known.href == link.href) {
                them.pages.push(link.clone());
            }
        }
    }
    index
}
