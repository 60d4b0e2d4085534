//! Pages for paper: handouts, cards, labels, and the booklet.

use serde::Serialize;

use super::{Blank, CautionRow, EveryRow, Frame, GatherRow, LabelRow, LedgerRow, Link, StepRow};

/// How long each step takes, drawn.
#[derive(Clone, Debug, Serialize)]
pub struct Timeline {
    /// Drawing, inline SVG with its facts as its name.
    pub svg: String,
    /// What occurs in it: "heat", "stands", "hand".
    pub kinds: Vec<String>,
}

/// A recipe as paper has it.
#[derive(Clone, Debug, Serialize)]
pub struct Sheet {
    /// Anchor.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Its plants, the heaviest first.
    pub plants: Vec<Weighed>,
    /// "plant to water 1 : 8, weight to volume".
    pub proportions: Vec<String>,
    /// How much it makes.
    pub makes: Option<LabelRow>,
    /// How it is taken.
    pub taken: Option<LabelRow>,
    /// Whom it is not for, and who asks first.
    pub company: Vec<LabelRow>,
    /// Ingredients.
    pub gathering: Vec<GatherRow>,
    /// The method.
    pub steps: Vec<StepRow>,
    /// What a student measures, and what comes out.
    pub lines: Vec<LedgerRow>,
    /// Every line of the working, in order.
    pub every: Vec<EveryRow>,
    /// Sums with a blank for what is measured.
    pub blanks: Vec<Blank>,
    /// Stops and warnings.
    pub cautions: Vec<CautionRow>,
    /// Where it is kept, in words.
    pub storage: String,
    /// Its class of keeping.
    pub class: String,
    /// A number for each label that is printed.
    pub labels: Vec<usize>,
}

/// A plant and how much of it.
#[derive(Clone, Debug, Serialize)]
pub struct Weighed {
    /// "Rosa canina".
    pub latin: String,
    /// "dried fruit shell".
    pub part: String,
    /// "200 g".
    pub weight: String,
}

/// A lesson's handout, its cards or its labels.
#[derive(Clone, Debug, Serialize)]
pub struct SheetsPage {
    /// Around the text.
    pub frame: Frame,
    /// The lesson.
    pub lesson: Link,
    /// "The first evening · ...".
    pub evening: Option<String>,
    /// One a recipe.
    pub sheets: Vec<Sheet>,
    /// Printing and what no sheet may leave out.
    pub foot: Vec<String>,
}

/// The whole course in reading order.
#[derive(Clone, Debug, Serialize)]
pub struct BookletPage {
    /// Around the text.
    pub frame: Frame,
    /// Whom it is for.
    pub for_whom: String,
    /// The course's title.
    pub title: String,
    /// One or two sentences.
    pub lead: String,
    /// Days, hours and place.
    pub when: String,
    /// Printing, date, licence, disclaimer.
    pub imprint: Vec<String>,
    /// The leaves bound, in order.
    pub leaves: Vec<BoundLeaf>,
    /// A number for each page of notes.
    pub notes: Vec<usize>,
}

/// A page bound into the booklet.
#[derive(Clone, Debug, Serialize)]
pub struct BoundLeaf {
    /// Anchor.
    pub id: String,
    /// Its title.
    pub title: String,
    /// The part of the booklet it begins: the theme's words for it are `bound-PART`; empty within a part.
    pub part: String,
    /// The part it stands in.
    pub kind: String,
    /// Its markup.
    pub html: String,
}
