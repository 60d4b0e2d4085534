//! A recipe as chance writes it: its parts, kept as numbers too, so that a law can be reckoned from them.

use std::fmt;

/// What the bench's plants are, as its pages say: id, fresh, water in them where that is said, what a cup
/// weighs (g), and what a gram keeps (mL) when squeezed, as said or as usually assumed.
const PLANTS: &[(&str, bool, Option<f64>, f64, f64)] = &[
    ("hips", false, Some(0.10), 115.0, 2.0),
    ("hips", true, Some(0.5866), 127.0, 0.5866),
    ("berries", false, Some(0.09), 4.0 * 28.349_523_125, 2.0),
    ("root", false, None, 2.5 * 48.0, 1.5),
    ("leaf", false, Some(0.08), 14.0, 3.0),
    ("leaf", true, Some(0.80), 25.0, 1.0),
];

/// Water at 20 °C, g/mL, as the tables of spirits have it.
pub const WATER: f64 = 0.9982;

/// How much of a plant.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Much {
    Grams(f64),
    Cups(f64),
    Parts(f64),
}

/// A plant, as it is put in.
#[derive(Clone, PartialEq, Debug)]
pub struct Herb {
    pub id: &'static str,
    pub fresh: bool,
    pub much: Much,
}

/// What a millilitre of something poured brings: pure alcohol and pure glycerin (mL), acid (g).
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub struct Brings {
    pub alcohol: f64,
    pub acid: f64,
    pub glycerin: f64,
}

/// What extracts.
#[derive(Clone, Debug)]
pub struct Liquid {
    pub kind: &'static str,
    pub says: String,
    pub brings: Brings,
}

/// A step: its name, what stands behind it, and its chief number (mL, g or min).
#[derive(Clone, Debug)]
pub struct Step {
    pub name: &'static str,
    pub says: String,
    pub amount: f64,
    pub herbs: Vec<Herb>,
    pub brings: Brings,
}

/// A recipe. A number that grows with the batch stands between «».
#[derive(Clone, Default)]
pub struct Draft {
    pub name: &'static str,
    pub preparation: &'static str,
    pub herbs: Vec<Herb>,
    /// What herbs given in parts weigh together, g.
    pub weight: Option<f64>,
    pub liquid: Option<Liquid>,
    pub steps: Vec<Step>,
    pub take: Option<String>,
    pub assume: Vec<&'static str>,
    /// Recipes that it combines.
    pub products: Vec<Draft>,
}

/// A number that grows with the batch.
pub fn grows(number: f64) -> String {
    format!("«{number}»")
}

/// The text with every number that grows `by` times as large, to nine places.
pub fn grown(text: &str, by: f64) -> String {
    let mut pieces = text.split(['«', '»']);
    let mut grown = pieces.next().unwrap_or_default().to_string();
    while let (Some(number), Some(rest)) = (pieces.next(), pieces.next()) {
        let number: f64 = number.parse().expect("a number stands between the marks");
        grown.push_str(&format!("{}", (number * by * 1e9).round() / 1e9));
        grown.push_str(rest);
    }
    grown
}

impl Herb {
    fn facts(&self) -> (Option<f64>, f64, f64) {
        let row = PLANTS.iter().find(|row| row.0 == self.id && row.1 == self.fresh);
        row.map(|row| (row.2, row.3, row.4)).expect("a plant of the bench")
    }

    fn text(&self) -> String {
        let form = if self.fresh { "fresh" } else { "dried" };
        match self.much {
            Much::Grams(grams) => format!("{}: {} g {form}", self.id, grows(grams)),
            Much::Cups(cups) => format!("{}: {} cups {form}", self.id, grows(cups)),
            Much::Parts(parts) => format!("{}: {parts} parts {form}", self.id),
        }
    }
}

/// Herbs as a recipe writes them.
pub fn list(herbs: &[Herb]) -> String {
    let each: Vec<String> = herbs.iter().map(Herb::text).collect();
    format!("{{{}}}", each.join(", "))
}

impl Step {
    pub fn new(name: &'static str, says: impl Into<String>) -> Step {
        Step { name, says: says.into(), amount: 0.0, herbs: Vec::new(), brings: Brings::default() }
    }

    pub fn of(self, amount: f64) -> Step {
        Step { amount, ..self }
    }

    /// The step as it stands in a list.
    pub fn line(&self) -> String {
        format!("{}: {}", self.name, self.says)
    }
}

impl Draft {
    /// The recipe as written.
    pub fn text(&self) -> String {
        self.grown_text(1.0)
    }

    /// The recipe written out for a batch `by` times as large.
    pub fn grown_text(&self, by: f64) -> String {
        grown(&self.marked(), by)
    }

    /// The draft of a batch `by` times as large, the recipes that it combines with it.
    pub fn grown(&self, by: f64) -> Draft {
        let grown = |text: &str| grown(text, by);
        let herbs = |herbs: &[Herb]| {
            let much = |much| match much {
                Much::Grams(grams) => Much::Grams(grams * by),
                Much::Cups(cups) => Much::Cups(cups * by),
                Much::Parts(parts) => Much::Parts(parts),
            };
            herbs.iter().map(|herb| Herb { much: much(herb.much), ..herb.clone() }).collect()
        };
        Draft {
            herbs: herbs(&self.herbs),
            weight: self.weight.map(|weight| weight * by),
            liquid: self.liquid.clone().map(|liquid| Liquid { says: grown(&liquid.says), ..liquid }),
            steps: self
                .steps
                .iter()
                .map(|step| Step { says: grown(&step.says), herbs: herbs(&step.herbs), ..step.clone() })
                .collect(),
            products: self.products.iter().map(|product| product.grown(by)).collect(),
            ..self.clone()
        }
    }

    fn marked(&self) -> String {
        let mut lines = vec![format!("name: {}", self.name), format!("preparation: {}", self.preparation)];
        if !self.herbs.is_empty() {
            lines.push(format!("plants: {}", list(&self.herbs)));
        }
        lines.extend(self.weight.map(|weight| format!("weight: {} g", grows(weight))));
        lines.extend(self.liquid.as_ref().map(|liquid| format!("liquid: {}", liquid.says)));
        if !self.steps.is_empty() {
            lines.push("method:".to_string());
            lines.extend(self.steps.iter().map(|step| format!("  - {}", step.line())));
        }
        lines.extend(self.take.as_ref().map(|take| format!("take: {take}")));
        if !self.assume.is_empty() {
            lines.push(format!("assume: {{{}}}", self.assume.join(", ")));
        }
        lines.join("\n")
    }

    /// The steps of a name.
    pub fn all(&self, name: &str) -> impl DoubleEndedIterator<Item = &Step> {
        self.steps.iter().filter(move |step| step.name == name)
    }

    /// Whether a step has that name.
    pub fn has(&self, name: &str) -> bool {
        self.all(name).next().is_some()
    }

    /// Whether nothing is strained, for the plants stay in.
    pub fn unstrained(&self) -> bool {
        self.all("strain").any(|step| step.says == "not")
    }

    /// Every herb, those that a step adds too.
    pub fn every_herb(&self) -> impl Iterator<Item = &Herb> {
        self.herbs.iter().chain(self.steps.iter().flat_map(|step| &step.herbs))
    }

    /// What a herb weighs, g.
    pub fn grams(&self, herb: &Herb) -> f64 {
        let part = |herb: &Herb| if let Much::Parts(parts) = herb.much { parts } else { 0.0 };
        match herb.much {
            Much::Grams(grams) => grams,
            Much::Cups(cups) => cups * herb.facts().1,
            Much::Parts(parts) => {
                self.weight.unwrap_or_default() * parts / self.every_herb().map(part).sum::<f64>()
            }
        }
    }

    /// What herbs weigh together, g.
    pub fn weigh<'a>(&self, herbs: impl IntoIterator<Item = &'a Herb>) -> f64 {
        herbs.into_iter().map(|herb| self.grams(herb)).sum()
    }

    /// How many cups herbs are.
    pub fn cups<'a>(&self, herbs: impl IntoIterator<Item = &'a Herb>) -> f64 {
        herbs.into_iter().map(|herb| self.grams(herb) / herb.facts().1).sum()
    }

    /// Water that herbs bring, mL: fresh ones theirs; and in honey, where what is dried is not quite dry
    /// (with so much water, where no page says it), dried ones too.
    pub fn brought<'a>(&self, herbs: impl IntoIterator<Item = &'a Herb>, dried: Option<f64>) -> f64 {
        let counts = herbs.into_iter().filter(|herb| herb.fresh || dried.is_some());
        counts.map(|herb| self.grams(herb) * herb.facts().0.or(dried).unwrap_or_default() / WATER).sum()
    }

    /// What herbs keep back when squeezed, mL of water.
    pub fn kept<'a>(&self, herbs: impl IntoIterator<Item = &'a Herb>) -> f64 {
        herbs.into_iter().map(|herb| self.grams(herb) * herb.facts().2).sum()
    }
}

impl fmt::Debug for Draft {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for product in &self.products {
            writeln!(f, "{}\n", product.text())?;
        }
        write!(f, "\n{}\n", self.text())
    }
}
