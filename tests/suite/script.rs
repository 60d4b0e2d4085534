//! The formulas as a page's script has them, against the program: the same bits for the same numbers.
//!
//! A JavaScript engine by another hand (QuickJS) runs what the press writes.

use rquickjs::{Context, Function, Object, Runtime};
use stillroom::formula::catalogue::all;
use stillroom::formula::{Formula, Line, evaluate, script};

/// Numbers that follow from one another by Marsaglia's xorshift, 64 bits (13, 7, 17).
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// What a kitchen holds: shares, grams, millilitres, minutes, degrees; now and then nothing, less than nothing, or
    /// no number at all.
    fn kitchen(&mut self) -> f64 {
        let size = self.next();
        let share = self.next();
        match self.next() {
            odd if odd < 0.02 => 0.0,
            odd if odd < 0.03 => -share,
            odd if odd < 0.035 => f64::NAN,
            _ if size < 0.5 => share,
            _ if size < 0.8 => share * 100.0,
            _ => share * 5000.0,
        }
    }
}

/// Every formula of the catalogue over random numbers and lists of lines.
#[test]
fn every_formula_agrees_to_the_bit() {
    let formulas = all();
    let text = script(&formulas);
    let runtime = Runtime::new().expect("an engine");
    let context = Context::full(&runtime).expect("a context");
    let mut numbers = Numbers(0x05EE_D0F4_E8B5);
    let (mut compared, mut real) = (0_u32, 0_u32);
    context.with(|js| {
        js.eval::<(), _>(text.as_str()).expect("the script runs");
        let catalogue: Object = js.eval("stillroomFormulas.formulas").expect("its formulas");
        for formula in &formulas {
            let function: Function = catalogue.get(formula.id).expect(formula.id);
            for _ in 0..300 {
                let (with, values) = bound(formula, &mut numbers);
                let ours = evaluate(&formula.is, &with, &values, 0);
                let mut args = rquickjs::function::Args::new(js.clone(), with.len());
                for (symbol, lines) in formula.with.iter().zip(&with) {
                    let list: Vec<f64> = lines.iter().map(|line| values[line.index()]).collect();
                    match symbol.many {
                        true => args.push_arg(list).expect("an argument"),
                        false => args.push_arg(list[0]).expect("an argument"),
                    }
                }
                let theirs: f64 = args.apply(&function).expect("a number");
                let same = ours.to_bits() == theirs.to_bits() || (ours.is_nan() && theirs.is_nan());
                assert!(same, "{}: {ours:?} against {theirs:?} of {with:?} {values:?}", formula.id);
                compared += 1;
                real += u32::from(ours.is_finite());
            }
        }
    });
    assert!(compared >= 20_000 && real * 2 > compared, "{compared} compared, {real} of them numbers");
}

/// A value for each symbol; for one of many, a list of up to four.
fn bound(formula: &Formula, numbers: &mut Numbers) -> (Vec<Vec<Line>>, Vec<f64>) {
    let mut values = Vec::new();
    let longest = 1 + (numbers.next() * 3.99) as usize;
    let with = formula.with.iter().map(|symbol| {
        // Several lists are as long as the longest, or hold one.
        let count = match symbol.many {
            true if numbers.next() < 0.05 => 0,
            true if numbers.next() < 0.3 => 1,
            true => longest,
            false => 1,
        };
        let lines = (0..count).map(|_| {
            values.push(numbers.kitchen());
            Line::at(values.len() - 1)
        });
        lines.collect()
    });
    (with.collect(), values)
}

/// A student reads it: names in words, a comment with the source, and no more brackets than the sum needs.
#[test]
fn a_formula_can_be_read() {
    let text = script(&all());
    let loses =
        "formulas[\"lose\"] = (before, losses) =>\n    before - sum([losses], (i) => one(losses, i));";
    assert!(text.contains(loses), "{text}");
    assert!(text.contains("formulas[\"weigh\"] = (volume, density) =>\n    volume * density;"), "{text}");
    assert!(text.contains("formulas[\"rise\"] = (from, to) =>\n    to - from;"));
    let comments = text.lines().filter(|line| line.starts_with("  // ")).count();
    assert!(comments >= all().len(), "{comments}");
    for outside in ["Math.exp", "Math.log", "Math.pow", "**", "fetch", "import"] {
        assert!(!text.contains(outside), "{outside}");
    }
}
