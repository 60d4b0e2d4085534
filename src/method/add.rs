//! More plants, off the heat: what is aromatic is then not boiled.

use super::{Laying, add_weights, put_in, words};
use crate::formula::Line;
use crate::recipe::PlantUse;
use crate::span::Span;

pub(super) fn lay(at: &mut Laying, span: Span, plants: &[PlantUse]) {
    // Into what is strained already, where it is strained again: what a second infusion does.
    if at.strained
        && at.marc.left_in.is_empty()
        && at.strains_later()
        && let Some(volume) = at.volume
    {
        at.strained = false;
        at.marc.put_in = vec![volume];
        at.marc.kept = None;
    }
    if at.strained {
        at.order(
            span,
            "plants are added after the straining",
            "they would stay in the bottle; their marc is strained out with the rest",
            "- add: {...} before - strain: squeezed",
        );
        return;
    }
    let have = at.marc.plants.len();
    let again = have == 0 && !at.hot;
    put_in::plants(at, plants);
    let added: Vec<&str> = at.marc.plants[have..].iter().map(|in_pan| in_pan.plant.words.as_str()).collect();
    let added = super::list_of(&added);
    let say = vec![words(match again {
        true => format!("Put the second lot of {added} into what was strained, and cover."),
        false => format!("Take off the heat, stir in the {added} and cover at once."),
    })];
    at.off_heat = true;
    // Beside a marc that has given part of its strength, what is new has all of its own.
    if let Some(can_give) = at.marc.can_give {
        let new: Vec<Line> = at.marc.plants[have..].iter().map(|in_pan| in_pan.weight).collect();
        let all = std::iter::once(can_give).chain(new).collect();
        at.marc.can_give = Some(add_weights(&mut at.work, "plant still to give", all));
    }
    at.claim_plants();
    at.finish_step("add", say, Vec::new(), "off the heat".to_string(), None);
}
