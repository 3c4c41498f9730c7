//! How square a house's corners are: what is believed before anything is measured, and
//! what the room itself says.

use super::accuracy::Accuracy;
use crate::engine::units::Angle;

/// What somebody says of how square the house is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum House {
    /// Nobody has said.
    #[default]
    Unsaid,
    /// Its corners are square, as far as houses are.
    Square,
    /// It is out of square, as old houses are.
    OutOfSquare,
}

/// How far a house's corners are off a right angle, one standard deviation, and where
/// that is from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Squareness {
    /// The standard deviation.
    pub sigma: Angle,
    /// Do measurements say so? Else it is what is believed of houses.
    pub is_measured: bool,
}

/// A squareness that is possible, and how well it is believed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Possible {
    /// The standard deviation.
    pub sigma: Angle,
    /// The natural logarithm of its weight among all.
    pub log_weight: f64,
}

/// From the squarest house to one that nobody would call square, each half as much again
/// as the one before, nearly (the root of two).
const STEPS: i32 = 11;
const SQUAREST: f64 = 0.1;

impl House {
    /// What is believed of its corners before anything is measured: the middle in degrees,
    /// and how far that is spread, in natural logarithms. New houses keep corners within
    /// some 0.2°, old ones are off by a degree (a judgement, no source). Unsaid, it leans to
    /// old houses: whose floors rot, and so that none is accused for its age.
    const fn believed(self) -> (f64, f64) {
        match self {
            Self::Unsaid => (0.7, 0.5),
            Self::Square => (0.2, 0.4),
            Self::OutOfSquare => (1.0, 0.4),
        }
    }

    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Unsaid => "not said",
            Self::Square => "square",
            Self::OutOfSquare => "out of square",
        }
    }

    /// No room is believed to be squarer than this, however well a few readings agree.
    pub(super) fn at_best(self) -> Angle {
        match self {
            Self::Unsaid | Self::OutOfSquare => Accuracy::AS_BUILT,
            Self::Square => Angle::micro_degrees(100_000),
        }
    }

    /// Every squareness that is weighed.
    pub(super) fn possible(self) -> Vec<Possible> {
        let (middle, spread) = self.believed();
        let degrees = |step: i32| SQUAREST * libm::pow(2.0, f64::from(step) / 2.0);
        let weight = |degrees: f64| {
            let away = libm::log(degrees / middle) / spread;
            libm::exp(-0.5 * away * away)
        };
        let all: f64 = (0..STEPS).map(|step| weight(degrees(step))).sum();
        (0..STEPS)
            .map(|step| Possible {
                sigma: Angle::from_radians(degrees(step).to_radians()),
                log_weight: libm::log(weight(degrees(step)) / all),
            })
            .collect()
    }
}
