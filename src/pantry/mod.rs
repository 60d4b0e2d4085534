//! The pantry: what is built in, and what the formulary's own pages add or put in its place.

mod read;

pub use read::read_item;

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::cited::{Cited, PageCaution, Substitute, Told};
use crate::materia::{Item, Kind, built_in};
use crate::measure::Measure;
use crate::span::Spanned;

/// An item with its page.
#[derive(Clone, Debug)]
pub struct Shelf {
    /// What the sums use.
    pub item: Arc<Item>,
    /// Whether the program knows an item of that name of itself.
    pub built_in: bool,
    /// What only its page has; none where it has no page.
    pub page: Option<PantryPage>,
}

/// What stands on an item's page besides the figures that sums use.
#[derive(Clone, Debug, Default)]
pub struct PantryPage {
    /// Path of its file.
    pub path: String,
    /// Other names.
    pub also: Vec<String>,
    /// Names it had in addresses before.
    pub formerly: Vec<Spanned<String>>,
    /// A cup, a tablespoon, a teaspoon weigh so much, g.
    pub weights: Vec<(Measure, Cited)>,
    /// Single sugars by weight: name and share.
    pub single_sugars: Vec<(&'static str, Cited)>,
    /// Acid that is not acetic, weight in volume; it keeps nothing by these sums.
    pub other_acid: Option<Cited>,
    /// How it keeps.
    pub keeps: Option<Told>,
    /// Cautions.
    pub cautions: Vec<PageCaution>,
    /// What may stand in for it.
    pub substitutes: Vec<Substitute>,
}

/// Everything that is not a plant, by name.
#[derive(Clone, Debug)]
pub struct Pantry {
    shelves: BTreeMap<String, Shelf>,
}

impl Default for Pantry {
    fn default() -> Pantry {
        let shelf =
            |item: Item| (item.words.clone(), Shelf { item: Arc::new(item), built_in: true, page: None });
        Pantry { shelves: built_in().into_iter().map(shelf).collect() }
    }
}

impl Pantry {
    /// The item of that name.
    pub fn item(&self, name: &str) -> Option<&Arc<Item>> {
        self.shelves.get(name).map(|shelf| &shelf.item)
    }

    /// The item of that name, where it is of a kind that will do.
    pub fn fit(&self, name: &str, will_do: impl Fn(Kind) -> bool) -> Option<&Arc<Item>> {
        self.item(name).filter(|item| will_do(item.kind))
    }

    /// The names of every item of a kind that will do.
    pub fn names(&self, will_do: impl Fn(Kind) -> bool) -> Vec<&str> {
        let fitting = self.shelves.values().filter(|shelf| will_do(shelf.item.kind));
        fitting.map(|shelf| shelf.item.words.as_str()).collect()
    }

    /// Every item with its page, by name.
    pub fn shelves(&self) -> impl Iterator<Item = &Shelf> {
        self.shelves.values()
    }

    /// The item whose page has that address.
    pub fn shelf(&self, id: &str) -> Option<&Shelf> {
        self.shelves.values().find(|shelf| shelf.item.id == id)
    }

    /// Puts an item with its page on the shelf, in place of one of the same name. Gives back the path of
    /// another page of that name, where there is one.
    pub fn put(&mut self, item: Item, page: PantryPage) -> Option<String> {
        let built_in = self.shelves.get(&item.words).is_some_and(|shelf| shelf.built_in);
        let before = self.shelves.get(&item.words).and_then(|shelf| shelf.page.as_ref());
        let twin = before.map(|page| page.path.clone());
        self.shelves.insert(item.words.clone(), Shelf { item: Arc::new(item), built_in, page: Some(page) });
        twin
    }
}
