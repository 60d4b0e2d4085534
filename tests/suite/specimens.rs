//! The specimens behind the tables: every preparation has one, and each is worked without a fault.

use stillroom::keeping::judge;
use stillroom::recipe::PREPARATIONS;
use stillroom::specimens::worked;

#[test]
fn every_preparation_has_a_table_of_three_rows_at_least() {
    let specimens = worked().unwrap_or_else(|faults| panic!("{faults:#?}"));
    let have: Vec<&str> = specimens.iter().map(|specimen| specimen.kind.word).collect();
    let want: Vec<&str> = PREPARATIONS.iter().map(|kind| kind.word).collect();
    assert_eq!(have, want);
    for specimen in &specimens {
        let (word, worked) = (specimen.kind.word, &specimen.worked);
        assert_eq!(worked.recipe.preparation.value.word, word);
        assert_eq!(worked.variations.len(), worked.recipe.variations.len(), "{word}: a row is left out");
        assert!(worked.variations.len() >= 2, "{word}");
        assert!(specimen.what.ends_with('.') && specimen.what.len() > 30, "{word}");
        // A row that decides nothing would be no row of a table.
        assert_ne!(judge(&worked.base, None).rung.class, "?", "{word}");
    }
}
