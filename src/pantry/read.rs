//! `pantry/*.md`: an item's figures in the front matter, each with its source, and prose below.

use super::{Pantry, PantryPage};
use crate::bibliography::Source as Cite;
use crate::cited::{Cited, cautions, cited, source_of, substitutes, texts, told};
use crate::diagnostic::{Code, Finding};
use crate::manuscript::facts;
use crate::materia::{Fact, HONEY_GRAVITY, Item, Kind};
use crate::measure::unit::{G_PER_ML, KCAL_PER_G, PER_CENT, PER_CENT_VV, PER_CENT_WV};
use crate::measure::{self, Amount, Measure, Misread, Unit};
use crate::span::Source;
use crate::yaml::Fields;

/// Reads an item's page. `id` is its name in addresses; what the page does not say is taken from what `pantry` has
/// of that name, else of that kind.
pub fn read_item(
    source: &Source,
    id: &str,
    pantry: &Pantry,
    findings: &mut Vec<Finding>,
) -> Option<(Item, PantryPage)> {
    let tree = facts(source, "a pantry page", "name: date syrup\nkind: syrup", findings)?;
    let mut fields = tree.map("a pantry page", findings)?;
    let name = fields
        .need("name", "name: date syrup", findings)
        .and_then(|node| node.text("the name", findings))
        .map(|name| name.value.to_string());
    let kind = fields
        .need("kind", "kind: syrup", findings)
        .and_then(|node| node.one_of("a kind of pantry item", Kind::NAMES, findings));
    let general = source_of(&mut fields, findings);
    let mut page = PantryPage { path: source.path.clone(), ..PantryPage::default() };
    page.also = texts(&mut fields, "also", findings);
    page.formerly = fields.texts("formerly", "a former name", findings);
    page.keeps = told(&mut fields, "keeps", findings);
    page.cautions = cautions(&mut fields, findings);
    page.substitutes = substitutes(&mut fields, "item", findings);
    let mut figures = Figures { fields: &mut fields, general, findings };
    for (key, measure) in [("cup", Measure::Cup), ("tablespoon", Measure::Tbsp), ("teaspoon", Measure::Tsp)] {
        page.weights.extend(figures.take(key, measure::mass).map(|weighs| (measure, weighs)));
    }
    for sugar in ["glucose", "fructose", "sucrose"] {
        page.single_sugars.extend(figures.take(sugar, share).map(|share| (sugar, share)));
    }
    let density = figures.take("density", density);
    let water = figures.take("water", share);
    let sugars = figures.take("sugars", share);
    let energy = figures.take("energy", in_100_g);
    let alcohol = figures.take("alcohol", measure::per_cent);
    let acid = figures.take("acid", measure::per_cent);
    let at = fields.span();
    fields.finish(findings);
    let (name, kind) = (name?, kind?.value);
    let like = pantry.item(&name).filter(|item| item.kind == kind);
    let like = like.or_else(|| pantry.item(usual(kind)?)).map(|item| Item::clone(item));
    let mut item = Item { id: id.to_string(), words: name, ..like.unwrap_or_else(|| Item::bare("", kind)) };
    // A cup's weight is a density; one that is written decides.
    let weighed = page.weights.first().map(|(measure, weighs)| Cited {
        value: weighs.value / measure.factor().to_f64(),
        source: weighs.source.clone(),
    });
    let own = |words: &str, unit: &'static Unit, cited: Option<Cited>, before: Option<Fact>| {
        let Some(cited) = cited else { return before };
        let words = format!("{words} {}", item.words);
        Some(Fact::Own { id: format!("pantry-{id}"), words, value: cited.value, unit, source: cited.source })
    };
    // Honey's density follows its water, spirit's its alcohol: a cup of either is no figure of its own.
    if !matches!(kind, Kind::Honey | Kind::Spirit) {
        item.density = own("density of", &G_PER_ML, density.or(weighed), item.density.clone());
    }
    item.water = own("water in", &PER_CENT, water, item.water.clone());
    item.sugars = own("sugars in", &PER_CENT, sugars, item.sugars.clone());
    item.energy = own("energy in", &KCAL_PER_G, energy, item.energy.clone());
    match kind {
        Kind::Spirit => item.strength = own("strength of the", &PER_CENT_VV, alcohol, item.strength.clone()),
        Kind::Vinegar => item.strength = own("acid of the", &PER_CENT_WV, acid, item.strength.clone()),
        _ => page.other_acid = acid,
    }
    let lacks = missing(&item);
    if !lacks.is_empty() {
        let message = format!("what {} is made of is not said: {} missing", item.words, lacks.join(", "));
        findings.push(
            Finding::error(Code::MissingKey, at, message)
                .why("no sum can be made with it")
                .write("density: 1.35 g/mL\nwater: 30 %\nsugars: 67 %\nenergy: 269 kcal"),
        );
        return None;
    }
    if let Some(Fact::Own { value, .. }) = &item.water
        && item.is_honey()
        && !(HONEY_GRAVITY.within.0..=HONEY_GRAVITY.within.1).contains(value)
    {
        let message = "the honey's water is outside the table that honey is worked by";
        findings.push(Finding::error(Code::BadNumber, at, message).why("it goes from 13 to 21 % of water"));
        return None;
    }
    Some((item, page))
}

/// The item that others of its kind are like, where their page does not say.
const fn usual(kind: Kind) -> Option<&'static str> {
    match kind {
        Kind::Honey => Some("honey"),
        Kind::Sugar => Some("sugar"),
        Kind::Glycerin => Some("glycerin"),
        Kind::Spirit => Some("spirit"),
        Kind::Vinegar => Some("vinegar"),
        Kind::Oil => Some("oil"),
        Kind::Wax => Some("beeswax"),
        Kind::Gum => Some("gum arabic"),
        // Syrups differ too much, and of these two no sum is made.
        Kind::Syrup | Kind::Salt | Kind::Juice => None,
    }
}

/// What a sum would need of it and nobody says.
fn missing(item: &Item) -> Vec<&'static str> {
    if item.kind != Kind::Syrup {
        return Vec::new();
    }
    let wanted = [
        ("density, or a cup", item.density.is_none()),
        ("water", item.water.is_none()),
        ("sugars", item.sugars.is_none()),
        ("energy", item.energy.is_none()),
    ];
    wanted.into_iter().filter(|(_, lacks)| *lacks).map(|(word, _)| word).collect()
}

/// The page's figures, each with its own source or the page's.
struct Figures<'f, 'a> {
    fields: &'f mut Fields<'a>,
    general: Option<Cite>,
    findings: &'f mut Vec<Finding>,
}

impl Figures<'_, '_> {
    fn take(&mut self, key: &str, by: fn(&str) -> Result<Amount, Misread>) -> Option<Cited> {
        let node = self.fields.take(key)?;
        cited(node, &format!("`{key}`"), by, self.general.as_ref(), self.findings)
    }
}

/// `1.35 g/mL`.
fn density(text: &str) -> Result<Amount, Misread> {
    let number = text.trim().strip_suffix("g/mL").map(str::trim_end).unwrap_or_default();
    let mut amount = measure::mass(&format!("{number} g")).map_err(|_| {
        let message = format!("`{}` is no density", text.trim());
        let mut misread = Misread::new(0..text.len(), Code::BadNumber, message);
        misread.write.push("1.35 g/mL".to_string());
        misread
    })?;
    amount.written = text.trim().to_string();
    Ok(amount)
}

/// A share in per cent; nothing is one too.
fn share(text: &str) -> Result<Amount, Misread> {
    match measure::amount_or_zero(text) {
        Ok(none) if none.high == 0.0 && none.measure == Measure::PerCent => Ok(none),
        _ => measure::per_cent(text),
    }
}

/// `304 kcal`, in 100 g; as kcal in a gram. Nothing is an energy too.
fn in_100_g(text: &str) -> Result<Amount, Misread> {
    let mut amount = measure::amount_or_zero(text)?;
    if amount.dimension() != measure::Dimension::ENERGY {
        let message = format!("`{}` is no energy", text.trim());
        let mut misread = Misread::new(0..text.len(), Code::WrongDimension, message);
        misread.write.push("304 kcal".to_string());
        return Err(misread);
    }
    amount.low /= 100.0;
    amount.high /= 100.0;
    Ok(amount)
}
