//! The recipes as declared, read ahead where one of the book takes another's product.

use std::path::Path;

use rayon::prelude::*;

use crate::diagnostic::stops;
use crate::formulary::{Formulary, LessonHead, Products};
use crate::manuscript::{self, Terms, recipe_anchor};
use crate::pantry::Pantry;
use crate::recipe::{self, Recipe};
use crate::site::{Trouble, read_source};
use crate::span::Spanned;

/// A lesson that may combine a product says so in these letters.
pub(super) const SIGN: &str = "combine";

/// Reads every lesson's recipes. Their faults are told when the lesson itself is worked.
///
/// # Errors
/// The disk refuses.
pub(super) fn read(dir: &Path, book: &Formulary) -> Result<Products, Trouble> {
    let all: Vec<Vec<Option<(Recipe, String)>>> =
        book.lessons.par_iter().map(|head| recipes(dir, &book.pantry, head)).collect::<Result<_, _>>()?;
    let all: Vec<Option<(Recipe, String)>> = all.into_iter().flatten().collect();
    let faulty = all.iter().any(Option::is_none);
    Ok(Products::new(all.into_iter().flatten().collect(), faulty))
}

/// A lesson's recipes with their addresses; none for each that has a fault.
fn recipes(dir: &Path, pantry: &Pantry, head: &LessonHead) -> Result<Vec<Option<(Recipe, String)>>, Trouble> {
    let Some(source) = read_source(dir, &head.path, &mut Vec::new())? else {
        return Ok(vec![None]);
    };
    let Ok(parts) = manuscript::parts(&source) else {
        return Ok(vec![None]);
    };
    let blocks =
        manuscript::read(&source, parts.body.span, &["recipe", "exercise"], &Terms::default()).blocks;
    let read = blocks.iter().enumerate().map(|(n, block)| {
        let mut found = Vec::new();
        let text = Spanned::new(block.text.value.as_str(), block.text.span);
        let mut recipe = recipe::read(&text, pantry, &mut found)?;
        // A product is the recipe itself; its variations are worked where it stands.
        recipe.variations.clear();
        let href = format!("lessons/{}.html#{}", head.slug, recipe_anchor(n, blocks.len()));
        (!stops(&found)).then_some((recipe, href))
    });
    Ok(read.collect())
}
