//! A floor without a layout says which rule is in the way, and what would do instead.

use crate::desk::{Desk, length};
use crate::to_lay::Site;
use duckboard::engine::geometry::Turn;
use duckboard::engine::job::Fact;
use duckboard::engine::place::JoistNumber;
use duckboard::engine::sheets::Outcome;
use duckboard::engine::survey::{JoistCenter, Run};

const R: Turn = Turn::Right;

/// A room with joists at these centers, all of whose floor comes out.
fn room(along: &str, across: &str, centers: &[&str]) -> Site {
    let mut desk = Desk::new();
    let (room, sides) = desk.room(&[(along, R), (across, R), (along, R), (across, R)]);
    let of = desk.joists(room, Run::AcrossFirstSide, centers[0], "24", centers.len() as u16);
    for (number, center) in (1..).zip(centers) {
        let joist = JoistNumber::new(number).unwrap();
        desk.log(JoistCenter { of, joist, center: length(center) });
    }
    Site { desk, room, first: sides[0] }.all_comes_out()
}

fn not_laid(site: &Site) -> String {
    let searches = site.searched();
    let outcome = searches.floors()[0].outcome();
    let Outcome::NotLaid(why) = outcome else { panic!("{outcome:?}") };
    why
}

/// 8' 1 1/2" with joists 24 in apart: longer than a sheet, and two bays to each piece leave
/// one joist for the joints of all courses. No bay is wider than a sheet.
#[test]
fn two_rules_that_leave_one_joist_for_all_joints_are_both_named() {
    let why = not_laid(&room("8' 1 1/2\"", "12'", &["24", "48", "72"]));
    let rules = "In the way: joints of neighboring courses on different joists, and each piece over two bays or more; \
                 giving up any one of these is enough.";
    assert!(why.contains(rules), "{why}");
    assert!(why.contains("The nearest that works: ") && why.contains(" sheets for "), "{why}");
    assert!(why.contains("local code"), "{why}");
}

/// The nearest is the one that breaks its rule in the fewest places: of the joints of three
/// courses on one joist two are too near.
#[test]
fn the_nearest_says_in_how_many_places_and_at_what_price() {
    let why = not_laid(&room("8' 1 1/2\"", "12'", &["24", "48", "72"]));
    let nearest = why.split("The nearest that works: ").nth(1).unwrap();
    assert!(
        nearest.starts_with("joints of neighboring courses on one joist, in 2 places; then 5 sheets for 6 pieces."),
        "{why}"
    );
}

/// A bay of 8' 6": no rule helps. Of one joist in its middle the joints of all courses would
/// lie on it; two help.
#[test]
fn a_bay_that_no_sheet_bridges_takes_a_joist_more() {
    let why = not_laid(&room("14'", "12'", &["16", "118", "134", "150"]));
    assert!(why.contains("a bay of 8' 6\", wider than a sheet bridges"), "{why}");
    assert!(why.contains("2 more joists, 4' 2\" and 7' 0\" from corner 1; then "), "{why}");
}

/// Of a single course no neighbour keeps away: one joist is enough.
#[test]
fn a_single_course_takes_one_joist_more() {
    let why = not_laid(&room("14'", "3' 10\"", &["16", "118", "134", "150"]));
    assert!(why.contains("one more joist, 5' 7\" from corner 1; then "), "{why}");
}

/// A floor 4' 1/16" across its sheets is wider than one, and two courses of 24 in with a
/// joint between them are wider than it.
#[test]
fn a_least_rip_that_leaves_no_courses_is_named() {
    let mut site = room("7'", "4' 1/16\"", &["16", "32", "48", "64"]);
    site.desk.log(Fact::EdgeGap(length("0")));
    let why = not_laid(&site);
    assert!(why.contains("In the way: no course narrower than 2' 0\"."), "{why}");
    assert!(
        why.contains("The nearest that works: a course at an edge 1' 11 15/16\" wide; then 2 sheets for 2 pieces."),
        "{why}"
    );
}

/// A sixteenth more than two courses of 24 in and a joint, less than that, and far less: what
/// is given up is no more of the rule than has to be. 4' 0 3/16" less 1/16" at either wall and
/// 1/8" between leaves 3' 11 15/16": half of it is 1' 11 31/32".
#[test]
fn a_course_is_no_narrower_than_the_floor_makes_it() {
    for (across, sheets, width) in
        [("4' 0 3/16\"", 6, Some("1' 11 15/16\"")), ("4' 1/4\"", 7, None), ("4' 2\"", 7, None)]
    {
        let mut desk = Desk::new();
        let (along, joists) = ("25' 8 7/8\"", 12);
        let (room, sides) = desk.room(&[(along, R), (across, R), (along, R), (across, R)]);
        desk.joists(room, Run::AcrossFirstSide, "24", "24", joists);
        let site = Site { desk, room, first: sides[0] }.all_comes_out();
        let searches = site.searched();
        match (searches.floors()[0].outcome(), width) {
            (Outcome::NotLaid(why), Some(width)) => {
                let works =
                    format!("The nearest that works: a course at an edge {width} wide; then {sheets} sheets for");
                assert!(why.contains(&works), "{across}: {why}");
            }
            (Outcome::Laid { .. }, None) => {}
            other => panic!("{across}: {other:?}"),
        }
    }
}

/// Something stands so near a slanting wall that its clearance crosses it: told where, in
/// feet and inches.
#[test]
fn what_crosses_is_told_in_feet_and_inches() {
    use duckboard::engine::geometry::Point;
    use duckboard::engine::sheets::layout::{Case, Fault};
    let site = room("8'", "12'", &["24", "48", "72"]);
    let floor = site.floors().0[0].clone();
    let mut asked = floor.case.as_ref().unwrap().asked.clone();
    asked.outline.swap(1, 2);
    let faults = Case::new(asked).unwrap_err();
    let Fault::Crossing { near } = faults[0] else { panic!("{faults:?}") };
    let words = duckboard::engine::sheets::refused_in_words(&floor, &faults);
    assert!(words.starts_with("its sides cross or touch near ") && words.contains(" from corner 1"), "{words}");
    assert!(floor.on_plan(near) != Point::ORIGIN || words.contains("0"), "{words}");
    assert!(!words.contains("(") && !words.contains("sixteenth"), "{words}");
}
