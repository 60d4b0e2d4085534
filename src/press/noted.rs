//! What is kept of a recipe for the other pages: who uses which plant, where each caution stands, who must not
//! take it, what a day of it comes to, and what is set side by side.

use crate::caution::{Caution, Company, Seen, cautions};
use crate::day::{self, Part};
use crate::diagnostic::{Code, Finding, nearest};
use crate::formulary::Formulary;
use crate::keeping::judge;
use crate::page::recipes_page::Listed;
use crate::page::view::Link;
use crate::span::Spanned;
use crate::variation::{Worked, WorkedRecipe};
use crate::working::Id;

/// One recipe with its variations.
#[derive(Debug)]
pub(super) struct Noted {
    /// Its name, and its address from the site's root.
    pub(super) link: Link,
    /// What it is found by.
    pub(super) listed: Listed,
    /// Plants in it.
    pub(super) plants: Vec<Held>,
    /// What of the pantry is in it.
    pub(super) pantry: Vec<Held>,
    /// Rules and plants whose cautions stand on it.
    pub(super) cautions: Vec<Held>,
    /// Who must not take it, or asks first; the recipe itself, then its variations by name.
    pub(super) companies: Vec<(Option<String>, Company)>,
    /// What a day of it comes to, of what has a ceiling.
    pub(super) day: Vec<Part>,
    /// The recipe and its variations, where a lesson sets them side by side with another.
    pub(super) beside: Vec<Beside>,
}

/// A recipe or a variation that is set side by side with another.
#[derive(Debug)]
pub(super) struct Beside {
    /// [`called`] so.
    pub(super) called: String,
    pub(super) worked: Worked,
    /// "C: cold, 3 weeks".
    pub(super) keeps: String,
}

/// What a recipe or one of its variations is called among all of the book.
pub(super) fn called(recipe: &str, variation: Option<&str>) -> String {
    variation.map_or(recipe.to_string(), |variation| format!("{recipe} / {variation}"))
}

/// Told where a name is no recipe's.
pub(super) fn unknown<'a>(name: &Spanned<String>, known: impl Iterator<Item = &'a str>) -> Finding {
    let message = format!("no recipe of this book is called `{}`", name.value);
    let finding = Finding::error(Code::UnknownName, name.span, message)
        .why("a recipe is named here as it is named where it stands, letter for letter");
    match nearest(&name.value, known) {
        Some(near) => finding.write(near),
        None => finding,
    }
}

/// Something in a recipe, and in which of its variations alone, where it is not in the recipe itself.
#[derive(Clone, PartialEq, Debug)]
pub(super) struct Held {
    pub(super) name: String,
    pub(super) only_in: Vec<String>,
}

/// Notes a recipe.
pub(super) fn note(whole: &WorkedRecipe, book: &Formulary, link: Link) -> Noted {
    let all: Vec<(&Worked, Vec<Caution>)> = whole
        .each()
        .enumerate()
        .map(|(n, (worked, recipe))| {
            (worked, cautions(&Seen { worked, recipe, book, whole: (n == 0).then_some(whole) }))
        })
        .collect();
    let companies = all
        .iter()
        .enumerate()
        .map(|(n, (worked, raised))| ((n > 0).then(|| worked.name.clone()), Company::of(raised)));
    Noted {
        plants: held(all.iter().map(|(worked, _)| (*worked, worked.laid.plants.clone()))),
        pantry: held(all.iter().map(|(worked, _)| (*worked, worked.laid.pantry.clone()))),
        companies: companies.collect(),
        day: day::parts(&whole.base, book, &link.href),
        beside: beside(whole, book),
        listed: listed(whole, book, &link),
        link,
        cautions: held(
            all.iter().map(|(worked, raised)| {
                (*worked, raised.iter().map(|caution| caution.rule.clone()).collect())
            }),
        ),
    }
}

fn listed(whole: &WorkedRecipe, book: &Formulary, link: &Link) -> Listed {
    let plants = whole.base.laid.plants.iter().filter_map(|id| book.plants.get(id));
    let mut seasons: Vec<_> =
        plants.filter_map(|plant| Some(plant.season.as_ref()?.0.clone())).flatten().collect();
    seasons.sort();
    seasons.dedup();
    Listed {
        link: link.clone(),
        kind: whole.recipe.preparation.value.word,
        minutes: whole.base.value(Id::Minutes).unwrap_or_default(),
        keeps: judge(&whole.base, whole.recipe.ph()).rung.words,
        seasons,
    }
}

fn beside(whole: &WorkedRecipe, book: &Formulary) -> Vec<Beside> {
    let asked = |called: &str| {
        book.lessons
            .iter()
            .flat_map(|head| head.side_by_side.iter().flatten())
            .any(|name| name.value == called)
    };
    let each = whole.each().enumerate().map(|(n, (worked, recipe))| {
        let called = called(&whole.base.name, (n > 0).then_some(worked.name.as_str()));
        (called, worked, recipe)
    });
    let kept = each.filter(|(called, ..)| asked(called)).map(|(called, worked, recipe)| Beside {
        called,
        keeps: judge(worked, recipe.ph()).rung.in_short(),
        worked: worked.clone(),
    });
    kept.collect()
}

/// Everything of a kind in the recipe, which comes first, and in its variations.
fn held<'a>(of: impl Iterator<Item = (&'a Worked, Vec<String>)>) -> Vec<Held> {
    let mut all: Vec<Held> = Vec::new();
    for (n, (worked, names)) in of.enumerate() {
        for name in names {
            match all.iter_mut().find(|held| held.name == name) {
                Some(held) if held.only_in.is_empty() || held.only_in.contains(&worked.name) => {}
                Some(held) => held.only_in.push(worked.name.clone()),
                None if n == 0 => all.push(Held { name, only_in: Vec::new() }),
                None => all.push(Held { name, only_in: vec![worked.name.clone()] }),
            }
        }
    }
    all
}
