//! The pages beside the lessons: home, plants, method and sources, and the theme's own files.

use super::lesson::Done;
use crate::diagnostic::Finding;
use crate::formulary::{Formulary, LessonHead};
use crate::manuscript;
use crate::page::checks_page;
use crate::page::lesson::prose;
use crate::page::method_page::{self, Users};
use crate::page::plant;
use crate::page::recipe::capital;
use crate::page::spirits_page;
use crate::page::tables_page;
use crate::page::theme::Theme;
use crate::page::view::{BillRow, Frame, HomePage, Link};
use crate::site::{Gathered, Trouble, read_source};
use crate::specimens;
use serde::Serialize;

/// Around every page. `root` leads from the page to the site's root.
pub(super) fn frame(book: &Formulary, title: &str, description: &str, root: &str) -> Frame {
    let course = &book.course;
    let link = |text: &str, href: &str| Link {
        text: text.to_string(),
        href: format!("{root}{href}"),
        current: text == title,
    };
    Frame {
        lang: course.language.clone(),
        book: course.book.clone(),
        title: title.to_string(),
        description: description.to_string(),
        root: root.to_string(),
        running: vec![
            link("Plants", "plants.html"),
            link(TABLES, "tables.html"),
            link(METHOD, "method.html"),
        ],
        colophon: [&course.printing, &course.licence]
            .into_iter()
            .filter(|line| !line.is_empty())
            .cloned()
            .chain([crate::caution::CLOSING.to_string()])
            .collect(),
        back: None,
        contents: Some(Link {
            text: "Back to the contents".into(),
            href: format!("{root}index.html"),
            current: false,
        }),
        catchword: None,
    }
}

const SPIRITS: &str = "Spirit and water";
const TABLES: &str = "Tables";
const METHOD: &str = "Method and sources";
const CHECKS: &str = "Checks";

/// A link to a lesson from the page `root` belongs to.
pub(super) fn lesson_link(head: &LessonHead, root: &str) -> Link {
    Link { text: head.title.clone(), href: format!("{root}lessons/{}.html", head.slug), current: false }
}

/// Makes and writes them; says how many pages.
pub(super) fn press(
    gathered: &Gathered,
    book: &Formulary,
    done: &[Done],
    theme: &Theme,
    write: &dyn Fn(&str, &[u8]) -> Result<(), Trouble>,
    findings: &mut Vec<Finding>,
) -> Result<usize, Trouble> {
    let mut pages = 0;
    let mut put =
        |path: &str, template: &str, view: &dyn erased::View, findings: &mut Vec<Finding>| match view
            .render(theme, template)
        {
            Ok(html) => {
                pages += 1;
                write(path, html.as_bytes())
            }
            Err(finding) => {
                findings.push(finding);
                Ok(())
            }
        };
    put("index.html", "home.html", &home(book, done), findings)?;
    let mut users = Users::new();
    for lesson in done {
        for (id, links) in &lesson.users {
            let all = users.entry(id.clone()).or_default();
            all.extend(
                links
                    .iter()
                    .filter(|link| !all.iter().any(|known| known.href == link.href))
                    .cloned()
                    .collect::<Vec<_>>(),
            );
        }
    }
    let about = "Water to add to a spirit for a wanted strength, worked by weight.";
    let spirits = spirits_page::page(frame(book, SPIRITS, about, ""), &book.course.kitchen, &mut users);
    if let Some(view) = &spirits {
        put("spirits.html", "spirits.html", view, findings)?;
    }
    let about =
        "How the numbers of this book are made: every formula, figure and assumption with its source.";
    put("method.html", "method.html", &method_page::page(frame(book, METHOD, about, ""), &users), findings)?;
    match crate::checks::rows() {
        Ok(rows) => {
            let about =
                "Figures printed elsewhere, each with its source, beside what this book makes of them.";
            put(
                "checks.html",
                "checks.html",
                &checks_page::page(frame(book, CHECKS, about, ""), &rows),
                findings,
            )?;
        }
        // The file is the program's own: a fault in it has no place in the book.
        Err(faults) => findings.extend(faults),
    }
    match specimens::worked() {
        Ok(specimens) => {
            let about = "Ratios, strengths and yields of every preparation, worked row by row.";
            let view = tables_page::list(frame(book, TABLES, about, ""), &specimens);
            put("tables.html", "tables.html", &view, findings)?;
            for specimen in &specimens {
                let word = specimen.kind.word;
                let taught = book.lessons.iter().zip(done).filter(|(_, done)| done.kinds.contains(&word));
                let taught = taught.map(|(head, _)| lesson_link(head, "../")).collect();
                let title = tables_page::title(word);
                let about = format!("{title}: ratios, strengths and yields, worked row by row.");
                let view = tables_page::page(frame(book, &title, &about, "../"), specimen, taught);
                put(&tables_page::address(word), "table.html", &view, findings)?;
            }
        }
        Err(faults) => findings.extend(faults),
    }
    let list = frame(book, "Plants", "The plants of this book, by their names.", "");
    put("plants.html", "plants.html", &plant::list(list, book), findings)?;
    for path in &gathered.plants {
        let id = super::plant_id(path);
        let Some(plant) = book.plants.get(id) else {
            continue;
        };
        let Some(source) = read_source(&gathered.dir, path, &mut Vec::new())? else {
            continue;
        };
        let Ok(parts) = manuscript::parts(&source) else {
            continue;
        };
        let text = manuscript::read(&source, parts.body.span, &[]);
        findings.extend(text.findings.iter().cloned());
        let (prose, found) = prose(&text, book);
        findings.extend(found.into_iter().map(|finding| finding.locate(&source)));
        let used_by =
            book.lessons.iter().zip(done).filter(|(_, done)| done.plants.iter().any(|used| used == id));
        let users = used_by.map(|(head, _)| lesson_link(head, "../")).collect();
        let title = capital(&plant.words);
        let about = format!("{title}, {}: facts, cautions and where this book uses it.", plant.latin);
        let view = plant::page(frame(book, &title, &about, "../"), plant, prose, users);
        put(&format!("plants/{id}.html"), "plant.html", &view, findings)?;
    }
    for (name, bytes) in theme.assets() {
        write(&name, &bytes)?;
    }
    Ok(pages)
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
            Some(link("Plants", "plants.html")),
            Some(link(TABLES, "tables.html")),
            (!course.kitchen.spirits.is_empty()).then(|| link(SPIRITS, "spirits.html")),
            Some(link(METHOD, "method.html")),
            Some(link(CHECKS, "checks.html")),
        ]
        .into_iter()
        .flatten()
        .collect(),
    }
}

/// Views of several types through one door.
mod erased {
    use super::{Finding, Serialize, Theme};

    pub trait View {
        fn render(&self, theme: &Theme, template: &str) -> Result<String, Finding>;
    }

    impl<T: Serialize> View for T {
        fn render(&self, theme: &Theme, template: &str) -> Result<String, Finding> {
            theme.render(template, self)
        }
    }
}
