//! How the repository is kept, as tests: each says what to do when it fails, and each is shown to fail.
//!
//! A rule is a function from texts to faults, so that it can be tried on a few words held in memory.
//! "The program" below means `src` without its tests.

mod code;
mod crates;
mod tree;

use crate::kit;
use code::{TestFile, Token, depths, lines, paths, reads, shipped, tokens};
use std::collections::{BTreeMap, BTreeSet};

/// Functions of floats that answer differently from one machine to the next, or that lead to those.
const FLOAT: &[&str] = &[
    "powf", "powi", "exp", "exp2", "exp_m1", "ln", "ln_1p", "log", "log2", "log10", "sqrt", "cbrt", "hypot",
    "sin", "cos", "tan",
];

/// Panics that may stay: file, what is called, how often, and why.
const PANICS: &[(&str, &str, usize, &str)] =
    &[("src/measure/ratio.rs", "panic", 1, "in a const fn for tables: it stops the compiler, never a press")];

/// What reaches outside the program: the path, the modules that may, and what to do elsewhere.
const REACHES: &[(&[&str], &[&str], &str)] = &[
    (&["HashMap"], &[], "use BTreeMap: no order may hang on hashing"),
    (&["HashSet"], &[], "use BTreeSet: no order may hang on hashing"),
    (&["SystemTime", "now"], &["press", "cli"], "hand the time in: two presses of one book are the same"),
    (&["Instant", "now"], &["press", "cli"], "hand the time in: two presses of one book are the same"),
    (&["env", "var"], &["cli"], "hand the setting in from cli"),
    (&["env", "var_os"], &["cli"], "hand the setting in from cli"),
    (&["env", "vars"], &["cli"], "hand the setting in from cli"),
    (&["std", "fs"], &["site", "page/theme"], "take the text as an argument: site gathers and writes"),
];

/// A source file: its path from the root, its text, and whether it holds only tests.
struct File {
    path: String,
    text: String,
    test: bool,
}

impl File {
    /// A small one for trying a rule.
    fn of(path: &str, text: &str) -> File {
        File { path: path.into(), text: text.into(), test: false }
    }

    /// The tokens that belong to the program.
    fn program(&self) -> Vec<Token<'_>> {
        if self.test { Vec::new() } else { shipped(&tokens(&self.text)).0 }
    }

    /// The top-level module it belongs to; none for `lib.rs` and `main.rs`.
    fn module(&self) -> Option<&str> {
        let name = self.path.strip_prefix("src/")?;
        let module = name.split_once('/').map_or_else(|| name.trim_end_matches(".rs"), |(module, _)| module);
        (module != "lib" && module != "main").then_some(module)
    }

    /// Whether it belongs to one of these modules, given as `page/theme`.
    fn within(&self, modules: &[&str]) -> bool {
        modules.iter().any(|module| {
            let rest = self.path.strip_prefix("src/").and_then(|path| path.strip_prefix(module));
            rest.is_some_and(|rest| rest == ".rs" || rest.starts_with('/'))
        })
    }

    /// A fault at one of its lines.
    fn at(&self, line: usize, fault: impl std::fmt::Display) -> String {
        format!("{}:{line}: {fault}", self.path)
    }
}

/// Every source file below a folder; tests are told by the `#[cfg(test)] mod` that names the file.
fn sources(folder: &str) -> Vec<File> {
    let paths = kit::files(kit::root(), folder, ".rs");
    let mut files: Vec<_> =
        paths.iter().map(|path| File::of(path, &kit::read(&kit::root().join(path)))).collect();
    mark_tests(&mut files);
    files
}

fn mark_tests(files: &mut [File]) {
    let mut tests = BTreeSet::new();
    for file in files.iter() {
        let (folder, name) = file.path.rsplit_once('/').unwrap_or(("", &file.path));
        let own = if matches!(name, "mod.rs" | "lib.rs" | "main.rs") {
            folder
        } else {
            file.path.trim_end_matches(".rs")
        };
        for named in shipped(&tokens(&file.text)).1 {
            match named {
                TestFile::Placed(path) => drop(tests.insert(format!("{folder}/{path}"))),
                TestFile::Named(name) => {
                    tests.extend([format!("{own}/{name}.rs"), format!("{own}/{name}/mod.rs")])
                }
            }
        }
    }
    files.iter_mut().for_each(|file| file.test = tests.contains(&file.path));
}

/// Fails with every fault and the advice.
#[track_caller]
fn none(faults: Vec<String>, advice: &str) {
    assert!(faults.is_empty(), "\n{}\n\n{advice}\n", faults.join("\n"));
}

/// Asserts that a rule finds faults in just these examples, counted from nought.
#[track_caller]
fn rejects(rule: impl Fn(&File) -> Vec<String>, examples: &[(&str, &str)], wanted: &[usize]) {
    let rejected = |at: &usize| !rule(&File::of(examples[*at].0, examples[*at].1)).is_empty();
    assert_eq!((0..examples.len()).filter(rejected).collect::<Vec<_>>(), wanted);
}

// Layers.

/// The top-level modules in the order `lib.rs` gives them.
fn order(lib: &str) -> Vec<&str> {
    let tokens = tokens(lib);
    let item = |at: &usize| reads(&tokens, *at, &["mod"]) && reads(&tokens, *at + 2, &[";"]);
    (0..tokens.len()).filter(item).map(|at| tokens[at + 1].text).collect()
}

fn layer_faults(order: &[&str], file: &File) -> Vec<String> {
    let Some(own) = file.module() else {
        return Vec::new();
    };
    let Some(place) = order.iter().position(|module| *module == own) else {
        return vec![file.at(1, format_args!("`{own}` is not a module of src/lib.rs"))];
    };
    let program = file.program();
    let depths = depths(&program);
    let deep = file.path.trim_end_matches(".rs").trim_end_matches("/mod").split('/').count() - 1;
    let mut faults = Vec::new();
    for path in paths(&program) {
        let supers = path
            .parts
            .iter()
            .skip_while(|part| **part == "self")
            .take_while(|part| **part == "super")
            .count();
        if supers >= deep + depths[path.at] && path.parts.last() != Some(&"super") {
            faults.push(file.at(
                path.line,
                "`super::` leads out of the module; write `crate::`, so that the layer shows",
            ));
        }
        let ["crate", used, ..] = path.parts[..] else {
            continue;
        };
        match order.iter().position(|module| *module == used) {
            Some(other) if other <= place => {}
            Some(_) => {
                faults.push(file.at(path.line, format_args!("`{own}` uses `{used}`, which stands below it")))
            }
            None => {
                faults.push(file.at(path.line, format_args!("`crate::{used}` names no module of src/lib.rs")))
            }
        }
    }
    faults
}

#[test]
fn each_module_uses_only_modules_above_it() {
    let lib = kit::read(&kit::root().join("src/lib.rs"));
    let order = order(&lib);
    none(
        sources("src").iter().flat_map(|file| layer_faults(&order, file)).collect(),
        "src/lib.rs gives the reading order. Move what is needed up into a module above, or hand it in as an\n\
         argument. Only where a whole module belongs elsewhere, move its line in src/lib.rs.",
    );
}

#[test]
fn layers_can_fail() {
    let order = order("//! pub mod no;\npub mod a;\npub mod b; /* pub mod no; */\npub(crate) mod c;");
    assert_eq!(order, ["a", "b", "c"]);
    let examples = [
        ("src/b.rs", "use crate::c::X;"),
        ("src/b/x.rs", "fn f() { crate::c::g() }"),
        ("src/b.rs", "use crate::{a::X, c};"),
        ("src/b.rs", "use crate::Loose;"),
        ("src/d.rs", ""),
        ("src/b/mod.rs", "use super::c::X;"),
        ("src/b/x.rs", "use super::{super::c};"),
        ("src/b.rs", "mod x { use super::super::c; }"),
        ("src/b.rs", "use crate::a::X; use crate::b::Y; // crate::c\nconst C: &str = r#\"crate::c\"#;"),
        ("src/b/x.rs", "use super::y::Z; pub(in super::super) struct A; mod x { use super::super::y; }"),
        ("src/b.rs", "#[cfg(test)] mod tests { use crate::c::X; use super::*; }"),
        ("src/main.rs", "fn main() { stillroom::c::run() }"),
    ];
    rejects(|file| layer_faults(&order, file), &examples, &[0, 1, 2, 3, 4, 5, 6, 7]);
    let mut files = [
        File::of("src/a/mod.rs", "#[cfg(test)] mod tests; mod free;"),
        File::of("src/a/tests.rs", ""),
        File::of("src/a/free.rs", "#[cfg(test)] #[path = \"free_tests.rs\"] mod tests;"),
        File::of("src/a/free_tests.rs", ""),
        File::of("src/a/other_tests.rs", ""),
    ];
    mark_tests(&mut files);
    assert_eq!(files.map(|file| file.test), [false, true, false, true, false]);
}

// Files.

fn shape_faults(file: &File) -> Vec<String> {
    let most = if file.path.starts_with("tests/") || file.path.ends_with("tests.rs") { 500 } else { 400 };
    let long = file.text.lines().count();
    let opens = file
        .text
        .strip_prefix("//!")
        .is_some_and(|rest| !rest.lines().next().unwrap_or("").trim().is_empty());
    let bare = (!opens).then(|| file.at(1, "does not open with `//!` and what the file is for"));
    bare.into_iter().chain((long > most).then(|| file.at(long, format_args!("over {most} lines")))).collect()
}

#[test]
fn files_are_short_and_say_what_they_are_for() {
    none(
        [sources("src"), sources("tests")].iter().flatten().flat_map(shape_faults).collect(),
        "Open every file with a sentence on what it is for and what it may not do. Split a long one where its\n\
         subject splits, or move its tests to a file of their own, named `..._tests.rs`.",
    );
}

#[test]
fn shapes_can_fail() {
    let lines = |count: usize| format!("//! What.\n{}", "\n".repeat(count - 1));
    let (longest, over, tests, over_tests) = (lines(400), lines(401), lines(500), lines(501));
    let examples = [
        ("src/a.rs", "use b;"),
        ("src/a.rs", "//!\n//! Later."),
        ("src/a.rs", &over),
        ("src/a_tests.rs", &over_tests),
        ("src/a.rs", &longest),
        ("src/a_tests.rs", &tests),
        ("tests/suite/a.rs", &tests),
    ];
    rejects(shape_faults, &examples, &[0, 1, 2, 3]);
}

// What the program may not call.

fn float_faults(file: &File) -> Vec<String> {
    let program = file.program();
    let called = |name: &&str| lines(&program, &[".", name, "("]);
    let spelt = paths(&program);
    let handed = spelt
        .iter()
        .filter(|path| FLOAT.iter().any(|name| path.has(&["f64", name]) || path.has(&["f32", name])));
    let all: BTreeSet<_> = FLOAT.iter().flat_map(called).chain(handed.map(|path| path.line)).collect();
    all.into_iter().map(|line| file.at(line, "a function of floats that the platform gives")).collect()
}

fn panic_faults(allowed: &[(&str, &str, usize, &str)], file: &File) -> Vec<String> {
    let program = file.program();
    let mut found = BTreeMap::<&str, Vec<usize>>::new();
    for name in ["unwrap", "expect", "unwrap_err", "expect_err"] {
        let handed = paths(&program)
            .into_iter()
            .filter(|path| path.parts.len() > 1 && path.parts.last() == Some(&name));
        found.insert(
            name,
            lines(&program, &[".", name, "("]).into_iter().chain(handed.map(|path| path.line)).collect(),
        );
    }
    for name in ["panic", "todo", "unimplemented", "unreachable"] {
        found.insert(name, lines(&program, &[name, "!"]));
    }
    let mut faults = Vec::new();
    for (name, lines) in found {
        let row = allowed.iter().find(|(path, known, ..)| *path == file.path && *known == name);
        let most = row.map_or(0, |row| row.2);
        if lines.len() > most {
            faults.extend(
                lines.iter().map(|line| file.at(*line, format_args!("`{name}`, where {most} are allowed"))),
            );
        } else if lines.len() < most {
            faults.push(
                file.at(1, format_args!("PANICS allows more of `{name}` than there are: take the row back")),
            );
        }
    }
    faults
}

fn reach_faults(file: &File) -> Vec<String> {
    let program = file.program();
    let all = tokens(&file.text);
    let mut faults = Vec::new();
    for (wanted, owners, advice) in REACHES.iter().filter(|(_, owners, _)| !file.within(owners)) {
        // Hashing may not decide what a test sees either.
        let tokens = if owners.is_empty() { &all } else { &program };
        let found = paths(tokens).into_iter().filter(|path| path.has(wanted)).map(|path| path.line);
        faults.extend(found.map(|line| file.at(line, format_args!("`{}`: {advice}", wanted.join("::")))));
    }
    faults
}

#[test]
fn no_platform_float_functions() {
    none(
        sources("src").iter().flat_map(float_faults).collect(),
        "Their last digit differs between machines. Use the functions of src/formula/exact.rs.",
    );
}

#[test]
fn the_program_does_not_panic() {
    none(
        sources("src").iter().flat_map(|file| panic_faults(PANICS, file)).collect(),
        "What an author wrote is never a reason to panic: return a finding, or shape the types so that the case\n\
         cannot arise. A panic that only a wrong table can reach goes into PANICS in this file, with the reason.",
    );
    let gone: Vec<_> =
        PANICS.iter().filter(|row| !kit::root().join(row.0).exists()).map(|row| row.0.to_string()).collect();
    none(gone, "PANICS names these files, which are gone: take the rows out.");
}

#[test]
fn only_the_rim_touches_the_world() {
    none(
        sources("src").iter().flat_map(reach_faults).collect(),
        "Disk, clock and environment are read at the rim (REACHES in this file) and handed in as values.",
    );
}

#[test]
fn calls_can_fail() {
    let floats = [
        ("src/a.rs", "x.powf(2.0)"),
        ("src/a.rs", "1.5f64\n    .sqrt()"),
        ("src/a.rs", "xs.map(f64::ln)"),
        (
            "src/a.rs",
            "exact::ln(x) + x.exponent() + row.exp // x.powi(2)\n#[cfg(test)] mod tests { fn f() { x.exp() } }",
        ),
    ];
    rejects(float_faults, &floats, &[0, 1, 2]);
    let panics = [
        ("src/a.rs", "x.unwrap()"),
        ("src/a.rs", "x\n.expect(\"b\")"),
        ("src/a.rs", "xs.map(Option::unwrap)"),
        ("src/a.rs", "todo!()"),
        ("src/a.rs", "std::panic!(\"b\")"),
        ("src/two.rs", "panic!(); panic!()"),
        ("src/two.rs", ""),
        ("src/two.rs", "panic!()"),
        ("src/a.rs", "/// x.unwrap()\nfn f() { x.unwrap_or(1); debug_assert!(y, \"panic!()\"); expect(1) }"),
        ("src/a.rs", "#[cfg(test)] mod tests { fn f() { x.unwrap() } }"),
    ];
    rejects(|file| panic_faults(&[("src/two.rs", "panic", 1, "")], file), &panics, &[0, 1, 2, 3, 4, 5, 6]);
    let reaches = [
        ("src/cli/mod.rs", "use std::collections::{BTreeMap, HashMap};"),
        ("src/a.rs", "#[cfg(test)] mod tests { use std::collections::HashSet; }"),
        ("src/page/mod.rs", "let at = std::time::Instant::now();"),
        ("src/press.rs", "std::env::var(\"A\")"),
        ("src/press.rs", "use std::{fs, io};"),
        ("src/cli/mod.rs", "std::fs::write(a, b)"),
        ("src/cli/mod.rs", "use std::env; let a = env::var_os(\"A\"); SystemTime::now();"),
        ("src/press.rs", "Instant::now()"),
        ("src/site/gather.rs", "use std::fs;"),
        ("src/page/theme.rs", "std::fs::read(a) // HashMap"),
        ("src/a.rs", "use std::fmt; env!(\"A\"); #[cfg(test)] mod tests { use std::fs; }"),
    ];
    rejects(reach_faults, &reaches, &[0, 1, 2, 3, 4, 5]);
}

// Of the finished whole: these fail as long as a part of `src` is still to be written.

/// The variants that a macro such as `works! { ... }` is given.
fn listed<'a>(list: &'a str, name: &str) -> Vec<&'a str> {
    let tokens = tokens(list);
    let Some(open) = (0..tokens.len()).find(|&at| reads(&tokens, at, &[name, "!", "{"])) else {
        return Vec::new();
    };
    let inside = tokens[open + 3..].iter().take_while(|token| token.text != "}");
    inside.filter(|token| token.is_word()).map(|token| token.text).collect()
}

/// The variants of the list in `home` that the rest of the program never writes as `Kind::Variant`.
fn unused(files: &[File], home: &str, list: &str, kind: &str) -> Vec<String> {
    let others: Vec<_> = files.iter().filter(|file| file.path != home).map(File::program).collect();
    let spelt: Vec<_> = others.iter().flat_map(|program| paths(program)).collect();
    let home = files.iter().find(|file| file.path == home).map_or("", |file| &file.text);
    let listed = listed(home, list);
    assert!(!listed.is_empty(), "no `{list}! {{ ... }}` was found: tell this test where the list went");
    let unused = listed.into_iter().filter(|name| !spelt.iter().any(|path| path.has(&[kind, name])));
    unused.map(|name| format!("{kind}::{name}")).collect()
}

#[test]
fn whole_every_work_is_cited() {
    none(
        unused(&sources("src"), "src/bibliography.rs", "works", "Work"),
        "No figure, formula or caution cites these works. Cite them where they are followed, or take them out.",
    );
}

#[test]
fn whole_every_code_is_found() {
    none(
        unused(&sources("src"), "src/diagnostic/code.rs", "codes", "Code"),
        "Nothing finds these codes, though the manual prints them. Write the check, or take the code out.",
    );
}

#[test]
fn unused_variants_are_told() {
    let home = "macro_rules! works { () => { Work::D } }\nworks! { A \"a\" \"A B\"; C \"c\"; D \"d\"; E \"e\"; }\nfn f() { Work::E }";
    let used = "use x::Work::{self, A}; // Work::C\n#[cfg(test)] mod tests { fn f() { Work::D } }";
    let files = [File::of("src/home.rs", home), File::of("src/used.rs", used)];
    assert_eq!(unused(&files, "src/home.rs", "works", "Work"), ["Work::C", "Work::D", "Work::E"]);
}
