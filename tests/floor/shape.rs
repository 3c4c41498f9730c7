//! The room's shape from everything measured of it.

use super::*;
use duckboard::engine::results;
use duckboard::engine::survey::adjust::House;
use duckboard::engine::survey::shape::{Shape, Standing};
use duckboard::engine::survey::{Corner, Disagreement, Offset, Trust, agreement, areas_without, disagreement};
use duckboard::engine::take::Units;
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
    assert!(told.starts_with("the sides miss their start by 6\"") && told.contains("measure a diagonal"), "{told}");
    assert!(disagreement(desk.job()).stops());
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
    assert!(told.starts_with("one of these disagrees with the rest: side 4 (by 3"), "{told}");
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
    assert_eq!(complaint(&desk), None, "a house a little out of square has such a diagonal");
    desk.tie(sides[1], sides[3], "12' 9 11/16\"");
    assert!(complaint(&desk).is_some());
    let assumed = |desk: &Desk| known(agreement(desk.job())).assumed;
    let corners = assumed(&desk).pop().unwrap();
    assert!(corners.starts_with("corners "), "{corners}");
    assert_eq!(assumed(&desk), ["a tape within 1/16 in and 1 in 4,800".to_owned(), corners]);
    desk.log(Fact::LaserWithin(length("1")));
    assert!(complaint(&desk).is_some(), "nothing here was read with a laser");
    desk.log(Fact::TapeWithin(length("1")));
    assert_eq!(complaint(&desk), None);
    assert_eq!(assumed(&desk).len(), 1, "the tape is stated");
}

/// Sides of 12 ft by 10 ft, the third so long. Nothing else is measured.
fn open_by(third: &str) -> Disagreement {
    let mut desk = Desk::new();
    desk.room(&[("12'", R), ("10'", R), (third, R), ("10'", R)]);
    disagreement(desk.job())
}

#[test]
fn sides_that_miss_their_start_by_three_inches_stop_what_is_cut() {
    for (third, stops) in [("12'", false), ("12' 2 63/64\"", false), ("12' 3\"", true), ("12' 3 1/64\"", true)] {
        assert_eq!(open_by(third).stops(), stops, "{third}");
    }
    let Disagreement::Off { by, .. } = open_by("12' 3 1/64\"") else { panic!() };
    assert_eq!(by, length("3 1/64\"").value, "the size is exact");
}

/// Told to measure a side again, somebody types it as one side more.
#[test]
fn a_side_typed_past_the_start_does_not_make_a_disagreement_go_away() {
    let with = |second: &str, more: &[(&str, Turn)]| {
        let mut desk = Desk::new();
        let four = [("10'", R), (second, R), ("10'", R), ("8'", R)];
        desk.room(&four.into_iter().chain(more.iter().copied()).collect::<Vec<_>>());
        disagreement(desk.job())
    };
    assert!(with("8' 6\"", &[]).stops());
    let beyond = with("8' 6\"", &[("8'", R)]);
    assert!(beyond.stops() && beyond.says().unwrap().contains("take side 5 back"), "{beyond:?}");
    assert!(with("10'", &[("8'", R)]).stops(), "2 ft from its start");
    assert!(!with("10' 1/64\"", &[("8'", R)]).stops(), "a room may wind past its first corner");
    assert!(with("8' 6\"", &[("8'", R), ("3'", R)]).stops(), "nor by two more");
}

#[test]
fn a_side_measured_again_says_nothing_of_how_square_the_room_is() {
    let mut desk = Desk::new();
    let (_, sides) = desk.room(&[("12'", R), ("10'", R), ("12' 6\"", R), ("10'", R)]);
    desk.tie(sides[2], sides[3], "12' 6\"");
    assert!(disagreement(desk.job()).stops(), "the first side may still be wrong");
    desk.tie(sides[0], sides[2], "15' 9 3/4\"");
    desk.tie(sides[1], sides[3], "15' 9 3/4\"");
    assert!(!disagreement(desk.job()).stops(), "both diagonals say that the walls do slant");
}

/// A room of 12 ft by 10 ft; its diagonals are 15 ft 7 29/64 in by Pythagoras.
fn with_a_wrong_diagonal(text: &str) -> Desk {
    let mut desk = Desk::new();
    let (_, sides) = desk.room(&[("12'", R), ("10'", R), ("12'", R), ("10'", R)]);
    desk.tie(sides[0], sides[2], text);
    desk.tie(sides[1], sides[3], "15' 7 29/64\"");
    desk
}

#[test]
fn a_reading_three_inches_off_stops_and_one_less_off_is_only_told() {
    for (text, stops) in [("15' 10 3/8\"", false), ("15' 10 17/32\"", true), ("16' 7 7/16\"", true)] {
        let desk = with_a_wrong_diagonal(text);
        let disagreement = disagreement(desk.job());
        assert!(disagreement.says().is_some(), "{text}");
        assert_eq!(disagreement.stops(), stops, "{text}: {disagreement:?}");
    }
}

#[test]
fn it_stays_until_it_is_settled() {
    let mut desk = with_a_wrong_diagonal("16' 7 7/16\"");
    assert!(disagreement(desk.job()).stops());
    let tie = *desk.job().now.ties().first().unwrap().0;
    let right = Tie { length: length("15' 7 7/16\""), ..desk.job().now.ties().get(&tie).unwrap().value.clone() };
    desk.correct(tie, right);
    assert_eq!(disagreement(desk.job()).says(), None);
}

#[test]
fn the_area_without_what_is_accused_stands_beside_it() {
    let desk = with_a_wrong_diagonal("16' 7 7/16\"");
    let without = areas_without(desk.job());
    let (name, area) = &without[0];
    assert_eq!(name, "the diagonal from corner 1 to corner 3");
    assert!((area.to_square_feet() - 120.0).abs() < 0.1, "{}", area.to_square_feet());
    let room = results::answers(desk.job(), Units::default()).into_iter().find(|answer| answer.name == "room_area");
    let Figure::Known(said) = room.unwrap().said else { panic!() };
    assert!(said.value.line.contains("120.0 sq ft without the diagonal from corner 1 to corner 3"), "{:?}", said.value);
    assert_eq!(areas_without(with_a_wrong_diagonal("15' 7 7/16\"").job()), []);
}

#[test]
fn one_side_of_118_ft_for_11_is_named_and_stops() {
    let mut desk = Desk::new();
    let (_, sides) = desk.room(&[("118'", R), ("10'", R), ("11'", R), ("10'", R)]);
    assert!(disagreement(desk.job()).stops());
    desk.tie(sides[0], sides[2], "14' 10 3/8\"");
    desk.tie(sides[1], sides[3], "14' 10 3/8\"");
    let told = disagreement(desk.job());
    assert!(told.stops() && told.says().unwrap().starts_with("side 1 "), "{told:?}");
}

#[test]
fn what_is_said_of_the_house_is_weighed() {
    let squareness = |house: Option<House>| {
        let mut desk = Desk::new();
        let (_, sides) = desk.room(&[("12'", R), ("10'", R), ("12' 3/4\"", R), ("10'", R)]);
        if let Some(said) = house.and_then(House::as_said) {
            desk.log(said);
        }
        desk.tie(sides[0], sides[2], "15' 7 7/8\"");
        assert_eq!(House::said_of(desk.job()), house.unwrap_or_default());
        standing(&desk).known().unwrap().adjusted.squareness.unwrap().sigma
    };
    assert!(squareness(Some(House::Square)) < squareness(None));
    assert!(squareness(None) < squareness(Some(House::OutOfSquare)));
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
        let stops = disagreement(desk.job()).says().is_some();
        prop_assert_eq!(is_known, standing.known().is_some() || stops);
        room_area(desk.job());
    }
}
