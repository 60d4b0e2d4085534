//! The tables: figures of the kitchen, and ratios by preparation.

use super::lesson::Done;
use super::put::{Put, lesson_link};
use crate::page::view::{Link, TableRow};
use crate::page::{figures_page, tables_page};
use crate::site::Trouble;
use crate::specimens;

/// Figures of the kitchen, by the names of their pages; and the page on spirits, which stands with them.
const KITCHEN: &[&str] =
    &["household-weights", "fresh-and-dried", "altitude", "keeping-classes", "syrup-proportions", "spirits"];

/// Makes and writes them.
pub(super) fn press(done: &[Done], put: &mut Put) -> Result<(), Trouble> {
    let desk = put.desk;
    let frame = |page: &str| desk.titled(page, &format!("tables/{page}.html"));
    for (page, view) in [
        ("household-weights", figures_page::weights(frame("household-weights"), desk.book)),
        ("fresh-and-dried", figures_page::fresh(frame("fresh-and-dried"), desk.book)),
        ("altitude", figures_page::altitude(frame("altitude"))),
        ("keeping-classes", figures_page::classes(frame("keeping-classes"))),
    ] {
        put.page(&format!("tables/{page}.html"), "figures.html", &view)?;
    }
    let specimens = match specimens::worked() {
        Ok(specimens) => specimens,
        Err(faults) => {
            put.findings.extend(faults);
            return Ok(());
        }
    };
    let kitchen = KITCHEN.iter().filter_map(|page| {
        let href = match *page {
            "spirits" if desk.book.course.kitchen.spirits.is_empty() => return None,
            "spirits" => "spirits.html".to_string(),
            "syrup-proportions" => tables_page::address("syrup"),
            page => format!("tables/{page}.html"),
        };
        let link = Link { text: desk.word(&format!("page-{page}")), href, current: false };
        Some(TableRow { link, what: desk.word(&format!("about-{page}")) })
    });
    let view = tables_page::list(desk.titled("tables", "tables.html"), kitchen.collect(), specimens);
    put.page("tables.html", "tables.html", &view)?;
    for specimen in specimens {
        let word = specimen.kind.word;
        let taught = desk.book.lessons.iter().zip(done).filter(|(_, done)| done.kinds.contains(&word));
        let taught = taught.map(|(head, _)| lesson_link(head, "../")).collect();
        let title = tables_page::title(word);
        let about = format!("{title}: ratios, strengths and yields, worked row by row.");
        let path = tables_page::address(word);
        let view = tables_page::page(desk.frame(&title, &about, &path), specimen, taught);
        put.page(&path, "table.html", &view)?;
    }
    Ok(())
}
