//! How far each joist reaches: from wall to wall, and which walls those are.

use super::{AlongFrom, Floor};
use crate::engine::geometry::{Outline, Point};
use crate::engine::place::{Face, JoistNumber};
use crate::engine::units::Length;

/// A part of a joist between two walls of its room, by how far they lie along it from the
/// first corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stretch {
    /// Where it starts.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// The number, from 1, of the side that it starts at.
    pub starts_at: usize,
    /// The number, from 1, of the side that it ends at.
    pub ends_at: usize,
}

/// What is there where distances along a joist start.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Start {
    /// Nobody knows: the room is not closed, or the joist is outside of it.
    Unknown,
    /// The wall at the first corner.
    AtTheCorner,
    /// Another wall, by the number of its side from 1.
    Side(usize),
    /// No wall: the joist meets one further in, and the job is of before format 1.5.
    NoWall,
}

impl Start {
    /// The words, of what has no name of its own in the job: the wall at the first corner has.
    pub fn words(self) -> Option<String> {
        match self {
            Self::Unknown | Self::AtTheCorner => None,
            Self::Side(side) => Some(format!("side {side}")),
            Self::NoWall => Some("the line of corner 1".to_owned()),
        }
    }
}

impl Floor {
    /// The room's outline from the corners that everything is placed from, if it has one.
    pub(super) fn placed_outline(&self) -> Option<Outline> {
        self.walk.turned_round()?;
        Outline::new(self.placed_corners().to_vec()).ok()
    }

    /// The parts of a joist between walls, in order. None where that is not known: before
    /// joists are laid out and the room is closed. A joist outside the room has no part.
    pub fn stretches(&self, joist: JoistNumber) -> Option<Vec<Stretch>> {
        let joists = self.joists.as_ref()?;
        let outline = self.placed_outline()?;
        let (run, across) = (joists.run(), joists.center(joist.get()));
        let bounds = outline.bounds();
        // A joist whose center lies under a wall runs along it, inside.
        let (least, most) = (run.across(bounds.least()), run.across(bounds.most()));
        let within = across.max(least).min(most - Length::nm(1));
        let chords = outline.chords(run.axis(), within);
        let side = |along: Length| self.side_at(run.point(within, along));
        Some(
            chords
                .into_iter()
                .map(|chord| Stretch {
                    from: chord.from,
                    to: chord.to,
                    starts_at: side(chord.from),
                    ends_at: side(chord.to),
                })
                .collect(),
        )
    }

    /// Where distances along a joist start: how far that lies from the first corner, and what
    /// is there.
    pub fn starts(&self, joist: JoistNumber) -> (Length, Start) {
        let from_wall = self.joists.as_ref().is_some_and(|joists| joists.laid_out.along == AlongFrom::Wall);
        let first = self.stretches(joist).and_then(|stretches| stretches.first().copied());
        match first {
            None => (Length::ZERO, Start::Unknown),
            Some(first) => {
                let start = if from_wall { first.from } else { Length::ZERO };
                let what = match first.from.abs() <= AT_THE_CORNER {
                    true => Start::AtTheCorner,
                    false if from_wall => Start::Side(first.starts_at),
                    false => Start::NoWall,
                };
                (start, what)
            }
        }
    }

    /// Where an end of a joist lies along it from the first corner, and the number of the
    /// side there.
    pub fn end(&self, joist: JoistNumber, face: Face) -> Option<(Length, usize)> {
        let stretches = self.stretches(joist)?;
        match face {
            Face::NearEnd => stretches.first().map(|first| (first.from, first.starts_at)),
            Face::FarEnd => stretches.last().map(|last| (last.to, last.ends_at)),
            _ => None,
        }
    }

    /// The number, from 1, of the side that a point of the outline lies on, rounding aside.
    fn side_at(&self, point: Point) -> usize {
        let corners = self.placed_corners();
        let ends = corners.iter().cycle().skip(1);
        let away = |(from, to): (&Point, &Point)| away(point, *from, *to);
        let nearest = corners.iter().zip(ends).map(away).enumerate().min_by(|a, b| a.1.total_cmp(&b.1));
        nearest.map_or(1, |(side, _)| side + 1)
    }
}

/// A wall so near to the first corner's line is that corner's: an old house is out of square
/// by that over a room (a judgement, no source).
const AT_THE_CORNER: Length = Length::inches(4);

/// How far a point is from a side, in inches.
fn away(point: Point, from: Point, to: Point) -> f64 {
    let at = |length: Length| length.to_inches();
    let (dx, dy) = (at(to.x - from.x), at(to.y - from.y));
    let (px, py) = (at(point.x - from.x), at(point.y - from.y));
    let along = ((px * dx + py * dy) / (dx * dx + dy * dy).max(1e-9)).clamp(0.0, 1.0);
    libm::hypot(px - along * dx, py - along * dy)
}
