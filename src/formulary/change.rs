//! What was changed after a printing: a lesson's corrections, and changes of the book.

use crate::calendar::Day;
use crate::diagnostic::Finding;
use crate::manuscript::plain;
use crate::yaml::{Fields, Node};

/// Something said otherwise than before.
#[derive(Clone, PartialEq, Debug)]
pub struct Correction {
    /// When it was changed.
    pub date: Day,
    /// What stood there.
    pub was: String,
    /// What stands there now.
    pub now: String,
    /// Why; may be empty.
    pub why: String,
}

/// Something new in the book.
#[derive(Clone, PartialEq, Debug)]
pub struct Change {
    /// When.
    pub date: Day,
    /// What, in a sentence.
    pub what: String,
}

/// So much of a change's words makes its address.
const ADDRESSED: usize = 40;

impl Change {
    /// Its place on the page of corrections, the same as long as its day and its first words are.
    pub fn anchor(&self) -> String {
        let words: String = plain(&self.what).chars().take(ADDRESSED).collect();
        format!("{}-{words}", self.date.iso())
    }
}

/// Reads a lesson's corrections.
pub(super) fn read_corrections(node: &Node, findings: &mut Vec<Finding>) -> Vec<Correction> {
    each(node, "the corrections", "a correction", findings, |fields, findings| {
        let date = date(fields, findings);
        let was = text(fields, "was", "was: 400 mL of honey", findings);
        let now = text(fields, "now", "now: 533 mL of honey", findings);
        let why = fields.take("why").and_then(|node| node.text("why", findings));
        let why = why.map_or(String::new(), |text| text.value.to_string());
        Some(Correction { date: date?, was: was?, now: now?, why })
    })
}

/// Reads the book's changes.
pub(super) fn read_changes(node: &Node, findings: &mut Vec<Finding>) -> Vec<Change> {
    each(node, "the changes", "a change", findings, |fields, findings| {
        let date = date(fields, findings);
        let what = text(fields, "what", "what: A fifteenth evening, on salves.", findings);
        Some(Change { date: date?, what: what? })
    })
}

fn each<T>(
    node: &Node,
    all: &str,
    one: &str,
    findings: &mut Vec<Finding>,
    read: impl Fn(&mut Fields, &mut Vec<Finding>) -> Option<T>,
) -> Vec<T> {
    let mut read_all = Vec::new();
    for node in node.list(all, findings).unwrap_or_default() {
        if let Some(mut fields) = node.map(one, findings) {
            read_all.extend(read(&mut fields, findings));
            fields.finish(findings);
        }
    }
    read_all
}

fn date(fields: &mut Fields, findings: &mut Vec<Finding>) -> Option<Day> {
    let node = fields.need("date", "date: 2026-10-03", findings)?;
    node.read("the date", Day::read, findings).map(|day| day.value)
}

fn text(fields: &mut Fields, key: &str, example: &str, findings: &mut Vec<Finding>) -> Option<String> {
    let node = fields.need(key, example, findings)?;
    node.text(key, findings).map(|text| text.value.to_string())
}
