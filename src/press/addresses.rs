//! Addresses: each stands for one page and lasts. What clashes, and what leads nowhere, is told.

use std::collections::BTreeMap;

use super::put::{Desk, Put, lesson_link, page_link};
use super::theme;
use crate::diagnostic::{Code, Finding, Level, stops};
use crate::manuscript::plain;
use crate::page::reference::Anchored;
use crate::page::view::{Frame, Link, MovedPage};
use crate::site::{Trouble, read_source};
use crate::span::Spanned;

/// A page that had other addresses before.
struct Moved<'a> {
    /// Its file.
    path: &'a str,
    /// The folder its pages stand in.
    folder: &'static str,
    /// Where it is now, from the site's root.
    now: Link,
    /// Its former names.
    formerly: &'a [Spanned<String>],
}

/// Writes a page that leads on at every former address, and the pictures; tells what clashes.
pub(super) fn press(put: &mut Put) -> Result<(), Trouble> {
    let desk = put.desk;
    for moved in moved(desk).into_iter().filter(|moved| !moved.formerly.is_empty()) {
        let source = read_source(&desk.gathered.dir, moved.path, &mut Vec::new())?;
        for name in moved.formerly {
            match lead_on(desk, &moved, name) {
                Err(finding) => put.findings.extend(source.as_ref().map(|source| finding.locate(source))),
                Ok((path, view)) => put.page(&path, "moved.html", &view)?,
            }
        }
    }
    pictures(put)
}

/// The page at a former address; a finding where something stands there.
fn lead_on(desk: &Desk, moved: &Moved, name: &Spanned<String>) -> Result<(String, MovedPage), Finding> {
    let folder = moved.folder;
    let path = format!("{folder}/{}.html", name.value);
    let fault = |message: String| Finding::error(Code::BadAddress, name.span, message);
    if name.value.is_empty() || plain(&name.value) != name.value {
        return Err(fault(format!("`{}` was no address", name.value))
            .why("an address is made of the letters a to z, digits and hyphens, all small")
            .write(plain(&name.value)));
    }
    if desk.made().leaves.contains_key(&path) {
        return Err(fault(format!("another page stands at {path}"))
            .why("an address leads to one page; links that people have kept would lead to the wrong one"));
    }
    let to = Link { href: format!("../{}", moved.now.href), ..moved.now.clone() };
    // The former name makes the title its own.
    let about = format!("{} {}.", desk.word("moved-to"), moved.now.text);
    let frame = desk.frame(&format!("{} ({})", moved.now.text, name.value), &about, &path);
    // What the page says of itself to machines is where it leads.
    let canonical = desk.book.course.address.as_ref().map(|site| format!("{site}{}", moved.now.href));
    Ok((path, MovedPage { frame: Frame { canonical: canonical.unwrap_or_default(), ..frame }, to }))
}

fn moved<'a>(desk: &Desk<'a>) -> Vec<Moved<'a>> {
    let book = desk.book;
    let lessons = book.lessons.iter().map(|head| Moved {
        path: &head.path,
        folder: "lessons",
        now: lesson_link(head, ""),
        formerly: &head.formerly,
    });
    let plants = desk.gathered.plants.iter().filter_map(move |path| {
        let plant = book.plants.get(super::stem(path))?;
        let now = page_link("plants", &plant.id, &plant.words);
        Some(Moved { path, folder: "plants", now, formerly: &plant.formerly })
    });
    let pantry = book.pantry.shelves().filter_map(move |shelf| {
        let now = page_link("pantry", &shelf.item.id, &shelf.item.words);
        let own = shelf.page.as_ref()?;
        Some(Moved { path: &own.path, folder: "pantry", now, formerly: &own.formerly })
    });
    lessons.chain(plants).chain(pantry).collect()
}

/// Writes the pictures. One that no page shows is told.
fn pictures(put: &mut Put) -> Result<(), Trouble> {
    let desk = put.desk;
    // A page that was not made shows nothing; its own finding says why.
    let whole = !stops(put.findings);
    let shown = |path: &str| !whole || desk.made().leaves.values().any(|leaf| leaf.shows(path));
    for path in &desk.gathered.pictures {
        let name = path.strip_prefix("pictures/").unwrap_or(path);
        if desk.book.pictures.get(name).is_none_or(Option::is_none) {
            continue;
        }
        if !shown(path) {
            put.findings.push(
                Finding::of_file(Level::Warning, Code::BadPicture, path, "no page shows this picture")
                    .write(format!("![what it shows]({name})")),
            );
        }
        desk.copy(path)?;
    }
    Ok(())
}

/// A file of a theme that stands where a page does.
pub(super) fn in_the_way(desk: &Desk, name: &str) -> Finding {
    let path = format!("themes/{}/{name}", theme::name(desk.book));
    Finding::of_file(Level::Error, Code::BadAddress, &path, format!("a page of the book stands at {name}"))
        .why("an address leads to one file; a page is changed by its template")
        .write("another name for it")
}

/// Files whose addresses are one, or are but for capitals, and files whose names make no plain address.
pub(super) fn strange(desk: &Desk) -> Vec<Finding> {
    let made = desk.made();
    let mut by_small: BTreeMap<String, &str> = BTreeMap::new();
    let mut findings = Vec::new();
    for (path, (_, times)) in &made.files {
        let clash = match by_small.insert(path.to_lowercase(), path) {
            Some(twin) => Some(format!("{twin} differs from it in capitals alone")),
            None if *times > 1 => Some("two files would have this address".to_string()),
            None => None,
        };
        findings.extend(clash.map(|message| {
            Finding::of_file(Level::Error, Code::BadAddress, path, message)
                .why("an address leads to one file; some disks and hosts take small letters and capitals for the same")
                .write("another name for one of them")
        }));
        if path.chars().any(|c| !(c.is_ascii_alphanumeric() || "-_./".contains(c))) {
            let (stem, ending) = path.rsplit_once('.').unwrap_or((path, ""));
            let plainly: Vec<String> = stem.split('/').map(plain).collect();
            findings.push(
                Finding::of_file(
                    Level::Error,
                    Code::BadAddress,
                    path,
                    "the file's name makes no plain address",
                )
                .why("an address is made of plain letters, digits, hyphens and points")
                .write(format!(
                    "rename the file to {}.{}",
                    plainly.join("/"),
                    ending.to_lowercase()
                )),
            );
        }
    }
    findings
}

/// Links to places on other pages that have no such place.
pub(super) fn loose(desk: &Desk, anchored: impl Iterator<Item = Anchored>) -> Vec<Finding> {
    let leaves = &desk.made().leaves;
    let missing = anchored.filter(|place| {
        // A page that could not be made has findings of its own.
        leaves.get(&place.page).is_some_and(|leaf| !leaf.ids.contains(&place.anchor))
    });
    missing.map(|place| place.finding).collect()
}
