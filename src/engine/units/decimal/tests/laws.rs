//! What holds for every text and every value.

use crate::engine::units::decimal::{
    Decimals, MOST_CHARACTERS, Problem, Scale, Trouble, format_moisture_content, format_relative_humidity,
    format_temperature, parse_moisture_content, parse_relative_humidity, parse_temperature,
};
use crate::engine::units::{MoistureContent, RelativeHumidity, Temperature, Typed};
use proptest::prelude::*;

fn any_text() -> impl Strategy<Value = String> {
    let pieces =
        ["0", "1", "18", "68", "5", "300", ".", ",", "-", "−", "+", " ", "\u{a0}", "%", "°", "F", "c", "percent", "x"];
    let scrambled =
        prop::collection::vec(prop::sample::select(pieces.to_vec()), 0..7).prop_map(|pieces| pieces.concat());
    prop_oneof![4 => scrambled, 1 => any::<String>(), 1 => "-?[0-9]{1,3}[.,]?[0-9]{0,3} ?[%°FC]?"]
}

fn scale() -> impl Strategy<Value = Scale> {
    prop::sample::select(Scale::ALL.to_vec())
}

/// What holds of an answer to `text` in a field read by `parse`.
fn check<Q: PartialEq + std::fmt::Debug>(
    text: &str,
    parse: impl Fn(&str) -> Result<Typed<Q>, Problem>,
) -> Result<(), TestCaseError> {
    match parse(text) {
        Ok(read) => {
            prop_assert!(read.typed.starts_with(text.trim()), "what was typed is kept");
            prop_assert!(read.typed.chars().count() <= MOST_CHARACTERS);
            prop_assert_eq!(&parse(&read.typed).unwrap(), &read, "and reads the same again");
        }
        Err(problem) => {
            let message = problem.to_string();
            let says = message.contains("Type ") || problem.trouble == Trouble::OutOfRange;
            prop_assert!(says, "{}", message);
            if let Some(spot) = &problem.spot {
                let there: String = text.chars().skip(spot.at).take(spot.piece.chars().count()).collect();
                prop_assert_eq!(&there, &spot.piece);
            }
            for offered in &problem.try_instead {
                prop_assert!(parse(offered).is_ok(), "{} is offered and refused", offered);
            }
        }
    }
    Ok(())
}

/// The number that a shown text begins with, in hundredths.
fn hundredths(shown: &str) -> i64 {
    let number: f64 = shown.split(' ').next().unwrap().parse().unwrap();
    (number * 100.0).round() as i64
}

/// Half of the last decimal shown, in hundredths.
fn half_of_last(decimals: Decimals) -> f64 {
    match decimals {
        Decimals::Whole => 50.0,
        Decimals::Tenths => 5.0,
        Decimals::Hundredths => 0.5,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn any_text_is_read_and_kept_or_refused_with_what_would_do(text in any_text(), scale in scale()) {
        check(&text, parse_moisture_content)?;
        check(&text, parse_relative_humidity)?;
        check(&text, |text| parse_temperature(text, scale))?;
    }

    #[test]
    fn the_text_kept_means_the_same_in_both_scales(text in any_text(), scale in scale()) {
        if let Ok(read) = parse_temperature(&text, scale) {
            for other in Scale::ALL {
                prop_assert_eq!(&parse_temperature(&read.typed, other).unwrap(), &read);
            }
        }
    }
}

proptest! {
    #[test]
    fn two_decimals_come_back_exactly(percent in 0_i64..=10_000, degrees in -6_000_i64..=10_000, scale in scale()) {
        let moisture = MoistureContent::try_hundredths(percent).unwrap();
        let shown = format_moisture_content(moisture, Decimals::Hundredths);
        prop_assert_eq!(parse_moisture_content(&shown).unwrap().value, moisture);
        let humidity = RelativeHumidity::try_hundredths(percent).unwrap();
        let shown = format_relative_humidity(humidity, Decimals::Hundredths);
        prop_assert_eq!(parse_relative_humidity(&shown).unwrap().value, humidity);
        let temperature = match scale {
            Scale::Fahrenheit => Temperature::try_hundredths_f(degrees),
            Scale::Celsius => Temperature::try_hundredths_c(degrees),
        };
        let shown = format_temperature(temperature.unwrap(), scale, Decimals::Hundredths);
        for field in Scale::ALL {
            prop_assert_eq!(parse_temperature(&shown, field).unwrap().value, temperature.unwrap());
        }
    }

    #[test]
    fn what_is_shown_is_within_half_of_its_last_decimal(degrees in -6_000_i64..=10_000, percent in 0_i64..=30_000) {
        for decimals in Decimals::ALL {
            let celsius = Temperature::try_hundredths_c(degrees).unwrap();
            let error = hundredths(&format_temperature(celsius, Scale::Celsius, decimals)) - degrees;
            prop_assert!(error.abs() as f64 <= half_of_last(decimals));
            let fahrenheit = hundredths(&format_temperature(celsius, Scale::Fahrenheit, decimals));
            let error = fahrenheit as f64 - (degrees as f64 * 1.8 + 3_200.0);
            prop_assert!(error.abs() <= half_of_last(decimals) + 1e-6);
            let moisture = MoistureContent::try_hundredths(percent).unwrap();
            let error = hundredths(&format_moisture_content(moisture, decimals)) - percent;
            prop_assert!(error.abs() as f64 <= half_of_last(decimals));
        }
    }

    #[test]
    fn warmer_never_shows_colder(one in -60.0..100.0_f64, more in 0.0..2.0_f64, scale in scale()) {
        let shown = |degrees| format_temperature(Temperature::from_celsius_f64(degrees), scale, Decimals::Tenths);
        prop_assert!(hundredths(&shown(one)) <= hundredths(&shown(one + more)));
    }

    #[test]
    fn nothing_is_shown_with_a_minus(degrees in -0.004..0.004_f64) {
        for decimals in Decimals::ALL {
            let shown = format_temperature(Temperature::from_celsius_f64(degrees), Scale::Celsius, decimals);
            prop_assert!(!shown.starts_with('-'), "{}", shown);
        }
    }
}

#[test]
fn values_stand_with_their_unit_and_the_decimals_asked_for() {
    let moisture = MoistureContent::try_hundredths(1_850).unwrap();
    let shown = Decimals::ALL.map(|decimals| format_moisture_content(moisture, decimals));
    assert_eq!(shown, ["19 %", "18.5 %", "18.50 %"], "halves go away from zero");
    assert_eq!(format_relative_humidity(RelativeHumidity::percent(80), Decimals::Whole), "80 %");
    let twenty_and_a_half = Temperature::try_hundredths_c(2_050).unwrap();
    assert_eq!(format_temperature(twenty_and_a_half, Scale::Celsius, Decimals::Tenths), "20.5 °C");
    assert_eq!(format_temperature(twenty_and_a_half, Scale::Fahrenheit, Decimals::Tenths), "68.9 °F");
    let below = Temperature::try_hundredths_f(-450).unwrap();
    assert_eq!(format_temperature(below, Scale::Fahrenheit, Decimals::Whole), "-5 °F");
    let hair_below = Temperature::try_hundredths_c(-40).unwrap();
    assert_eq!(format_temperature(hair_below, Scale::Celsius, Decimals::Whole), "0 °C");
}

#[test]
fn what_a_table_computed_shows_to_its_decimals_only() {
    let computed = MoistureContent::from_percent_f64(18.546);
    assert_eq!(format_moisture_content(computed, Decimals::Tenths), "18.5 %");
    assert_eq!(format_moisture_content(computed, Decimals::Hundredths), "18.55 %");
}
