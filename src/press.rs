//! THE PIPELINE: the calls in order. Read this first.
//!
//! ```text
//! folder -> gather -> course, plants, lesson heads          (read once)
//!        -> recipes that others take products from         (as declared)
//!        -> each lesson: text -> blocks -> recipes -> workings -> view -> page   (side by side)
//!        -> home, plants, method and sources
//!        -> swapped in whole, or nothing at all
//! ```
//!
//! A lesson is read, worked, written and forgotten: what is kept of it is a few facts for the other
//! pages, and its page's markup for the booklet. Results are collected in the lessons' order, so output never
//! depends on threads.

mod addresses;
mod classwork;
mod days;
mod facts;
mod lesson;
mod lists;
mod look_up;
mod noted;
mod pages;
mod paper;
mod products;
mod put;
mod sides;
mod tables;
mod theme;
mod web;

use std::path::{Path, PathBuf};

use rayon::prelude::*;

pub use classwork::Exercised;
pub use lesson::{Read, read_lesson};

use put::Desk;

use crate::calendar::Day;
use crate::claims;
use crate::diagnostic::{Code, Finding, Level, in_order, stops};
use crate::formulary::{
    Formulary, LessonHead, read_course, read_glossary, read_head, read_picture, read_plant, terms,
};
use crate::manuscript;
use crate::pantry::{Pantry, read_item};
use crate::site::{Gathered, Stage, Trouble, gather, read_bytes, read_source, replaces};
use crate::span::{Source, Span};

/// What a press or a proof came to.
#[derive(Debug, Default)]
pub struct Outcome {
    /// Findings in order of file, line and column.
    pub findings: Vec<Finding>,
    /// Lessons read.
    pub lessons: usize,
    /// Recipes worked.
    pub recipes: usize,
    /// Variations worked.
    pub variations: usize,
    /// Pages made; written only where nothing stops the press.
    pub pages: usize,
    /// Whether the site was written.
    pub written: bool,
}

/// Reads and works everything and renders every page; writes nothing.
///
/// # Errors
/// The folder cannot be read.
pub fn proof(dir: &Path) -> Result<Outcome, Trouble> {
    run(dir, None, None, &|| {})
}

/// Proofs, then writes the site at `site`. With a finding that stops, nothing is written and an old
/// site stays whole. `tick` is called once a lesson.
///
/// `today` is the day of the press: answers that come out later are held back, and all that have a day where it is not
/// known.
///
/// # Errors
/// The folder cannot be read, or the site not written.
pub fn press(
    dir: &Path,
    site: &Path,
    today: Option<Day>,
    tick: &(dyn Fn() + Sync),
) -> Result<Outcome, Trouble> {
    // Looked for first: a mistyped folder must not leave a new one beside it.
    if !dir.is_dir() {
        return Err(Trouble::NoFolder(dir.to_path_buf()));
    }
    if replaces(site, dir) {
        return Err(Trouble::NotOurs(site.to_path_buf()));
    }
    let stage = Stage::open(site)?;
    let result = run(dir, Some(&stage), today, tick);
    match result {
        Ok(mut outcome) if !stops(&outcome.findings) => {
            stage.swap_in()?;
            outcome.written = true;
            Ok(outcome)
        }
        other => {
            stage.abandon()?;
            other
        }
    }
}

fn run(
    dir: &Path,
    stage: Option<&Stage>,
    today: Option<Day>,
    tick: &(dyn Fn() + Sync),
) -> Result<Outcome, Trouble> {
    let mut findings = Vec::new();
    let (gathered, mut book) = open_book(dir, &mut findings)?;
    for path in &gathered.pictures {
        let bytes = read_bytes(dir, path)?;
        let name = path.strip_prefix("pictures/").unwrap_or(path);
        book.pictures.insert(name.to_string(), read_picture(path, &bytes, &mut findings));
    }
    let theme = match theme::open(&gathered, &book, &mut findings)? {
        Some(theme) => theme,
        None => return Ok(Outcome { findings, ..Outcome::default() }),
    };
    let desk = Desk::new(&gathered, &book, &theme, stage, today);
    let done: Vec<Result<lesson::Done, Trouble>> = (0..book.lessons.len())
        .into_par_iter()
        .map(|n| {
            let done = lesson::press_one(&desk, n)?;
            tick();
            Ok(done)
        })
        .collect();
    let done = done.into_iter().collect::<Result<Vec<_>, _>>()?;
    let mut outcome = Outcome { findings, lessons: book.lessons.len(), ..Outcome::default() };
    for lesson in &done {
        outcome.findings.extend(lesson.findings.iter().cloned());
        outcome.recipes += lesson.recipes;
        outcome.variations += lesson.variations;
    }
    pages::press(&desk, &done, &mut outcome.findings)?;
    outcome.pages = desk.made().leaves.len();
    in_order(&mut outcome.findings);
    // A fault of a template is met on every page made with it.
    outcome.findings.dedup();
    Ok(outcome)
}

/// The folder's files, and the book outside its lessons' recipes.
///
/// # Errors
/// The folder cannot be read.
pub fn open_book(dir: &Path, findings: &mut Vec<Finding>) -> Result<(Gathered, Formulary), Trouble> {
    let gathered = gather(dir)?;
    let mut book = Formulary::default();
    let located = |source: &Source, found: Vec<Finding>, findings: &mut Vec<Finding>| {
        findings.extend(found.into_iter().map(|finding| finding.locate(source)));
    };
    let course = if gathered.course { read_source(dir, "formulary.yaml", findings)? } else { None };
    if let Some(source) = &course {
        let mut found = Vec::new();
        book.course = read_course(source, &mut found);
        found.extend(claims::findings(source, whole(source)));
        found.extend(theme::unknown(&gathered, &book));
        located(source, found, findings);
    }
    if !gathered.course {
        findings.push(
            Finding::of_file(
                Level::Error,
                Code::MissingFile,
                "formulary.yaml",
                "the formulary has no formulary.yaml",
            )
            .why("it gives the book its name and title")
            .write("book: The Low Meadow Stillroom Book\ntitle: Hip, Herb and Haw"),
        );
    }
    for path in &gathered.plants {
        let id = stem(path).to_string();
        findings.extend(odd_address(path, &id));
        let Some(source) = read_source(dir, path, findings)? else {
            book.faulty.insert(id);
            continue;
        };
        let mut found = Vec::new();
        let plant = read_plant(&source, &id, &mut found);
        found.extend(claims_of_page(&source));
        match plant.filter(|_| !stops(&found)) {
            Some(plant) => drop(book.plants.insert(id, plant)),
            None => drop(book.faulty.insert(id)),
        }
        located(&source, found, findings);
    }
    stock(dir, &gathered, &mut book, findings)?;
    if let Some(source) = &course {
        let mut found = Vec::new();
        let plants = book.plants.keys().map(String::as_str);
        book.course.prices.settle(plants, &book.faulty, &book.pantry, &mut found);
        located(source, found, findings);
    }
    if gathered.glossary
        && let Some(source) = read_source(dir, "glossary.yaml", findings)?
    {
        let mut found = Vec::new();
        book.glossary = read_glossary(&source, &mut found);
        book.terms = terms(&book.glossary);
        found.extend(claims::findings(&source, whole(&source)));
        located(&source, found, findings);
    }
    let mut joined = false;
    for path in &gathered.lessons {
        let mut head = LessonHead::unread(path);
        findings.extend(odd_address(path, &head.slug));
        if let Some(source) = read_source(dir, path, findings)? {
            joined |= source.text.contains(products::SIGN);
            let mut found = claims::findings(&source, whole(&source));
            match manuscript::parts(&source) {
                Ok(parts) => head = read_head(&source, &parts, &mut found),
                Err(finding) => found.push(finding),
            }
            located(&source, found, findings);
        }
        if let Some(twin) = book.lessons.iter().find(|other| other.slug == head.slug) {
            let message = format!("{} would have the same address, lessons/{}.html", twin.path, head.slug);
            findings.push(
                Finding::of_file(Level::Error, Code::BadAddress, path, message)
                    .why("a lesson's address is its file's name without the number in front")
                    .write("another name for one of the two files"),
            );
        }
        book.lessons.push(head);
    }
    if joined {
        book.products = products::read(dir, &book)?;
    }
    if gathered.lessons.is_empty() {
        findings.push(
            Finding::of_file(Level::Error, Code::MissingFile, "lessons", "the formulary has no lesson")
                .write("lessons/01-first-lesson.md"),
        );
    }
    for path in &gathered.strange {
        findings.push(
            Finding::of_file(Level::Warning, Code::UnknownName, path, "no page is made of this file")
                .why("lessons stand in lessons/, plants in plants/, what is not a plant in pantry/, all as .md files"),
        );
    }
    Ok((gathered, book))
}

/// The whole of a text.
fn whole(source: &Source) -> Span {
    Span::new(0, source.text.len())
}

/// The claims in the prose of a page; what its facts say is caution, not praise.
fn claims_of_page(source: &Source) -> Vec<Finding> {
    manuscript::parts(source).map_or_else(|_| Vec::new(), |parts| claims::findings(source, parts.body.span))
}

/// Reads the pantry's pages, each in place of what is built in.
fn stock(
    dir: &Path,
    gathered: &Gathered,
    book: &mut Formulary,
    findings: &mut Vec<Finding>,
) -> Result<(), Trouble> {
    let built_in = Pantry::default();
    for path in &gathered.pantry {
        let id = stem(path);
        findings.extend(odd_address(path, id));
        let Some(source) = read_source(dir, path, findings)? else { continue };
        let mut found = Vec::new();
        let read = read_item(&source, id, &built_in, &mut found).filter(|_| !stops(&found));
        found.extend(claims_of_page(&source));
        if let Some((item, page)) = read {
            let name = item.words.clone();
            if let Some(other) = book.pantry.shelf(id).filter(|other| other.item.words != name) {
                let message = format!("the page of `{}` stands at pantry/{id}.html", other.item.words);
                findings.push(
                    Finding::of_file(Level::Error, Code::BadAddress, path, message)
                        .why("an item's address is its file's name, and leads to one page")
                        .write(format!("rename the file to pantry/{}.md", manuscript::plain(&name))),
                );
            }
            if let Some(twin) = book.pantry.put(item, page) {
                let message = format!("{twin} is about `{name}` too");
                findings.push(
                    Finding::of_file(Level::Error, Code::TwiceWritten, path, message)
                        .why("a recipe that names it could mean either")
                        .write("another name for one of the two"),
                );
            }
        }
        findings.extend(found.into_iter().map(|finding| finding.locate(&source)));
    }
    Ok(())
}

/// A file whose name makes no plain address: servers and links tell capitals apart, some disks do
/// not, and blanks and accents are written otherwise in an address.
fn odd_address(path: &str, address: &str) -> Option<Finding> {
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    if !address.is_empty() && address.chars().all(plain) {
        return None;
    }
    let folder = path.split('/').next().unwrap_or(path);
    let name = path.rsplit('/').next().unwrap_or(path).trim_end_matches(".md");
    let message = "the file's name makes no plain address for its page";
    Some(
        Finding::of_file(Level::Error, Code::BadAddress, path, message)
            .why("an address is made of the letters a to z, digits and hyphens, all small")
            .write(format!("rename the file to {folder}/{}.md", manuscript::plain(name))),
    )
}

/// A plant's or pantry item's name in addresses, from its file's path.
fn stem(path: &str) -> &str {
    let name = path.split_once('/').map_or(path, |(_, name)| name);
    name.strip_suffix(".md").unwrap_or(name)
}

/// Where the site of a formulary goes unless it is said: `site`, beside its folder. Of `.` and `..` the
/// name is not told, so the way leads through the folder above.
pub fn site_beside(dir: &Path) -> PathBuf {
    match dir.file_name() {
        Some(_) => dir.with_file_name("site"),
        None if dir == Path::new(".") => PathBuf::from("../site"),
        None => dir.join("../site"),
    }
}
