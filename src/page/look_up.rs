//! Everything that can be looked up: the list by letters, and the index that the script reads.

use std::collections::BTreeMap;

use serde::Serialize;

use super::leaf::Leaf;
use super::view::{FoundRow, Frame, Letter, Link, LookUpPage};
use crate::manuscript::{self, plain};

/// Something the book has a page or a place for.
#[derive(Clone, Debug)]
pub struct Entry {
    /// Its name, and its place from the site's root.
    pub link: Link,
    /// What it is: the end of `is-a-KIND` among the theme's words.
    pub kind: &'static str,
    /// Other names it is found by: Latin, other common names.
    pub also: Vec<String>,
}

/// The list by letters. What stands under one letter is in order of its plain spelling.
pub fn page(frame: Frame, entries: &[Entry]) -> LookUpPage {
    let mut by_letter: BTreeMap<char, Vec<(String, FoundRow)>> = BTreeMap::new();
    for entry in entries {
        let spelt = plain(&entry.link.text);
        let row = FoundRow { link: entry.link.clone(), kind: entry.kind.to_string() };
        let letter = spelt.chars().next().filter(char::is_ascii_alphabetic).unwrap_or('#');
        by_letter.entry(letter).or_default().push((spelt, row));
    }
    let letters = by_letter.into_iter().map(|(letter, mut rows)| {
        rows.sort_by(|a, b| a.0.cmp(&b.0).then_with(|| a.1.link.href.cmp(&b.1.link.href)));
        Letter {
            name: letter.to_uppercase().to_string(),
            id: if letter == '#' { "letter-other".into() } else { format!("letter-{letter}") },
            rows: rows.into_iter().map(|(_, row)| row).collect(),
        }
    });
    LookUpPage { letters: letters.collect(), frame }
}

/// The index as the script reads it: kinds once, words of all pages once, and entries that point into them.
#[derive(Serialize)]
struct Index<'a> {
    /// Letters with their plain spelling, as the words are spelt.
    plain: &'a [(&'a str, &'a str)],
    /// Words for the kinds, by number.
    kinds: Vec<String>,
    /// `[name, place, kind, other names]`.
    entries: Vec<(&'a str, &'a str, usize, String)>,
    /// Every word of the pages, and by number the entries whose pages hold it.
    words: Vec<(&'a str, Vec<usize>)>,
}

/// The index as a script that stores it in one value: a file from the disk may be run, not fetched.
/// `kind` gives the word for a kind.
pub fn index(entries: &[Entry], leaves: &BTreeMap<String, Leaf>, kind: impl Fn(&str) -> String) -> String {
    let mut kinds: Vec<&str> = entries.iter().map(|entry| entry.kind).collect();
    kinds.sort_unstable();
    kinds.dedup();
    let mut words: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
    for (n, entry) in entries.iter().enumerate() {
        // A place on a page is found by its names alone; the page itself, by all that stands on it.
        for word in leaves.get(&entry.link.href).into_iter().flat_map(|leaf| &leaf.words) {
            words.entry(word).or_default().push(n);
        }
    }
    // What stands on so many pages tells none of them from another.
    let most = entries.len() / 4;
    let index = Index {
        plain: manuscript::PLAIN,
        kinds: kinds.iter().map(|known| kind(known)).collect(),
        entries: entries
            .iter()
            .map(|entry| {
                let number = kinds.iter().position(|known| *known == entry.kind).unwrap_or_default();
                (entry.link.text.as_str(), entry.link.href.as_str(), number, entry.also.join("; "))
            })
            .collect(),
        words: words.into_iter().filter(|(_, places)| places.len() <= most.max(1)).collect(),
    };
    let text = serde_json::to_string(&index).unwrap_or_else(|_| "null".to_string());
    format!("\"use strict\";\nglobalThis.stillroomIndex = {text};\n")
}
