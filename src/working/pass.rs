//! Passes over the lines: values, ranges, what cannot be, and what stands under a result.

use super::{How, Id, Working};
use crate::formula::{Line, evaluate};

/// More assumptions than this in one recipe are refused: 3^k passes, and no reader could weigh them.
pub const MOST_ASSUMPTIONS: usize = 12;
/// Up to here the low, usual and high of every assumption are crossed in full.
const CROSSED_IN_FULL: usize = 6;

/// What floating point alone leaves below nothing counts as nothing.
const NOISE: f64 = 1e-9;

/// The least and the most a line may well be.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Range {
    /// The least.
    pub low: f64,
    /// The most.
    pub high: f64,
}

impl Range {
    /// Whether anything but rounding stands between the ends.
    pub fn is_wide(self) -> bool {
        (self.high - self.low).abs() > 1e-9 * self.high.abs().max(self.low.abs())
    }
}

impl Working {
    /// The value of every line. `set` replaces lines: an input that is varied, or any line measured.
    pub fn evaluate(&self, set: &[(Line, f64)]) -> Vec<f64> {
        let mut values = Vec::with_capacity(self.entries().len());
        for (line, entry) in self.lines().zip(self.entries()) {
            let set = set.iter().rev().find(|(of, _)| *of == line).map(|(_, value)| *value);
            values.push(set.unwrap_or_else(|| match &entry.how {
                How::Given { value, .. } | How::Published { value, .. } => *value,
                How::Assumed { usual, .. } => *usual,
                How::Worked(by) => evaluate(&by.formula.is, &by.with, &values, 0),
            }));
        }
        values
    }

    /// The assumptions that `set` does not settle, with their three values.
    fn open(&self, set: &[(Line, f64)]) -> Vec<(Line, [f64; 3])> {
        self.lines()
            .zip(self.entries())
            .filter(|(line, _)| !set.iter().any(|(of, _)| of == line))
            .filter_map(|(line, entry)| match &entry.how {
                How::Assumed { low, usual, high, .. } => Some((line, [*low, *usual, *high])),
                _ => None,
            })
            .collect()
    }

    /// How many assumptions a reader would have to weigh.
    pub fn assumptions(&self) -> usize {
        self.open(&[]).len()
    }

    /// The range of every line: low, usual and high of every open assumption crossed (3^k passes up
    /// to six, the corners and the usual beyond), each formula's own accuracy added after.
    ///
    /// Low, usual *and* high, because what the marc keeps pushes some lines both ways: the corners
    /// alone can miss the end by some per cent of the range.
    pub fn range(&self, set: &[(Line, f64)]) -> Vec<Range> {
        let mut ranges: Vec<Range> =
            self.evaluate(set).into_iter().map(|value| Range { low: value, high: value }).collect();
        self.crossed(set, |set| {
            for (range, value) in ranges.iter_mut().zip(self.evaluate(set)) {
                // A corner that cannot be (a pan boiled dry) says nothing about the others.
                if !value.is_finite() {
                    continue;
                }
                if value < range.low {
                    range.low = value;
                }
                if value > range.high {
                    range.high = value;
                }
            }
        });
        for (range, entry) in ranges.iter_mut().zip(self.entries()) {
            if let How::Worked(by) = &entry.how
                && let Some(accuracy) = by.formula.accuracy
            {
                range.low -= accuracy;
                range.high += accuracy;
            }
        }
        ranges
    }

    /// The open assumption that alone moves `line` furthest, with the least and the most it brings it to; none
    /// where none moves it.
    pub fn matters_most(&self, set: &[(Line, f64)], line: Line) -> Option<(Line, Range)> {
        let moved = self.open(set).into_iter().filter_map(|(assumed, [low, _, high])| {
            let at = |value: f64| {
                let set: Vec<(Line, f64)> = set.iter().copied().chain([(assumed, value)]).collect();
                self.evaluate(&set)[line.index()]
            };
            let (a, b) = (at(low), at(high));
            let range = Range { low: a.min(b), high: a.max(b) };
            (range.is_wide() && range.low.is_finite() && range.high.is_finite()).then_some((assumed, range))
        });
        moved.max_by(|a, b| (a.1.high - a.1.low).total_cmp(&(b.1.high - b.1.low)))
    }

    /// How the open assumptions fall where `line` comes to least, `set` with them.
    pub fn careful(&self, set: &[(Line, f64)], line: Line) -> Vec<(Line, f64)> {
        let mut least = (self.evaluate(set)[line.index()], set.to_vec());
        self.crossed(set, |set| {
            let value = self.evaluate(set)[line.index()];
            if value < least.0 {
                least = (value, set.to_vec());
            }
        });
        least.1
    }

    /// Hands over `set` with the open assumptions as they may fall, every way crossed.
    fn crossed(&self, set: &[(Line, f64)], mut pass: impl FnMut(&[(Line, f64)])) {
        let open = self.open(set);
        let steps: &[usize] = if open.len() <= CROSSED_IN_FULL { &[0, 1, 2] } else { &[0, 2] };
        let mut set = set.to_vec();
        let fixed = set.len();
        for way in 0..steps.len().pow(open.len().min(MOST_ASSUMPTIONS) as u32) {
            set.truncate(fixed);
            let mut rest = way;
            for (line, values) in &open {
                set.push((*line, values[steps[rest % steps.len()]]));
                rest /= steps.len();
            }
            pass(&set);
        }
    }

    /// A batch `by` times as large: every declared amount that grows, times `by`.
    pub fn batch(&self, by: f64) -> Vec<(Line, f64)> {
        self.batch_of(by, &[])
    }

    /// The same of the recipe with some lines set to other values.
    pub fn batch_of(&self, by: f64, set: &[(Line, f64)]) -> Vec<(Line, f64)> {
        let own = |line: Line| set.iter().rev().find(|(of, _)| *of == line).map(|(_, value)| *value);
        let grown = self.lines().zip(self.entries()).filter_map(|(line, entry)| match entry.how {
            How::Given { value, grows: true } => Some((line, own(line).unwrap_or(value) * by)),
            _ => None,
        });
        set.iter().copied().chain(grown).collect()
    }

    /// The first worked line that comes to less than nothing or to no number at all.
    pub fn impossible(&self, values: &[f64]) -> Option<Line> {
        self.lines().find(|line| {
            let value = values[line.index()];
            matches!(self.entry(*line).how, How::Worked(_)) && !(value >= -NOISE && value.is_finite())
        })
    }

    /// Under each result, the lines that lead to it and to no other result: what unfolds there.
    pub fn under(&self, results: &[Line]) -> Vec<Vec<Line>> {
        let mut shown: Vec<bool> = vec![false; self.entries().len()];
        results.iter().for_each(|line| shown[line.index()] = true);
        results
            .iter()
            .map(|result| {
                let mut found = Vec::new();
                self.gather(*result, &mut shown, &mut found);
                found.sort();
                found
            })
            .collect()
    }

    fn gather(&self, line: Line, shown: &mut [bool], found: &mut Vec<Line>) {
        for input in self.entry(line).how.inputs() {
            if !std::mem::replace(&mut shown[input.index()], true) {
                found.push(input);
                self.gather(input, shown, found);
            }
        }
    }

    /// The results of the short sum that are worked straight from a line.
    pub fn following(&self, line: Line) -> impl Iterator<Item = (Id, Line)> + '_ {
        let from = move |of: &Line| *of != line && self.entry(*of).how.inputs().any(|input| input == line);
        self.claimed().filter(move |(id, of)| id.first() && from(of))
    }

    /// Whether `line` is worked, at any remove, from `from`.
    pub fn leads_to(&self, from: Line, line: Line) -> bool {
        from == line || self.entry(line).how.inputs().any(|input| self.leads_to(from, input))
    }
}
