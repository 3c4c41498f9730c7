//! Areas, exact in square nanometres.

use super::Length;
use std::iter::Sum;
use std::ops::{Add, Neg, Sub};

/// An area in whole square nanometres. It is always computed, never typed, so a
/// job file holds none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Area(i128);

impl Area {
    /// No area.
    pub const ZERO: Self = Self(0);

    /// Whole square nanometres.
    pub const fn square_nm(square_nm: i128) -> Self {
        Self(square_nm)
    }

    /// The nearest square nanometre to a computed number of square inches.
    #[expect(clippy::cast_possible_truncation, reason = "a float cast saturates, and so do areas")]
    pub fn from_square_inches(square_inches: f64) -> Self {
        let inch = Length::INCH.to_nm() as f64;
        Self(libm::round(square_inches * inch * inch) as i128)
    }

    /// Whole square feet.
    pub const fn square_feet(square_feet: i32) -> Self {
        let foot = Length::FOOT.to_nm() as i128;
        Self(square_feet as i128 * foot * foot)
    }

    /// Square feet, for formulas and drawing.
    pub fn to_square_feet(self) -> f64 {
        self.0 as f64 / Self::square_feet(1).0 as f64
    }

    /// Square metres, for formulas and drawing.
    pub fn to_square_metres(self) -> f64 {
        self.0 as f64 / 1e18
    }

    /// The area without its sign.
    pub const fn abs(self) -> Self {
        Self(self.0.saturating_abs())
    }

    /// Half of it.
    pub const fn half(self) -> Self {
        Self(self.0 / 2)
    }

    /// How many pieces of area `piece` it takes to make at least this much;
    /// nothing when either is not positive.
    pub fn pieces_of(self, piece: Self) -> Option<u32> {
        if self.0 <= 0 || piece.0 <= 0 {
            return None;
        }
        let whole = self.0 / piece.0;
        let rest = i128::from(self.0 % piece.0 != 0);
        u32::try_from(whole + rest).ok()
    }
}

impl Add for Area {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Sub for Area {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl Neg for Area {
    type Output = Self;
    fn neg(self) -> Self {
        Self(self.0.saturating_neg())
    }
}

impl Sum for Area {
    fn sum<I: Iterator<Item = Self>>(areas: I) -> Self {
        areas.fold(Self::ZERO, Self::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_round_up_and_exact_ones_do_not() {
        let sheet = Area::square_feet(32);
        assert_eq!(Area::square_feet(250).pieces_of(sheet), Some(8));
        assert_eq!(Area::square_feet(64).pieces_of(sheet), Some(2));
        assert_eq!((Area::square_feet(64) + Area::square_nm(1)).pieces_of(sheet), Some(3));
        assert_eq!(Area::ZERO.pieces_of(sheet), None);
        assert_eq!(sheet.pieces_of(Area::ZERO), None);
    }
}
