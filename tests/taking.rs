//! Taking: a whole walk at the desk, value by value, as the keypad gives them.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "tests may fail loudly")]

mod desk;
#[path = "taking/inside.rs"]
mod inside;
#[path = "taking/laws.rs"]
mod laws;
#[path = "taking/meter.rs"]
mod meter;
#[path = "taking/places.rs"]
mod places;
#[path = "taking/refused.rs"]
mod refused;
#[path = "taking/spots.rs"]
mod spots;
#[path = "taking/visits.rs"]
mod visits;

use desk::{Desk, joist_of, label, length, spot};
use duckboard::engine::air::AirLocation;
use duckboard::engine::condition::Finding;
use duckboard::engine::entry::{EntryId, Label};
use duckboard::engine::geometry::Turn;
use duckboard::engine::job::{Book, Fact, Observation, Record};
use duckboard::engine::moisture::{Material, Outside, Reading, Shown, Wood};
use duckboard::engine::place::{Element, Face, JoistNumber, Place};
use duckboard::engine::survey::{Floor, LayerKind, ObstacleKind, Run};
use duckboard::engine::take::{self, AirTask, Draft, Footprint, Instrument, Question, TapeTask, Units};
use duckboard::engine::units::tape::{LengthStyle, ShownUnit};
use duckboard::engine::units::{Length, MoistureContent, RelativeHumidity, Temperature, Typed};

/// An L of 11 ft by 10 ft with its only left turn after the third side.
const ELL: [&str; 6] = ["11'", "6'", "40", "4'", "7' 8\"", "10'"];

/// A desk with the L measured, at the question for the opening.
fn ell() -> Desk {
    let mut desk = Desk::new();
    for (at, text) in ELL.iter().enumerate() {
        desk.draft.turn = if at == 2 { Turn::Left } else { Turn::Right };
        desk.types(text).unwrap();
    }
    desk
}

/// A desk under the house, the meter at this spot.
fn at_meter(joist: u16, along: &str) -> Desk {
    let mut desk = ell();
    desk.draft = Draft { spot: spot(joist, along), ..desk.draft.with(Instrument::Meter) };
    desk
}

fn places_read(desk: &Desk) -> Vec<EntryId> {
    desk.job().now.readings().values().map(|reading| reading.value.place).collect()
}

fn last_reading(desk: &Desk) -> Reading {
    desk.job().now.readings().values().next_back().unwrap().value.clone()
}

#[test]
fn a_room_is_walked_side_by_side_until_it_comes_round() {
    let mut desk = Desk::new();
    for (at, text) in ELL.iter().enumerate() {
        assert_eq!(desk.draft.tape, TapeTask::Side, "side {} is still asked for", at + 1);
        assert_eq!(Question::of(&desk.draft, desk.job(), desk.units).asks, format!("Side {}", at + 1));
        desk.draft.turn = if at == 2 { Turn::Left } else { Turn::Right };
        let read_back = desk.types(text).unwrap();
        assert_eq!(read_back.of, format!("Side {}", at + 1));
        assert_eq!((desk.draft.turn, desk.draft.text.as_str()), (Turn::Right, ""), "a left turn is said each time");
    }
    assert_eq!(desk.draft.tape, TapeTask::Opening);
    let floor = Floor::of(desk.job()).unwrap();
    assert_eq!(desk.job().now.rooms().len(), 1);
    assert!(floor.walk.has_come_round());
    let lengths: Vec<_> = floor.walk.steps().iter().map(|step| step.length.to_inches()).collect();
    assert_eq!(lengths, [132.0, 72.0, 40.0, 48.0, 92.0, 120.0]);
    let turns: Vec<_> = floor.walk.steps().iter().map(|step| step.turn).collect();
    assert_eq!(turns.iter().position(|turn| *turn == Turn::Left.quarter()), Some(2));
    assert_eq!(floor.sides, desk.job().now.sides().keys().copied().collect::<Vec<_>>());
}

#[test]
fn a_room_that_misses_its_start_by_a_foot_goes_on_asking_for_sides() {
    let mut desk = Desk::new();
    for text in ["10'", "8'", "10'", "7'"] {
        desk.types(text).unwrap();
    }
    assert_eq!(desk.draft.tape, TapeTask::Side);
}

#[test]
fn the_last_side_taken_back_and_measured_again_goes_where_it_was() {
    let mut desk = ell();
    let floor = Floor::of(desk.job()).unwrap();
    desk.withdraw(*floor.sides.last().unwrap());
    desk.draft = desk.draft.measuring(TapeTask::Side);
    desk.types("9' 11 3/4\"").unwrap();
    let again = Floor::of(desk.job()).unwrap();
    assert_eq!(again.sides[..5], floor.sides[..5]);
    assert_eq!(again.walk.closing_error().misclosure(), Length::sixty_fourths(16));
    assert_eq!(desk.draft.tape, TapeTask::Opening);
}

#[test]
fn an_opening_is_four_values_and_then_joists_are_three() {
    let mut desk = ell();
    desk.draft.corner = 1;
    for (held, text) in ["2' 11\"", "3' 4", "4'"].into_iter().enumerate() {
        desk.types(text).unwrap();
        assert_eq!(desk.draft.held.len(), held + 1);
        assert!(desk.job().now.openings().is_empty(), "half an opening is no opening");
    }
    desk.types("62").unwrap();
    let opening = desk.job().now.openings().values().next().unwrap().value.clone();
    assert_eq!(opening.from, Floor::of(desk.job()).unwrap().sides[1]);
    let inches = [&opening.along, &opening.out, &opening.length, &opening.width].map(|typed| typed.value.to_inches());
    assert_eq!(inches, [35.0, 40.0, 48.0, 62.0]);
    assert_eq!(opening.width.typed, "62 in");

    assert_eq!((desk.draft.tape, desk.draft.held.len()), (TapeTask::Joists, 0));
    desk.draft.run = Run::AlongFirstSide;
    for text in ["3", "16", "8"] {
        desk.types(text).unwrap();
    }
    let joists = Floor::of(desk.job()).unwrap().joists.unwrap();
    assert_eq!((joists.run(), joists.count()), (Run::AlongFirstSide, 8));
    assert_eq!(joists.center(1), Length::inches(3));
    assert_eq!(joists.widest_spacing(), Length::inches(16));
    assert_eq!(desk.draft.instrument, Instrument::Meter, "what comes next is under the house");

    // Now joist by joist, as the tape lies along them.
    desk.draft = desk.draft.measuring(TapeTask::JoistCenter).with(Instrument::Tape);
    desk.draft.joist = JoistNumber::new(7).unwrap();
    for text in ["8' 4 1/2", "9' 6"] {
        desk.types(text).unwrap();
    }
    assert_eq!(desk.draft.joist.get(), 8, "there is no ninth");
    let joists = Floor::of(desk.job()).unwrap().joists.unwrap();
    let centers: Vec<_> = joists.centers().skip(5).map(Length::to_inches).collect();
    assert_eq!(centers, [83.0, 100.5, 114.0]);
    assert_eq!(joists.widest_spacing(), Length::sixty_fourths(17 * 64 + 32));
}

#[test]
fn a_corner_beside_a_line_is_two_values_and_lies_where_the_walk_sees_it() {
    let mut desk = ell();
    desk.draft = Draft { corner: 3, line_from: 0, to_corner: 1, ..desk.draft.measuring(TapeTask::Offset) };
    assert_eq!(Question::of(&desk.draft, desk.job(), desk.units).asks, "Corner 4: along the line");
    desk.types("6' 3\"").unwrap();
    assert!(desk.job().now.offsets().is_empty(), "half an offset is none");
    desk.types("6' 1/8\"").unwrap();
    let offset = desk.job().now.offsets().values().next().unwrap().value.clone();
    let sides = Floor::of(desk.job()).unwrap().sides;
    assert_eq!((offset.of, offset.from, offset.to), (sides[3], sides[0], sides[1]));
    assert_eq!((offset.along.value.to_inches(), offset.out.value.to_inches()), (75.0, 72.125));
    assert_eq!(offset.side, Turn::Right, "the room is on the right");

    // The same line the other way: the room is on its left.
    desk.draft = Draft { line_from: 1, to_corner: 0, ..desk.draft.clone() };
    desk.types("3'").unwrap();
    desk.types("6'").unwrap();
    assert_eq!(desk.job().now.offsets().values().next_back().unwrap().value.side, Turn::Left);

    desk.draft.corner = 1;
    let refused = desk.types("3'").unwrap_err().message;
    assert_eq!(refused, "Corner 2: three different corners are needed");
}

#[test]
fn the_old_floor_is_measured_from_the_top_down() {
    let mut desk = Desk::new();
    desk.draft = Draft { layer: LayerKind::Finish, ..desk.draft.measuring(TapeTask::Layer) };
    desk.types("3/16").unwrap();
    assert_eq!(Question::of(&desk.draft, desk.job(), desk.units).asks, "Layer 2 from the top: thickness");
    desk.draft.layer = LayerKind::Boards;
    desk.types("3/4").unwrap();
    let layers = desk.job().now.layers().values().map(|layer| (layer.value.what, layer.value.thickness.value));
    let expected = [(LayerKind::Finish, 12), (LayerKind::Boards, 48)];
    assert_eq!(layers.collect::<Vec<_>>(), expected.map(|(what, thick)| (what, Length::sixty_fourths(thick))));
}

#[test]
fn an_opening_is_cut_back_to_a_rip_and_the_finished_floor_beyond_it() {
    let mut desk = ell();
    desk.draft = desk.draft.measuring(TapeTask::CutBack);
    let refused = desk.types("").unwrap_err().message;
    assert_eq!(refused, "Cut back: there is no opening yet: place one first");
    let from = Floor::of(desk.job()).unwrap().sides[0];
    let first = desk.opening(from, ["1'", "1'", "2'", "2'"]);
    let second = desk.opening(from, ["5'", "1'", "2'", "2'"]);
    for text in ["48\"", ""] {
        desk.types(text).unwrap();
    }
    desk.draft.opening = Some(first);
    for text in ["", "3"] {
        desk.types(text).unwrap();
    }
    let said: Vec<_> = desk.job().now.cut_backs().values().map(|cut_back| cut_back.value.clone()).collect();
    let inches = |length: &Option<Typed<Length>>| length.as_ref().map(|length| length.value.to_inches());
    let said: Vec<_> = said.iter().map(|said| (said.opening, inches(&said.width), inches(&said.finish))).collect();
    assert_eq!(said, [(second, Some(48.0), None), (first, None, Some(3.0))], "the last one unless somebody says so");
}

#[test]
fn an_opening_may_start_in_the_corner_but_not_be_nothing() {
    let mut desk = ell();
    for text in ["0", "0", "4'"] {
        desk.types(text).unwrap();
    }
    assert!(desk.types("0").unwrap_err().message.starts_with("Opening size into the room: "));
    desk.types("5'").unwrap();
    assert_eq!(desk.job().now.openings().len(), 1);
}

#[test]
fn a_row_of_readings_moves_on_joist_by_joist() {
    let mut desk = at_meter(4, "5' 1\"");
    for (at, text) in (4..).zip(["18", "19", "22"]) {
        assert_eq!(joist_of(&desk.draft.spot), at);
        let read_back = desk.types(text).unwrap();
        assert_eq!(read_back.value, format!("{text} %"));
        assert_eq!(read_back.spoken, format!("{text} percent"));
        assert_eq!(read_back.of, format!("Joist {at}, lower edge"));
    }
    assert_eq!(joist_of(&desk.draft.spot), 7);
    let shown: Vec<_> = desk.job().now.readings().values().map(|reading| reading.value.shown.clone()).collect();
    let expected = [("18 %", 18), ("19 %", 19), ("22 %", 22)];
    for (shown, (typed, percent)) in shown.iter().zip(expected) {
        let Shown::Percent(shown) = shown else { panic!("{shown:?}") };
        assert_eq!((shown.typed.as_str(), shown.value), (typed, MoistureContent::percent(percent)));
    }
    let joists: Vec<_> = desk.job().now.places().values().map(|place| joist_of(place.value)).collect();
    assert_eq!(joists, [4, 5, 6]);
    assert!(desk.job().now.places().values().all(|place| place.value.position.along() == Some(length("5' 1\""))));
}

#[test]
fn a_row_may_be_read_backwards_or_in_place() {
    let mut desk = at_meter(4, "5'");
    desk.draft.travel = -1;
    desk.types("18").unwrap();
    assert_eq!(joist_of(&desk.draft.spot), 3);
    desk.draft.travel = 0;
    desk.types("18").unwrap();
    assert_eq!(joist_of(&desk.draft.spot), 3);
}

#[test]
fn a_spot_read_again_is_the_place_that_it_was() {
    let mut desk = at_meter(4, "5' 1\"");
    desk.types("18").unwrap();
    desk.draft.spot = spot(4, "61 in");
    desk.types("18.5").unwrap();
    assert_eq!(desk.job().now.places().len(), 1, "61 in is 5' 1\"");
    assert_eq!(places_read(&desk), [*desk.job().now.places().keys().next().unwrap(); 2]);
    desk.draft.spot = spot(4, "61 1/2");
    desk.types("19").unwrap();
    assert_eq!(desk.job().now.places().len(), 2);
}

#[test]
fn over_the_maximum_is_a_reading_and_moves_on() {
    let mut desk = at_meter(4, "5'");
    let saved =
        take::save_off_scale(&desk.draft, desk.book.job(), &mut desk.pen, desk.units, None, Outside::Over).unwrap();
    let read_back = desk.takes(saved);
    assert_eq!((read_back.value.as_str(), read_back.spoken.as_str()), ("over maximum", "over maximum"));
    assert_eq!(last_reading(&desk).shown, Shown::OverMaximum);
    assert_eq!(joist_of(&desk.draft.spot), 5);
}

#[test]
fn air_is_two_answers_and_one_entry() {
    for (task, location) in [
        (AirTask::Crawl, AirLocation::Crawl),
        (AirTask::Room, AirLocation::Room),
        (AirTask::Outdoors, AirLocation::Outdoors),
    ] {
        let mut desk = Desk::new();
        desk.draft = desk.draft.with(Instrument::Air).reading_air(task);
        assert_eq!(desk.types("62").unwrap().value, "62.0 °F");
        assert!(desk.job().now.air().is_empty());
        assert!(Question::of(&desk.draft, desk.job(), desk.units).asks.ends_with("humidity"));
        assert_eq!(desk.types("86").unwrap().value, "86 %");
        let air = desk.job().now.air().values().next().unwrap().value.clone();
        assert_eq!((air.location, air.temperature.value), (location, Temperature::fahrenheit(62)));
        assert_eq!(air.humidity.value, RelativeHumidity::percent(86));
        assert!(desk.draft.held.is_empty());
    }
}

#[test]
fn the_woods_temperature_goes_with_the_readings_that_follow() {
    let mut desk = at_meter(4, "5'");
    desk.types("18").unwrap();
    assert_eq!(last_reading(&desk).wood_temperature, None);
    desk.draft = desk.draft.with(Instrument::Air).reading_air(AirTask::Wood);
    desk.types("58").unwrap();
    assert_eq!(desk.draft.instrument, Instrument::Meter, "back to the meter");
    assert_eq!(desk.job().now.surfaces().len(), 1);
    for text in ["19", "20"] {
        desk.types(text).unwrap();
        assert_eq!(last_reading(&desk).wood_temperature.map(|typed| typed.value), Some(Temperature::fahrenheit(58)));
    }
}

#[test]
fn a_cold_pipe_is_not_the_wood() {
    let mut desk = at_meter(4, "5'");
    desk.draft = desk.draft.with(Instrument::Air).reading_air(AirTask::Surface);
    desk.types("48").unwrap();
    assert_eq!((desk.draft.instrument, desk.draft.wood_temperature.as_ref()), (Instrument::Air, None));
    assert_eq!(desk.job().now.surfaces().values().next().unwrap().value.what.as_str(), "Surface");
}

#[test]
fn a_level_is_logged_at_its_place_and_moves_on() {
    let mut desk = at_meter(2, "5'");
    desk.draft = desk.draft.with(Instrument::Level);
    for text in ["14 1/8", "-1/4"] {
        desk.types(text).unwrap();
    }
    let drops: Vec<_> = desk.job().now.levels().values().map(|level| level.value.drop.value.to_inches()).collect();
    assert_eq!(drops, [14.125, -0.25]);
    let joists: Vec<_> = desk
        .job()
        .now
        .levels()
        .values()
        .map(|level| joist_of(desk.job().now.places().get(&level.value.place).unwrap().value))
        .collect();
    assert_eq!(joists, [2, 3]);
}

#[test]
fn a_level_is_held_on_the_joists_top_and_the_meter_goes_back_to_where_it_was() {
    let desk = at_meter(2, "5'");
    let level = desk.draft.with(Instrument::Level);
    assert_eq!([desk.draft.spot.face, level.spot.face], [Some(Face::LowerEdge), Some(Face::UpperEdge)]);
    assert_eq!(level.with(Instrument::Level).spot.face, Some(Face::UpperEdge));
    assert_eq!(level.with(Instrument::Meter).spot.face, Some(Face::LowerEdge));
    let on = |face| Draft { spot: Place { face, ..desk.draft.spot.clone() }, ..desk.draft.clone() };
    for face in [None, Some(Face::NearSide), Some(Face::UpperEdge)] {
        assert_eq!(on(face).with(Instrument::Level).spot.face, face, "a face that was chosen stays");
        assert_eq!(on(face).with(Instrument::Air).spot.face, face);
    }
    let sill = Place { element: Element::Sill, ..desk.draft.spot.clone() };
    let sill = Draft { spot: sill, ..desk.draft.clone() };
    assert_eq!(sill.with(Instrument::Level).spot.face, Some(Face::LowerEdge), "a sill has no top that is shimmed");
}

#[test]
fn a_look_stays_where_it_is_and_makes_one_place() {
    let mut desk = at_meter(4, "5'");
    desk.draft = desk.draft.with(Instrument::Look);
    for finding in [Finding::Soft, Finding::Wire] {
        let saved = take::look(&desk.draft, desk.book.job(), &mut desk.pen, desk.units, finding).unwrap();
        assert_eq!(desk.takes(saved).value, finding.label());
    }
    assert_eq!((desk.job().now.places().len(), desk.job().now.conditions().len()), (1, 2));
    assert_eq!(joist_of(&desk.draft.spot), 4);
}

#[test]
fn a_crawl_height_is_a_fact_and_any_other_length_has_a_name() {
    let mut desk = Desk::new();
    desk.draft = desk.draft.measuring(TapeTask::CrawlHeight);
    desk.types("26").unwrap();
    assert_eq!(desk.job().crawl_height().unwrap().value, Length::inches(26));
    desk.draft = desk.draft.measuring(TapeTask::Other);
    assert_eq!(desk.types("12").unwrap().of, "Length");
    desk.draft.other = label("Girder to rim");
    assert_eq!(desk.types("7' 2\"").unwrap().of, "Girder to rim");
    assert_eq!(desk.job().now.measures().len(), 2);
}

#[test]
fn held_answers_survive_the_page_and_a_change_of_units() {
    let mut desk = ell();
    desk.types("14 1/2").unwrap();
    desk.types("2'").unwrap();
    let json = serde_json::to_string(&desk.draft).unwrap();
    let again: Draft = serde_json::from_str(&json).unwrap();
    assert_eq!(again, desk.draft);
    assert_eq!(again.held, ["14 1/2 in", "2'"]);

    desk.draft = again;
    desk.units = Units { length: LengthStyle { unit: ShownUnit::Millimetres, ..desk.units.length }, ..desk.units };
    desk.types("900").unwrap();
    desk.types("1200").unwrap();
    let opening = desk.job().now.openings().values().next().unwrap().value.clone();
    assert_eq!((opening.along.value, opening.length.value), (Length::sixty_fourths(14 * 64 + 32), Length::mm(900)));
}

#[test]
fn a_draft_of_another_version_is_read_as_far_as_it_goes() {
    let json = r#"{"instrument":"air","held":["62 °F"],"torch":{"lumens":400},"air":"room"}"#;
    let draft: Draft = serde_json::from_str(json).unwrap();
    let expected =
        Draft { instrument: Instrument::Air, held: vec!["62 °F".to_owned()], air: AirTask::Room, ..Draft::default() };
    assert_eq!(draft, expected);
    assert_eq!(serde_json::from_str::<Draft>("{}").unwrap(), Draft::default());
}

#[test]
fn another_instrument_puts_down_what_was_typed_and_keeps_the_place() {
    let desk = at_meter(4, "5'");
    let typing = Draft { text: "1".to_owned(), held: vec!["2".to_owned()], ..desk.draft };
    let next = typing.with(Instrument::Look);
    assert_eq!((next.text.as_str(), next.held.len()), ("", 0));
    assert_eq!(next.spot, typing.spot);
}

#[test]
fn eyes_and_a_camera_take_no_number() {
    let mut desk = at_meter(4, "5'");
    for instrument in [Instrument::Look, Instrument::Photo] {
        desk.draft = desk.draft.with(instrument);
        assert!(desk.types("5").unwrap_err().message.starts_with(instrument.label()));
    }
}

#[test]
fn retyping_changes_the_value_and_nothing_else() {
    let mut desk = at_meter(4, "5'");
    desk.types("18").unwrap();
    let was = last_reading(&desk);
    let to = take::retyped(desk.job(), &Observation::from(was.clone()), "28", desk.units).unwrap();
    let Observation::Reading(now) = to else { panic!("{to:?}") };
    assert_eq!(Reading { shown: was.shown.clone(), ..now.clone() }, was);
    assert_ne!(now.shown, was.shown);
    let refused = take::retyped(desk.job(), &Observation::from(was), "x", desk.units).unwrap_err();
    assert!(refused.starts_with("Moisture: "), "{refused}");
}

#[test]
fn what_stands_in_the_floor_is_placed_as_an_opening_is() {
    let mut desk = ell();
    desk.draft.footprint = Footprint::Of(ObstacleKind::Post);
    let asked = Question::of(&desk.draft, desk.job(), desk.units).asks;
    assert_eq!(asked, "Post: along side 1 from its corner");
    for text in ["2'", "3'", "6"] {
        desk.types(text).unwrap();
    }
    assert!(desk.types("0").unwrap_err().message.starts_with("Post size into the room: "));
    assert_eq!(desk.types("5").unwrap().of, "Post size into the room");
    assert!(desk.job().now.openings().is_empty());
    let post = &desk.job().now.obstacles().values().next().unwrap().value;
    assert_eq!((post.what, post.takes.out.value), (ObstacleKind::Post, Length::feet(3)));
    assert_eq!(desk.draft.footprint, Footprint::Opening, "the next one is an opening again");
}
