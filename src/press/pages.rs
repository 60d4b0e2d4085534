//! The pages beside the lessons: home, tables, method and sources, and the theme's own files.

use super::days;
use super::facts;
use super::lesson::Done;
use super::put::{
    CAUTIONS, CHECKS, CHILDREN, METHOD, ONE_DAY, PANTRY, PEOPLE, PLANTS, Put, SIDE_BY_SIDE, SPIRITS, TABLES,
    frame, lesson_link,
};
use super::sides;
use crate::diagnostic::Finding;
use crate::formulary::Formulary;
use crate::page::checks_page;
use crate::page::children_page;
use crate::page::method_page::{self, Users};
use crate::page::spirits_page;
use crate::page::tables_page;
use crate::page::theme::Theme;
use crate::page::view::{BillRow, Frame, HomePage, Link};
use crate::site::{Gathered, Trouble};
use crate::specimens;

/// Makes and writes them; says how many pages.
pub(super) fn press(
    gathered: &Gathered,
    book: &Formulary,
    done: &[Done],
    theme: &Theme,
    write: &dyn Fn(&str, &[u8]) -> Result<(), Trouble>,
    findings: &mut Vec<Finding>,
) -> Result<usize, Trouble> {
    let mut put = Put { theme, write, findings, pages: 0 };
    put.page("index.html", "home.html", &home(book, done))?;
    let mut users = all_users(done);
    let about = "Water to add to a spirit for a wanted strength, worked by weight.";
    let spirits = spirits_page::page(frame(book, SPIRITS, about, ""), &book.course.kitchen, &mut users);
    if let Some(view) = &spirits {
        put.page("spirits.html", "spirits.html", view)?;
    }
    let about = "Old rules for a child’s dose side by side: history, for teaching only.";
    let children = children_page::page(frame(book, CHILDREN, about, ""), &mut users);
    put.page("childrens-doses.html", "children.html", &children)?;
    let about =
        "How the numbers of this book are made: every formula, figure and assumption with its source.";
    put.page("method.html", "method.html", &method_page::page(frame(book, METHOD, about, ""), &users))?;
    checks(book, &mut put)?;
    tables(book, done, &mut put)?;
    facts::press(gathered, book, done, &mut put)?;
    days::press(gathered, book, done, &mut put)?;
    sides::press(gathered, book, done, &mut put)?;
    for (name, bytes) in theme.assets() {
        write(&name, &bytes)?;
    }
    Ok(put.pages)
}

/// What every lesson uses, together.
fn all_users(done: &[Done]) -> Users {
    let mut users = Users::new();
    for (id, links) in done.iter().flat_map(|lesson| &lesson.users) {
        let all = users.entry(id.clone()).or_default();
        for link in links {
            if !all.iter().any(|known| known.href == link.href) {
                all.push(link.clone());
            }
        }
    }
    users
}

fn checks(book: &Formulary, put: &mut Put) -> Result<(), Trouble> {
    match crate::checks::rows() {
        Ok(rows) => {
            let about =
                "Figures printed elsewhere, each with its source, beside what this book makes of them.";
            put.page("checks.html", "checks.html", &checks_page::page(frame(book, CHECKS, about, ""), &rows))
        }
        // The file is the program's own: a fault in it has no place in the book.
        Err(faults) => {
            put.findings.extend(faults);
            Ok(())
        }
    }
}

fn tables(book: &Formulary, done: &[Done], put: &mut Put) -> Result<(), Trouble> {
    let specimens = match specimens::worked() {
        Ok(specimens) => specimens,
        Err(faults) => {
            put.findings.extend(faults);
            return Ok(());
        }
    };
    let about = "Ratios, strengths and yields of every preparation, worked row by row.";
    let view = tables_page::list(frame(book, TABLES, about, ""), &specimens);
    put.page("tables.html", "tables.html", &view)?;
    for specimen in &specimens {
        let word = specimen.kind.word;
        let taught = book.lessons.iter().zip(done).filter(|(_, done)| done.kinds.contains(&word));
        let taught = taught.map(|(head, _)| lesson_link(head, "../")).collect();
        let title = tables_page::title(word);
        let about = format!("{title}: ratios, strengths and yields, worked row by row.");
        let view = tables_page::page(frame(book, &title, &about, "../"), specimen, taught);
        put.page(&tables_page::address(word), "table.html", &view)?;
    }
    Ok(())
}

fn home(book: &Formulary, done: &[Done]) -> HomePage {
    let course = &book.course;
    let bill = book.lessons.iter().zip(done).enumerate().map(|(n, (head, done))| BillRow {
        number: n + 1,
        lesson: lesson_link(head, ""),
        makes: done.makes.join("; "),
        keeps: done.keeps.join("; "),
        ready_in: done.ready_in.join("; "),
        when: head.when.clone(),
    });
    let link =
        |text: &str, href: &str| Link { text: text.to_string(), href: href.to_string(), current: false };
    HomePage {
        frame: Frame { contents: None, ..frame(book, &course.title, &course.lead, "") },
        for_whom: course.for_whom.clone(),
        title: course.title.clone(),
        lead: course.lead.clone(),
        when: course.when.clone(),
        prose_html: String::new(),
        bill: bill.collect(),
        back_matter: [
            Some(link(PLANTS, "plants.html")),
            Some(link(PANTRY, "pantry.html")),
            Some(link(CAUTIONS, "cautions.html")),
            Some(link(PEOPLE, "who-must-not.html")),
            book.lessons.iter().any(|head| !head.one_day.is_empty()).then(|| link(ONE_DAY, "one-day.html")),
            book.lessons
                .iter()
                .any(|head| !head.side_by_side.is_empty())
                .then(|| link(SIDE_BY_SIDE, "side-by-side.html")),
            Some(link(TABLES, "tables.html")),
            (!course.kitchen.spirits.is_empty()).then(|| link(SPIRITS, "spirits.html")),
            Some(link(CHILDREN, "childrens-doses.html")),
            Some(link(METHOD, "method.html")),
            Some(link(CHECKS, "checks.html")),
        ]
        .into_iter()
        .flatten()
        .collect(),
    }
}
