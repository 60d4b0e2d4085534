//! Every page of the demo, read as a browser reads it: structure, names, links, mathematics, weight.
//!
//! The rules stand in `pages/rules.rs`, what only a browser can tell in `pages/browser.rs`, pages with
//! nothing in them in `pages/bare.rs`.

mod bare;
mod browser;
mod lists;
mod paper;
mod rules;
mod themes;
mod web;

use crate::kit;
use flate2::{Compression, write::GzEncoder};
use rules::{all, faults, link_faults, target};
use scraper::Html;
use std::collections::{BTreeMap, BTreeSet};
use std::io::Write;
use stillroom::press;

/// A page with its style may weigh so much, packed as servers send it.
const MOST: usize = 60 * 1024;

/// Look up weighs its index too, which no other page asks for.
const MOST_LOOK_UP: usize = 210 * 1024;
/// The booklet is a whole course, fetched once and printed.
const MOST_BOOKLET: usize = 400 * 1024;
/// A page with everything it asks for is fewer requests than this.
const MOST_ASKED: usize = 6;
/// What is shown where nothing stands.
const NOWHERE: &str = "404.html";

/// The demo pressed: each file by its path.
fn demo() -> BTreeMap<String, Vec<u8>> {
    let folder = kit::fresh_folder();
    let site = folder.path().join("site");
    let outcome = press::press(&kit::root().join("content"), &site, Some(kit::today()), &|| {})
        .expect("the demo can be pressed");
    assert!(outcome.written, "{:?}", outcome.findings);
    let read = |path: String| (path.clone(), std::fs::read(site.join(&path)).expect("a file can be read"));
    kit::files(&site, "", "").into_iter().map(read).collect()
}

/// The pages of a site by their paths.
fn pages(site: &BTreeMap<String, Vec<u8>>) -> BTreeMap<String, String> {
    let text = |bytes: &Vec<u8>| String::from_utf8(bytes.clone()).expect("a page is UTF-8");
    site.iter()
        .filter(|(path, _)| path.ends_with(".html"))
        .map(|(path, bytes)| (path.clone(), text(bytes)))
        .collect()
}

#[track_caller]
fn none(page: &str, faults: Vec<String>) {
    assert!(
        faults.is_empty(),
        "\n{page}:\n{}\n\nMend it in themes/stillroom or in src/page.\n",
        faults.join("\n")
    );
}

#[test]
fn every_page_is_sound() {
    let site = demo();
    let pages = pages(&site);
    assert!(pages.len() >= 10, "{:?}", pages.keys());
    for (path, text) in &pages {
        none(path, faults(text));
    }
    let title = |text: &String| all(&Html::parse_document(text), "title")[0].text().collect::<String>();
    let titles: BTreeSet<_> = pages.values().map(title).collect();
    assert_eq!(titles.len(), pages.len(), "each page has a title of its own: {titles:?}");
}

#[test]
fn every_link_leads_somewhere() {
    let site = demo();
    let pages: BTreeMap<_, _> =
        pages(&site).into_iter().map(|(path, text)| (path, Html::parse_document(&text))).collect();
    let files = site.keys().map(String::as_str).collect();
    let anchors = |html: &Html| {
        all(html, "[id]").into_iter().filter_map(|at| at.attr("id")).map(str::to_string).collect()
    };
    let ids = pages.iter().map(|(path, html)| (path.as_str(), anchors(html))).collect();
    // What is shown where nothing stands is read at any address; its links are looked at by themselves.
    for (path, html) in pages.iter().filter(|(path, _)| *path != NOWHERE) {
        none(path, link_faults(path, html, &files, &ids));
    }
    let led: Vec<&str> = all(&pages[NOWHERE], "[href], [src]")
        .into_iter()
        .filter_map(|at| at.attr("href").or(at.attr("src")))
        .filter(|href| !href.starts_with(['#', 'h']))
        .collect();
    assert!(
        led.len() > 8
            && led.iter().all(|href| files.contains(href.strip_prefix("/stillroom/").unwrap_or("?")))
    );
    // And every page can be reached from the first, but for that and those that only lead on.
    let (mut seen, mut open) = (BTreeSet::new(), vec!["index.html".to_string()]);
    while let Some(page) = open.pop() {
        // What a page leads to may be a file of another kind.
        if !pages.contains_key(&page) {
            continue;
        }
        let links = all(&pages[&page], "a[href]").into_iter().filter_map(|link| link.attr("href"));
        let next: Vec<_> =
            links.map(|href| target(&page, href).0).filter(|path| !seen.contains(path)).collect();
        seen.insert(page);
        open.extend(next.into_iter().filter(|path| !seen.contains(path)));
    }
    let leads_on = |html: &Html| !all(html, "meta[http-equiv=refresh]").is_empty();
    let wanted =
        pages.iter().filter(|(path, html)| *path != NOWHERE && !leads_on(html)).map(|(path, _)| path);
    assert_eq!(seen.iter().collect::<Vec<_>>(), wanted.collect::<Vec<_>>());
}

#[test]
fn the_style_asks_for_nothing_from_outside() {
    let site = demo();
    for (path, bytes) in site.iter().filter(|(path, _)| path.ends_with(".css") || path.ends_with(".js")) {
        let text = String::from_utf8_lossy(bytes);
        for word in ["http:", "https:", "url(//", "@import"] {
            assert!(!text.contains(word), "{path} holds {word}");
        }
    }
}

#[test]
fn pages_are_light() {
    let packed = |bytes: &[u8]| {
        let mut packed = GzEncoder::new(Vec::new(), Compression::default());
        packed.write_all(bytes).expect("memory");
        packed.finish().expect("memory").len()
    };
    let site = demo();
    for (path, text) in pages(&site).iter().filter(|(path, _)| *path != NOWHERE) {
        let html = Html::parse_document(text);
        let asked: Vec<String> = all(&html, "link[rel=stylesheet], link[rel=icon], script[src]")
            .into_iter()
            .filter_map(|at| Some(target(path, at.attr("href").or(at.attr("src"))?).0))
            .collect();
        let weighs = packed(text.as_bytes()) + asked.iter().map(|file| packed(&site[file])).sum::<usize>();
        let most = match path.as_str() {
            "look-up.html" => MOST_LOOK_UP,
            "booklet.html" => MOST_BOOKLET,
            _ => MOST,
        };
        assert!(
            weighs < most,
            "{path} weighs {weighs} bytes with what it asks for, packed; {most} are allowed"
        );
        assert!(asked.len() < MOST_ASKED, "{path} asks for {asked:?}");
        let late = all(&html, "img").into_iter().all(|at| at.attr("loading") == Some("lazy"));
        assert!(late, "{path}: a picture comes before it is near");
    }
    let index = packed(&site["look-up-index.js"]);
    assert!(index < 150 * 1024, "the index of look up weighs {index} bytes");
}

/// What a lesson sets side by side, against sums by hand: 8 mL to a gram of 200 g, 12 of 40 g; 10 mL of syrup a dose.
#[test]
fn two_side_by_side() {
    let page = pages(&demo()).remove("side-by-side.html").expect("the demo sets two side by side");
    let page = Html::parse_document(&page);
    let select = |what: &str| scraper::Selector::parse(what).expect("a selector");
    let first = page.select(&select("table.sides")).next().expect("a table");
    let text = |of: scraper::ElementRef| of.text().collect::<String>().replace('\u{a0}', " ");
    let row = |name: &str| {
        let row = first
            .select(&select("tbody tr"))
            .find(|row| row.select(&select("th")).next().is_some_and(|head| text(head) == name));
        let row = row.unwrap_or_else(|| panic!("no line {name}"));
        let cells: Vec<String> = row.select(&select("td")).map(text).collect();
        let mark = row.select(&select(".against")).next().and_then(|mark| mark.attr("aria-label"));
        (cells, mark.unwrap_or_default().to_string())
    };
    assert_eq!(row("Water"), (vec!["1,600 mL".into(), "▼ 480 mL".into(), "0.30 ×".into()], "less".into()));
    assert_eq!(row("Honey").0[2], "0.75 ×", "400 mL against half of 1,065");
    assert_eq!(row("Doses").1, "", "alike");
    assert_eq!(row("Boiled off").0[1], "–", "nothing is boiled off");
    assert_eq!(row("Keeping").0.len(), 3);
    let lesson = &pages(&demo())["lessons/thyme-syrup.html"];
    assert!(lesson.contains("side-by-side.html#thyme-syrup-1"), "the lesson leads there");
}

/// The step that is measured says between what it falls. By hand: 1,600 mL, less 30–90 boiled off, less 475 mL (2 mL to
/// a gram of 200 g of hips, 3 of 25 g of hibiscus) a quarter more or less for the hand.
#[test]
fn what_is_measured_is_told_with_its_range() {
    let (low, high) = (1600.0 - 90.0 - 475.0 * 1.25, 1600.0 - 30.0 - 475.0 * 0.75);
    let html = Html::parse_document(&pages(&demo())["lessons/rose-hip-and-hibiscus-syrup.html"]);
    let step = scraper::Selector::parse("ol.work li").expect("a selector");
    let said = html
        .select(&step)
        .map(|step| step.text().collect::<String>())
        .find(|text| text.contains("It should be"));
    let said = said.expect("it is strained").replace(['\u{2060}', ','], "").replace('\u{a0}', " ");
    assert!(said.contains(&format!("usually {low:.0}–{high:.0} mL")), "{said}");
}
