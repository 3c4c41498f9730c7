//! What lies in the room is taken, and what does not is refused with what would do.

use super::*;
use duckboard::engine::geometry::{Outline, Point, Rect};
use duckboard::engine::place::{Element, Face, Place, Position};
use duckboard::engine::survey::inside::{BEYOND_A_WALL, OUTSIDE_THE_ROOM, UNDER_A_WALL, told};
use duckboard::engine::survey::{AlongFrom, Joists, Opening, agreement, as_opening, propose};
use duckboard::engine::take::{Whereabouts, faced, look, standing, travel};

/// Under an L of 12 ft by 10 ft: its first side 12 ft, its last 10 ft; the far corner's 4 ft by
/// 4 ft is no part of it. Nine joists from 8 in on, 16 in apart, as Take lays them out; those
/// from 8 ft on are 6 ft long.
fn ell_over_joists() -> Desk {
    let mut desk = Desk::new();
    for (text, turn) in [("12'", R), ("6'", R), ("4'", L), ("4'", R), ("8'", R), ("10'", R)] {
        desk.draft.turn = turn;
        desk.types(text).unwrap();
    }
    desk.draft = desk.draft.measuring(TapeTask::Joists);
    for text in ["8", "16", "9"] {
        desk.types(text).unwrap();
    }
    desk.draft = desk.draft.with(Instrument::Meter);
    desk
}

/// The same room turned over: its first wall is the one with the jog, so that joists 1 to 3
/// start at side 3, 4 ft from the first corner's line.
fn jog_first() -> Desk {
    let mut desk = Desk::new();
    // From the jog's outer corner along the top, and round.
    for (text, turn) in [("8'", R), ("10'", R), ("12'", R), ("6'", R), ("4'", L), ("4'", R)] {
        desk.draft.turn = turn;
        desk.types(text).unwrap();
    }
    desk.draft = desk.draft.measuring(TapeTask::Joists);
    for text in ["-3' 4", "16", "9"] {
        desk.types(text).unwrap();
    }
    desk.draft = desk.draft.with(Instrument::Meter);
    desk
}

const R: Turn = Turn::Right;
const L: Turn = Turn::Left;

/// Types a distance along a joist: what is taken, or the refusal.
fn along(desk: &mut Desk, joist: u16, text: &str) -> Result<(), String> {
    desk.draft = Draft { spot: spot(joist, ""), ..desk.draft.clone() }.asking_where(Whereabouts::Along);
    desk.types(text).map(|_| ()).map_err(|refused| refused.message)
}

#[test]
fn take_never_steps_past_the_last_joist() {
    let mut desk = ell_over_joists();
    desk.draft.spot = spot(8, "2'");
    for expected in [9, 9] {
        desk.types("18").unwrap();
        assert_eq!(joist_of(&desk.draft.spot), expected);
    }
    for (from, by, to) in [(9, 1, 9), (8, 1, 9), (1, -1, 1), (8, 5, 9)] {
        assert_eq!(joist_of(&travel::step(desk.job(), &spot(from, ""), by)), to, "{from} {by}");
    }
    assert_eq!(joist_of(&travel::step(Desk::new().job(), &spot(12, ""), 1)), 13, "nothing is laid out yet");
}

#[test]
fn a_joist_beyond_the_last_is_refused_by_every_instrument_with_what_would_do() {
    for instrument in [Instrument::Meter, Instrument::Level] {
        let mut desk = ell_over_joists();
        desk.draft = Draft { spot: spot(10, ""), ..desk.draft.with(instrument) };
        let entries = desk.book.log().len();
        let message = desk.types("18").unwrap_err().message;
        assert_eq!(message, "Joist 10, lower edge: there are 9 joists: 1 to 9 is accepted");
        assert_eq!((desk.draft.text.as_str(), desk.book.log().len()), ("18", entries), "nothing is lost or logged");
        desk.draft.spot = spot(9, "");
        desk.types("18").unwrap();
    }
    let mut desk = ell_over_joists();
    desk.draft.spot = spot(10, "");
    assert!(look(&desk.draft, desk.book.job(), &mut desk.pen, desk.units, Finding::Soft).is_err());
    let off = take::save_off_scale(&desk.draft, desk.book.job(), &mut desk.pen, desk.units, None, Outside::Over);
    assert!(off.is_err());
}

#[test]
fn a_distance_lies_within_its_joist_and_the_joist_names_its_walls() {
    let mut desk = ell_over_joists();
    // Joist 6 at 7' 4" is 10 ft long, joist 7 at 8' 8" only 6 ft.
    let limit = |feet: i32| Length::feet(feet) + BEYOND_A_WALL;
    for (joist, feet) in [(6, 10), (7, 6)] {
        let typed = |length: Length| desk_text(length);
        assert_eq!(along(&mut desk, joist, &typed(limit(feet) - Length::SIXTY_FOURTH)), Ok(()));
        assert_eq!(along(&mut desk, joist, &typed(limit(feet))), Ok(()));
        assert!(along(&mut desk, joist, &typed(limit(feet) + Length::SIXTY_FOURTH)).is_err());
    }
    let message = along(&mut desk, 7, "8'").unwrap_err();
    assert_eq!(
        message,
        "Distance along: 8': Joist 7, lower edge: joist 7 is not there: 0\" to 6' 0\", from side 1 to side 3, is accepted"
    );
}

fn desk_text(length: Length) -> String {
    Units::default().read(length)
}

/// Where the question says that the spot is, without the wood.
fn where_said(desk: &Desk) -> String {
    let detail = Question::of(&desk.draft, desk.job(), desk.units).detail;
    detail.split(" · ").next().unwrap_or_default().to_owned()
}

#[test]
fn a_distance_is_from_the_wall_that_the_joist_meets() {
    let mut desk = jog_first();
    let floor = Floor::of(desk.job()).unwrap();
    let at = |joist: u16, along: &str| floor.locate(&spot(joist, along)).unwrap();
    // Joist 1 starts at side 5, which lies 4 ft in; joist 4 at side 1.
    assert_eq!(at(1, "2'"), Point::new(Length::inches(-40), Length::feet(6)));
    assert_eq!(at(4, "2'"), Point::new(Length::inches(8), Length::feet(2)));
    desk.draft.spot = spot(1, "2'");
    assert_eq!(where_said(&desk), "2' 0\" from side 5");
    desk.log(Fact::MeasuredFrom(label("north wall")));
    assert_eq!(where_said(&desk), "2' 0\" from side 5");
    desk.draft.spot = spot(4, "2'");
    assert_eq!(where_said(&desk), "2' 0\" from north wall");
}

#[test]
fn a_row_goes_straight_on_where_the_wall_jumps() {
    let desk = jog_first();
    let next = travel::step(desk.job(), &spot(3, "2'"), 1);
    assert!(next.same_spot(&spot(4, "6'")), "the same line across the joists: {next:?}");
    let back = travel::step(desk.job(), &spot(4, "6'"), -1);
    assert!(back.same_spot(&spot(3, "2'")), "{back:?}");
    let none = travel::step(desk.job(), &spot(4, "2'"), -1);
    assert!(none.same_spot(&spot(3, "")), "joist 3 is not there: {none:?}");
    let desk = ell_over_joists();
    assert!(travel::step(desk.job(), &spot(6, "8'"), 1).same_spot(&spot(7, "")), "joist 7 is shorter");
}

#[test]
fn logs_of_before_keep_their_distances_from_the_first_corner() {
    let mut desk = jog_first();
    let mut old: Joists = desk.job().now.joists().values().next_back().unwrap().value.clone();
    old.along = AlongFrom::FirstCorner;
    let json = serde_json::to_string(&old).unwrap();
    assert!(!json.contains("along\":\"first"), "as it always was written: {json}");
    assert_eq!(serde_json::from_str::<Joists>(&json).unwrap(), old);
    desk.log(old);
    desk.log(Fact::MeasuredFrom(label("north wall")));
    desk.draft.spot = spot(1, "6'");
    let detail = where_said(&desk);
    assert_eq!(detail, "6' 0\" from the line of corner 1", "joist 1 never meets the north wall");
    let floor = Floor::of(desk.job()).unwrap();
    assert_eq!(floor.locate(&spot(1, "6'")), Some(Point::new(Length::inches(-40), Length::feet(6))));
}

#[test]
fn an_end_is_one_of_two_and_inherits_no_distance() {
    let mut desk = ell_over_joists();
    let end = faced(&spot(7, "5'"), Some(Face::FarEnd));
    assert_eq!(end.position, spot(7, "").position, "an end lies at no distance");
    desk.draft.spot = end;
    assert_eq!(where_said(&desk), "at side 3");
    assert_eq!(Whereabouts::of(&desk.draft.spot), [Whereabouts::Height]);
    desk.types("18").unwrap();
    assert!(desk.draft.spot.same_spot(&faced(&spot(8, ""), Some(Face::FarEnd))), "and so along the row");
    let floor = Floor::of(desk.job()).unwrap();
    let place = desk.job().now.places().values().next().unwrap().value;
    assert_eq!(floor.locate(place), Some(Point::new(Length::inches(104), Length::feet(6))));
    let near = faced(&spot(7, "5'"), Some(Face::NearEnd));
    assert_eq!(floor.locate(&near), Some(Point::new(Length::inches(104), Length::ZERO)));
    assert!(!Face::ALL.contains(&Face::End), "nobody is offered an end without a side");
}

#[test]
fn an_end_without_a_side_asks_which_and_old_ones_are_read_again() {
    let mut desk = ell_over_joists();
    let end = Place { face: Some(Face::End), ..spot(7, "5'") };
    desk.draft.spot = end.clone();
    let message = desk.types("18").unwrap_err().message;
    assert_eq!(message, "Joist 7, end: which end? near end, at side 1 or far end, at side 3 is accepted");
    desk.log(Observation::Place(end));
    desk.types("18").unwrap();
    assert_eq!(told(desk.job(), desk.units), ["Joist 7, end: nobody said which end"]);
}

#[test]
fn a_tap_is_at_no_end() {
    let desk = ell_over_joists();
    let end = faced(&spot(3, ""), Some(Face::NearEnd));
    let at = Point::new(Length::inches(40), Length::feet(4));
    let tapped = take::tapped(desk.job(), &end, at, desk.units);
    assert!(tapped.same_spot(&spot(3, "4'")), "{tapped:?}");
}

#[test]
fn joists_lie_under_the_room() {
    let first = |text: &str| {
        let mut desk = ell_over_joists();
        desk.draft = desk.draft.with(Instrument::Tape).measuring(TapeTask::Joists);
        desk.types(text).map(|_| ()).map_err(|refused| refused.message)
    };
    let edge = Length::ZERO - UNDER_A_WALL;
    assert_eq!(first(&desk_text(edge + Length::SIXTY_FOURTH)), Ok(()));
    assert_eq!(first(&desk_text(edge)), Ok(()));
    assert!(first(&desk_text(edge - Length::SIXTY_FOURTH)).is_err());
    let message = first("-5").unwrap_err();
    assert_eq!(message, "Joist 1 from corner 1: \"-5\": outside the room: -4\" to 12' 4\" from corner 1 is accepted");
    assert!(first("90'").unwrap_err().contains("12' 4\""));
}

#[test]
fn joists_end_where_the_room_does() {
    let mut desk = ell_over_joists();
    desk.draft = desk.draft.with(Instrument::Tape).measuring(TapeTask::Joists);
    for text in ["8", "16"] {
        desk.types(text).unwrap();
    }
    // 8 in and 8 times 16 in are 11' 4"; one more lies beyond 12' 4".
    let message = desk.types("10").unwrap_err().message;
    assert_eq!(
        message,
        "Joist count: \"10\": joist 10 would be 12' 8\" from corner 1, outside the room: at this spacing up to 9 joists are accepted"
    );
    desk.types("9").unwrap();
}

#[test]
fn a_center_lies_under_the_room_typed_once_or_again() {
    let mut desk = ell_over_joists();
    desk.draft = desk.draft.with(Instrument::Tape).measuring(TapeTask::JoistCenter);
    for text in ["-5", "90'"] {
        let message = desk.types(text).unwrap_err().message;
        assert!(message.starts_with(&format!("Joist 1 from corner 1: \"{text}\": outside the room")), "{message}");
    }
    desk.types("7 1/2").unwrap();
    let seen = Observation::from(desk.job().now.joist_centers().values().next().unwrap().value.clone());
    let message = take::retyped(desk.job(), &seen, "90'", desk.units).unwrap_err();
    assert!(message.contains("-4\" to 12' 4\""), "{message}");
    assert!(take::retyped(desk.job(), &seen, "8 1/2", desk.units).is_ok());
}

#[test]
fn a_point_lies_in_the_room_and_a_sill_within_a_foot_of_it() {
    let desk = ell_over_joists();
    let on = |element: Element, right: Length, down: Length| {
        let typed = |length: Length| Typed::new(desk_text(length), length);
        let position = Position::OnPlan { right: typed(right), down: typed(down) };
        standing(desk.job(), &Place { element, position, ..spot(1, "") }, desk.units)
    };
    let (joist, sill) = (Element::Joist, Element::Sill);
    let nm = Length::nm(1);
    assert_eq!(on(joist, Length::feet(12), Length::feet(2)), Ok(()));
    let message = on(joist, Length::feet(12) + nm, Length::feet(2)).unwrap_err();
    assert!(message.contains("0\" to 12' 0\" right and 0\" to 10' 0\" down, within the room's walls,"), "{message}");
    assert!(on(joist, Length::feet(10), Length::feet(8)).is_err(), "the jog is no part of the room");
    for (by, stands) in [(OUTSIDE_THE_ROOM - nm, true), (OUTSIDE_THE_ROOM, true), (OUTSIDE_THE_ROOM + nm, false)] {
        assert_eq!(on(sill, Length::feet(12) + by, Length::feet(2)).is_ok(), stands, "{by:?}");
    }
}

#[test]
fn an_opening_stays_within_the_walls() {
    let open = |desk: &mut Desk, texts: [&str; 4]| {
        desk.draft = Draft { corner: 0, ..desk.draft.with(Instrument::Tape).measuring(TapeTask::Opening) };
        let taken: Result<Vec<_>, _> = texts.into_iter().map(|text| desk.types(text)).collect();
        taken.map(|_| ()).map_err(|refused| refused.message)
    };
    let mut desk = ell_over_joists();
    let message = open(&mut desk, ["7'", "2'", "4'", "6'"]).unwrap_err();
    assert_eq!(
        message,
        "Opening size into the room: \"6'\": that reaches beyond the walls: up to 4' 0\" into the room is accepted here"
    );
    assert!(desk.job().now.openings().is_empty());
    // The last answer may be typed again, those before stay.
    desk.types("4'").unwrap();
    assert_eq!(desk.job().now.openings().len(), 1);
}

/// The room of [`ell_over_joists`] as a floor, with openings logged.
fn floor_with(openings: &[[&str; 4]]) -> (Desk, Floor, Outline) {
    let mut desk = ell_over_joists();
    let from = Floor::of(desk.job()).unwrap().sides[0];
    for lengths in openings {
        desk.opening(from, *lengths);
    }
    let floor = Floor::of(desk.job()).unwrap();
    let outline = floor.outline.clone().unwrap();
    (desk, floor, outline)
}

fn rect(from: (i32, i32), to: (i32, i32)) -> Rect {
    let point = |(x, y)| Point::new(Length::inches(x), Length::inches(y));
    Rect::between(point(from), point(to)).unwrap()
}

#[test]
fn an_opening_proposed_stays_in_the_room_and_clear_of_others() {
    // Wet over the jog: 5' 4" to 12 ft across, 3 ft to 9 ft down.
    let wet = rect((64, 36), (144, 108));
    let (_, floor, outline) = floor_with(&[]);
    let proposed = propose(&floor, &outline, wet).unwrap();
    assert!(outline.holds_rect(proposed) && wet.grown(Length::nm(1)).contains(proposed.least()));
    assert_eq!(proposed, rect((64, 36), (144, 72)), "the larger part of it");
    let opening = as_opening(&floor, proposed).unwrap();
    assert_eq!((opening.along.typed.as_str(), opening.width.typed.as_str()), ("64\"", "36\""));

    let (_, floor, outline) = floor_with(&[["6'", "3'", "3'", "2'"]]);
    let proposed = propose(&floor, &outline, wet).unwrap();
    assert!(floor.openings.iter().all(|(_, open)| !open.overlaps(proposed)), "{proposed:?}");
    assert!(outline.holds_rect(proposed));

    let (_, floor, outline) = floor_with(&[["5' 4\"", "3'", "6' 8\"", "3'"], ["5' 4\"", "6'", "2' 8\"", "3'"]]);
    assert_eq!(propose(&floor, &outline, wet), None, "all of it is open already");
}

#[test]
fn an_opening_proposed_is_never_narrower_than_six_inches() {
    let (_, floor, outline) = floor_with(&[]);
    for (width, is_one) in [(5, false), (6, true), (7, true)] {
        let wet = rect((16, 16), (16 + width, 60));
        assert_eq!(propose(&floor, &outline, wet).is_some(), is_one, "{width} in");
    }
}

#[test]
fn what_an_old_log_holds_outside_the_room_is_kept_and_told() {
    let mut desk = ell_over_joists();
    let from = Floor::of(desk.job()).unwrap().sides[0];
    desk.log(Observation::Place(spot(12, "")));
    desk.log(Observation::Place(spot(7, "8'")));
    desk.opening(from, ["7'", "2'", "4'", "6'"]);
    desk.opening(from, ["7'", "2'", "2'", "2'"]);
    let told = told(desk.job(), desk.units);
    assert_eq!(told.len(), 4, "{told:?}");
    assert!(told[0].contains("there are 9 joists") && told[1].contains("6' 0\""), "{told:?}");
    assert!(told[2].starts_with("Opening 1: that reaches beyond the walls"), "{told:?}");
    assert_eq!(told[3], "Openings 1 and 2 overlap");
    assert_eq!(desk.job().now.places().len(), 2);
    assert_eq!(agreement(desk.job()).value().unwrap().outside, told);
}

#[test]
fn a_caliper_is_said_back_as_it_was_read() {
    let mut desk = Desk::new();
    desk.draft = Draft { layer: LayerKind::Panel, ..desk.draft.measuring(TapeTask::Layer) };
    for (text, said) in [("23/32", "23/32\""), ("19/64", "19/64\""), ("3/4", "3/4\""), ("0.7 in", "~11/16\"")] {
        let read_back = desk.types(text).unwrap();
        assert_eq!(read_back.value, said);
        assert!(!read_back.spoken.starts_with("about") || said.starts_with('~'), "{read_back:?}");
    }
    assert_eq!(
        opening_text(&Opening {
            from: Floor::of(ell_over_joists().job()).unwrap().sides[0],
            along: length("0"),
            out: length("0"),
            length: length("4 23/32"),
            width: length("4'")
        }),
        "4 23/32\""
    );
}

fn opening_text(opening: &Opening) -> String {
    Units::default().read(opening.length.value)
}
