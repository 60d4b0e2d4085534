//! The book's recipes as declared, by their names: what a recipe may combine.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::recipe::Recipe;

/// A recipe that another may take its product from.
#[derive(Clone, Debug)]
pub struct Product {
    /// As declared.
    pub recipe: Arc<Recipe>,
    /// Its address, from the site's root.
    pub href: String,
    /// Where it is made of itself, the recipes in between: each takes the next, the last takes the first.
    pub circle: Vec<String>,
}

/// Products by their names.
#[derive(Clone, Debug, Default)]
pub struct Products {
    named: BTreeMap<String, Vec<Product>>,
    /// Whether a recipe of the book could not be read: a name that is not here may be its.
    pub faulty: bool,
}

impl Products {
    /// The products of these recipes, in the book's order, with what is made of itself found.
    pub fn new(all: Vec<(Recipe, String)>, faulty: bool) -> Products {
        let mut products = Products { named: BTreeMap::new(), faulty };
        for (recipe, href) in all {
            let name = recipe.name.value.clone();
            let product = Product { recipe: Arc::new(recipe), href, circle: Vec::new() };
            products.named.entry(name).or_default().push(product);
        }
        let circles: Vec<(String, Vec<String>)> =
            products.named.keys().filter_map(|name| Some((name.clone(), products.circle(name)?))).collect();
        for (name, circle) in circles {
            for product in products.named.get_mut(&name).into_iter().flatten() {
                product.circle = circle.clone();
            }
        }
        products
    }

    /// Those of that name: one, unless an author gave the name twice.
    pub fn called(&self, name: &str) -> &[Product] {
        self.named.get(name).map_or(&[], Vec::as_slice)
    }

    /// Every name.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.named.keys().map(String::as_str)
    }

    /// The shortest way from a recipe through what it takes back to itself.
    fn circle(&self, name: &str) -> Option<Vec<String>> {
        let mut ways = std::collections::VecDeque::from([vec![name.to_string()]]);
        let mut seen = Vec::new();
        while let Some(way) = ways.pop_front() {
            for takes in way.last().into_iter().flat_map(|last| self.takes(last)) {
                if takes == name {
                    return Some(way);
                }
                if !seen.contains(&takes) {
                    seen.push(takes.clone());
                    ways.push_back(way.iter().cloned().chain([takes]).collect());
                }
            }
        }
        None
    }

    /// The names of what a recipe takes.
    fn takes(&self, name: &str) -> Vec<String> {
        let recipes = self.called(name).iter().map(|product| &product.recipe);
        recipes.flat_map(|recipe| recipe.combines().map(|of| of.value.clone())).collect()
    }
}
