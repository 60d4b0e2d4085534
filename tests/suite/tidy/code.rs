//! Rust source as tokens: comments dropped and literals whole, so that a rule sees names and nothing else.
//!
//! Not a parser. It knows what `tidy.rs` asks: which tokens belong to the program rather than to its
//! tests, and which paths they spell.

/// A word, literal, lifetime, `::` or single sign, with the line it opens on.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Token<'a> {
    pub line: usize,
    pub text: &'a str,
}

impl Token<'_> {
    /// Whether it is a name or a keyword.
    pub fn is_word(self) -> bool {
        self.text.starts_with(|c: char| c.is_alphabetic() || c == '_') && !self.text.contains(['"', '\''])
    }
}

/// A path as spelt; a group in braces gives one path for each of its ends.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Path<'a> {
    /// The number of its first token.
    pub at: usize,
    pub line: usize,
    pub parts: Vec<&'a str>,
}

impl Path<'_> {
    /// Whether these parts stand in it one after the other.
    pub fn has(&self, parts: &[&str]) -> bool {
        self.parts.windows(parts.len()).any(|window| window == parts)
    }
}

/// A file that holds only tests, as its `mod` item names it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum TestFile {
    /// `mod name;`
    Named(String),
    /// `#[path = "..."] mod name;`
    Placed(String),
}

/// The tokens of a source text.
pub fn tokens(text: &str) -> Vec<Token<'_>> {
    let (mut found, mut at, mut line) = (Vec::new(), 0, 1);
    while at < text.len() {
        let piece = &text[at..at + piece(&text[at..])];
        let silent =
            piece.starts_with(char::is_whitespace) || piece.starts_with("//") || piece.starts_with("/*");
        if !silent {
            found.push(Token { line, text: piece });
        }
        line += piece.matches('\n').count();
        at += piece.len();
    }
    found
}

/// How long the first piece of a text is that is not empty.
fn piece(text: &str) -> usize {
    let run = |text: &str, of: fn(char) -> bool| text.find(|c| !of(c)).unwrap_or(text.len());
    let word = |c: char| c.is_alphanumeric() || c == '_';
    if text.starts_with("//") {
        text.find('\n').unwrap_or(text.len())
    } else if text.starts_with("/*") {
        comment(text)
    } else if text.starts_with("::") {
        2
    } else if text.starts_with(char::is_whitespace) {
        run(text, char::is_whitespace)
    } else if let Some(length) = string(text).or_else(|| letter(text)) {
        length
    } else if let Some(rest) = text.strip_prefix("r#").or_else(|| text.strip_prefix('\'')) {
        // A name written raw, or a lifetime.
        (text.len() - rest.len()) + run(rest, word)
    } else if text.starts_with(word) {
        run(text, word)
    } else {
        text.chars().next().map_or(1, char::len_utf8)
    }
}

/// A block comment; one that stands inside another is part of it.
fn comment(text: &str) -> usize {
    let (mut at, mut depth) = (0, 0);
    while at < text.len() {
        let rest = &text[at..];
        if rest.starts_with("/*") {
            (at, depth) = (at + 2, depth + 1);
        } else if rest.starts_with("*/") {
            (at, depth) = (at + 2, depth - 1);
            if depth == 0 {
                return at;
            }
        } else {
            at += rest.chars().next().map_or(1, char::len_utf8);
        }
    }
    at
}

/// A string of any kind: plain, bytes, for C, raw.
fn string(text: &str) -> Option<usize> {
    for prefix in ["r", "br", "cr"] {
        let Some(rest) = text.strip_prefix(prefix) else {
            continue;
        };
        let hashes = &rest[..rest.find(|c| c != '#').unwrap_or(rest.len())];
        if let Some(inside) = rest[hashes.len()..].strip_prefix('"') {
            let close = format!("\"{hashes}");
            let opened = text.len() - inside.len();
            return Some(inside.find(&close).map_or(text.len(), |end| opened + end + close.len()));
        }
    }
    let inside = ["\"", "b\"", "c\""].iter().find_map(|open| text.strip_prefix(open))?;
    let mut escaped = false;
    for (at, c) in inside.char_indices() {
        if c == '"' && !escaped {
            return Some(text.len() - inside.len() + at + 1);
        }
        escaped = c == '\\' && !escaped;
    }
    Some(text.len())
}

/// A character or byte in single quotes; a lifetime is neither.
fn letter(text: &str) -> Option<usize> {
    let inside = ["'", "b'"].iter().find_map(|open| text.strip_prefix(open))?;
    let opened = text.len() - inside.len();
    let mut chars = inside.char_indices();
    let (_, first) = chars.next()?;
    if first == '\\' {
        chars.next();
        return chars.find(|&(_, c)| c == '\'').map(|(at, _)| opened + at + 1);
    }
    chars.next().filter(|&(_, c)| c == '\'').map(|(at, _)| opened + at + 1)
}

/// Whether the tokens from `at` on are these.
pub fn reads(tokens: &[Token<'_>], at: usize, wanted: &[&str]) -> bool {
    let rest = tokens.get(at..at + wanted.len());
    rest.is_some_and(|rest| rest.iter().zip(wanted).all(|(token, wanted)| token.text == *wanted))
}

/// The lines on which these tokens stand one after the other.
pub fn lines(tokens: &[Token<'_>], wanted: &[&str]) -> Vec<usize> {
    (0..tokens.len()).filter(|&at| reads(tokens, at, wanted)).map(|at| tokens[at].line).collect()
}

/// The tokens without the items under `#[cfg(test)]`, and the files those items name.
pub fn shipped<'a>(tokens: &[Token<'a>]) -> (Vec<Token<'a>>, Vec<TestFile>) {
    let (mut kept, mut files, mut at) = (Vec::new(), Vec::new(), 0);
    if reads(tokens, 0, &["#", "!", "[", "cfg", "(", "test", ")", "]"]) {
        return (kept, files);
    }
    while at < tokens.len() {
        let test = ["test", "all"].iter().any(|word| reads(tokens, at, &["#", "[", "cfg", "(", word]))
            && (reads(tokens, at + 4, &["test", ")"]) || reads(tokens, at + 4, &["all", "(", "test"]));
        if !test {
            kept.push(tokens[at]);
            at += 1;
            continue;
        }
        let mut placed = None;
        while reads(tokens, at, &["#"]) {
            if reads(tokens, at, &["#", "[", "path", "="]) {
                placed = tokens.get(at + 4).map(|literal| literal.text.trim_matches('"').to_string());
            }
            at = closed(tokens, at, "]");
        }
        let end = closed(tokens, at, "}");
        let item = &tokens[at..end];
        if let Some(name) =
            (0..item.len()).find(|&at| reads(item, at, &["mod"]) && reads(item, at + 2, &[";"]))
        {
            files.push(
                placed.map_or_else(|| TestFile::Named(item[name + 1].text.to_string()), TestFile::Placed),
            );
        }
        at = end;
    }
    (kept, files)
}

/// Just past the sign `last` that closes what opens from `at` on, or past a `;` outside all brackets.
fn closed(tokens: &[Token<'_>], at: usize, last: &str) -> usize {
    let mut depth = 0;
    for (number, token) in tokens.iter().enumerate().skip(at) {
        match token.text {
            "(" | "[" | "{" => depth += 1,
            // The end of what stands around: a field or an arm was the last in it.
            ")" | "]" | "}" if depth == 0 => return number,
            ")" | "]" | "}" => depth -= 1,
            _ => {}
        }
        if depth == 0 && (token.text == last || token.text == ";") {
            return number + 1;
        }
    }
    tokens.len()
}

/// Every path the tokens spell; a lone word is a path of one part.
pub fn paths<'a>(tokens: &[Token<'a>]) -> Vec<Path<'a>> {
    let (mut found, mut at) = (Vec::new(), 0);
    while at < tokens.len() {
        // After `<T as Trait>::` no path begins; after a leading `::` one does.
        let goes_on = at > 1 && tokens[at - 1].text == "::" && tokens[at - 2].text == ">";
        at = if tokens[at].is_word() && !goes_on { path(tokens, at, at, &[], &mut found) } else { at + 1 };
    }
    found
}

/// Reads one path or a branch of a group, and gives the number of the token after it.
fn path<'a>(
    tokens: &[Token<'a>],
    mut at: usize,
    first: usize,
    before: &[&'a str],
    found: &mut Vec<Path<'a>>,
) -> usize {
    let line = tokens[at].line;
    let mut parts = before.to_vec();
    parts.push(tokens[at].text);
    at += 1;
    while reads(tokens, at, &["::"]) {
        let Some(next) = tokens.get(at + 1) else {
            break;
        };
        if next.text == "{" {
            at += 2;
            while at < tokens.len() && tokens[at].text != "}" {
                let branch = tokens[at].is_word() || tokens[at].text == "*";
                at = if branch { path(tokens, at, first, &parts, found) } else { at + 1 };
            }
            return at + 1;
        }
        if !next.is_word() && next.text != "*" {
            break;
        }
        parts.push(next.text);
        at += 2;
    }
    if reads(tokens, at, &["as"]) && !before.is_empty() {
        at += 2;
    }
    found.push(Path { at: first, line, parts });
    at
}

/// How many inline `mod name { }` stand around each token.
pub fn depths(tokens: &[Token<'_>]) -> Vec<usize> {
    let mut open = Vec::new();
    let depth = |open: &[bool]| open.iter().filter(|&&is_mod| is_mod).count();
    (0..tokens.len())
        .map(|at| {
            match tokens[at].text {
                "{" => open.push(at > 1 && tokens[at - 2].text == "mod"),
                "}" => drop(open.pop()),
                _ => {}
            }
            depth(&open)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(text: &str) -> Vec<&str> {
        tokens(text).iter().map(|token| token.text).collect()
    }

    fn spelt(text: &str) -> Vec<String> {
        paths(&tokens(text)).iter().map(|path| path.parts.join("::")).collect()
    }

    #[test]
    fn comments_are_dropped() {
        assert_eq!(texts("a // b \" c\n/// d\n//! e\nf"), ["a", "f"]);
        assert_eq!(texts("a /* b /* c */ d \" */ e /** f */ /**/ g"), ["a", "e", "g"]);
        assert_eq!(texts("a /* never closed /* */"), ["a"]);
        assert_eq!(texts("a / b * c"), ["a", "/", "b", "*", "c"]);
    }

    #[test]
    fn strings_are_whole() {
        assert_eq!(texts(r#"a "b // \" c" d"#), ["a", r#""b // \" c""#, "d"]);
        assert_eq!(texts(r#"a "\\" b"#), ["a", r#""\\""#, "b"]);
        assert_eq!(texts("a r\"\\\" b"), ["a", "r\"\\\"", "b"]);
        assert_eq!(texts("r##\"a \"# b\"## c"), ["r##\"a \"# b\"##", "c"]);
        assert_eq!(texts("b\"a\" c\"b\" br#\"c\"# cr\"d\""), ["b\"a\"", "c\"b\"", "br#\"c\"#", "cr\"d\""]);
        assert_eq!(texts("\"½ ° \n\" é"), ["\"½ ° \n\"", "é"]);
        assert!(tokens("\"crate\" r\"crate\" b\"crate\" 'c' b'c'").iter().all(|token| !token.is_word()));
    }

    #[test]
    fn letters_are_not_lifetimes() {
        assert_eq!(
            texts(r"'a' 'a '\'' '\\' '\u{2}' '½' b'\n' '"),
            ["'a'", "'a", r"'\''", r"'\\'", r"'\u{2}'", "'½'", r"b'\n'", "'"]
        );
        assert_eq!(texts("<'a,'b>(&'_ x)"), ["<", "'a", ",", "'b", ">", "(", "&", "'_", "x", ")"]);
        assert_eq!(texts("'\"' a \"'\" b"), ["'\"'", "a", "\"'\"", "b"]);
    }

    #[test]
    fn words_numbers_and_lines() {
        assert_eq!(
            texts("r#type r b::c 1.5e3.sqrt()"),
            ["r#type", "r", "b", "::", "c", "1", ".", "5e3", ".", "sqrt", "(", ")"]
        );
        let lines: Vec<_> = tokens("a \"\n\" b /*\n*/ c\n\nd").iter().map(|token| token.line).collect();
        assert_eq!(lines, [1, 1, 2, 3, 5]);
    }

    #[test]
    fn test_items_are_not_shipped() {
        let kept =
            |text| shipped(&tokens(text)).0.iter().map(|token| token.text).collect::<Vec<_>>().join(" ");
        assert_eq!(kept("a; #[cfg(test)] mod tests { fn b() { c } } d"), "a ; d");
        assert_eq!(kept("#[cfg(test)] #[allow(x)] fn a() -> [u8; 3] { b } c"), "c");
        assert_eq!(kept("#[cfg(all(test, unix))] use a::b; c"), "c");
        assert_eq!(kept("struct A { #[cfg(test)] a: B } c"), "struct A { } c");
        assert_eq!(kept("#![cfg(test)] a"), "");
        assert_eq!(kept("#[cfg(not(test))] a"), "# [ cfg ( not ( test ) ) ] a");
        assert_eq!(kept("// #[cfg(test)]\na \"#[cfg(test)]\" b"), "a \"#[cfg(test)]\" b");
        let named = |text| shipped(&tokens(text)).1;
        assert_eq!(named("#[cfg(test)] mod tests; mod a;"), [TestFile::Named("tests".into())]);
        assert_eq!(
            named("#[cfg(test)] #[path = \"a_tests.rs\"] mod tests;"),
            [TestFile::Placed("a_tests.rs".into())]
        );
        assert_eq!(named("#[cfg(test)] mod tests { } mod a;"), []);
    }

    #[test]
    fn paths_are_read_through_groups() {
        assert_eq!(
            spelt("use a::{b::{self, c as d}, e::*, f};"),
            ["use", "a::b::self", "a::b::c", "a::e::*", "a::f"]
        );
        assert_eq!(spelt("a::b::<c::d>::e(::f::g)"), ["a::b", "c::d", "f::g"]);
        assert_eq!(spelt("<A as B::C>::D; 0..e::f"), ["A", "as", "B::C", "e::f"]);
        assert_eq!(spelt("$crate::a::$b + \"c::d\""), ["crate::a", "b"]);
        assert_eq!(spelt("a::{b, c"), ["a::b", "a::c"]);
        assert!(
            paths(&tokens("a::b::c"))[0].has(&["b", "c"]) && !paths(&tokens("a::b::c"))[0].has(&["a", "c"])
        );
    }

    #[test]
    fn inline_modules_are_counted() {
        assert_eq!(depths(&tokens("a { b } mod c { d { e } } f")), [0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 0, 0]);
    }
}
