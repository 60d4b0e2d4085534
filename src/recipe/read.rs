//! The recipe block read key by key; every fault of the block is gathered.

use super::read_step::{begins_with_a_product, read_method, read_plants};
use super::{Aim, Assume, Keep, Liquid, LiquidAmount, Menstruum, Preparation, Recipe, Shape, Take, change};
use crate::diagnostic::{Code, Finding};
use crate::materia::{Assumption, HONEY_GRAVITY, HONEY_MOISTURE, assumptions};
use crate::measure::unit::PER_CENT_WV;
use crate::measure::{self, Dimension, Form, Misread};
use crate::pantry::Pantry;
use crate::people::age_in_months;
use crate::span::{Span, Spanned};
use crate::yaml::{self, Node, Value};

const PLANTS: &str = "plants: {rosehip: 200 g dried}";

/// Reads the recipe block whose text stands at `text.span` in its file.
///
/// What of the pantry extracts is looked up in `pantry`.
pub fn read(text: &Spanned<&str>, pantry: &Pantry, findings: &mut Vec<Finding>) -> Option<Recipe> {
    let tree = match yaml::read(text.value, text.span.start) {
        Ok(tree) => tree,
        Err(found) => {
            findings.extend(found);
            return None;
        }
    };
    let mut recipe = read_tree(&tree, text.span, pantry, findings)?;
    recipe.variations = change::read_variations(&tree, text.span, pantry, findings);
    Some(recipe)
}

/// Reads the tree of a recipe; its `variations` are left to the caller, who changes the tree first.
pub(super) fn read_tree(
    tree: &Node,
    span: Span,
    pantry: &Pantry,
    findings: &mut Vec<Finding>,
) -> Option<Recipe> {
    let mut fields = tree.map("a recipe", findings)?;
    let name = fields
        .need("name", "name: Rose hip and hibiscus syrup", findings)
        .and_then(|node| node.text("the name", findings))
        .map(|name| name.map(str::to_string));
    let preparation = fields
        .need("preparation", "preparation: syrup", findings)
        .and_then(|node| node.one_of("a preparation", &Preparation::named(), findings));
    let shape = preparation.as_ref().map_or(Shape::Poured, |kind| kind.value.shape);
    let (plants, liquid, method) = if shape == Shape::Dry {
        let plants =
            fields.need("plants", PLANTS, findings).map(|node| read_plants(node, "the plants", findings));
        dry(&mut fields, findings);
        (plants, Some(None), Some(Vec::new()))
    } else {
        let steps = fields.need(
            "method",
            "method: [{simmer: {time: 30 min, lid: on}}, {strain: squeezed}]",
            findings,
        );
        let method = steps.map(|node| read_method(node, findings));
        // What is made of other products alone needs neither plants nor a liquid of its own.
        let joined = steps.is_some_and(begins_with_a_product);
        let has_liquid = fields.take("liquid").is_some();
        if shape == Shape::Kneaded
            && let Some((written, _)) = fields.entry("liquid")
        {
            let word = preparation.as_ref().map_or("this", |kind| kind.value.word);
            findings.push(
                Finding::error(Code::WrongShape, written.span, format!("a {word} has no `liquid`"))
                    .why("powders are kneaded with little: what wets them stands in `knead`, or is combined before it")
                    .write("- knead: {sugar: 1:7 w/w, water: 12 mL}"),
            );
        }
        if shape == Shape::Kneaded || (shape == Shape::Either && !has_liquid) {
            let plants =
                fields.need("plants", PLANTS, findings).map(|node| read_plants(node, "the plants", findings));
            (plants, Some(None), method)
        } else if joined && fields.take("plants").is_none() && fields.take("liquid").is_none() {
            (Some(Vec::new()), Some(None), method)
        } else {
            let plants =
                fields.need("plants", PLANTS, findings).map(|node| read_plants(node, "the plants", findings));
            let liquid = fields
                .need("liquid", "liquid: {water: 1:4 w/v}", findings)
                .and_then(|node| read_liquid(node, pantry, findings));
            (plants, liquid.map(Some), method)
        }
    };
    let keep = fields.take("keep").and_then(|node| node.one_of("a way of keeping", Keep::NAMES, findings));
    let take = fields.take("take").and_then(|node| read_take(node, findings));
    let from_age = fields
        .take("from age")
        .and_then(|node| node.read("the age it is taken from", age_in_months, findings));
    let acknowledge = fields.take("acknowledge").map(|node| read_reasons(node, findings)).unwrap_or_default();
    let ph = fields.take("measured").and_then(|node| read_measured(node, findings));
    let assume = fields.take("assume").map(|node| read_assume(node, findings)).unwrap_or_default();
    let weight = fields
        .take("weight")
        .and_then(|node| node.read("what the plants weigh together", measure::mass, findings));
    let wanted = fields.take("wanted").map(|node| read_wanted(node, findings)).unwrap_or_default();
    let aims = fields.take("aim").map(|node| read_aims(node, findings)).unwrap_or_default();
    let exercises = fields
        .take("exercises")
        .and_then(|node| node.one_of("a kind of exercises", &[("usual", ())], findings))
        .map(|asked| asked.span);
    fields.take("variations");
    fields.finish(findings);
    Some(Recipe {
        name: name?,
        preparation: preparation?,
        plants: plants?,
        weight,
        liquid: liquid?,
        method: method?,
        keep,
        take,
        from_age,
        acknowledge,
        ph,
        assume,
        wanted,
        aims,
        exercises,
        variations: Vec::new(),
        span,
    })
}

/// A blend is weighed and mixed: nothing is poured on it, and its one step is known.
fn dry(fields: &mut yaml::Fields, findings: &mut Vec<Finding>) {
    for key in ["liquid", "method"] {
        if let Some((written, _)) = fields.entry(key) {
            findings.push(
                Finding::error(Code::WrongShape, written.span, format!("a tea blend has no `{key}`"))
                    .why("a blend is dry: its plants are weighed and mixed")
                    .write("preparation: infusion"),
            );
        }
    }
}

fn read_liquid(node: &Node, pantry: &Pantry, findings: &mut Vec<Finding>) -> Option<Spanned<Liquid>> {
    let mut fields = node.map("the liquid", findings)?;
    let strength = fields.take("strength").or_else(|| fields.take("acidity"));
    let from = fields.take("from");
    let mut found = None;
    let water = (Menstruum::Water.words(), (Menstruum::Water, None));
    let shelf = pantry.names(|kind| Menstruum::of(kind).is_some()).into_iter().filter_map(|name| {
        let item = pantry.item(name)?;
        Some((name, (Menstruum::of(item.kind)?, Some(item))))
    });
    for (word, kind) in std::iter::once(water).chain(shelf) {
        let Some((key, amount)) = fields.entry(word) else { continue };
        if let Some((_, other, _)) = &found {
            findings.push(
                Finding::error(Code::WrongShape, key.span, format!("`{word}` stands beside `{other}`"))
                    .why("one liquid extracts; another is poured in by a step")
                    .write("fortify: {spirit: 80 mL, strength: 40 %}"),
            );
            continue;
        }
        found = Some((kind, word, amount));
    }
    let span = fields.span();
    fields.finish(findings);
    let Some(((kind, item), word, amount)) = found else {
        if !findings.iter().any(|finding| finding.code == Code::UnknownKey && inside(finding.span, span)) {
            findings.push(
                Finding::error(Code::MissingKey, span, "the liquid is not named")
                    .write("liquid: {water: 1:4 w/v}"),
            );
        }
        return None;
    };
    let amount = amount.read(&format!("the {word}"), |text| liquid_amount(text, kind), findings);
    let share = |node: Option<&Node>, findings: &mut Vec<Finding>| match node {
        Some(node) => {
            node.read("how strong it is", |text| measure::share_between(text, 0.01, 1.0), findings).map(Some)
        }
        None => Some(None),
    };
    let (strength, from) = (share(strength, findings)?, share(from, findings)?);
    Some(amount?.map(|amount| Liquid { kind, item: item.cloned(), amount, strength, from }))
}

fn inside(span: Option<Span>, outer: Span) -> bool {
    span.is_some_and(|span| outer.start <= span.start && span.end <= outer.end)
}

/// `1:4 w/v`, `1:4 w/v of fresh`, or a measured amount; honey and oil may be weighed.
fn liquid_amount(text: &str, kind: Menstruum) -> Result<LiquidAmount, Misread> {
    if !text.contains(':') {
        return match kind {
            Menstruum::Honey | Menstruum::Oil => measure::mass_or_volume(text),
            _ => measure::volume(text),
        }
        .map(LiquidAmount::Measured);
    }
    let (ratio, form) = match text.rsplit_once(" of ") {
        Some((ratio, "fresh")) => (ratio, Some(Form::Fresh)),
        Some((ratio, "dried")) => (ratio, Some(Form::Dried)),
        _ => (text, None),
    };
    measure::liquid_ratio(ratio).map(|ratio| LiquidAmount::Ratio(ratio, form))
}

fn read_take(node: &Node, findings: &mut Vec<Finding>) -> Option<Take> {
    let mut fields = node.map("how it is taken", findings)?;
    let amount = fields
        .need("amount", "take: {amount: 1–2 tsp, daily: 1}", findings)
        .and_then(|node| node.read("a dose", measure::dose, findings));
    let daily = fields
        .need("daily", "daily: 3", findings)
        .and_then(|node| node.read("doses a day", measure::count, findings));
    let people = match fields.take("people") {
        Some(node) => node.read("the people", measure::count, findings),
        None => Some(Spanned::new(1.0, fields.span())),
    };
    fields.finish(findings);
    Some(Take { amount: amount?, daily: daily?, people: people? })
}

/// Results for which the amounts are shown.
fn read_wanted(node: &Node, findings: &mut Vec<Finding>) -> Vec<Spanned<measure::Wanted>> {
    let list = match node.is_scalar() {
        true => std::slice::from_ref(node),
        false => node.list("what is wanted", findings).unwrap_or_default(),
    };
    list.iter().filter_map(|node| node.read("what is wanted", measure::wanted, findings)).collect()
}

/// `{line: solids, to: 65 %, by: honey}`, one or several.
fn read_aims(node: &Node, findings: &mut Vec<Finding>) -> Vec<Aim> {
    let list = match &node.value {
        Value::List(items) => items,
        _ => std::slice::from_ref(node),
    };
    let mut aims = Vec::new();
    for node in list {
        let Some(mut fields) = node.map("an aim", findings) else { continue };
        let mut text = |key: &str, example: &str, findings: &mut Vec<Finding>| {
            let node = fields.need(key, example, findings)?;
            Some(node.text(key, findings)?.map(str::to_string))
        };
        let line = text("line", "line: solids", findings);
        let to = text("to", "to: 65 %", findings);
        let by = text("by", "by: honey", findings);
        fields.finish(findings);
        if let (Some(line), Some(to), Some(by)) = (line, to, by) {
            aims.push(Aim { line, to, by });
        }
    }
    aims
}

/// What was measured on the finished preparation: its pH.
fn read_measured(node: &Node, findings: &mut Vec<Finding>) -> Option<Spanned<f64>> {
    let mut fields = node.map("what was measured", findings)?;
    let ph = fields.need("pH", "measured: {pH: 3.8}", findings);
    fields.finish(findings);
    ph?.read("the pH", ph_of, findings)
}

fn ph_of(text: &str) -> Result<f64, Misread> {
    match text.trim().parse::<f64>() {
        Ok(value) if (0.0..=14.0).contains(&value) => Ok(value),
        _ => {
            let message = format!("`{text}` is not a pH between 0 and 14");
            Err(Misread::new(0..text.len(), Code::BadNumber, message))
        }
    }
}

/// Names of cautions, each with why the author goes on all the same.
fn read_reasons(node: &Node, findings: &mut Vec<Finding>) -> Vec<(Spanned<String>, Spanned<String>)> {
    let Some(mut fields) = node.map("what is acknowledged", findings) else { return Vec::new() };
    let entries = fields.rest();
    fields.finish(findings);
    let mut reasons = Vec::new();
    for (name, node) in entries {
        match node.text("the reason", findings) {
            Some(reason) if reason.value.trim().is_empty() => findings.push(
                Finding::error(
                    Code::MissingKey,
                    name.span,
                    format!("no reason is given for `{}`", name.value),
                )
                .why("the reason is printed beside the caution")
                .write(format!("{}: why it is done all the same", name.value)),
            ),
            Some(reason) => reasons.push((name.clone(), reason.map(str::to_string))),
            None => {}
        }
    }
    reasons
}

fn read_assume(node: &Node, findings: &mut Vec<Finding>) -> Vec<Assume> {
    let Some(mut fields) = node.map("what is assumed", findings) else {
        return Vec::new();
    };
    let mut own = Vec::new();
    for (key, node) in fields.rest() {
        let Some(what) = assumptions().find(|assumption| assumption.id == key.value) else {
            findings.push(yaml::unknown(
                "an assumption",
                Spanned::new(&key.value, key.span),
                assumptions().map(|assumption| assumption.id),
            ));
            continue;
        };
        let by = |text: &str| match what.unit.dimension {
            Dimension::NONE => share(text, what),
            Dimension::TIME => measure::time(text),
            Dimension::TEMPERATURE => measure::temperature(text),
            dimension if dimension == PER_CENT_WV.dimension => measure::per_cent(text),
            // By the gram or by the minute: the words of the assumption say which.
            _ => measure::volume(text),
        };
        if let Some(amount) = node.read(what.words, by, findings) {
            own.push(Assume { what, amount });
        }
    }
    fields.finish(findings);
    own
}

/// A share that is assumed, in per cent.
fn share(text: &str, what: &Assumption) -> Result<measure::Amount, Misread> {
    let amount = measure::per_cent(text).map_err(|mut misread| {
        // 1.5 times as wet is 150 %; 17 of water in honey can only be 17 %.
        if let (Code::NoUnit, true, Ok(times)) =
            (misread.code, what.unit.text.is_empty(), text.trim().parse::<f64>())
        {
            misread.write = vec![format!("{} %", measure::rounded(times * 100.0, 2))];
        }
        misread
    })?;
    let (least, most) = HONEY_GRAVITY.within;
    if what.id == HONEY_MOISTURE.id && (amount.low < least || amount.high > most) {
        let message = format!("`{}` is outside the table that honey is worked by", text.trim());
        let mut misread = Misread::new(0..text.len(), Code::BadNumber, message);
        misread.why = Some(format!(
            "it goes from {} to {} % of water",
            measure::rounded(least * 100.0, 1),
            measure::rounded(most * 100.0, 1)
        ));
        return Err(misread);
    }
    Ok(amount)
}

/// Whether a node holds nothing but one value.
pub(super) fn is_scalar(node: &Node) -> bool {
    matches!(node.value, Value::Scalar(_))
}
