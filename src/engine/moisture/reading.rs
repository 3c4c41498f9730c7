//! What a meter is and what it shows: the payloads of entries.

use crate::engine::entry::{EntryId, Label};
use crate::engine::units::{MoistureContent, Temperature, Typed};
use serde::{Deserialize, Serialize};

/// A moisture meter, described once per phone.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Meter {
    /// What tells it from another.
    pub label: Label,
    /// How it senses.
    pub sensing: Sensing,
    /// The wood that its scale is for; none if unknown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scale: Option<Species>,
    /// The wood temperature that its scale is for; none if unknown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reference: Option<Typed<Temperature>>,
    /// Does it correct for temperature itself?
    pub corrects_temperature: Answer,
    /// Does it correct for species itself?
    pub corrects_species: Answer,
    /// The most that it shows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub maximum: Option<Typed<MoistureContent>>,
}

/// How a meter senses.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Sensing {
    /// Electrical resistance between pins.
    Pin,
    /// An electric field through the surface.
    Pinless,
}

/// Yes, no, or nobody knows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Answer {
    /// Yes.
    Yes,
    /// No.
    No,
    /// Nobody knows.
    #[default]
    Unknown,
}

/// A moisture reading.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Reading {
    /// Where.
    pub place: EntryId,
    /// With which meter; none if nobody described it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub meter: Option<EntryId>,
    /// What the meter showed.
    pub shown: Shown,
    /// The wood.
    #[serde(default)]
    pub wood: Wood,
    /// How warm the wood was, if it was measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wood_temperature: Option<Typed<Temperature>>,
}

/// What a meter showed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Shown {
    /// A number.
    Percent(Typed<MoistureContent>),
    /// More than it can show.
    OverMaximum,
}

/// The wood that was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Wood {
    /// Solid or made up.
    #[serde(default)]
    pub material: Material,
    /// Its species, if known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub species: Option<Species>,
}

/// What a piece is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Material {
    /// Untreated lumber.
    #[default]
    Solid,
    /// Preservative-treated lumber.
    Treated,
    /// Plywood.
    Plywood,
    /// Oriented strand board.
    Osb,
}

/// A species or a trade group of species.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Species {
    /// Douglas-fir, coast type.
    DouglasFir,
    /// Western hemlock.
    WesternHemlock,
    /// White fir.
    WhiteFir,
    /// Longleaf pine.
    LongleafPine,
    /// Shortleaf pine.
    ShortleafPine,
    /// Ponderosa pine.
    PonderosaPine,
    /// Sitka spruce.
    SitkaSpruce,
    /// Redwood.
    Redwood,
    /// Southern pine, unsorted: longleaf, shortleaf, loblolly.
    SouthernPine,
    /// Hem-fir: hemlock and true firs.
    HemFir,
    /// Spruce-pine-fir.
    SprucePineFir,
    /// Western redcedar.
    WesternRedcedar,
}
