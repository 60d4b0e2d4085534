//! Specimen recipes: one a preparation, for the tables of ratios, strengths and yields. They are read and worked
//! like any recipe of a book, in a book of plants of no particular kind.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use crate::diagnostic::Finding;
use crate::formula::catalogue::heat::StageHere;
use crate::formulary::{Formulary, read_plant};
use crate::materia::STAGES;
use crate::measure::unit::{CELSIUS, M};
use crate::recipe::{self, PREPARATIONS, Preparation};
use crate::span::{Source, Span, Spanned};
use crate::variation::{self, WorkedRecipe};
use crate::working::Working;

/// A preparation's table.
#[derive(Debug)]
pub struct Specimen {
    /// The preparation.
    pub kind: &'static Preparation,
    /// What it is, in a sentence or two.
    pub what: &'static str,
    /// Its rows: the specimen and its variations.
    pub worked: WorkedRecipe,
}

/// Rows of `word, what it is, file`.
macro_rules! specimens {
    ($($word:literal $file:literal $what:literal;)*) => {
        static SPECIMENS: &[(&str, &str, &str)] =
            &[$(($word, $what, include_str!(concat!("specimens/", $file, ".yaml"))),)*];
    };
}

specimens! {
    "infusion" "infusion" "Leaf and flower with water off the boil poured on, covered, and strained. What is wanted is aroma: the lid stays on.";
    "cold infusion" "cold-infusion" "Cold water for hours, in the refrigerator from the second hour on: for slimy roots, and for what heat would spoil.";
    "decoction" "decoction" "Root, bark and hard fruit simmered in water that began cold. A lid saves water; a second water takes most of what the first has left.";
    "syrup" "syrup" "A decoction or an infusion with honey, sugar, maple syrup or glycerin. How it keeps depends on how much of it is dissolved, not on the words equal or double.";
    "oxymel" "oxymel" "Vinegar and honey. The honey thins the acid, and the vinegar thins the honey.";
    "infused honey" "infused-honey" "Dried plants in honey; every gram of water they bring counts. The honey here holds 17.1 % of water: measure yours. Fresh plants make it ferment.";
    "electuary" "electuary" "Powder stirred into honey until it is a paste, and eaten with it.";
    "tincture" "tincture" "Plants in spirit and water. The ratio says how much plant, the per cent how much alcohol; both stand on the label.";
    "glycerite" "glycerite" "Plants in glycerin and a little water. Below 55 % it does not keep, and a fresh plant brings water of its own.";
    "infused vinegar" "infused-vinegar" "Plants in vinegar of at least 5 %. A jar packed with fresh leaf thins it below what keeps.";
    "elixir" "elixir" "A tincture sweetened, or poured together with a syrup.";
    "lozenge" "lozenge" "Powder and sugar kneaded with little water, cut and dried. What each piece holds is the powder over the pieces.";
    "pastille" "pastille" "Powder and honey in a stiff dough, rolled into peas.";
    "hard drop" "hard-drop" "A strong infusion boiled down with sugar until it cracks. The stage is a temperature, and lower on a mountain.";
    "tea blend" "tea-blend" "Dried plants by parts of weight. The sum of the parts divides the batch.";
    "gargle" "gargle" "A strong infusion, held in the mouth and spat out.";
    "infused oil" "infused-oil" "Dried plants in oil, cold for weeks or warm for hours. Each gram keeps about a millilitre and a half.";
    "salve" "salve" "Infused oil set with wax. The ratio goes by weight: an ounce of wax to a cup of oil is about 1:7.6.";
    "lip balm" "lip-balm" "A salve with more wax, that stands by itself.";
    "liniment" "liniment" "A tincture for rubbing into whole skin, never drunk.";
    "compress" "compress" "A cloth in a strong infusion, wrung out and laid on.";
    "poultice" "poultice" "The plant itself, mashed or wetted, laid on so thick.";
    "bath" "bath" "An infusion, or a bag of plants, in a tub. How warm it is comes from both waters.";
    "foot soak" "foot-soak" "An infusion in a basin. Measure the warmth: feet that feel little burn.";
    "steam" "steam" "A bowl of infusion that is breathed over, covered, and not strained.";
}

/// Plants of no particular kind. What a gram keeps is assumed, with its range.
const PLANTS: &[(&str, &str)] = &[
    (
        "leaf",
        "dried: {moisture: 10 %, cup: 20 g, source: common practice}\nfresh: {moisture: 80 %, cup: 95 g, source: common practice}",
    ),
    ("flower", "dried: {moisture: 10 %, cup: 12 g, source: common practice}"),
    ("root", "dried: {holds: 1.5 mL, moisture: 10 %, cup: 90 g, source: common practice}"),
    ("powder", "dried: {moisture: 10 %, cup: 95 g, source: common practice}"),
];

/// Every specimen, worked, in the preparations' order. They are the program's own and never differ, so they are
/// worked once.
///
/// # Errors
/// Whatever is found in one of the program's own files.
pub fn worked() -> Result<&'static [Specimen], Vec<Finding>> {
    static WORKED: LazyLock<Result<Vec<Specimen>, Vec<Finding>>> = LazyLock::new(work_all);
    WORKED.as_ref().map(Vec::as_slice).map_err(Clone::clone)
}

fn work_all() -> Result<Vec<Specimen>, Vec<Finding>> {
    let mut findings = Vec::new();
    let mut book = Formulary::default();
    for (id, forms) in PLANTS {
        let page = format!(
            "---\nname: {id}\nlatin: Planta\nauthor: L.\nfamily: any\npart: {id}\naromatic: not\n{forms}\n---\n\nAny.\n"
        );
        let plant = read_plant(&Source::new(format!("{id}.md"), page), id, &mut findings);
        book.plants.extend(plant.map(|plant| ((*id).to_string(), plant)));
    }
    let texts: BTreeMap<&str, (&str, &str)> =
        SPECIMENS.iter().map(|(word, what, text)| (*word, (*what, *text))).collect();
    let mut specimens = Vec::new();
    for kind in PREPARATIONS {
        let Some((what, text)) = texts.get(kind.word) else { continue };
        let whole = Spanned::new(*text, Span::new(0, text.len()));
        let worked = recipe::read(&whole, &book.pantry, &mut findings)
            .and_then(|recipe| variation::work(recipe, &book, &mut findings));
        specimens.extend(worked.map(|worked| Specimen { kind, what, worked }));
    }
    if findings.is_empty() { Ok(specimens) } else { Err(findings) }
}

/// A stage of boiled sugar at an altitude.
#[derive(Clone, Copy, Debug)]
pub struct StageAt {
    /// Its name.
    pub name: &'static str,
    /// Where it begins, °C.
    pub begins: f64,
}

/// Every stage at so many metres.
pub fn stages(metres: f64) -> Vec<StageAt> {
    let mut work = Working::new();
    let altitude = work.given("altitude", &M, metres, false, Span::default());
    let lines: Vec<_> = STAGES
        .iter()
        .map(|stage| {
            let at_sea = work.given(stage.name, &CELSIUS, stage.from, false, Span::default());
            (stage.name, work.work(format!("{} here", stage.name), StageHere { stage: at_sea, altitude }))
        })
        .collect();
    let values = work.evaluate(&[]);
    lines.into_iter().map(|(name, line)| StageAt { name, begins: values[line.index()] }).collect()
}
