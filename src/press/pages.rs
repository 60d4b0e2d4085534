//! The pages beside the lessons: home, tables, method and sources, and the theme's own files.

use super::addresses;
use super::days;
use super::facts;
use super::lesson::Done;
use super::lists;
use super::look_up;
use super::paper;
use super::put::{Desk, HOME, Put, lesson_link};
use super::sides;
use super::tables;
use super::web;
use crate::diagnostic::{Code, Finding};
use crate::formula::script;
use crate::formulary::LessonHead;
use crate::page::checks_page;
use crate::page::children_page;
use crate::page::method_page::{self, Users};
use crate::page::spirits_page;
use crate::page::view::{BillRow, ChangeRow, HomePage};
use crate::reader;
use crate::site::Trouble;

/// Makes and writes them.
pub(super) fn press(desk: &Desk, done: &[Done], findings: &mut Vec<Finding>) -> Result<(), Trouble> {
    let mut put = Put { desk, findings, anchored: Vec::new() };
    let prose = put.text(desk.gathered.home.then_some("home.md"), "")?;
    let changes = lists::changes(desk.book);
    put.page(HOME, "home.html", &home(desk, done, prose, &changes))?;
    let mut users = all_users(done);
    let kitchen = &desk.book.course.kitchen;
    if let Some(view) = spirits_page::page(desk.titled("spirits", "spirits.html"), kitchen, &mut users) {
        put.page("spirits.html", "spirits.html", &view)?;
    }
    let children = children_page::page(desk.titled("childrens-doses", "childrens-doses.html"), &mut users);
    put.page("childrens-doses.html", "children.html", &children)?;
    let formulas = method_page::used(&users);
    desk.write("formulas.js", script(&formulas).as_bytes())?;
    desk.write("reader.js", reader::script(&formulas).as_bytes())?;
    put.page("method.html", "method.html", &method_page::page(desk.titled("method", "method.html"), &users))?;
    checks(&mut put)?;
    tables::press(done, &mut put)?;
    lists::press(done, changes, &mut put)?;
    facts::press(done, &mut put)?;
    days::press(done, &mut put)?;
    sides::press(done, &mut put)?;
    addresses::press(&mut put)?;
    paper::booklet(&mut put)?;
    look_up::press(done, &mut put)?;
    for (name, bytes) in desk.assets() {
        // Told with the author's file; the page that stands there is kept.
        let taken = desk.made().files.contains_key(&name);
        if taken {
            put.findings.push(addresses::in_the_way(desk, &name));
        } else {
            desk.write(&name, &bytes)?;
        }
    }
    web::press(&mut put)?;
    let of_lessons = done.iter().flat_map(|lesson| lesson.anchored.iter().cloned());
    let loose = addresses::loose(desk, of_lessons.chain(put.anchored));
    put.findings.extend(loose);
    // A file whose name makes no address has been told with all it would be named; its pages are not told again.
    if !put.findings.iter().any(|finding| finding.code == Code::BadAddress) {
        put.findings.extend(addresses::strange(desk));
    }
    Ok(())
}

/// So many changes stand on the home page.
const LATEST: usize = 4;

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
            let frame = put.desk.titled("checks", "checks.html");
            put.page("checks.html", "checks.html", &checks_page::page(frame, &rows))
        }
        // The file is the program's own: a fault in it has no place in the book.
        Err(faults) => {
            put.findings.extend(faults);
            Ok(())
        }
    }
}

fn home(desk: &Desk, done: &[Done], prose_html: String, changes: &[ChangeRow]) -> HomePage {
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
        ("recipes", true),
        ("plants", true),
        ("pantry", true),
        ("glossary", !book.glossary.is_empty()),
        ("cautions", true),
        ("who-must-not", true),
        ("one-day", any(|head| !head.one_day.is_empty())),
        ("side-by-side", any(|head| !head.side_by_side.is_empty())),
        ("tables", true),
        ("childrens-doses", true),
        ("method", true),
        ("checks", true),
        ("corrections", !changes.is_empty()),
        ("booklet", true),
        ("look-up", true),
    ];
    HomePage {
        frame: desk.frame(&course.title, &course.lead, HOME),
        for_whom: course.for_whom.clone(),
        title: course.title.clone(),
        lead: course.lead.clone(),
        when: course.when.clone(),
        start: book.lessons.first().filter(|_| prose_html.is_empty()).map(|head| lesson_link(head, "")),
        prose_html,
        changes: changes.iter().take(LATEST).cloned().collect(),
        all_changes: desk.link("corrections"),
        bill: bill.collect(),
        back_matter: back_matter
            .into_iter()
            .filter(|(_, there)| *there)
            .map(|(page, _)| desk.link(page))
            .collect(),
    }
}
