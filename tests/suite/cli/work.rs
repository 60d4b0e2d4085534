//! `stillroom work`: a table that fits a narrow screen, and JSON that tools can rely on.

use super::run;
use crate::kit;
use serde_json::Value;

#[test]
fn work_prints_a_table_for_a_narrow_screen() {
    let content = kit::root().join("content");
    let dir = content.to_string_lossy();
    for lesson in lessons() {
        let table = run(kit::root(), &["work", &lesson, "--of", &dir]);
        table.says(0, "\nVariations\n", "");
        for line in table.out.lines() {
            assert!(line.chars().count() <= 80 && line.trim_end() == line, "{lesson}: {line:?}");
        }
        // What is dry is weighed; what is liquid is strained and measured; what is joined was strained before.
        let lines: &[&str] = match lesson.as_str() {
            "a-tea-to-share" | "small-sweets" => &["plants", "finished-weight", "doses"],
            "two-bottles-joined" => &["finished", "doses"],
            _ => &["strained", "finished", "strength"],
        };
        for id in lines {
            assert!(
                table.out.lines().any(|line| line.starts_with(&format!("{id} "))),
                "{id} in {}",
                table.out
            );
        }
    }
}

#[test]
fn work_gives_json_that_tools_can_rely_on() {
    let content = kit::root().join("content");
    for lesson in lessons() {
        let ran = run(kit::root(), &["work", "--json", &lesson, "--of", &content.to_string_lossy()]);
        ran.says(0, "{", "");
        let all: Value = serde_json::from_str(&ran.out).expect("JSON");
        assert_eq!(
            keys(&all),
            ["ask_first", "cautions", "cost", "keeping", "lines", "never_for", "recipe", "variations"]
        );
        assert!(all["recipe"].is_string());
        looked_at(&all);
        let variations = all["variations"].as_array().expect("a list");
        assert!(!variations.is_empty());
        for variation in variations {
            assert_eq!(
                keys(variation),
                ["ask_first", "cautions", "cost", "keeping", "lines", "name", "never_for"]
            );
            assert!(variation["name"].is_string());
            looked_at(variation);
        }
    }
}

#[test]
fn work_tells_the_amounts_for_a_wanted_result() {
    let content = kit::root().join("content");
    let dir = content.to_string_lossy();
    let asked =
        |recipe: &str, wanted: &str| run(kit::root(), &["work", recipe, "--of", &dir, "--wanted", wanted]);
    // Twelve tins of 30 mL are 360 mL, whatever the recipe itself makes.
    let tins = asked("oil-and-wax#3", "12 tins of 30 mL");
    tins.says(0, "finished          finished                              360 mL", "");
    assert!(!tins.out.contains("Variations"), "{}", tins.out);
    let json = run(kit::root(), &["work", "--json", "small-sweets", "--of", &dir, "--wanted", "80 lozenges"]);
    let all: Value = serde_json::from_str(&json.out).expect("JSON");
    let pieces = all["lines"].as_array().expect("a list").iter().find(|line| line["id"] == "pieces");
    let pieces = pieces.and_then(|line| line["value"].as_f64()).expect("it is cut into pieces");
    assert!((pieces - 80.0).abs() < 1e-6, "{pieces}");
    asked("small-sweets", "500 mL").says(2, "", "it is counted or weighed: 80 pieces, 80 of 1 g");
    asked("oil-and-wax", "a dozen").says(2, "", "starts with a number");
}

/// The lessons of the demo, by their names in addresses.
fn lessons() -> Vec<String> {
    // The handouts: an address that leads on has none.
    let files = kit::files(&kit::root().join("site"), "handouts", ".html");
    files
        .iter()
        .map(|path| path.trim_start_matches("handouts/").trim_end_matches(".html").to_string())
        .collect()
}

fn keys(value: &Value) -> Vec<&str> {
    value.as_object().expect("an object").keys().map(String::as_str).collect()
}

/// The lines, cautions and keeping of a recipe or a variation.
#[track_caller]
fn looked_at(one: &Value) {
    let units = [
        "g",
        "mL",
        "min",
        "°C",
        "%",
        "kcal",
        "1",
        "g/mL",
        "mL/g",
        "mL/min",
        "kcal/g",
        "kcal/g °C",
        "kcal/min",
        "mol",
        "g/mol",
        "m",
        "Pa",
        "cm²",
        "mm",
        "cm³/mL",
    ];
    let lines = one["lines"].as_array().expect("a list");
    let mut ids = Vec::new();
    for line in lines {
        assert_eq!(keys(line), ["formula", "high", "id", "low", "name", "source", "unit", "value", "with"]);
        let number = |key: &str| line[key].as_f64().unwrap_or_else(|| panic!("{key} in {line}"));
        let (low, value, high) = (number("low"), number("value"), number("high"));
        let slack = 1e-9 * value.abs().max(1.0);
        assert!(low <= value + slack && value <= high + slack, "{line}");
        assert!(units.contains(&line["unit"].as_str().expect("a unit")), "{line}");
        assert!(line["name"].as_str().is_some_and(|name| !name.is_empty()), "{line}");
        assert!(line["source"].as_str().is_some_and(|source| !source.is_empty()), "{line}");
        ids.extend(line["id"].as_str());
        match &line["formula"] {
            Value::Null => assert!(line["with"].is_null(), "{line}"),
            formula => {
                assert!(formula.is_string(), "{line}");
                for names in line["with"].as_object().expect("an object").values() {
                    for name in names.as_array().expect("a list") {
                        assert!(
                            lines.iter().any(|other| other["name"] == *name),
                            "no line {name} for {line}"
                        );
                    }
                }
            }
        }
    }
    let mut once = ids.clone();
    once.sort_unstable();
    once.dedup();
    assert_eq!(once.len(), ids.len(), "an id is there once: {ids:?}");
    let wet = ids.contains(&"finished") && ids.contains(&"strained");
    assert!(wet || ids.contains(&"finished-weight"), "{ids:?}");
    assert_eq!(keys(&one["keeping"]), ["because", "class", "days"]);
    for caution in one["cautions"].as_array().expect("a list") {
        assert_eq!(keys(caution), ["acknowledged", "id", "source", "stop", "text"]);
        assert!(caution["stop"].is_boolean() && caution["id"].is_string(), "{caution}");
        assert!(caution["text"].as_str().is_some_and(|text| !text.is_empty()), "{caution}");
    }
}

/// A variation by its number is what it is among the others of its recipe.
#[test]
fn a_variation_alone_is_the_same() {
    let content = kit::root().join("content");
    let json = |name: &str| -> Value {
        let ran = run(kit::root(), &["work", "--json", name, "--of", &content.to_string_lossy()]);
        serde_json::from_str(&ran.out).expect("JSON")
    };
    for recipe in ["what-a-day-may-hold#3", "jars-that-wait#2"] {
        let all = json(recipe);
        for (n, among) in all["variations"].as_array().expect("a list").iter().enumerate() {
            let alone = json(&format!("{recipe}.{}", n + 1));
            assert_eq!(alone["keeping"], among["keeping"], "{recipe}.{}", n + 1);
            assert_eq!(alone["never_for"], among["never_for"], "{recipe}.{}", n + 1);
            assert_eq!(alone["lines"], among["lines"], "{recipe}.{}", n + 1);
        }
    }
}

/// Numbers set, measured and aimed at, and two recipes side by side; all within 80 columns.
#[test]
fn work_answers_what_if() {
    let content = kit::root().join("content");
    let dir = content.to_string_lossy();
    let ask = |words: &[&str]| {
        let all: Vec<&str> = ["work"].iter().chain(words).copied().chain(["--of", &dir]).collect();
        run(kit::root(), &all)
    };
    let line = |ran: &super::Ran, id: &str| {
        let found = ran.out.lines().find(|line| line.starts_with(&format!("{id} ")));
        found.unwrap_or_else(|| panic!("{id} in {}", ran.out)).to_string()
    };
    let syrup = "rose-hip-and-hibiscus-syrup";
    let set = ask(&[syrup, "--set", "honey=1"]);
    assert_eq!((set.code, set.err.as_str()), (0, ""));
    assert!(line(&set, "sweetener").contains("1,065 mL"), "as much as was strained: {}", set.out);
    let measured = ask(&[syrup, "--measured", "strained=900 mL"]);
    assert!(line(&measured, "sweetener").contains("450 mL"), "half of what was measured: {}", measured.out);
    assert!(set.out.contains("What matters most here is a guess: how wet"), "{}", set.out);
    assert!(!measured.out.contains("how wet"), "a measurement settles it: {}", measured.out);
    let both = ask(&[syrup, "--measured", "strained=900 mL", "--set", "honey=1"]);
    assert!(line(&both, "finished").contains("1,800 mL"), "{}", both.out);
    let aimed = ask(&[syrup, "--aim", "solids=65 % by honey"]);
    assert!(line(&aimed, "solids").contains("65 %"), "{}", aimed.out);
    for (words, told) in [
        (&["--set", "honey"][..], "NAME=VALUE"),
        (&["--set", "strained=1 L"], "nothing that is written is called `strained`"),
        (&["--measured", "held-back=1 L"], "not measured in a kitchen"),
        (&["--measured", "strained=1 kg"], "1 kg"),
        (&["--aim", "solids=65 %"], "by NUMBER"),
        (&["--aim", "solids=95 % by honey"], "can come to"),
        (&["--aim", "finished=2 L by rose hips", "--measured", "strained=900 mL"], "was measured"),
    ] {
        let ran = ask(&[&[syrup], words].concat());
        ran.says(2, "", told);
    }
    // What cannot be is refused, and a slip of the jug is told.
    ask(&[syrup, "--set", "minutes at a simmer=2000 min"]).says(2, "", "cannot be");
    ask(&[syrup, "--set", "=1"]).says(2, "", "NAME=VALUE");
    ask(&[syrup, "--set", "honey=0"]).says(2, "", "plain number");
    ask(&[syrup, "--measured", "strained=9000 mL"]).says(0, "9,000 mL", "look again");
    ask(&[syrup, "--wanted", "2 L", "--measured", "strained=900 mL"]).says(2, "", "cannot be used with");
    ask(&[syrup, "thyme-syrup", "--json"]).says(2, "", "cannot be used with");
    let beside = ask(&[syrup, "thyme-syrup"]);
    beside.says(0, "* they differ", "");
    let variation = ask(&[syrup, &format!("{syrup}#1.2")]);
    variation.says(0, "As much honey as liquid", "");
    let same = ask(&[syrup, syrup]);
    assert!(same.out.lines().filter(|line| line.starts_with("* ")).count() == 1, "{}", same.out);
    for ran in [&set, &measured, &aimed, &beside, &variation] {
        for line in ran.out.lines() {
            assert!(line.chars().count() <= 80 && line.trim_end() == line, "{line:?}");
        }
    }
    ask(&[syrup, &format!("{syrup}#1.99")]).says(2, "", "variation(s)");
}
