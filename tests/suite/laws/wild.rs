//! Recipes spoiled by chance: steps left out, put in, moved and doubled, preparations and liquids changed.

use proptest::prelude::*;
use proptest::sample::select;

use super::draft::{Draft, Much, Step};
use super::kinds;

#[derive(Clone, Debug)]
enum Slip {
    Leave(usize),
    Double(usize),
    Swap(usize, usize),
    PutIn(usize, usize),
    Preparation(&'static str),
    OtherLiquid,
    NoLiquid,
    OtherHerbs,
    HugeHerb,
    Parts,
    Step(usize, &'static str, &'static str),
}

/// Steps that are written right, and right nearly nowhere.
const STRAY: &[(&str, &str)] = &[
    ("strain", "not"),
    ("strain", "squeezed"),
    ("reduce", "to 1/2 of the water"),
    ("reduce", "to 1 mL"),
    ("reduce", "to 20 L"),
    ("boil to", "hard crack"),
    ("make up", "1 mL"),
    ("make up", "1 gallon"),
    ("pour again", "900 mL"),
    ("percolate", "1 day"),
    ("spread", "6 mm"),
    ("dilute", "1 mL"),
    ("dilute", "150 L"),
    ("cut", "1 kg"),
    ("dry", "2 weeks"),
    ("cool", "21 °C"),
    ("cool", "5 °C"),
    ("melt", "{beeswax: 1 kg}"),
    ("melt", "{beeswax: 99 % of the finished by weight}"),
    ("simmer", "{time: 3 h, lid: off}"),
    ("steep", "{time: 1 min, at: 99 °C}"),
    ("sweeten", "{sugar: 50 kg}"),
    ("sweeten", "{honey: 999/1000 of the finished by volume}"),
    ("sweeten", "{glycerin: 900 of the liquid by weight}"),
    ("fortify", "{spirit: 10 L, strength: 100 %}"),
    ("fortify", "{spirit: 1 mL, strength: 1 %}"),
    ("acidify", "{vinegar: 5 L, acidity: 30 %}"),
    ("knead", "{sugar: 1:1000 w/w}"),
    ("combine", "{First: 5 mL}"),
    ("add", "{hips: 100 kg fresh}"),
    ("bottle", "30 mL"),
];

const WORDS: &[&str] = &[
    "decoction",
    "syrup",
    "oxymel",
    "infused honey",
    "electuary",
    "tincture",
    "glycerite",
    "infused vinegar",
    "elixir",
    "lozenge",
    "hard drop",
    "tea blend",
    "infused oil",
    "salve",
    "liniment",
    "poultice",
    "bath",
    "steam",
];

fn slip() -> impl Strategy<Value = Slip> {
    let at = 0..8_usize;
    prop_oneof![
        at.clone().prop_map(Slip::Leave),
        at.clone().prop_map(Slip::Double),
        (at.clone(), at.clone()).prop_map(|(one, other)| Slip::Swap(one, other)),
        (at.clone(), at.clone()).prop_map(|(from, to)| Slip::PutIn(from, to)),
        select(WORDS).prop_map(Slip::Preparation),
        Just(Slip::OtherLiquid),
        Just(Slip::NoLiquid),
        Just(Slip::OtherHerbs),
        Just(Slip::HugeHerb),
        Just(Slip::Parts),
        (at, select(STRAY)).prop_map(|(at, (name, says))| Slip::Step(at, name, says)),
    ]
}

fn spoiled(mut draft: Draft, other: &Draft, slip: &Slip) -> Draft {
    let steps = &mut draft.steps;
    let last = steps.len().saturating_sub(1);
    let some = !steps.is_empty();
    match *slip {
        Slip::Leave(at) if some => drop(steps.remove(at.min(last))),
        Slip::Double(at) if some => steps.insert(at.min(last), steps[at.min(last)].clone()),
        Slip::Swap(one, two) if some => steps.swap(one.min(last), two.min(last)),
        Slip::PutIn(from, to) => {
            let put_in = other.steps.get(from % other.steps.len().max(1));
            if let Some(step) = put_in {
                steps.insert(to.min(steps.len()), step.clone());
            }
        }
        Slip::Preparation(word) => draft.preparation = word,
        Slip::OtherLiquid => draft.liquid = other.liquid.clone(),
        Slip::NoLiquid => draft.liquid = None,
        Slip::OtherHerbs => draft.herbs = other.herbs.clone(),
        Slip::HugeHerb => draft.herbs.iter_mut().for_each(|herb| herb.much = Much::Grams(1e5)),
        Slip::Parts => draft.herbs.iter_mut().for_each(|herb| herb.much = Much::Parts(2.0)),
        Slip::Step(at, name, says) => steps.insert(at.min(steps.len()), Step::new(name, says)),
        Slip::Leave(_) | Slip::Double(_) | Slip::Swap(..) => {}
    }
    draft
}

/// A recipe that has gone wrong somewhere, though some of them can be worked still.
pub fn recipe() -> impl Strategy<Value = Draft> {
    (kinds::recipe(), kinds::recipe(), prop::collection::vec(slip(), 1..4)).prop_map(
        |(draft, mut other, slips)| {
            let mut spoiled = slips.iter().fold(draft, |draft, slip| spoiled(draft, &other, slip));
            if spoiled.products.is_empty() {
                spoiled.products.append(&mut other.products);
            }
            spoiled
        },
    )
}

/// Of five recipes four that make sense.
pub fn any_recipe() -> impl Strategy<Value = Draft> {
    prop_oneof![4 => kinds::recipe(), 1 => recipe()]
}
