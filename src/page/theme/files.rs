//! The files of a theme: those in the binary, and an author's own laid over them one by one.

use std::collections::BTreeMap;

use crate::span::Source;

/// A file of a theme.
#[derive(Clone, Debug)]
pub(super) struct File {
    /// Where its author finds it: `themes/stillroom/templates/page.html`.
    pub(super) shown: String,
    pub(super) bytes: Vec<u8>,
    /// The file it stands in for.
    pub(super) over: Option<Box<File>>,
}

impl File {
    /// It and those it stands in for, the lowest first.
    pub(super) fn layers(&self) -> Vec<&File> {
        let mut layers = self.over.as_ref().map_or(Vec::new(), |under| under.layers());
        layers.push(self);
        layers
    }

    /// The file as text; none where it is not UTF-8.
    pub(super) fn source(&self) -> Option<Source> {
        let text = std::str::from_utf8(&self.bytes).ok()?;
        // Some editors put a mark in front that is no part of the text.
        Some(Source::new(self.shown.as_str(), text.strip_prefix('\u{feff}').unwrap_or(text)))
    }
}

/// A theme's files at the moment of building, each with its path below `themes/NAME`.
macro_rules! files {
    ($name:literal: $($path:literal),* $(,)?) => {
        ($name, &[$(($path, include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/themes/", $name, "/", $path)))),*])
    };
}

/// The themes in the binary. A file that is not listed here is not in it. The first is complete; of the others
/// each file stands in for one of the first, or beside it.
#[rustfmt::skip]
const BUILT_IN: &[(&str, &[(&str, &[u8])])] = &[
    files![
        "stillroom":
        "icon.png",
        "icon.svg",
        "script/copybook.js",
        "script/look-up.js",
        "script/page/10-kept.js",
        "script/page/14-screen.js",
        "script/page/20-measures.js",
        "script/page/30-tables.js",
        "script/page/40-steps.js",
        "script/page/50-asked.js",
        "script/said.js",
        "script/slate.js",
        "script/sw.js",
        "style/10-tokens.css",
        "style/20-elements.css",
        "style/30-frame.css",
        "style/35-prose.css",
        "style/40-parts.css",
        "style/50-ledger.css",
        "style/52-every.css",
        "style/55-checks.css",
        "style/56-facts.css",
        "style/57-lists.css",
        "style/58-steps.css",
        "style/60-levels.css",
        "style/65-keeping.css",
        "style/68-slate.css",
        "style/69-copybook.css",
        "style/70-choice.css",
        "style/90-print.css",
        "style/paper/80-paper.css",
        "style/paper/85-exercises.css",
        "style/slate/68-slate.css",
        "style/slate/69-copybook.css",
        "templates/booklet.html",
        "templates/cards.html",
        "templates/cautions.html",
        "templates/checks.html",
        "templates/children.html",
        "templates/corrections.html",
        "templates/exercises.html",
        "templates/figures.html",
        "templates/glossary.html",
        "templates/handouts.html",
        "templates/home.html",
        "templates/key.html",
        "templates/labels.html",
        "templates/ledger.html",
        "templates/lesson-end.html",
        "templates/lesson.html",
        "templates/list.html",
        "templates/look-up.html",
        "templates/method.html",
        "templates/monograph.html",
        "templates/moved.html",
        "templates/not-found.html",
        "templates/one-day.html",
        "templates/page.html",
        "templates/parts.html",
        "templates/people.html",
        "templates/recipe-parts.html",
        "templates/recipe.html",
        "templates/recipes.html",
        "templates/side-by-side.html",
        "templates/spirits.html",
        "templates/table.html",
        "templates/tables.html",
        "templates/workings.html",
        "words/en.yaml",
        "words/es.yaml",
    ],
    files![
        "kitchen-wall":
        "script/page/12-folds.js",
        "script/page/16-steps.js",
        "style/10-tokens.css",
        "style/20-elements.css",
        "style/30-frame.css",
        "style/35-prose.css",
        "style/40-parts.css",
        "style/50-ledger.css",
        "style/55-checks.css",
        "style/56-facts.css",
        "style/57-lists.css",
        "style/58-steps.css",
        "style/60-levels.css",
        "style/65-keeping.css",
        "style/69-copybook.css",
        "style/69-slate.css",
        "style/70-choice.css",
        "style/90-print.css",
        "style/paper/80-paper.css",
        "style/paper/85-exercises.css",
        "style/slate/69-copybook.css",
        "templates/lesson.html",
        "templates/recipe.html",
        "templates/wall.html",
        "words/en.yaml",
    ],
];

/// The names of the themes in the binary, the complete one first.
pub fn names() -> impl Iterator<Item = &'static str> {
    BUILT_IN.iter().map(|(name, _)| *name)
}

/// The theme that is complete.
pub fn complete() -> &'static str {
    names().next().unwrap_or_default()
}

/// Every file by its path: the first built-in theme's, over it those of the built-in theme `name`, over them an
/// author's own, each `(path below themes/NAME, bytes)`.
pub(super) fn layered(name: &str, own: Vec<(String, Vec<u8>)>) -> BTreeMap<String, File> {
    let mut all = BTreeMap::new();
    let layers = BUILT_IN.iter().enumerate().filter(|(n, (known, _))| *n == 0 || *known == name);
    for (_, (theme, files)) in layers {
        for (path, bytes) in *files {
            lay(&mut all, theme, path, bytes.to_vec());
        }
    }
    for (path, bytes) in own {
        lay(&mut all, name, &path, bytes);
    }
    all
}

fn lay(all: &mut BTreeMap<String, File>, theme: &str, path: &str, bytes: Vec<u8>) {
    let over = all.remove(path).map(Box::new);
    all.insert(path.to_string(), File { shown: format!("themes/{theme}/{path}"), bytes, over });
}
