//! A recipe's working as a table at 80 columns, and two of them side by side.

use crate::caution::{self, Company, Seen};
use crate::compare::{self, Stands};
use crate::cost::bill;
use crate::formulary::Formulary;
use crate::page::company::with_reasons;
use crate::page::cost;
use crate::page::ledger::matters;
use crate::page::show::{between, plainly};
use crate::variation::{Worked, WorkedRecipe};

/// The short sum as a table, then the variations by their finished volume, then who must not take it.
pub(super) fn as_table(recipe: &WorkedRecipe, book: &Formulary, bold: bool) -> String {
    let base = &recipe.base;
    let mut out = heading(&base.name, bold);
    for (id, line) in base.laid.working.claimed() {
        let entry = base.laid.working.entry(line);
        let shown = base.shown(line).replace('\u{a0}', " ");
        let range =
            between(base, line).unwrap_or_default().replace(['\u{a0}', '\u{2060}'], " ").replace(" – ", "–");
        // The unit stands beside the value already.
        let range = range.strip_suffix(entry.unit.text).unwrap_or(&range).trim_end();
        out.push_str(
            format!("{:<18}{:<32}{:>12}  {}\n", id.text(), cut(&entry.name, 31), shown, range).trim_end(),
        );
        out.push('\n');
    }
    out.push_str(&set(base));
    let guess = matters(base);
    if !guess.is_empty() {
        out.push_str(&format!("\n{}", folded(&guess.replace('\u{a0}', " "))));
    }
    let seen = Seen { worked: base, recipe: &recipe.recipe, book, whole: None };
    let company = Company::of(&caution::cautions(&seen));
    for (head, list) in [("Never for", &company.not_for), ("Ask first", &company.ask_first)] {
        if !list.is_empty() {
            out.push_str(&format!("\n{head}\n{}", folded(&with_reasons(list).replace('\u{a0}', " "))));
        }
    }
    if let Some(bill) = bill(base, &book.course.prices) {
        out.push_str(&format!("\nCost\n{}", folded(&cost::in_short(&bill, &book.course.prices.currency))));
    }
    if !recipe.variations.is_empty() {
        out.push_str("\nVariations\n");
        for variation in &recipe.variations {
            let made = variation.made().map_or(String::new(), |line| plainly(variation, line));
            out.push_str(&format!("{:<50}{:>12}\n", cut(&variation.name, 49), made.replace('\u{a0}', " ")));
        }
    }
    out
}

/// What was set to other than the recipe's, each once.
fn set(worked: &Worked) -> String {
    let as_written = worked.with(&[]);
    let mut lines: Vec<_> = worked.set.iter().map(|(line, _)| *line).collect();
    lines.sort_unstable();
    lines.dedup();
    let rows = lines.into_iter().filter(|line| worked.at(*line) != as_written.at(*line)).map(|line| {
        let (name, now) = (&worked.laid.working.entry(line).name, worked.shown(line));
        format!("  {:<34}{now:>18}  in place of {}\n", cut(name, 33), as_written.shown(line))
            .replace('\u{a0}', " ")
    });
    let rows: String = rows.collect();
    if rows.is_empty() { rows } else { format!("\nSet\n{rows}") }
}

/// A text in lines of 80 columns, two blanks before each.
fn folded(text: &str) -> String {
    const WIDE: usize = 78;
    let mut lines = vec![String::new()];
    for word in text.split(' ') {
        let last = lines.last().map_or(0, |line| line.chars().count());
        if last > 0 && last + 1 + word.chars().count() > WIDE {
            lines.push(String::new());
        }
        if let Some(line) = lines.last_mut() {
            if !line.is_empty() {
                line.push(' ');
            }
            line.push_str(word);
        }
    }
    lines.into_iter().map(|line| format!("  {line}\n")).collect()
}

/// A text cut to a column, with a mark where something is missing.
fn cut(text: &str, columns: usize) -> String {
    if text.chars().count() <= columns {
        return text.to_string();
    }
    text.chars().take(columns - 1).chain(['…']).collect()
}

/// A heading: bold on a terminal that shows it, underlined everywhere.
fn heading(name: &str, bold: bool) -> String {
    let line = "-".repeat(name.chars().count());
    if bold { format!("\u{1b}[1m{name}\u{1b}[0m\n{line}\n") } else { format!("{name}\n{line}\n") }
}

/// Two workings line by line: what each comes to, and a mark where they differ.
pub(super) fn side_by_side(left: &Worked, right: &Worked, bold: bool) -> String {
    let mut out = heading(&format!("{} | {}", left.name, right.name), bold);
    for row in compare::rows(left, right) {
        let shown = |text: Option<String>| text.unwrap_or_else(|| "–".to_string()).replace('\u{a0}', " ");
        let mark = if row.stands == Stands::Same { " " } else { "*" };
        let (left, right) = (shown(row.left), shown(row.right));
        out.push_str(format!("{mark} {:<34}{:>20}{:>20}\n", cut(&row.name, 33), left, right).trim_end());
        out.push('\n');
    }
    out.push_str("\n* they differ\n");
    out
}
