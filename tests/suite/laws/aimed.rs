//! Turned round, then forward: the number that is told brings the line to the target.

use proptest::prelude::*;

use super::draft::Draft;
use super::{config, kinds, near, worked};
use stillroom::aim::aimed;
use stillroom::measure::decimal;
use stillroom::recipe::Aim;
use stillroom::span::{Span, Spanned};
use stillroom::working::{How, Id};

proptest! {
    #![proptest_config(config())]

    /// A target within reach is met, by working the recipe forward with the told number; nothing else was moved.
    #[test]
    fn what_is_told_brings_it_there(draft in kinds::recipe(), pick in 0usize..1000, more in 0.6f64..1.7) {
        law(&draft, pick, more)?;
    }
}

fn law(draft: &Draft, pick: usize, more: f64) -> Result<(), TestCaseError> {
    let recipe = worked(draft)?;
    let working = &recipe.laid.working;
    let given: Vec<_> =
        working.lines().filter(|line| matches!(working.entry(*line).how, How::Given { .. })).collect();
    let lines: Vec<_> = [Id::Finished, Id::Strained, Id::Solids, Id::Strength, Id::FinishedWeight]
        .into_iter()
        .filter_map(|id| Some((id, working.line(id)?)))
        .collect();
    prop_assume!(!given.is_empty() && !lines.is_empty());
    let (input, (id, line)) = (given[pick % given.len()], lines[pick % lines.len()]);
    let unit = working.entry(line).unit;
    let target = recipe.at(line) * more;
    // As a teacher writes it: the number with its unit, to the places that a text holds.
    let text = format!(
        "{} {}",
        decimal(target * unit.printed, 12).replace(',', ""),
        if unit.text.starts_with('%') { "%" } else { unit.text }
    );
    let at = |text: &str| Spanned::new(text.to_string(), Span::default());
    let name = working.entry(input).name.clone();
    let aim = Aim { line: at(id.text()), to: at(&text), by: at(&name) };
    let Ok(found) = aimed(&recipe, &aim, &[]) else { return Ok(()) };
    let forward = recipe.with(&[(found.input, found.worked.at(found.input))]);
    near("forward", forward.at(line), target, 1e-6)?;
    for other in given.iter().filter(|other| **other != found.input) {
        prop_assert_eq!(forward.at(*other), recipe.at(*other));
    }
    Ok(())
}
