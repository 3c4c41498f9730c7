//! What is shown and spoken.

use crate::engine::units::tape::{BareUnit, InchStep, LengthStyle, ShownUnit, Sign, format, parse, speak};
use crate::engine::units::{Length, limits};
use proptest::prelude::*;

const TO_16TH: LengthStyle = LengthStyle::feet_inches(InchStep::Sixteenth);
const METRES: LengthStyle = LengthStyle { unit: ShownUnit::Metres, step: InchStep::Sixteenth };
const CENTIMETRES: LengthStyle = LengthStyle { unit: ShownUnit::Centimetres, ..METRES };
const MILLIMETRES: LengthStyle = LengthStyle { unit: ShownUnit::Millimetres, ..METRES };

fn shown(length: Length, style: LengthStyle) -> String {
    format(length, style).text
}

/// Sixty-fourths of an inch, in feet and inches to sixteenths.
fn feet(sixty_fourths: i32) -> String {
    shown(Length::sixty_fourths(sixty_fourths), TO_16TH)
}

fn back(text: &str) -> Length {
    parse(text, BareUnit::Inches, Sign::Allowed).unwrap_or_else(|problem| panic!("{problem}")).value
}

#[test]
fn feet_and_inches_stand_as_on_a_dimension_string() {
    assert_eq!(shown(Length::inches(147) + Length::sixty_fourths(32), TO_16TH), "12' 3 1/2\"");
    assert_eq!(shown(Length::feet(5), TO_16TH), "5' 0\"");
    assert_eq!(shown(Length::feet(4) + Length::sixty_fourths(8), TO_16TH), "4' 0 1/8\"");
    assert_eq!(feet(0), "0\"");
    assert_eq!(feet(4), "1/16\"");
    assert_eq!(feet(3 * 64 + 32), "3 1/2\"");
    assert_eq!(feet(-8), "-1/8\"");
    assert_eq!(feet(-(5 * 12 * 64 + 3 * 64 + 48)), "-5' 3 3/4\"");
}

#[test]
fn rounding_is_marked_and_carries_into_the_next_foot() {
    assert_eq!(feet(11 * 64 + 62), "~1' 0\"", "halves go away from zero");
    assert_eq!(feet(11 * 64 + 61), "~11 15/16\"");
    assert_eq!(feet(-(11 * 64 + 62)), "~-1' 0\"");
    assert_eq!(feet(1), "~0\"");
    assert_eq!(feet(-1), "~0\"", "nothing has no sign");
    assert_eq!(shown(Length::inches(12) - Length::nm(1), TO_16TH), "~1' 0\"");
}

#[test]
fn every_style_shows_the_same_length_its_way() {
    let length = Length::feet(12) + Length::inches(3) + Length::sixty_fourths(31);
    let texts: Vec<_> = LengthStyle::choices().map(|style| shown(length, style)).collect();
    let expected = [
        "~12' 3 1/2\"",
        "~12' 3 1/2\"",
        "~12' 3 1/2\"",
        "~12' 3 1/2\"",
        "~12' 3 1/2\"",
        "12' 3 31/64\"",
        "~147 1/2\"",
        "~147 1/2\"",
        "~147 1/2\"",
        "~147 1/2\"",
        "~147 1/2\"",
        "147 31/64\"",
        "~3746 mm",
        "~374.6 cm",
        "~3.746 m",
    ];
    assert_eq!(texts, expected);
}

#[test]
fn metric_is_shown_to_the_millimetre() {
    assert_eq!(shown(Length::mm(3745), MILLIMETRES), "3745 mm");
    assert_eq!(shown(Length::mm(3745), CENTIMETRES), "374.5 cm");
    assert_eq!(shown(Length::mm(3700), METRES), "3.700 m");
    assert_eq!(shown(Length::mm(-5), METRES), "-0.005 m");
    assert_eq!(shown(Length::nm(-400_000), CENTIMETRES), "~0.0 cm");
}

#[test]
fn it_is_spoken_in_words_with_the_right_number() {
    let spoken = |sixty_fourths| speak(Length::sixty_fourths(sixty_fourths), TO_16TH);
    assert_eq!(spoken((12 * 12 + 3) * 64 + 32), "12 feet 3 and 1/2 inches");
    assert_eq!(spoken(12 * 64), "1 foot");
    assert_eq!(spoken(13 * 64), "1 foot 1 inch");
    assert_eq!(spoken(24 * 64 + 8), "2 feet 1/8 inch");
    assert_eq!(spoken(0), "0 inches");
    assert_eq!(spoken(-48), "minus 3/4 inch");
    assert_eq!(spoken(63), "about 1 inch");
    assert_eq!(speak(Length::mm(3745), METRES), "3.745 metres");
    assert_eq!(speak(Length::mm(1000), METRES), "1 metre");
    assert_eq!(speak(Length::mm(-1), MILLIMETRES), "minus 1 millimetre");
    assert_eq!(speak(Length::nm(10_400_000), CENTIMETRES), "about 1 centimetre");
}

#[test]
fn the_first_two_feet_come_back_at_every_sixty_fourth() {
    for count in -2 * 12 * 64..=2 * 12 * 64 {
        let length = Length::sixty_fourths(count);
        let shown = format(length, LengthStyle::feet_inches(InchStep::SixtyFourth));
        assert!(!shown.rounded);
        assert_eq!(back(&shown.text), length);
    }
}

#[test]
fn every_choice_has_its_own_label_and_survives_json() {
    let mut labels: Vec<_> = LengthStyle::choices().map(LengthStyle::label).collect();
    labels.sort();
    labels.dedup();
    assert_eq!(labels.len(), 15, "{labels:?}");
    for style in LengthStyle::choices() {
        let json = serde_json::to_string(&style).unwrap();
        assert_eq!(serde_json::from_str::<LengthStyle>(&json).unwrap(), style);
    }
    let json = serde_json::to_string(&LengthStyle::default()).unwrap();
    assert_eq!(json, r#"{"unit":"feet-inches","step":"1/16"}"#, "it is kept on phones: changing it loses a preference");
}

fn style() -> impl Strategy<Value = LengthStyle> {
    prop::sample::select(LengthStyle::choices().collect::<Vec<_>>())
}

fn length() -> impl Strategy<Value = Length> {
    prop_oneof![limits::LENGTH.least..=limits::LENGTH.most, -700_000_000..=700_000_000_i64].prop_map(Length::nm)
}

proptest! {
    #[test]
    fn whole_steps_come_back_exactly_in_any_field(style in style(), part in -1_000_000_i64..=1_000_000) {
        let step = style.step_length();
        let length = step * (part * (limits::LENGTH.most / step.to_nm()) / 1_000_000);
        let shown = format(length, style);
        prop_assert!(!shown.rounded);
        for bare in BareUnit::ALL {
            prop_assert_eq!(parse(&shown.text, bare, Sign::Allowed).unwrap().value, length);
        }
    }

    #[test]
    fn what_is_shown_is_within_half_a_step_and_says_if_it_is_not_exact(length in length(), style in style()) {
        let shown = format(length, style);
        // The end of the range may round past it: step back inside before reading.
        prop_assume!(limits::LENGTH.check(length.to_nm() + style.step_length().to_nm() * length.to_nm().signum()).is_ok());
        let read = back(shown.unmarked());
        prop_assert!((read - length).abs() * 2 <= style.step_length());
        prop_assert_eq!(shown.rounded, read != length);
        prop_assert_eq!(shown.text.starts_with('~'), shown.rounded);
        prop_assert_eq!(&format(read, style).text, shown.unmarked(), "showing it again rounds no further");
    }

    #[test]
    fn a_longer_length_never_shows_shorter(one in -900_000_000_000..=900_000_000_000_i64, more in 0..30_000_000_i64, style in style()) {
        let shorter = back(format(Length::nm(one), style).unmarked());
        let longer = back(format(Length::nm(one + more), style).unmarked());
        prop_assert!(shorter <= longer);
    }

    #[test]
    fn turned_around_it_shows_the_same_size(length in length(), style in style()) {
        let (one, other) = (shown(length.abs(), style), shown(-length.abs(), style));
        prop_assert_eq!(one, other.replacen('-', "", 1));
    }

    #[test]
    fn any_number_of_nanometres_can_be_shown_and_spoken(nm: i64, style in style()) {
        for length in [Length::nm(nm), Length::nm(i64::MIN), Length::nm(i64::MAX)] {
            prop_assert!(format(length, style).text.contains(|c: char| c.is_ascii_digit()));
            let spoken = speak(length, style);
            prop_assert!(spoken.contains(|c: char| c.is_ascii_digit()) && !spoken.contains(['\'', '"', '~', '-']));
        }
    }
}
