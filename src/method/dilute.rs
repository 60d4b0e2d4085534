//! Poured into bath water.

use super::{Hazard, Laying, Say, words};
use crate::batch::Batch;
use crate::diagnostic::{Code, Finding};
use crate::formula::catalogue::pan::{Away, Weigh};
use crate::formula::catalogue::rules::MixedTemperature;
use crate::materia::{FILLING_A_BATH, WATER_DENSITY};
use crate::measure::unit::{CELSIUS, ML};
use crate::recipe::Diluted;
use crate::span::Span;
use crate::working::Id;

pub(super) fn lay(at: &mut Laying, span: Span, bath: &Diluted) {
    if at.volume.is_some() && !at.strained {
        at.too_early(
            span,
            "it is poured into the bath before it is strained",
            "the plants would float in the tub, and block the drain",
            "- strain: squeezed",
        );
        return;
    }
    if at.volume.is_none() && at.marc.plants.is_empty() {
        return;
    }
    let all = at.declared("bath water in all", &ML, &bath.to.value, true, bath.to.span);
    at.work.claim(Id::BathWater, all);
    let minutes = at.allowance(&FILLING_A_BATH, false);
    let mut say = match at.volume {
        Some(liquid) => {
            let water = at.work.work("water in the bath", Away { before: all, after: liquid });
            if let Some((warm, hot)) = &bath.warm {
                let warm = at.declared("water of the bath", &CELSIUS, &warm.value, false, warm.span);
                let hot = at.declared("liquid poured in", &CELSIUS, &hot.value, false, hot.span);
                let density = at.work.figure(&WATER_DENSITY);
                let weight = [liquid, water].map(|volume| at.work.work("weighed", Weigh { volume, density }));
                let mixed = MixedTemperature { weight: weight.to_vec(), temperature: vec![hot, warm] };
                let mixed = at.work.work("temperature of the bath", mixed);
                at.work.claim(Id::Temperature, mixed);
            }
            at.batch.add_water(water);
            vec![
                words("Pour it into "),
                Say::Volume(water),
                words(" of warm water and stir; that makes "),
                Say::Volume(all),
                words("."),
            ]
        }
        None => {
            if let Some((warm, _)) = &bath.warm {
                at.findings.push(
                    Finding::error(
                        Code::WrongShape,
                        warm.span,
                        "nothing is poured in that has a temperature",
                    )
                    .why("a bag only hangs in the water")
                    .write(format!("dilute: {}", bath.to.value.written)),
                );
            }
            let plants = at.plant_words();
            at.passed_on.append(&mut at.marc.weights.clone());
            // Their own water is in the tub with the rest.
            at.batch = Batch::of_water(all);
            at.strained = true;
            at.need("a cotton bag with a string");
            vec![
                words(format!("Tie the {plants} into a bag, hang it in ")),
                Say::Volume(all),
                words(" of warm water and press it out now and then."),
            ]
        }
    };
    if let Some(temperature) = at.work.line(Id::Temperature) {
        let celsius = at.work.evaluate(&[])[temperature.index()];
        say.extend([words(" By the sum it is then "), Say::Temperature(celsius), words(".")]);
        at.hazards.push(Hazard::WarmBath { temperature, at: span });
    }
    say.push(words(" Feel it with the elbow or a thermometer before anyone gets in."));
    at.hazards.push(Hazard::Bath);
    at.volume = Some(all);
    at.closed = Some("dilute");
    at.sweetened = true;
    at.finish_step("dilute", say, vec![minutes], String::new(), None);
}
