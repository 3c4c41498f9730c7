//! What a plan is drawn from: plain positions and texts.

use crate::engine::geometry::{Axis, Heading, Outline, Point, Rect};
use crate::engine::units::{Length, MoistureContent};

/// Everything that a plan can show. What is absent is not drawn.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PlanInput {
    /// The drawing in words.
    pub title: String,
    /// The walls.
    pub walls: Walls,
    /// What comes out.
    pub openings: Vec<Opening>,
    /// What stands in the floor.
    pub standing: Vec<Opening>,
    /// Where the old floor is cut.
    pub cut_backs: Vec<Rect>,
    /// Where the finished floor over it is cut.
    pub finish_lines: Vec<Rect>,
    /// The joists.
    pub joists: Option<Joists>,
    /// The moisture readings.
    pub readings: Vec<Reading>,
    /// What their numbers are, in a few words at the foot of the plan.
    pub legend: Option<&'static str>,
    /// Places that have no reading yet.
    pub unread: Vec<Point>,
    /// Where the next entry goes.
    pub cursor: Option<Point>,
    /// The mark that the room and the crawl space have in common.
    pub common_mark: Option<CommonMark>,
    /// What the walk misses its start by.
    pub gap: Option<Gap>,
    /// Which way on the plan is north, seen from above.
    pub north: Option<Heading>,
    /// A word to show where there is nothing to draw yet.
    pub note: Option<String>,
}

/// The walls with the lengths of their sides, as they are to be printed. A side
/// whose text is empty or missing gets no dimension.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Walls {
    /// A walk that has not come round, or not been closed.
    Open {
        /// The corners reached, the start first.
        corners: Vec<Point>,
        /// The text of side 0, 1, …
        sides: Vec<String>,
    },
    /// A closed outline.
    Closed {
        /// The outline.
        outline: Outline,
        /// The texts in the order of the outline's sides, which run clockwise; see
        /// [`Closed::side`](crate::engine::geometry::Closed::side).
        sides: Vec<String>,
    },
}

/// Joists, all running one way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Joists {
    /// The way they run.
    pub run: Axis,
    /// Each of them.
    pub joists: Vec<Joist>,
}

/// One joist.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Joist {
    /// Where its centre line lies, across its run.
    pub at: Length,
    /// Its number, as it is called.
    pub number: u32,
}

/// Something that is cut out of the floor, or stands in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Opening {
    /// Where it lies.
    pub rect: Rect,
    /// Its name; empty for none.
    pub label: String,
}

/// A moisture reading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reading {
    /// Where it was taken.
    pub at: Point,
    /// The number as it is to be printed, or a short word.
    pub text: String,
    /// The moisture that its colour stands for.
    pub moisture: MoistureContent,
    /// Whether there is more to say of it.
    pub mark: ReadingMark,
}

/// Whether there is more to say of a reading than its number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum ReadingMark {
    /// No.
    #[default]
    Plain,
    /// Somebody should look at it.
    Flagged,
    /// It lies off the meter's scale.
    OffScale,
}

/// A mark that is found both from above and from below.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CommonMark {
    /// Where it is.
    pub at: Point,
    /// What it is; empty for no name.
    pub label: String,
}

/// A walk's misclosure.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Gap {
    /// The walk's start.
    pub from: Point,
    /// Its end.
    pub to: Point,
    /// How much it is, as it is to be printed.
    pub text: String,
}

/// How a plan is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct View {
    /// From below, as one lies under the floor: left and right change places, and
    /// texts stay readable.
    pub from_below: bool,
}

impl Default for Walls {
    fn default() -> Self {
        Self::Open { corners: Vec::new(), sides: Vec::new() }
    }
}

impl Walls {
    /// The corners in turn.
    pub(super) fn corners(&self) -> &[Point] {
        match self {
            Self::Open { corners, .. } => corners,
            Self::Closed { outline, .. } => outline.corners(),
        }
    }

    /// The outline, once there is one.
    pub(super) const fn outline(&self) -> Option<&Outline> {
        match self {
            Self::Open { .. } => None,
            Self::Closed { outline, .. } => Some(outline),
        }
    }

    /// The texts of the sides.
    pub(super) fn sides(&self) -> &[String] {
        match self {
            Self::Open { sides, .. } | Self::Closed { sides, .. } => sides,
        }
    }
}

impl PlanInput {
    /// Every point that the plan must show, joists apart.
    pub(super) fn points(&self) -> impl Iterator<Item = Point> {
        let corners = self.walls.corners().iter().copied();
        let placed = self.openings.iter().chain(&self.standing).map(|placed| placed.rect);
        let lines = self.cut_backs.iter().chain(&self.finish_lines).copied();
        let rects = placed.chain(lines).flat_map(|rect| [rect.least(), rect.most()]);
        let readings = self.readings.iter().map(|reading| reading.at);
        let gap = self.gap.iter().flat_map(|gap| [gap.from, gap.to]);
        let marks = self.common_mark.iter().map(|mark| mark.at);
        corners
            .chain(rects)
            .chain(readings)
            .chain(self.unread.iter().copied())
            .chain(self.cursor)
            .chain(marks)
            .chain(gap)
    }
}
