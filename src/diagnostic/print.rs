//! Findings as text: a panel with the author's own line, or plain sentences to be read aloud.

use annotate_snippets::{AnnotationKind, Group, Level as Weight, Origin, Renderer, Snippet};

use super::{Finding, Level, Place};

/// How findings are shown.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Look {
    /// Panels without colour, for files and pipes.
    Plain,
    /// Panels in colour, for a terminal.
    Colour,
    /// Sentences without marks or frames, for screen readers.
    Sentences,
}

/// One finding as text, without a line end after the last line.
pub fn print(finding: &Finding, look: Look) -> String {
    let printed = match look {
        Look::Plain => panel(finding, &Renderer::plain()),
        Look::Colour => panel(finding, &Renderer::styled()),
        Look::Sentences => sentences(finding),
    };
    let lines: Vec<&str> = printed.lines().map(str::trim_end).collect();
    lines.join("\n").trim_end().to_string()
}

/// How many findings there were and what follows from them, as the last line of a run.
pub fn summary(errors: usize, warnings: usize) -> String {
    let warned = match warnings {
        1 => "1 warning".to_string(),
        _ => format!("{warnings} warnings"),
    };
    match (errors, warnings) {
        (0, 0) => "Nothing found.".to_string(),
        (0, _) => format!("{warned}; nothing stops the press."),
        (1, 0) => "1 finding stops the press.".to_string(),
        (_, 0) => format!("{errors} findings stop the press."),
        (1, _) => format!("1 finding stops the press, {warned}."),
        _ => format!("{errors} findings stop the press, {warned}."),
    }
}

/// Sorts findings as the files are read: by path, line and column, then by code.
pub fn in_order(findings: &mut [Finding]) {
    findings.sort_by(|a, b| key(a).cmp(&key(b)));
}

fn key(finding: &Finding) -> (Option<(&str, usize, usize)>, &'static str) {
    let place = finding.place.as_ref().map(|place| (place.path.as_str(), place.line, place.column));
    (place, finding.code.text())
}

fn panel(finding: &Finding, renderer: &Renderer) -> String {
    let weight = match finding.level {
        Level::Error => Weight::ERROR,
        Level::Warning => Weight::WARNING,
        Level::Note => Weight::NOTE,
    };
    let title = weight.primary_title(finding.message.as_str()).id(finding.code.text());
    let mut group = Group::with_title(title);
    if let Some(place) = &finding.place {
        group = placed(group, place);
    }
    if let Some(why) = &finding.why {
        group = group.element(Weight::NOTE.no_name().message(format!("Why: {why}")));
    }
    if let Some(write) = to_write(&finding.write) {
        group = group.element(Weight::HELP.no_name().message(write));
    }
    renderer.render(&[group])
}

fn placed<'a>(group: Group<'a>, place: &'a Place) -> Group<'a> {
    if place.line == 0 {
        return group.element(Origin::path(place.path.as_str()));
    }
    let snippet = Snippet::source(place.text.as_str()).line_start(place.line).path(place.path.as_str());
    group.element(snippet.annotation(AnnotationKind::Primary.span(mark(place))))
}

/// The marked bytes, held inside the line and on whole characters: a place is plain data that
/// anyone may make.
fn mark(place: &Place) -> std::ops::Range<usize> {
    let whole = |at: usize| {
        (0..=at.min(place.text.len())).rev().find(|&at| place.text.is_char_boundary(at)).unwrap_or(0)
    };
    let start = whole(place.mark.start);
    start..whole(place.mark.end).max(start)
}

fn to_write(write: &[String]) -> Option<String> {
    match write {
        [] => None,
        [only] if !only.contains('\n') => Some(format!("Write: {only}")),
        [only] => Some(format!("Write:\n{}", set_in(only, "  "))),
        several => {
            let readings: Vec<String> =
                several.iter().map(|write| format!("- {}", set_in(write, "  ").trim_start())).collect();
            Some(format!("Write one of:\n{}", readings.join("\n")))
        }
    }
}

fn set_in(text: &str, by: &str) -> String {
    let lines: Vec<String> = text.lines().map(|line| format!("{by}{line}")).collect();
    lines.join("\n")
}

fn sentences(finding: &Finding) -> String {
    let mut lines = Vec::new();
    match &finding.place {
        Some(Place { path, line: 0, .. }) => lines.push(format!("{path}.")),
        Some(place) => lines.push(format!("{}, line {}, column {}.", place.path, place.line, place.column)),
        None => {}
    }
    let weight = match finding.level {
        Level::Error => "Error",
        Level::Warning => "Warning",
        Level::Note => "Note",
    };
    lines.push(format!("{weight}, {}: {}.", finding.code.text(), finding.message));
    lines.extend(finding.why.iter().map(|why| format!("Why: {why}.")));
    match finding.write.as_slice() {
        // Nothing follows what is to be copied: a full stop would be copied with it.
        [] => {}
        [only] => lines.push(format!("Write: {only}")),
        several => {
            lines.push("Write one of these.".to_string());
            lines.extend(several.iter().enumerate().map(|(at, write)| format!("{}: {write}", at + 1)));
        }
    }
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::super::Code;
    use super::*;
    use crate::span::{Source, Span};

    fn unknown_key() -> Finding {
        let source = Source::new("lessons/syrup.md", "# Syrup\nliqiud: ½ cup\n");
        Finding::error(Code::UnknownKey, Span::new(8, 14), "`liqiud` is not a key of a recipe")
            .why("the keys of a recipe are `name` and `liquid`")
            .write("liquid:")
            .locate(&source)
    }

    #[test]
    fn a_panel_shows_the_line_and_the_mark() {
        let wanted = "\
error[unknown-key]: `liqiud` is not a key of a recipe
 --> lessons/syrup.md:2:1
  |
2 | liqiud: ½ cup
  | ^^^^^^
  |
  = Why: the keys of a recipe are `name` and `liquid`
  = Write: liquid:";
        assert_eq!(print(&unknown_key(), Look::Plain), wanted);
    }

    #[test]
    fn colour_adds_only_colour() {
        let coloured = print(&unknown_key(), Look::Colour);
        let mut bare = String::new();
        for (at, part) in coloured.split('\u{1b}').enumerate() {
            bare.push_str(if at == 0 { part } else { part.split_once('m').map_or("", |(_, rest)| rest) });
        }
        assert!(coloured.contains('\u{1b}'));
        assert_eq!(bare, print(&unknown_key(), Look::Plain));
    }

    #[test]
    fn several_readings_are_a_list() {
        let finding = unknown_key().write("liquid:\n  water: 1 cup");
        let wanted = "  = Write one of:\n    - liquid:\n    - liquid:\n        water: 1 cup";
        assert!(print(&finding, Look::Plain).ends_with(wanted));
        let wanted = "Write one of these.\n1: liquid:\n2: liquid:\n  water: 1 cup";
        assert!(print(&finding, Look::Sentences).ends_with(wanted));
    }

    #[test]
    fn several_lines_to_write_stand_on_their_own() {
        let mut finding = unknown_key();
        finding.write = vec!["method:\n  - steep: 1 h".to_string()];
        assert!(print(&finding, Look::Plain).ends_with("  = Write:\n      method:\n        - steep: 1 h"));
    }

    #[test]
    fn a_whole_file_has_no_line() {
        let finding =
            Finding::of_file(Level::Warning, Code::EmptyFile, "plants/rose.md", "this file is empty")
                .why("a plant without facts cannot be used");
        let panel = "\
warning[empty-file]: this file is empty
--> plants/rose.md
 = Why: a plant without facts cannot be used";
        assert_eq!(print(&finding, Look::Plain), panel);
        let sentences = "\
plants/rose.md.
Warning, empty-file: this file is empty.
Why: a plant without facts cannot be used.";
        assert_eq!(print(&finding, Look::Sentences), sentences);
    }

    #[test]
    fn a_finding_without_a_place_has_no_panel() {
        let finding =
            Finding { place: None, level: Level::Note, why: None, write: Vec::new(), ..unknown_key() };
        assert_eq!(print(&finding, Look::Plain), "note[unknown-key]: `liqiud` is not a key of a recipe");
        assert_eq!(print(&finding, Look::Sentences), "Note, unknown-key: `liqiud` is not a key of a recipe.");
    }

    #[test]
    fn sentences_carry_the_same_facts() {
        let wanted = "\
lessons/syrup.md, line 2, column 1.
Error, unknown-key: `liqiud` is not a key of a recipe.
Why: the keys of a recipe are `name` and `liquid`.
Write: liquid:";
        assert_eq!(print(&unknown_key(), Look::Sentences), wanted);
    }

    #[test]
    fn any_mark_is_printed() {
        for mark in [0..0, 9..9, 9..10, 8..99, 99..99, 14..14] {
            let mut finding = unknown_key();
            finding.place.as_mut().expect("located above").mark = mark;
            assert!(print(&finding, Look::Plain).contains("2 | liqiud: ½ cup"));
        }
        let mut empty = unknown_key();
        empty.place =
            Some(Place { path: "a.md".into(), line: 3, column: 1, text: String::new(), mark: 0..0 });
        assert!(print(&empty, Look::Plain).contains("\n3 |\n  | ^\n"));
    }

    #[test]
    fn the_last_line_counts() {
        assert_eq!(summary(0, 0), "Nothing found.");
        assert_eq!(summary(0, 1), "1 warning; nothing stops the press.");
        assert_eq!(summary(1, 0), "1 finding stops the press.");
        assert_eq!(summary(1, 2), "1 finding stops the press, 2 warnings.");
        assert_eq!(summary(2, 1), "2 findings stop the press, 1 warning.");
        assert_eq!(summary(3, 0), "3 findings stop the press.");
    }

    #[test]
    fn findings_stand_in_the_order_of_the_files() {
        let at = |path: &str, line, column, code| {
            let place = Some(Place { path: path.into(), line, column, text: String::new(), mark: 0..0 });
            Finding { place, ..Finding::error(code, Span::default(), "x") }
        };
        let sorted = [
            at("a.md", 0, 0, Code::EmptyFile),
            at("a.md", 2, 1, Code::BadYaml),
            at("a.md", 2, 1, Code::NotUsed),
            at("a.md", 2, 9, Code::BadLink),
            at("a.md", 10, 1, Code::BadLink),
            at("b.md", 1, 1, Code::BadLink),
        ];
        let mut findings: Vec<Finding> = sorted.iter().rev().cloned().collect();
        in_order(&mut findings);
        assert_eq!(findings, sorted);
    }
}
