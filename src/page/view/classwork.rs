//! What a student works: the slate with its blanks, exercises and their key.

use serde::Serialize;

use super::{Frame, LedgerRow, Link, PartLink};

/// Work it yourself: with a script on the page, without one on paper.
#[derive(Clone, Debug, Serialize)]
pub struct Slate {
    /// Its number, title and anchor.
    pub part: PartLink,
    /// The recipe's lines as data, as an element of the page.
    pub data_html: String,
    /// What is filled in on paper, one a measured line and what follows from it.
    pub blanks: Vec<Blank>,
}

/// A sum whose measured figure is left open.
#[derive(Clone, Debug, Serialize)]
pub struct Blank {
    /// "strained".
    pub measured: String,
    /// "mL".
    pub unit: String,
    /// The sum with a blank for what is measured: "0.5 × ____ mL".
    pub sum_html: String,
    /// "honey".
    pub gives: String,
    /// "mL".
    pub gives_unit: String,
    /// The book's own figure for what is measured: "800 mL".
    pub usual: String,
}

/// The exercises of a recipe, on its lesson's page.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Copybook {
    /// Its number, title and anchor.
    pub part: PartLink,
    /// Those of the first version.
    pub questions: Vec<Question>,
    /// Where they stand.
    pub exercises: Option<Link>,
    /// Where the answers stand; none while they are held back.
    pub key: Option<Link>,
    /// From when on there are answers, in words; empty where they are there.
    pub from: String,
}

/// A question as it is put to a student.
#[derive(Clone, Debug, Serialize)]
pub struct Question {
    /// Anchor.
    pub id: String,
    /// From 1, over the lesson.
    pub number: usize,
    /// "Honey for what you strained".
    pub name: String,
    /// The question, its figures filled in.
    pub ask: String,
    /// What is shown to be judged, a row a line: name and figure.
    pub shown: Vec<[String; 2]>,
    /// What can be chosen, or put in order.
    pub options: Vec<String>,
    /// Whether they are put in order.
    pub ordered: bool,
    /// What is answered in figures: the line's name and the unit.
    pub blanks: Vec<[String; 2]>,
    /// Which formula helps, in words.
    pub hint: String,
    /// The formula on *Method and sources*.
    pub formula: Option<Link>,
    /// How near is right: "5 %"; empty where only the figure itself is.
    pub within: String,
    /// What the page's script checks with; empty while answers are held back.
    pub check_html: String,
}

/// The questions of one version.
#[derive(Clone, Debug, Serialize)]
pub struct Version {
    /// "A".
    pub letter: String,
    /// Its questions.
    pub questions: Vec<Question>,
}

/// A lesson's exercises, for a class.
#[derive(Clone, Debug, Serialize)]
pub struct ExercisesPage {
    /// Around the text.
    pub frame: Frame,
    /// The lesson.
    pub lesson: Link,
    /// Where the answers stand; none while they are held back.
    pub key: Option<Link>,
    /// From when on there are answers, in words; empty where they are there.
    pub from: String,
    /// One a letter.
    pub versions: Vec<Version>,
    /// What no sheet may leave out.
    pub foot: Vec<String>,
}

/// An answer in the key.
#[derive(Clone, Debug, Serialize)]
pub struct KeyRow {
    /// Anchor.
    pub id: String,
    /// The question's number.
    pub number: usize,
    /// The question's name.
    pub name: String,
    /// The answer of each version, in the order of their letters.
    pub answers: Vec<String>,
    /// How near is right: "5 %"; empty where only the figure itself is.
    pub within: String,
    /// Whether it is answered in figures.
    pub figures: bool,
    /// The question of the first version.
    pub ask: String,
    /// How the first version's answer comes about, in a sentence; may be empty.
    pub because: String,
    /// How it is worked, a line a row.
    pub rows: Vec<LedgerRow>,
}

/// A lesson's answers.
#[derive(Clone, Debug, Serialize)]
pub struct KeyPage {
    /// Around the text.
    pub frame: Frame,
    /// The lesson.
    pub lesson: Link,
    /// The questions.
    pub exercises: Link,
    /// "A", "B" ...
    pub letters: Vec<String>,
    /// One a question.
    pub rows: Vec<KeyRow>,
    /// What no sheet may leave out.
    pub foot: Vec<String>,
}
