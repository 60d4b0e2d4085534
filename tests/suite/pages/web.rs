//! What hosts, readers' programs and machines ask for: the map of the site, the feed, linked data, look up, and what is
//! kept for reading without a connection.

use super::rules::all;
use super::{NOWHERE, demo, pages};
use scraper::Html;
use serde_json::Value;
use std::collections::BTreeSet;

const ADDRESS: &str = "https://lowmeadow.example/stillroom/";

fn text(site: &std::collections::BTreeMap<String, Vec<u8>>, path: &str) -> String {
    String::from_utf8(site[path].clone()).expect("text")
}

/// Everything between two signs, as often as they occur.
fn between<'a>(text: &'a str, open: &str, close: &str) -> Vec<&'a str> {
    text.split(open).skip(1).filter_map(|rest| rest.split(close).next()).collect()
}

/// The sitemap protocol (sitemaps.org, 0.9): `urlset`, a `url` with its `loc` a page, whole addresses, dates of the W3C.
#[test]
fn the_map_lists_every_page() {
    let site = demo();
    let map = text(&site, "sitemap.xml");
    assert!(map.contains("<urlset xmlns=\"http://www.sitemaps.org/schemas/sitemap/0.9\">"));
    let listed: BTreeSet<&str> = between(&map, "<loc>", "</loc>").into_iter().collect();
    let leads_on =
        |html: &str| html.contains("http-equiv=refresh") || html.contains("http-equiv=\"refresh\"");
    let wanted: BTreeSet<String> = pages(&site)
        .into_iter()
        .filter(|(path, html)| path != NOWHERE && !leads_on(html))
        .map(|(path, _)| format!("{ADDRESS}{}", if path == "index.html" { "" } else { &path }))
        .collect();
    assert_eq!(listed, wanted.iter().map(String::as_str).collect::<BTreeSet<_>>());
    // Taught on 22 September and corrected on the 29th: a correction is a change.
    let syrup =
        format!("{ADDRESS}lessons/rose-hip-and-hibiscus-syrup.html</loc><lastmod>2026-09-29</lastmod>");
    assert!(map.contains(&syrup), "{map}");
}

/// RFC 4287, 4.1.1 and 4.1.2: a feed and each entry have exactly one id, title and updated; a feed has an author. Ids
/// differ.
#[test]
fn the_feed_is_one() {
    let feed = text(&demo(), "feed.xml");
    let (head, _) = feed.split_once("<entry>").expect("an entry");
    for element in ["id", "title", "updated", "author"] {
        assert_eq!(head.matches(&format!("<{element}>")).count(), 1, "{element}");
    }
    let entries = between(&feed, "<entry>", "</entry>");
    assert!(entries.len() >= 14 + 2, "{}", entries.len());
    let mut ids = BTreeSet::new();
    let mut days = Vec::new();
    for entry in &entries {
        for element in ["id", "title", "updated"] {
            assert_eq!(entry.matches(&format!("<{element}>")).count(), 1, "{element}: {entry}");
        }
        assert!(ids.insert(between(entry, "<id>", "</id>")[0]), "{entry}");
        days.push(between(entry, "<updated>", "</updated>")[0]);
    }
    assert!(days.windows(2).all(|two| two[0] >= two[1]), "the latest first: {days:?}");
    assert_eq!(between(head, "<updated>", "</updated>")[0], days[0]);
}

/// schema.org: a `LearningResource` with its parts, `Recipe` for what is eaten or drunk and `HowTo` for what is not;
/// durations by ISO 8601. The first lesson takes 2 h 50 min by its own clock.
#[test]
fn machines_are_told_the_same() {
    let pages = pages(&demo());
    let told = |path: &str| -> Value {
        let html = Html::parse_document(&pages[path]);
        let script = all(&html, "script[type=\"application/ld+json\"]");
        assert_eq!(script.len(), 1, "{path}");
        serde_json::from_str(&script[0].text().collect::<String>()).expect("JSON")
    };
    let syrup = told("lessons/rose-hip-and-hibiscus-syrup.html");
    assert_eq!(syrup["@type"], "LearningResource");
    assert_eq!(syrup["url"], format!("{ADDRESS}lessons/rose-hip-and-hibiscus-syrup.html"));
    let recipe = &syrup["hasPart"][0];
    assert_eq!((&recipe["@type"], &recipe["totalTime"]), (&Value::from("Recipe"), &Value::from("PT2H50M")));
    assert_eq!(recipe["recipeIngredient"][1], "1,600 mL / 3 pints + 3/4 cup Water");
    assert_eq!(recipe["recipeInstructions"].as_array().map(Vec::len), Some(7));
    let bath = told("lessons/not-to-drink.html");
    assert_eq!(bath["hasPart"][0]["@type"], "HowTo", "a bath is no food");
    assert!(
        bath["hasPart"][0]["supply"][0]["requiredQuantity"]
            .as_str()
            .is_some_and(|amount| amount.contains('/'))
    );
    for (path, html) in pages.iter().filter(|(path, _)| path.starts_with("lessons/")) {
        if html.contains("ld+json") {
            for part in told(path)["hasPart"].as_array().expect("parts") {
                let time = part["totalTime"].as_str().expect("a time");
                assert!(time.starts_with('P') && time.len() > 2 && !time.ends_with('T'), "{path}: {time}");
            }
        }
    }
}

/// A page says its own whole address, and what is shown of it where it is shared.
#[test]
fn pages_say_where_they_stand() {
    for (path, html) in pages(&demo()) {
        let html = Html::parse_document(&html);
        let canonical = all(&html, "link[rel=canonical]");
        if path == NOWHERE {
            assert!(canonical.is_empty());
            continue;
        }
        let href = canonical[0].attr("href").expect("an address");
        let own = format!("{ADDRESS}{}", if path == "index.html" { "" } else { &path });
        let leads_on = !all(&html, "meta[http-equiv=refresh]").is_empty();
        assert_eq!(href == own, !leads_on, "{path}: {href}");
        for property in ["og:title", "og:description", "og:url", "og:type", "og:image"] {
            let meta = all(&html, &format!("meta[property=\"{property}\"]"));
            assert!(
                meta.len() == 1 && meta[0].attr("content").is_some_and(|said| !said.is_empty()),
                "{path}: {property}"
            );
        }
    }
}

/// What is kept for reading without a connection is there, and is every page but what only machines ask for.
#[test]
fn everything_that_is_read_is_kept() {
    let site = demo();
    let list = text(&site, "sw-list.js");
    let files: BTreeSet<&str> = list
        .lines()
        .filter_map(|line| line.trim().trim_end_matches(',').strip_prefix('"')?.strip_suffix('"'))
        .collect();
    assert!(files.iter().all(|file| site.contains_key(*file)), "{files:?}");
    let pages = pages(&site);
    let missing: Vec<&String> =
        pages.keys().filter(|path| *path != NOWHERE && !files.contains(path.as_str())).collect();
    assert!(missing.is_empty(), "{missing:?}");
    for file in ["style.css", "page.js", "look-up.js", "look-up-index.js", "icon.svg"] {
        assert!(files.contains(file), "{file}");
    }
}

/// Plants are found by their Latin and their other names, recipes of a lesson of several by their own.
#[test]
fn the_index_holds_names_and_words() {
    let site = demo();
    let index = text(&site, "look-up-index.js");
    let json = index.split_once("stillroomIndex = ").expect("a value").1.trim_end().trim_end_matches(';');
    let index: Value = serde_json::from_str(json).expect("JSON");
    let entries = index["entries"].as_array().expect("entries");
    let entry =
        |name: &str| entries.iter().find(|entry| entry[0] == name).unwrap_or_else(|| panic!("no {name}"));
    assert!(entry("Rose hips")[3].as_str().is_some_and(|also| also.contains("Rosa canina")));
    assert_eq!(entry("Lavender bath")[1], "lessons/not-to-drink.html#recipe--1");
    assert_eq!(entry("Marc")[1], "glossary.html#marc");
    // A page's words lead to it, plainly spelt.
    let place = entries.iter().position(|entry| entry[0] == "Rose hip and hibiscus syrup").expect("there");
    let words = index["words"].as_array().expect("words");
    let of = |word: &str| {
        words.iter().find(|row| row[0] == word).map(|row| row[1].as_array().expect("places").clone())
    };
    assert!(of("garrow").expect("Wilf Garrow").contains(&Value::from(place)));
    assert!(words.iter().all(|row| {
        row[0].as_str().is_some_and(|word| word.chars().all(|c| c.is_ascii_alphanumeric() || c == '-'))
    }));
}
