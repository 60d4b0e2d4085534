//! Dates as a teacher writes them, and days after them. The one place that knows the calendar crate.

use jiff::ToSpan;
use jiff::civil::Date;

use crate::diagnostic::Code;
use crate::measure::Misread;

/// A day.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct Day(Date);

impl Day {
    /// Reads `2026-09-22`.
    ///
    /// # Errors
    /// Anything else, and days that are not in the calendar.
    pub fn read(text: &str) -> Result<Day, Misread> {
        let parsed = text.trim().parse::<Date>().ok().filter(|date| date.year() > 0);
        parsed.map(Day).ok_or_else(|| {
            let message = format!("`{text}` is not a date such as 2026-09-22");
            let mut misread = Misread::new(0..text.len(), Code::BadNumber, message);
            misread.why = Some("year, month and day, so that it reads the same everywhere".to_string());
            misread
        })
    }

    /// So many days later; the same day where the calendar ends.
    pub fn after(self, days: u32) -> Day {
        Day(self.0.checked_add(i64::from(days).days()).unwrap_or(self.0))
    }

    /// `2026-09-22`, as ISO 8601 has it.
    pub fn iso(self) -> String {
        self.0.strftime("%Y-%m-%d").to_string()
    }

    /// "22 September 2026".
    pub fn words(self) -> String {
        self.0.strftime("%-d %B %Y").to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Trade template 52: made on 12 October, class B (2 months): use by 12 December; 60 days end one day before.
    #[test]
    fn days_are_counted_by_the_calendar() {
        let day = Day::read("2026-10-12").expect("a date");
        assert_eq!(day.after(60).words(), "11 December 2026");
        assert_eq!(
            Day::read("2028-02-28").map(|day| day.after(1).words()),
            Ok("29 February 2028".to_string())
        );
        assert!(Day::read("2026-02-30").is_err() && Day::read("22.9.2026").is_err());
    }
}
