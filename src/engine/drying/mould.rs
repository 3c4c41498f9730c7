//! Whether mold comes, by the worst of all that was read.

use super::air::{ThisVisit, VisitAir, dampest, one_off};
use crate::engine::air::mould::{SURFACE, days_until_seen, index_after};
use crate::engine::air::{Air, AirLocation};
use crate::engine::condition::{Condition, Finding};
use crate::engine::entry::EntryId;
use crate::engine::figure::{Figure, Known, Need};
use crate::engine::job::{Job, Seen};
use crate::engine::units::Temperature;

/// Mold is not followed over longer gaps between readings than this (judgement).
const LONGEST_GAP_HOURS: i64 = 24 * 120;

/// When mold may be seen on wood in this visit's air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mould {
    /// Days until it is first seen; none where it never is.
    pub days: Option<f64>,
    /// How warm the wood is that this is said of.
    pub at: Temperature,
    /// Was it read how cold the wood is? If not, this is of wood as warm as the air and of what
    /// else was read.
    pub is_wood_read: bool,
}

/// When mold may be seen: the soonest by each reading of the crawl air of this visit and each
/// surface. A cold one that grows nothing takes nothing from a warmer one.
/// Source: [`Source::MouldIndex`].
///
/// [`Source::MouldIndex`]: crate::engine::sources::Source::MouldIndex
pub fn mould(job: &Job) -> Figure<Mould> {
    let read = VisitAir::of(job);
    let is_wood_read = read.coldest_wood().is_some();
    let surfaces = || read.surfaces.iter().map(|surface| (Some(surface.id), surface.warmth));
    let as_warm_as = |air: Air| (!is_wood_read).then_some((None, air.temperature));
    let pairs = read.crawl.each().flat_map(|(id, air)| {
        let at = surfaces().chain(as_warm_as(air));
        at.map(move |(surface, warmth)| (id, surface, warmth, days_until_seen(warmth, air)))
    });
    let soonest = pairs.min_by(|one, other| {
        let days = |known: &Known<Option<f64>>| known.value.unwrap_or(f64::INFINITY);
        days(&one.3).total_cmp(&days(&other.3)).then(one.2.cmp(&other.2))
    });
    let Some((air, surface, at, known)) = soonest else { return Figure::Missing(vec![Need::CrawlAir]) };
    let Known { value: days, mut assumed, mut doubts, mut why } = known;
    if surface.is_none() {
        let as_measured = why.inputs.iter_mut().filter(|(name, _)| name == SURFACE);
        as_measured.for_each(|(name, _)| "wood, taken to be as warm as the air".clone_into(name));
    }
    if !is_wood_read {
        assumed.push("wood as warm as the air: nobody read how cold it is".to_owned());
    }
    doubts.extend(read.crawl.doubts("the worst for mold"));
    let why = why.using([air]).using(surface);
    Figure::Known(Known { value: Mould { days, at, is_wood_read }, assumed, doubts, why })
}

/// Where mold was found, in whatever visit: it does not go by itself.
pub fn mould_found(job: &Job) -> Vec<Option<EntryId>> {
    found(job, Finding::Mould).map(|(_, found)| found.value.place).collect()
}

/// Where droplets or a wet film were found in this visit.
pub fn wet_found(job: &Job) -> Vec<Option<EntryId>> {
    let now = ThisVisit::of(job);
    let found = found(job, Finding::Dripping).filter(|(id, it)| now.may_hold(it.stamp.visit, it.begun(*id)));
    found.map(|(_, found)| found.value.place).collect()
}

fn found(job: &Job, finding: Finding) -> impl Iterator<Item = (EntryId, Seen<'_, Condition>)> {
    let all = job.now.conditions().iter().map(|(id, found)| (*id, found));
    all.filter(move |(_, found)| found.value.finding == finding)
}

/// How much mold may have grown from the first visit to the last.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Grown {
    /// Up to this index, of 6.
    To(f64),
    /// Nobody can say: a visit's crawl air is unlikely, and was read once.
    Unknown,
}

/// The mold index had each crawl air stayed until the next one was read, of each visit the
/// dampest; none where a gap is too long, or there was but one.
/// Source: [`Source::MouldIndex`].
///
/// [`Source::MouldIndex`]: crate::engine::sources::Source::MouldIndex
pub fn grown_over_visits(job: &Job) -> Option<Grown> {
    let crawl: Vec<_> = job.now.air().iter().filter(|(_, air)| air.value.location == AirLocation::Crawl).collect();
    let held = |visit| {
        let of_visit = || crawl.iter().filter(move |(_, other)| other.in_visit().is_same(visit));
        let (_, air) = dampest(of_visit().map(|(id, air)| (**id, air.value.air())))?;
        let is_one_off = one_off(of_visit().map(|(_, air)| air.value.air())) == Some(air);
        Some((air, is_one_off))
    };
    let mut read: Vec<_> = crawl.iter().filter_map(|(_, air)| Some((air.stamp.at, held(air.in_visit())?))).collect();
    read.sort_by_key(|(at, _)| *at);
    let gaps = read.iter().zip(read.iter().skip(1)).map(|((from, air), (to, _))| ((*to - *from).num_hours(), *air));
    let gaps: Vec<_> = gaps.collect();
    if gaps.is_empty() || gaps.iter().any(|(hours, _)| *hours > LONGEST_GAP_HOURS) {
        return None;
    }
    if gaps.iter().any(|(_, (_, is_one_off))| *is_one_off) {
        return Some(Grown::Unknown);
    }
    let held: Vec<_> = gaps.into_iter().map(|(hours, (air, _))| (u32::try_from(hours).unwrap_or(0), air)).collect();
    Some(Grown::To(index_after(&held).get()))
}
