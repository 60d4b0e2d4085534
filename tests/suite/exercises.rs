//! Exercises: the numbers of each version, the answers held back, and every answer of the demo against a sum by hand.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use stillroom::aim;
use stillroom::calendar::Day;
use stillroom::exercise::{self, Answer, Exercise, Posed, Right, Stage, pose};
use stillroom::manuscript::Block;
use stillroom::measure::unit::ONE;
use stillroom::press::{self, Read, open_book, read_lesson};
use stillroom::span::{Span, Spanned};
use stillroom::yaml::{self, Node};

use crate::kit;

const LESSON: &str = r#"---
title: Leaf and syrup
---

Text.

```recipe
name: Leaf syrup
preparation: syrup
plants: {leaf: 100 g dried}
liquid: {water: 1:10 w/v}
method: [{steep: 10 min}, {strain: squeezed}, {sweeten: {honey: 1/2 of the liquid by volume}}, {bottle: 250 mL}]
take: {amount: 1 tsp, daily: 3}
exercises: usual
variations:
  - name: As much honey as liquid
    change: {sweeten: {honey: equal to the liquid by volume}}
```

```exercise
name: Honey for what you strained
ask: You strained {strained}. How much honey?
with: {strained: {from: 600 mL, to: 900 mL, by: 20 mL}}
answer: sweetener
```
"#;
const PLANT: &str = "---\nname: leaf\nlatin: Planta\nauthor: L.\nfamily: any\npart: leaf\naromatic: not\ndried: {moisture: 10 %, cup: 20 g, source: common practice}\n---\n\nAny.\n";

/// A book of one lesson whose exercises are set as this says.
fn book(set: &str) -> tempfile::TempDir {
    let folder = kit::fresh_folder();
    let dir = folder.path().join("content");
    let write = |path: &str, text: &str| {
        let path = dir.join(path);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("the disk");
        std::fs::write(path, text).expect("the disk");
    };
    write(
        "formulary.yaml",
        &format!("book: B\ntitle: T\nprices: {{currency: £, leaf: 5.00 for 200 g}}\n{set}"),
    );
    write("plants/leaf.md", PLANT);
    write("lessons/01-leaf.md", LESSON);
    folder
}

fn lesson(folder: &Path) -> Read {
    let dir = folder.join("content");
    let mut findings = Vec::new();
    let (gathered, book) = open_book(&dir, &mut findings).expect("the disk");
    let read = read_lesson(&gathered.dir, &book, 0).expect("the disk").expect("a lesson");
    assert!(findings.is_empty() && read.findings.is_empty(), "{findings:?} {:?}", read.findings);
    read
}

/// The questions of a version, in one text.
fn version(read: &Read, n: usize) -> String {
    let posed = read.exercised.iter().map(|exercised| &exercised.versions[n]);
    let text =
        |posed: &Posed| format!("{} {:?} {:?} = {}\n", posed.ask, posed.shown, posed.options, posed.answer());
    posed.map(text).collect()
}

/// A seed gives every press the same six versions, each with other numbers; another seed gives others.
#[test]
fn versions_differ_and_stay() {
    let of = |set: &str| {
        let folder = book(set);
        let read = lesson(folder.path());
        (0..6).map(|n| version(&read, n)).collect::<Vec<_>>()
    };
    let first = of("exercises: {seed: 7, versions: 6}\n");
    assert_eq!(first.iter().collect::<BTreeSet<_>>().len(), 6, "{first:#?}");
    assert_eq!(first, of("exercises: {seed: 7, versions: 6}\n"));
    assert_ne!(first, of("exercises: {seed: 8, versions: 6}\n"));
}

/// Every usual kind is made of a recipe that has the lines for it, and each is answered from the same working: half of
/// what was strained is the honey, whatever was strained.
#[test]
fn the_usual_ones_are_made_of_any_recipe() {
    let folder = book("exercises: {seed: 3, versions: 6}\n");
    let read = lesson(folder.path());
    let names: Vec<&str> =
        read.exercised.iter().map(|exercised| exercised.versions[0].name.as_str()).collect();
    for kind in [
        "What follows",
        "How many",
        "In another measure",
        "Find the mistake",
        "Which has more",
        "In order",
        "Does it keep",
        "Read the label",
        "What it costs",
        "What is paid for it",
    ] {
        assert!(names.contains(&kind), "{kind}: {names:?}");
    }
    let own =
        read.exercised.iter().find(|exercised| exercised.versions[0].name == "Honey for what you strained");
    let versions = &own.expect("the author's own exercise").versions;
    let asked: BTreeSet<&str> = versions.iter().map(|posed| posed.ask.as_str()).collect();
    assert_eq!(asked.len(), 6, "each version has another number: {asked:?}");
    for posed in versions {
        let digits: String = posed.ask.chars().filter(char::is_ascii_digit).collect();
        let strained: f64 = digits.parse().expect("the only number of the question");
        let Right::Figures(answers) = &posed.right else { panic!("{posed:?}") };
        assert!((answers[0].value - strained / 2.0).abs() < 1e-9, "{}", posed.ask);
    }
}

fn pressed(folder: &Path, today: Option<&str>) -> BTreeMap<String, String> {
    let site = folder.join("site");
    let today = today.map(|day| Day::read(day).expect("a day"));
    let outcome =
        press::press(&folder.join("content"), &site, today, &|| {}).expect("the folders can be used");
    assert!(outcome.written, "{:?}", outcome.findings);
    let files = kit::files(&site, ".", "").into_iter();
    let text =
        |path: &String| String::from_utf8_lossy(&std::fs::read(site.join(path)).expect("there")).into_owned();
    files.map(|path| (path.trim_start_matches("./").to_string(), text(&path))).collect()
}

/// Before their day the answers are nowhere in the site: no page, nothing to check with, nothing in the booklet or in
/// what is kept; a press that does not know the day holds them back too. From their day on they are there.
#[test]
fn answers_are_held_back_by_not_being_pressed() {
    let folder = book("exercises: {seed: 7, versions: 2, answers from: 2026-10-06}\n");
    for today in [None, Some("2026-10-05")] {
        let site = pressed(folder.path(), today);
        assert!(!site.keys().any(|path| path.starts_with("answers")), "{:?}", site.keys());
        for (path, text) in &site {
            assert!(!text.contains("answers/leaf"), "{today:?}: {path}");
            assert!(!text.contains("key to the exercises"), "{today:?}: {path}");
            let script = path.ends_with(".js");
            assert!(script || !text.contains("check-data"), "{today:?}: {path}");
        }
        for page in ["lessons/leaf.html", "exercises/leaf.html"] {
            assert!(site[page].contains("6 October 2026"), "{page} does not say when");
        }
    }
    let site = pressed(folder.path(), Some("2026-10-06"));
    assert!(site["answers/leaf.html"].contains("Honey for what you strained"));
    for page in ["lessons/leaf.html", "exercises/leaf.html"] {
        assert!(site[page].contains("check-data") && site[page].contains("../answers/leaf.html"), "{page}");
    }
    assert!(site["booklet.html"].contains("key to the exercises"));
}

/// Every template of the trade's exercise sheet but one with its own numbers, put to the demo's exercises: what comes out
/// is what the sheet prints, or what a sum by hand gives where it prints none.
#[test]
fn the_trades_exercise_sheet() {
    let sheet = yaml::read(&kit::read(&kit::root().join("tests/data/exercises.yaml")), 0).expect("the sheet");
    let content = kit::root().join("content");
    let (gathered, book) = open_book(&content, &mut Vec::new()).expect("the demo");
    let mut lessons: BTreeMap<String, Read> = BTreeMap::new();
    let mut templates = BTreeSet::new();
    for row in sheet.items() {
        let text = |key: &str| row.under(key).and_then(Node::plain).unwrap_or_default();
        let (slug, name) = (text("lesson"), text("exercise"));
        let n = book.lessons.iter().position(|head| head.slug == slug).expect("a lesson");
        let read = || read_lesson(&gathered.dir, &book, n).expect("the disk").expect("a lesson");
        let lesson = lessons.entry(slug).or_insert_with(read);
        let mut exercise = declared(lesson, &name);
        for (key, value) in row.under("with").map(Node::entries).unwrap_or_default() {
            let draw = vec![Spanned::new(value.plain().expect("a figure"), exercise.name.span)];
            match exercise.with.iter_mut().find(|(known, _)| known.value == key.value) {
                Some((_, known)) => *known = draw,
                None => exercise.with.push((Spanned::new(key.value.clone(), exercise.name.span), draw)),
            }
        }
        if row.under("make").is_some() {
            exercise.make = Some(vec![Spanned::new(text("make"), exercise.name.span)]);
        }
        let of = lesson.manuscript.blocks.iter().rposition(|recipe| recipe.info.start < exercise.span.start);
        let recipe = lesson.recipes[of.unwrap_or(0)].as_ref();
        let stage = Stage { recipe, book: &book, made: None };
        let posed = pose(&exercise, &stage, 1, 0).unwrap_or_else(|finding| panic!("{name}: {finding:?}"));
        let within: f64 = text("within").parse().expect("a share");
        let wanted = row.under("answers").map(Node::items).unwrap_or_default();
        let template = text("template");
        match &posed.right {
            Right::Figures(answers) => {
                assert_eq!(answers.len(), wanted.len(), "{template} {name}");
                for (answer, wanted) in answers.iter().zip(wanted) {
                    let Some(wanted) = wanted.plain().and_then(|text| text.parse::<f64>().ok()) else {
                        continue;
                    };
                    let ours = answer.asked_in.map_or(answer.value, |unit| unit.of_base(answer.value));
                    let ours = if answer.unit.text == "mg" { ours * 1000.0 } else { ours };
                    let off = (ours - wanted).abs();
                    assert!(off <= within * wanted + 1e-9, "{template} {name}: {ours} against {wanted}");
                }
            }
            Right::Option(place) => {
                assert_eq!(Some(posed.options[*place].clone()), wanted[0].plain(), "{template} {name}");
            }
            Right::Order(_) => panic!("{name} has no figures"),
        }
        templates.insert(template.parse::<u32>().expect("a number"));
    }
    let missing: Vec<u32> = (1..=55).filter(|template| !templates.contains(template)).collect();
    assert_eq!(missing, [52], "template 52 is the calendar's own check");
}

/// An exercise of a lesson as its author wrote it.
fn declared(lesson: &Read, name: &str) -> Exercise {
    let read = |block: &Block| {
        let text = Spanned::new(block.text.value.as_str(), block.text.span);
        exercise::read(&text, &mut Vec::new()).filter(|exercise| exercise.name.value == name)
    };
    lesson.manuscript.asides.iter().find_map(read).unwrap_or_else(|| panic!("no exercise {name}"))
}

/// The demo has at least forty exercises of its own, of every kind of answer.
#[test]
fn the_demo_asks_in_every_way() {
    let content = kit::root().join("content");
    let (gathered, book) = open_book(&content, &mut Vec::new()).expect("the demo");
    let mut kinds: BTreeMap<&str, usize> = BTreeMap::new();
    for n in 0..book.lessons.len() {
        let lesson = read_lesson(&gathered.dir, &book, n).expect("the disk").expect("a lesson");
        for block in &lesson.manuscript.asides {
            let text = Spanned::new(block.text.value.as_str(), block.text.span);
            let exercise = exercise::read(&text, &mut Vec::new()).expect("it is sound");
            let kind = match exercise.answer {
                Answer::Lines(..) if exercise.sum.is_empty() => "a recipe's lines",
                Answer::Lines(..) => "a sum of its own",
                Answer::Claim { .. } => "a claim",
                Answer::Keeps => "keeping",
                Answer::Compare(_) => "compared",
                Answer::Spot { .. } => "a mistake",
                Answer::Order => "an order",
                Answer::UseBy(_) => "a date",
                Answer::Cost(_) => "a cost",
            };
            *kinds.entry(kind).or_default() += 1;
        }
        for exercised in &lesson.exercised {
            assert_eq!(exercised.versions.len(), 6, "{}", book.lessons[n].path);
        }
    }
    assert!(kinds.values().sum::<usize>() >= 40 && kinds.len() == 9, "{kinds:?}");
}

/// What the README shows is what the program reads: the block as it stands, and a ratio as a class writes it.
#[test]
fn the_readme_shows_what_is_read() {
    let readme = kit::read(&kit::root().join("README.md"));
    let block = readme.split("    ```exercise\n").nth(1).and_then(|rest| rest.split("    ```\n").next());
    let text: String = block.expect("an exercise").lines().map(|line| format!("{}\n", &line[4..])).collect();
    let mut findings = Vec::new();
    let read = exercise::read(&Spanned::new(text.as_str(), Span::new(0, text.len())), &mut findings);
    assert!(read.is_some() && findings.is_empty(), "{findings:?}");
    for (written, value) in [("1/2", 0.5), ("1", 1.0), ("1 1/2", 1.5), ("50 %", 0.5)] {
        assert_eq!(aim::value(written, &ONE).ok(), Some(value), "{written}");
    }
}
