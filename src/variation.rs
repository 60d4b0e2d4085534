//! A recipe worked in full, and each of its variations laid down anew and worked the same way.

use crate::diagnostic::Finding;
use crate::formula::Line;
use crate::formulary::Formulary;
use crate::measure::show;
use crate::method::{Laid, activity_is_known, lay_down};
use crate::recipe::Recipe;
use crate::working::{Id, Range, Working, places};

/// A recipe laid down and evaluated.
#[derive(Clone, Debug)]
pub struct Worked {
    /// Its name.
    pub name: String,
    /// The lines and what belongs to them.
    pub laid: Laid,
    /// The value of each line, in its unit.
    pub values: Vec<f64>,
    /// The range of each line.
    pub ranges: Vec<Range>,
    /// The decimals each line prints.
    pub places: Vec<u8>,
    /// The lines that were set to other values than the recipe's, in their units.
    pub set: Vec<(Line, f64)>,
}

/// A recipe and its variations.
#[derive(Clone, Debug)]
pub struct WorkedRecipe {
    /// As declared.
    pub recipe: Recipe,
    /// The recipe itself.
    pub base: Worked,
    /// Its variations, in order; one that cannot be worked is left out, with findings.
    pub variations: Vec<Worked>,
}

impl WorkedRecipe {
    /// The recipe, then each variation, worked and as declared.
    pub fn each(&self) -> impl Iterator<Item = (&Worked, &Recipe)> {
        let variations = self.variations.iter().filter_map(|worked| {
            let declared = self.recipe.variations.iter().find(|other| other.name.value == worked.name)?;
            Some((worked, &*declared.recipe))
        });
        std::iter::once((&self.base, &self.recipe)).chain(variations)
    }
}

/// Works a recipe and all its variations.
pub fn work(recipe: Recipe, book: &Formulary, findings: &mut Vec<Finding>) -> Option<WorkedRecipe> {
    let base = work_one(&recipe, book, findings);
    let mut variations: Vec<Worked> = Vec::new();
    for variation in &recipe.variations {
        let before = findings.len();
        let worked = work_one(&variation.recipe, book, findings);
        if variation.usual && crate::diagnostic::stops(&findings[before..]) {
            findings.truncate(before);
            continue;
        }
        // What is written otherwise and comes to the same is no variation to show.
        let again = |worked: &Worked| base.iter().chain(&variations).any(|other| other.comes_to(worked));
        if variation.usual && worked.as_ref().is_some_and(again) {
            continue;
        }
        variations.extend(worked);
        // A fault of the recipe itself comes again in every variation: tell it once. A fault that is
        // the variation's own is told where the variation is named.
        let mut own: Vec<Finding> = findings.drain(before..).collect();
        own.retain(|finding| {
            !findings
                .iter()
                .any(|told| (told.code, told.level, told.span) == (finding.code, finding.level, finding.span))
        });
        for finding in &mut own {
            if !finding.span.is_some_and(|span| variation.changed(span)) {
                finding.span = Some(variation.name.span);
                finding.message = format!("in `{}`: {}", variation.name.value, finding.message);
            }
        }
        findings.extend(own);
    }
    Some(WorkedRecipe { base: base?, variations, recipe })
}

fn work_one(recipe: &Recipe, book: &Formulary, findings: &mut Vec<Finding>) -> Option<Worked> {
    Some(Worked::laid(&recipe.name.value, lay_down(recipe, book, findings)?))
}

impl Worked {
    fn laid(name: &str, laid: Laid) -> Worked {
        let values = laid.working.evaluate(&[]);
        let ranges = laid.working.range(&[]);
        let places = places(&laid.working, &values, &[]);
        Worked { name: name.to_string(), laid, values, ranges, places, set: Vec::new() }
    }

    /// The same lines with some of them set: an amount that is varied, or any line measured.
    pub fn with(&self, set: &[(Line, f64)]) -> Worked {
        let mut laid = self.laid.clone();
        let values = laid.working.evaluate(set);
        let ranges = laid.working.range(set);
        // Another size may leave what the equations were measured on: it boils down further.
        if !activity_is_known(&laid.working, &ranges) {
            laid.working.disown(Id::WaterActivity);
        }
        let places = places(&laid.working, &values, set);
        Worked { name: self.name.clone(), laid, values, ranges, places, set: set.to_vec() }
    }

    /// Whether every figure that tools rely on is the same in both.
    fn comes_to(&self, other: &Worked) -> bool {
        let figures = |of: &Worked| -> Vec<(Id, u64)> {
            of.laid.working.claimed().map(|(id, line)| (id, of.at(line).to_bits())).collect()
        };
        figures(self) == figures(other)
    }

    /// A working that is no recipe's.
    pub fn of(name: &str, working: Working) -> Worked {
        Worked::laid(name, Laid { working, ..Laid::default() })
    }

    /// The value of an id's line, in its unit.
    pub fn value(&self, id: Id) -> Option<f64> {
        self.laid.working.line(id).map(|line| self.values[line.index()])
    }

    /// The value of a line, in its unit.
    pub fn at(&self, line: Line) -> f64 {
        self.values[line.index()]
    }

    /// The line of what it makes: a volume, a weight or an area.
    pub fn made(&self) -> Option<Line> {
        [Id::Finished, Id::FinishedWeight, Id::Area].into_iter().find_map(|id| self.laid.working.line(id))
    }

    /// A line as printed, with its unit.
    pub fn shown(&self, line: Line) -> String {
        show(self.at(line), self.laid.working.entry(line).unit, self.places[line.index()])
    }

    /// The range of a line as printed, or none where it has none worth printing.
    pub fn between(&self, line: Line) -> Option<(String, String)> {
        let (range, entry) = (self.ranges[line.index()], self.laid.working.entry(line));
        // One place less than the value: a range does not claim the value's last figure.
        let places = self.places[line.index()].min(crate::measure::usual_places(range.high, entry.unit));
        let (low, high) = (show(range.low, entry.unit, places), show(range.high, entry.unit, places));
        (range.is_wide() && low != high).then_some((low, high))
    }
}
