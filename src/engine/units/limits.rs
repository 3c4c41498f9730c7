//! Every range, named once. Constructors, messages, the schema and the property
//! tests' generators all read it here.

use std::fmt;

/// An inclusive range of a quantity, counted in that quantity's storage unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// What the range is of, in plain words.
    pub what: &'static str,
    /// The least storage units accepted.
    pub least: i64,
    /// The most storage units accepted.
    pub most: i64,
    /// The range in words, as a message says it.
    pub words: &'static str,
}

/// Lengths, heights and offsets, signed, in nanometres: ±1 km.
pub const LENGTH: Limits =
    Limits { what: "length", least: -1_000_000_000_000, most: 1_000_000_000_000, words: "up to 3280' (1000 m)" };

/// Air, surface and wood temperatures, in ninths of a microdegree Celsius
/// (see [`Temperature`](super::Temperature)): −76 to 212 °F.
pub const TEMPERATURE: Limits =
    Limits { what: "temperature", least: -540_000_000, most: 900_000_000, words: "-76 to 212 °F (-60 to 100 °C)" };

/// Relative humidity, in millionths of a percent: 0 to 100 %.
pub const HUMIDITY: Limits = Limits { what: "relative humidity", least: 0, most: 100_000_000, words: "0 to 100 %" };

/// Wood moisture content, in millionths of a percent of dry mass: 0 to 300 %
/// (waterlogged softwood passes 200 %, from memory).
pub const MOISTURE_CONTENT: Limits =
    Limits { what: "moisture content", least: 0, most: 300_000_000, words: "0 to 300 %" };

/// Angles between two walls, in millionths of a degree: more than 0 and less than a
/// straight wall.
pub const WALL_ANGLE: Limits = Limits { what: "angle", least: 1_000_000, most: 179_000_000, words: "1 to 179°" };

/// Amounts, in thousandths: loads, rain, pieces, prices.
pub const AMOUNT: Limits = Limits { what: "amount", least: 0, most: 1_000_000_000_000, words: "0 to 1000 million" };

impl Limits {
    /// `value` if it lies in the range.
    ///
    /// # Errors
    /// [`OutOfRange`], which names the range in words.
    pub const fn check(self, value: i64) -> Result<i64, OutOfRange> {
        if value < self.least || value > self.most { Err(OutOfRange { limits: self }) } else { Ok(value) }
    }

    /// `value`, or the nearer end of the range.
    pub const fn clamp(self, value: i64) -> i64 {
        if value < self.least {
            self.least
        } else if value > self.most {
            self.most
        } else {
            value
        }
    }

    /// The nearest whole storage unit to `value`, held in the range. Not a
    /// number becomes the least: a formula that can give it checks before.
    #[expect(clippy::cast_possible_truncation, reason = "clamped to the range first")]
    pub(crate) fn nearest(self, value: f64) -> i64 {
        let rounded = libm::round(value);
        if rounded.is_nan() || rounded <= self.least as f64 {
            self.least
        } else if rounded >= self.most as f64 {
            self.most
        } else {
            rounded as i64
        }
    }
}

/// A value outside its range.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OutOfRange {
    /// The range that was missed.
    pub limits: Limits,
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} must be {}", self.limits.what, self.limits.words)
    }
}

impl std::error::Error for OutOfRange {}
