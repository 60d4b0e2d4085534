//! The checks the site prints: that they are many, that each has its source, that each agrees.

use std::collections::BTreeSet;
use stillroom::bibliography::Standing;
use stillroom::checks::{FILE, Row, Subject, read, rows};

/// Every check, worked.
fn worked() -> Vec<Row> {
    rows().unwrap_or_else(|findings| panic!("{findings:#?}"))
}

#[test]
fn every_check_agrees() {
    let faults: Vec<_> = worked()
        .into_iter()
        .filter(|row| !row.agrees())
        .map(|row| {
            let check = &row.check;
            format!("{}: ours {}, printed {} ± {}", check.id, row.ours, check.printed, check.within)
        })
        .collect();
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

#[test]
fn they_are_many_and_each_has_its_source() {
    let rows = worked();
    assert!(rows.len() >= 170, "{}", rows.len());
    let ids: BTreeSet<_> = rows.iter().map(|row| &row.check.id).collect();
    assert_eq!(ids.len(), rows.len(), "an id stands twice");
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    assert!(ids.iter().all(|id| id.chars().all(plain)));
    for row in &rows {
        let check = &row.check;
        assert!(check.source.len() > 8 && check.about.len() > 8, "{}", check.id);
        assert!(check.printed.is_finite() && check.within >= 0.0, "{}", check.id);
    }
    // What was recalled is said to be; there is some of either kind.
    let memory = rows.iter().filter(|row| row.check.standing == Standing::FromMemory).count();
    assert!(memory >= 15 && memory * 4 < rows.len(), "{memory}");
    assert_eq!(FILE.matches("\n  standing: memory\n").count(), memory);
}

#[test]
fn what_is_printed_wrong_is_not_met() {
    let wrong: Vec<_> = worked().into_iter().filter(|row| row.check.wrong.is_some()).collect();
    assert!(wrong.len() >= 5);
    for row in wrong {
        assert!(row.difference().abs() > row.check.within, "{} is met", row.check.id);
    }
}

#[test]
fn every_subject_is_checked() {
    let used: BTreeSet<_> = worked().into_iter().map(|row| row.check.subject).collect();
    let idle: Vec<_> = Subject::ALL.iter().filter(|subject| !used.contains(subject)).collect();
    assert!(idle.is_empty(), "{idle:?}");
}

#[test]
fn checks_can_fail() {
    let check = |line: &str, with: &str| {
        format!(
            "- id: x\n  about: y\n  subject: sucrose-density\n  with: {{{with}}}\n  printed: 1176.5\n  unit: kg/m³\n  within: 0.3\n  source: z\n  standing: published\n{line}"
        )
    };
    let agrees = |text: String| read(&text).map(|mut checks| checks.remove(0).work().agrees());
    assert_eq!(agrees(check("", "share: 40 %")), Ok(true));
    assert_eq!(agrees(check("", "share: 41 %")), Ok(false));
    assert_eq!(agrees(check("  wrong: it is not\n", "share: 40 %")), Ok(false));
    assert_eq!(agrees(check("  wrong: it is\n", "share: 41 %")), Ok(true));
    assert_eq!(agrees(check("", "share: much")), Ok(false));
    assert!(agrees(check("", "brix: 40")).is_err());
    assert!(agrees(check("  more: x\n", "share: 40 %")).is_err());
    assert!(read("- id: x").is_err() && read("x: y").is_err());
}
