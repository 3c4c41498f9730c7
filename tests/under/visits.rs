//! A visit that nobody ended: what is logged more days later than a visit may last is of another.

use crate::desk::Desk;
use crate::house::{house, joist, joist_4_after as after, says, sound_house};
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::framing::supports::unsound;
use duckboard::engine::framing::{DamageKind, Fate};
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part, stated};
use duckboard::engine::place::{Element, Face, JoistNumber, Place, Position};
use duckboard::engine::survey::level_plan;
use duckboard::engine::take::Units;
use duckboard::engine::units::tape::BareUnit;

/// A visit's first entries are of 8:15 on November 25.
const DAYS: [&str; 3] = ["2026-11-28T08:14:59-06:00", "2026-11-28T08:15:00-06:00", "2026-11-28T08:15:01-06:00"];

#[test]
fn a_slip_is_put_right_within_three_days_and_wood_that_is_sound_later_has_not_healed() {
    let twice = |item: &'static Item, words: [&'static str; 2]| {
        DAYS.map(|at| {
            after(|desk| {
                desk.visit("look");
                desk.says(joist(4), &SOFT_FACE, "lower edge");
                desk.says(joist(4), &SOFT_LENGTH, "1'");
                desk.says(joist(4), item, words[0]);
                desk.goes_on(at);
                desk.says(joist(4), item, words[1]);
            })
            .fate
        })
    };
    assert_eq!(twice(&AWL, ["goes in", "stops everywhere"]), [Fate::Stays, Fate::Stays, Fate::Open]);
    assert_eq!(twice(&SOFT_DEPTH, ["3", "0"]), [Fate::Stays, Fate::Stays, Fate::Engineer]);
    let sill = DAYS.map(|at| {
        let mut desk = sound_house();
        desk.visit("look");
        desk.says(Part::Sill, &STATE, "decayed");
        desk.goes_on(at);
        desk.says(Part::Sill, &STATE, "sound");
        unsound(desk.job()).len()
    });
    assert_eq!(sill, [0, 0, 1]);
}

/// What says it as it stands counts, and not only what began it.
#[test]
fn a_word_that_is_put_right_months_later_is_of_no_visit_that_is_over() {
    let corrected = DAYS.map(|at| {
        let mut desk = sound_house();
        desk.visit("look");
        let unreached = desk.says(Part::Sill, &STATE, "cannot reach");
        desk.says(Part::Sill, &STATE, "decayed");
        desk.goes_on(at);
        desk.correct(unreached, stated(Part::Sill, &STATE, "sound", BareUnit::Inches).unwrap());
        unsound(desk.job()).len()
    });
    assert_eq!(corrected, [0, 0, 1]);
}

fn finds_soft(desk: &mut Desk) {
    let position = Position::OnJoist { joist: JoistNumber::new(4).unwrap(), along: Some(crate::desk::length("57")) };
    let place = desk.log(Place { element: Element::Joist, position, face: None, height: None, chalk: None });
    desk.log(Condition { place: Some(place), finding: Finding::Rotten, note: None });
}

fn spot(desk: &mut Desk) {
    desk.spot(4, DamageKind::Soft, Some(("54", "60")), Some(Face::LowerEdge), "1/4");
}

#[test]
fn a_spot_measures_nothing_that_was_found_more_than_three_days_after_it() {
    let by = |first: fn(&mut Desk), then: fn(&mut Desk), words: &str| {
        DAYS.map(|at| {
            let judged = after(|desk| {
                desk.visit("look");
                first(desk);
                desk.goes_on(at);
                then(desk);
            });
            says(&judged, words)
        })
    };
    assert_eq!(by(spot, finds_soft, "found rotten"), [false, false, true]);
    assert_eq!(by(finds_soft, spot, "found rotten"), [false; 3], "a later spot measures it");
    let goes_in: fn(&mut Desk) = |desk| {
        desk.says(joist(4), &AWL, "goes in");
    };
    assert_eq!(by(spot, goes_in, "log where and how deep"), [false, false, true]);
    assert_eq!(by(goes_in, spot, "log where and how deep"), [false; 3]);
}

#[test]
fn levels_of_more_than_three_days_before_the_last_are_left_out() {
    let stations = DAYS.map(|at| {
        let mut desk = house();
        desk.visit("level");
        desk.reads_level(1, "5'", "20");
        desk.goes_on(at);
        desk.reads_level(2, "5'", "20");
        desk.reads_level(3, "5'", "20");
        level_plan(desk.job(), Units::default()).value().unwrap().stations.len()
    });
    assert_eq!(stations, [3, 3, 2]);
}
