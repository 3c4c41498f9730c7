//! The joists under a room: where spacing puts them, and where they were measured.

use crate::engine::entry::EntryId;
use crate::engine::geometry::{Axis, Point};
use crate::engine::job::Job;
use crate::engine::place::JoistNumber;
use crate::engine::units::{Length, Typed};
use crate::order;
use litemap::LiteMap;
use serde::{Deserialize, Serialize};

/// Evenly spaced joists under a room.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Joists {
    /// The room above them.
    pub room: EntryId,
    /// Which way they run on the plan.
    pub run: Run,
    /// From the first corner to the center of joist 1, square to the run.
    pub first: Typed<Length>,
    /// Center to center.
    pub spacing: Typed<Length>,
    /// How many there are.
    pub count: u16,
    /// Where distances along them start.
    #[serde(default, skip_serializing_if = "AlongFrom::is_first_corner")]
    pub along: AlongFrom,
}

/// Where distances along joists start.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum AlongFrom {
    /// At the first corner, whether a wall is there that the joist meets or not: as every
    /// job before format 1.5.
    #[default]
    FirstCorner,
    /// At the first wall that the joist itself meets.
    Wall,
}

impl AlongFrom {
    #[expect(clippy::trivially_copy_pass_by_ref, reason = "serde hands a reference")]
    fn is_first_corner(&self) -> bool {
        *self == Self::FirstCorner
    }
}

/// Which way joists run on the plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Run {
    /// Along the first side; numbered away from it.
    AlongFirstSide,
    /// Square to the first side; numbered along it.
    AcrossFirstSide,
}

/// Where the center of one joist is, as measured: what spacing says of it no longer counts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct JoistCenter {
    /// The joists that it is one of.
    pub of: EntryId,
    /// Its number.
    pub joist: JoistNumber,
    /// From the first corner to its center, square to the run.
    pub center: Typed<Length>,
}

impl Run {
    /// Both, in the order that a choice shows them.
    pub const ALL: [Self; 2] = [Self::AcrossFirstSide, Self::AlongFirstSide];

    /// How far a point lies across joists that run this way.
    pub const fn across(self, point: Point) -> Length {
        match self {
            Self::AcrossFirstSide => point.x,
            Self::AlongFirstSide => point.y,
        }
    }

    /// How far a point lies along them.
    pub const fn along(self, point: Point) -> Length {
        match self {
            Self::AcrossFirstSide => point.y,
            Self::AlongFirstSide => point.x,
        }
    }

    /// The point so far across them and so far along.
    pub const fn point(self, across: Length, along: Length) -> Point {
        match self {
            Self::AcrossFirstSide => Point::new(across, along),
            Self::AlongFirstSide => Point::new(along, across),
        }
    }

    /// The point as far across them as `at`.
    pub const fn with_across(self, point: Point, at: Length) -> Point {
        self.point(at, self.along(point))
    }

    /// Which way of the page that is.
    pub const fn axis(self) -> Axis {
        match self {
            Self::AlongFirstSide => Axis::X,
            Self::AcrossFirstSide => Axis::Y,
        }
    }

    /// The direction in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::AlongFirstSide => "along side 1",
            Self::AcrossFirstSide => "across side 1",
        }
    }
}

/// The joists of a room, each where it is. Derived from the job, never kept.
#[derive(Debug, Clone, PartialEq)]
pub struct Framing {
    /// The entry that laid them out.
    pub id: EntryId,
    /// As they were laid out.
    pub laid_out: Joists,
    /// Centers that were measured, with the entry that says so; the latest of each.
    pub measured: LiteMap<JoistNumber, (EntryId, Length)>,
}

impl Framing {
    /// The joist whose center is nearest to a point.
    pub fn nearest(&self, point: Point) -> Option<JoistNumber> {
        let across = self.run().across(point);
        let nearest = (1..=self.count()).min_by_key(|number| (self.center(*number) - across).abs());
        nearest.and_then(JoistNumber::new)
    }

    /// The joists that were laid out last under a room.
    pub fn under(job: &Job, room: EntryId) -> Option<Self> {
        let laid_out = job.now.joists().iter().rev().find(|(_, joists)| joists.value.room == room);
        let (id, laid_out) = laid_out.map(|(id, joists)| (*id, joists.value.clone()))?;
        let of_them = job.now.joist_centers().iter().filter(|(_, center)| center.value.of == id);
        let measured = of_them.map(|(entry, center)| (center.value.joist, (*entry, center.value.center.value)));
        Some(Self { id, measured: order::map(measured), laid_out })
    }

    /// Which way they run on the plan.
    pub const fn run(&self) -> Run {
        self.laid_out.run
    }

    /// How many there are.
    pub const fn count(&self) -> u16 {
        self.laid_out.count
    }

    /// From the first corner to the center of a joist, square to the run: as measured, or
    /// else as spaced.
    pub fn center(&self, number: u16) -> Length {
        let measured = JoistNumber::new(number).and_then(|joist| self.measured.get(&joist));
        measured.map_or_else(|| self.laid_out.center(number), |(_, center)| *center)
    }

    /// Every center, by number.
    pub fn centers(&self) -> impl Iterator<Item = Length> {
        (1..=self.count()).map(|number| self.center(number))
    }

    /// The widest distance from one center to the next.
    pub fn widest_spacing(&self) -> Length {
        let widest = self.centers().zip(self.centers().skip(1)).map(|(one, next)| next - one).max();
        widest.unwrap_or(self.laid_out.spacing.value)
    }

    /// The first joist that lies no farther than the one before it: one of the two was
    /// measured wrongly.
    pub fn out_of_order(&self) -> Option<u16> {
        (2..=self.count()).find(|number| self.center(*number) <= self.center(number - 1))
    }
}

impl Joists {
    /// Where spacing puts the center of a joist.
    fn center(&self, number: u16) -> Length {
        self.first.value + self.spacing.value * (i64::from(number) - 1)
    }
}

impl JoistCenter {
    /// Where that is in words.
    pub fn name(&self) -> String {
        format!("Joist {}, center", self.joist.get())
    }
}
