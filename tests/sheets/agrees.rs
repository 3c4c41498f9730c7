//! Nothing is laid on an outline that disagrees with itself by 3 in or more.

use crate::to_lay::Site;
use duckboard::engine::geometry::Turn;
use duckboard::engine::orders::lines;
use duckboard::engine::sheets::{Outcome, disagrees};
use duckboard::engine::survey::Run;
use duckboard::engine::take::Units;

const R: Turn = Turn::Right;
const L: Turn = Turn::Left;

/// A stair of 31 steps of a foot, more corners than are adjusted, whose last side is as long
/// as is said instead of 31 ft: what it misses its start by is exactly what is missing there.
fn stair(last: &str) -> Site {
    let mut sides: Vec<(&str, Turn)> = (0..31).flat_map(|_| [("1'", R), ("1'", L)]).collect();
    if let Some(end) = sides.last_mut() {
        end.1 = R;
    }
    sides.extend([("31'", R), (last, R)]);
    Site::new(&sides, Run::AcrossFirstSide, 22).all_comes_out()
}

/// Why the only floor is not laid, if it is not.
fn refused(site: &Site) -> Option<String> {
    let (floors, _) = site.floors();
    floors[0].case.as_ref().err().filter(|why| why.contains("disagrees by")).cloned()
}

#[test]
fn under_three_inches_it_is_laid_and_from_three_on_it_is_not() {
    assert_eq!(refused(&stair("31'")), None);
    assert_eq!(refused(&stair("30' 9 1/64\"")), None);
    for last in ["30' 9\"", "30' 8 63/64\"", "20'"] {
        assert!(refused(&stair(last)).is_some(), "{last}");
    }
    let told = refused(&stair("30' 9\"")).unwrap();
    assert_eq!(told, "what was measured of the room disagrees by 3\": its sides miss their start");
}

fn room(sides: [&str; 4]) -> Site {
    Site::new(&sides.map(|side| (side, R)), Run::AcrossFirstSide, 14).all_comes_out()
}

/// 118 ft for 11: what would be searched for minutes is not searched at all.
#[test]
fn a_mistyped_side_lays_nothing_and_orders_nothing() {
    for wrong in ["118'", "161'", "12'"] {
        let site = room(["20'", "11'", "20'", wrong]);
        let searches = site.searched();
        let Outcome::NotLaid(why) = searches.floors()[0].outcome() else { panic!("{wrong}") };
        assert!(why.contains("disagrees by"), "{why}");
        let (lines, open) = lines(site.desk.job(), Units::default());
        assert!(lines.iter().all(|line| !line.needed.name.starts_with("Sheets") && line.needed.name != "Old floor"));
        assert!(open.iter().any(|open| open.contains("disagrees by")), "{open:?}");
    }
}

#[test]
fn what_tapes_and_old_corners_are_off_by_is_laid() {
    for fits in ["11'", "11' 1/4\"", "11' 1/2\""] {
        let site = room(["20'", "11'", "20'", fits]);
        assert_eq!(disagrees(site.desk.job()), None, "{fits}");
        assert_eq!(refused(&site), None);
    }
}
