//! Variations: a recipe with a stated change is the recipe written out with that change.

use proptest::prelude::*;
use stillroom::diagnostic::stops;

use super::draft::{Draft, Step, list};
use super::{config, kinds, work};

/// A change, by places in the recipe and in another of the same preparation.
#[derive(Clone, Debug)]
enum Change {
    Liquid,
    Plants,
    Take,
    Step(usize),
    After(usize, usize),
    Before(usize, usize),
    Without(usize),
}

fn change() -> impl Strategy<Value = Change> {
    let at = 0..8_usize;
    prop_oneof![
        1 => Just(Change::Liquid),
        1 => Just(Change::Plants),
        1 => Just(Change::Take),
        3 => at.clone().prop_map(Change::Step),
        1 => (at.clone(), at.clone()).prop_map(|(at, which)| Change::After(at, which)),
        1 => (at.clone(), at.clone()).prop_map(|(at, which)| Change::Before(at, which)),
        1 => at.prop_map(Change::Without),
    ]
}

/// The step that is meant by a name: the last of that name.
fn last(steps: &[Step], name: &str) -> Option<usize> {
    steps.iter().rposition(|step| step.name == name)
}

/// Makes the change in the draft; gives its key and what stands behind it, as a variation writes it.
fn make(draft: &mut Draft, other: &Draft, change: &Change) -> Option<(String, String)> {
    let steps = &mut draft.steps;
    let name = |at: usize, steps: &[Step]| Some(steps.get(at % steps.len().max(1))?.name);
    match *change {
        Change::Liquid => {
            draft.liquid = Some(other.liquid.clone()?);
            Some(("liquid".to_string(), other.liquid.as_ref()?.says.clone()))
        }
        Change::Plants => {
            draft.herbs = other.herbs.clone();
            (!other.herbs.is_empty()).then(|| ("plants".to_string(), list(&other.herbs)))
        }
        Change::Take => {
            draft.take = Some(other.take.clone()?);
            Some(("take".to_string(), other.take.clone()?))
        }
        Change::Step(at) => {
            let name = name(at, &other.steps)?;
            let (here, there) = (last(steps, name)?, last(&other.steps, name)?);
            steps[here] = other.steps[there].clone();
            Some((name.to_string(), steps[here].says.clone()))
        }
        Change::After(at, which) => {
            let (name, step) = (name(at, steps)?, other.steps.get(which % other.steps.len().max(1))?);
            let here = last(steps, name)?;
            steps.insert(here + 1, step.clone());
            Some((format!("after {name}"), format!("{{{}}}", step.line())))
        }
        Change::Before(at, which) => {
            let (name, step) = (name(at, steps)?, other.steps.get(which % other.steps.len().max(1))?);
            let here = last(steps, name)?;
            steps.insert(here, step.clone());
            Some((format!("before {name}"), format!("{{{}}}", step.line())))
        }
        Change::Without(at) => {
            let name = name(at, steps)?;
            steps.remove(last(steps, name)?);
            Some(("without".to_string(), name.to_string()))
        }
    }
}

fn written_out(draft: &Draft, other: &Draft, changes: &[Change]) -> Result<(), TestCaseError> {
    let (mut changed, mut keys) = (draft.clone(), Vec::<(String, String)>::new());
    for change in changes {
        let mut tried = changed.clone();
        // A key stands once in a change.
        if let Some(made) = make(&mut tried, other, change)
            && keys.iter().all(|(key, _)| *key != made.0)
        {
            changed = tried;
            keys.push(made);
        }
    }
    prop_assume!(!keys.is_empty());
    let lines: Vec<String> = keys.iter().map(|(key, says)| format!("      {key}: {says}\n")).collect();
    let more = format!("\nvariations:\n  - name: Changed\n    change:\n{}", lines.concat());
    let text = draft.text() + &super::draft::grown(&more, 1.0);
    let (with, found) = work(draft, &text);
    let Some(with) = with else { return Err(TestCaseError::reject("the recipe itself cannot be worked")) };
    let (alone, alone_found) = work(&changed, &changed.text());
    let Some(alone) = alone.filter(|_| !stops(&alone_found)) else {
        prop_assert!(stops(&found), "nothing says that it cannot be: {lines:?}");
        return Ok(());
    };
    let [varied] = &with.variations[..] else {
        return Err(TestCaseError::fail(format!("not worked as a variation: {lines:?} {found:#?}")));
    };
    let alone = &alone.base;
    let ids = |worked: &stillroom::variation::Worked| {
        let claimed = worked.laid.working.claimed();
        claimed.map(|(id, line)| (id.text(), worked.shown(line), worked.at(line))).collect::<Vec<_>>()
    };
    prop_assert_eq!(ids(varied), ids(alone), "{:?}", lines);
    let lines_of = |worked: &stillroom::variation::Worked| {
        let entries = worked.laid.working.entries().iter().zip(&worked.values).zip(&worked.ranges);
        entries.map(|((entry, value), range)| (entry.name.clone(), *value, *range)).collect::<Vec<_>>()
    };
    prop_assert_eq!(lines_of(varied), lines_of(alone), "{:?}", lines);
    Ok(())
}

/// Two recipes of one kind: one is changed by pieces of the other.
fn pair() -> impl Strategy<Value = (Draft, Draft)> {
    prop_oneof![
        (kinds::watery(), kinds::watery()),
        (kinds::syrup(), kinds::syrup()),
        (kinds::sour(), kinds::sour()),
        (kinds::sweet(), kinds::sweet()),
        (kinds::strong(), kinds::strong()),
        (kinds::oily(), kinds::oily()),
        (kinds::small(), kinds::small()),
        (kinds::laid_on(), kinds::laid_on()),
        (kinds::combined(), kinds::combined()),
    ]
}

proptest! {
    #![proptest_config(config())]

    /// A variation says only what is other: the whole recipe, written out with it, has the same lines and the
    /// same figures; and where that cannot be worked, the variation is not worked either.
    #[test]
    fn a_variation_is_the_recipe_written_out(
        (draft, other) in pair(), changes in prop::collection::vec(change(), 1..4),
    ) {
        written_out(&draft, &other, &changes)?;
    }
}
