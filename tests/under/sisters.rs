//! Sisters: along which span one lies, how surely it does, and by which stamp it is judged.

use crate::desk::Desk;
use crate::house::{joist, make_sound, one, says};
use duckboard::engine::framing::done::SISTERS_BEYOND;
use duckboard::engine::framing::schedule::asks_for_sisters_beyond;
use duckboard::engine::framing::{DamageKind, Fate, schedule};
use duckboard::engine::geometry::Turn;
use duckboard::engine::moisture::{Answer, Material};
use duckboard::engine::orders::lines;
use duckboard::engine::origin::Check;
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part};
use duckboard::engine::place::Face;
use duckboard::engine::survey::Run;
use duckboard::engine::take::Units;

/// A room 24 ft long; joists 2 x 8 of DFL #2 at 16 in go through over a girder, and may span
/// 12' 9" (IRC R502.3.1(2), a public test file \[P2\]). With a sister of the same they carry farther.
pub fn through(clear: &str, next: &str) -> Desk {
    let mut desk = Desk::new();
    let (room, sides) = desk.room(&["12'", "24'", "12'", "24'"].map(|length| (length, Turn::Right)));
    desk.opening(sides[0], ["32", "24", "4'", "4'"]);
    desk.joists(room, Run::AcrossFirstSide, "8", "16", 9);
    make_sound(&mut desk, 9);
    for number in 1..=9 {
        desk.reads_moisture(number, 12, Material::Solid);
    }
    for (item, typed) in [(OVER_GIRDER, "goes through"), (CLEAR_SPAN, "8'"), (NEXT_SPAN, "12'")] {
        desk.says(Part::Joists, &item, typed);
    }
    desk.says(joist(4), &CLEAR_SPAN, clear);
    desk.says(joist(4), &NEXT_SPAN, next);
    desk
}

/// What is ordered for joist 4, and what is left open of it.
fn ordered(desk: &Desk) -> Vec<String> {
    let (lines, open) = lines(desk.job(), Units::default());
    let from = lines.into_iter().flat_map(|line| line.needed.from);
    let mut all: Vec<_> = from.chain(open).filter(|words| words.to_lowercase().contains("joist 4")).collect();
    all.sort();
    all.dedup();
    all
}

fn screws(desk: &Desk) -> String {
    let (lines, _) = lines(desk.job(), Units::default());
    lines.into_iter().find(|line| line.needed.name == "Structural screws").unwrap().quantity()
}

fn answers(desk: &mut Desk, answer: Answer) {
    desk.log(Check { of: crate::desk::label(SISTERS_BEYOND), answer });
}

fn is_asked(desk: &Desk) -> bool {
    asks_for_sisters_beyond(&schedule(desk.job(), Units::default()))
}

#[test]
fn a_sister_lies_along_the_span_that_fails() {
    let beyond = through("8'", "14' 6");
    assert_eq!(one(&beyond, 4).fate, Fate::Sister);
    assert!(says(&one(&beyond, 4), "spans 14' 7 1/2\" past the girder"), "{:?}", one(&beyond, 4).reasons);
    assert_eq!(
        ordered(&beyond),
        [
            "Joist 4 goes through over the girder: its sister is counted along its span past the girder alone.",
            "joist 4: sister, 14' 9\", from bearing to bearing, past the girder",
        ]
    );
    let first = through("14' 6", "8'");
    assert!(says(&one(&first, 4), "spans 14' 7 1/2\"; by its wood"), "{:?}", one(&first, 4).reasons);
    assert_eq!(
        ordered(&first),
        [
            "Joist 4 goes through over the girder: its sister is counted along the first span alone.",
            "joist 4: sister, 14' 9\", from bearing to bearing",
        ]
    );
    assert_eq!(screws(&beyond), screws(&first), "as many for the one as for the other");
    let both = through("13' 6", "14' 6");
    assert_eq!(
        ordered(&both),
        [
            "Joist 4 goes through over the girder: a sister is counted along each span.",
            "joist 4: sister, 13' 9\", from bearing to bearing",
            "joist 4: sister, 14' 9\", from bearing to bearing, past the girder",
        ]
    );
}

#[test]
fn sistered_along_one_span_settles_nothing_of_the_other() {
    let mut desk = through("8'", "14' 6");
    assert!(is_asked(&desk) && !is_asked(&through("14' 6", "8'")));
    answers(&mut desk, Answer::Yes);
    desk.says(joist(4), &DONE, "sistered");
    assert!(!one(&desk, 4).is_settled(), "answered before there was one");
    answers(&mut desk, Answer::Yes);
    assert!(one(&desk, 4).is_settled(), "{:?}", one(&desk, 4).reasons);
    answers(&mut desk, Answer::No);
    assert!(!one(&desk, 4).is_settled() && is_asked(&desk));
    answers(&mut desk, Answer::Yes);
    desk.says(joist(4), &NEXT_SPAN, "14' 7");
    assert!(!one(&desk, 4).is_settled(), "measured anew");

    let mut both = through("13' 6", "14' 6");
    both.says(joist(4), &DONE, "sistered");
    let left: Vec<_> = one(&both, 4).unsettled().map(|reason| reason.words.clone()).collect();
    assert!(left.len() == 1 && left[0].contains("past the girder"), "{left:?}");
    assert_eq!(ordered(&both).len(), 2, "one along the first span is in: {:?}", ordered(&both));
    answers(&mut both, Answer::Yes);
    assert!(one(&both, 4).is_settled());

    let mut first = through("14' 6", "8'");
    answers(&mut first, Answer::Yes);
    assert!(!one(&first, 4).is_settled(), "nobody sistered it");
    first.says(joist(4), &DONE, "sistered");
    assert!(one(&first, 4).is_settled());
}

#[test]
fn a_soft_spot_on_the_first_span_asks_for_a_sister_there_too() {
    let mut desk = through("8'", "14' 6");
    desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), Some(Face::LowerEdge), "1/2");
    desk.says(Part::House, &SISTER_SPECIES, "Douglas fir-larch");
    desk.says(Part::House, &SISTER_GRADE, "SS");
    assert_eq!(one(&desk, 4).wants_sisters_along().len(), 2, "{:?}", one(&desk, 4).reasons);
}

#[test]
fn a_less_deep_sister_past_the_girder_is_counted_there_alone() {
    let mut desk = through("8'", "13'");
    desk.says(Part::House, &SISTER_DEPTH, "7");
    assert_eq!(one(&desk, 4).fate, Fate::Sister);
    assert_eq!(one(&desk, 4).wants_sisters_along().len(), 1, "{:?}", one(&desk, 4).reasons);
    desk.says(joist(4), &DONE, "sistered");
    answers(&mut desk, Answer::Yes);
    assert!(one(&desk, 4).is_settled(), "{:?}", one(&desk, 4).reasons);
}

/// A joist of 154.1 in by sag (12' 9" by bending, as printed) and a sister of the same sag as far as
/// one of twice the stiffness: the cube root of 2 times that, 194.1 in, worked out by hand; clear
/// 192.6. A sixteenth less of each breadth and depth takes 2.3 in a hundred of that, and a tape 1/4 in
/// of the span: 188.0 is left.
#[test]
fn a_sister_is_held_to_what_a_tape_can_tell_as_its_joist_is() {
    let at = |clear: &str| {
        let mut desk = through(clear, "8'");
        let asked = one(&desk, 4);
        desk.says(joist(4), &DONE, "sistered");
        (asked.fate, says(&asked, "closer than a tape can tell"), one(&desk, 4).is_settled())
    };
    for clear in ["13' 6", "187 3/4", "188"] {
        assert_eq!(at(clear), (Fate::Sister, false, true), "{clear}");
    }
    for clear in ["188 1/4", "192", "192 1/2"] {
        assert_eq!(at(clear), (Fate::Open, true, false), "{clear}");
    }
    assert_eq!(at("192 3/4"), (Fate::Engineer, false, false));
    let at_the_limit = |change: fn(&mut Desk)| {
        let mut desk = through("192 1/2", "8'");
        change(&mut desk);
        one(&desk, 4)
    };
    let stronger = at_the_limit(|desk| {
        desk.says(Part::House, &SISTER_GRADE, "SS");
    });
    assert_eq!(stronger.fate, Fate::Sister, "{:?}", stronger.reasons);
    let shorter = at_the_limit(|desk| {
        desk.says(joist(4), &CLEAR_SPAN, "188");
    });
    assert_eq!(shorter.fate, Fate::Sister, "measured again: {:?}", shorter.reasons);
    let engineer = at_the_limit(|desk| {
        desk.says(joist(4), &DONE, "as the engineer says");
    });
    assert!(engineer.is_settled());
}

/// By bending a sister alone spans 153.3 in, 148.8 if it is a sixteenth less both ways; less 1 1/2 of
/// bearing and 1/4 of the tape, 147.0.
#[test]
fn a_sister_that_may_have_to_carry_alone_is_held_to_the_same() {
    let carries = |clear| {
        let mut desk = through(clear, "8'");
        desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), Some(Face::LowerEdge), "1/4");
        !says(&one(&desk, 4), "does not carry alone")
    };
    assert_eq!(["146 3/4", "147", "147 1/4"].map(carries), [true, true, false]);
}

/// DFL #2 or SS beside a joist of 15' 6" does, SPF #3 does not.
#[test]
fn a_sister_is_no_stronger_than_it_was_said_to_be_when_it_was_put_in() {
    const STRONG: [&str; 2] = ["Douglas fir-larch", "SS"];
    const WEAK: [&str; 2] = ["Spruce-pine-fir", "#3"];
    let stamped = |desk: &mut Desk, [species, grade]: [&str; 2]| {
        desk.says(Part::House, &SISTER_SPECIES, species);
        desk.says(Part::House, &SISTER_GRADE, grade);
    };
    let sistered = |stamp| {
        let mut desk = through("15' 6", "8'");
        stamped(&mut desk, stamp);
        desk.says(joist(4), &DONE, "sistered");
        desk
    };
    let mut desk = sistered(WEAK);
    assert_eq!(one(&desk, 4).asks_for(), Fate::Engineer);
    stamped(&mut desk, STRONG);
    assert!(!one(&desk, 4).is_settled());
    desk.says(joist(4), &DONE, "sistered");
    let again = one(&desk, 4);
    assert!(!again.is_settled() && says(&again, "sisters were said to be otherwise when it was put in"), "{again:?}");
    assert_eq!(again.asks_for(), Fate::Engineer);
    // Another one took its place.
    desk.says(joist(4), &DONE, "not yet");
    assert_eq!(one(&desk, 4).asks_for(), Fate::Sister);
    desk.says(joist(4), &DONE, "sistered");
    assert!(one(&desk, 4).is_settled(), "{:?}", one(&desk, 4).reasons);
    // Whatever was said of it first, it is no stronger than it is said to be now.
    stamped(&mut desk, WEAK);
    desk.says(joist(4), &DONE, "sistered");
    assert!(!one(&desk, 4).is_settled());
    stamped(&mut desk, STRONG);
    desk.says(joist(4), &DONE, "sistered");
    assert!(one(&desk, 4).is_settled(), "said to be what it was said to be: {:?}", one(&desk, 4).reasons);
}

/// A stamp of another batch is looked at once, and settles where both do.
#[test]
fn a_stamp_that_is_said_anew_for_others_is_asked_about_once() {
    let mut desk = through("15' 6", "8'");
    desk.says(joist(4), &DONE, "sistered");
    assert!(one(&desk, 4).is_settled());
    desk.says(Part::House, &SISTER_GRADE, "SS");
    assert!(!one(&desk, 4).is_settled());
    desk.says(joist(4), &DONE, "sistered");
    assert!(one(&desk, 4).is_settled(), "{:?}", one(&desk, 4).reasons);
}

/// The stamp that is said later may be another board's.
#[test]
fn a_stamp_that_nobody_could_read_stays_unread_until_it_is_said_of_that_sister() {
    let mut desk = through("15' 6", "8'");
    desk.says(Part::House, &SISTER_GRADE, "unknown");
    desk.says(joist(4), &DONE, "sistered");
    desk.says(Part::House, &SISTER_GRADE, "SS");
    desk.says(joist(4), &DONE, "sistered");
    let again = one(&desk, 4);
    assert!(!again.is_settled() && says(&again, "if it is as they are said to be now, say \"not yet\""), "{again:?}");
    desk.says(joist(4), &DONE, "not yet");
    desk.says(joist(4), &DONE, "sistered");
    assert!(one(&desk, 4).is_settled(), "{:?}", one(&desk, 4).reasons);
}

/// It is asked for by name where a sister stands there already.
#[test]
fn a_sister_that_was_put_in_before_its_stamp_was_said_has_its_stamp_read() {
    let mut desk = through("15' 6", "8'");
    let asks = |desk: &Desk| says(&one(desk, 4), "One was put in before that was said: read its stamp");
    assert!(!asks(&desk));
    desk.says(joist(4), &DONE, "sistered");
    assert!(!asks(&desk));
    desk.says(Part::House, &SISTER_GRADE, "#1");
    assert!(asks(&desk) && !one(&desk, 4).is_settled());
}

/// Clear 12' is too far for #3. What was beside the old joist went with it.
#[test]
fn a_new_joist_in_the_place_of_a_sistered_one_is_of_its_own_batch() {
    let mut desk = through("12'", "8'");
    desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), Some(Face::LowerEdge), "1/2");
    desk.says(joist(4), &DONE, "sistered");
    desk.says(Part::House, &SISTER_GRADE, "#3");
    desk.does(joist(4), "replaced");
    desk.says(joist(4), &OVER_GIRDER, "goes through");
    assert!(!one(&desk, 4).is_settled(), "#3 does not span that far");
    desk.says(Part::House, &SISTER_GRADE, "SS");
    assert!(!one(&desk, 4).is_settled(), "{:?}", one(&desk, 4).reasons);
}

/// 5 1/2 deep it does not span 12'; 7 1/4 deep it does.
#[test]
fn a_new_joist_keeps_the_size_that_it_was_put_in_with() {
    let mut desk = through("12'", "8'");
    desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), Some(Face::LowerEdge), "1/2");
    desk.says(Part::House, &SISTER_DEPTH, "5 1/2");
    desk.does(joist(4), "replaced");
    desk.says(joist(4), &OVER_GIRDER, "goes through");
    assert!(!one(&desk, 4).is_settled());
    desk.says(Part::House, &SISTER_DEPTH, "7 1/4");
    assert!(!one(&desk, 4).is_settled(), "{:?}", one(&desk, 4).reasons);
    desk.says(joist(4), &DEPTH, "7 1/4");
    desk.says(joist(4), &DONE, "not yet");
    desk.does(joist(4), "replaced");
    desk.says(joist(4), &OVER_GIRDER, "goes through");
    assert!(one(&desk, 4).is_settled(), "measured itself: {:?}", one(&desk, 4).reasons);
}

/// The limit is 12' 9" here: each span by itself is within what a tape can be off.
#[test]
fn two_spans_that_are_too_close_to_tell_want_a_sister_each() {
    for spans in [("12' 7", "12' 7"), ("12' 6 1/2", "12' 7"), ("12' 7", "12' 6 1/2")] {
        let mut desk = through(spans.0, spans.1);
        assert!(says(&one(&desk, 4), "closer than a tape can tell"), "{spans:?}");
        desk.says(joist(4), &DONE, "sistered");
        assert!(!one(&desk, 4).is_settled(), "{spans:?}");
        desk.log(Check { of: crate::desk::label(SISTERS_BEYOND), answer: Answer::Yes });
        assert!(one(&desk, 4).is_settled(), "{spans:?}: {:?}", one(&desk, 4).reasons);
    }
}

/// He did not see what was asked for only after he wrote.
#[test]
fn an_engineers_word_answers_nothing_that_is_asked_only_later() {
    let mut desk = crate::house::sound_house();
    desk.says(joist(4), &DONE, "as the engineer says");
    assert!(one(&desk, 4).is_settled());
    desk.says(joist(4), &OVER_GIRDER, "goes through");
    let judged = one(&desk, 4);
    assert!(!judged.is_settled() && says(&judged, "its next clear span"), "{:?}", judged.reasons);
    desk.says(joist(4), &DONE, "as the engineer says");
    assert!(one(&desk, 4).is_settled());
}

#[test]
fn a_new_joist_is_no_stronger_than_it_was_said_to_be_when_it_was_put_in() {
    let mut desk = through("12'", "8'");
    desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), Some(Face::LowerEdge), "1/2");
    desk.says(Part::House, &SISTER_GRADE, "#3");
    let replaced = |desk: &mut Desk| {
        desk.does(joist(4), "replaced");
        desk.says(joist(4), &OVER_GIRDER, "goes through");
    };
    replaced(&mut desk);
    assert!(!one(&desk, 4).is_settled(), "#3 does not span that far");
    desk.says(Part::House, &SISTER_GRADE, "#2");
    replaced(&mut desk);
    assert!(!one(&desk, 4).is_settled(), "it is the one that was put in");
    desk.says(joist(4), &DONE, "not yet");
    replaced(&mut desk);
    assert!(one(&desk, 4).is_settled(), "{:?}", one(&desk, 4).reasons);
}

/// Soft in the first span of 10': a sister there carries that by itself, and not the 14' 6" past the
/// girder, along which another lies.
#[test]
fn a_sister_is_asked_to_carry_alone_what_the_joist_may_leave_along_its_own_span() {
    let asks = |from: &str, to: &str| {
        let mut desk = through("10'", "14' 6");
        desk.spot(4, DamageKind::Soft, Some((from, to)), Some(Face::LowerEdge), "1/2");
        says(&one(&desk, 4), "it does not carry alone what a soft joist may leave to it")
    };
    assert!(!asks("3'", "4'") && asks("15'", "16'"));
    // Within 6 in of the girder, at 10', it counts as rot where the joist bears, and no sister does.
    assert!(!asks("9'", "9' 5 15/16") && asks("10' 6 1/16", "11'"));
}

/// All that was said of sisters was said anew: none of it holds of what is in.
#[test]
fn of_a_new_joist_everything_stands_as_it_was_said_when_it_was_put_in() {
    let put_in = |then: &[(&Item, &str)]| {
        let mut desk = through("12'", "8'");
        desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), Some(Face::LowerEdge), "1/2");
        for (item, typed) in then {
            desk.says(Part::House, item, typed);
        }
        for again in [false, true] {
            desk.does(joist(4), "replaced");
            desk.says(joist(4), &OVER_GIRDER, "goes through");
            let now = [
                (&SISTER_BREADTH, "1 1/2"),
                (&SISTER_DEPTH, "7 1/4"),
                (&SISTER_SPECIES, "Douglas fir-larch"),
                (&SISTER_GRADE, "#2"),
                (&SISTER_INCISED, "no"),
            ];
            for (item, typed) in now.iter().filter(|_| !again) {
                desk.says(Part::House, item, typed);
            }
        }
        one(&desk, 4)
    };
    let others = [
        (&SISTER_BREADTH, "1 5/8"),
        (&SISTER_DEPTH, "7 1/8"),
        (&SISTER_SPECIES, "Hem-fir"),
        (&SISTER_GRADE, "#3"),
        (&SISTER_INCISED, "yes"),
    ];
    let as_now = put_in(&[]);
    assert!(as_now.is_settled(), "{:?}", as_now.reasons);
    let otherwise = put_in(&others);
    assert!(!otherwise.is_settled() && says(&otherwise, "sisters were said to be otherwise when it was put in"));
}

#[test]
fn a_new_joist_that_was_said_to_be_incised_when_it_was_put_in_is() {
    let is_settled = |clear: &str, all: &[&str]| {
        let mut desk = through(clear, "8'");
        for said in all {
            desk.says(Part::House, &SISTER_INCISED, said);
            desk.does(joist(4), "replaced");
            desk.says(joist(4), &OVER_GIRDER, "goes through");
        }
        one(&desk, 4).is_settled()
    };
    let hangs_on_it = |clear: &String| is_settled(clear, &["no"]) && !is_settled(clear, &["yes"]);
    let clear = (120..170).map(|inches| inches.to_string()).find(hangs_on_it).unwrap();
    assert!(!is_settled(&clear, &["yes", "no"]) && is_settled(&clear, &["no", "no"]), "{clear}");
}
