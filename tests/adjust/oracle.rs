//! The engine against a dense solver of somebody else's: `tests/oracles/adjust`.

use duckboard::engine::geometry::Turn;
use duckboard::engine::survey::adjust::{House, Network, Observation, adjust};
use duckboard::engine::units::{Angle, Length};
use serde_json::Value;

fn number(value: &Value, key: &str) -> f64 {
    value[key].as_f64().unwrap()
}

fn corner(value: &Value, key: &str) -> usize {
    value[key].as_u64().unwrap() as usize
}

fn observation(value: &Value) -> Observation {
    let length = |key| Length::nm(value[key].as_i64().unwrap());
    let angle = |key| Angle::micro_degrees(value[key].as_i64().unwrap());
    let (is, sigma) = ("is", "sigma");
    match value["kind"].as_str().unwrap() {
        "distance" => Observation::Distance {
            from: corner(value, "from"),
            to: corner(value, "to"),
            is: length(is),
            sigma: length(sigma),
        },
        "built" => Observation::Built { at: corner(value, "at"), is: angle(is) },
        "angle" => Observation::Angle { at: corner(value, "at"), is: angle(is), sigma: angle(sigma) },
        "offset" => {
            let (of, from, to) = (corner(value, "of"), corner(value, "from"), corner(value, "to"));
            Observation::Offset { of, from, to, is: length(is), sigma: length(sigma) }
        }
        "along" => {
            let (of, from, to) = (corner(value, "of"), corner(value, "from"), corner(value, "to"));
            Observation::Along { of, from, to, is: length(is), sigma: length(sigma) }
        }
        other => panic!("{other}"),
    }
}

#[test]
fn outlines_areas_and_their_deviations_are_as_another_solver_says() {
    let fixture: Value = serde_json::from_str(include_str!("../fixtures/adjust.json")).unwrap();
    let rooms = fixture["rooms"].as_array().unwrap();
    assert!(rooms.len() >= 20);
    for room in rooms {
        let turns = room["turns"].as_array().unwrap();
        let turns = turns.iter().map(|turn| if turn == "right" { Turn::Right } else { Turn::Left }.quarter()).collect();
        let observations = room["observations"].as_array().unwrap().iter().map(observation).collect();
        let adjusted = adjust(&Network { turns, observations, house: House::Unsaid }).unwrap();
        for (found, expected) in adjusted.corners.iter().zip(room["corners"].as_array().unwrap()) {
            let (x, y) = (expected[0].as_f64().unwrap(), expected[1].as_f64().unwrap());
            assert!(
                (found.x.to_inches() - x).abs() < 1e-5 && (found.y.to_inches() - y).abs() < 1e-5,
                "{found:?} {x} {y}"
            );
        }
        let (area, sigma) = adjusted.area;
        let sigma = sigma.to_square_feet() * 144.0;
        assert!((area.to_square_feet() * 144.0 - number(room, "area")).abs() < 0.01);
        assert!((sigma - number(room, "area_sigma")).abs() < 1e-4 * sigma.max(1.0), "{sigma}");
        assert!((adjusted.variance_factor.unwrap() - number(room, "variance_factor")).abs() < 1e-5);
    }
}

#[test]
fn the_chance_that_a_reading_is_wrong_is_what_another_program_weighs() {
    let fixture: Value = serde_json::from_str(include_str!("../fixtures/adjust.json")).unwrap();
    let houses = fixture["houses"].as_array().unwrap();
    let (mut accused, mut clean) = (0, 0);
    for house in houses {
        let turns = house["turns"].as_array().unwrap();
        let turns = turns.iter().map(|turn| if turn == "right" { Turn::Right } else { Turn::Left }.quarter()).collect();
        let observations = house["observations"].as_array().unwrap().iter().map(observation).collect();
        let adjusted = adjust(&Network { turns, observations, house: House::Unsaid }).unwrap();
        let squareness = adjusted.squareness.unwrap().sigma.to_degrees();
        let expected = |n: usize| house["squareness"][n].as_f64().unwrap();
        // The other program puts a mistake into the variance of its reading, the engine leaves
        // the reading out; where lines bend, that differs a little.
        let Some(verdict) = adjusted.verdict else {
            assert!(number(house, "clean") > 0.78, "{house}");
            assert!((squareness / expected(0) - 1.0).abs() < 0.02, "{squareness}");
            clean += 1;
            continue;
        };
        assert!(number(house, "clean") < 0.82, "{house}");
        for suspect in &verdict.suspects {
            let chance = house["chances"][suspect.observation].as_f64().unwrap();
            assert!((suspect.chance - chance).abs() < 0.03, "{} is not {chance}", suspect.chance);
        }
        assert!((squareness / expected(1 + verdict.suspects[0].observation) - 1.0).abs() < 0.05, "{squareness}");
        accused += 1;
    }
    assert!(accused >= 5 && clean >= 3, "{accused} accused, {clean} clean");
}
