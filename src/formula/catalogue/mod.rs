//! Every formula, once, by family.
//!
//! Each entry makes a struct whose fields are the formula's symbols: a field left out or misspelt
//! does not compile. `Hold { each_gram_keeps, plants }` in a method *is* a use of the formula.

pub mod class;
pub mod composition;
pub mod dose;
pub mod heat;
pub mod pan;
pub mod rules;
pub mod spirit;
pub mod sweeten;

use super::expr::Formula;

/// Turns entries into structs, uses and [`Formula`]s.
///
/// `Name "id" { field: one|many "sign" UNIT, ... } gives "words" "sign" UNIT = expression; source; "holds";`
macro_rules! formulas {
    ($(
        $(#[doc = $doc:literal])*
        $name:ident $id:literal { $($field:ident: $how:ident $sign:literal $unit:ident),* $(,)? }
            gives $words:literal $gives:literal $result:ident = $is:expr;
            $source:expr; $holds:literal $(, within $accuracy:literal)?;
    )*) => {
        $(
            $(#[doc = $doc])*
            #[derive(Clone, Debug)]
            pub struct $name {
                $(#[doc = $sign] pub $field: formulas!(@type $how),)*
            }

            impl $name {
                /// The formula itself.
                pub fn formula() -> &'static $crate::formula::Formula {
                    static FORMULA: std::sync::LazyLock<$crate::formula::Formula> = std::sync::LazyLock::new(|| {
                        let mut next = 0;
                        $(
                            let $field = $crate::formula::expr::Symbol(next);
                            next += 1;
                        )*
                        let _ = next;
                        $crate::formula::Formula {
                            id: $id,
                            gives: formulas!(@stands $words $gives $result one),
                            with: vec![$(formulas!(@stands (stringify!($field)) $sign $unit $how)),*],
                            is: $is,
                            source: $source,
                            holds: $holds,
                            accuracy: None$(.or(Some($accuracy)))?,
                        }
                    });
                    &FORMULA
                }
            }

            impl From<$name> for $crate::formula::Use {
                fn from(bound: $name) -> Self {
                    $crate::formula::Use {
                        formula: $name::formula(),
                        with: vec![$(formulas!(@lines $how bound.$field)),*],
                    }
                }
            }
        )*

        /// Every formula of this family.
        pub fn family() -> Vec<&'static $crate::formula::Formula> {
            vec![$($name::formula()),*]
        }
    };
    (@type one) => { $crate::formula::Line };
    (@type many) => { Vec<$crate::formula::Line> };
    (@lines one $line:expr) => { vec![$line] };
    (@lines many $lines:expr) => { $lines };
    (@stands $words:tt $sign:literal $unit:ident $how:ident) => {
        $crate::formula::Stands {
            words: $words,
            sign: $sign,
            unit: &$crate::measure::unit::$unit,
            many: formulas!(@many $how),
        }
    };
    (@many one) => { false };
    (@many many) => { true };
}
use formulas;

/// Every formula, family by family.
pub fn all() -> Vec<&'static Formula> {
    [
        pan::family(),
        sweeten::family(),
        composition::family(),
        spirit::family(),
        dose::family(),
        heat::family(),
        rules::family(),
        class::family(),
    ]
    .concat()
}

/// The formula of that name.
pub fn named(id: &str) -> Option<&'static Formula> {
    all().into_iter().find(|formula| formula.id == id)
}

#[cfg(test)]
mod tests {
    use super::all;
    use crate::formula::check;

    #[test]
    fn every_formula_keeps_its_dimensions() {
        for formula in all() {
            assert_eq!(check(formula), Ok(()));
        }
    }

    #[test]
    fn ids_differ_and_signs_differ_within_a_formula() {
        let mut ids = std::collections::BTreeSet::new();
        for formula in all() {
            assert!(ids.insert(formula.id), "{} stands twice", formula.id);
            let mut signs = std::collections::BTreeSet::from([formula.gives.sign]);
            for stands in &formula.with {
                assert!(signs.insert(stands.sign), "{}: {} stands twice", formula.id, stands.sign);
            }
        }
    }
}
