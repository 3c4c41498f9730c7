//! Saying where: by a joist, by a point, by a mark; typed or tapped.

use super::*;
use duckboard::engine::geometry::Point;
use duckboard::engine::place::{Element, JoistNumber, Locating, Place, Position};
use duckboard::engine::take::{Whereabouts, located, tapped, travel};

/// Under the house, with nine joists across side 1, 16 inches apart from 3 inches on.
fn over_joists() -> Desk {
    let mut desk = ell();
    desk.draft = desk.draft.measuring(TapeTask::Joists);
    for text in ["3", "16", "9"] {
        desk.types(text).unwrap();
    }
    desk
}

fn at(right: i32, down: i32) -> Point {
    Point::new(Length::inches(right), Length::inches(down))
}

fn on_plan(right: &str, down: &str) -> Position {
    Position::OnPlan { right: length(right), down: length(down) }
}

fn chalked(mark: &str) -> Option<Label> {
    Some(Label::new(mark).unwrap())
}

#[test]
fn a_distance_is_typed_like_any_length_and_logs_nothing() {
    let mut desk = at_meter(4, "");
    let entries = desk.book.log().len();
    desk.draft.text = "2".to_owned();
    desk.draft = desk.draft.asking_where(Whereabouts::Along);
    let question = Question::of(&desk.draft, desk.job(), desk.units);
    assert_eq!(question.asks, "Joist 4, lower edge: distance along");
    assert_eq!(desk.draft.text, "", "half a reading is no distance");
    let read_back = desk.types("8' 2").unwrap();
    assert_eq!((read_back.of.as_str(), read_back.value.as_str()), ("Distance along", "8' 2\""));
    assert!(desk.draft.spot.same_spot(&spot(4, "98 in")));
    assert_eq!((desk.draft.locating, desk.draft.text.as_str()), (None, "2"), "what was half typed comes back");
    assert_eq!(desk.book.log().len(), entries);
    assert_eq!(Question::of(&desk.draft, desk.job(), desk.units).detail, "8' 2\" along · species not said");
}

#[test]
fn a_point_is_two_lengths_asked_one_after_the_other() {
    let mut desk = at_meter(1, "");
    desk.draft.spot.element = Element::Sill;
    desk.draft.spot = located(desk.job(), &desk.draft.spot, Locating::Plan, desk.units);
    desk.draft.text = "2".to_owned();
    desk.draft = desk.draft.asking_where(Whereabouts::Right);
    desk.types("5' 6").unwrap();
    assert_eq!(desk.draft.locating, Some(Whereabouts::Down));
    desk.types("-4").unwrap();
    assert_eq!(desk.draft.spot.position, on_plan("5' 6", "-4 in"));
    assert_eq!(desk.draft.text, "2", "what was half typed outlives both");
    assert_eq!(Question::of(&desk.draft, desk.job(), desk.units).detail, "5' 6\" right, -4\" down · species not said");
}

#[test]
fn nothing_typed_takes_away_what_need_not_be_measured_and_leaves_a_point() {
    let mut desk = at_meter(4, "98");
    desk.draft = desk.draft.asking_where(Whereabouts::Along);
    assert_eq!(desk.types(" ").unwrap().value, "not measured");
    assert!(desk.draft.spot.same_spot(&spot(4, "")));
    desk.draft.spot.position = on_plan("5'", "4'");
    desk.draft = desk.draft.asking_where(Whereabouts::Right);
    desk.types("").unwrap();
    desk.types("").unwrap();
    assert_eq!(desk.draft.spot.position, on_plan("5'", "4'"));
}

#[test]
fn what_is_no_length_is_refused_by_name_and_stays_typed() {
    let mut desk = at_meter(4, "98");
    desk.draft = desk.draft.asking_where(Whereabouts::Height);
    let refused = desk.types("-2").unwrap_err();
    assert!(refused.message.starts_with("Height: “-2”"), "{refused:?}");
    assert_eq!((desk.draft.text.as_str(), desk.draft.locating), ("-2", Some(Whereabouts::Height)));
}

#[test]
fn another_instrument_puts_the_question_down() {
    let desk = at_meter(4, "98");
    let asking = desk.draft.asking_where(Whereabouts::Along);
    assert_eq!(asking.with(Instrument::Level).locating, None);
}

#[test]
fn a_tap_means_the_nearest_joist_to_the_inch() {
    let desk = over_joists();
    let tapped = tapped(desk.job(), &desk.draft.spot, Point::new(Length::inches(36), Length::mm(1_001)), desk.units);
    assert_eq!(
        tapped.position,
        Position::OnJoist { joist: JoistNumber::new(3).unwrap(), along: Some(length("3' 3\"")) }
    );
    assert_eq!(tapped.element, Element::Joist);
}

#[test]
fn a_tap_near_a_known_place_means_that_place() {
    let mut desk = over_joists();
    let known = Place { chalk: chalked("A"), ..spot(3, "40 1/2") };
    desk.log(Observation::Place(known.clone()));
    assert_eq!(tapped(desk.job(), &desk.draft.spot, at(33, 44), desk.units), known);
    let further = tapped(desk.job(), &known, at(33, 50), desk.units);
    assert!(further.same_spot(&spot(3, "50")), "out of reach, and the mark stays behind: {further:?}");
}

#[test]
fn of_two_places_in_one_spot_a_tap_means_the_one_like_the_last() {
    let mut desk = over_joists();
    let joist = spot(3, "40");
    let sill = Place { element: Element::Sill, ..joist.clone() };
    for place in [&joist, &sill] {
        desk.log(Observation::Place(place.clone()));
    }
    for last in [joist, sill] {
        assert_eq!(tapped(desk.job(), &last, at(35, 40), desk.units), last);
    }
}

#[test]
fn a_tap_means_a_point_where_no_joists_are_or_a_point_was_said_before() {
    let mut desk = ell();
    assert_eq!(tapped(desk.job(), &desk.draft.spot, at(30, 50), desk.units).position, on_plan("2' 6\"", "4' 2\""));
    desk = over_joists();
    let point = Place { position: on_plan("1 in", "1 in"), ..spot(1, "") };
    assert_eq!(tapped(desk.job(), &point, at(30, 50), desk.units).position, on_plan("2' 6\"", "4' 2\""));
}

#[test]
fn said_in_another_way_it_is_the_same_point() {
    let desk = over_joists();
    let joist = spot(3, "50 in");
    let point = located(desk.job(), &joist, Locating::Plan, desk.units);
    assert_eq!(point.position, on_plan("2' 11\"", "4' 2\""));
    assert!(located(desk.job(), &point, Locating::Joist, desk.units).same_spot(&joist));
    let nowhere = located(desk.job(), &spot(3, ""), Locating::Plan, desk.units);
    assert_eq!(nowhere.position, on_plan("0\"", "0\""), "corner 1, until somebody says");
}

#[test]
fn a_place_by_its_mark_is_read_again_by_its_mark() {
    let mut desk = at_meter(1, "");
    let marked = Place { position: Position::Named, element: Element::Sill, chalk: chalked("B2"), ..spot(1, "") };
    desk.draft.spot = marked.clone();
    assert_eq!(Question::of(&desk.draft, desk.job(), desk.units).asks, "Sill, lower edge, \"B2\"");
    desk.types("18").unwrap();
    desk.draft.spot = marked;
    desk.types("19").unwrap();
    let places = places_read(&desk);
    assert_eq!(places[0], places[1]);
}

#[test]
fn a_mark_stays_at_its_place_when_the_place_moves_on() {
    let marked = Place { chalk: chalked("A"), height: Some(length("2")), ..spot(3, "40") };
    let next = travel::step(at_meter(3, "").job(), &marked, 1);
    assert_eq!((next.chalk, next.height), (None, Some(length("2"))));
}

#[test]
fn a_forgotten_side_is_put_in_where_it_belongs() {
    let mut desk = Desk::new();
    for text in ["11'", "6'", "7' 8\""] {
        desk.types(text).unwrap();
    }
    let walked = Floor::of(desk.job()).unwrap().sides;
    desk.draft.after = Some(walked[1]);
    let asks = |desk: &Desk| Question::of(&desk.draft, desk.job(), desk.units).asks;
    assert_eq!(asks(&desk), "Side 3, put in after side 2");
    assert_eq!(desk.types("40").unwrap().of, "Side 3");
    let floor = Floor::of(desk.job()).unwrap();
    assert_eq!(floor.sides.iter().position(|side| !walked.contains(side)), Some(2));
    assert_eq!((desk.draft.after, asks(&desk).as_str()), (None, "Side 5"), "one at a time");
}

#[test]
fn a_room_that_comes_round_by_a_side_put_in_is_done() {
    let mut desk = Desk::new();
    for text in ["10'", "8'", "8'"] {
        desk.types(text).unwrap();
    }
    desk.draft.after = Some(Floor::of(desk.job()).unwrap().sides[1]);
    desk.types("10'").unwrap();
    assert!(Floor::of(desk.job()).unwrap().walk.has_come_round());
    assert_eq!(desk.draft.tape, TapeTask::Opening);
}
