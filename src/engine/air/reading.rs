//! What a thermo-hygrometer and a surface probe log.

use crate::engine::entry::{EntryId, Label};
use crate::engine::figure::Need;
use crate::engine::units::{RelativeHumidity, Temperature, Typed};
use serde::{Deserialize, Serialize};

/// Air as a thermo-hygrometer shows it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct AirReading {
    /// Which air it is.
    pub location: AirLocation,
    /// Its temperature.
    pub temperature: Typed<Temperature>,
    /// Its relative humidity.
    pub humidity: Typed<RelativeHumidity>,
}

impl AirReading {
    /// The air without the texts it was typed as.
    pub const fn air(&self) -> Air {
        Air { temperature: self.temperature.value, humidity: self.humidity.value }
    }
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
    /// Outside, in the shade.
    Outdoors,
}

impl AirLocation {
    /// Every location, in the order that a choice shows them.
    pub const ALL: [Self; 3] = [Self::Crawl, Self::Room, Self::Outdoors];

    /// The location in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Crawl => "crawl space",
            Self::Room => "room",
            Self::Outdoors => "outdoors",
        }
    }

    /// What a figure asks for that lacks this air.
    pub const fn need(self) -> Need {
        match self {
            Self::Crawl => Need::CrawlAir,
            Self::Room => Need::RoomAir,
            Self::Outdoors => Need::OutdoorAir,
        }
    }
}

/// How warm something is to a surface probe: a joist, a duct, a cold pipe.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct SurfaceReading {
    /// Where it is, when that is a logged place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<EntryId>,
    /// What it is.
    pub what: Label,
    /// Its surface temperature.
    pub temperature: Typed<Temperature>,
}

/// The state of some air, as far as the sums need it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Air {
    /// Its temperature.
    pub temperature: Temperature,
    /// Its relative humidity, over liquid water.
    pub humidity: RelativeHumidity,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_job_file_says_which_air_and_what_was_typed() {
        let reading = AirReading {
            location: AirLocation::Crawl,
            temperature: Typed::new("62 °F", Temperature::fahrenheit(62)),
            humidity: Typed::new("85 %", RelativeHumidity::percent(85)),
        };
        let json = serde_json::to_string(&reading).unwrap();
        assert_eq!(
            json,
            r#"{"location":"crawl","temperature":{"typed":"62 °F","value":{"f":62.0}},"humidity":{"typed":"85 %","value":{"percent":85.0}}}"#
        );
        assert_eq!(serde_json::from_str::<AirReading>(&json).unwrap(), reading);
    }

    #[test]
    fn a_surface_may_be_nowhere_in_particular() {
        let json = r#"{"what":"supply duct","temperature":{"typed":"58 °F","value":{"f":58.0}}}"#;
        let reading: SurfaceReading = serde_json::from_str(json).unwrap();
        assert_eq!(reading.place, None);
        assert_eq!(serde_json::to_string(&reading).unwrap(), json);
    }
}
