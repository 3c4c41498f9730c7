//! What was measured of a room.

use super::squareness::House;
use crate::engine::units::{Angle, Length};

/// A room's corners and what was measured between them.
///
/// Corners are numbered from 0 along the walk; side `i` runs from corner `i` to the
/// next, the last one back to corner 0.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Network {
    /// How far the wall turns at the end of each side, as seen, clockwise positive. It
    /// says what the room looks like, not that its corners are square: that is an
    /// observation.
    pub turns: Vec<Angle>,
    /// Everything measured, in any order.
    pub observations: Vec<Observation>,
    /// What is said of how square the house is.
    pub house: House,
}

/// A measured value and how well it is known. Corners are numbers in the network.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Observation {
    /// A straight distance between two corners: a side or a diagonal.
    Distance {
        /// From this corner.
        from: usize,
        /// To this one.
        to: usize,
        /// What was read.
        is: Length,
        /// Its standard deviation.
        sigma: Length,
    },
    /// How the wall turns at a corner, clockwise positive: 90 degrees for a right angle.
    Angle {
        /// The corner.
        at: usize,
        /// What was read, or is believed.
        is: Angle,
        /// Its standard deviation.
        sigma: Angle,
    },
    /// How the wall turns at a corner that nobody measured: a right angle, as far as the
    /// house has any. How far that is comes out of the room.
    Built {
        /// The corner.
        at: usize,
        /// How it turns, were the house square.
        is: Angle,
    },
    /// How far a corner lies to the right of the line through two others.
    Offset {
        /// The corner.
        of: usize,
        /// The line's first corner.
        from: usize,
        /// The corner that it runs to.
        to: usize,
        /// What was read; negative to the left.
        is: Length,
        /// Its standard deviation.
        sigma: Length,
    },
    /// How far along that line, from its first corner, the corner lies.
    Along {
        /// The corner.
        of: usize,
        /// The line's first corner.
        from: usize,
        /// The corner that it runs to.
        to: usize,
        /// What was read.
        is: Length,
        /// Its standard deviation.
        sigma: Length,
    },
}

/// How far off a measurement is, or how well it is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Off {
    /// A length.
    By(Length),
    /// A turn.
    Turned(Angle),
}

impl Observation {
    /// A computed difference in what it measures: inches, or radians for an angle.
    pub(super) fn off(&self, size: f64) -> Off {
        match self {
            Self::Angle { .. } | Self::Built { .. } => Off::Turned(Angle::from_radians(size)),
            _ => Off::By(Length::from_inches(size)),
        }
    }

    /// Did somebody read it, so that it can have been read wrongly?
    pub(super) const fn is_reading(&self) -> bool {
        !matches!(self, Self::Built { .. })
    }
}

/// What an observation measures, for words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Measured {
    /// A side, from 0.
    Side(usize),
    /// The distance between two corners, from 0.
    Diagonal(usize, usize),
    /// The turn at a corner, from 0.
    Corner(usize),
    /// How far off a line a corner lies, from 0.
    Offset(usize),
    /// How far along a line a corner lies, from 0.
    Along(usize),
}

impl Network {
    /// How many corners there are.
    pub fn corners(&self) -> usize {
        self.turns.len()
    }

    /// What an observation measures.
    pub fn measured(&self, observation: &Observation) -> Measured {
        let next = |corner: usize| (corner + 1) % self.corners().max(1);
        match *observation {
            Observation::Distance { from, to, .. } if next(from) == to => Measured::Side(from),
            Observation::Distance { from, to, .. } if next(to) == from => Measured::Side(to),
            Observation::Distance { from, to, .. } => Measured::Diagonal(from.min(to), from.max(to)),
            Observation::Angle { at, .. } | Observation::Built { at, .. } => Measured::Corner(at),
            Observation::Offset { of, .. } => Measured::Offset(of),
            Observation::Along { of, .. } => Measured::Along(of),
        }
    }

    /// Is any corner only believed to be square?
    pub(super) fn is_built(&self) -> bool {
        self.observations.iter().any(|observation| !observation.is_reading())
    }

    /// The same for a house that is so square: every standard deviation is known.
    pub(super) fn as_square_as(&self, sigma: Angle) -> Self {
        let known = |observation: &Observation| match *observation {
            Observation::Built { at, is } => Observation::Angle { at, is, sigma },
            other => other,
        };
        let observations = self.observations.iter().map(known).collect();
        Self { turns: self.turns.clone(), observations, house: self.house }
    }

    /// The same without one observation.
    pub(super) fn without(&self, n: usize) -> Self {
        let mut rest = self.clone();
        if n < rest.observations.len() {
            rest.observations.remove(n);
        }
        rest
    }

    /// Does every observation name corners that are there, different ones, with a
    /// standard deviation above nothing?
    pub(super) fn is_sound(&self) -> bool {
        let there = |corner: usize| corner < self.corners();
        self.corners() >= 3
            && self.observations.iter().all(|observation| match *observation {
                Observation::Distance { from, to, sigma, .. } => {
                    there(from) && there(to) && from != to && sigma.is_positive()
                }
                Observation::Angle { at, sigma, .. } => there(at) && sigma > Angle::default(),
                Observation::Built { at, .. } => there(at),
                Observation::Offset { of, from, to, sigma, .. } | Observation::Along { of, from, to, sigma, .. } => {
                    there(of) && there(from) && there(to) && from != to && of != from && sigma.is_positive()
                }
            })
    }
}
