//! Where a finding stands, and the day on the page: a small book pressed in a fresh folder.

use super::*;
use crate::kit;
use stillroom::press;

/// The page of one lesson of that date, its recipe of a class.
fn page(date: &str, sweeten: &str) -> String {
    let folder = kit::fresh_folder();
    let put = |path: &str, text: &str| {
        let path = folder.path().join("content").join(path);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder can be made");
        std::fs::write(path, text).expect("a file can be written");
    };
    put("formulary.yaml", "book: The Book\ntitle: The Course\n");
    put("plants/thyme.md", &kit::read(&kit::root().join("content/plants/thyme.md")));
    let head = if date.is_empty() { String::new() } else { format!("date: {date}\n") };
    let lesson = format!(
        "---\ntitle: Syrup\n{head}summary: A syrup.\n---\n\nText.\n\n```recipe\nname: Syrup\npreparation: syrup\n\
         plants: {{thyme: 1 g dried}}\nliquid: {{water: 475 mL}}\nmethod:\n  - steep: 30 min\n  - strain: squeezed\n  \
         - cool: 38 °C\n  - sweeten: {sweeten}\nkeep: refrigerator\ntake: {{amount: 1 tsp, daily: 3}}\n```\n"
    );
    put("lessons/01-syrup.md", &lesson);
    let site = folder.path().join("site");
    let outcome =
        press::press(&folder.path().join("content"), &site, None, &|| {}).expect("the folders can be used");
    assert!(!stillroom::diagnostic::stops(&outcome.findings), "{:?}", outcome.findings);
    kit::read(&site.join("lessons/syrup.html"))
}

/// Class D keeps a week.
const WEEK: &str = "{honey: 1/2 of the liquid by volume}";
/// Class A keeps 180 days.
const HALF_A_YEAR: &str = "{sugar: 2 of the liquid by weight}";

#[test]
fn a_use_by_date_counts_the_days_of_the_calendar() {
    // The Gregorian calendar: 2028 and 2000 are leap years, 2027 and 2100 are not.
    for (date, sweeten, words) in [
        ("2026-09-22", WEEK, "made on 22 September 2026, use by 29 September 2026"),
        ("2028-02-22", WEEK, "made on 22 February 2028, use by 29 February 2028"),
        ("2027-02-22", WEEK, "made on 22 February 2027, use by 1 March 2027"),
        ("2100-02-22", WEEK, "made on 22 February 2100, use by 1 March 2100"),
        ("2026-12-28", WEEK, "made on 28 December 2026, use by 4 January 2027"),
        // 31 days of October left after the 12th: 19, then 30, 31, 31, 28 and 31 make 170, and 10 of April.
        ("2026-10-12", HALF_A_YEAR, "made on 12 October 2026, use by 10 April 2027"),
        ("2027-10-12", HALF_A_YEAR, "made on 12 October 2027, use by 9 April 2028"),
    ] {
        let page = page(date, sweeten);
        assert!(page.contains(words), "{date}: {words}");
    }
}

#[test]
fn without_a_date_the_days_are_counted_in_words() {
    let page = page("", WEEK);
    assert!(page.contains("use within 7 days of making it") && !page.contains("made on"));
}

#[test]
fn a_shelf_is_told_at_its_own_words() {
    for (sweeten, told) in [
        ("{honey: equal to the liquid by volume}", Some(Code::KeepDisagrees)),
        ("{sugar: 2 of the liquid by weight}", None),
    ] {
        for place in ["shelf", "cool and dark"] {
            let lines = format!("{}\nkeep: {place}\n", syrup(&format!("{{sweeten: {sweeten}}}")));
            let text = format!("name: T\npreparation: syrup\n{lines}");
            let (worked, found) = work(&text);
            let worked = worked.unwrap_or_else(|| panic!("{place}: {found:?}"));
            let mut findings_told = Vec::new();
            findings(&worked, &mut findings_told);
            assert_eq!(findings_told.first().map(|finding| finding.code), told, "{sweeten}, {place}");
            if let Some(finding) = findings_told.first() {
                assert_eq!(finding.level, Level::Warning);
                let span = finding.span.expect("a place");
                assert_eq!(&text[span.start..span.end], place, "{sweeten}");
            }
        }
    }
}
