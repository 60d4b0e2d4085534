//! More plants, off the heat: what is aromatic is then not boiled.

use super::{Laying, add_weights, put_in, words};
use crate::formula::Line;
use crate::recipe::PlantUse;
use crate::span::Span;
use crate::working::Id;

pub(super) fn lay(at: &mut Laying, span: Span, plants: &[PlantUse]) {
    if at.strained {
        at.order(
            span,
            "plants are added after the straining",
            "they would stay in the bottle; their marc is strained out with the rest",
            "- add: {...} before - strain: squeezed",
        );
        return;
    }
    let have = at.plants.len();
    put_in::plants(at, plants);
    let added: Vec<&str> = at.plants[have..].iter().map(|in_pan| in_pan.plant.words.as_str()).collect();
    let say =
        vec![words(format!("Take off the heat, stir in the {} and cover at once.", super::list_of(&added)))];
    at.off_heat = true;
    let each: Vec<Line> = at.plants.iter().map(|in_pan| in_pan.weight).collect();
    let all = add_weights(&mut at.work, "plants in all", each);
    at.work.claim(Id::Plants, all);
    at.finish_step("add", say, Vec::new(), "off the heat".to_string(), None);
}
