//! Ratios, shares and reductions read, and handed back.

use super::*;
use proptest::prelude::*;

#[test]
fn a_ratio_says_what_it_is_measured_by() {
    let read = liquid_ratio("1:4 w/v").expect("readable");
    assert_eq!(read, LiquidRatio { plant: 1.0, liquid: 4.0, by: RatioBasis::WeightInVolume });
    assert_eq!(liquid_ratio(" 1 : 2.5 W/W ").expect("readable").liquid, 2.5);
    assert_eq!(liquid_ratio("1:10 v/v").expect("readable").by, RatioBasis::VolumeInVolume);
    let misread = liquid_ratio("1:4").expect_err("no basis");
    assert_eq!(misread.code, Code::NoBasis);
    assert_eq!(misread.write, ["1:4 w/v", "1:4 w/w"]);
    assert!(misread.why.expect("meanings").contains("1 g of plant to 4 mL of liquid"));
    assert_eq!(liquid_ratio("1:0 w/v").expect_err("nothing").code, Code::BadNumber);
    assert_eq!(liquid_ratio("1 L").expect_err("an amount").code, Code::WrongShape);
}

#[test]
fn a_proportion_says_of_what_and_by_what() {
    let read = |text: &str| {
        let read = proportion(text).unwrap_or_else(|misread| panic!("{text}: {misread:?}"));
        (read.share, read.of, read.by)
    };
    assert_eq!(read("1/2 of the liquid by volume"), (0.5, Of::Liquid, By::Volume));
    assert_eq!(read("2 of the liquid by volume"), (2.0, Of::Liquid, By::Volume));
    assert_eq!(read("equal to the liquid by weight"), (1.0, Of::Liquid, By::Weight));
    assert_eq!(read("50 % of the finished by volume"), (0.5, Of::Finished, By::Volume));
    assert_eq!(read("as much as the liquid by volume"), (1.0, Of::Liquid, By::Volume));
    assert_eq!(read("twice the liquid by volume"), (2.0, Of::Liquid, By::Volume));
    assert_eq!(read("half the liquid by volume"), (0.5, Of::Liquid, By::Volume));
    assert_eq!(read("1 1/2 times the liquid by weight"), (1.5, Of::Liquid, By::Weight));
}

#[test]
fn a_bare_share_gets_every_reading() {
    let misread = proportion("50 %").expect_err("no basis");
    assert_eq!(misread.code, Code::NoBasis);
    assert_eq!(
        misread.write,
        [
            "1/2 of the liquid by volume",
            "1/2 of the liquid by weight",
            "1/2 of the finished by volume",
            "1/2 of the finished by weight",
        ]
    );
    assert_eq!(
        misread.why.as_deref(),
        Some(
            "1/2 of the liquid makes the finished 1 1/2 times the liquid; 1/2 of the finished adds as much as the liquid"
        )
    );
    let misread = proportion("1/2 of the liquid").expect_err("no by");
    assert_eq!(misread.write, ["1/2 of the liquid by volume", "1/2 of the liquid by weight"]);
    let misread = proportion("1/2 by volume").expect_err("no of");
    assert_eq!(misread.write, ["1/2 of the liquid by volume", "1/2 of the finished by volume"]);
    assert_eq!(proportion("1/2 of the wine by volume").expect_err("wine").code, Code::NoBasis);
    assert_eq!(proportion("1 of the finished by volume").expect_err("all of it").code, Code::BadNumber);
    assert_eq!(proportion("0 of the liquid by volume").expect_err("nothing").code, Code::BadNumber);
    assert_eq!(proportion("some").expect_err("no share").code, Code::WrongShape);
}

#[test]
fn a_reduction_says_to_or_by() {
    let share = |text: &str| match reduction(text) {
        Ok(Reduction::ToShare { share, of }) => (share, of),
        other => panic!("{text}: {other:?}"),
    };
    assert_eq!(share("1/2"), (0.5, LeftOf::Liquid));
    assert_eq!(share("half"), (0.5, LeftOf::Liquid));
    assert_eq!(share("by half"), (0.5, LeftOf::Liquid));
    assert_eq!(share("to 1/2"), (0.5, LeftOf::Liquid));
    assert_eq!(share("by 1/3"), (2.0 / 3.0, LeftOf::Liquid));
    assert_eq!(share("to 1/3 of the liquid"), (1.0 / 3.0, LeftOf::Liquid));
    assert_eq!(share("to 1/2 of the water"), (0.5, LeftOf::Water));
    assert_eq!(share("to 40 %"), (0.4, LeftOf::Liquid));
    let misread = reduction("1/3").expect_err("to or by");
    assert_eq!(
        (misread.code, misread.write),
        (Code::NoBasis, vec!["to 1/3".to_string(), "by 1/3".to_string()])
    );
    assert_eq!(misread.why.as_deref(), Some("to 1/3 leaves 1/3; by 1/3 leaves 2/3"));
}

#[test]
fn a_reduction_may_name_what_is_left() {
    for (text, ml) in [("to 16 fl oz", 473.176473), ("to 473 mL", 473.0), ("to 2 cups", 473.176473)] {
        match reduction(text) {
            Ok(Reduction::ToVolume(amount)) => assert_eq!(amount.low, ml),
            other => panic!("{text}: {other:?}"),
        }
    }
    let misread = reduction("to 16 oz").expect_err("weight or volume");
    assert_eq!((misread.code, misread.at), (Code::NoBasis, 3..8));
    assert_eq!(misread.write, ["to 16 fl oz"]);
    assert_eq!(reduction("16 fl oz").expect_err("no to").write, ["to 16 fl oz"]);
    assert_eq!(reduction("by 16 fl oz").expect_err("an amount away").write, ["to 16 fl oz"]);
    assert_eq!(reduction("to 2").expect_err("more than all").code, Code::BadNumber);
    assert_eq!(reduction("to 200 g").expect_err("a mass").code, Code::WrongDimension);
    assert_eq!(reduction("a little").expect_err("no number").code, Code::WrongShape);
}

#[test]
fn what_a_misread_proposes_can_be_read() {
    for text in
        ["50 %", "37 %", "2", "1/2 of the liquid", "2 of the finished by weight", "some", "7/8 by weight"]
    {
        for write in proportion(text).expect_err(text).write {
            assert!(proportion(&write).is_ok(), "{text} proposes {write}");
        }
    }
    for text in ["1/3", "a little", "16 fl oz", "2", "1/3 of the water", "by 1/3 of the water"] {
        for write in reduction(text).expect_err(text).write {
            assert!(reduction(&write).is_ok(), "{text} proposes {write}");
        }
    }
}

fn never_panics(text: &str) -> Result<(), TestCaseError> {
    for misread in
        [liquid_ratio(text).err(), proportion(text).err(), reduction(text).err()].into_iter().flatten()
    {
        prop_assert!(text.get(misread.at).is_some());
    }
    Ok(())
}

proptest! {
    #[test]
    fn any_text_is_read_or_handed_back(text in ".*") {
        never_panics(&text)?;
    }

    #[test]
    fn any_near_share_is_read_or_handed_back(text in "(to|by|TO)? ?[0-9½/., :%-]{0,8}(of|the|liquid|water|by|w/v|w|ſ|K| ){0,5}") {
        never_panics(&text)?;
    }
}
