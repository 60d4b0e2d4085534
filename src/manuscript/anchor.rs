//! Headings' ids: short words of plain letters, each once on a page.

use std::collections::BTreeMap;

/// The anchor of a lesson's `n`-th recipe (from 0) of so many: "the--recipe", or "recipe--2".
pub fn recipe_anchor(n: usize, of: usize) -> String {
    // Two hyphens, which no heading's anchor has, so that `## Recipe` cannot clash.
    if of == 1 { "the--recipe".to_string() } else { format!("recipe--{}", n + 1) }
}

/// Letters that have a plain spelling, each row `letters` to `plain`.
pub const PLAIN: &[(&str, &str)] = &[
    ("àáâãäåāăąǎ", "a"),
    ("æ", "ae"),
    ("çćĉċč", "c"),
    ("ďđð", "d"),
    ("èéêëēĕėęěẽ", "e"),
    ("ĝğġģ", "g"),
    ("ĥħ", "h"),
    ("ìíîïĩīĭįı", "i"),
    ("ĵ", "j"),
    ("ķ", "k"),
    ("ĺļľŀł", "l"),
    ("ñńņňŋ", "n"),
    ("òóôõöøōŏőǒ", "o"),
    ("œ", "oe"),
    ("ŕŗř", "r"),
    ("śŝşšș", "s"),
    ("ß", "ss"),
    ("ţťŧț", "t"),
    ("þ", "th"),
    ("ùúûüũūŭůűųǔ", "u"),
    ("ŵ", "w"),
    ("ýÿŷ", "y"),
    ("źżž", "z"),
];

/// Gives out ids, never the same one twice.
#[derive(Default)]
pub(super) struct Anchors {
    given: BTreeMap<String, usize>,
}

impl Anchors {
    /// The id for a heading of these words.
    pub(super) fn take(&mut self, words: &str) -> String {
        let plain = plain(words);
        let mut count = self.given.get(&plain).copied().unwrap_or(0) + 1;
        let mut id = if count == 1 { plain.clone() } else { format!("{plain}-{count}") };
        while count > 1 && self.given.contains_key(&id) {
            count += 1;
            id = format!("{plain}-{count}");
        }
        self.given.insert(plain, count);
        // The numbered id is taken too: a later heading may be spelled just like it.
        self.given.entry(id.clone()).or_insert(1);
        id
    }
}

/// Lower-case ASCII letters and digits in words joined by single hyphens; never empty. Two hyphens in
/// a row never appear, so ids that have them (footnotes) cannot clash with a heading's.
pub fn plain(words: &str) -> String {
    let mut id = String::new();
    let mut gap = false;
    for c in words.chars().flat_map(char::to_lowercase) {
        let mut one = [0; 4];
        let letters = if c.is_ascii_alphanumeric() {
            &*c.encode_utf8(&mut one)
        } else if let Some((_, to)) = PLAIN.iter().find(|(from, _)| from.contains(c)) {
            to
        } else {
            // An apostrophe or a mark set over a letter does not end a word.
            gap |= !matches!(c, '\'' | '’' | '\u{300}'..='\u{36f}');
            continue;
        };
        if gap && !id.is_empty() {
            id.push('-');
        }
        gap = false;
        id.push_str(letters);
    }
    if id.is_empty() { "part".to_string() } else { id }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_are_plain_and_given_once() {
        let mut anchors = Anchors::default();
        assert_eq!(anchors.take("Crème of Élder — it’s ½ done!"), "creme-of-elder-its-done");
        assert_eq!(anchors.take("Straining"), "straining");
        assert_eq!(anchors.take("Straining 2"), "straining-2");
        assert_eq!(anchors.take("Straining"), "straining-3");
        assert_eq!(anchors.take("straining"), "straining-4");
        assert_eq!(anchors.take("丸"), "part");
        assert_eq!(anchors.take("Cafe\u{301}"), "cafe");
    }
}
