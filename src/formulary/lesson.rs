//! The head of a lesson: its front matter, read before any lesson is worked, so that each page knows
//! its neighbours.

use super::change::{Correction, read_corrections};
use crate::calendar::Day;
use crate::diagnostic::{Code, Finding, Level};
use crate::manuscript::Parts;
use crate::span::{Source, Spanned};
use crate::yaml::{self, Node};

/// A lesson's front matter.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct LessonHead {
    /// Path of its file below the formulary's folder.
    pub path: String,
    /// Its name in addresses: the file's name without the number in front.
    pub slug: String,
    /// Its title.
    pub title: String,
    /// Which evening, when and where, in words.
    pub evening: Option<String>,
    /// When it is taught, where the recipes' use-by dates count from.
    pub date: Option<Day>,
    /// The same, short, for the contents.
    pub when: String,
    /// One sentence.
    pub summary: String,
    /// What was corrected in it, as written.
    pub corrections: Vec<Correction>,
    /// Names it had in addresses before.
    pub formerly: Vec<Spanned<String>>,
    /// Recipes of the book that are taken on one day, by their names.
    pub one_day: Vec<Spanned<String>>,
    /// Recipes and variations of the book that are set side by side, two and two.
    pub side_by_side: Vec<[Spanned<String>; 2]>,
    /// How its exercises are set, where it says so itself.
    pub classwork: super::Classwork,
}

impl LessonHead {
    /// The head of a file whose facts could not be read.
    pub fn unread(path: &str) -> LessonHead {
        LessonHead { path: path.to_string(), slug: slug(path), ..LessonHead::default() }
    }
}

/// Reads a lesson's front matter. What cannot be read is left empty, and told: the lesson stays in
/// the book, so that its recipes' faults come in the same run and links to it are not called broken.
pub fn read_head(source: &Source, parts: &Parts, findings: &mut Vec<Finding>) -> LessonHead {
    let mut head = LessonHead::unread(&source.path);
    let Some(front) = &parts.front else {
        findings.push(
            Finding::of_file(
                Level::Error,
                Code::NoFrontMatter,
                &source.path,
                "a lesson opens with its title between two lines of ---",
            )
            .write("---\ntitle: Rose hip syrup\n---"),
        );
        return head;
    };
    let tree = match yaml::read(front.value, front.span.start) {
        Ok(tree) => tree,
        Err(found) => {
            findings.extend(found);
            return head;
        }
    };
    let Some(mut fields) = tree.map("a lesson", findings) else {
        return head;
    };
    let title = fields
        .need("title", "title: Rose hip syrup", findings)
        .and_then(|node| node.text("the title", findings))
        .map(|title| title.value.to_string());
    head.date =
        fields.take("date").and_then(|node| node.read("the date", Day::read, findings)).map(|day| day.value);
    if let Some(node) = fields.take("corrections") {
        head.corrections = read_corrections(node, findings);
    }
    head.formerly = fields.texts("formerly", "a former name", findings);
    if let Some(node) = fields.take("one day") {
        let list = node.list("what is taken on one day", findings).unwrap_or_default();
        let names = list.iter().filter_map(|node| node.text("a recipe", findings));
        head.one_day = names.map(|name| name.map(str::to_string)).collect();
    }
    if let Some(node) = fields.take("side by side") {
        let pairs = node.list("what is set side by side", findings).unwrap_or_default();
        head.side_by_side = pairs.iter().filter_map(|node| pair(node, findings)).collect();
    }
    if let Some(node) = fields.take("exercises") {
        head.classwork = super::classwork::read_classwork(node, findings);
    }
    let mut words = |key: &str, findings: &mut Vec<Finding>| {
        Some(fields.take(key)?.text(key, findings)?.value.to_string())
    };
    head.evening = words("evening", findings);
    head.when = words("when", findings).unwrap_or_default();
    head.summary = words("summary", findings).unwrap_or_default();
    head.title = title.unwrap_or_default();
    fields.finish(findings);
    head
}

/// Two names.
fn pair(node: &Node, findings: &mut Vec<Finding>) -> Option<[Spanned<String>; 2]> {
    let names = node.list("two that are set side by side", findings)?;
    let texts = names.iter().filter_map(|node| node.text("a recipe", findings));
    let texts: Vec<_> = texts.map(|name| name.map(str::to_string)).collect();
    if texts.len() < names.len() {
        return None;
    }
    let count = texts.len();
    let two = <[Spanned<String>; 2]>::try_from(texts);
    if two.is_err() {
        let message = format!("two are set side by side; this names {count}");
        findings.push(
            Finding::error(Code::WrongShape, node.span, message)
                .write("side by side: [[Thyme syrup, Thyme syrup / Sugar, stirred in while hot]]"),
        );
    }
    two.ok()
}

/// The address of a lesson: its file's name without its ending and without a number in front.
fn slug(path: &str) -> String {
    let name = path.rsplit('/').next().unwrap_or(path);
    let stem = name.strip_suffix(".md").unwrap_or(name);
    let bare = stem.trim_start_matches(|c: char| c.is_ascii_digit()).trim_start_matches('-');
    if bare.is_empty() { stem.to_string() } else { bare.to_string() }
}
