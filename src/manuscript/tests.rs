//! What a body becomes: exact places of blocks, pieces, every kind of Markdown once.

use super::*;
use crate::diagnostic::{Code, Level};
use proptest::prelude::*;

fn lesson(text: &str) -> (Source, Manuscript) {
    let source = Source::new("a.md", text);
    let body = parts(&source).expect("closed").body.span;
    let manuscript = read(&source, body, &["recipe"], &Terms::default());
    (source, manuscript)
}

fn html(text: &str) -> String {
    let (_, manuscript) = lesson(text);
    let rendered = render(&manuscript, |link| LinkTo::Address(link.href.clone()));
    rendered.pieces.concat() + &rendered.notes
}

fn codes(manuscript: &Manuscript) -> Vec<(Code, Level, usize, usize)> {
    let place = |finding: &Finding| finding.place.clone().expect("located");
    let of = |finding: &Finding| (finding.code, finding.level, place(finding).line, place(finding).column);
    manuscript.findings.iter().map(of).collect()
}

#[test]
fn a_file_is_cut_at_its_facts() {
    for ends in ["\n", "\r\n"] {
        for mark in ["", "\u{feff}"] {
            let text = format!("{mark}---\na: ½\nb: 2\n---\n\nText\n").replace('\n', ends);
            let source = Source::new("a.md", text.clone());
            let parts = parts(&source).expect("closed");
            let front = parts.front.expect("there");
            assert_eq!(front.value, "a: ½\nb: 2\n".replace('\n', ends));
            assert_eq!(&text[front.span.start..front.span.end], front.value);
            assert_eq!(parts.body.value, "\nText\n".replace('\n', ends));
            assert_eq!(&text[parts.body.span.start..parts.body.span.end], parts.body.value);
        }
    }
    let source = Source::new("a.md", "No facts\n---\n");
    assert_eq!(parts(&source).expect("no facts").front, None);
    let finding = parts(&Source::new("a.md", "\n---\na: 1\n")).expect_err("open");
    assert_eq!((finding.code, finding.place.expect("located").line), (Code::NoFrontMatter, 2));
}

#[test]
fn blocks_keep_their_bytes() {
    let text = "---\na: é\n---\n# ½ é\n\n```recipe  one \nname: Élder\n\n  x: 1\n```\nbetween ½\n~~~~recipe\n```\nz\n~~~~~\n\n```recipe\n```\nend\n";
    for text in [text.to_string(), text.replace('\n', "\r\n"), format!("\u{feff}{text}")] {
        let (source, manuscript) = lesson(&text);
        let cut = |span: Span| source.text[span.start..span.end].replace('\r', "");
        assert_eq!(manuscript.blocks.len(), 3);
        for block in &manuscript.blocks {
            assert_eq!(&source.text[block.text.span.start..block.text.span.end], block.text.value);
            assert_eq!(block.kind, "recipe");
        }
        assert_eq!(cut(manuscript.blocks[0].text.span), "name: Élder\n\n  x: 1\n");
        assert_eq!(cut(manuscript.blocks[0].info), "recipe  one");
        assert_eq!(cut(manuscript.blocks[1].text.span), "```\nz\n");
        assert_eq!(cut(manuscript.blocks[1].info), "recipe");
        assert_eq!(cut(manuscript.blocks[2].text.span), "");
        let pieces = render(&manuscript, |_| LinkTo::Broken).pieces;
        assert_eq!(pieces.len(), 4);
        assert_eq!(pieces[1].trim(), "<p>between ½</p>");
        assert_eq!(pieces[2].trim(), "");
        assert_eq!(pieces[3].trim(), "<p>end</p>");
    }
}

#[test]
fn a_block_that_is_not_at_the_left_edge_is_refused() {
    let (_, manuscript) = lesson(
        "Text\n\n ```recipe\n a: 1\n ```\n\n- ```recipe\n  a: 1\n  ```\n\n> ```recipe\n> a: 1\n> ```\n",
    );
    assert_eq!(manuscript.blocks, []);
    let (shape, error) = (Code::WrongShape, Level::Error);
    assert_eq!(codes(&manuscript), [(shape, error, 3, 2), (shape, error, 7, 3), (shape, error, 11, 3)]);
    assert_eq!(render(&manuscript, |_| LinkTo::Broken).pieces.len(), 1);
}

#[test]
fn an_open_block_is_found_where_it_opens() {
    let (_, manuscript) = lesson("a\r\n\r\n```recipe\r\nname: x\r\n\r\nmore\r\n");
    assert_eq!(codes(&manuscript), [(Code::OpenBlock, Level::Error, 3, 1)]);
    assert_eq!(manuscript.blocks, []);
    let (_, manuscript) = lesson("> ```\n> x\n\ny\n\n~~~\nz");
    assert_eq!(manuscript.findings.len(), 2);
}

#[test]
fn other_blocks_are_shown() {
    assert_eq!(html("```js x\na < b\n```\n"), "<pre><code class=\"language-js\">a &lt; b\n</code></pre>\n");
    assert_eq!(html("    a\n"), "<pre><code>a\n</code></pre>\n");
}

#[test]
fn headings_are_shifted_and_named() {
    let (_, manuscript) = lesson("# Top\n\n## Crème *x* [y](plant:y)\n\nUnder\n-----\n\n###### Under\n");
    let of = |heading: &Heading| (heading.level, heading.text.clone(), heading.anchor.clone());
    let found: Vec<_> = manuscript.headings.iter().map(of).collect();
    let want =
        [(2, "Top", "top"), (2, "Crème x y", "creme-x-y"), (2, "Under", "under"), (6, "Under", "under-2")];
    assert_eq!(found, want.map(|(level, text, id)| (level, text.to_string(), id.to_string())));
    assert_eq!(codes(&manuscript), [(Code::WrongShape, Level::Warning, 1, 1)]);
    assert_eq!(html("## A *b*\n"), "<h2 id=\"a-b\">A <em>b</em></h2>\n");
}

#[test]
fn tables_are_aligned_by_class() {
    let table = html("|  | b | c |\n|---|--:|:-:|\n| 1 | 2 | *3* |\n");
    assert!(!table.contains("align"), "{table}");
    let flat = table.replace('\n', "");
    let head = "<table><thead><tr><td></td><th scope=\"col\" class=\"num\">b</th><th scope=\"col\" class=\"mid\">c</th></tr></thead>";
    let rest =
        "<tbody><tr><td>1</td><td class=\"num\">2</td><td class=\"mid\"><em>3</em></td></tr></tbody></table>";
    assert_eq!(flat, format!("{head}{rest}"));
}

#[test]
fn footnotes_stand_apart() {
    let (_, manuscript) = lesson("a[^x] b[^y] c[^x]\n\n[^x]: one *x*\n[^y]: - two\n");
    let rendered = render(&manuscript, |_| LinkTo::Broken);
    assert_eq!(
        rendered.pieces[0].trim(),
        "<p>a<sup><a href=\"#note--1\" id=\"call--1\" role=\"doc-noteref\">1</a></sup> \
         b<sup><a href=\"#note--2\" id=\"call--2\" role=\"doc-noteref\">2</a></sup> \
         c<sup><a href=\"#note--1\" id=\"call--1-2\" role=\"doc-noteref\">1</a></sup></p>"
    );
    let back = |id: &str, which: &str| {
        format!(
            "<a href=\"#{id}\" role=\"doc-backlink\" aria-label=\"Back to where this is noted{which}\">↩\u{fe0e}</a>"
        )
    };
    let notes = format!(
        "<section class=\"notes\" role=\"doc-endnotes\" aria-label=\"Notes\"><ol>\
         <li id=\"note--1\"><p>one <em>x</em> {} {}</p></li>\
         <li id=\"note--2\"><ul><li>two</li></ul><p>{}</p></li></ol></section>",
        back("call--1", ", 1"),
        back("call--1-2", ", 2"),
        back("call--2", "")
    );
    assert_eq!(rendered.notes.replace('\n', ""), notes);
}

#[test]
fn a_footnote_written_twice_is_found() {
    let (_, manuscript) = lesson("a[^x]\n\n[^x]: one\n\n```recipe\n```\n\n[^x]: two\n");
    assert_eq!(codes(&manuscript), [(Code::TwiceWritten, Level::Error, 3, 1)]);
    let rendered = render(&manuscript, |_| LinkTo::Broken);
    assert_eq!(rendered.pieces.len(), 2);
    assert!(rendered.notes.contains("two") && !rendered.notes.contains("one"), "{}", rendered.notes);
}

#[test]
fn tasks_have_labels() {
    let task =
        |done: &str, words: &str| format!("<label><input type=\"checkbox\"{done} disabled> {words}</label>");
    let tight = html("- [ ] strain\n  - [x] twice\n- [x] bottle\n").replace('\n', "");
    let (a, b, c) = (task("", "strain"), task(" checked", "twice"), task(" checked", "bottle"));
    let inner = format!("<ul><li class=\"task\">{b}</li></ul>");
    assert_eq!(tight, format!("<ul><li class=\"task\">{a}{inner}</li><li class=\"task\">{c}</li></ul>"));
    let loose = html("1. [ ] a\n\n   b\n").replace('\n', "");
    assert_eq!(loose, format!("<ol><li class=\"task\"><p>{}</p><p>b</p></li></ol>", task("", "a")));
}

#[test]
fn description_lists_strikes_quotes_and_breaks() {
    assert_eq!(
        html("Term\n\n: What it is\n").replace('\n', ""),
        "<dl><dt>Term</dt><dd><p>What it is</p></dd></dl>"
    );
    assert_eq!(html("~~no~~ \"yes\" -- it's...\n"), "<p><del>no</del> “yes” – it’s…</p>\n");
    assert_eq!(html("a\\\nb\n\n***\n"), "<p>a<br>\nb</p>\n<hr>\n");
    assert_eq!(html("https://a.org www.a.org\n"), "<p>https://a.org www.a.org</p>\n");
}

#[test]
fn html_is_shown_not_used() {
    let text = "a <b onclick=x>b</b>\n\n<script>alert(1)</script>\n";
    let (_, manuscript) = lesson(text);
    let (used, warning) = (Code::NotUsed, Level::Warning);
    assert_eq!(codes(&manuscript), [(used, warning, 1, 3), (used, warning, 1, 17), (used, warning, 3, 1)]);
    let html = html(text);
    assert!(!html.contains("<b") && !html.contains("<script"), "{html}");
    assert!(html.contains("&lt;script&gt;"), "{html}");
}

#[test]
fn links_go_where_they_are_led() {
    let text = "[rose *hip*](plant:rosehip \"t\") [](number:strained) [about 3](number:strained) [gone](a.md) ![a \"jar\"](jar.jpg)\n";
    let (source, manuscript) = lesson(text);
    assert_eq!(codes(&manuscript), []);
    assert_eq!(manuscript.links[0].text, "rose hip");
    let span = manuscript.links[1].span;
    assert_eq!(&source.text[span.start..span.end], "[](number:strained)");
    let rendered = render(&manuscript, |link| match (link.href.as_str(), link.text.as_str()) {
        ("plant:rosehip", _) => LinkTo::Address("../plants/rosehip/?a&b".to_string()),
        ("number:strained", "") => LinkTo::AddressAndWords("#strained".to_string(), "700 mL <".to_string()),
        ("number:strained", _) => LinkTo::Words("3 cups".to_string()),
        ("a.md", _) => LinkTo::Broken,
        ("jar.jpg", _) => {
            LinkTo::Picture { address: "../pictures/jar.jpg".to_string(), width: 64, height: 48 }
        }
        _ => LinkTo::Address(link.href.clone()),
    });
    assert_eq!(
        rendered.pieces[0],
        "<p><a href=\"../plants/rosehip/?a&amp;b\" title=\"t\">rose <em>hip</em></a> \
         <a href=\"#strained\">700 mL &lt;</a> 3 cups gone \
         <img src=\"../pictures/jar.jpg\" alt=\"a “jar”\" width=\"64\" height=\"48\" loading=\"lazy\" decoding=\"async\"></p>\n"
    );
}

#[test]
fn a_picture_by_itself_is_a_figure_with_its_caption() {
    let (_, manuscript) = lesson("![a jar](jar.jpg \"Two < three\")\n\nand ![a lid](lid.jpg \"x\")\n");
    let rendered =
        render(&manuscript, |link| LinkTo::Picture { address: link.href.clone(), width: 2, height: 1 });
    let img = |name: &str, alt: &str| {
        format!(
            "<img src=\"{name}\" alt=\"{alt}\" width=\"2\" height=\"1\" loading=\"lazy\" decoding=\"async\">"
        )
    };
    let figure =
        format!("<figure>{}<figcaption>Two &lt; three</figcaption></figure>", img("jar.jpg", "a jar"));
    assert_eq!(rendered.pieces[0], format!("{figure}\n<p>and {}</p>\n", img("lid.jpg", "a lid")));
}

/// A word of the glossary is a link where it first stands in running text, across a line's end too; not in a
/// heading, not in a link's words, and not again.
#[test]
fn words_of_the_glossary_are_linked_once() {
    let text = "## The marc\n\n[the marc](a.md) *Water\nactivity* and marc, marc.\n\n- menstruum\n";
    let source = Source::new("lessons/01-x.md", text);
    let forms = [("marc", "marc"), ("water activity", "water-activity"), ("menstruum", "menstruum")];
    let manuscript = read(&source, Span::new(0, text.len()), &[], &Terms::new(forms.into_iter()));
    let html = render(&manuscript, |link| LinkTo::Address(link.href.clone())).pieces.concat();
    assert!(html.contains("<em><a href=\"term:water-activity\">Water\nactivity</a></em> and <a href=\"term:marc\">marc</a>, marc."), "{html}");
    assert_eq!(html.matches("term:").count(), 3, "{html}");
    assert!(html.contains("<a href=\"a.md\">the marc</a>"), "{html}");
}

#[test]
fn bad_links_are_refused_with_their_place() {
    let text =
        "ab [x](javascript:alert(1)) [y](&#106;avascript:z) ![](jar.jpg) [![z](https://a.org/z.png)](a.md)\n";
    let (_, manuscript) = lesson(text);
    let (bad, error) = (Code::BadLink, Level::Error);
    let want = [(bad, error, 1, 4), (bad, error, 1, 29), (bad, error, 1, 52), (bad, error, 1, 66)];
    assert_eq!(codes(&manuscript), want);
    let html = html(text);
    assert!(!html.contains("script") && !html.contains("https"), "{html}");
    assert!(html.contains("<a href=\"a.md\">z</a>"), "{html}");
}

#[test]
fn a_hole_cannot_be_forged() {
    let text = "\0b0\0 &#0;b0&#0; `\0b0\0` [\0o0\0](a.md \"\0b0\0\") ![\0p0\0](\0b0\0)\n\n# \0b0\0\n\n```\0b0\0\n\0b0\0\n```\n\n<\0b0\0>\n";
    let (_, manuscript) = lesson(text);
    let rendered =
        render(&manuscript, |link| LinkTo::AddressAndWords(link.href.clone(), "\0b0\0".to_string()));
    assert_eq!(rendered.pieces.len(), 1);
    assert!(!rendered.pieces[0].contains('\0'));
}

proptest! {
    #[test]
    fn nothing_written_stops_it(text in prop_oneof![
        any::<String>(),
        "(```recipe\r?\n|```|~~~|- |> |\\[x\\]|\\(plant:a\\)|!|\\|--:\\||\\| a |\r|\n|\t|é|\0|#|\\[\\^1\\]:? ?|: |<b>|    |---\n){0,60}",
    ]) {
        let source = Source::new("a.md", text);
        if let Ok(cut) = parts(&source) {
            let manuscript = read(&source, cut.body.span, &["recipe"], &Terms::default());
            let rendered = render(&manuscript, |link| LinkTo::Address(link.href.clone()));
            prop_assert_eq!(rendered.pieces.len(), manuscript.blocks.len() + 1);
            for block in &manuscript.blocks {
                prop_assert_eq!(&source.text[block.text.span.start..block.text.span.end], &block.text.value);
            }
            for link in &manuscript.links {
                prop_assert!(source.text.get(link.span.start..link.span.end).is_some());
            }
            prop_assert!(rendered.pieces.iter().chain([&rendered.notes]).all(|piece| !piece.contains('\0')));
        }
    }
}
