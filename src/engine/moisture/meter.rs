//! What has to be known of a moisture meter before its readings can be corrected.

use super::Species;
use crate::engine::entry::Label;
use crate::engine::units::{MoistureContent, Temperature, Typed};
use serde::{Deserialize, Serialize};

/// A moisture meter as its manual describes it and as it is set.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Meter {
    /// What the crew calls it.
    pub label: Label,
    /// What it senses.
    pub sensing: Sensing,
    /// The wood that its scale is for; left out when that is not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scale: Option<Species>,
    /// The wood temperature at which it reads true; left out when that is not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reference: Option<Typed<Temperature>>,
    /// Is what it shows already corrected for the wood's temperature?
    pub corrects_temperature: Answer,
    /// Is what it shows already corrected for the wood's species?
    pub corrects_species: Answer,
    /// The least that it can show; left out when that is not known. Since 1.5.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minimum: Option<Typed<MoistureContent>>,
    /// The most that it can show; left out when that is not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub maximum: Option<Typed<MoistureContent>>,
}

/// What a meter senses.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Sensing {
    /// The electrical resistance between two pins.
    Pin,
    /// A field under a plate: density as well as moisture.
    Pinless,
}

impl Sensing {
    /// Every kind, in the order that a choice shows them.
    pub const ALL: [Self; 2] = [Self::Pin, Self::Pinless];

    /// The kind in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Pin => "pins",
            Self::Pinless => "pinless",
        }
    }
}

/// An answer that may be honestly missing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Answer {
    /// It does.
    Yes,
    /// It does not.
    No,
    /// Nobody knows.
    Unknown,
}

impl Answer {
    /// Every answer, in the order that a choice shows them.
    pub const ALL: [Self; 3] = [Self::Yes, Self::No, Self::Unknown];

    /// The answer in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Yes => "yes",
            Self::No => "no",
            Self::Unknown => "not known",
        }
    }
}
