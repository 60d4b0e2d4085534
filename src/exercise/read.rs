//! An exercise block read key by key.

use super::{Answer, Compared, Cost, Draw, Exercise, Step, Within, Wrong};
use crate::diagnostic::{Code, Finding, stops};
use crate::formula::Formula;
use crate::formula::catalogue;
use crate::measure::{self, Measure, Misread, decimal};
use crate::span::Spanned;
use crate::yaml::{self, Fields, Node, Value};

/// More numbers than these in one range are a slip of the pen.
const MOST: usize = 200;
/// What is right where an author does not say.
const USUAL: Within = Within::Share(0.05);

/// Reads the exercise block whose text stands at `text.span` in its file.
pub fn read(text: &Spanned<&str>, findings: &mut Vec<Finding>) -> Option<Exercise> {
    let tree = match yaml::read(text.value, text.span.start) {
        Ok(tree) => tree,
        Err(found) => {
            findings.extend(found);
            return None;
        }
    };
    let before = findings.len();
    let mut fields = tree.map("an exercise", findings)?;
    let name =
        words(fields.need("name", "name: Honey for what you strained", findings), "the name", findings);
    let ask = words(fields.take("ask"), "the question", findings);
    let recipe = words(fields.take("recipe"), "a recipe of the lesson", findings);
    let hint = words(fields.take("hint"), "the hint", findings).map(|hint| hint.value);
    let with = fields.take("with").map(|node| read_with(node, findings)).unwrap_or_default();
    let make = fields.take("make").map(|node| read_draw(node, findings));
    let sum = fields.take("sum").map(|node| read_sum(node, findings)).unwrap_or_default();
    let within = match fields.take("within") {
        Some(node) => node.read("how near is right", near, findings).map(|within| within.value),
        None => Some(USUAL),
    };
    let measure = fields.take("in").and_then(|node| node.read("a unit", unit, findings));
    let said: Vec<&Spanned<String>> =
        ["in", "within"].into_iter().filter_map(|key| Some(fields.entry(key)?.0)).collect();
    let answer = read_answer(&mut fields, measure.map(|unit| unit.value), findings);
    fields.finish(findings);
    let in_figures = matches!(answer, None | Some(Answer::Lines(..) | Answer::Cost(_)));
    for key in said.into_iter().filter(|_| !in_figures) {
        let message = format!("`{}` says nothing about what is chosen", key.value);
        let finding = Finding::warning(Code::NotUsed, key.span, message);
        findings.push(finding.why("it is about answers in figures").write("leave it out"));
    }
    let (name, answer) = (name?, answer?);
    // Without one of its lines a sum would be about something else.
    if stops(&findings[before..]) {
        return None;
    }
    // Of what is set the question has to tell; that about the cost does so by itself.
    let set = !with.is_empty() || make.is_some();
    let asks = match answer {
        Answer::Lines(..) | Answer::Claim { .. } => true,
        Answer::Cost(_) => false,
        _ => set,
    };
    let ask = ask.filter(|ask| !ask.value.trim().is_empty());
    if ask.is_none() && asks {
        findings.push(
            Finding::error(Code::MissingKey, name.span, "an exercise needs `ask`")
                .why("the question stands there, with names in braces where figures are put in")
                .write("ask: You strained {strained}. How much honey goes in?"),
        );
        return None;
    }
    if let (false, Some(make)) = (sum.is_empty(), make.as_ref().and_then(|draw| draw.first())) {
        let message = "a sum of its own has no batch";
        findings.push(
            Finding::error(Code::WrongShape, make.span, message)
                .why("`make` is about the recipe")
                .write("a number under `with`"),
        );
        return None;
    }
    let about = matches!(answer, Answer::Keeps | Answer::UseBy(_) | Answer::Order | Answer::Cost(_));
    if about && !sum.is_empty() {
        let message = "a sum of its own is not kept, made in steps or paid for";
        findings.push(
            Finding::error(Code::WrongShape, name.span, message)
                .why("what is asked here is about a recipe")
                .write("answer: LINE"),
        );
        return None;
    }
    let ask = ask.unwrap_or(Spanned::new(String::new(), name.span));
    Some(Exercise { name, ask, recipe, with, make, sum, answer, within: within?, hint, span: text.span })
}

fn words(node: Option<&Node>, what: &str, findings: &mut Vec<Finding>) -> Option<Spanned<String>> {
    Some(node?.text(what, findings)?.map(str::to_string))
}

fn near(text: &str) -> Result<Within, Misread> {
    match text.trim() {
        "exact" => Ok(Within::Exact),
        text => measure::share_between(text, 0.001, 0.5).map(Within::Share).map_err(|_| {
            let message = format!("`{text}` is no share between 0.1 and 50 %");
            Misread::of(text, Code::BadNumber, message)
                .why("it says how far off an answer may be")
                .write("5 %")
                .write("exact")
        }),
    }
}

fn unit(text: &str) -> Result<Measure, Misread> {
    Measure::spelled(text).ok_or_else(|| {
        Misread::of(text, Code::UnknownUnit, format!("`{text}` is not a unit known here")).write("cups")
    })
}

/// Names, each with what it may be.
fn read_with(node: &Node, findings: &mut Vec<Finding>) -> Vec<(Spanned<String>, Draw)> {
    let Some(mut fields) = node.map("what is put in", findings) else { return Vec::new() };
    let rest = fields.rest();
    fields.finish(findings);
    rest.into_iter().map(|(name, node)| (name.clone(), read_draw(node, findings))).collect()
}

/// A list that says nothing would leave a version without its figure.
fn filled(node: &Node, findings: &mut Vec<Finding>) {
    if matches!(&node.value, Value::List(items) if items.is_empty()) {
        let finding = Finding::error(Code::MissingKey, node.span, "the list is empty");
        findings.push(finding.why("each version takes one of its entries").write("[600 mL, 640 mL]"));
    }
}

/// The texts of a list, or the one text; an empty list is told.
fn texts(node: &Node, what: &str, findings: &mut Vec<Finding>) -> Vec<Spanned<String>> {
    filled(node, findings);
    node.texts(what, findings)
}

/// One text, several, or a range by steps.
fn read_draw(node: &Node, findings: &mut Vec<Finding>) -> Draw {
    filled(node, findings);
    match &node.value {
        Value::List(items) => {
            items.iter().filter_map(|item| words(Some(item), "a figure", findings)).collect()
        }
        Value::Map(_) => steps(node, findings).unwrap_or_default(),
        _ => words(Some(node), "a figure", findings).into_iter().collect(),
    }
}

/// `{from: 600 mL, to: 900 mL, by: 20 mL}`.
fn steps(node: &Node, findings: &mut Vec<Finding>) -> Option<Draw> {
    let mut fields = node.map("a range of figures", findings)?;
    let mut end = |key: &str, example: &str| {
        let node = fields.need(key, example, findings)?;
        node.read("a figure", figure, findings)
    };
    let (from, to, by) = (end("from", "from: 600 mL"), end("to", "to: 900 mL"), end("by", "by: 20 mL"));
    fields.finish(findings);
    let (from, to, by) = (from?.value, to?.value, by?.value);
    let count = ((to.0 - from.0) / by.0 + 1e-9).floor();
    let wrong = if !alike(&from.1, &to.1) || !alike(&from.1, &by.1) {
        Some("from, to and by are in one unit")
    } else if count < 0.0 {
        Some("the range runs backwards")
    } else {
        (count > MOST as f64).then_some("the range has more than 200 steps")
    };
    if let Some(message) = wrong {
        findings.push(
            Finding::error(Code::BadNumber, node.span, message)
                .write("{from: 600 mL, to: 900 mL, by: 20 mL}"),
        );
        return None;
    }
    let places = (0..9)
        .find(|&places| measure::rounded(by.0, places) == by.0 && measure::rounded(from.0, places) == from.0);
    let text = |n: usize| {
        let number = decimal(from.0 + n as f64 * by.0, places.unwrap_or(9));
        Spanned::new(format!("{number}{}{}", if to.1.is_empty() { "" } else { " " }, to.1), node.span)
    };
    Some((0..=count as usize).map(text).collect())
}

/// A number and the unit behind it.
fn figure(text: &str) -> Result<(f64, String), Misread> {
    match measure::leading_number(text.trim()) {
        Some((number, unit)) if number > 0.0 => Ok((number, unit.to_string())),
        _ => {
            let message = format!("`{text}` is no figure above nothing");
            Err(Misread::of(text, Code::BadNumber, message).write("600 mL"))
        }
    }
}

/// Whether two units are one: `cup` and `cups`.
fn alike(one: &str, other: &str) -> bool {
    let unit = |text: &str| Measure::spelled(text);
    one == other || (unit(one).is_some() && unit(one) == unit(other))
}

/// Lines of a sum of its own: `honey: {share-of-volume: {share: ratio, whole: strained}}`.
fn read_sum(node: &Node, findings: &mut Vec<Finding>) -> Vec<Step> {
    let Some(mut fields) = node.map("a sum", findings) else { return Vec::new() };
    let rest = fields.rest();
    fields.finish(findings);
    rest.into_iter().filter_map(|(name, node)| read_step(name, node, findings)).collect()
}

fn read_step(name: &Spanned<String>, node: &Node, findings: &mut Vec<Finding>) -> Option<Step> {
    let mut fields = node.map("a line of the sum", findings)?;
    let rest = fields.rest();
    fields.finish(findings);
    let [(called, bound)] = rest[..] else {
        findings.push(
            Finding::error(Code::WrongShape, node.span, "a line of the sum is one formula")
                .write(format!("{}: {{share-of-volume: {{share: ratio, whole: strained}}}}", name.value)),
        );
        return None;
    };
    let Some(formula) = catalogue::named(&called.value) else {
        let known = catalogue::all().into_iter().map(|formula| formula.id);
        let finding = yaml::unknown("a formula", Spanned::new(called.value.as_str(), called.span), known);
        findings.push(finding.why("the formulas and their symbols stand on the page Method and sources"));
        return None;
    };
    let with = read_symbols(formula, bound, findings)?;
    Some(Step { name: name.clone(), formula, with })
}

/// The lines each symbol is bound to, by name; a symbol of many takes a list.
fn read_symbols(
    formula: &'static Formula,
    node: &Node,
    findings: &mut Vec<Finding>,
) -> Option<Vec<Vec<Spanned<String>>>> {
    let mut fields = node.map(&format!("`{}`", formula.id), findings)?;
    let before = findings.len();
    let mut with = Vec::new();
    for symbol in &formula.with {
        let key = symbol.words.replace('_', " ");
        let Some(node) = fields.need(&key, &format!("{key}: a name"), findings) else { continue };
        let lines = match (&node.value, symbol.many) {
            (Value::List(items), true) => {
                items.iter().filter_map(|item| words(Some(item), "a name", findings)).collect()
            }
            _ => words(Some(node), "a name", findings).into_iter().collect(),
        };
        with.push(lines);
    }
    fields.finish(findings);
    (findings.len() == before).then_some(with)
}

/// The one key that says what is asked for.
fn read_answer(fields: &mut Fields, unit: Option<Measure>, findings: &mut Vec<Finding>) -> Option<Answer> {
    const KEYS: [&str; 8] = ["answer", "claim", "keeps", "compare", "spot", "order", "use by", "cost"];
    let given: Vec<(&str, &Node)> = KEYS.iter().filter_map(|key| Some((*key, fields.take(key)?))).collect();
    let [(key, node)] = given[..] else {
        let asked: Vec<String> = given.iter().map(|(key, _)| format!("`{key}`")).collect();
        let message = match asked[..] {
            [] => "an exercise asks for nothing".to_string(),
            _ => format!("an exercise asks for one thing; this asks for {}", asked.join(" and ")),
        };
        let finding = Finding::error(Code::MissingKey, fields.span(), message);
        let finding = finding.why(format!("what is asked for is said by one of {}", KEYS.join(", ")));
        findings.push(finding.write("answer: sweetener"));
        return None;
    };
    match key {
        "answer" => {
            let lines = texts(node, "a line", findings);
            (!lines.is_empty()).then_some(Answer::Lines(lines, unit))
        }
        "claim" => read_claim(node, findings),
        "keeps" => node
            .one_of("a question about keeping", &[("out of the cold", ())], findings)
            .map(|_| Answer::Keeps),
        "compare" => read_compare(node, findings).map(Answer::Compare),
        "spot" => read_spot(node, findings),
        "order" => node.one_of("a thing to put in order", &[("steps", ())], findings).map(|_| Answer::Order),
        "use by" => {
            let mut fields = node.map("the day it is used by", findings)?;
            let made = fields.need("made", "made: [2026-10-12, 2026-10-13]", findings);
            fields.finish(findings);
            Some(Answer::UseBy(read_draw(made?, findings)))
        }
        _ => node.one_of("a cost", Cost::NAMES, findings).map(|cost| Answer::Cost(cost.value)),
    }
}

fn read_claim(node: &Node, findings: &mut Vec<Finding>) -> Option<Answer> {
    let mut fields = node.map("a claim", findings)?;
    let line = words(fields.need("line", "line: solids", findings), "a line", findings);
    let least = words(fields.take("at least"), "a figure", findings);
    let most = words(fields.take("at most"), "a figure", findings);
    fields.finish(findings);
    match (least, most) {
        (Some(limit), None) => Some(Answer::Claim { line: line?, least: true, limit }),
        (None, Some(limit)) => Some(Answer::Claim { line: line?, least: false, limit }),
        _ => {
            let message = "a claim says at least or at most how much";
            findings.push(
                Finding::error(Code::MissingKey, node.span, message)
                    .write("claim: {line: solids, at least: 65 %}"),
            );
            None
        }
    }
}

fn read_compare(node: &Node, findings: &mut Vec<Finding>) -> Option<Compared> {
    let mut fields = node.map("what is compared", findings)?;
    let lines = fields.take("lines").map(|node| texts(node, "a line", findings));
    let line = words(fields.take("line"), "a line", findings);
    let with = fields.take("with").map(|node| texts(node, "a variation", findings));
    fields.finish(findings);
    match (lines.as_deref(), line, with) {
        (Some([one, other]), None, None) => Some(Compared::Lines(one.clone(), other.clone())),
        (None, Some(line), Some(with)) => Some(Compared::Variation(line, with)),
        _ => {
            let message = "what is compared is a line with a variation's, or two lines";
            findings.push(
                Finding::error(Code::WrongShape, node.span, message)
                    .write("compare: {line: solids, with: Weaker, then reduced by half}")
                    .write("compare: {lines: [honey, sugar]}"),
            );
            None
        }
    }
}

fn read_spot(node: &Node, findings: &mut Vec<Finding>) -> Option<Answer> {
    let mut fields = node.map("what is shown", findings)?;
    let lines = fields.need("lines", "lines: [strained, sweetener, finished]", findings);
    let lines = lines.map(|node| texts(node, "a line", findings)).unwrap_or_default();
    let wrong =
        fields.need("wrong", "wrong: sweetener", findings).map(|node| texts(node, "a line", findings));
    let times = fields.take("times").map(|node| {
        let each = node.each("how many times", findings).iter();
        let each: Vec<&Node> = each.collect();
        each.into_iter()
            .filter_map(|node| node.read("how many times", measure::count, findings))
            .collect::<Vec<_>>()
    });
    let shown = fields.take("as").map(|node| texts(node, "a figure", findings));
    fields.finish(findings);
    let wrong = wrong?;
    let missing = wrong.iter().find(|wrong| !lines.iter().any(|line| line.value == wrong.value));
    if missing.is_some() || lines.len() < 2 {
        let name = missing.or(wrong.first());
        let message = format!(
            "`{}` is not among two or more lines that are shown",
            name.map_or("", |name| &name.value)
        );
        findings.push(
            Finding::error(Code::WrongShape, node.span, message)
                .why("students find the wrong one among right ones")
                .write("spot: {lines: [strained, sweetener, finished], wrong: sweetener, times: 2}"),
        );
        return None;
    }
    let shown: Vec<Wrong> = match (times, shown) {
        (Some(times), None) if times.iter().all(|times| times.value != 1.0) => {
            times.into_iter().map(|times| Wrong::Times(times.value)).collect()
        }
        (None, Some(shown)) => shown.into_iter().map(|shown| Wrong::As(shown.value)).collect(),
        _ => {
            let message = "what is wrong is shown so many `times` what it is, or `as` another figure";
            findings.push(
                Finding::error(Code::MissingKey, node.span, message).write("times: 2").write("as: 8 oz"),
            );
            return None;
        }
    };
    Some(Answer::Spot { lines, wrong, shown })
}
