//! `formulary.yaml`: the course's own facts.

use crate::diagnostic::Finding;
use crate::measure;
use crate::span::{Source, Spanned};
use crate::yaml;

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
    /// Weight of the adult whose ceilings go by the body's weight, g; none where it is not stated.
    pub adult: Option<f64>,
    /// Who answers for what the book says: its own words, beside the sentence no book can leave out.
    pub disclaimer: String,
    /// Its own kitchen.
    pub kitchen: super::Kitchen,
    /// What things cost.
    pub prices: super::Prices,
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
        ("language", &mut course.language),
        ("disclaimer", &mut course.disclaimer),
    ] {
        if let Some(text) = fields.take(key).and_then(|node| node.text(key, findings)) {
            *into = text.value.to_string();
        }
    }
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
    fields.finish(findings);
    course
}
