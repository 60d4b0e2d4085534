//! Themes: what they say, in which languages, and what a formulary lays over them.

use super::rules::{all, faults};
use super::{none, pages};
use crate::kit;
use scraper::Html;
use std::collections::{BTreeMap, BTreeSet};
use stillroom::page::theme::{Theme, names};
use stillroom::press;

/// The demo with some files of its own laid over it, pressed; each page by its path.
fn pressed_with(files: &[(&str, String)]) -> BTreeMap<String, String> {
    let folder = kit::fresh_folder();
    let (dir, site) = (folder.path().join("content"), folder.path().join("site"));
    let content = kit::root().join("content");
    let put = |path: &str, bytes: &[u8]| {
        let to = dir.join(path);
        std::fs::create_dir_all(to.parent().expect("a folder")).expect("a folder can be made");
        std::fs::write(to, bytes).expect("a file can be written");
    };
    for path in kit::files(&content, "", "") {
        put(&path, &std::fs::read(content.join(&path)).expect("the demo can be read"));
    }
    files.iter().for_each(|(path, text)| put(path, text.as_bytes()));
    let outcome = press::press(&dir, &site, None, &|| {}).expect("the folders can be used");
    assert!(outcome.written, "{:?}", outcome.findings);
    let read = |path: String| (path.clone(), std::fs::read(site.join(&path)).expect("a file can be read"));
    pages(&kit::files(&site, "", "").into_iter().map(read).collect())
}

/// The demo's formulary with one line changed.
fn formulary(from: &str, to: &str) -> (&'static str, String) {
    let text = kit::read(&kit::root().join("content/formulary.yaml"));
    assert!(text.contains(from), "{from}");
    ("formulary.yaml", text.replacen(from, to, 1))
}

/// The texts of a theme's words by their names, as they stand in its file.
fn words(path: &str) -> BTreeMap<String, String> {
    let text = kit::read(&kit::root().join(path));
    let lines =
        text.lines().take_while(|line| *line != "terms:").filter(|line| !line.starts_with(['#', ' ']));
    lines
        .filter_map(|line| line.split_once(": "))
        .map(|(name, words)| (name.to_string(), words.to_string()))
        .collect()
}

/// Every word a template asks for is there, and every word that is there is asked for.
#[test]
fn words_and_templates_agree() {
    let mut known = words("themes/stillroom/words/en.yaml");
    // A theme may have words of its own beside those.
    names().skip(1).for_each(|name| known.extend(words(&format!("themes/{name}/words/en.yaml"))));
    assert!(known.len() > 150, "{}", known.len());
    let mut asked: BTreeSet<String> = BTreeSet::new();
    let mut begun: BTreeSet<String> = BTreeSet::new();
    let mut texts: Vec<String> = Vec::new();
    for path in kit::files(kit::root(), "themes", ".html").into_iter().chain(kit::files(
        kit::root(),
        "src/press",
        ".rs",
    )) {
        texts.push(kit::read(&kit::root().join(path)));
    }
    for text in &texts {
        for rest in text.split("word(key=\"").skip(1).chain(text.split("word(\"").skip(1)) {
            let (name, after) = rest.split_once('"').expect("a name is closed");
            if after.trim_start().starts_with('~') {
                begun.insert(name.into())
            } else {
                asked.insert(name.into())
            };
        }
        for rest in text.split("word(&format!(\"").skip(1) {
            begun.insert(rest.split('{').next().unwrap_or_default().to_string());
        }
    }
    // What scripts say.
    for path in kit::files(kit::root(), "themes", ".js") {
        for rest in kit::read(&kit::root().join(path)).split("say(\"").skip(1) {
            asked.insert(format!("say-{}", rest.split('"').next().unwrap_or_default()));
        }
    }
    // Columns that a recipe's template names to a part.
    begun.insert("about-".into());
    let missing: Vec<_> = asked.iter().filter(|name| !known.contains_key(*name)).collect();
    assert!(missing.is_empty(), "asked for and not there: {missing:?}");
    let spare = known
        .keys()
        .filter(|name| !asked.contains(*name) && !begun.iter().any(|begin| name.starts_with(begin)));
    assert_eq!(spare.collect::<Vec<_>>(), Vec::<&String>::new(), "there and not asked for");
}

/// Spanish has every word that English has; a theme in it says so on its pages.
#[test]
fn another_language_is_whole() {
    let (english, spanish) =
        (words("themes/stillroom/words/en.yaml"), words("themes/stillroom/words/es.yaml"));
    assert_eq!(english.keys().collect::<Vec<_>>(), spanish.keys().collect::<Vec<_>>());
    assert!(Theme::new("stillroom", Vec::new(), "es").is_ok());
    assert!(Theme::built_in().is_ok_and(|theme| theme.speaks("es-MX") && !theme.speaks("de")));
    let pages = pressed_with(&[formulary("language: en", "language: es")]);
    let html = Html::parse_document(&pages["lessons/thyme-syrup.html"]);
    assert_eq!(all(&html, "html")[0].attr("lang"), Some("es"));
    let text = html.root_element().text().collect::<String>();
    for word in ["page-recipes", "part-gather", "part-keeping", "at-a-glance"] {
        assert!(text.contains(&spanish[word]) && spanish[word] != english[word], "{word}");
        assert!(!text.contains(&english[word]), "{word} is English still");
    }
    none("lessons/thyme-syrup.html", faults(&pages["lessons/thyme-syrup.html"]));
}

/// One file of a formulary's own takes the place of one of the theme's, and every other stays.
#[test]
fn a_formulary_changes_one_file() {
    let own = "{% extends \"page.html\" %}\n{% block text %}\n<h1>{{ frame.title }}</h1>\n<p>Our own list of {{ groups | length }}.</p>\n{% endblock text %}\n";
    let icon = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 1 1\"><path d=\"M0 0h1\"/></svg>";
    let pages = pressed_with(&[
        ("themes/stillroom/templates/list.html", own.to_string()),
        ("themes/stillroom/icon.svg", icon.to_string()),
        ("themes/stillroom/words/en.yaml", "the-evenings: Our Tuesdays\n".to_string()),
    ]);
    assert!(pages["plants.html"].contains("Our own list of 1."), "{}", pages["plants.html"]);
    assert!(pages["index.html"].contains("Our Tuesdays") && !pages["index.html"].contains("The evenings"));
    assert!(pages["index.html"].contains("At the back"), "words that are not given stay");
}

/// An author's headings may be called as the book's own parts are: no anchor stands twice on a page.
#[test]
fn headings_do_not_clash_with_the_books_own_parts() {
    let names = [
        "Words",
        "Corrections",
        "On paper",
        "One day",
        "Text",
        "Swelled",
        "Fill liquid",
        "Start",
        "Bill",
        "Back",
        "Changed",
    ];
    let headings: String =
        names.iter().map(|name| format!("\n## {name}\n\nWords on a marc & a “strain”.\n")).collect();
    let lesson = kit::read(&kit::root().join("content/lessons/03-hawthorn-berry-decoction.md")) + &headings;
    let home = format!("Begin.\n{headings}");
    let plant = kit::read(&kit::root().join("content/plants/thyme.md"))
        + "\n## Facts\n\nA.\n\n## Used\n\nB.\n\n## Cautions\n\nC.\n";
    let pages = pressed_with(&[
        ("lessons/03-hawthorn-berry-decoction.md", lesson.replacen("title: ", "title: Haws & ", 1)),
        ("home.md", home),
        ("plants/thyme.md", plant),
    ]);
    for path in [
        "lessons/hawthorn-berry-decoction.html",
        "index.html",
        "plants/thyme.html",
        "booklet.html",
        "look-up.html",
    ] {
        none(path, faults(&pages[path]));
        assert!(!pages[path].contains("&amp;amp;"), "{path}: a sign is escaped twice");
    }
    assert!(pages["look-up.html"].contains("Haws &amp; "), "the title as it is");
}

/// Every theme in the program presses the whole demo into sound pages.
#[test]
fn every_theme_is_sound() {
    let mut looks = BTreeSet::new();
    for name in names() {
        let pages = pressed_with(&[formulary("language: en", &format!("language: en\ntheme: {name}"))]);
        for (path, html) in &pages {
            none(&format!("{name}: {path}"), faults(html));
        }
        assert!(looks.insert(pages["lessons/thyme-syrup.html"].clone()), "{name} looks like another");
    }
}
