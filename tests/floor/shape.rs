//! The room's shape from everything measured of it.

use super::*;
use duckboard::engine::survey::shape::{Shape, Standing};
use duckboard::engine::survey::{Corner, Offset, Trust, agreement};
use duckboard::engine::units::decimal::parse_angle;

/// An L of 16 ft by 14 ft whose corners are square.
const ELL: [(&str, Turn); 6] = [("16'", R), ("8'", R), ("6'", L), ("6'", R), ("10'", R), ("14'", R)];

fn standing(desk: &Desk) -> Standing {
    Shape::standing(desk.job(), Floor::of(desk.job()).unwrap())
}

fn complaint(desk: &Desk) -> Option<String> {
    known(agreement(desk.job())).value.complaint
}

#[test]
fn a_room_that_closes_keeps_its_corners_exactly() {
    for walk in [&RIGHT_WALKED[..], &LEFT_WALKED[..], &ELL[..]] {
        let mut desk = Desk::new();
        desk.room(walk);
        let shape = standing(&desk).known().unwrap();
        assert_eq!(shape.corners, shape.floor.walk.corners()[..walk.len()]);
        assert_eq!(complaint(&desk), None);
        assert!(!shape.is_checked());
    }
}

#[test]
fn a_room_half_walked_has_no_shape() {
    let mut desk = Desk::new();
    desk.room(&ELL[..5]);
    assert_eq!(standing(&desk), Standing::AsWalked);
    assert_eq!(agreement(desk.job()), Figure::Missing(vec![Need::RoomOutline]));
}

/// Diagonals of the L by Pythagoras: 16 and 8 ft; 10 and 14 ft; 16 and 14 ft less 6 ft
/// and 6 ft make 10 and 8 ft from the inner corner to the first.
#[test]
fn a_side_six_inches_off_is_named_once_diagonals_check_it() {
    let mut desk = Desk::new();
    let mut walk = ELL;
    walk[3].0 = "6' 6\"";
    let (_, sides) = desk.room(&walk);
    let told = complaint(&desk).unwrap();
    assert!(told.contains("one of these disagrees") && told.contains("side 4"), "{told}");
    desk.tie(sides[0], sides[2], "17' 10 11/16\"");
    desk.tie(sides[0], sides[3], "12' 9 11/16\"");
    desk.tie(sides[0], sides[4], "17' 2 7/16\"");
    let told = complaint(&desk).unwrap();
    assert!(told.starts_with("side 4 disagrees with the rest by 6"), "{told}");
    assert!(told.ends_with("measure it again"), "{told}");
    let corrected = Side { after: Some(sides[2]), ..side(room_of(&desk), Some(sides[2]), "6'", R) };
    desk.correct(sides[3], corrected);
    assert_eq!(complaint(&desk), None);
    assert!(standing(&desk).known().unwrap().is_checked());
}

/// An invented L out of square, its corners at (0, 0), (192, 0), (191 1/2, 96),
/// (119 1/2, 96 1/4), (119 1/4, 168) and (-1/2, 168 1/4) in; lengths by Pythagoras to the
/// sixteenth. Side 4 is 5' 11 3/4" and was read 3 1/8 in too long.
#[test]
fn out_of_square_too_the_wrong_reading_is_named() {
    let mut desk = Desk::new();
    let walk = [("16'", R), ("8'", R), ("6'", L), ("6' 2 7/8\"", R), ("9' 11 3/4\"", R), ("14' 1/4\"", R)];
    let (_, sides) = desk.room(&walk);
    for (to, length) in [(2, "17' 10 3/16\""), (3, "12' 9 7/16\""), (4, "17' 2\"")] {
        desk.tie(sides[0], sides[to], length);
    }
    let told = complaint(&desk).unwrap();
    assert!(told.starts_with("side 4 disagrees with the rest by 3"), "{told}");
    desk.correct(sides[3], side(room_of(&desk), Some(sides[2]), "5' 11 3/4\"", R));
    assert_eq!(complaint(&desk), None);
    let shape = standing(&desk).known().unwrap();
    assert!(shape.corners[2].x < Length::inches(192), "corner 3 lies inward of a square one");
}

#[test]
fn what_is_a_mistake_depends_on_how_well_the_tape_reads() {
    let mut desk = Desk::new();
    let (_, sides) = desk.room(&RIGHT_WALKED);
    desk.tie(sides[0], sides[2], "12' 10 1/2\"");
    assert!(complaint(&desk).is_some());
    let assumed = |desk: &Desk| known(agreement(desk.job())).assumed;
    let corners = "corners built square within 0.2°".to_owned();
    assert_eq!(assumed(&desk), ["a tape within 1/16 in and 1 in 4,800".to_owned(), corners.clone()]);
    desk.log(Fact::LaserWithin(length("1")));
    assert!(complaint(&desk).is_some(), "nothing here was read with a laser");
    desk.log(Fact::TapeWithin(length("1")));
    assert_eq!(complaint(&desk), None);
    assert_eq!(assumed(&desk), [corners]);
}

fn room_of(desk: &Desk) -> EntryId {
    *desk.job().now.rooms().first().unwrap().0
}

#[test]
fn a_corner_beside_a_line_fixes_what_lengths_leave_loose() {
    let mut desk = Desk::new();
    let (_, sides) = desk.room(&RIGHT_WALKED);
    for side in &sides {
        desk.log(Corner { at: *side, angle: None, trust: Trust::Released });
    }
    assert!(standing(&desk).known().is_none(), "four sides alone are loose");
    // Side 1 leans: corner 3 lies 1 in beyond a square one, √(8² − (1/12)²) ft = 95 255/256 in out.
    let (along, out) = (length("10' 1\""), length("7' 11 63/64\""));
    desk.log(Offset { of: sides[2], from: sides[0], to: sides[1], along, out, side: R, by: Ruler::Tape });
    let shape = standing(&desk).known().expect("a shape");
    assert_eq!(complaint(&desk), None);
    let beyond = (shape.corners[2].x - Length::inches(121)).abs();
    assert!(beyond < Length::sixty_fourths(1), "{:?}", shape.corners);
    let names: Vec<_> = known(agreement(desk.job())).why.inputs.into_iter().map(|(name, _)| name).collect();
    assert!(names.contains(&"the offset of corner 3".to_owned()), "{names:?}");

    // On the other side of the line it would contradict everything.
    let mut mirrored = Desk::new();
    let (_, sides) = mirrored.room(&RIGHT_WALKED);
    let (along, out) = (length("10'"), length("8'"));
    mirrored.log(Offset { of: sides[2], from: sides[0], to: sides[1], along, out, side: L, by: Ruler::Tape });
    assert!(complaint(&mirrored).is_some());
}

#[test]
fn a_side_measured_again_counts_as_one_more_measurement() {
    let mut desk = Desk::new();
    let (_, sides) = desk.room(&RIGHT_WALKED);
    desk.tie(sides[1], sides[2], "8' 1/16\"");
    let shape = standing(&desk).known().unwrap();
    assert_eq!(shape.entries.iter().flatten().count(), 5);
    let told = known(agreement(desk.job()));
    let sides_2 = told.why.inputs.iter().filter(|(name, _)| name == "side 2").count();
    assert_eq!((sides_2, told.value.complaint), (2, None));
}

#[test]
fn a_bay_of_measured_angles_comes_round() {
    // 3 ft walls at 45 degrees before a 7 ft wall: 3 / √2 = 2.1213 ft = 2' 1 29/64" deep.
    let mut desk = Desk::new();
    let walk = [("7'", R), ("4'", R), ("3'", R), ("2' 9 1/16\"", R), ("3'", R), ("4'", R)];
    let (_, sides) = desk.room(&walk);
    assert_eq!(standing(&desk), Standing::AsWalked, "six right turns are more than once round");
    for corner in [2, 3, 4, 5] {
        let angle = Some(parse_angle("135").unwrap());
        desk.log(Corner { at: sides[corner], angle, trust: Trust::Built });
    }
    let shape = standing(&desk).known().expect("a shape");
    assert_eq!(complaint(&desk), None);
    // 7 × 4 ft, and a trapezoid of 7 and 2.7574 ft, 2.1213 ft deep: 28 + 10.349 sq ft.
    let area = known(room_area(desk.job())).value.to_square_feet();
    assert!((area - 38.349).abs() < 0.1, "{area}");
    assert_eq!(shape.corners.len(), 6);
}

#[test]
fn a_shape_that_nothing_fixes_says_what_would() {
    let mut desk = Desk::new();
    let (_, sides) = desk.room(&RIGHT_WALKED);
    for side in &sides {
        desk.log(Corner { at: *side, angle: None, trust: Trust::Released });
    }
    let told = standing(&desk).complaint().unwrap();
    assert!(told.contains("is not fixed yet; measure "), "{told}");
    assert_eq!(agreement(desk.job()), Figure::Missing(vec![Need::FixedOutline]));
    // A diagonal fixes four sides.
    desk.tie(sides[0], sides[2], "12' 9 11/16\"");
    assert_eq!(complaint(&desk), None);
}

#[test]
fn what_was_last_said_of_a_corner_counts() {
    let mut desk = Desk::new();
    let (_, sides) = desk.room(&RIGHT_WALKED);
    desk.log(Corner { at: sides[1], angle: Some(parse_angle("60").unwrap()), trust: Trust::Checked });
    assert_eq!(standing(&desk), Standing::AsWalked, "30 degrees are missing");
    desk.log(Corner { at: sides[1], angle: None, trust: Trust::Checked });
    assert_eq!(complaint(&desk), None);
}

#[test]
fn more_corners_than_are_adjusted_stay_as_walked() {
    let mut desk = Desk::new();
    let jogs = std::iter::repeat_n([("1'", L), ("1'", R)], 30).flatten();
    let walk: Vec<_> = [("40'", R), ("40'", R)].into_iter().chain(jogs).chain([("10'", R), ("10'", R)]).collect();
    desk.room(&walk);
    assert_eq!(standing(&desk), Standing::AsWalked);
}

proptest! {
    /// Ties between any corners, of any length, and anything said of corners, are
    /// answered: with a shape, or with what is wrong.
    #[test]
    fn nothing_said_of_a_room_goes_unanswered(
        ties in prop::collection::vec((0_usize..6, 0_usize..6, 1_i32..4_000), 0..6),
        corners in prop::collection::vec((0_usize..6, 1_i64..179, 0_usize..3), 0..6),
    ) {
        let mut desk = Desk::new();
        let (_, sides) = desk.room(&ELL);
        for (from, to, eighths) in ties {
            let length = Typed::new("x", Length::sixty_fourths(eighths * 8));
            desk.log(Tie { from: sides[from], to: sides[to], length, by: Ruler::Paces });
        }
        for (at, degrees, trust) in corners {
            let angle = Some(parse_angle(&degrees.to_string()).unwrap());
            desk.log(Corner { at: sides[at], angle, trust: Trust::ALL[trust] });
        }
        let standing = standing(&desk);
        let told = standing.complaint();
        prop_assert!(told.is_none_or(|told| !told.is_empty()));
        let is_known = matches!(agreement(desk.job()), Figure::Known(_));
        prop_assert_eq!(is_known, standing.known().is_some());
        room_area(desk.job());
    }
}
