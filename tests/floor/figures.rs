//! What follows from the measured floor: areas, sheets, and what to doubt of them.

use super::*;

#[test]
fn a_walk_that_has_not_come_round_has_no_area() {
    let mut desk = Desk::new();
    desk.room(&RIGHT_WALKED[..3]);
    assert_eq!(room_area(desk.job()), Figure::Missing(vec![Need::RoomOutline]));
    assert_eq!(opening_area(desk.job()), Figure::Missing(vec![Need::Opening]));
}

#[test]
fn a_room_has_the_same_area_whichever_way_it_was_walked() {
    for walk in [RIGHT_WALKED, LEFT_WALKED] {
        let mut desk = Desk::new();
        let (_, walked) = desk.room(&walk);
        let area = known(room_area(desk.job()));
        assert_eq!(area.value, Area::square_feet(80));
        assert!(area.doubts.is_empty());
        assert_eq!(area.why.used, walked);
    }
}

#[test]
fn a_room_that_misses_its_start_says_so() {
    let mut desk = Desk::new();
    desk.room(&[("10'", R), ("8'", R), ("10'", R), ("7' 11 7/8\"", R)]);
    assert!(known(room_area(desk.job())).doubts[0].contains("do not quite close"));
}

/// A room 30 ft by 12 ft with these openings, each by its offsets and size.
fn hall(openings: &[[&str; 4]]) -> Desk {
    let mut desk = Desk::new();
    let (_, walked) = desk.room(&[("30'", R), ("12'", R), ("30'", R), ("12'", R)]);
    for lengths in openings {
        desk.opening(walked[0], *lengths);
    }
    desk
}

#[test]
fn two_hundred_and_fifty_square_feet_take_eight_sheets_by_area() {
    // ceil(250 / 32) = ceil(7.81) = 8. [C], common practice, no source.
    let desk = hall(&[["2'", "1'", "25'", "10'"]]);
    assert_eq!(known(opening_area(desk.job())).value, Area::square_feet(250));
    let sheets = known(sheets_by_area(desk.job()));
    assert_eq!(sheets.value, 8);
    assert_eq!(sheets.why.sources, [Source::SheetsByArea]);
    assert_eq!(sheets.why.mark(), Some(Mark::Practice));
    assert_eq!(Mark::Practice.label(), "common practice, no source");
    assert_eq!(sheets.assumed, ["4 × 8 ft sheets"]);
    assert!(sheets.doubts.iter().any(|doubt| doubt.contains("not enough to order by")));
}

#[test]
fn a_stated_sheet_is_counted_by_and_no_longer_assumed() {
    // 250 / 40 = 6.25, so 7 of 4 by 10 ft.
    let mut desk = hall(&[["2'", "1'", "25'", "10'"]]);
    desk.log(Fact::Sheet(SheetSize { width: length("4'"), length: length("10'") }));
    let sheets = known(sheets_by_area(desk.job()));
    assert_eq!((sheets.value, sheets.assumed.len()), (7, 0));
    desk.log(Fact::Sheet(SheetSize { width: length("0"), length: length("10'") }));
    assert!(sheets_by_area(desk.job()).value().is_none(), "a sheet of no size covers nothing");
}

fn doubts(desk: &Desk) -> String {
    known(opening_area(desk.job())).doubts.join(" ")
}

#[test]
fn an_opening_that_reaches_beyond_the_walls_is_doubted() {
    assert_eq!(doubts(&hall(&[["0", "0", "30'", "12'"]])), "", "the whole floor may come out");
    assert!(doubts(&hall(&[["6'", "1'", "25'", "10'"]])).contains("beyond the walls"));
    let mut unknown = Desk::new();
    let (_, walked) = unknown.room(&RIGHT_WALKED[..1]);
    unknown.opening(walked[0], ["0", "0", "99'", "99'"]);
    assert_eq!(doubts(&unknown), "", "without an outline there are no walls to reach beyond");
}

#[test]
fn an_opening_across_a_bay_of_the_wall_is_doubted_though_its_corners_are_inside() {
    // A U 12 ft wide and 8 ft deep whose bay, 4 ft wide and 6 ft deep, is open at side 1.
    let mut desk = Desk::new();
    let (_, walked) =
        desk.room(&[("4'", R), ("6'", L), ("4'", L), ("6'", R), ("4'", R), ("8'", R), ("12'", R), ("8'", R)]);
    assert_eq!(known(room_area(desk.job())).value, Area::square_feet(72));
    desk.opening(walked[0], ["1'", "1'", "10'", "2'"]);
    assert!(doubts(&desk).contains("beyond the walls"));
}

#[test]
fn openings_that_overlap_are_doubted_and_ones_that_touch_are_not() {
    let touching = hall(&[["0", "0", "4'", "8'"], ["4'", "0", "4'", "8'"]]);
    assert_eq!((known(opening_area(touching.job())).value, doubts(&touching)), (Area::square_feet(64), String::new()));
    let overlapping = hall(&[["0", "0", "4'", "8'"], ["3'", "7'", "4'", "2'"]]);
    assert!(doubts(&overlapping).contains("counted twice"));
}

#[test]
fn an_opening_whose_side_is_gone_is_not_left_out_in_silence() {
    let mut desk = hall(&[["0", "0", "4'", "8'"]]);
    let last = *sides(&desk).last().unwrap();
    desk.opening(last, ["0", "10'", "4'", "8'"]);
    assert_eq!(known(opening_area(desk.job())).value, Area::square_feet(64));
    desk.withdraw(last);
    assert_eq!(known(opening_area(desk.job())).value, Area::square_feet(32));
    assert!(doubts(&desk).contains("left out"));
}

proptest! {
    #[test]
    fn an_opening_has_its_area_whatever_corner_it_hangs_on(
        corner in 0_usize..4, left in any::<bool>(), [along, out, length, width] in [0_i32..9, 0..9, 1..90, 1..90],
    ) {
        let mut desk = Desk::new();
        let (_, walked) = desk.room(if left { &LEFT_WALKED } else { &RIGHT_WALKED });
        let typed = [along, out, length, width].map(|inches| format!("{inches} in"));
        let [along, out, long, wide] = &typed;
        desk.opening(walked[corner], [along, out, long, wide]);
        let figure = known(opening_area(desk.job()));
        prop_assert_eq!(figure.value, Length::inches(length) * Length::inches(width));
        // The walls the opening lies along: 10 ft and 8 ft in turn.
        let (wall, depth) = if corner % 2 == 0 { (120, 96) } else { (96, 120) };
        let fits = desk::length(along).value + Length::inches(length) <= Length::inches(wall)
            && desk::length(out).value + Length::inches(width) <= Length::inches(depth);
        prop_assert_eq!(figure.doubts.is_empty(), fits);
    }

    #[test]
    fn sheets_cover_the_opening_and_one_fewer_does_not(length in 1_i32..360, width in 1_i32..144) {
        let desk = hall(&[["0", "0", &format!("{length} in"), &format!("{width} in")]]);
        let sheets = i64::from(known(sheets_by_area(desk.job())).value);
        let (opening, sheet) = (i64::from(length) * i64::from(width), 48 * 96);
        prop_assert!(sheets * sheet >= opening && (sheets - 1) * sheet < opening);
    }
}
