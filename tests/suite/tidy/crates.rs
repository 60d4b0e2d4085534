//! Outside crates: each is named by one owner, and `Cargo.toml` says the same.

use super::code::{lines, paths, tokens};
use super::{File, none, rejects, sources};
use crate::kit;

/// Who may name an outside crate: its name in the code, and the modules under `src`.
const OWNERS: &[(&str, &[&str])] = &[
    ("annotate_snippets", &["diagnostic/print"]),
    ("clap", &["cli"]),
    ("comrak", &["manuscript"]),
    ("minify_html", &["page/shrink"]),
    ("rayon", &["press"]),
    ("imagesize", &["formulary/picture"]),
    ("jiff", &["calendar"]),
    ("lol_html", &["page/leaf"]),
    ("serde", &["page", "cli", "press"]),
    ("serde_json", &["cli", "page", "press", "reader"]),
    ("serde_yaml", &["yaml/read"]),
    ("syntect", &["page/fair_copy"]),
    ("tera", &["page/theme"]),
    ("thiserror", &["site", "press"]),
    ("walkdir", &["site/gather"]),
];

/// The lines on which a file names each outside crate, in the order of `OWNERS`; tests count.
fn named(file: &File) -> Vec<Vec<usize>> {
    let tokens = tokens(&file.text);
    let used = |at: usize| at > 0 && ["use", "crate"].contains(&tokens[at - 1].text);
    let spelt: Vec<_> =
        paths(&tokens).into_iter().filter(|path| path.parts.len() > 1 || used(path.at)).collect();
    let of = |name| {
        let spelt = spelt.iter().filter(|path| path.parts[0] == name).map(|path| path.line);
        spelt.chain(lines(&tokens, &["#", "[", name, "("])).collect()
    };
    OWNERS.iter().map(|(name, _)| of(*name)).collect()
}

fn owner_faults(file: &File) -> Vec<String> {
    let mut faults = Vec::new();
    for ((name, owners), lines) in
        OWNERS.iter().zip(named(file)).filter(|((_, owners), _)| !file.within(owners))
    {
        let fault = |line| file.at(line, format_args!("`{name}` belongs to {}", owners.join(", ")));
        faults.extend(lines.into_iter().map(fault));
    }
    faults
}

/// The dependencies of one table of `Cargo.toml`: name in the code, line, and the comment above.
fn dependencies(manifest: &str, table: &str) -> Vec<(String, usize, String)> {
    let (mut inside, mut comment, mut found) = (false, String::new(), Vec::new());
    for (number, line) in manifest.lines().enumerate() {
        if line.starts_with('[') {
            inside = line.trim() == format!("[{table}]");
        } else if let Some(words) = line.strip_prefix('#') {
            comment += words;
            continue;
        } else if let Some((key, _)) =
            line.split_once('=').filter(|_| inside && !line.starts_with([' ', '"']))
        {
            let key = key.split('.').next().unwrap_or(key).trim();
            found.push((key.replace('-', "_"), number + 1, std::mem::take(&mut comment)));
        }
        comment.clear();
    }
    found
}

fn manifest_faults(manifest: &str, owners: &[(&str, &[&str])]) -> Vec<String> {
    let of_program = dependencies(manifest, "dependencies");
    let all =
        of_program.iter().chain(&*dependencies(manifest, "dev-dependencies")).cloned().collect::<Vec<_>>();
    let bare = all.iter().filter(|(_, _, comment)| comment.trim().is_empty());
    let mut faults: Vec<_> =
        bare.map(|(name, line, _)| format!("Cargo.toml:{line}: `{name}` has no comment above it")).collect();
    for (name, line, comment) in &of_program {
        let Some((_, row)) = owners.iter().find(|(known, _)| known == name) else {
            faults.push(format!("Cargo.toml:{line}: `{name}` has no row in OWNERS"));
            continue;
        };
        let said = comment.split_once("Owner").and_then(|(_, said)| said.split_once(": "));
        let Some((_, said)) = said else { continue };
        let bare = |owner: &str| owner.trim_end_matches(['.', '/']).trim_end_matches(".rs").to_string();
        let said: Vec<_> = said.split(", ").map(bare).collect();
        if said != *row {
            faults.push(format!("Cargo.toml:{line}: `{name}` belongs to {said:?}, but to {row:?} in OWNERS"));
        }
    }
    let stale = owners.iter().filter(|(row, _)| !of_program.iter().any(|(name, ..)| name == row));
    faults.extend(stale.map(|(row, _)| format!("OWNERS: `{row}` is not a dependency")));
    faults.extend(
        manifest
            .lines()
            .filter(|line| line.contains("dependencies."))
            .map(|line| format!("{line}: write it as one line")),
    );
    faults
}

#[test]
fn each_outside_crate_has_one_owner() {
    none(
        sources("src").iter().flat_map(owner_faults).collect(),
        "Call the function the owning module offers, or give it one. OWNERS in this file says who owns what.",
    );
}

#[test]
fn each_dependency_has_its_comment_and_its_owner() {
    none(
        manifest_faults(&kit::read(&kit::root().join("Cargo.toml")), OWNERS),
        "Above each dependency goes a comment: what it does here, then `Owner: file`. OWNERS in this file says the same.",
    );
}

#[test]
fn owners_can_fail() {
    let examples = [
        ("src/page/mod.rs", "use tera::Tera;"),
        ("src/page/themes.rs", "fn f() { ::tera::g() }"),
        ("src/yaml/mod.rs", "#[serde(default)] struct A;"),
        ("src/site/mod.rs", "extern crate rayon;"),
        ("src/yaml/tests.rs", "#[cfg(test)] mod tests { use comrak::Arena; }"),
        ("src/page/theme.rs", "use tera::Tera;"),
        ("src/page/theme/files.rs", "use tera::Tera;"),
        ("src/page/view.rs", "use serde::Serialize; // tera::Tera\nlet tera = rayon.clap();"),
    ];
    rejects(owner_faults, &examples, &[0, 1, 2, 3, 4]);
    let owners: &[(&str, &[&str])] = &[("a_b", &["site/y", "z"])];
    let faults = |table: &str| {
        manifest_faults(&format!("[package]\nname = \"n\"\n[dependencies]\n{table}"), owners).len()
    };
    assert_eq!(
        faults("# What.\n# Owners: site/y.rs, z/\na-b = \"1\"\n[dev-dependencies]\n# What.\nc = \"1\""),
        0
    );
    assert_eq!(faults("# What. Derive only.\na-b = { version = \"1\" }\n[lints.rust]\nd = \"warn\""), 0);
    assert_eq!(faults("a-b = \"1\""), 1, "no comment");
    assert_eq!(faults("# What.\n\na-b = \"1\""), 1, "a comment of something else");
    assert_eq!(faults("# What. Owner: z.rs\na-b = \"1\""), 1, "another owner");
    assert_eq!(faults("# What.\na-b = \"1\"\n# What.\nc.version = \"1\""), 1, "no row");
    assert_eq!(
        faults("# What.\na-b = \"1\"\n[dev-dependencies]\nc = \"1\""),
        1,
        "no comment in the second table"
    );
    assert_eq!(faults(""), 1, "a row too many");
    assert_eq!(faults("# What.\na-b = \"1\"\n[dependencies.c]\nversion = \"1\""), 1, "a table of its own");
}

/// Owned crates that no file names.
fn idle(files: &[File]) -> Vec<String> {
    let named: Vec<_> = files.iter().map(named).collect();
    let idle = |at: &usize| named.iter().all(|lines| lines[*at].is_empty());
    (0..OWNERS.len())
        .filter(idle)
        .map(|at| format!("`{}`, for {}", OWNERS[at].0, OWNERS[at].1.join(", ")))
        .collect()
}

// Of the finished whole: this fails as long as a part of `src` is still to be written.

#[test]
fn whole_every_dependency_is_named() {
    none(
        idle(&sources("src")),
        "Nothing names these crates. Take them out of Cargo.toml and of OWNERS in this file.",
    );
}

#[test]
fn idle_crates_are_told() {
    let files = [File::of("src/press.rs", "use rayon::prelude::*; // use walkdir::WalkDir;")];
    let idle = idle(&files);
    assert!(idle.len() == OWNERS.len() - 1 && !idle.iter().any(|line| line.contains("rayon")), "{idle:?}");
}
