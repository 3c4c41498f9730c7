//! What an awl or a tape says of one spot of a member: soft wood, a notch, a hole.

use crate::engine::particular::Part;
use crate::engine::place::Face;
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::units::{Length, Typed};
use serde::{Deserialize, Serialize};

/// What counts as lost beyond what an awl finds soft ([`Source::SoftCountsNothing`]).
pub const BEYOND_SOFT: Length = Length::sixty_fourths(16);
/// How far an awl's depth can be off: as good as a third is a third (judgement).
pub const AWL_ERROR: Length = Length::sixty_fourths(4);

/// One spot of a member. A member may have any number of them.
///
/// What was not said is none, and is asked for: it never counts as the mild case.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Damage {
    /// The member.
    pub of: Part,
    /// What it is.
    pub kind: DamageKind,
    /// Where it begins, along the member, from the wall that the job names.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from: Option<Typed<Length>>,
    /// Where it ends.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<Typed<Length>>,
    /// On which face or edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub face: Option<Face>,
    /// How deep it goes; how high a hole is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth: Option<Depth>,
    /// From a hole to the nearest edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to_edge: Option<Typed<Length>>,
}

/// What a spot is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum DamageKind {
    /// Where an awl was pushed in. A depth of 0 says that it stopped.
    Soft,
    /// Cut out of an edge.
    Notch,
    /// Bored or cut through.
    Hole,
}

/// How deep a spot goes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Depth {
    /// As measured.
    Is(Typed<Length>),
    /// Nobody can get at it.
    CannotReach,
}

impl DamageKind {
    /// All, in the order that a choice shows them.
    pub const ALL: [Self; 3] = [Self::Soft, Self::Notch, Self::Hole];

    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Soft => "Awl",
            Self::Notch => "Notch",
            Self::Hole => "Hole",
        }
    }

    /// What it says of its member, inside a sentence.
    pub const fn found(self) -> &'static str {
        match self {
            Self::Soft => "soft",
            Self::Notch => "notched",
            Self::Hole => "a hole",
        }
    }
}

impl Damage {
    /// A spot of which nothing is known yet but what it is.
    pub const fn new(of: Part, kind: DamageKind) -> Self {
        Self { of, kind, from: None, to: None, face: None, depth: None, to_edge: None }
    }

    /// Its depth, if it was measured.
    pub fn depth(&self) -> Option<Length> {
        match self.depth.as_ref()? {
            Depth::Is(typed) => Some(typed.value),
            Depth::CannotReach => None,
        }
    }

    /// Does it speak against its member? An awl that stopped does not.
    pub fn is_bad(&self) -> bool {
        self.kind != DamageKind::Soft || self.depth() != Some(Length::ZERO)
    }
}
