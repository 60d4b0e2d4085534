//! The book as declared: the course, the lessons' heads, the plants, and the recipes that others are made of.
//!
//! Read once, before any lesson is worked; plain values with their places.

mod course;
mod kitchen;
mod lesson;
mod plant;
mod prices;
mod products;

pub use crate::cited::{Between, Cited, PageCaution, Substitute, Told};
pub use course::{Course, read_course};
pub use kitchen::{Crossing, FreshPlant, Kitchen, Pot, Stove};
pub use lesson::{LessonHead, read_head};
pub use plant::{
    Aromatic, Ceiling, Danger, LookAlike, MadeInto, Most, Plant, PlantForm, Season, Sold, Unfit, UsualDose,
    Weight, read_plant,
};
pub use prices::{Pack, Prices};
pub use products::{Product, Products};

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
    /// The recipes as declared, where a recipe of the book combines another.
    pub products: Products,
}
