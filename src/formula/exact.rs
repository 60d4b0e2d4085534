//! `exp`, `ln` and `pow` from exact operations only.
//!
//! The system's functions differ by platform and by browser; these use `+ − × ÷`, comparison and
//! doubling, which IEEE 754 fixes to the bit, so the same figures come out everywhere.

/// ln 2 in two parts: the first has few digits, so that `k × LN2_HIGH` is exact.
const LN2_HIGH: f64 = 0.693_145_751_953_125;
const LN2_LOW: f64 = 1.428_606_820_309_417_3e-6;
/// The largest argument whose exponential is a number.
const TOO_LARGE: f64 = 709.0;

/// Two to a whole power, by doubling and halving.
fn two_to(k: i32) -> f64 {
    let step = if k < 0 { 0.5 } else { 2.0 };
    let mut result = 1.0;
    for _ in 0..k.unsigned_abs() {
        result *= step;
    }
    result
}

/// e to the power `x`; nothing below −709, infinite above 709. Not a number for not a number.
pub fn exp(x: f64) -> f64 {
    if x.is_nan() {
        return x;
    }
    if x > TOO_LARGE {
        return f64::INFINITY;
    }
    if x < -TOO_LARGE {
        return 0.0;
    }
    let k = (x / (LN2_HIGH + LN2_LOW) + 0.5).floor();
    let r = (x - k * LN2_HIGH) - k * LN2_LOW;
    // The series to the 17th term: |r| < 0.35, so the next term is below 1e-23.
    let mut sum = 1.0;
    let mut n = 17.0;
    while n >= 1.0 {
        sum = 1.0 + r * sum / n;
        n -= 1.0;
    }
    sum * two_to(k as i32)
}

/// The natural logarithm; not a number for nothing and below.
pub fn ln(x: f64) -> f64 {
    if x.is_nan() || x <= 0.0 {
        return f64::NAN;
    }
    if x == f64::INFINITY {
        return x;
    }
    let (mut m, mut k) = (x, 0.0);
    while m > std::f64::consts::SQRT_2 {
        m *= 0.5;
        k += 1.0;
    }
    while m < std::f64::consts::FRAC_1_SQRT_2 {
        m *= 2.0;
        k -= 1.0;
    }
    // ln m = 2 artanh((m − 1)/(m + 1)); |s| < 0.172, so 11 terms reach below 1e-18.
    let s = (m - 1.0) / (m + 1.0);
    let square = s * s;
    let mut sum = 0.0;
    let mut n = 23.0;
    while n >= 1.0 {
        sum = 1.0 / n + square * sum;
        n -= 2.0;
    }
    k * LN2_HIGH + (k * LN2_LOW + 2.0 * s * sum)
}

/// `base` to the power `exponent`, for a base above nothing; nothing to a positive power is nothing.
pub fn pow(base: f64, exponent: f64) -> f64 {
    if exponent == 0.0 {
        return 1.0;
    }
    if base == 0.0 && exponent > 0.0 {
        return 0.0;
    }
    // Small whole powers by multiplying: a square is then exactly a square.
    if exponent > 0.0 && exponent <= 16.0 && exponent == exponent.floor() {
        let mut result = base;
        let mut n = 1.0;
        while n < exponent {
            result *= base;
            n += 1.0;
        }
        return result;
    }
    exp(exponent * ln(base))
}

#[cfg(test)]
mod tests {
    use super::*;

    // The platform's functions are the reference here, and only here.
    #[test]
    fn they_agree_with_the_platform() {
        for i in 1..4000 {
            let x = f64::from(i) * 0.05;
            assert!((ln(x) - x.ln()).abs() <= 1e-15 * x.ln().abs().max(1.0), "ln {x}");
            assert!((exp(x) / x.exp() - 1.0).abs() < 1e-14, "exp {x}");
            assert!((exp(-x) / (-x).exp() - 1.0).abs() < 1e-14, "exp -{x}");
            assert!((pow(x, 5.2559) / x.powf(5.2559) - 1.0).abs() < 1e-13, "pow {x}");
        }
    }

    #[test]
    fn the_edges_are_numbers_or_say_so() {
        assert_eq!(exp(0.0), 1.0);
        assert_eq!(exp(-1000.0), 0.0);
        assert!(ln(0.0).is_nan() && ln(-1.0).is_nan() && exp(f64::NAN).is_nan());
        assert_eq!(pow(3.0, 2.0), 9.0);
        assert_eq!(pow(0.0, 0.5), 0.0);
    }
}
