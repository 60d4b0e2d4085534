//! What plants' and pantry pages have in common: figures and statements with their sources, cautions of a page,
//! and what may stand in for it.

use crate::bibliography::{Source as Cite, Standing};
use crate::diagnostic::{Code, Finding};
use crate::measure::{Amount, Misread};
use crate::people::Who;
use crate::yaml::{Fields, Node};

/// A figure with its source.
#[derive(Clone, PartialEq, Debug)]
pub struct Cited {
    /// In base units (g, mL, share).
    pub value: f64,
    /// Where it comes from.
    pub source: Cite,
}

/// A figure that lies between two, with its source.
#[derive(Clone, PartialEq, Debug)]
pub struct Between {
    /// The least, in base units.
    pub low: f64,
    /// The most.
    pub high: f64,
    /// Where it comes from.
    pub source: Cite,
}

/// A statement with its source.
#[derive(Clone, PartialEq, Debug)]
pub struct Told {
    /// What it says.
    pub words: String,
    /// Where it comes from.
    pub source: Cite,
}

/// A caution that a page gives to every recipe with what the page is about.
#[derive(Clone, PartialEq, Debug)]
pub struct PageCaution {
    /// First words.
    pub lead: String,
    /// The rest.
    pub text: String,
    /// Who must not take it.
    pub not_for: Vec<Who>,
    /// Who asks a doctor or a pharmacist first.
    pub ask_first: Vec<Who>,
    /// Where it comes from.
    pub source: Cite,
    /// A note rather than a warning.
    pub note: bool,
}

/// What may stand in for something.
#[derive(Clone, PartialEq, Debug)]
pub struct Substitute {
    /// What: a name of the book, or any words.
    pub what: String,
    /// In which respect.
    pub purpose: Option<String>,
    /// Grams of it for a gram.
    pub factor: Option<f64>,
    /// What to mind with it.
    pub caution: Option<String>,
    /// Where it comes from.
    pub source: Cite,
}

/// `2 mL`, or `{amount: 2 mL, source: ...}` where the figure has its own source.
pub(crate) fn between(
    node: &Node,
    what: &str,
    by: fn(&str) -> Result<Amount, Misread>,
    general: Option<&Cite>,
    findings: &mut Vec<Finding>,
) -> Option<Between> {
    let (node, own) = if node.is_scalar() {
        (node, None)
    } else {
        let mut fields = node.map(what, findings)?;
        let own = source_of(&mut fields, findings);
        let amount = fields.need("amount", "amount: 2 mL", findings);
        fields.finish(findings);
        (amount?, own)
    };
    let amount = node.read(what, by, findings)?;
    let Some(source) = own.or_else(|| general.cloned()) else {
        findings.push(without_source(node, what));
        return None;
    };
    Some(Between { low: amount.value.low, high: amount.value.high, source })
}

/// The same for one figure: of a range its lower end.
pub(crate) fn cited(
    node: &Node,
    what: &str,
    by: fn(&str) -> Result<Amount, Misread>,
    general: Option<&Cite>,
    findings: &mut Vec<Finding>,
) -> Option<Cited> {
    let found = between(node, what, by, general, findings)?;
    Some(Cited { value: found.low, source: found.source })
}

fn without_source(node: &Node, what: &str) -> Finding {
    Finding::error(Code::MissingKey, node.span, format!("no source is given for {what}"))
        .why("every figure says where it comes from, even where nobody has published it")
        .write("source: common practice")
        .write("source: memory")
}

/// The source that a map has to give.
pub(crate) fn need_source(fields: &mut Fields, what: &str, findings: &mut Vec<Finding>) -> Option<Cite> {
    if fields.take("source").is_some() {
        return source_of(fields, findings);
    }
    findings.push(
        Finding::error(Code::MissingKey, fields.span(), format!("{what} has no `source`"))
            .why("every fact says where it comes from, even where nobody has published it")
            .write("source: common practice")
            .write("source: memory"),
    );
    None
}

/// The source that a map may give.
pub(crate) fn source_of(fields: &mut Fields, findings: &mut Vec<Finding>) -> Option<Cite> {
    Some(source_from(fields.take("source")?.text("the source", findings)?.value))
}

/// `common practice`, `memory` (each with more after a colon), or a work in words.
fn source_from(text: &str) -> Cite {
    let (head, rest) = text.split_once(':').map_or((text, ""), |(head, rest)| (head, rest.trim()));
    let standing = match head.trim() {
        "common practice" => Standing::CommonPractice,
        "memory" => Standing::FromMemory,
        _ => return Cite::formulary(text.to_string()),
    };
    Cite { work: None, place: rest.to_string().into(), standing }
}

/// A text that may stand under a key.
pub(crate) fn words(fields: &mut Fields, key: &str, findings: &mut Vec<Finding>) -> Option<String> {
    Some(fields.take(key)?.text(&format!("`{key}`"), findings)?.value.to_string())
}

/// `{words: ..., source: ...}`.
pub(crate) fn told(fields: &mut Fields, key: &str, findings: &mut Vec<Finding>) -> Option<Told> {
    let mut inner = fields.take(key)?.map(&format!("`{key}`"), findings)?;
    let words = inner
        .need("words", "words: grows everywhere", findings)
        .and_then(|node| node.text("the words", findings));
    let source = need_source(&mut inner, &format!("`{key}`"), findings);
    inner.finish(findings);
    Some(Told { words: words?.value.to_string(), source: source? })
}

/// Texts in a list; one alone may stand without brackets.
pub(crate) fn texts(fields: &mut Fields, key: &str, findings: &mut Vec<Finding>) -> Vec<String> {
    fields.texts(key, key, findings).into_iter().map(|text| text.value).collect()
}

/// Cautions of a page.
pub(crate) fn cautions(fields: &mut Fields, findings: &mut Vec<Finding>) -> Vec<PageCaution> {
    let Some(node) = fields.take("cautions") else { return Vec::new() };
    let list = node.list("cautions", findings).unwrap_or_default();
    list.iter().filter_map(|node| caution(node, findings)).collect()
}

fn caution(node: &Node, findings: &mut Vec<Finding>) -> Option<PageCaution> {
    let mut fields = node.map("a caution", findings)?;
    let (warning, note) = (fields.take("warning"), fields.take("note"));
    let people = |node: Option<&Node>, findings: &mut Vec<Finding>| -> Vec<Who> {
        let list = node.map(|node| node.each("people", findings)).unwrap_or_default();
        list.iter().filter_map(|node| Some(node.read("people", Who::read, findings)?.value)).collect()
    };
    let not_for = people(fields.take("not for"), findings);
    let ask_first = people(fields.take("ask first"), findings);
    let span = fields.span();
    let source = need_source(&mut fields, "a caution", findings);
    fields.finish(findings);
    let Some(node) = warning.or(note) else {
        findings.push(
            Finding::error(Code::MissingKey, span, "a caution has neither `warning` nor `note`")
                .write("warning: Hairs in the hips irritate. Strain twice, through cloth."),
        );
        return None;
    };
    let words = node.text("a caution", findings)?;
    let (lead, text) = words.value.split_once(". ").unwrap_or((words.value.trim_end_matches('.'), ""));
    Some(PageCaution {
        lead: lead.to_string(),
        text: text.to_string(),
        not_for,
        ask_first,
        source: source?,
        note: warning.is_none(),
    })
}

/// What may stand in; `key` names it in each entry.
pub(crate) fn substitutes(fields: &mut Fields, key: &str, findings: &mut Vec<Finding>) -> Vec<Substitute> {
    let Some(node) = fields.take("substitutes") else { return Vec::new() };
    let list = node.list("substitutes", findings).unwrap_or_default();
    let mut found = Vec::new();
    for node in list {
        let Some(mut fields) = node.map("a substitute", findings) else { continue };
        let what = fields
            .need(key, &format!("{key}: thyme"), findings)
            .and_then(|node| node.text("its name", findings))
            .map(|what| what.value.to_string());
        let purpose = words(&mut fields, "for", findings);
        let factor = fields
            .take("factor")
            .and_then(|node| node.read("grams for a gram", crate::measure::count, findings))
            .map(|factor| factor.value);
        let caution = words(&mut fields, "caution", findings);
        let source = need_source(&mut fields, "a substitute", findings);
        fields.finish(findings);
        if let (Some(what), Some(source)) = (what, source) {
            found.push(Substitute { what, purpose, factor, caution, source });
        }
    }
    found
}
