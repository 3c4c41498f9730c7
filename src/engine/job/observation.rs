//! What an entry can say: one list, from which the enum, the job's shelves and their
//! upkeep all follow. A new kind of entry is a payload in its concern's folder and a
//! line here; the compiler then lists what else must know of it.

use super::fact::{Acknowledgement, Fact, HandOver, Visit};
use super::thing::{Kind, Shelf, Shelves};
use crate::engine::air::{AirReading, SurfaceReading};
use crate::engine::condition::Condition;
use crate::engine::framing::Damage;
use crate::engine::moisture::{Meter, Reading};
use crate::engine::origin::Check;
use crate::engine::particular::Particular;
use crate::engine::photo::Photo;
use crate::engine::place::Place;
use crate::engine::sheets::OnHand;
use crate::engine::survey::{
    Corner, CutBack, JoistCenter, Joists, Layer, Level, Measure, Obstacle, Offset, Opening, Room, Side, Tie, WholeFloor,
};
use serde::{Deserialize, Serialize};

macro_rules! observations {
    ($($(#[$docs:meta])* $variant:ident => $shelf:ident, $name:literal, $label:literal;)*) => {
        /// One thing that somebody saw, measured, said or did.
        #[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
        #[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
        pub enum Observation {
            $($(#[$docs])* #[serde(rename = $name)] $variant($variant),)*
        }

        impl Observation {
            /// The names that a job file uses.
            pub const NAMES: &'static [&'static str] = &[$($name),*];

            /// What kind of thing it is, in words.
            pub const fn label(&self) -> &'static str {
                match self {
                    $(Self::$variant(_) => $label,)*
                }
            }

            /// Is it of the same kind as `other`? A correction must be.
            pub fn same_kind(&self, other: &Self) -> bool {
                std::mem::discriminant(self) == std::mem::discriminant(other)
            }
        }

        $(impl From<$variant> for Observation {
            fn from(payload: $variant) -> Self {
                Self::$variant(payload)
            }
        })*

        $(impl Kind for $variant {
            fn of(observation: &Observation) -> Option<&Self> {
                match observation {
                    Observation::$variant(value) => Some(value),
                    _ => None,
                }
            }
        })*

        impl Shelves {
            $($(#[$docs])* pub const fn $shelf(&self) -> Shelf<'_, $variant> {
                self.shelf()
            })*
        }
    };
}

observations! {
    /// Facts about the job.
    Fact => facts, "fact", "job fact";
    /// Visits.
    Visit => visits, "visit", "visit";
    /// Places.
    Place => places, "place", "place";
    /// Rooms.
    Room => rooms, "room", "room";
    /// Sides of rooms.
    Side => sides, "side", "room side";
    /// Lengths from corner to corner.
    Tie => ties, "tie", "corner to corner";
    /// Corners beside a line.
    Offset => offsets, "offset", "offset from a line";
    /// What is known of corners.
    Corner => corners, "corner", "corner";
    /// Openings.
    Opening => openings, "opening", "opening";
    /// How far floors are cut back around openings.
    CutBack => cut_backs, "cut_back", "cut back";
    /// The old floor's layers, from the top down.
    Layer => layers, "layer", "layer of the old floor";
    /// Floors that come out whole.
    WholeFloor => whole_floors, "whole_floor", "whole floor";
    /// What stands in the floor.
    Obstacle => obstacles, "obstacle", "obstacle";
    /// Joist layouts.
    Joists => joists, "joists", "joists";
    /// Joists as measured one by one.
    JoistCenter => joist_centers, "joist_center", "joist center";
    /// Parts of sheets that are there already.
    OnHand => on_hand, "on_hand", "piece on hand";
    /// Other lengths.
    Measure => measures, "measure", "length";
    /// Level readings.
    Level => levels, "level", "level reading";
    /// Meters.
    Meter => meters, "meter", "meter";
    /// Moisture readings.
    Reading => readings, "reading", "moisture reading";
    /// Air readings.
    AirReading => air, "air", "air reading";
    /// Surface temperatures.
    SurfaceReading => surfaces, "surface", "surface temperature";
    /// Conditions.
    Condition => conditions, "condition", "condition";
    /// Soft spots, notches and holes.
    Damage => damages, "damage", "soft spot or cut";
    /// Questions of the checklist, answered.
    Check => checks, "check", "check";
    /// Particulars of the house.
    Particular => particulars, "particular", "particular";
    /// Photos.
    Photo => photos, "photo", "photo";
    /// Cautions read.
    Acknowledgement => acknowledged, "acknowledged", "caution read";
    /// Hand-overs.
    HandOver => hand_overs, "hand_over", "hand-over";
}
