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
    /// A wire in the bay.
    Wire,
    /// A pipe or duct in the bay.
    Pipe,
}

impl Finding {
    /// Every finding, in the order that a choice shows them.
    pub const ALL: [Self; 12] = [
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
        Self::Wire,
        Self::Pipe,
    ];

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
            Self::Wire => "Wire in bay",
            Self::Pipe => "Pipe in bay",
        }
    }
}
