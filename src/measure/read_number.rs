//! Numbers as people write them: `2`, `1.5`, `1,000`, `1/2`, `1 1/2`, `1½`, and shares in words.

use super::misread::Misread;
use super::ratio::{Ratio, RatioError};
use crate::diagnostic::Code;

/// A number and where it ends in the text.
#[derive(Clone, Copy, Debug)]
pub(super) struct Number {
    pub value: Ratio,
    pub end: usize,
}

const fn vulgar(letter: char) -> Option<Ratio> {
    let (num, den) = match letter {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        _ => return None,
    };
    Some(Ratio::exact(num, den))
}

/// A number without a unit, as people write one: `3`, `0.75`, `1/2`, `1 1/2`; none where anything else stands there.
pub fn plain_number(text: &str) -> Option<f64> {
    leading_number(text).filter(|(_, rest)| rest.is_empty()).map(|(number, _)| number)
}

/// The number a text begins with, and what stands behind it; none where it begins with none.
pub fn leading_number(text: &str) -> Option<(f64, &str)> {
    let found = number(text, 0).ok()??;
    Some((found.value.to_f64(), rest(text, found.end).trim()))
}

/// The first byte at or after `from` that is not space.
pub(super) fn skip_space(text: &str, from: usize) -> usize {
    text.len() - rest(text, from).trim_start().len()
}

/// The text from a byte on; nothing where the byte is out of reach.
pub(super) fn rest(text: &str, from: usize) -> &str {
    text.get(from..).unwrap_or("")
}

fn first(text: &str, at: usize) -> Option<char> {
    rest(text, at).chars().next()
}

fn digit_at(text: &str, at: usize) -> bool {
    first(text, at).is_some_and(|letter| letter.is_ascii_digit())
}

fn digits_end(text: &str, from: usize) -> usize {
    let digits = rest(text, from).bytes().take_while(u8::is_ascii_digit).count();
    from + digits
}

fn whole(text: &str, from: usize, end: usize) -> Result<Ratio, Misread> {
    let digits: String = text[from..end].chars().filter(|letter| *letter != ',').collect();
    Ratio::from_decimal(&digits).map_err(|error| unreadable(from, end, error))
}

pub(super) fn unreadable(from: usize, end: usize, error: RatioError) -> Misread {
    let misread = Misread::new(from..end, Code::BadNumber, error.to_string());
    match error {
        RatioError::OverNothing => {
            misread.why("what stands below the stroke says into how many parts one is cut")
        }
        RatioError::TooLarge | RatioError::NotDecimal => {
            misread.why("no scale and no jug shows so many digits")
        }
    }
}

/// The number at `from` (space may come first), or none where no number starts.
pub(super) fn number(text: &str, from: usize) -> Result<Option<Number>, Misread> {
    let at = skip_space(text, from);
    let Some(start) = first(text, at) else {
        return Ok(None);
    };
    if let Some(value) = vulgar(start) {
        return Ok(Some(Number { value, end: at + start.len_utf8() }));
    }
    if matches!(start, '-' | '−' | '–' | '+') {
        let after = skip_space(text, at + start.len_utf8());
        // One sign at most, or a line of dashes would be read by as many calls.
        if !first(text, after).is_some_and(|next| next == '.' || next.is_numeric()) {
            return Ok(None);
        }
        let Some(unsigned) = number(text, after)? else {
            return Ok(None);
        };
        let message = if start == '+' {
            "a number is written without a plus in front".to_string()
        } else {
            format!("`{}` is below nothing; an amount must be more", &text[at..unsigned.end])
        };
        return Err(Misread::new(at..unsigned.end, Code::BadNumber, message).write(rest(text, after).trim()));
    }
    let mut end = digits_end(text, at);
    if end == at && !(start == '.' && digit_at(text, at + 1)) {
        return Ok(None);
    }
    if first(text, end) == Some(',') && digit_at(text, end + 1) {
        end = thousands(text, at, end)?;
    }
    if first(text, end) == Some('.') && digit_at(text, end + 1) {
        end = digits_end(text, end + 1);
        if matches!(first(text, end), Some('.' | ',')) && digit_at(text, end + 1) {
            let end = end + 1 + digits_end(rest(text, end + 1), 0);
            let message = format!("`{}` is not a number that can be read one way only", &text[at..end]);
            let why = "a point stands before decimals, a comma between thousands: 1,234.5";
            return Err(Misread::new(at..end, Code::BadNumber, message).why(why));
        }
        return Ok(Some(Number { value: whole(text, at, end)?, end }));
    }
    let value = whole(text, at, end)?;
    if let Some((below, below_end)) = below_line(text, end)? {
        return Ok(Some(Number { value: over(value, below, at, below_end)?, end: below_end }));
    }
    Ok(Some(match fraction(text, skip_space(text, end))? {
        Some(part) => {
            if part.value >= Ratio::ONE {
                let message =
                    format!("`{}`: the fraction after a whole number is below one", &text[at..part.end]);
                return Err(Misread::new(at..part.end, Code::BadNumber, message));
            }
            let sum = value.plus(part.value).map_err(|error| unreadable(at, part.end, error))?;
            Number { value: sum, end: part.end }
        }
        None => Number { value, end },
    }))
}

/// A fraction by itself, `1/2` or `½`, as it follows a whole number.
fn fraction(text: &str, at: usize) -> Result<Option<Number>, Misread> {
    if let Some(letter) = first(text, at)
        && let Some(value) = vulgar(letter)
    {
        return Ok(Some(Number { value, end: at + letter.len_utf8() }));
    }
    let above_end = digits_end(text, at);
    if above_end == at {
        return Ok(None);
    }
    let Some((below, end)) = below_line(text, above_end)? else {
        return Ok(None);
    };
    let value = over(whole(text, at, above_end)?, below, at, end)?;
    Ok(Some(Number { value, end }))
}

/// A stroke and the number below it.
fn below_line(text: &str, at: usize) -> Result<Option<(Ratio, usize)>, Misread> {
    let Some(stroke @ ('/' | '⁄')) = first(text, at) else {
        return Ok(None);
    };
    let from = at + stroke.len_utf8();
    let end = digits_end(text, from);
    if end == from { Ok(None) } else { Ok(Some((whole(text, from, end)?, end))) }
}

fn over(above: Ratio, below: Ratio, at: usize, end: usize) -> Result<Ratio, Misread> {
    above.over(below).map_err(|error| unreadable(at, end, error))
}

/// The end of a number with commas in it, where they part thousands and nothing else.
fn thousands(text: &str, at: usize, first_end: usize) -> Result<usize, Misread> {
    let mut end = first_end;
    let mut groups = vec![&text[at..first_end]];
    while first(text, end) == Some(',') && digit_at(text, end + 1) {
        let next = digits_end(text, end + 1);
        groups.push(&text[end + 1..next]);
        end = next;
    }
    let after = &groups[1..];
    let leading = groups[0].len() <= 3 && !groups[0].is_empty() && !groups[0].starts_with('0');
    if leading && after.iter().all(|group| group.len() == 3) {
        return Ok(end);
    }
    let message = format!("`{}` may be a decimal or a count of thousands", &text[at..end]);
    let mut misread = Misread::new(at..end, Code::BadNumber, message)
        .why("a point stands before decimals, a comma between thousands");
    if let [part] = after {
        let (head, tail) = (&text[..at], rest(text, end));
        misread = misread.write(format!("{head}{}.{part}{tail}", groups[0]).trim());
        if leading && part.len() < 3 {
            misread = misread.write(format!("{head}{},{part:0<3}{tail}", groups[0]).trim());
        }
    }
    Err(misread)
}

/// Shares that are said in words; longer ones first where one starts another.
const WORDS: [(&str, i128, i128); 19] = [
    ("equal to", 1, 1),
    ("as much as", 1, 1),
    ("the same as", 1, 1),
    ("twice", 2, 1),
    ("double", 2, 1),
    ("three times", 3, 1),
    ("a half", 1, 2),
    ("one half", 1, 2),
    ("half", 1, 2),
    ("a third", 1, 3),
    ("one third", 1, 3),
    ("two thirds", 2, 3),
    ("two-thirds", 2, 3),
    ("one-third", 1, 3),
    ("a quarter", 1, 4),
    ("one quarter", 1, 4),
    ("one fourth", 1, 4),
    ("three quarters", 3, 4),
    ("three-quarters", 3, 4),
];

/// A share at `from`: a number, a number of per cent, or words such as `half` and `twice`.
pub(super) fn share(text: &str, from: usize) -> Result<Option<Number>, Misread> {
    let at = skip_space(text, from);
    for (words, num, den) in WORDS {
        let end = at + words.len();
        let same = text.get(at..end).is_some_and(|start| start.eq_ignore_ascii_case(words));
        if same && !first(text, end).is_some_and(char::is_alphanumeric) {
            return Ok(Some(Number { value: Ratio::exact(num, den), end }));
        }
    }
    let Some(plain) = number(text, at)? else {
        return Ok(None);
    };
    let unit = skip_space(text, plain.end);
    for sign in ["%", "percent", "per cent"] {
        if rest(text, unit).starts_with(sign) {
            let value =
                plain.value.over(Ratio::whole(100)).map_err(|error| unreadable(at, plain.end, error))?;
            return Ok(Some(Number { value, end: unit + sign.len() }));
        }
    }
    Ok(Some(plain))
}

/// A number as a cook writes it, `1 1/2`, where its fraction is one people know; per cent otherwise.
pub(super) fn share_text(value: Ratio) -> String {
    let (num, den) = (value.numerator(), value.denominator());
    let (whole, part) = (num / den, num % den);
    if part == 0 {
        whole.to_string()
    } else if den > 12 {
        let per_cent = super::decimal::decimal(value.to_f64() * 100.0, 2);
        format!("{} %", per_cent.trim_end_matches('0').trim_end_matches('.'))
    } else if whole == 0 {
        format!("{part}/{den}")
    } else {
        format!("{whole} {part}/{den}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> (Ratio, &str) {
        let number = number(text, 0).expect("readable").expect("a number");
        (number.value, rest(text, number.end))
    }

    #[test]
    fn numbers_are_read_as_people_write_them() {
        let half = |whole: i128| Ratio::exact(2 * whole + 1, 2);
        assert_eq!(read("1 1/2 cups"), (half(1), " cups"));
        assert_eq!(read("1½ cups"), (half(1), " cups"));
        assert_eq!(read("1 ½cups"), (half(1), "cups"));
        assert_eq!(read("½"), (half(0), ""));
        assert_eq!(read("1⁄2"), (half(0), ""));
        assert_eq!(read("1.5L"), (half(1), "L"));
        assert_eq!(read(".5 g"), (half(0), " g"));
        assert_eq!(read("1,000 mL"), (Ratio::whole(1000), " mL"));
        assert_eq!(read("12,345,678.5"), (half(12_345_678), ""));
        assert_eq!(read("2 12 oz"), (Ratio::whole(2), " 12 oz"));
        assert!(number("cup", 0).expect("readable").is_none());
        assert!(number("", 0).expect("readable").is_none());
    }

    #[test]
    fn a_decimal_comma_gets_both_readings() {
        let misread = number("1,5 L", 0).expect_err("two readings");
        assert_eq!(misread.code, Code::BadNumber);
        assert_eq!(misread.write, ["1.5 L", "1,500 L"]);
        assert_eq!(number("0,5 L", 0).expect_err("a decimal").write, ["0.5 L"]);
        for wrong in ["1.000,5 L", "1.2.3", "1,00,000", "1/0 cup", "1 3/2 cup", "-2 g", "−2 g", "+2 g"] {
            assert!(number(wrong, 0).is_err(), "{wrong}");
        }
    }

    #[test]
    fn a_line_of_dashes_is_no_number() {
        assert!(number(&"-".repeat(1_000_000), 0).expect("readable").is_none());
    }

    #[test]
    fn shares_are_read_and_written_in_words() {
        let share = |text| share(text, 0).expect("readable").expect("a share").value;
        assert_eq!(share("half the liquid"), Ratio::exact(1, 2));
        assert_eq!(share("Twice the liquid"), Ratio::whole(2));
        assert_eq!(share("50 % of"), Ratio::exact(1, 2));
        assert_eq!(share_text(Ratio::exact(3, 2)), "1 1/2");
        assert_eq!(share_text(Ratio::exact(37, 100)), "37 %");
        assert_eq!(share_text(Ratio::whole(2)), "2");
    }
}
