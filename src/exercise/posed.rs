//! A question with its answer, as one version has it.

use super::Within;
use crate::calendar::Day;
use crate::formula::{Formula, Line};
use crate::formulary::Formulary;
use crate::measure::{Measure, Unit};
use crate::variation::{Worked, WorkedRecipe};

/// What an exercise stands in.
#[derive(Clone, Copy)]
pub struct Stage<'a> {
    /// The recipe it is about; none in a lesson without one.
    pub recipe: Option<&'a WorkedRecipe>,
    /// The book.
    pub book: &'a Formulary,
    /// When the lesson's recipes are made, where it has a date.
    pub made: Option<Day>,
}

/// An answer in figures.
#[derive(Clone, Debug)]
pub struct Answered {
    /// What is asked for: the line's name.
    pub name: String,
    /// In the line's unit.
    pub value: f64,
    /// The line's unit.
    pub unit: &'static Unit,
    /// The unit the student is asked to answer in; none where it is the line's own.
    pub asked_in: Option<Measure>,
    /// What stands behind the blank: "cups", "mL", "£".
    pub blank: String,
    /// As printed in the key.
    pub text: String,
}

/// What a student is to find.
#[derive(Clone, Debug)]
pub enum Right {
    /// Figures, one a blank.
    Figures(Vec<Answered>),
    /// One of the options, by its place.
    Option(usize),
    /// The options in this order.
    Order(Vec<usize>),
}

/// A question with its answer.
#[derive(Clone, Debug)]
pub struct Posed {
    /// The exercise's name.
    pub name: String,
    /// The question, figures filled in.
    pub ask: String,
    /// What is shown to be judged: a name and a figure a row.
    pub shown: Vec<[String; 2]>,
    /// What can be chosen, or put in order.
    pub options: Vec<String>,
    /// What is right.
    pub right: Right,
    /// How near is right.
    pub within: Within,
    /// Which formula helps, in words.
    pub hint: String,
    /// That formula.
    pub formula: Option<&'static Formula>,
    /// Why, in a sentence; empty where the lines say it.
    pub because: String,
    /// The working the answer comes of, and which of its lines lead there.
    pub worked: Option<(Worked, Vec<Line>)>,
}

impl Posed {
    /// A question of which only the answer is known.
    pub(super) fn of(right: Right) -> Posed {
        Posed {
            name: String::new(),
            ask: String::new(),
            shown: Vec::new(),
            options: Vec::new(),
            right,
            within: Within::Exact,
            hint: String::new(),
            formula: None,
            because: String::new(),
            worked: None,
        }
    }

    /// Whether there is anything to find: not nothing, and more than one to choose from.
    pub fn is_worth_asking(&self) -> bool {
        match &self.right {
            Right::Figures(answers) => answers.iter().all(|answer| answer.value > 0.0),
            Right::Option(_) => self.options.len() > 1,
            Right::Order(places) => places.len() > 1,
        }
    }

    /// The answer as the key prints it.
    pub fn answer(&self) -> String {
        let letter = |place: &usize| letter(*place);
        match &self.right {
            Right::Figures(answers) => match &answers[..] {
                [one] => one.text.clone(),
                _ => {
                    let each = answers.iter().map(|answer| format!("{}: {}", answer.name, answer.text));
                    each.collect::<Vec<_>>().join("; ")
                }
            },
            Right::Option(place) => {
                let option = self.options.get(*place).map_or("", String::as_str);
                format!("{}: {option}", letter(place))
            }
            Right::Order(places) => places.iter().map(letter).collect::<Vec<_>>().join(" "),
        }
    }
}

/// The letter an option stands under: "a".
pub fn letter(place: usize) -> String {
    char::from(b'a' + (place % 26) as u8).to_string()
}
