//! Which links are taken, and what is said about the others.

use super::LinkFound;
use crate::diagnostic::{Code, Finding};

/// What may stand before a colon: the five kinds of reference, and three that browsers know.
const TAKEN: &[&str] = &["plant", "pantry", "lesson", "term", "number", "https", "http", "mailto"];

/// The word before the colon, as a browser would read it: it skips blanks, line ends and tabs.
fn scheme(href: &str) -> Option<String> {
    let clean: String = href.chars().filter(|c| !c.is_control() && !c.is_whitespace()).collect();
    let (word, _) = clean.split_once(':')?;
    let mut letters = word.chars();
    let named = letters.next().is_some_and(|c| c.is_ascii_alphabetic())
        && letters.all(|c| c.is_ascii_alphanumeric() || matches!(c, '+' | '-' | '.'));
    named.then(|| word.to_ascii_lowercase())
}

/// Whether a reader's browser would have to ask another host.
fn elsewhere(href: &str) -> bool {
    let clean: String = href.chars().filter(|c| !c.is_control() && !c.is_whitespace()).collect();
    clean.starts_with("//")
        || clean.starts_with("\\\\")
        || clean.starts_with("/\\")
        || clean.starts_with("\\/")
}

/// Looks at one link or picture. `Err` means it is left out and only its words are shown; a
/// finding beside `Ok` is worth telling all the same.
pub(super) fn check(link: &LinkFound) -> Result<Option<Finding>, Finding> {
    let bad = |message: String| Finding::error(Code::BadLink, link.span, message);
    let scheme = scheme(&link.href);
    if link.picture {
        if scheme.is_some() || elsewhere(&link.href) {
            return Err(bad(format!("a picture from elsewhere: {}", link.href))
                .why("a page that fetches from another host tells that host who reads it, and breaks when the host does"));
        }
        if link.text.trim().is_empty() {
            let words = "a picture without words for those who cannot see it";
            let file = link.href.as_str();
            return Err(bad(words.to_string())
                .why("a reader who cannot see it, or has no connection, has only those words")
                .write(format!("![what it shows]({file})")));
        }
        return Ok(None);
    }
    if let Some(scheme) = scheme
        && !TAKEN.contains(&scheme.as_str())
    {
        return Err(bad(format!("a link may not begin with {scheme}:"))
            .why("it could run a program in the reader's browser, or leads nowhere")
            .write(
                "plant:NAME, pantry:NAME, lesson:NAME, term:NAME, number:NAME, #heading, or a whole address with https: or mailto:",
            ));
    }
    if link.href.trim().is_empty() {
        return Err(bad("a link without a target".to_string())
            .why("what stands between the round brackets says where it leads")
            .write(format!("[{}](plant:NAME)", link.text)));
    }
    Ok(None)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn link(href: &str, picture: bool) -> LinkFound {
        let (href, text, title) = (href.to_string(), "x".to_string(), String::new());
        LinkFound { href, text, title, picture, span: Default::default() }
    }

    #[test]
    fn only_known_kinds_of_target_are_taken() {
        for href in [
            "plant:rosehip",
            "number:strained",
            "notes/a.md",
            "#top",
            "../a:b/c",
            "https://a.org",
            "HTTP://a",
        ] {
            assert_eq!(check(&link(href, false)), Ok(None), "{href}");
        }
        for href in [
            "javascript:alert(1)",
            "JaVa\tScRiPt:x",
            " data:text/html,x",
            "vbscript:x",
            "file:///x",
            "",
            "foo:x",
        ] {
            assert!(check(&link(href, false)).is_err(), "{href}");
        }
        for href in ["https://a.org/p.png", "//a.org/p.png", "data:image/png;base64,x"] {
            assert!(check(&link(href, true)).is_err(), "{href}");
        }
    }
}
