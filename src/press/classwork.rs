//! A lesson's exercises: read, put as the questions of each version, on their own page, and their key on another.
//!
//! A key that is held back is not made at all: nothing of it is in the site until its day.

use super::put::{Desk, lesson_link, sheet_path};
use crate::diagnostic::{Code, Finding};
use crate::exercise::{Exercise, Posed, Right, Stage, pose, read, usual};
use crate::formulary::{Classwork, Formulary, LessonHead};
use crate::manuscript::{Block, Manuscript};
use crate::page::exercises::{key_row, letters, question};
use crate::page::view::{Copybook, ExercisesPage, KeyPage, Link, Question, Version};
use crate::site::Trouble;
use crate::span::Spanned;
use crate::variation::WorkedRecipe;

/// Where the questions and the answers of a lesson stand.
pub(super) const EXERCISES: &str = "exercises";
/// The same of the answers.
pub(super) const ANSWERS: &str = "answers";
/// Numbers are drawn by this where a course says nothing.
const SEED: u64 = 1;

/// An exercise as each version has it.
#[derive(Clone, Debug)]
pub struct Exercised {
    /// The recipe it belongs to, by its place in the lesson.
    pub of: usize,
    /// One a version.
    pub versions: Vec<Posed>,
}

/// How a lesson's exercises are set.
fn set(book: &Formulary, head: &LessonHead) -> Classwork {
    head.classwork.or(book.course.classwork)
}

/// Reads and poses a lesson's exercises, those of the author's before the usual ones of each recipe.
pub(super) fn posed(
    manuscript: &Manuscript,
    recipes: &[Option<WorkedRecipe>],
    book: &Formulary,
    head: &LessonHead,
    findings: &mut Vec<Finding>,
) -> Vec<Exercised> {
    let mut all: Vec<(usize, Exercise)> = Vec::new();
    let mut usual_ones = Vec::new();
    for block in &manuscript.asides {
        let text = Spanned::new(block.text.value.as_str(), block.text.span);
        if let Some(exercise) = read(&text, findings)
            && let Some(of) = place(&exercise, block, manuscript, recipes, findings)
        {
            if all.iter().any(|(_, other): &(usize, Exercise)| other.name.value == exercise.name.value) {
                let message = format!("two exercises of the lesson are called `{}`", exercise.name.value);
                let finding = Finding::error(Code::TwiceWritten, exercise.name.span, message);
                findings.push(finding.why("a class finds an exercise by its name"));
                continue;
            }
            all.push((of, exercise));
        }
    }
    for (of, whole) in recipes.iter().enumerate() {
        let Some((whole, at)) = whole.as_ref().and_then(|whole| Some((whole, whole.recipe.exercises?)))
        else {
            continue;
        };
        usual_ones.extend(usual(whole, book, head.date, at).into_iter().map(|exercise| (of, exercise)));
    }
    // What is asked for by one word and cannot be asked of this recipe is left out, and not told.
    let own = all.len();
    all.extend(usual_ones);
    let set = set(book, head);
    let mut exercised = Vec::new();
    for (n, (of, exercise)) in all.into_iter().enumerate() {
        let stage = Stage { recipe: recipes.get(of).and_then(Option::as_ref), book, made: head.date };
        // A recipe with a fault is not worked; its exercises wait for it.
        if exercise.sum.is_empty() && stage.recipe.is_none() {
            continue;
        }
        let versions: Result<Vec<Posed>, _> = (0..set.versions.unwrap_or(1))
            .map(|version| pose(&exercise, &stage, set.seed.unwrap_or(SEED), version))
            .collect();
        match versions {
            Ok(versions) if n < own || worth_asking(&versions) => {
                exercised.push(Exercised { of, versions });
            }
            Ok(_) => {}
            Err(_) if n >= own => {}
            Err(finding) => {
                let span = finding.span.filter(|span| span.end > span.start).unwrap_or(exercise.name.span);
                findings.push(Finding { span: Some(span), ..*finding });
            }
        }
    }
    exercised.sort_by_key(|exercised: &Exercised| exercised.of);
    exercised
}

/// Whether there is something to find in every version, and, in figures, not the same in all of them.
fn worth_asking(versions: &[Posed]) -> bool {
    let figures = |posed: &Posed| matches!(posed.right, Right::Figures(_));
    let same = versions.len() > 1 && versions.windows(2).all(|pair| pair[0].answer() == pair[1].answer());
    versions.iter().all(Posed::is_worth_asking) && !(same && versions.iter().all(figures))
}

/// The recipe an exercise is about: that of the name, else the one before it, else the first.
fn place(
    exercise: &Exercise,
    block: &Block,
    manuscript: &Manuscript,
    recipes: &[Option<WorkedRecipe>],
    findings: &mut Vec<Finding>,
) -> Option<usize> {
    let before = manuscript.blocks.iter().rposition(|recipe| recipe.info.start < block.info.start);
    let Some(name) = &exercise.recipe else { return Some(before.unwrap_or(0)) };
    let named =
        |whole: &Option<WorkedRecipe>| whole.as_ref().is_some_and(|whole| whole.base.name == name.value);
    let found = recipes.iter().position(named);
    // The recipe that is meant may be the one that has a fault.
    if found.is_none() && recipes.iter().all(Option::is_some) {
        let known: Vec<&str> = recipes.iter().flatten().map(|whole| whole.base.name.as_str()).collect();
        let message = format!("the lesson has no recipe `{}`", name.value);
        findings.push(Finding::error(Code::UnknownName, name.span, message).why(known.join("; ")));
    }
    found
}

/// Whether the answers are not out yet, and from when on they are, in words.
fn held(desk: &Desk, head: &LessonHead) -> (bool, String) {
    match set(desk.book, head).answers_from {
        Some(day) if desk.today.is_none_or(|today| today < day) => (true, day.words()),
        _ => (false, String::new()),
    }
}

fn link(desk: &Desk, folder: &str, head: &LessonHead) -> Link {
    let text = desk.word(&format!("on-paper-{folder}"));
    Link { text, href: format!("../{}", sheet_path(folder, head)), current: false }
}

/// Links to both, from the lesson; none to what is not there.
pub(super) fn links(desk: &Desk, head: &LessonHead, exercised: &[Exercised]) -> Vec<Link> {
    if exercised.is_empty() {
        return Vec::new();
    }
    let key = (!held(desk, head).0).then(|| link(desk, ANSWERS, head));
    std::iter::once(link(desk, EXERCISES, head)).chain(key).collect()
}

/// The exercises of each recipe on the lesson's own page, one a block.
pub(super) fn copybooks(
    desk: &Desk,
    head: &LessonHead,
    exercised: &[Exercised],
    recipes: usize,
) -> Vec<Option<Copybook>> {
    let (held, from) = held(desk, head);
    let of = |n: usize| -> Vec<Question> {
        let numbered = exercised.iter().enumerate().filter(|(_, exercised)| exercised.of == n);
        let first = numbered.filter_map(|(at, exercised)| Some((at, exercised.versions.first()?)));
        first
            .map(|(at, posed)| question(posed, format!("the--exercise-{}", at + 1), at + 1, held, "../"))
            .collect()
    };
    let each = (0..recipes).map(|n| {
        let questions = of(n);
        (!questions.is_empty()).then(|| Copybook {
            questions,
            exercises: Some(link(desk, EXERCISES, head)),
            key: (!held).then(|| link(desk, ANSWERS, head)),
            from: from.clone(),
            ..Copybook::default()
        })
    });
    each.collect()
}

/// Writes the questions of every version, and the key where it is out.
pub(super) fn press(
    desk: &Desk,
    head: &LessonHead,
    exercised: &[Exercised],
    findings: &mut Vec<Finding>,
) -> Result<(), Trouble> {
    if exercised.is_empty() {
        return Ok(());
    }
    let (held, from) = held(desk, head);
    let count = exercised.iter().map(|exercised| exercised.versions.len()).min().unwrap_or(0);
    let version = |(n, letter): (usize, String)| {
        let questions = exercised.iter().enumerate().filter_map(|(at, exercised)| {
            let posed = exercised.versions.get(n)?;
            Some(question(posed, format!("{}-{}", letter.to_lowercase(), at + 1), at + 1, held, "../"))
        });
        Version { questions: questions.collect(), letter: letter.clone() }
    };
    let (path, frame) = desk.sheet(EXERCISES, head);
    let view = ExercisesPage {
        frame,
        lesson: lesson_link(head, "../"),
        key: (!held).then(|| link(desk, ANSWERS, head)),
        from,
        versions: letters(count).into_iter().enumerate().map(version).collect(),
        foot: super::paper::foot(desk),
    };
    desk.page(&path, "exercises.html", &view, findings)?;
    if held {
        return Ok(());
    }
    let rows = exercised.iter().enumerate();
    let (path, frame) = desk.sheet(ANSWERS, head);
    let view = KeyPage {
        frame,
        lesson: lesson_link(head, "../"),
        exercises: link(desk, EXERCISES, head),
        letters: letters(count),
        rows: rows.filter_map(|(at, exercised)| key_row(&exercised.versions, at + 1, "../")).collect(),
        foot: super::paper::foot(desk),
    };
    desk.page(&path, "key.html", &view, findings)
}
