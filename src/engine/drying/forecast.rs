//! When each place reaches its limit, as a range of days; and what other air would do.

use super::fit::{Drying, Still, fit, through, without_free_water};
use crate::engine::air::{AirLocation, equilibrium_moisture};
use crate::engine::closing::Limits;
use crate::engine::entry::{EntryId, Time};
use crate::engine::extent::Group;
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::job::Job;
use crate::engine::results::{corrected, latest_air};
use crate::engine::sources::Source;
use crate::engine::units::{MoistureContent, RelativeHumidity, Temperature};
use chrono::TimeDelta;
use litemap::LiteMap;

/// What a reading may be off beside another of the same place with the same meter,
/// percent points: so the fall between two may be off by twice that, the meter's 2 %
/// ([`Source::MeterAccuracy`]).
const OFF: f64 = 1.0;

/// Crawl air over covered soil, and with a dehumidifier ([`Source::DrierAir`]).
const COVERED: RelativeHumidity = RelativeHumidity::percent(65);
const DEHUMIDIFIED: RelativeHumidity = RelativeHumidity::percent(50);

/// Farther off than this no day is named.
const FARTHEST_DAYS: f64 = 365.0;

/// A place on its way.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecast {
    /// Where.
    pub place: EntryId,
    /// Its readings with their times, the oldest first.
    pub readings: Vec<(Time, MoistureContent)>,
    /// Where it may be closed.
    pub limit: MoistureContent,
    /// When it gets there.
    pub outlook: Outlook,
}

/// When a place reaches its limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outlook {
    /// It has.
    There,
    /// Between these days; the second is open when the slower of two fits never gets there.
    Between(Time, Option<Time>),
    /// This air holds the wood above it.
    Never,
    /// No pace can be had.
    Unknown(Still),
}

/// Air that wood could dry in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OtherAir {
    /// What it takes.
    pub with: &'static str,
    /// Where wood ends in it.
    pub end: MoistureContent,
    /// When the slowest place would reach its limit in it, if that can be told.
    pub slowest: Option<Time>,
}

/// Everything about drying.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecasts {
    /// Where wood ends in the crawl air as it was read last.
    pub end: MoistureContent,
    /// Every place with two readings or more that count, the last to get there first.
    pub places: Vec<Forecast>,
    /// What would speed it, with where wood would end.
    pub other_air: Vec<OtherAir>,
}

/// When the places of framing and subfloor reach their limits in the crawl air as it is.
///
/// Source: [`Source::FirstOrderDrying`], [`Source::EquilibriumMoisture`],
/// [`Source::FreeWater`], [`Source::MeterAccuracy`].
pub fn forecasts(job: &Job) -> Figure<Forecasts> {
    let Some((air_id, air)) = latest_air(job, AirLocation::Crawl) else {
        return Figure::Missing(vec![Need::CrawlAir]);
    };
    let end = equilibrium_moisture(air.temperature, air.humidity);
    let limits = Limits::of(job);
    let mut used = vec![air_id];
    let mut places = Vec::new();
    for (place, readings) in series(job, &limits, &mut used) {
        let Some(limit) = limit_of(job, place, &limits) else { continue };
        let outlook = outlook(end, &readings, limit);
        places.push(Forecast { place, readings, limit, outlook });
    }
    if places.is_empty() {
        return Figure::Missing(vec![Need::SecondReading]);
    }
    places.sort_by_key(|place| std::cmp::Reverse(lateness(place)));
    let other_air = other_air(air.temperature, end, &places);
    let value = Forecasts { end, places, other_air };
    let why = Why::rule("Each day a part of what is left above the wood's end in this air goes.", &SOURCES)
        .with("wood ends in this air at", format!("{:.1} %", end.to_percent()))
        .with("each reading may be off by", format!("{OFF:.0} %"))
        .using(used);
    let assumed = vec!["the crawl air stays as it was read last".to_owned()];
    let doubts = vec!["Thick or covered wood dries slower inside than pins at its face say.".to_owned()];
    Figure::Known(Known { value, assumed, doubts, why })
}

const SOURCES: [Source; 5] =
    [Source::FirstOrderDrying, Source::EquilibriumMoisture, Source::FreeWater, Source::MeterAccuracy, Source::DrierAir];

/// Where a place may be closed; none of one that does not dry in the crawl space's air.
fn limit_of(job: &Job, place: EntryId, limits: &Limits) -> Option<MoistureContent> {
    match Group::of(job.now.places().get(&place)?.value.element)? {
        Group::Framing => Some(limits.framing.at),
        Group::Underside => Some(limits.subfloor.at),
        Group::Top => None,
    }
}

/// The readings of each place that was read on two days or more. What is only relative,
/// or past the meter's scale, is no number to fit.
fn series(job: &Job, limits: &Limits, used: &mut Vec<EntryId>) -> LiteMap<EntryId, Vec<(Time, MoistureContent)>> {
    let mut all: LiteMap<EntryId, Vec<(EntryId, Time, MoistureContent)>> = LiteMap::new();
    for (id, reading) in job.now.readings().iter() {
        let known = corrected(job, reading).value;
        let dries_here = limit_of(job, reading.value.place, limits).is_some();
        if let Some(moisture) = known.corrected.number().filter(|_| dries_here && !known.relative) {
            all.entry(reading.value.place).or_default().push((*id, reading.stamp.at, moisture));
        }
    }
    let mut series = LiteMap::new();
    for (place, mut readings) in all {
        readings.sort_by_key(|(_, at, _)| *at);
        let visits = readings.iter().map(|(_, at, _)| at.date_naive()).collect::<std::collections::BTreeSet<_>>();
        if visits.len() > 1 {
            used.extend(readings.iter().map(|(id, ..)| *id));
            series.insert(place, readings.into_iter().map(|(_, at, moisture)| (at, moisture)).collect());
        }
    }
    series
}

fn outlook(end: MoistureContent, readings: &[(Time, MoistureContent)], limit: MoistureContent) -> Outlook {
    let Some(((first, _), (_, last))) = readings.first().zip(readings.last()) else {
        return Outlook::Unknown(Still::TooFew);
    };
    if *last <= limit {
        return Outlook::There;
    }
    if limit <= end {
        return Outlook::Never;
    }
    let days: Vec<_> = readings.iter().map(|(at, moisture)| (days_between(*first, *at), *moisture)).collect();
    if let Err(still) = fit(end, &days) {
        return Outlook::Unknown(still);
    }
    let counted = without_free_water(&days);
    // Slower: it began drier and is wetter than it was read. Faster: the other way.
    let day = |drying: Option<Drying>| drying.and_then(|drying| drying.days_to(limit));
    let slow = day(through(end, 0.0, &tilted(&counted, -OFF, OFF)).ok()).filter(|days| *days <= FARTHEST_DAYS);
    let fast = day(through(end, 0.0, &tilted(&counted, OFF, -OFF)).ok());
    match fast {
        Some(fast) if fast <= FARTHEST_DAYS => {
            Outlook::Between(after(*first, fast), slow.map(|slow| after(*first, slow)))
        }
        _ => Outlook::Unknown(Still::NotDrying),
    }
}

/// The readings, the first off by so much, the last by so much, and those between by a
/// part of either.
fn tilted(days: &[(f64, MoistureContent)], first: f64, last: f64) -> Vec<(f64, MoistureContent)> {
    let began = days.first().map_or(0.0, |(day, _)| *day);
    let whole = days.last().map_or(0.0, |(day, _)| *day - began).max(1e-9);
    let off = |day: f64| first + (last - first) * (day - began) / whole;
    days.iter().map(|(day, it)| (*day, MoistureContent::from_percent_f64(it.to_percent() + off(*day)))).collect()
}

fn days_between(from: Time, to: Time) -> f64 {
    (to - from).num_minutes() as f64 / (24.0 * 60.0)
}

fn after(from: Time, days: f64) -> Time {
    from + TimeDelta::minutes((days * 24.0 * 60.0) as i64)
}

/// For the order: what never gets there comes first, what is there last.
fn lateness(forecast: &Forecast) -> (u8, i64, EntryId) {
    let (rank, day) = match forecast.outlook {
        Outlook::Never => (3, 0),
        Outlook::Unknown(_) => (2, 0),
        Outlook::Between(earliest, latest) => (1, latest.unwrap_or(earliest).timestamp()),
        Outlook::There => (0, 0),
    };
    (rank, day, forecast.place)
}

/// Air that is drier than this one, and when the slowest place would be dry in it.
fn other_air(temperature: Temperature, now: MoistureContent, places: &[Forecast]) -> Vec<OtherAir> {
    let all = [("the soil covered, crawl air at 65 %", COVERED), ("a dehumidifier, crawl air at 50 %", DEHUMIDIFIED)];
    let air = all.into_iter().map(|(with, humidity)| (with, equilibrium_moisture(temperature, humidity)));
    let slowest = |end| places.iter().filter_map(|place| in_air(place, now, end)).max();
    air.filter(|(_, end)| *end < now).map(|(with, end)| OtherAir { with, end, slowest: slowest(end) }).collect()
}

/// When a place that still dries would be at its limit if its air held wood at `end` from
/// its last reading on: at the pace that it was seen to dry at.
fn in_air(forecast: &Forecast, now: MoistureContent, end: MoistureContent) -> Option<Time> {
    let (first, _) = *forecast.readings.first().filter(|_| forecast.outlook != Outlook::There)?;
    let (last, moisture) = *forecast.readings.last()?;
    let days: Vec<_> = forecast.readings.iter().map(|(at, moisture)| (days_between(first, *at), *moisture)).collect();
    let left = fit(now, &days).ok()?.onwards(moisture, end)?.days_to(forecast.limit)?;
    (left <= FARTHEST_DAYS).then(|| after(last, left))
}
