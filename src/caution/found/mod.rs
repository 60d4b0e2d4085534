//! What sets each rule off: by what is in the batch and done to it, and by the plants.

mod batch;
mod plants;

pub(super) use batch::*;
pub(super) use plants::*;

use super::rule::{Found, Seen};
use crate::formulary::Plant;
use crate::method::Hazard;
use crate::recipe::Use;
use crate::span::Span;

fn once(holds: bool) -> Vec<Found> {
    if holds { vec![Found::default()] } else { Vec::new() }
}

fn at(of: impl Into<String>, at: Span) -> Found {
    Found { of: of.into(), at: Some(at), ..Found::default() }
}

fn of(of: impl Into<String>) -> Found {
    Found { of: of.into(), ..Found::default() }
}

/// A case that one plant makes; `of` is the plant's name, or more about it.
fn by(plant: &Plant, of: impl Into<String>) -> Found {
    Found { key: plant.id.clone(), of: of.into(), ..Found::default() }
}

fn plants<'a>(seen: &Seen<'a>) -> impl Iterator<Item = &'a Plant> {
    let book = seen.book;
    seen.worked.laid.plants.iter().filter_map(|id| book.plants.get(id))
}

fn words(seen: &Seen, plant: &str) -> String {
    seen.book.plants.get(plant).map_or_else(|| plant.to_string(), |plant| plant.words.clone())
}

fn hazards<T>(seen: &Seen, case: impl Fn(&Hazard) -> Option<T>) -> Vec<T> {
    seen.worked.laid.hazards.iter().filter_map(case).collect()
}

fn used(seen: &Seen) -> Option<Use> {
    seen.worked.laid.preparation.map(|kind| kind.used)
}
