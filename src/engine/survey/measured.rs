//! What a tape, a laser or a level gives: the payloads of entries.

use super::adjust::Accuracy;
use crate::engine::entry::{EntryId, Label};
use crate::engine::geometry::Turn;
use crate::engine::job::Job;
use crate::engine::units::{Angle, Length, Typed};
use serde::{Deserialize, Serialize};

/// A room whose floor is measured.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Room {
    /// What people call it.
    pub name: Label,
}

/// One side of a room, walked from corner to corner, and the turn at its end.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Side {
    /// The room.
    pub room: EntryId,
    /// The side that it follows; none for the first. A side that was forgotten is
    /// put in by following the one before it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub after: Option<EntryId>,
    /// How long it is.
    pub length: Typed<Length>,
    /// Which way the wall turns at its end, walking with the room on the right.
    pub turn: Turn,
    /// What it was measured with.
    #[serde(default, skip_serializing_if = "Ruler::is_tape")]
    pub by: Ruler,
}

/// A straight length from one corner of a room to another: a diagonal, or a side
/// measured again.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Tie {
    /// The side that starts at the one corner.
    pub from: EntryId,
    /// The side that starts at the other.
    pub to: EntryId,
    /// How far apart they are.
    pub length: Typed<Length>,
    /// What it was measured with.
    #[serde(default, skip_serializing_if = "Ruler::is_tape")]
    pub by: Ruler,
}

/// Where a corner lies beside a line from one corner to another: a string, a chalk line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Offset {
    /// The side that starts at the corner.
    pub of: EntryId,
    /// The side that starts where the line does.
    pub from: EntryId,
    /// The side that starts where it ends.
    pub to: EntryId,
    /// How far along the line it lies, from the line's start; less than nothing before it.
    pub along: Typed<Length>,
    /// How far from the line it lies, square to it.
    pub out: Typed<Length>,
    /// To which side of it, walking along it.
    pub side: Turn,
    /// What it was measured with.
    #[serde(default, skip_serializing_if = "Ruler::is_tape")]
    pub by: Ruler,
}

/// What is known of a corner beyond that the wall turns there. Without any the corner
/// is taken to be square, as built.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Corner {
    /// The side that starts at the corner.
    pub at: EntryId,
    /// The angle between its two walls, less than a straight wall whichever side the
    /// room is on; none for a right angle.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub angle: Option<Typed<Angle>>,
    /// How far to believe that.
    pub trust: Trust,
}

/// How far an angle is believed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Trust {
    /// As far as walls are usually built.
    #[default]
    Built,
    /// It was checked: with a square, a 3-4-5 triangle.
    Checked,
    /// Not at all: lengths fix the shape.
    Released,
}

/// What a length was measured with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Ruler {
    /// A tape.
    #[default]
    Tape,
    /// A hand-held laser.
    Laser,
    /// Paces.
    Paces,
}

/// A part of the floor that is to come out: a rectangle placed by offsets from a corner.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Opening {
    /// The side whose starting corner the offsets are taken from.
    pub from: EntryId,
    /// Along that side from the corner.
    pub along: Typed<Length>,
    /// Into the room from that side.
    pub out: Typed<Length>,
    /// Size along the side.
    pub length: Typed<Length>,
    /// Size into the room.
    pub width: Typed<Length>,
}

/// The whole floor of a room is to come out, wall to wall.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct WholeFloor {
    /// The room.
    pub room: EntryId,
}

/// Something that stands in the floor, so that no sheet covers it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Obstacle {
    /// What it is.
    pub what: ObstacleKind,
    /// The floor that it takes, placed as an opening is.
    pub takes: Opening,
}

/// What can stand in a floor.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum ObstacleKind {
    /// A chimney.
    Chimney,
    /// A post.
    Post,
    /// A duct that ends in the floor.
    Duct,
}

impl ObstacleKind {
    /// All, in the order that a choice shows them.
    pub const ALL: [Self; 3] = [Self::Chimney, Self::Post, Self::Duct];

    /// The word.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Chimney => "Chimney",
            Self::Post => "Post",
            Self::Duct => "Duct",
        }
    }
}

impl Trust {
    /// All, in the order that a choice shows them.
    pub const ALL: [Self; 3] = [Self::Built, Self::Checked, Self::Released];

    /// The word.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Built => "as built",
            Self::Checked => "checked",
            Self::Released => "not to be trusted",
        }
    }
}

impl Ruler {
    /// All, in the order that a choice shows them.
    pub const ALL: [Self; 3] = [Self::Tape, Self::Laser, Self::Paces];

    /// The word.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Tape => "tape",
            Self::Laser => "laser",
            Self::Paces => "paces",
        }
    }

    /// How well it measures: as stated, or else as usual.
    pub fn accuracy(self, job: &Job) -> Accuracy {
        let usual = self.usual_accuracy();
        Accuracy { constant: self.stated(job).map_or(usual.constant, |stated| stated.value), ..usual }
    }

    /// How well it measures, if somebody has said.
    pub fn stated(self, job: &Job) -> Option<&Typed<Length>> {
        match self {
            Self::Tape => job.tape_within(),
            Self::Laser => job.laser_within(),
            Self::Paces => job.paces_within(),
        }
    }

    /// The usual accuracy in words.
    pub const fn usually(self) -> &'static str {
        match self {
            Self::Tape => "a tape within 1/16 in and 1 in 4,800",
            Self::Laser => "a laser within 1/16 in",
            Self::Paces => "paces within 6 in and 2 %",
        }
    }

    const fn usual_accuracy(self) -> Accuracy {
        match self {
            Self::Tape => Accuracy::TAPE,
            Self::Laser => Accuracy::LASER,
            Self::Paces => Accuracy::PACED,
        }
    }

    #[expect(clippy::trivially_copy_pass_by_ref, reason = "serde hands a reference")]
    fn is_tape(&self) -> bool {
        *self == Self::Tape
    }
}

/// Any other length, by name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Measure {
    /// What was measured.
    pub what: Label,
    /// How long it is.
    pub length: Typed<Length>,
    /// Where, if it hangs on a place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<EntryId>,
}

/// A level reading: from the laser's plane down to the wood at a place. A larger
/// reading is a lower place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Level {
    /// Where.
    pub place: EntryId,
    /// Down from the laser's plane.
    pub drop: Typed<Length>,
}
