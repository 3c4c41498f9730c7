use crate::house::{house, inches};
use duckboard::engine::figure::{Figure, Need};
use duckboard::engine::ground::plan::{AirWay, checks, cover_for, unvented_for, vents_for};
use duckboard::engine::ground::rain::{led_away, rain};
use duckboard::engine::job::Fact;
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part, Takes};
use duckboard::engine::take::Units;
use duckboard::engine::units::Length;

fn units() -> Units {
    Units::default()
}

/// 24 × 30 ft, 10 ft rolls, laps and turn-up of 6 in: 3 strips of 31 ft, 62 ft of tape,
/// 108 ft of seal (computed).
#[test]
fn a_cover_takes_strips_tape_and_seal() {
    let mut desk = house();
    desk.says(Part::House, &GROUND_LENGTH, "30'");
    desk.says(Part::House, &GROUND_WIDTH, "24'");
    let known = cover_for(desk.job(), units());
    let cover = *known.value().unwrap();
    assert_eq!((cover.strips, cover.strip, cover.rolls), (3, Length::feet(31), 1));
    assert_eq!((cover.tape, cover.seal), (Length::feet(62), Length::feet(108)));
    // Four piers of 16 in square (common practice, no source).
    desk.says(Part::House, &PIERS, "4");
    assert_eq!(cover_for(desk.job(), units()).value().unwrap().seal, Length::feet(108) + Length::inches(256));
    desk.says(Part::House, &LAP, "12 in, radon rule");
    desk.says(Part::House, &ROLL_WIDTH, "9'");
    assert_eq!(cover_for(desk.job(), units()).value().unwrap().strips, 3);
}

#[test]
fn one_way_of_the_ground_alone_and_a_roll_that_is_too_short_are_asked_for() {
    let mut desk = house();
    desk.says(Part::House, &GROUND_LENGTH, "60'");
    assert_eq!(cover_for(desk.job(), units()), Figure::Missing(vec![Need::Ground]));
    desk.says(Part::House, &GROUND_WIDTH, "24'");
    desk.says(Part::House, &ROLL_LENGTH, "50'");
    assert_eq!(cover_for(desk.job(), units()), Figure::Missing(vec![Need::Roll]));
}

/// 250 sq ft: 240 sq in of net free area at 1/150, 5 vents of 50 sq in; 24 sq in at
/// 1/1500, and with one at each corner 4 (computed from R408 as quoted \[P2\]).
#[test]
fn vents_go_by_ratio_label_and_corners() {
    let mut desk = house();
    desk.says(Part::House, &GROUND_LENGTH, "25'");
    desk.says(Part::House, &GROUND_WIDTH, "10'");
    assert_eq!(vents_for(desk.job()), Figure::Missing(vec![Need::VentLabel]));
    desk.says(Part::House, &VENT_AREA, "50");
    let count = |desk: &crate::desk::Desk| vents_for(desk.job()).value().unwrap().with_corners;
    assert_eq!(count(&desk), 5);
    desk.says(Part::House, &VENT_RATIO, "1/1500 over a cover");
    assert_eq!(count(&desk), 4);
    assert!(vents_for(desk.job()).as_known().unwrap().doubts[1].contains("not said to be covered"));
    desk.says(Part::House, &VENT_CORNERS, "no");
    assert_eq!(count(&desk), 1);
}

/// 250 sq ft, 2 ft high: 5 cfm, 0.60 changes an hour (computed from R408.3 as quoted \[P2\]).
#[test]
fn a_space_without_vents_wants_air_by_its_area() {
    let mut desk = house();
    desk.says(Part::House, &GROUND_LENGTH, "25'");
    desk.says(Part::House, &GROUND_WIDTH, "10'");
    desk.says(Part::House, &AIR_WAY, "exhaust fan");
    assert_eq!(unvented_for(desk.job()), Figure::Missing(vec![Need::CrawlHeight]));
    desk.log(Fact::CrawlHeight(inches("24")));
    let air = *unvented_for(desk.job()).value().unwrap();
    assert!((air.cfm - 5.0).abs() < 1e-9 && (air.changes_an_hour - 0.6).abs() < 1e-9, "{air:?}");
}

/// 18 in under joists, 12 in under girders, 8 in under sills (R317.1, 2018 \[P\]).
#[test]
fn wood_too_near_to_soil_is_named() {
    let mut desk = house();
    assert!(checks(desk.job(), units()).iter().all(|check| check.holds.is_none()));
    desk.log(Fact::CrawlHeight(inches("17 15/16")));
    desk.says(Part::House, &GIRDER_CLEARANCE, "12");
    desk.says(Part::House, &SILL_CLEARANCE, "7");
    desk.says(Part::House, &ACCESS_WIDTH, "24");
    desk.says(Part::House, &ACCESS_LENGTH, "18");
    let holds: Vec<_> = checks(desk.job(), units()).into_iter().map(|check| check.holds).collect();
    assert_eq!(holds, [Some(false), Some(true), None, Some(false), Some(true)]);
}

/// 1,000 sq ft, 6/12, 6.8 in an hour: 7,480 sq ft at an inch an hour, a 6 in K-style gutter
/// (a contractor's page \[P2\]); 623 gallons an inch (144 of 231 cubic inches); 6.23 sq in
/// of downspout, two of 6 sq in (a public page \[P2\]).
#[test]
fn a_roofs_water_sizes_its_gutter_and_downspouts() {
    let mut desk = house();
    assert_eq!(rain(desk.job(), units()), Figure::Missing(vec![Need::RoofArea, Need::Rain, Need::Downspout]));
    for (item, typed) in [(ROOF_AREA, "1000"), (RAIN, "6.8"), (DOWNSPOUT, "6")] {
        desk.says(Part::House, &item, typed);
    }
    desk.says(Part::House, &PITCH, "6 to 8/12");
    let known = rain(desk.job(), units());
    let water = known.value().unwrap();
    assert!((water.runoff.at_an_inch.to_square_feet() - 7480.0).abs() < 0.01);
    assert!((water.runoff.gallons_an_inch - 623.4).abs() < 0.1);
    assert_eq!((water.gutter, water.takes, water.runoff.downspouts), (Some("6 in K-style"), true, 2));
    desk.says(Part::House, &GUTTER, "5 in K-style");
    assert!(!rain(desk.job(), units()).value().unwrap().takes);
    desk.says(Part::House, &GUTTER_TAKES, "8000");
    assert!(rain(desk.job(), units()).value().unwrap().takes, "by the gutter's own table");
    desk.says(Part::House, &DISCHARGE, "5'");
    desk.says(Part::House, &FALL, "5 7/8");
    let holds: Vec<_> = led_away(desk.job(), units()).into_iter().map(|check| check.holds).collect();
    assert_eq!(holds, [Some(true), Some(false)]);
}

/// Every word of a choice makes a difference: none is offered that nothing understands.
#[test]
fn every_word_of_a_choice_is_understood() {
    let each = |item: &Item, came_of: &dyn Fn(&crate::desk::Desk) -> String| {
        let Takes::OneOf(words) = item.takes else { panic!("{item:?}") };
        let mut seen: Vec<_> = words
            .iter()
            .map(|word| {
                let mut desk = house();
                for (item, typed) in [(ROOF_AREA, "1000"), (RAIN, "3"), (DOWNSPOUT, "6"), (VENT_AREA, "50")] {
                    desk.says(Part::House, &item, typed);
                }
                desk.says(Part::House, item, word);
                came_of(&desk)
            })
            .collect();
        seen.sort_unstable();
        seen.dedup();
        assert_eq!(seen.len(), words.len(), "{}", item.what);
    };
    let water = |desk: &crate::desk::Desk| format!("{:?}", rain(desk.job(), units()).value().unwrap());
    each(&PITCH, &water);
    each(&GUTTER, &water);
    each(&AIR_WAY, &|desk| format!("{:?}", AirWay::of(desk.job())));
    each(&VENT_RATIO, &|desk| format!("{:?}", vents_for(desk.job()).value().unwrap()));
    each(&LAP, &|desk| format!("{:?}", cover_for(desk.job(), units())));
    each(&ACCESS, &|desk| format!("{:?}", checks(desk.job(), units())));
}
