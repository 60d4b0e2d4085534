//! Pages with nothing in their lists: a book just begun still has sound pages.

use super::none;
use super::rules::faults;
use stillroom::page::theme::Theme;
use stillroom::page::view::{
    BookletPage, Cautions, CautionsPage, ChecksPage, CorrectionsPage, DaysPage, FiguresPage, Frame,
    Gathering, GlossaryPage, HomePage, Keeping, Ledger, LessonPage, Levels, Link, ListGroup, ListPage,
    LookUpPage, MethodPage, Monograph, MovedPage, NotFoundPage, Order, PartLink, PeoplePage, Piece, Recipe,
    RecipesPage, RuleGroup, SheetsPage, SidesPage, Slate, Variations, Written,
};

fn frame() -> Frame {
    Frame {
        lang: "en".into(),
        book: "B".into(),
        title: "T".into(),
        description: "D".into(),
        ..Frame::default()
    }
}

fn recipe(id: &str) -> Recipe {
    let part = |name: &str| PartLink { number: 1, part: name.into(), anchor: format!("{id}-{name}") };
    Recipe {
        id: id.into(),
        name: "R".into(),
        latin: vec![],
        label: vec![],
        argument: vec![],
        gathering: Gathering {
            part: part("gather"),
            caption: "C".into(),
            rows: vec![],
            to_hand: String::new(),
            notes: vec![],
        },
        order: Order { part: part("work"), steps: vec![], timeline: None, notes: vec![] },
        ledger: Ledger {
            part: part("numbers"),
            short_sum: String::new(),
            matters: String::new(),
            rows: vec![],
            whole: None,
        },
        levels: Levels { part: part("levels"), vessels: vec![], fills: vec![], scale: String::new() },
        variations: None,
        wanted: None,
        cost: None,
        turned: stillroom::page::view::Turned::default(),
        keeping: Keeping {
            part: part("keeping"),
            class: "W".into(),
            verdict: "V".into(),
            words: "K".into(),
            because: "B".into(),
            doubt: String::new(),
            use_by: "U".into(),
            remarks: vec![],
            rules: vec![],
            movers: vec![],
            notes: vec![],
        },
        cautions: Cautions { part: part("cautions"), rows: vec![], closing: String::new() },
        copybook: None,
        slate: Slate { part: part("slate"), data_html: String::new(), blanks: vec![] },
        written: Written { part: part("written"), lines_html: vec![] },
    }
}

fn lesson(recipes: Vec<Recipe>) -> LessonPage {
    let single = recipes.len() == 1;
    let pieces =
        recipes.into_iter().map(|recipe| Piece { prose_html: String::new(), recipe: Some(recipe) }).collect();
    LessonPage {
        frame: frame(),
        linked_html: String::new(),
        on_paper: vec![],
        evening: None,
        pieces,
        single,
        one_day: None,
        corrections: vec![],
        words: vec![],
        side_by_side: None,
    }
}

#[track_caller]
fn sound(template: &str, view: &impl serde::Serialize) {
    let theme = Theme::built_in().unwrap_or_else(|findings| panic!("{findings:?}"));
    let text = theme.render(template, view).unwrap_or_else(|finding| panic!("{template}: {finding:?}"));
    none(template, faults(&text));
}

#[test]
fn bare_pages_are_sound() {
    let empty = String::new;
    sound(
        "home.html",
        &HomePage {
            frame: frame(),
            for_whom: empty(),
            title: "T".into(),
            lead: empty(),
            when: empty(),
            prose_html: empty(),
            start: None,
            changes: vec![],
            all_changes: Link::default(),
            bill: vec![],
            back_matter: vec![],
        },
    );
    sound(
        "method.html",
        &MethodPage {
            frame: frame(),
            prose_html: empty(),
            formulas: vec![],
            figures: vec![],
            assumptions: vec![],
            works: vec![],
        },
    );
    sound("checks.html", &ChecksPage { frame: frame(), prose_html: empty(), groups: vec![], wrong: vec![] });
}

#[test]
fn bare_pages_of_facts_are_sound() {
    let empty = String::new;
    let bare = Monograph {
        frame: frame(),
        list: Link { text: "L".into(), href: "l.html".into(), current: false },
        belongs: "F".into(),
        also: empty(),
        latin: vec![],
        before: vec![],
        prose_html: empty(),
        facts: vec![],
        cautions: vec![],
        closing: "C".into(),
        users: vec![],
    };
    sound("monograph.html", &bare);
    sound("list.html", &ListPage { frame: frame(), lead: empty(), groups: vec![] });
    let group = ListGroup { name: empty(), id: "all".into(), links: vec![] };
    sound("list.html", &ListPage { frame: frame(), lead: empty(), groups: vec![group] });
    let rules = RuleGroup { id: "stops".into(), name: "S".into(), what: "W".into(), rules: vec![] };
    let cautions = CautionsPage {
        frame: frame(),
        lead: "L".into(),
        groups: vec![rules],
        own: vec![],
        closing: "C".into(),
    };
    sound("cautions.html", &cautions);
    sound("recipes.html", &RecipesPage { frame: frame(), ways: vec![] });
    sound("glossary.html", &GlossaryPage { frame: frame(), rows: vec![] });
    sound("corrections.html", &CorrectionsPage { frame: frame(), rows: vec![] });
    sound("look-up.html", &LookUpPage { frame: frame(), letters: vec![] });
    let figures = FiguresPage {
        frame: frame(),
        caption: "C".into(),
        heads: vec!["H".into()],
        rows: vec![],
        worded: false,
        sourced: false,
        notes_html: vec![],
    };
    sound("figures.html", &figures);
    for template in ["handouts.html", "cards.html", "labels.html"] {
        let sheets = SheetsPage {
            frame: frame(),
            lesson: Link { text: "L".into(), href: "l.html".into(), current: false },
            evening: None,
            sheets: vec![],
            foot: vec!["F".into()],
        };
        sound(template, &sheets);
    }
    let booklet = BookletPage {
        frame: frame(),
        for_whom: empty(),
        title: "T".into(),
        lead: empty(),
        when: empty(),
        imprint: vec![],
        leaves: vec![],
        notes: vec![],
    };
    sound("booklet.html", &booklet);
    sound("not-found.html", &NotFoundPage { frame: frame(), links: vec![] });
    let to = Link { text: "L".into(), href: "l.html".into(), current: false };
    sound("moved.html", &MovedPage { frame: frame(), to });
    let people = PeoplePage { frame: frame(), lead: "L".into(), groups: vec![], closing: "C".into() };
    sound("people.html", &people);
    let days = DaysPage { frame: frame(), lead: "L".into(), days: vec![], closing: "C".into() };
    sound("one-day.html", &days);
    let sides = SidesPage { frame: frame(), lead: "L".into(), caption: "C".into(), parts: vec![] };
    sound("side-by-side.html", &sides);
}

#[test]
fn bare_lessons_are_sound() {
    sound("lesson.html", &lesson(vec![]));
    sound("lesson.html", &lesson(vec![recipe("recipe")]));
    sound("lesson.html", &lesson(vec![recipe("one"), recipe("two")]));
    let part = PartLink { number: 5, part: "variations".into(), anchor: "recipe-variations".into() };
    let bare = Variations { part, caption: "C".into(), heads: vec![], rows: vec![] };
    sound("lesson.html", &lesson(vec![Recipe { variations: Some(bare), ..recipe("recipe") }]));
}

#[test]
fn a_template_of_ones_own_stands_in_place_of_ours() {
    let own = "{% extends \"page.html\" %}{% block text %}<h1>{{ frame.title }}</h1><ul>{% for group in groups %}<li>{{ group.name }}</li>{% endfor %}</ul>{% endblock text %}";
    let theme = Theme::new("stillroom", vec![("templates/list.html".into(), own.into())], "en")
        .unwrap_or_else(|findings| panic!("{findings:?}"));
    let text = theme
        .render("list.html", &ListPage { frame: frame(), lead: String::new(), groups: vec![] })
        .unwrap_or_else(|finding| panic!("{finding:?}"));
    none("list.html", faults(&text));
    assert!(text.contains("<h1>T</h1><ul></ul>"), "{text}");
}
