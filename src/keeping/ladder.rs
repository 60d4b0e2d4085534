//! The ladder: classes as rows, from what binds first. Times are a teaching guideline, on the careful side.

use super::Verdict;
use crate::bibliography::{Source, Work};
use crate::materia::{
    ACETIC_IN_VINEGAR, ACID_ENOUGH, ACTIVITY_LIMIT, ALCOHOL_COVERS, ALCOHOL_COVERS_ACID, CLASS_B_SOLIDS,
    CLASS_C_SOLIDS, Figure, GLYCERIN_KEEPS, HONEY_FERMENTS, HONEY_KEEPS, NO_WATER, SELF_PRESERVING,
    TINCTURE_KEEPS,
};
use crate::working::Id;

/// What a rung asks.
#[derive(Clone, Copy, Debug)]
pub enum Test {
    /// The line is at least the limit.
    AtLeast(Id, &'static Figure),
    /// The line is at most the limit.
    AtMost(Id, &'static Figure),
    /// The line is there, and its figure tells why.
    Has(Id),
    /// The line is there; its figure is of no account.
    Is(Id),
    /// The line is not there.
    HasNot(Id),
    /// A measured pH is at most the limit.
    MeasuredAcid(&'static Figure),
}

/// What is said of a recipe that keeps its preparation out of the cold.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Shelf {
    /// Nothing.
    Fine,
    /// That the sums say otherwise.
    Warned,
    /// No: the press stops.
    Refused,
}

/// A class of keeping.
#[derive(Debug)]
pub struct Rung {
    /// Its letter.
    pub class: &'static str,
    /// What it says.
    pub verdict: Verdict,
    /// Where and how long, in words.
    pub words: &'static str,
    /// The same for a table's cell.
    pub brief: &'static str,
    /// Days for a label, on the careful side.
    pub days: u32,
    /// What is said of a recipe that keeps it out of the cold.
    pub shelf: Shelf,
    /// Tests that must all hold.
    pub all: &'static [Test],
    /// Why, in words before the figures.
    pub because: &'static str,
    /// Where the class comes from; the times are a guideline unless it says otherwise.
    pub source: Source,
}

impl Rung {
    /// Its class and how long, for a cell: "C: cold, 3 weeks".
    pub fn in_short(&self) -> String {
        format!("{}: {}", self.class, self.brief)
    }
}

const GUIDELINE: Source = Source::practice("a teaching guideline, on the careful side");
const RULE: Source = Source::published(Work::PreservingSyrups, "free water and the alcohol that covers it");

/// What is used as it is made, and not kept.
const fn at_once(all: &'static [Test]) -> Rung {
    Rung {
        class: "N",
        verdict: Verdict::DoesNot,
        words: "use it at once; nothing of it is kept",
        brief: "at once",
        days: 0,
        shelf: Shelf::Refused,
        all,
        because: "warm, wet and handled, it is the best of beds for microbes",
        source: GUIDELINE,
    }
}

/// From what binds first.
pub static LADDER: &[Rung] = &[
    at_once(&[Test::Is(Id::Area)]),
    at_once(&[Test::Is(Id::BathWater)]),
    Rung {
        class: "L",
        verdict: Verdict::CannotTell,
        words: "dry and dark in a closed tin, 2 months",
        brief: "dry, 2 months",
        days: 60,
        shelf: Shelf::Fine,
        all: &[Test::Is(Id::Pieces)],
        because: "it is dry, and sugar draws damp; nobody has published how long",
        source: GUIDELINE,
    },
    Rung {
        class: "K",
        verdict: Verdict::CannotTell,
        words: "dry and dark in a closed jar, 1 year",
        brief: "dry, 1 year",
        days: 365,
        shelf: Shelf::Fine,
        all: &[Test::HasNot(Id::Finished), Test::Has(Id::FinishedWeight)],
        because: "it is dry, and stays so while the jar is closed; nobody has published how long",
        source: GUIDELINE,
    },
    Rung {
        class: "G",
        verdict: Verdict::Keeps,
        words: "cool and dark, 1 year",
        brief: "cool, 1 year",
        days: 365,
        shelf: Shelf::Fine,
        all: &[Test::AtMost(Id::Moisture, &HONEY_KEEPS)],
        because: "the honey is dry enough",
        source: Source::published(Work::HoneyGrades, "US Grade A: not more than 18.6 % moisture"),
    },
    Rung {
        class: "G?",
        verdict: Verdict::CannotTell,
        words: "refrigerate, 4 weeks, and watch it",
        brief: "cold, 4 weeks",
        days: 28,
        shelf: Shelf::Warned,
        all: &[Test::AtMost(Id::Moisture, &HONEY_FERMENTS)],
        because: "honey this moist may ferment, by the yeast in it",
        source: GUIDELINE,
    },
    Rung {
        class: "M",
        verdict: Verdict::DoesNot,
        words: "refrigerate, 1 week: it ferments",
        brief: "cold, 1 week",
        days: 7,
        shelf: Shelf::Refused,
        all: &[Test::Has(Id::Moisture)],
        because: "honey this moist ferments",
        source: GUIDELINE,
    },
    Rung {
        class: "H",
        verdict: Verdict::Keeps,
        words: "cool and dark, 6 months",
        brief: "cool, 6 months",
        days: 180,
        shelf: Shelf::Fine,
        all: &[Test::AtMost(Id::WaterInOil, &NO_WATER)],
        because: "nothing but dried plants is in the oil",
        source: Source::published(Work::OilsMaine, "dried plants only, for an oil kept out of the cold"),
    },
    Rung {
        class: "I",
        verdict: Verdict::DoesNot,
        words: "refrigerate, 4 days, then throw away",
        brief: "cold, 4 days",
        days: 4,
        shelf: Shelf::Refused,
        all: &[Test::Has(Id::WaterInOil)],
        because: "fresh plants in oil shut out the air, and botulism needs no more",
        source: Source::published(
            Work::OilsIdaho,
            "fresh plants in oil: refrigerate, and discard after four days",
        ),
    },
    Rung {
        class: "J",
        verdict: Verdict::Keeps,
        words: "cool and dark, 3 years",
        brief: "cool, 3 years",
        days: 1095,
        shelf: Shelf::Fine,
        all: &[
            Test::AtLeast(Id::Covered, &ALCOHOL_COVERS),
            Test::AtLeast(Id::Abv, &TINCTURE_KEEPS),
            Test::HasNot(Id::Solids),
        ],
        because: "strong spirit covers all the water",
        source: RULE,
    },
    Rung {
        class: "E",
        verdict: Verdict::Keeps,
        words: "cool, 1 year",
        brief: "cool, 1 year",
        days: 365,
        shelf: Shelf::Fine,
        all: &[Test::AtMost(Id::FreeWater, &NO_WATER), Test::AtLeast(Id::Glycerin, &GLYCERIN_KEEPS)],
        because: "glycerin leaves no water free",
        source: RULE,
    },
    Rung {
        class: "S",
        verdict: Verdict::Keeps,
        words: "a cool shelf, 3 months; cold once opened",
        brief: "shelf, 3 months",
        days: 90,
        shelf: Shelf::Fine,
        all: &[Test::AtMost(Id::WaterActivity, &ACTIVITY_LIMIT)],
        because: "the water is bound",
        source: Source::published(Work::Cfr114, "water activity of 0.85 or less"),
    },
    Rung {
        class: "A",
        verdict: Verdict::Keeps,
        words: "cool, 6 months; cold once opened",
        brief: "cool, 6 months",
        days: 180,
        shelf: Shelf::Fine,
        all: &[Test::Has(Id::Abv), Test::AtLeast(Id::Covered, &ALCOHOL_COVERS)],
        because: "spirit covers the free water",
        source: RULE,
    },
    Rung {
        class: "A",
        verdict: Verdict::Keeps,
        words: "cool, 6 months; cold once opened",
        brief: "cool, 6 months",
        days: 180,
        shelf: Shelf::Fine,
        all: &[
            Test::Has(Id::Abv),
            Test::AtLeast(Id::Covered, &ALCOHOL_COVERS_ACID),
            Test::MeasuredAcid(&ACID_ENOUGH),
        ],
        because: "it is sour, and spirit covers the free water",
        source: RULE,
    },
    Rung {
        class: "F",
        verdict: Verdict::Keeps,
        words: "cool, 3 months",
        brief: "cool, 3 months",
        days: 90,
        shelf: Shelf::Fine,
        all: &[Test::AtLeast(Id::Acidity, &ACETIC_IN_VINEGAR)],
        because: "it is as sour as vinegar",
        source: Source::published(Work::HerbalVinegars, "three months in a cool place"),
    },
    Rung {
        class: "A",
        verdict: Verdict::Keeps,
        words: "cool, 6 months; cold once opened",
        brief: "cool, 6 months",
        days: 180,
        shelf: Shelf::Fine,
        all: &[Test::AtLeast(Id::Solids, &SELF_PRESERVING)],
        because: "a neutral syrup of this strength keeps itself",
        source: Source::published(Work::PreservingSyrups, "65 % of sugar by weight"),
    },
    Rung {
        class: "B",
        verdict: Verdict::DoesNot,
        words: "refrigerate, 2 months",
        brief: "cold, 2 months",
        days: 60,
        shelf: Shelf::Warned,
        all: &[Test::AtLeast(Id::Solids, &CLASS_B_SOLIDS)],
        because: "it is short of the 65 % that keep a syrup",
        source: GUIDELINE,
    },
    Rung {
        class: "C",
        verdict: Verdict::DoesNot,
        words: "refrigerate, 3 weeks",
        brief: "cold, 3 weeks",
        days: 21,
        shelf: Shelf::Warned,
        all: &[Test::AtLeast(Id::Solids, &CLASS_C_SOLIDS)],
        because: "it is far from the 65 % that keep a syrup",
        source: GUIDELINE,
    },
    Rung {
        class: "D",
        verdict: Verdict::DoesNot,
        words: "refrigerate, 1 week, or freeze",
        brief: "cold, 1 week",
        days: 7,
        shelf: Shelf::Warned,
        all: &[Test::Has(Id::Solids)],
        because: "it is a thin syrup: sweetened, not preserved",
        source: GUIDELINE,
    },
    Rung {
        class: "W",
        verdict: Verdict::DoesNot,
        words: "refrigerate, the day after at the latest",
        brief: "cold, 1 day",
        days: 1,
        shelf: Shelf::Warned,
        all: &[Test::HasNot(Id::Solids), Test::HasNot(Id::Covered), Test::HasNot(Id::Acidity)],
        because: "it is water with plants in it",
        source: GUIDELINE,
    },
    Rung {
        class: "?",
        verdict: Verdict::CannotTell,
        words: "refrigerate, the day after at the latest",
        brief: "cold, 1 day",
        days: 1,
        shelf: Shelf::Warned,
        all: &[],
        because: "no published rule decides this mixture",
        source: GUIDELINE,
    },
];
