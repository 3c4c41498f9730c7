//! How far a walk misses its start, and which of its sides could be to blame.

use super::{Axis, Vector};
use crate::engine::units::Length;

/// A gap that misses by no more than this along one axis and by more along the
/// other is taken to lie on that other axis alone: 1/4 in, what careful tape
/// readings to the nearest sixteenth leave over a handful of sides. A display
/// rule of our own: it decides what is suggested, never what is computed.
pub const PURE_AXIS_TOLERANCE: Length = Length::sixty_fourths(16);

/// Where a walk ended, seen from where it began.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ClosingError {
    /// From the start to the end; nothing when the walk closes exactly.
    pub gap: Vector,
    /// The sum of the sides as measured.
    pub perimeter: Length,
}

/// A side that alone could explain the gap.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Suspect {
    /// Which side, counted from 0.
    pub side: usize,
    /// What it would have to measure for the gap to vanish along its axis.
    pub would_be: Length,
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

    /// The axis that the whole gap lies along, if it lies along one, within
    /// [`PURE_AXIS_TOLERANCE`].
    pub fn pure_axis(self) -> Option<Axis> {
        let misses = |axis| self.gap.along(axis).abs() > PURE_AXIS_TOLERANCE;
        match (misses(Axis::X), misses(Axis::Y)) {
            (true, false) => Some(Axis::X),
            (false, true) => Some(Axis::Y),
            _ => None,
        }
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
        assert_eq!(gap(Length::ZERO, Length::ZERO).pure_axis(), None);
    }

    #[test]
    fn one_inch_in_forty_feet_is_one_part_in_480() {
        assert_eq!(gap(Length::INCH, Length::ZERO).one_part_in(), Some(480));
    }

    #[test]
    fn a_sixteenth_across_does_not_hide_a_foot_along() {
        assert_eq!(gap(Length::sixty_fourths(4), Length::FOOT).pure_axis(), Some(Axis::Y));
        assert_eq!(gap(Length::FOOT, Length::FOOT).pure_axis(), None);
    }
}
