//! The crawl space's air: where wood left in it would settle.

use super::decision::{Condition, InTheWay};
use super::limits::Limit;
use crate::engine::air::equilibrium_moisture;
use crate::engine::drying::{Settles, VisitAir};
use crate::engine::job::Job;

/// Wood that is dry now stays so only in air that keeps it there: it would settle under its
/// limit in the dampest crawl air of this visit ([`Source::EquilibriumMoisture`]), by as much
/// as a reading has to be under it.
///
/// [`Source::EquilibriumMoisture`]: crate::engine::sources::Source::EquilibriumMoisture
pub(super) fn crawl_air(job: &Job, limit: Limit) -> Condition {
    let what = "crawl air keeps framing under its limit";
    let crawl = VisitAir::of(job).crawl;
    let Some((_, air)) = crawl.dampest() else {
        let ends = "read its temperature and humidity under the house";
        return Condition::of(what, vec![InTheWay::unknown("crawl air was not read in this visit", ends)], "");
    };
    let settles = equilibrium_moisture(air.temperature, air.humidity);
    let (percent, times) = (settles.to_percent(), crawl.times_unlike());
    let dampest = times.map_or_else(String::new, |times| format!(", by the dampest of {times} readings of it"));
    let found = format!("left in it wood settles near {percent:.1} %{dampest}");
    let ends = "keep water and damp out of it, air or dry it, and read it again in another visit";
    let says = |how: &str| format!("left in this crawl air wood settles near {percent:.1} %, {how} its limit{dampest}");
    let mut lines = match Settles::of(settles, limit.at) {
        Settles::Over => vec![InTheWay::known(says("over"), ends)],
        Settles::Close => vec![InTheWay::unknown(says("close to"), ends)],
        Settles::Under => Vec::new(),
    };
    let or_else = "take it back if it was typed wrong, or read it once more: two such readings count";
    lines.extend(crawl.unlikely().map(|says| InTheWay::unknown(says, or_else)));
    Condition::of(what, lines, found)
}
