//! How much less alike wood is, the farther apart it lies.

/// A meter's error as a variance, in percent points squared: ±2 % is taken for two
/// standard deviations of it (`Source::MeterAccuracy`). No nugget may be smaller.
pub const METER_NOISE: f64 = 1.0;

/// How much the wood of one floor may wander about its mean, as a standard deviation in
/// percent points, with how likely each is before anything is read (judgement).
const WANDERS: [(f64, f64); 5] = [(0.7, 1.0), (1.5, 1.0), (3.0, 1.0), (4.5, 1.0), (6.5, 0.5)];

/// Over how many feet it does so (judgement).
const RANGES: [(f64, f64); 4] = [(4.0, 1.0), (8.0, 1.0), (16.0, 1.0), (30.0, 0.5)];

/// How much it differs within a hand's breadth (judgement).
const FLECKS: [(f64, f64); 3] = [(0.1, 1.0), (0.7, 1.0), (2.0, 0.6)];

/// An exponential variogram: half the mean squared difference of two readings `h` apart
/// is `nugget + sill (1 - exp(-3 h / range))`. Distances in feet, the rest in percent
/// points squared.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Variogram {
    /// What two readings of one spot differ by.
    pub nugget: f64,
    /// What is added far apart.
    pub sill: f64,
    /// The distance from which nearly all of that is there.
    pub range: f64,
}

/// A reading for a sum: feet along the plan's axes, percent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Where, in feet.
    pub at: [f64; 2],
    /// What, in percent.
    pub value: f64,
    /// How much less sure it is than a meter's number, as a variance.
    pub unsure: f64,
}

impl Sample {
    /// Did a meter show it? What is off its scale is no number, and less sure.
    pub fn is_number(&self) -> bool {
        self.unsure == 0.0
    }
}

impl Variogram {
    /// How much of what wanders two places so far apart have in common, from 0 to 1.
    pub fn alike(&self, apart: f64) -> f64 {
        libm::exp(-3.0 * apart / self.range)
    }

    /// What two places so far apart have in common, beside the nugget.
    pub fn shared(&self, apart: f64) -> f64 {
        self.sill * self.alike(apart)
    }

    /// What the wood itself differs by within a hand's breadth, as a standard deviation:
    /// the nugget beyond the meter's own error is the wood's.
    pub fn fleck(&self) -> f64 {
        libm::sqrt((self.nugget - METER_NOISE).max(0.0))
    }

    /// How wood may go together, each with how likely that is before anything is read.
    pub fn plausible() -> impl Iterator<Item = (Self, f64)> {
        let flecks = |wander: (f64, f64), range: (f64, f64)| {
            FLECKS.into_iter().map(move |fleck| {
                let nugget = METER_NOISE + fleck.0 * fleck.0;
                (Self { nugget, sill: wander.0 * wander.0, range: range.0 }, wander.1 * range.1 * fleck.1)
            })
        };
        let ranges = RANGES.into_iter();
        ranges.flat_map(move |range| WANDERS.into_iter().flat_map(move |wander| flecks(wander, range)))
    }
}

/// How far apart two places are, in feet.
pub fn distance(a: [f64; 2], b: [f64; 2]) -> f64 {
    let [x, y] = [a[0] - b[0], a[1] - b[1]];
    libm::hypot(x, y)
}
