//! Cautions: rules over a worked recipe and its plants. A stop cannot be switched off.

use crate::bibliography::{Source, Work};
use crate::diagnostic::{Code, Finding};
use crate::formulary::Formulary;
use crate::method::Hazard;
use crate::recipe::Use;
use crate::variation::Worked;
use crate::working::Id;

/// How much a caution weighs.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Weight {
    /// Protects life; nobody may switch it off.
    Stop,
    /// Take care.
    Warning,
    /// Worth knowing.
    Note,
}

impl Weight {
    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Weight::Stop => "stop",
            Weight::Warning => "warning",
            Weight::Note => "note",
        }
    }
}

/// A caution on a recipe.
#[derive(Clone, PartialEq, Debug)]
pub struct Caution {
    /// Its id, for tools and anchors.
    pub id: String,
    /// How much it weighs.
    pub weight: Weight,
    /// First words.
    pub lead: String,
    /// The rest.
    pub text: String,
    /// Where it comes from.
    pub source: Source,
    /// Who must not take it, where the caution says so.
    pub never_for: Option<&'static str>,
}

/// The sentence that stands under every list of cautions.
pub const CLOSING: &str = "Follow your local rules. Where this page and a licensed practitioner differ, follow the \
                           practitioner. This book teaches; it does not diagnose, and promises nothing.";

/// The cautions of a worked recipe: stops first, then warnings, then notes; each once.
pub fn cautions(worked: &Worked, book: &Formulary) -> Vec<Caution> {
    let mut found: Vec<Caution> = Vec::new();
    let mut add = |caution: Caution| {
        if !found.iter().any(|other| other.id == caution.id) {
            found.push(caution);
        }
    };
    if worked.laid.honey {
        add(honey());
    }
    if worked.value(Id::WaterInOil).is_some_and(|water| water > 0.0) {
        add(fresh_in_oil());
    }
    if worked.value(Id::Abv).is_some() {
        add(alcohol());
    }
    if worked.value(Id::Acidity).is_some() {
        add(acid());
    }
    if let Some(caution) = worked.laid.preparation.and_then(|kind| by_use(kind.used)) {
        add(caution);
    }
    if worked.value(Id::Pieces).is_some() {
        add(choking());
    }
    for hazard in &worked.laid.hazards {
        add(of_hazard(hazard, book));
    }
    for id in &worked.laid.plants {
        let Some(plant) = book.plants.get(id) else {
            continue;
        };
        for (n, caution) in plant.cautions.iter().enumerate() {
            add(Caution {
                id: format!("{}-{}", plant.id, n + 1),
                weight: if caution.note { Weight::Note } else { Weight::Warning },
                lead: caution.lead.clone(),
                text: caution.text.clone(),
                source: caution.source.clone(),
                never_for: None,
            });
        }
    }
    found.sort_by_key(|caution| caution.weight);
    found
}

/// What the author is told about the same hazards while pressing.
pub fn findings(worked: &Worked, book: &Formulary, into: &mut Vec<Finding>) {
    for hazard in &worked.laid.hazards {
        let finding = match hazard {
            Hazard::AromaticBoiled { plant, at } => {
                let plant = words(plant, book);
                Finding::warning(
                    Code::AromaticBoiled,
                    *at,
                    format!("{plant} gives up its aroma to the steam here"),
                )
                .why("aromatic plants are steeped, covered, off the heat: King's American Dispensatory")
                .write("add: {...} after the heat, or an infusion that is not reduced")
            }
            Hazard::HotHoney { at } => Finding::warning(
                Code::HotHoney,
                *at,
                "honey goes into liquid that no step has cooled to 40 °C",
            )
            .why("honey wanted raw is stirred in below that: common practice, no source")
            .write("- cool: 38 °C before - sweeten: {...}"),
            Hazard::HotBath { at } => {
                Finding::warning(Code::HotBath, *at, "by the sum the bath is hotter than 40 °C")
                    .why("above that it scalds thin or numb skin: common practice, no source")
                    .write("cooler water, or less of the hot liquid")
            }
            Hazard::HotLiquid | Hazard::HotGlass | Hazard::HotWax | Hazard::HotSugar | Hazard::Bath => {
                continue;
            }
        };
        if !into.iter().any(|told| told.code == finding.code && told.span == finding.span) {
            into.push(finding);
        }
    }
}

fn words(plant: &str, book: &Formulary) -> String {
    book.plants.get(plant).map_or_else(|| plant.to_string(), |plant| plant.words.clone())
}

/// A caution that is for nobody in particular.
fn caution(id: &str, weight: Weight, lead: &str, text: &str, source: Source) -> Caution {
    Caution {
        id: id.to_string(),
        weight,
        lead: lead.to_string(),
        text: text.to_string(),
        source,
        never_for: None,
    }
}

fn honey() -> Caution {
    Caution {
        never_for: Some("a child under 12 months: honey"),
        ..caution(
            "honey-infants",
            Weight::Stop,
            "No honey under 12 months",
            "Not by the spoon, not in a bottle, not cooked: honey can carry what gives infants botulism.",
            Source::published(Work::HoneyInfants, "not under 12 months, nor in food, water or formula"),
        )
    }
}

fn fresh_in_oil() -> Caution {
    caution(
        "fresh-in-oil",
        Weight::Stop,
        "Fresh plants in oil are never kept out of the cold",
        "Without air botulism can grow in them, and it cannot be smelt or tasted.",
        Source::published(Work::OilsIdaho, "refrigerate, and discard after four days"),
    )
}

fn alcohol() -> Caution {
    caution(
        "alcohol",
        Weight::Warning,
        "It holds alcohol",
        "Not for children, in pregnancy, in recovery or with medicines that forbid it; keep spirit from flames.",
        Source::practice("the usual caution; ask a pharmacist"),
    )
}

fn acid() -> Caution {
    caution(
        "acid-metal",
        Weight::Warning,
        "Vinegar eats metal and teeth",
        "Use glass or enamel and a lid without bare metal; take it in water and rinse the mouth after.",
        Source::practice("the usual caution with vinegar"),
    )
}

/// What everything used in that way asks for; none for what is swallowed, whose plants speak for themselves.
fn by_use(used: Use) -> Option<Caution> {
    let (id, lead, text) = match used {
        Use::Swallowed => return None,
        Use::Rinsed => ("rinse", "Rinse and spit it out", "Not for a child too young to spit."),
        Use::OnSkin => (
            "on-skin",
            "On whole skin only",
            "Try a little inside the elbow and wait a day. Not on wounds, burns or rashes, and not near the eyes.",
        ),
        Use::Breathed => (
            "steam",
            "Steam scalds",
            "A steady table, eyes closed, the face well above the bowl. Never a child alone; not with asthma unless a doctor says so.",
        ),
    };
    Some(caution(id, Weight::Warning, lead, text, Source::practice("the usual caution")))
}

fn choking() -> Caution {
    Caution {
        never_for: Some("a child under four: it can choke on a piece"),
        ..caution(
            "choking",
            Weight::Warning,
            "Not for children under four",
            "They choke on what is hard and round; nobody sucks one lying down.",
            Source::practice("the usual caution with sweets"),
        )
    }
}

fn of_hazard(hazard: &Hazard, book: &Formulary) -> Caution {
    match hazard {
        Hazard::AromaticBoiled { plant, .. } => {
            let plant = words(plant, book);
            Caution {
                id: format!("aromatic-boiled-{}", plant.replace(' ', "-")),
                lead: format!("Part of the aroma is lost from the {plant}"),
                ..caution(
                    "aromatic-boiled",
                    Weight::Note,
                    "",
                    "What is volatile leaves with the steam; a covered infusion keeps more of it.",
                    Source::published(
                        Work::KingsDispensatory,
                        "Decocta: aromatic drugs are added last and covered",
                    ),
                )
            }
        }
        Hazard::HotHoney { .. } => caution(
            "hot-honey",
            Weight::Note,
            "The honey is warmed",
            "Stirred in above 40 °C (104 °F) it is no longer raw.",
            Source::practice("teachers keep raw honey below 40 °C"),
        ),
        Hazard::HotLiquid => caution(
            "hot-liquid",
            Weight::Warning,
            "Hot liquid scalds",
            "Turn handles inward, strain away from you, keep children out of reach of the stove.",
            Source::practice("kitchen safety"),
        ),
        Hazard::HotWax => caution(
            "hot-wax",
            Weight::Warning,
            "Hot wax burns, and burns on",
            "Melt it over water, never over the flame; no drop of water into it, and no phone call meanwhile.",
            Source::practice("kitchen safety"),
        ),
        Hazard::HotSugar => caution(
            "hot-sugar",
            Weight::Warning,
            "Boiling sugar burns deep",
            "It is half as hot again as boiling water, and it clings. Cold water within reach, children out of the kitchen.",
            Source::practice("kitchen safety"),
        ),
        Hazard::Bath => caution(
            "bath",
            Weight::Warning,
            "Feel the water first",
            "With diabetes or numb feet let somebody else feel it. Out at once if faint; never a child alone.",
            Source::practice("the usual caution"),
        ),
        Hazard::HotBath { .. } => caution(
            "hot-bath",
            Weight::Warning,
            "By the sum this bath is hotter than 40 °C (104 °F)",
            "Let it cool, or add cold water, and measure before anyone gets in.",
            Source::practice("the usual caution"),
        ),
        Hazard::HotGlass => caution(
            "hot-glass",
            Weight::Warning,
            "Hot liquid cracks cold glass",
            "Warm the bottles first and stand them on a cloth.",
            Source::practice("kitchen safety"),
        ),
    }
}
