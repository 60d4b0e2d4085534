//! What every page of the press takes: the frame around it, links, and the place it is put.

use crate::diagnostic::Finding;
use crate::formulary::{Formulary, LessonHead};
use crate::page::theme::Theme;
use crate::page::view::{Frame, Link};
use crate::site::{Gathered, Trouble, read_source};
use serde::Serialize;

/// What one press works with, shared by all who make pages.
pub(super) struct Desk<'a> {
    pub(super) gathered: &'a Gathered,
    pub(super) book: &'a Formulary,
    pub(super) theme: &'a Theme,
    pub(super) write: &'a (dyn Fn(&str, &[u8]) -> Result<(), Trouble> + Sync),
}

impl Desk<'_> {
    /// Around a page of the book's own making: `page` names its title and its description among the theme's
    /// words, `page-NAME` and `about-NAME`. `root` leads from the page to the site's root.
    pub(super) fn titled(&self, page: &str, root: &str) -> Frame {
        let word = |kind: &str| self.theme.words().get(&format!("{kind}-{page}")).to_string();
        self.frame(&word("page"), &word("about"), root)
    }

    /// Around every page. `root` leads from the page to the site's root.
    pub(super) fn frame(&self, title: &str, description: &str, root: &str) -> Frame {
        let course = &self.book.course;
        let running = ["plants", "cautions", "tables", "method"].map(|page| {
            let link = self.link(page);
            Link { href: format!("{root}{}", link.href), current: link.text == title, ..link }
        });
        Frame {
            lang: course.language.clone(),
            book: course.book.clone(),
            title: title.to_string(),
            description: description.to_string(),
            root: root.to_string(),
            running: running.into(),
            colophon: [&course.printing, &course.licence]
                .into_iter()
                .filter(|line| !line.is_empty())
                .cloned()
                .chain([course.disclaimer.clone()].into_iter().filter(|words| !words.is_empty()))
                .chain([crate::caution::CLOSING.to_string()])
                .collect(),
            back: None,
            contents: Some(Link {
                text: self.theme.words().get("contents").to_string(),
                href: format!("{root}index.html"),
                current: false,
            }),
            catchword: None,
        }
    }

    /// A link from the site's root to a page of the book's own making.
    pub(super) fn link(&self, page: &str) -> Link {
        let text = self.theme.words().get(&format!("page-{page}")).to_string();
        Link { text, href: format!("{page}.html"), current: false }
    }
}

/// A link to a lesson from the page `root` belongs to.
pub(super) fn lesson_link(head: &LessonHead, root: &str) -> Link {
    Link { text: head.title.clone(), href: format!("{root}lessons/{}.html", head.slug), current: false }
}

/// Where pages are put.
pub(super) struct Put<'a> {
    pub(super) desk: &'a Desk<'a>,
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
        mut ask: impl FnMut(&LessonHead, &mut Vec<Finding>) -> All,
    ) -> Result<Vec<T>, Trouble> {
        let mut all = Vec::new();
        for head in &self.desk.book.lessons {
            let mut found = Vec::new();
            all.extend(ask(head, &mut found));
            if !found.is_empty()
                && let Some(source) = read_source(&self.desk.gathered.dir, &head.path, &mut Vec::new())?
            {
                self.findings.extend(found.into_iter().map(|finding| finding.locate(&source)));
            }
        }
        Ok(all)
    }

    /// Renders a view with its template and writes it; a fault of the theme is a finding.
    pub(super) fn page(&mut self, path: &str, template: &str, view: &impl Serialize) -> Result<(), Trouble> {
        match self.desk.theme.render(template, view) {
            Ok(html) => {
                self.pages += 1;
                (self.desk.write)(path, html.as_bytes())
            }
            Err(finding) => {
                self.findings.push(finding);
                Ok(())
            }
        }
    }
}
