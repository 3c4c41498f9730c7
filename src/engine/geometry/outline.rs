//! A closed simple outline, valid by construction.

use super::{Meeting, Point, Rect, Segment, Turn, Vector, Walk};
use crate::engine::units::limits::LENGTH;
use crate::engine::units::{Angle, Area, Length};
use crate::order;
use std::fmt;

/// The most corners an outline may have. A room has a dozen; the check of every
/// side against every other takes the square of it, and the corners of a walk
/// this long still lie where no sum can overflow.
pub const MOST_CORNERS: usize = 500;

/// How far from the origin a corner may lie along either axis: as far as
/// [`MOST_CORNERS`] sides of the longest length reach.
const FARTHEST: i64 = LENGTH.most * MOST_CORNERS as i64;

/// A closed outline whose sides neither cross nor touch one another except at
/// their common corners, so that it has an inside and some area. The sides may
/// slant.
///
/// The corners run clockwise on the page, whichever way round they were given,
/// and the first one given stays the first.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Outline {
    corners: Vec<Point>,
}

/// What keeps corners from being an outline. Sides are counted from 0 in the
/// order given: side 0 runs from corner 0 to corner 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Problem {
    /// Fewer than three corners.
    TooFewCorners {
        /// How many there are.
        corners: usize,
    },
    /// More than [`MOST_CORNERS`].
    TooManyCorners {
        /// How many there are.
        corners: usize,
    },
    /// A corner so far from the origin that no walk of [`MOST_CORNERS`] sides gets there.
    TooFar {
        /// Which corner.
        corner: usize,
    },
    /// The walk has not turned once round, so there is nothing to close.
    NotRound {
        /// How far it has turned, clockwise positive.
        turned: Angle,
    },
    /// A side that ends where it starts.
    NoLength {
        /// Which side.
        side: usize,
    },
    /// A side that runs back over the one before it.
    FoldsBack {
        /// Which side.
        side: usize,
    },
    /// Two sides that cross.
    Crossing {
        /// The earlier side.
        first: usize,
        /// The later side.
        second: usize,
    },
    /// Two sides, not neighbours, that touch or share a stretch.
    Touching {
        /// The earlier side.
        first: usize,
        /// The later side.
        second: usize,
    },
}

/// A walk closed to an outline.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Closed {
    /// The outline as walked, its last side running straight to the start.
    pub outline: Outline,
    /// How far the walk's last corner was moved to get there: nothing when the walk
    /// closes exactly. To be shown; sharing it out over the sides is an adjustment,
    /// and not done here.
    pub moved: Vector,
    /// Which way round the room was walked.
    pub turned: Turn,
}

impl Outline {
    /// The outline through `corners`, closed from the last to the first.
    ///
    /// # Errors
    /// Every [`Problem`] there is, not only the first.
    pub fn new(corners: Vec<Point>) -> Result<Self, Vec<Problem>> {
        let problems = problems(&corners);
        if !problems.is_empty() {
            return Err(problems);
        }
        let given = Self { corners };
        Ok(if given.doubled_area() < Area::ZERO { given.reversed() } else { given })
    }

    /// Closes a walk that has turned once round: its last corner is moved onto its
    /// start, by whatever the gap is, so that the last side may slant. Whether the
    /// gap is small enough to believe is [`Walk::has_come_round`]'s question.
    ///
    /// # Errors
    /// Every [`Problem`], the sides counted as walked.
    pub fn close(walk: &Walk) -> Result<Closed, Vec<Problem>> {
        let turned = walk.turned_round().ok_or_else(|| vec![Problem::NotRound { turned: walk.turned() }])?;
        let outline = Self::new(walk.sides().map(|side| side.from).collect())?;
        Ok(Closed { outline, moved: -walk.closing_error().gap, turned })
    }

    /// The corners, clockwise on the page.
    pub fn corners(&self) -> &[Point] {
        &self.corners
    }

    /// The sides, clockwise on the page, the last one ending at the first corner.
    pub fn sides(&self) -> impl Iterator<Item = Segment> {
        ring(&self.corners)
    }

    /// Its area: exact when every side runs along an axis, else to half a square
    /// nanometre.
    pub fn area(&self) -> Area {
        self.doubled_area().half()
    }

    /// The sum of its sides.
    pub fn perimeter(&self) -> Length {
        self.sides().map(Segment::length).sum()
    }

    /// The least rectangle around it.
    pub fn bounds(&self) -> Rect {
        Rect::around(&self.corners)
    }

    /// The same outline on a plan seen from below. Its first corner stays the first.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        Self { corners: self.corners.iter().map(|corner| corner.mirrored()).collect() }.reversed()
    }

    /// Twice the area, negative if the corners run counter-clockwise.
    fn doubled_area(&self) -> Area {
        // Seen from a corner of its own, an outline far from the origin makes no
        // larger products than one at it.
        let Some(&pole) = self.corners.first() else {
            return Area::ZERO;
        };
        self.sides().map(|side| (side.from - pole).cross(side.to - pole)).sum()
    }

    /// The other way round from the same first corner.
    fn reversed(mut self) -> Self {
        self.corners.reverse();
        self.corners.rotate_right(1);
        self
    }
}

impl Closed {
    /// The number that the walk's side `side` has in the outline, whose sides run
    /// clockwise even if the walk did not.
    pub fn side(&self, side: usize) -> Option<usize> {
        let sides = self.outline.corners.len();
        match self.turned {
            Turn::Right => (side < sides).then_some(side),
            Turn::Left => sides.checked_sub(side + 1),
        }
    }
}

/// The sides of a closed ring of corners.
fn ring(corners: &[Point]) -> impl Iterator<Item = Segment> {
    let ends = corners.iter().cycle().skip(1);
    corners.iter().zip(ends).map(|(&from, &to)| Segment { from, to })
}

/// All that is wrong with a ring of corners.
fn problems(corners: &[Point]) -> Vec<Problem> {
    if corners.len() < 3 {
        return vec![Problem::TooFewCorners { corners: corners.len() }];
    }
    if corners.len() > MOST_CORNERS {
        return vec![Problem::TooManyCorners { corners: corners.len() }];
    }
    let far: Vec<_> = too_far(corners).collect();
    if !far.is_empty() {
        return far;
    }
    let (sides, points): (Vec<_>, Vec<_>) = ring(corners).enumerate().partition(|(_, side)| side.from != side.to);
    let mut problems: Vec<_> = points.into_iter().map(|(side, _)| Problem::NoLength { side }).collect();
    problems.extend(folds(&sides));
    problems.extend(meetings(&sides));
    order::sort(&mut problems);
    problems
}

fn too_far(corners: &[Point]) -> impl Iterator<Item = Problem> {
    let is_far = |length: Length| !(-FARTHEST..=FARTHEST).contains(&length.to_nm());
    let far = corners.iter().enumerate().filter(move |(_, corner)| is_far(corner.x) || is_far(corner.y));
    far.map(|(corner, _)| Problem::TooFar { corner })
}

/// Sides that run back over the one before.
fn folds(sides: &[(usize, Segment)]) -> impl Iterator<Item = Problem> {
    let before = sides.iter().cycle().skip(sides.len().saturating_sub(1));
    let pairs = before.zip(sides).filter(|((_, before), (_, side))| before.is_folded_by(*side));
    pairs.map(|(_, &(side, _))| Problem::FoldsBack { side })
}

/// Sides, not neighbours, that have a point in common.
fn meetings(sides: &[(usize, Segment)]) -> Vec<Problem> {
    let mut problems = Vec::new();
    let last = sides.len().saturating_sub(1);
    for (place, &(first, a)) in sides.iter().enumerate() {
        // The next one is a neighbour, and so is the last one of the first.
        let others = sides.iter().enumerate().skip(place + 2).filter(|(other, _)| !(place == 0 && *other == last));
        for (_, &(second, b)) in others {
            match a.meets(b) {
                Meeting::Apart => {}
                Meeting::Touching => problems.push(Problem::Touching { first, second }),
                Meeting::Crossing => problems.push(Problem::Crossing { first, second }),
            }
        }
    }
    problems
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // People count sides and corners from 1.
        match *self {
            Self::TooFewCorners { corners } => write!(f, "an outline needs 3 corners, there are {corners}"),
            Self::TooManyCorners { corners } => {
                write!(f, "an outline may have {MOST_CORNERS} corners, there are {corners}")
            }
            Self::TooFar { corner } => write!(f, "corner {} is too far away", corner + 1),
            Self::NotRound { turned } => {
                write!(f, "the sides must turn once round (360°), they turn {:.0}°", turned.to_degrees().abs())
            }
            Self::NoLength { side } => write!(f, "side {} has no length", side + 1),
            Self::FoldsBack { side } => write!(f, "side {} runs back over the side before it", side + 1),
            Self::Crossing { first, second } => write!(f, "side {} crosses side {}", first + 1, second + 1),
            Self::Touching { first, second } => write!(f, "side {} touches side {}", first + 1, second + 1),
        }
    }
}

impl std::error::Error for Problem {}

#[cfg(test)]
mod tests;
