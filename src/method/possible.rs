//! Whether the sums of a recipe can be: nothing below nothing, and no dose larger than all there is.

use crate::batch::ALL_WATER;
use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::recipe::{Recipe, Step};
use crate::working::{Id, MOST_ASSUMPTIONS, Working};

/// Nothing below nothing: at the usual values an error, at an end of the range a warning.
pub(super) fn check(work: &Working, recipe: &Recipe, findings: &mut Vec<Finding>) {
    if work.assumptions() > MOST_ASSUMPTIONS {
        let message =
            format!("{} assumptions meet in one recipe; no reader could weigh them", work.assumptions());
        findings.push(Finding::error(Code::BelowNothing, recipe.name.span, message));
        return;
    }
    let values = work.evaluate(&[]);
    let step_of = |line: Line| {
        let step = recipe.method.get(work.entry(line).step.wrapping_sub(1));
        step.map(|step| &step.value)
    };
    let fault = |line: Line, value: f64| {
        let entry = work.entry(line);
        let at = recipe.method.get(entry.step.wrapping_sub(1)).map_or(recipe.name.span, |step| step.span);
        let amount = crate::measure::show_usual(value, entry.unit);
        (at, format!("`{}` comes to {amount}", entry.name))
    };
    if let Some(line) = work.impossible(&values) {
        let (at, message) = fault(line, values[line.index()]);
        // All the water there is comes to less than nothing only where a syrup is boiled down past its sugar.
        let reduced = recipe.method.iter().find(|step| matches!(step.value, Step::Reduce(_)));
        if let Some(step) = reduced.filter(|_| work.entry(line).name.starts_with(ALL_WATER)) {
            let less = "it is to be boiled down to less than what does not boil away";
            findings.push(
                Finding::error(Code::BelowNothing, step.span, less)
                    .why(message)
                    .write("- reduce: ... before - sweeten: {...}, or to more"),
            );
            return;
        }
        findings.push(match step_of(line) {
            Some(Step::Reduce(_)) => {
                Finding::error(Code::BelowNothing, at, "it is to be boiled down to more than there is")
                    .why(message)
                    .write("to 1/2 of the liquid")
            }
            Some(Step::Combine { of, .. }) => {
                let message = format!("{message}: more is poured than was made");
                Finding::error(Code::BelowNothing, at, message)
                    .why("pour less of it, or make more where it is made")
                    .write(format!("combine: {{{}: 50 mL}}", of.value))
            }
            Some(step @ (Step::MakeUp(_) | Step::Dilute(_))) => {
                let less = format!("`{}` is to less than there is already", step.name());
                Finding::error(Code::BelowNothing, at, less).why(message).write("a larger amount")
            }
            _ => Finding::error(Code::BelowNothing, at, message)
                .why("more is taken away than there is")
                .write("more water, less plant, or less time on the stove"),
        });
        return;
    }
    too_few(work, recipe, &values, findings);
    let lows: Vec<f64> = work.range(&[]).into_iter().map(|range| range.low).collect();
    if let Some(line) = work.impossible(&lows) {
        let (at, message) = fault(line, lows[line.index()]);
        let why = match step_of(line) {
            Some(Step::Combine { .. }) => "less of it may be made than is poured; pour less, or make more",
            Some(Step::MakeUp(_) | Step::Dilute(_)) => "there may be more already",
            _ => "the pan may boil dry in another kitchen",
        };
        let message = format!("{message} if the assumptions fall badly");
        findings.push(Finding::warning(Code::BelowNothing, at, message).why(why));
    }
}

/// Less than one piece, or less than one dose, is a slip of the pen.
fn too_few(work: &Working, recipe: &Recipe, values: &[f64], findings: &mut Vec<Finding>) {
    let cut = recipe.method.iter().find_map(|step| match &step.value {
        Step::Cut(piece) => Some(piece.span),
        _ => None,
    });
    let taken = recipe.take.as_ref().map(|take| take.amount.span);
    for (id, span, words) in [(Id::Pieces, cut, "piece"), (Id::Doses, taken, "dose")] {
        if let (Some(line), Some(span)) = (work.line(id), span)
            && values[line.index()] < 1.0
        {
            let message = format!("one {words} would be more than there is in all");
            findings.push(
                Finding::error(Code::BadNumber, span, message)
                    .why(format!(
                        "the whole comes to {} of one",
                        crate::measure::rounded(values[line.index()], 2)
                    ))
                    .write(format!("a smaller {words}")),
            );
        }
    }
}
