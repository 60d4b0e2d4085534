//! The book as declared outside its lessons: the course and the plants.
//!
//! Read once, before any lesson; plain values with their places.

mod course;
mod plant;

pub use course::{Course, read_course};
pub use plant::{Aromatic, Cited, PlantCaution, Plant, PlantForm, Weight, read_plant};

use std::collections::BTreeMap;

/// Everything a lesson may refer to.
#[derive(Clone, Debug, Default)]
pub struct Formulary {
    /// The course's own facts.
    pub course: Course,
    /// Plants by their name in recipes.
    pub plants: BTreeMap<String, Plant>,
}
