//! Two workings side by side: every line that tools rely on, in one order, with what each comes to and how the
//! one stands to the other.

use crate::measure::show_usual;
use crate::variation::Worked;
use crate::working::Id;

/// How a figure stands to another. What prints alike is the same to a reader.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Stands {
    /// They print alike.
    Same,
    /// It is more.
    More,
    /// It is less.
    Less,
    /// Only one of them is there.
    Other,
}

impl Stands {
    /// How `here` stands to `there`, each as printed and as it is.
    pub fn of(here: (&str, Option<f64>), there: (&str, Option<f64>)) -> Stands {
        match (here.1, there.1) {
            _ if here.0 == there.0 => Stands::Same,
            (Some(here), Some(there)) if here > there => Stands::More,
            (Some(_), Some(_)) => Stands::Less,
            _ => Stands::Other,
        }
    }

    /// The word of it in pages and sheets; nothing where they are the same.
    pub fn mark(self) -> &'static str {
        match self {
            Stands::Same => "",
            Stands::More => "more",
            Stands::Less => "less",
            Stands::Other => "other",
        }
    }
}

/// A line of both.
#[derive(Clone, PartialEq, Debug)]
pub struct Row {
    /// Its id.
    pub id: Id,
    /// What it is called; both names, where they differ.
    pub name: String,
    /// What it comes to on the left, as printed.
    pub left: Option<String>,
    /// And on the right.
    pub right: Option<String>,
    /// How many times as much the right is, where both have it.
    pub times: Option<f64>,
    /// How the right stands to the left.
    pub stands: Stands,
}

/// The lines of both, in the order of [`Id::ALL`]; what neither has is left out.
pub fn rows(left: &Worked, right: &Worked) -> Vec<Row> {
    // How far alcohol keeps the free water says nothing where there is none.
    let spirited = [left, right].iter().any(|of| of.value(Id::Abv).is_some());
    let told = |id: &&Id| spirited || **id != Id::Covered;
    Id::ALL.iter().filter(told).filter_map(|id| row(*id, left, right)).collect()
}

fn row(id: Id, left: &Worked, right: &Worked) -> Option<Row> {
    let both = [left, right].map(|of| {
        let line = of.laid.working.line(id)?;
        let entry = of.laid.working.entry(line);
        let shown = show_usual(of.at(line), entry.unit);
        Some((entry.name.as_str(), shown))
    });
    let mut names: Vec<&str> = both.iter().flatten().map(|(name, _)| *name).collect();
    names.dedup();
    let name = names.join(" / ");
    let [left_shown, right_shown] = both.map(|shown| shown.map(|(_, shown)| shown));
    let values = (left.value(id), right.value(id));
    let text = |shown: &Option<String>| shown.clone().unwrap_or_default();
    (!name.is_empty()).then(|| Row {
        id,
        times: values.0.zip(values.1).filter(|(left, _)| *left != 0.0).map(|(left, right)| right / left),
        stands: Stands::of((&text(&right_shown), values.1), (&text(&left_shown), values.0)),
        left: left_shown,
        right: right_shown,
        name,
    })
}
