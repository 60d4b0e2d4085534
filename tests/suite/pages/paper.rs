//! What comes on paper, against the lesson's own page and against sums by hand.

use super::rules::{all, within};
use super::{demo, pages};
use scraper::{ElementRef, Html};
use std::collections::BTreeMap;

fn text(of: ElementRef) -> String {
    let text = of.text().collect::<Vec<_>>().join(" ").replace('\u{a0}', " ").replace('\u{2060}', "");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn site() -> BTreeMap<String, Html> {
    pages(&demo()).into_iter().map(|(path, text)| (path, Html::parse_document(&text))).collect()
}

/// The label of the first lesson, by hand: 1,600 mL of water to 200 g of hips and 25 g of hibiscus is 7.1 to one; half
/// as much honey as liquid is one to two. The heavier plant comes first, as lists of ingredients have it (Regulation
/// (EU) No 1169/2011, article 18: in descending order of weight).
#[test]
fn a_jar_says_what_is_in_it() {
    let site = site();
    let page = &site["labels/rose-hip-and-hibiscus-syrup.html"];
    let jars = all(page, ".jar");
    assert_eq!(jars.len(), 6, "a label a bottle");
    let jar = text(jars[0]);
    for words in [
        "The Low Meadow Stillroom Book Rose hip and hibiscus syrup",
        "Rosa canina , dried fruit shell 200 g, Hibiscus sabdariffa , dried calyx 25 g",
        "plant to water 1 : 7.1, weight to volume; honey to liquid 1 : 2, by volume",
        "made use by batch",
        "refrigerate, 1 week, or freeze (class D)",
        "1–2 tsp, once a day",
        "Never for: under 12 months: honey",
    ] {
        assert!(jar.contains(words), "{words}: {jar}");
    }
}

/// Whoever must not take something is named wherever it is given out, and every stop of the lesson's page stands on
/// the handout and the card.
#[test]
fn no_sheet_leaves_out_a_stop() {
    let site = site();
    let mut stops = 0;
    for (path, lesson) in site.iter().filter(|(path, _)| path.starts_with("lessons/")) {
        let name = path.trim_start_matches("lessons/");
        let Some(handout) = site.get(&format!("handouts/{name}")) else {
            assert!(!all(lesson, "meta[http-equiv=refresh]").is_empty(), "{path} has no handout");
            continue;
        };
        let (handout, card) =
            (text(handout.root_element()), text(site[&format!("cards/{name}")].root_element()));
        let labels = text(site[&format!("labels/{name}")].root_element());
        for stop in all(lesson, ".caution.stop .lead-words b") {
            let stop = text(stop);
            assert!(handout.contains(&stop) && card.contains(&stop), "{path}: {stop}");
            stops += 1;
        }
        for never in all(lesson, ".glance .is-stop .said") {
            let never = text(never);
            for (sheet, on) in [("handout", &handout), ("card", &card), ("labels", &labels)] {
                assert!(on.contains(&never), "{sheet} of {name}: {never}");
            }
        }
    }
    assert!(stops >= 4, "{stops}");
}

/// The booklet holds every lesson, plant and word, each page's own text, under one title.
#[test]
fn the_booklet_is_the_whole_course() {
    let site = site();
    let booklet = &site["booklet.html"];
    assert_eq!(all(booklet, "h1").len(), 1);
    let bound: Vec<&str> = all(booklet, "article.bound").iter().filter_map(|leaf| leaf.attr("id")).collect();
    let leads_on = |page: &Html| !all(page, "meta[http-equiv=refresh]").is_empty();
    let wanted = site.iter().filter(|(path, page)| {
        (path.starts_with("lessons/") || path.starts_with("plants/")) && !leads_on(page)
    });
    let mut count = 0;
    for (path, page) in wanted {
        let id = path.trim_end_matches(".html").replace('/', "-");
        assert!(bound.contains(&id.as_str()), "{path} is not bound");
        let leaf = all(booklet, &format!("article[id=\"{id}\"]"))[0];
        // Results, and what is said at a glance, are the same there.
        for what in ["b.closed", ".glance .said", ".do"] {
            let mut there = all(page, what).into_iter().map(text);
            let here = within(leaf, what).into_iter().map(text);
            // In the same order; the page has more where it unfolds.
            for words in here {
                assert!(there.any(|known| known == words), "{path} {what}: {words}");
            }
        }
        count += 1;
    }
    assert_eq!(count, 14 + 50);
    assert!(bound.ends_with(&["glossary", "method"]), "the words, then how it is worked");
    assert_eq!(all(booklet, ".note-page").len(), 4);
    let imprint = text(all(booklet, ".imprint")[0]);
    assert!(imprint.contains("First printing, 15 September") && imprint.contains("CC BY 4.0"), "{imprint}");
}

/// A printed leaf says which book and printing it is of, and the address of a link that leads out of it.
#[test]
fn a_printed_leaf_says_what_it_is_of() {
    let site = demo();
    let style = String::from_utf8(site["style.css"].clone()).expect("text");
    assert!(style.contains("@page{@bottom-left{content:\"The Low Meadow Stillroom Book\"}}"));
    assert!(style.contains("@page{@bottom-right{content:\"First printing, 15 September\"}}"));
    assert!(style.contains("a[href^=\"http\"]::after{content:\" (\" attr(href) \")\""));
}

/// The timeline of the first lesson by its clock: 40 minutes at the stove, then an hour of standing; the same total.
#[test]
fn a_timeline_says_what_the_clock_says() {
    let site = site();
    let page = &site["lessons/rose-hip-and-hibiscus-syrup.html"];
    let line = all(page, "svg.timeline[role=img]")[0];
    let name = line.attr("aria-label").expect("named").replace('\u{a0}', " ");
    assert!(
        name.starts_with("1, simmer: 40 min over heat; 3, steep: 1 h standing; 4, strain: 10 min by hand;"),
        "{name}"
    );
    let widths: f64 = line
        .select(&scraper::Selector::parse("rect").expect("a selector"))
        .map(|band| band.attr("width").expect("wide").trim_end_matches('%').parse::<f64>().expect("a number"))
        .sum();
    assert!((widths - 100.0).abs() < 0.5, "{widths}");
    let takes = all(page, ".glance .label-row").into_iter().map(text).find(|row| row.starts_with("Takes"));
    let all_of_it = name.rsplit("in all ").next().expect("a total");
    assert!(takes.expect("it takes time").contains(all_of_it), "{name}");
    // Weeks of standing are drawn short, with a gap, and say how long they are.
    let jars = &site["lessons/jars-that-wait-longer.html"];
    assert!(!all(jars, "svg.timeline .gap").is_empty());
}
