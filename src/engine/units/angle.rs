//! Angles, exact in millionths of a degree.

use super::limits::{self, OutOfRange};
use serde::{Deserialize, Serialize};

/// An angle in whole millionths of a degree, clockwise positive on the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(try_from = "AngleJson", into = "AngleJson")]
pub struct Angle(i64);

/// Millionths in a degree.
const PER_DEGREE: f64 = 1e6;

impl Angle {
    /// No turn.
    pub const ZERO: Self = Self(0);
    /// A quarter turn clockwise.
    pub const QUARTER: Self = Self::degrees(90);

    /// A wall that goes straight on.
    pub const STRAIGHT: Self = Self::degrees(180);

    /// Whole degrees.
    pub const fn degrees(degrees: i32) -> Self {
        Self(degrees as i64 * 1_000_000)
    }

    /// Whole hundredths of a degree, within [`limits::WALL_ANGLE`].
    ///
    /// # Errors
    /// [`OutOfRange`] beyond it.
    pub fn try_hundredths(hundredths: i64) -> Result<Self, OutOfRange> {
        limits::WALL_ANGLE.check(hundredths.saturating_mul(10_000)).map(Self)
    }

    /// Whole millionths of a degree.
    pub const fn micro_degrees(millionths: i64) -> Self {
        Self(millionths)
    }

    /// The nearest millionth of a degree to a computed angle in radians.
    #[expect(clippy::cast_possible_truncation, reason = "a float cast saturates")]
    pub fn from_radians(radians: f64) -> Self {
        Self(libm::round(radians.to_degrees() * PER_DEGREE) as i64)
    }

    /// Which quarter turn it is nearest to, from 0 to 3; of two as near the greater.
    pub const fn nearest_quarter(self) -> i64 {
        (self.0 + Self::QUARTER.0 / 2).rem_euclid(4 * Self::QUARTER.0) / Self::QUARTER.0
    }

    /// Is it a whole number of quarter turns?
    pub const fn is_square(self) -> bool {
        self.0 % Self::QUARTER.0 == 0
    }

    /// Its size without its sign.
    #[must_use]
    pub const fn abs(self) -> Self {
        Self(self.0.saturating_abs())
    }

    /// Degrees, for showing.
    pub fn to_degrees(self) -> f64 {
        self.0 as f64 / PER_DEGREE
    }

    /// Radians, for formulas.
    pub fn to_radians(self) -> f64 {
        self.to_degrees().to_radians()
    }
}

impl std::ops::Neg for Angle {
    type Output = Self;
    fn neg(self) -> Self {
        Self(self.0.saturating_neg())
    }
}

impl std::ops::Add for Angle {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl std::iter::Sum for Angle {
    fn sum<I: Iterator<Item = Self>>(angles: I) -> Self {
        angles.fold(Self::ZERO, |sum, angle| sum + angle)
    }
}

impl std::ops::Sub for Angle {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

/// How an angle stands in a job file: `{"microdegrees": 135000000}`.
#[derive(Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
struct AngleJson {
    /// Whole millionths of a degree.
    microdegrees: i64,
}

impl From<Angle> for AngleJson {
    fn from(angle: Angle) -> Self {
        Self { microdegrees: angle.0 }
    }
}

impl TryFrom<AngleJson> for Angle {
    type Error = OutOfRange;
    fn try_from(json: AngleJson) -> Result<Self, OutOfRange> {
        limits::WALL_ANGLE.check(json.microdegrees).map(Self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn degrees_come_back_from_radians() {
        for degrees in [-180, -90, 0, 1, 45, 90] {
            assert_eq!(Angle::from_radians(Angle::degrees(degrees).to_radians()), Angle::degrees(degrees));
        }
    }

    #[test]
    fn the_nearest_quarter_goes_round() {
        for (degrees, quarter) in [(0, 0), (44, 0), (45, 1), (90, 1), (180, 2), (269, 3), (316, 0), (-90, 3), (720, 0)]
        {
            assert_eq!(Angle::degrees(degrees).nearest_quarter(), quarter, "{degrees}");
        }
        assert!(Angle::degrees(-270).is_square() && !Angle::micro_degrees(1).is_square());
    }
}
