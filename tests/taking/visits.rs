//! The second visit: the same places again, and nothing of the first taken for today's.

use super::desk::other_phone;
use super::*;

/// A desk where these joists were read on a first visit, in this order, and a second
/// visit has begun at the first of them.
pub(super) fn second_visit(joists: &[u16]) -> Desk {
    let mut desk = at_meter(joists[0], "5'");
    desk.visit("Find how far it goes");
    for joist in joists {
        desk.draft.spot = spot(*joist, "5'");
        desk.types("20").unwrap();
    }
    desk.visit("Read the wood again");
    desk.draft.spot = spot(joists[0], "5'");
    desk
}

#[test]
fn a_second_visit_is_led_through_the_places_of_the_first_in_their_order() {
    let order = [5, 4, 7, 6];
    let mut desk = second_visit(&order);
    for joist in order {
        assert_eq!(joist_of(&desk.draft.spot), joist);
        desk.types("15").unwrap();
    }
    assert_eq!(desk.job().now.places().len(), 4, "no new place");
    assert_eq!(joist_of(&desk.draft.spot), 7, "all read: on to the next joist");
    let read = places_read(&desk);
    assert_eq!(read[..4], read[4..]);
}

#[test]
fn a_second_visit_begun_in_the_middle_comes_back_for_the_first_places() {
    let mut desk = second_visit(&[4, 5, 6]);
    desk.draft.spot = spot(6, "5'");
    for joist in [6, 4, 5] {
        assert_eq!(joist_of(&desk.draft.spot), joist);
        desk.types("15").unwrap();
    }
}

#[test]
fn a_new_spot_on_a_second_visit_is_followed_by_the_next_joist() {
    let mut desk = second_visit(&[4, 5, 6]);
    desk.draft.spot = spot(9, "2'");
    desk.types("15").unwrap();
    assert_eq!(joist_of(&desk.draft.spot), 10);
}

#[test]
fn a_place_that_was_taken_back_is_passed_over_on_a_second_visit() {
    let mut desk = second_visit(&[4, 5, 6]);
    let second = *desk.job().now.places().keys().nth(1).unwrap();
    desk.withdraw(second);
    desk.types("15").unwrap();
    assert_eq!(joist_of(&desk.draft.spot), 6);
}

#[test]
fn a_spot_that_two_phones_logged_is_asked_for_once() {
    let mut desk = Desk::new();
    desk.visit("Find how far it goes");
    desk.draft = Draft { spot: spot(4, "5'"), ..desk.draft.with(Instrument::Meter) };
    for text in ["20", "21"] {
        desk.types(text).unwrap();
    }
    // The other phone read joist 4 too, before either had seen the other's log.
    let mut pen = other_phone();
    let place = pen.record(spot(4, "60 in"));
    let wood = Wood { material: Material::Solid, species: None };
    let shown = Shown::OverMaximum;
    let reading = pen.record(Reading::new(place.id, shown, wood));
    for entry in [place, reading] {
        desk.book.add(Record::of(entry).unwrap());
    }
    desk.visit("Read the wood again");
    desk.draft.spot = spot(4, "5'");
    for joist in [4, 5] {
        assert_eq!(joist_of(&desk.draft.spot), joist);
        desk.types("15").unwrap();
    }
    assert_eq!(joist_of(&desk.draft.spot), 6, "joist 4 is not asked for again");
}

#[test]
fn the_woods_temperature_of_another_visit_goes_with_no_reading() {
    let mut desk = at_meter(4, "5'");
    desk.visit("Find how far it goes");
    desk.draft = desk.draft.with(Instrument::Air).reading_air(AirTask::Wood);
    desk.types("58").unwrap();
    desk.visit("Read the wood again");
    desk.types("19").unwrap();
    assert_eq!(last_reading(&desk).wood_temperature, None, "three weeks later the wood is as warm as that day");
}

#[test]
fn in_a_visit_that_nobody_ended_the_woods_temperature_goes_with_no_reading_of_more_than_three_days_later() {
    let goes_with = |at: &str| {
        let mut desk = at_meter(4, "5'");
        desk.visit("Find how far it goes");
        desk.draft = desk.draft.with(Instrument::Air).reading_air(AirTask::Wood);
        desk.types("58").unwrap();
        desk.goes_on(at);
        desk.types("19").unwrap();
        last_reading(&desk).wood_temperature.is_some()
    };
    let days = ["2026-11-28T08:14:59-06:00", "2026-11-28T08:15:00-06:00", "2026-11-28T08:15:01-06:00"];
    assert_eq!(days.map(goes_with), [true, true, false]);
}

#[test]
fn a_temperature_of_the_wood_that_was_taken_back_goes_with_no_reading() {
    let mut desk = at_meter(4, "5'");
    desk.visit("Find how far it goes");
    desk.draft = desk.draft.with(Instrument::Air).reading_air(AirTask::Wood);
    desk.types("58").unwrap();
    let surface = *desk.job().now.surfaces().last().unwrap().0;
    desk.withdraw(surface);
    desk.types("19").unwrap();
    assert_eq!(last_reading(&desk).wood_temperature, None);
}
