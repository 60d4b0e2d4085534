//! The kinds of finding: a closed list, each with the sentence the manual prints for it.

macro_rules! codes {
    ($($name:ident $text:literal $meaning:literal)*) => {
        /// A kind of finding. Short words, so that an author can say one aloud and look it up.
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
        pub enum Code { $(#[doc = $meaning] $name,)* }

        impl Code {
            /// Every code, in manual order.
            pub const ALL: &'static [Code] = &[$(Code::$name,)*];

            /// The word a finding shows.
            pub const fn text(self) -> &'static str {
                match self { $(Code::$name => $text,)* }
            }

            /// What the code means, for the manual.
            pub const fn meaning(self) -> &'static str {
                match self { $(Code::$name => $meaning,)* }
            }
        }
    };
}

codes! {
    MissingFile "missing-file" "A file or folder that is needed is not there."
    NotText "not-text" "A file is not UTF-8 text."
    EmptyFile "empty-file" "A file holds nothing to read."
    NoFrontMatter "no-front-matter" "A lesson or plant does not open with its facts between two lines of ---."
    OpenBlock "open-block" "A fenced block is not closed."
    NoRecipe "no-recipe" "A lesson holds no recipe."
    BadYaml "bad-yaml" "A block cannot be read as YAML."
    NotUsed "not-used" "A YAML feature that Stillroom does not take: anchors, aliases, tags."
    TwiceWritten "twice-written" "The same key stands twice."
    UnknownKey "unknown-key" "A key that is not in the list."
    Circle "circle" "A recipe that is made of itself, by way of what it takes."
    UnknownName "unknown-name" "A plant, pantry item, preparation or step that the formulary does not hold."
    MissingKey "missing-key" "A key that has to be there is not."
    WrongShape "wrong-shape" "A list, mapping or value stands where another was wanted."
    UnknownUnit "unknown-unit" "A unit that Stillroom does not know."
    BadNumber "bad-number" "Not a number, negative, nothing, or beyond any kitchen."
    NoUnit "no-unit" "An amount without its unit."
    NoBasis "no-basis" "What an amount is measured by, or of what, is not said."
    WrongDimension "wrong-dimension" "A mass where a volume was wanted, or the like."
    FreshOrDried "fresh-or-dried" "Whether the plant is fresh or dried is not said, or clashes with the ratio."
    StepOrder "step-order" "A step stands where it cannot be done."
    WrongKind "wrong-kind" "A preparation made in a way that is not its own."
    BelowNothing "below-nothing" "The sums come to less than nothing: more is taken than there is."
    BadLink "bad-link" "A link points to something that is not in the book."
    KeepDisagrees "keep-disagrees" "The recipe says it keeps where its sums say it does not."
    WordsDisagree "words-disagree" "A number in the text and the working disagree."
    BadAddress "bad-address" "Two pages would have the same address, or an address is not plain."
    BadPicture "bad-picture" "A picture that cannot be shown, is heavy, or stands on no page."
    BadTheme "bad-theme" "A template, style or script of the theme cannot be used."
    HoneyForInfant "honey-for-infant" "Honey is in what the recipe says is taken under 12 months."
    Raw "raw" "A plant that must be cooked is not, or not for long enough."
    FreshInOil "fresh-in-oil" "A fresh plant, or one of the onion family, stands in oil too long or too warm."
    FreshInHoney "fresh-in-honey" "A fresh plant stands in honey that is to be kept out of the refrigerator."
    AlcoholOverFlame "alcohol-over-flame" "Spirit stands in a pan that is to be heated."
    CeilingPassed "ceiling-passed" "The doses of a day come to more than a daily ceiling."
    StopStands "stop-stands" "A stop cannot be acknowledged."
    NothingToAcknowledge "nothing-to-acknowledge" "A caution is acknowledged that nothing calls for."
    PotTooSmall "pot-too-small" "What is made does not fit into the kitchen's pot."
    TooYoung "too-young" "The recipe names an age, and something in it is not for that age."
    Unfit "unfit" "A plant is made into what its page calls unfit for it."
    ClaimWords "claim-words" "The text promises what only a medicine may be said to do."
    AromaticBoiled "aromatic-boiled" "An aromatic plant is boiled, or stands in a pot that is being reduced."
    HotBath "hot-bath" "A bath comes out hotter than 40 °C."
    HotHoney "hot-honey" "Honey is stirred into liquid hotter than 40 °C."
}
