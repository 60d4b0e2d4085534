//! Rules of a sound page: each is a function from a page to its faults, and is shown to fail.

use super::none;
use scraper::{ElementRef, Html, Node, Selector};
use std::collections::{BTreeMap, BTreeSet};

/// Elements of MathML Core and the number of children each must have; nought where it is free.
const MATH: &[(&str, usize)] = &[
    ("math", 0),
    ("merror", 0),
    ("mfrac", 2),
    ("mi", 0),
    ("mmultiscripts", 0),
    ("mn", 0),
    ("mo", 0),
    ("mover", 2),
    ("mpadded", 0),
    ("mphantom", 0),
    ("mprescripts", 0),
    ("mroot", 2),
    ("mrow", 0),
    ("ms", 0),
    ("mspace", 0),
    ("msqrt", 0),
    ("mstyle", 0),
    ("msub", 2),
    ("msubsup", 3),
    ("msup", 2),
    ("mtable", 0),
    ("mtd", 0),
    ("mtext", 0),
    ("mtr", 0),
    ("munder", 2),
    ("munderover", 3),
];

/// Those of them that hold text, and nothing else does.
const TOKENS: &[&str] = &["mi", "mn", "mo", "ms", "mtext"];

pub fn all<'a>(html: &'a Html, what: &str) -> Vec<ElementRef<'a>> {
    html.select(&Selector::parse(what).expect("a selector")).collect()
}

pub fn within<'a>(of: ElementRef<'a>, what: &str) -> Vec<ElementRef<'a>> {
    of.select(&Selector::parse(what).expect("a selector")).collect()
}

/// An element in few words, for a fault.
fn brief(of: ElementRef) -> String {
    of.html().chars().take(120).collect::<String>().replace('\n', " ")
}

fn words(of: ElementRef) -> bool {
    of.text().any(|text| !text.trim().is_empty())
}

fn said(of: ElementRef, attribute: &str) -> bool {
    of.attr(attribute).is_some_and(|value| !value.trim().is_empty())
}

/// Whether it is named by a label of its own or by another element.
fn named(html: &Html, of: ElementRef) -> bool {
    let by =
        |id: &str| all(html, "[id]").into_iter().any(|other| other.attr("id") == Some(id) && words(other));
    said(of, "aria-label") || of.attr("aria-labelledby").is_some_and(|ids| ids.split_whitespace().all(by))
}

/// How the page is built: its head, its headings, its ids.
fn frame_faults(html: &Html) -> Vec<String> {
    let mut faults: Vec<_> = html.errors.iter().map(|error| format!("not sound HTML: {error}")).collect();
    let mut need = |good: bool, fault: &str| {
        if !good {
            faults.push(fault.to_string())
        }
    };
    need(all(html, "h1").len() == 1 && all(html, "h1").into_iter().all(words), "one h1 with words");
    need(said(html.root_element(), "lang"), "html has no lang");
    need(all(html, "head > title").into_iter().filter(|title| words(*title)).count() == 1, "no title");
    need(all(html, "meta[name=description]").into_iter().any(|meta| said(meta, "content")), "no description");
    need(all(html, "meta[name=viewport]").len() == 1, "no viewport");
    need(all(html, "main").len() == 1, "one main");
    need(all(html, "meta[http-equiv=Content-Security-Policy]").len() == 1, "no content policy");
    let mut level = 0;
    for heading in all(html, "h1, h2, h3, h4, h5, h6") {
        let next = usize::from(heading.value().name().as_bytes()[1] - b'0');
        if next > level + 1 || (level == 0 && next != 1) || !words(heading) {
            faults.push(format!(
                "a heading of level {next} after {level}, or an empty one: {}",
                brief(heading)
            ));
        }
        level = next;
    }
    let mut ids = BTreeSet::new();
    for element in all(html, "[id]") {
        let id = element.attr("id").unwrap_or_default();
        if id.is_empty() || id.contains(char::is_whitespace) || !ids.insert(id) {
            faults.push(format!("an id twice, empty or with a blank: {id:?}"));
        }
    }
    for element in all(html, "[aria-labelledby], [aria-describedby], [aria-controls], [for], use[href]") {
        for attribute in ["aria-labelledby", "aria-describedby", "aria-controls", "for"] {
            let wanted = element.attr(attribute).unwrap_or_default().split_whitespace();
            faults.extend(
                wanted.filter(|id| !ids.contains(id)).map(|id| format!("{attribute} names no id: {id}")),
            );
        }
        let drawn = element.attr("href").filter(|_| element.value().name() == "use");
        if drawn.is_some_and(|href| !href.strip_prefix('#').is_some_and(|id| ids.contains(id))) {
            faults.push(format!("nothing to draw: {}", brief(element)));
        }
    }
    faults
}

/// Whether everything has its name and nothing is styled or scripted in the page itself.
fn part_faults(html: &Html) -> Vec<String> {
    let mut faults = Vec::new();
    let mut fault = |what: &str, element: ElementRef| faults.push(format!("{what}: {}", brief(element)));
    for element in all(html, "*") {
        for (name, _) in element.value().attrs() {
            if name == "style" || name.starts_with("on") {
                fault("style or script in an attribute", element);
            }
        }
    }
    all(html, "style, script:not([src]):not([type=\"application/ld+json\"]):not([type=\"application/json\"]), base, iframe, object, embed")
        .into_iter()
        .for_each(|element| fault("not in a page", element));
    for table in all(html, "table") {
        let own = |what| {
            within(table, what).into_iter().filter(|cell| {
                let of = cell
                    .ancestors()
                    .filter_map(ElementRef::wrap)
                    .find(|above| above.value().name() == "table");
                of == Some(table)
            })
        };
        if own("th").count() == 0 || own("th").any(|head| !matches!(head.attr("scope"), Some("col" | "row")))
        {
            fault("a table without heads, or a head without scope", table);
        }
        // A corner head without words is a plain cell.
        let columns = own("thead tr").next().map_or(0, |row| row.child_elements().count());
        for row in own("tbody tr") {
            let cells = row.child_elements();
            let wide =
                |cell: ElementRef| cell.attr("colspan").map_or(1, |wide| wide.parse::<usize>().unwrap_or(0));
            if cells.map(wide).sum::<usize>() != columns {
                fault("a row of another width than the heads", row);
            }
        }
    }
    for image in all(html, "img") {
        if image.attr("alt").is_none() {
            fault("an image without alt", image);
        }
    }
    for drawing in all(html, "svg") {
        let hidden = drawing.attr("aria-hidden") == Some("true");
        if hidden == (drawing.attr("role") == Some("img") && named(html, drawing)) {
            fault("a drawing neither hidden nor named, or both", drawing);
        }
    }
    for control in all(html, "input:not([type=hidden]), select, textarea, button, meter, progress") {
        let inside = control
            .ancestors()
            .filter_map(ElementRef::wrap)
            .any(|above| above.value().name() == "label" && words(above));
        let by_label =
            |id| all(html, "label").into_iter().any(|label| label.attr("for") == Some(id) && words(label));
        let own = control.value().name() == "button" && words(control);
        if !(inside || own || named(html, control) || control.attr("id").is_some_and(by_label)) {
            fault("a control without a label", control);
        }
    }
    for link in all(html, "a[href], summary") {
        if !words(link) && !named(html, link) {
            fault("a link without words", link);
        }
    }
    for region in all(html, "nav") {
        if !named(html, region) {
            fault("a nav without a name", region);
        }
    }
    faults
}

/// Whether the mathematics is MathML Core, each element with the children it must have.
fn math_faults(html: &Html) -> Vec<String> {
    let mut faults = Vec::new();
    for math in all(html, "math") {
        let mut fault = |what: &str| faults.push(format!("{what}: {}", brief(math)));
        if !said(math, "aria-label") || !words(math) {
            fault("mathematics without a name or without content");
        }
        for element in math.descendants().filter_map(ElementRef::wrap) {
            let name = element.value().name();
            let children = element.child_elements().count();
            match MATH.iter().find(|(known, _)| *known == name) {
                None => fault(&format!("<{name}> is not MathML Core")),
                Some((_, wanted)) if *wanted != 0 && children != *wanted => {
                    fault(&format!("<{name}> with {children} children"));
                }
                Some(_) if TOKENS.contains(&name) && (children > 0 || !words(element)) => {
                    fault(&format!("<{name}> is for text alone"));
                }
                Some(_) => {}
            }
            let text = element
                .children()
                .any(|child| matches!(child.value(), Node::Text(text) if !text.trim().is_empty()));
            if text && !TOKENS.contains(&name) {
                fault(&format!("text loose in <{name}>"));
            }
            let above = element.parent().and_then(ElementRef::wrap).map_or("", |above| above.value().name());
            if (name == "mtr") != (above == "mtable") || (name == "mtd") != (above == "mtr") {
                fault(&format!("<{name}> in <{above}>"));
            }
        }
    }
    faults
}

/// Whether each element of the mathematics is closed in the text itself, in order.
fn closing_faults(text: &str) -> Vec<String> {
    let mut faults = Vec::new();
    for math in text.split("<math").skip(1) {
        let Some((math, _)) = math.split_once("</math>") else {
            faults.push("mathematics that does not end".to_string());
            continue;
        };
        let mut open = Vec::new();
        for tag in math.split('<').skip(1).filter_map(|tag| tag.split_once('>')).map(|(tag, _)| tag) {
            match tag.strip_prefix('/') {
                Some(name) if open.pop() == Some(name) => {}
                Some(name) => faults.push(format!("</{name}> closes nothing in <math{math}")),
                None if tag.ends_with('/') => {}
                None => open.push(tag.split_whitespace().next().unwrap_or("")),
            }
        }
        faults.extend(open.iter().map(|name| format!("<{name}> is not closed in <math{math}")));
    }
    faults
}

/// Where a relative link leads, from the page it stands on: the file and the anchor.
pub fn target(page: &str, href: &str) -> (String, String) {
    let (path, anchor) = href.split_once('#').unwrap_or((href, ""));
    let mut parts: Vec<_> = page.split('/').collect();
    if path.is_empty() {
        return (page.to_string(), anchor.to_string());
    }
    parts.pop();
    for part in path.split('/') {
        match part {
            ".." => drop(parts.pop()),
            "." => {}
            part => parts.push(part),
        }
    }
    (parts.join("/"), anchor.to_string())
}

/// Links and resources that are not relative, or lead nowhere.
pub fn link_faults(
    page: &str,
    html: &Html,
    files: &BTreeSet<&str>,
    ids: &BTreeMap<&str, BTreeSet<String>>,
) -> Vec<String> {
    let mut faults = Vec::new();
    // What a page says of its whole address is not asked for by anybody who reads it.
    let asked =
        "[href]:not([rel=canonical]):not([rel=alternate]), [src], [srcset], [poster], [action], [data]";
    for element in all(html, asked) {
        for attribute in ["href", "src", "srcset", "poster", "action", "data"] {
            let Some(href) = element.attr(attribute) else {
                continue;
            };
            let (path, anchor) = target(page, href);
            let scheme = href.split(['/', '#', '?']).next().is_some_and(|first| first.contains(':'));
            if href.is_empty() || scheme || href.starts_with('/') || href.contains('\\') {
                faults.push(format!("not a relative address: {}", brief(element)));
            } else if !files.contains(path.as_str()) {
                faults.push(format!("leads to no file: {}", brief(element)));
            } else if href.contains('#') && !ids.get(path.as_str()).is_some_and(|ids| ids.contains(&anchor)) {
                faults.push(format!("leads to no anchor: {}", brief(element)));
            }
        }
    }
    faults
}

/// What can be told of a page by itself.
pub fn faults(text: &str) -> Vec<String> {
    let html = Html::parse_document(text);
    let mut faults = closing_faults(text);
    for rule in [frame_faults, part_faults, math_faults] {
        faults.extend(rule(&html));
    }
    faults
}

#[test]
fn pages_can_fail() {
    let page = |inside: &str| {
        format!(
            "<!doctype html><html lang=en><head><meta charset=utf-8><meta http-equiv=Content-Security-Policy content=x>\
             <meta name=viewport content=x><meta name=description content=x><title>T</title></head><body><main>\
             <h1>A</h1>{inside}</main></body></html>"
        )
    };
    let good = [
        "<h2 id=a>B</h2><h3>C</h3><h2>D</h2><a href=#a>E</a>",
        "<table><thead><tr><th scope=col>A</th><th scope=col>B</th></tr></thead><tbody><tr><th scope=row>C</th><td>\
         <table><thead><tr><th scope=col>D</th></tr></thead></table></td></tr><tr><td colspan=2>E</td></tr></tbody></table>",
        "<svg aria-hidden=true></svg><svg role=img aria-label=A></svg><img alt='' src=a.png>",
        "<label>A <input></label><input id=b><label for=b>B</label><button>C</button>",
        "<math aria-label=a><mfrac><mrow><mi>a</mi></mrow><mn>2</mn></mfrac></math>",
        "<math aria-label=a><mtable><mtr><mtd><mo>+</mo></mtd></mtr></mtable></math>",
    ];
    for inside in good {
        none(inside, faults(&page(inside)));
    }
    let bad = [
        "<h1>B</h1>",
        "<h3>B</h3>",
        "<h2></h2>",
        "<p id=a></p><p id=a></p>",
        "<p id='a b'></p>",
        "<p aria-labelledby=no>A</p>",
        "<svg aria-hidden=true><use href=#no></use></svg>",
        "<p style='color:red'>A</p>",
        "<p onclick=x>A</p>",
        "<script>x</script>",
        "<style>x</style>",
        "<table><tr><td>A</td></tr></table>",
        "<table><tr><th>A</th></tr></table>",
        "<table><thead><tr><th scope=col>A</th></tr></thead><tbody><tr><td>B</td><td>C</td></tr></tbody></table>",
        "<svg></svg>",
        "<svg role=img></svg>",
        "<svg aria-hidden=true role=img aria-label=A></svg>",
        "<img src=a.png>",
        "<input>",
        "<a href=b.html></a>",
        "<nav>A</nav>",
        "<math><mi>a</mi></math>",
        "<math aria-label=a></math>",
        "<math aria-label=a><mfrac><mi>a</mi></mfrac></math>",
        "<math aria-label=a><msup><mi>a</mi><mn>1</mn><mn>2</mn></msup></math>",
        "<math aria-label=a><mfenced><mi>a</mi></mfenced></math>",
        "<math aria-label=a><mrow>a</mrow></math>",
        "<math aria-label=a><mtr><mtd><mi>a</mi></mtd></mtr></math>",
        "<math aria-label=a><mrow><mi>a</mi></math>",
        "<p>A</b></p>",
    ];
    let passed: Vec<_> = bad.into_iter().filter(|inside| faults(&page(inside)).is_empty()).collect();
    assert!(passed.is_empty(), "no fault was found in {passed:#?}");
    assert!(
        faults(&page("").replace(" lang=en", "")).len() == 1
            && faults(&page("").replace("<title>T", "<title>")).len() == 1
    );
    let files = BTreeSet::from(["a.html", "b/c.html", "style.css"]);
    let ids = BTreeMap::from([("a.html", BTreeSet::from(["x".to_string()])), ("b/c.html", BTreeSet::new())]);
    let links = |href: &str| {
        link_faults("b/c.html", &Html::parse_document(&format!("<a href='{href}'>A</a>")), &files, &ids).len()
    };
    for href in ["../a.html", "../a.html#x", "c.html", "../style.css"] {
        assert_eq!(links(href), 0, "{href}");
    }
    for href in [
        "",
        "a.html",
        "../a.html#y",
        "#x",
        "/a.html",
        "https://example.org/",
        "//example.org/",
        "data:,",
        "mailto:a@b",
    ] {
        assert_eq!(links(href), 1, "{href}");
    }
}
