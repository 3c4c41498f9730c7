//! Glue: a bead on every line that a sheet bears on.

use super::lines::Line;
use crate::engine::sheets::to_lay::length;
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// How thick the bead is ([`Source::GlueBead`]).
const BEAD: Length = Length::sixty_fourths(16);
/// What a large tube holds, in US fluid ounces (common practice, no source).
pub const TUBE_FLUID_OUNCES: u8 = 28;
/// A US gallon is 231 cubic inches and 128 fluid ounces.
const CUBIC_INCHES_PER_FLUID_OUNCE: f64 = 231.0 / 128.0;

/// The rule in words.
pub const RULE: &str = "A bead of 1/4 in on joists and blocks, two beads where two sheets end. Spread for one or two \
                        sheets at a time, and nail before it sets.";

/// A tube of glue, and the bead that it is spread as.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tube {
    /// US fluid ounces.
    pub fluid_ounces: f64,
    /// How thick the bead is.
    pub bead: Length,
}

impl Tube {
    /// The large one, with the bead that sheets are laid on.
    const LARGE: Self = Self { fluid_ounces: TUBE_FLUID_OUNCES as f64, bead: BEAD };

    /// What it holds.
    pub fn cubic_inches(self) -> f64 {
        self.fluid_ounces * CUBIC_INCHES_PER_FLUID_OUNCE
    }

    /// How far it goes: its volume over the bead's section.
    pub fn covers(self) -> Length {
        let across = self.bead.to_inches();
        Length::from_inches(self.cubic_inches() / (core::f64::consts::PI / 4.0 * across * across))
    }

    /// How many a bead so long takes.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a float cast saturates")]
    pub fn needed_for(self, bead: Length) -> u32 {
        libm::ceil(bead.to_feet() / self.covers().to_feet()) as u32
    }
}

/// How many large tubes a bead so long takes.
pub fn tubes(bead: Length) -> u32 {
    Tube::LARGE.needed_for(bead)
}

/// How much glue.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Adhesive {
    /// How long the bead is, all in all.
    pub bead: Length,
    /// How many large tubes that is.
    pub tubes: u32,
}

impl Adhesive {
    /// Each end gets its own bead, so that a joist under a joint gets two
    /// ([`Source::GlueUnderEnds`]).
    pub(super) fn along(lines: &[Line]) -> Self {
        let sixteenths = lines.iter().map(|line| match line {
            Line::End(length) | Line::Inner(length) | Line::Tongued(length) => *length,
            Line::Open(bay) => bay.clear,
        });
        let bead = sixteenths.map(length).fold(Length::ZERO, |sum, next| sum + next);
        Self { bead, tubes: tubes(bead) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 28 fl oz go 85.8 ft at 1/4 in (computed).
    #[test]
    fn a_tube_goes_as_far_as_its_volume() {
        let covers = Tube::LARGE.covers().to_feet();
        assert!((covers - 85.8).abs() < 0.05, "{covers}");
        let bead = |feet| Adhesive::along(&[Line::Inner(feet * 192)]);
        assert_eq!((bead(85).tubes, bead(86).tubes, bead(0).tubes), (1, 2, 0));
        assert_eq!(bead(85).bead, Length::feet(85));
    }
}
