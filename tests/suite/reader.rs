//! What a reader's script shows against what the program prints, over random settings of every recipe of the demo and of
//! a specimen of every preparation.
//!
//! A JavaScript engine by another hand (QuickJS) runs what the press writes.

use std::collections::BTreeSet;

use rquickjs::{Context, Function, Object, Runtime};
use serde_json::{Value, json};
use stillroom::caution::{RULES, Seen};
use stillroom::formula::catalogue::all;
use stillroom::formula::equation::{Form, Writer};
use stillroom::formula::{Line, script};
use stillroom::formulary::Formulary;
use stillroom::keeping::Judged;
use stillroom::measure::{self, amount};
use stillroom::page::show::{between, other};
use stillroom::press::{open_book, read_lesson};
use stillroom::recipe::Recipe;
use stillroom::variation::{Worked, WorkedRecipe};
use stillroom::working::{How, turn_round};
use stillroom::{keeping, reader, specimens};

use crate::bench;
use crate::kit::root;

/// Numbers that follow from one another by Marsaglia's xorshift, 64 bits (13, 7, 17).
pub struct Numbers(pub u64);

impl Numbers {
    /// From nothing up to one.
    pub fn next(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A value off by up to `by` times, either way.
    fn off(&mut self, value: f64, by: f64) -> f64 {
        let times = 1.0 + (by - 1.0) * self.next();
        if self.next() < 0.5 { value / times } else { value * times }
    }
}

/// A page of the book in the engine.
const HARNESS: &str = "
    const R = stillroomReader;
    const ways = (data) => R.open(JSON.parse(data));
    let all = [];
    const take = (data) => { all = ways(data); };
    const tell = (n, set) => {
      const of = R.work(all[n], new Map(JSON.parse(set)));
      const cannot = R.impossible(of.way, of.values);
      if (cannot >= 0) return JSON.stringify([cannot]);
      const lines = of.way.lines.map((line, at) => [R.shown(of, at), R.between(of, at), R.other(of, at),
        line.kind === 'w' ? R.equation(line, (of_line) => R.shown(of, of_line)) : '']);
      const [careful, usual] = [R.judge(of), R.judge(of, false)];
      return JSON.stringify([cannot, lines, careful.class, R.because(of, careful), usual.class,
        R.cautions(of).map(({ id, lead, text }) => [id, lead, text])]);
    };
    const turned = (n, set, by, line, target) => {
      const settings = new Map(JSON.parse(set));
      const ask = by < 0 ? (amount) => R.batch(all[n], amount, settings) : (amount) => new Map(settings).set(by, amount);
      const now = by < 0 ? 1 : R.evaluate(all[n], settings)[by];
      return JSON.stringify(R.turn(all[n], ask, line, target, [now / 1000, now * 1000]).amount ?? null);
    };
    const written = (text, unit) => JSON.stringify(R.read(text, JSON.parse(unit)));
    globalThis.harness = { take, tell, turned, written };
";

/// A recipe whose time is a range.
const RANGED: &str = "name: Root, a while\npreparation: decoction\nplants: {root: 40 g dried}\nliquid: {water: 1 L}\nmethod: [{simmer: {time: 20–40 min, lid: ajar}}, {strain: squeezed}, {reduce: 1/2}]\ntake: {amount: 30 mL, daily: 2}\n";

/// The demo's book and every recipe in it, then the specimens, which have no book.
fn recipes() -> (Formulary, Vec<WorkedRecipe>) {
    let content = root().join("content");
    let (gathered, book) = open_book(&content, &mut Vec::new()).expect("the demo");
    let lessons =
        (0..book.lessons.len()).filter_map(|n| read_lesson(&gathered.dir, &book, n).expect("a lesson"));
    let mut all: Vec<WorkedRecipe> = lessons.flat_map(|lesson| lesson.recipes).flatten().collect();
    all.extend(specimens::worked().expect("specimens").iter().map(|specimen| specimen.worked.clone()));
    // One that declares a range, which none of the others does.
    all.extend(bench::work(RANGED).0);
    (book, all)
}

fn with_engine(run: impl FnOnce(&Object)) {
    let runtime = Runtime::new().expect("an engine");
    let context = Context::full(&runtime).expect("a context");
    let formulas = all();
    context.with(|js| {
        js.eval::<(), _>(script(&formulas)).expect("the formulas");
        js.eval::<(), _>(reader::script(&formulas)).expect("the rules");
        js.eval::<(), _>(HARNESS).expect("the harness");
        run(&js.globals().get("harness").expect("the harness"));
    });
}

/// What the program shows of a setting, in the harness's form.
fn told(worked: &Worked, recipe: &Recipe, book: &Formulary) -> Value {
    let working = &worked.laid.working;
    if let Some(line) = working.impossible(&worked.values) {
        return json!([line.index()]);
    }
    let shown = |line: Line| worked.shown(line);
    let lines: Vec<Value> = working
        .lines()
        .map(|line| {
            let sum = match &working.entry(line).how {
                How::Worked(by) => {
                    let atom = |symbol: stillroom::formula::expr::Symbol, at: usize| {
                        shown(by.with[symbol.index()][at])
                    };
                    Writer { form: Form::Plain, atom: &atom, with: Some(&by.with) }.write(&by.formula.is)
                }
                _ => String::new(),
            };
            json!([shown(line), between(worked, line).unwrap_or_default(), other(worked, line), sum])
        })
        .collect();
    let judged = keeping::judge(worked, recipe.ph());
    let usual = judged.usually.unwrap_or(judged.rung);
    let careful = Judged { rung: judged.rung, usually: None };
    let seen = Seen { worked, recipe, book, whole: None };
    let mut ids = BTreeSet::new();
    let mut cautions: Vec<Value> = Vec::new();
    for rule in RULES.iter().filter(|rule| rule.watched.is_some()) {
        for found in rule.cases(&seen) {
            let caution = rule.caution(&found);
            if ids.insert(caution.id.clone()) {
                cautions.push(json!([caution.id, caution.lead, caution.text]));
            }
        }
    }
    json!([-1, lines, careful.rung.class, careful.because(worked), usual.class, cautions])
}

/// A random setting: amounts and ratios off, some things measured, the batch another size. Of what nobody knows all but
/// `open` are known in this kitchen.
fn setting(worked: &Worked, open: usize, numbers: &mut Numbers) -> Vec<(Line, f64)> {
    let working = &worked.laid.working;
    let mut left = open;
    let mut set = Vec::new();
    for line in working.lines() {
        let (entry, value) = (working.entry(line), worked.at(line));
        match entry.how {
            How::Given { .. } if numbers.next() < 0.3 => set.push((line, numbers.off(value, 3.0))),
            How::Assumed { low, high, .. } if left == 0 || numbers.next() < 0.3 => {
                set.push((line, low + (high - low) * numbers.next()));
            }
            How::Assumed { .. } => left -= 1,
            How::Worked(_) if entry.measurable && numbers.next() < 0.2 => {
                set.push((line, numbers.off(value, 1.3)));
            }
            _ => {}
        }
    }
    if numbers.next() < 0.3 {
        set = working.batch_of(numbers.off(1.0, 20.0), &set);
    }
    set
}

fn as_json(set: &[(Line, f64)]) -> String {
    json!(set.iter().map(|(line, value)| json!([line.index(), value])).collect::<Vec<_>>()).to_string()
}

/// Settings of the demo's recipes with what the program shows of each, for a browser to work again.
pub fn settings(wanted: usize) -> Value {
    let (book, recipes) = recipes();
    let ways: usize = recipes.iter().map(|recipe| recipe.each().count()).sum();
    let each = wanted.div_ceil(ways);
    let mut numbers = Numbers(0x5711_1200_0B0B);
    let of = recipes.iter().map(|whole| {
        let rows = whole.each().enumerate().flat_map(|(n, (worked, recipe))| {
            let asked: Vec<Value> = (0..each)
                .map(|_| {
                    let set = setting(worked, usize::from(numbers.next() < 0.5), &mut numbers);
                    let pairs = set.iter().map(|(line, value)| json!([line.index(), value]));
                    json!([n, pairs.collect::<Vec<_>>(), told(&worked.with(&set), recipe, &book)])
                })
                .collect();
            asked
        });
        json!({"data": reader::slate(whole, &book), "rows": rows.collect::<Vec<_>>()})
    });
    of.collect()
}

/// Every line, range, sum, class and caution that a reader is shown is what the program prints: to the letter.
#[test]
fn a_reader_is_shown_what_the_program_prints() {
    let (book, recipes) = recipes();
    let ways: usize = recipes.iter().map(|recipe| recipe.each().count()).sum();
    let wanted: usize =
        std::env::var("STILLROOM_SETTINGS").ok().and_then(|n| n.parse().ok()).unwrap_or(21_000);
    let each = wanted.div_ceil(ways);
    let mut numbers = Numbers(0x5711_1200_0008);
    let (mut compared, mut possible) = (0, 0);
    let (mut classes, mut cautions, mut kinds) = (BTreeSet::new(), BTreeSet::new(), BTreeSet::new());
    with_engine(|harness| {
        let take: Function = harness.get("take").expect("take");
        let tell: Function = harness.get("tell").expect("tell");
        for whole in &recipes {
            take.call::<_, ()>((reader::slate(whole, &book).to_string(),)).expect("the page's data");
            kinds.insert(whole.recipe.preparation.value.word);
            for (n, (worked, recipe)) in whole.each().enumerate() {
                for round in 0..each {
                    // First as the recipe stands, with all that nobody knows left open.
                    let set = match round {
                        0 => Vec::new(),
                        1 => setting(worked, 6, &mut numbers),
                        _ => setting(worked, usize::from(numbers.next() < 0.5), &mut numbers),
                    };
                    let ours = told(&worked.with(&set), recipe, &book);
                    let theirs: String = tell.call((n, as_json(&set))).expect("a reader's figures");
                    // Both write the same texts in the same order; only what differs is read again.
                    let texts = ours.to_string();
                    if texts != theirs {
                        let theirs: Value = serde_json::from_str(&theirs).expect("its form");
                        assert_eq!(ours, theirs, "{}: {set:?}", worked.name);
                    }
                    compared += 1;
                    if ours[0] == -1 {
                        possible += 1;
                        classes.insert(ours[2].to_string());
                        for row in ours[5].as_array().into_iter().flatten() {
                            cautions.insert(row[0].to_string());
                        }
                    }
                }
            }
        }
    });
    assert!(compared >= 20_000 && possible * 2 > compared, "{compared} compared, {possible} of them can be");
    assert!(
        kinds.len() >= 15 && classes.len() >= 10 && cautions.len() >= 10,
        "{kinds:?} {classes:?} {cautions:?}"
    );
    println!("{compared} settings of {ways} workings, {possible} of them possible");
}

/// Turned round on the batch and on each declared number, the script gives the same bits, or no answer where the
/// program has none.
#[test]
fn targets_agree_to_the_bit() {
    let (book, recipes) = recipes();
    let mut numbers = Numbers(0x0007_A46E_7500);
    let (mut met, mut missed) = (0, 0);
    with_engine(|harness| {
        let take: Function = harness.get("take").expect("take");
        let turned: Function = harness.get("turned").expect("turned");
        for whole in &recipes {
            take.call::<_, ()>((reader::slate(whole, &book).to_string(),)).expect("the page's data");
            let base = &whole.base;
            let working = &base.laid.working;
            let Some(made) = base.made() else { continue };
            let given = working.lines().filter(|line| matches!(working.entry(*line).how, How::Given { .. }));
            for by in std::iter::once(None).chain(given.map(Some)).take(6) {
                let target = numbers.off(base.at(made), 4.0);
                let now = by.map_or(1.0, |by| base.at(by));
                // What a reader set stays so, but for the number that is moved.
                let other =
                    |line: &Line| matches!(working.entry(*line).how, How::Given { .. }) && Some(*line) != by;
                let set: Vec<(Line, f64)> = working
                    .lines()
                    .filter(|line| other(line) && numbers.next() < 0.2)
                    .map(|line| (line, base.at(line) * 1.1))
                    .collect();
                let ask = |amount: f64| match by {
                    None => working.batch_of(amount, &set),
                    Some(by) => set.iter().copied().chain([(by, amount)]).collect(),
                };
                let ours = turn_round(working, ask, made, target, (now / 1000.0, now * 1000.0)).ok();
                let place = by.map_or(-1, |by| by.index() as i32);
                let theirs: String =
                    turned.call((0, as_json(&set), place, made.index(), target)).expect("an answer");
                let theirs: Option<f64> = (theirs != "null").then(|| theirs.parse().expect("a number"));
                assert_eq!(
                    ours.map(f64::to_bits),
                    theirs.map(f64::to_bits),
                    "{}: {by:?} to {target}",
                    base.name
                );
                if ours.is_some() { met += 1 } else { missed += 1 }
            }
        }
    });
    assert!(met > 60 && missed > 20, "{met} met, {missed} missed");
}

/// What a reader writes is read as an author's amounts are; what is refused there is refused here.
#[test]
fn a_reader_writes_as_an_author_does() {
    let volume = json!({"text": "mL", "kind": "volume", "places": 1, "printed": 1}).to_string();
    let mass = json!({"text": "g", "kind": "mass", "places": 1, "printed": 1}).to_string();
    let celsius = json!({"text": "°C", "kind": "temperature", "places": 1, "printed": 1}).to_string();
    let share = json!({"text": "", "kind": "", "places": 2, "printed": 1}).to_string();
    with_engine(|harness| {
        let written: Function = harness.get("written").expect("written");
        let read = |text: &str, unit: &str| -> Value {
            let found: String = written.call((text, unit)).expect("read");
            serde_json::from_str(&found).expect("its form")
        };
        for (unit, texts) in [
            (
                &volume,
                &[
                    "2 cups",
                    "1 1/2 cups",
                    "½ tsp",
                    "1½ cups",
                    "1/3 cup",
                    "12 fl. oz.",
                    "1,600 mL",
                    "34 fl oz",
                    "16.9 fl oz",
                    "0.5 L",
                    "3 Pints",
                ][..],
            ),
            (&mass, &["7 oz", "1 lb", "12.5 g", "1 kg", "2 oz (weight)"]),
            (&celsius, &["100 °F", "38 °C", "38.5 degrees C"]),
        ] {
            for text in texts {
                let ours = amount(text).or_else(|_| measure::mass(text)).expect("an author's amount").low;
                let theirs = read(text, unit)["value"].as_f64().unwrap_or(f64::NAN);
                assert!((ours - theirs).abs() <= 1e-12 * ours.abs(), "{text}: {ours} against {theirs}");
                // Whole numbers of a unit to the bit: a count that hangs on one must not jump.
                let whole = text.split(' ').next().is_some_and(|number| number.parse::<u32>().is_ok());
                assert!(!whole || ours.to_bits() == theirs.to_bits(), "{text}: {ours} against {theirs}");
            }
        }
        for (text, unit, value) in
            [("480", &volume, 480.0), ("50 %", &share, 0.5), ("1/2", &share, 0.5), ("0.75", &share, 0.75)]
        {
            assert_eq!(read(text, unit)["value"], value, "{text}");
        }
        for (text, unit, fault) in [
            ("", &volume, "empty"),
            ("some", &volume, "no-number"),
            ("0 mL", &volume, "nothing"),
            ("-3 mL", &volume, "no-number"),
            ("3 oz", &volume, "ounce"),
            ("3 g", &volume, "other-kind"),
            ("3 spoons", &volume, "unknown-unit"),
            ("1/0", &volume, "no-number"),
            ("99999999999 mL", &volume, "too-much"),
            ("1 2 mL", &volume, "no-number"),
        ] {
            assert_eq!(read(text, unit)["fault"], fault, "{text}");
        }
    });
}

/// A reader is offered what is declared, what nobody wrote down, and what is this kitchen's own, each under its head: the
/// demo has lines of every kind, among the kitchen's its altitude and its stove.
#[test]
fn every_kind_of_line_is_told_apart() {
    let (book, recipes) = recipes();
    let (mut kinds, mut kitchen) = (BTreeSet::new(), BTreeSet::new());
    for whole in &recipes {
        let data = reader::slate(whole, &book);
        for line in data["ways"][0]["lines"].as_array().expect("lines") {
            let kind = line[2].as_str().expect("a kind").to_string();
            if kind == "k" {
                kitchen.insert(line[0].as_str().expect("a name").to_string());
            }
            kinds.insert(kind);
        }
    }
    assert_eq!(kinds.into_iter().collect::<String>(), "agklprw");
    assert!(kitchen.contains("altitude") && kitchen.contains("power of the stove"), "{kitchen:?}");
}
