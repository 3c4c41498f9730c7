use crate::house::{house, inches};
use crate::phones::{apart, of_house};
use duckboard::engine::figure::{Figure, Need};
use duckboard::engine::particular::list::{COVERING, DATUM, PLANE};
use duckboard::engine::particular::{Part, Takes};
use duckboard::engine::survey::Level;
use duckboard::engine::survey::level_plan::{LevelPlan, level_plan, levels_again};
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

/// A station 16 in from those beside it is believed up to an inch and a twenty-fourth of that: 1 2/3 in.
#[test]
fn a_level_far_off_those_beside_it_is_read_again_before_anything_is_told() {
    let with = |drop: &str, twice: Option<&str>| {
        let mut desk = house();
        for joist in (1..=9).filter(|joist| *joist != 4) {
            desk.reads_level(joist, "5'", "10");
        }
        let place = desk.reads_level(4, "5'", drop);
        twice.into_iter().for_each(|again| {
            desk.log(Level { place, drop: inches(again) });
        });
        (level_plan(desk.job(), Units::default()), levels_again(desk.job(), Units::default()))
    };
    let again = (Figure::Missing(vec![Need::LevelsAgain]), vec!["Joist 4, upper edge, 5' 0\" along".to_owned()]);
    // In mm: 254 and 1 2/3 in of 42.333 mm.
    assert!(with("296.3 mm", None).0.as_known().is_some() && with("211.7 mm", None).0.as_known().is_some());
    assert_eq!(with("296.4 mm", None), again);
    assert_eq!(with("7", None), again);
    // Read again at the same spot: the same, an eighth off, more.
    for twice in ["7", "7 1/8"] {
        assert!(with("7", Some(twice)).0.as_known().is_some(), "{twice}");
    }
    assert_eq!(with("7", Some("7 9/64")), again);
    assert_eq!(with("7", Some("10")).0.value().unwrap().out_of_level, Length::ZERO, "the later reading counts");
}

#[test]
fn of_two_levels_alone_each_is_beside_the_other_and_farther_apart_they_may_differ_by_more() {
    let with = |joists: [u16; 2], drop: &str| {
        let mut desk = house();
        desk.reads_level(joists[0], "5'", "10");
        desk.reads_level(joists[1], "5'", drop);
        levels_again(desk.job(), Units::default()).len()
    };
    assert_eq!([with([1, 2], "11 5/8"), with([1, 2], "11 11/16")], [0, 2]);
    // 8 joists on, 10 ft 8 in: 1 in and 5 1/3 in.
    assert_eq!([with([1, 9], "16 5/16"), with([1, 9], "16 3/8")], [0, 2]);
    // Along one joist, 5 ft: 3 1/2 in.
    let along = |drop: &str| {
        let mut desk = house();
        desk.reads_level(3, "2'", "10");
        desk.reads_level(3, "7'", drop);
        levels_again(desk.job(), Units::default()).len()
    };
    assert_eq!([along("13 1/2"), along("13 33/64")], [0, 2]);
}

#[test]
fn levels_that_come_up_by_more_than_a_foot_are_read_again() {
    let with = |mark: &str| {
        let mut desk = read();
        desk.says(Part::House, &DATUM, mark);
        level_plan(desk.job(), Units::default())
    };
    // The lowest reads 14 3/8.
    assert!(with("2 3/8").as_known().is_some());
    assert_eq!(with("2 23/64"), Figure::Missing(vec![Need::LevelsAgain]));
}

/// A later reading by another phone alone counts; at the same time neither is the last.
#[test]
fn a_spot_that_two_phones_read_differently_is_read_again() {
    for (other, is_again) in [("14 1/4", false), ("14 17/64", true), ("14", false), ("13 63/64", true)] {
        let mut desk = read();
        let place = desk.reads_level(5, "5'", "14 1/8");
        let level = |drop| Level { place, drop: inches(drop) };
        apart(&mut desk, level("14 1/8"), level(other), 0);
        assert_eq!(level_plan(desk.job(), Units::default()).value().is_none(), is_again, "{other}");
        assert_eq!(levels_again(desk.job(), Units::default()).len(), usize::from(is_again), "{other}");
    }
}

#[test]
fn a_plane_of_which_two_phones_say_different_things_is_asked_for() {
    for (item, one, other) in [(&PLANE, "best fit", "high joist"), (&DATUM, "14", "14 1/4")] {
        for (said, is_asked) in [(one, false), (other, true)] {
            let mut desk = read();
            apart(&mut desk, of_house(item, one), of_house(item, said), 0);
            let asked = level_plan(desk.job(), Units::default()) == Figure::Missing(vec![Need::PlaneAgain]);
            assert_eq!(asked, is_asked, "{said}");
        }
    }
}

#[test]
fn joists_come_up_to_the_high_one_unless_somebody_chooses() {
    let mut desk = read();
    assert_eq!(to_plane(&desk), [0.0, 3.0 / 16.0, 0.25, 0.0625]);
    assert_eq!(plan(&desk).out_of_level, inches("1/4").value);
    desk.says(Part::House, &PLANE, "level at a mark");
    desk.says(Part::House, &DATUM, "14 1/4");
    // By hand: less than 14 1/4 stands above. Nobody measured the joists: nothing is planed off.
    assert_eq!(to_plane(&desk), [-0.125, 0.0625, 0.125, -0.0625]);
    assert_eq!((plan(&desk).thickest(), plan(&desk).deepest()), (inches("1/8").value, Length::ZERO));
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
    desk.log(Level { place, drop: inches("10") });
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
    desk.log(Level { drop: inches("14 1/2"), ..level });
    assert_eq!(plan(&desk).stations.len(), 4);
    assert_eq!(plan(&desk).out_of_level, inches("5/16").value);
}

proptest! {
    /// A floor that leans without a bend is flat, and the best plane takes nothing.
    #[test]
    fn a_leaning_plane_takes_no_shim_to_its_best_fit(across in -15..15_i64, along in -15..15_i64) {
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
    fn shims_to_the_high_joist_are_never_less_than_nothing(drops in prop::collection::vec(100..142_i32, 2..6)) {
        let mut desk = house();
        for (joist, drop) in (1..).zip(&drops) {
            desk.reads_level(joist, "3'", &format!("{drop} mm"));
        }
        let off = to_plane(&desk);
        prop_assert!(off.iter().all(|off| *off >= 0.0));
        prop_assert!(off.contains(&0.0));
    }
}
