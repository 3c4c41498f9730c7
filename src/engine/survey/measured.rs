//! What a tape, a laser or a level gives: the payloads of entries.

use crate::engine::entry::{EntryId, Label};
use crate::engine::geometry::Turn;
use crate::engine::units::{Length, Typed};
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

impl Run {
    /// Both, in the order that a choice shows them.
    pub const ALL: [Self; 2] = [Self::AcrossFirstSide, Self::AlongFirstSide];

    /// The direction in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::AlongFirstSide => "along side 1",
            Self::AcrossFirstSide => "across side 1",
        }
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
