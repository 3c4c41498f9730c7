//! A closed walk by north and east, balanced by the compass rule: each leg takes as much
//! of the error as it is long. For walks without cross measurements that is the
//! least-squares answer.

use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::{Angle, Area, Length};

/// A leg of a walk.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Leg {
    /// To the north.
    pub north: Length,
    /// To the east.
    pub east: Length,
    /// How long it was measured.
    pub length: Length,
}

/// A walk and how it closes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Traverse {
    /// What is left over to the north.
    pub north: Length,
    /// To the east.
    pub east: Length,
    /// All legs together.
    pub perimeter: Length,
    /// The legs, balanced, to the north and to the east.
    pub balanced: Vec<(Length, Length)>,
}

impl Traverse {
    /// Balances a walk. None without legs, or without length. Source:
    /// [`Source::CompassRule`].
    pub fn of(legs: &[Leg]) -> Option<Known<Self>> {
        let sum = |of: fn(&Leg) -> Length| legs.iter().map(of).fold(Length::ZERO, |sum, next| sum + next);
        let (north, east, perimeter) = (sum(|leg| leg.north), sum(|leg| leg.east), sum(|leg| leg.length));
        if !perimeter.is_positive() {
            return None;
        }
        let balance = |leg: &Leg| {
            let share = leg.length.to_inches() / perimeter.to_inches();
            (leg.north - north.scaled(share), leg.east - east.scaled(share))
        };
        let value = Self { north, east, perimeter, balanced: legs.iter().map(balance).collect() };
        let why = Why::rule("Each leg takes as much of the error as it is long.", &[Source::CompassRule]);
        Some(Known { value, assumed: Vec::new(), doubts: Vec::new(), why })
    }

    /// How far from its start the walk ends.
    pub fn misclosure(&self) -> Length {
        self.north.hypot(self.east)
    }

    /// One part in so many; none where it closes exactly.
    pub fn one_in(&self) -> Option<f64> {
        let misclosure = self.misclosure();
        misclosure.is_positive().then(|| self.perimeter.to_inches() / misclosure.to_inches())
    }

    /// The corners, balanced, as north and east of the first.
    pub fn corners(&self) -> Vec<(Length, Length)> {
        let mut at = (Length::ZERO, Length::ZERO);
        let step = |leg: &(Length, Length)| {
            let here = at;
            at = (at.0 + leg.0, at.1 + leg.1);
            here
        };
        self.balanced.iter().map(step).collect()
    }

    /// What it goes around.
    pub fn area(&self) -> Area {
        let corners = self.corners();
        let pairs = corners.iter().zip(corners.iter().cycle().skip(1));
        pairs.fold(Area::ZERO, |sum, (a, b)| sum + a.0 * b.1 - b.0 * a.1).half().abs()
    }
}

/// How far a parallelogram is from a rectangle, by its two diagonals: the angle that its
/// corners are off by, and what that comes to over its second side. Source:
/// [`Source::Geometry`].
pub fn out_of_square(length: Length, width: Length, [one, other]: [Length; 2]) -> (Angle, Length) {
    let square = |length: Length| length.to_inches() * length.to_inches();
    let sides = 4.0 * length.to_inches() * width.to_inches();
    let cosine = ((square(one) - square(other)) / sides).clamp(-1.0, 1.0);
    (Angle::from_radians(libm::asin(cosine)), width.scaled(cosine))
}
