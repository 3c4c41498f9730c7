//! What this visit's crawl air makes of wood: readings that cannot be in it, and rises that it
//! explains.

use super::decision::{Condition, InTheWay};
use super::read::{Latest, Read};
use super::readings::names;
use crate::engine::air::{Air, equilibrium_moisture};
use crate::engine::drying::VisitAir;
use crate::engine::entry::EntryId;
use crate::engine::job::Job;
use crate::engine::moisture::correction::METER_ERROR;
use crate::engine::units::MoistureContent;

/// By so many points below where its air would leave it, and what a meter can be off, no wood dries
/// that was wet: air, hygrometer and tables are off by no more (judgement).
pub const BELOW_ITS_AIR: f64 = 2.0;

/// Where wood ends in the driest crawl air of this visit that is likely, and in the dampest.
pub(super) struct Ends {
    driest: Option<MoistureContent>,
    dampest: Option<MoistureContent>,
}

impl Ends {
    /// In a job's last visit.
    pub(super) fn of(job: &Job) -> Self {
        let crawl = VisitAir::of(job).crawl;
        let end = |(_, air): (EntryId, Air)| equilibrium_moisture(air.temperature, air.humidity);
        Self { driest: crawl.likely().map(end).min(), dampest: crawl.each().map(end).max() }
    }

    /// Is framing there no wetter than this air makes wood? Dry lumber takes on what air holds.
    pub(super) fn explain(&self, place: &Latest) -> bool {
        let reads = place.now.corrected;
        let is_within = |end: MoistureContent| reads.bound().to_percent() <= end.to_percent() + METER_ERROR;
        place.place.element.is_framing() && !reads.is_over() && self.dampest.is_some_and(is_within)
    }

    /// Does it read drier than this air lets wood get that was wet?
    fn forbid(&self, place: &Latest) -> bool {
        let least = |end: MoistureContent| end.to_percent() - METER_ERROR - BELOW_ITS_AIR;
        let reads = place.now.corrected.bound().to_percent();
        place.place.element.is_framing() && place.was_not_dry && self.driest.is_some_and(|end| reads < least(end))
    }
}

/// What was wet reads no drier than the crawl air of this visit would leave it: pins that do not
/// touch, a battery that is low and a digit that got lost read so.
pub(super) fn none_too_dry(read: &Read, ends: &Ends) -> Condition {
    let too_dry: Vec<_> = read.places.iter().filter(|place| place.is_of_this_visit && ends.forbid(place)).collect();
    let line = || {
        InTheWay::unknown(
            format!("reads drier than this crawl air lets wet wood get: {}", names(&too_dry)),
            "push the pins in and read it again, and the air too; if both say the same, with another meter",
        )
    };
    let lines = (!too_dry.is_empty()).then(line).into_iter().collect();
    Condition::of("what was wet reads no drier than this air would leave it", lines, "none does")
}
