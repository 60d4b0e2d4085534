//! Finished pages gone through as a stream: what is on one, and the same page bound into the booklet.
//!
//! The only place that knows the crate for that. What is shown in the booklet is what stands on the site: the
//! markup of its pages, with anchors of its own and headings one level lower.

use std::borrow::Cow;
use std::cell::{Cell, RefCell};
use std::collections::BTreeSet;
use std::rc::Rc;

use lol_html::{
    ElementContentHandlers, RewriteStrSettings, Selector, doc_text, element, end_tag, rewrite_str,
};

use super::show::unescaped;
use crate::manuscript;

/// What is known of a page once it is made.
#[derive(Clone, Debug, Default)]
pub struct Leaf {
    /// Its title.
    pub title: String,
    /// The anchors on it.
    pub ids: BTreeSet<String>,
    /// The words of its text, plainly spelt, each once.
    pub words: BTreeSet<String>,
    /// Whether it only leads on to another page.
    pub leads_on: bool,
    /// Pictures it shows, from the site's root.
    pictures: BTreeSet<String>,
    /// Its text as markup; empty where it is not to be bound.
    main: String,
}

/// What is no running text: sums, drawings, a recipe as written, the press's own buttons.
const NO_WORDS: &str = "math, svg, pre, style, script, header.running-head, footer, .choice, details";
/// Words shorter than this are not looked up by.
const SHORTEST: usize = 3;

impl Leaf {
    /// Of a page's markup; `bound` where it is to be bound into the booklet.
    pub fn of(html: &str, bound: bool) -> Leaf {
        let main = if bound { main_of(html).to_string() } else { String::new() };
        let leaf = RefCell::new(Leaf { main, ..Leaf::default() });
        let (outside, text) = (Rc::new(Cell::new(0_usize)), RefCell::new(String::new()));
        let in_title = Rc::new(Cell::new(0_usize));
        let settings = RewriteStrSettings::new()
            .append_element_content_handler(element!("[id]", |el| {
                leaf.borrow_mut().ids.extend(el.get_attribute("id"));
                Ok(())
            }))
            .append_element_content_handler(element!("meta[http-equiv=refresh]", |_| {
                leaf.borrow_mut().leads_on = true;
                Ok(())
            }))
            .append_element_content_handler(element!("img[src]", |el| {
                let src = el.get_attribute("src");
                leaf.borrow_mut().pictures.extend(src.map(|src| src.trim_start_matches("../").to_string()));
                Ok(())
            }))
            .append_element_content_handler(inside("head > title", &in_title))
            .append_element_content_handler(inside(NO_WORDS, &outside))
            .append_document_content_handler(doc_text!(|chunk| {
                if in_title.get() > 0 {
                    leaf.borrow_mut().title.push_str(chunk.as_str());
                } else if outside.get() == 0 {
                    let mut text = text.borrow_mut();
                    text.push_str(chunk.as_str());
                    text.push(' ');
                }
                Ok(())
            }));
        // Markup that cannot be gone through has no anchors; links to it are then told.
        let _ = rewrite_str(html, settings);
        let mut leaf = leaf.into_inner();
        leaf.title = unescaped(&leaf.title);
        leaf.words = words(&unescaped(&text.into_inner()));
        leaf
    }

    /// Its title without the book's, which a theme may put behind it.
    pub fn own_title(&self, book: &str) -> &str {
        self.title.strip_suffix(book).map_or(self.title.as_str(), |own| own.trim_end_matches([' ', '·']))
    }

    /// Whether it shows a picture, by its path from the site's root.
    pub fn shows(&self, picture: &str) -> bool {
        self.pictures.contains(picture)
    }

    /// The page as a part of the booklet: every anchor begins with `place`, headings stand one level lower, and
    /// what only a screen needs is left out. `lead` says where a link goes in the booklet.
    pub fn bound(&self, place: &str, lead: &dyn Fn(&str) -> String) -> String {
        let own = |name: &str| format!("{place}--{name}");
        let settings = RewriteStrSettings::new()
            .append_element_content_handler(element!(
                "nav, details:not(.folded), tr.fold, .choice, script, .screen-only",
                |el| {
                    el.remove();
                    Ok(())
                }
            ))
            .append_element_content_handler(element!("[id]", |el| {
                if let Some(id) = el.get_attribute("id") {
                    el.set_attribute("id", &own(&id))?;
                }
                Ok(())
            }))
            .append_element_content_handler(element!("[aria-labelledby]", |el| {
                if let Some(id) = el.get_attribute("aria-labelledby") {
                    el.set_attribute("aria-labelledby", &own(&id))?;
                }
                Ok(())
            }))
            .append_element_content_handler(element!("a[href]", |el| {
                let href = el.get_attribute("href").unwrap_or_default();
                el.set_attribute("href", &lead(&href))?;
                Ok(())
            }))
            .append_element_content_handler(element!("img[src]", |el| {
                // The booklet stands at the site's root.
                if let Some(src) = el.get_attribute("src") {
                    el.set_attribute("src", src.trim_start_matches("../"))?;
                }
                Ok(())
            }))
            // Of several lessons' footnotes none is the book's own section of notes.
            .append_element_content_handler(element!("[role=doc-endnotes]", |el| {
                el.remove_attribute("role");
                el.remove_attribute("aria-label");
                Ok(())
            }))
            // A part that a theme folds away to be read on a screen is no less a part: it is laid open.
            .append_element_content_handler(element!("details.folded, details.folded > summary", |el| {
                el.set_tag_name("div")?;
                Ok(())
            }))
            .append_element_content_handler(lower("h1", "h2"))
            .append_element_content_handler(lower("h2", "h3"))
            .append_element_content_handler(lower("h3", "h4"))
            .append_element_content_handler(lower("h4", "h5"))
            .append_element_content_handler(lower("h5", "h6"));
        rewrite_str(&self.main, settings).unwrap_or_default()
    }
}

/// What a handler of the crate's is.
type Handler<'h, 's> = (Cow<'s, Selector>, ElementContentHandlers<'h>);

/// Counts how deep in elements of a kind the text stands.
fn inside<'h, 's>(what: &'static str, depth: &Rc<Cell<usize>>) -> Handler<'h, 's> {
    let depth = Rc::clone(depth);
    element!(what, move |el| {
        depth.set(depth.get() + 1);
        let over = Rc::clone(&depth);
        el.on_end_tag(end_tag!(move |_| {
            over.set(over.get() - 1);
            Ok(())
        }))?;
        Ok(())
    })
}

/// A heading of one level becomes one of the next; the class keeps its look.
fn lower<'h, 's>(from: &'static str, to: &'static str) -> Handler<'h, 's> {
    element!(from, move |el| {
        // Each element is met once, by the name it came with.
        let class = el.get_attribute("class").map_or(String::new(), |class| format!("{class} "));
        el.set_attribute("class", &format!("{class}was-{from}"))?;
        el.set_tag_name(to)?;
        Ok(())
    })
}

/// The anchors of several pieces of markup, with some more.
pub fn ids_of<'a>(pieces: impl Iterator<Item = &'a str>, more: Vec<String>) -> BTreeSet<String> {
    let ids = RefCell::new(more.into_iter().collect::<BTreeSet<String>>());
    for html in pieces {
        let note = RewriteStrSettings::new().append_element_content_handler(element!("[id]", |el| {
            ids.borrow_mut().extend(el.get_attribute("id"));
            Ok(())
        }));
        let _ = rewrite_str(html, note);
    }
    ids.into_inner()
}

/// The words of every link stay; a link to a place that `ids` does not hold goes.
pub fn without_loose_ends(html: &str, ids: &BTreeSet<String>) -> String {
    let cut = RewriteStrSettings::new().append_element_content_handler(element!("a[href^='#']", |el| {
        let href = el.get_attribute("href").unwrap_or_default();
        if !ids.contains(href.trim_start_matches('#')) {
            el.remove_and_keep_content();
        }
        Ok(())
    }));
    rewrite_str(html, cut).unwrap_or_default()
}

/// What stands inside `main`.
fn main_of(html: &str) -> &str {
    let opened = html.split_once("<main").and_then(|(_, rest)| rest.split_once('>'));
    opened.and_then(|(_, rest)| rest.split_once("</main>")).map_or("", |(inside, _)| inside)
}

/// The words of a text as they are looked up by: small plain letters, no figures. Most words come many times.
fn words(text: &str) -> BTreeSet<String> {
    let letters = |c: char| c.is_alphabetic() || c == '\u{2019}';
    let each: BTreeSet<&str> =
        text.split(|c: char| !letters(c)).filter(|word| word.len() >= SHORTEST).collect();
    each.into_iter().map(manuscript::plain).filter(|word| word.len() >= SHORTEST).collect()
}
