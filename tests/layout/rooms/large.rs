//! Large rooms, invented.

use crate::drawn::{Dice, FOOT, out_of_square, request};
use duckboard::engine::sheets::layout::{Case, Corner, Sheet};

/// Large rooms by name: up to 2,500 sq ft, and some that nobody has. Some have corners that
/// are all off, some more corners than a house has, some are laid of much that is on hand.
pub fn large() -> Vec<(&'static str, Case)> {
    let plain = |name, outline| (name, outline, false, 0);
    let rooms = [
        ("25 x 25 ft, corners off", rectangle(25, 25), true, 0),
        ("24 x 20 ft, corners off", rectangle(24, 20), true, 0),
        plain("L of 2,200 sq ft", l(60, 50, 40, 20)),
        ("L of 2,200 sq ft, corners off", l(60, 50, 40, 20), true, 0),
        plain("50 x 50 ft", rectangle(50, 50)),
        ("50 x 50 ft, corners off", rectangle(50, 50), true, 0),
        ("30 x 30 ft, 12 pieces on hand", rectangle(30, 30), false, 12),
        ("25 x 25 ft, corners off, 12 pieces on hand", rectangle(25, 25), true, 12),
        plain("stair of 30 steps", stair(30, 19)),
        ("stair of 30 steps, 12 pieces on hand", stair(30, 19), false, 12),
        ("stair of 30 steps, corners off", stair(30, 19), true, 0),
        plain("stair of 100 steps", stair(100, 7)),
        ("stair of 100 steps, corners off, 12 pieces on hand", stair(100, 7), true, 12),
        plain("118 x 16 ft", rectangle(118, 16)),
        ("16 x 118 ft, corners off", rectangle(16, 118), true, 0),
        ("161 x 118 ft, corners off", rectangle(161, 118), true, 0),
        ("120 x 250 ft, corners off", rectangle(120, 250), true, 0),
    ];
    let case = |(name, outline, is_off, on_hand): (&'static str, Vec<Corner>, bool, i32)| {
        let mut dice = Dice::new(1);
        let outline = if is_off { out_of_square(&mut dice, &outline) } else { outline };
        let mut request = request(&mut dice, outline, Vec::new());
        let piece = |_| Sheet { length: dice.throw(2 * FOOT, 6 * FOOT), width: dice.throw(FOOT, 4 * FOOT) };
        request.on_hand = (0..on_hand).map(piece).collect();
        Some((name, Case::new(request).ok()?))
    };
    rooms.into_iter().filter_map(case).collect()
}

fn rectangle(x: i32, y: i32) -> Vec<Corner> {
    vec![(0, 0), (x * FOOT, 0), (x * FOOT, y * FOOT), (0, y * FOOT)]
}

/// So many feet each way, less a corner.
fn l(x: i32, y: i32, along: i32, across: i32) -> Vec<Corner> {
    let (right, low) = ((x - along) * FOOT, (y - across) * FOOT);
    vec![(0, 0), (x * FOOT, 0), (x * FOOT, low), (right, low), (right, y * FOOT), (0, y * FOOT)]
}

/// A triangle whose long side goes up in steps of so many inches.
fn stair(steps: i32, inches: i32) -> Vec<Corner> {
    let step = inches * 16;
    let far = steps * step;
    let corners = (0..steps).flat_map(|at| [(far - at * step, at * step), (far - at * step, (at + 1) * step)]);
    std::iter::once((0, 0)).chain(corners).chain([(0, far)]).collect()
}
