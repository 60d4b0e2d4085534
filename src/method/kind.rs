//! Whether a recipe is what its name says: its liquid, and the steps it cannot do without.

use super::{Laying, list_of};
use crate::diagnostic::{Code, Finding};
use crate::recipe::{Menstruum, PREPARATIONS};

pub(super) fn check(at: &mut Laying) {
    let recipe = at.recipe;
    let kind = recipe.preparation.value;
    if let Some(liquid) = &recipe.liquid
        && !kind.liquids.contains(&liquid.value.kind)
    {
        let extracts = liquid.value.kind;
        let fit: Vec<&str> = kind.liquids.iter().map(|kind| kind.words()).collect();
        let message = format!("{} is not made with {}", kind.with_article(), extracts.words());
        let why = match fit[..] {
            [] => "nothing is poured on in it".to_string(),
            _ => format!("its liquid is {}", list_of(&fit).replace(" and ", " or ")),
        };
        let mut finding = Finding::error(Code::WrongKind, recipe.preparation.span, message).why(why);
        let other = PREPARATIONS.iter().find(|other| made_with(other.liquids, extracts));
        if let Some(other) = other {
            finding = finding.write(other.word);
        }
        at.findings.push(finding);
    }
    for need in kind.needs {
        if !recipe.method.iter().any(|step| step.value.name() == need.step) {
            let message = format!("this {} {}", kind.word, need.without);
            at.findings.push(
                Finding::error(Code::WrongKind, recipe.name.span, message).why(need.why).write(need.write),
            );
        }
    }
}

/// Whether a preparation is made with that liquid and no other.
fn made_with(liquids: &[Menstruum], liquid: Menstruum) -> bool {
    matches!(liquids, [only] if *only == liquid)
}
