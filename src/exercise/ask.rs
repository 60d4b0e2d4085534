//! The words of a question: names in braces filled in.

use super::ground::Ground;
use super::posed::Stage;
use crate::diagnostic::{Code, Finding};
use crate::span::Spanned;

/// What stands in braces, and what is put there.
pub(super) struct Holes<'a> {
    pub(super) ground: &'a Ground,
    pub(super) drawn: &'a [(Spanned<String>, Spanned<String>)],
    pub(super) make: Option<&'a Spanned<String>>,
    pub(super) stage: &'a Stage<'a>,
}

/// The text with `{name}` filled in: a number that was drawn as it is written, the batch as `{make}`, the recipe's name
/// as `{recipe}`, any other line as it is printed.
///
/// # Errors
/// A name that nothing has, or a brace that is not closed.
pub(super) fn fill(text: &Spanned<String>, holes: &Holes) -> Result<String, Box<Finding>> {
    let mut filled = String::new();
    let mut rest = text.value.as_str();
    while let Some((before, after)) = rest.split_once('{') {
        filled.push_str(before);
        let Some((name, behind)) = after.split_once('}') else {
            let message = "a brace in the question is not closed";
            return Err(Box::new(Finding::error(Code::WrongShape, text.span, message).write("{strained}")));
        };
        let name = name.trim();
        if name.is_empty() {
            let message = "a brace in the question holds no name";
            return Err(Box::new(Finding::error(Code::WrongShape, text.span, message).write("{strained}")));
        }
        filled.push_str(&hole(name, text, holes)?);
        rest = behind;
    }
    filled.push_str(rest);
    Ok(filled)
}

fn hole(name: &str, text: &Spanned<String>, holes: &Holes) -> Result<String, Box<Finding>> {
    if let Some((_, drawn)) = holes.drawn.iter().find(|(known, _)| known.value == name) {
        return Ok(drawn.value.replace(' ', "\u{a0}"));
    }
    match (name, holes.make, holes.stage.recipe) {
        ("make", Some(make), _) => return Ok(make.value.clone()),
        ("recipe", _, Some(recipe)) => return Ok(recipe.base.name.clone()),
        _ => {}
    }
    let line = holes.ground.line(&Spanned::new(name.to_string(), text.span))?;
    Ok(holes.ground.worked.shown(line))
}
