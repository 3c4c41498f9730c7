//! Exact fractions, for walls that run off square.

use std::cmp::Ordering;

/// An exact fraction with a positive denominator, not reduced. With coordinates within
/// [`super::case::FARTHEST`] every one that the region makes fits, and so do the
/// products that compare two of them.
#[derive(Debug, Clone, Copy)]
pub struct Ratio {
    over: i64,
    under: i64,
}

impl Ratio {
    pub const fn whole(value: i32) -> Self {
        Self { over: value as i64, under: 1 }
    }

    /// `over / under`; `under` may be negative, not nought.
    pub const fn new(over: i64, under: i64) -> Self {
        if under < 0 { Self { over: -over, under: -under } } else { Self { over, under } }
    }

    pub const fn over(self) -> i64 {
        self.over
    }

    pub const fn under(self) -> i64 {
        self.under
    }

    pub const fn floor(self) -> i32 {
        self.over.div_euclid(self.under) as i32
    }

    pub const fn ceil(self) -> i32 {
        -((-self.over).div_euclid(self.under)) as i32
    }

    /// The nearest whole number.
    pub const fn nearest(self) -> i32 {
        (2 * self.over + self.under).div_euclid(2 * self.under) as i32
    }

    /// For lengths of cuts, which are only compared and shown.
    pub fn to_f64(self) -> f64 {
        self.over as f64 / self.under as f64
    }
}

impl Ord for Ratio {
    fn cmp(&self, other: &Self) -> Ordering {
        if self.under == other.under {
            return self.over.cmp(&other.over);
        }
        (i128::from(self.over) * i128::from(other.under)).cmp(&(i128::from(other.over) * i128::from(self.under)))
    }
}

impl PartialOrd for Ratio {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Ratio {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Ratio {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fractions_compare_by_value() {
        assert_eq!(Ratio::new(1, 2), Ratio::new(-3, -6));
        assert!(Ratio::new(-1, 3) < Ratio::whole(0));
        assert!(Ratio::new(7, 2) > Ratio::new(10, 3));
    }

    #[test]
    fn a_fraction_below_nought_rounds_down_and_up() {
        assert_eq!((Ratio::new(-7, 2).floor(), Ratio::new(-7, 2).ceil()), (-4, -3));
        assert_eq!((Ratio::whole(-4).floor(), Ratio::whole(-4).ceil()), (-4, -4));
    }
}
