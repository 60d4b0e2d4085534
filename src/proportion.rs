//! The proportions of what is made, in words, as they stand on a label: plant to liquid, sweetener to liquid.

use crate::formula::Line;
use crate::measure::decimal;
use crate::recipe::Recipe;
use crate::variation::Worked;
use crate::working::Id;

/// "dried plant to water 1 : 8, weight to volume"; "honey to liquid 1 : 2, by volume". None where nothing extracts.
pub fn of(worked: &Worked, recipe: &Recipe) -> Vec<String> {
    let line = |ids: &[Id]| ids.iter().find_map(|id| worked.laid.working.line(*id));
    let mut said = Vec::new();
    let liquid = line(&[Id::Water, Id::Liquid, Id::Spirit]);
    if let (Some(plants), Some(liquid)) = (line(&[Id::Plants]), liquid) {
        let to = to_one(worked, plants, liquid);
        said.push(format!("plant to {} {to}, weight to volume", recipe.extracts()));
    }
    if let (Some(sweet), Some(liquid)) = (line(&[Id::Sweetener]), line(&[Id::Reduced, Id::Strained])) {
        let name = &worked.laid.working.entry(sweet).name;
        said.push(format!("{name} to liquid {}, by volume", to_one(worked, sweet, liquid)));
    }
    if let (Some(wax), Some(oil)) = (line(&[Id::Wax]), line(&[Id::FinishedWeight])) {
        said.push(format!("wax to the whole {}, by weight", to_one(worked, wax, oil)));
    }
    said
}

/// `1 : 8`, the smaller side being the one; no more places than a label needs.
fn to_one(worked: &Worked, left: Line, right: Line) -> String {
    let (left, right) = (worked.at(left), worked.at(right));
    let shown = |times: f64| decimal(times, u8::from((times - times.round()).abs() >= 0.05));
    if left <= right {
        format!("1 : {}", shown(right / left))
    } else {
        format!("{} : 1", shown(left / right))
    }
}
