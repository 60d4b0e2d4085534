//! The reading of a formula that a reader sees: the equation, as MathML and as a sentence.
//!
//! One walker for every form. What stands for a symbol is the caller's: its sign, the name of the
//! line bound to it, or that line's figure as printed.

use super::evaluate::times;
use super::expr::{Expr, Fold, Function, Line, Op, Symbol};

/// In what form an equation is written.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Form {
    /// MathML Core, without the `math` element.
    MathMl,
    /// A sentence: "946 mL minus 113 mL".
    Spoken,
    /// One line of plain text: "946 mL − 113 mL".
    Plain,
}

/// Writes equations in one form.
pub struct Writer<'a> {
    /// The form.
    pub form: Form,
    /// What stands for a symbol; the second number is which of the lines bound to it. Plain text,
    /// escaped by the writer where the form needs it. For MathML it may be a single letter (a sign).
    pub atom: &'a dyn Fn(Symbol, usize) -> String,
    /// How many lines are bound, so that sums are written out. With none, a sum is written as Σ.
    pub with: Option<&'a [Vec<Line>]>,
}

/// How tightly an expression binds, from loosest.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Binds {
    Sum,
    Product,
    Atom,
}

struct Piece {
    text: String,
    binds: Binds,
}

impl Writer<'_> {
    /// The equation.
    pub fn write(&self, expr: &Expr) -> String {
        self.piece(expr, 0).text
    }

    /// The same for a long sum or difference as its terms with their signs, first to last; none for
    /// any other expression. Three terms or fewer read well in one line.
    pub fn column(&self, expr: &Expr) -> Option<Vec<(char, String)>> {
        let mut terms = Vec::new();
        self.terms(expr, 0, '+', &mut terms);
        (terms.len() > 3).then_some(terms)
    }

    fn terms(&self, expr: &Expr, at: usize, sign: char, terms: &mut Vec<(char, String)>) {
        match expr {
            Expr::Two(Op::Add, a, b) => {
                self.terms(a, at, sign, terms);
                self.terms(b, at, sign, terms);
            }
            Expr::Two(Op::Sub, a, b) => {
                self.terms(a, at, sign, terms);
                self.terms(b, at, if sign == '+' { '−' } else { '+' }, terms);
            }
            Expr::Each(Fold::Sum, inner) if self.with.is_some() => {
                for at in 0..self.count(inner) {
                    self.terms(inner, at, sign, terms);
                }
            }
            _ => terms.push((sign, self.piece(expr, at).text)),
        }
    }

    fn count(&self, inner: &Expr) -> usize {
        self.with.map_or(0, |with| times(inner, with))
    }

    fn piece(&self, expr: &Expr, at: usize) -> Piece {
        match expr {
            Expr::Number(number) => self.atom_of(&crate::measure::decimal(*number, places_of(*number))),
            Expr::Symbol(symbol) => {
                let at = self.with.map_or(0, |with| if with[symbol.index()].len() == 1 { 0 } else { at });
                self.atom_of(&(self.atom)(*symbol, at))
            }
            Expr::Figure(figure) => {
                let value = figure.value * figure.unit.printed;
                self.atom_of(&crate::measure::show(figure.value, figure.unit, places_of(value)))
            }
            Expr::One(function, inner) => self.function(*function, inner, at),
            Expr::Two(op, a, b) => self.two(*op, a, b, at),
            Expr::Each(fold, inner) => self.each(*fold, inner),
            Expr::Look(relation, inner) => {
                let read_at = self.piece(inner, at).text;
                self.read(relation.words, &read_at)
            }
            Expr::Choose(parts) => {
                let [a, b, then, otherwise] = &**parts;
                let write = |part: &Expr| self.piece(part, at).text;
                self.choice(&write(a), &write(b), &write(then), &write(otherwise))
            }
        }
    }

    fn each(&self, fold: Fold, inner: &Expr) -> Piece {
        if self.with.is_none() {
            let inner = self.piece(inner, 0);
            let (sign, words) = match fold {
                Fold::Sum => ("Σ", "the sum of all "),
                Fold::Product => ("Π", "the product of all "),
            };
            let text = match self.form {
                Form::MathMl => format!("<mrow><mo>{sign}</mo>{}</mrow>", inner.text),
                Form::Spoken => format!("{words}{}", inner.text),
                Form::Plain => format!("{sign} {}", inner.text),
            };
            return Piece { text, binds: Binds::Product };
        }
        let (op, empty) = match fold {
            Fold::Sum => (Op::Add, "0"),
            Fold::Product => (Op::Mul, "1"),
        };
        let each: Vec<Piece> = (0..self.count(inner)).map(|at| self.piece(inner, at)).collect();
        let mut each = each.into_iter();
        match each.next() {
            None => self.atom_of(empty),
            Some(first) => each.fold(first, |left, right| self.join(op, left, right)),
        }
    }

    fn two(&self, op: Op, a: &Expr, b: &Expr, at: usize) -> Piece {
        // `before − sum(losses)` reads as a − b − c.
        if op == Op::Sub
            && self.with.is_some()
            && let Expr::Each(Fold::Sum, inner) = b
        {
            let left = self.piece(a, at);
            return (0..self.count(inner))
                .fold(left, |left, at| self.join(Op::Sub, left, self.piece(inner, at)));
        }
        let (left, right) = (self.piece(a, at), self.piece(b, at));
        self.join(op, left, right)
    }

    fn join(&self, op: Op, left: Piece, right: Piece) -> Piece {
        let (binds, right_binds) = match op {
            Op::Add => (Binds::Sum, Binds::Sum),
            Op::Sub => (Binds::Sum, Binds::Product),
            Op::Mul => (Binds::Product, Binds::Product),
            Op::Div => return self.divide(left, right),
            Op::Pow => return self.power(left, right),
            Op::Min => return self.named("min", "the lesser of ", left, right),
            Op::Max => return self.named("max", "the greater of ", left, right),
        };
        let (left, right) = (self.within(left, binds), self.within(right, right_binds));
        let text = match (self.form, op) {
            (Form::MathMl, _) => format!("{left}<mo>{}</mo>{right}", sign_of(op)),
            (Form::Spoken, Op::Add) => format!("{left} plus {right}"),
            (Form::Spoken, Op::Sub) => format!("{left} minus {right}"),
            (Form::Spoken, _) => format!("{left} times {right}"),
            (Form::Plain, _) => format!("{left} {} {right}", sign_of(op)),
        };
        Piece { text: self.row(text), binds }
    }

    fn divide(&self, left: Piece, right: Piece) -> Piece {
        let text = match self.form {
            // A fraction bar binds by itself: no brackets above or below it.
            Form::MathMl => format!("<mfrac>{}{}</mfrac>", one(&left.text), one(&right.text)),
            Form::Spoken => format!(
                "{} divided by {}",
                self.within(left, Binds::Product),
                self.within(right, Binds::Atom)
            ),
            Form::Plain => {
                format!("{} ÷ {}", self.within(left, Binds::Product), self.within(right, Binds::Atom))
            }
        };
        Piece { text, binds: if self.form == Form::MathMl { Binds::Atom } else { Binds::Product } }
    }

    fn power(&self, left: Piece, right: Piece) -> Piece {
        let base = self.within(left, Binds::Atom);
        let text = match self.form {
            Form::MathMl => format!("<msup>{}{}</msup>", one(&base), one(&right.text)),
            Form::Spoken => format!("{base} to the power {}", self.within(right, Binds::Atom)),
            Form::Plain => format!("{base}^{}", self.within(right, Binds::Atom)),
        };
        Piece { text, binds: Binds::Atom }
    }

    fn named(&self, sign: &str, words: &str, left: Piece, right: Piece) -> Piece {
        let (left, right) = (left.text, right.text);
        let text = match self.form {
            Form::MathMl => {
                format!("<mrow><mi>{sign}</mi><mo>(</mo>{left}<mo>,</mo>{right}<mo>)</mo></mrow>")
            }
            _ => format!("{words}{left} and {right}"),
        };
        Piece { text, binds: if self.form == Form::MathMl { Binds::Atom } else { Binds::Sum } }
    }

    fn function(&self, function: Function, inner: &Expr, at: usize) -> Piece {
        let inner = self.piece(inner, at).text;
        let text = match (self.form, function) {
            (Form::MathMl, Function::Exp) => format!("<msup><mi>e</mi>{}</msup>", one(&inner)),
            (Form::MathMl, Function::Ln) => {
                format!("<mrow><mi>ln</mi><mo>(</mo>{inner}<mo>)</mo></mrow>")
            }
            (Form::Spoken, Function::Exp) => format!("e to the power of ({inner})"),
            (Form::Spoken, Function::Ln) => format!("the natural logarithm of ({inner})"),
            (Form::Plain, Function::Exp) => format!("e^({inner})"),
            (Form::Plain, Function::Ln) => format!("ln({inner})"),
            (Form::MathMl, Function::Up) => {
                format!("<mrow><mo>⌈</mo>{inner}<mo>⌉</mo></mrow>")
            }
            (Form::MathMl, Function::Down) => {
                format!("<mrow><mo>⌊</mo>{inner}<mo>⌋</mo></mrow>")
            }
            (_, Function::Up) => format!("({inner}), whole, rounded up"),
            (_, Function::Down) => format!("({inner}), whole, rounded down"),
        };
        Piece { text, binds: Binds::Atom }
    }

    fn read(&self, words: &str, at: &str) -> Piece {
        let text = match self.form {
            // With the figures put in, the words of the line above name the table already.
            Form::MathMl if self.with.is_some() => format!("<mrow><mtext>table at </mtext>{at}</mrow>"),
            Form::MathMl => format!("<mrow><mtext>{}, read at </mtext>{at}</mrow>", escape(words)),
            _ => format!("({words}, read at {at})"),
        };
        Piece { text, binds: Binds::Atom }
    }

    fn choice(&self, a: &str, b: &str, then: &str, otherwise: &str) -> Piece {
        let text = match self.form {
            Form::MathMl => format!(
                "<mrow><mo>{{</mo><mtable><mtr><mtd>{then}</mtd><mtd><mtext>if </mtext>{a}<mo>&lt;</mo>{b}</mtd></mtr>\
                 <mtr><mtd>{otherwise}</mtd><mtd><mtext>else</mtext></mtd></mtr></mtable></mrow>"
            ),
            _ => format!("{then} if {a} is less than {b}, else {otherwise}"),
        };
        Piece { text, binds: Binds::Sum }
    }

    fn within(&self, piece: Piece, needs: Binds) -> String {
        if piece.binds >= needs {
            return piece.text;
        }
        match self.form {
            Form::MathMl => format!("<mrow><mo>(</mo>{}<mo>)</mo></mrow>", piece.text),
            _ => format!("({})", piece.text),
        }
    }

    fn row(&self, text: String) -> String {
        if self.form == Form::MathMl { format!("<mrow>{text}</mrow>") } else { text }
    }

    fn atom_of(&self, text: &str) -> Piece {
        Piece {
            text: if self.form == Form::MathMl { mathml_atom(text) } else { text.to_string() },
            binds: Binds::Atom,
        }
    }
}

/// A number with its unit, a sign, or words, as MathML.
fn mathml_atom(text: &str) -> String {
    let number = text.split('\u{a0}').next().unwrap_or(text);
    let unit = text[number.len()..].trim_start_matches('\u{a0}');
    if number.starts_with(|c: char| c.is_ascii_digit() || c == '−') {
        return match unit {
            "" => format!("<mn>{number}</mn>"),
            _ => format!(
                "<mrow><mn>{number}</mn><mspace width=\"0.17em\"></mspace><mtext>{}</mtext></mrow>",
                escape(unit)
            ),
        };
    }
    if text.chars().count() == 1 {
        return format!("<mi>{}</mi>", escape(text));
    }
    format!("<mtext>{}</mtext>", escape(text))
}

/// Exactly one element, as a fraction and a power need.
fn one(text: &str) -> String {
    format!("<mrow>{text}</mrow>")
}

fn sign_of(op: Op) -> char {
    match op {
        Op::Add => '+',
        Op::Sub => '−',
        _ => '×',
    }
}

/// Decimals that show a plain number of a formula in full.
pub(crate) fn places_of(number: f64) -> u8 {
    (0..9).find(|&places| crate::measure::rounded(number, places) == number).unwrap_or(9)
}

/// Text made safe for markup.
pub fn escape(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formula::catalogue::pan::{HoldBack, Lose};
    use crate::formula::catalogue::sweeten::OfFinishedVolume;
    use crate::formula::{Formula, Use};

    fn lines(count: u16, from: u16) -> Vec<Line> {
        (from..from + count).map(Line).collect()
    }

    fn plain(formula: &'static Formula, with: Option<&[Vec<Line>]>) -> String {
        let atom = |symbol: Symbol, at: usize| match with {
            None => formula.with[symbol.index()].sign.to_string(),
            Some(with) => format!("{}", 10 * (with[symbol.index()][at].index() + 1)),
        };
        Writer { form: Form::Plain, atom: &atom, with }.write(&formula.is)
    }

    #[test]
    fn minus_a_sum_reads_as_minus_each() {
        let by: Use = Lose { before: Line(0), losses: lines(2, 1) }.into();
        assert_eq!(plain(by.formula, Some(&by.with)), "10 − 20 − 30");
        assert_eq!(plain(by.formula, None), "V − Σ L");
    }

    #[test]
    fn brackets_stand_where_they_are_needed_and_nowhere_else() {
        let by: Use = HoldBack { how_wet: Line(0), kept: lines(2, 1) }.into();
        assert_eq!(plain(by.formula, Some(&by.with)), "10 × (20 + 30)");
        let one: Use = HoldBack { how_wet: Line(0), kept: lines(1, 1) }.into();
        assert_eq!(plain(one.formula, Some(&one.with)), "10 × 20");
        assert_eq!(plain(OfFinishedVolume::formula(), None), "Y × s ÷ (1 − s)");
    }

    #[test]
    fn a_long_difference_can_stand_as_a_column() {
        let by: Use = Lose { before: Line(0), losses: lines(3, 1) }.into();
        let atom = |symbol: Symbol, at: usize| format!("{}", by.with[symbol.index()][at].index());
        let writer = Writer { form: Form::Plain, atom: &atom, with: Some(&by.with) };
        let column = writer.column(&by.formula.is).expect("four terms");
        assert_eq!(column.iter().map(|(sign, _)| *sign).collect::<String>(), "+−−−");
    }

    #[test]
    fn numbers_with_units_become_mathml() {
        let by: Use = Lose { before: Line(0), losses: lines(1, 1) }.into();
        let atom = |_: Symbol, _: usize| "946\u{a0}mL".to_string();
        let written = Writer { form: Form::MathMl, atom: &atom, with: Some(&by.with) }.write(&by.formula.is);
        assert!(written.starts_with("<mrow><mrow><mn>946</mn>"), "{written}");
        assert!(written.contains("<mo>−</mo>"));
    }
}
