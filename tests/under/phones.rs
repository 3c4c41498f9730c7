//! Words that two phones say differently of what all joists are judged by.

use crate::desk::{Desk, other_phone, stamp};
use crate::house::{inches, joist, one, sound_house};
use chrono::{DateTime, Duration};
use duckboard::engine::entry::Stamp;
use duckboard::engine::framing::{DamageKind, Fate, Judged};
use duckboard::engine::job::{Observation, Record};
use duckboard::engine::orders::lines;
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part, stated};
use duckboard::engine::place::{Face, JoistNumber};
use duckboard::engine::survey::JoistCenter;
use duckboard::engine::survey::adjust::House;
use duckboard::engine::take::Units;
use duckboard::engine::units::tape::BareUnit;

/// The other phone says the one some minutes after this one says the other. This one counts further.
pub fn apart(desk: &mut Desk, own: impl Into<Observation>, theirs: impl Into<Observation>, minutes: i64) {
    let now = DateTime::parse_from_rfc3339("2026-11-25T09:15:00-06:00").unwrap();
    let mut phone = other_phone();
    phone.stamp_from(Stamp { at: now + Duration::minutes(minutes), ..stamp() });
    desk.book.add(Record::of(phone.record(theirs)).unwrap());
    desk.pen.stamp_from(Stamp { at: now, ..stamp() });
    desk.log(own);
}

pub fn of_house(item: &Item, typed: &str) -> Observation {
    stated(Part::House, item, typed, BareUnit::Inches).unwrap().into()
}

fn says_again(judged: &Judged, what: &str) -> bool {
    judged.unsettled().any(|reason| reason.words.ends_with(&format!("say again {what}")))
}

const WORDS: [(Item, &str, &str); 7] = [
    (SPECIES, "Douglas fir-larch", "Hem-fir"),
    (GRADE, "#2", "#3"),
    (EDITION, "2013 and later", "before 2013"),
    (INCISED, "no", "yes"),
    (LIVE_LOAD, "40", "60"),
    (DEAD_LOAD, "10", "20"),
    (COVERING, "wood, long fasteners", "tile under 15 in"),
];

#[test]
fn no_joist_stays_by_what_two_phones_say_differently_of_all() {
    for (item, own, theirs) in WORDS {
        let fate = |theirs, minutes| {
            let mut desk = sound_house();
            apart(&mut desk, of_house(&item, own), of_house(&item, theirs), minutes);
            let judged = one(&desk, 4);
            (judged.fate == Fate::Stays, says_again(&judged, item.what))
        };
        assert_eq!(fate(theirs, -1), (true, false), "{}: before it both ways", item.what);
        assert_eq!([fate(theirs, 0), fate(theirs, 1)], [(false, true); 2], "{}", item.what);
        assert_eq!(fate(own, 1), (true, false), "{}: they say the same", item.what);
    }
}

/// Said again by one that knows of both it is known.
#[test]
fn what_two_phones_said_differently_of_all_is_known_once_it_is_said_again() {
    let mut desk = sound_house();
    apart(&mut desk, of_house(&GRADE, "#2"), of_house(&GRADE, "#3"), 1);
    assert!(!one(&desk, 4).is_settled());
    let later = DateTime::parse_from_rfc3339("2026-11-25T10:15:00-06:00").unwrap();
    desk.pen.stamp_from(Stamp { at: later, ..stamp() });
    desk.says(Part::House, &GRADE, "#2");
    assert!(one(&desk, 4).is_settled(), "{:?}", one(&desk, 4).reasons);
}

#[test]
fn a_length_that_is_typed_in_feet_or_in_inches_is_the_same() {
    let mut desk = sound_house();
    let span = |typed| stated(joist(4), &CLEAR_SPAN, typed, BareUnit::Inches).unwrap();
    apart(&mut desk, span("10'"), span("120"), 1);
    assert_eq!(one(&desk, 4).fate, Fate::Stays, "{:?}", one(&desk, 4).reasons);
}

/// Joists 4 and 5 are 56 and 72 in from the corner.
#[test]
fn where_two_phones_put_a_joist_differently_no_spacing_is_known() {
    let asks = |joist: u16, theirs: &str| {
        let mut desk = sound_house();
        let of = *desk.job().now.joists().keys().next().unwrap();
        let center =
            |number, at: &str| JoistCenter { of, joist: JoistNumber::new(number).unwrap(), center: inches(at) };
        apart(&mut desk, center(4, "56"), center(joist, theirs), 1);
        says_again(&one(&desk, 4), "joist centers")
    };
    assert!(asks(4, "71") && asks(4, "56 1/16"));
    assert!(!asks(4, "56") && !asks(5, "71"), "of another joist");
}

#[test]
fn no_sister_is_ordered_or_settles_anything_by_a_stamp_that_two_phones_say_differently() {
    for (item, own, theirs) in
        [(SISTER_SPECIES, "Douglas fir-larch", "Hem-fir"), (SISTER_GRADE, "#2", "#3"), (SISTER_DEPTH, "7 1/4", "7")]
    {
        let mut desk = sound_house();
        desk.spot(4, DamageKind::Soft, Some(("30", "40")), Some(Face::LowerEdge), "1/2");
        apart(&mut desk, of_house(&item, own), of_house(&item, theirs), 1);
        let (_, open) = lines(desk.job(), Units::default());
        assert!(open.iter().any(|open| open.contains("No sister is ordered before that")), "{}: {open:?}", item.what);
        desk.says(joist(4), &DONE, "sistered");
        assert!(says_again(&one(&desk, 4), item.what), "{:?}", one(&desk, 4).reasons);
        desk.says(joist(4), &DONE, "replaced");
        assert!(says_again(&one(&desk, 4), item.what), "a new one is cut of the same");
        assert_eq!(one(&desk, 5).fate, Fate::Stays, "no sister is asked for there");
    }
}

#[test]
fn of_corners_that_two_phones_say_both_ways_nothing_is_said() {
    let house = |theirs| {
        let mut desk = sound_house();
        apart(&mut desk, of_house(&CORNERS, "square"), of_house(&CORNERS, theirs), 0);
        House::said_of(desk.job())
    };
    assert_eq!([house("square"), house("out of square")], [House::Square, House::Unsaid]);
}
