//! How many decimals each line prints, so that a student who recomputes a line from the printed
//! figures gets the printed result.

use super::{How, Working};
use crate::formula::{Line, evaluate};
use crate::measure::{Dimension, rounded, usual_places};

/// More decimals than this help nobody.
const MOST: u8 = 8;

/// The decimals of every line, from the last line to the first: where a line recomputed from its
/// inputs as printed would differ in its last place, the input that matters most gets one more. A line in
/// `set` was measured: it prints as it is, and follows from nothing.
pub fn places(working: &Working, values: &[f64], set: &[(Line, f64)]) -> Vec<u8> {
    let measured = |line: Line| set.iter().any(|(of, _)| *of == line);
    let mut places: Vec<u8> = working
        .lines()
        .zip(working.entries())
        .map(|(line, entry)| {
            let value = values[line.index()] * entry.unit.printed;
            match entry.how {
                // Money always shows its cents.
                _ if entry.unit.dimension == Dimension::MONEY => entry.unit.places,
                How::Given { .. } | How::Assumed { .. } | How::Published { .. } => {
                    in_full(value, entry.unit.places)
                }
                How::Worked(_) if measured(line) => in_full(value, entry.unit.places),
                How::Worked(_) => usual_places(values[line.index()], entry.unit),
            }
        })
        .collect();
    loop {
        let before = places.clone();
        for line in working.lines().rev().filter(|line| !measured(*line)) {
            while !recomputes(working, values, &places, line) {
                // Where no input can show more, the result lies on the brink: one place more of it tells.
                let on_the_brink = brink(working, values, &places, line) && places[line.index()] < MOST;
                let worst = worst(working, values, &places, line).filter(|_| !on_the_brink);
                let more = worst.unwrap_or(line);
                if places[more.index()] >= MOST {
                    break;
                }
                places[more.index()] += 1;
            }
        }
        if places == before {
            return places;
        }
    }
}

/// Whether a value lies so near to a half of its last place that no few digits of its inputs tell its side.
fn brink(working: &Working, values: &[f64], places: &[u8], line: Line) -> bool {
    let size = (values[line.index()] * working.entry(line).unit.printed).abs();
    let scaled = (0..places[line.index()]).fold(size, |size, _| size * 10.0);
    ((scaled - scaled.floor()) - 0.5).abs() < 1e-2
}

/// Whether a line recomputed from its inputs as printed prints as it does.
pub fn recomputes(working: &Working, values: &[f64], places: &[u8], line: Line) -> bool {
    let How::Worked(by) = &working.entry(line).how else {
        return true;
    };
    let again = evaluate(&by.formula.is, &by.with, &printed(working, values, places, line, None), 0);
    shown(working, places, line, again) == shown(working, places, line, values[line.index()])
}

/// The input whose printing moves the result most, among those that can still show more.
fn worst(working: &Working, values: &[f64], places: &[u8], line: Line) -> Option<Line> {
    let How::Worked(by) = &working.entry(line).how else {
        return None;
    };
    let exact = values[line.index()];
    let mut worst: Option<(f64, Line)> = None;
    for input in working.entry(line).how.inputs() {
        if places[input.index()] >= MOST {
            continue;
        }
        let alone = printed(working, values, places, line, Some(input));
        let miss = (evaluate(&by.formula.is, &by.with, &alone, 0) - exact).abs();
        if miss > 1e-12 * exact.abs() && worst.is_none_or(|(most, _)| miss > most) {
            worst = Some((miss, input));
        }
    }
    worst.map(|(_, input)| input)
}

/// The values with the inputs of `line` as printed (or only one of them).
fn printed(working: &Working, values: &[f64], places: &[u8], line: Line, only: Option<Line>) -> Vec<f64> {
    let mut printed = values.to_vec();
    for input in working.entry(line).how.inputs() {
        if only.is_none_or(|only| only == input) {
            printed[input.index()] = shown(working, places, input, values[input.index()]);
        }
    }
    printed
}

/// A value as a line prints it, back in the line's unit.
fn shown(working: &Working, places: &[u8], line: Line, value: f64) -> f64 {
    let unit = working.entry(line).unit;
    rounded(value * unit.printed, places[line.index()]) / unit.printed
}

/// Decimals that show a declared or published number in full; where it has no end in sight (a cup
/// in millilitres), as many as usual, and the walk adds what is needed.
fn in_full(value: f64, usual: u8) -> u8 {
    (0..=5)
        .find(|&places| (rounded(value, places) - value).abs() <= 1e-9 * value.abs())
        .unwrap_or(if value.abs() >= 100.0 { 0 } else { usual })
}
