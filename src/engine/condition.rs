//! Conditions: what eyes, an awl and a nose say at a place.

use super::entry::{EntryId, Note};
use serde::{Deserialize, Serialize};

/// What was found at a place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Condition {
    /// Where, if it hangs on a place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<EntryId>,
    /// What was found.
    pub finding: Finding,
    /// More, in words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<Note>,
}

/// A finding that one tap can log.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Finding {
    /// The awl stops at once.
    Sound,
    /// The awl goes in.
    Soft,
    /// The wood crumbles or is gone.
    Rotten,
    /// Stained, but hard.
    Stained,
    /// Mould growth.
    Mould,
    /// Insect holes, frass or tubes.
    Insects,
    /// Split, notched or broken.
    Cracked,
    /// Droplets or a wet film.
    Dripping,
    /// Water lying on the ground or the cover.
    StandingWater,
    /// Sewage.
    Sewage,
    /// Strands or fans of a fungus that carries its own water.
    Strands,
    /// A bare or hanging wire.
    BareWire,
    /// A wire in the bay.
    Wire,
    /// A pipe or duct in the bay.
    Pipe,
    /// A sink above.
    SinkAbove,
    /// A toilet above.
    ToiletAbove,
    /// A tub or a shower above.
    BathAbove,
    /// A washer above.
    WasherAbove,
    /// A water heater above.
    HeaterAbove,
    /// A door to the outside above.
    DoorAbove,
    /// A window above.
    WindowAbove,
    /// A duct or a cold pipe that sweats or may.
    ColdRun,
}

impl Finding {
    /// What wood and ground are like, in the order that a choice shows it.
    pub const OF_WOOD: [Self; 11] = [
        Self::Sound,
        Self::Soft,
        Self::Rotten,
        Self::Stained,
        Self::Mould,
        Self::Insects,
        Self::Cracked,
        Self::Dripping,
        Self::StandingWater,
        Self::Sewage,
        Self::Strands,
    ];

    /// What is above or beside a place, and may be where water comes from or what a blade
    /// must not meet.
    pub const AROUND: [Self; 11] = [
        Self::Wire,
        Self::BareWire,
        Self::Pipe,
        Self::SinkAbove,
        Self::ToiletAbove,
        Self::BathAbove,
        Self::WasherAbove,
        Self::HeaterAbove,
        Self::DoorAbove,
        Self::WindowAbove,
        Self::ColdRun,
    ];

    /// May water come from it?
    pub const fn is_fixture(self) -> bool {
        self.is_plumbing() || self.is_rain_opening() || self.is_cold_run()
    }

    /// Does it have supply and drain?
    pub const fn is_plumbing(self) -> bool {
        matches!(self, Self::SinkAbove | Self::ToiletAbove | Self::BathAbove | Self::WasherAbove | Self::HeaterAbove)
    }

    /// Can rain come in by it?
    pub const fn is_rain_opening(self) -> bool {
        matches!(self, Self::DoorAbove | Self::WindowAbove)
    }

    /// Can it be cold enough to sweat?
    pub const fn is_cold_run(self) -> bool {
        matches!(self, Self::ColdRun)
    }

    /// The finding in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Sound => "Sound",
            Self::Soft => "Soft",
            Self::Rotten => "Rotten",
            Self::Stained => "Stained, hard",
            Self::Mould => "Mold",
            Self::Insects => "Insects",
            Self::Cracked => "Cracked",
            Self::Dripping => "Dripping",
            Self::StandingWater => "Standing water",
            Self::Sewage => "Sewage",
            Self::Strands => "Strands or fans",
            Self::BareWire => "Bare wire",
            Self::Wire => "Wire in bay",
            Self::Pipe => "Pipe in bay",
            Self::SinkAbove => "Sink above",
            Self::ToiletAbove => "Toilet above",
            Self::BathAbove => "Bath above",
            Self::WasherAbove => "Washer above",
            Self::HeaterAbove => "Water heater above",
            Self::DoorAbove => "Door above",
            Self::WindowAbove => "Window above",
            Self::ColdRun => "Duct or cold pipe",
        }
    }
}
