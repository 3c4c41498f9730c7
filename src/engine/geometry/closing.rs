//! How far a walk misses its start.

use super::Vector;
use crate::engine::units::Length;

/// Where a walk ended, seen from where it began.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ClosingError {
    /// From the start to the end; nothing when the walk closes exactly.
    pub gap: Vector,
    /// The sum of the sides as measured.
    pub perimeter: Length,
}

impl ClosingError {
    /// The straight-line misclosure, to the nearest nanometre.
    pub fn misclosure(self) -> Length {
        self.gap.length()
    }

    /// The misclosure is one part in this many of the perimeter, rounded down;
    /// nothing when the walk closes exactly.
    pub fn one_part_in(self) -> Option<i64> {
        self.perimeter.to_nm().checked_div(self.misclosure().to_nm())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn gap(dx: Length, dy: Length) -> ClosingError {
        ClosingError { gap: Vector { dx, dy }, perimeter: Length::feet(40) }
    }

    #[test]
    fn an_exact_closure_has_no_ratio() {
        assert_eq!(gap(Length::ZERO, Length::ZERO).one_part_in(), None);
    }

    #[test]
    fn one_inch_in_forty_feet_is_one_part_in_480() {
        assert_eq!(gap(Length::INCH, Length::ZERO).one_part_in(), Some(480));
    }
}
