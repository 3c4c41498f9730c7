//! Lengths, exact in whole nanometres.

use super::Area;
use super::limits::{self, OutOfRange};
use serde::{Deserialize, Serialize};
use std::iter::Sum;
use std::ops::{Add, Mul, Neg, Sub};

/// A length in whole nanometres, so that a sixty-fourth of an inch (396 875 nm),
/// a tenth of a millimetre and a hundredth of a foot are all exact.
///
/// Signed, since offsets and closing errors are lengths too; a value that enters
/// from outside lies within [`limits::LENGTH`]. Sums saturate at the ends of `i64`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(try_from = "LengthJson", into = "LengthJson")]
pub struct Length(i64);

impl Length {
    /// No length.
    pub const ZERO: Self = Self(0);
    /// One foot.
    pub const FOOT: Self = Self(304_800_000);
    /// One inch.
    pub const INCH: Self = Self(25_400_000);
    /// One sixty-fourth of an inch.
    pub const SIXTY_FOURTH: Self = Self(396_875);
    /// One millimetre.
    pub const MILLIMETRE: Self = Self(1_000_000);

    /// Whole nanometres, within [`limits::LENGTH`].
    ///
    /// # Errors
    /// [`OutOfRange`] beyond it.
    pub const fn try_nm(nm: i64) -> Result<Self, OutOfRange> {
        match limits::LENGTH.check(nm) {
            Ok(nm) => Ok(Self(nm)),
            Err(error) => Err(error),
        }
    }

    /// Whole nanometres, for sums whose terms were checked.
    pub const fn nm(nm: i64) -> Self {
        Self(nm)
    }

    /// Whole inches.
    pub const fn inches(inches: i32) -> Self {
        Self(inches as i64 * Self::INCH.0)
    }

    /// Whole feet.
    pub const fn feet(feet: i32) -> Self {
        Self(feet as i64 * Self::FOOT.0)
    }

    /// Whole sixty-fourths of an inch.
    pub const fn sixty_fourths(count: i32) -> Self {
        Self(count as i64 * Self::SIXTY_FOURTH.0)
    }

    /// Whole millimetres.
    pub const fn mm(mm: i32) -> Self {
        Self(mm as i64 * Self::MILLIMETRE.0)
    }

    /// Whole nanometres.
    pub const fn to_nm(self) -> i64 {
        self.0
    }

    /// Inches, for formulas and drawing.
    pub fn to_inches(self) -> f64 {
        self.0 as f64 / Self::INCH.0 as f64
    }

    /// Feet, for formulas and drawing.
    pub fn to_feet(self) -> f64 {
        self.0 as f64 / Self::FOOT.0 as f64
    }

    /// Millimetres, for formulas and drawing.
    pub fn to_mm(self) -> f64 {
        self.0 as f64 / Self::MILLIMETRE.0 as f64
    }

    /// The length without its sign.
    pub const fn abs(self) -> Self {
        Self(self.0.saturating_abs())
    }

    /// The nearest nanometre to a computed number of inches.
    pub fn from_inches(inches: f64) -> Self {
        Self::INCH.scaled(inches)
    }

    /// The nearest nanometre to so many times its length.
    #[must_use]
    #[expect(clippy::cast_possible_truncation, reason = "a float cast saturates, and so do lengths")]
    pub fn scaled(self, by: f64) -> Self {
        Self(libm::round(self.0 as f64 * by) as i64)
    }

    /// Half of it, a lone nanometre dropped.
    pub const fn half(self) -> Self {
        Self(self.0 / 2)
    }

    /// The nearest whole multiple of `step`, half away from zero; the length itself if
    /// `step` is not positive.
    #[must_use]
    pub const fn to_nearest(self, step: Self) -> Self {
        if step.0 <= 0 {
            return self;
        }
        let half = if self.0 < 0 { -(step.0 / 2) } else { step.0 / 2 };
        Self((self.0.saturating_add(half)) / step.0 * step.0)
    }

    /// The next whole multiple of `step` up, unless it is one; the length itself if `step` is
    /// not positive.
    #[must_use]
    pub const fn up_to(self, step: Self) -> Self {
        Self(-Self(-self.0).down_to(step).0)
    }

    /// The next whole multiple of `step` down, unless it is one; the length itself if `step`
    /// is not positive.
    #[must_use]
    pub const fn down_to(self, step: Self) -> Self {
        if step.0 <= 0 { self } else { Self(self.0.div_euclid(step.0) * step.0) }
    }

    /// Is it longer than nothing?
    pub const fn is_positive(self) -> bool {
        self.0 > 0
    }

    /// The nearest nanometre to the length of the straight line that goes `self`
    /// one way and `other` square to it.
    #[expect(clippy::cast_possible_truncation, reason = "the root of two i64 squares, saturated")]
    pub fn hypot(self, other: Self) -> Self {
        Self(libm::round(libm::hypot(self.0 as f64, other.0 as f64)) as i64)
    }
}

impl Add for Length {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Sub for Length {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl Neg for Length {
    type Output = Self;
    fn neg(self) -> Self {
        Self(self.0.saturating_neg())
    }
}

impl Mul for Length {
    type Output = Area;
    fn mul(self, other: Self) -> Area {
        Area::square_nm(i128::from(self.0) * i128::from(other.0))
    }
}

impl Mul<i64> for Length {
    type Output = Self;
    fn mul(self, times: i64) -> Self {
        Self(self.0.saturating_mul(times))
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Self>>(lengths: I) -> Self {
        lengths.fold(Self::ZERO, Self::add)
    }
}

/// How a length stands in a job file: `{"nm": 3746500000}`.
#[derive(Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
struct LengthJson {
    /// Whole nanometres; 1 inch is 25 400 000.
    nm: i64,
}

impl From<Length> for LengthJson {
    fn from(length: Length) -> Self {
        Self { nm: length.0 }
    }
}

impl TryFrom<LengthJson> for Length {
    type Error = OutOfRange;
    fn try_from(json: LengthJson) -> Result<Self, OutOfRange> {
        Self::try_nm(json.nm)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn everything_people_type_is_whole() {
        assert_eq!(Length::INCH, Length::sixty_fourths(64));
        assert_eq!(Length::FOOT, Length::inches(12));
        assert_eq!(Length::mm(254), Length::inches(10));
    }

    #[test]
    fn the_nearest_inch_is_half_away_from_zero() {
        let halves = |count| Length::sixty_fourths(count * 32);
        assert_eq!(halves(3).to_nearest(Length::INCH), Length::inches(2));
        assert_eq!(halves(-3).to_nearest(Length::INCH), Length::inches(-2));
        assert_eq!(Length::sixty_fourths(31).to_nearest(Length::INCH), Length::ZERO);
        assert_eq!(Length::INCH.to_nearest(Length::ZERO), Length::INCH);
    }

    #[test]
    fn up_and_down_go_to_the_next_step_and_stay_on_one() {
        let halves = |count| Length::sixty_fourths(count * 32);
        assert_eq!((halves(3).up_to(Length::INCH), halves(3).down_to(Length::INCH)), (halves(4), halves(2)));
        assert_eq!((halves(-3).up_to(Length::INCH), halves(-3).down_to(Length::INCH)), (halves(-2), halves(-4)));
        assert_eq!((halves(2).up_to(Length::INCH), halves(2).down_to(Length::INCH)), (halves(2), halves(2)));
        assert_eq!(halves(3).up_to(Length::ZERO), halves(3));
    }

    #[test]
    fn an_area_is_exact() {
        assert_eq!(Length::feet(4) * Length::feet(8), Area::square_feet(32));
    }

    #[test]
    fn json_names_its_unit_and_refuses_what_is_out_of_range() {
        assert_eq!(serde_json::to_string(&Length::INCH).unwrap(), r#"{"nm":25400000}"#);
        let error = serde_json::from_str::<Length>(r#"{"nm":2000000000000}"#).unwrap_err();
        assert!(error.to_string().contains("length must be up to 3280'"), "{error}");
    }

    #[test]
    fn a_three_four_five_triangle_closes() {
        assert_eq!(Length::feet(3).hypot(Length::feet(4)), Length::feet(5));
    }
}
