//! What holds for every recipe: laws held over random recipes, each with the reason it must hold.
//!
//! `draft` is a recipe as chance writes it, `kinds` writes one of every preparation, `wild` spoils them.
//! The laws stand in the other modules. What a law says is reckoned from the draft, by hand or from a
//! balance, and never by the formula that it holds to account.

mod aimed;
mod balance;
mod changed;
mod draft;
mod growth;
mod kinds;
mod mixed;
mod plant;
mod poured;
mod printed;
mod range;
mod rounding;
mod shaped;
mod stands;
mod wild;

use std::sync::LazyLock;

use proptest::prelude::*;
use stillroom::diagnostic::{Finding, stops};
use stillroom::formula::Line;
use stillroom::formulary::{Formulary, Products};
use stillroom::recipe;
use stillroom::span::{Span, Spanned};
use stillroom::variation::{Worked, WorkedRecipe};
use stillroom::working::{How, Id, Working};

use crate::bench;
use draft::Draft;

/// As many cases as proptest's environment asks for; nothing is written beside the tests.
fn config() -> ProptestConfig {
    ProptestConfig { failure_persistence: None, max_global_rejects: 100_000, ..ProptestConfig::default() }
}

/// A draft worked as the program works it, with what is found in it and in the recipes it combines.
fn work(draft: &Draft, text: &str) -> (Option<WorkedRecipe>, Vec<Finding>) {
    static BOOK: LazyLock<Formulary> = LazyLock::new(bench::book);
    let (mut findings, mut products) = (Vec::new(), Vec::new());
    for product in &draft.products {
        let text = product.text();
        let whole = Spanned::new(text.as_str(), Span::new(0, text.len()));
        products
            .extend(recipe::read(&whole, &BOOK.pantry, &mut findings).map(|recipe| (recipe, String::new())));
        findings.extend(bench::work_in(&BOOK, &text).1);
    }
    let book = Formulary { products: Products::new(products, false), ..BOOK.clone() };
    let (worked, found) = bench::work_in(&book, text);
    findings.extend(found);
    (worked, findings)
}

/// The draft worked; a case that has a fault says nothing about a law of sums.
fn worked(draft: &Draft) -> Result<Worked, TestCaseError> {
    let (worked, findings) = work(draft, &draft.text());
    match worked {
        Some(worked) if !stops(&findings) => Ok(worked.base),
        _ => Err(TestCaseError::reject("it cannot be worked")),
    }
}

/// Each assumption at its low or its high end, by the bits of a number.
fn corner(working: &Working, bits: u64) -> Vec<(Line, f64)> {
    let assumed = working.lines().filter_map(|line| match working.entry(line).how {
        How::Assumed { low, high, .. } => Some((line, low, high)),
        _ => None,
    });
    let end = |(n, (line, low, high)): (usize, (Line, f64, f64))| match (bits >> (n % 64)) & 1 {
        0 => (line, low),
        _ => (line, high),
    };
    assumed.enumerate().map(end).collect()
}

/// The values of a working's lines, however they came about.
struct Seen<'a> {
    working: &'a Working,
    /// How many times the declared amounts it is.
    by: f64,
    values: Vec<f64>,
}

impl Seen<'_> {
    /// As declared, in the corner of `bits`, and that of a batch `by` times as large: a balance holds in
    /// each of them. Where something cannot be, no balance is asked for.
    fn thrice(recipe: &Worked, bits: u64, by: f64) -> Vec<Seen<'_>> {
        let working = &recipe.laid.working;
        let corner = corner(working, bits);
        let larger = [corner.clone(), working.batch(by)].concat();
        let seen = |by: f64, set: &[(Line, f64)]| Seen { working, by, values: working.evaluate(set) };
        let all = [seen(1.0, &[]), seen(1.0, &corner), seen(by, &larger)];
        all.into_iter().filter(|seen| working.impossible(&seen.values).is_none()).collect()
    }

    /// The value of an id; none where nothing claims it.
    fn get(&self, id: Id) -> Option<f64> {
        self.working.line(id).map(|line| self.values[line.index()])
    }

    /// The value of a published figure or an assumption, by its anchor.
    fn figure(&self, anchor: &str) -> Option<f64> {
        let is = |line: &Line| match &self.working.entry(*line).how {
            How::Assumed { id, .. } | How::Published { id, .. } => id == anchor,
            _ => false,
        };
        self.working.lines().find(is).map(|line| self.values[line.index()])
    }

    /// The values of the lines whose names begin so.
    fn named(&self, name: &str) -> impl Iterator<Item = f64> {
        let entries = self.working.entries().iter().zip(&self.values);
        entries.filter(move |(entry, _)| entry.name.starts_with(name)).map(|(_, value)| *value)
    }

    /// The value of an id, nothing where nothing claims it.
    fn of(&self, id: Id) -> f64 {
        self.get(id).unwrap_or(0.0)
    }
}

/// Whether two figures are the same but for what floating point parts.
fn same(what: &str, ours: f64, by_hand: f64) -> Result<(), TestCaseError> {
    near(what, ours, by_hand, 1e-9)
}

/// Whether two figures are the same to within a share of the larger.
fn near(what: &str, ours: f64, by_hand: f64, share: f64) -> Result<(), TestCaseError> {
    let most = ours.abs().max(by_hand.abs()).max(1e-6);
    prop_assert!((ours - by_hand).abs() <= share * most, "{what}: {ours}, by hand {by_hand}");
    Ok(())
}
