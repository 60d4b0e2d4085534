//! Works cited: a closed list, data only, and what a source can be.
//!
//! A figure, formula or caution carries a [`Source`]; there is no default, so one without a source
//! does not compile. The *Method and sources* page is printed from this list.

use std::borrow::Cow;

macro_rules! works {
    ($($name:ident $id:literal $title:literal, $maker:literal, $year:literal;)*) => {
        /// A work cited.
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
        pub enum Work { $(#[doc = $title] $name,)* }

        impl Work {
            /// Every work, in the order of the list.
            pub const ALL: &'static [Work] = &[$(Work::$name,)*];

            /// Its anchor on *Method and sources*.
            pub const fn id(self) -> &'static str {
                match self { $(Work::$name => $id,)* }
            }

            /// Its title.
            pub const fn title(self) -> &'static str {
                match self { $(Work::$name => $title,)* }
            }

            /// Who made it.
            pub const fn maker(self) -> &'static str {
                match self { $(Work::$name => $maker,)* }
            }

            /// The year or edition; empty where the work is kept current.
            pub const fn year(self) -> &'static str {
                match self { $(Work::$name => $year,)* }
            }
        }
    };
}

works! {
    NutrientDatabase "nutrient-database" "National Nutrient Database for Standard Reference, release 27",
        "United States Department of Agriculture", "2014";
    Usp32 "usp-32" "USP 32–NF 27, monograph Syrup", "United States Pharmacopeia", "2009";
    PreservingSyrups "preserving-syrups" "Pharmaceutics and Compounding Laboratory: Preserving Syrups",
        "University of North Carolina", "";
    HoneyDensity "honey-density" "Specific gravity of honey by moisture (table after White and Wedmore)",
        "United States Department of Agriculture", "";
    DecoctingMachine "decocting-machine" "How to properly add water when using a Chinese decocting machine",
        "trade article", "";
    SyrupNotes "syrup-notes" "Herbal Syrups, a class page", "teaching notes", "";
    FreshPlantTincture "fresh-plant-tincture" "Fresh Plant Tincture: outlines of over 500 major botanical medicines",
        "teaching notes", "";
    OimlR22 "oiml-r22" "International Recommendation R 22: International alcoholometric tables",
        "International Organization of Legal Metrology", "1975";
    Sps4 "sps-4" "Specification and Standard SPS-4: Densimetry and tables",
        "International Commission for Uniform Methods of Sugar Analysis", "1998";
    Vavrinecz "vavrinecz" "Solubility of sucrose in water", "G. Vavrinecz", "1962";
    GlycerolTable "glycerol-table" "Density of aqueous glycerol solutions (handbook table)", "Bosart and Snoddy", "1928";
    Norrish "norrish" "Water activity of solutions by Norrish's equation; constants of Chirife and others",
        "Norrish; Chirife, Ferro Fontán and Benmergui", "1980";
    Ross "ross" "Estimation of water activity in intermediate moisture foods", "K. D. Ross", "1975";
    HoneyActivity "honey-activity" "Water activity and moisture content of honey", "Chirife, Zamora and Motto", "2006";
    VinegarPolicy "vinegar-policy" "Compliance Policy Guide 525.825: Vinegar, definitions", "Food and Drug Administration", "1995";
    BeekeepingHandbook "beekeeping-handbook" "Beekeeping in the United States, Agriculture Handbook 335",
        "United States Department of Agriculture", "1980";
    HoneyGrades "honey-grades" "United States Standards for Grades of Extracted Honey",
        "United States Department of Agriculture", "1985";
    OilsMaine "oils-maine" "Safe Homemade Flavored and Infused Oils", "University of Maine Extension", "";
    OilsIdaho "oils-idaho" "Safe Garlic- and Herb-Infused Oils", "University of Idaho Extension", "";
    HerbalVinegars "herbal-vinegars" "Flavored Vinegars and Oils, 9.340", "Colorado State University Extension", "";
    Sp811 "sp-811" "Special Publication 811: Guide for the Use of the International System of Units",
        "National Institute of Standards and Technology", "2008";
    StandardAtmosphere "standard-atmosphere" "International Standard Atmosphere (ISO 2533)",
        "International Organization for Standardization", "1975";
    Antoine "antoine" "Vapour pressures of water by Antoine's equation (handbook constants)", "handbook", "";
    SteamTables "steam-tables" "IAPWS formulation 1995 for the properties of water",
        "International Association for the Properties of Water and Steam", "1995";
    FoodAndCooking "food-and-cooking" "On Food and Cooking", "Harold McGee", "2004";
    Cfr114 "cfr-114" "21 CFR 114.3: acidified foods, definitions", "United States Code of Federal Regulations", "";
    HoneyInfants "honey-infants" "Honey and infant botulism (EDIS AA142), after the CDC and the AAP",
        "University of Florida Extension", "2013";
    FoodCode "food-code" "Food Code, definition of food that needs time and temperature control; cooling; date marking",
        "Food and Drug Administration", "2017";
    GrowthLimits "growth-limits" "Least water activity for the growth of microbes (table 9.3, after Beuchat)",
        "food safety textbook", "2019";
    PharmaceuticalCalculations "pharmaceutical-calculations" "MD0802: Pharmaceutical Calculations", "United States Army", "";
    ChildDose "child-dose" "Clark’s rule and the rules beside it (encyclopedia article)", "encyclopedia", "";
    Coumarin "coumarin" "New insights into coumarin contained in cinnamon, Opinion 036/2012, after EFSA",
        "German Federal Institute for Risk Assessment", "2012";
    Glycyrrhizin "glycyrrhizin" "Glycyrrhizinic acid (63rd meeting), after the Scientific Committee on Food",
        "Joint FAO/WHO Expert Committee on Food Additives", "2005";
    CommissionE "commission-e" "Monographs of Commission E", "German Federal Health Agency", "1984–1994";
    Cfr27 "cfr-27" "27 CFR 5.11 and 19.1: proof and proof gallon", "United States Code of Federal Regulations", "";
    StandardDrinks "standard-drinks" "Standard drink (encyclopedia article, after the NIAAA and national health services)",
        "encyclopedia", "";
    Beeswax "beeswax" "Beeswax (encyclopedia article)", "encyclopedia", "";
    CodexHoney "codex-honey" "Standard for Honey, CXS 12-1981", "Codex Alimentarius Commission", "2001";
    KingsDispensatory "kings-dispensatory" "King's American Dispensatory", "Felter and Lloyd", "1898";
}

/// How well a source stands.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Standing {
    /// A figure or rule seen in the work it is cited from.
    Published,
    /// Recalled, not looked up; said so wherever it is shown.
    FromMemory,
    /// What the trade does; nobody has published it. It may advise, it never makes a verdict "keeps".
    CommonPractice,
    /// True by definition or by plain arithmetic.
    Reckoned,
    /// As this formulary's own files say.
    Formulary,
}

/// Where a figure, formula, rule or statement comes from.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Source {
    /// The work; none for common practice, arithmetic, and the formulary's own word.
    pub work: Option<Work>,
    /// The place in the work, or what is to be said instead.
    pub place: Cow<'static, str>,
    /// How well it stands.
    pub standing: Standing,
}

impl Source {
    const fn new(work: Option<Work>, place: &'static str, standing: Standing) -> Source {
        Source { work, place: Cow::Borrowed(place), standing }
    }

    /// Seen in the work, at that place.
    pub const fn published(work: Work, place: &'static str) -> Source {
        Source::new(Some(work), place, Standing::Published)
    }

    /// Said to stand in the work, but recalled from memory.
    pub const fn from_memory(work: Work, place: &'static str) -> Source {
        Source::new(Some(work), place, Standing::FromMemory)
    }

    /// Recalled, and no work to name.
    pub const fn memory(place: &'static str) -> Source {
        Source::new(None, place, Standing::FromMemory)
    }

    /// What the trade does, without a source.
    pub const fn practice(place: &'static str) -> Source {
        Source::new(None, place, Standing::CommonPractice)
    }

    /// A definition, a balance or plain arithmetic.
    pub const fn reckoned(place: &'static str) -> Source {
        Source::new(None, place, Standing::Reckoned)
    }

    /// As a file of the formulary says; `place` is its own source, or empty.
    pub fn formulary(place: impl Into<Cow<'static, str>>) -> Source {
        Source { work: None, place: place.into(), standing: Standing::Formulary }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_are_plain_and_differ() {
        let mut seen = std::collections::BTreeSet::new();
        for work in Work::ALL {
            assert!(seen.insert(work.id()), "{} stands twice", work.id());
            assert!(work.id().chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-'));
        }
    }
}
