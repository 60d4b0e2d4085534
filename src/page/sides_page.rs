//! Recipes and variations two and two, line by line.

use super::show::capital;
use super::view::{Frame, Link, SideRow, SidesPage, SidesPart};
use crate::compare::{Row, Stands, rows};
use crate::measure::decimal;
use crate::variation::Worked;

/// One of two.
pub struct Side<'a> {
    /// What it is called, and where it stands.
    pub link: Link,
    /// Its working.
    pub worked: &'a Worked,
    /// How it keeps, in short.
    pub keeps: &'a str,
}

/// Two that a lesson sets side by side.
pub struct Sides<'a> {
    /// Anchor.
    pub id: String,
    /// The lesson.
    pub lesson: Link,
    /// The two.
    pub both: [Side<'a>; 2],
}

/// The view.
pub fn page(frame: Frame, all: &[Sides]) -> SidesPage {
    let parts = all.iter().map(|sides| {
        let [left, right] = &sides.both;
        let mut lines: Vec<SideRow> = rows(left.worked, right.worked).into_iter().map(line).collect();
        lines.push(SideRow {
            name: "Keeping".to_string(),
            left: left.keeps.to_string(),
            right: right.keeps.to_string(),
            mark: if left.keeps == right.keeps { Stands::Same } else { Stands::Other }.mark().to_string(),
            times: String::new(),
        });
        SidesPart {
            id: sides.id.clone(),
            lesson: sides.lesson.clone(),
            left: left.link.clone(),
            right: right.link.clone(),
            rows: lines,
        }
    });
    SidesPage {
        lead: "Two and two, as their lessons set them: every figure of both, each worked in full."
            .to_string(),
        caption: "▲ more than on the left, ▼ less, no mark the same; what only one of them has is bold."
            .to_string(),
        parts: parts.collect(),
        frame,
    }
}

fn line(row: Row) -> SideRow {
    let shown = |text: Option<String>| text.unwrap_or_else(|| "–".to_string());
    let times = row.times.filter(|_| matches!(row.stands, Stands::More | Stands::Less));
    SideRow {
        name: capital(&row.name),
        left: shown(row.left),
        right: shown(row.right),
        mark: row.stands.mark().to_string(),
        times: times.map_or(String::new(), |times| format!("{} ×", decimal(times, 2))),
    }
}
