//! Who must not take something, in words: on the label, in the table of variations, on the terminal.

use crate::caution::{Barred, Company};

/// "under 12 months: honey; in pregnancy, while nursing: sage".
pub fn with_reasons(list: &[Barred]) -> String {
    let mut groups: Vec<(&[String], Vec<String>)> = Vec::new();
    for barred in list {
        match groups.iter_mut().find(|(of, _)| *of == barred.of.as_slice()) {
            Some((_, people)) => people.push(barred.who.phrase()),
            None => groups.push((&barred.of, vec![barred.who.phrase()])),
        }
    }
    let told = groups.into_iter().map(|(of, people)| format!("{}: {}", people.join(", "), of.join(", ")));
    told.collect::<Vec<_>>().join("; ")
}

/// "never for under 12 months, pregnancy".
pub fn in_short(company: &Company) -> String {
    match company.not_for[..] {
        [] => "nobody is named that must not take it".to_string(),
        _ => format!("never for {}", words(&company.not_for)),
    }
}

/// The same for a variation: as the recipe, or who is barred, and whose bar falls away; and whether they differ.
pub fn against_base(own: &Company, base: &Company) -> (String, bool) {
    let names = |barred: &Barred| own.not_for.iter().any(|other| other.who == barred.who);
    let gone: Vec<Barred> = base.not_for.iter().filter(|barred| !names(barred)).cloned().collect();
    if gone.is_empty() && own.not_for.len() == base.not_for.len() {
        return ("never for: as the recipe".to_string(), false);
    }
    let still = in_short(own);
    match gone[..] {
        [] => (still, true),
        _ => (format!("{still}; falls away: {}", words(&gone)), true),
    }
}

fn words(list: &[Barred]) -> String {
    list.iter().map(|barred| barred.who.word()).collect::<Vec<_>>().join(", ")
}
