//! What several recipes taken on one day come to, of everything that has a daily ceiling.

use crate::bibliography::Source;
use crate::formula::Line;
use crate::formula::catalogue::dose::{ShareOfCeiling, TakenTogether};
use crate::formula::catalogue::pan::AddWeights;
use crate::formulary::Formulary;
use crate::measure::Unit;
use crate::measure::unit::G;
use crate::variation::Worked;
use crate::working::{How, Working};

/// What one recipe gives a day of something with a ceiling.
#[derive(Clone, PartialEq, Debug)]
pub struct Part {
    /// The recipe.
    pub recipe: String,
    /// Its address, from the site's root.
    pub href: String,
    /// Of what: a constituent, or a plant.
    pub of: String,
    /// Least, usual and most a day, g.
    pub taken: (f64, f64, f64),
    /// The ceiling, g.
    pub most: f64,
    /// The unit both are printed in.
    pub unit: &'static Unit,
    /// Where the ceiling comes from.
    pub source: Source,
}

/// What the recipes of a day come to of one thing.
#[derive(Clone, Debug)]
pub struct Sum {
    /// Of what.
    pub of: String,
    /// The sum, worked; its first lines are what each recipe gives.
    pub worked: Worked,
    /// The addresses of those recipes, from the site's root.
    pub hrefs: Vec<String>,
    /// Together, g.
    pub total: Line,
    /// The ceiling, g.
    pub most: Line,
    /// The one against the other.
    pub share: Line,
}

impl Sum {
    /// Whether it passes the ceiling, at the careful end of what is not known.
    pub fn passes(&self) -> bool {
        self.worked.ranges[self.total.index()].high > self.worked.at(self.most) * (1.0 + 1e-9)
    }
}

/// What a recipe gives a day of everything with a ceiling, its larger dose taken as often as it says.
pub fn parts(worked: &Worked, book: &Formulary, href: &str) -> Vec<Part> {
    let parts = worked.laid.ceilings.iter().filter_map(|line| {
        let plant = book.plants.get(&line.plant)?;
        let ceiling = plant.ceilings.iter().find(|ceiling| ceiling.of == line.of)?;
        let range = worked.ranges[line.taken.index()];
        Some(Part {
            recipe: worked.name.clone(),
            href: href.to_string(),
            of: line.of.clone().unwrap_or_else(|| plant.words.clone()),
            taken: (range.low, worked.at(line.taken), range.high),
            most: worked.at(line.most),
            unit: worked.laid.working.entry(line.taken).unit,
            source: ceiling.source.clone(),
        })
    });
    parts.collect()
}

/// The sums of a day, one for each thing with a ceiling, in the order they are met.
pub fn sums(parts: &[Part]) -> Vec<Sum> {
    let mut of: Vec<&str> = Vec::new();
    for part in parts {
        if !of.contains(&part.of.as_str()) {
            of.push(&part.of);
        }
    }
    of.into_iter().filter_map(|of| sum(of, parts.iter().filter(|part| part.of == of))).collect()
}

fn sum<'a>(of: &str, parts: impl Iterator<Item = &'a Part> + Clone) -> Option<Sum> {
    // Of one constituent in two plants the lower ceiling binds.
    let lowest = parts.clone().min_by(|a, b| a.most.total_cmp(&b.most))?;
    let mut work = Working::new();
    let hrefs = parts.clone().map(|part| part.href.clone()).collect();
    let each = parts.map(|part| {
        let (low, usual, high) = part.taken;
        let source = Source::reckoned("worked at the recipe");
        let how = match low == high {
            true => How::Published { id: part.href.clone(), value: usual, source },
            false => How::Assumed { id: part.href.clone(), low, usual, high, source, advice: "" },
        };
        work.guess(part.recipe.clone(), part.unit, how)
    });
    let each: Vec<Line> = each.collect();
    let name = format!("{of} on one day, together");
    // Plants are told in grams, what is in them in milligrams.
    let total = match lowest.unit.text == G.text {
        true => work.work(name, AddWeights { each }),
        false => work.work(name, TakenTogether { each }),
    };
    let most = work.published(
        format!("most {of} a day"),
        format!("ceiling-{}", of.replace(' ', "-")),
        lowest.unit,
        lowest.most,
        lowest.source.clone(),
    );
    let share = work.work(format!("{of} against its ceiling"), ShareOfCeiling { taken: total, most });
    Some(Sum { of: of.to_string(), hrefs, worked: Worked::of(of, work), total, most, share })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::unit::MG;

    fn part(recipe: &str, of: &str, taken: (f64, f64, f64), most: f64) -> Part {
        let (recipe, of) = (recipe.to_string(), of.to_string());
        Part { href: recipe.clone(), recipe, of, taken, most, unit: &MG, source: Source::memory("") }
    }

    // By hand: 40 and 70 mg together are 110, over the 100 of the ceiling; each alone is under it.
    #[test]
    fn two_that_pass_alone_do_not_pass_together() {
        let parts = [
            part("tea", "glycyrrhizin", (0.04, 0.04, 0.04), 0.1),
            part("drop", "glycyrrhizin", (0.03, 0.05, 0.07), 0.1),
            part("tea", "coumarin", (0.001, 0.001, 0.001), 0.006),
        ];
        let sums = sums(&parts);
        assert_eq!(sums.iter().map(|sum| sum.of.as_str()).collect::<Vec<_>>(), ["glycyrrhizin", "coumarin"]);
        let [first, second] = &sums[..] else { panic!("two sums") };
        assert!((first.worked.at(first.total) - 0.09).abs() < 1e-12);
        assert!((first.worked.ranges[first.total.index()].high - 0.11).abs() < 1e-12);
        assert!(first.passes() && !second.passes());
        assert!(super::sums(&parts[..1]).iter().all(|sum| !sum.passes()));
    }
}
