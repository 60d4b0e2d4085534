//! What is put in, plant by plant: boiled long enough where it must be, and what is taken of it a day against its
//! daily ceiling.
//!
//! A ceiling counts the whole plant put in, as if nothing of it stayed in the marc: the careful reading.

use std::collections::BTreeMap;

use super::put_in::moisture;
use super::{CeilingLine, Hazard, Laying, add_weights};
use crate::bibliography::Source;
use crate::formula::Line;
use crate::formula::catalogue::dose::{Contained, PlantPerDay, ShareOfCeiling};
use crate::formula::catalogue::pan::AsDried;
use crate::formula::catalogue::rules::ForTheBody;
use crate::formulary::{Ceiling, Most, Plant};
use crate::materia::ADULT_WEIGHT;
use crate::measure::Form;
use crate::measure::unit::{G, KG, MG, MG_PER_G, MG_PER_KG};
use crate::recipe::Use;
use crate::span::Span;
use crate::working::{How, Working};

/// A plant put in, by its weight as it went in.
#[derive(Clone, Debug)]
pub(super) struct PutIn {
    /// The plant's id.
    pub(super) plant: String,
    pub(super) form: Form,
    /// g.
    pub(super) weight: Line,
    pub(super) at: Span,
    /// Its times at the boil, min; none in another recipe's product, which is held to them itself.
    pub(super) boiled: Option<Vec<Line>>,
}

/// Notes what must be cooked, and for how long it is.
pub(super) fn note_cooked(at: &mut Laying) {
    for put_in in &at.put_in {
        let cook = at.book.plants.get(&put_in.plant).and_then(|plant| plant.cook.as_ref());
        at.hazards.extend(cook.zip(put_in.boiled.clone()).map(|(cook, boiled)| Hazard::MustCook {
            plant: put_in.plant.clone(),
            boiled,
            needs: cook.value,
            at: put_in.at,
        }));
    }
}

/// Lays down what a day's doses hold of everything with a ceiling. `in_dose` gives a dose's share of a weight.
pub(super) fn ceilings(at: &mut Laying, daily: Line, in_dose: impl Fn(&mut Working, &str, Line) -> Line) {
    if at.recipe.preparation.value.used != Use::Swallowed {
        return;
    }
    let book = at.book;
    let mut whole: BTreeMap<String, Vec<Line>> = BTreeMap::new();
    for put_in in at.put_in.clone() {
        let Some(plant) = book.plants.get(&put_in.plant).filter(|plant| !plant.ceilings.is_empty()) else {
            continue;
        };
        let Some(weight) = as_dried(at, plant, &put_in) else { return };
        whole.entry(put_in.plant).or_default().push(weight);
    }
    for (id, weights) in whole {
        let Some(plant) = book.plants.get(&id) else { continue };
        let name = &plant.words;
        let weight = add_weights(&mut at.work, &format!("{name} in all"), weights);
        let dose = in_dose(&mut at.work, &format!("{name} in a dose, whole"), weight);
        let a_day = at.work.work(format!("{name} a day, whole"), PlantPerDay { dose, daily });
        for ceiling in &plant.ceilings {
            lay_one(at, plant, ceiling, a_day);
        }
    }
}

fn as_dried(at: &mut Laying, plant: &Plant, put_in: &PutIn) -> Option<Line> {
    let weight = put_in.weight;
    // What is only ever used fresh has its ceiling fresh.
    if put_in.form == Form::Dried || plant.dried.is_none() {
        return Some(weight);
    }
    let fresh_moisture = moisture(at, plant, Form::Fresh, put_in.at)?;
    let dried_moisture = moisture(at, plant, Form::Dried, put_in.at)?;
    let by = AsDried { fresh: weight, fresh_moisture, dried_moisture };
    Some(at.work.work(format!("{} as dried", plant.words), by))
}

fn lay_one(at: &mut Laying, plant: &Plant, ceiling: &Ceiling, a_day: Line) {
    let (unit, of) = match &ceiling.of {
        None => (&G, plant.words.clone()),
        Some(constituent) => (&MG, constituent.clone()),
    };
    let taken = match (&ceiling.of, &ceiling.holds) {
        (None, _) => a_day,
        // What a gram holds is not known: the ceiling is told and cannot be reckoned.
        (Some(_), None) => return,
        (Some(of), Some(holds)) => {
            let how = How::Assumed {
                id: format!("{}-{}", plant.id, of.replace(' ', "-")),
                low: holds.low,
                usual: (holds.low + holds.high) / 2.0,
                high: holds.high,
                source: holds.source.clone(),
                advice: "Lots differ; no kitchen can measure it.",
            };
            let content = match holds.low == holds.high {
                true => at.work.published(
                    format!("{of} in a gram of {}", plant.words),
                    plant.id.clone(),
                    &MG_PER_G,
                    holds.low,
                    holds.source.clone(),
                ),
                false => at.work.guess(format!("{of} in a gram of {}", plant.words), &MG_PER_G, how),
            };
            at.work.work(format!("{of} a day from the {}", plant.words), Contained { plant: a_day, content })
        }
    };
    let source = ceiling.source.clone();
    let most = match ceiling.most {
        Most::ADay(grams) => {
            at.work.published(format!("most {of} a day"), plant.id.clone(), unit, grams, source)
        }
        Most::ForTheBody(each) => {
            let body = match at.book.course.adult {
                Some(adult) => {
                    let own = Source::formulary("the adult this course reckons with");
                    at.work.published("weight of an adult", "course-adult", &KG, adult, own)
                }
                None => at.work.figure(&ADULT_WEIGHT),
            };
            let each = at.work.published(
                format!("{of} that a kilogram of body bears a day"),
                plant.id.clone(),
                &MG_PER_KG,
                each,
                source,
            );
            at.work.work(format!("most {of} a day"), ForTheBody { body, each })
        }
    };
    let share = at.work.work(format!("{of} against its ceiling"), ShareOfCeiling { taken, most });
    at.ceilings.push(CeilingLine { plant: plant.id.clone(), of: ceiling.of.clone(), taken, most, share });
}
