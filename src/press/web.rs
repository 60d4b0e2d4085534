//! What a host and a reader's programs ask for beside the pages: the map of the site, the feed, what is shown where
//! nothing stands, and what is kept for reading without a connection.

use super::put::{FEED, HOME, Put, RUNNING, fingerprint, lesson_link};
use crate::calendar::Day;
use crate::formula::equation::escape;
use crate::page::view::{Frame, Link, NotFoundPage};
use crate::site::Trouble;

/// What is shown where nothing stands, as hosts ask for it.
const NOWHERE: &str = "404.html";

/// Makes and writes them. Every page has been made before.
pub(super) fn press(put: &mut Put) -> Result<(), Trouble> {
    let desk = put.desk;
    let address = desk.book.course.address.clone();
    // It is shown at any depth, so its links begin at the host's own root; without an address they cannot.
    let root = address.as_deref().map_or(String::new(), on_host);
    let away = |link: Link| Link { href: format!("{root}{}", link.href), ..link };
    let frame = desk.titled("not-found", NOWHERE);
    let view = NotFoundPage {
        links: RUNNING.iter().map(|page| away(desk.link(page))).collect(),
        frame: Frame {
            canonical: String::new(),
            running: frame.running.into_iter().map(away).collect(),
            contents: frame.contents.map(away),
            root: root.clone(),
            ..frame
        },
    };
    put.page(NOWHERE, "not-found.html", &view)?;
    if let Some(address) = &address {
        desk.write("sitemap.xml", sitemap(put, address).as_bytes())?;
        if let Some(feed) = feed(put, address) {
            desk.write(FEED, feed.as_bytes())?;
        }
    }
    let kept = kept(put);
    desk.write("sw-list.js", kept.as_bytes())
}

/// An address without its host: `/course/`.
fn on_host(address: &str) -> String {
    let rest = address.split_once("://").map_or(address, |(_, rest)| rest);
    rest.split_once('/').map_or("/".to_string(), |(_, path)| format!("/{path}"))
}

/// What is kept for reading without a connection: every file but the pictures, which are many and heavy, and what
/// only machines ask for. The printing is made of all their bytes.
fn kept(put: &Put) -> String {
    let made = put.desk.made();
    let only_machines = ["sw.js", "sitemap.xml", FEED, NOWHERE];
    let kept = made
        .files
        .iter()
        .filter(|(path, _)| !path.starts_with("pictures/") && !only_machines.contains(&path.as_str()));
    let (paths, prints): (Vec<&str>, Vec<u64>) =
        kept.map(|(path, (print, _))| (path.as_str(), *print)).unzip();
    let bytes: Vec<u8> = prints.into_iter().flat_map(u64::to_le_bytes).collect();
    // A list of texts always becomes JSON; each stands on a line of its own.
    let files = serde_json::to_string_pretty(&paths).unwrap_or_default();
    format!(
        "\"use strict\";\nself.stillroomKept = {{ printing: \"{:016x}\", files: {files} }};\n",
        fingerprint(&bytes)
    )
}

/// The sitemap protocol, 0.9: every page, with the day of its last change where that is known.
fn sitemap(put: &Put, address: &str) -> String {
    let book = put.desk.book;
    let mut text = String::from(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<urlset xmlns=\"http://www.sitemaps.org/schemas/sitemap/0.9\">\n",
    );
    for (path, leaf) in put.desk.made().leaves.iter().filter(|(path, _)| *path != NOWHERE) {
        // A page that only leads on is no page of the site.
        if leaf.leads_on {
            continue;
        }
        let head = book.lessons.iter().find(|head| lesson_link(head, "").href == *path);
        let changed = head
            .and_then(last_change)
            .map_or(String::new(), |day| format!("<lastmod>{}</lastmod>", day.iso()));
        let page = if path == HOME { "" } else { path };
        text.push_str(&format!("<url><loc>{}{}</loc>{changed}</url>\n", escape(address), escape(page)));
    }
    text + "</urlset>\n"
}

fn last_change(head: &crate::formulary::LessonHead) -> Option<Day> {
    head.corrections.iter().map(|correction| correction.date).chain(head.date).max()
}

/// RFC 4287: an entry a lesson with a date, and one a change; the latest first; none where nothing has a date. Nothing is said about a time of day,
/// so each stands at the day's beginning.
fn feed(put: &Put, address: &str) -> Option<String> {
    let (book, course) = (put.desk.book, &put.desk.book.course);
    let at = |day: Day| format!("{}T00:00:00Z", day.iso());
    let mut entries: Vec<(Day, String)> = Vec::new();
    let mut put_in = |day: Day, href: String, title: &str, summary: &str| {
        let entry = format!(
            "<entry><id>{0}</id><title>{1}</title><link href=\"{0}\"/><updated>{2}</updated><summary>{3}</summary></entry>\n",
            escape(&href),
            escape(title),
            at(day),
            escape(summary)
        );
        entries.push((day, entry));
    };
    for head in &book.lessons {
        if let Some(day) = last_change(head) {
            put_in(day, format!("{address}{}", lesson_link(head, "").href), &head.title, &head.summary);
        }
    }
    for change in &course.changes {
        let href = format!("{address}corrections.html#{}", change.anchor());
        put_in(change.date, href, &change.what, &change.what);
    }
    entries.sort_by_key(|(day, _)| std::cmp::Reverse(*day));
    let updated = at(entries.first()?.0);
    Some(format!(
        "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n<feed xmlns=\"http://www.w3.org/2005/Atom\" xml:lang=\"{}\">\n\
         <id>{address}</id><title>{}</title><subtitle>{}</subtitle><updated>{updated}</updated>\n\
         <author><name>{}</name></author>\n<link href=\"{address}\"/><link rel=\"self\" href=\"{address}{FEED}\"/>\n{}</feed>\n",
        escape(&course.language),
        escape(&course.title),
        escape(&course.lead),
        escape(&course.book),
        entries.into_iter().map(|(_, entry)| entry).collect::<String>(),
        address = escape(address),
    ))
}
