//! What a thermo-hygrometer and a surface thermometer give: the payloads of entries.

use crate::engine::entry::{EntryId, Label};
use crate::engine::units::{RelativeHumidity, Temperature, Typed};
use serde::{Deserialize, Serialize};

/// Air, by temperature and humidity read together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct AirReading {
    /// Which air.
    pub location: AirLocation,
    /// Its temperature.
    pub temperature: Typed<Temperature>,
    /// Its relative humidity.
    pub humidity: Typed<RelativeHumidity>,
}

/// Which air was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum AirLocation {
    /// Under the floor.
    Crawl,
    /// In the room above.
    Room,
    /// Outside the house.
    Outdoors,
}

impl AirLocation {
    /// All, in the order that a choice shows them.
    pub const ALL: [Self; 3] = [Self::Crawl, Self::Room, Self::Outdoors];

    /// The air in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Crawl => "crawl space air",
            Self::Room => "room air",
            Self::Outdoors => "outdoor air",
        }
    }
}

/// The temperature of a surface.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct SurfaceReading {
    /// Where, if it hangs on a place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<EntryId>,
    /// What the surface is.
    pub what: Label,
    /// Its temperature.
    pub temperature: Typed<Temperature>,
}
