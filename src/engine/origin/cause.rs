//! Where water can come from.

use serde::{Deserialize, Serialize};

/// A place that water comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Cause {
    /// Vapor out of damp soil.
    Ground,
    /// Water that stands or runs under the house.
    WaterBelow,
    /// Pipes under pressure.
    Supply,
    /// Drains, traps, flanges.
    Drain,
    /// Rain through roof or wall.
    Wall,
    /// Rain through a window or a door.
    Opening,
    /// Something that overflowed once.
    Spill,
    /// A dishwasher, washer, refrigerator or water heater that leaks.
    Appliance,
    /// A floor that a cooled room keeps cold.
    CoolFloor,
    /// Cold ducts and pipes.
    ColdRuns,
    /// Humid air through the vents.
    Outdoor,
    /// Water that cooling or a furnace makes, and that is not led away.
    Condensate,
    /// A dryer that blows under the floor.
    Dryer,
    /// Watering that hits the house, or a line of it that leaks.
    Sprinkler,
    /// What this list does not have.
    Other,
}

impl Cause {
    /// All. What is alike in everything else stands in this order.
    pub const ALL: [Self; 15] = [
        Self::Ground,
        Self::WaterBelow,
        Self::Supply,
        Self::Drain,
        Self::Wall,
        Self::Opening,
        Self::Spill,
        Self::Appliance,
        Self::CoolFloor,
        Self::ColdRuns,
        Self::Outdoor,
        Self::Condensate,
        Self::Dryer,
        Self::Sprinkler,
        Self::Other,
    ];

    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Ground => "ground moisture",
            Self::WaterBelow => "standing or running water below",
            Self::Supply => "plumbing supply",
            Self::Drain => "drain",
            Self::Wall => "roof or wall",
            Self::Opening => "window or door",
            Self::Spill => "spill",
            Self::Appliance => "leaking appliance",
            Self::CoolFloor => "condensation on cooled floors",
            Self::ColdRuns => "condensation on ducts and pipes",
            Self::Outdoor => "humid outdoor air through vents",
            Self::Condensate => "condensate drain",
            Self::Dryer => "dryer duct",
            Self::Sprinkler => "sprinkler",
            Self::Other => "something else",
        }
    }

    /// The name that files use.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Ground => "ground",
            Self::WaterBelow => "water_below",
            Self::Supply => "supply",
            Self::Drain => "drain",
            Self::Wall => "wall",
            Self::Opening => "opening",
            Self::Spill => "spill",
            Self::Appliance => "appliance",
            Self::CoolFloor => "cool_floor",
            Self::ColdRuns => "cold_runs",
            Self::Outdoor => "outdoor",
            Self::Condensate => "condensate",
            Self::Dryer => "dryer",
            Self::Sprinkler => "sprinkler",
            Self::Other => "other",
        }
    }

    /// May it be what stands or runs on the soil? Such water is found and led away before
    /// soil is covered.
    pub const fn is_liquid_below(self) -> bool {
        matches!(
            self,
            Self::WaterBelow
                | Self::Supply
                | Self::Drain
                | Self::Appliance
                | Self::Condensate
                | Self::Dryer
                | Self::Sprinkler
                | Self::Other
        )
    }

    /// What deals with it, as a careful crew would begin. Common practice, no source.
    pub const fn remedy(self) -> &'static str {
        match self {
            Self::Ground => {
                "first lead away any water that stands or runs below; then cover the soil, laps and edges sealed, \
                 and read again"
            }
            Self::WaterBelow => "lead the water away before anything is covered: grade, gutters, a drain or a pump",
            Self::Supply => "shut the line off and have it mended by a licensed plumber",
            Self::Drain => "stop using the fixture and have the drain mended by a licensed plumber",
            Self::Wall => "find where rain gets in and flash it; the floor comes after",
            Self::Opening => "reset or flash the door or window; the floor comes after",
            Self::Spill => "see that it does not happen again; let it dry",
            Self::Appliance => {
                "shut its water off, and its power at the panel, before anybody reaches into the wet; have it mended \
                 (one that burns gas: by a gas fitter), and open the floor under it"
            }
            Self::CoolFloor => "keep vapor off the floor: cover, insulation below, warmer room",
            Self::ColdRuns => "insulate ducts and cold pipes, and seal their joints",
            Self::Outdoor => "close the vents only with a covered, dried crawl space: local code decides",
            Self::Condensate => {
                "have a heating and cooling contractor clear or mend pan, trap, line and pump, and lead the water \
                 outdoors or to a drain, never onto the soil below"
            }
            Self::Dryer => {
                "do not run the dryer until its duct is whole, clean and ends outdoors: lint burns. One that burns gas \
                 blows carbon monoxide too: air the place first, and have a gas fitter look at it"
            }
            Self::Sprinkler => {
                "turn the watering off and read again after some dry days; then move or mend heads and lines so that \
                 none wets a wall or the soil at it"
            }
            Self::Other => {
                "cover nothing yet: look again, in rain and in use, for what else is wet close by, and ask who knows \
                 the house"
            }
        }
    }
}
