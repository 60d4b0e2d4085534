//! The parts of a recipe.

use serde::Serialize;

use super::{Copybook, Kind, Latin, Link, Note, PartLink, Slate, Timeline};

/// One recipe with its parts.
#[derive(Clone, Debug, Serialize)]
pub struct Recipe {
    /// Anchor of the recipe; anchors of its parts start with it.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Plants by their Latin names.
    pub latin: Vec<Latin>,
    /// At a glance.
    pub label: Vec<LabelRow>,
    /// The list of parts.
    pub argument: Vec<PartLink>,
    /// To gather.
    pub gathering: Gathering,
    /// Order of work.
    pub order: Order,
    /// Worked numbers.
    pub ledger: Ledger,
    /// The batch through its steps.
    pub levels: Levels,
    /// Variations; none where the recipe has none.
    pub variations: Option<Variations>,
    /// Amounts for wanted results; none where none are wanted.
    pub wanted: Option<Variations>,
    /// What it costs; none where nothing has a price.
    pub cost: Option<Variations>,
    /// What it is turned round to.
    pub turned: Turned,
    /// Keeping.
    pub keeping: Keeping,
    /// Cautions.
    pub cautions: Cautions,
    /// Work it yourself.
    pub slate: Slate,
    /// Exercises; none where the recipe has none.
    pub copybook: Option<Copybook>,
    /// The recipe as written.
    pub written: Written,
}

/// A row of the jar label.
#[derive(Clone, Debug, Serialize)]
pub struct LabelRow {
    /// "Makes", "Takes", "Keeps", "Taken", "Never for", "Ask first".
    pub term: String,
    /// What kind of knowledge.
    pub kind: Kind,
    /// The value.
    pub value: String,
    /// Smaller lines under it ("worked; 750 to 810 mL").
    pub notes: Vec<String>,
    /// Whether the value is a stop (bold).
    pub stop: bool,
    /// A link under it (to the cautions).
    pub link: Option<Link>,
}

/// Ingredients in both systems.
#[derive(Clone, Debug, Serialize)]
pub struct Gathering {
    /// Its number, title and anchor.
    pub part: PartLink,
    /// "For 4 bottles of 250 mL. Spoons and cups level; ounces marked for weight or fluid."
    pub caption: String,
    /// One an ingredient.
    pub rows: Vec<GatherRow>,
    /// "To have to hand: a pan with a lid, ...".
    pub to_hand: String,
    /// Notes in the margin.
    pub notes: Vec<Note>,
}

/// An ingredient.
#[derive(Clone, Debug, Serialize)]
pub struct GatherRow {
    /// Where its own recipe stands; empty where it has none.
    pub href: String,
    /// "Rose hips".
    pub what: String,
    /// "dried" or "".
    pub form: String,
    /// US customary, as a kitchen measures it: "7 oz", "4 cups".
    pub us: String,
    /// Under it: "weight; about 1 3/4 cups"; may be empty.
    pub us_note: String,
    /// Metric: "200 g".
    pub metric: String,
    /// Under it: "weigh it"; may be empty.
    pub metric_note: String,
}

/// The method.
#[derive(Clone, Debug, Serialize)]
pub struct Order {
    /// Its number, title and anchor.
    pub part: PartLink,
    /// Steps in order.
    pub steps: Vec<StepRow>,
    /// How long each takes, drawn; none where nothing takes time.
    pub timeline: Option<Timeline>,
    /// Notes in the margin.
    pub notes: Vec<Note>,
}

/// A step.
#[derive(Clone, Debug, Serialize)]
pub struct StepRow {
    /// From 1.
    pub number: usize,
    /// One or two sentences.
    pub html: String,
    /// "at 0:30".
    pub at: String,
    /// "30 min"; may be empty.
    pub takes: String,
    /// The same as minutes, for a timer; 0 where it takes none.
    pub minutes: f64,
    /// "lid on", "between 28 and 49 min"; may be empty.
    pub condition: String,
}

/// Worked numbers.
#[derive(Clone, Debug, Serialize)]
pub struct Ledger {
    /// Its number, title and anchor.
    pub part: PartLink,
    /// "The short sum: ...".
    pub short_sum: String,
    /// What nobody wrote down that matters most; may be empty.
    pub matters: String,
    /// The lines of the short sum.
    pub rows: Vec<LedgerRow>,
    /// Where every line of the working stands in order: the third level, on a sheet of its own.
    pub whole: Option<Link>,
}

/// A line of the whole working, in the fewest words: its formula and its source stand in the ledger and its folds.
#[derive(Clone, Debug, Serialize)]
pub struct EveryRow {
    /// "strained".
    pub name: String,
    /// The sum with the numbers put in, or where the number comes from: "as the recipe says".
    pub sum: String,
    /// "473 mL".
    pub result: String,
    /// "450–490 mL"; may be empty.
    pub between: String,
}

/// A line of the ledger.
#[derive(Clone, Debug, Serialize)]
pub struct LedgerRow {
    /// Anchor.
    pub id: String,
    /// "strained".
    pub name: String,
    /// The sum in words: "put in − boiled off − held back"; may be empty.
    pub words: String,
    /// The sum with the numbers put in, as MathML; empty for declared and assumed lines.
    pub figures_html: String,
    /// The same sum as one sentence for a screen reader and for plain text.
    pub spoken: String,
    /// True where the figures are long and take a line of their own on a phone.
    pub long: bool,
    /// "473 mL".
    pub result: String,
    /// "16 fl oz" or "by weight"; may be empty.
    pub other: String,
    /// Whether that is the other system.
    pub other_us: bool,
    /// "450–490 mL", "exact", "as the recipe says".
    pub between: String,
    /// True where `between` is a range: the phone, which shows no column heads, then says "between".
    pub ranged: bool,
    /// Closed with a double rule: a result a reader takes away.
    pub closed: bool,
    /// A line the reader may measure.
    pub measurable: bool,
    /// What kind of knowledge.
    pub kind: Kind,
    /// Where it comes from; source titles in italic.
    pub source_html: String,
    /// What unfolds under the line: the lines that lead here, and the formula in symbols.
    pub fold: Option<Fold>,
}

/// What unfolds under a line.
#[derive(Clone, Debug, Serialize)]
pub struct Fold {
    /// Lines that lead to this one and stand nowhere else in the short sum.
    pub rows: Vec<LedgerRow>,
    /// The formula in symbols, MathML.
    pub symbols_html: String,
    /// "V the liquid before, mL; ..." the symbols explained.
    pub where_text: String,
    /// Where the formula holds.
    pub holds: String,
    /// To the formula on *Method and sources*.
    pub formula: Option<Link>,
}

/// The batch picture.
#[derive(Clone, Debug, Serialize)]
pub struct Levels {
    /// Its number, title and anchor.
    pub part: PartLink,
    /// One a step.
    pub vessels: Vec<Vessel>,
    /// Which fills occur: "liquid", "kept", "ghost", "sweetener" in key order.
    pub fills: Vec<Fill>,
    /// "Ticks are cups; the vessel holds 6."
    pub scale: String,
}

/// A fill of the batch picture.
#[derive(Clone, Debug, Serialize)]
pub struct Fill {
    /// Class: liquid, kept, ghost, sweetener.
    pub class: String,
    /// Word in the key: "kept by the plant".
    pub word: String,
}

/// One vessel.
#[derive(Clone, Debug, Serialize)]
pub struct Vessel {
    /// Drawing, inline SVG, hidden from screen readers.
    pub svg: String,
    /// "Strain", in italic.
    pub step: String,
    /// "833 mL".
    pub volume: String,
    /// "3 1/2 cups".
    pub other: String,
    /// "113 mL kept by the hips".
    pub change: String,
}

/// The variations table.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Variations {
    /// Its number, title and anchor.
    pub part: PartLink,
    /// Explains the marks.
    pub caption: String,
    /// Columns after the name.
    pub heads: Vec<Head>,
    /// The recipe itself first.
    pub rows: Vec<VariationRow>,
}

/// A column head.
#[derive(Clone, Debug, Serialize)]
pub struct Head {
    /// "Solids, %".
    pub text: String,
    /// At most 14 characters, for a slip on the phone.
    pub short: String,
    /// A hair rule stands before this column.
    pub group: bool,
    /// A column of words rather than figures.
    pub words: bool,
}

/// One way of making it.
#[derive(Clone, Debug, Serialize)]
pub struct VariationRow {
    /// Its name.
    pub name: String,
    /// The recipe itself.
    pub base: bool,
    /// What changes, in words; empty for the base.
    pub change: String,
    /// One a column.
    pub cells: Vec<Cell>,
}

/// One cell of the variations table.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Cell {
    /// Under it, smaller; may be empty.
    pub under: String,
    /// Whether what is under it differs from the recipe's.
    pub under_differs: bool,
    /// The figure or words.
    pub text: String,
    /// The same as a kitchen with US measures has it; may be empty.
    pub us: String,
    /// Against the recipe: "more", "less", "other" (words that changed) or "" (the same).
    pub mark: String,
    /// The column's short head, repeated for the phone.
    pub label: String,
}

/// Lines brought to a target.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Turned {
    /// Its number, title and anchor.
    pub part: PartLink,
    /// One a target.
    pub rows: Vec<MoverRow>,
}

/// Keeping: the class with its reason, and what would move it.
#[derive(Clone, Debug, Serialize)]
pub struct Keeping {
    /// Its number, title and anchor.
    pub part: PartLink,
    /// "B".
    pub class: String,
    /// "does not keep out of the cold".
    pub verdict: String,
    /// "refrigerate, 2 months".
    pub words: String,
    /// Why, with the figures.
    pub because: String,
    /// "At the usual figures it would be class A." or empty.
    pub doubt: String,
    /// "If it is made on 22 September 2026, use it by 29 September 2026." or in days.
    pub use_by: String,
    /// What else the sums say: water activity, the Food Code, crystals.
    pub remarks: Vec<String>,
    /// Where it stands, one a limit.
    pub rules: Vec<KeepingRule>,
    /// What would move it.
    pub movers: Vec<MoverRow>,
    /// Notes in the margin.
    pub notes: Vec<Note>,
}

/// A keeping rule: bands with a pin.
#[derive(Clone, Debug, Serialize)]
pub struct KeepingRule {
    /// Drawing, inline SVG with its facts as its name.
    pub svg: String,
    /// The same facts in words.
    pub words: String,
}

/// One thing that would move it.
#[derive(Clone, Debug, Serialize)]
pub struct MoverRow {
    /// "To A".
    pub term: String,
    /// "use 5.1 cups of honey in all; finished 1,680 mL".
    pub text: String,
}

/// Cautions.
#[derive(Clone, Debug, Serialize)]
pub struct Cautions {
    /// Its number, title and anchor.
    pub part: PartLink,
    /// Stops first.
    pub rows: Vec<CautionRow>,
    /// "Follow local rules; where this page and a licensed practitioner differ, follow the practitioner."
    pub closing: String,
}

/// A caution.
#[derive(Clone, Debug, Serialize)]
pub struct CautionRow {
    /// Anchor.
    pub id: String,
    /// "stop", "warning" or "note".
    pub level: String,
    /// First words, bold.
    pub lead: String,
    /// The rest.
    pub text: String,
    /// Why the author goes on under a warning; empty where it was not acknowledged.
    pub reason: String,
    /// Where it comes from; source titles in italic.
    pub source_html: String,
}

/// The recipe as written.
#[derive(Clone, Debug, Serialize)]
pub struct Written {
    /// Its number, title and anchor.
    pub part: PartLink,
    /// One an input line: spans with classes key, value, comment, step (leading spaces kept).
    pub lines_html: Vec<String>,
}
