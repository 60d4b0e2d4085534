//! What a rule is: when it holds, what it says, whom it speaks of, and what the author is told.

use super::watch::Watch;
use super::{Caution, Weight};
use crate::bibliography::Source;
use crate::diagnostic::Code;
use crate::formulary::Formulary;
use crate::people::Who;
use crate::recipe::{Recipe, Variation};
use crate::span::Span;
use crate::variation::{Worked, WorkedRecipe};

/// What a rule looks at.
#[derive(Clone, Copy)]
pub struct Seen<'a> {
    /// The recipe, or one of its variations, worked.
    pub worked: &'a Worked,
    /// The same as declared.
    pub recipe: &'a Recipe,
    /// The book.
    pub book: &'a Formulary,
    /// The recipe with all its variations; none where a variation or a table's row is looked at.
    pub whole: Option<&'a WorkedRecipe>,
}

impl<'a> Seen<'a> {
    /// The variation that is looked at; none where it is the recipe itself.
    pub fn variation(&self) -> Option<&'a Variation> {
        let all = &self.whole?.recipe.variations;
        all.iter().find(|variation| std::ptr::eq(&*variation.recipe, self.recipe))
    }
}

/// A case of a rule.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Found {
    /// Which case it is, for its id; empty where a rule has one case.
    pub key: String,
    /// What is put for `{}` in the rule's words; empty where it has none.
    pub of: String,
    /// Whom it speaks of besides those of the rule.
    pub not_for: Vec<Who>,
    /// Where in the recipe; none where the recipe as a whole is meant.
    pub at: Option<Span>,
}

/// What the author is told.
#[derive(Debug)]
pub struct Telling {
    /// The kind of finding.
    pub code: Code,
    /// What is wrong.
    pub message: &'static str,
    /// Why.
    pub why: &'static str,
    /// What to write.
    pub write: &'static str,
}

/// A rule.
pub struct Rule {
    /// Its name, for tools, anchors and authors.
    pub id: &'static str,
    /// How much it weighs. A stop with a telling refuses the press.
    pub weight: Weight,
    /// What sets it off, in words.
    pub when: &'static str,
    /// First words; `{}` stands for what it is about.
    pub lead: &'static str,
    /// The rest.
    pub text: &'static str,
    /// What it is about in a list of people; empty where each case says.
    pub about: &'static str,
    /// Who must not take it, in the words of the list of people.
    pub not_for: &'static [&'static str],
    /// Who asks first.
    pub ask_first: &'static [&'static str],
    /// What the author is told; none where only readers are.
    pub telling: Option<Telling>,
    /// Where it comes from.
    pub source: Source,
    /// What finds its cases in a recipe; none where figures decide, a step is refused before anything is worked, or a
    /// day is summed.
    pub found: Option<fn(&Seen) -> Vec<Found>>,
    /// Its cases that figures decide.
    pub watched: Option<fn(&Seen) -> Vec<Watch>>,
}

impl Rule {
    /// Whether the press refuses a recipe, or the book, that sets it off.
    pub fn refuses(&self) -> bool {
        let elsewhere = self.found.is_none() && self.watched.is_none();
        self.weight == Weight::Stop && (self.telling.is_some() || elsewhere)
    }

    /// Its cases in a recipe.
    pub fn cases(&self, seen: &Seen) -> Vec<Found> {
        let found = self.found.map_or_else(Vec::new, |found| found(seen));
        let held =
            self.watches(seen).into_iter().filter_map(|watch| watch.found(seen.worked, seen.recipe.ph()));
        found.into_iter().chain(held).collect()
    }

    /// Its cases that figures decide, whether they hold now or not.
    pub fn watches(&self, seen: &Seen) -> Vec<Watch> {
        self.watched.map_or_else(Vec::new, |watched| watched(seen))
    }

    /// What a case is called, for anchors and scripts.
    pub fn case_id(&self, key: &str) -> String {
        if key.is_empty() { self.id.to_string() } else { format!("{}-{key}", self.id) }
    }

    /// The rule's words about one case.
    pub fn caution(&self, found: &Found) -> Caution {
        let people =
            |words: &[&str]| words.iter().filter_map(|word| Who::read(word).ok()).collect::<Vec<_>>();
        Caution {
            id: self.case_id(&found.key),
            rule: self.id.to_string(),
            weight: self.weight,
            lead: self.lead.replace("{}", &found.of),
            text: self.text.replace("{}", &found.of),
            of: if self.about.is_empty() { found.of.clone() } else { self.about.to_string() },
            not_for: people(self.not_for).into_iter().chain(found.not_for.iter().copied()).collect(),
            ask_first: people(self.ask_first),
            reason: None,
            source: self.source.clone(),
        }
    }
}
