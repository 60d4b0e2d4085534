//! Where the references of a text lead: plants, pantry, lessons, words of the glossary, numbers, pictures, headings.

use super::glossary_page::PLACE as GLOSSARY;
use super::show::{plainly, volume_both};
use crate::diagnostic::{Code, Finding, nearest};
use crate::formula::Line;
use crate::formulary::{Formulary, LessonHead};
use crate::manuscript::{LinkFound, LinkTo, Manuscript, recipe_anchor};
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
    /// From its page to the site's root.
    pub root: &'a str,
}

/// What a reference in the text comes to.
pub(super) enum Reference {
    /// It leads there.
    Link(LinkTo),
    /// It leads to a place on another page, which has to be there when every page is made.
    Anchored(LinkTo, Box<Anchored>),
    /// It leads nowhere.
    Fault(Box<Finding>),
}

/// A link to a place on another page.
#[derive(Clone, Debug)]
pub struct Anchored {
    /// The page, from the site's root.
    pub page: String,
    /// The place's name.
    pub anchor: String,
    /// What is told where the page has no such place; its place is that of the link.
    pub finding: Finding,
}

/// Names that a link may lead to, by what stands before its colon.
struct Shelf<'a> {
    /// `plant:`.
    scheme: &'static str,
    /// Where its pages stand, or the page that all of them stand on.
    folder: &'static str,
    /// "the book has no plant".
    missing: &'static str,
    why: &'static str,
    known: Vec<&'a str>,
    /// Known, but with a fault that is told elsewhere.
    faulty: bool,
}

pub(super) fn refer(lesson: &Lesson, link: &LinkFound) -> Reference {
    if link.picture {
        return picture(lesson, link);
    }
    let book = lesson.book;
    if let Some((scheme, name)) = link.href.split_once(':') {
        let shelf = match scheme {
            "plant" => Shelf {
                scheme: "plant:",
                folder: "plants/",
                missing: "the book has no plant",
                why: "a plant's name is that of its file in plants/, without .md",
                known: book.plants.keys().map(String::as_str).collect(),
                faulty: book.faulty.contains(name.split('#').next().unwrap_or(name)),
            },
            "pantry" => Shelf {
                scheme: "pantry:",
                folder: "pantry/",
                missing: "the pantry has no",
                why: "a pantry item's name is that of its file in pantry/, without .md",
                known: book.pantry.shelves().map(|shelf| shelf.item.id.as_str()).collect(),
                faulty: false,
            },
            "lesson" => Shelf {
                scheme: "lesson:",
                folder: "lessons/",
                missing: "the book has no lesson",
                why: "a lesson's name is that of its file, without .md and without the number in front",
                known: book.lessons.iter().map(|head| head.slug.as_str()).collect(),
                faulty: false,
            },
            "term" => Shelf {
                scheme: "term:",
                folder: GLOSSARY,
                missing: "the glossary has no word",
                why: "a word's name is itself in small letters, with hyphens between its parts",
                known: book.glossary.iter().map(|term| term.id.as_str()).collect(),
                faulty: false,
            },
            "number" => return number(lesson, link, name),
            _ => return Reference::Link(LinkTo::Address(link.href.clone())),
        };
        return shelved(lesson.root, link, name, &shelf);
    }
    if let Some(anchor) = link.href.strip_prefix('#') {
        let known = lesson.manuscript.headings.iter().map(|heading| heading.anchor.as_str());
        return match lesson.manuscript.headings.iter().any(|heading| heading.anchor == anchor) {
            true => Reference::Link(LinkTo::Address(link.href.clone())),
            false => {
                let why = "a heading's name is its words in small letters, with hyphens between them";
                let message = format!("this text has no heading `{anchor}`");
                broken(link, message, nearest(anchor, known), "#", why)
            }
        };
    }
    let why = "a link is `plant:NAME`, `pantry:NAME`, `lesson:NAME`, `term:NAME`, `number:NAME`, `#heading` or a whole web address";
    broken(link, format!("`{}` leads to nothing in this book", link.href), None, "", why)
}

fn shelved(root: &str, link: &LinkFound, name: &str, shelf: &Shelf) -> Reference {
    let (name, anchor) = name.split_once('#').map_or((name, None), |(name, anchor)| (name, Some(anchor)));
    if !shelf.known.contains(&name) {
        if shelf.faulty {
            return Reference::Link(LinkTo::Broken);
        }
        let near = nearest(name, shelf.known.iter().copied());
        return broken(link, format!("{} `{name}`", shelf.missing), near, shelf.scheme, shelf.why);
    }
    if shelf.folder == GLOSSARY {
        if anchor.is_some() {
            return broken(
                link,
                format!("a word has no places of its own: `{}`", link.href),
                Some(name),
                "term:",
                shelf.why,
            );
        }
        return Reference::Link(LinkTo::Address(format!("{root}{GLOSSARY}#{name}")));
    }
    let page = format!("{}{name}.html", shelf.folder);
    let Some(anchor) = anchor else {
        return Reference::Link(LinkTo::Address(format!("{root}{page}")));
    };
    let message = format!("the page of `{name}` has no place `{anchor}`");
    let finding = Finding::error(Code::BadLink, link.span, message)
        .why("a heading's name is its words in small letters, with hyphens between them")
        .write(format!("[{}]({}{name})", link.text, shelf.scheme));
    let to = LinkTo::Address(format!("{root}{page}#{anchor}"));
    Reference::Anchored(to, Box::new(Anchored { page, anchor: anchor.to_string(), finding }))
}

fn picture(lesson: &Lesson, link: &LinkFound) -> Reference {
    let known = || lesson.book.pictures.keys().map(String::as_str);
    match lesson.book.pictures.get(&link.href) {
        Some(None) => Reference::Link(LinkTo::Broken),
        Some(Some(size)) => Reference::Link(LinkTo::Picture {
            address: format!("{}pictures/{}", lesson.root, link.href),
            width: size.width,
            height: size.height,
        }),
        None => {
            let message = format!("there is no picture `{}`", link.href);
            let why = "a picture's name is that of its file in pictures/, with its ending";
            let mut finding = Finding::error(Code::BadLink, link.span, message).why(why);
            if let Some(near) = nearest(&link.href, known()) {
                finding = finding.write(format!("![{}]({near})", link.text));
            }
            Reference::Fault(Box::new(finding))
        }
    }
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

/// The anchor of a lesson's `n`-th recipe.
pub(super) fn anchor(lesson: &Lesson, n: usize) -> String {
    recipe_anchor(n, lesson.manuscript.blocks.len())
}
