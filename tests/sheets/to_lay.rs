//! A job's opening becomes a floor to lay.

use crate::job_samples::{self, FIRST_PHONE};
use crate::laid;
use duckboard::engine::entry::{Label, Role};
use duckboard::engine::figure::{Figure, Need};
use duckboard::engine::geometry::{Point, Turn};
use duckboard::engine::job::{Book, Job};
use duckboard::engine::sheets::layout::check;
use duckboard::engine::sheets::to_lay;
use duckboard::engine::survey::{Joists, Opening, Room, Ruler, Run, Side};
use duckboard::engine::units::{Length, Typed};

fn inches(inches: i32) -> Typed<Length> {
    Typed::new(format!("{inches}\""), Length::inches(inches))
}

fn at(x: i32, y: i32) -> Point {
    Point::new(Length::inches(x), Length::inches(y))
}

/// A room of 20 × 15 ft with joists every 16 in from the first corner and an opening
/// (along, out, length, width) in inches.
fn room(run: Run, (along, out, length, width): (i32, i32, i32, i32)) -> Job {
    let mut book = Book::default();
    let mut pen = job_samples::pen(&book, FIRST_PHONE, "QZ", Role::Carpenter);
    let room = pen.record(Room { name: Label::new("Invented room").unwrap() });
    let in_room = room.id;
    let mut entries = vec![room];
    let (mut after, mut first) = (None, None);
    for side in [240, 180, 240, 180] {
        let side = pen.record(Side { room: in_room, after, length: inches(side), turn: Turn::Right, by: Ruler::Tape });
        first = first.or(Some(side.id));
        after = Some(side.id);
        entries.push(side);
    }
    let count = if run == Run::AcrossFirstSide { 14 } else { 11 };
    entries.push(pen.record(Joists { room: in_room, run, first: inches(16), spacing: inches(16), count }));
    let (along, out, length, width) = (inches(along), inches(out), inches(length), inches(width));
    entries.push(pen.record(Opening { from: first.unwrap(), along, out, length, width }));
    for entry in entries {
        book.add(duckboard::engine::job::Record::of(entry).unwrap());
    }
    book.job().clone()
}

#[test]
fn an_empty_job_says_what_to_measure() {
    let Figure::Missing(needs) = to_lay(&Job::default()) else { panic!("nothing is known") };
    assert_eq!(needs, [Need::Opening, Need::Joists]);
}

#[test]
fn ends_go_out_to_the_next_joist_centers_and_edges_stay() {
    let figure = to_lay(&room(Run::AcrossFirstSide, (20, 30, 100, 60)));
    let known = figure.as_known().unwrap();
    assert_eq!((known.value.cut_back.least(), known.value.cut_back.most()), (at(16, 30), at(128, 90)));
    assert_eq!((known.value.placed.least(), known.value.placed.most()), (at(20, 30), at(120, 90)));
    assert!(known.doubts.is_empty(), "{:?}", known.doubts);
}

#[test]
fn joists_the_other_way_turn_the_layout_and_not_the_plan() {
    let job = room(Run::AlongFirstSide, (20, 20, 100, 60));
    let figure = to_lay(&job);
    let floor = figure.value().unwrap();
    assert_eq!((floor.cut_back.least(), floor.cut_back.most()), (at(20, 16), at(120, 80)));
    let case = floor.case.as_ref().unwrap();
    assert_eq!(case.asked.outline[2], (64 * 16, 100 * 16), "x runs across the joists");
    assert_eq!(floor.on_plan((0, 0)), at(20, 16));
    assert_eq!(floor.on_plan((16, 32)), at(22, 17));
}

#[test]
fn where_the_room_ends_the_opening_stays_and_a_doubt_says_so() {
    let figure = to_lay(&room(Run::AcrossFirstSide, (0, 0, 100, 60)));
    let known = figure.as_known().unwrap();
    assert_eq!((known.value.cut_back.least(), known.value.cut_back.most()), (at(0, 0), at(112, 60)));
    assert!(known.doubts.iter().any(|doubt| doubt.contains("ledger")), "{:?}", known.doubts);
}

#[test]
fn the_samples_opening_is_laid_by_the_rules() {
    let figure = to_lay(job_samples::first_book().job());
    let known = figure.as_known().unwrap();
    let case = known.value.case.as_ref().unwrap();
    let layout = laid(case);
    assert_eq!(check(case, &layout), Ok(layout.cut));
    assert!(known.assumed.iter().any(|rule| rule.contains("1/8 in")), "the rules are told: {:?}", known.assumed);
}
