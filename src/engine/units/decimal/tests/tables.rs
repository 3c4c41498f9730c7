//! The two tables: what is read, and what is refused with which words.

use crate::engine::units::decimal::table::rows;
use crate::engine::units::decimal::{
    Problem, Scale, parse_moisture_content, parse_relative_humidity, parse_temperature,
};
use crate::engine::units::{MoistureContent, RelativeHumidity, Temperature};

const ACCEPTED: &str = include_str!("accepted.txt");
const REFUSED: &str = include_str!("refused.txt");

/// A value of any of the fields, to compare.
#[derive(Debug, PartialEq)]
enum Value {
    Moisture(MoistureContent),
    Humidity(RelativeHumidity),
    Temperature(Temperature),
}

/// What `field` makes of `typed`: the text kept, and the value.
fn read(field: &str, typed: &str) -> Result<(String, Value), Problem> {
    let temperature = |scale| parse_temperature(typed, scale).map(|read| (read.typed, Value::Temperature(read.value)));
    match field {
        "mc" => parse_moisture_content(typed).map(|read| (read.typed, Value::Moisture(read.value))),
        "rh" => parse_relative_humidity(typed).map(|read| (read.typed, Value::Humidity(read.value))),
        "°F" => temperature(Scale::Fahrenheit),
        "°C" => temperature(Scale::Celsius),
        _ => panic!("no such field: {field}"),
    }
}

/// The value that the table means: temperatures in the scale that the text kept names.
fn expected(field: &str, hundredths: i64, kept: &str) -> Value {
    match field {
        "mc" => Value::Moisture(MoistureContent::try_hundredths(hundredths).unwrap()),
        "rh" => Value::Humidity(RelativeHumidity::try_hundredths(hundredths).unwrap()),
        _ if kept.contains(['f', 'F', '℉']) => Value::Temperature(Temperature::try_hundredths_f(hundredths).unwrap()),
        _ => Value::Temperature(Temperature::try_hundredths_c(hundredths).unwrap()),
    }
}

#[test]
fn what_the_table_accepts_has_its_value_and_is_kept_with_its_unit() {
    for [field, typed, hundredths, kept] in rows(ACCEPTED) {
        let kept = if kept == "=" { typed.clone() } else { kept };
        let value = expected(&field, hundredths.parse().unwrap(), &kept);
        assert_eq!(read(&field, &typed).unwrap(), (kept, value), "{field}: {typed}");
    }
}

#[test]
fn what_the_table_refuses_is_refused_in_its_words() {
    for [field, typed, message] in rows(REFUSED) {
        match read(&field, &typed) {
            Ok(read) => panic!("{field}: {typed} was read as {read:?}"),
            Err(problem) => assert_eq!(problem.to_string(), message, "{field}: {typed}"),
        }
    }
}
