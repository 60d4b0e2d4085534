//! The specimens behind the tables: every preparation has one, each is worked without a fault, gives the amounts for
//! a wanted result, and is taught in the demo.

use crate::kit;
use stillroom::keeping::judge;
use stillroom::measure::wanted;
use stillroom::recipe::PREPARATIONS;
use stillroom::specimens::worked;
use stillroom::variation::Worked;
use stillroom::working::Id;

#[test]
fn every_preparation_has_a_table_of_three_rows_at_least() {
    let specimens = worked().unwrap_or_else(|faults| panic!("{faults:#?}"));
    let have: Vec<&str> = specimens.iter().map(|specimen| specimen.kind.word).collect();
    let want: Vec<&str> = PREPARATIONS.iter().map(|kind| kind.word).collect();
    assert_eq!(have, want);
    for specimen in specimens {
        let (word, worked) = (specimen.kind.word, &specimen.worked);
        assert_eq!(worked.recipe.preparation.value.word, word);
        assert_eq!(worked.variations.len(), worked.recipe.variations.len(), "{word}: a row is left out");
        assert!(worked.variations.len() >= 2, "{word}");
        assert!(specimen.what.ends_with('.') && specimen.what.len() > 30, "{word}");
        // A row that decides nothing would be no row of a table.
        assert_ne!(judge(&worked.base, None).rung.class, "?", "{word}");
    }
}

#[test]
fn amounts_for_a_wanted_result_work_for_each() {
    for specimen in worked().unwrap_or_else(|faults| panic!("{faults:#?}")) {
        let (word, base) = (specimen.kind.word, &specimen.worked.base);
        // Bottles and tins by volume, pieces by count, the rest by weight: three times what the specimen makes.
        let (id, unit) = [(Id::Pieces, "pieces"), (Id::Finished, "mL"), (Id::FinishedWeight, "g")]
            .into_iter()
            .find(|(id, _)| base.value(*id).is_some())
            .unwrap_or_else(|| panic!("{word} makes nothing"));
        let target = (base.value(id).expect("it is made") * 3.0).round();
        let text = format!("{target} {unit}");
        let asked = wanted(&text).expect("it can be read");
        let found = stillroom::wanted::worked(base, &asked);
        let found = found.unwrap_or_else(|unmet| panic!("{word}, {text}: {}", unmet.why));
        let made = found.value(id).expect("it is made");
        assert!((made - target).abs() <= target * 1e-7, "{word}: {made} for {text}");
        // Of what is put in, nothing is left as it was.
        let plants = |of: &Worked| of.value(Id::Plants).expect("plants are put in");
        assert!(plants(&found) > plants(base) * 1.5, "{word}: {text}");
    }
}

#[test]
fn every_preparation_is_taught_in_a_lesson_of_the_demo() {
    for kind in PREPARATIONS {
        let path = kit::root().join(format!("site/tables/{}.html", kind.word.replace(' ', "-")));
        assert!(kit::read(&path).contains("href=\"../lessons/"), "no lesson makes {}", kind.with_article());
    }
}
