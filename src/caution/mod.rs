//! Cautions: rules over a worked recipe and its plants. A stop cannot be switched off.
//!
//! `table` says every rule, `found` what sets each off, `watch` how figures decide, `company` who must not take what
//! the recipe makes.

mod company;
mod found;
mod rule;
mod table;
mod watch;

pub use company::{Barred, Change, Company, changes};
pub use rule::{Found, Rule, Seen, Telling};
pub use table::RULES;
pub use watch::{Piece, Watch, When};

use crate::bibliography::Source;
use crate::cited::PageCaution;
use crate::diagnostic::{Code, Finding, nearest};
use crate::formulary::{Formulary, Plant};
use crate::pantry::Shelf;
use crate::people::Who;
use crate::recipe::Recipe;
use crate::span::Span;
use crate::variation::WorkedRecipe;

/// How much a caution weighs.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Weight {
    /// Protects life; nobody may switch it off.
    Stop,
    /// Take care.
    Warning,
    /// Worth knowing.
    Note,
}

impl Weight {
    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Weight::Stop => "stop",
            Weight::Warning => "warning",
            Weight::Note => "note",
        }
    }
}

/// A caution on a recipe.
#[derive(Clone, PartialEq, Debug)]
pub struct Caution {
    /// Its id, for tools and anchors.
    pub id: String,
    /// The rule it comes of; a plant's id where it stands on the plant's own page.
    pub rule: String,
    /// How much it weighs.
    pub weight: Weight,
    /// First words.
    pub lead: String,
    /// The rest.
    pub text: String,
    /// What it is about, in two or three words: "honey", "sage".
    pub of: String,
    /// Who must not take it.
    pub not_for: Vec<Who>,
    /// Who asks first.
    pub ask_first: Vec<Who>,
    /// The author's reason for going on, where a warning was acknowledged.
    pub reason: Option<String>,
    /// Where it comes from.
    pub source: Source,
}

/// The sentence that no book can leave out.
pub const CLOSING: &str = "Follow your local rules. Where this page and a licensed practitioner differ, follow the \
                           practitioner. This book teaches; it does not diagnose, and promises nothing.";

/// The cautions of a worked recipe: stops first, then warnings, then notes; each once.
pub fn cautions(seen: &Seen) -> Vec<Caution> {
    let mut all: Vec<Caution> = Vec::new();
    let mut add = |caution: Caution| {
        if !all.iter().any(|other| other.id == caution.id) {
            all.push(caution);
        }
    };
    for rule in RULES {
        rule.cases(seen).iter().for_each(|found| add(rule.caution(found)));
    }
    for id in &seen.worked.laid.plants {
        seen.book.plants.get(id).into_iter().flat_map(of_plant).for_each(&mut add);
    }
    for id in &seen.worked.laid.pantry {
        seen.book.pantry.shelf(id).into_iter().flat_map(of_item).for_each(&mut add);
    }
    for caution in &mut all {
        caution.reason = reason(seen.recipe, caution);
    }
    in_order(all)
}

/// The cautions on a plant's own page.
pub fn of_plant(plant: &Plant) -> Vec<Caution> {
    of_page(&plant.id, &plant.words, &plant.cautions)
}

/// Everything that must be minded about a plant, whatever is made of it.
pub fn about_plant(plant: &Plant) -> Vec<Caution> {
    let rules = found::by_plant(plant);
    let raised = rules.iter().filter_map(|(id, found)| Some(rule(id)?.caution(found)));
    in_order(raised.chain(of_plant(plant)).collect())
}

/// Everything that must be minded about a pantry item.
pub fn about_item(shelf: &Shelf) -> Vec<Caution> {
    let rules = found::by_kind(shelf.item.kind).iter().filter_map(|id| rule(id));
    let raised = rules.map(|rule| {
        let of = if rule.id == "sugar" { "in every spoonful".to_string() } else { String::new() };
        rule.caution(&Found { of, ..Found::default() })
    });
    in_order(raised.chain(of_item(shelf)).collect())
}

fn in_order(mut cautions: Vec<Caution>) -> Vec<Caution> {
    cautions.sort_by_key(|caution| caution.weight);
    cautions
}

/// The rule of that name.
pub fn rule(id: &str) -> Option<&'static Rule> {
    RULES.iter().find(|rule| rule.id == id)
}

/// The cautions on a pantry item's own page.
pub fn of_item(shelf: &Shelf) -> Vec<Caution> {
    let own = shelf.page.as_ref().map_or(&[][..], |page| &page.cautions);
    of_page(&format!("pantry-{}", shelf.item.id), &shelf.item.words, own)
}

fn of_page(id: &str, of: &str, cautions: &[PageCaution]) -> Vec<Caution> {
    let own = cautions.iter().enumerate().map(|(n, caution)| Caution {
        id: format!("{id}-{}", n + 1),
        rule: id.to_string(),
        weight: if caution.note { Weight::Note } else { Weight::Warning },
        lead: caution.lead.clone(),
        text: caution.text.clone(),
        of: of.to_string(),
        not_for: caution.not_for.clone(),
        ask_first: caution.ask_first.clone(),
        reason: None,
        source: caution.source.clone(),
    });
    own.collect()
}

/// The author's reason to go on under a warning.
fn reason(recipe: &Recipe, caution: &Caution) -> Option<String> {
    let meant = |name: &str| name == caution.id || name == caution.rule;
    let own = recipe.acknowledge.iter().find(|(name, _)| meant(&name.value));
    own.filter(|_| caution.weight != Weight::Stop).map(|(_, reason)| reason.value.clone())
}

/// What the author is told while pressing: stops refuse, warnings are told until they are acknowledged.
pub fn findings(whole: &WorkedRecipe, book: &Formulary, into: &mut Vec<Finding>) {
    let mut raised: Vec<Caution> = Vec::new();
    for (worked, recipe) in whole.each() {
        let seen = Seen { worked, recipe, book, whole: Some(whole) };
        for rule in RULES {
            for found in rule.cases(&seen) {
                let caution = rule.caution(&found);
                let known = reason(recipe, &caution).is_some();
                raised.push(caution);
                if let (Some(telling), false) = (&rule.telling, known) {
                    tell(rule, telling, &found, &seen, into);
                }
            }
        }
        raised.extend(worked.laid.plants.iter().filter_map(|id| book.plants.get(id)).flat_map(of_plant));
        raised.extend(worked.laid.pantry.iter().filter_map(|id| book.pantry.shelf(id)).flat_map(of_item));
    }
    acknowledged(&whole.recipe, &raised, into);
}

fn tell(rule: &Rule, telling: &Telling, found: &Found, seen: &Seen, into: &mut Vec<Finding>) {
    let mut at = found.at.unwrap_or(seen.recipe.name.span);
    let told = |at: Span| into.iter().any(|other| other.code == telling.code && other.span == Some(at));
    if told(at) {
        return;
    }
    let mut message = telling.message.replace("{}", &found.of);
    // What a variation brings is told at the variation, even where it clashes with a line of the recipe.
    if let Some(variation) = seen.variation().filter(|variation| !variation.changed(at)) {
        at = variation.name.span;
        message = format!("in `{}`: {message}", variation.name.value);
        if told(at) {
            return;
        }
    }
    let finding = match rule.weight {
        Weight::Stop => Finding::error(telling.code, at, message),
        Weight::Warning | Weight::Note => Finding::warning(telling.code, at, message),
    };
    into.push(finding.why(telling.why).write(telling.write));
}

/// What is acknowledged has to be there, and to be no stop.
fn acknowledged(recipe: &Recipe, raised: &[Caution], into: &mut Vec<Finding>) {
    for (name, _) in &recipe.acknowledge {
        let meant = |caution: &&Caution| name.value == caution.id || name.value == caution.rule;
        let known =
            || RULES.iter().map(|rule| rule.id).chain(raised.iter().map(|caution| caution.id.as_str()));
        let stops = RULES.iter().any(|rule| rule.id == name.value && rule.weight == Weight::Stop);
        let finding = match raised.iter().find(meant) {
            Some(caution) if caution.weight != Weight::Stop => continue,
            Some(_) => stands(name.value.as_str(), name.span),
            None if stops => stands(name.value.as_str(), name.span),
            None if known().any(|id| id == name.value) => {
                let message = format!("nothing here calls for `{}`", name.value);
                Finding::warning(Code::NothingToAcknowledge, name.span, message)
                    .why("a caution that is gone needs no reason any more")
            }
            None => {
                let message = format!("`{}` is no caution of this book", name.value);
                let finding = Finding::error(Code::UnknownName, name.span, message)
                    .why("the names stand on the page of all cautions");
                match nearest(&name.value, known()) {
                    Some(near) => finding.write(near),
                    None => finding,
                }
            }
        };
        into.push(finding);
    }
}

fn stands(name: &str, at: Span) -> Finding {
    Finding::error(Code::StopStands, at, format!("`{name}` is a stop: nobody can acknowledge it"))
        .why("a stop protects life; the recipe has to change, not the page")
        .write("another recipe")
}
