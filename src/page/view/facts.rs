//! Pages of facts: plants and pantry, cautions, people, days, and the old rules for children.

use serde::Serialize;

use super::{CautionRow, Frame, LabelRow, Latin, LedgerRow, Link};

/// A plant's or a pantry item's own page.
#[derive(Clone, Debug, Serialize)]
pub struct Monograph {
    /// Around the text.
    pub frame: Frame,
    /// The list it stands in.
    pub list: Link,
    /// What it belongs to there: a family, a kind.
    pub belongs: String,
    /// Other names; may be empty.
    pub also: String,
    /// Its Latin name; none in the pantry.
    pub latin: Vec<Latin>,
    /// "Before you use it": who must not, who asks first, what it is mistaken for.
    pub before: Vec<LabelRow>,
    /// The page's own text.
    pub prose_html: String,
    /// Facts in order.
    pub facts: Vec<FactRow>,
    /// Its cautions.
    pub cautions: Vec<CautionRow>,
    /// The sentence under them.
    pub closing: String,
    /// Recipes that use it.
    pub users: Vec<UserRow>,
}

/// A fact.
#[derive(Clone, Debug, Serialize)]
pub struct FactRow {
    /// "A cup weighs, dried".
    pub term: String,
    /// "115 g"; names of the book are links.
    pub html: String,
    /// Where it comes from; empty for names.
    pub source_html: String,
    /// Whether it is worked from others.
    pub worked: bool,
}

/// A recipe that something stands in.
#[derive(Clone, Debug, Serialize)]
pub struct UserRow {
    /// The recipe.
    pub link: Link,
    /// "in the variation With fresh thyme"; empty where it is in the recipe itself.
    pub only: String,
}

/// A list of pages.
#[derive(Clone, Debug, Serialize)]
pub struct ListPage {
    /// Around the text.
    pub frame: Frame,
    /// What they are; may be empty.
    pub lead: String,
    /// By group; a single group may have no name.
    pub groups: Vec<ListGroup>,
}

/// A group of a list.
#[derive(Clone, Debug, Serialize)]
pub struct ListGroup {
    /// Its name; may be empty.
    pub name: String,
    /// Anchor.
    pub id: String,
    /// A link each.
    pub links: Vec<Link>,
}

/// All cautions.
#[derive(Clone, Debug, Serialize)]
pub struct CautionsPage {
    /// Around the text.
    pub frame: Frame,
    /// What they are.
    pub lead: String,
    /// Stops, warnings, notes.
    pub groups: Vec<RuleGroup>,
    /// Plants and pantry items that have cautions of their own.
    pub own: Vec<Link>,
    /// The sentence under them.
    pub closing: String,
}

/// Cautions of one weight.
#[derive(Clone, Debug, Serialize)]
pub struct RuleGroup {
    /// Anchor.
    pub id: String,
    /// "Stops".
    pub name: String,
    /// What that means.
    pub what: String,
    /// One a rule.
    pub rules: Vec<RuleRow>,
}

/// A rule.
#[derive(Clone, Debug, Serialize)]
pub struct RuleRow {
    /// Anchor.
    pub id: String,
    /// Its name, as an author writes it.
    pub name: String,
    /// First words.
    pub lead: String,
    /// The rest.
    pub text: String,
    /// What sets it off.
    pub when: String,
    /// Whether the press refuses.
    pub refuses: bool,
    /// Where it comes from.
    pub source_html: String,
    /// Recipes it stands on.
    pub users: Vec<UserRow>,
}

/// The index by people.
#[derive(Clone, Debug, Serialize)]
pub struct PeoplePage {
    /// Around the text.
    pub frame: Frame,
    /// How to read it.
    pub lead: String,
    /// By kind.
    pub groups: Vec<PeopleGroup>,
    /// The sentence under them.
    pub closing: String,
}

/// People of one kind.
#[derive(Clone, Debug, Serialize)]
pub struct PeopleGroup {
    /// Anchor.
    pub id: String,
    /// "With a condition".
    pub name: String,
    /// One a group of people.
    pub rows: Vec<PeopleRow>,
}

/// A group of people.
#[derive(Clone, Debug, Serialize)]
pub struct PeopleRow {
    /// Anchor.
    pub id: String,
    /// "in pregnancy".
    pub name: String,
    /// Recipes that are not for them.
    pub never: Vec<UserRow>,
    /// Recipes to ask about first.
    pub ask: Vec<UserRow>,
    /// Plants and pantry items whose pages name them.
    pub pages: Vec<Link>,
}

/// What is taken on one day.
#[derive(Clone, Debug, Serialize)]
pub struct DaysPage {
    /// Around the text.
    pub frame: Frame,
    /// What it is.
    pub lead: String,
    /// One a lesson that says so.
    pub days: Vec<DayPart>,
    /// The sentence under them.
    pub closing: String,
}

/// A day.
#[derive(Clone, Debug, Serialize)]
pub struct DayPart {
    /// Anchor.
    pub id: String,
    /// The lesson.
    pub lesson: Link,
    /// What is taken.
    pub recipes: Vec<Link>,
    /// One a thing with a ceiling.
    pub sums: Vec<DaySum>,
}

/// A sum of a day.
#[derive(Clone, Debug, Serialize)]
pub struct DaySum {
    /// Anchor.
    pub id: String,
    /// Of what.
    pub of: String,
    /// In a sentence.
    pub lead: String,
    /// Its lines.
    pub rows: Vec<LedgerRow>,
}

/// Recipes and variations two and two.
#[derive(Clone, Debug, Serialize)]
pub struct SidesPage {
    /// Around the text.
    pub frame: Frame,
    /// What it is.
    pub lead: String,
    /// What the marks say.
    pub caption: String,
    /// Each two.
    pub parts: Vec<SidesPart>,
}

/// Two of them.
#[derive(Clone, Debug, Serialize)]
pub struct SidesPart {
    /// Anchor.
    pub id: String,
    /// The lesson that sets them so.
    pub lesson: Link,
    /// The one.
    pub left: Link,
    /// The other.
    pub right: Link,
    /// Their lines.
    pub rows: Vec<SideRow>,
}

/// A line of both.
#[derive(Clone, Debug, Serialize)]
pub struct SideRow {
    /// What it is.
    pub name: String,
    /// Of the one.
    pub left: String,
    /// Of the other.
    pub right: String,
    /// How the other stands to the one: "more", "less", "other", or nothing where they are the same.
    pub mark: String,
    /// How many times as much; may be empty.
    pub times: String,
}

/// The old rules for children.
#[derive(Clone, Debug, Serialize)]
pub struct ChildrenPage {
    /// Around the text.
    pub frame: Frame,
    /// What must be said first.
    pub warning: CautionRow,
    /// The rules side by side, by age.
    pub by_age: RuleTable,
    /// The rules that go by the body.
    pub by_body: RuleTable,
    /// One child, worked.
    pub lead: String,
    /// Its lines.
    pub rows: Vec<LedgerRow>,
}

/// Shares of an adult's dose.
#[derive(Clone, Debug, Serialize)]
pub struct RuleTable {
    /// Above the table.
    pub caption: String,
    /// First head, then the rules.
    pub heads: Vec<String>,
    /// A row each.
    pub rows: Vec<RuleTableRow>,
}

/// A row of them.
#[derive(Clone, Debug, Serialize)]
pub struct RuleTableRow {
    /// "6 years".
    pub name: String,
    /// Per cent of an adult's dose.
    pub cells: Vec<String>,
}
