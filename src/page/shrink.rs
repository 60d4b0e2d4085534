//! A theme's files made small, once, when the theme is loaded: no page pays for it.
//!
//! The only place that knows the minifying crate. Template tags are masked before it sees a
//! template and put back afterwards. The crate's own way of passing braces through covers text only:
//! in an attribute it ends a tag at the first quote inside it, and takes the quotes off
//! `href="{{x}}"`, which is broken HTML as soon as the value holds a blank.

mod mask;
mod style;

use crate::span::{Source, Span};
use mask::Masked;

/// A place in a theme's file that cannot be used, and why.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Spot {
    /// Line from 1.
    pub line: usize,
    /// Column from 1, in characters.
    pub column: usize,
    /// Bytes of the file.
    pub span: Span,
    /// What is wrong, one sentence without a full stop.
    pub message: String,
}

impl Spot {
    fn new(text: &str, span: Span, message: impl Into<String>) -> Spot {
        let (line, column) = Source::new("", text).line_column(span.start);
        Spot { line, column, span, message: message.into() }
    }
}

/// A template with the same page in fewer bytes. Refused: a tag between attributes, in an unquoted
/// value or in an HTML comment, and elements that are closed without having been opened.
pub fn template(text: &str) -> Result<String, Spot> {
    let masked = Masked::new(text)?;
    let mut cfg = minify_html::Cfg::new();
    // Valid HTML that `view source` can be read in; tags may open in one file and close in the next.
    cfg.keep_closing_tags = true;
    cfg.keep_html_and_head_opening_tags = true;
    // A style rule may ask for input[type=text].
    cfg.keep_input_type_text_attr = true;
    cfg.preserve_brace_template_syntax = true;
    let small = minify_html::minify(masked.html.as_bytes(), &cfg);
    let small = String::from_utf8(small)
        .map_err(|_| Spot::new(text, Span::new(0, 0), "the template does not survive being made small"))?;
    masked.restore(text, &small)
}

/// A style sheet without comments and needless blanks, and nothing else changed.
///
/// The minifying crate's own style compiler is not used. It was tried on the features a theme here may use
/// (layers, nesting, `@page` boxes, `light-dark()`), and it moves a `font` shorthand behind
/// `font-variant-numeric`, which the shorthand then resets: tables would lose their even figures.
/// What it cannot read it leaves whole without a word. A sheet that is not closed is refused here.
pub fn style(text: &str) -> Result<String, Spot> {
    style::small(text)
}

/// A theme's script without blanks around it and without the lines that are a comment, and nothing else changed: the
/// minifying crate renames what is inside functions and works out sums of numbers ahead.
///
/// Lines of a text between backticks stay as they are. What is there to be read, the formulas and the rules, is written
/// by the press and does not come this way.
pub fn script(text: &str) -> String {
    let mut small = String::new();
    let mut in_text = false;
    for line in text.trim_start_matches('\u{feff}').trim().lines() {
        if !in_text && line.trim_start().starts_with("//") {
            continue;
        }
        let ticks = line.matches('`').count() - line.matches("\\`").count();
        in_text ^= ticks % 2 == 1;
        small.push_str(line);
        small.push('\n');
    }
    small
}

#[cfg(test)]
mod tests {
    use super::*;

    fn small(text: &str) -> String {
        template(text).expect("sound")
    }

    #[test]
    fn comments_go_from_scripts_and_texts_stay() {
        let text = "// Why.\nlet a = 1; // b\n  // More.\nlet b = `\n// no comment\n`;\n";
        assert_eq!(script(text), "let a = 1; // b\nlet b = `\n// no comment\n`;\n");
        assert_eq!(script("// Only words.\n"), "");
    }

    fn refused(text: &str) -> (usize, usize) {
        let spot = template(text).expect_err("refused");
        (spot.line, spot.column)
    }

    #[test]
    fn blanks_go_and_words_stay_apart() {
        assert_eq!(small("<p>\n  {{ a }} and\n {{ b }} more </p>\n"), "<p>{{ a }} and {{ b }} more</p>");
        assert_eq!(small("<p>Makes {% include \"x\" %}</p>"), "<p>Makes {% include \"x\" %}</p>");
        assert_eq!(small("<div>\n <a>a</a> <b>b</b>\n</div>"), "<div><a>a</a> <b>b</b></div>");
        assert_eq!(small("<div>\n <p>a</p>\n\n <p>b</p>\n</div>"), "<div><p>a</p><p>b</p></div>");
        assert_eq!(small("<pre>\n a  {{ b }}\n\n</pre>"), "<pre>\n a  {{ b }}\n\n</pre>");
        let list = "<ul>\n  {% for a in b %}\n  <li>{{ a }}</li>\n  {% endfor %}\n</ul>";
        assert_eq!(small(list), "<ul>{% for a in b %}<li>{{ a }}</li>{% endfor %}</ul>");
    }

    #[test]
    fn tags_come_through_untouched() {
        for text in [
            "{% if a < b and \"}}%}\" %}x{% endif %}",
            "<title>{% if a < b %}x &amp;lt; y{% endif %}</title>",
            "<a class=\"{{x}}\" href=\"{{ a | f(from=\"q\") }}{% if a > 1 %}#b{% endif %}\">{{ a|safe }}</a>",
            "{% raw %}{{ not }} <p   >{% endraw %}",
            "<script>let a = {{ json }};</script>",
        ] {
            assert_eq!(small(text), text);
        }
        assert_eq!(
            small("<body>{# a remark #}<p>x</p><!-- gone --></body>"),
            "<body>{# a remark #}<p>x</p></body>"
        );
    }

    #[test]
    fn html_stays_valid() {
        let page = "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>{{ t }}</title>\n</head>\n<body class=\"a  b\">\n<main>{% block main %}{% endblock %}</main>\n<input type=\"text\" value=\"{{ v }}\" />\n</body>\n</html>\n";
        let want = "<!doctype html><html lang=en><head><meta charset=utf-8><title>{{ t }}</title></head><body class=\"a b\"><main>{% block main %}{% endblock %}</main><input type=text value=\"{{ v }}\"></body></html>";
        let small =
            small(page).replace("<input value=\"{{ v }}\" type=text>", "<input type=text value=\"{{ v }}\">");
        assert_eq!(small, want);
    }

    #[test]
    fn misplaced_tags_are_refused_with_their_place() {
        assert_eq!(refused("<p>é\n<a {% if x %}class=\"b\"{% endif %}>x</a>"), (2, 4));
        assert_eq!(refused("<a href={{ x }}>x</a>"), (1, 9));
        assert_eq!(refused("<{{ x }}>"), (1, 2));
        assert_eq!(refused("<p>x</p>\n  <!-- {{ x }} -->"), (2, 8));
        assert_eq!(refused("<details open=\"{{ x }}\">x</details>"), (1, 16));
        assert_eq!(refused("<a class=\"{% if x %}a\" title=\"b{% endif %}\">x</a>"), (1, 11));
        assert_eq!(refused("<p>{{ x"), (1, 4));
        assert_eq!(refused("<p>&#123;{ x }}</p>"), (1, 1));
        assert_eq!(refused("<p>x</p></main>"), (1, 9));
    }

    #[test]
    fn scripts_are_left_alone() {
        assert_eq!(script("\n  let a = `x\n   y`; // why\n\n"), "let a = `x\n   y`; // why\n");
        assert_eq!(script(" \n"), "");
    }

    proptest::proptest! {
        #[test]
        fn nothing_written_stops_it(text in "(<p>|</p>|<a |href=|\"|'|>|<|\\{\\{|\\}\\}|\\{%|%\\}| |\n|x|é|=|<!--|-->|<pre>|/|\\{#|&|<script>|</script>|<title>){0,30}") {
            let _ = template(&text);
            let _ = style(&text);
        }
    }
}
