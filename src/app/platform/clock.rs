//! The wall clock, for stamps.

use crate::engine::entry::Time;
use chrono::{DateTime, FixedOffset};

/// Now, with the phone's offset.
#[expect(clippy::cast_possible_truncation, reason = "milliseconds and minutes of a clock")]
pub fn now() -> Time {
    let date = js_sys::Date::new_0();
    let east_seconds = -(date.get_timezone_offset() as i32).saturating_mul(60);
    let utc = DateTime::from_timestamp_millis(date.get_time() as i64).unwrap_or_default();
    let offset = FixedOffset::east_opt(east_seconds).or_else(|| FixedOffset::east_opt(0));
    offset.map_or_else(|| utc.fixed_offset(), |offset| utc.with_timezone(&offset))
}
