//! Every rule, stops first: what sets it off, what it says, where it comes from.

use super::Weight::{Note, Stop, Warning};
use super::found;
use super::rule::{Rule, Telling};
use crate::bibliography::{Source, Work};
use crate::diagnostic::Code;

const USUAL: Source = Source::practice("the usual caution");
const KITCHEN: Source = Source::practice("kitchen safety");
const FAMILY: Source = Source::practice("whoever reacts to one of a family may react to another");

/// Rows of `weight "id" when "..." says "lead" "text" about "..." not for [...] ask first [...] tells (...) by found; source;`; what
/// figures decide is found `by watching`
macro_rules! rules {
    ($($weight:ident $id:literal when $when:literal; says $lead:literal, $text:literal;
       about $about:literal $(, not for [$($not:literal),*])? $(, ask first [$($ask:literal),*])?;
       $(tells Code::$code:ident $message:literal, $why:literal, $write:literal;)?
       by $found:ident $($watched:ident)?; $source:expr;)*) => {
        /// Every rule.
        pub static RULES: &[Rule] = &[$(Rule {
            id: $id,
            weight: $weight,
            when: $when,
            lead: $lead,
            text: $text,
            about: $about,
            not_for: &[$($($not),*)?],
            ask_first: &[$($($ask),*)?],
            telling: rules!(@telling $($code $message, $why, $write)?),
            source: $source,
            found: rules!(@found $found $($watched)?),
            watched: rules!(@watched $found $($watched)?),
        },)*];
    };
    (@found elsewhere) => { None };
    (@found $found:ident) => { Some(found::$found) };
    (@found watching $watched:ident) => { None };
    (@watched $found:ident) => { None };
    (@watched watching $watched:ident) => { Some(found::$watched) };
    (@telling) => { None };
    (@telling $code:ident $message:literal, $why:literal, $write:literal) => {
        Some(Telling { code: Code::$code, message: $message, why: $why, write: $write })
    };
}

rules! {
    Stop "honey-infants" when "honey is in it";
        says "No honey under 12 months", "Not by the spoon, not in a bottle, not cooked: honey can carry what gives infants botulism.";
        about "honey", not for ["under 12 months"]; by honey;
        Source::published(Work::HoneyInfants, "not under 12 months, nor in food, water or formula");
    Stop "honey-for-infant" when "honey is in what the recipe says is taken under 12 months";
        says "Honey for an infant", "The press refuses the recipe.";
        about "honey";
        tells Code::HoneyForInfant "honey is in what is taken under 12 months", "honey can carry what gives infants botulism: not by the spoon, not in a bottle, not cooked", "sweeten: {maple syrup: 1/2 of the liquid by volume}";
        by honey_for_infant;
        Source::published(Work::HoneyInfants, "not under 12 months, nor in food, water or formula");
    Stop "never-raw" when "a plant is in it that must be cooked";
        says "Never raw: {}", "What is in them raw makes people ill within the hour. Keep to the time, and throw the marc away.";
        about ""; by never_raw; Source::practice("the time and its source stand on the plant’s page");
    Stop "raw" when "a plant that must be cooked is at the boil for less than its page says, or not at all";
        says "Not cooked: {}", "The press refuses the recipe.";
        about "";
        tells Code::Raw "{}: not at the boil for as long as the plant's page asks", "raw, or half cooked, it makes people ill", "simmer: {time: 30 min, lid: on}, with the plant in the pan from the start";
        by watching raw; Source::practice("the time and its source stand on the plant’s page");
    Stop "fresh-in-oil" when "a fresh plant, or garlic or onion in any form, stands in oil";
        says "Fresh plants in oil are never kept out of the cold", "Without air botulism can grow in them, and it cannot be smelt or tasted. Refrigerate it from the start, and throw it out four days after the plant went in.";
        about ""; by fresh_in_oil; Source::published(Work::OilsIdaho, "refrigerate, and discard after four days");
    Stop "fresh-in-oil-kept" when "a fresh plant, or garlic or onion, stands in oil for more than four days, or the oil is to be kept out of the refrigerator";
        says "Fresh plants in oil, kept", "The press refuses the recipe.";
        about "";
        tells Code::FreshInOil "a fresh plant, or one of the onion family, stands in oil too long or too warm", "without air botulism can grow in it, and it cannot be smelt: refrigerate, and discard after four days", "the plant dried, or steep: 2 days and keep: refrigerator";
        by watching fresh_in_oil_kept; Source::published(Work::OilsIdaho, "refrigerate, and discard after four days");
    Stop "fresh-in-honey-kept" when "a fresh plant stands in honey that is to be kept out of the refrigerator";
        says "Fresh plants in keeping honey", "The press refuses the recipe.";
        about "";
        tells Code::FreshInHoney "a fresh plant stands in honey that is to be kept out of the refrigerator", "its water thins the honey until it ferments", "keep: refrigerator";
        by fresh_in_honey_kept; Source::published(Work::BeekeepingHandbook, "moist honey ferments");
    Stop "alcohol-over-flame" when "spirit is in a pan that is to be heated";
        says "Never alcohol over a flame", "Its vapour catches fire, away from the pan too. A recipe that heats it is refused.";
        about ""; by elsewhere; Source::practice("its vapour catches fire, away from the pan too");
    Stop "ceiling-passed" when "the doses of a day come to more than a plant's daily ceiling, at the careful end of what is not known";
        says "More than a day’s ceiling: {}", "The press refuses the recipe.";
        about "";
        tells Code::CeilingPassed "a day's doses come to more than a ceiling: {}", "the sums count the whole plant, at the careful end of what is not known; the ceiling's source stands on the plant's page", "a smaller dose, fewer a day, or less of the plant";
        by watching ceiling_passed; Source::practice("each ceiling has its own source on the plant’s page");
    Stop "ceiling-passed-together" when "recipes that a lesson says are taken on one day come together to more than a daily ceiling";
        says "More than a day’s ceiling, together", "The press refuses the book.";
        about ""; by elsewhere; Source::practice("each ceiling has its own source on the plant’s page");

    Warning "changes-who" when "a variation is for other people than the recipe";
        says "A variation changes who may take it", "{}.";
        about ""; by changes_who; Source::reckoned("the cautions of the variation against those of the recipe");
    Warning "too-young" when "the recipe names an age, and something in it is not for that age";
        says "Not for every age the recipe names", "{}.";
        about "";
        tells Code::TooYoung "the recipe is for a younger age than something in it: {}", "the ages stand with their sources on the cautions' and the plants' pages", "a higher `from age`, or another plant";
        by too_young; Source::practice("the ages stand with their sources on the plants’ pages");
    Warning "ceiling" when "a plant in it has a daily ceiling";
        says "A daily ceiling", "{}. Everything taken that day counts towards it.";
        about ""; by watching ceiling; Source::practice("each ceiling has its own source on the plant’s page");
    Warning "no-longer" when "a plant in it is taken for a limited time only";
        says "Not without a pause", "{}.";
        about ""; by watching no_longer; Source::practice("the time and its source stand on the plant’s page");
    Warning "unfit" when "a plant's page calls the preparation unfit for it";
        says "Not what this plant is for", "{}.";
        about "";
        tells Code::Unfit "its page rules this out: {}", "the plant's own page says it is not made into this", "another preparation, or another plant";
        by unfit; Source::practice("the reason and its source stand on the plant’s page");
    Warning "aromatic-boiled" when "an aromatic plant is at the boil for more than 5 minutes, or in a pot that is being reduced";
        says "Part of the aroma is lost from the {}", "What is volatile leaves with the steam; a covered infusion keeps more of it.";
        about "";
        tells Code::AromaticBoiled "the aroma of {} leaves with the steam here", "aromatic plants are steeped, covered, off the heat: King's American Dispensatory", "add: {...} after the heat, or an infusion that is not reduced";
        by watching aromatic_boiled; Source::published(Work::KingsDispensatory, "Decocta: aromatic drugs are added last and covered");
    Warning "hot-honey" when "honey is stirred into liquid that no step has cooled to 40 °C";
        says "The honey is warmed", "Stirred in above 40 °C (104 °F) it is no longer raw.";
        about "";
        tells Code::HotHoney "honey goes into liquid that no step has cooled to 40 °C", "honey wanted raw is stirred in below that: common practice, no source", "- cool: 38 °C before - sweeten: {...}";
        by watching hot_honey; Source::practice("teachers keep raw honey below 40 °C");
    Warning "alcohol" when "it holds alcohol";
        says "It holds alcohol{}", "Not for children, in pregnancy, while nursing, with liver disease or in recovery; ask a pharmacist where medicines forbid it. Keep spirit and its vapour from flames.";
        about "alcohol", not for ["under 18 years", "pregnancy", "nursing", "liver disease", "recovery from alcohol"], ask first ["medicines that forbid alcohol", "driving"];
        by watching alcohol; Source::practice("the usual caution; ask a pharmacist");
    Warning "sugar" when "a dose holds half a gram of sugars or more";
        says "Sugars: {}", "Count them with diabetes, and rinse the mouth after.";
        about "sugars", ask first ["diabetes"]; by watching sugar; USUAL;
    Warning "acid-metal" when "vinegar is in it";
        says "Vinegar eats metal and teeth", "Use glass or enamel and a lid without bare metal; take it in water and rinse the mouth after.";
        about "vinegar", ask first ["reflux", "stomach ulcer"]; by acid; Source::practice("the usual caution with vinegar");
    Warning "sour-metal" when "a plant in it is sour";
        says "Sour, so no bare metal: {}", "Aluminium, copper and iron dissolve into it. Steel without rust, glass or enamel.";
        about ""; by sour; KITCHEN;
    Warning "ferments" when "sugars and water stand together, not strong enough to keep";
        says "It may ferment in the bottle", "Gas bursts tight glass. Keep it cold, open it to let the gas out, use a cork that can give, and throw it away if it fizzes.";
        about ""; by watching ferments; Source::practice("corks for what may ferment, tight lids for what keeps");
    Warning "hairs" when "a plant in it has hairs that irritate";
        says "Hairs that irritate: {}", "Strain twice, the second time through close cloth or paper, and throw the marc away.";
        about ""; by hairs; Source::practice("strained through cloth; the plant’s page has its source");
    Warning "hot-liquid" when "a pan or a kettle of hot liquid is in it";
        says "Hot liquid scalds", "Turn handles inward, strain away from you, keep children out of reach of the stove.";
        about ""; by hot_liquid; KITCHEN;
    Warning "hot-glass" when "hot liquid goes into bottles";
        says "Hot liquid cracks cold glass", "Warm the bottles first and stand them on a cloth.";
        about ""; by hot_glass; KITCHEN;
    Warning "hot-wax" when "wax is melted";
        says "Hot wax burns, and burns on", "Melt it over water, never over the flame; no drop of water into it, pour it away from you, and no phone call meanwhile.";
        about ""; by hot_wax; KITCHEN;
    Warning "hot-sugar" when "sugar is boiled to a stage";
        says "Boiling sugar burns deep", "It is half as hot again as boiling water, and it clings. Cold water within reach, children out of the kitchen.";
        about ""; by hot_sugar; KITCHEN;
    Warning "choking" when "it comes in pieces";
        says "Not for children under four", "They choke on what is hard and round; nobody sucks one lying down.";
        about "a piece to suck", not for ["under 4 years"]; by choking; Source::practice("the usual caution with sweets");
    Warning "steam" when "its steam is breathed";
        says "Steam scalds", "A steady table, eyes closed, the face well above the bowl. Never a child alone, and no bowl of hot water where children run about.";
        about "steam", ask first ["asthma"]; by steam; USUAL;
    Warning "bath" when "somebody sits in it";
        says "Feel the water first", "With diabetes or numb feet let somebody else feel it. Out at once if faint; never a child alone.";
        about "warm water", ask first ["heart disease", "diabetes", "pregnancy"]; by bath; USUAL;
    Warning "hot-bath" when "a bath comes out hotter than 40 °C";
        says "By the sum this bath is hotter than 40 °C (104 °F)", "Let it cool, or add cold water, and measure before anyone gets in.";
        about "";
        tells Code::HotBath "by the sum the bath is hotter than 40 °C", "above that it scalds thin or numb skin: common practice, no source", "cooler water, or less of the hot liquid";
        by watching hot_bath; USUAL;
    Warning "on-skin" when "it is for the skin";
        says "On whole skin only", "Try a little inside the elbow and wait a day. Not on wounds, burns or rashes, and not near the eyes.";
        about "skin", not for ["broken skin"]; by on_skin; USUAL;
    Warning "rinse" when "it is held in the mouth and spat out";
        says "Rinse and spit it out", "Not for a child too young to spit.";
        about ""; by rinse; USUAL;
    Warning "daisy-family" when "a plant of the daisy family (Asteraceae) is in it";
        says "Daisy family: {}", "Not with an allergy to ragweed, chamomile, chrysanthemum or others of the family.";
        about "", not for ["daisy-family allergy"]; by daisies; FAMILY;
    Warning "mint-family" when "a plant of the mint family (Lamiaceae) is in it";
        says "Mint family: {}", "Not with an allergy to mint, thyme, sage, basil or others of the family.";
        about "", not for ["mint-family allergy"]; by mints; FAMILY;
    Warning "carrot-family" when "a plant of the carrot family (Apiaceae) is in it";
        says "Carrot family: {}", "Not with an allergy to celery, carrot, fennel, anise, coriander or others of the family.";
        about "", not for ["carrot-family allergy"]; by carrots; FAMILY;
    Warning "pea-family" when "a plant of the pea family (Fabaceae) is in it";
        says "Pea family: {}", "Not with an allergy to peanut, soya, lupin or others of the family.";
        about "", not for ["pea-family allergy"]; by peas; FAMILY;
    Warning "onion-family" when "a plant of the onion family (Amaryllidaceae) is in it";
        says "Onion family: {}", "Not with an allergy to garlic, onion, leek or others of the family.";
        about "", not for ["onion-family allergy"]; by onions; FAMILY;
    Warning "of-bees" when "honey or beeswax is in it";
        says "Made by bees", "Not with an allergy to honey, propolis or wax; pollen is in all of them.";
        about "honey or wax", not for ["bee-product allergy"]; by of_bees; USUAL;
    Note "look-alike" when "a plant in it is mistaken for one that harms";
        says "Know it before you pick it: {}", "In doubt, buy it.";
        about ""; by look_alikes; Source::practice("the difference and its source stand on the plant’s page");
}
