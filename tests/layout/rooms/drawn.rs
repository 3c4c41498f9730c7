//! What invented rooms are drawn with: the same throws every time, and what lies under and on
//! every floor.

use duckboard::engine::sheets::layout::{Corner, Request, Sheet};

/// Sixteenths in a foot.
pub const FOOT: i32 = 192;
/// Throws of one seed (a linear congruential generator, constants from memory).
pub struct Dice(u64);

impl Dice {
    pub const fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15).wrapping_add(0x1234_5678_9ABC_DEF1))
    }

    /// From `low` up to and including `high`.
    pub fn throw(&mut self, low: i32, high: i32) -> i32 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let among = u64::from(high.abs_diff(low)) + 1;
        low + i32::try_from((self.0 >> 33) % among).unwrap_or(0)
    }
}

/// How far out of square a corner may be, in sixteenths: 13/16 in, as in an old house
/// (invented).
pub const OUT_OF_SQUARE: i32 = 13;

/// Joists and sheets under an outline.
pub fn request(dice: &mut Dice, outline: Vec<Corner>, holes: Vec<Vec<Corner>>) -> Request {
    // 12, 16, 19.2 and 24 in on center, 16 the most often; first centers anywhere.
    let spacing = match dice.throw(0, 7) {
        0 => 192,
        6 => 307,
        7 => 384,
        _ => 256,
    };
    let first = dice.throw(24, spacing);
    let far = outline.iter().map(|corner| corner.0).max().unwrap_or(0);
    let joists = (0..).map(|number| first + number * spacing).take_while(|center| *center < far).collect();
    Request {
        outline,
        holes,
        joists,
        joist_width: 24,
        sheet: Sheet { length: 8 * FOOT, width: 4 * FOOT },
        on_hand: Vec::new(),
        gap: 2,
        kerf: 2,
        min_rip: 2 * FOOT,
        min_bays: 2,
        stagger: 1,
    }
}

/// Every corner moved a little.
pub fn out_of_square(dice: &mut Dice, outline: &[Corner]) -> Vec<Corner> {
    let mut moved = |at: i32| at + dice.throw(-OUT_OF_SQUARE, OUT_OF_SQUARE);
    outline.iter().map(|(x, y)| (moved(*x), moved(*y))).collect()
}
