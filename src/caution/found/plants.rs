//! Rules about plants: what each sets off by itself, and what a recipe does to it.

use super::{at, by, hazards, of, plants, used, words};
use crate::caution::rule::{Found, Seen};
use crate::formulary::{Danger, Plant};
use crate::manuscript::plain;
use crate::measure::{decimal, kitchen, show_usual};
use crate::method::Hazard;
use crate::people::Who;
use crate::recipe::Use;
use crate::working::Id;

pub(in crate::caution) fn never_raw(seen: &Seen) -> Vec<Found> {
    of_plants(seen, "never-raw")
}

pub(in crate::caution) fn raw(seen: &Seen) -> Vec<Found> {
    hazards(seen, |hazard| match hazard {
        Hazard::Raw { plant, at: place } => Some(at(words(seen, plant), *place)),
        _ => None,
    })
}

pub(in crate::caution) fn ceiling_passed(seen: &Seen) -> Vec<Found> {
    let laid = &seen.worked.laid;
    let passed = laid.ceilings.iter().filter(|line| {
        let (taken, most) = (seen.worked.ranges[line.taken.index()].high, seen.worked.at(line.most));
        taken > most * (1.0 + 1e-9)
    });
    let told = passed.map(|line| {
        let name = line.of.clone().unwrap_or_else(|| words(seen, &line.plant));
        let (taken, most) = (laid.working.entry(line.taken), laid.working.entry(line.most));
        let high = seen.worked.ranges[line.taken.index()].high;
        of(format!(
            "{} of {name} a day against {}",
            show_usual(high, taken.unit),
            show_usual(seen.worked.at(line.most), most.unit),
        ))
    });
    // Told at the dose: that is what can be made smaller.
    let dose = seen.recipe.take.as_ref().map(|take| take.amount.span);
    told.map(|found| Found { at: dose, ..found }).collect()
}

pub(in crate::caution) fn ceiling(seen: &Seen) -> Vec<Found> {
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
                Some(line) => {
                    let (most, taken) = (seen.worked.shown(line.most), seen.worked.shown(line.taken));
                    let up_to = seen.worked.between(line.taken);
                    let up_to =
                        up_to.map_or(String::new(), |(_, high)| format!(", {high} at the careful end"));
                    format!("at most {most} of {name} a day; as taken here {taken}{up_to}")
                }
                None => {
                    format!("{name} has a daily ceiling, which this recipe's sums cannot be held against")
                }
            };
            let key =
                ceiling.of.iter().fold(plant.id.clone(), |key, of| format!("{key}-{}", of.replace(' ', "-")));
            found.push(Found { key, ..of(told) });
        }
    }
    found
}

pub(in crate::caution) fn aromatic_boiled(seen: &Seen) -> Vec<Found> {
    hazards(seen, |hazard| match hazard {
        Hazard::AromaticBoiled { plant, at: place } => {
            Some(Found { key: plant.clone(), ..at(words(seen, plant), *place) })
        }
        _ => None,
    })
}

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

pub(in crate::caution) fn no_longer(seen: &Seen) -> Vec<Found> {
    if used(seen) != Some(Use::Swallowed) {
        return Vec::new();
    }
    let limited = plants(seen).filter_map(|plant| Some((plant, plant.no_longer.as_ref()?)));
    limited
        .map(|(plant, limit)| {
            let days = seen.worked.value(Id::Days).filter(|days| days * 1440.0 > limit.value);
            let longer = days.map_or(String::new(), |days| {
                format!("; what is made here would last {} days", decimal(days.floor(), 0))
            });
            by(plant, format!("{}, {} at most{longer}", plant.words, kitchen::minutes(limit.value)))
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
