//! Pages that lead to others: the recipes by several ways, the glossary, corrections, tables of figures, look up.

use serde::Serialize;

use super::{Frame, Link, ListGroup};

/// A word of the glossary.
#[derive(Clone, Debug, Serialize)]
pub struct TermRow {
    /// Its anchor in the glossary.
    pub id: String,
    /// The word.
    pub word: String,
    /// Its place in the glossary.
    pub href: String,
    /// What it means.
    pub means: String,
    /// Other forms; may be empty.
    pub also: String,
    /// Words to look at too.
    pub see: Vec<Link>,
    /// Lessons it stands in.
    pub lessons: Vec<Link>,
}

/// The glossary.
#[derive(Clone, Debug, Serialize)]
pub struct GlossaryPage {
    /// Around the text.
    pub frame: Frame,
    /// Its words, sorted.
    pub rows: Vec<TermRow>,
}

/// Something that was changed.
#[derive(Clone, Debug, Serialize)]
pub struct ChangeRow {
    /// Anchor of a change of the book; empty for a correction.
    pub id: String,
    /// "3 October 2026".
    pub date: String,
    /// `2026-10-03`.
    pub iso: String,
    /// The lesson it stands in, for a correction.
    pub lesson: Option<Link>,
    /// What stood there; empty for a change of the book.
    pub was: String,
    /// What stands there now, or what is new.
    pub now: String,
    /// Why; may be empty.
    pub why: String,
}

/// Corrections and changes.
#[derive(Clone, Debug, Serialize)]
pub struct CorrectionsPage {
    /// Around the text.
    pub frame: Frame,
    /// The latest first.
    pub rows: Vec<ChangeRow>,
}

/// Recipes by several ways.
#[derive(Clone, Debug, Serialize)]
pub struct RecipesPage {
    /// Around the text.
    pub frame: Frame,
    /// By preparation, season, time, keeping.
    pub ways: Vec<Way>,
}

/// One way to look for a recipe.
#[derive(Clone, Debug, Serialize)]
pub struct Way {
    /// Anchor; the theme's words for it are `way-ID` and `way-ID-means`.
    pub id: String,
    /// Its groups.
    pub groups: Vec<ListGroup>,
}

/// Everything the book has a page or a place for.
#[derive(Clone, Debug, Serialize)]
pub struct LookUpPage {
    /// Around the text.
    pub frame: Frame,
    /// By first letters.
    pub letters: Vec<Letter>,
}

/// Everything that begins with one letter.
#[derive(Clone, Debug, Serialize)]
pub struct Letter {
    /// The letter.
    pub name: String,
    /// Anchor.
    pub id: String,
    /// In order.
    pub rows: Vec<FoundRow>,
}

/// Something to look up.
#[derive(Clone, Debug, Serialize)]
pub struct FoundRow {
    /// Where it stands.
    pub link: Link,
    /// What it is: `lesson`, `plant`; the theme's words for it are `is-a-KIND`.
    pub kind: String,
}

/// A table of figures.
#[derive(Clone, Debug, Serialize)]
pub struct FiguresPage {
    /// Around the text.
    pub frame: Frame,
    /// Above the table.
    pub caption: String,
    /// First head, then one a column.
    pub heads: Vec<String>,
    /// A row each.
    pub rows: Vec<FigureTableRow>,
    /// Whether its cells are sentences rather than figures.
    pub worded: bool,
    /// Whether rows say where they come from.
    pub sourced: bool,
    /// Under the table; where it comes from as a whole.
    pub notes_html: Vec<String>,
}

/// A row of figures.
#[derive(Clone, Debug, Serialize)]
pub struct FigureTableRow {
    /// What it is about.
    pub name: String,
    /// Its own page; may be empty.
    pub href: String,
    /// One a column.
    pub cells: Vec<String>,
    /// Where it comes from; may be empty.
    pub source_html: String,
}

/// A page at an address that led somewhere else before.
#[derive(Clone, Debug, Serialize)]
pub struct MovedPage {
    /// Around the text.
    pub frame: Frame,
    /// Where it leads.
    pub to: Link,
}

/// What a host shows where an address leads nowhere.
#[derive(Clone, Debug, Serialize)]
pub struct NotFoundPage {
    /// Around the text.
    pub frame: Frame,
    /// From where everything can be found.
    pub links: Vec<Link>,
}
