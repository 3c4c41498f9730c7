//! Numbers that look drawn by lot and are the same every time.

/// A linear congruential generator, constants from memory; nothing hangs on how good
/// it is.
#[derive(Debug, Clone)]
pub struct Dice(u64);

impl Dice {
    /// The throws of one seed.
    pub const fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(2).wrapping_add(0x9E37_79B9_7F4A_7C15))
    }

    /// From 0 up to, not including, `below`.
    pub fn throw(&mut self, below: i64) -> i64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) as i64) % below.max(1)
    }
}
