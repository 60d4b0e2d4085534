//! One recipe as its page shows it: label, gathering, order of work, levels, cautions.

use super::batch_picture::batch_picture;
use super::label::label;
use super::show::{
    Both, between, capital, cite, clock, duration, plainly, sweet_both, told_minutes, volume_both,
};
use super::slate::slate;
use super::timeline::timeline;
use super::view::{
    CautionRow, Cautions, Copybook, GatherRow, Gathering, Kind, Latin, Levels, MoverRow, Note, Order,
    PartLink, Recipe, StepRow, Turned, Variations, Written,
};
use super::{cost, fair_copy, keeping, ledger, variations, wanted};
use crate::aim;
use crate::calendar::Day;
use crate::caution::{self, Caution, Seen};
use crate::formula::equation::escape;
use crate::formulary::Formulary;
use crate::keeping::judge;
use crate::measure::Form;
use crate::measure::kitchen::{self, Close, Toward};
use crate::method::{Done, Ingredient, Say};
use crate::variation::{Worked, WorkedRecipe};
use crate::working::Id;

/// The parts of a recipe's page, in order; `part-NAME` among the theme's words is what each is called.
const PARTS: &[&str] = &[
    "gather",
    "work",
    "numbers",
    "levels",
    "wanted",
    "cost",
    "turned",
    "variations",
    "keeping",
    "cautions",
    "slate",
    "exercises",
    "written",
];

/// The view of a recipe. `id` is its anchor, `written` its block, `root` the way to the site's root.
///
/// `made` is when it is made, where the lesson has a date; `copybook` are its exercises, where it has any.
pub fn recipe(
    worked: &WorkedRecipe,
    book: &Formulary,
    id: &str,
    written: &str,
    root: &str,
    made: Option<Day>,
    copybook: Option<Copybook>,
) -> Recipe {
    let base = &worked.base;
    let seen = Seen { worked: base, recipe: &worked.recipe, book, whole: Some(worked) };
    let cautions = caution::cautions(&seen);
    let judged = judge(base, worked.recipe.ph());
    let levels = batch_picture(base, PartLink::default());
    let bill = cost::table(base, &book.course.prices);
    let named = |part: &str| match part {
        "variations" => !worked.variations.is_empty(),
        "wanted" => !worked.recipe.wanted.is_empty(),
        "cost" => bill.is_some(),
        "turned" => !worked.recipe.aims.is_empty(),
        "levels" => !levels.vessels.is_empty(),
        "exercises" => copybook.is_some(),
        _ => true,
    };
    let parts: Vec<PartLink> = PARTS
        .iter()
        .filter(|part| named(part))
        .enumerate()
        .map(|(n, part)| PartLink { number: n + 1, part: part.to_string(), anchor: format!("{id}-{part}") })
        .collect();
    let part = |name: &str| {
        let anchor = format!("{id}-{name}");
        parts.iter().find(|part| part.anchor == anchor).cloned().unwrap_or(PartLink {
            number: 0,
            part: name.to_string(),
            anchor,
        })
    };
    Recipe {
        id: id.to_string(),
        name: base.name.clone(),
        latin: latin(base, book),
        label: label(worked, &judged, made, &cautions, id),
        gathering: gathering(base, book, root, part("gather")),
        order: order(base, part("work")),
        ledger: ledger::ledger(base, id, root, part("numbers")),
        levels: Levels { part: part("levels"), ..levels },
        variations: variations::variations(worked, Some(book), part("variations")),
        wanted: wanted::wanted(worked, part("wanted")),
        cost: bill.map(|table| Variations { part: part("cost"), ..table }),
        turned: turned(worked, part("turned")),
        keeping: keeping::view(worked, book, &judged, made, root, part("keeping")),
        cautions: Cautions {
            part: part("cautions"),
            rows: caution_rows(&cautions, id, root),
            closing: caution::CLOSING.to_string(),
        },
        slate: slate(worked, book, part("slate")),
        copybook: copybook.map(|copybook| Copybook { part: part("exercises"), ..copybook }),
        written: Written { part: part("written"), lines_html: fair_copy::lines(written) },
        argument: parts,
    }
}

/// What brings each line that is aimed at to its target.
fn turned(worked: &WorkedRecipe, part: PartLink) -> Turned {
    let rows = worked.recipe.aims.iter().filter_map(|aim| {
        let aimed = aim::aimed(&worked.base, aim, &[]).ok()?;
        let (base, to) = (&worked.base, &aimed.worked);
        let name = |line| base.laid.working.entry(line).name.clone();
        let made = base.made().filter(|line| *line != aimed.line);
        let makes = made.map_or(String::new(), |line| format!("; that makes {}", plainly(to, line)));
        Some(MoverRow {
            term: format!("{} {}", capital(&name(aimed.line)), to.shown(aimed.line)),
            text: format!(
                "{} {}, in place of {}{makes}",
                name(aimed.input),
                to.shown(aimed.input),
                base.shown(aimed.input)
            ),
        })
    });
    Turned { part, rows: rows.collect() }
}

fn latin(worked: &Worked, book: &Formulary) -> Vec<Latin> {
    let plants = worked.laid.ingredients.iter().filter_map(|ingredient| {
        let plant = book.plants.get(ingredient.plant.as_ref()?)?;
        let form = ingredient.form.map_or(String::new(), |form| format!("{form} "));
        Some(Latin {
            name: plant.latin.clone(),
            author: plant.author.clone(),
            part: format!("the {form}{}", plant.part),
        })
    });
    plants.collect()
}

fn gathering(worked: &Worked, book: &Formulary, root: &str, part: PartLink) -> Gathering {
    let mut notes = vec![Note {
        kind: Kind::Worked,
        html: "A cup is the US cup, 236.6\u{a0}mL; spoons and cups level.".to_string(),
    }];
    let mut rows = Vec::new();
    for ingredient in &worked.laid.ingredients {
        let (row, note) = gather_row(worked, book, ingredient, root);
        rows.push(row);
        notes.extend(note);
    }
    let to_hand: Vec<&str> = worked.laid.to_hand.iter().map(String::as_str).collect();
    Gathering {
        part,
        caption: "Ounces are marked for weight or fluid.".to_string(),
        rows,
        to_hand: format!("To have to hand: {}.", crate::method::list_of(&to_hand)),
        notes,
    }
}

fn gather_row(
    worked: &Worked,
    book: &Formulary,
    ingredient: &Ingredient,
    root: &str,
) -> (GatherRow, Option<Note>) {
    let mut row = GatherRow {
        href: ingredient.href.as_ref().map_or(String::new(), |href| format!("{root}{href}")),
        what: capital(&ingredient.words),
        form: ingredient.form.map_or(String::new(), |form| form.to_string()),
        us: String::new(),
        us_note: String::new(),
        metric: String::new(),
        metric_note: String::new(),
    };
    let toward = if ingredient.keeps { Toward::Up } else { Toward::Nearest };
    let close = if ingredient.keeps { Close::Two } else { Close::Five };
    if let Some(volume) = ingredient.volume {
        let ml = worked.at(volume);
        row.us = kitchen::volume_us(ml, close, toward).map_or_else(|| kitchen::fl_oz(ml), |found| found.text);
        row.metric = plainly(worked, volume);
    }
    let Some(weight) = ingredient.weight else {
        return (row, None);
    };
    let g = worked.at(weight);
    let ounces = kitchen::mass_us(g, close, toward).map_or_else(|| kitchen::oz(g), |found| found.text);
    if ingredient.volume.is_some() {
        row.us_note = format!("{ounces} weight");
        row.metric_note = format!("{}; weigh it", plainly(worked, weight));
        return (row, None);
    }
    row.us = ounces;
    row.metric = plainly(worked, weight);
    row.us_note = "weight".to_string();
    row.metric_note = "weigh it".to_string();
    let note = ingredient.plant.as_ref().and_then(|id| book.plants.get(id)).and_then(|plant| {
        let bulk = plant.form(ingredient.form.unwrap_or(Form::Dried))?.bulk()?;
        let cups = kitchen::volume_us(g / bulk.value, Close::Five, Toward::Nearest)?;
        row.us_note = format!("weight; about {}", cups.text);
        Some(Note {
            kind: Kind::Advised,
            html: format!(
                "{} by the cup: {}. Cups of loose plants differ; weigh them.",
                escape(&row.what),
                cite(&bulk.source, root)
            ),
        })
    });
    (row, note)
}

fn order(worked: &Worked, part: PartLink) -> Order {
    let mut start = 0.0;
    let mut steps = Vec::new();
    for (n, done) in worked.laid.steps.iter().enumerate() {
        let minutes: f64 = done.minutes.iter().map(|line| worked.at(*line)).sum();
        let wide = done.minutes.iter().position(|line| between(worked, *line).is_some());
        let range = wide.and_then(|n| between(worked, done.minutes[n]));
        // Of several times the first is the way to the heat: its range is not the step's.
        let of =
            if wide == Some(0) && done.minutes.len() > 1 { "to bring it up, between" } else { "between" };
        let condition = match range {
            Some(range) if done.condition.is_empty() => format!("{of} {range}"),
            Some(range) => format!("{}; {of} {range}", done.condition),
            None => done.condition.clone(),
        };
        steps.push(StepRow {
            number: n + 1,
            html: sentence(worked, done),
            at: clock(start),
            takes: if minutes > 0.0 { duration(minutes) } else { String::new() },
            // A timer must not ring before the plants have had their time.
            minutes: told_minutes(minutes).max(minutes.ceil()),
            condition,
        });
        start += minutes;
    }
    let mut notes = vec![Note {
        kind: Kind::Advised,
        html: "Times are rounded to 5 minutes. Straining, stirring in and bottling are allowances, cooling is an \
               estimate: common practice, no source. Time your own."
            .to_string(),
    }];
    if let Some(line) = worked.laid.working.line(Id::Boiling) {
        let boils = kitchen::temperature_text(worked.at(line));
        notes.push(Note { kind: Kind::Worked, html: format!("Water boils at {boils} in this kitchen.") });
    }
    Order { part, steps, timeline: timeline(worked), notes }
}

fn sentence(worked: &Worked, done: &Done) -> String {
    done.say.iter().map(|say| said(worked, say)).collect()
}

fn said(worked: &Worked, say: &Say) -> String {
    match say {
        Say::Words(words) => escape(words),
        Say::Strong(words) => format!("<strong>{}</strong>", escape(words)),
        Say::Temperature(celsius) => {
            let [metric, us] = kitchen::temperature_both(*celsius);
            Both::metric_first(metric, us).html()
        }
        Say::Volume(line) => volume_both(worked, *line).html(),
        Say::About(line) => {
            let usual =
                between(worked, *line).map_or(String::new(), |range| format!(", usually {}", escape(&range)));
            format!("about {}{usual}", volume_both(worked, *line).html())
        }
        Say::Weight(line) | Say::Area(line) => escape(&plainly(worked, *line)),
        Say::Measured(volume, weight) => sweet_both(worked, *volume, *weight).html(),
        Say::Time(line) => escape(&duration(worked.at(*line))),
        Say::Size(line) => {
            Both::metric_first(plainly(worked, *line), kitchen::fl_oz(worked.at(*line))).html()
        }
    }
}

/// Cautions with their sources; anchors start with `id`.
pub(super) fn caution_rows(cautions: &[Caution], id: &str, root: &str) -> Vec<CautionRow> {
    let rows = cautions.iter().map(|caution| CautionRow {
        id: format!("{id}-caution-{}", caution.id),
        level: caution.weight.word().to_string(),
        lead: with_stop(&caution.lead),
        text: caution.text.clone(),
        reason: caution.reason.clone().map_or(String::new(), |reason| with_stop(&reason)),
        source_html: cite(&caution.source, root),
    });
    rows.collect()
}

/// First words of a caution, closed with a full stop.
pub fn with_stop(text: &str) -> String {
    if text.ends_with(['.', '?', '!', '…']) { text.to_string() } else { format!("{text}.") }
}
