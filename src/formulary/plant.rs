//! `plants/*.md`: a plant's facts in the front matter, each with its source, and prose below.

use crate::bibliography::{Source as Cite, Standing};
use crate::diagnostic::{Code, Finding};
use crate::manuscript;
use crate::measure::{self, Form, Misread, kitchen_unit::Measure};
use crate::span::Source;
use crate::yaml::{self, Fields, Node};

/// How volatile what the plant gives is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Aromatic {
    /// Not: it may be boiled and reduced.
    No,
    /// A little: brief heat.
    Lightly,
    /// Volatile: kept covered, never boiled long or reduced.
    Yes,
}

/// A figure with its source.
#[derive(Clone, PartialEq, Debug)]
pub struct Cited {
    /// In base units (g, mL, share).
    pub value: f64,
    /// Where it comes from.
    pub source: Cite,
}

/// A plant measured by a household measure.
#[derive(Clone, PartialEq, Debug)]
pub struct Weight {
    /// The measure it fills.
    pub measure: Measure,
    /// What that weighs, g.
    pub weighs: Cited,
}

/// A plant in one form.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct PlantForm {
    /// Watery liquid a gram keeps when squeezed by hand, mL.
    pub holds: Option<Cited>,
    /// Oil a gram keeps likewise, mL.
    pub holds_oil: Option<Cited>,
    /// Honey a gram keeps likewise, mL.
    pub holds_honey: Option<Cited>,
    /// Weight of a cup or a teaspoon.
    pub weights: Vec<Weight>,
    /// Water in it, by weight.
    pub moisture: Option<Cited>,
}

/// A caution of a plant.
#[derive(Clone, PartialEq, Debug)]
pub struct PlantCaution {
    /// First words.
    pub lead: String,
    /// The rest.
    pub text: String,
    /// Where it comes from.
    pub source: Cite,
    /// A note rather than a warning.
    pub note: bool,
}

/// A plant.
#[derive(Clone, PartialEq, Debug)]
pub struct Plant {
    /// Its name in recipes and addresses.
    pub id: String,
    /// In running text: "rose hips".
    pub words: String,
    /// Genus and species.
    pub latin: String,
    /// The author of the Latin name.
    pub author: String,
    /// Family.
    pub family: String,
    /// The part used.
    pub part: String,
    /// Whether that is root, bark or wood alone, which a hot steep hardly touches.
    pub hard: bool,
    /// How volatile.
    pub aromatic: Aromatic,
    /// Dried.
    pub dried: Option<PlantForm>,
    /// Fresh.
    pub fresh: Option<PlantForm>,
    /// Cautions.
    pub cautions: Vec<PlantCaution>,
}

impl Plant {
    /// The plant in that form, where its file knows it.
    pub const fn form(&self, form: Form) -> Option<&PlantForm> {
        match form {
            Form::Dried => self.dried.as_ref(),
            Form::Fresh => self.fresh.as_ref(),
        }
    }
}

impl PlantForm {
    /// Weight of a millilitre when measured loosely, g: by the cup before the spoon.
    pub fn bulk(&self) -> Option<Cited> {
        let weight = self.weights.iter().max_by_key(|weight| weight.measure == Measure::Cup)?;
        let holds = weight.measure.factor().to_f64();
        Some(Cited { value: weight.weighs.value / holds, source: weight.weighs.source.clone() })
    }
}

/// Reads a plant's file. `id` is its name in recipes, from the file's name.
pub fn read_plant(source: &Source, id: &str, findings: &mut Vec<Finding>) -> Option<Plant> {
    let parts = match manuscript::parts(source) {
        Ok(parts) => parts,
        Err(finding) => {
            findings.push(finding);
            return None;
        }
    };
    let Some(front) = parts.front else {
        findings.push(
            Finding::of_file(
                crate::diagnostic::Level::Error,
                Code::NoFrontMatter,
                &source.path,
                "a plant opens with its facts between two lines of ---",
            )
            .write("---\nname: rose hips\nlatin: Rosa canina\n---"),
        );
        return None;
    };
    let tree = match yaml::read(front.value, front.span.start) {
        Ok(tree) => tree,
        Err(found) => {
            findings.extend(found);
            return None;
        }
    };
    let mut fields = tree.map("a plant", findings)?;
    let mut need = |key: &str, example: &str, findings: &mut Vec<Finding>| {
        let node = fields.need(key, example, findings)?;
        Some(node.text(key, findings)?.value.to_string())
    };
    let words = need("name", "name: rose hips", findings);
    let latin = need("latin", "latin: Rosa canina", findings);
    let author = need("author", "author: L.", findings);
    let family = need("family", "family: Rosaceae", findings);
    let part = need("part", "part: fruit", findings);
    let aromatic = fields.need("aromatic", "aromatic: not", findings).and_then(|node| {
        node.one_of(
            "a degree of aroma",
            &[("not", Aromatic::No), ("lightly", Aromatic::Lightly), ("strongly", Aromatic::Yes)],
            findings,
        )
    });
    let dried = fields.take("dried").and_then(|node| read_form(node, findings));
    let fresh = fields.take("fresh").and_then(|node| read_form(node, findings));
    let cautions = fields.take("cautions").map(|node| read_cautions(node, findings)).unwrap_or_default();
    if dried.is_none() && fresh.is_none() {
        findings.push(
            Finding::error(
                Code::MissingKey,
                fields.span(),
                "a plant is known dried, fresh or both; neither is here",
            )
            .write("dried: {holds: 2 mL, cup: 115 g, source: common practice}"),
        );
    }
    fields.finish(findings);
    Some(Plant {
        id: id.to_string(),
        words: words?,
        latin: latin?,
        author: author?,
        family: family?,
        hard: part.as_deref().is_some_and(is_hard),
        part: part?,
        aromatic: aromatic?.value,
        dried,
        fresh,
        cautions,
    })
}

/// Whether a part is named root, bark or wood, and no softer one beside it.
fn is_hard(part: &str) -> bool {
    const HARD: [&str; 8] = ["root", "roots", "rhizome", "rhizomes", "bark", "wood", "root bark", "twigs"];
    const BESIDE: [&str; 4] = ["and", "or", "with", "inner"];
    let mut words = part.split([' ', ',']).filter(|word| !word.is_empty()).peekable();
    words.peek().is_some() && words.all(|word| HARD.contains(&word) || BESIDE.contains(&word))
}

fn read_form(node: &Node, findings: &mut Vec<Finding>) -> Option<PlantForm> {
    let mut fields = node.map("a form of a plant", findings)?;
    let general = source_of(&mut fields, findings);
    let mut form = PlantForm::default();
    for (key, into) in [
        ("holds", &mut form.holds),
        ("holds oil", &mut form.holds_oil),
        ("holds honey", &mut form.holds_honey),
    ] {
        if let Some(node) = fields.take(key) {
            *into = cited(node, "what a gram holds", measure::volume, general.as_ref(), findings);
        }
    }
    for (key, measure) in [("teaspoon", Measure::Tsp), ("tablespoon", Measure::Tbsp), ("cup", Measure::Cup)] {
        if let Some(node) = fields.take(key)
            && let Some(weighs) = cited(node, "what it weighs", measure::mass, general.as_ref(), findings)
        {
            form.weights.push(Weight { measure, weighs });
        }
    }
    if let Some(node) = fields.take("moisture") {
        form.moisture = cited(node, "the moisture", per_cent, general.as_ref(), findings);
    }
    fields.finish(findings);
    Some(form)
}

fn per_cent(text: &str) -> Result<measure::Amount, Misread> {
    let amount = measure::per_cent(text)?;
    if amount.high < 1.0 {
        return Ok(amount);
    }
    let message = format!("`{text}` is not a share below 100 %");
    let mut misread = Misread::new(0..text.len(), Code::BadNumber, message);
    misread.why = Some("a plant that were all water would leave nothing when dried".to_string());
    Err(misread)
}

/// `2 mL`, or `{amount: 2 mL, source: ...}` where the figure has its own source.
fn cited(
    node: &Node,
    what: &str,
    by: fn(&str) -> Result<measure::Amount, Misread>,
    general: Option<&Cite>,
    findings: &mut Vec<Finding>,
) -> Option<Cited> {
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
        findings.push(
            Finding::error(Code::MissingKey, node.span, format!("no source is given for {what}"))
                .why("every figure says where it comes from, even where nobody has published it")
                .write("source: common practice")
                .write("source: memory"),
        );
        return None;
    };
    Some(Cited { value: amount.value.low, source })
}

fn source_of(fields: &mut Fields, findings: &mut Vec<Finding>) -> Option<Cite> {
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

fn read_cautions(node: &Node, findings: &mut Vec<Finding>) -> Vec<PlantCaution> {
    let mut cautions = Vec::new();
    for node in node.list("cautions", findings).unwrap_or_default() {
        let Some(mut fields) = node.map("a caution", findings) else {
            continue;
        };
        let (warning, note) = (fields.take("warning"), fields.take("note"));
        let source = source_of(&mut fields, findings);
        let span = fields.span();
        fields.finish(findings);
        let Some(node) = warning.or(note) else {
            findings.push(
                Finding::error(Code::MissingKey, span, "a caution has neither `warning` nor `note`")
                    .write("warning: Hairs in the hips irritate. Strain twice, through cloth."),
            );
            continue;
        };
        let Some(words) = node.text("a caution", findings) else {
            continue;
        };
        let Some(source) = source else {
            findings.push(
                Finding::error(Code::MissingKey, span, "a caution has no `source`")
                    .why("every caution says where it comes from, even where nobody has published it")
                    .write("source: common practice")
                    .write("source: memory"),
            );
            continue;
        };
        let (lead, text) = words.value.split_once(". ").unwrap_or((words.value.trim_end_matches('.'), ""));
        cautions.push(PlantCaution {
            lead: lead.to_string(),
            text: text.to_string(),
            source,
            note: warning.is_none(),
        });
    }
    cautions
}
