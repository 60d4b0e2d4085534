//! The old rules for a child's dose, side by side. Teaching only: no recipe uses them.

use super::ledger::lines;
use super::method_page::{Users, note_users};
use super::view::{CautionRow, ChildrenPage, Frame, Link, RuleTable, RuleTableRow};
use crate::formula::Use;
use crate::formula::catalogue::rules::{BySurface, Clark, Cowling, Fried, Young};
use crate::measure::decimal;
use crate::measure::unit::{G, KG, M2, MONTH, YEAR};
use crate::span::Span;
use crate::variation::Worked;
use crate::working::Working;

/// Ages of the table, months.
const AGES: &[u32] = &[3, 6, 12, 18, 24, 48, 72, 96, 120, 144];
/// Beyond this many months Fried's rule, made for infants, says nothing.
const INFANT: u32 = 24;
/// Weights of the table, lb.
const POUNDS: &[u32] = &[10, 20, 30, 40, 50, 60, 80, 100];
/// Grams of a pound.
const POUND: f64 = 453.592_37;
/// Surfaces of the table, square metres.
const SURFACES: &[f64] = &[0.25, 0.50, 0.75, 0.85, 1.00, 1.25, 1.50];
/// Minutes of a month and of a year, as the units keep them.
const MONTH_MIN: f64 = 43_830.0;
const YEAR_MIN: f64 = 525_960.0;

/// The one child that is worked in full: an adult's dose of 3 g, six years old, seven next birthday, 50 lb, 0.85 m².
struct Child {
    adult: f64,
    years: f64,
    pounds: f64,
    surface: f64,
}
const CHILD: Child = Child { adult: 3.0, years: 6.0, pounds: 50.0, surface: 0.85 };

/// The view.
pub fn page(frame: Frame, users: &mut Users) -> ChildrenPage {
    let root = frame.root.clone();
    let here = Link { text: frame.title.clone(), href: "childrens-doses.html".to_string(), current: false };
    let worked = one_child();
    note_users(&worked, &here, users);
    ChildrenPage {
        warning: CautionRow {
            id: "teaching-only".into(),
            level: "stop".into(),
            lead: "Teaching only, not a dose.".into(),
            text: "These rules are history. They disagree with one another, and none of them knows what a plant does in a \
                   child. No recipe of this book uses them. A child’s dose comes from a doctor or a pharmacist; honey \
                   never under twelve months."
                .into(),
            reason: String::new(),
            source_html: "Clark, Young, Cowling and Fried, as an encyclopedia retells them".into(),
        },
        by_age: by_age(),
        by_body: by_body(),
        lead: "Six years old, seven at the next birthday, 50 lb, 0.85 m² of skin; an adult’s dose of 3 g. Five rules, \
               worked: teaching only, not a dose."
            .into(),
        rows: lines(&worked, "child", &root),
        frame,
    }
}

fn one_child() -> Worked {
    let mut work = Working::new();
    let none = Span::default();
    let adult = work.given("an adult’s dose", &G, CHILD.adult, false, none);
    let age = work.given("age", &YEAR, CHILD.years * YEAR_MIN, false, none);
    let next = work.given("age at the next birthday", &YEAR, (CHILD.years + 1.0) * YEAR_MIN, false, none);
    let months = work.given("age in months", &MONTH, CHILD.years * 12.0 * MONTH_MIN, false, none);
    let body = work.given("weight of the child", &KG, CHILD.pounds * POUND, false, none);
    let surface = work.given("surface of the child", &M2, CHILD.surface, false, none);
    work.work("by Young", Young { adult, age });
    work.work("by Cowling", Cowling { adult, next_birthday: next });
    work.work("by Fried, made for infants", Fried { adult, age: months });
    work.work("by Clark", Clark { adult, body });
    work.work("by the surface", BySurface { adult, surface });
    Worked::of("one child", work)
}

/// A rule's share of an adult's dose, in per cent.
fn share(rule: impl FnOnce(&mut Working) -> Use) -> String {
    let mut work = Working::new();
    let by = rule(&mut work);
    let line = work.work("share", by);
    decimal(work.evaluate(&[])[line.index()] * 100.0, 0)
}

fn by_age() -> RuleTable {
    let given = |work: &mut Working, unit, value| {
        let adult = work.given("adult", &G, 1.0, false, Span::default());
        (adult, work.given("of the child", unit, value, false, Span::default()))
    };
    let rows = AGES.iter().map(|months| {
        let minutes = f64::from(*months) * MONTH_MIN;
        let whole_years = f64::from(months / 12 + 1);
        let young = share(|work| {
            let (adult, age) = given(work, &YEAR, minutes);
            Young { adult, age }.into()
        });
        let cowling = share(|work| {
            let (adult, next_birthday) = given(work, &YEAR, whole_years * YEAR_MIN);
            Cowling { adult, next_birthday }.into()
        });
        let fried = share(|work| {
            let (adult, age) = given(work, &MONTH, minutes);
            Fried { adult, age }.into()
        });
        let name = match months {
            months if months % 12 == 0 && *months > 12 => format!("{} years", months / 12),
            _ => format!("{months} months"),
        };
        let fried = if *months > INFANT { "–".to_string() } else { fried };
        RuleTableRow { name, cells: vec![young, cowling, fried] }
    });
    RuleTable {
        caption: "By age, per cent of an adult’s dose. Teaching only, not a dose.".into(),
        heads: vec!["Age".into(), "Young".into(), "Cowling".into(), "Fried".into()],
        rows: rows.collect(),
    }
}

fn by_body() -> RuleTable {
    let clark = POUNDS.iter().map(|pounds| {
        let grams = f64::from(*pounds) * POUND;
        let cell = share(|work| {
            let adult = work.given("adult", &G, 1.0, false, Span::default());
            let body = work.given("body", &KG, grams, false, Span::default());
            Clark { adult, body }.into()
        });
        let name = format!("{pounds} lb ({} kg)", decimal(grams / 1000.0, 1));
        RuleTableRow { name, cells: vec![cell, "–".into()] }
    });
    let surface = SURFACES.iter().map(|metres| {
        let cell = share(|work| {
            let adult = work.given("adult", &G, 1.0, false, Span::default());
            let surface = work.given("surface", &M2, *metres, false, Span::default());
            BySurface { adult, surface }.into()
        });
        RuleTableRow { name: format!("{} m²", decimal(*metres, 2)), cells: vec!["–".into(), cell] }
    });
    RuleTable {
        caption: "By the body, per cent of an adult’s dose. Teaching only, not a dose.".into(),
        heads: vec!["Body".into(), "Clark".into(), "Surface".into()],
        rows: clark.chain(surface).collect(),
    }
}
