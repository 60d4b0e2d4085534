//! Will it keep, where, how long: a class with its reason, read from a ladder of rows.
//!
//! The first rung whose tests hold decides. Limits are compared with the careful end of a line's range,
//! so that a doubt never looks like "keeps"; a line that is not there passes no test.

mod ladder;
mod movers;

pub use ladder::{LADDER, Rung, Shelf, Test};
pub use movers::{Moved, Mover, movers};

use crate::diagnostic::{Code, Finding};
use crate::formula::Line;
use crate::measure::show;
use crate::recipe::Keep;
use crate::variation::{Worked, WorkedRecipe};
use crate::working::Id;

/// What the ladder says of a class.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Verdict {
    /// It keeps by a published rule.
    Keeps,
    /// It does not keep out of the cold.
    DoesNot,
    /// Nothing published decides.
    CannotTell,
}

impl Verdict {
    /// In words that cannot be taken for one another.
    pub const fn words(self) -> &'static str {
        match self {
            Verdict::Keeps => "keeps",
            Verdict::DoesNot => "does not keep out of the cold",
            Verdict::CannotTell => "no published rule decides; go by the words, and look at it",
        }
    }
}

/// A recipe judged.
#[derive(Clone, Copy, Debug)]
pub struct Judged {
    /// The rung at the careful end of every range.
    pub rung: &'static Rung,
    /// The rung at the usual values, where it is another.
    pub usually: Option<&'static Rung>,
}

/// Where a recipe says it keeps out of the cold and the ladder does not: the page goes by the ladder.
pub fn findings(recipe: &WorkedRecipe, into: &mut Vec<Finding>) {
    let declared = std::iter::once((&recipe.recipe, &recipe.base)).chain(
        recipe.variations.iter().filter_map(|worked| {
            let named = recipe.recipe.variations.iter().find(|other| other.name.value == worked.name)?;
            Some((&*named.recipe, worked))
        }),
    );
    for (declared, worked) in declared {
        let Some(keep) =
            declared.keep.as_ref().filter(|keep| matches!(keep.value, Keep::Shelf | Keep::CoolDark))
        else {
            continue;
        };
        let judged = judge(worked, declared.ph());
        if judged.rung.shelf == Shelf::Fine || into.iter().any(|told| told.span == Some(keep.span)) {
            continue;
        }
        let message = format!("`{}` {}; the page says so", worked.name, judged.rung.verdict.words());
        // Fresh plants in oil or in honey out of the cold: no book of this press says so.
        let finding = match judged.rung.shelf {
            Shelf::Refused => Finding::error(Code::KeepDisagrees, keep.span, message),
            Shelf::Fine | Shelf::Warned => Finding::warning(Code::KeepDisagrees, keep.span, message),
        };
        into.push(finding.why(judged.because(worked)).write("keep: refrigerator"));
    }
}

/// Judges a worked recipe. `ph` is that of the finished preparation, where it was measured.
pub fn judge(worked: &Worked, ph: Option<f64>) -> Judged {
    let rung = first(worked, ph, true);
    let usual = first(worked, ph, false);
    Judged { rung, usually: (usual.class != rung.class).then_some(usual) }
}

fn first(worked: &Worked, ph: Option<f64>, careful: bool) -> &'static Rung {
    let holds = |test: &Test| test.holds(worked, ph, careful);
    // The last rung has no test: it is reached where nothing decides.
    LADDER.iter().find(|rung| rung.all.iter().all(holds)).unwrap_or(&LADDER[LADDER.len() - 1])
}

impl Test {
    fn holds(&self, worked: &Worked, ph: Option<f64>, careful: bool) -> bool {
        let line = |id: Id| worked.laid.working.line(id);
        let low = |line: Line| if careful { worked.ranges[line.index()].low } else { worked.at(line) };
        let high = |line: Line| if careful { worked.ranges[line.index()].high } else { worked.at(line) };
        // What floating point alone parts counts as reached.
        const TINY: f64 = 1e-9;
        match *self {
            Test::AtLeast(id, limit) => line(id).is_some_and(|line| low(line) >= limit.value - TINY),
            Test::AtMost(id, limit) => line(id).is_some_and(|line| high(line) <= limit.value + TINY),
            Test::Has(id) | Test::Is(id) => line(id).is_some(),
            Test::HasNot(id) => line(id).is_none(),
            Test::MeasuredAcid(limit) => ph.is_some_and(|ph| ph <= limit.value),
        }
    }

    /// The test with the recipe's figure: "dissolved solids 61 % against 65 %".
    fn told(&self, worked: &Worked) -> Option<String> {
        let shown = |line: Line| format!("{} {}", worked.laid.working.entry(line).name, worked.shown(line));
        let (id, limit) = match *self {
            Test::AtLeast(id, limit) | Test::AtMost(id, limit) => (id, limit),
            Test::Has(id) => return worked.laid.working.line(id).map(shown),
            _ => return None,
        };
        let line = worked.laid.working.line(id)?;
        let limit = show(limit.value, limit.unit, 2.min(limit.unit.places));
        Some(format!("{} (the limit is {limit})", shown(line)))
    }
}

impl Judged {
    /// Why, with the figures that decided.
    pub fn because(&self, worked: &Worked) -> String {
        let told: Vec<String> = self.rung.all.iter().filter_map(|test| test.told(worked)).collect();
        if told.is_empty() {
            self.rung.because.to_string()
        } else {
            format!("{}: {}", self.rung.because, told.join("; "))
        }
    }
}
