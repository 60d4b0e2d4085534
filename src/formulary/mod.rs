//! The book as declared: the course, the lessons' heads, the plants, and the recipes that others are made of.
//!
//! Read once, before any lesson is worked; plain values with their places.

mod change;
mod classwork;
mod course;
mod glossary;
mod kitchen;
mod lesson;
mod picture;
mod plant;
mod prices;
mod products;

pub use crate::cited::{Between, Cited, PageCaution, Substitute, Told};
pub use change::{Change, Correction};
pub use classwork::{Classwork, MOST_VERSIONS};
pub use course::{Course, read_course};
pub use glossary::{Term, read_glossary, terms};
pub use kitchen::{Crossing, FreshPlant, Kitchen, Pot, Stove};
pub use lesson::{LessonHead, read_head};
pub use picture::{Size, read_picture};
pub use plant::{
    Aromatic, Ceiling, Danger, LookAlike, MadeInto, Most, Plant, PlantForm, Season, Sold, Unfit, UsualDose,
    Weight, read_plant,
};
pub use prices::{Pack, Prices};
pub use products::{Product, Products};

use crate::manuscript::Terms;
use crate::pantry::Pantry;
use std::collections::{BTreeMap, BTreeSet};

/// Everything a lesson may refer to.
#[derive(Clone, Debug, Default)]
pub struct Formulary {
    /// The course's own facts.
    pub course: Course,
    /// Plants by their name in recipes.
    pub plants: BTreeMap<String, Plant>,
    /// What is not a plant.
    pub pantry: Pantry,
    /// Plants whose pages have a fault, told there: nothing is said again where they are used.
    pub faulty: BTreeSet<String>,
    /// The lessons, in order.
    pub lessons: Vec<LessonHead>,
    /// Words of the craft, sorted.
    pub glossary: Vec<Term>,
    /// The same as they are found in running text.
    pub terms: Terms,
    /// Pictures by their paths below `pictures/`; none of one with a fault, which is told there.
    pub pictures: BTreeMap<String, Option<Size>>,
    /// The recipes as declared, where a recipe of the book combines another.
    pub products: Products,
}
