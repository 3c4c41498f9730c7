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
    /// A floor that a cooled room keeps cold.
    CoolFloor,
    /// Cold ducts and pipes.
    ColdRuns,
    /// Humid air through the vents.
    Outdoor,
}

impl Cause {
    /// All.
    pub const ALL: [Self; 10] = [
        Self::Ground,
        Self::WaterBelow,
        Self::Supply,
        Self::Drain,
        Self::Wall,
        Self::Opening,
        Self::Spill,
        Self::CoolFloor,
        Self::ColdRuns,
        Self::Outdoor,
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
            Self::Spill => "spill or appliance",
            Self::CoolFloor => "condensation on cooled floors",
            Self::ColdRuns => "condensation on ducts and pipes",
            Self::Outdoor => "humid outdoor air through vents",
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
            Self::CoolFloor => "cool_floor",
            Self::ColdRuns => "cold_runs",
            Self::Outdoor => "outdoor",
        }
    }

    /// What deals with it, as a careful crew would begin.
    pub const fn remedy(self) -> &'static str {
        match self {
            Self::Ground => "cover the soil, laps and edges sealed; then read again",
            Self::WaterBelow => "lead the water away before anything is covered: grade, gutters, a drain or a pump",
            Self::Supply => "shut the line off and have it mended by a licensed plumber",
            Self::Drain => "stop using the fixture and have the drain mended by a licensed plumber",
            Self::Wall => "find where rain gets in and flash it; the floor comes after",
            Self::Opening => "reset or flash the door or window; the floor comes after",
            Self::Spill => "see that it does not happen again; let it dry",
            Self::CoolFloor => "keep vapor off the floor: cover, insulation below, warmer room",
            Self::ColdRuns => "insulate ducts and cold pipes, and seal their joints",
            Self::Outdoor => "close the vents only with a covered, dried crawl space: local code decides",
        }
    }
}
