//! Rules about the batch: what is in it, what is done to it, how it is kept and used.

use super::{at, hazards, of, once, plants, used};
use crate::caution::rule::{Found, Seen};
use crate::caution::watch::{Piece, Watch, When};
use crate::caution::{Barred, changes};
use crate::formula::Line;
use crate::materia::Kind;
use crate::measure::Form;
use crate::method::Hazard;
use crate::people::Who;
use crate::recipe::{Keep, Menstruum, Use};
use crate::span::Span;
use crate::working::Id;

/// Fresh plants stand in oil so long at the most, min: four days, the keeping time of the same oil.
const FRESH_IN_OIL: f64 = 4.0 * 1440.0;
/// Garlic, onion and their kin carry what grows in oil from the soil, fresh or dried.
const ALLIUM: &str = "Allium";
/// Less sugar than this in a dose is not told, g.
const SUGAR_TOLD: f64 = 0.5;
/// Honey is stirred in below this, °C, where it is to stay as it is: common practice, no source.
const HONEY_COOL: f64 = 40.0;
/// A bath warmer than this scalds thin or numb skin, °C: common practice, no source.
const BATH_HOT: f64 = 40.0;

fn has_hazard(seen: &Seen, hazard: &Hazard) -> Vec<Found> {
    once(seen.worked.laid.hazards.contains(hazard))
}

/// Kept out of the cold by the recipe's own word.
fn kept_warm(seen: &Seen) -> Option<Span> {
    let keep = seen.recipe.keep.as_ref()?;
    matches!(keep.value, Keep::Shelf | Keep::CoolDark).then_some(keep.span)
}

pub(in crate::caution) fn honey(seen: &Seen) -> Vec<Found> {
    once(seen.worked.laid.honey)
}

pub(in crate::caution) fn honey_for_infant(seen: &Seen) -> Vec<Found> {
    let young = seen.recipe.from_age.as_ref().filter(|age| age.value < 12);
    let young = young.filter(|_| seen.worked.laid.honey);
    young.map(|age| at(Who::Under(12).phrase(), age.span)).into_iter().collect()
}

/// Whether anything stands in oil that brings water or soil into it.
fn breeds_in_oil(seen: &Seen) -> bool {
    let wet = seen.worked.value(Id::WaterInOil).is_some_and(|water| water > 0.0);
    wet || (seen.worked.laid.batch.holds_oil() && plants(seen).any(|plant| plant.genus() == ALLIUM))
}

pub(in crate::caution) fn fresh_in_oil(seen: &Seen) -> Vec<Found> {
    once(breeds_in_oil(seen))
}

pub(in crate::caution) fn fresh_in_oil_kept(seen: &Seen) -> Vec<Watch> {
    if !breeds_in_oil(seen) {
        return Vec::new();
    }
    let times = seen.worked.laid.steps.iter().flat_map(|step| &step.minutes);
    match kept_warm(seen) {
        Some(keep) => vec![Watch { at: Some(keep), ..Watch::always(Vec::new()) }],
        None => times
            .map(|time| Watch { when: When::Over(*time, FRESH_IN_OIL), ..Watch::always(Vec::new()) })
            .collect(),
    }
}

pub(in crate::caution) fn fresh_in_honey_kept(seen: &Seen) -> Vec<Found> {
    let honey = seen.recipe.menstruum() == Some(Menstruum::Honey);
    let fresh = seen.worked.laid.ingredients.iter().any(|item| item.form == Some(Form::Fresh));
    let keep = kept_warm(seen).filter(|_| honey && fresh);
    keep.map(|keep| at("", keep)).into_iter().collect()
}

pub(in crate::caution) fn hot_honey(seen: &Seen) -> Vec<Watch> {
    hazards(seen, |hazard| match hazard {
        Hazard::HotHoney { cooled, at } => {
            let when = cooled.map_or(When::Always, |cooled| When::Over(cooled, HONEY_COOL));
            Some(Watch { when, at: Some(*at), ..Watch::always(Vec::new()) })
        }
        _ => None,
    })
}

pub(in crate::caution) fn hot_bath(seen: &Seen) -> Vec<Watch> {
    hazards(seen, |hazard| match hazard {
        Hazard::WarmBath { temperature, at } => {
            let when = When::More(*temperature, BATH_HOT);
            Some(Watch { when, at: Some(*at), ..Watch::always(Vec::new()) })
        }
        _ => None,
    })
}

pub(in crate::caution) fn changes_who(seen: &Seen) -> Vec<Found> {
    let Some(whole) = seen.whole.filter(|whole| std::ptr::eq(&whole.base, seen.worked)) else {
        return Vec::new();
    };
    let list = |barred: &[Barred]| {
        let told = barred.iter().map(|barred| format!("{} ({})", barred.who.phrase(), barred.of.join(", ")));
        told.collect::<Vec<_>>().join("; ")
    };
    let told = changes(whole, seen.book).into_iter().map(|change| {
        let more = (!change.more.is_empty()).then(|| format!("also not {}", list(&change.more)));
        let less = (!change.less.is_empty()).then(|| format!("the rule falls away {}", list(&change.less)));
        format!("“{}”: {}", change.name, more.into_iter().chain(less).collect::<Vec<_>>().join("; "))
    });
    let told: Vec<String> = told.collect();
    if told.is_empty() { Vec::new() } else { vec![of(told.join(". "))] }
}

/// "0.6 g in a dose, 1.9 g a day".
fn in_a_dose(seen: &Seen, id: Id) -> Option<(Line, [Piece; 4])> {
    let (grams, daily) = (seen.worked.laid.working.line(id)?, seen.worked.laid.daily?);
    let words = |text: &str| Piece::Words(text.to_string());
    Some((grams, [Piece::Plain(grams), words(" in a dose, "), Piece::Times(grams, daily), words(" a day")]))
}

pub(in crate::caution) fn alcohol(seen: &Seen) -> Vec<Watch> {
    if seen.worked.value(Id::Abv).is_none() {
        return Vec::new();
    }
    let dose = in_a_dose(seen, Id::AlcoholPerDose);
    let told = dose.map(|(_, told)| std::iter::once(Piece::Words(", ".to_string())).chain(told).collect());
    vec![Watch::always(told.unwrap_or_default())]
}

pub(in crate::caution) fn sugar(seen: &Seen) -> Vec<Watch> {
    let dose = in_a_dose(seen, Id::SugarPerDose);
    let watch = dose.map(|(grams, told)| Watch {
        when: When::AtLeast(grams, SUGAR_TOLD),
        ..Watch::always(told.to_vec())
    });
    watch.into_iter().collect()
}

pub(in crate::caution) fn acid(seen: &Seen) -> Vec<Found> {
    once(seen.worked.value(Id::Acidity).is_some())
}

/// Sugar and water together, not enough of the one to preserve the other.
pub(in crate::caution) fn ferments(seen: &Seen) -> Vec<Watch> {
    let sweet = seen.worked.value(Id::Solids).is_some() && seen.worked.value(Id::Finished).is_some();
    let watch = Watch { when: When::Unkept, ..Watch::always(Vec::new()) };
    sweet.then_some(watch).into_iter().collect()
}

pub(in crate::caution) fn hot_liquid(seen: &Seen) -> Vec<Found> {
    has_hazard(seen, &Hazard::HotLiquid)
}

pub(in crate::caution) fn hot_glass(seen: &Seen) -> Vec<Found> {
    has_hazard(seen, &Hazard::HotGlass)
}

pub(in crate::caution) fn hot_wax(seen: &Seen) -> Vec<Found> {
    has_hazard(seen, &Hazard::HotWax)
}

pub(in crate::caution) fn hot_sugar(seen: &Seen) -> Vec<Found> {
    has_hazard(seen, &Hazard::HotSugar)
}

pub(in crate::caution) fn bath(seen: &Seen) -> Vec<Found> {
    has_hazard(seen, &Hazard::Bath)
}

pub(in crate::caution) fn on_skin(seen: &Seen) -> Vec<Found> {
    once(used(seen) == Some(Use::OnSkin))
}

pub(in crate::caution) fn rinse(seen: &Seen) -> Vec<Found> {
    once(used(seen) == Some(Use::Rinsed))
}

pub(in crate::caution) fn steam(seen: &Seen) -> Vec<Found> {
    once(used(seen) == Some(Use::Breathed))
}

pub(in crate::caution) fn choking(seen: &Seen) -> Vec<Found> {
    once(seen.worked.value(Id::Pieces).is_some())
}

/// The rules that everything of a kind sets off.
pub(in crate::caution) const fn by_kind(kind: Kind) -> &'static [&'static str] {
    match kind {
        Kind::Honey => &["honey-infants", "of-bees", "sugar"],
        Kind::Syrup | Kind::Sugar => &["sugar"],
        Kind::Spirit => &["alcohol", "alcohol-over-flame"],
        Kind::Vinegar => &["acid-metal"],
        Kind::Oil => &["fresh-in-oil"],
        Kind::Wax => &["of-bees", "hot-wax"],
        Kind::Glycerin | Kind::Gum | Kind::Salt | Kind::Juice => &[],
    }
}

pub(in crate::caution) fn of_bees(seen: &Seen) -> Vec<Found> {
    once(seen.worked.laid.honey || seen.worked.laid.batch.holds_wax())
}
