//! Numbers that look random and are the same on every machine: nothing is drawn anew, so
//! the same readings always give the same map.

/// Steps through all 64-bit numbers and scrambles each (the generator SplitMix64).
#[derive(Debug, Clone)]
pub struct Random {
    state: u64,
    spare: Option<f64>,
}

impl Random {
    /// A row of numbers of its own for each start.
    pub const fn starting_at(start: u64) -> Self {
        Self { state: start, spare: None }
    }

    /// Evenly between 0 and 1, and neither of them.
    pub fn part(&mut self) -> f64 {
        self.state = self.state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let once = (self.state ^ (self.state >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let twice = (once ^ (once >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        let mixed = (twice ^ (twice >> 31)) >> 11;
        (mixed as f64 + 0.5) / (1_u64 << 53) as f64
    }

    /// Normally, about 0 with a standard deviation of 1; by the polar form, two at a time
    /// (Box and Muller).
    pub fn normal(&mut self) -> f64 {
        if let Some(spare) = self.spare.take() {
            return spare;
        }
        let radius = libm::sqrt(-2.0 * libm::log(self.part()));
        let angle = core::f64::consts::TAU * self.part();
        self.spare = Some(radius * libm::sin(angle));
        radius * libm::cos(angle)
    }
}
