//! `glossary.yaml`: the words of the craft, each in a sentence or two.

use crate::diagnostic::{Code, Finding, nearest};
use crate::manuscript::{self, Terms};
use crate::span::{Source, Spanned};
use crate::yaml;

/// A word of the craft.
#[derive(Clone, PartialEq, Debug)]
pub struct Term {
    /// As it stands in the glossary: `water activity`.
    pub word: Spanned<String>,
    /// Its name in addresses and links: `water-activity`.
    pub id: String,
    /// What it means.
    pub means: String,
    /// Other forms it takes in running text.
    pub also: Vec<Spanned<String>>,
    /// Other words of the glossary to look at.
    pub see: Vec<Spanned<String>>,
}

impl Term {
    /// Every form it takes in running text, the word itself first.
    fn forms(&self) -> impl Iterator<Item = &Spanned<String>> {
        std::iter::once(&self.word).chain(&self.also)
    }
}

/// Reads the glossary. Terms are sorted by their words.
pub fn read_glossary(source: &Source, findings: &mut Vec<Finding>) -> Vec<Term> {
    let tree = match yaml::read(&source.text, 0) {
        Ok(tree) => tree,
        Err(found) => {
            findings.extend(found);
            return Vec::new();
        }
    };
    let Some(mut fields) = tree.map("the glossary", findings) else { return Vec::new() };
    let mut terms: Vec<Term> = Vec::new();
    for (word, node) in fields.rest() {
        let Some(mut fields) = node.map("a word of the glossary", findings) else { continue };
        let means = fields
            .need("means", "means: the liquid that draws a plant out.", findings)
            .and_then(|node| node.text("what it means", findings))
            .map(|text| text.value.to_string());
        let also = fields.texts("also", "a word", findings);
        let see = fields.texts("see", "a word", findings);
        fields.finish(findings);
        let id = address(&word.value);
        terms.extend(means.map(|means| Term { word: word.clone(), id, means, also, see }));
    }
    fields.finish(findings);
    twice(&terms, findings);
    unknown(&terms, findings);
    terms.sort_by_key(|term| term.word.value.to_lowercase());
    terms
}

/// A word's name in addresses: plainly spelt, or, of another alphabet, by the numbers of its letters.
fn address(word: &str) -> String {
    if word.chars().any(|c| c.is_ascii_alphanumeric()) {
        return manuscript::plain(word);
    }
    let letters: Vec<String> = word.chars().map(|c| format!("{:x}", u32::from(c))).collect();
    format!("u-{}", letters.join("-"))
}

/// The words as they are found in running text.
pub fn terms(glossary: &[Term]) -> Terms {
    Terms::new(
        glossary.iter().flat_map(|term| term.forms().map(|form| (form.value.as_str(), term.id.as_str()))),
    )
}

/// A form that stands for two words would lead to either.
fn twice(terms: &[Term], findings: &mut Vec<Finding>) {
    let forms: Vec<(&Spanned<String>, &Term)> =
        terms.iter().flat_map(|term| term.forms().map(move |form| (form, term))).collect();
    for (n, (form, term)) in forms.iter().enumerate() {
        // Two words of one address, or one form of two words; `boil-off` and `boil off` may both stand for one.
        let same = |(other, of): &&(&Spanned<String>, &Term)| {
            other.value.to_lowercase() == form.value.to_lowercase()
                || (of.id == term.id && of.word != term.word)
        };
        if let Some((_, first)) = forms[..n].iter().find(same) {
            let message = match first.word == term.word {
                true => format!("`{}` is written twice for this word", form.value),
                false => format!("`{}` stands for `{}` too", form.value, first.word.value),
            };
            findings.push(
                Finding::error(Code::TwiceWritten, form.span, message)
                    .why("where it stands in a lesson it is explained by one word of the glossary"),
            );
        }
    }
}

fn unknown(terms: &[Term], findings: &mut Vec<Finding>) {
    let known = || terms.iter().map(|term| term.word.value.as_str());
    for see in terms.iter().flat_map(|term| &term.see) {
        if !known().any(|word| word == see.value) {
            let message = format!("the glossary has no word `{}`", see.value);
            let finding = Finding::error(Code::UnknownName, see.span, message);
            findings.push(match nearest(&see.value, known()) {
                Some(near) => finding.write(near),
                None => finding,
            });
        }
    }
}
