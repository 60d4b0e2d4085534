//! All cautions with what sets them off, and the index by people.

use std::collections::BTreeMap;

use super::recipe::with_stop;
use super::show::capital;
use super::show::cite;
use super::view::{
    CautionsPage, Frame, Link, PeopleGroup, PeoplePage, PeopleRow, RuleGroup, RuleRow, UserRow,
};
use crate::caution::{CLOSING, RULES, Weight};
use crate::people::{Kind, Who};

/// Weights with their headings and what they mean.
const WEIGHTS: &[(Weight, &str, &str, &str)] = &[
    (
        Weight::Stop,
        "stops",
        "Stops",
        "They protect life. Nobody can switch one off; where it is marked so, no page is made at all until the recipe is another.",
    ),
    (
        Weight::Warning,
        "warnings",
        "Warnings",
        "Take care. A teacher may go on under a warning with a reason, and the reason is printed beside it.",
    ),
    (Weight::Note, "notes", "Notes", "Worth knowing."),
];

/// The view of all cautions; `users` are the recipes each stands on, by the rule's name.
pub fn page(frame: Frame, users: &BTreeMap<String, Vec<UserRow>>, own: Vec<Link>) -> CautionsPage {
    let groups = WEIGHTS.iter().map(|(weight, id, name, what)| {
        let rules = RULES.iter().filter(|rule| rule.weight == *weight).map(|rule| RuleRow {
            id: rule.id.to_string(),
            name: rule.id.to_string(),
            lead: with_stop(&rule.lead.replace("{}", "…")),
            text: rule.text.replace("{}", "…"),
            when: rule.when.to_string(),
            refuses: rule.refuses(),
            source_html: cite(&rule.source, &frame.root),
            users: users.get(rule.id).cloned().unwrap_or_default(),
        });
        RuleGroup {
            id: (*id).to_string(),
            name: (*name).to_string(),
            what: (*what).to_string(),
            rules: rules.collect(),
        }
    });
    CautionsPage {
        lead: "Every caution of this book, what sets it off, where it comes from, and where it stands. Plants and pantry \
               have more, each on its own page."
            .to_string(),
        groups: groups.collect(),
        own,
        closing: CLOSING.to_string(),
        frame,
    }
}

/// What is kept for somebody in the index.
#[derive(Clone, Debug, Default)]
pub struct ForThem {
    /// Recipes that are not for them.
    pub never: Vec<UserRow>,
    /// Recipes to ask about first.
    pub ask: Vec<UserRow>,
    /// Pages of plants and pantry that name them.
    pub pages: Vec<Link>,
}

/// The view of the index by people.
pub fn people(frame: Frame, index: &BTreeMap<Who, ForThem>) -> PeoplePage {
    let groups = Kind::ALL.iter().map(|(kind, name)| {
        let rows = index.iter().filter(|(who, _)| who.kind() == *kind).map(|(who, them)| PeopleRow {
            id: who.anchor(),
            name: capital(&who.phrase()),
            never: them.never.clone(),
            ask: them.ask.clone(),
            pages: them.pages.clone(),
        });
        PeopleGroup {
            id: format!("{kind:?}").to_lowercase(),
            name: (*name).to_string(),
            rows: rows.collect(),
        }
    });
    PeoplePage {
        lead: "Look yourself up before you taste. What is not for an older child is not for a younger one either. What is not listed is not therefore safe: ask a doctor or a pharmacist."
            .to_string(),
        groups: groups.filter(|group| !group.rows.is_empty()).collect(),
        closing: CLOSING.to_string(),
        frame,
    }
}
