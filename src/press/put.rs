//! What every page of the press takes: the frame around it, links, and the place it is put.

use std::collections::BTreeMap;
use std::sync::{Mutex, MutexGuard, PoisonError};

use serde::Serialize;

use crate::calendar::Day;
use crate::diagnostic::Finding;
use crate::formulary::{Formulary, LessonHead};
use crate::manuscript::{self, Terms};
use crate::page::glossary_page::PLACE as GLOSSARY;
use crate::page::leaf::Leaf;
use crate::page::lesson::{check, prose};
use crate::page::reference::{Anchored, Lesson};
use crate::page::show::capital;
use crate::page::theme::Theme;
use crate::page::view::{Frame, Link};
use crate::site::{Gathered, Stage, Trouble, read_bytes, read_source};
use crate::span::Source;

/// What one press works with, shared by all who make pages.
pub(super) struct Desk<'a> {
    pub(super) gathered: &'a Gathered,
    pub(super) book: &'a Formulary,
    pub(super) theme: &'a Theme,
    /// The day of the press, where it is known.
    pub(super) today: Option<Day>,
    stage: Option<&'a Stage>,
    made: Mutex<Made>,
}

/// What has been made so far, by its address from the site's root.
#[derive(Default)]
pub(super) struct Made {
    /// What is on each page.
    pub(super) leaves: BTreeMap<String, Leaf>,
    /// Every file: a number that changes with its bytes, and how often it was written.
    pub(super) files: BTreeMap<String, (u64, usize)>,
}

impl<'a> Desk<'a> {
    pub(super) fn new(
        gathered: &'a Gathered,
        book: &'a Formulary,
        theme: &'a Theme,
        stage: Option<&'a Stage>,
        today: Option<Day>,
    ) -> Desk<'a> {
        Desk { gathered, book, theme, today, stage, made: Mutex::default() }
    }

    /// A fixed word.
    pub(super) fn word(&self, name: &str) -> String {
        self.theme.words().get(name).to_string()
    }

    /// The theme's own files; in the style, the foot of a printed leaf says which book and printing it is of.
    pub(super) fn assets(&self) -> Vec<(String, Vec<u8>)> {
        let course = &self.book.course;
        let mut assets = self.theme.assets();
        let style = assets.iter_mut().find(|(name, _)| name == "style.css");
        if let Some((_, style)) = style {
            let foot =
                |at: &str, text: &str| format!("@page{{@bottom-{at}{{content:{}}}}}\n", css_string(text));
            style.extend(foot("left", &course.book).into_bytes());
            style.extend(foot("right", &course.printing).into_bytes());
        }
        assets
    }

    /// Writes a file, where this is a press and not a proof.
    pub(super) fn write(&self, path: &str, bytes: &[u8]) -> Result<(), Trouble> {
        self.note(path, fingerprint(bytes));
        self.stage.map_or(Ok(()), |stage| stage.write(path, bytes))
    }

    /// Copies a file of the formulary to the same path of the site; a proof does not read it again.
    pub(super) fn copy(&self, path: &str) -> Result<(), Trouble> {
        match self.stage {
            Some(_) => self.write(path, &read_bytes(&self.gathered.dir, path)?),
            None => {
                self.note(path, 0);
                Ok(())
            }
        }
    }

    fn note(&self, path: &str, print: u64) {
        let mut made = self.made();
        let file = made.files.entry(path.to_string()).or_default();
        *file = (print, file.1 + 1);
    }

    /// Renders a view with its template, writes it and keeps what is on it; a fault of the theme is a finding.
    pub(super) fn page(
        &self,
        path: &str,
        template: &str,
        view: &impl Serialize,
        findings: &mut Vec<Finding>,
    ) -> Result<(), Trouble> {
        match self.theme.render(template, view) {
            Ok(html) => {
                let leaf = Leaf::of(&html, is_bound(path));
                self.made().leaves.insert(path.to_string(), leaf);
                self.write(path, html.as_bytes())
            }
            Err(finding) => {
                findings.push(finding);
                Ok(())
            }
        }
    }

    /// What has been made so far.
    pub(super) fn made(&self) -> MutexGuard<'_, Made> {
        // A thread that panicked has ended the press; what it left behind is still whole.
        self.made.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Around a page of the book's own making: `page` names its title and its description among the theme's
    /// words, `page-NAME` and `about-NAME`. It stands at `path` from the site's root.
    pub(super) fn titled(&self, page: &str, path: &str) -> Frame {
        self.frame(&self.word(&format!("page-{page}")), &self.word(&format!("about-{page}")), path)
    }

    /// Where a lesson's sheet of `folder` stands, and around it: its title and what it is about in the theme's words.
    pub(super) fn sheet(&self, folder: &str, head: &LessonHead) -> (String, Frame) {
        let path = sheet_path(folder, head);
        let title = format!("{}: {}", head.title, self.word(&format!("sheet-{folder}")));
        let about = self.word(&format!("sheet-{folder}-means"));
        let frame = Frame { contents: None, ..self.frame(&title, &about, &path) };
        (path, frame)
    }

    /// Around the page at `path` from the site's root.
    pub(super) fn frame(&self, title: &str, description: &str, path: &str) -> Frame {
        let course = &self.book.course;
        let root = "../".repeat(path.matches('/').count());
        let running = RUNNING.map(|page| {
            let link = self.link(page);
            Link { href: format!("{root}{}", link.href), current: link.href == path, ..link }
        });
        let site = course.address.as_deref();
        let of_site = if path == HOME { "" } else { path };
        Frame {
            lang: course.language.clone(),
            book: course.book.clone(),
            title: title.to_string(),
            description: description.to_string(),
            running: running.into(),
            canonical: site.map_or(String::new(), |site| format!("{site}{of_site}")),
            site: site.unwrap_or_default().to_string(),
            feed: site.filter(|_| is_dated(self.book)).map_or(String::new(), |site| format!("{site}{FEED}")),
            colophon: self.colophon(),
            back: None,
            contents: (path != HOME).then(|| Link {
                text: self.word("contents"),
                href: format!("{root}{HOME}"),
                current: false,
            }),
            catchword: None,
            root,
        }
    }

    /// What stands at the foot of every page: printing, licence, the course's own words, and who comes first.
    pub(super) fn colophon(&self) -> Vec<String> {
        let course = &self.book.course;
        [course.printing.as_str(), &course.licence, &course.disclaimer, crate::caution::CLOSING]
            .into_iter()
            .filter(|line| !line.is_empty())
            .map(str::to_string)
            .collect()
    }

    /// A link from the site's root to a page of the book's own making.
    pub(super) fn link(&self, page: &str) -> Link {
        Link { text: self.word(&format!("page-{page}")), href: format!("{page}.html"), current: false }
    }
}

/// Whether a page is bound into the booklet.
fn is_bound(path: &str) -> bool {
    ["lessons/", "plants/", "answers/"].iter().any(|folder| path.starts_with(folder))
        || [GLOSSARY, "method.html"].contains(&path)
}

/// Whether anything in the book has a date, so that it has a feed.
fn is_dated(book: &Formulary) -> bool {
    let dated = |head: &LessonHead| head.date.is_some() || !head.corrections.is_empty();
    !book.course.changes.is_empty() || book.lessons.iter().any(dated)
}

/// A link from the site's root to the page of a plant or a pantry item.
pub(super) fn page_link(folder: &str, id: &str, words: &str) -> Link {
    Link { text: capital(words), href: format!("{folder}/{id}.html"), current: false }
}

/// The feed, where there is one.
pub(super) const FEED: &str = "feed.xml";
/// Where the contents stand.
pub(super) const HOME: &str = "index.html";
/// Pages in the running head.
pub(super) const RUNNING: [&str; 4] = ["recipes", "plants", "cautions", "look-up"];

/// A text as a string of a style sheet: what could end it is written by its number.
fn css_string(text: &str) -> String {
    let plain = |c: char| c.is_alphanumeric() || " .,:;()·–—!?/".contains(c);
    let escaped = |c: char| if plain(c) { c.to_string() } else { format!("\\{:x} ", u32::from(c)) };
    format!("\"{}\"", text.chars().map(escaped).collect::<String>())
}

/// A number that changes with a file's bytes: FNV-1a, 64 bits, by its published constants.
pub(super) fn fingerprint(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

/// Where a lesson's sheet of `folder` stands, from the site's root.
pub(super) fn sheet_path(folder: &str, head: &LessonHead) -> String {
    format!("{folder}/{}.html", head.slug)
}

/// A link to a lesson from the page `root` belongs to.
pub(super) fn lesson_link(head: &LessonHead, root: &str) -> Link {
    Link { text: head.title.clone(), href: format!("{root}lessons/{}.html", head.slug), current: false }
}

/// Links to places on other pages, with the place of each in its text.
pub(super) fn located(all: Vec<Anchored>, source: &Source) -> impl Iterator<Item = Anchored> {
    all.into_iter().map(|place| Anchored { finding: place.finding.locate(source), ..place })
}

/// Where pages are put.
pub(super) struct Put<'a> {
    pub(super) desk: &'a Desk<'a>,
    /// What is found while they are made.
    pub(super) findings: &'a mut Vec<Finding>,
    /// Links to places on other pages.
    pub(super) anchored: Vec<Anchored>,
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

    /// Makes a page.
    pub(super) fn page(&mut self, path: &str, template: &str, view: &impl Serialize) -> Result<(), Trouble> {
        self.desk.page(path, template, view, self.findings)
    }

    /// The text of a page below its facts; nothing where there is no page.
    pub(super) fn text(&mut self, path: Option<&str>, root: &str) -> Result<String, Trouble> {
        let Some(path) = path else { return Ok(String::new()) };
        let Some(source) = read_source(&self.desk.gathered.dir, path, &mut Vec::new())? else {
            return Ok(String::new());
        };
        let body = match manuscript::parts(&source) {
            Ok(parts) => parts.body.span,
            Err(_) => return Ok(String::new()),
        };
        let manuscript = manuscript::read(&source, body, &[], &Terms::default());
        self.findings.extend(manuscript.findings.iter().cloned());
        let (head, book) = (LessonHead::default(), self.desk.book);
        let text = Lesson { head: &head, manuscript: &manuscript, recipes: &[], book, root };
        let (found, anchored) = check(&text);
        self.findings.extend(found.into_iter().map(|finding| finding.locate(&source)));
        self.anchored.extend(located(anchored, &source));
        Ok(prose(&text))
    }
}
