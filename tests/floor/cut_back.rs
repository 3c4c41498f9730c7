//! Where the old floor is cut: out to joists, and to the chosen rip.

use super::*;
use duckboard::draw::job_plan;
use duckboard::engine::geometry::Heading;
use duckboard::engine::survey::{CutBack, CutLines, Obstacle, ObstacleKind};
use duckboard::engine::take::Units;

fn rect(from: (i32, i32), to: (i32, i32)) -> Rect {
    let at = |(x, y): (i32, i32)| Point::new(Length::inches(x), Length::inches(y));
    Rect::between(at(from), at(to)).unwrap()
}

/// A room of 10 × 8 ft on joists 16 in apart, the first 4 in from its first corner, and an
/// opening of 30 × 20 in, 30 in along and 10 in out.
fn opened(run: Run) -> (Desk, EntryId) {
    let mut desk = Desk::new();
    let (room, sides) = desk.room(&RIGHT_WALKED);
    desk.joists(room, run, "4", "16", 8);
    let opening = desk.opening(sides[0], ["30", "10", "30", "20"]);
    (desk, opening)
}

fn lines(desk: &Desk) -> CutLines {
    let floor = Floor::of(desk.job()).unwrap();
    let outline = floor.outline.clone().ok();
    let lines = CutLines::of(desk.job(), &floor, outline.as_ref());
    assert_eq!(lines.len(), 1);
    lines[0]
}

fn said(desk: &mut Desk, opening: EntryId, width: Option<&str>, finish: Option<&str>) {
    desk.log(CutBack { opening, width: width.map(length), finish: finish.map(length) });
}

#[test]
fn ends_go_out_to_joist_centers_and_edges_to_the_rip() {
    let (mut desk, opening) = opened(Run::AcrossFirstSide);
    // Joists at 20 and 68 in are the next around 30 to 60.
    assert_eq!(lines(&desk).cut, rect((20, 10), (68, 30)));
    assert_eq!((lines(&desk).placed, lines(&desk).bears, lines(&desk).finish), (rect((30, 10), (60, 30)), true, None));
    said(&mut desk, opening, Some("48"), Some("3"));
    assert_eq!(lines(&desk).cut, rect((20, 10), (68, 58)));
    assert_eq!(lines(&desk).finish, Some(rect((17, 7), (71, 61))));
    // What was said last counts: no narrower than it was placed, no farther than the walls.
    said(&mut desk, opening, Some("12"), Some("15"));
    assert_eq!(lines(&desk).cut, rect((20, 10), (68, 30)));
    assert_eq!(lines(&desk).finish, Some(rect((5, 0), (83, 45))));
}

#[test]
fn a_rip_runs_along_the_joists_whichever_way_they_run() {
    let (mut desk, opening) = opened(Run::AlongFirstSide);
    said(&mut desk, opening, Some("48"), None);
    // Joists at 4 and 36 in out are the next around 10 to 30; the rip is along side 1.
    assert_eq!(lines(&desk).cut, rect((30, 4), (78, 36)));
}

#[test]
fn an_opening_that_the_room_is_too_small_for_stays_as_it_was_placed() {
    let (mut desk, opening) = opened(Run::AcrossFirstSide);
    assert!(!lines(&desk).is_too_wide);
    said(&mut desk, opening, Some("10'"), None);
    assert_eq!((lines(&desk).cut, lines(&desk).is_too_wide), (rect((20, 10), (68, 30)), true));
    let joistless = {
        let mut desk = Desk::new();
        let (_, sides) = desk.room(&RIGHT_WALKED);
        desk.opening(sides[0], ["30", "10", "30", "20"]);
        CutLines::of(desk.job(), &Floor::of(desk.job()).unwrap(), None)
    };
    assert_eq!(joistless, []);
}

#[test]
fn the_plan_shows_both_lines_what_stands_in_the_floor_and_north() {
    let (mut desk, opening) = opened(Run::AcrossFirstSide);
    said(&mut desk, opening, Some("48"), Some("3"));
    let takes = desk.job().now.openings().get(&opening).unwrap().value.clone();
    desk.log(Obstacle { what: ObstacleKind::Post, takes });
    desk.log(Fact::North(Heading::West));
    let plan = job_plan::of(desk.job(), Units::default(), None);
    assert_eq!((plan.cut_backs, plan.finish_lines), (vec![rect((20, 10), (68, 58))], vec![rect((17, 7), (71, 61))]));
    let standing: Vec<_> = plan.standing.iter().map(|standing| (standing.label.as_str(), standing.rect)).collect();
    assert_eq!(standing, [("Post", rect((30, 10), (60, 30)))]);
    assert_eq!(plan.north, Some(Heading::West));
}
