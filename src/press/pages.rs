//! The pages beside the lessons: home, tables, method and sources, and the theme's own files.

use super::days;
use super::facts;
use super::lesson::Done;
use super::put::{Desk, Put, lesson_link};
use super::sides;
use crate::diagnostic::Finding;
use crate::formulary::LessonHead;
use crate::page::checks_page;
use crate::page::children_page;
use crate::page::method_page::{self, Users};
use crate::page::spirits_page;
use crate::page::tables_page;
use crate::page::view::{BillRow, Frame, HomePage};
use crate::site::Trouble;
use crate::specimens;

/// Makes and writes them; says how many pages.
pub(super) fn press(desk: &Desk, done: &[Done], findings: &mut Vec<Finding>) -> Result<usize, Trouble> {
    let mut put = Put { desk, findings, pages: 0 };
    put.page("index.html", "home.html", &home(desk, done))?;
    let mut users = all_users(done);
    let kitchen = &desk.book.course.kitchen;
    if let Some(view) = spirits_page::page(desk.titled("spirits", ""), kitchen, &mut users) {
        put.page("spirits.html", "spirits.html", &view)?;
    }
    let children = children_page::page(desk.titled("childrens-doses", ""), &mut users);
    put.page("childrens-doses.html", "children.html", &children)?;
    put.page("method.html", "method.html", &method_page::page(desk.titled("method", ""), &users))?;
    checks(&mut put)?;
    tables(done, &mut put)?;
    facts::press(done, &mut put)?;
    days::press(done, &mut put)?;
    sides::press(done, &mut put)?;
    for (name, bytes) in desk.theme.assets() {
        (desk.write)(&name, &bytes)?;
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

fn checks(put: &mut Put) -> Result<(), Trouble> {
    match crate::checks::rows() {
        Ok(rows) => {
            let frame = put.desk.titled("checks", "");
            put.page("checks.html", "checks.html", &checks_page::page(frame, &rows))
        }
        // The file is the program's own: a fault in it has no place in the book.
        Err(faults) => {
            put.findings.extend(faults);
            Ok(())
        }
    }
}

fn tables(done: &[Done], put: &mut Put) -> Result<(), Trouble> {
    let desk = put.desk;
    let specimens = match specimens::worked() {
        Ok(specimens) => specimens,
        Err(faults) => {
            put.findings.extend(faults);
            return Ok(());
        }
    };
    let view = tables_page::list(desk.titled("tables", ""), &specimens);
    put.page("tables.html", "tables.html", &view)?;
    for specimen in &specimens {
        let word = specimen.kind.word;
        let taught = desk.book.lessons.iter().zip(done).filter(|(_, done)| done.kinds.contains(&word));
        let taught = taught.map(|(head, _)| lesson_link(head, "../")).collect();
        let title = tables_page::title(word);
        let about = format!("{title}: ratios, strengths and yields, worked row by row.");
        let view = tables_page::page(desk.frame(&title, &about, "../"), specimen, taught);
        put.page(&tables_page::address(word), "table.html", &view)?;
    }
    Ok(())
}

fn home(desk: &Desk, done: &[Done]) -> HomePage {
    let book = desk.book;
    let course = &book.course;
    let bill = book.lessons.iter().zip(done).enumerate().map(|(n, (head, done))| BillRow {
        number: n + 1,
        lesson: lesson_link(head, ""),
        makes: done.makes.join("; "),
        keeps: done.keeps.join("; "),
        ready_in: done.ready_in.join("; "),
        when: head.when.clone(),
    });
    let any = |of: fn(&LessonHead) -> bool| book.lessons.iter().any(of);
    let back_matter = [
        ("plants", true),
        ("pantry", true),
        ("cautions", true),
        ("who-must-not", true),
        ("one-day", any(|head| !head.one_day.is_empty())),
        ("side-by-side", any(|head| !head.side_by_side.is_empty())),
        ("tables", true),
        ("spirits", !course.kitchen.spirits.is_empty()),
        ("childrens-doses", true),
        ("method", true),
        ("checks", true),
    ];
    HomePage {
        frame: Frame { contents: None, ..desk.frame(&course.title, &course.lead, "") },
        for_whom: course.for_whom.clone(),
        title: course.title.clone(),
        lead: course.lead.clone(),
        when: course.when.clone(),
        prose_html: String::new(),
        bill: bill.collect(),
        back_matter: back_matter
            .into_iter()
            .filter(|(_, there)| *there)
            .map(|(page, _)| desk.link(page))
            .collect(),
    }
}
