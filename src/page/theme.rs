//! The theme: templates, styles and scripts, built in or laid over the built-in ones file by file.
//!
//! The only place that knows the template crate. Every template is first read as it was
//! written, so that a fault has its place in the author's file, and then made small for use.

use super::shrink;
use crate::diagnostic::{Code, Finding, Level};
use crate::span::{Source, Span};
use serde::Serialize;
use std::collections::BTreeMap;
use tera::{Context, ErrorKind, Tera};

/// The theme's files at the moment of building, each with its path below `themes/stillroom`.
macro_rules! files {
    ($($path:literal),* $(,)?) => {
        &[$(($path, include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/themes/stillroom/", $path)))),*]
    };
}

/// Every file of the built-in theme. A file that is not listed here is not in the binary.
const BUILT_IN: &[(&str, &str)] = files![
    "templates/cautions.html",
    "templates/checks.html",
    "templates/children.html",
    "templates/home.html",
    "templates/ledger.html",
    "templates/lesson.html",
    "templates/list.html",
    "templates/method.html",
    "templates/monograph.html",
    "templates/one-day.html",
    "templates/page.html",
    "templates/parts.html",
    "templates/people.html",
    "templates/recipe.html",
    "templates/side-by-side.html",
    "templates/spirits.html",
    "templates/table.html",
    "templates/tables.html",
    "script/page.js",
    "style/10-tokens.css",
    "style/20-elements.css",
    "style/30-frame.css",
    "style/35-prose.css",
    "style/40-parts.css",
    "style/50-ledger.css",
    "style/55-checks.css",
    "style/56-facts.css",
    "style/60-levels.css",
    "style/65-keeping.css",
    "style/70-choice.css",
    "style/90-print.css",
];

/// A theme ready for use: one for all pages, shared between threads.
pub struct Theme {
    /// Every file as written, by its path; findings point into these.
    files: BTreeMap<String, String>,
    /// Templates as written, to find the place of a fault.
    written: Tera,
    /// The same made small, for pages.
    small: Tera,
    assets: Vec<(String, Vec<u8>)>,
}

impl Theme {
    /// The theme in the binary.
    pub fn built_in() -> Result<Theme, Vec<Finding>> {
        Theme::over(Vec::new())
    }

    /// The theme in the binary, each of these `(path, text)` in place of the built-in file of its path or beside
    /// it. Paths have forward slashes: `templates/page.html`, `style/20-recipe.css`, `script/work.js`.
    pub fn over(files: Vec<(String, String)>) -> Result<Theme, Vec<Finding>> {
        let built_in = BUILT_IN.iter().map(|(path, text)| (path.to_string(), text.to_string()));
        let files: BTreeMap<String, String> = built_in.chain(files).collect();
        let mut findings = Vec::new();
        let mut templates = Vec::new();
        let mut style = String::new();
        let mut assets = Vec::new();
        for (path, text) in &files {
            if let Some(name) = path.strip_prefix("templates/") {
                match read_alone(name, text).and_then(|()| {
                    shrink::template(text).map_err(|spot| at(path, text, spot.span, spot.message))
                }) {
                    Ok(small) => templates.push((name, text.as_str(), small)),
                    Err(finding) => findings.push(finding),
                }
            } else if path.starts_with("style/") && path.ends_with(".css") {
                match shrink::style(text) {
                    // Each file on a line of its own: `view source` shows which is which.
                    Ok(small) => style.extend([small.as_str(), "\n"]),
                    Err(spot) => findings.push(at(path, text, spot.span, spot.message)),
                }
            } else if let Some(name) = path.strip_prefix("script/").filter(|name| name.ends_with(".js")) {
                assets.push((name.to_string(), shrink::script(text).into_bytes()));
            } else if !path.starts_with("words/") {
                assets.push((path.clone(), text.clone().into_bytes()));
            }
        }
        if !style.is_empty() {
            assets.push(("style.css".to_string(), style.into_bytes()));
        }
        assets.sort();
        let mut written = new_tera();
        let mut small = new_tera();
        // Read together only if each can be read alone: else one fault shows as many.
        if findings.is_empty() {
            let as_written = templates.iter().map(|(name, text, _)| (*name, *text));
            if let Err(error) = written.add_raw_templates(as_written) {
                match error.kind() {
                    ErrorKind::Msg(print) if print.contains("--> ") => {
                        findings.extend(told_in_print(print, &files))
                    }
                    _ => findings.push(told(&error, &files, None)),
                }
            } else if let Err(error) =
                small.add_raw_templates(templates.iter().map(|(name, _, small)| (*name, small)))
            {
                findings.push(whole(
                    &files,
                    None,
                    format!("a template cannot be made small: {}", brief(&error)),
                ));
            }
        }
        if findings.is_empty() { Ok(Theme { files, written, small, assets }) } else { Err(findings) }
    }

    /// A page. `template` is a path below `templates/`: `recipe.html`.
    pub fn render(&self, template: &str, view: &impl Serialize) -> Result<String, Finding> {
        let told = |error: &tera::Error| told(error, &self.files, Some(template));
        let context = Context::from_serialize(view).map_err(|error| told(&error))?;
        self.small.render(template, &context).map_err(|error| {
            // The place in the small template means nothing to its author.
            match self.written.render(template, &context) {
                Err(error) => told(&error),
                Ok(_) => whole(&self.files, Some(template), brief(&error)),
            }
        })
    }

    /// What a site needs beside its pages, sorted by name: `style.css` (every `style/*.css` in the order of
    /// their names), each script under its own name, every other file under its path.
    pub fn assets(&self) -> Vec<(String, Vec<u8>)> {
        self.assets.clone()
    }

    /// A file of the theme as written, such as `words/en.yaml`.
    pub fn file(&self, path: &str) -> Option<&str> {
        self.files.get(path).map(String::as_str)
    }
}

fn new_tera() -> Tera {
    let mut tera = Tera::new();
    // Everything is HTML, whatever a file is called: nothing goes out unescaped by its name.
    tera.autoescape_on(vec![""]);
    tera
}

/// Reads one template for itself. What it misses from others is looked at when all are there.
fn read_alone(name: &str, text: &str) -> Result<(), Finding> {
    match new_tera().add_raw_template(name, text).as_ref().map_err(tera::Error::kind) {
        Err(ErrorKind::SyntaxError(report)) => {
            Err(at(&path_of(name), text, place(report, text), lower(report.message())))
        }
        _ => Ok(()),
    }
}

/// Names that no template, filter or part answers to are reported by the crate as one printed text;
/// each report in it is `error: words`, then `--> file:line:column`.
fn told_in_print(print: &str, files: &BTreeMap<String, String>) -> Vec<Finding> {
    let mut findings = Vec::new();
    for report in print.split("error: ").skip(1) {
        let mut lines = report.lines();
        let message = lower(lines.next().unwrap_or(""));
        let place = lines.next().and_then(|line| line.split_once("--> ")).map_or("", |(_, place)| place);
        let mut place = place.rsplitn(3, ':');
        let mut number = || place.next().and_then(|number| number.trim().parse::<usize>().ok());
        let (column, line) = (number(), number());
        let path = path_of(place.next().unwrap_or(""));
        findings.push(match (files.get(&path), line, column) {
            (Some(text), Some(line), Some(column)) => {
                let source = Source::new(path.as_str(), text.as_str());
                let before: usize =
                    source.line(line).chars().take(column.saturating_sub(1)).map(char::len_utf8).sum();
                let start = source.line_start(line) + before;
                at(&path, text, Span::new(start, start + 1), message)
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

fn path_of(template: &str) -> String {
    format!("templates/{template}")
}

fn place(report: &tera::ReportError, text: &str) -> Span {
    let range = &report.span().range;
    // A fault at the end of a file is shown at its last character.
    let start = range.start.min(text.trim_end().len().saturating_sub(1));
    Span::new(start, range.end.clamp(start, text.len()))
}

fn at(path: &str, text: &str, span: Span, message: impl Into<String>) -> Finding {
    Finding::error(Code::BadTheme, span, message).locate(&Source::new(path, text))
}

/// A fault with no place in a file; the template that was asked for, if there is one, stands for it.
fn whole(files: &BTreeMap<String, String>, template: Option<&str>, message: String) -> Finding {
    let first = || files.keys().find(|path| path.starts_with("templates/")).cloned();
    let path = template.map(path_of).or_else(first).unwrap_or_else(|| "templates".to_string());
    Finding::of_file(Level::Error, Code::BadTheme, &path, message)
}

fn told(error: &tera::Error, files: &BTreeMap<String, String>, template: Option<&str>) -> Finding {
    match error.kind() {
        ErrorKind::SyntaxError(report) | ErrorKind::RenderingError(report) => {
            let path = path_of(report.filename());
            match files.get(&path) {
                Some(text) => at(&path, text, place(report, text), lower(report.message())),
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

fn brief(error: &tera::Error) -> String {
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

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Serialize)]
    struct View {
        title: &'static str,
        lines: Vec<&'static str>,
    }

    const VIEW: View = View { title: "Elder & <rose> \"x\"", lines: vec![] };

    fn theme(files: &[(&str, &str)]) -> Result<Theme, Vec<Finding>> {
        Theme::over(files.iter().map(|(path, text)| (path.to_string(), text.to_string())).collect())
    }

    fn places(findings: &[Finding]) -> Vec<(&str, usize, usize)> {
        let place = |finding: &'_ Finding| finding.place.clone().expect("located");
        let path = |finding: &Finding| match place(finding).path.as_str() {
            "templates/zz-a.html" => "a",
            "templates/zz-b.html" => "b",
            "style/zz-a.css" => "css",
            _ => "?",
        };
        findings.iter().map(|finding| (path(finding), place(finding).line, place(finding).column)).collect()
    }

    fn fails(files: &[(&str, &str)]) -> Vec<Finding> {
        theme(files).err().expect("a fault")
    }

    #[test]
    fn the_built_in_theme_is_sound() {
        if let Err(findings) = Theme::built_in() {
            panic!("{findings:?}");
        }
    }

    #[test]
    fn a_page_is_rendered_small_and_escaped() {
        let page = "<main>\n  {% block main %}{% endblock %}\n</main>\n";
        let lesson = "{% extends \"zz-a.html\" %}\n{% block main %}\n<p title=\"{{title}}\">{{ title }}</p>\n{% endblock %}\n";
        let theme = theme(&[("templates/zz-a.html", page), ("templates/zz-b.html", lesson)]).expect("sound");
        let words = "Elder &amp; &lt;rose&gt; &quot;x&quot;";
        let html = theme.render("zz-b.html", &VIEW).expect("renders");
        assert_eq!(html, format!("<main><p title=\"{words}\">{words}</p></main>"));
    }

    #[test]
    fn a_file_stands_in_for_one_of_its_path() {
        let over = theme(&[("templates/zz-a.html", "one"), ("templates/zz-a.html", "two")]).expect("sound");
        assert_eq!(over.render("zz-a.html", &VIEW), Ok("two".to_string()));
    }

    #[test]
    fn faults_have_their_place_in_the_file_as_written() {
        let found = fails(&[
            ("templates/zz-a.html", "<p>\n\n  {% if %}</p>"),
            ("templates/zz-b.html", "<p>\n<a {{ title }}>x</a></p>"),
            ("style/zz-a.css", "a {\n  b: \"c\n}"),
        ]);
        assert_eq!(places(&found), [("css", 2, 6), ("a", 3, 9), ("b", 2, 4)]);
        assert!(found.iter().all(|finding| finding.code == Code::BadTheme));
        assert_eq!(
            places(&fails(&[("templates/zz-a.html", "<p>\n {{ title | nope }}</p>")])),
            [("a", 2, 13)]
        );
        assert_eq!(places(&fails(&[("templates/zz-a.html", "<p>{% if title %}\n")])), [("a", 1, 17)]);
        assert_eq!(places(&fails(&[("templates/zz-a.html", "{% extends \"gone.html\" %}")])), [("a", 0, 0)]);
        let a = ("templates/zz-a.html", "<p>\n {% include \"gone.html\" %}</p>");
        let b = ("templates/zz-b.html", "é {{ title | nope }} {{ title is nope }}");
        assert_eq!(places(&fails(&[b, a])), [("a", 2, 13), ("b", 1, 14), ("b", 1, 34)]);
    }

    #[test]
    fn a_fault_met_in_rendering_has_its_place_too() {
        let text = "<div>\n\n   <p>\n {{ title }}\n {{ gone }}</p></div>";
        let theme = theme(&[("templates/zz-a.html", text)]).expect("sound");
        let finding = theme.render("zz-a.html", &VIEW).expect_err("not there");
        assert_eq!(places(std::slice::from_ref(&finding)), [("a", 5, 5)]);
        assert!(finding.message.contains("gone"), "{}", finding.message);
        assert!(theme.render("none.html", &VIEW).is_err());
        assert!(theme.render("zz-a.html", &VIEW.lines).is_err());
    }

    #[test]
    fn assets_come_in_order() {
        let theme = theme(&[
            ("style/zz-b.css", "b { c: d; }"),
            ("style/zz-a.css", "a { c: d }"),
            ("script/zz.js", "let a;\n\n"),
            ("picture/zz.svg", "<svg/>"),
            ("words/en.yaml", "a: b"),
        ])
        .expect("sound");
        let assets = theme.assets();
        let of = |name: &str| {
            let (_, bytes) = assets.iter().find(|(known, _)| known == name).expect("there");
            String::from_utf8(bytes.clone()).expect("text")
        };
        assert!(of("style.css").ends_with("a{c:d}\nb{c:d}\n"), "{}", of("style.css"));
        assert_eq!(of("zz.js"), "let a;\n");
        assert_eq!(of("picture/zz.svg"), "<svg/>");
        assert!(assets.iter().all(|(name, _)| !name.starts_with("words")));
        assert_eq!(theme.file("words/en.yaml"), Some("a: b"));
    }
}
