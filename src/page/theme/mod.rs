//! The theme: templates, styles, scripts and words, built in or laid over the built-in ones file by file.
//!
//! The only place that knows the template crate. Every template is first read as it was
//! written, so that a fault has its place in the author's file, and then made small for use.

mod faults;
mod files;
mod words;

use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock};

use serde::Serialize;
use tera::{Context, ErrorKind, Kwargs, State, Tera, TeraResult};

use super::shrink;
use crate::diagnostic::{Code, Finding, Level};
use crate::span::Source;
use faults::{WHY, at, brief, read_alone, told, told_in_print, whole};
use files::{File, layered};

pub use files::{complete, names};
pub use words::{FIRST, Words};

/// A theme ready for use: one for all pages, shared between threads.
pub struct Theme {
    /// Every file as written, by its path; findings point into these.
    files: BTreeMap<String, File>,
    /// Templates as written, to find the place of a fault.
    written: Tera,
    /// The same made small, for pages.
    small: Tera,
    words: Arc<Words>,
    assets: Vec<(String, Vec<u8>)>,
}

impl Theme {
    /// The complete theme in the binary, in English. It never differs, so it is made ready once.
    ///
    /// # Errors
    /// Findings of its files; it is tested to have none.
    pub fn built_in() -> Result<Arc<Theme>, Vec<Finding>> {
        static READY: LazyLock<Result<Arc<Theme>, Vec<Finding>>> =
            LazyLock::new(|| Theme::new(complete(), Vec::new(), FIRST).map(Arc::new));
        READY.clone()
    }

    /// The theme called `name`, in `language`. Over the theme in the binary, each of these `(path, bytes)` stands
    /// in place of the built-in file of its path or beside it. Paths have forward slashes:
    /// `templates/page.html`, `style/20-recipe.css`, `script/work.js`, `words/de.yaml`.
    ///
    /// # Errors
    /// What is wrong with its files, each finding with its place.
    pub fn new(name: &str, own: Vec<(String, Vec<u8>)>, language: &str) -> Result<Theme, Vec<Finding>> {
        let files = layered(name, own);
        let mut findings = Vec::new();
        let mut templates: Vec<(&str, Source, String)> = Vec::new();
        let mut styles: BTreeMap<String, String> = BTreeMap::new();
        let mut scripts: BTreeMap<String, String> = BTreeMap::new();
        let mut assets = Vec::new();
        let words = Arc::new(read_words(&files, language, &mut findings));
        for (path, file) in &files {
            let Some((folder, name)) = path.split_once('/').filter(|(folder, _)| READ.contains(folder))
            else {
                assets.push((path.clone(), file.bytes.clone()));
                continue;
            };
            let Some(source) = file.source() else {
                findings.push(not_text(file));
                continue;
            };
            if folder == "templates" && source.text.trim().is_empty() {
                let message = "the template is empty";
                findings.push(Finding::of_file(Level::Error, Code::EmptyFile, &file.shown, message).why(WHY));
                continue;
            }
            match (folder, name.rsplit_once('.')) {
                ("templates", _) => {
                    match read_alone(name, &source).and_then(|()| {
                        shrink::template(&source.text).map_err(|spot| at(&source, spot.span, spot.message))
                    }) {
                        Ok(small) => templates.push((name, source, small)),
                        Err(finding) => findings.push(finding),
                    }
                }
                ("style", Some((_, "css"))) => match shrink::style(&source.text) {
                    // Each file on a line of its own: `view source` shows which is which.
                    Ok(small) => {
                        let one = name.split_once('/').map_or("style", |(folder, _)| folder);
                        styles.entry(format!("{one}.css")).or_default().extend([small.as_str(), "\n"]);
                    }
                    Err(spot) => findings.push(at(&source, spot.span, spot.message)),
                },
                ("script", Some((_, "js"))) => {
                    // The files of a folder are one script, in the order of their names, as all styles are one.
                    let one =
                        name.split_once('/').map_or(name.to_string(), |(folder, _)| format!("{folder}.js"));
                    scripts.entry(one).or_default().push_str(&shrink::script(&source.text));
                }
                _ => {}
            }
        }
        // What a script says stands among the words like everything else that is said.
        let said = serde_json::to_string_pretty(&words.beginning("say-")).unwrap_or_default();
        let said = format!("\"use strict\";\nglobalThis.stillroomWords = {said};\n");
        assets.push(("words.js".to_string(), said.into_bytes()));
        assets.extend(styles.into_iter().chain(scripts).map(|(name, text)| (name, text.into_bytes())));
        assets.sort();
        let mut written = new_tera(&words);
        let mut small = new_tera(&words);
        // Read together only if each can be read alone: else one fault shows as many.
        if findings.is_empty() {
            let as_written = templates.iter().map(|(name, source, _)| (*name, source.text.as_str()));
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
        if findings.is_empty() { Ok(Theme { files, written, small, words, assets }) } else { Err(findings) }
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
    /// their names), each script under its own name or its folder's, every other file under its path.
    pub fn assets(&self) -> Vec<(String, Vec<u8>)> {
        self.assets.clone()
    }

    /// The fixed words in the course's language.
    pub fn words(&self) -> &Words {
        &self.words
    }

    /// Whether there are words in a language.
    pub fn speaks(&self, language: &str) -> bool {
        words_of(&self.files, language).is_some()
    }
}

/// Folders whose files are read; all others go to the site as they are.
const READ: &[&str] = &["templates", "style", "script", "words"];

/// The file of a language: of `de-AT` that of `de` where there is none of its own.
fn words_of<'a>(files: &'a BTreeMap<String, File>, language: &str) -> Option<&'a File> {
    let whole = files.get(&format!("words/{language}.yaml"));
    whole.or_else(|| files.get(&format!("words/{}.yaml", language.split('-').next().unwrap_or(language))))
}

/// The words of a language over the English ones. A theme's own file of words adds to those below it: it holds only
/// what it says otherwise.
fn read_words(files: &BTreeMap<String, File>, language: &str, findings: &mut Vec<Finding>) -> Words {
    let mut words = Words::default();
    let both = [words_of(files, FIRST), words_of(files, language).filter(|_| language != FIRST)];
    for (n, file) in both.into_iter().enumerate() {
        for source in file.map_or(Vec::new(), File::layers).into_iter().filter_map(File::source) {
            let mut found = Vec::new();
            words.lay(&source, n == 0, &mut found);
            findings.extend(found.into_iter().map(|finding| finding.locate(&source)));
        }
    }
    words
}

fn not_text(file: &File) -> Finding {
    Finding::of_file(Level::Error, Code::NotText, &file.shown, "the file is not UTF-8 text")
        .write("save the file as UTF-8")
}

fn new_tera(words: &Arc<Words>) -> Tera {
    let mut tera = Tera::new();
    // Everything is HTML, whatever a file is called: nothing goes out unescaped by its name.
    tera.autoescape_on(vec![""]);
    // Functions, since a part of a template does not see what is told to all of them.
    let known = Arc::clone(words);
    tera.register_function("word", move |with: Kwargs, _: &State| -> TeraResult<String> {
        let name: &str = with.must_get("key")?;
        let holes =
            with.iter().filter_map(|(hole, value)| Some((hole.as_str()?, value.as_str()?.to_string())));
        let missing = || tera::Error::message(format!("no words of the theme are called `{name}`"));
        known.filled(name, holes).ok_or_else(missing)
    });
    let known = Arc::clone(words);
    tera.register_function("term", move |with: Kwargs, _: &State| -> TeraResult<String> {
        Ok(known.term(with.must_get("text")?).to_string())
    });
    tera
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
        Theme::new(
            "stillroom",
            files.iter().map(|(path, text)| (path.to_string(), text.as_bytes().to_vec())).collect(),
            FIRST,
        )
    }

    fn places(findings: &[Finding]) -> Vec<(&str, usize, usize)> {
        let place = |finding: &'_ Finding| finding.place.clone().expect("located");
        let path = |finding: &Finding| match place(finding).path.as_str() {
            "themes/stillroom/templates/zz-a.html" => "a",
            "themes/stillroom/templates/zz-b.html" => "b",
            "themes/stillroom/style/zz-a.css" => "css",
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
            ("script/yy/2.js", "let c;"),
            ("script/yy/1.js", "let b;"),
            ("picture/zz.svg", "<svg/>"),
            ("words/de.yaml", "terms: {Part used: Verwendeter Teil}"),
        ])
        .expect("sound");
        let assets = theme.assets();
        let of = |name: &str| {
            let (_, bytes) = assets.iter().find(|(known, _)| known == name).expect("there");
            String::from_utf8(bytes.clone()).expect("text")
        };
        assert!(of("style.css").ends_with("a{c:d}\nb{c:d}\n"), "{}", of("style.css"));
        assert_eq!(of("zz.js"), "let a;\n");
        assert_eq!(of("yy.js"), "let b;\nlet c;\n", "the files of a folder are one script");
        assert_eq!(of("picture/zz.svg"), "<svg/>");
        assert!(assets.iter().all(|(name, _)| !name.starts_with("words/")));
    }
}
