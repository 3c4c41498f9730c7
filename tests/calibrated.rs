//! A quick part of the calibration: ranges hold the truth of invented floors and days. All
//! of it: `cargo run --release --example calibration`.
#![allow(clippy::indexing_slicing, clippy::panic, clippy::unwrap_used, reason = "a test fails by panicking")]
#![allow(dead_code, reason = "the whole calibration uses the rest")]

#[path = "calibration/before.rs"]
mod before;
mod desk;
#[path = "calibration/drying.rs"]
mod drying;
#[path = "calibration/fields.rs"]
mod fields;
#[path = "calibration/map.rs"]
mod map;

use drying::Outcome;
use fields::{Kind, Taken};
use map::Row;

/// The set that the ways were weighed on.
const SET: u64 = 1;

#[test]
fn how_much_is_wet_lies_in_its_range_in_nine_of_ten_floors_of_each_kind() {
    for kind in Kind::ALL {
        let row = Row::of(SET, kind, 12, 12);
        assert!(row.given == 12 && row.is_honest(), "{}: {row}", kind.label());
        assert!(row.width() < 0.5 * row.floor(), "a range that says nothing is no range: {row}");
    }
}

/// A carpenter reads where it is wet.
#[test]
fn readings_round_the_wettest_place_give_no_range_until_the_rest_is_read_where_the_map_says() {
    let alone = Row::taken(SET, Kind::Plumes, Taken::RoundTheWettest, 12, false, 6);
    assert_eq!(alone.given, 0, "{alone}");
    let at_its_word = Row::taken(SET, Kind::Plumes, Taken::RoundTheWettest, 6, true, 6);
    assert!(at_its_word.given == 6 && at_its_word.is_honest(), "{at_its_word}");
}

#[test]
fn wood_is_dry_on_a_day_of_its_range_in_nine_of_ten_places() {
    let outcome = Outcome::of(SET, 3, 40);
    assert!(outcome.is_honest(), "{outcome}");
}
