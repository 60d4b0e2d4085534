//! Words that promise what only a medicine may be said to do. They are told to the author with a gentler wording;
//! what is said of a plant in a book decides in many places whether the law takes it for a drug.

use crate::diagnostic::{Code, Finding};
use crate::span::{Source, Span};

const TRADITION: &str = "traditionally taken as a soothing tea";
const CUSTOM: &str = "people have long made it when they feel unwell";
const PART: &str = "part of a household's custom in winter";

/// Rows of words in a row, whether they are a claim `always` or in a sentence that names an `illness`, and what to
/// write instead.
macro_rules! claims {
    ($($words:literal $of:ident $gentler:ident;)*) => {
        const CLAIMS: &[(&str, bool, &str)] = &[$(($words, claims!(@$of), $gentler),)*];
    };
    (@always) => { false };
    (@illness) => { true };
}

claims! {
    "cure" always TRADITION; "cures" always TRADITION; "cured" always TRADITION; "cure-all" always TRADITION;
    "treats" always TRADITION; "to treat" always TRADITION; "treating" always TRADITION;
    "treatment for" always TRADITION; "treatment of" always TRADITION;
    "heals" always CUSTOM; "heal" always CUSTOM; "healing" always CUSTOM;
    "remedy for" always CUSTOM; "remedies for" always CUSTOM; "remedy against" always CUSTOM;
    "medicine for" always CUSTOM; "antibiotic" always CUSTOM; "antiviral" always CUSTOM;
    "instead of medicine" always PART; "instead of medicines" always PART; "instead of a doctor" always PART;
    "detox" always TRADITION; "detoxes" always TRADITION; "detoxifies" always TRADITION;
    "cleanses the liver" always TRADITION; "cleanses the blood" always TRADITION;
    "safe for everyone" always PART; "no side effects" always PART; "without side effects" always PART;
    "clinically proven" always CUSTOM; "proven to" always CUSTOM; "miracle" always CUSTOM;
    "boosts the immune system" always PART; "boosts immunity" always PART; "immune booster" always PART;
    "prevents" illness PART; "prevent" illness PART; "protects against" illness PART;
    "fights" illness CUSTOM; "fight" illness CUSTOM; "relieves" illness TRADITION; "eases" illness TRADITION;
    "helps with" illness TRADITION; "helps against" illness TRADITION; "good for" illness TRADITION;
    "works for" illness TRADITION; "works against" illness TRADITION; "dissolves" illness CUSTOM;
    "shrinks" illness CUSTOM; "kills" illness CUSTOM; "lowers" illness CUSTOM; "stops" illness CUSTOM;
}

/// Illnesses, as a text names them.
const ILLNESSES: &[&str] = &[
    "cancer",
    "diabetes",
    "arthritis",
    "rheumatism",
    "flu",
    "influenza",
    "covid",
    "depression",
    "asthma",
    "pneumonia",
    "bronchitis",
    "infection",
    "infections",
    "tumour",
    "tumours",
    "hypertension",
    "blood pressure",
    "eczema",
    "psoriasis",
    "malaria",
    "tuberculosis",
    "ulcer",
    "ulcers",
    "gout",
    "kidney stones",
    "gallstones",
    "insomnia",
    "migraine",
    "migraines",
    "cystitis",
    "colds",
    "sinusitis",
    "tonsillitis",
    "disease",
    "diseases",
    "illness",
    "illnesses",
];

/// What turns a claim into its denial when it stands before it in the sentence.
const DENIALS: &[&str] = &[
    "no", "not", "never", "nobody", "none", "nor", "neither", "cannot", "without", "nothing", "don't",
    "doesn't", "isn't", "won't", "can't", "hardly",
];

/// The claims in the text at `within`; fenced blocks are left out but for the names of recipes in them.
pub fn findings(source: &Source, within: Span) -> Vec<Finding> {
    let mut found = Vec::new();
    for sentence in sentences(source, within) {
        found.extend(in_sentence(&source.text[sentence.start..sentence.end], sentence.start));
    }
    found
}

/// Sentences by their places: ended by a stop, an empty line, or a line that begins another entry.
fn sentences(source: &Source, within: Span) -> Vec<Span> {
    let text = &source.text[within.start..within.end];
    let (mut all, mut start, mut at, mut fenced) = (Vec::new(), within.start, within.start, false);
    let mut close = |start: &mut usize, end: usize| {
        if *start < end {
            all.push(Span::new(*start, end));
        }
        *start = end;
    };
    for line in text.split_inclusive('\n') {
        let end = at + line.len();
        let bare = line.trim_start();
        if bare.starts_with("```") || bare.starts_with("~~~") {
            close(&mut start, at);
            fenced = !fenced;
            start = end;
        } else if fenced {
            if let Some(name) = bare.strip_prefix("- ").unwrap_or(bare).strip_prefix("name:") {
                let mut begin = end - name.len();
                close(&mut begin, end);
            }
            start = end;
        } else if bare.trim().is_empty() || bare.starts_with(['-', '*', '#', '|', ':', '>']) {
            close(&mut start, at);
        }
        if !fenced && start < end {
            let mut from = start.max(at);
            while let Some(stop) = source.text[from..end].find(['.', '!', '?']) {
                from += stop + 1;
                let next = source.text[from..end].chars().next();
                if next.is_none_or(char::is_whitespace) {
                    close(&mut start, from);
                }
            }
        }
        at = end;
    }
    close(&mut start, at);
    all
}

/// A word and where it stands in its sentence.
struct Word {
    text: String,
    at: usize,
    end: usize,
}

fn words(sentence: &str) -> Vec<Word> {
    let letter = |c: char| c.is_alphanumeric() || matches!(c, '-' | '\'' | '’');
    let mut words: Vec<Word> = Vec::new();
    let mut start = None;
    for (at, c) in sentence.char_indices().chain([(sentence.len(), ' ')]) {
        match (letter(c), start) {
            (true, None) => start = Some(at),
            (false, Some(from)) => {
                let text = sentence[from..at].to_lowercase().replace('’', "'");
                words.push(Word { text, at: from, end: at });
                start = None;
            }
            _ => {}
        }
    }
    words
}

fn in_sentence(sentence: &str, offset: usize) -> Vec<Finding> {
    let words = words(sentence);
    let holds = |phrase: &str, at: usize| {
        let wanted: Vec<&str> = phrase.split(' ').collect();
        let here = words.get(at..at + wanted.len());
        here.is_some_and(|here| here.iter().zip(&wanted).all(|(word, wanted)| word.text == *wanted))
    };
    let ill = ILLNESSES.iter().any(|illness| (0..words.len()).any(|at| holds(illness, at)));
    // "Not only" denies nothing.
    let denies = |at: usize| DENIALS.contains(&words[at].text.as_str()) && !holds("not only", at);
    let mut found = Vec::new();
    for at in 0..words.len() {
        if (0..at).any(denies) {
            break;
        }
        let claim = CLAIMS.iter().find(|(phrase, of_illness, _)| (ill || !of_illness) && holds(phrase, at));
        let Some((phrase, _, gentler)) = claim else { continue };
        let last = at + phrase.split(' ').count() - 1;
        let place = Span::new(offset + words[at].at, offset + words[last].end);
        let message = format!("`{phrase}` promises what only a medicine may be said to do");
        found.push(
            Finding::warning(Code::ClaimWords, place, message)
                .why("a book that says so is read as selling a drug in many places; say what people make and do")
                .write(*gentler),
        );
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(text: &str) -> Vec<String> {
        let source = Source::new("lesson.md", text);
        let found = findings(&source, Span::new(0, source.text.len()));
        found
            .into_iter()
            .map(|finding| finding.span.map(|at| text[at.start..at.end].to_string()).unwrap())
            .collect()
    }

    // Words of the trade's list of what not to say (cures, treats, prevents, remedy for, detox the liver, safe for
    // everyone, no side effects): common practice, after farmers' and regulators' guides to claims.
    #[test]
    fn what_promises_is_found_where_it_stands() {
        assert_eq!(told("Thyme cures coughs. It treats them, too."), ["cures", "treats"]);
        assert_eq!(told("A remedy for gout, and safe for everyone."), ["remedy for", "safe for everyone"]);
        assert_eq!(told("It prevents the flu."), ["prevents"]);
        assert_eq!(told("Detox with nettle! There are no side effects."), ["Detox", "no side effects"]);
        assert_eq!(told("```recipe\nname: Cure-all syrup\nsteep: cures\n```\n"), ["Cure-all"]);
    }

    #[test]
    fn what_does_not_promise_is_let_be() {
        for text in [
            "It does not cure anything, nor treat a cold.",
            "A lid prevents the scent from leaving.",
            "Self-heal grows in the lawn.",
            "With diabetes, ask first.",
            "Sugar dissolves in warm water.",
            "The sugar in it is for a treat.",
            "Nobody takes it to treat an illness.",
            "```recipe\nsteep: cures\n```",
        ] {
            assert_eq!(told(text), Vec::<String>::new(), "{text}");
        }
        assert_eq!(told("It is not only mild but cures gout."), ["cures"]);
    }
}
