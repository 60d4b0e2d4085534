//! How exercises are set: the seed, the versions, and the day the answers come out.

use crate::calendar::Day;
use crate::diagnostic::{Code, Finding};
use crate::measure::Misread;
use crate::yaml::Node;

/// As many versions as there are letters for.
pub const MOST_VERSIONS: usize = 6;

/// How exercises are set; what is not said is left to the course, and there to what is usual.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Classwork {
    /// What the numbers are drawn by.
    pub seed: Option<u64>,
    /// How many versions.
    pub versions: Option<usize>,
    /// The first day on which the answers are pressed.
    pub answers_from: Option<Day>,
}

impl Classwork {
    /// These, and where they say nothing, those of the course.
    pub fn or(self, course: Classwork) -> Classwork {
        Classwork {
            seed: self.seed.or(course.seed),
            versions: self.versions.or(course.versions),
            answers_from: self.answers_from.or(course.answers_from),
        }
    }
}

/// Reads `{seed: 7, versions: 6, answers from: 2026-10-06}`.
pub fn read_classwork(node: &Node, findings: &mut Vec<Finding>) -> Classwork {
    let Some(mut fields) = node.map("how exercises are set", findings) else { return Classwork::default() };
    let seed = fields.take("seed").and_then(|node| node.read("the seed", seed, findings));
    let versions =
        fields.take("versions").and_then(|node| node.read("how many versions", versions, findings));
    let answers_from = fields.take("answers from").and_then(|node| node.read("the day", Day::read, findings));
    fields.finish(findings);
    Classwork {
        seed: seed.map(|seed| seed.value),
        versions: versions.map(|versions| versions.value),
        answers_from: answers_from.map(|day| day.value),
    }
}

fn seed(text: &str) -> Result<u64, Misread> {
    text.trim().parse().map_err(|_| {
        let message = format!("`{text}` is no whole number from 0 up");
        Misread::of(text, Code::BadNumber, message)
            .why("any one will do; it only has to stay the same")
            .write("1923")
    })
}

fn versions(text: &str) -> Result<usize, Misread> {
    match text.trim().parse() {
        Ok(number) if (1..=MOST_VERSIONS).contains(&number) => Ok(number),
        _ => {
            let message = format!("`{text}` is no number of versions from 1 to {MOST_VERSIONS}");
            Err(Misread::of(text, Code::BadNumber, message).why("versions are called A to F").write("6"))
        }
    }
}
