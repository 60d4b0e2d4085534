//! `stillroom work`: a recipe's working, as it is or asked something: other numbers, measurements, a wanted batch, a
//! target, another recipe beside it.

mod json;
mod table;

use std::io::IsTerminal;
use std::path::Path;
use std::process::ExitCode;

use super::say;
use crate::aim::{self, aimed, declared, measurable};
use crate::diagnostic::{self, Finding, Look, nearest, stops};
use crate::formula::Line;
use crate::formulary::Formulary;
use crate::measure;
use crate::press::{open_book, read_lesson};
use crate::recipe::Aim;
use crate::site::Trouble;
use crate::span::{Span, Spanned};
use crate::variation::{Worked, WorkedRecipe};
use crate::wanted::{self, Unmet};

/// What is asked.
pub(super) struct Question<'a> {
    pub(super) recipe: &'a str,
    pub(super) other: Option<&'a str>,
    pub(super) wanted: Option<&'a str>,
    pub(super) set: &'a [String],
    pub(super) measured: &'a [String],
    pub(super) aim: Option<&'a str>,
    pub(super) json: bool,
}

/// Why nothing is printed: findings were, or this.
enum Stop {
    Findings,
    Told(String),
    Trouble(Trouble),
}

impl From<Unmet> for Stop {
    fn from(unmet: Unmet) -> Stop {
        Stop::Told(unmet.why)
    }
}

impl From<Trouble> for Stop {
    fn from(trouble: Trouble) -> Stop {
        Stop::Trouble(trouble)
    }
}

pub(super) fn run(dir: &Path, asked: &Question, look: Look) -> Result<ExitCode, Trouble> {
    let mut findings = Vec::new();
    match answer(dir, asked, look, &mut findings) {
        Ok(text) => {
            say(&mut std::io::stdout(), text.trim_end());
            Ok(ExitCode::from(u8::from(stops(&findings))))
        }
        Err(Stop::Findings) => Ok(ExitCode::from(1)),
        Err(Stop::Told(why)) => {
            say(&mut std::io::stderr(), &format!("stillroom: {why}"));
            Ok(ExitCode::from(2))
        }
        Err(Stop::Trouble(trouble)) => Err(trouble),
    }
}

/// What is printed.
fn answer(dir: &Path, asked: &Question, look: Look, findings: &mut Vec<Finding>) -> Result<String, Stop> {
    let (_, book) = open_book(dir, findings)?;
    let recipe = ask(find(dir, &book, asked.recipe, findings, look)?, asked)?;
    let bold = std::io::stdout().is_terminal() && std::env::var_os("NO_COLOR").is_none();
    Ok(match asked.other {
        Some(other) => {
            let other = find(dir, &book, other, findings, look)?;
            table::side_by_side(&recipe.base, &other.base, bold)
        }
        None if asked.json => json::as_json(&recipe, &book),
        None => table::as_table(&recipe, &book, bold),
    })
}

/// The recipe of that name, `LESSON#RECIPE.VARIATION`; its lesson's findings are printed and gathered.
fn find(
    dir: &Path,
    book: &Formulary,
    name: &str,
    findings: &mut Vec<Finding>,
    look: Look,
) -> Result<WorkedRecipe, Stop> {
    let (slug, number) = name.split_once('#').unwrap_or((name, "1"));
    let (number, variation) = number.split_once('.').map_or((number, None), |(n, v)| (n, Some(v)));
    let Some(at) = book.lessons.iter().position(|head| head.slug == slug || head.path == slug) else {
        let near = nearest(slug, book.lessons.iter().map(|head| head.slug.as_str()));
        let near = near.map_or(String::new(), |near| format!("; did you mean `{near}`?"));
        return Err(Stop::Told(format!("there is no lesson `{slug}`{near}")));
    };
    let read = read_lesson(dir, book, at)?;
    let (mut recipes, found) = read.map_or((Vec::new(), Vec::new()), |read| (read.recipes, read.findings));
    let own =
        |finding: &&Finding| finding.place.as_ref().is_none_or(|place| place.path == book.lessons[at].path);
    for finding in findings.iter().filter(own).chain(&found) {
        say(&mut std::io::stderr(), &format!("{}\n", diagnostic::print(finding, look)));
    }
    findings.extend(found);
    let n = number.parse::<usize>().ok().and_then(|n| n.checked_sub(1)).filter(|n| *n < recipes.len());
    let Some(n) = n else {
        let told = format!("`{slug}` has {} recipe(s); there is no #{number}", recipes.len());
        return Err(Stop::Told(told));
    };
    let Some(mut recipe) = recipes.swap_remove(n) else { return Err(Stop::Findings) };
    if let Some(variation) = variation {
        let v = variation.parse::<usize>().ok().and_then(|v| v.checked_sub(1));
        let own = v.and_then(|v| recipe.each().skip(1).nth(v)).map(|(base, own)| (base.clone(), own.clone()));
        let Some((base, own)) = own else {
            let (name, count) = (&recipe.base.name, recipe.variations.len());
            let told = format!("`{name}` has {count} variation(s); there is no .{variation}");
            return Err(Stop::Told(told));
        };
        recipe = WorkedRecipe { base, variations: Vec::new(), recipe: own };
    }
    Ok(recipe)
}

/// The recipe as it is asked for. Another working than the recipe's leaves its variations out: they are of another size.
fn ask(recipe: WorkedRecipe, asked: &Question) -> Result<WorkedRecipe, Stop> {
    let plain =
        asked.set.is_empty() && asked.measured.is_empty() && asked.aim.is_none() && asked.wanted.is_none();
    if plain {
        return Ok(recipe);
    }
    let mut base = recipe.base.clone();
    if let Some(make) = asked.wanted {
        let wanted = measure::wanted(make).map_err(|misread| {
            let write = misread.write.first().map_or(String::new(), |write| format!("; write `{write}`"));
            Stop::Told(format!("{}{write}", misread.message))
        })?;
        base = wanted::worked(&base, &wanted)
            .map_err(|unmet| Stop::Told(format!("no amounts of this recipe make {make}: {}", unmet.why)))?;
    }
    let set = pairs(&base, asked.set, declared)?;
    let measured = pairs(&base, asked.measured, measurable)?;
    measured.iter().filter_map(|at| odd(&base, *at)).for_each(|told| say(&mut std::io::stderr(), &told));
    if !set.is_empty() || !measured.is_empty() {
        base = base.with(&[set, measured.clone()].concat());
    }
    if let Some(text) = asked.aim {
        base = aimed(&base, &read_aim(text)?, &measured)?.worked;
    }
    if let Some(line) = base.laid.working.impossible(&base.values) {
        let name = &base.laid.working.entry(line).name;
        return Err(Stop::Told(format!("that cannot be: `{name}` would come to {}", base.shown(line))));
    }
    Ok(WorkedRecipe { base, variations: Vec::new(), recipe: recipe.recipe })
}

/// A measurement that lies outside what the recipe comes to, however its guesses fall: a slip, as like as not.
fn odd(recipe: &Worked, (line, value): (Line, f64)) -> Option<String> {
    let (low, high) = recipe.between(line)?;
    let range = recipe.ranges[line.index()];
    let name = &recipe.laid.working.entry(line).name;
    (value < range.low || value > range.high).then(|| {
        format!(
            "stillroom: `{name}` usually comes to between {low} and {high}; look again at what you measured"
        )
    })
}

/// `NAME=VALUE`, each as a line and its value.
fn pairs(
    base: &Worked,
    texts: &[String],
    find: fn(&Worked, &str) -> Result<Line, Unmet>,
) -> Result<Vec<(Line, f64)>, Stop> {
    let read = |text: &String| {
        let pair = text.split_once('=').filter(|(name, _)| !name.trim().is_empty());
        let (name, value) = pair.ok_or_else(|| Stop::Told(format!("`{text}` is not NAME=VALUE")))?;
        let line = find(base, name.trim())?;
        Ok((line, aim::value(value, base.laid.working.entry(line).unit)?))
    };
    texts.iter().map(read).collect()
}

/// `solids=65 % by honey`.
fn read_aim(text: &str) -> Result<Aim, Stop> {
    let parts = text.split_once('=').and_then(|(line, rest)| Some((line, rest.rsplit_once(" by ")?)));
    let Some((line, (to, by))) = parts else {
        return Err(Stop::Told(format!(
            "`{text}` is not LINE=VALUE by NUMBER, such as \"solids=65 % by honey\""
        )));
    };
    let here = |text: &str| Spanned::new(text.trim().to_string(), Span::default());
    Ok(Aim { line: here(line), to: here(to), by: here(by) })
}
