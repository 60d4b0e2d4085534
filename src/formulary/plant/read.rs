//! `plants/*.md`: a plant's facts in the front matter, each with its source, and prose below.

use super::{
    Aromatic, Ceiling, Danger, LookAlike, MadeInto, Most, Plant, PlantForm, Season, Sold, Unfit, UsualDose,
    Weight,
};
use crate::bibliography::Source as Cite;
use crate::cited::{between, cautions, cited, need_source, source_of, substitutes, texts, told, words};
use crate::diagnostic::{Code, Finding};
use crate::manuscript::facts;
use crate::measure::{self, Misread, kitchen_unit::Measure};
use crate::recipe::Preparation;
use crate::span::Source;
use crate::yaml::{Fields, Node};

/// Reads a plant's file. `id` is its name in recipes, from the file's name.
pub fn read_plant(source: &Source, id: &str, findings: &mut Vec<Finding>) -> Option<Plant> {
    let tree = facts(source, "a plant", "name: rose hips\nlatin: Rosa canina", findings)?;
    let mut fields = tree.map("a plant", findings)?;
    let mut need = |key: &str, example: &str, findings: &mut Vec<Finding>| {
        let node = fields.need(key, example, findings)?;
        Some(node.text(key, findings)?.value.to_string())
    };
    let name = need("name", "name: rose hips", findings);
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
    let known = Plant {
        id: id.to_string(),
        words: String::new(),
        also: texts(&mut fields, "also", findings),
        formerly: fields.texts("formerly", "a former name", findings),
        latin: String::new(),
        author: String::new(),
        synonym: words(&mut fields, "synonym", findings),
        family: String::new(),
        part: String::new(),
        hard: part.as_deref().is_some_and(is_hard),
        sold: several(&mut fields, "sold", "a way it is sold", Sold::NAMES, findings),
        aromatic: Aromatic::No,
        sour: noted(&mut fields, "sour", findings),
        hairs: noted(&mut fields, "hairs", findings),
        cook: time(&mut fields, "cook", findings),
        dried,
        fresh,
        season: season(&mut fields, findings),
        made_into: made_into(&mut fields, findings),
        unfit: entries(&mut fields, "not made into", unfit, findings),
        dose: dose(&mut fields, findings),
        ceilings: entries(&mut fields, "ceilings", ceiling, findings),
        no_longer: time(&mut fields, "no longer than", findings),
        cautions: cautions(&mut fields, findings),
        look_alikes: entries(&mut fields, "look-alikes", look_alike, findings),
        substitutes: substitutes(&mut fields, "plant", findings),
        status: told(&mut fields, "status", findings),
    };
    fields.finish(findings);
    Some(Plant {
        words: name?,
        latin: latin?,
        author: author?,
        family: family?,
        part: part?,
        aromatic: aromatic?.value,
        ..known
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
    let loose = [("teaspoon", Measure::Tsp), ("tablespoon", Measure::Tbsp), ("cup", Measure::Cup)];
    let pieces = Measure::PIECES.iter().map(|piece| (piece.text(), *piece));
    for (key, measure) in loose.into_iter().chain(pieces) {
        if let Some(node) = fields.take(key)
            && let Some(weighs) = cited(node, "what it weighs", measure::mass, general.as_ref(), findings)
        {
            form.weights.push(Weight { measure, weighs });
        }
    }
    if let Some(node) = fields.take("moisture") {
        form.moisture = cited(node, "the moisture", below_all, general.as_ref(), findings);
    }
    fields.finish(findings);
    Some(form)
}

fn below_all(text: &str) -> Result<measure::Amount, Misread> {
    let amount = measure::per_cent(text)?;
    if amount.high < 1.0 {
        return Ok(amount);
    }
    let message = format!("`{text}` is not a share below 100 %");
    let mut misread = Misread::new(0..text.len(), Code::BadNumber, message);
    misread.why = Some("a plant that were all water would leave nothing when dried".to_string());
    Err(misread)
}

/// `{source: ...}`: a mark whose presence says it.
fn noted(fields: &mut Fields, key: &str, findings: &mut Vec<Finding>) -> Option<Cite> {
    let what = format!("`{key}`");
    let mut inner = fields.take(key)?.map(&what, findings)?;
    let source = need_source(&mut inner, &what, findings);
    inner.finish(findings);
    source
}

/// `{time: 20 min, source: ...}`.
fn time(fields: &mut Fields, key: &str, findings: &mut Vec<Finding>) -> Option<crate::cited::Cited> {
    let what = format!("`{key}`");
    let mut inner = fields.take(key)?.map(&what, findings)?;
    let time = inner
        .need("time", "time: 20 min", findings)
        .and_then(|node| node.read("the time", measure::time, findings));
    let source = need_source(&mut inner, &what, findings);
    inner.finish(findings);
    // Of a range the longer: both keys are limits, and the shorter of the two would pass for enough.
    Some(crate::cited::Cited { value: time?.value.high, source: source? })
}

fn several<T: Copy>(
    fields: &mut Fields,
    key: &str,
    what: &str,
    known: &[(&str, T)],
    findings: &mut Vec<Finding>,
) -> Vec<T> {
    let Some(node) = fields.take(key) else { return Vec::new() };
    let list = node.each(key, findings);
    list.iter().filter_map(|node| Some(node.one_of(what, known, findings)?.value)).collect()
}

fn season(fields: &mut Fields, findings: &mut Vec<Finding>) -> Option<(Vec<Season>, Cite)> {
    let mut inner = fields.take("season")?.map("`season`", findings)?;
    inner.need("gathered", "gathered: [summer]", findings);
    let seasons = several(&mut inner, "gathered", "a season", Season::NAMES, findings);
    let source = need_source(&mut inner, "`season`", findings);
    inner.finish(findings);
    Some((seasons, source?))
}

fn made_into(fields: &mut Fields, findings: &mut Vec<Finding>) -> Option<MadeInto> {
    let mut inner = fields.take("made into")?.map("`made into`", findings)?;
    inner.need("usual", "usual: [infusion, infused honey]", findings);
    let kinds = several(&mut inner, "usual", "a preparation", &Preparation::named(), findings);
    let source = need_source(&mut inner, "`made into`", findings);
    inner.finish(findings);
    Some(MadeInto { kinds, source: source? })
}

/// The maps of a list, each read in the same way.
fn entries<T>(
    fields: &mut Fields,
    key: &str,
    read: fn(&mut Fields, &mut Vec<Finding>) -> Option<T>,
    findings: &mut Vec<Finding>,
) -> Vec<T> {
    let Some(node) = fields.take(key) else { return Vec::new() };
    let mut found = Vec::new();
    for node in node.list(&format!("`{key}`"), findings).unwrap_or_default() {
        let Some(mut fields) = node.map(&format!("an entry of `{key}`"), findings) else { continue };
        found.extend(read(&mut fields, findings));
        fields.finish(findings);
    }
    found
}

fn unfit(fields: &mut Fields, findings: &mut Vec<Finding>) -> Option<Unfit> {
    let kind = fields
        .need("preparation", "preparation: decoction", findings)
        .and_then(|node| node.one_of("a preparation", &Preparation::named(), findings));
    let because = fields
        .need("because", "because: its aroma leaves with the steam", findings)
        .and_then(|node| node.text("the reason", findings));
    let source = need_source(fields, "what it is not made into", findings);
    Some(Unfit { kind: kind?.value, because: because?.value.to_string(), source: source? })
}

fn dose(fields: &mut Fields, findings: &mut Vec<Finding>) -> Option<UsualDose> {
    let mut inner = fields.take("dose")?.map("`dose`", findings)?;
    let amount = inner
        .need("amount", "amount: 1–2 g", findings)
        .and_then(|node| node.read("what is usually taken", measure::mass, findings));
    let daily = inner.take("daily").and_then(|node| node.read("how often a day", times, findings));
    let source = need_source(&mut inner, "`dose`", findings);
    inner.finish(findings);
    Some(UsualDose { amount: amount?.value, daily: daily.map(|daily| daily.value), source: source? })
}

/// `3`, or `3–4`.
fn times(text: &str) -> Result<(f64, f64), Misread> {
    match text.split_once(['–', '-']) {
        Some((low, high)) => Ok((measure::count(low.trim())?, measure::count(high.trim())?)),
        None => measure::count(text).map(|times| (times, times)),
    }
}

fn ceiling(fields: &mut Fields, findings: &mut Vec<Finding>) -> Option<Ceiling> {
    let of = words(fields, "of", findings);
    let a_day = fields.take("most");
    let each_kg = fields.take("most for each kg");
    let holds = fields.take("holds");
    let child = fields.take("child");
    let source = need_source(fields, "a ceiling", findings);
    let mass = |node: &Node, findings: &mut Vec<Finding>| {
        Some(node.read("the most a day", measure::mass, findings)?.value.low)
    };
    let most = match (a_day, each_kg) {
        (Some(node), None) => Most::ADay(mass(node, findings)?),
        // Grams of it for a kilogram of body are thousandths for a gram.
        (None, Some(node)) => Most::ForTheBody(mass(node, findings)? / 1000.0),
        _ => {
            let message = "a ceiling has one of `most` and `most for each kg`";
            let finding = Finding::error(Code::MissingKey, fields.span(), message);
            findings.push(finding.write("most: 100 mg").write("most for each kg: 0.1 mg"));
            return None;
        }
    };
    let holds =
        holds.and_then(|node| between(node, "what a gram holds", in_a_gram, source.as_ref(), findings));
    let child = child.and_then(|node| mass(node, findings));
    if of.is_none() && (holds.is_some() || each_kg.is_some()) {
        let message = "what the ceiling is of is not said";
        findings.push(Finding::error(Code::MissingKey, fields.span(), message).write("of: coumarin"));
        return None;
    }
    Some(Ceiling { of, most, holds, child, source: source? })
}

/// `3 mg` in a gram, or a share in per cent; as a share.
fn in_a_gram(text: &str) -> Result<measure::Amount, Misread> {
    if text.contains('%') { below_all(text) } else { measure::mass(text) }
}

fn look_alike(fields: &mut Fields, findings: &mut Vec<Finding>) -> Option<LookAlike> {
    let mut text = |key: &str, example: &str, findings: &mut Vec<Finding>| {
        let node = fields.need(key, example, findings)?;
        Some(node.text(key, findings)?.value.to_string())
    };
    let what = text("plant", "plant: foxglove", findings);
    let tell = text("tell", "tell: its leaves have no stalk", findings);
    let danger = fields
        .need("danger", "danger: deadly", findings)
        .and_then(|node| node.one_of("a danger", Danger::NAMES, findings));
    let source = need_source(fields, "a look-alike", findings);
    Some(LookAlike { what: what?, danger: danger?.value, tell: tell?, source: source? })
}
