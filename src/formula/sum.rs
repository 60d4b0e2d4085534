//! Formulas of the catalogue worked with plain numbers, line under line.

use super::{Line, Use, evaluate};
use crate::materia::Figure;

/// The lines so far, each a value in its formula's own unit.
#[derive(Default)]
pub struct Sum(Vec<f64>);

impl Sum {
    /// A number as a line.
    pub fn line(&mut self, value: f64) -> Line {
        self.0.push(value);
        Line::at(self.0.len() - 1)
    }

    /// A published figure as a line.
    pub fn figure(&mut self, figure: &Figure) -> Line {
        self.line(figure.value)
    }

    /// A formula worked from lines above.
    pub fn work(&mut self, by: impl Into<Use>) -> Line {
        let by = by.into();
        let value = evaluate(&by.formula.is, &by.with, &self.0, 0);
        self.line(value)
    }

    /// The value of a line.
    pub fn at(&self, line: Line) -> f64 {
        self.0.get(line.index()).copied().unwrap_or(f64::NAN)
    }

    /// The value of a formula worked from lines above.
    pub fn gives(&mut self, by: impl Into<Use>) -> f64 {
        let line = self.work(by);
        self.at(line)
    }
}
