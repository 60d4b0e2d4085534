//! The fixed words of the pages, in the course's language.

use std::collections::BTreeMap;

use crate::diagnostic::{Code, Finding, nearest};
use crate::span::{Source, Spanned};
use crate::yaml::{self, Node};

/// The language every theme has.
pub const FIRST: &str = "en";

/// The words of one language; where it lacks one, the English.
#[derive(Clone, Debug, Default)]
pub struct Words {
    texts: BTreeMap<String, String>,
    /// What the program says itself, by its English words.
    terms: BTreeMap<String, String>,
}

impl Words {
    /// The words of a name; the name itself where no theme has it, which the built-in theme's tests exclude.
    pub fn get<'a>(&'a self, name: &'a str) -> &'a str {
        self.texts.get(name).map_or(name, String::as_str)
    }

    /// The words whose names begin so, by the rest of their names.
    pub fn beginning<'a>(&'a self, begin: &'a str) -> BTreeMap<&'a str, &'a str> {
        let of = |(name, text): (&'a String, &'a String)| Some((name.strip_prefix(begin)?, text.as_str()));
        self.texts.iter().filter_map(of).collect()
    }

    /// The words of a name, what stands in braces filled in; none where the theme has no such name.
    pub fn filled<'k>(&self, name: &str, with: impl Iterator<Item = (&'k str, String)>) -> Option<String> {
        let text = self.texts.get(name)?.clone();
        Some(with.fold(text, |text, (hole, value)| text.replace(&format!("{{{hole}}}"), &value)))
    }

    /// What the program says, in this language where it knows it.
    pub fn term<'a>(&'a self, english: &'a str) -> &'a str {
        self.terms.get(english).map_or(english, String::as_str)
    }

    /// Lays a language's file over these. A name that English does not have, or a text with other holes than the
    /// English one, is a finding.
    pub(super) fn lay(&mut self, source: &Source, first: bool, findings: &mut Vec<Finding>) {
        let tree = match yaml::read(&source.text, 0) {
            Ok(tree) => tree,
            Err(found) => return findings.extend(found),
        };
        let Some(mut fields) = tree.map("a theme's words", findings) else { return };
        if let Some(terms) = fields.take("terms") {
            self.lay_terms(terms, findings);
        }
        for (name, node) in fields.rest() {
            let Some(text) = node.text("the words", findings) else { continue };
            match self.texts.get(&name.value) {
                None if !first => findings.push(self.unknown(name)),
                Some(english) if holes(english) != holes(text.value) => {
                    let wanted = holes(english);
                    let wanted = if wanted.is_empty() { "nothing".into() } else { wanted.join(" and ") };
                    let message = format!("in `{}` {wanted} is filled in", name.value);
                    findings.push(
                        Finding::error(Code::BadTheme, text.span, message)
                            .why(format!("the English words are `{english}`")),
                    );
                }
                _ => drop(self.texts.insert(name.value.clone(), text.value.to_string())),
            }
        }
        fields.finish(findings);
    }

    fn lay_terms(&mut self, node: &Node, findings: &mut Vec<Finding>) {
        let Some(mut fields) = node.map("the program's own words", findings) else { return };
        for (english, node) in fields.rest() {
            if let Some(text) = node.text("the words", findings) {
                self.terms.insert(english.value.clone(), text.value.to_string());
            }
        }
        fields.finish(findings);
    }

    fn unknown(&self, name: &Spanned<String>) -> Finding {
        let message = format!("no words of the theme are called `{}`", name.value);
        let finding = Finding::error(Code::BadTheme, name.span, message)
            .why("the names are those of words/en.yaml; what the program says itself stands under `terms`");
        match nearest(&name.value, self.texts.keys().map(String::as_str)) {
            Some(near) => finding.write(format!("{near}:")),
            None => finding,
        }
    }
}

/// The names in braces, sorted.
fn holes(text: &str) -> Vec<String> {
    let mut holes: Vec<String> =
        text.split('{').skip(1).filter_map(|rest| Some(format!("{{{}}}", rest.split_once('}')?.0))).collect();
    holes.sort();
    holes
}
