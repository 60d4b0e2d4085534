//! Places and texts of every kind of node, the words of every fault, and the readers over a tree.

use proptest::prelude::*;

use super::*;

fn tree(text: &str) -> Node {
    match read(text, 0) {
        Ok(node) => node,
        Err(findings) => panic!("{text:?} was not read: {findings:?}"),
    }
}

/// The tree as a list of written places: every key and value exactly as it stands in the text.
fn written<'a>(text: &'a str, node: &Node, into: &mut Vec<&'a str>) {
    into.push(&text[node.span.start..node.span.end]);
    match &node.value {
        Value::List(entries) => entries.iter().for_each(|entry| written(text, entry, into)),
        Value::Map(entries) => {
            for (key, value) in entries {
                into.push(&text[key.span.start..key.span.end]);
                written(text, value, into);
            }
        }
        _ => {}
    }
}

#[track_caller]
fn places(text: &str, wanted: &[&str]) {
    let mut found = Vec::new();
    written(text, &tree(text), &mut found);
    assert_eq!(found, wanted);
}

fn scalar(text: &str) -> Scalar {
    match tree(&format!("key: {text}\n")).value {
        Value::Map(entries) => match entries.into_iter().next().map(|(_, node)| node.value) {
            Some(Value::Scalar(scalar)) => scalar,
            other => panic!("no value: {other:?}"),
        },
        other => panic!("no map: {other:?}"),
    }
}

#[test]
fn places_of_block_maps_and_lists() {
    places(
        "name: Rose hip\nmethod:\n  - simmer: 30 min\n    lid: on\n  -\n",
        &[
            "name: Rose hip\nmethod:\n  - simmer: 30 min\n    lid: on\n  -",
            "name",
            "Rose hip",
            "method",
            "- simmer: 30 min\n    lid: on\n  -",
            "simmer: 30 min\n    lid: on",
            "simmer",
            "30 min",
            "lid",
            "on",
            "",
        ],
    );
    places("a:\n- b\n- c\n\nd: e\n", &["a:\n- b\n- c\n\nd: e", "a", "- b\n- c", "b", "c", "d", "e"]);
    places("a:\n- - -5\n", &["a:\n- - -5", "a", "- - -5", "- -5", "-5"]);
}

#[test]
fn places_of_nested_braces_and_brackets() {
    places(
        "x: {water: 1:4 w/v, change: {after strain: [a, b: c]}, d: }",
        &[
            "x: {water: 1:4 w/v, change: {after strain: [a, b: c]}, d: }",
            "x",
            "{water: 1:4 w/v, change: {after strain: [a, b: c]}, d: }",
            "water",
            "1:4 w/v",
            "change",
            "{after strain: [a, b: c]}",
            "after strain",
            "[a, b: c]",
            "a",
            "b: c",
            "b",
            "c",
            "d",
            "",
        ],
    );
}

#[test]
fn places_count_bytes_behind_letters_and_windows_line_ends() {
    places(
        "é: ½ tsp # größe\r\n\"ö\":\r\n  - 'ø'\r\n  - x\r\n",
        &[
            "é: ½ tsp # größe\r\n\"ö\":\r\n  - 'ø'\r\n  - x",
            "é",
            "½ tsp",
            "\"ö\"",
            "- 'ø'\r\n  - x",
            "'ø'",
            "x",
        ],
    );
    places("\u{feff}a: b", &["a: b", "a", "b"]);
}

#[test]
fn places_of_texts_over_several_lines() {
    places(
        "a: one\n  two\nb: |\n  three\n\nc: d",
        &["a: one\n  two\nb: |\n  three\n\nc: d", "a", "one\n  two", "b", "three", "c", "d"],
    );
}

#[test]
fn values_stay_the_text_that_was_written() {
    for text in [
        "no",
        "on",
        "1:4",
        "012",
        "1_000",
        "1/2",
        "200 g dried",
        "~",
        "null",
        "1e3",
        "50 %",
        "2024-01-02",
        ".5",
    ] {
        assert_eq!(scalar(text), Scalar { text: text.to_string(), quoted: false });
    }
    for (written, text) in [
        ("\"a: b\"", "a: b"),
        ("'it''s'", "it's"),
        ("\"½\\n\"", "½\n"),
        ("\"\"", ""),
        ("|\n  a\n  b", "a\nb"),
        (">\n  a\n  b", "a b"),
    ] {
        assert_eq!(scalar(written), Scalar { text: text.to_string(), quoted: true });
    }
}

#[test]
fn nothing_is_nothing() {
    for text in ["", "\n\n", "# only a comment\n", "---\n"] {
        assert_eq!(tree(text).value, Value::Nothing, "{text:?}");
    }
}

#[test]
fn places_move_with_the_block() {
    let node = read("a: [b]", 100).expect("plain YAML");
    assert_eq!(node.span, Span::new(100, 106));
    let Value::Map(entries) = node.value else { panic!("a map") };
    assert_eq!((entries[0].0.span, entries[0].1.span), (Span::new(100, 101), Span::new(103, 106)));
    let findings = read("a: &x b", 100).expect_err("an anchor");
    assert_eq!(findings[0].span, Some(Span::new(103, 105)));
}

/// `code | marked text | message | what to write`, one line a finding.
fn faults(text: &str) -> String {
    let findings = read(text, 0).expect_err("a fault");
    let lines = findings.iter().map(|finding| {
        let span = finding.span.expect("every fault has its place");
        let write = finding.write.iter().map(|write| format!(" | {write}")).collect::<String>();
        format!("{} | {} | {}{write}", finding.code.text(), &text[span.start..span.end], finding.message)
    });
    lines.collect::<Vec<_>>().join("\n")
}

#[test]
fn a_colon_too_many_or_too_few() {
    let inside = "a colon with a blank behind it stands inside a value";
    assert_eq!(faults("a: b: c # d\n"), format!("bad-yaml | b: c | {inside} | \"b: c\""));
    assert_eq!(faults("- a: say \"b\": c"), format!("bad-yaml | say \"b\": c | {inside} | 'say \"b\": c'"));
    let bare = "this line has no key with a colon and a blank behind it";
    assert_eq!(faults("name Rose\nkeep: x\n"), format!("bad-yaml | name Rose | {bare} | name: Rose"));
    assert_eq!(faults("keep: x\nname Rose\n"), format!("bad-yaml | name Rose | {bare} | name: Rose"));
    assert_eq!(faults("name:Rose\nkeep: x\n"), format!("bad-yaml | name:Rose | {bare} | name: Rose"));
    assert_eq!(faults(": x"), "bad-yaml |  | a key is missing before this colon");
    assert_eq!(
        faults("{a: b c: d, e: f}"),
        "bad-yaml | b c: d | a second colon stands in this entry | \"b c: d\""
    );
}

#[test]
fn brackets_and_commas() {
    assert_eq!(faults("a: [b, c\n"), "bad-yaml | [ | this bracket is never closed; its `]` is missing");
    assert_eq!(faults("a: [b, c\nd: e\n"), "bad-yaml | [ | this bracket is never closed; its `]` is missing");
    assert_eq!(faults("a: {b: c\nd: e\n"), "bad-yaml | { | this bracket is never closed; its `}` is missing");
    assert_eq!(
        faults("a: {b: c\n  d: e}\n"),
        "bad-yaml | d | a comma is missing at the end of the line above"
    );
    assert_eq!(faults("[[a] [b]]"), "bad-yaml | [b]] | a comma or a closing bracket is missing before this");
    assert_eq!(
        faults("a: [b}"),
        "bad-yaml | [b} | this opens with one kind of bracket and closes with another"
    );
    assert_eq!(faults("a: [b]]"), "bad-yaml | ] | this bracket closes nothing that was opened");
}

#[test]
fn quotes_and_signs() {
    assert_eq!(faults("a: \"b c\nd: e\n"), "bad-yaml | \"b c | this quote is never closed");
    assert_eq!(
        faults("a: \"b\nc: \"d\"\n"),
        "bad-yaml | \" | a quote that was opened in a line above is closed only here"
    );
    assert_eq!(faults("a: 'b' c"), "bad-yaml | c | something follows the closing quote | \"'b' c\"");
    assert_eq!(faults("{a: 'b' c: d}"), "bad-yaml | c: d | something follows the closing quote");
    assert_eq!(
        faults("a: \"50\\%\""),
        "bad-yaml | \"50\\%\" | between double quotes a backslash has a meaning of its own | '50\\%'"
    );
    for value in ["@x", "`x`", "%x", "> x"] {
        let message = "a value cannot begin with this character unless it stands in quotes";
        assert_eq!(faults(&format!("a: {value}")), format!("bad-yaml | {value} | {message} | \"{value}\""));
    }
    assert_eq!(faults("a: \u{0}"), "bad-yaml | \u{0} | a character that cannot be seen stands here");
    assert!(faults("a: 'b'#c").starts_with("bad-yaml | #c | a comment cannot stand here"));
}

#[test]
fn setting_in() {
    let tab = "a tab cannot set this line in";
    assert_eq!(faults("a:\n\tb: c\n"), format!("bad-yaml | \t | {tab}"));
    assert_eq!(faults("a:\n  b: c\n\td: e\n"), format!("bad-yaml | \t | {tab}"));
    let further = "this line is set further in than the one above, which already has its value";
    assert_eq!(faults("a: 1\n  b: 2\n"), format!("bad-yaml | b | {further}"));
    let aligned = "this line does not line up with the entries above it";
    assert_eq!(faults("a:\n    b: 1\n  c: 2\n"), format!("bad-yaml | c: 2 | {aligned}"));
    assert_eq!(faults("a:\n  b: 1\n  - c\n"), format!("bad-yaml | - c | {aligned}"));
    assert_eq!(faults("a: - b"), "bad-yaml | - b | a list cannot begin here");
    let odd = "this blank is not the one the space bar makes";
    assert_eq!(faults("a:\n\u{a0}b: 1\n"), format!("bad-yaml | \u{a0} | {odd}"));
    assert_eq!(faults("a:\n  \u{a0}b: 1\n"), format!("bad-yaml | \u{a0} | {odd}"));
}

#[test]
fn what_yaml_has_and_a_formulary_does_not() {
    let alias = "a value that begins with * is an alias to YAML; Stillroom does not use those";
    let anchor = "a value that begins with & is an anchor to YAML; Stillroom does not use those";
    let tag = "a value that begins with ! is a tag to YAML; Stillroom does not use those";
    let merge = "`<<` pulls entries in from elsewhere; Stillroom does not use it";
    let key = "a key is one plain word or phrase; this is more";
    assert_eq!(
        faults("a: &x b\nc: *x\nd: !t e\n<<: *x\n"),
        format!(
            "not-used | &x | {anchor} | \"&x b\"\nnot-used | *x | {alias} | \"*x\"\n\
             not-used | !t | {tag} | \"!t e\"\nnot-used | << | {merge}\nnot-used | *x | {alias} | \"*x\""
        )
    );
    assert_eq!(faults("a: *very* good"), format!("not-used | *very* | {alias} | \"*very* good\""));
    assert_eq!(faults("a: &x\n  b: c"), format!("not-used | &x | {anchor}"));
    assert_eq!(faults("a: !x!y b"), format!("not-used | ! | {tag} | \"!x!y b\""));
    assert_eq!(faults("? a\n: b"), format!("not-used | a | {key}"));
    assert_eq!(faults("[a]: b"), format!("not-used | [ | {key}"));
    assert_eq!(
        faults("a: b\n---\nc: d"),
        "not-used | --- | a line of --- begins something new here; a block holds only one thing"
    );
    assert!(faults("%YAML 1.2\n---\n").starts_with("not-used | %YAML 1.2 | "));
    assert_eq!(tree("# why?\n  a: b?").span, Span::new(9, 14));
}

#[test]
fn every_finding_of_a_block_comes_at_once() {
    assert_eq!(
        faults("a: 1\na: 2\nb: &c 3\n'a': 4\nd: [e\n")
            .lines()
            .map(|line| line.split(" | ").next())
            .collect::<Vec<_>>(),
        [Some("twice-written"), Some("not-used"), Some("twice-written"), Some("bad-yaml")]
    );
    assert_eq!(faults("a: {b: 1, b: 2}"), "twice-written | b | `b` is already written above");
}

#[test]
fn bounds() {
    let deep = "lists and keys are nested more than 32 deep here";
    assert!(faults(&"[".repeat(1000)).ends_with(deep));
    let blocks: String = (0..40).map(|level| format!("{}a:\n", "  ".repeat(level))).collect();
    assert!(faults(&blocks).ends_with(deep));
    let outer = blocks.lines().take(20).collect::<Vec<_>>().join("\n");
    let mixed = format!("{outer} {}{}", "[".repeat(20), "]".repeat(20));
    assert!(faults(&mixed).ends_with(deep));
    assert!(read(&format!("{}{}", "[".repeat(32), "]".repeat(32)), 0).is_ok());
    assert!(faults(&"a".repeat((1 << 20) + 1)).ends_with("this block is longer than 1048576 letters"));
}

fn messages(findings: &[Finding]) -> Vec<String> {
    let line = |finding: &Finding| {
        let why = finding.why.iter().map(|why| format!(" | {why}")).collect::<String>();
        format!("{}: {}{why} | {}", finding.code.text(), finding.message, finding.write.join(", "))
    };
    findings.iter().map(line).collect()
}

#[test]
fn a_map_tells_what_is_missing_and_what_nobody_knows() {
    let node = tree("liqiud: water\nkeep:\nname: Syrup\n");
    let mut findings = Vec::new();
    let mut fields = node.map("a recipe", &mut findings).expect("a map");
    let name = fields.need("name", "name: Rose hip syrup", &mut findings).expect("written");
    assert_eq!(name.text("the name", &mut findings).map(|text| text.value), Some("Syrup"));
    assert!(fields.need("liquid", "liquid: {water: 1:4 w/v}", &mut findings).is_none());
    assert!(fields.need("keep", "keep: refrigerator", &mut findings).is_none());
    assert!(fields.take("take").is_none());
    fields.finish(&mut findings);
    assert_eq!(
        messages(&findings),
        [
            "missing-key: a recipe has no `liquid` | liquid: {water: 1:4 w/v}",
            "missing-key: nothing is written for `keep` | keep: refrigerator",
            "unknown-key: `liqiud` is not a key of a recipe | the keys of a recipe are `name`, `liquid`, `keep` and `take` | liquid:",
        ]
    );
}

#[test]
fn names_an_author_chooses_are_left_over() {
    let node = tree("note: x\nrosehip: 200 g\nhibiscus: 25 g\n");
    let mut findings = Vec::new();
    let mut fields = node.map("the plants", &mut findings).expect("a map");
    fields.take("note");
    let names: Vec<_> = fields.rest().into_iter().map(|(key, _)| key.value.as_str()).collect();
    assert_eq!(names, ["rosehip", "hibiscus"]);
    fields.finish(&mut findings);
    assert!(findings.is_empty());
}

#[test]
fn a_wrong_shape_names_both_shapes() {
    let mut findings = Vec::new();
    let (value, list, map) = (tree("name:Rose"), tree("[a]"), tree("a: b"));
    assert!(value.is_scalar() && !list.is_scalar() && !map.is_scalar());
    assert!(value.list("the steps", &mut findings).is_none());
    assert!(value.map("a recipe", &mut findings).is_none());
    assert!(list.text("the name", &mut findings).is_none());
    assert!(map.list("the method", &mut findings).is_none());
    assert!(tree("").text("the name", &mut findings).is_none());
    assert_eq!(list.list("the steps", &mut findings).map(<[Node]>::len), Some(1));
    assert!(findings.iter().all(|finding| finding.why.is_some()));
    let bare: Vec<Finding> = findings.into_iter().map(|finding| Finding { why: None, ..finding }).collect();
    assert_eq!(
        messages(&bare),
        [
            "wrong-shape: a list was wanted for the steps; this is one value | ",
            "wrong-shape: `key: value` entries were wanted for a recipe; this is one value | name: Rose",
            "wrong-shape: one value was wanted for the name; this is a list | ",
            "wrong-shape: a list was wanted for the method; these are `key: value` entries | ",
            "wrong-shape: one value was wanted for the name; nothing is written | ",
        ]
    );
}

fn holds(text: &str) {
    let inside = |span: Span| assert!(text.get(span.start..span.end).is_some(), "{span:?} in {text:?}");
    match read(text, 0) {
        Ok(node) => written(text, &node, &mut Vec::new()),
        Err(findings) => {
            assert!(!findings.is_empty());
            findings.iter().for_each(|finding| inside(finding.span.expect("every fault has its place")));
        }
    }
}

proptest! {
    #[test]
    fn any_text_is_read_or_found_fault_with(text in any::<String>()) {
        holds(&text);
    }

    #[test]
    fn any_heap_of_signs_is_read_or_found_fault_with(
        parts in prop::collection::vec(prop::sample::select(vec![
            "a", "é", "½", ":", ": ", "- ", "-", "\n", "\r\n", "\r", " ", "  ", "\t", "{", "}", "[", "]", ", ", "\"", "'",
            "#", " #", "&", "*", "!", "|", ">", "%", "@", "`", "? ", "?", "<<", "---\n", "...\n", "\\", "\u{a0}", "\u{feff}",
            "key: ", "1:4", "\u{2028}", "\u{85}",
        ]), 0..24)
    ) {
        holds(&parts.concat());
    }
}
