//! Every recipe by preparation, season, time and keeping.

use super::show::capital;
use super::view::{Frame, Link, ListGroup, RecipesPage, Way};
use crate::formulary::Season;
use crate::keeping::LADDER;
use crate::recipe::PREPARATIONS;

/// What of a recipe it is found by.
#[derive(Clone, Debug)]
pub struct Listed {
    /// Its name and place.
    pub link: Link,
    /// Its preparation's word.
    pub kind: &'static str,
    /// All steps from start to bottle, min.
    pub minutes: f64,
    /// How it keeps, in words.
    pub keeps: &'static str,
    /// When a plant in it is gathered.
    pub seasons: Vec<Season>,
}

/// Times by which a recipe is looked for: up to so many minutes, in words.
const TIMES: &[(f64, &str)] = &[
    (60.0, "within the hour"),
    (240.0, "in an evening"),
    (1_440.0, "by the next day"),
    (f64::INFINITY, "after days or weeks"),
];

/// The view.
pub fn page(frame: Frame, all: &[Listed]) -> RecipesPage {
    let way = |id: &str, groups: Vec<ListGroup>| Way {
        id: id.to_string(),
        groups: groups.into_iter().filter(|group| !group.links.is_empty()).collect(),
    };
    let kinds = PREPARATIONS.iter().map(|kind| group("kind", kind.word, all, |one| one.kind == kind.word));
    let mut seasons: Vec<ListGroup> = Season::NAMES
        .iter()
        .map(|(word, season)| group("season", word, all, |one| one.seasons.contains(season)))
        .collect();
    seasons.push(group("season", "any time", all, |one| one.seasons.is_empty()));
    let times = TIMES.iter().enumerate().map(|(n, (most, word))| {
        let least = n.checked_sub(1).map_or(0.0, |before| TIMES[before].0);
        group("time", word, all, |one| one.minutes <= *most && (one.minutes > least || n == 0))
    });
    let mut keeping: Vec<ListGroup> = Vec::new();
    // The ladder's order, from what binds first; several rungs may say the same.
    for rung in LADDER {
        if keeping.iter().all(|group| group.name != capital(rung.words)) {
            keeping.push(group("keeping", rung.words, all, |one| one.keeps == rung.words));
        }
    }
    RecipesPage {
        ways: vec![
            way("kind", kinds.collect()),
            way("season", seasons),
            way("time", times.collect()),
            way("keeping", keeping),
        ],
        frame,
    }
}

fn group(way: &str, word: &str, all: &[Listed], holds: impl Fn(&Listed) -> bool) -> ListGroup {
    ListGroup {
        name: capital(word),
        id: format!("{way}-{}", crate::manuscript::plain(word)),
        links: all.iter().filter(|one| holds(one)).map(|one| one.link.clone()).collect(),
    }
}
