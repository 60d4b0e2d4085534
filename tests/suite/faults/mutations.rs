//! Slips of the hand, by chance: the demo's lessons with bytes, words and lines taken out, put in and
//! swapped. Whatever stands there is read without a panic; what is found lies in the file; and either
//! something found stops the press, or the page is made.

use proptest::prelude::*;
use stillroom::diagnostic::{Finding, Look, print, stops};
use stillroom::press;

use super::book::{Book, FORMULARY};
use crate::kit;

const LESSONS: [&str; 3] =
    ["01-rose-hip-and-hibiscus-syrup.md", "02-thyme-syrup.md", "03-hawthorn-berry-decoction.md"];

/// What a hand may put in by mistake.
const PUT_IN: &[&str] = &[
    ":",
    "-",
    "{",
    "}",
    "[",
    "]",
    "#",
    "\t",
    " ",
    "\n",
    "\"",
    "'",
    "&",
    "*",
    "!",
    "|",
    ">",
    "%",
    "@",
    "`",
    "```",
    "---",
    "\u{a0}",
    "½",
    "0",
    "-1",
    "1e30",
    "oz",
    ",",
    "\r",
    "\0",
    "\u{feff}",
    "ü",
    "丸",
    "<b>",
    "](",
    "name:",
    "- strain: squeezed",
    "variations:",
    "  ",
    "? ",
    "~",
    "of the water",
    "fresh",
    "equal to the finished by weight",
];

#[derive(Clone, Debug)]
enum Slip {
    Delete(usize, usize),
    Insert(usize, usize),
    SwapLetters(usize),
    DeleteLine(usize),
    DoubleLine(usize),
    SwapLines(usize, usize),
    Indent(usize, usize),
    Byte(usize, u8),
}

fn slip() -> impl Strategy<Value = Slip> {
    let at = any::<usize>();
    prop_oneof![
        (at, 1..12_usize).prop_map(|(at, length)| Slip::Delete(at, length)),
        (at, 0..PUT_IN.len()).prop_map(|(at, which)| Slip::Insert(at, which)),
        at.prop_map(Slip::SwapLetters),
        at.prop_map(Slip::DeleteLine),
        at.prop_map(Slip::DoubleLine),
        (at, at).prop_map(|(one, other)| Slip::SwapLines(one, other)),
        (at, 1..5_usize).prop_map(|(line, by)| Slip::Indent(line, by)),
        (at, any::<u8>()).prop_map(|(at, byte)| Slip::Byte(at, byte)),
    ]
}

/// Most slips happen where it matters: between the fences of the recipe.
fn place(text: &str, at: usize) -> usize {
    let recipe = text.find("```recipe").unwrap_or(0);
    let end = text[recipe..].find("\n## ").map_or(text.len(), |end| recipe + end);
    let at = if at.is_multiple_of(4) {
        at / 4 % text.len().max(1)
    } else {
        recipe + at / 4 % (end - recipe).max(1)
    };
    (0..=at.min(text.len())).rev().find(|&at| text.is_char_boundary(at)).unwrap_or(0)
}

fn next(text: &str, at: usize) -> usize {
    at + text[at..].chars().next().map_or(0, char::len_utf8)
}

/// The text with the slip made; bytes, since a slip may leave no text.
fn made(bytes: Vec<u8>, slip: &Slip) -> Vec<u8> {
    let text = match String::from_utf8(bytes) {
        Ok(text) => text,
        Err(no_text) => return no_text.into_bytes(),
    };
    let line_of = |at: usize| text[..place(&text, at)].matches('\n').count();
    let mut lines: Vec<&str> = text.split_inclusive('\n').collect();
    let within = |line: usize| line.min(lines.len().saturating_sub(1));
    if lines.is_empty() {
        return Vec::new();
    }
    match *slip {
        Slip::Delete(at, length) => {
            let start = place(&text, at);
            let end = (0..length).fold(start, |end, _| next(&text, end));
            [&text[..start], &text[end..]].concat().into_bytes()
        }
        Slip::Insert(at, which) => {
            let at = place(&text, at);
            [&text[..at], PUT_IN[which], &text[at..]].concat().into_bytes()
        }
        Slip::SwapLetters(at) => {
            let one = place(&text, at);
            let two = next(&text, one);
            let end = next(&text, two);
            [&text[..one], &text[two..end], &text[one..two], &text[end..]].concat().into_bytes()
        }
        Slip::DeleteLine(at) => {
            lines.remove(within(line_of(at)));
            lines.concat().into_bytes()
        }
        Slip::DoubleLine(at) => {
            let line = within(line_of(at));
            lines.insert(line, lines[line]);
            lines.concat().into_bytes()
        }
        Slip::SwapLines(one, other) => {
            let (one, other) = (within(line_of(one)), within(line_of(other)));
            lines.swap(one, other);
            lines.concat().into_bytes()
        }
        Slip::Indent(at, by) => {
            let (line, blanks) = (within(line_of(at)), " ".repeat(by));
            lines.insert(line, &blanks);
            lines.concat().into_bytes()
        }
        Slip::Byte(at, byte) => {
            let at = place(&text, at);
            let mut bytes = text.into_bytes();
            if let Some(here) = bytes.get_mut(at) {
                *here = byte;
            }
            bytes
        }
    }
}

/// The finding's place lies in the file it names, and its mark on the line it shows.
fn lies_inside(finding: &Finding, path: &str, bytes: &[u8]) -> Result<(), TestCaseError> {
    let place =
        finding.place.as_ref().ok_or_else(|| TestCaseError::fail(format!("no place: {finding:?}")))?;
    prop_assert_eq!(&place.path, path, "{:?}", finding);
    if place.line == 0 {
        return Ok(());
    }
    let text = String::from_utf8_lossy(bytes);
    let text = text.strip_prefix('\u{feff}').unwrap_or(&text);
    let lines: Vec<&str> = text.split('\n').collect();
    prop_assert!(place.line <= lines.len(), "line {} of {}: {:?}", place.line, lines.len(), finding);
    let line = lines[place.line - 1].trim_end_matches('\r');
    prop_assert_eq!(&place.text, line, "{:?}", finding);
    // One behind the last letter is where something is missing; a line's end may be a `\r` more.
    let letters = lines[place.line - 1].chars().count();
    prop_assert!(
        (1..=letters + 1).contains(&place.column),
        "column {} of {letters}: {:?}",
        place.column,
        finding
    );
    prop_assert!(place.mark.start <= place.mark.end && place.mark.end <= line.len(), "{:?}", finding);
    prop_assert!(line.is_char_boundary(place.mark.start) && line.is_char_boundary(place.mark.end));
    Ok(())
}

fn reads(bytes: &[u8]) -> Result<(), TestCaseError> {
    let book = Book::good();
    book.write("formulary.yaml", FORMULARY.as_bytes());
    let path = "lessons/01-syrup.md";
    book.write(path, bytes);
    let before = book.everything();
    let outcome = press::press(book.dir(), book.site(), None, &|| {}).expect("the folders can be used");
    for finding in &outcome.findings {
        lies_inside(finding, path, bytes)?;
        for look in [Look::Plain, Look::Colour, Look::Sentences] {
            prop_assert!(!print(finding, look).is_empty());
        }
    }
    let page = book.site().join("lessons/syrup.html");
    if stops(&outcome.findings) {
        prop_assert!(!outcome.written && before == book.everything());
    } else {
        let html = std::fs::read_to_string(&page).map_err(|error| TestCaseError::fail(error.to_string()))?;
        prop_assert!(outcome.written && outcome.recipes > 0);
        for broken in ["NaN", "inf ", "\0", "href=\"plant:", "href=\"number:", "href=\"lesson:"] {
            prop_assert!(
                !html.contains(broken) || String::from_utf8_lossy(bytes).contains(broken),
                "{broken}"
            );
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn slips_of_the_hand_never_panic(which in 0..LESSONS.len(), slips in prop::collection::vec(slip(), 1..5)) {
        let path = kit::root().join("content/lessons").join(LESSONS[which]);
        let lesson = kit::read(&path).into_bytes();
        reads(&slips.iter().fold(lesson, made))?;
    }

    #[test]
    fn slips_in_a_plant_never_panic(slips in prop::collection::vec(slip(), 1..5)) {
        let book = Book::good();
        book.write("formulary.yaml", FORMULARY.as_bytes());
        book.write("lessons/01-syrup.md", super::book::LESSON.as_bytes());
        let rosehip = kit::read(&kit::root().join("content/plants/rosehip.md")).into_bytes();
        let bytes = slips.iter().fold(rosehip, made);
        book.write("plants/rosehip.md", &bytes);
        let outcome = press::proof(book.dir()).expect("the folder can be read");
        let own = |finding: &&Finding| finding.place.as_ref().is_some_and(|place| place.path == "plants/rosehip.md");
        let lesson_faults = outcome.findings.iter().filter(|finding| !own(finding)).collect::<Vec<_>>();
        for finding in outcome.findings.iter().filter(own) {
            lies_inside(finding, "plants/rosehip.md", &bytes)?;
        }
        // A plant's fault is told on its page and not again where the plant is used.
        let told = outcome.findings.iter().filter(own).any(|finding| finding.level == stillroom::diagnostic::Level::Error);
        prop_assert!(!told || lesson_faults.is_empty(), "{lesson_faults:?}");
    }
}
