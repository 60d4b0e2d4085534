//! Exact fractions, so that a cup is a sixteenth of a gallon and not nearly so.
//!
//! Factors and written amounts stay exact until they enter a working; only then is there one rounding.

use std::cmp::Ordering;
use std::fmt;

/// A fraction in lowest terms, its denominator above nothing.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Ratio {
    num: i128,
    den: i128,
}

/// Why a fraction cannot be had.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum RatioError {
    /// More digits than 128 bits hold.
    TooLarge,
    /// A division by nothing.
    OverNothing,
    /// A text that is not decimal digits with at most one point.
    NotDecimal,
}

impl fmt::Display for RatioError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            RatioError::TooLarge => "the number has more digits than can be kept exactly",
            RatioError::OverNothing => "nothing can be divided by zero",
            RatioError::NotDecimal => "this is not a decimal number",
        })
    }
}

impl std::error::Error for RatioError {}

const fn gcd(mut a: u128, mut b: u128) -> u128 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

impl Ratio {
    /// Nothing.
    pub const ZERO: Ratio = Ratio { num: 0, den: 1 };
    /// One.
    pub const ONE: Ratio = Ratio { num: 1, den: 1 };

    /// A whole number.
    pub const fn whole(number: i128) -> Ratio {
        Ratio { num: number, den: 1 }
    }

    /// `num / den`, in lowest terms.
    pub const fn new(num: i128, den: i128) -> Result<Ratio, RatioError> {
        if den == 0 {
            return Err(RatioError::OverNothing);
        }
        // The smallest i128 has no opposite, so its sign could not be turned below.
        if num == i128::MIN || den == i128::MIN {
            return Err(RatioError::TooLarge);
        }
        let common = gcd(num.unsigned_abs(), den.unsigned_abs()) as i128;
        let sign = if den < 0 { -1 } else { 1 };
        Ok(Ratio { num: sign * (num / common), den: sign * (den / common) })
    }

    /// For factors in this module's tables: a wrong one stops the compiler, never a press.
    pub(super) const fn exact(num: i128, den: i128) -> Ratio {
        match Ratio::new(num, den) {
            Ok(ratio) => ratio,
            Err(_) => panic!("a factor in a table must be a fraction"),
        }
    }

    /// Reads decimal text such as `3785.411784`; no sign, no commas.
    pub fn from_decimal(text: &str) -> Result<Ratio, RatioError> {
        let (mut num, mut den, mut point, mut digits) = (0i128, 1i128, false, 0usize);
        for letter in text.chars() {
            if letter == '.' && !point {
                point = true;
                continue;
            }
            let digit = letter.to_digit(10).ok_or(RatioError::NotDecimal)?;
            digits += 1;
            num = num
                .checked_mul(10)
                .and_then(|tens| tens.checked_add(i128::from(digit)))
                .ok_or(RatioError::TooLarge)?;
            if point {
                den = den.checked_mul(10).ok_or(RatioError::TooLarge)?;
            }
        }
        if digits == 0 { Err(RatioError::NotDecimal) } else { Ratio::new(num, den) }
    }

    /// The number above the line.
    pub const fn numerator(self) -> i128 {
        self.num
    }

    /// The number below the line.
    pub const fn denominator(self) -> i128 {
        self.den
    }

    /// The sum.
    pub fn plus(self, other: Ratio) -> Result<Ratio, RatioError> {
        let common = gcd(self.den.unsigned_abs(), other.den.unsigned_abs()) as i128;
        let left = self.num.checked_mul(other.den / common).ok_or(RatioError::TooLarge)?;
        let right = other.num.checked_mul(self.den / common).ok_or(RatioError::TooLarge)?;
        let den = self.den.checked_mul(other.den / common).ok_or(RatioError::TooLarge)?;
        Ratio::new(left.checked_add(right).ok_or(RatioError::TooLarge)?, den)
    }

    /// The difference.
    pub fn minus(self, other: Ratio) -> Result<Ratio, RatioError> {
        self.plus(Ratio { num: other.num.checked_neg().ok_or(RatioError::TooLarge)?, den: other.den })
    }

    /// The product; common factors go first, so that what fits is never refused.
    pub fn times(self, other: Ratio) -> Result<Ratio, RatioError> {
        let left = Ratio::new(self.num, other.den)?;
        let right = Ratio::new(other.num, self.den)?;
        let num = left.num.checked_mul(right.num).ok_or(RatioError::TooLarge)?;
        let den = left.den.checked_mul(right.den).ok_or(RatioError::TooLarge)?;
        Ratio::new(num, den)
    }

    /// The quotient.
    pub fn over(self, other: Ratio) -> Result<Ratio, RatioError> {
        self.times(Ratio::new(other.den, other.num)?)
    }

    /// The nearest floating-point number: rounded once, even where a part alone would not fit.
    pub fn to_f64(self) -> f64 {
        let (num, den) = (self.num.unsigned_abs(), self.den.unsigned_abs());
        if num == 0 {
            return 0.0;
        }
        // Long division in binary until 61 bits stand: more than the 53 that are kept.
        let (mut quotient, mut rest, mut shift) = (num / den, num % den, 0u32);
        while quotient < 1 << 60 {
            rest *= 2;
            quotient *= 2;
            if rest >= den {
                rest -= den;
                quotient += 1;
            }
            shift += 1;
        }
        // Whether anything is left decides a tie, so it is kept in the last bit.
        quotient |= u128::from(rest != 0);
        let mut value = quotient as f64;
        for _ in 0..shift {
            value *= 0.5;
        }
        if self.num < 0 { -value } else { value }
    }
}

impl PartialOrd for Ratio {
    fn partial_cmp(&self, other: &Ratio) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Ratio {
    /// Compares whole parts, then turns the remainders over: no product is formed, so nothing overflows.
    fn cmp(&self, other: &Ratio) -> Ordering {
        let (mut a, mut b) = ((self.num, self.den), (other.num, other.den));
        loop {
            let whole = a.0.div_euclid(a.1).cmp(&b.0.div_euclid(b.1));
            if whole != Ordering::Equal {
                return whole;
            }
            let (left, right) = (a.0.rem_euclid(a.1), b.0.rem_euclid(b.1));
            if left == 0 || right == 0 {
                return left.cmp(&right);
            }
            // left/a < right/b exactly when b/right < a/left.
            (a, b) = ((b.1, right), (a.1, left));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn of(num: i128, den: i128) -> Ratio {
        Ratio::new(num, den).expect("a denominator above nothing")
    }

    #[test]
    fn decimal_text_is_kept_exactly() {
        assert_eq!(Ratio::from_decimal("3785.411784"), Ratio::new(3_785_411_784, 1_000_000));
        assert_eq!(Ratio::from_decimal(".5"), Ratio::new(1, 2));
        assert_eq!(Ratio::from_decimal("1.2.3"), Err(RatioError::NotDecimal));
        assert_eq!(Ratio::from_decimal("."), Err(RatioError::NotDecimal));
        assert_eq!(Ratio::from_decimal("٣"), Err(RatioError::NotDecimal));
        assert_eq!(Ratio::from_decimal(&"9".repeat(60)), Err(RatioError::TooLarge));
    }

    #[test]
    fn what_cannot_be_kept_is_an_error_value() {
        let most = Ratio::whole(i128::MAX);
        assert_eq!(most.plus(Ratio::ONE), Err(RatioError::TooLarge));
        assert_eq!(most.times(most), Err(RatioError::TooLarge));
        assert_eq!(most.over(Ratio::ZERO), Err(RatioError::OverNothing));
        assert_eq!(most.times(of(1, i128::MAX)), Ok(Ratio::ONE));
    }

    #[test]
    fn one_third_is_the_nearest_double() {
        assert_eq!(of(1, 3).to_f64(), 1.0 / 3.0);
        assert_eq!(of(-7, 8).to_f64(), -0.875);
        // 2^53 + 1 lies halfway between two doubles, and any more tips it up.
        let tie = (1i128 << 53) + 1;
        assert_eq!(of(tie, 1).to_f64(), 9_007_199_254_740_992.0);
        assert_eq!(of(tie * 1000 + 1, 1000).to_f64(), 9_007_199_254_740_994.0);
    }

    proptest! {
        #[test]
        fn sums_and_products_undo(a in -10_000i128..10_000, b in 1i128..10_000, c in -10_000i128..10_000, d in 1i128..10_000) {
            let (x, y) = (of(a, b), of(c, d));
            prop_assert_eq!(x.plus(y), y.plus(x));
            prop_assert_eq!(x.plus(y).and_then(|sum| sum.minus(y)), Ok(x));
            if c != 0 {
                prop_assert_eq!(x.times(y).and_then(|product| product.over(y)), Ok(x));
            }
            prop_assert_eq!(x.cmp(&y), (a * d).cmp(&(c * b)));
            prop_assert_eq!(x.to_f64(), a as f64 / b as f64);
        }

        #[test]
        fn extremes_never_panic(a: i128, b: i128, c: i128, d: i128) {
            if let (Ok(x), Ok(y)) = (Ratio::new(a, b), Ratio::new(c, d)) {
                let _ = (x.plus(y), x.minus(y), x.times(y), x.over(y), x.cmp(&y));
                prop_assert!(x.to_f64().is_finite());
            }
        }
    }
}
