//! What every page of the press takes: the frame around it, links to lessons, and the place it is put.

use crate::diagnostic::Finding;
use crate::formulary::{Formulary, LessonHead};
use crate::page::theme::Theme;
use crate::page::view::{Frame, Link};
use crate::site::{Gathered, Trouble, read_source};
use serde::Serialize;

// What the pages beside the lessons are called.
pub(super) const CAUTIONS: &str = "Cautions";
pub(super) const CHECKS: &str = "Checks";
pub(super) const CHILDREN: &str = "Old rules for children";
pub(super) const METHOD: &str = "Method and sources";
pub(super) const ONE_DAY: &str = "Taken on one day";
pub(super) const PANTRY: &str = "Pantry";
pub(super) const PEOPLE: &str = "Who must not";
pub(super) const PLANTS: &str = "Plants";
pub(super) const SIDE_BY_SIDE: &str = "Side by side";
pub(super) const SPIRITS: &str = "Spirit and water";
pub(super) const TABLES: &str = "Tables";

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
            link(PLANTS, "plants.html"),
            link(CAUTIONS, "cautions.html"),
            link(TABLES, "tables.html"),
            link(METHOD, "method.html"),
        ],
        colophon: [&course.printing, &course.licence]
            .into_iter()
            .filter(|line| !line.is_empty())
            .cloned()
            .chain([course.disclaimer.clone()].into_iter().filter(|words| !words.is_empty()))
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

/// A link to a lesson from the page `root` belongs to.
pub(super) fn lesson_link(head: &LessonHead, root: &str) -> Link {
    Link { text: head.title.clone(), href: format!("{root}lessons/{}.html", head.slug), current: false }
}

/// Where pages are put.
pub(super) struct Put<'a> {
    pub(super) theme: &'a Theme,
    pub(super) write: &'a dyn Fn(&str, &[u8]) -> Result<(), Trouble>,
    /// What is found while they are made.
    pub(super) findings: &'a mut Vec<Finding>,
    /// How many there are.
    pub(super) pages: usize,
}

impl Put<'_> {
    /// What each lesson's front matter asks of a page beside it; findings go with the lesson, whose text has been
    /// read and forgotten.
    pub(super) fn of_lessons<T, All: IntoIterator<Item = T>>(
        &mut self,
        gathered: &Gathered,
        book: &Formulary,
        mut ask: impl FnMut(&LessonHead, &mut Vec<Finding>) -> All,
    ) -> Result<Vec<T>, Trouble> {
        let mut all = Vec::new();
        for head in &book.lessons {
            let mut found = Vec::new();
            all.extend(ask(head, &mut found));
            if !found.is_empty()
                && let Some(source) = read_source(&gathered.dir, &head.path, &mut Vec::new())?
            {
                self.findings.extend(found.into_iter().map(|finding| finding.locate(&source)));
            }
        }
        Ok(all)
    }

    /// Renders a view with its template and writes it; a fault of the theme is a finding.
    pub(super) fn page(&mut self, path: &str, template: &str, view: &impl Serialize) -> Result<(), Trouble> {
        match self.theme.render(template, view) {
            Ok(html) => {
                self.pages += 1;
                (self.write)(path, html.as_bytes())
            }
            Err(finding) => {
                self.findings.push(finding);
                Ok(())
            }
        }
    }
}
