//! What holds for every text, sense or nonsense.

use super::read;
use crate::engine::units::limits;
use crate::engine::units::tape::{BareUnit, MOST_CHARACTERS, Sign, Trouble, parse};
use proptest::prelude::*;

/// Texts of the grammar's own characters, in any order.
fn scrambled() -> impl Strategy<Value = String> {
    let pieces = [
        "0", "1", "2", "3", "4", "8", "12", "16", "147", "745", "'", "\"", "′", "″", "’", "''", " ", " ", "\u{a0}",
        "/", "⁄", "-", "–", "−", "+", ".", ",", "½", "⅞", "⅓", "ft", "ft.", "in", "in.", "mm", "cm", "m", "feet", "x",
        "1/2", "3/4", "5/4", "1/0", "3 1/2", "12' ",
    ];
    prop::collection::vec(prop::sample::select(pieces.to_vec()), 0..12).prop_map(|pieces| pieces.concat())
}

fn any_text() -> impl Strategy<Value = String> {
    prop_oneof![4 => scrambled(), 1 => any::<String>(), 1 => "[0-9'\"/ .,-]{0,80}"]
}

fn field() -> impl Strategy<Value = (BareUnit, Sign)> {
    (prop::sample::select(BareUnit::ALL.to_vec()), prop::sample::select(vec![Sign::Refused, Sign::Allowed]))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn what_is_read_is_in_range_and_kept_so_that_every_field_reads_it_alike(text in any_text(), (bare, sign) in field()) {
        if let Ok(read) = parse(&text, bare, sign) {
            prop_assert!(limits::LENGTH.check(read.value.to_nm()).is_ok());
            prop_assert!(sign == Sign::Allowed || read.value.to_nm() >= 0);
            prop_assert!(read.typed.starts_with(text.trim()), "what was typed is kept");
            prop_assert!(read.typed.chars().count() <= MOST_CHARACTERS);
            for other in BareUnit::ALL {
                prop_assert_eq!(&parse(&read.typed, other, Sign::Allowed).unwrap(), &read);
            }
        }
    }

    #[test]
    fn what_is_refused_says_where_and_what_would_do(text in any_text(), (bare, sign) in field()) {
        if let Err(problem) = parse(&text, bare, sign) {
            let message = problem.to_string();
            let says = message.contains("Type ") || problem.trouble == Trouble::OutOfRange;
            prop_assert!(says, "{}", message);
            if let Some(spot) = &problem.spot {
                let there: String = text.chars().skip(spot.at).take(spot.piece.chars().count()).collect();
                prop_assert_eq!(&there, &spot.piece);
            }
            for offered in &problem.try_instead {
                prop_assert!(parse(offered, bare, sign).is_ok(), "{} is offered and refused", offered);
            }
        }
    }

    #[test]
    fn spaces_around_the_whole_change_nothing(text in scrambled(), before in "[ \u{a0}]{0,3}", after in "[ \u{a0}\n]{0,3}") {
        let spaced = read(&format!("{before}{text}{after}"));
        match (read(&text), spaced) {
            (Ok(plain), Ok(spaced)) => prop_assert_eq!(plain, spaced),
            (Err(plain), Err(spaced)) => prop_assert_eq!(plain.to_string(), spaced.to_string()),
            (plain, spaced) => prop_assert!(false, "{:?} but {:?}", plain, spaced),
        }
    }

    #[test]
    fn a_field_without_sign_reads_what_one_with_it_reads_if_there_is_none(text in scrambled(), (bare, _) in field()) {
        if let Ok(read) = parse(&text, bare, Sign::Refused) {
            prop_assert_eq!(parse(&text, bare, Sign::Allowed).unwrap(), read);
        }
    }
}

#[test]
fn a_very_long_text_is_refused_and_not_repeated() {
    let problem = read(&"1".repeat(1_000_000)).unwrap_err();
    assert_eq!(problem.trouble, Trouble::TooLong);
    assert!(problem.to_string().len() < 200, "{problem}");
}

#[test]
fn the_spot_counts_characters_of_the_text_as_handed_in() {
    let spot = read("  12′ 3½″ wide").unwrap_err().spot.unwrap();
    assert_eq!((spot.at, spot.piece.as_str()), (10, "wide"));
}
