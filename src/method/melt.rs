//! Wax melted into oil.

use super::{Hazard, Ingredient, Laying, Level, Say, words};
use crate::diagnostic::{Code, Finding};
use crate::formula::catalogue::pan::{MeasureOut, ShareOfWeight};
use crate::formula::catalogue::sweeten::OfFinishedWeight;
use crate::materia::{Kind, MELTING};
use crate::measure::unit::{G, ONE};
use crate::measure::{By, Dimension, Of};
use crate::recipe::Much;
use crate::span::{Span, Spanned};
use crate::working::Id;

pub(super) fn lay(at: &mut Laying, span: Span, waxes: &[(Spanned<String>, Spanned<Much>)]) {
    let Some(before) = at.volume else { return };
    if !at.strained {
        at.too_early(
            span,
            "the wax is melted in before the straining",
            "it would set in the marc",
            "- strain: squeezed and then - melt: {beeswax: 1/5 of the liquid by weight}",
        );
        return;
    }
    if at.batch.holds_wax() {
        at.order(
            span,
            "wax is melted in twice",
            "its share is one of oil alone",
            "one `melt` with all of it",
        );
        return;
    }
    if !at.batch.holds_oil() {
        at.order(
            span,
            "wax is melted into something other than oil",
            "wax mixes with oil and with nothing watery",
            "- combine: {...} an infused oil first",
        );
        return;
    }
    for (name, wax) in waxes {
        let Some(item) = at.shelf(name, "a wax", |kind| kind == Kind::Wax, &[]) else { continue };
        let oil = at.batch.weight("oil, weighed", &mut at.work);
        let weight = match &wax.value {
            Much::Measured(amount) if amount.dimension() == Dimension::MASS => {
                at.declared(&name.value, &G, amount, true, wax.span)
            }
            Much::Share(share) if share.by == By::Weight => {
                let of = if share.of == Of::Liquid { "to one of oil" } else { "in one of finished" };
                let line = at.work.given(format!("{} {of}", name.value), &ONE, share.share, false, wax.span);
                match share.of {
                    Of::Liquid => {
                        at.work.work(name.value.as_str(), ShareOfWeight { share: line, whole: oil })
                    }
                    Of::Finished => {
                        at.work.work(name.value.as_str(), OfFinishedWeight { liquid: oil, share: line })
                    }
                }
            }
            _ => {
                at.findings.push(
                    Finding::error(Code::WrongDimension, wax.span, "wax is weighed")
                        .why("shavings fill a spoon loosely, and a block not at all")
                        .write(format!("melt: {{{}: 28 g}}", name.value))
                        .write(format!("melt: {{{}: 1/5 of the liquid by weight}}", name.value)),
                );
                continue;
            }
        };
        let density = super::sweeten::density(at, &item);
        let volume = at.work.work(format!("{}, melted", name.value), MeasureOut { weight, density });
        at.batch.melt_in(item.clone(), volume, weight);
        at.work.claim(Id::Wax, weight);
        at.ingredients.push(Ingredient { weight: Some(weight), ..Ingredient::of(&item) });
        let finished = at.batch.volume("finished", &mut at.work);
        at.volume = Some(finished);
        at.sweetened = true;
        at.hazards.push(Hazard::HotWax);
        let minutes = at.allowance(&MELTING, true);
        at.need("scales");
        at.need("a bowl over a pan of hot water");
        at.need("a cold spoon to test it");
        let say = vec![
            words("Melt "),
            Say::Weight(weight),
            words(format!(
                " of {} in the oil over hot water, never over the flame. Set a drop on a cold spoon: too soft, add wax; too hard, add oil.",
                name.value
            )),
        ];
        let (liquid, sweet) = at.batch.layers();
        let level = Level {
            words: "Melt",
            volume: finished,
            liquid,
            sweet,
            kept: None,
            gone: None,
            change: vec![Say::Weight(weight), words(format!(" of {} on ", name.value)), Say::Volume(before)],
        };
        at.finish_step("melt", say, vec![minutes], "over hot water".to_string(), Some(level));
    }
}
