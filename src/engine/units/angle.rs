//! Angles, exact in millionths of a degree.

/// An angle in whole millionths of a degree, clockwise positive on the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Angle(i64);

/// Millionths in a degree.
const PER_DEGREE: f64 = 1e6;

impl Angle {
    /// A quarter turn clockwise.
    pub const QUARTER: Self = Self::degrees(90);

    /// Whole degrees.
    pub const fn degrees(degrees: i32) -> Self {
        Self(degrees as i64 * 1_000_000)
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

impl std::ops::Sub for Angle {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
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
}
