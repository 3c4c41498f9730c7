//! What was measured of a room.

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
            Self::Angle { .. } => Off::Turned(Angle::from_radians(size)),
            _ => Off::By(Length::from_inches(size)),
        }
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
            Observation::Angle { at, .. } => Measured::Corner(at),
            Observation::Offset { of, .. } => Measured::Offset(of),
            Observation::Along { of, .. } => Measured::Along(of),
        }
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
                Observation::Offset { of, from, to, sigma, .. } | Observation::Along { of, from, to, sigma, .. } => {
                    there(of) && there(from) && there(to) && from != to && of != from && sigma.is_positive()
                }
            })
    }
}
