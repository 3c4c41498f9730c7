//! What a carpenter is told.

use crate::rooms::inches;
use duckboard::engine::geometry::Turn::Right;
use duckboard::engine::survey::adjust::{Accuracy, House, Network, Observation, adjust};

/// A room of 12 × 10 ft with both diagonals; `off` inches on one side.
fn room(wrong: usize, off: f64) -> Network {
    let corners = [(0.0, 0.0), (144.0, 0.0), (144.0, 120.0), (0.0, 120.0)];
    let pairs = [(0, 1), (1, 2), (2, 3), (3, 0), (0, 2), (1, 3)];
    let distance = |(n, (from, to)): (usize, (usize, usize))| {
        let (a, b): ((f64, f64), (f64, f64)) = (corners[from], corners[to]);
        let is = inches(libm::hypot(b.0 - a.0, b.1 - a.1) + if n == wrong { off } else { 0.0 });
        Observation::Distance { from, to, is, sigma: Accuracy::TAPE.of(is) }
    };
    let mut observations: Vec<_> = pairs.into_iter().enumerate().map(distance).collect();
    observations.extend((0..4).map(|at| Observation::Built { at, is: Right.quarter() }));
    Network { turns: vec![Right.quarter(); 4], observations, house: House::Unsaid }
}

#[test]
fn a_wrong_diagonal_is_named_with_how_far_it_is_off() {
    let verdict = adjust(&room(4, 3.125)).unwrap().verdict.unwrap();
    let words = verdict.to_string();
    assert_eq!(words, "the diagonal from corner 1 to corner 3 disagrees with the rest by 3 1/8\"; measure it again");
}

#[test]
fn a_room_that_fits_has_nothing_to_say() {
    assert_eq!(adjust(&room(0, 0.0)).unwrap().verdict, None);
}
