//! *Spirit and water*: the crossing table, one cell worked, two spirits crossed, a fresh plant's water.

use super::ledger::lines;
use super::method_page::{Users, note_users};
use super::show::plainly;
use super::view::{CrossCell, CrossRow, Frame, Link, SpiritsPage, Worked as Shown};
use crate::formula::equation::escape;
use crate::formulary::Kitchen;
use crate::measure::decimal;
use crate::spirits::{Crossing, Dilution, cross, dilute, with_fresh_plant};

/// Strengths at hand down the side and strengths wanted across, per cent by volume.
const AT_HAND: &[u32] = &[30, 35, 38, 40, 43, 45, 50, 60, 70, 80, 90, 95, 96];
const WANTED: &[u32] = &[20, 25, 30, 40, 45, 50, 60, 70, 80];

/// The view; none where the kitchen has no spirit at hand.
pub fn page(frame: Frame, kitchen: &Kitchen, users: &mut Users) -> Option<SpiritsPage> {
    let (weak, strong) = (*kitchen.spirits.first()?, *kitchen.spirits.last()?);
    let wanted = kitchen.crossing.as_ref().map_or(strong / 2.0, |crossing| crossing.wanted);
    let make = kitchen.crossing.as_ref().map_or(500.0, |crossing| crossing.make);
    let root = frame.root.clone();
    let here = Link { text: frame.title.clone(), href: "spirits.html".to_string(), current: false };
    let mut worked = Vec::new();
    let mut square = None;
    if wanted < strong {
        let dilution = dilute(strong, wanted, make);
        note_users(&dilution.worked, &here, users);
        worked.push(Shown {
            id: "one-cell".to_string(),
            title: "One cell, worked".to_string(),
            lead: told(&dilution),
            rows: lines(&dilution.worked, "cell", &root),
        });
        if weak < wanted {
            let crossing = cross(strong, weak, wanted, make);
            note_users(&crossing.worked, &here, users);
            square = Some(draw(&crossing, strong, weak, wanted));
            worked.push(Shown {
                id: "crossed".to_string(),
                title: "Two spirits crossed".to_string(),
                lead: told_crossed(&crossing, strong, weak),
                rows: lines(&crossing.worked, "square", &root),
            });
        }
    }
    if let Some(fresh) = &kitchen.fresh {
        let shown = with_fresh_plant(fresh.plant, fresh.moisture, fresh.spirit, strong);
        note_users(&shown, &here, users);
        worked.push(Shown {
            id: "fresh".to_string(),
            title: "A fresh plant in it".to_string(),
            lead: "A fresh plant brings its own water, and the spirit is weaker for it.".to_string(),
            rows: lines(&shown, "fresh", &root),
        });
    }
    let rows = AT_HAND.iter().map(|at_hand| row(*at_hand, strong, wanted)).collect();
    Some(SpiritsPage {
        heads: WANTED.iter().map(|wanted| decimal(f64::from(*wanted), 0)).collect(),
        rows,
        caption: "Millilitres of water to 100 mL of spirit, exact by weight at 20 °C. Down the side, per cent by volume \
                  at hand with its US proof (twice the per cent); across, per cent by volume wanted."
            .to_string(),
        worked,
        square_html: square.unwrap_or_default(),
        frame,
    })
}

fn row(at_hand: u32, strong: f64, wanted_here: f64) -> CrossRow {
    let cells = WANTED.iter().map(|wanted| {
        let text = match wanted.cmp(&at_hand) {
            std::cmp::Ordering::Less => {
                let dilution =
                    dilute(share(at_hand), share(*wanted), share(*wanted) * 100.0 / share(at_hand));
                // 100 mL of spirit: what is made from it is in the same proportion.
                let made = dilution.worked.at(dilution.spirit);
                decimal(dilution.worked.at(dilution.water) / made * 100.0, 0)
            }
            std::cmp::Ordering::Equal => "all".to_string(),
            std::cmp::Ordering::Greater => "–".to_string(),
        };
        let worked = near(share(at_hand), strong) && near(share(*wanted), wanted_here);
        CrossCell { text, worked }
    });
    CrossRow {
        name: decimal(f64::from(at_hand), 0),
        proof: decimal(f64::from(at_hand * 2), 0),
        cells: cells.collect(),
    }
}

fn share(per_cent: u32) -> f64 {
    f64::from(per_cent) / 100.0
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-9
}

fn told(dilution: &Dilution) -> String {
    let shown = |line| plainly(&dilution.worked, line);
    format!(
        "Take {} of the spirit and add {} of water. The kitchen's rule, which adds volumes as if they did not shrink, \
         says {}.",
        shown(dilution.spirit),
        shown(dilution.water),
        shown(dilution.by_rule)
    )
}

fn told_crossed(crossing: &Crossing, strong: f64, weak: f64) -> String {
    let shown = |line| plainly(&crossing.worked, line);
    format!(
        "The distances, crossed, are the parts: {} of the spirit of {} % to {} of the spirit of {} %, so {} and {}.",
        shown(crossing.parts.0),
        decimal(strong * 100.0, 0),
        shown(crossing.parts.1),
        decimal(weak * 100.0, 0),
        shown(crossing.take.0),
        shown(crossing.take.1)
    )
}

/// The crossed square as the trade teaches it, with the same facts as its name.
fn draw(crossing: &Crossing, strong: f64, weak: f64, wanted: f64) -> String {
    let per_cent = |share: f64| decimal(share * 100.0, 0);
    let part = |line| per_cent(crossing.worked.at(line));
    let (of_strong, of_weak) = (part(crossing.parts.0), part(crossing.parts.1));
    let name = format!(
        "Crossed square: {} and {} to {}; {} parts of the strong to {} parts of the weak",
        per_cent(strong),
        per_cent(weak),
        per_cent(wanted),
        of_strong,
        of_weak
    );
    let text = |x: &str, y: &str, class: &str, words: &str| {
        format!("<text x=\"{x}\" y=\"{y}\" class=\"{class}\">{words}</text>")
    };
    format!(
        "<svg class=\"crossed-square\" viewBox=\"0 0 320 180\" width=\"320\" height=\"180\" role=\"img\" aria-label=\"{}\">\
         <path class=\"cross\" d=\"M78 38L242 142M78 142L242 38\"></path>\
         <rect class=\"centre\" x=\"132\" y=\"74\" width=\"56\" height=\"32\"></rect>{}{}{}{}{}</svg>",
        escape(&name),
        text("70", "34", "left", &format!("{} %", per_cent(strong))),
        text("70", "158", "left", &format!("{} %", per_cent(weak))),
        text("160", "96", "middle", &format!("{} %", per_cent(wanted))),
        text("250", "34", "right", &format!("{of_strong} parts")),
        text("250", "158", "right", &format!("{of_weak} parts")),
    )
}
