//! Pages that lead to others and tables of figures, as a reader finds them.

use super::rules::{all, within};
use super::{demo, pages};
use scraper::{ElementRef, Html};
use std::collections::BTreeMap;

fn site() -> BTreeMap<String, Html> {
    pages(&demo()).into_iter().map(|(path, text)| (path, Html::parse_document(&text))).collect()
}

fn text(of: ElementRef) -> String {
    of.text().collect::<String>().replace('\u{a0}', " ").trim().to_string()
}

/// The rows of a table of figures by their names: the cells after the name.
fn figures(page: &Html) -> BTreeMap<String, Vec<String>> {
    let rows = all(page, ".figured-out tbody tr").into_iter();
    rows.map(|row| (text(within(row, "th")[0]), within(row, "td").into_iter().map(text).collect())).collect()
}

fn number(cell: &str) -> f64 {
    let digits: String = cell.chars().take_while(|c| c.is_ascii_digit() || ",.".contains(*c)).collect();
    digits.replace(',', "").parse().unwrap_or_else(|_| panic!("no number in {cell}"))
}

/// USDA Food Safety and Inspection Service, High Altitude Cooking, from memory: water boils at 212 °F at the sea, 203 °F
/// at 5,000 ft and 194 °F at 10,000 ft. ICAO standard atmosphere: 101.3 kPa, 84.6 kPa at 1,500 m, 70.1 kPa at 3,000 m. And
/// the boiling temperature at each printed pressure by IF97, another hand's: within 0.2 °C, for the pressure is rounded.
#[test]
fn boiling_by_altitude() {
    let rows = figures(&site()["tables/altitude.html"]);
    assert_eq!(rows.len(), 9);
    for (metres, kilopascal, fahrenheit) in
        [("0 m", 101.3, 212.0), ("1,500 m", 84.6, 203.0), ("3,000 m", 70.1, 194.0)]
    {
        let row = &rows[metres];
        assert!((number(&row[1]) - kilopascal).abs() < 0.5, "{metres}: {}", row[1]);
        assert!((number(&row[3]) - fahrenheit).abs() <= 1.0, "{metres}: {}", row[3]);
    }
    for (metres, row) in &rows {
        let boils = seuif97::px(number(&row[1]) / 1000.0, 0.0, seuif97::OT);
        assert!((number(&row[2]) - boils).abs() < 0.2, "{metres}: {} against {boils}", row[2]);
    }
    assert_eq!(number(&rows["3,000 m"][0]), 9840.0, "a foot is 0.3048 m");
}

/// USDA National Nutrient Database, release 27, weight of a US cup: honey 339 g at 17.1 % water, granulated sugar 200 g,
/// olive oil 216 g, maple syrup 315 g, cider vinegar 239 g, salt 292 g. OIML R 22: a spirit of 40 % weighs 0.948 g/mL.
#[test]
fn what_a_cup_weighs() {
    let rows = figures(&site()["tables/household-weights.html"]);
    for (item, cup) in [
        ("Honey", 339.0),
        ("Sugar", 200.0),
        ("Olive oil", 216.0),
        ("Maple syrup", 315.0),
        ("Cider vinegar", 239.0),
        ("Salt", 292.0),
        ("Vodka", 0.948 * 236.588),
    ] {
        let row = &rows[item];
        assert!((number(&row[2]) - cup).abs() / cup < 0.015, "{item}: {} against {cup}", row[2]);
        // Sixteen tablespoons, forty-eight teaspoons.
        assert!((number(&row[1]) * 16.0 - number(&row[2])).abs() / cup < 0.05, "{item}: {row:?}");
        assert!((number(&row[0]) * 48.0 - number(&row[2])).abs() / cup < 0.05, "{item}: {row:?}");
    }
    assert!(rows["Vodka"][3].contains("OIML") || rows["Vodka"][3].contains("alcohol"), "{:?}", rows["Vodka"]);
    assert!(!rows["Vodka"][3].contains("honey"), "{:?}", rows["Vodka"]);
}

/// By hand: what dries keeps its dry matter, so grams fresh for one dried are (1 − dried) over (1 − fresh).
#[test]
fn fresh_for_dried() {
    let rows = figures(&site()["tables/fresh-and-dried.html"]);
    assert!(rows.len() > 20, "{}", rows.len());
    for (plant, row) in &rows {
        let [by, fresh, dried] = [0, 1, 2].map(|n| number(&row[n]));
        let by_hand = (100.0 - dried) / (100.0 - fresh);
        // Both are printed to a tenth.
        assert!((by - by_hand).abs() <= 0.05 + 0.01 * by_hand, "{plant}: {row:?} against {by_hand}");
    }
}

/// Every recipe of every lesson stands once among the preparations, times and classes; rose hips are gathered in autumn
/// (common practice, no source), and the hibiscus of their syrup later.
#[test]
fn every_recipe_is_found_four_ways() {
    let site = site();
    let page = &site["recipes.html"];
    let of = |way: &str| -> Vec<String> {
        all(page, &format!("section[id=\"{way}\"] a"))
            .iter()
            .filter_map(|link| link.attr("href"))
            .map(str::to_string)
            .collect()
    };
    let mut recipes: Vec<String> = Vec::new();
    for (path, lesson) in site.iter().filter(|(path, _)| path.starts_with("lessons/")) {
        recipes.extend(
            all(lesson, ".recipe").iter().filter_map(|at| at.attr("id")).map(|id| format!("{path}#{id}")),
        );
    }
    recipes.sort();
    for way in ["kind", "time", "keeping"] {
        let mut listed = of(way);
        listed.sort();
        assert_eq!(listed, recipes, "{way}");
    }
    assert!(recipes.iter().all(|recipe| of("season").contains(recipe)));
    let autumn =
        all(page, "ul[aria-labelledby=\"season-autumn\"] a").into_iter().map(text).collect::<Vec<_>>();
    assert!(autumn.contains(&"Rose hip and hibiscus syrup".to_string()), "{autumn:?}");
}

/// Each word of the glossary is linked once in a lesson, where it first stands, and explained at its end.
#[test]
fn a_word_is_linked_once_and_explained() {
    let site = site();
    let glossary = &site["glossary.html"];
    let mut linked = 0;
    for (path, lesson) in site.iter().filter(|(path, _)| path.starts_with("lessons/")) {
        let in_text = all(lesson, ".prose a[href^=\"../glossary.html#\"]");
        let ids: Vec<&str> = in_text.iter().filter_map(|link| link.attr("href")?.split('#').nth(1)).collect();
        let explained: Vec<&str> = all(lesson, "#the--words dt a")
            .iter()
            .filter_map(|link| link.attr("href")?.split('#').nth(1))
            .collect();
        let mut once = ids.clone();
        once.sort_unstable();
        once.dedup();
        assert_eq!(once.len(), ids.len(), "{path}: {ids:?}");
        assert_eq!(ids, explained, "{path}: the same words in the same order");
        for id in ids {
            let row = all(glossary, &format!("[id=\"{id}\"]"));
            let back: Vec<&str> = within(row[0], "a").iter().filter_map(|link| link.attr("href")).collect();
            assert!(back.contains(&path.as_str()), "{id} does not lead back to {path}");
            linked += 1;
        }
    }
    assert!(linked > 30, "{linked}");
}

/// A correction stands on its lesson, on its page and on the first one, the old words struck.
#[test]
fn corrections_stand_in_three_places() {
    let site = site();
    for path in ["lessons/hawthorn-berry-decoction.html", "corrections.html", "index.html"] {
        let changed =
            all(&site[path], ".changes li").into_iter().find(|row| text(*row).contains("three days"));
        let changed = changed.unwrap_or_else(|| panic!("not on {path}"));
        assert_eq!(text(within(changed, "del")[0]), "Keep it for three days in the refrigerator.");
        assert_eq!(text(within(changed, "ins")[0]), "Keep it until the day after, in the refrigerator.");
        assert_eq!(within(changed, "time")[0].attr("datetime"), Some("2026-10-08"));
    }
    let days: Vec<&str> =
        all(&site["corrections.html"], ".changes time").iter().filter_map(|at| at.attr("datetime")).collect();
    assert!(days.len() >= 4 && days.windows(2).all(|two| two[0] >= two[1]), "the latest first: {days:?}");
}

/// A former address leads on to the page as it is now called.
#[test]
fn a_former_address_leads_on() {
    let site = site();
    let page = &site["lessons/oil-spirit-and-glycerin.html"];
    let refresh = all(page, "meta[http-equiv=refresh]")[0].attr("content").expect("it leads on");
    assert_eq!(refresh, "0; url=../lessons/jars-that-wait-longer.html");
    assert!(site.contains_key("lessons/jars-that-wait-longer.html"));
    assert_eq!(all(page, "main a")[0].attr("href"), Some("../lessons/jars-that-wait-longer.html"));
}

/// A picture has its words and its size, and stands as a figure with its caption.
#[test]
fn a_picture_is_sized_and_said() {
    let site = site();
    let figure = all(&site["lessons/rose-hip-and-hibiscus-syrup.html"], "figure")[0];
    let picture = within(figure, "img")[0];
    assert_eq!(
        (picture.attr("width"), picture.attr("height")),
        (Some("560"), Some("300")),
        "as its file says"
    );
    assert!(picture.attr("alt").is_some_and(|words| words.contains("cut in half")));
    assert!(text(within(figure, "figcaption")[0]).starts_with("A hip whole and cut."));
    assert!(demo().contains_key("pictures/rose-hip-cut.svg"));
}
