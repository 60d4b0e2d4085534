//! A small book in memory, and recipes worked as the program works them: text, recipe, lines, values.

use std::ops::Deref;

use stillroom::diagnostic::Finding;
use stillroom::formula::Line;
use stillroom::formulary::{Formulary, Products, read_plant};
use stillroom::pantry::Pantry;
use stillroom::recipe;
use stillroom::span::{Source, Span, Spanned};
use stillroom::variation::{self, Worked, WorkedRecipe};
use stillroom::working::{How, Id};

/// A US fluid ounce, mL: the gallon of 231 cubic inches in 128 parts.
pub const FL_OZ: f64 = 29.573_529_562_5;

/// Plants that differ in all a working asks: what a gram keeps, what a cup weighs, fresh or dried.
pub const PLANTS: &[(&str, &str)] = &[
    (
        "hips",
        "dried: {holds: 2 mL, cup: 115 g, moisture: 10 %, source: common practice}\nfresh: {cup: 127 g, moisture: 58.66 %, source: common practice}",
    ),
    ("berries", "dried: {cup: 4 oz, moisture: 9 %, source: common practice}"),
    ("root", "dried: {holds: 1.5 mL, teaspoon: 2.5 g, source: common practice}"),
    (
        "leaf",
        "dried: {holds: 3 mL, cup: 14 g, moisture: 8 %, source: common practice}\nfresh: {holds: 1 mL, cup: 25 g, moisture: 80 %, source: common practice}",
    ),
];

/// The book of those plants.
pub fn book() -> Formulary {
    let mut book = Formulary::default();
    for (id, forms) in PLANTS {
        plant(&mut book, id, forms);
    }
    book
}

/// A plant of no kind, with these forms.
pub fn plant(book: &mut Formulary, id: &str, forms: &str) {
    let facts = format!(
        "name: {id}\nlatin: Planta ficta\nauthor: L.\nfamily: Fictae\npart: all\naromatic: not\n{forms}"
    );
    let mut findings = Vec::new();
    let source = Source::new("plant.md", format!("---\n{facts}\n---\n\nWords.\n"));
    let plant = read_plant(&source, id, &mut findings);
    assert!(findings.is_empty(), "{id}: {findings:?}");
    book.plants.insert(id.to_string(), plant.expect("a plant"));
}

/// A recipe text worked, with whatever is found.
pub fn work(text: &str) -> (Option<WorkedRecipe>, Vec<Finding>) {
    work_in(&book(), text)
}

/// A recipe text worked in a book, with whatever is found.
pub fn work_in(book: &Formulary, text: &str) -> (Option<WorkedRecipe>, Vec<Finding>) {
    let mut findings = Vec::new();
    let whole = Spanned::new(text, Span::new(0, text.len()));
    let worked = recipe::read(&whole, &book.pantry, &mut findings)
        .and_then(|recipe| variation::work(recipe, book, &mut findings));
    (worked, findings)
}

/// The last of a book's recipes worked: it may combine the others.
#[track_caller]
pub fn last_of(recipes: &[&str]) -> Tried {
    let mut findings = Vec::new();
    let mut all = Vec::new();
    for text in recipes {
        let whole = Spanned::new(*text, Span::new(0, text.len()));
        all.push((recipe::read(&whole, &Pantry::default(), &mut findings).expect("a recipe"), String::new()));
    }
    let (last, _) = all.last().cloned().expect("one recipe at least");
    let book = Formulary { products: Products::new(all, false), ..book() };
    let worked = variation::work(last, &book, &mut findings);
    assert!(!stillroom::diagnostic::stops(&findings), "{findings:#?}");
    worked.expect("worked").base.into()
}

/// What is found in a recipe of these lines.
pub fn found(lines: &str) -> Vec<Finding> {
    work(&text(lines)).1
}

/// A whole recipe of these lines, its preparation chosen by its liquid where they do not say.
pub fn text(lines: &str) -> String {
    if lines.contains("preparation:") {
        return format!("name: Tried\n{lines}");
    }
    let by_liquid = [
        ("{vinegar:", "infused vinegar"),
        ("{spirit:", "tincture"),
        ("{glycerin:", "glycerite"),
        ("{honey:", "infused honey"),
        ("{oil:", "infused oil"),
    ];
    let liquid = lines.split("liquid: ").nth(1).unwrap_or_default();
    let kind = by_liquid
        .iter()
        .find(|(liquid_is, _)| liquid.starts_with(liquid_is))
        .map_or("decoction", |(_, kind)| kind);
    format!("name: Tried\npreparation: {kind}\n{lines}")
}

/// A recipe worked, with some of its lines measured.
#[derive(Debug)]
pub struct Tried {
    worked: Worked,
    set: Vec<(Line, f64)>,
    values: Vec<f64>,
}

impl From<Worked> for Tried {
    fn from(worked: Worked) -> Tried {
        Tried { values: worked.values.clone(), set: Vec::new(), worked }
    }
}

impl Deref for Tried {
    type Target = Worked;
    fn deref(&self) -> &Worked {
        &self.worked
    }
}

/// The recipe of these lines: `plants: {...}`, `liquid: {...}`, `method: [...]` and so on.
#[track_caller]
pub fn tried(lines: &str) -> Tried {
    let (worked, findings) = work(&text(lines));
    assert!(!stillroom::diagnostic::stops(&findings), "{lines}: {findings:#?}");
    worked.expect("worked").base.into()
}

impl Tried {
    /// The line of an id.
    #[track_caller]
    pub fn line(&self, id: Id) -> Line {
        self.laid.working.line(id).unwrap_or_else(|| panic!("no line is {}", id.text()))
    }

    /// The same with one more line measured.
    #[track_caller]
    pub fn measured(mut self, id: Id, value: f64) -> Tried {
        self.set.push((self.line(id), value));
        self.values = self.laid.working.evaluate(&self.set);
        self
    }

    /// The value of an id's line.
    #[track_caller]
    pub fn of(&self, id: Id) -> f64 {
        self.values[self.line(id).index()]
    }

    /// The value of the line of that name.
    #[track_caller]
    pub fn named(&self, name: &str) -> f64 {
        let at = self.laid.working.entries().iter().position(|entry| entry.name == name);
        self.values[at.unwrap_or_else(|| panic!("no line is called {name}"))]
    }

    /// The one amount put in (a weight, a volume) that is declared under that name.
    #[track_caller]
    pub fn declared(&self, name: &str) -> Line {
        let is = |line: &Line| {
            let entry = self.laid.working.entry(*line);
            entry.name == name && matches!(entry.how, How::Given { .. })
        };
        self.laid.working.lines().find(is).unwrap_or_else(|| panic!("nothing declares {name}"))
    }
}
