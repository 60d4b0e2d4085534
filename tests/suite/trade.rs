//! The trade's tables of variations and worked examples, preparation by preparation, row by row.
//!
//! All of it is common practice, no source: class handouts' own arithmetic. The data stand in
//! `tests/data/trade`. A figure agrees within 2 % or half of the last digit printed; where ours is another,
//! the data say what it is and why, and that is held to 1 %: a difference that goes away has to be taken out.

use crate::bench::{self, Tried};
use crate::kit;
use stillroom::formulary::Formulary;
use stillroom::keeping::judge;
use stillroom::measure::amount;
use stillroom::working::Id;
use stillroom::yaml::{self, Node, Value};

/// The entries of a map.
fn entries(node: &Node) -> impl Iterator<Item = (&str, &Node)> {
    let entries = match &node.value {
        Value::Map(entries) => &entries[..],
        _ => &[],
    };
    entries.iter().map(|(key, node)| (key.value.as_str(), node))
}

fn get<'a>(node: &'a Node, key: &str) -> Option<&'a Node> {
    entries(node).find(|(name, _)| *name == key).map(|(_, node)| node)
}

fn text(node: &Node) -> &str {
    match &node.value {
        Value::Scalar(scalar) => &scalar.text,
        _ => panic!("one value was wanted at byte {}", node.span.start),
    }
}

/// A book of the file's own plants: `holds: 2 mL` is of whatever liquid, `fresh holds: 1 mL` of fresh ones.
fn book(file: &Node) -> Formulary {
    let mut book = Formulary::default();
    for (id, figures) in get(file, "plants").into_iter().flat_map(entries) {
        let mut forms = [("dried", String::new()), ("fresh", String::new())];
        for (key, value) in entries(figures) {
            let (n, key) = key.strip_prefix("fresh ").map_or((0, key), |key| (1, key));
            let keys: &[&str] = if key == "holds" { &["holds", "holds oil", "holds honey"] } else { &[key] };
            for key in keys {
                forms[n].1.push_str(&format!("{key}: {}, ", text(value)));
            }
        }
        let written = forms.iter().filter(|(_, figures)| !figures.is_empty());
        let written: Vec<String> =
            written.map(|(form, figures)| format!("{form}: {{{figures}source: common practice}}")).collect();
        bench::plant(&mut book, id, &written.join("\n"));
    }
    book
}

/// A printed figure in base units (per cents as shares), and half of its last digit; of a fraction none.
fn printed(text: &str) -> (f64, f64) {
    let (digits, unit) = text.split_once(' ').unwrap_or((text, ""));
    let half = match digits.split_once('.') {
        None => "0.5".to_string(),
        Some((_, places)) => format!("0.{}5", "0".repeat(places.len())),
    };
    let base = |text: &str, digits: &str| match unit {
        "" => digits.parse::<f64>().unwrap_or_else(|_| panic!("`{text}` is no figure")),
        "cm²" => digits.parse::<f64>().expect("a number of square centimetres") * 1e-4,
        _ => amount(text).unwrap_or_else(|fault| panic!("{text}: {fault:?}")).low,
    };
    let half = if unit.contains('/') { 0.0 } else { base(&format!("{half} {unit}"), &half) };
    (base(text, digits), half)
}

/// Our figure for a key of the data.
fn ours(tried: &Tried, key: &str) -> f64 {
    let put_in = || {
        let poured = [Id::Water, Id::Spirit, Id::Liquid].into_iter().find_map(|id| tried.value(id));
        poured.expect("something is poured on")
    };
    match key {
        "strained share" => tried.of(Id::Plants) / tried.of(Id::Strained),
        "finished share" => tried.of(Id::Plants) / tried.of(Id::Finished),
        "put-in share" => tried.of(Id::Plants) / put_in(),
        "plant-per-dose whole" => tried.of(Id::Plants) / tried.of(Id::Doses),
        "plant-per-piece" => tried.of(Id::Plants) / tried.of(Id::Pieces),
        _ => match Id::ALL.iter().find(|id| id.text() == key) {
            Some(id) => tried.of(*id),
            None => tried.named(key),
        },
    }
}

/// Keys and figures of one list, those under `named` among them.
fn figures(list: Option<&Node>) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for (key, node) in list.into_iter().flat_map(entries) {
        match key {
            "named" => {
                found.extend(entries(node).map(|(key, node)| (key.to_string(), text(node).to_string())))
            }
            _ => found.push((key.to_string(), text(node).to_string())),
        }
    }
    found
}

/// What is wrong in a row, and how many of its figures agree and differ.
fn row(book: &Formulary, row: &Node, faults: &mut Vec<String>) -> (usize, usize) {
    let name = text(get(row, "row").expect("a row has a name"));
    let lines = text(get(row, "recipe").expect("a row has a recipe"));
    let (worked, findings) = bench::work_in(book, &bench::text(lines));
    let Some(worked) = worked.filter(|_| !stillroom::diagnostic::stops(&findings)) else {
        faults.push(format!("{name}: not worked: {findings:#?}"));
        return (0, 0);
    };
    let class = judge(&worked.base, None).rung.class;
    let tried = Tried::from(worked.base);
    let (agree, differ) = (figures(get(row, "printed")), figures(get(row, "differs")));
    for (key, said) in &agree {
        if key == "class" {
            if class != said {
                faults.push(format!("{name}: class {class}, printed {said}"));
            }
            continue;
        }
        let ((figure, half), ours) = (printed(said), ours(&tried, key));
        if (ours - figure).abs() > (0.02 * figure).max(half) * (1.0 + 1e-9) {
            faults.push(format!("{name}: {key} {ours}, printed {said} ({figure})"));
        }
    }
    for (key, said) in &differ {
        let (figure, why) = said.split_once(": ").unwrap_or((said, ""));
        if why.is_empty() {
            faults.push(format!("{name}: {key}: no reason is given"));
        }
        if key == "class" {
            if class != figure {
                faults.push(format!("{name}: class {class}, said to be {figure}"));
            }
            continue;
        }
        let ((figure, half), ours) = (printed(figure), ours(&tried, key));
        if (ours - figure).abs() > (0.01 * figure).max(half) * (1.0 + 1e-9) {
            faults.push(format!("{name}: {key} {ours}, said to be {said}"));
        }
    }
    (agree.len(), differ.len())
}

#[test]
fn every_row_of_the_trades_tables() {
    let files = kit::files(kit::root(), "tests/data/trade", ".yaml");
    let (mut faults, mut rows, mut agree, mut differ) = (Vec::new(), 0, 0, 0);
    for path in &files {
        let file = yaml::read(&kit::read(&kit::root().join(path)), 0)
            .unwrap_or_else(|found| panic!("{path}: {found:?}"));
        let book = book(&file);
        let Some(Node { value: Value::List(list), .. }) = get(&file, "rows") else {
            panic!("{path} has no rows");
        };
        let mut found = Vec::new();
        for each in list {
            let (same, other) = row(&book, each, &mut found);
            rows += 1;
            agree += same;
            differ += other;
        }
        faults.extend(found.into_iter().map(|fault| format!("{path}: {fault}")));
    }
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
    // Seventeen sections, every row; a file or a row left out would go unnoticed otherwise.
    assert!(files.len() >= 17 && rows >= 218, "{} files, {rows} rows", files.len());
    assert!(agree >= 800 && differ <= 90, "{agree} agree, {differ} differ");
}
