//! How well instruments measure.

use crate::engine::units::{Angle, Length};

/// An instrument's standard deviation: a constant part, and one that grows with the
/// distance; the two are independent and add as squares.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Accuracy {
    /// The part that every reading has.
    pub constant: Length,
    /// Millionths of the distance.
    pub parts_per_million: u32,
}

impl Accuracy {
    /// A tape read to the sixteenth, hooked or butted by hand: 1/16 in, and 1 in 4,800
    /// for sag and pull. From memory.
    pub const TAPE: Self = Self { constant: Length::sixty_fourths(4), parts_per_million: 208 };
    /// A hand-held laser: 1/16 in (common practice, no source).
    pub const LASER: Self = Self { constant: Length::sixty_fourths(4), parts_per_million: 0 };
    /// Paced off: 6 in, and 2 %. From memory.
    pub const PACED: Self = Self { constant: Length::inches(6), parts_per_million: 20_000 };

    /// A corner that was built square: about 1/3 in over 8 ft. From memory.
    pub const AS_BUILT: Angle = Angle::micro_degrees(200_000);
    /// A corner found square with a 3-4-5 triangle or a framing square: 1/16 in over
    /// 6 ft. From memory.
    pub const CHECKED: Angle = Angle::micro_degrees(50_000);
    /// A corner read off an angle finder or a bevel gauge. From memory.
    pub const ANGLE_FINDER: Angle = Angle::micro_degrees(500_000);

    /// The standard deviation of a distance.
    pub fn of(self, distance: Length) -> Length {
        let share = i128::from(distance.abs().to_nm()) * i128::from(self.parts_per_million) / 1_000_000;
        self.constant.hypot(Length::nm(i64::try_from(share).unwrap_or(i64::MAX)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_parts_add_as_squares() {
        let accuracy = Accuracy { constant: Length::inches(3), parts_per_million: 10_000 };
        assert_eq!(accuracy.of(Length::inches(400)), Length::inches(5));
        assert_eq!(Accuracy::LASER.of(Length::feet(30)), Accuracy::LASER.constant);
    }
}
