//! What a joist carries by itself and with a sister, and what ends it where that is too little.

use crate::house::{house, joist, joist_4_after as after, make_sound, one, says, sound_house};
use crate::sisters::through;
use duckboard::engine::framing::{DamageKind, Done, Fate, Judged, schedule};
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part};
use duckboard::engine::place::Face;
use duckboard::engine::sources::Source;
use duckboard::engine::take::Units;

/// Joist 4 of a sound house with a span, and its stamp.
fn spanning(clear: &str, grade: &str) -> Judged {
    after(|desk| {
        desk.says(Part::House, &GRADE, grade);
        desk.says(joist(4), &CLEAR_SPAN, clear);
    })
}

/// By hand, in inches: a whole #3 bends at 117.1 and a #2 at 153.3; 108 and 144 with 1 1/2 for the bearings
/// are asked.
#[test]
fn a_joist_without_a_grade_is_ended_by_a_new_one_only_where_the_weakest_whole_one_does() {
    let ends = |clear| {
        let judged = spanning(clear, "unknown");
        let graded = judged.reasons.iter().find(|it| it.words.contains("find its stamp")).unwrap();
        graded.ended_by.contains(&Done::Replaced)
    };
    // By its notch it spans too little, and whole it would do.
    let notched = after(|desk| {
        desk.says(Part::House, &GRADE, "unknown");
        desk.says(joist(4), &CLEAR_SPAN, "9'");
        desk.spot(4, DamageKind::Notch, Some(("50", "53")), Some(Face::LowerEdge), "2");
    });
    let by_its_wood = |judged: &Judged| {
        let spans = judged.reasons.iter().find(|it| it.words.contains("by its wood it may span"));
        spans.map(|it| it.ended_by.contains(&Done::Replaced))
    };
    assert!(!ends("12'"), "a new one of the same size does no better for all that is known");
    assert_eq!(by_its_wood(&notched), Some(true), "{:?}", notched.reasons);
}

/// Two spans of one joist ask for one stamp.
#[test]
fn what_both_spans_come_to_alike_is_said_once() {
    let mut desk = through("12'", "11' 6");
    desk.says(Part::House, &GRADE, "unknown");
    let judged = one(&desk, 4);
    let spans = judged.reasons.iter().filter(|it| it.words.contains("by its wood it may span")).count();
    assert_eq!((spans, says(&judged, "find its stamp")), (1, true), "{:?}", judged.reasons);
}

/// Lumber thicker than 2 1/2 in is no joist's, and has other values.
#[test]
fn a_sister_too_thick_for_a_joists_values_is_an_engineers() {
    let beside = |breadth: &str| {
        after(|desk| {
            desk.says(joist(4), &CLEAR_SPAN, "13'");
            desk.says(Part::House, &SISTER_BREADTH, breadth);
        })
        .fate
    };
    assert_eq!(["1 1/2", "2 1/2", "2 9/16"].map(beside), [Fate::Sister, Fate::Sister, Fate::Engineer]);
}

/// Nothing hangs on the room's walls where they take no more floor to a joist.
#[test]
fn a_wall_that_is_measured_anew_reopens_no_joist_in_the_middle_of_the_floor() {
    let mut desk = sound_house();
    desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), Some(Face::LowerEdge), "1/2");
    desk.says(joist(4), &DONE, "sistered");
    assert!(one(&desk, 4).is_settled());
    let (side, value) = desk.job().now.sides().first().map(|(id, side)| (*id, side.value.clone())).unwrap();
    desk.correct(side, value);
    assert!(one(&desk, 4).is_settled(), "{:?}", one(&desk, 4).reasons);
}

#[test]
fn every_source_of_a_schedule_is_named_once_and_what_joists_bear_on_is_asked_about() {
    let of = |said: &[(&Item, &str)]| {
        let mut desk = house();
        make_sound(&mut desk, 9);
        for (item, typed) in said {
            let part = if [SPECIES.what, GRADE.what].contains(&item.what) { Part::House } else { Part::Joists };
            desk.says(part, item, typed);
        }
        let figure = schedule(desk.job(), Units::default());
        let known = figure.as_known().unwrap().clone();
        let doubts = ["Joists on a ribbon", "Joists into a girder's side"];
        (known.why.sources, doubts.map(|doubt| known.doubts.iter().any(|it| it.contains(doubt))))
    };
    let recalled = [(&SPECIES, "Spruce-pine-fir"), (&GRADE, "SS")];
    let (sources, neither) = of(&recalled);
    assert_eq!(sources.iter().filter(|it| **it == Source::DesignValuesRecalled).count(), 1);
    assert_eq!(neither, [false; 2]);
    let (sources, _) = of(&[]);
    assert_eq!(sources.iter().filter(|it| **it == Source::DesignValues).count(), 1);
    assert_eq!(of(&[(&BEARS_ON, "1x4 ribbon, nailed to studs")]).1, [true, false]);
    assert_eq!(of(&[(&BEARS_ON, "hanger")]).1, [false, true]);
}
