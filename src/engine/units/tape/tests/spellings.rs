//! A naive twin of the parser: make a length from its parts, spell it in every way
//! that people do, and expect the sum of the parts.

use super::nm;
use crate::engine::units::tape::{BareUnit, Sign, parse};
use proptest::prelude::*;

const FOOT: i128 = 304_800_000;
const INCH: i128 = 25_400_000;

/// Feet, inches below twelve, and a proper fraction of a tape.
#[derive(Debug, Clone, Copy)]
struct Parts {
    feet: i128,
    inches: i128,
    over: i128,
    under: i128,
}

impl Parts {
    /// Twice the sum over twice the denominator, rounded by hand: all parts are positive.
    fn nm(self) -> i64 {
        let whole = self.feet * FOOT + self.inches * INCH;
        i64::try_from((2 * (whole * self.under + self.over * INCH) + self.under) / (2 * self.under)).unwrap()
    }
}

fn parts() -> impl Strategy<Value = Parts> {
    let fraction =
        prop::sample::select(vec![2_i128, 3, 4, 8, 16, 32, 64]).prop_flat_map(|under| (0..under, Just(under)));
    (0..3_280_i128, 0..12_i128, fraction).prop_map(|(feet, inches, (over, under))| Parts { feet, inches, over, under })
}

fn one_of(choices: &[&'static str]) -> impl Strategy<Value = &'static str> + use<> {
    prop::sample::select(choices.to_vec())
}

fn space() -> impl Strategy<Value = &'static str> {
    one_of(&["", " ", "  ", "\u{a0}", "\u{202f} "])
}

fn foot() -> impl Strategy<Value = &'static str> {
    one_of(&["'", "′", "’", "ft", "ft. ", "FT", "foot", "Feet"])
}

fn inch() -> impl Strategy<Value = &'static str> {
    one_of(&["\"", "″", "”", "''", "′′", "’’", "in", "in.", "IN", "inch", "Inches"])
}

fn slash() -> impl Strategy<Value = &'static str> {
    one_of(&["/", "⁄", "∕", " / ", "/ "])
}

proptest! {
    #[test]
    fn marks_and_stray_spaces_do_not_change_the_sum(
        parts in parts(), foot in foot(), inch in prop::option::of(inch()), slash in slash(),
        joint in one_of(&[" ", "-", "\u{a0}", "–"]), dash in one_of(&["", "-", " - ", "− "]),
        gaps in prop::array::uniform5(space()),
    ) {
        let Parts { feet, inches, over, under } = parts;
        let [a, b, c, d, e] = gaps;
        let text = format!("{a}{feet}{b}{foot}{c}{dash}{inches}{joint}{over}{slash}{under}{d}{}{e}", inch.unwrap_or(""));
        prop_assert_eq!(nm(&text), parts.nm(), "{}", text);
    }

    #[test]
    fn marks_say_the_same_in_every_field(parts in parts(), foot in foot(), inch in prop::option::of(inch())) {
        let Parts { feet, inches, over, under } = parts;
        let text = format!("{feet}{foot} {inches} {over}/{under}{}", inch.unwrap_or(""));
        for bare in BareUnit::ALL {
            prop_assert_eq!(parse(&text, bare, Sign::Refused).unwrap().value.to_nm(), parts.nm());
        }
    }

    #[test]
    fn bare_numbers_are_feet_inches_fraction(parts in parts(), joints in prop::array::uniform2(one_of(&[" ", "-", "  "]))) {
        let Parts { feet, inches, over, under } = parts;
        let [first, second] = joints;
        prop_assert_eq!(nm(&format!("{feet}{first}{inches}{second}{over}/{under}")), parts.nm());
        prop_assert_eq!(nm(&format!("{feet}{first}{inches}")), Parts { over: 0, ..parts }.nm());
    }

    #[test]
    fn a_whole_number_and_a_fraction_are_inches(parts in parts(), joint in one_of(&[" ", "-"])) {
        let Parts { feet: inches, over, under, .. } = parts;
        let expected = Parts { feet: 0, inches, over, under }.nm();
        prop_assert_eq!(nm(&format!("{inches}{joint}{over}/{under}")), expected);
        prop_assert_eq!(nm(&format!("{over}/{under}")), Parts { feet: 0, inches: 0, over, under }.nm());
    }

    #[test]
    fn a_sign_turns_the_length_around(parts in parts(), minus in one_of(&["-", "−", "–", "- "])) {
        let text = format!("{}' {} {}/{}\"", parts.feet, parts.inches, parts.over, parts.under);
        prop_assert_eq!(nm(&format!("{minus}{text}")), -parts.nm());
        prop_assert_eq!(nm(&format!("+{text}")), parts.nm());
        let refused = parse(&format!("{minus}{text}"), BareUnit::Inches, Sign::Refused);
        prop_assert!(refused.is_err());
    }

    /// Nearest by definition: no whole nanometre is closer to digits × unit.
    #[test]
    fn decimals_give_the_nearest_nanometre(
        whole in 0_i128..1_000, part in "[0-9]{1,12}", comma: bool,
        (unit, size) in prop::sample::select(vec![
            ("ft", FOOT), ("in", INCH), ("mm", 1_000_000), ("cm", 10_000_000), ("m", 1_000_000_000),
        ]),
    ) {
        let metric = unit.ends_with('m');
        let point = if comma && metric && part.len() != 3 { ',' } else { '.' };
        let scale = 10_i128.pow(part.len().try_into().unwrap());
        let exact = (whole * scale + part.parse::<i128>().unwrap()) * size;
        let found = i128::from(nm(&format!("{whole}{point}{part} {unit}")));
        let beyond = found * scale - exact;
        prop_assert!(-scale < 2 * beyond && 2 * beyond <= scale, "{found} is not nearest to {exact}/{scale}");
    }

    #[test]
    fn three_digits_after_a_comma_are_never_read(whole in "[0-9]{0,4}", part in "[0-9]{3}", unit in one_of(&["mm", "cm", "m", "", "\""])) {
        for bare in BareUnit::ALL {
            let read = parse(&format!("{whole},{part}{unit}"), bare, Sign::Refused);
            prop_assert!(read.is_err());
        }
    }

    #[test]
    fn twelve_inches_or_more_after_feet_are_never_read(feet in 0..100_u32, inches in 12..1_000_u32, joint in one_of(&["' ", " ", "-", "ft"])) {
        let problem = super::read(&format!("{feet}{joint}{inches}\"")).unwrap_err();
        let offered = nm(problem.try_instead.first().unwrap());
        prop_assert_eq!(i128::from(offered), i128::from(feet) * FOOT + i128::from(inches) * INCH);
    }
}
