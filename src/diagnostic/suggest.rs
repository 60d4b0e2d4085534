//! The known word nearest to one that was mistyped.

/// The known word that `written` most likely stands for: few slips of the hand away, or begun alike.
///
/// Upper and lower case count as the same. Of two equally near words the first one given wins, so
/// that a closed list decides by its own order.
pub fn nearest<'a>(written: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let written = letters(written);
    let scored = known.into_iter().filter_map(|word| Some((rank(&written, &letters(word))?, word)));
    scored.min_by_key(|&(rank, _)| rank).map(|(_, word)| word)
}

/// Shortest beginning that names a word: two letters fit too many.
const BEGINNING: usize = 3;

fn letters(word: &str) -> Vec<char> {
    word.trim().chars().flat_map(char::to_lowercase).collect()
}

/// Slips rank before beginnings: `steap` is `steep` before it is the start of anything.
fn rank(written: &[char], known: &[char]) -> Option<(u8, usize)> {
    let (short, long) = (written.len().min(known.len()), written.len().max(known.len()));
    // About a third of the letters may be wrong; one letter alone resembles nothing.
    let allowed = (long / 3).max(1);
    let apart = long - short;
    // The sums are not done for words that differ in length alone by more than is allowed.
    if apart <= allowed {
        let slips = slips(written, known);
        if slips <= allowed && slips < long {
            return Some((0, slips));
        }
    }
    let begins = short >= BEGINNING && (written.starts_with(known) || known.starts_with(written));
    begins.then_some((1, apart))
}

/// Letters put in, left out, changed, or swapped with their neighbour.
fn slips(a: &[char], b: &[char]) -> usize {
    let mut before: Vec<usize> = Vec::new();
    let mut above: Vec<usize> = (0..=b.len()).collect();
    for (i, &from) in a.iter().enumerate() {
        let mut row = vec![i + 1];
        for (j, &to) in b.iter().enumerate() {
            let change = above[j] + usize::from(from != to);
            let mut least = change.min(above[j + 1] + 1).min(row[j] + 1);
            if i > 0 && j > 0 && from == b[j - 1] && a[i - 1] == to {
                least = least.min(before[j - 1] + 1);
            }
            row.push(least);
        }
        before = std::mem::replace(&mut above, row);
    }
    above.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    const KEYS: [&str; 7] = ["name", "preparation", "plants", "liquid", "method", "steep", "strain"];

    #[track_caller]
    fn suggests(written: &str, wanted: Option<&'static str>) {
        assert_eq!(nearest(written, KEYS), wanted, "for {written:?}");
    }

    #[test]
    fn slips_of_the_hand_find_their_word() {
        suggests("liqiud", Some("liquid"));
        suggests("Mehtod", Some("method"));
        suggests("plant", Some("plants"));
        suggests("NAME", Some("name"));
        suggests("preperation", Some("preparation"));
        suggests("steap", Some("steep"));
    }

    #[test]
    fn a_beginning_finds_its_word() {
        suggests("prep", Some("preparation"));
        suggests("liquids used", Some("liquid"));
        suggests("pr", None);
    }

    #[test]
    fn what_resembles_nothing_finds_nothing() {
        suggests("keep", None);
        suggests("x", None);
        suggests("", None);
        assert_eq!(nearest("a", ["b"]), None);
        assert_eq!(nearest("name", []), None);
    }

    #[test]
    fn of_two_equally_near_the_first_is_taken() {
        assert_eq!(nearest("mx", ["ml", "mg"]), Some("ml"));
        assert_eq!(nearest("mx", ["mg", "ml"]), Some("mg"));
    }

    #[test]
    fn letters_beyond_ascii_count_as_one() {
        assert_eq!(nearest("ÉCHINACEA", ["échinacéa"]), Some("échinacéa"));
    }
}
