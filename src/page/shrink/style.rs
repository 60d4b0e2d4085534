//! Style sheets: comments and needless blanks taken out, strings and addresses left alone.

use super::Spot;
use crate::span::Span;

struct Sheet<'a> {
    text: &'a str,
    at: usize,
    out: String,
    /// Whether blanks stood here that may have to stay.
    blank: bool,
    /// Brackets that are open, and where.
    open: Vec<(char, usize)>,
    /// How much was written when the last escaped character was: it looks like one that is not.
    escaped: usize,
}

pub(super) fn small(text: &str) -> Result<String, Spot> {
    let skip = if text.starts_with('\u{feff}') { 3 } else { 0 };
    let mut sheet = Sheet { text, at: skip, out: String::new(), blank: false, open: Vec::new(), escaped: 0 };
    while sheet.at < text.len() {
        sheet.step()?;
    }
    match sheet.open.pop() {
        Some((_, at)) => Err(Spot::new(text, Span::new(at, at + 1), "this bracket is not closed")),
        None => Ok(sheet.out),
    }
}

impl Sheet<'_> {
    fn rest(&self) -> &str {
        &self.text[self.at..]
    }

    fn fault<T>(&self, message: &str) -> Result<T, Spot> {
        Err(Spot::new(self.text, Span::new(self.at, self.at + 1), message))
    }

    /// The next `len` bytes as they are.
    fn take(&mut self, len: usize) {
        self.out.push_str(&self.text[self.at..self.at + len]);
        self.at += len;
    }

    fn step(&mut self) -> Result<(), Spot> {
        let rest = self.rest();
        let Some(c) = rest.chars().next() else {
            return Ok(());
        };
        if c.is_ascii_whitespace() {
            self.blank = true;
            self.at += 1;
            return Ok(());
        }
        if let Some(inner) = rest.strip_prefix("/*") {
            let Some(end) = inner.find("*/") else {
                return self.fault("this comment is not closed");
            };
            let after = rest[end + 4..].chars().next();
            // Between two words a comment is what keeps them two; a blank would mean something else.
            let word = |c: char| c.is_alphanumeric() || matches!(c, '-' | '_' | '%' | '\\' | '#' | '.' | '(');
            if !self.blank && self.out.ends_with(word) && after.is_some_and(word) {
                self.out.push_str("/**/");
            }
            self.at += end + 4;
            return Ok(());
        }
        self.lay_blank(c);
        match c {
            '"' | '\'' => self.string(c)?,
            '\\' => self.escape(),
            '{' | '(' | '[' => {
                self.open.push((c, self.at));
                let address = c == '(' && self.out.to_ascii_lowercase().ends_with("url");
                self.take(1);
                if address {
                    self.address()?;
                }
            }
            '}' | ')' | ']' => {
                let wanted = match c {
                    '}' => '{',
                    ')' => '(',
                    _ => '[',
                };
                if self.open.pop().map(|(open, _)| open) != Some(wanted) {
                    return self.fault("this bracket closes nothing");
                }
                // The last of a block's declarations needs no semicolon, unless it has no value.
                if c == '}' && self.out.ends_with(';') && !self.out.ends_with(": ;") {
                    self.out.pop();
                }
                self.take(1);
            }
            _ => self.take(c.len_utf8()),
        }
        Ok(())
    }

    /// Writes the blank that stood before `next`, if leaving it out could change anything.
    fn lay_blank(&mut self, next: char) {
        if !std::mem::take(&mut self.blank) {
            return;
        }
        let around = self.out.is_empty()
            || (self.out.ends_with(['{', '}', ';', ',']) && self.escaped != self.out.len())
            || matches!(next, '{' | '}' | ',')
            || (next == ';' && !self.out.ends_with(':'))
            || (self.out.ends_with(':') && !matches!(next, ';' | '}'));
        if !around {
            self.out.push(' ');
        }
    }

    fn string(&mut self, quote: char) -> Result<(), Spot> {
        let mut escaped = false;
        for (at, c) in self.rest().char_indices().skip(1) {
            match c {
                _ if escaped => escaped = false,
                '\\' => escaped = true,
                '\n' => break,
                _ if c == quote => {
                    self.take(at + 1);
                    return Ok(());
                }
                _ => {}
            }
        }
        self.fault("this string is not closed")
    }

    /// A backslash and what it stands before; a number's closing blank belongs to it.
    fn escape(&mut self) {
        let digits = self.rest()[1..].bytes().take(6).take_while(u8::is_ascii_hexdigit).count();
        let next = self.rest()[1 + digits..].chars().next();
        let len = match next {
            Some(c) if digits == 0 => 1 + c.len_utf8(),
            Some(' ') => 2 + digits,
            _ => 1 + digits,
        };
        self.take(len);
        self.escaped = self.out.len();
    }

    /// An address without quotes, up to its bracket.
    fn address(&mut self) -> Result<(), Spot> {
        if self.rest().trim_ascii_start().starts_with(['"', '\'']) {
            return Ok(());
        }
        match self.rest().find(')') {
            Some(len) => {
                self.take(len);
                Ok(())
            }
            None => self.fault("this address is not closed"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::small;

    #[test]
    fn blanks_and_comments_go_and_nothing_else() {
        let of = |text: &str| small(text).expect("sound");
        assert_eq!(
            of("/* why */\n@layer base, parts;\n\n:root { --gap : 1rem; --none: ; }\n"),
            "@layer base,parts;:root{--gap :1rem;--none: ;}"
        );
        assert_eq!(of("a :hover , b > c + d { margin : 0 ; }"), "a :hover,b > c + d{margin :0}");
        assert_eq!(
            of("@supports (corner-shape: scoop) { .a { corner-shape: scoop } }"),
            "@supports (corner-shape:scoop){.a{corner-shape:scoop}}"
        );
        assert_eq!(
            of("@page :first { @bottom-center { content: counter(page) \" /  \" } }"),
            "@page :first{@bottom-center{content:counter(page) \" /  \"}}"
        );
        assert_eq!(
            of(
                "@media (width > 40rem) and (hover) { .a { & > p { width: calc(1px + (2 * var(--x))) } .b & { x: y } } }"
            ),
            "@media (width > 40rem) and (hover){.a{& > p{width:calc(1px + (2 * var(--x)))}.b &{x:y}}}"
        );
        assert_eq!(
            of(
                ":where(h1, h2) { color: light-dark(#111, white); font: 1em/1.5 x; font-variant-numeric: tabular-nums }"
            ),
            ":where(h1,h2){color:light-dark(#111,white);font:1em/1.5 x;font-variant-numeric:tabular-nums}"
        );
        assert_eq!(
            of("a { background: url( data:x;y,{  } ) ; b: url( \"c  d\" ) }"),
            "a{background:url( data:x;y,{  } );b:url( \"c  d\" )}"
        );
        assert_eq!(
            of(".a\\{  b\\31  c/**/d e/* */.f, g /* */ h { x: \"\\\"  {\" }"),
            ".a\\{ b\\31  c/**/d e/**/.f,g h{x:\"\\\"  {\"}"
        );
        assert_eq!(of("\u{feff}a{}\r\n\tb{}"), "a{}b{}");
    }

    #[test]
    fn what_is_not_closed_is_refused() {
        for (text, place) in [
            ("a {\n b: c", (1, 3)),
            ("a\n}", (2, 1)),
            ("a{b:\"c\n}", (1, 5)),
            ("/* a", (1, 1)),
            ("a{b:(}", (1, 6)),
            ("a{b:url(c", (1, 9)),
        ] {
            let spot = small(text).expect_err(text);
            assert_eq!((spot.line, spot.column), place, "{text}");
        }
    }
}
