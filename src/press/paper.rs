//! For paper: a handout, cards, labels and every line of the sums a lesson, and the booklet of the whole course.

use super::classwork::ANSWERS;
use super::put::{Desk, Put, lesson_link, sheet_path};
use crate::diagnostic::Finding;
use crate::formulary::LessonHead;
use crate::page::leaf::{self, Leaf};
use crate::page::view::{BookletPage, BoundLeaf, Link, Sheet, SheetsPage};
use crate::site::Trouble;

/// Sheets a lesson: the folder they stand in, which names the template and the theme's words `sheet-FOLDER`.
pub(super) const SHEETS: [&str; 4] = ["handouts", "cards", "labels", WORKINGS];
/// Where every line of each recipe stands.
pub(super) const WORKINGS: &str = "workings";
/// The booklet's page.
const BOOKLET: &str = "booklet.html";
/// Blank leaves for notes at its end.
const NOTES: usize = 4;

/// Makes a lesson's handout, cards, labels and workings.
pub(super) fn sheets(
    desk: &Desk,
    head: &LessonHead,
    sheets: &[Sheet],
    findings: &mut Vec<Finding>,
) -> Result<(), Trouble> {
    if sheets.is_empty() {
        return Ok(());
    }
    for folder in SHEETS {
        let (path, frame) = desk.sheet(folder, head);
        let view = SheetsPage {
            lesson: lesson_link(head, "../"),
            evening: head.evening.clone(),
            sheets: sheets.to_vec(),
            foot: foot(desk),
            frame,
        };
        desk.page(&path, &format!("{folder}.html"), &view, findings)?;
    }
    Ok(())
}

/// What no sheet may leave out: the book and its printing, whose words it is, and who comes first.
pub(super) fn foot(desk: &Desk) -> Vec<String> {
    let course = &desk.book.course;
    let printed = [course.book.as_str(), course.printing.as_str()];
    let printed: Vec<&str> = printed.into_iter().filter(|text| !text.is_empty()).collect();
    let lines = [printed.join(" · "), course.disclaimer.clone(), crate::caution::CLOSING.to_string()];
    lines.into_iter().filter(|line| !line.is_empty()).collect()
}

/// Makes the booklet of the pages already made.
pub(super) fn booklet(put: &mut Put) -> Result<(), Trouble> {
    let desk = put.desk;
    let (book, course) = (desk.book, &desk.book.course);
    let lessons = book.lessons.iter().map(|head| ("lessons", lesson_link(head, "").href));
    let mut plants: Vec<(&str, String)> = book
        .plants
        .values()
        .map(|plant| (plant.words.as_str(), format!("plants/{}.html", plant.id)))
        .collect();
    plants.sort();
    let plants = plants.into_iter().map(|(_, path)| ("plants", path));
    let answers = book.lessons.iter().map(|head| (ANSWERS, sheet_path(ANSWERS, head)));
    let back = [("glossary", "glossary.html".to_string()), ("method", "method.html".to_string())];
    let order: Vec<(&str, String)> = lessons.chain(plants).chain(answers).chain(back).collect();
    let made = desk.made();
    let there: Vec<(&str, &str, &Leaf)> = order
        .iter()
        .filter_map(|(part, path)| Some((*part, path.as_str(), made.leaves.get(path)?)))
        .collect();
    let paths: Vec<&str> = there.iter().map(|(_, path, _)| *path).collect();
    let mut before = "";
    let mut leaves: Vec<BoundLeaf> = Vec::new();
    for (part, path, leaf) in &there {
        let html = leaf.bound(&place(path), &|href| lead(path, href, &paths));
        leaves.push(BoundLeaf {
            id: place(path),
            title: leaf.own_title(&course.book).to_string(),
            part: if *part == before { String::new() } else { (*part).to_string() },
            kind: (*part).to_string(),
            html,
        });
        before = part;
    }
    drop(made);
    let ids: Vec<String> = leaves.iter().map(|leaf| leaf.id.clone()).collect();
    let known = leaf::ids_of(leaves.iter().map(|leaf| leaf.html.as_str()), ids);
    for leaf in &mut leaves {
        leaf.html = leaf::without_loose_ends(&leaf.html, &known);
    }
    let view = BookletPage {
        for_whom: course.for_whom.clone(),
        title: course.title.clone(),
        lead: course.lead.clone(),
        when: course.when.clone(),
        imprint: std::iter::once(course.book.clone()).chain(desk.colophon()).collect(),
        leaves,
        notes: (1..=NOTES).collect(),
        frame: desk.titled("booklet", BOOKLET),
    };
    put.page(BOOKLET, "booklet.html", &view)
}

/// The anchor of a page in the booklet.
fn place(path: &str) -> String {
    path.trim_end_matches(".html").replace('/', "-")
}

/// Where a link of a bound page leads: into the booklet where its page is bound too, else to the site or the web.
fn lead(from: &str, href: &str, bound: &[&str]) -> String {
    if let Some(anchor) = href.strip_prefix('#') {
        return format!("#{}--{anchor}", place(from));
    }
    if href.contains("://") || href.starts_with("mailto:") {
        return href.to_string();
    }
    let (path, anchor) = href.split_once('#').map_or((href, None), |(path, anchor)| (path, Some(anchor)));
    // Pages stand at the root or one folder below it.
    let folder = from.split_once('/').map_or("", |(folder, _)| folder);
    let path = match path.strip_prefix("../") {
        Some(path) => path.to_string(),
        None if folder.is_empty() => path.to_string(),
        None => format!("{folder}/{path}"),
    };
    match (bound.contains(&path.as_str()), anchor) {
        (true, Some(anchor)) => format!("#{}--{anchor}", place(&path)),
        (true, None) => format!("#{}", place(&path)),
        (false, Some(anchor)) => format!("{path}#{anchor}"),
        (false, None) => path,
    }
}

/// Where a lesson's sheets and the booklet stand, from the lesson.
pub(super) fn links(desk: &Desk, head: &LessonHead) -> Vec<Link> {
    let sheets = SHEETS.map(|folder| Link {
        text: desk.word(&format!("on-paper-{folder}")),
        href: format!("../{}", sheet_path(folder, head)),
        current: false,
    });
    let booklet = desk.link("booklet");
    sheets.into_iter().chain([Link { href: format!("../{}", booklet.href), ..booklet }]).collect()
}
