//! Some of the harness's rooms, as a test: clean rooms of houses new and old, and rooms
//! with a wrong reading. All of them: `tests/adjust/outline-curve.txt`.

use crate::rooms::Shapes;
use crate::trial::{Count, Diagonals, Kind, SQUARENESS, area_off, clean, spoiled};
use duckboard::engine::survey::adjust::House;

/// So many of each kind, of other seeds than the harness's.
const ROOMS: u64 = 60;
const FIRST: u64 = 50_000;

const fn kind(shapes: Shapes, degrees: f64, diagonals: Diagonals) -> Kind {
    Kind { shapes, degrees, diagonals, house: House::Unsaid }
}

#[test]
fn a_house_out_of_square_is_not_accused_of_its_age() {
    // At 5 % a room, 60 rooms are accused 3 times on average, and more than 7 times in less
    // than two runs of a hundred (the binomial distribution, computed).
    for degrees in SQUARENESS {
        for diagonals in [Diagonals::These(0), Diagonals::These(2), Diagonals::Half] {
            let accused = clean(kind(Shapes::All, degrees, diagonals), FIRST..FIRST + ROOMS);
            assert!(accused <= 7, "{accused} of {ROOMS} at {degrees}°, {diagonals:?}");
        }
    }
}

#[test]
fn half_a_foot_and_a_foot_are_named_in_19_rooms_of_20_with_two_diagonals() {
    for degrees in SQUARENESS {
        for size in [6.0, 12.0] {
            let seeds = FIRST..FIRST + ROOMS;
            let Count { named, .. } = spoiled(kind(Shapes::Rectangles, degrees, Diagonals::These(2)), size, seeds);
            assert!(named * 20 >= 60 * 19, "{named} of {ROOMS} at {degrees}°, {size} in");
        }
    }
}

#[test]
fn rooms_of_more_corners_take_half_as_many_diagonals() {
    for degrees in [0.2, 0.35, 0.5] {
        let of = |size| spoiled(kind(Shapes::All, degrees, Diagonals::Half), size, FIRST..FIRST + ROOMS).named;
        let named = of(6.0) + of(12.0);
        assert!(named * 20 >= 120 * 19, "{named} of {} at {degrees}°", 2 * ROOMS);
    }
}

#[test]
fn without_the_named_reading_the_area_is_nearer() {
    let (with, without) = area_off(0.2, 6.0, FIRST..FIRST + ROOMS);
    assert!(without * 3.0 < with, "{with} % with, {without} % without");
}
