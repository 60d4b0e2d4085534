//! Who must not take what a recipe makes, and who asks first: its cautions turned round by people.

use super::{Caution, Seen, cautions};
use crate::formulary::Formulary;
use crate::people::Who;
use crate::variation::WorkedRecipe;

/// Somebody, and what of the recipe is not for them.
#[derive(Clone, PartialEq, Debug)]
pub struct Barred {
    /// Who.
    pub who: Who,
    /// Because of what.
    pub of: Vec<String>,
}

/// The people a recipe's cautions speak of.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Company {
    /// Who must not take it.
    pub not_for: Vec<Barred>,
    /// Who asks first, where they may take it at all.
    pub ask_first: Vec<Barred>,
}

/// What a variation does to the company.
#[derive(Clone, PartialEq, Debug)]
pub struct Change {
    /// The variation.
    pub name: String,
    /// Who must not take it though they may take the recipe.
    pub more: Vec<Barred>,
    /// Who must not take the recipe, and is not named by the variation.
    pub less: Vec<Barred>,
}

impl Company {
    /// The company of these cautions.
    pub fn of(cautions: &[Caution]) -> Company {
        let mut company = Company::default();
        for caution in cautions {
            caution.not_for.iter().for_each(|who| note(&mut company.not_for, *who, &caution.of));
        }
        for caution in cautions {
            let free = |who: &&Who| !company.not_for.iter().any(|barred| barred.who == **who);
            let ask: Vec<Who> = caution.ask_first.iter().filter(free).copied().collect();
            ask.into_iter().for_each(|who| note(&mut company.ask_first, who, &caution.of));
        }
        company.not_for.sort_by_key(|barred| barred.who);
        company.ask_first.sort_by_key(|barred| barred.who);
        company
    }
}

fn note(list: &mut Vec<Barred>, who: Who, of: &str) {
    match list.iter_mut().find(|barred| barred.who == who) {
        Some(barred) if barred.of.iter().any(|known| known == of) => {}
        Some(barred) => barred.of.push(of.to_string()),
        None => list.push(Barred { who, of: vec![of.to_string()] }),
    }
}

/// The variations that are for other people than the recipe itself.
pub fn changes(whole: &WorkedRecipe, book: &Formulary) -> Vec<Change> {
    let mut each = whole.each().map(|(worked, recipe)| {
        // Without the whole: a rule about the changes must not look for them again.
        Company::of(&cautions(&Seen { worked, recipe, book, whole: None }))
    });
    let Some(base) = each.next() else { return Vec::new() };
    let changed = whole.variations.iter().zip(each).map(|(variation, own)| Change {
        name: variation.name.clone(),
        more: beyond(&own.not_for, &base.not_for),
        less: beyond(&base.not_for, &own.not_for),
    });
    changed.filter(|change| !change.more.is_empty() || !change.less.is_empty()).collect()
}

/// Those of the first list that the second does not name.
fn beyond(these: &[Barred], those: &[Barred]) -> Vec<Barred> {
    let named = |barred: &&Barred| !those.iter().any(|other| other.who == barred.who);
    these.iter().filter(named).cloned().collect()
}
