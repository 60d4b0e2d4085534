//! One lesson from its file to its page.

use std::path::Path;

use super::classwork::{self, Exercised};
use super::noted::{Noted, note as note_recipe};
use super::paper;
use super::put::{Desk, lesson_link, located, sheet_path};
use crate::aim;
use crate::calendar::Day;
use crate::caution;
use crate::claims;
use crate::diagnostic::{Code, Finding, Level, stops};
use crate::formulary::Formulary;
use crate::keeping;
use crate::manuscript::{self, Manuscript, recipe_anchor};
use crate::page::lesson::{check, page};
use crate::page::linked_data::{self, Told};
use crate::page::method_page::{Users, note_users};
use crate::page::reference::{Anchored, Lesson};
use crate::page::sheet::sheet;
use crate::page::show::duration;
use crate::page::view::{Link, Sheet};
use crate::recipe::{self, Use};
use crate::site::{Trouble, read_source};
use crate::span::{Source, Spanned};
use crate::variation::{self, WorkedRecipe};
use crate::wanted;
use crate::working::Id;

/// What is kept of a lesson once its page is written.
#[derive(Debug, Default)]
pub(super) struct Done {
    pub findings: Vec<Finding>,
    pub recipes: usize,
    pub variations: usize,
    /// Names of what is made.
    pub makes: Vec<String>,
    /// How it is kept.
    pub keeps: Vec<&'static str>,
    /// How long it takes.
    pub ready_in: Vec<String>,
    /// Formulas and figures it uses.
    pub users: Users,
    /// What is kept of each recipe.
    pub noted: Vec<Noted>,
    /// Words of the glossary in it.
    pub terms: Vec<String>,
    /// Its links to places on other pages.
    pub anchored: Vec<Anchored>,
    /// Kinds of preparation it makes.
    pub kinds: Vec<&'static str>,
}

/// What is kept of every recipe of the book.
pub(super) fn all_noted(done: &[Done]) -> impl Iterator<Item = &Noted> {
    done.iter().flat_map(|lesson| &lesson.noted)
}

/// A lesson read and its recipes worked.
pub struct Read {
    /// Its text.
    pub source: Source,
    /// Its text, parsed.
    pub manuscript: Manuscript,
    /// Its recipes, one a block.
    pub recipes: Vec<Option<WorkedRecipe>>,
    /// Its exercises.
    pub exercised: Vec<Exercised>,
    /// Findings, each with its place.
    pub findings: Vec<Finding>,
}

/// Reads and works the `n`-th lesson; none where its file cannot be read as text.
///
/// # Errors
/// The disk refuses.
pub fn read_lesson(dir: &Path, book: &Formulary, n: usize) -> Result<Option<Read>, Trouble> {
    let head = &book.lessons[n];
    // The head was read from this file before, and its faults told then.
    let Some(source) = read_source(dir, &head.path, &mut Vec::new())? else {
        return Ok(None);
    };
    let Ok(parts) = manuscript::parts(&source) else {
        return Ok(None);
    };
    let manuscript = manuscript::read(&source, parts.body.span, &["recipe", "exercise"], &book.terms);
    let mut findings: Vec<Finding> = manuscript.findings.clone();
    let mut recipes = Vec::new();
    for block in &manuscript.blocks {
        let mut found = Vec::new();
        let text = Spanned::new(block.text.value.as_str(), block.text.span);
        let worked = recipe::read(&text, &book.pantry, &mut found).and_then(|recipe| {
            // A recipe with a fault in its reading is not worked: its sums would be about something else.
            if stops(&found) { None } else { variation::work(recipe, book, &mut found) }
        });
        if let Some(worked) = &worked {
            caution::findings(worked, book, &mut found);
            keeping::findings(worked, &mut found);
            let pot = book.course.kitchen.pot.as_ref().and_then(|pot| pot.holds);
            wanted::findings(worked, pot, &mut found);
            aim::findings(worked, &mut found);
        }
        recipes.push(worked);
        findings.extend(found.into_iter().map(|finding| finding.locate(&source)));
    }
    let mut found = Vec::new();
    // Fenced text is passed over where a page is looked through for what promises too much.
    let promising = manuscript.asides.iter().flat_map(|block| claims::findings(&source, block.text.span));
    found.extend(promising);
    let exercised = classwork::posed(&manuscript, &recipes, book, head, &mut found);
    findings.extend(found.into_iter().map(|finding| finding.locate(&source)));
    if manuscript.blocks.is_empty() && !stops(&findings) {
        findings.push(
            Finding::of_file(Level::Error, Code::NoRecipe, &head.path, "the lesson holds no recipe")
                .write("```recipe\nname: ...\n```"),
        );
    }
    Ok(Some(Read { source, manuscript, recipes, exercised, findings }))
}

pub(super) fn press_one(desk: &Desk, n: usize) -> Result<Done, Trouble> {
    let book = desk.book;
    let Some(read) = read_lesson(&desk.gathered.dir, book, n)? else {
        return Ok(Done::default());
    };
    let head = &book.lessons[n];
    let mut done = Done { findings: read.findings, ..Done::default() };
    for (at, worked) in read.recipes.iter().enumerate() {
        let Some(worked) = worked else { continue };
        let anchor = recipe_anchor(at, read.recipes.len());
        let href = format!("{}#{anchor}", lesson_link(head, "").href);
        done.noted.push(note_recipe(
            worked,
            book,
            Link { text: worked.base.name.clone(), href, current: false },
        ));
        note(&mut done, worked, &lesson_link(head, ""));
    }
    let lesson = Lesson { head, manuscript: &read.manuscript, recipes: &read.recipes, book, root: "../" };
    let (found, anchored) = check(&lesson);
    done.findings.extend(found.into_iter().map(|finding| finding.locate(&read.source)));
    done.anchored.extend(located(anchored, &read.source));
    if stops(&done.findings) {
        return Ok(done);
    }
    let path = lesson_link(head, "").href;
    for exercised in &read.exercised {
        let worked = exercised.versions.first().and_then(|posed| posed.worked.as_ref());
        if let Some((worked, _)) = worked {
            note_users(worked, &lesson_link(head, ""), &mut done.users);
        }
    }
    let mut frame = desk.frame(&head.title, &head.summary, &path);
    let neighbour = |at: usize| {
        book.lessons.get(at).map(|head| Link {
            text: head.title.clone(),
            href: format!("{}.html", head.slug),
            current: false,
        })
    };
    frame.back = n.checked_sub(1).and_then(neighbour);
    frame.catchword = neighbour(n + 1);
    let copybooks = classwork::copybooks(desk, head, &read.exercised, read.recipes.len());
    let mut view = page(&lesson, frame, copybooks);
    let told: Vec<Told> = read.recipes.iter().flatten().map(told).collect();
    let (address, date) = (book.course.address.as_deref(), head.date.map(Day::iso));
    view.linked_html = linked_data::of_lesson(&view, &told, address, &path, date.as_deref());
    view.on_paper = paper::links(desk, head);
    view.on_paper.splice(0..0, classwork::links(desk, head, &read.exercised));
    for recipe in view.pieces.iter_mut().filter_map(|piece| piece.recipe.as_mut()) {
        let href = format!("../{}#{}-sheet", sheet_path(paper::WORKINGS, head), recipe.id);
        recipe.ledger.whole = Some(Link { text: desk.word("every-line"), href, current: false });
    }
    let recipes = view.pieces.iter().filter_map(|piece| piece.recipe.as_ref());
    let sheets: Vec<Sheet> = recipes
        .zip(read.recipes.iter().flatten())
        .map(|(recipe, worked)| sheet(recipe, worked, book))
        .collect();
    paper::sheets(desk, head, &sheets, &mut done.findings)?;
    classwork::press(desk, head, &read.exercised, &mut done.findings)?;
    done.terms = view.words.iter().map(|row| row.id.clone()).collect();
    desk.page(&path, "lesson.html", &view, &mut done.findings)?;
    Ok(done)
}

/// What machines are told of a recipe.
fn told(worked: &WorkedRecipe) -> Told {
    let preparation = worked.recipe.preparation.value;
    Told {
        swallowed: preparation.used == Use::Swallowed,
        kind: preparation.word,
        minutes: worked.base.value(Id::Minutes),
    }
}

fn note(done: &mut Done, worked: &WorkedRecipe, link: &Link) {
    done.recipes += 1;
    done.variations += worked.variations.len();
    done.makes.push(worked.base.name.clone());
    done.kinds.push(worked.recipe.preparation.value.word);
    let words = keeping::judge(&worked.base, worked.recipe.ph()).rung.words;
    if !done.keeps.contains(&words) {
        done.keeps.push(words);
    }
    done.ready_in.extend(worked.base.value(Id::Minutes).map(duration));
    for each in std::iter::once(&worked.base).chain(&worked.variations) {
        note_users(each, link, &mut done.users);
    }
}
