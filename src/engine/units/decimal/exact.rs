//! Exact sums on the way from typed digits to whole storage units.

/// The whole number nearest to `over / under`, half away from zero. `under` is at
/// least one; a smaller one counts as one.
pub(in crate::engine::units) const fn nearest(over: i128, under: i128) -> i128 {
    let under = if under < 1 { 1 } else { under };
    let whole = over / under;
    let rest = (over % under).abs();
    if rest >= under - rest { whole + over.signum() } else { whole }
}

/// A rational number. Sums that do not fit give nothing: what was typed is then far
/// beyond every limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::engine::units) struct Exact {
    over: i128,
    /// At least one.
    under: i128,
}

impl Exact {
    /// A whole number.
    pub(in crate::engine::units) const fn whole(over: i128) -> Self {
        Self { over, under: 1 }
    }

    /// `over / under`, unless `under` is less than one.
    pub(in crate::engine::units) fn ratio(over: i128, under: i128) -> Option<Self> {
        (under >= 1).then_some(Self { over, under })
    }

    /// `self × times`.
    pub(in crate::engine::units) fn times(self, times: i128) -> Option<Self> {
        Some(Self { over: self.over.checked_mul(times)?, ..self })
    }

    /// `self + other`.
    pub(in crate::engine::units) fn plus(self, other: Self) -> Option<Self> {
        let left = self.over.checked_mul(other.under)?;
        let right = other.over.checked_mul(self.under)?;
        Some(Self { over: left.checked_add(right)?, under: self.under.checked_mul(other.under)? })
    }

    /// The nearest whole number, half away from zero.
    pub(in crate::engine::units) const fn nearest(self) -> i128 {
        nearest(self.over, self.under)
    }

    /// The whole number, if it is one.
    pub(in crate::engine::units) fn as_whole(self) -> Option<i128> {
        (self.over % self.under == 0).then_some(self.over / self.under)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn halves_round_away_from_zero() {
        let rounded: Vec<_> = [-3, -2, -1, 0, 1, 2, 3].map(|over| nearest(over, 2)).to_vec();
        assert_eq!(rounded, [-2, -1, -1, 0, 1, 1, 2]);
    }

    proptest! {
        #[test]
        fn no_whole_number_is_nearer(over in -1_000_000_i128..=1_000_000, under in 1_i128..=1_000) {
            let distance = |whole: i128| (whole * under - over).abs();
            let found = nearest(over, under);
            prop_assert!(distance(found) <= distance(found - 1) && distance(found) <= distance(found + 1));
        }

        #[test]
        fn the_ends_do_not_overflow(over in prop_oneof![Just(i128::MIN), Just(i128::MAX)], under: i128) {
            let _ = nearest(over, under);
        }
    }
}
