//! Words of the glossary found in running text.

/// The forms of every word, each with the word's name in addresses.
#[derive(Clone, Debug, Default)]
pub struct Terms {
    /// Small letters, longest first, so that `water activity` comes before `water`.
    forms: Vec<(Vec<char>, String)>,
}

/// A word found.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(super) struct Found<'t> {
    /// Bytes of the text.
    pub(super) start: usize,
    pub(super) end: usize,
    /// Its name in addresses.
    pub(super) id: &'t str,
}

impl Terms {
    /// Of `(form, name in addresses)`.
    pub fn new<'a>(forms: impl Iterator<Item = (&'a str, &'a str)>) -> Terms {
        let mut forms: Vec<(Vec<char>, String)> = forms
            .map(|(form, id)| (form.chars().flat_map(char::to_lowercase).collect(), id.to_string()))
            .collect();
        forms.sort_by(|a, b| b.0.len().cmp(&a.0.len()).then_with(|| a.cmp(b)));
        Terms { forms }
    }

    /// Whether there are none.
    pub(super) fn is_empty(&self) -> bool {
        self.forms.is_empty()
    }

    /// Every word in a text that `seen` does not hold yet, in order; each once, and noted there.
    pub(super) fn first_uses<'t>(&'t self, text: &str, seen: &mut Vec<String>) -> Vec<Found<'t>> {
        let mut found = Vec::new();
        let (mut at, mut before) = (0, None);
        while let Some(letter) = text[at..].chars().next() {
            if starts_word(before, letter)
                && let Some((len, id)) = self.at(&text[at..])
            {
                if !seen.iter().any(|known| known == id) {
                    seen.push(id.to_string());
                    found.push(Found { start: at, end: at + len, id });
                }
                before = text[at..at + len].chars().next_back();
                at += len;
                continue;
            }
            before = Some(letter);
            at += letter.len_utf8();
        }
        found
    }

    /// The longest form that a text opens with, as a whole word: its length in bytes, and the word's name.
    fn at(&self, text: &str) -> Option<(usize, &str)> {
        self.forms.iter().find_map(|(form, id)| Some((opens(text, form)?, id.as_str())))
    }
}

fn starts_word(before: Option<char>, letter: char) -> bool {
    letter.is_alphanumeric()
        && before.is_none_or(|c| !(c.is_alphanumeric() || matches!(c, '-' | '/' | '\u{2019}')))
}

/// Whether a letter of a text is that of a form; an apostrophe is one however it is drawn.
fn alike(letter: char, want: char) -> bool {
    let curled = |c: char| if c == '\'' { '\u{2019}' } else { c };
    letter.to_lowercase().map(curled).eq(std::iter::once(curled(want)))
}

/// How many bytes of `text` a form takes: letters of any size, and any run of blanks for a blank.
fn opens(text: &str, form: &[char]) -> Option<usize> {
    let mut rest = text.char_indices().peekable();
    for want in form {
        let (_, letter) = rest.next()?;
        if want.is_whitespace() {
            if !letter.is_whitespace() {
                return None;
            }
            while rest.peek().is_some_and(|(_, c)| c.is_whitespace()) {
                rest.next();
            }
        } else if !alike(letter, *want) {
            return None;
        }
    }
    match rest.peek() {
        Some((_, c)) if c.is_alphanumeric() || matches!(c, '-' | '/') => None,
        Some((at, _)) => Some(*at),
        None => Some(text.len()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whole_words_once_and_the_longest() {
        let terms = Terms::new([("activity", "a"), ("water activity", "w"), ("marc", "m")].into_iter());
        let mut seen = Vec::new();
        let text = "Water\n activity, marcs, marc-like, the Marc and the marc; activity.";
        let found: Vec<_> = terms
            .first_uses(text, &mut seen)
            .iter()
            .map(|found| (&text[found.start..found.end], found.id))
            .collect();
        assert_eq!(found, [("Water\n activity", "w"), ("Marc", "m"), ("activity", "a")]);
        assert!(terms.first_uses("marc", &mut seen).is_empty(), "noted before");
        let straight = Terms::new([("baker's honey", "b")].into_iter());
        assert_eq!(
            straight.first_uses("A baker\u{2019}s honey", &mut Vec::new()).len(),
            1,
            "however it is drawn"
        );
    }
}
