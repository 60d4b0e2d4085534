//! A question about what a batch costs: the bill as a sum of its own.

use super::Cost;
use super::ground::{Ground, formula_of, in_words};
use super::posed::{Answered, Posed, Right, Stage};
use crate::cost::bill;
use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::formula::catalogue::class::{
    AddCosts, CostOfPacks, CostUsed, CostUsedByVolume, Packs, PacksByVolume,
};
use crate::measure::unit::{G, ML, MONEY};
use crate::measure::{Dimension, show_usual};
use crate::span::Span;
use crate::variation::Worked;
use crate::working::Working;

fn plainly(worked: &Worked, line: Line) -> String {
    show_usual(worked.at(line), worked.laid.working.entry(line).unit)
}

/// The bill as a sum of its own.
pub(super) fn cost(ground: &Ground, stage: &Stage, what: Cost) -> Result<Posed, Box<Finding>> {
    let prices = &stage.book.course.prices;
    let Some(bill) = bill(&ground.worked, prices) else {
        let message = "nothing in the recipe has a price";
        let finding = Finding::error(Code::MissingKey, Span::default(), message);
        return Err(Box::new(finding.why("prices stand in formulary.yaml")));
    };
    let mut work = Working::new();
    let mut shown = Vec::new();
    let mut costs = Vec::new();
    for item in &bill.items {
        let at = Span::default();
        let by_weight = item.pack.unit.dimension == Dimension::MASS;
        let unit = if by_weight { &G } else { &ML };
        let needed = work.given(format!("{}, needed", item.words), unit, item.needed, false, at);
        let holds = work.given(format!("{}, a pack", item.words), unit, item.pack.holds, false, at);
        let price =
            work.given(format!("{}, price of a pack", item.words), &MONEY, item.pack.price, false, at);
        let name = format!("{}, {}", item.words, if what == Cost::Used { "as used" } else { "bought" });
        costs.push(match (what, by_weight) {
            (Cost::Used, true) => work.work(name, CostUsed { needed, holds, price }),
            (Cost::Used, false) => work.work(name, CostUsedByVolume { needed, holds, price }),
            (Cost::Bought, by_weight) => {
                let packs = format!("{}, whole packs", item.words);
                let packs = match by_weight {
                    true => work.work(packs, Packs { needed, holds }),
                    false => work.work(packs, PacksByVolume { needed, holds }),
                };
                work.work(name, CostOfPacks { packs, price })
            }
        });
        shown.push((item.words.clone(), needed, price, item.pack.written.clone()));
    }
    let all = work.one_or(costs, |work, each| work.work("costs together", AddCosts { each }));
    work.close();
    let worked = Worked::of(&ground.worked.name, work);
    let unpriced = match bill.unpriced.is_empty() {
        true => String::new(),
        false => format!(" What has no price is left out: {}.", bill.unpriced.join(", ")),
    };
    let makes = ground.worked.made().map(|line| plainly(&ground.worked, line));
    let made = makes.map_or(worked.name.clone(), |makes| format!("{makes} of {}", worked.name));
    let currency = &prices.currency;
    let rows = shown.into_iter().map(|(words, needed, price, pack)| {
        let price = format!("{currency}{} for {pack}", plainly(&worked, price));
        [format!("{words}: {} needed", worked.shown(needed)), price]
    });
    let text = format!("{currency}{}", worked.shown(all));
    let (value, blank) = (worked.at(all), currency.clone());
    let answer = Answered { name: "cost".to_string(), value, unit: &MONEY, asked_in: None, blank, text };
    Ok(Posed {
        ask: match what {
            Cost::Used => {
                format!("What does {made} cost, counting of each pack only what is used?{unpriced}")
            }
            Cost::Bought => format!("What is paid for {made}, with whole packs?{unpriced}"),
        },
        shown: rows.collect(),
        hint: in_words(&worked, all),
        formula: formula_of(&worked, all),
        worked: Some((worked.clone(), vec![all])),
        ..Posed::of(Right::Figures(vec![answer]))
    })
}
