//! Nothing is laid on an outline that disagrees with itself by 3 in or more.

use crate::to_lay::Site;
use duckboard::draw::Canvas;
use duckboard::draw::sheets::SheetPage;
use duckboard::engine::geometry::Turn;
use duckboard::engine::orders::lines;
use duckboard::engine::sheets::Outcome;
use duckboard::engine::sheets::floor_search::{MOST_STEPS, MOST_WORK};
use duckboard::engine::survey::{Run, disagreement};
use duckboard::engine::take::Units;

const R: Turn = Turn::Right;
const CANVAS: Canvas = Canvas { width_px: 360, height_px: 300 };
const L: Turn = Turn::Left;
const WHAT_ENDS_IT: &str = "sheets are laid once the room agrees with itself to less than 3\"";

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
    floors[0].case.as_ref().err().filter(|why| why.contains(WHAT_ENDS_IT)).cloned()
}

#[test]
fn under_three_inches_it_is_laid_and_from_three_on_it_is_not() {
    assert_eq!(refused(&stair("31'")), None);
    assert_eq!(refused(&stair("30' 9 1/64\"")), None);
    for last in ["30' 9\"", "30' 8 63/64\"", "20'"] {
        assert!(refused(&stair(last)).is_some(), "{last}");
    }
    let told = refused(&stair("30' 9\"")).unwrap();
    assert_eq!(told, format!("the sides miss their start; measure them again; {WHAT_ENDS_IT}"));
}

fn room(sides: [&str; 4]) -> Site {
    Site::new(&sides.map(|side| (side, R)), Run::AcrossFirstSide, 14).all_comes_out()
}

#[test]
fn four_walls_are_held_to_the_same_three_inches() {
    for (last, is_laid) in [("11' 2 63/64\"", true), ("11' 3\"", false), ("11' 3 1/64\"", false)] {
        assert_eq!(refused(&room(["20'", "11'", "20'", last])).is_none(), is_laid, "{last}");
    }
}

/// Sides that cross: which, and where along them in feet and inches, on the page too.
#[test]
fn sides_that_cross_lay_nothing_and_say_where_they_cross() {
    // A jog of 10 ft into a room of 8.
    let sides = [("10'", R), ("8'", R), ("4'", R), ("10'", L), ("2'", L), ("10'", R), ("4'", R), ("8'", R)];
    let site = Site::new(&sides, Run::AcrossFirstSide, 7).all_comes_out();
    let searches = site.searched();
    let page = SheetPage::of(&searches.floors()[0], &[], Units::default(), CANVAS).unwrap();
    assert_eq!(page.headline, "not laid");
    assert!(page.plan.is_none() && page.sheets.is_empty());
    assert!(page.line.contains("crosses side"), "{}", page.line);
    assert!(page.line.contains("; they cross 6' 0\" from corner 1; "), "{}", page.line);
}

/// 118 ft for 11: what would be searched for minutes is not searched at all.
#[test]
fn a_mistyped_side_lays_nothing_and_orders_nothing() {
    for wrong in ["118'", "161'", "12'"] {
        let site = room(["20'", "11'", "20'", wrong]);
        let searches = site.searched();
        let Outcome::NotLaid(why) = searches.floors()[0].outcome() else { panic!("{wrong}") };
        assert_eq!(searches.floors()[0].took(), (1, 0), "nothing is searched");
        assert!(why.contains(WHAT_ENDS_IT), "{why}");
        let (lines, open) = lines(site.desk.job(), Units::default());
        assert!(lines.iter().all(|line| !line.needed.name.starts_with("Sheets") && line.needed.name != "Old floor"));
        assert!(open.iter().any(|open| open.contains(WHAT_ENDS_IT)), "{open:?}");
    }
}

/// Two sides wrong alike disagree with nothing: what they ask for is searched, and that is
/// bounded too.
#[test]
fn a_room_mistyped_twice_takes_bounded_work() {
    for (wrong, joists) in [("118'", 88), ("161'", 120)] {
        let site = Site::new(&[(wrong, R), ("11'", R), (wrong, R), ("11'", R)], Run::AcrossFirstSide, joists);
        let site = site.all_comes_out();
        assert!(!disagreement(site.desk.job()).stops());
        let searches = site.searched();
        let (steps, work) = searches.floors()[0].took();
        assert!(steps <= MOST_STEPS && work < MOST_WORK / 20, "{wrong}: {steps} steps, {work}");
        assert!(matches!(searches.floors()[0].outcome(), Outcome::Laid { .. }));
    }
}

#[test]
fn what_tapes_and_old_corners_are_off_by_is_laid() {
    for fits in ["11'", "11' 1/4\"", "11' 1/2\""] {
        let site = room(["20'", "11'", "20'", fits]);
        assert!(!disagreement(site.desk.job()).stops(), "{fits}");
        assert_eq!(refused(&site), None);
    }
}
