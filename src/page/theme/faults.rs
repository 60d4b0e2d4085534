//! What is wrong with a theme's files, told with its place in the file its author wrote.

use std::collections::BTreeMap;

use tera::{ErrorKind, Tera};

use super::files::File;
use crate::diagnostic::{Code, Finding, Level};
use crate::span::{Source, Span};

/// What is said of every fault here.
pub(super) const WHY: &str =
    "pages are made with this file; taken away, the program's own of its name stands in its place";

/// Reads one template for itself. What it misses from others is looked at when all are there.
pub(super) fn read_alone(name: &str, source: &Source) -> Result<(), Finding> {
    match Tera::new().add_raw_template(name, &source.text).as_ref().map_err(tera::Error::kind) {
        Err(ErrorKind::SyntaxError(report)) => {
            Err(at(source, place(report, &source.text), lower(report.message())))
        }
        _ => Ok(()),
    }
}

/// Names that no template, filter or part answers to are reported by the crate as one printed text;
/// each report in it is `error: words`, then `--> file:line:column`.
pub(super) fn told_in_print(print: &str, files: &BTreeMap<String, File>) -> Vec<Finding> {
    let mut findings = Vec::new();
    for report in print.split("error: ").skip(1) {
        let mut lines = report.lines();
        let message = lower(lines.next().unwrap_or(""));
        let place = lines.next().and_then(|line| line.split_once("--> ")).map_or("", |(_, place)| place);
        let mut place = place.rsplitn(3, ':');
        let mut number = || place.next().and_then(|number| number.trim().parse::<usize>().ok());
        let (column, line) = (number(), number());
        let path = path_of(place.next().unwrap_or(""));
        findings.push(match (files.get(&path).and_then(File::source), line, column) {
            (Some(source), Some(line), Some(column)) => {
                let before: usize =
                    source.line(line).chars().take(column.saturating_sub(1)).map(char::len_utf8).sum();
                let start = source.line_start(line) + before;
                at(&source, Span::new(start, start + 1), message)
            }
            _ => whole(files, None, message),
        });
    }
    // The crate goes through its templates in no fixed order.
    findings.sort_by(|a, b| {
        let key = |finding: &Finding| {
            finding.place.as_ref().map(|place| (place.path.clone(), place.line, place.column))
        };
        key(a).cmp(&key(b)).then_with(|| a.message.cmp(&b.message))
    });
    findings
}

pub(super) fn path_of(template: &str) -> String {
    format!("templates/{template}")
}

fn place(report: &tera::ReportError, text: &str) -> Span {
    let range = &report.span().range;
    // A fault at the end of a file is shown at its last character.
    let start = range.start.min(text.trim_end().len().saturating_sub(1));
    Span::new(start, range.end.clamp(start, text.len()))
}

pub(super) fn at(source: &Source, span: Span, message: impl Into<String>) -> Finding {
    Finding::error(Code::BadTheme, span, message).why(WHY).locate(source)
}

/// A fault with no place in a file; the template that was asked for, if there is one, stands for it.
pub(super) fn whole(files: &BTreeMap<String, File>, template: Option<&str>, message: String) -> Finding {
    let first = || files.keys().find(|path| path.starts_with("templates/")).cloned();
    let path = template.map(path_of).or_else(first).unwrap_or_else(|| "templates".to_string());
    let shown = files.get(&path).map_or(path.as_str(), |file| file.shown.as_str());
    Finding::of_file(Level::Error, Code::BadTheme, shown, message).why(WHY)
}

pub(super) fn told(error: &tera::Error, files: &BTreeMap<String, File>, template: Option<&str>) -> Finding {
    match error.kind() {
        ErrorKind::SyntaxError(report) | ErrorKind::RenderingError(report) => {
            let path = path_of(report.filename());
            match files.get(&path).and_then(File::source) {
                Some(source) => at(&source, place(report, &source.text), lower(report.message())),
                None => whole(files, template, lower(report.message())),
            }
        }
        ErrorKind::MissingParent { current, .. } => whole(files, Some(current), brief(error)),
        ErrorKind::CircularExtend { tpl, .. } | ErrorKind::CircularInclude { tpl, .. } => {
            whole(files, Some(tpl), brief(error))
        }
        _ => whole(files, template, brief(error)),
    }
}

pub(super) fn brief(error: &tera::Error) -> String {
    match error.kind() {
        ErrorKind::SyntaxError(report) | ErrorKind::RenderingError(report) => lower(report.message()),
        _ => lower(&error.to_string()),
    }
}

/// A message in the findings' manner: lower case first, no full stop.
fn lower(message: &str) -> String {
    let message = message.trim_end_matches(['.', '\n']);
    let mut letters = message.chars();
    let first = letters.next().map(|c| c.to_lowercase().to_string()).unwrap_or_default();
    first + letters.as_str()
}
