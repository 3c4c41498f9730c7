//! The crawl space's air: where wood left in it would settle.

use super::decision::{Condition, InTheWay};
use super::limits::Limit;
use crate::engine::air::{AirLocation, equilibrium_moisture};
use crate::engine::entry::EntryId;
use crate::engine::job::{Job, Seen};
use crate::engine::moisture::correction::METER_ERROR;
use crate::engine::units::MoistureContent;

/// Wood that is dry now stays so only in air that keeps it there: it would settle under its
/// limit in the dampest crawl air of this visit ([`Source::EquilibriumMoisture`]), by as much
/// as a reading has to be under it (judgement: a hygrometer is no surer than a meter).
///
/// [`Source::EquilibriumMoisture`]: crate::engine::sources::Source::EquilibriumMoisture
pub(super) fn crawl_air(job: &Job, limit: Limit) -> Condition {
    let what = "crawl air keeps framing under its limit";
    let Some(settles) = settles(job) else {
        let ends = "read its temperature and humidity under the house";
        return Condition::of(what, vec![InTheWay::unknown("crawl air was not read in this visit", ends)], "");
    };
    let (percent, limit) = (settles.to_percent(), limit.at.to_percent());
    let found = format!("left in it wood settles near {percent:.1} %");
    let ends = "keep water and damp out of it, air or dry it, and read it again";
    let line = if percent > limit {
        InTheWay::known(format!("left in this crawl air wood settles near {percent:.1} %, over its limit"), ends)
    } else if percent > limit - METER_ERROR {
        InTheWay::unknown(format!("left in this crawl air wood settles near {percent:.1} %, close to its limit"), ends)
    } else {
        return Condition::of(what, Vec::new(), found);
    };
    Condition::of(what, vec![line], found)
}

/// Where wood settles in the dampest crawl air of this visit, or of no surely older time;
/// none unless this visit read any.
fn settles(job: &Job) -> Option<MoistureContent> {
    let visit = job.current_visit().map(|(visit, _)| visit);
    let begun = visit.and_then(|visit| Some(job.now.visits().get(&visit)?.begun(visit)));
    let crawl: Vec<_> = job.now.air().iter().filter(|(_, air)| air.value.location == AirLocation::Crawl).collect();
    let is_of_visit = |(_, air): &&(&EntryId, Seen<'_, _>)| air.stamp.visit == visit;
    crawl.iter().find(is_of_visit)?;
    let counts = crawl
        .iter()
        .filter(|(id, air)| air.stamp.visit == visit || begun.is_none_or(|begun| !begun.is_after(air.begun(**id))));
    counts.map(|(_, air)| equilibrium_moisture(air.value.temperature.value, air.value.humidity.value)).max()
}
