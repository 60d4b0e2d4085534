//! The product of another recipe poured in: its working joins this one.

use super::put_in_each::PutIn;
use super::{Ingredient, Laying, Level, Say, words};
use crate::diagnostic::{Code, Finding, nearest};
use crate::formula::catalogue::dose::PassedOn;
use crate::formula::catalogue::pan::{Lose, Passed, ShareOfWeight};
use crate::formulary::{Formulary, Product};
use crate::measure::Amount;
use crate::measure::unit::ML;
use crate::recipe::{Recipe, Shape};
use crate::span::{Span, Spanned};

pub(super) fn lay(at: &mut Laying, span: Span, of: &Spanned<String>, amount: &Spanned<Amount>) {
    let book = at.book;
    let Some(source) = find(at, book, of) else {
        at.faulty = true;
        return;
    };
    let recipe: &Recipe = &source.recipe;
    if at.taken.contains(&of.value) {
        at.order(
            of.span,
            format!("`{}` is combined twice", of.value),
            "what is left of it is reckoned once",
            "one step with the sum of both",
        );
        return;
    }
    at.taken.push(of.value.clone());
    if at.volume.is_some() && !at.strained {
        at.order(
            span,
            "a product is combined before the straining",
            "the marc would keep part of it back, unmeasured",
            "- strain: squeezed",
        );
        return;
    }
    let product = recipe.name.value.to_lowercase();
    // The product's own faults are told at its own recipe.
    let mut told = Vec::new();
    let outer = at.work.join(&product);
    let mut other = Laying::new(recipe, at.book, std::mem::take(&mut at.work), &mut told);
    other.lay_steps();
    let Laying { work, batch, volume, strained, passed_on, plant_ids, put_in, pantry, faulty, dough, .. } =
        other;
    at.work = work;
    at.work.part(outer);
    let told = crate::diagnostic::stops(&told);
    if recipe.preparation.value.shape == Shape::Dry || (dough.dry.is_some() && !told) {
        let message = format!("`{}` is weighed, not poured", of.value);
        let finding = Finding::error(Code::WrongKind, of.span, message);
        at.findings
            .push(finding.why("only what is liquid is combined").write("a recipe whose product is poured"));
        return;
    }
    let oily = batch.holds_oil();
    if at.volume.is_some() && !told && oily != at.batch.holds_oil() {
        at.order(
            of.span,
            "oil and something watery are poured together",
            "they part in the bottle, and water shut into oil breeds what cannot be smelt",
            "two bottles",
        );
        return;
    }
    let (Some(finished), true, false) = (volume, strained, faulty || told) else {
        at.faulty = true;
        return;
    };
    let poured = at.declared(&product, &ML, &amount.value, true, amount.span);
    at.poured = Some(poured);
    at.work.work(format!("{product} left over"), Lose { before: finished, losses: vec![poured] });
    let share = at.work.work(format!("share of the {product}"), Passed { after: poured, before: finished });
    let mut batch = batch;
    batch.keep(share, &product, &mut at.work);
    for plants in passed_on {
        let passed = at.work.work(format!("plant from the {product}"), PassedOn { plants, share });
        at.passed_on.push(passed);
    }
    let new = pantry.into_iter().filter(|id| !at.pantry.contains(id)).collect::<Vec<_>>();
    at.pantry.extend(new);
    for put_in in put_in {
        let name = format!("{} from the {product}", put_in.plant);
        let weight = at.work.work(name, ShareOfWeight { share, whole: put_in.weight });
        // Whether it was cooked is told where the product is made.
        at.put_in.push(PutIn { weight, at: amount.span, boiled: None, ..put_in });
    }
    at.batch.pour_in(batch);
    at.note_plants(plant_ids);
    at.ingredients.push(Ingredient {
        volume: Some(poured),
        written: Some(amount.value.written.clone()),
        href: Some(source.href.clone()),
        ..Ingredient::named(product.clone())
    });
    let volume = at.batch.volume("finished", &mut at.work);
    let first = at.volume.is_none();
    at.volume = Some(volume);
    at.strained = true;
    at.sweetened = true;
    at.need("a measuring jug marked in millilitres");
    let (liquid, sweet) = at.batch.layers();
    let level = Level {
        words: if first { "Pour" } else { "Combine" },
        volume,
        liquid,
        sweet,
        kept: None,
        gone: None,
        change: vec![Say::Volume(poured), words(format!(" of {product}"))],
    };
    let verb = if first { "Measure out " } else { "Stir in " };
    let say = vec![words(verb), Say::Volume(poured), words(format!(" of the {product}."))];
    at.finish_step("combine", say, Vec::new(), String::new(), Some(level));
}

/// The product of that name; where there is none, or no one, a finding.
fn find<'a>(at: &mut Laying, book: &'a Formulary, of: &Spanned<String>) -> Option<&'a Product> {
    let fault =
        |message: String, why: &str| Some(Finding::error(Code::UnknownName, of.span, message).why(why));
    let (found, finding) = match book.products.called(&of.value) {
        [] if book.products.faulty => (None, None),
        [] => {
            let finding = fault(
                format!("no recipe of this book is called `{}`", of.value),
                "a product is another recipe's: it is named as that recipe is, letter for letter",
            );
            let near = nearest(&of.value, book.products.names());
            (None, finding.map(|finding| near.map_or(finding.clone(), |near| finding.write(near))))
        }
        [product] if product.circle.is_empty() => (Some(product), None),
        // Told where a member of the circle is worked, and not again by what only leads there.
        [product] if !product.circle.contains(&at.recipe.name.value) => (None, None),
        [product] => {
            let mut members: Vec<&str> = product.circle.iter().map(String::as_str).collect();
            members.push(&of.value);
            let takes = members.join(" takes ");
            let message = format!("`{}` is made of itself: {takes}", of.value);
            let why = "one of them has to be made without the others";
            (None, Some(Finding::error(Code::Circle, of.span, message).why(why)))
        }
        [..] => {
            let message = format!("more than one recipe of this book is called `{}`", of.value);
            (None, fault(message, "which of them is meant cannot be told; give one of them another name"))
        }
    };
    at.findings.extend(finding);
    found
}
