//! Wood is planed off a joist's top only where a notch may be as deep.

use crate::desk::Desk;
use crate::house::{house, joist, make_sound, sound_house};
use duckboard::engine::framing::{DamageKind, Planing};
use duckboard::engine::orders::lines;
use duckboard::engine::particular::Part;
use duckboard::engine::particular::list::{AWL, CUTS, DATUM, DEPTH, MEMBER};
use duckboard::engine::place::Face;
use duckboard::engine::survey::level_plan::{Takes, level_plan};
use duckboard::engine::take::Units;
use duckboard::engine::units::Length;

/// Joists 3, 4 and 5 so far along, joist 4 so much higher than the mark that they are brought to.
fn high(mut desk: Desk, along: &str, drop: &str) -> Desk {
    for joist in [3, 5] {
        desk.reads_level(joist, along, "12");
    }
    desk.reads_level(4, along, drop);
    desk.says(Part::House, &DATUM, "12");
    desk
}

fn takes(desk: &Desk) -> Takes {
    let plan = level_plan(desk.job(), Units::default());
    let plan = plan.value().unwrap();
    plan.stations.iter().find(|station| station.joist.unwrap().get() == 4).unwrap().takes
}

fn why_not(desk: &Desk) -> Planing {
    match takes(desk) {
        Takes::StaysAbove(_, why) => why,
        other => panic!("{other:?}"),
    }
}

/// Joists of 7 1/4 in over 10 ft: in an outer third a sixth, 1.208 in; told in sixteenths 1 3/16.
/// The judged place is a third of the depth long, 2.417 in: at an end up to a fourth, 1.81 in.
#[test]
fn no_more_is_planed_off_than_a_notch_there_may_be_deep() {
    let planed = |along, drop| takes(&high(sound_house(), along, drop));
    let longest = Length::from_inches(7.25 / 3.0);
    let off = |sixty_fourths| Takes::Planing { off: Length::sixty_fourths(sixty_fourths), no_longer: longest };
    assert_eq!(planed("2'", "11"), off(64));
    assert_eq!(planed("2'", "10 13/16"), off(76));
    for drop in ["10 51/64", "10 3/4"] {
        let Takes::StaysAbove(_, Planing::TooDeep(most)) = planed("2'", drop) else { panic!("{drop}") };
        assert_eq!(most, Length::from_inches(7.25 / 6.0));
    }
    assert_eq!(planed("1", "10 3/8"), off(104), "at an end");
}

/// Its middle third is from 40 to 80 in; half of a notch as long as one may be reaches 1.208 in.
#[test]
fn none_is_planed_off_in_the_middle_third() {
    let why = |along| match takes(&high(sound_house(), along, "11 15/16")) {
        Takes::StaysAbove(_, why) => Some(why),
        _ => None,
    };
    for along in ["38 51/64", "5'", "81 13/64"] {
        assert_eq!(why(along), Some(Planing::MiddleThird), "{along}");
    }
    for along in ["38 50/64", "81 14/64"] {
        assert_eq!(why(along), None, "{along}");
    }
}

#[test]
fn nothing_is_planed_off_a_joist_of_which_anything_is_not_known() {
    assert!(matches!(why_not(&high(house(), "2'", "11 7/8")), Planing::NotKnown(_)));
    let mut desk = house();
    make_sound(&mut desk, 9);
    assert!(matches!(takes(&high(desk, "2'", "11 7/8")), Takes::Planing { .. }));
    let said = |item, words| {
        let mut desk = sound_house();
        desk.says(joist(4), item, words);
        why_not(&high(desk, "2'", "11 7/8"))
    };
    assert!(matches!(said(&CUTS, "cannot see"), Planing::NotKnown(_)));
    assert!(matches!(said(&AWL, "cannot reach"), Planing::NotKnown(_)));
    assert_eq!(said(&AWL, "goes in"), Planing::NotWhole);
    assert_eq!(said(&MEMBER, "I-joist"), Planing::NotSawn);
    let mut desk = sound_house();
    desk.says(joist(4), &DEPTH, "5 1/2");
    assert!(matches!(why_not(&high(desk, "2'", "11 1/64")), Planing::TooDeep(_)), "by its own depth");
}

#[test]
fn nothing_is_planed_off_a_joist_that_is_cut_or_soft() {
    for kind in [DamageKind::Notch, DamageKind::Soft, DamageKind::Hole] {
        let mut desk = sound_house();
        desk.spot(4, kind, Some(("8'", "8' 1")), Some(Face::UpperEdge), "1/4");
        assert_eq!(why_not(&high(desk, "2'", "11 7/8")), Planing::NotWhole, "{kind:?}");
    }
}

#[test]
fn no_shims_are_ordered_to_a_plane_that_is_not_reached() {
    let of = |drop| {
        let mut desk = high(sound_house(), "5'", drop);
        desk.reads_level(6, "5'", "12 1/4");
        let (lines, open) = lines(desk.job(), Units::default());
        let has = |what: &str| lines.iter().any(|line| line.needed.name.contains(what));
        (has("shims"), open.iter().any(|it| it.starts_with("Shims: above the plane")))
    };
    assert_eq!([of("12"), of("11 15/16")], [(true, false), (false, true)]);
}
