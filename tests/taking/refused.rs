//! What is refused, and what that leaves.

use super::*;

/// A draft, what is typed, the field that is named, and what would do.
fn refusals() -> Vec<(Draft, &'static str, &'static str, &'static str)> {
    let draft = Draft { spot: spot(6, "5'"), ..Draft::default() };
    let tape = |task| draft.with(Instrument::Tape).measuring(task);
    let held = |task, held: &[&str]| Draft { held: held.iter().map(|&text| text.to_owned()).collect(), ..tape(task) };
    let air = |task| draft.with(Instrument::Air).reading_air(task);
    let humidity = Draft { held: vec!["62 °F".to_owned()], ..air(AirTask::Crawl) };
    vec![
        (tape(TapeTask::Side), "12 ft x", "Side 7: ", "Type "),
        (tape(TapeTask::Side), "0", "Side 7: ", "more than 0 is accepted"),
        (tape(TapeTask::Side), "-3'", "Side 7: ", "Type "),
        (tape(TapeTask::Side), "9999'", "Side 7: ", "3280'"),
        (tape(TapeTask::Opening), "one", "Opening along the side: ", "Type "),
        (held(TapeTask::Opening, &["1'"]), "2,500", "Opening out from the wall: ", "Type "),
        (held(TapeTask::Opening, &["1'", "2'"]), "0\"", "Opening size along: ", "more than 0"),
        (held(TapeTask::Opening, &["1'", "2'", "3'"]), "4' 13\"", "Opening size into the room: ", "5' 1\""),
        (tape(TapeTask::Joists), "x", "Joist 1 from corner 1: ", "Type "),
        (held(TapeTask::Joists, &["3\""]), "0", "Joist spacing: ", "more than 0"),
        (held(TapeTask::Joists, &["3\"", "16\""]), "201", "Joist count: ", "1 to 200 is accepted"),
        (held(TapeTask::Joists, &["3\"", "16\""]), "9.5", "Joist count: ", "1 to 200 is accepted"),
        (tape(TapeTask::Layer), "0", "Thickness, finished floor: ", "more than 0"),
        (tape(TapeTask::OnHand), "0", "Piece on hand along its strong axis: ", "more than 0"),
        (held(TapeTask::OnHand, &["4'"]), "4 x", "Piece on hand across: ", "Type "),
        (tape(TapeTask::CrawlHeight), "5/4", "Crawl height: ", "1 1/4"),
        (tape(TapeTask::CrawlHeight), "63/64", "Crawl height: ", "1\" to 20' 0\" is accepted"),
        (tape(TapeTask::CrawlHeight), "20' 1/64", "Crawl height: ", "1\" to 20' 0\" is accepted"),
        (tape(TapeTask::Other), "7/15", "Length: ", "7/16"),
        (draft.with(Instrument::Meter), "301", "Moisture at Joist 6, lower edge: ", "300 %"),
        (draft.with(Instrument::Meter), "18..5", "Moisture at Joist 6, lower edge: ", "Type "),
        (air(AirTask::Crawl), "6O", "Crawl air, temperature: ", "Type "),
        (air(AirTask::Crawl), "130.1", "Crawl air, temperature: ", "-40.0 °F to 130.0 °F is accepted"),
        (air(AirTask::Outdoors), "-40.1", "Outdoor air, temperature: ", "-40.0 °F to 130.0 °F is accepted"),
        (humidity.clone(), "101", "Crawl air, humidity: ", "100 %"),
        (humidity.clone(), "4.9", "Crawl air, humidity: ", "5 to 100 % is accepted"),
        (humidity, "0.85", "Crawl air, humidity: ", "5 to 100 % is accepted"),
        (air(AirTask::Wood), "999", "Wood temperature: ", "°F"),
        (draft.with(Instrument::Level), "14 9/8", "Level at Joist 6, upper edge: ", "Type "),
    ]
}

#[test]
fn what_is_refused_names_the_field_the_value_and_what_would_do_and_loses_nothing() {
    for (draft, text, field, would_do) in refusals() {
        let mut desk = ell();
        desk.draft = draft;
        let (next, entries, held) = (desk.next_id(), desk.book.log().len(), desk.draft.held.clone());
        let message = desk.types(text).unwrap_err().message;
        assert!(message.starts_with(field), "{message}");
        assert!(message.contains(text), "{message}");
        assert!(message.contains(would_do), "{message}");
        assert_eq!((desk.draft.text.as_str(), &desk.draft.held), (text, &held), "what was typed stays typed");
        assert_eq!((desk.next_id(), desk.book.log().len()), (next, entries), "and no id is used up");
    }
}

#[test]
fn air_is_accepted_up_to_the_ends_of_its_range() {
    for (text, is_taken) in [("-40", true), ("130", true), ("-40.1", false), ("130.1", false)] {
        let mut desk = ell();
        desk.draft = desk.draft.with(Instrument::Air).reading_air(AirTask::Crawl);
        assert_eq!(desk.types(text).is_ok(), is_taken, "{text}");
    }
}

#[test]
fn a_joist_that_is_not_there_is_refused() {
    let mut desk = ell();
    let room = Floor::of(desk.job()).unwrap().room;
    desk.joists(room, Run::AcrossFirstSide, "3", "16", 7);
    desk.draft = Draft { joist: JoistNumber::new(8).unwrap(), ..desk.draft.measuring(TapeTask::JoistCenter) };
    let message = desk.types("9' 10").unwrap_err().message;
    assert_eq!(message, "Joist 8 from corner 1: there are 7 joists: 1 to 7 is accepted");
    assert_eq!(desk.draft.text, "9' 10", "what was typed stays typed");
}

#[test]
fn a_cut_back_that_is_no_length_is_refused() {
    let mut desk = ell();
    let from = Floor::of(desk.job()).unwrap().sides[0];
    desk.opening(from, ["1'", "1'", "2'", "2'"]);
    desk.draft = desk.draft.measuring(TapeTask::CutBack);
    let message = desk.types("wide").unwrap_err().message;
    assert!(message.starts_with("Opening 1 along the joists: ") && message.contains("wide"), "{message}");
    desk.types("48").unwrap();
    let message = desk.types("0").unwrap_err().message;
    assert_eq!(message, "Opening 1 finished floor: \"0\" is no length: more than 0 is accepted");
}

#[test]
fn nothing_typed_is_refused_by_every_instrument_that_types() {
    for (draft, _, field, _) in refusals() {
        let mut desk = ell();
        desk.draft = draft;
        let message = desk.types("").unwrap_err().message;
        assert!(message.starts_with(field), "{message}");
    }
}

#[test]
fn what_hangs_on_a_room_is_refused_before_its_first_answer_and_not_after_its_last() {
    // Going off to measure the room puts down what is held, so nothing may be held yet.
    let mut desk = Desk::new();
    for (task, field) in [
        (TapeTask::Opening, "Opening along the side: corner 1"),
        (TapeTask::Joists, "Joists: "),
        (TapeTask::JoistCenter, "Joist 1 from corner 1: "),
    ] {
        desk.draft = desk.draft.measuring(task);
        let message = desk.types("3'").unwrap_err().message;
        assert!(message.starts_with(field) && message.contains("measure"), "{message}");
        assert!(desk.draft.held.is_empty());
    }
    let mut desk = ell();
    desk.draft.corner = 6;
    assert!(desk.types("3'").unwrap_err().message.contains("corner 7 is not measured yet"));
}

#[test]
fn an_opening_with_more_held_than_it_asks_for_still_comes_to_an_end() {
    let mut desk = ell();
    desk.draft.held = ["1'", "2'", "3'", "4'"].map(str::to_owned).to_vec();
    desk.types("5'").unwrap();
    assert_eq!(desk.job().now.openings().len(), 1);
    assert!(desk.draft.held.is_empty());
}

/// The driest that a hygrometer shows.
#[test]
fn air_at_5_percent_is_taken() {
    let mut desk = ell();
    let air = desk.draft.with(Instrument::Air).reading_air(AirTask::Crawl);
    desk.draft = Draft { held: vec!["62 °F".to_owned()], ..air };
    assert_eq!(desk.types("5").unwrap().value, "5 %");
}
