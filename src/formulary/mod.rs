//! The book as declared outside its recipes: the course, the lessons' heads, the plants.
//!
//! Read once, before any lesson; plain values with their places.

mod course;
mod kitchen;
mod lesson;
mod plant;

pub use course::{Course, read_course};
pub(crate) use kitchen::share;
pub use kitchen::{Crossing, FreshPlant, Kitchen, Pot, Stove};
pub use lesson::{LessonHead, read_head};
pub use plant::{Aromatic, Cited, Plant, PlantCaution, PlantForm, Weight, read_plant};

use std::collections::{BTreeMap, BTreeSet};

/// Everything a lesson may refer to.
#[derive(Clone, Debug, Default)]
pub struct Formulary {
    /// The course's own facts.
    pub course: Course,
    /// Plants by their name in recipes.
    pub plants: BTreeMap<String, Plant>,
    /// Plants whose pages have a fault, told there: nothing is said again where they are used.
    pub faulty: BTreeSet<String>,
    /// The lessons, in order.
    pub lessons: Vec<LessonHead>,
}
