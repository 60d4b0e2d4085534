//! Whom a caution speaks of: a closed list, so that an index can be made of it and no two pages say it differently.

use crate::diagnostic::{Code, nearest};
use crate::measure::Misread;

/// What kind of group.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Kind {
    /// A time of life.
    Person,
    /// What somebody has.
    Condition,
    /// What somebody takes.
    Medicine,
    /// What somebody does not bear.
    Allergy,
}

impl Kind {
    /// Every kind with its heading, in the order of the index.
    pub const ALL: &'static [(Kind, &'static str)] = &[
        (Kind::Person, "By age and time of life"),
        (Kind::Condition, "With a condition"),
        (Kind::Medicine, "With medicines"),
        (Kind::Allergy, "With an allergy"),
    ];
}

/// A group of people.
#[derive(PartialEq, Eq, Debug)]
pub struct Group {
    /// As an author writes it.
    pub word: &'static str,
    /// After "not": "in pregnancy".
    pub phrase: &'static str,
    /// What kind.
    pub kind: Kind,
}

macro_rules! groups {
    ($($kind:ident { $($word:literal $phrase:literal)* })*) => {
        /// Every group, in the order they are listed.
        pub static GROUPS: &[Group] = &[$($(Group { word: $word, phrase: $phrase, kind: Kind::$kind },)*)*];
    };
}

groups! {
    Person {
        "pregnancy" "in pregnancy"
        "nursing" "while nursing"
        "trying to conceive" "when trying to conceive"
    }
    Condition {
        "high blood pressure" "with high blood pressure"
        "low blood pressure" "with low blood pressure"
        "heart disease" "with heart disease"
        "kidney disease" "with kidney disease"
        "kidney stones" "with kidney stones"
        "liver disease" "with liver disease"
        "gallstones" "with gallstones"
        "bile duct blockage" "with a blocked bile duct"
        "stomach ulcer" "with a stomach ulcer"
        "reflux" "with reflux"
        "epilepsy" "with epilepsy"
        "diabetes" "with diabetes"
        "asthma" "with asthma"
        "thyroid disease" "with thyroid disease"
        "hormone-sensitive conditions" "with a hormone-sensitive condition"
        "low potassium" "with low potassium"
        "oedema" "with oedema"
        "coeliac disease" "with coeliac disease"
        "autoimmune disease" "with an autoimmune disease"
        "bleeding disorder" "with a bleeding disorder"
        "fever" "with a fever"
        "surgery" "before surgery"
        "recovery from alcohol" "in recovery from alcohol"
        "driving" "before driving"
        "broken skin" "on broken skin"
    }
    Medicine {
        "blood-thinning medicines" "with blood-thinning medicines"
        "blood-pressure medicines" "with blood-pressure medicines"
        "water tablets" "with water tablets"
        "heart medicines" "with heart medicines"
        "diabetes medicines" "with diabetes medicines"
        "sedatives" "with sedatives"
        "thyroid medicines" "with thyroid medicines"
        "immune-suppressing medicines" "with medicines that hold back the immune system"
        "hormones" "with hormones, the pill among them"
        "lithium" "with lithium"
        "medicines by mouth" "close to medicines taken by mouth"
        "medicines that forbid alcohol" "with medicines that forbid alcohol"
    }
    Allergy {
        "daisy-family allergy" "with an allergy to the daisy family"
        "mint-family allergy" "with an allergy to the mint family"
        "carrot-family allergy" "with an allergy to the carrot family"
        "pea-family allergy" "with an allergy to the pea family"
        "onion-family allergy" "with an allergy to the onion family"
        "citrus allergy" "with a citrus allergy"
        "bee-product allergy" "with an allergy to what bees make"
        "cinnamon allergy" "with a cinnamon allergy"
        "gluten" "without gluten"
        "latex allergy" "with a latex allergy"
        "aspirin allergy" "with an aspirin allergy"
        "nut allergy" "with a nut allergy"
    }
}

/// Somebody a caution speaks of. Ages come first, the youngest first.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Who {
    /// A child under so many months.
    Under(u16),
    /// A group of the list.
    Group(&'static Group),
}

impl PartialOrd for Who {
    fn partial_cmp(&self, other: &Who) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Who {
    fn cmp(&self, other: &Who) -> std::cmp::Ordering {
        self.place().cmp(&other.place())
    }
}

/// Months in a year.
const YEAR: u16 = 12;
/// From here on an age is told in years.
const IN_YEARS: u16 = 24;
/// No age is beyond it, months.
const OLDEST: u16 = 1200;

impl Who {
    /// The group of that word; the word is one of the list.
    pub fn named(word: &str) -> Option<Who> {
        GROUPS.iter().find(|group| group.word == word).map(Who::Group)
    }

    /// Reads `pregnancy`, or `under 12 years`.
    ///
    /// # Errors
    /// The word is not in the list, or the age is none.
    pub fn read(text: &str) -> Result<Who, Misread> {
        if let Some(age) = text.trim().strip_prefix("under ") {
            return under(text, age);
        }
        Who::named(text.trim()).ok_or_else(|| {
            let words = || GROUPS.iter().map(|group| group.word);
            let mut misread = Misread::new(
                0..text.len(),
                Code::UnknownName,
                format!("`{}` is nobody this book knows", text.trim()),
            );
            let list: Vec<&str> = words().collect();
            misread.why = Some(format!("the words known here are `under 12 years` and {}", list.join(", ")));
            misread.write.extend(nearest(text.trim(), words()).map(str::to_string));
            misread
        })
    }

    /// After "not": "under 12 months", "in pregnancy".
    pub fn phrase(self) -> String {
        match self {
            Who::Under(months) if months < IN_YEARS || !months.is_multiple_of(YEAR) => {
                format!("under {months}\u{a0}months")
            }
            Who::Under(months) => format!("under {}\u{a0}years", months / YEAR),
            Who::Group(group) => group.phrase.to_string(),
        }
    }

    /// As an author writes it: "under 12 months", "pregnancy".
    pub fn word(self) -> String {
        match self {
            Who::Under(_) => self.phrase(),
            Who::Group(group) => group.word.to_string(),
        }
    }

    /// What kind.
    pub const fn kind(self) -> Kind {
        match self {
            Who::Under(_) => Kind::Person,
            Who::Group(group) => group.kind,
        }
    }

    /// Its anchor in the index.
    pub fn anchor(self) -> String {
        match self {
            Who::Under(months) => format!("under-{months}-months"),
            Who::Group(group) => group.word.replace(' ', "-"),
        }
    }

    fn place(self) -> (bool, u16, usize) {
        match self {
            Who::Under(months) => (false, months, 0),
            Who::Group(group) => {
                let at = GROUPS.iter().position(|other| other.word == group.word);
                (true, 0, at.unwrap_or(GROUPS.len()))
            }
        }
    }
}

fn under(text: &str, age: &str) -> Result<Who, Misread> {
    age_in_months(age).map(Who::Under).map_err(|mut misread| {
        let before = text.len() - age.len();
        misread.at = misread.at.start + before..misread.at.end + before;
        misread.write.iter_mut().for_each(|write| *write = format!("under {write}"));
        misread
    })
}

/// Reads an age in whole months: `12 months`, `4 years`. Kitchens do not measure in these.
///
/// # Errors
/// It is no whole number, or of something else.
pub fn age_in_months(text: &str) -> Result<u16, Misread> {
    let (number, unit) = text.trim().split_once([' ', '\u{a0}']).unwrap_or((text.trim(), ""));
    let months = match (number.parse::<u16>(), unit.trim()) {
        (Ok(months), "month" | "months") => Some(months),
        (Ok(years), "year" | "years") => years.checked_mul(YEAR),
        _ => None,
    };
    months.filter(|months| (1..=OLDEST).contains(months)).ok_or_else(|| {
        let message = format!("`{}` is no age in whole months or years", text.trim());
        let mut misread = Misread::new(0..text.len(), Code::BadNumber, message);
        misread.write.push("12 years".to_string());
        misread
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn people_are_read_and_told() {
        assert_eq!(Who::read("under 12 months"), Ok(Who::Under(12)));
        assert_eq!(Who::read("under 4 years").map(Who::phrase).as_deref(), Ok("under 4\u{a0}years"));
        assert_eq!(Who::read("under 18 months").map(Who::phrase).as_deref(), Ok("under 18\u{a0}months"));
        assert_eq!(Who::read("pregnancy").map(Who::phrase).as_deref(), Ok("in pregnancy"));
        assert_eq!(Who::read("epilepsi").expect_err("misspelt").write, ["epilepsy"]);
        assert_eq!(Who::read("under twelve").expect_err("no number").code, Code::BadNumber);
        assert_eq!(Who::read("under 3 g").expect_err("no time").write, ["under 12 years"]);
    }

    #[test]
    fn ages_stand_first_and_words_are_plain() {
        let mut all = vec![
            Who::named("nursing").unwrap(),
            Who::Under(48),
            Who::named("pregnancy").unwrap(),
            Who::Under(12),
        ];
        all.sort();
        let words: Vec<String> = all.into_iter().map(Who::anchor).collect();
        assert_eq!(words, ["under-12-months", "under-48-months", "pregnancy", "nursing"]);
        let plain = |c: char| c.is_ascii_lowercase() || c == ' ' || c == '-';
        assert!(GROUPS.iter().all(|group| group.word.chars().all(plain)));
    }
}
