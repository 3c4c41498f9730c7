//! Wall-clock times: how they are written, read and said.
//!
//! By hand, since chrono would bring along its parser and its formatter for every layout
//! there is, which a phone would have to load.

use chrono::{DateTime, Datelike, FixedOffset, Timelike};
use serde::de::{Deserializer, Error, Unexpected};
use serde::{Deserialize, Serialize, Serializer};
use std::borrow::Cow;

/// Wall-clock time with the offset in force where it was read. Order comes from the entry's
/// id; a clock is asked only where two phones did not know of each other.
pub type Time = DateTime<FixedOffset>;

const MONTHS: [&str; 12] = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/// The date: `2026-10-05`.
pub fn date(at: Time) -> String {
    format!("{:04}-{:02}-{:02}", at.year(), at.month(), at.day())
}

/// The day without its year: `Oct 5`.
pub fn day(at: Time) -> String {
    let month = MONTHS.get(at.month0() as usize).copied().unwrap_or_default();
    format!("{month} {}", at.day())
}

/// Day and minute: `Oct 5 08:10`.
pub fn minute(at: Time) -> String {
    format!("{} {:02}:{:02}", day(at), at.hour(), at.minute())
}

/// Written as RFC 3339 with its offset.
///
/// # Errors
/// What the serializer refuses.
pub fn serialize<S: Serializer>(at: &Time, serializer: S) -> Result<S::Ok, S::Error> {
    at.serialize(serializer)
}

/// Read from RFC 3339 with an offset.
///
/// # Errors
/// Anything else.
pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Time, D::Error> {
    let text = Cow::<str>::deserialize(deserializer)?;
    Time::parse_from_rfc3339(&text)
        .map_err(|_| Error::invalid_value(Unexpected::Str(&text), &"a time as in 2026-10-05T08:10:00-05:00"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_is_said_as_chrono_says_it() {
        for text in ["2026-10-05T08:10:00-05:00", "0999-01-31T23:59:59.5+14:00", "2024-02-29T00:00:00Z"] {
            let at = Time::parse_from_rfc3339(text).unwrap();
            assert_eq!(date(at), at.format("%Y-%m-%d").to_string());
            assert_eq!(day(at), at.format("%b %-d").to_string());
            assert_eq!(minute(at), at.format("%b %-d %H:%M").to_string());
        }
    }
}
