//! Whole pages.

use serde::Serialize;

use super::{CautionRow, ChangeRow, Frame, LedgerRow, Link, Recipe, TermRow, Variations};

/// One lesson.
#[derive(Clone, Debug, Serialize)]
pub struct LessonPage {
    /// Around the text.
    pub frame: Frame,
    /// What machines are told of it, as one element; may be empty.
    pub linked_html: String,
    /// "The first evening · Tuesday 22 September, 7 pm, in the seed hut".
    pub evening: Option<String>,
    /// The text and the recipes in it, in order. The first piece is the opening.
    pub pieces: Vec<Piece>,
    /// True where the lesson has exactly one recipe: its label then stands beside the title.
    pub single: bool,
    /// What is taken on one day, where the lesson says so: the address of its sums.
    pub one_day: Option<String>,
    /// What was corrected in it, the latest first.
    pub corrections: Vec<ChangeRow>,
    /// Words of the glossary in it, in the order in which they stand.
    pub words: Vec<TermRow>,
    /// The same on paper: its handout, cards, labels, and the booklet.
    pub on_paper: Vec<Link>,
    /// What is set side by side, where the lesson says so: its address.
    pub side_by_side: Option<String>,
}

/// A stretch of the lesson's own text, or a recipe.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Piece {
    /// Text between recipes; may be empty.
    pub prose_html: String,
    /// The recipe that follows this text.
    pub recipe: Option<Recipe>,
}

/// The home page.
#[derive(Clone, Debug, Serialize)]
pub struct HomePage {
    /// Around the text.
    pub frame: Frame,
    /// "For the evening class of the Low Meadow Allotment Society".
    pub for_whom: String,
    /// The course's title.
    pub title: String,
    /// One or two sentences.
    pub lead: String,
    /// "Tuesdays at 7 in the seed hut ..."; may be empty.
    pub when: String,
    /// The formulary's own words on where to start, from its home text; may be empty.
    pub prose_html: String,
    /// The first lesson, where it has no words of its own.
    pub start: Option<Link>,
    /// The latest changes and corrections.
    pub changes: Vec<ChangeRow>,
    /// Where all of them stand.
    pub all_changes: Link,
    /// The bill of evenings.
    pub bill: Vec<BillRow>,
    /// "At the back": method and sources and the like.
    pub back_matter: Vec<Link>,
}

/// A lesson in the bill.
#[derive(Clone, Debug, Serialize)]
pub struct BillRow {
    /// From 1.
    pub number: usize,
    /// The lesson.
    pub lesson: Link,
    /// What is made, its recipes' names.
    pub makes: String,
    /// "refrigerator"; guideline.
    pub keeps: String,
    /// "2 h 5 min".
    pub ready_in: String,
    /// "Tue 22 Sept"; may be empty.
    pub when: String,
}

/// Method and sources.
#[derive(Clone, Debug, Serialize)]
pub struct MethodPage {
    /// Around the text.
    pub frame: Frame,
    /// Paragraphs on how the numbers are made.
    pub prose_html: String,
    /// Every formula used in the book.
    pub formulas: Vec<FormulaRow>,
    /// Every published figure.
    pub figures: Vec<FigureRow>,
    /// Every assumption.
    pub assumptions: Vec<FigureRow>,
    /// Works cited.
    pub works: Vec<WorkRow>,
}

/// A formula on *Method and sources*.
#[derive(Clone, Debug, Serialize)]
pub struct FormulaRow {
    /// Anchor.
    pub id: String,
    /// What it gives.
    pub name: String,
    /// In symbols, MathML.
    pub symbols_html: String,
    /// As a sentence.
    pub spoken: String,
    /// The symbols explained.
    pub where_text: String,
    /// Where it holds.
    pub holds: String,
    /// Where it comes from.
    pub source_html: String,
    /// Recipes that use it.
    pub users: Vec<Link>,
}

/// A published figure or an assumption.
#[derive(Clone, Debug, Serialize)]
pub struct FigureRow {
    /// Anchor.
    pub id: String,
    /// What it is.
    pub name: String,
    /// "1.43 g/mL", or "2 mL/g".
    pub value: String,
    /// "1.5–2.5 mL/g" for an assumption; empty for a figure.
    pub between: String,
    /// Where it comes from.
    pub source_html: String,
    /// Recipes that use it.
    pub users: Vec<Link>,
}

/// A work cited.
#[derive(Clone, Debug, Serialize)]
pub struct WorkRow {
    /// Anchor.
    pub id: String,
    /// Title in italic, maker, year.
    pub html: String,
}

/// Spirit and water.
#[derive(Clone, Debug, Serialize)]
pub struct SpiritsPage {
    /// Around the text.
    pub frame: Frame,
    /// Explains the table.
    pub caption: String,
    /// Strengths wanted.
    pub heads: Vec<String>,
    /// A row a strength at hand.
    pub rows: Vec<CrossRow>,
    /// Workings under it.
    pub worked: Vec<Worked>,
    /// The crossed square, inline SVG; may be empty.
    pub square_html: String,
}

/// A row of the crossing table.
#[derive(Clone, Debug, Serialize)]
pub struct CrossRow {
    /// Per cent by volume.
    pub name: String,
    /// US proof.
    pub proof: String,
    /// One a strength wanted.
    pub cells: Vec<CrossCell>,
}

/// A cell of the crossing table.
#[derive(Clone, Debug, Serialize)]
pub struct CrossCell {
    /// Millilitres, "all" or "–".
    pub text: String,
    /// The cell that is worked below.
    pub worked: bool,
}

/// A working that is no recipe's.
#[derive(Clone, Debug, Serialize)]
pub struct Worked {
    /// Anchor.
    pub id: String,
    /// Its title.
    pub title: String,
    /// The result in a sentence.
    pub lead: String,
    /// Its lines.
    pub rows: Vec<LedgerRow>,
}

/// Figures printed elsewhere beside ours.
#[derive(Clone, Debug, Serialize)]
pub struct ChecksPage {
    /// Around the text.
    pub frame: Frame,
    /// What the page is, and how many there are.
    pub prose_html: String,
    /// By subject.
    pub groups: Vec<CheckGroup>,
    /// Figures that are wrong where they are printed.
    pub wrong: Vec<CheckRow>,
}

/// Checks of one subject.
#[derive(Clone, Debug, Serialize)]
pub struct CheckGroup {
    /// Anchor.
    pub id: String,
    /// Its head.
    pub name: String,
    /// In the order of the file.
    pub rows: Vec<CheckRow>,
}

/// A check.
#[derive(Clone, Debug, Serialize)]
pub struct CheckRow {
    /// Anchor.
    pub id: String,
    /// What is worked.
    pub about: String,
    /// "1,176.5 kg/m³".
    pub printed: String,
    /// With a place more.
    pub ours: String,
    /// "off by 0.02, within 0.3"; "the same".
    pub differs: String,
    /// Where it is printed.
    pub source: String,
    /// Recalled, not seen.
    pub memory: bool,
    /// Whether it is as it should be.
    pub agrees: bool,
}

/// The list of tables by preparation.
#[derive(Clone, Debug, Serialize)]
pub struct TablesPage {
    /// Around the text.
    pub frame: Frame,
    /// What they are.
    pub lead: String,
    /// Figures of the kitchen.
    pub kitchen: Vec<TableRow>,
    /// One a preparation.
    pub rows: Vec<TableRow>,
}

/// A preparation in the list of tables.
#[derive(Clone, Debug, Serialize)]
pub struct TableRow {
    /// Its table.
    pub link: Link,
    /// What it is.
    pub what: String,
}

/// A preparation by ratio.
#[derive(Clone, Debug, Serialize)]
pub struct TablePage {
    /// Around the text.
    pub frame: Frame,
    /// What it is, in a sentence or two.
    pub what: String,
    /// A row each way of making it.
    pub table: Variations,
    /// Stages of boiled sugar, where it has them; no rows otherwise.
    pub stages: Stages,
    /// What it asks care about.
    pub cautions: Vec<CautionRow>,
    /// The sentence under them.
    pub closing: String,
    /// Lessons that make it.
    pub taught: Vec<Link>,
}

/// Stages of boiled sugar by altitude.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Stages {
    /// Above the table.
    pub caption: String,
    /// The altitudes.
    pub heads: Vec<String>,
    /// One a stage.
    pub rows: Vec<StageRow>,
}

/// One stage by altitude.
#[derive(Clone, Debug, Serialize)]
pub struct StageRow {
    /// "Hard crack".
    pub name: String,
    /// Where it begins.
    pub cells: Vec<String>,
}
