//! How flat joists lie is told of what was read, and of nothing else.

use crate::desk::Desk;
use crate::house::house;
use duckboard::draw::Canvas;
use duckboard::draw::under::under;
use duckboard::engine::geometry::Turn;
use duckboard::engine::particular::Part;
use duckboard::engine::particular::list::{COVERING, PLANE};
use duckboard::engine::place::Face;
use duckboard::engine::survey::Run;
use duckboard::engine::survey::flat::{Edge, Flat, Held, MOST_STATIONS, Tolerance};
use duckboard::engine::survey::level_plan::level_plan;
use duckboard::engine::take::Units;
use duckboard::engine::units::Length;

/// By the tolerance of wood on long fasteners in 10 ft, 1/4 in; and in 6 ft, 3/16 in.
fn wood(desk: &mut Desk) -> [Tolerance; 2] {
    desk.says(Part::House, &COVERING, "wood, long fasteners");
    let flat = level_plan(desk.job(), Units::default()).value().unwrap().flatness.clone();
    flat.try_into().unwrap()
}

fn card(desk: &Desk) -> Vec<String> {
    let cards = under(desk.job(), Units::default(), Canvas { width_px: 340, height_px: 280 });
    let card = cards.into_iter().find(|card| card.title.starts_with("How level")).unwrap();
    card.lines.into_iter().map(|line| line.text).collect()
}

fn gap(held: &Held) -> Option<f64> {
    held.gap().map(Length::to_inches)
}

/// Every joist at each of these, all of them 10 in down; joist 5 at 5' so far.
fn rows(at: &[&str], joists: impl Iterator<Item = u16> + Clone, dip: &str) -> Desk {
    let mut desk = house();
    for along in at {
        for joist in joists.clone() {
            desk.reads_level(joist, along, if (joist, *along) == (5, "5'") { dip } else { "10" });
        }
    }
    desk
}

const WHOLE: [&str; 5] = ["1'", "3'", "5'", "7'", "9'"];

/// Nine joists of 10 ft. From joist 1 to 8 and 9 an edge of 10 ft reaches: 1/4 in.
#[test]
fn a_floor_that_was_read_whole_is_flat_at_its_limit_and_not_over_it() {
    for (dip, verdict) in [
        ("10 15/64", Flat::Yes(Length::sixty_fourths(15))),
        ("10 1/4", Flat::Yes(Length::sixty_fourths(16))),
        ("10 17/64", Flat::No(Length::sixty_fourths(17))),
    ] {
        let [ten, six] = wood(&mut rows(&WHOLE, 1..=9, dip));
        assert_eq!((ten.verdict(), ten.is_all_read), (verdict, true), "{dip}");
        assert_eq!(six.verdict(), Flat::No(ten.across.gap().unwrap()), "3/16 in in 6 ft");
    }
}

/// Of a wall: the first station lies 2 ft from the near end, and the next 2 ft on.
#[test]
fn stations_farther_apart_than_two_feet_or_half_the_straightedge_leave_a_joist_unread() {
    let all = |at: &[&str]| wood(&mut rows(at, 1..=9, "10")).map(|tolerance| tolerance.verdict());
    assert_eq!(all(&["2'", "4'", "6'", "8'"]), [Flat::Yes(Length::ZERO); 2]);
    for at in [["24 1/64", "4'", "6'", "8'"], ["2'", "48 1/64", "6'", "8'"], ["2'", "4'", "6'", "95 63/64"]] {
        assert_eq!(all(&at), [Flat::AsFarAsRead; 2], "{at:?}");
    }
    // Under tile of 15 in and over also an edge of 2 ft is held: half of it is 1 ft.
    let tile = |at: &[&str]| {
        let mut desk = rows(at, 1..=9, "10");
        desk.says(Part::House, &COVERING, "tile 15 in and over");
        let flat = level_plan(desk.job(), Units::default()).value().unwrap().flatness.clone();
        flat.iter().map(|it| (it.is_all_read, it.verdict())).collect::<Vec<_>>()
    };
    let feet = ["1'", "2'", "3'", "4'", "5'", "6'", "7'", "8'", "9'"];
    // No three joists stand within 2 ft: across them it cannot be held, and nothing is told.
    assert_eq!(tile(&feet), [(true, Flat::Yes(Length::ZERO)), (true, Flat::AsFarAsRead)]);
    let mut wider = feet;
    wider[0] = "12 1/64";
    assert!(!tile(&wider)[1].0);
}

/// Joists 2, 3 and 4: 32 in of floor.
#[test]
fn three_joists_of_nine_say_nothing_of_the_floor() {
    let mut desk = rows(&WHOLE, 2..=4, "10");
    let [ten, _] = wood(&mut desk);
    assert_eq!((ten.verdict(), ten.is_all_read), (Flat::AsFarAsRead, false));
    let Held::So(Edge { joists, .. }) = &ten.across else { panic!("{ten:?}") };
    assert_eq!(joists.iter().map(|joist| joist.get()).collect::<Vec<_>>(), [2, 3, 4]);
    let mut desk = rows(&["5'"], 2..=4, "10");
    wood(&mut desk);
    let lines = card(&desk).join(" ");
    let told = "For wood, long fasteners, 1/4\" in 10' 0\": not told of the floor; across the joists 0\" as far as read, 2' 8\", \
                joists 2 to 4; it could not be held along the joists.";
    assert!(lines.contains(told), "{lines}");
    assert!(lines.contains("read every joist from end to end") && !lines.contains("flat enough"), "{lines}");
}

#[test]
fn a_gap_over_its_limit_is_never_shown_as_the_limit() {
    let shown = |dip: &str| {
        let mut desk = rows(&WHOLE, 1..=9, dip);
        wood(&mut desk);
        card(&desk).into_iter().find(|line| line.contains("in 10' 0\"")).unwrap()
    };
    assert_eq!(
        shown("10 1/4"),
        "For wood, long fasteners: flat enough, 1/4\" of 1/4\" in 10' 0\" as the joists stand."
    );
    let over = "For wood, long fasteners: not flat enough, more than 1/4\" of 1/4\" in 10' 0\" as the joists stand.";
    assert_eq!(shown("10 17/64"), over);
    assert!(shown("10 5/16").contains("not flat enough, 5/16\""), "{}", shown("10 5/16"));
}

/// Eight joists 16 in apart in a room of 144 in: from 16 in on, both walls are 16 in away.
#[test]
fn joists_that_were_laid_out_under_a_part_of_the_room_are_not_its_floor() {
    let is_all = |first: &str| {
        let mut desk = Desk::new();
        let (room, _) = desk.room(&["12'", "10'", "12'", "10'"].map(|length| (length, Turn::Right)));
        desk.joists(room, Run::AcrossFirstSide, first, "16", 8);
        for along in WHOLE {
            for joist in 1..=8 {
                desk.reads_level(joist, along, "10");
            }
        }
        wood(&mut desk)[0].is_all_read
    };
    assert_eq!(["16", "15 63/64", "16 1/64"].map(is_all), [true, false, false]);
}

#[test]
fn one_joist_that_nobody_read_leaves_the_floor_untold() {
    for unread in 1..=9 {
        let verdict = wood(&mut rows(&WHOLE, (1..=9).filter(move |it| *it != unread), "10"))[0].verdict();
        assert_eq!(verdict, Flat::AsFarAsRead, "{unread}");
    }
}

#[test]
fn no_three_stations_in_line_are_told_as_that() {
    let mut desk = rows(&["5'"], 2..=3, "10");
    let [ten, _] = wood(&mut desk);
    assert_eq!((ten.verdict(), ten.across, ten.along), (Flat::NotHeld, Held::CouldNotBe, Held::CouldNotBe));
    assert!(card(&desk).contains(&"How flat they are could not be held: no three stations lie in line.".to_owned()));
}

/// Every second joist 1 in lower, each read an inch farther along than the one before it.
#[test]
fn stations_that_nobody_held_in_line_exactly_are_held_all_the_same() {
    let mut desk = house();
    for joist in 1..=9_u16 {
        for feet in [2, 5, 8] {
            let drop = if joist % 2 == 0 { "11" } else { "10" };
            desk.reads_level(joist, &format!("{}", 12 * feet + i32::from(joist)), drop);
        }
    }
    let [ten, _] = wood(&mut desk);
    assert_eq!((gap(&ten.across), gap(&ten.along)), (Some(1.0), Some(0.0)));
    assert_eq!(ten.verdict(), Flat::No(Length::INCH));
}

/// Between joists 4 and 6 lies joist 5, beside the line of both.
#[test]
fn a_station_more_than_six_inches_beside_a_line_is_not_under_it() {
    let held = |along: &str| {
        let mut desk = house();
        for (joist, along) in [(4, "5'"), (5, along), (6, "5'")] {
            desk.reads_level(joist, along, "10");
        }
        wood(&mut desk)[0].across.gap().is_some()
    };
    assert_eq!(["65 63/64", "5' 6", "66 1/64", "53 63/64"].map(held), [true, true, false, false]);
}

/// A row is three inches either way: of joist 5 each station is so far off the rows of the others.
#[test]
fn a_joist_read_in_no_row_leaves_the_floor_untold() {
    for (off, is_in_rows) in [(191, true), (192, true), (193, false), (-192, true), (-193, false)] {
        let mut desk = rows(&WHOLE, (1..=9).filter(|joist| *joist != 5), "10");
        for feet in [1, 3, 5, 7, 9] {
            let at = Length::feet(feet) + Length::sixty_fourths(off);
            desk.reads_level(5, &format!("{} mm", at.to_mm()), "10");
        }
        assert_eq!(wood(&mut desk)[0].is_all_read, is_in_rows, "{off}");
    }
}

/// 128 in from joist 1 to joist 9: an edge of 10 ft reaches to joist 8, 112 in.
#[test]
fn an_edge_reaches_no_farther_than_it_is_long() {
    let long = |first: u16, last: u16| {
        let mut desk = house();
        for joist in [first, 5, last] {
            desk.reads_level(joist, "5'", "10");
        }
        wood(&mut desk).map(|it| it.across.gap().is_some())
    };
    assert_eq!(
        [long(1, 8), long(1, 9), long(3, 7), long(3, 8)],
        [[true, false], [false, false], [true, true], [true, false]]
    );
    // Along a joist to the sixty-fourth: 1 in to 10' 1 is 10 ft.
    let along = |last: &str| {
        let mut desk = house();
        for at in ["1", "5'", last] {
            desk.reads_level(5, at, "10");
        }
        wood(&mut desk)[0].along.gap().is_some()
    };
    assert_eq!(["120 63/64", "10' 1", "121 1/64"].map(along), [true, true, false]);
}

/// Ends at 10 and the middle 3/4 in lower.
#[test]
fn a_far_end_is_where_the_joist_ends() {
    let mut desk = house();
    for joist in [2, 4, 6] {
        desk.reads_level_at(joist, None, Face::NearEnd, "10");
        desk.reads_level(joist, "5'", "10 3/4");
        desk.reads_level_at(joist, None, Face::FarEnd, "10");
    }
    let [ten, _] = wood(&mut desk);
    assert_eq!((ten.verdict(), gap(&ten.along)), (Flat::No(Length::sixty_fourths(48)), Some(0.75)));
    // A straight fall of 1/2 in in 10 ft takes nothing to its best fit.
    let mut desk = house();
    for joist in [2, 4, 6] {
        desk.reads_level_at(joist, None, Face::NearEnd, "10 1/2");
        desk.reads_level(joist, "5'", "10 1/4");
        desk.reads_level_at(joist, None, Face::FarEnd, "10");
    }
    desk.says(Part::House, &PLANE, "best fit");
    let plan = level_plan(desk.job(), Units::default()).value().unwrap().clone();
    assert!(plan.stations.iter().all(|station| station.to_plane.abs() <= Length::nm(1)), "{plan:?}");
    assert!((plan.slope.to_inches() - 0.05).abs() < 1e-6, "{:?}", plan.slope);
}

#[test]
fn a_top_without_a_distance_lies_nowhere_and_that_is_told() {
    let mut desk = rows(&["5'"], 2..=4, "10");
    desk.reads_level_at(5, None, Face::UpperEdge, "11");
    desk.reads_level_at(5, None, Face::End, "11");
    let plan = level_plan(desk.job(), Units::default()).value().unwrap().clone();
    assert_eq!(plan.stations.iter().filter(|station| station.at.is_none()).count(), 2);
    assert!(card(&desk).iter().any(|line| line.starts_with("2 stations in no line")), "{:?}", card(&desk));
}

/// So many stations, an inch and less apart along three joists.
#[test]
fn of_more_stations_than_can_be_tried_nothing_is_told() {
    let mut desk = house();
    for at in 0..u16::try_from(MOST_STATIONS).unwrap() {
        desk.reads_level(4 + at % 3, &format!("{}", 10 + at / 3), "10");
    }
    assert_eq!(wood(&mut desk)[0].verdict(), Flat::AsFarAsRead);
    desk.reads_level(4, "9", "10");
    assert_eq!(wood(&mut desk)[0].verdict(), Flat::NotHeld);
    assert!(card(&desk).iter().any(|line| line.ends_with("more stations were read than can be tried.")));
}
