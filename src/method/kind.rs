//! Whether a recipe is what its name says: its liquid, its plants, and the steps it cannot do without.

use super::{Laying, list_of};
use crate::diagnostic::{Code, Finding};
use crate::measure::{Form, Measure};
use crate::recipe::{Hand, Menstruum, PREPARATIONS, Shape, Step, Use};

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
    dry_plants(at);
    parts(at);
    if let (Some(take), Use::OnSkin | Use::Breathed) = (&recipe.take, kind.used) {
        let message = format!("{} is not taken", kind.with_article());
        at.findings.push(
            Finding::error(Code::WrongKind, take.amount.span, message)
                .why("what is for the skin, or breathed, has no dose; say in the text how it is used")
                .write("no `take`"),
        );
    }
    for need in kind.needs {
        if !recipe.method.iter().any(|step| is(&step.value, need.step)) {
            let message = format!("this {} {}", kind.word, need.without);
            at.findings.push(
                Finding::error(Code::WrongKind, recipe.name.span, message).why(need.why).write(need.write),
            );
        }
    }
}

fn is(step: &Step, name: &str) -> bool {
    match name {
        "strain: not" => matches!(step, Step::Strain(Hand::Not)),
        _ => step.name() == name,
    }
}

/// What is dry must not be made of what is moist: it would mould.
fn dry_plants(at: &mut Laying) {
    let recipe = at.recipe;
    let kind = recipe.preparation.value;
    if !matches!(kind.shape, Shape::Dry | Shape::Kneaded) {
        return;
    }
    for used in recipe.plants.iter().filter(|used| used.amount.value.form == Form::Fresh) {
        let message = format!("fresh {} in {}", used.plant.value, kind.with_article());
        at.findings.push(
            Finding::error(Code::FreshOrDried, used.amount.span, message)
                .why("it is kept dry, and a fresh plant would mould in it")
                .write(format!("{} dried", used.amount.value.amount.written)),
        );
    }
}

/// Parts and what they weigh together belong to each other, and to every plant or to none.
fn parts(at: &mut Laying) {
    let recipe = at.recipe;
    let added = recipe.method.iter().flat_map(|step| step.value.adds());
    let plants: Vec<_> = recipe.plants.iter().chain(added).collect();
    let is_part = |used: &&&crate::recipe::PlantUse| used.amount.value.amount.measure == Measure::Part;
    let parts = plants.iter().filter(is_part).count();
    if let (Some(weight), 0) = (&recipe.weight, parts) {
        at.findings.push(
            Finding::error(
                Code::WrongShape,
                weight.span,
                "`weight` is that of parts, and no plant is given in parts",
            )
            .why("plants that are weighed need no weight besides")
            .write("plants: {thyme: 1 part dried, ...}"),
        );
    }
    if parts > 0
        && let Some(weighed) = plants.iter().find(|used| !is_part(used))
    {
        let amount = &weighed.amount.value;
        at.findings.push(
            Finding::error(Code::NoBasis, weighed.amount.span, "parts and weights stand side by side")
                .why("what the parts weigh together is said once, for every plant")
                .write(format!("1 part {}", amount.form)),
        );
    }
}

/// Whether what was made of products alone holds what its name promises.
pub(super) fn check_made(at: &mut Laying) {
    let recipe = at.recipe;
    let kind = recipe.preparation.value;
    let products = recipe.liquid.is_none() && kind.shape == Shape::Poured;
    if !products || at.faulty || at.has_faults() {
        return;
    }
    let holds = |liquid: &Menstruum| match liquid {
        Menstruum::Water => !at.batch.holds_oil(),
        Menstruum::Vinegar => at.batch.holds_vinegar(),
        Menstruum::Spirit => at.batch.holds_spirit(),
        Menstruum::Glycerin => at.batch.holds_glycerin(),
        Menstruum::Honey => at.batch.holds_honey(),
        Menstruum::Oil => at.batch.holds_oil(),
    };
    if !kind.liquids.iter().any(holds) {
        let fit: Vec<&str> = kind.liquids.iter().map(|kind| kind.words()).collect();
        let message = format!("this {} holds no {}", kind.word, list_of(&fit).replace(" and ", " or "));
        at.findings.push(
            Finding::error(Code::WrongKind, recipe.preparation.span, message)
                .why("what is combined decides what it is")
                .write(format!("another product, or another preparation than `{}`", kind.word)),
        );
    }
}

/// Whether a preparation is made with that liquid and no other.
fn made_with(liquids: &[Menstruum], liquid: Menstruum) -> bool {
    matches!(liquids, [only] if *only == liquid)
}
