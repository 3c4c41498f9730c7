//! The colour of a moisture reading.
//!
//! Cividis runs evenly from dark blue to yellow for eyes of every kind of colour
//! vision, and its brightness alone tells wet from dry. It is no verdict: nothing
//! changes at any one value, and the number is always printed on it.

use crate::engine::units::MoistureContent;
use std::fmt;

/// The dark end of the ramp, 6 %: just below what a pin meter can read (usable from
/// 7 to 28 %, \[P-secondary\] by a manual for operators of small dry kilns, p. 31).
/// Drier readings share its colour.
pub const DRIEST: MoistureContent = MoistureContent::percent(6);
/// The bright end, 30 %: the average fiber saturation point (\[P\] Wood Handbook,
/// ch. 14), beyond which electric meters tell nothing more. Wetter readings share
/// its colour.
pub const WETTEST: MoistureContent = MoistureContent::percent(30);

/// An sRGB colour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Colour {
    /// Red.
    pub red: u8,
    /// Green.
    pub green: u8,
    /// Blue.
    pub blue: u8,
}

/// The letters that read best on a fill. They are pure black and pure white: chalk
/// and dark timber would fall short of 4.5:1 in the middle of the ramp.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Ink {
    /// Black letters.
    Black,
    /// White letters.
    White,
}

impl Colour {
    /// Black.
    pub const BLACK: Self = Self { red: 0, green: 0, blue: 0 };
    /// White.
    pub const WHITE: Self = Self { red: 255, green: 255, blue: 255 };

    /// Contrast with `other`, from 1 (none) to 21 (black on white). Dimensionless.
    ///
    /// Source: the definition of contrast ratio in WCAG 2.2 \[M\].
    pub fn contrast(self, other: Self) -> f64 {
        let (a, b) = (self.luminance() + 0.05, other.luminance() + 0.05);
        a.max(b) / a.min(b)
    }

    /// The better ink to write on it with.
    pub fn ink(self) -> Ink {
        if self.contrast(Self::BLACK) >= self.contrast(Self::WHITE) { Ink::Black } else { Ink::White }
    }

    /// Relative luminance from 0 (black) to 1 (white).
    ///
    /// Source: the definition of relative luminance in WCAG 2.2 \[M\].
    fn luminance(self) -> f64 {
        0.2126 * linear(self.red) + 0.7152 * linear(self.green) + 0.0722 * linear(self.blue)
    }
}

/// An sRGB component as light, from 0 to 1.
fn linear(component: u8) -> f64 {
    let shown = f64::from(component) / 255.0;
    if shown <= 0.04045 { shown / 12.92 } else { libm::pow((shown + 0.055) / 1.055, 2.4) }
}

impl Ink {
    /// Its colour.
    pub const fn colour(self) -> Colour {
        match self {
            Self::Black => Colour::BLACK,
            Self::White => Colour::WHITE,
        }
    }
}

/// The fill that stands for `moisture`, between [`DRIEST`] and [`WETTEST`].
pub fn colour(moisture: MoistureContent) -> Colour {
    let from_driest = moisture.to_percent() - DRIEST.to_percent();
    let along = from_driest / (WETTEST.to_percent() - DRIEST.to_percent());
    let colour = colorous::CIVIDIS.eval_continuous(along.clamp(0.0, 1.0));
    Colour { red: colour.r, green: colour.g, blue: colour.b }
}

/// As a style sheet or an SVG attribute writes it: `#00204d`.
impl fmt::Display for Colour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "#{:02x}{:02x}{:02x}", self.red, self.green, self.blue)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every tenth of a percent from 0 to 40.
    fn readings() -> impl Iterator<Item = MoistureContent> {
        (0..=400).map(|tenths| MoistureContent::try_hundredths(tenths * 10).unwrap())
    }

    #[test]
    fn the_number_can_be_read_on_every_fill() {
        for moisture in readings() {
            let fill = colour(moisture);
            let contrast = fill.contrast(fill.ink().colour());
            assert!(contrast >= 4.5, "{} %: {fill} {contrast}", moisture.to_percent());
        }
    }

    #[test]
    fn wetter_is_never_darker() {
        let light: Vec<_> = readings().map(|moisture| colour(moisture).luminance()).collect();
        // A step of one in a component is rounding, and too little to see.
        assert!(light.windows(2).all(|pair| pair[1] >= pair[0] - 0.002), "{light:?}");
        assert!(light[400] > light[0] + 0.6);
    }

    #[test]
    fn beyond_its_ends_the_ramp_stays_as_it_is() {
        assert_eq!(colour(MoistureContent::percent(0)), colour(DRIEST));
        assert_eq!(colour(MoistureContent::percent(200)), colour(WETTEST));
        assert_ne!(colour(DRIEST), colour(WETTEST));
    }

    #[test]
    fn black_on_white_is_twenty_one_to_one() {
        assert!((Colour::BLACK.contrast(Colour::WHITE) - 21.0).abs() < 1e-9);
        assert_eq!(Colour { red: 0, green: 32, blue: 77 }.to_string(), "#00204d");
    }
}
