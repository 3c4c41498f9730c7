//! The floor put together: sides in order, openings and joists on the plan, and the
//! figures that follow.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "tests may fail loudly")]

#[path = "floor/build_up.rs"]
mod build_up;
#[path = "floor/cut_back.rs"]
mod cut_back;
mod desk;
#[path = "floor/figures.rs"]
mod figures;
#[path = "floor/shape.rs"]
mod shape;

use desk::{Desk, label, length, other_phone, side, spot};
use duckboard::engine::entry::EntryId;
use duckboard::engine::figure::{Figure, Known, Need};
use duckboard::engine::geometry::{Point, Rect, Turn};
use duckboard::engine::job::{Book, Entry, Fact, Record, SheetSize};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::sheets::sheets_by_area;
use duckboard::engine::sources::{Mark, Source};
use duckboard::engine::survey::{Floor, JoistCenter, Room, Ruler, Run, Side, Tie, opening_area, room_area};
use duckboard::engine::units::{Area, Length, Typed};
use proptest::prelude::*;

const R: Turn = Turn::Right;
const L: Turn = Turn::Left;

/// A room 10 ft by 8 ft, walked with the room on the right.
const RIGHT_WALKED: [(&str, Turn); 4] = [("10'", R), ("8'", R), ("10'", R), ("8'", R)];
/// The same, walked with the room on the left.
const LEFT_WALKED: [(&str, Turn); 4] = [("10'", L), ("8'", L), ("10'", L), ("8'", L)];

fn sides(desk: &Desk) -> Vec<EntryId> {
    Floor::of(desk.job()).unwrap().sides
}

fn feet(x: i32, y: i32) -> Point {
    Point::new(Length::feet(x), Length::feet(y))
}

fn known<T>(figure: Figure<T>) -> Known<T> {
    match figure {
        Figure::Known(known) => known,
        Figure::Missing(needs) => panic!("missing {needs:?}"),
    }
}

mod order {
    use super::*;

    #[test]
    fn a_job_without_a_room_has_no_floor() {
        assert_eq!(Floor::of(Desk::new().job()), None);
    }

    #[test]
    fn sides_stand_as_they_were_walked() {
        let mut desk = Desk::new();
        let (_, walked) = desk.room(&RIGHT_WALKED);
        assert_eq!(sides(&desk), walked);
    }

    #[test]
    fn a_side_put_in_later_stands_after_the_one_it_follows() {
        let mut desk = Desk::new();
        let (room, walked) = desk.room(&RIGHT_WALKED);
        let put_in = desk.log(side(room, Some(walked[1]), "2'", L));
        let then = desk.log(side(room, Some(put_in), "3'", R));
        assert_eq!(sides(&desk), [walked[0], walked[1], put_in, then, walked[2], walked[3]]);
    }

    #[test]
    fn of_two_that_follow_the_same_side_the_later_one_comes_first() {
        let mut desk = Desk::new();
        let (room, walked) = desk.room(&RIGHT_WALKED);
        let early = desk.log(side(room, Some(walked[0]), "2'", L));
        let late = desk.log(side(room, Some(walked[0]), "3'", R));
        assert_eq!(sides(&desk)[..3], [walked[0], late, early]);
    }

    #[test]
    fn a_last_side_taken_back_leaves_the_others() {
        let mut desk = Desk::new();
        let (_, walked) = desk.room(&RIGHT_WALKED);
        let withdrawal = desk.withdraw(walked[3]);
        assert_eq!(sides(&desk), walked[..3]);
        desk.withdraw(withdrawal);
        assert_eq!(sides(&desk), walked);
    }

    #[test]
    fn a_first_or_middle_side_taken_back_keeps_the_walk_together() {
        for gone in 0..3 {
            let mut desk = Desk::new();
            let (_, mut walked) = desk.room(&RIGHT_WALKED);
            desk.withdraw(walked.remove(gone));
            assert_eq!(sides(&desk), walked, "side {} taken back", gone + 1);
        }
    }

    /// The second of two forgotten sides hung on the first, and jumped to the end of the
    /// walk when the first was taken back.
    #[test]
    fn what_followed_a_side_put_in_and_taken_back_stays_where_it_was() {
        let mut desk = Desk::new();
        let (room, walked) = desk.room(&RIGHT_WALKED);
        let first = desk.log(side(room, Some(walked[1]), "2'", L));
        let second = desk.log(side(room, Some(first), "3'", R));
        let withdrawal = desk.withdraw(first);
        assert_eq!(sides(&desk), [walked[0], walked[1], second, walked[2], walked[3]]);
        desk.withdraw(withdrawal);
        assert_eq!(sides(&desk), [walked[0], walked[1], first, second, walked[2], walked[3]]);
    }

    #[test]
    fn a_side_corrected_keeps_its_place_and_its_new_length() {
        let mut desk = Desk::new();
        let (room, walked) = desk.room(&RIGHT_WALKED);
        desk.correct(walked[1], side(room, Some(walked[0]), "8' 3\"", R));
        assert_eq!(sides(&desk), walked);
        let floor = Floor::of(desk.job()).unwrap();
        assert_eq!(floor.walk.steps()[1].length, Length::inches(99));
    }

    #[test]
    fn a_side_that_refers_forwards_or_to_itself_starts_a_walk_and_hangs_nothing() {
        let mut desk = Desk::new();
        let (room, walked) = desk.room(&RIGHT_WALKED[..2]);
        let next = desk.next_id();
        let itself = desk.log(side(room, Some(next), "5'", R));
        desk.correct(walked[0], side(room, Some(walked[1]), "10'", R));
        let order = sides(&desk);
        assert_eq!(order.len(), 3, "none is lost and none stands twice: {order:?}");
        let at = |id| order.iter().position(|side| *side == id).unwrap();
        assert_eq!(at(walked[1]), at(walked[0]) + 1, "what follows it still does");
        assert!(at(itself) < at(walked[0]), "of two that start the walk the later comes first");
    }

    #[test]
    fn another_rooms_sides_stay_in_their_room() {
        let mut desk = Desk::new();
        let (_, walked) = desk.room(&RIGHT_WALKED);
        let (hall, of_hall) = desk.room(&LEFT_WALKED);
        assert_eq!(sides(&desk), walked, "of several rooms the one begun first");
        assert_eq!(Floor::of_room(desk.job(), hall).sides, of_hall);
    }

    /// A room and sides that follow any earlier one or none, some taken back.
    fn any_sides() -> impl Strategy<Value = Vec<Entry>> {
        let one = (any::<prop::sample::Index>(), prop::bool::weighted(0.8), 1_i32..200, any::<bool>());
        (prop::collection::vec(one, 1..14), prop::collection::vec(any::<prop::sample::Index>(), 0..4)).prop_map(
            |(sides, gone)| {
                let mut pen = other_phone();
                let room = pen.record(Room { name: label("Room") });
                let (room_id, mut entries, mut walked) = (room.id, vec![room], Vec::<EntryId>::new());
                for (index, follows, inches, left) in sides {
                    let after = (follows && !walked.is_empty()).then(|| *index.get(&walked));
                    let entry = pen.record(side(room_id, after, &format!("{inches} in"), if left { L } else { R }));
                    walked.push(entry.id);
                    entries.push(entry);
                }
                entries.extend(gone.iter().map(|index| pen.withdraw(*index.get(&walked))));
                entries
            },
        )
    }

    fn book(entries: Vec<Entry>) -> Book {
        Book::of(entries.into_iter().map(|entry| Record::of(entry).unwrap()))
    }

    proptest! {
        #[test]
        fn the_floor_is_the_same_for_any_order_of_arrival(
            (entries, shuffled) in any_sides().prop_flat_map(|all| (Just(all.clone()), Just(all).prop_shuffle())),
        ) {
            prop_assert_eq!(Floor::of(book(entries).job()), Floor::of(book(shuffled).job()));
        }

        #[test]
        fn every_side_that_stands_is_walked_once(entries in any_sides()) {
            let book = book(entries);
            let mut walked = Floor::of(book.job()).unwrap().sides;
            walked.sort_unstable();
            prop_assert_eq!(walked, book.job().now.sides().keys().copied().collect::<Vec<_>>());
        }

        #[test]
        fn right_after_a_side_comes_the_latest_that_follows_it(entries in any_sides()) {
            let book = book(entries);
            let (order, there) = (Floor::of(book.job()).unwrap().sides, &book.job().now.sides());
            for (at, id) in order.iter().enumerate() {
                let latest = there.iter().filter(|(_, side)| side.value.after == Some(*id)).map(|(id, _)| *id).max();
                // A side whose own was taken back may have come here too, and be later.
                if let Some(latest) = latest {
                    prop_assert!(order[at + 1] >= latest, "{order:?}");
                }
            }
        }
    }
}

mod plan {
    use super::*;

    /// The openings 1 ft along, 2 ft out, 3 ft by 4 ft from each corner in turn.
    fn from_each_corner(walk: &[(&str, Turn)]) -> Vec<Rect> {
        let mut desk = Desk::new();
        let (_, walked) = desk.room(walk);
        for corner in walked {
            desk.opening(corner, ["1'", "2'", "3'", "4'"]);
        }
        Floor::of(desk.job()).unwrap().openings.into_iter().map(|(_, rect)| rect).collect()
    }

    // By hand: the room spans 10 ft to the right and 8 ft down the page. From corner 1 one
    // goes right and out is down, from corner 2 down and left, from 3 left and up, from 4
    // up and right.
    const BY_HAND: [[i32; 4]; 4] = [[1, 2, 4, 6], [4, 1, 8, 4], [6, 2, 9, 6], [2, 4, 6, 7]];

    #[test]
    fn an_opening_lies_where_its_corner_puts_it() {
        let expected = BY_HAND.map(|[x0, y0, x1, y1]| Rect::between(feet(x0, y0), feet(x1, y1)).unwrap());
        assert_eq!(from_each_corner(&RIGHT_WALKED), expected);
    }

    #[test]
    fn walked_with_the_room_on_the_left_it_lies_in_the_room_too() {
        // The same room turned over its first side: it spans 8 ft up the page.
        let expected = BY_HAND.map(|[x0, y0, x1, y1]| Rect::between(feet(x0, -y0), feet(x1, -y1)).unwrap());
        assert_eq!(from_each_corner(&LEFT_WALKED), expected);
    }

    #[test]
    fn an_opening_follows_its_corner_when_a_side_is_corrected() {
        let mut desk = Desk::new();
        let (room, walked) = desk.room(&RIGHT_WALKED);
        desk.opening(walked[1], ["0", "0", "1'", "1'"]);
        desk.correct(walked[0], side(room, None, "9'", R));
        assert_eq!(Floor::of(desk.job()).unwrap().openings[0].1, Rect::between(feet(8, 0), feet(9, 1)).unwrap());
    }

    #[test]
    fn joists_are_numbered_from_the_first_corner() {
        let mut desk = Desk::new();
        let (room, _) = desk.room(&RIGHT_WALKED);
        desk.joists(room, Run::AcrossFirstSide, "3", "16", 8);
        let joists = Floor::of(desk.job()).unwrap().joists.unwrap();
        // 3 in to the first, then 16 in each: 3 + 7 × 16 = 115.
        assert_eq!((joists.center(1), joists.center(8)), (Length::inches(3), Length::inches(115)));
    }

    #[test]
    fn a_joist_is_where_it_was_measured_last_until_the_joists_are_laid_out_anew() {
        let mut desk = Desk::new();
        let (room, _) = desk.room(&RIGHT_WALKED);
        let of = desk.joists(room, Run::AcrossFirstSide, "3", "16", 8);
        let joist = JoistNumber::new(2).unwrap();
        for text in ["18", "20"] {
            desk.log(JoistCenter { of, joist, center: length(text) });
        }
        let center = |desk: &Desk| Floor::of(desk.job()).unwrap().joists.unwrap().center(2);
        assert_eq!(center(&desk), Length::inches(20));
        desk.joists(room, Run::AcrossFirstSide, "4", "16", 8);
        assert_eq!(center(&desk), Length::inches(20), "4 in and 16");
        desk.joists(room, Run::AcrossFirstSide, "5", "16", 8);
        assert_eq!(center(&desk), Length::inches(21));
    }

    #[test]
    fn a_place_on_a_joist_is_found_on_the_plan_by_the_joists_run() {
        for (run, at) in [(Run::AcrossFirstSide, (51, 62)), (Run::AlongFirstSide, (62, 51))] {
            let mut desk = Desk::new();
            let (room, _) = desk.room(&RIGHT_WALKED);
            assert_eq!(Floor::of(desk.job()).unwrap().locate(&spot(4, "62")), None, "no joists yet");
            desk.joists(room, run, "3", "16", 8);
            let floor = Floor::of(desk.job()).unwrap();
            let expected = Point::new(Length::inches(at.0), Length::inches(at.1));
            assert_eq!(floor.locate(&spot(4, "62")), Some(expected), "{run:?}");
            assert_eq!(floor.locate(&spot(4, "")), None, "somewhere along it is nowhere on the plan");
        }
    }

    #[test]
    fn a_point_on_the_plan_is_where_it_says_and_a_name_is_nowhere() {
        let mut desk = Desk::new();
        desk.room(&RIGHT_WALKED);
        let floor = Floor::of(desk.job()).unwrap();
        let position = Position::OnPlan { right: length("2'"), down: length("3'") };
        let place = Place { element: Element::SubfloorAbove, position, face: None, height: None, chalk: None };
        assert_eq!(floor.locate(&place), Some(feet(2, 3)));
        assert_eq!(floor.locate(&Place { position: Position::Named, ..place }), None);
    }

    #[test]
    fn joists_laid_out_again_are_the_later_ones_of_their_room() {
        let mut desk = Desk::new();
        let (room, _) = desk.room(&RIGHT_WALKED);
        let (hall, _) = desk.room(&RIGHT_WALKED);
        desk.joists(room, Run::AcrossFirstSide, "3", "16", 8);
        let again = desk.joists(room, Run::AcrossFirstSide, "3 1/2", "16", 8);
        desk.joists(hall, Run::AcrossFirstSide, "5", "24", 5);
        let first = |desk: &Desk| Floor::of_room(desk.job(), room).joists.unwrap().center(1);
        assert_eq!(first(&desk), Length::sixty_fourths(224));
        desk.withdraw(again);
        assert_eq!(first(&desk), Length::inches(3));
    }
}
