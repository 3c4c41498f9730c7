//! Rooms for tests: a few by name, and any number at random.

use super::{Outline, Point, Step, Turn, Walk};
use crate::engine::units::Length;
use proptest::prelude::*;

/// Random walls lie on multiples of this many inches: the shortest jog.
const JOG: i32 = 4;

/// The outline through corners in inches.
pub(crate) fn outline(inches: &[(i32, i32)]) -> Outline {
    Outline::new(corners(inches)).expect("a valid room")
}

/// Corners in inches.
pub(crate) fn corners(inches: &[(i32, i32)]) -> Vec<Point> {
    inches.iter().map(|&(x, y)| Point::new(Length::inches(x), Length::inches(y))).collect()
}

/// Rooms with corners and jogs as they are met, in inches.
pub(crate) fn named() -> Vec<(&'static str, Outline)> {
    let rooms: [(&str, &[(i32, i32)]); 9] = [
        ("square", &[(0, 0), (120, 0), (120, 120), (0, 120)]),
        ("hall", &[(0, 0), (36, 0), (36, 240), (0, 240)]),
        ("closet", &[(0, 0), (60, 0), (60, 26), (0, 26)]),
        ("ell", &[(0, 0), (140, 0), (140, 74), (92, 74), (92, 118), (0, 118)]),
        ("u", &[(0, 0), (60, 0), (60, 70), (100, 70), (100, 0), (160, 0), (160, 130), (0, 130)]),
        ("tee", &[(0, 0), (160, 0), (160, 60), (110, 60), (110, 140), (50, 140), (50, 60), (0, 60)]),
        ("jogged", &[(0, 0), (80, 0), (80, 4), (140, 4), (140, 100), (136, 100), (136, 130), (0, 130)]),
        ("chimney", &[(0, 0), (60, 0), (60, 4), (96, 4), (96, 0), (150, 0), (150, 110), (0, 110)]),
        ("pilaster", &[(0, 0), (140, 0), (140, 120), (74, 120), (74, 116), (66, 116), (66, 120), (0, 120)]),
    ];
    rooms.into_iter().map(|(name, corners)| (name, outline(corners))).collect()
}

/// Corners of a random rectilinear room with up to 24 sides: a row of columns that
/// each reach a random way up and down from a common strip, so L, Z, T, U and comb
/// shapes; lying or standing, walked either way round, from any corner, anywhere.
pub(crate) fn any_room() -> impl Strategy<Value = Vec<Point>> {
    let column = (1_i32..=12, 1_i32..=14, 1_i32..=14);
    let place = (-500_i32..=500, -500_i32..=500);
    (prop::collection::vec(column, 1..=6), place, any::<(bool, bool, prop::sample::Index)>()).prop_map(
        |(columns, (x, y), (standing, backwards, first))| {
            let mut ring: Vec<_> = profile(&columns).into_iter().map(|(a, b)| (x + a * JOG, y + b * JOG)).collect();
            if standing {
                ring.iter_mut().for_each(|(x, y)| std::mem::swap(x, y));
            }
            if backwards {
                ring.reverse();
            }
            let first = first.index(ring.len());
            ring.rotate_left(first);
            corners(&ring)
        },
    )
}

/// The ring around columns of (width, up, down).
fn profile(columns: &[(i32, i32, i32)]) -> Vec<(i32, i32)> {
    let (mut top, mut bottom, mut x) = (Vec::new(), Vec::new(), 0);
    for &(width, up, down) in columns {
        top.extend([(x, -up), (x + width, -up)]);
        bottom.extend([(x, down), (x + width, down)]);
        x += width;
    }
    let ring: Vec<_> = top.into_iter().chain(bottom.into_iter().rev()).collect();
    // Columns of equal height leave corners that do not turn, twice over.
    let mut turning: Vec<(i32, i32)> = Vec::new();
    for corner in ring {
        while let [.., a, b] = turning[..]
            && ((a.0 == b.0 && b.0 == corner.0) || (a.1 == b.1 && b.1 == corner.1))
        {
            turning.pop();
        }
        turning.push(corner);
    }
    turning
}

/// The walk round a rectilinear room, started so that its first side heads East.
pub(crate) fn walk_round(room: &[Point]) -> Walk {
    let sides: Vec<_> = room.iter().zip(room.iter().cycle().skip(1)).map(|(&from, &to)| to - from).collect();
    let first = sides.iter().position(|side| side.dx.is_positive()).expect("some side heads East");
    let ahead = sides.iter().cycle().skip(first);
    let steps = ahead.clone().zip(ahead.skip(1)).take(sides.len()).map(|(side, next)| {
        let turn = if side.cross(*next) > crate::engine::units::Area::ZERO { Turn::Right } else { Turn::Left };
        Step::square(side.length(), turn)
    });
    Walk::new(steps)
}
