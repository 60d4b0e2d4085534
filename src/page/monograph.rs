//! What plants' and pantry pages have in common: the label, rows of facts, cautions.

use super::recipe::with_stop;
use super::show::{cite, sentence};
use super::view::{CautionRow, FactRow, Kind, LabelRow};
use crate::bibliography::Source;
use crate::caution::{Caution, Company};
use crate::cited::Substitute;
use crate::formula::equation::escape;
use crate::measure::decimal;

/// "Before you use it": who must not, and who asks first.
pub(super) fn before(cautions: &[Caution]) -> Vec<LabelRow> {
    let company = Company::of(cautions);
    let row = |term: &str, value: String, stop: bool| LabelRow {
        term: term.to_string(),
        kind: Kind::Declared,
        value,
        notes: Vec::new(),
        stop,
        link: None,
    };
    let people = |list: &[crate::caution::Barred]| {
        list.iter().map(|barred| barred.who.phrase()).collect::<Vec<_>>().join(", ")
    };
    let mut rows = Vec::new();
    if !company.not_for.is_empty() {
        rows.push(row("Never for", people(&company.not_for), true));
    }
    if !company.ask_first.is_empty() {
        rows.push(row("Ask first", people(&company.ask_first), false));
    }
    rows
}

/// Cautions with their sources, as a page of its own shows them.
pub(super) fn caution_rows(cautions: &[Caution], root: &str) -> Vec<CautionRow> {
    let rows = cautions.iter().map(|caution| CautionRow {
        id: format!("caution-{}", caution.id),
        level: caution.weight.word().to_string(),
        lead: with_stop(&caution.lead),
        text: caution.text.clone(),
        reason: String::new(),
        source_html: cite(&caution.source, root),
    });
    rows.collect()
}

/// A link inside a fact.
pub(super) fn linked(words: &str, href: &str) -> String {
    format!("<a href=\"{}\">{}</a>", escape(href), escape(words))
}

/// Rows of facts, each with its source.
pub(super) struct Facts<'a> {
    root: &'a str,
    pub(super) rows: Vec<FactRow>,
}

impl<'a> Facts<'a> {
    pub(super) const fn new(root: &'a str) -> Facts<'a> {
        Facts { root, rows: Vec::new() }
    }

    /// A name or a choice of words: nothing that wants a source.
    pub(super) fn plain(&mut self, term: &str, value: &str) {
        let (term, html) = (term.to_string(), escape(value));
        self.rows.push(FactRow { term, html, source_html: String::new(), worked: false });
    }

    pub(super) fn cited(&mut self, term: &str, value: &str, source: &Source) {
        self.html(term, escape(value), source);
    }

    pub(super) fn html(&mut self, term: &str, html: String, source: &Source) {
        let source_html = sentence(&cite(source, self.root));
        self.rows.push(FactRow { term: term.to_string(), html, source_html, worked: false });
    }

    /// What may stand in; `find` gives the words and the address of what has a page.
    pub(super) fn substitutes(
        &mut self,
        substitutes: &[Substitute],
        find: impl Fn(&str) -> Option<(String, String)>,
    ) {
        for other in substitutes {
            let name = match find(&other.what) {
                Some((words, href)) => linked(&words, &href),
                None => escape(&other.what),
            };
            let factor = other.factor.map(|factor| format!(", {}\u{a0}g for each gram", decimal(factor, 2)));
            let purpose = other.purpose.as_ref().map(|purpose| format!(", for {}", escape(purpose)));
            let caution = other.caution.as_ref().map(|caution| format!(". {}", escape(&with_stop(caution))));
            let told = [purpose, factor, caution].into_iter().flatten().collect::<String>();
            self.html("In place of it", format!("{name}{told}"), &other.source);
        }
    }
}
