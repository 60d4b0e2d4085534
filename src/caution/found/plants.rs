//! Rules about plants: what each sets off by itself, and what a recipe does to it.

use super::{at, by, hazards, of, plants, used, words};
use crate::caution::rule::{Found, Seen};
use crate::caution::watch::{Piece, Watch, When};
use crate::formulary::{Danger, Plant};
use crate::manuscript::plain;
use crate::measure::kitchen;
use crate::method::Hazard;
use crate::people::Who;
use crate::recipe::Use;
use crate::working::Id;

pub(in crate::caution) fn never_raw(seen: &Seen) -> Vec<Found> {
    of_plants(seen, "never-raw")
}

pub(in crate::caution) fn raw(seen: &Seen) -> Vec<Watch> {
    hazards(seen, |hazard| match hazard {
        Hazard::MustCook { plant, boiled, needs, at } => Some(Watch {
            key: plant.clone(),
            when: When::Under(boiled.clone(), *needs),
            at: Some(*at),
            ..Watch::always(vec![Piece::Words(words(seen, plant))])
        }),
        _ => None,
    })
}

pub(in crate::caution) fn ceiling_passed(seen: &Seen) -> Vec<Watch> {
    // Told at the dose: that is what can be made smaller.
    let dose = seen.recipe.take.as_ref().map(|take| take.amount.span);
    let ceilings = seen.worked.laid.ceilings.iter().map(|line| {
        let name = line.of.clone().unwrap_or_else(|| words(seen, &line.plant));
        let of = Piece::Words(format!(" of {name} a day against "));
        Watch {
            key: of_ceiling(&line.plant, line.of.as_deref()),
            when: When::Passes(line.taken, line.most),
            at: dose,
            ..Watch::always(vec![Piece::High(line.taken), of, Piece::Plain(line.most)])
        }
    });
    ceilings.collect()
}

/// Which ceiling: that of a plant, or of something in it.
fn of_ceiling(plant: &str, of: Option<&str>) -> String {
    of.map_or(plant.to_string(), |of| format!("{plant}-{}", of.replace(' ', "-")))
}

pub(in crate::caution) fn ceiling(seen: &Seen) -> Vec<Watch> {
    if used(seen) != Some(Use::Swallowed) {
        return Vec::new();
    }
    let mut found = Vec::new();
    for plant in plants(seen) {
        for ceiling in &plant.ceilings {
            let line =
                seen.worked.laid.ceilings.iter().find(|line| line.plant == plant.id && line.of == ceiling.of);
            let name = ceiling.of.clone().unwrap_or_else(|| plant.words.clone());
            let told = match line {
                Some(line) => vec![
                    Piece::Words("at most ".to_string()),
                    Piece::Shown(line.most),
                    Piece::Words(format!(" of {name} a day; as taken here ")),
                    Piece::Shown(line.taken),
                    Piece::CarefulEnd(line.taken),
                ],
                None => {
                    let unknown = "has a daily ceiling, which this recipe's sums cannot be held against";
                    vec![Piece::Words(format!("{name} {unknown}"))]
                }
            };
            let key = of_ceiling(&plant.id, ceiling.of.as_deref());
            found.push(Watch { key, ..Watch::always(told) });
        }
    }
    found
}

pub(in crate::caution) fn aromatic_boiled(seen: &Seen) -> Vec<Watch> {
    hazards(seen, |hazard| match hazard {
        Hazard::AromaticBoiled { plant, minutes, at } => Some(Watch {
            key: plant.clone(),
            when: minutes.map_or(When::Always, |minutes| When::Over(minutes, AROMATIC_MINUTES)),
            says: vec![Piece::Words(words(seen, plant))],
            at: Some(*at),
        }),
        _ => None,
    })
}

/// An aromatic plant may stand at the boil so many minutes before what it gives is gone: the rule
/// of the old dispensatories, put into minutes by common practice.
const AROMATIC_MINUTES: f64 = 5.0;

pub(in crate::caution) fn too_young(seen: &Seen) -> Vec<Found> {
    let Some(from) = &seen.recipe.from_age else { return Vec::new() };
    let ages = plants(seen).flat_map(|plant| {
        plant.not_for().filter_map(move |who| match who {
            Who::Under(months) => Some((months, plant.words.clone())),
            Who::Group(_) => None,
        })
    });
    let spirit = seen.worked.value(Id::Abv).map(|_| (ADULT, "alcohol".to_string()));
    let pieces = seen.worked.value(Id::Pieces).map(|_| (CHOKES, "a piece to suck".to_string()));
    let young = ages.chain(spirit).chain(pieces).filter(|(months, _)| from.value < *months);
    young
        .map(|(months, what)| at(format!("{what}, not {}", Who::Under(months).phrase()), from.span))
        .collect()
}

/// Months to eighteen years, and to four.
const ADULT: u16 = 216;
const CHOKES: u16 = 48;

pub(in crate::caution) fn unfit(seen: &Seen) -> Vec<Found> {
    let Some(kind) = seen.worked.laid.preparation else { return Vec::new() };
    let unfit = plants(seen).flat_map(|plant| plant.unfit.iter().map(move |unfit| (plant, unfit)));
    let place = |plant: &Plant| {
        seen.recipe.plants.iter().find(|used| used.plant.value == plant.id).map(|used| used.plant.span)
    };
    // What is added to a decoction goes in off the heat: it is not what was boiled.
    let meant = |plant: &Plant| kind.word != "decoction" || place(plant).is_some();
    unfit
        .filter(|(plant, unfit)| unfit.kind.word == kind.word && meant(plant))
        .map(|(plant, unfit)| Found {
            at: place(plant),
            ..by(plant, format!("{}: {}", plant.words, unfit.because))
        })
        .collect()
}

pub(in crate::caution) fn sour(seen: &Seen) -> Vec<Found> {
    of_plants(seen, "sour-metal")
}

pub(in crate::caution) fn hairs(seen: &Seen) -> Vec<Found> {
    of_plants(seen, "hairs")
}

/// Families whose members are not borne by who does not bear one of them, and their rules.
const FAMILIES: &[(&str, &str)] = &[
    ("Asteraceae", "daisy-family"),
    ("Lamiaceae", "mint-family"),
    ("Apiaceae", "carrot-family"),
    ("Fabaceae", "pea-family"),
    ("Amaryllidaceae", "onion-family"),
];

/// The cases that the plants of a recipe make of a rule by themselves.
fn of_plants(seen: &Seen, rule: &str) -> Vec<Found> {
    let all = plants(seen).flat_map(by_plant);
    all.filter(|(of, _)| *of == rule).map(|(_, found)| found).collect()
}

/// The rules that a plant sets off by itself, whatever is made of it.
pub(in crate::caution) fn by_plant(plant: &Plant) -> Vec<(&'static str, Found)> {
    let family = FAMILIES.iter().find(|(family, _)| *family == plant.family).map(|(_, rule)| *rule);
    let cooked = plant.cook.as_ref().map(|cook| {
        let told = format!("{}, {} at the boil", plant.words, kitchen::minutes(cook.value));
        ("never-raw", by(plant, told))
    });
    let named = |rule| (rule, by(plant, &plant.words));
    [
        cooked,
        plant.hairs.as_ref().map(|_| named("hairs")),
        plant.sour.as_ref().map(|_| named("sour-metal")),
        family.map(named),
    ]
    .into_iter()
    .flatten()
    .collect()
}

pub(in crate::caution) fn daisies(seen: &Seen) -> Vec<Found> {
    of_plants(seen, "daisy-family")
}

pub(in crate::caution) fn mints(seen: &Seen) -> Vec<Found> {
    of_plants(seen, "mint-family")
}

pub(in crate::caution) fn carrots(seen: &Seen) -> Vec<Found> {
    of_plants(seen, "carrot-family")
}

pub(in crate::caution) fn peas(seen: &Seen) -> Vec<Found> {
    of_plants(seen, "pea-family")
}

pub(in crate::caution) fn onions(seen: &Seen) -> Vec<Found> {
    of_plants(seen, "onion-family")
}

pub(in crate::caution) fn no_longer(seen: &Seen) -> Vec<Watch> {
    if used(seen) != Some(Use::Swallowed) {
        return Vec::new();
    }
    let limited = plants(seen).filter_map(|plant| Some((plant, plant.no_longer.as_ref()?)));
    limited
        .map(|(plant, limit)| {
            let told = format!("{}, {} at most", plant.words, kitchen::minutes(limit.value));
            let days = seen.worked.laid.working.line(Id::Days);
            let longer = days.map(|days| Piece::Lasts(days, limit.value));
            let says = std::iter::once(Piece::Words(told)).chain(longer).collect();
            Watch { key: plant.id.clone(), ..Watch::always(says) }
        })
        .collect()
}

pub(in crate::caution) fn look_alikes(seen: &Seen) -> Vec<Found> {
    let mistaken = plants(seen).flat_map(|plant| plant.look_alikes.iter().map(move |other| (plant, other)));
    let bad = mistaken.filter(|(_, other)| other.danger != Danger::Harmless);
    bad.map(|(plant, other)| Found {
        key: format!("{}-{}", plant.id, plain(&other.what)),
        ..of(format!(
            "{}: {} ({}) is taken for it; {}",
            plant.words,
            other.what,
            other.danger.word(),
            other.tell
        ))
    })
    .collect()
}
