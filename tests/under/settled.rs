//! What was done settles what it ends, and only what was known by then.

use crate::desk::{Desk, other_phone, stamp};
use crate::house::{house, house_over, inches, joist, make_sound, sound_house};
use chrono::{DateTime, Duration};
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::entry::Stamp;
use duckboard::engine::framing::member::Done;
use duckboard::engine::framing::supports::unsound;
use duckboard::engine::framing::{Damage, DamageKind, Depth, Fate, Judged, schedule};
use duckboard::engine::job::Record;
use duckboard::engine::moisture::Material;
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part, stated};
use duckboard::engine::place::{Element, Face, JoistNumber, Place, Position};
use duckboard::engine::survey::Joists;
use duckboard::engine::take::Units;
use duckboard::engine::units::tape::BareUnit;
use proptest::prelude::*;

const LOWER: Option<Face> = Some(Face::LowerEdge);
const DONE_WORDS: [&str; 5] = ["not yet", "ends mended", "sistered", "replaced", "as the engineer says"];

fn one(desk: &Desk) -> Judged {
    schedule(desk.job(), Units::default()).value().unwrap()[3].clone()
}

/// Is joist 4 settled by each thing that can be done?
fn by(fault: impl Fn(&mut Desk)) -> [bool; 5] {
    DONE_WORDS.map(|done| {
        settled(|desk| {
            fault(desk);
            desk.does(joist(4), done);
        })
    })
}

fn settled(change: impl Fn(&mut Desk)) -> bool {
    let mut desk = sound_house();
    change(&mut desk);
    one(&desk).is_settled()
}

fn finds(desk: &mut Desk, finding: Finding, along: Option<&str>) {
    let position = Position::OnJoist { joist: JoistNumber::new(4).unwrap(), along: along.map(inches) };
    let place = desk.log(Place { element: Element::Joist, position, face: None, height: None, chalk: None });
    desk.log(Condition { place: Some(place), finding, note: None });
}

fn short_bearing(desk: &mut Desk) {
    desk.says(joist(4), &BEARING, "1");
}

fn soft(desk: &mut Desk) {
    desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), LOWER, "1/2");
}

/// The entry's id is of no use.
fn entered<T>(_: T) {}

const NONE: [bool; 5] = [false; 5];
const ENDS: [bool; 5] = [false, true, false, false, true];
const SISTER: [bool; 5] = [false, false, true, true, true];
const NEW: [bool; 5] = [false, false, false, true, true];
const NEW_ALONE: [bool; 5] = [false, false, false, true, false];
const ENGINEER: [bool; 5] = [false, false, false, false, true];

#[test]
fn how_ends_bear_and_are_held_is_ended_by_mending_them() {
    assert_eq!(by(short_bearing), ENDS, "a new joist lies on the same support");
    assert_eq!(by(|desk| entered(desk.says(joist(4), &ENDS_HELD, "nothing"))), ENDS);
    assert_eq!(by(|desk| entered(desk.says(joist(4), &OVER_GIRDER, "butts, not tied"))), ENDS);
    let unmeasured = |desk: &mut Desk| entered(desk.says(joist(4), &OVER_GIRDER, "laps the next"));
    assert_eq!(by(unmeasured), ENGINEER, "measure the lap");
}

#[test]
fn what_a_section_lost_is_ended_by_a_sister_or_a_new_joist() {
    assert_eq!(by(soft), SISTER);
    assert_eq!(by(|desk| entered(desk.spot(4, DamageKind::Notch, Some(("50", "51")), LOWER, "1/2"))), SISTER);
    assert_eq!(by(|desk| entered(desk.spot(4, DamageKind::Soft, Some(("0", "1'")), Some(Face::End), "1/2"))), NEW);
    assert_eq!(by(|desk| finds(desk, Finding::Cracked, None)), ENGINEER);
}

/// Half the span or more would be "replace it": a sister that needs sound wood ends nothing.
#[test]
fn where_a_measurement_is_missing_only_what_the_worse_case_asks_for_ends_it() {
    assert_eq!(by(|desk| entered(desk.spot(4, DamageKind::Soft, None, LOWER, "1/2"))), NEW);
    assert_eq!(by(|desk| finds(desk, Finding::Rotten, Some("4'"))), NEW);
    assert_eq!(by(|desk| finds(desk, Finding::Soft, Some("4'"))), NEW);
}

#[test]
fn what_nobody_can_see_is_ended_by_a_new_joist_alone() {
    assert_eq!(by(|desk| entered(desk.says(joist(4), &CUTS, "cannot see"))), NEW_ALONE);
    assert_eq!(by(|desk| entered(desk.says(joist(4), &AWL, "cannot reach"))), NEW_ALONE);
    assert_eq!(
        by(|desk| entered(desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), LOWER, "cannot reach"))),
        NEW_ALONE
    );
    assert_eq!(by(|desk| entered(desk.reads_moisture(4, 25, Material::Solid))), NEW_ALONE, "wet");
    assert_eq!(by(|desk| finds(desk, Finding::Insects, None)), NEW_ALONE);
}

#[test]
fn of_a_joist_that_was_never_measured_nobody_knows_that_a_new_one_of_that_size_does() {
    let without = |what: &'static str| {
        move |desk: &mut Desk| {
            let all = desk.job().now.particulars();
            let said: Vec<_> = all.iter().filter(|(_, it)| it.value.what.as_str() == what).map(|(id, _)| *id).collect();
            said.into_iter().for_each(|id| entered(desk.withdraw(id)));
        }
    };
    let unsaid = ["member", "clear span", "bearing", "bears on", "ends held", "over the girder"];
    assert_eq!(unsaid.map(|what| by(without(what))), [ENGINEER; 6]);
    // A new one is cut of what sisters are cut of.
    assert_eq!(["breadth", "depth"].map(|what| by(without(what))), [NEW; 2]);
    // Whether it was cut or is soft a new joist tells.
    assert_eq!(by(without("cuts")), NEW_ALONE);
}

/// 2 × 8 Douglas fir-larch #2 at 16 in spans 12 ft 9 in (IRC R502.3.1(2) \[P2\]).
#[test]
fn a_new_joist_of_a_size_that_spans_too_far_ends_nothing() {
    let too_far = |desk: &mut Desk| entered(desk.says(joist(4), &CLEAR_SPAN, "14'"));
    assert_eq!(by(too_far), [false, false, true, false, true]);
    let by_its_notch = |desk: &mut Desk| {
        desk.says(joist(4), &CLEAR_SPAN, "12'");
        desk.spot(4, DamageKind::Notch, Some(("70", "71")), LOWER, "1");
    };
    assert_eq!(by(by_its_notch), SISTER, "whole, it does");
}

#[test]
fn a_sister_of_which_nobody_said_how_deep_it_is_ends_nothing() {
    let mut desk = house();
    make_sound(&mut desk, 9);
    desk.reads_moisture(4, 12, Material::Solid);
    let all = desk.job().now.particulars();
    let sisters: Vec<_> =
        all.iter().filter(|(_, it)| it.value.what.as_str() == "sister depth").map(|(id, _)| *id).collect();
    sisters.into_iter().for_each(|id| entered(desk.withdraw(id)));
    soft(&mut desk);
    desk.says(joist(4), &DONE, "sistered");
    assert!(!one(&desk).is_settled());
    desk.says(Part::House, &SISTER_DEPTH, "7 1/4");
    assert!(one(&desk).is_settled());
}

/// By hand, in inches: 1 1/2 × 5 1/2 of 1,600,000 psi sags to its limit over 116.89 at 16 oc, over
/// 113.93 if it is a sixteenth less both ways; 1 1/2 of bearing and 1/4 of the tape are in that.
#[test]
fn a_sister_less_deep_than_a_soft_joist_carries_the_span_by_itself_or_ends_nothing() {
    let sistered = |clear: &'static str, is_soft: bool| {
        settled(|desk| {
            desk.says(Part::House, &SISTER_DEPTH, "5 1/2");
            desk.says(joist(4), &CLEAR_SPAN, clear);
            if is_soft {
                soft(desk);
            }
            desk.says(joist(4), &DONE, "sistered");
        })
    };
    assert_eq!([sistered("9' 4 1/8", true), sistered("9' 4 1/4", true)], [true, false]);
    assert!(sistered("13'", false), "beside a sound joist both were counted");
}

/// The same of one as deep, of weaker wood: 2 × 8 Spruce-pine-fir #3 at 16 in spans 9 ft 2 in
/// or less (see `spans.rs`), and the joist's 10 ft are more.
#[test]
fn a_sister_of_weaker_wood_beside_a_soft_joist_ends_nothing_where_it_does_not_carry_alone() {
    let sistered = |grade: &'static str| {
        settled(|desk| {
            soft(desk);
            desk.says(Part::House, &SISTER_SPECIES, "Spruce-pine-fir");
            desk.says(Part::House, &SISTER_GRADE, grade);
            desk.says(joist(4), &DONE, "sistered");
        })
    };
    assert_eq!(["#2", "#3", "unknown"].map(sistered), [true, false, false]);
}

/// A new joist is its own wood: what was measured of the old one says nothing of it.
#[test]
fn a_new_joist_is_judged_by_its_own_size_stamp_and_bearing() {
    let replaced = |then: &[(Part, &Item, &'static str)]| {
        settled(|desk| {
            soft(desk);
            desk.says(joist(4), &DONE, "replaced");
            desk.says(joist(4), &CUTS, "none");
            then.iter().for_each(|(part, item, typed)| entered(desk.says(part.clone(), item, typed)));
        })
    };
    let bears = (joist(4), &BEARING, "1 1/2");
    assert!(!replaced(&[]), "how much of it bears nobody said");
    assert!(replaced(std::slice::from_ref(&bears)), "cut of what sisters are cut of");
    assert!(!replaced(&[(joist(4), &BEARING, "1 7/16")]));
    let also = |part: Part, item, typed| replaced(&[bears.clone(), (part, item, typed)]);
    assert!(!also(joist(4), &DEPTH, "5 1/2") && also(joist(4), &DEPTH, "9 1/4"));
    assert!(!also(Part::House, &SISTER_GRADE, "unknown") && !also(Part::House, &SISTER_GRADE, "#3"));
    assert!(!also(Part::House, &SISTER_DEPTH, "5 1/2"), "as thin as sisters are now said to be");
}

/// Every reason asks for its own: one remedy hides nothing else.
#[test]
fn a_joist_is_settled_when_each_reason_is() {
    let reach = |desk: &mut Desk| {
        desk.says(joist(4), &AWL, "cannot reach");
        short_bearing(desk);
    };
    assert_eq!(by(reach), NONE);
    let both = |order: [&'static str; 2]| {
        settled(|desk| {
            soft(desk);
            short_bearing(desk);
            order.into_iter().for_each(|done| desk.does(joist(4), done));
        })
    };
    assert!(both(["sistered", "ends mended"]) && both(["ends mended", "sistered"]), "of several things each counts");
    assert!(!both(["sistered", "sistered"]) && !both(["sistered", "not yet"]));
    assert!(!both(["not yet", "ends mended"]));
    let mut desk = sound_house();
    soft(&mut desk);
    short_bearing(&mut desk);
    desk.says(joist(4), &DONE, "sistered");
    let left: Vec<_> = one(&desk).unsettled().map(|reason| reason.ended_by).collect();
    assert_eq!(left, [[Done::EndsMended, Done::AsTheEngineerSays]]);
}

/// Each thing that a reason rests on, said after what was done.
#[test]
fn what_was_done_before_something_was_said_settles_nothing_of_it() {
    let after = |done: &'static str, change: fn(&mut Desk)| {
        let first = settled(|desk| {
            change(desk);
            desk.does(joist(4), done);
        });
        let since = settled(|desk| {
            desk.does(joist(4), done);
            change(desk);
        });
        (first, since)
    };
    type Change = fn(&mut Desk);
    let changes: [(&'static str, Change); 11] = [
        ("ends mended", short_bearing),
        ("ends mended", |desk| entered(desk.says(joist(4), &ENDS_HELD, "nothing"))),
        ("ends mended", |desk| entered(desk.says(joist(4), &OVER_GIRDER, "butts, not tied"))),
        ("sistered", soft),
        ("sistered", |desk| entered(desk.says(joist(4), &CLEAR_SPAN, "14'"))),
        ("as the engineer says", |desk| entered(desk.says(joist(4), &CLEAR_SPAN, "20'"))),
        ("as the engineer says", |desk| entered(desk.says(joist(4), &MEMBER, "truss"))),
        ("as the engineer says", |desk| entered(desk.says(Part::House, &LIVE_LOAD, "150"))),
        ("as the engineer says", |desk| entered(desk.says(Part::House, &GRADE, "unknown"))),
        ("as the engineer says", |desk| finds(desk, Finding::Cracked, None)),
        ("replaced", |desk| entered(desk.says(joist(4), &AWL, "cannot reach"))),
    ];
    for (at, (done, change)) in changes.into_iter().enumerate() {
        assert_eq!(after(done, change), (true, false), "{at}: {done}");
    }
}

/// What was measured again and does is no reason at all.
#[test]
fn a_support_that_was_measured_again_needs_no_mending() {
    assert!(settled(|desk| {
        short_bearing(desk);
        desk.says(joist(4), &BEARING, "1 1/2");
    }));
}

#[test]
fn answers_do_not_follow_numbers_to_other_joists() {
    let relaid = |desk: &mut Desk| {
        soft(desk);
        desk.says(joist(4), &DONE, "sistered");
        let laid = desk.job().now.joists().values().next().unwrap().value.clone();
        desk.log(Joists { first: inches("10"), ..laid });
    };
    assert!(!settled(relaid));
}

/// An entry's count says nothing between two phones that did not know of each other.
#[test]
fn later_means_later_by_the_entry_and_by_the_clock() {
    let settled = |minutes: i64, ahead: usize| {
        let mut desk = sound_house();
        let mut phone = other_phone();
        // An hour after the house was measured.
        let now = DateTime::parse_from_rfc3339("2026-11-25T09:15:00-06:00").unwrap();
        let found = Damage {
            from: Some(inches("2'")),
            to: Some(inches("3'")),
            face: LOWER,
            depth: Some(Depth::Is(inches("1/2"))),
            ..Damage::new(joist(4), DamageKind::Soft)
        };
        // The other phone has seen little, and counts from there.
        (0..ahead).for_each(|_| entered(phone.record(found.clone())));
        phone.stamp_from(Stamp { at: now + Duration::minutes(minutes), ..stamp() });
        desk.book.add(Record::of(phone.record(found)).unwrap());
        desk.pen.stamp_from(Stamp { at: now, ..stamp() });
        let done = desk.pen.record(stated(joist(4), &DONE, "sistered", BareUnit::Inches).unwrap());
        desk.book.add(Record::of(done).unwrap());
        one(&desk).is_settled()
    };
    assert!(settled(-1, 0), "before it both ways");
    assert!(!settled(0, 0) && !settled(1, 0), "no earlier by the clock, though with a lesser count");
    assert!(!settled(-1, 500), "with a greater count, though earlier by the clock");
}

/// The greater count would win, and nobody knows that it is right.
#[test]
fn a_joist_of_which_two_phones_say_different_things_is_not_known() {
    let fate = |theirs: &str, minutes: i64| {
        let mut desk = sound_house();
        let mut phone = other_phone();
        let now = DateTime::parse_from_rfc3339("2026-11-25T09:15:00-06:00").unwrap();
        phone.stamp_from(Stamp { at: now + Duration::minutes(minutes), ..stamp() });
        let span = phone.record(stated(joist(4), &CLEAR_SPAN, theirs, BareUnit::Inches).unwrap());
        desk.book.add(Record::of(span).unwrap());
        desk.pen.stamp_from(Stamp { at: now, ..stamp() });
        desk.says(joist(4), &CLEAR_SPAN, "10'");
        let judged = one(&desk);
        (judged.fate, judged.reasons.iter().any(|reason| reason.words.ends_with("say again its clear span")))
    };
    assert_eq!(fate("15'", -1), (Fate::Stays, false), "before it both ways");
    assert_eq!(fate("15'", 0), (Fate::Open, true));
    assert_eq!(fate("15'", 1), (Fate::Open, true));
    assert_eq!(fate("10'", 1), (Fate::Stays, false), "they say the same");
}

/// A phone's clock may be put right between two entries.
#[test]
fn on_one_phone_later_is_what_it_logged_later() {
    let mut desk = sound_house();
    let at = |text: &str| DateTime::parse_from_rfc3339(text).unwrap();
    desk.pen.stamp_from(Stamp { at: at("2027-01-01T00:00:00Z"), ..stamp() });
    soft(&mut desk);
    desk.pen.stamp_from(Stamp { at: at("2026-12-01T00:00:00Z"), ..stamp() });
    desk.says(joist(4), &DONE, "sistered");
    assert!(one(&desk).is_settled());
}

/// The same of what carries the joists.
#[test]
fn a_support_is_seen_to_when_that_was_said_later_both_ways() {
    let open = |minutes: i64, done: &[&str]| {
        let mut desk = sound_house();
        let mut phone = other_phone();
        let now = DateTime::parse_from_rfc3339("2026-11-25T09:15:00-06:00").unwrap();
        phone.stamp_from(Stamp { at: now + Duration::minutes(minutes), ..stamp() });
        let found = phone.record(stated(Part::Sill, &STATE, "decayed", BareUnit::Inches).unwrap());
        desk.book.add(Record::of(found).unwrap());
        desk.pen.stamp_from(Stamp { at: now, ..stamp() });
        done.iter().for_each(|done| entered(desk.says(Part::Sill, &DONE, done)));
        unsound(desk.job()).len()
    };
    assert_eq!([open(-1, &["replaced"]), open(0, &["replaced"]), open(1, &["replaced"])], [0, 1, 1]);
    assert_eq!([open(-1, &["sistered", "replaced", "ends mended"]), open(-1, &["replaced", "not yet"])], [0, 1]);
}

/// What can be said of a joist, each with words that speak for it and against it.
const FACTS: [(Item, [&str; 3]); 13] = [
    (MEMBER, ["sawn lumber", "I-joist", "truss"]),
    (SPAN_ALLOWED, ["its maker's table", "nobody yet", "a designer"]),
    (BREADTH, ["1 1/2", "1", "3 1/2"]),
    (DEPTH, ["7 1/4", "5 1/2", "9 1/4"]),
    (CLEAR_SPAN, ["10'", "12' 8", "20'"]),
    (BEARING, ["3 1/2", "1", "2"]),
    (BEARS_ON, ["wood or metal", "masonry", "hanger"]),
    (ENDS_HELD, ["rim joist", "nothing", "blocking"]),
    (OVER_GIRDER, ["does not reach one", "butts, not tied", "laps the next"]),
    (LAP_OF_JOISTS, ["3", "2", "6"]),
    (CUTS, ["all logged", "cannot see", "none"]),
    (AWL, ["stops everywhere", "cannot reach", "goes in"]),
    (SOFT_FACE, ["lower edge", "near side", "end"]),
];

/// Joist 4 by all facts but `out`, the first words of each but for `bad`: is it settled by each
/// thing that can be done, and can it stay?
fn judged_without(out: Option<usize>, bad: &[(usize, usize)], soft: bool) -> (bool, [bool; 5]) {
    let mut desk = house_over(4);
    desk.says(Part::House, &SPECIES, "Douglas fir-larch");
    desk.says(Part::House, &GRADE, "#2");
    desk.says(Part::House, &SISTER_BREADTH, "1 1/2");
    desk.says(Part::House, &SISTER_DEPTH, "7 1/4");
    desk.reads_moisture(4, 12, Material::Solid);
    for (at, (item, words)) in FACTS.into_iter().enumerate().filter(|(at, _)| Some(*at) != out) {
        let which = bad.iter().find(|(which, _)| *which == at).map_or(0, |(_, word)| *word);
        desk.says(joist(4), &item, words[which]);
    }
    if soft {
        desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), LOWER, "1/2");
    }
    let stays = one(&desk).fate == Fate::Stays;
    let by = DONE_WORDS.map(|done| {
        desk.says(joist(4), &DONE, "not yet");
        desk.does(joist(4), done);
        one(&desk).is_settled()
    });
    (stays, by)
}

/// The same with and without one of the facts.
fn is_never_kinder(bad: &[(usize, usize)], out: std::ops::Range<usize>, soft: bool) {
    let (stays, all) = judged_without(None, bad, soft);
    for out in out {
        let (still_stays, less) = judged_without(Some(out), bad, soft);
        let kinder = all.iter().zip(less).any(|(all, less)| less && !all);
        assert!(!kinder && (stays || !still_stays), "{bad:?} without {}: {all:?}, {less:?}", FACTS[out].0.what);
    }
}

/// Leaving out what was said of a joist never makes it settled, whatever was done.
#[test]
fn less_said_is_never_kinder() {
    for bad in (0..FACTS.len()).flat_map(|at| [(at, 1), (at, 2)]) {
        is_never_kinder(&[bad], 0..FACTS.len(), false);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn less_said_of_several_things_is_never_kinder(
        bad in prop::array::uniform2((0..FACTS.len(), 1..3_usize)),
        out in 0..FACTS.len(),
        soft in any::<bool>(),
    ) {
        is_never_kinder(&bad, out..out + 1, soft);
    }
}
