//! Percolation: spirit let drip through packed powder, and collected to the ratio.

use super::strain::held_back;
use super::{Laying, Level, Say, words};
use crate::diagnostic::{Code, Finding};
use crate::materia::{PACKING, PERCOLATED, PERCOLATES};
use crate::measure::{Amount, Form, rounded, unit::MIN};
use crate::recipe::{Menstruum, Step};
use crate::span::{Span, Spanned};
use crate::working::Id;

/// What the marc keeps, where the method percolates: it has to be poured besides what is collected.
pub(super) fn kept_besides(at: &mut Laying) -> Option<crate::formula::Line> {
    let percolates = |step: &Spanned<Step>| matches!(step.value, Step::Percolate(_));
    if at.marc.plants.is_empty() || !at.recipe.method.iter().any(percolates) {
        return None;
    }
    Some(held_back(at, &PERCOLATED))
}

pub(super) fn lay(at: &mut Laying, span: Span, time: &Spanned<Amount>) {
    let (Some(_), Some(collected)) = (at.volume, at.collected) else { return };
    let strained = std::mem::replace(&mut at.strained, true);
    if at.recipe.menstruum() != Some(Menstruum::Spirit) {
        let message = "only spirit is let drip through a packed plant";
        let why = "water swells it shut; oil, honey and glycerin hardly run";
        let finding = Finding::error(Code::WrongKind, span, message).why(why);
        at.findings.push(finding.write("steep: 2 weeks and then - strain: pressed"));
        return;
    }
    if strained || at.number > 1 {
        at.order(
            span,
            "`percolate` does not stand first",
            "dry powder is moistened and packed; the packed plant is its own strainer",
            "- percolate: 24 h as the first step, without a strain",
        );
        return;
    }
    if let Some(fresh) = at.recipe.plants.iter().find(|used| used.amount.value.form == Form::Fresh) {
        at.findings.push(
            Finding::error(
                Code::FreshOrDried,
                fresh.amount.span,
                "a fresh plant cannot be packed and percolated",
            )
            .why("it is percolated as a dry, even powder")
            .write(format!("{} dried", fresh.amount.value.amount.written))
            .write("steep: 2 weeks and then - strain: pressed"),
        );
        return;
    }
    if let Some(strength) = at.strength.filter(|strength| *strength < PERCOLATES.value) {
        let message = format!("spirit of {} % is too weak to percolate", rounded(strength * 100.0, 1));
        let why = "below 50 % of alcohol the packed plant swells and nothing runs";
        at.findings.push(
            Finding::error(Code::WrongKind, span, message)
                .why(why)
                .write("liquid: {spirit: 1:5 w/v, strength: 60 %}")
                .write("steep: 2 weeks and then - strain: pressed"),
        );
        return;
    }
    let minutes = at.declared("minutes standing", &MIN, &time.value, false, time.span);
    let packing = at.allowance(&PACKING, false);
    at.takes(minutes, false);
    let before = at.marc.put_in.clone();
    let poured = super::add_volumes(&mut at.work, "liquid in all", before);
    let share = at.work.work(
        "share that passed on",
        crate::formula::catalogue::pan::Passed { after: collected, before: poured },
    );
    at.batch.keep(share, "the percolate", &mut at.work);
    // Fresh spirit drives the strong liquid out of the marc: the whole plant is in what is collected.
    at.passed_on.append(&mut at.marc.weights.clone());
    at.work.claim(Id::Strained, collected);
    at.work.measurable(collected);
    let plants = at.plant_words();
    at.marc.spent = std::mem::take(&mut at.marc.plants);
    at.volume = Some(collected);
    at.need("a percolator, or a bottle without its bottom");
    at.need("cotton wool and a tap or clip");
    let say = vec![
        words(format!("Moisten the powdered {plants} evenly with part of ")),
        Say::Volume(poured),
        words(format!(
            " of {} and let it swell for some hours. Pack it, cover it with spirit, and let it stand closed. Then let it drip, a drop or two a second, pouring on the rest, until you have ",
            at.cold_liquid()
        )),
        Say::Volume(collected),
        words(". Keep it from flames."),
    ];
    let (liquid, sweet) = at.batch.layers();
    let level = Level {
        words: "Percolate",
        volume: collected,
        liquid,
        sweet,
        kept: at.work.line(Id::HeldBack),
        gone: None,
        change: vec![words("collected to the ratio")],
    };
    at.finish_step("percolate", say, vec![packing, minutes], String::new(), Some(level));
}
