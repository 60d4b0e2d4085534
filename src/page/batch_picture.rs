//! The batch through its steps, as vessels with their facts in words.

use super::label::bottle_size;
use super::levels;
use super::show::{plainly, said_plainly, whole_bottles};
use super::view::{Fill, Levels, PartLink, Vessel};
use crate::formula::Line;
use crate::measure::{kitchen, whole};
use crate::variation::Worked;
use crate::working::Id;

pub(super) fn batch_picture(worked: &Worked, part: PartLink) -> Levels {
    let working = &worked.laid.working;
    let volume = |lines: &[Line]| lines.iter().map(|line| worked.at(*line)).sum::<f64>();
    let with_levels: Vec<_> =
        worked.laid.steps.iter().filter_map(|done| Some((done, done.level.as_ref()?))).collect();
    let put_in = [Id::Water, Id::Spirit, Id::Liquid].into_iter().find_map(|id| working.line(id));
    let most = with_levels
        .iter()
        .map(|(_, level)| {
            worked.at(level.volume) + volume(&level.kept.into_iter().chain(level.gone).collect::<Vec<_>>())
        })
        .chain(put_in.map(|line| worked.at(line)))
        .fold(0.0, f64::max);
    let (holds, tick, scale) = levels::scale(most);
    let mut fills = vec![levels::Fill::Liquid];
    let mut vessels = Vec::new();
    if let Some(line) = put_in {
        vessels.push(Vessel {
            svg: levels::vessel(
                &[levels::Layer { fill: levels::Fill::Liquid, ml: worked.at(line) }],
                holds,
                tick,
            ),
            step: "Put in".to_string(),
            volume: plainly(worked, line),
            other: kitchen::fl_oz(worked.at(line)),
            change: worked
                .laid
                .at_first
                .map_or(String::new(), |plants| format!("on {} of plants", plainly(worked, plants))),
        });
    }
    for (done, level) in with_levels {
        let mut layers = vec![levels::Layer { fill: levels::Fill::Liquid, ml: volume(&level.liquid) }];
        for (fill, lines) in [
            (levels::Fill::Sweetener, level.sweet.clone()),
            (levels::Fill::Kept, level.kept.into_iter().collect()),
            (levels::Fill::Ghost, level.gone.into_iter().collect()),
        ] {
            if !lines.is_empty() {
                layers.push(levels::Layer { fill, ml: volume(&lines) });
                if !fills.contains(&fill) {
                    fills.push(fill);
                }
            }
        }
        let bottles = (done.name == "bottle").then(|| working.line(Id::Bottles)).flatten();
        vessels.push(match bottles {
            Some(line) => {
                let fill =
                    if level.sweet.is_empty() { levels::Fill::Liquid } else { levels::Fill::Sweetener };
                Vessel {
                    svg: levels::bottles_of(fill, whole(worked.at(line)) as usize),
                    step: level.words.to_string(),
                    volume: whole_bottles(worked, worked.at(line)),
                    other: bottle_size(worked).trim().to_string(),
                    change: format!("from {}", plainly(worked, level.volume)),
                }
            }
            None => Vessel {
                svg: levels::vessel(&layers, holds, tick),
                step: level.words.to_string(),
                volume: plainly(worked, level.volume),
                other: kitchen::fl_oz(worked.at(level.volume)),
                change: level.change.iter().map(|say| said_plainly(worked, say)).collect(),
            },
        });
    }
    let fills = fills
        .into_iter()
        .map(|fill| {
            let (class, word) = match fill {
                levels::Fill::Liquid => ("liquid", "liquid"),
                levels::Fill::Kept => ("kept", "kept by the plants"),
                levels::Fill::Ghost => ("ghost", "boiled away"),
                levels::Fill::Sweetener => ("sweetener", "sweetener"),
            };
            Fill { class: class.to_string(), word: word.to_string() }
        })
        .collect();
    Levels { part, vessels, fills, scale }
}
