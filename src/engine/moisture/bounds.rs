//! Between which numbers a reading is believed: those that the meter can show, and those
//! that wood under a roof can have.

use super::{Meter, Stands};
use crate::engine::air::shown;
use crate::engine::units::MoistureContent;

/// The driest that a reading is believed without asking
/// ([`Source::LikelyReadings`](crate::engine::sources::Source::LikelyReadings)).
pub const LEAST_LIKELY: MoistureContent = MoistureContent::percent(4);

/// The wettest that a reading is believed without asking. Same source.
pub const MOST_LIKELY: MoistureContent = MoistureContent::percent(60);

/// Between which numbers a reading is believed; both ends are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bounds {
    /// The least, and whether it is the meter's own.
    least: (MoistureContent, bool),
    /// The most, and whether it is the meter's own.
    most: (MoistureContent, bool),
}

/// On which side of its bounds a reading lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outside {
    /// Below the least.
    Under,
    /// Above the most.
    Over,
}

impl Bounds {
    /// The narrower of what the meter can show and what is likely. A meter whose minimum
    /// is not under its maximum bounds nothing.
    pub fn of(meter: Option<&Meter>) -> Self {
        let minimum = meter.and_then(|meter| meter.minimum.as_ref()).map(|typed| typed.value);
        let maximum = meter.and_then(|meter| meter.maximum.as_ref()).map(|typed| typed.value);
        let is_scale = minimum.unwrap_or(LEAST_LIKELY) < maximum.unwrap_or(MOST_LIKELY);
        let least = minimum.filter(|minimum| is_scale && *minimum > LEAST_LIKELY);
        let most = maximum.filter(|maximum| is_scale && *maximum < MOST_LIKELY);
        Self {
            least: (least.unwrap_or(LEAST_LIKELY), least.is_some()),
            most: (most.unwrap_or(MOST_LIKELY), most.is_some()),
        }
    }

    /// Where a reading lies that is not believed; none for one that is.
    pub fn outside(&self, reading: MoistureContent) -> Option<Outside> {
        match reading {
            _ if reading < self.least.0 => Some(Outside::Under),
            _ if reading > self.most.0 => Some(Outside::Over),
            _ => None,
        }
    }

    /// Where a reading stands that was kept outside: beyond the bound, at no number.
    pub(super) const fn stands(&self, outside: Outside) -> Stands {
        match outside {
            Outside::Under => Stands::Under(self.least.0),
            Outside::Over => Stands::Over(self.most.0),
        }
    }

    /// "more than the 40.0 % that this meter shows".
    pub fn words(&self, outside: Outside) -> String {
        let (than, (bound, is_meters)) = match outside {
            Outside::Under => ("less than the", self.least),
            Outside::Over => ("more than the", self.most),
        };
        let whose = if is_meters { "that this meter shows" } else { "that wood under a roof is likely to have" };
        format!("{than} {} {whose}", shown::moisture(bound))
    }
}
