//! `formulary.yaml`: the course's own facts.

use super::change::{Change, read_changes};
use crate::diagnostic::{Code, Finding};
use crate::measure;
use crate::span::{Source, Spanned};
use crate::yaml::{self, Node};

/// The course.
#[derive(Clone, Debug, Default)]
pub struct Course {
    /// The book's name, in the running head.
    pub book: String,
    /// The course's title, on the home page.
    pub title: String,
    /// Whom it is for.
    pub for_whom: String,
    /// One or two sentences.
    pub lead: String,
    /// Days, hours and place in words.
    pub when: String,
    /// "First printing, 22 September".
    pub printing: String,
    /// Who may reuse it.
    pub licence: String,
    /// Language of the text, as in HTML `lang`.
    pub language: String,
    /// What its pages look like, where it says so.
    pub theme: Option<Spanned<String>>,
    /// Where it will stand on the web, with its last slash; none where that is not said.
    pub address: Option<String>,
    /// What is new in it, as written.
    pub changes: Vec<Change>,
    /// Weight of the adult whose ceilings go by the body's weight, g; none where it is not stated.
    pub adult: Option<f64>,
    /// Who answers for what the book says: its own words, beside the sentence no book can leave out.
    pub disclaimer: String,
    /// Its own kitchen.
    pub kitchen: super::Kitchen,
    /// What things cost.
    pub prices: super::Prices,
    /// How exercises are set.
    pub classwork: super::Classwork,
}

/// Reads `formulary.yaml`.
pub fn read_course(source: &Source, findings: &mut Vec<Finding>) -> Course {
    let mut course = Course { language: "en".to_string(), ..Course::default() };
    let tree = match yaml::read(&source.text, 0) {
        Ok(tree) => tree,
        Err(found) => {
            findings.extend(found);
            return course;
        }
    };
    let Some(mut fields) = tree.map("the formulary", findings) else {
        return course;
    };
    for (key, example, into) in [
        ("book", "book: The Low Meadow Stillroom Book", &mut course.book),
        ("title", "title: Hip, Herb and Haw", &mut course.title),
    ] {
        if let Some(text) = fields.need(key, example, findings).and_then(|node| node.text(key, findings)) {
            *into = text.value.to_string();
        }
    }
    for (key, into) in [
        ("for", &mut course.for_whom),
        ("lead", &mut course.lead),
        ("when", &mut course.when),
        ("printing", &mut course.printing),
        ("licence", &mut course.licence),
        ("disclaimer", &mut course.disclaimer),
    ] {
        if let Some(text) = fields.take(key).and_then(|node| node.text(key, findings)) {
            *into = text.value.to_string();
        }
    }
    if let Some(node) = fields.take("changes") {
        course.changes = read_changes(node, findings);
    }
    if let Some(language) = fields.take("language").and_then(|node| language(node, findings)) {
        course.language = language;
    }
    course.address = fields.take("address").and_then(|node| address(node, findings));
    course.theme = fields
        .take("theme")
        .and_then(|node| node.text("the theme", findings))
        .map(|name| name.map(str::to_string));
    course.adult = fields
        .take("adult")
        .and_then(|node| node.read("the weight of an adult", measure::mass, findings))
        .map(|weight| weight.value.low);
    if let Some(node) = fields.take("kitchen") {
        course.kitchen = super::kitchen::read_kitchen(node, findings);
    }
    if let Some(node) = fields.take("prices") {
        course.prices = super::prices::read_prices(node, findings).unwrap_or_default();
    }
    if let Some(node) = fields.take("exercises") {
        course.classwork = super::classwork::read_classwork(node, findings);
    }
    fields.finish(findings);
    course
}

/// A language as browsers name it (BCP 47): `en`, `es-MX`.
fn language(node: &Node, findings: &mut Vec<Finding>) -> Option<String> {
    let text = node.text("the language", findings)?;
    let mut parts = text.value.split('-');
    let first = parts
        .next()
        .is_some_and(|part| (2..=3).contains(&part.len()) && part.chars().all(|c| c.is_ascii_lowercase()));
    let rest = |part: &str| (2..=8).contains(&part.len()) && part.chars().all(|c| c.is_ascii_alphanumeric());
    if first && parts.all(rest) {
        return Some(text.value.to_string());
    }
    let message = format!("`{}` names no language", text.value);
    findings.push(
        Finding::error(Code::UnknownName, text.span, message)
            .why("browsers and voices go by the short names of the standard: two or three small letters, and a region after a hyphen")
            .write("language: es"),
    );
    None
}

/// A whole web address of a folder. What stands behind `?` or `#` belongs to a page, not to a site.
fn address(node: &Node, findings: &mut Vec<Finding>) -> Option<String> {
    let text = node.text("the address", findings)?;
    let host = text.value.strip_prefix("https://").or_else(|| text.value.strip_prefix("http://"));
    let plain = |c: char| c.is_ascii_alphanumeric() || "-._~/:%".contains(c);
    match host {
        Some(host)
            if host.starts_with(|c: char| c.is_ascii_alphanumeric())
                && host.chars().all(plain)
                && !host.contains("//")
                && !host.contains("..")
                && !host.ends_with(".html") =>
        {
            Some(format!("{}/", text.value.trim_end_matches('/')))
        }
        _ => {
            let message = format!("`{}` is not the address of a site", text.value);
            findings.push(
                Finding::error(Code::BadAddress, text.span, message)
                    .why(
                        "it is put before every page's own address, for feeds, maps of the site and previews",
                    )
                    .write("address: https://stillroom.example/course/"),
            );
            None
        }
    }
}
