use crate::house::{house, inches};
use duckboard::engine::figure::{Figure, Need};
use duckboard::engine::particular::list::{COVERING, DATUM, PLANE};
use duckboard::engine::particular::{Part, Takes};
use duckboard::engine::survey::level_plan::{LevelPlan, level_plan};
use duckboard::engine::take::Units;
use duckboard::engine::units::Length;
use proptest::prelude::*;

use crate::desk::Desk;

fn plan(desk: &Desk) -> LevelPlan {
    level_plan(desk.job(), Units::default()).value().unwrap().clone()
}

fn to_plane(desk: &Desk) -> Vec<f64> {
    plan(desk).stations.iter().map(|station| station.to_plane.to_inches()).collect()
}

fn read() -> Desk {
    let mut desk = house();
    for (joist, drop) in [(2, "14 1/8"), (4, "14 5/16"), (6, "14 3/8"), (8, "14 3/16")] {
        desk.reads_level(joist, "5'", drop);
    }
    desk
}

#[test]
fn one_reading_is_not_enough() {
    let mut desk = house();
    desk.reads_level(2, "5'", "14");
    assert_eq!(level_plan(desk.job(), Units::default()), Figure::Missing(vec![Need::Levels]));
}

/// The highest reads 14 1/8: nothing is shimmed by feet.
#[test]
fn levels_farther_off_than_joists_of_one_floor_are_read_again() {
    let with = |drop: &str| {
        let mut desk = read();
        desk.reads_level(7, "5'", drop);
        level_plan(desk.job(), Units::default())
    };
    assert!(with("26 1/8").as_known().is_some());
    for drop in ["26 9/64", "99"] {
        assert_eq!(with(drop), Figure::Missing(vec![Need::LevelsAgain]), "{drop}");
    }
}

#[test]
fn joists_come_up_to_the_high_one_unless_somebody_chooses() {
    let mut desk = read();
    assert_eq!(to_plane(&desk), [0.0, 3.0 / 16.0, 0.25, 0.0625]);
    assert_eq!(plan(&desk).out_of_level, inches("1/4").value);
    desk.says(Part::House, &PLANE, "level at a mark");
    desk.says(Part::House, &DATUM, "14 1/4");
    // By hand: less than 14 1/4 is planed off.
    assert_eq!(to_plane(&desk), [-0.125, 0.0625, 0.125, -0.0625]);
    assert_eq!((plan(&desk).thickest(), plan(&desk).deepest()), (inches("1/8").value, inches("1/8").value));
    desk.says(Part::House, &PLANE, "best fit");
    let sum: f64 = to_plane(&desk).iter().sum();
    assert!(sum.abs() < 1e-6, "what is off the best line adds up to nothing: {sum}");
}

#[test]
fn every_covering_that_is_offered_has_its_tolerances() {
    let Takes::OneOf(coverings) = COVERING.takes else { panic!() };
    for covering in coverings {
        let mut desk = read();
        desk.says(Part::House, &COVERING, covering);
        let flat = plan(&desk).flatness;
        assert!(flat.len() == 2 && flat.iter().all(|tolerance| tolerance.covering == *covering), "{covering}");
    }
}

#[test]
fn what_is_no_joists_top_or_of_an_earlier_visit_is_left_out() {
    let mut desk = read();
    let position = duckboard::engine::place::Position::Named;
    let element = duckboard::engine::place::Element::SubfloorAbove;
    let place = duckboard::engine::place::Place { element, position, face: None, height: None, chalk: None };
    let place = desk.log(place);
    desk.log(duckboard::engine::survey::Level { place, drop: inches("10") });
    assert_eq!(plan(&desk).out_of_level, inches("1/4").value);
    desk.visit("again");
    desk.reads_level(1, "5'", "20");
    desk.reads_level(3, "5'", "20 1/8");
    assert_eq!((plan(&desk).stations.len(), plan(&desk).out_of_level), (2, inches("1/8").value));
}

#[test]
fn a_best_fit_of_stations_that_are_nowhere_asks_for_joists() {
    let mut desk = Desk::new();
    for (joist, drop) in [(1, "14"), (2, "14 1/4")] {
        desk.reads_level(joist, "5'", drop);
    }
    assert_eq!(to_plane(&desk), [0.0, 0.25]);
    desk.says(Part::House, &PLANE, "best fit");
    assert_eq!(level_plan(desk.job(), Units::default()), Figure::Missing(vec![Need::Joists]));
}

#[test]
fn a_later_reading_of_a_place_counts_alone() {
    let mut desk = read();
    let level = desk.job().now.levels().values().next().unwrap().value.clone();
    desk.log(duckboard::engine::survey::Level { drop: inches("14 1/2"), ..level });
    assert_eq!(plan(&desk).stations.len(), 4);
    assert_eq!(plan(&desk).out_of_level, inches("5/16").value);
}

/// A wood floor on long fasteners: 1/4 in in 10 ft, 3/16 in in 6 ft (NWFA, as quoted
/// in a trade magazine \[P\]).
#[test]
fn flatness_is_held_to_the_coverings_tolerance() {
    let mut desk = read();
    desk.reads_level(5, "5'", "14 5/8");
    desk.says(Part::House, &COVERING, "wood, long fasteners");
    let flat = plan(&desk).flatness;
    assert_eq!(flat.len(), 2);
    // From joist 4 to 6: the middle of 14 5/16 and 14 3/8 is 14 11/32, and 9/32 lower is 5.
    assert_eq!((flat[0].holds(), flat[1].holds()), (Some(false), Some(false)), "{flat:?}");
    assert!(flat[1].gap.unwrap() >= inches("9/32").value);
    desk.says(Part::House, &COVERING, "tile under 15 in");
    assert_eq!(plan(&desk).flatness[1].holds(), None, "no three joists stand within a foot");
}

proptest! {
    /// A floor that leans without a bend is flat, and the best plane takes nothing.
    #[test]
    fn a_leaning_plane_takes_no_shim_to_its_best_fit(across in -40..40_i64, along in -40..40_i64) {
        let mut desk = house();
        // Joists stand 16 in apart from 8 in on: in steps of 4 in drops stay exact.
        for (joist, at) in [(1, 0), (4, 0), (8, 0), (1, 96), (5, 96), (8, 48)] {
            let x = i64::from(8 + 16 * (joist - 1));
            let drop = Length::inches(30) + Length::sixty_fourths(1) * (across * x / 8 + along * at / 8);
            let typed = format!("{} mm", drop.to_mm());
            desk.reads_level(u16::try_from(joist).unwrap(), &format!("{at}"), &typed);
        }
        desk.says(Part::House, &PLANE, "best fit");
        for off in to_plane(&desk) {
            prop_assert!(off.abs() < 1e-6, "{off}");
        }
    }

    /// Nothing is planed to come up to the high joist, and something of the best fit is.
    #[test]
    fn shims_to_the_high_joist_are_never_less_than_nothing(drops in prop::collection::vec(100..200_i32, 2..6)) {
        let mut desk = house();
        for (joist, drop) in (1..).zip(&drops) {
            desk.reads_level(joist, "3'", &format!("{drop} mm"));
        }
        let off = to_plane(&desk);
        prop_assert!(off.iter().all(|off| *off >= 0.0));
        prop_assert!(off.contains(&0.0));
    }
}
