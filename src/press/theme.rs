//! The theme of a formulary: which one its course names, and the author's own files for it.

use std::sync::Arc;

use crate::diagnostic::{Code, Finding, Level, nearest};
use crate::formulary::Formulary;
use crate::page::theme::{FIRST, Theme, complete, names};
use crate::site::{Gathered, Trouble, read_bytes};

/// The name of the course's theme; the complete one where it names none.
pub(super) fn name(book: &Formulary) -> &str {
    book.course.theme.as_ref().map_or(complete(), |theme| theme.value.as_str())
}

/// Opens it; none where its files have faults.
///
/// # Errors
/// The disk refuses.
pub(super) fn open(
    gathered: &Gathered,
    book: &Formulary,
    findings: &mut Vec<Finding>,
) -> Result<Option<Arc<Theme>>, Trouble> {
    let name = name(book);
    let folder = format!("themes/{name}/");
    let mut own = Vec::new();
    for path in &gathered.themes {
        if let Some(below) = path.strip_prefix(&folder) {
            own.push((below.to_string(), read_bytes(&gathered.dir, path)?));
        }
    }
    // Where formulary.yaml is missing, its own finding says so.
    let language = Some(book.course.language.as_str()).filter(|said| !said.is_empty()).unwrap_or(FIRST);
    let theme = match own.is_empty() && name == complete() && language == FIRST {
        true => Theme::built_in(),
        false => Theme::new(name, own, language).map(Arc::new),
    };
    match theme {
        Ok(theme) => {
            if !theme.speaks(language) {
                let message =
                    format!("the theme has no words in `{language}`, so the pages' fixed words are English");
                findings.push(
                    Finding::of_file(Level::Warning, Code::UnknownName, "formulary.yaml", message)
                        .why("its own words are a file for each language, of `name: words` lines")
                        .write(format!("themes/{name}/words/{language}.yaml")),
                );
            }
            Ok(Some(theme))
        }
        Err(found) => {
            findings.extend(found);
            Ok(None)
        }
    }
}

/// Told where a course names a theme that is neither in the program nor among the formulary's own.
pub(super) fn unknown(gathered: &Gathered, book: &Formulary) -> Option<Finding> {
    let wanted = book.course.theme.as_ref()?;
    let mut known: Vec<&str> = names().collect();
    known.extend(gathered.themes.iter().filter_map(|path| path.split('/').nth(1)));
    if known.contains(&wanted.value.as_str()) {
        return None;
    }
    let message = format!("there is no theme `{}`", wanted.value);
    let finding = Finding::error(Code::UnknownName, wanted.span, message)
        .why("a theme is one of the program's own, or a folder in themes/ with the files that differ");
    Some(finding.write(nearest(&wanted.value, known.iter().copied()).unwrap_or(complete())))
}
