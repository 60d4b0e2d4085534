//! A lesson's page: its text with every reference filled in or checked, and its recipes.

use super::recipe::recipe;
use super::show::{plainly, volume_both};
use super::view::{Frame, LessonPage, Piece};
use crate::diagnostic::{Code, Finding, nearest};
use crate::formula::Line;
use crate::formulary::{Formulary, LessonHead};
use crate::manuscript::{LinkFound, LinkTo, Manuscript, recipe_anchor, render};
use crate::measure::{self, Dimension, show};
use crate::variation::{Worked, WorkedRecipe};
use crate::working::Id;

/// A number in the text may differ from the working by this share: the closeness of a kitchen
/// measure, since words round.
const WORDS_WITHIN: f64 = 0.05;

/// A lesson ready for its page.
pub struct Lesson<'a> {
    /// Its front matter.
    pub head: &'a LessonHead,
    /// Its text.
    pub manuscript: &'a Manuscript,
    /// Its recipes in order, one a block; none where a recipe has a fault.
    pub recipes: &'a [Option<WorkedRecipe>],
    /// The book it stands in.
    pub book: &'a Formulary,
}

/// What a reference in the text comes to.
enum Reference {
    Link(LinkTo),
    Fault(Box<Finding>),
}

/// The findings of a lesson's links and numbers.
pub fn check(lesson: &Lesson) -> Vec<Finding> {
    let faults = lesson.manuscript.links.iter().filter_map(|link| match refer(lesson, link) {
        Reference::Fault(finding) => Some(*finding),
        Reference::Link(_) => None,
    });
    faults.collect()
}

/// The HTML of a text that holds no recipe, such as a plant's, and the findings of its links.
pub fn prose(manuscript: &Manuscript, book: &Formulary) -> (String, Vec<Finding>) {
    let head = LessonHead::default();
    let text = Lesson { head: &head, manuscript, recipes: &[], book };
    let rendered = render(manuscript, |link| match refer(&text, link) {
        Reference::Link(to) => to,
        Reference::Fault(_) => LinkTo::Broken,
    });
    (rendered.pieces.concat() + &rendered.notes, check(&text))
}

/// The view of a lesson.
pub fn page(lesson: &Lesson, frame: Frame) -> LessonPage {
    let rendered = render(lesson.manuscript, |link| match refer(lesson, link) {
        Reference::Link(to) => to,
        Reference::Fault(_) => LinkTo::Broken,
    });
    let root = frame.root.clone();
    let mut pieces: Vec<Piece> = Vec::new();
    for (n, prose) in rendered.pieces.into_iter().enumerate() {
        let block = lesson.manuscript.blocks.get(n);
        let recipe = block.zip(lesson.recipes.get(n).and_then(Option::as_ref)).map(|(block, worked)| {
            recipe(worked, lesson.book, &anchor(lesson, n), &block.text.value, &root, lesson.head.date)
        });
        pieces.push(Piece { prose_html: prose, recipe });
    }
    if let Some(last) = pieces.last_mut() {
        last.prose_html.push_str(&rendered.notes);
    }
    LessonPage {
        frame,
        evening: lesson.head.evening.clone(),
        one_day: (!lesson.head.one_day.is_empty())
            .then(|| format!("{root}one-day.html#{}", lesson.head.slug)),
        side_by_side: (!lesson.head.side_by_side.is_empty())
            .then(|| format!("{root}side-by-side.html#{}-1", lesson.head.slug)),
        pieces,
        single: lesson.manuscript.blocks.len() == 1,
    }
}

fn anchor(lesson: &Lesson, n: usize) -> String {
    recipe_anchor(n, lesson.manuscript.blocks.len())
}

fn refer(lesson: &Lesson, link: &LinkFound) -> Reference {
    if link.picture {
        let why = "the pages of a book are made of words and numbers; say in words what the picture shows";
        return broken(link, format!("the picture `{}` cannot be shown", link.href), None, "", why);
    }
    if let Some(plant) = link.href.strip_prefix("plant:") {
        let known = lesson.book.plants.keys().map(String::as_str);
        return match lesson.book.plants.contains_key(plant) || lesson.book.faulty.contains(plant) {
            true => Reference::Link(LinkTo::Address(format!("../plants/{plant}.html"))),
            false => {
                let why = "a plant's name is that of its file in plants/, without .md";
                broken(link, format!("the book has no plant `{plant}`"), nearest(plant, known), "plant:", why)
            }
        };
    }
    if let Some(item) = link.href.strip_prefix("pantry:") {
        let known = lesson.book.pantry.shelves().map(|shelf| shelf.item.id.as_str());
        return match lesson.book.pantry.shelf(item) {
            Some(_) => Reference::Link(LinkTo::Address(format!("../pantry/{item}.html"))),
            None => {
                let why = "a pantry item's name is that of its file in pantry/, without .md";
                broken(link, format!("the pantry has no `{item}`"), nearest(item, known), "pantry:", why)
            }
        };
    }
    if let Some(id) = link.href.strip_prefix("number:") {
        return number(lesson, link, id);
    }
    if let Some(other) = link.href.strip_prefix("lesson:") {
        let known = lesson.book.lessons.iter().map(|head| head.slug.as_str());
        return match lesson.book.lessons.iter().any(|head| head.slug == other) {
            true => Reference::Link(LinkTo::Address(format!("../lessons/{other}.html"))),
            false => {
                let why = "a lesson's name is that of its file, without .md and without the number in front";
                broken(
                    link,
                    format!("the book has no lesson `{other}`"),
                    nearest(other, known),
                    "lesson:",
                    why,
                )
            }
        };
    }
    if let Some(anchor) = link.href.strip_prefix('#') {
        let known = lesson.manuscript.headings.iter().map(|heading| heading.anchor.as_str());
        return match lesson.manuscript.headings.iter().any(|heading| heading.anchor == anchor) {
            true => Reference::Link(LinkTo::Address(link.href.clone())),
            false => {
                let why = "a heading's name is its words in small letters, with hyphens between them";
                broken(
                    link,
                    format!("this lesson has no heading `{anchor}`"),
                    nearest(anchor, known),
                    "#",
                    why,
                )
            }
        };
    }
    if link.href.starts_with("https:") || link.href.starts_with("http:") || link.href.starts_with("mailto:") {
        return Reference::Link(LinkTo::Address(link.href.clone()));
    }
    let why = "a link is `plant:NAME`, `pantry:NAME`, `lesson:NAME`, `number:NAME`, `#heading` or a whole web address";
    broken(link, format!("`{}` leads to nothing in this book", link.href), None, "", why)
}

fn broken(link: &LinkFound, message: String, near: Option<&str>, scheme: &str, why: &str) -> Reference {
    let mut finding = Finding::error(Code::BadLink, link.span, message).why(why);
    if let Some(near) = near {
        finding = finding.write(format!("[{}]({scheme}{near})", link.text));
    }
    Reference::Fault(Box::new(finding))
}

/// `number:strained`, of the lesson's recipe before the link, else of its first.
fn number(lesson: &Lesson, link: &LinkFound, id: &str) -> Reference {
    let before =
        lesson.manuscript.blocks.iter().rposition(|block| block.info.start < link.span.start).unwrap_or(0);
    if lesson.manuscript.blocks.is_empty() {
        let why = "a number is taken from a recipe of the same lesson";
        return broken(link, format!("no recipe stands here that has a number `{id}`"), None, "", why);
    }
    // A recipe with a fault has no numbers; its own finding says so.
    let Some(Some(worked)) = lesson.recipes.get(before) else {
        return Reference::Link(LinkTo::Broken);
    };
    let base = &worked.base;
    let Some(line) =
        Id::ALL.iter().find(|known| known.text() == id).and_then(|id| base.laid.working.line(*id))
    else {
        let known: Vec<&str> = base.laid.working.claimed().map(|(id, _)| id.text()).collect();
        let why = format!("its numbers are {}", known.join(", "));
        let near = nearest(id, known);
        return broken(link, format!("the recipe has no number `{id}`"), near, "number:", &why);
    };
    let href = format!("#{}-{id}", anchor(lesson, before));
    if link.text.is_empty() {
        return Reference::Link(LinkTo::AddressAndWords(href, words(base, line)));
    }
    match disagreement(base, line, link) {
        Some(finding) => Reference::Fault(Box::new(finding)),
        None => Reference::Link(LinkTo::Address(href)),
    }
}

/// A line in running text, in both systems.
fn words(worked: &Worked, line: Line) -> String {
    let unit = worked.laid.working.entry(line).unit;
    if unit.dimension == Dimension::VOLUME { volume_both(worked, line).text() } else { plainly(worked, line) }
}

/// Words that give another amount than the working.
fn disagreement(worked: &Worked, line: Line, link: &LinkFound) -> Option<Finding> {
    let entry = worked.laid.working.entry(line);
    let text = link.text.trim().trim_start_matches("about ").trim_start_matches("some ");
    let finding = |message: String| {
        Finding::error(Code::WordsDisagree, link.span, message)
            .why("a number in the text is checked against the working, so that the two cannot part")
            .write(format!("[]({})", link.href))
            .write(format!(
                "[about {}]({})",
                show(worked.at(line), entry.unit, 0).replace('\u{a0}', " "),
                link.href
            ))
    };
    let Ok(amount) = measure::amount(text) else {
        return Some(finding(format!("`{}` is not an amount that can be checked", link.text)));
    };
    if amount.dimension() != entry.unit.dimension {
        return Some(finding(format!(
            "`{}` is {}; `{}` is in {}",
            link.text,
            amount.dimension().with_article(),
            entry.name,
            entry.unit.text
        )));
    }
    let value = worked.at(line);
    let close = |written: f64| (written - value).abs() <= WORDS_WITHIN * value.abs();
    let holds =
        if amount.is_range() { amount.low <= value && value <= amount.high } else { close(amount.low) };
    (!holds)
        .then(|| finding(format!("the text says `{}`; the working says {}", link.text, worked.shown(line))))
}
