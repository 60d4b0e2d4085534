//! The demo's pages: every caution that belongs on one stands on it.

use super::{book, raised};
use crate::kit;
use std::collections::BTreeMap;
use stillroom::caution::{CLOSING, RULES, Seen, cautions};
use stillroom::press::{press, read_lesson};

/// The demo pressed: each page's text by its path, with plain blanks and without markup.
fn pressed() -> BTreeMap<String, (String, String)> {
    let folder = kit::fresh_folder();
    let site = folder.path().join("site");
    let outcome = press(&kit::root().join("content"), &site, Some(kit::today()), &|| {})
        .expect("the demo can be pressed");
    assert!(outcome.written, "{:#?}", outcome.findings);
    let read = |path: String| {
        let html = kit::read(&site.join(&path));
        let text = scraper::Html::parse_document(&html).root_element().text().collect::<String>();
        (path, (plain(&text), html))
    };
    kit::files(&site, "", ".html").into_iter().map(read).collect()
}

fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn no_page_shows_a_recipe_without_its_cautions() {
    let (book, pages) = (book(), pressed());
    let content = kit::root().join("content");
    let mut checked = 0;
    for (n, head) in book.lessons.iter().enumerate() {
        let read = read_lesson(&content, &book, n).expect("the disk").expect("a lesson");
        let (text, _) = &pages[&format!("lessons/{}.html", head.slug)];
        for whole in read.recipes.iter().flatten() {
            for caution in raised(&book, whole) {
                let said = plain(&format!("{} {}", caution.lead.trim_end_matches(['.', '?', '!']), ""));
                assert!(text.contains(said.trim()), "{}: {}: {said}", head.slug, caution.id);
                assert!(text.contains(&plain(&caution.text)), "{}: {}", head.slug, caution.id);
                checked += 1;
            }
            // What only a variation brings is told at the variation: who must not take it.
            for (worked, recipe) in whole.each() {
                for caution in cautions(&Seen { worked, recipe, book: &book, whole: None }) {
                    for who in &caution.not_for {
                        assert!(text.contains(&plain(&who.word())), "{}: {}", head.slug, caution.id);
                    }
                }
            }
        }
    }
    assert!(checked > 400, "only {checked} cautions were looked for");
}

/// The outcome in one example: the syrup's own variation for a household with a baby says that the rule about
/// honey falls away, and what still holds.
#[test]
fn the_variation_for_a_household_with_a_baby() {
    let (text, html) = &pressed()["lessons/rose-hip-and-hibiscus-syrup.html"];
    assert!(text.contains("under 12 months: honey"), "at a glance");
    let html = scraper::Html::parse_document(html);
    let row = scraper::Selector::parse("table.fold-out tr.slip").expect("a selector");
    let rows: Vec<String> = html.select(&row).map(|row| plain(&row.text().collect::<String>())).collect();
    let of = |name: &str| rows.iter().find(|row| row.starts_with(name)).expect("the row");
    assert!(of("For a household with a baby").ends_with("falls away: under 12 months, bee-product allergy"));
    assert!(of("For a household with a baby").contains("never for pregnancy"));
    assert!(of("As much honey as liquid, and spirit").contains("under 18 years"));
    assert!(of("Twice as much honey as liquid").ends_with("never for: as the recipe"));
}

#[test]
fn every_page_says_who_comes_first() {
    let disclaimer = plain(&book().course.disclaimer);
    assert!(!disclaimer.is_empty());
    for (path, (text, _)) in pressed() {
        assert!(text.contains(&plain(CLOSING)), "{path}: practitioners and local rules");
        assert!(text.contains(&disclaimer), "{path}: the course's own words");
    }
}

#[test]
fn all_cautions_stand_on_their_page_and_in_the_index() {
    let pages = pressed();
    let html = scraper::Html::parse_document(&pages["cautions.html"].1);
    for rule in RULES {
        let at = scraper::Selector::parse(&format!("[id=\"{}\"]", rule.id)).expect("a selector");
        let text = html.select(&at).next().map(|at| plain(&at.text().collect::<String>()));
        let text = text.unwrap_or_else(|| panic!("{} is not on the page", rule.id));
        assert!(text.contains(&plain(rule.when)), "{}", rule.id);
        assert_eq!(text.contains("Refused"), rule.refuses(), "{}", rule.id);
    }
    let index = &pages["who-must-not.html"].0;
    for words in [
        "In pregnancy",
        "With an allergy to the daisy family",
        "Under 12 months",
        "With blood-thinning medicines",
    ] {
        assert!(index.contains(words), "{words}");
    }
    let bees = "Rose hip and hibiscus syrup";
    let under = index.split("Under 12 months").nth(1).expect("the entry");
    assert!(under.split("Under 2 years").next().is_some_and(|entry| entry.contains(bees)));
}

/// At least forty plants; each page with its family, its figures, and a source beside everything that wants one.
#[test]
fn every_plant_has_a_page_with_sources() {
    let (book, pages) = (book(), pressed());
    assert!(book.plants.len() >= 40, "{} plants", book.plants.len());
    let mut facts = 0;
    for (id, plant) in &book.plants {
        let (text, html) = &pages[&format!("plants/{id}.html")];
        assert!(text.contains(&plant.latin) && text.contains(&plant.family), "{id}");
        for caution in &plant.cautions {
            assert!(text.contains(&plain(&caution.lead)), "{id}: {}", caution.lead);
        }
        let html = scraper::Html::parse_document(html);
        let row = scraper::Selector::parse("table.fact-table tbody tr").expect("a selector");
        let source = scraper::Selector::parse("td.source").expect("a selector");
        for row in html.select(&row) {
            let term = row.text().next().unwrap_or_default().to_string();
            let from = row.select(&source).next().map(|at| plain(&at.text().collect::<String>()));
            let bare =
                ["Part used", "Sold", "Aromatic"].contains(&term.as_str()) || term.starts_with("Holds,");
            assert!(bare || from.is_some_and(|from| !from.is_empty()), "{id}: {term} has no source");
            facts += 1;
        }
        assert!(plant.made_into.is_some() && plant.status.is_some() && !plant.cautions.is_empty(), "{id}");
    }
    assert!(facts > 500, "{facts}");
}

/// "Teaching only, not a dose" stands before every table of the old rules, and no recipe uses one of them.
#[test]
fn the_old_rules_are_never_a_dose() {
    let pages = pressed();
    let html = scraper::Html::parse_document(&pages["childrens-doses.html"].1);
    let caption = scraper::Selector::parse("table caption").expect("a selector");
    let captions: Vec<String> = html.select(&caption).map(|at| at.text().collect::<String>()).collect();
    assert_eq!(captions.len(), 2);
    assert!(captions.iter().all(|caption| caption.contains("Teaching only, not a dose")), "{captions:?}");
    assert!(pages["childrens-doses.html"].0.matches("eaching only, not a dose").count() >= 4);
    // An exercise may ask for one, and says the same.
    let question = scraper::Selector::parse("li.question").expect("a selector");
    for (path, (_, html)) in pages.iter().filter(|(path, _)| path.starts_with("lessons/")) {
        let of = scraper::Html::parse_document(html);
        let asked: Vec<String> = of.select(&question).map(|question| question.html()).collect();
        for rule in ["young", "cowling", "clark", "fried", "by-surface"] {
            let used = |text: &str| text.matches(&format!("formula-{rule}\"")).count();
            let in_questions: usize = asked.iter().map(|question| used(question)).sum();
            assert_eq!(used(&of.html()), in_questions, "{path} uses {rule}");
            for question in asked.iter().filter(|question| used(question) > 0) {
                assert!(question.contains("no dose"), "{path}: {question}");
            }
        }
    }
}

/// The day's sum as the page prints it: what the recipes give, added by hand.
#[test]
fn what_is_taken_on_one_day() {
    let (_, html) = &pressed()["one-day.html"];
    let html = scraper::Html::parse_document(html);
    let row = scraper::Selector::parse("table.ledger tr.line").expect("a selector");
    let (name, result) = (
        scraper::Selector::parse("th").expect("a selector"),
        scraper::Selector::parse("td.result b").expect("a selector"),
    );
    let mut printed: Vec<(String, f64)> = Vec::new();
    for row in html.select(&row) {
        let text =
            |of: &scraper::Selector| row.select(of).next().map(|at| plain(&at.text().collect::<String>()));
        let (Some(name), Some(result)) = (text(&name), text(&result)) else { continue };
        let number = result.split(' ').next().and_then(|number| number.parse().ok()).unwrap_or(f64::NAN);
        printed.push((name, number));
    }
    let of = |wanted: &str| printed.iter().find(|(name, _)| name == wanted).expect(wanted).1;
    let (tea, lozenges) = (of("Sweet root tea"), of("Liquorice lozenges"));
    let together = of("glycyrrhizin on one day, together");
    assert!((tea + lozenges - together).abs() < 0.11, "{tea} + {lozenges} = {together}");
    assert!(
        (of("glycyrrhizin against its ceiling") - together).abs() < 0.06,
        "of 100 mg the figure is its per cent"
    );
}
