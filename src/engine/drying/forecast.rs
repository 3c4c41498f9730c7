//! When each place reaches its limit, as a range of days; and what other air would do.

use super::fit::Still;
use super::paces::{Paces, paces};
use crate::engine::air::{AirLocation, equilibrium_moisture};
use crate::engine::closing::{Limits, Verdict, verdict};
use crate::engine::entry::{EntryId, Time};
use crate::engine::extent::Group;
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::job::Job;
use crate::engine::moisture::Corrected;
use crate::engine::results::{Taken, latest_air, readings, standing, worst_of_each};
use crate::engine::sources::Source;
use crate::engine::standing::{Spots, Standing};
use crate::engine::units::{MoistureContent, RelativeHumidity, Temperature};
use crate::order;
use chrono::TimeDelta;
use litemap::LiteMap;
use std::collections::BTreeSet;

/// Crawl air over covered soil, and with a dehumidifier ([`Source::DrierAir`]).
const COVERED: RelativeHumidity = RelativeHumidity::percent(65);
const DEHUMIDIFIED: RelativeHumidity = RelativeHumidity::percent(50);

/// Farther off than this no day is named.
const FARTHEST_DAYS: f64 = 365.0;

/// On no more days than this a place was read that reads under its limit: of invented wood, read
/// so by a meter that is off by itself and from reading to reading, one in ten is still over it
/// (`tests/calibration`); of wood that was read once more, one in thirty.
const SELDOM: usize = 2;

/// A place on its way.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecast {
    /// Where.
    pub place: EntryId,
    /// Its readings with their times, the oldest first: what is not believed only where nothing
    /// else stands, and of one visit none that a wetter one contradicts.
    pub readings: Vec<(Time, Corrected)>,
    /// Where it may be closed.
    pub limit: MoistureContent,
    /// When it gets there.
    pub outlook: Outlook,
}

impl Forecast {
    /// Is it at its limit, in air that brings wood above that again?
    pub fn would_not_stay(&self, end: MoistureContent) -> bool {
        end > self.limit && matches!(self.outlook, Outlook::There | Outlook::Close)
    }
}

/// When a place reaches its limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outlook {
    /// It has, by more than a meter can be off.
    There,
    /// It reads at or under its limit, by less than a meter can be off.
    Close,
    /// Between these days, neither before its last reading; the second is open when nobody
    /// can say how late.
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
    /// By when every place that is over its limit would be at it, if that can be told of all.
    pub all_by: Option<Time>,
}

/// Everything about drying.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecasts {
    /// Where wood ends in the crawl air as it was read last.
    pub end: MoistureContent,
    /// Every place that was read, the last to get there first.
    pub places: Vec<Forecast>,
    /// What would speed it, with where wood would end.
    pub other_air: Vec<OtherAir>,
}

/// When the places of framing and subfloor reach their limits in the crawl air as it is.
///
/// Source: [`Source::FirstOrderDrying`], [`Source::DryingPace`],
/// [`Source::EquilibriumMoisture`], [`Source::FreeWater`], [`Source::MeterAccuracy`].
pub fn forecasts(job: &Job) -> Figure<Forecasts> {
    let Some((air_id, air)) = latest_air(job, AirLocation::Crawl) else {
        return Figure::Missing(vec![Need::CrawlAir]);
    };
    let end = equilibrium_moisture(air.temperature, air.humidity);
    let Series { of, used, relative } = Series::of(job);
    if !of.values().any(|place| days_read(&place.readings) > 1) {
        return Figure::Missing(vec![Need::SecondReading]);
    }
    let forecast = |(place, OfPlace { limit, readings, stands }): (EntryId, OfPlace)| {
        let outlook = outlook(end, &readings, stands, limit);
        Forecast { place, readings, limit, outlook }
    };
    let mut places: Vec<_> = of.into_iter().map(forecast).collect();
    places.sort_by_key(|place| std::cmp::Reverse(lateness(place)));
    let other_air = other_air(air.temperature, end, &places);
    let low = |place: &&Forecast| place.readings.last().is_some_and(|(_, last)| last.may_read_low.is_some());
    let low = places.iter().filter(low).count();
    let is_seldom_read = |place: &&Forecast| place.outlook == Outlook::There && days_read(&place.readings) <= SELDOM;
    let seldom = places.iter().filter(is_seldom_read).count();
    let value = Forecasts { end, places, other_air };
    let why = Why::rule("Each day a part of what is left above the wood's end in this air goes.", &SOURCES)
        .with("wood ends in this air at", format!("{:.1} %", end.to_percent()))
        .using([air_id])
        .using(used);
    let assumed = vec!["the crawl air stays as it was read last".to_owned()];
    let mut doubts = vec!["Thick or covered wood dries slower inside than pins at its face say.".to_owned()];
    if relative > 0 {
        doubts.push(format!("Places that were read only relatively are not in this: {relative}."));
    }
    if low > 0 {
        doubts.push(format!(
            "Places that may read low: {low}. Their last day is that of wood as wet as it may be: say species, meter and how warm the wood is."
        ));
    }
    if seldom > 0 {
        doubts.push(format!(
            "Places that read under their limits and were read on one or two days: {seldom}. One in ten such may still be over: \
             read them once more."
        ));
    }
    Figure::Known(Known { value, assumed, doubts, why })
}

const SOURCES: [Source; 6] = [
    Source::FirstOrderDrying,
    Source::DryingPace,
    Source::EquilibriumMoisture,
    Source::FreeWater,
    Source::MeterAccuracy,
    Source::DrierAir,
];

/// Where a place may be closed; none of one that does not dry in the crawl space's air.
fn limit_of(job: &Job, place: EntryId, limits: &Limits) -> Option<MoistureContent> {
    match Group::of(job.now.places().get(&place)?.value.element)? {
        Group::Framing => Some(limits.framing.at),
        Group::Underside => Some(limits.subfloor.at),
        Group::Top => None,
    }
}

/// What was read of every place that dries in the crawl space's air.
struct Series {
    of: LiteMap<EntryId, OfPlace>,
    used: Vec<EntryId>,
    /// How many places have no reading that a limit can be held to.
    relative: usize,
}

struct OfPlace {
    limit: MoistureContent,
    readings: Vec<(Time, Corrected)>,
    /// What stands there, the worst of several.
    stands: Option<(Time, Corrected)>,
}

impl Series {
    fn of(job: &Job) -> Self {
        let limits = Limits::of(job);
        let (mut of, mut used) = (LiteMap::<EntryId, OfPlace>::new(), Vec::new());
        let mut relative = BTreeSet::new();
        let mut all = readings(job);
        let spots = Spots::of(job);
        all.retain(|(id, reading, known)| {
            let place = spots.first(reading.value.place);
            if spots.is_of_what_is_gone(place, reading.begun(*id)) {
                return false;
            }
            let Some(limit) = limit_of(job, place, &limits) else { return false };
            if known.value.relative {
                relative.insert(place);
            } else {
                of.entry(place).or_insert_with(|| OfPlace { limit, readings: Vec::new(), stands: None });
            }
            !known.value.relative
        });
        for (id, reading, known) in all.iter().filter(|taken| !is_contradicted(taken, &all, &spots)) {
            if let Some(place) = of.get_mut(&spots.first(reading.value.place)) {
                used.push(*id);
                place.readings.push((reading.stamp.at, known.value));
            }
        }
        used.extend(standing(job, &all).map(|(id, ..)| *id));
        let limit = |place: &EntryId| of.get(&spots.first(*place)).map(|place| place.limit);
        let worst = worst_of_each(job, &all, |(_, reading, known)| {
            (limit(&reading.value.place).map(|limit| verdict(&known.value, limit)), known.value.corrected)
        });
        for (id, place) in of.iter_mut() {
            place.stands = worst.get(id).map(|(_, reading, known)| (reading.stamp.at, known.value));
            place.settle();
        }
        let used = order::once(used);
        relative.retain(|place| of.get(place).is_none());
        Self { of, used, relative: relative.len() }
    }
}

/// Does nobody believe it, or was the spot read wetter in the same visit or day?
fn is_contradicted(taken: &Taken<'_>, all: &[Taken<'_>], spots: &Spots<'_>) -> bool {
    let of = |(id, reading, known): &Taken<'_>| Standing::of(*id, reading, known.value);
    let spot = |taken: &Taken<'_>| spots.first(taken.1.value.place);
    let is_wetter = |other: &&Taken<'_>| !other.2.value.doubted && of(other).contradicts(&of(taken));
    taken.2.value.doubted || all.iter().filter(is_wetter).any(|other| spot(other) == spot(taken))
}

impl OfPlace {
    /// Brings its readings in order. None is after what stands that says otherwise.
    fn settle(&mut self) {
        if let Some((then, stands)) = self.stands {
            self.readings.retain(|(at, reading)| *at < then || !stands.contradicts(reading));
            if stands.doubted {
                self.readings.push((then, stands));
            }
        }
        self.readings.sort_by_key(|(at, _)| *at);
    }
}

/// On how many days a place was read.
fn days_read(readings: &[(Time, Corrected)]) -> usize {
    readings.iter().map(|(at, _)| at.date_naive()).collect::<BTreeSet<_>>().len()
}

fn outlook(
    end: MoistureContent,
    readings: &[(Time, Corrected)],
    stands: Option<(Time, Corrected)>,
    limit: MoistureContent,
) -> Outlook {
    let (Some((last_day, last)), Some((_, stands))) = (readings.last(), stands) else {
        return Outlook::Unknown(Still::TooFew);
    };
    match verdict(&stands, limit) {
        Verdict::Dry => return Outlook::There,
        Verdict::Close | Verdict::CloseByWood => return Outlook::Close,
        Verdict::Loose => return Outlook::Unknown(Still::Loose),
        Verdict::Doubted => return Outlook::Unknown(Still::Doubted),
        Verdict::Relative | Verdict::Over | Verdict::Wet | Verdict::Soaked => {}
    }
    if limit <= end {
        return Outlook::Never;
    }
    match pace(end, readings) {
        Err(still) => Outlook::Unknown(still),
        Ok(paces) => {
            let (first, latest) = (paces.days_to(limit).0, days_at_most(&paces, limit, last));
            match day(*last_day, first) {
                Some(first) => Outlook::Between(first, latest.and_then(|latest| day(*last_day, latest))),
                None => Outlook::Unknown(Still::NotDrying),
            }
        }
    }
}

/// So many days until the last on which it may get there, if there is one. Wood that may read
/// low is at its limit only once it reads by so much less.
fn days_at_most(paces: &Paces, limit: MoistureContent, last: &Corrected) -> Option<f64> {
    let low = last.may_read_low.map_or(0.0, |low| low.points.to_percent());
    paces.days_to(MoistureContent::from_percent_f64(limit.to_percent() - low)).1
}

/// How a place dries. A reading off the meter's scale is no number to fit, and what was
/// before it is another story.
fn pace(end: MoistureContent, readings: &[(Time, Corrected)]) -> Result<Paces, Still> {
    if readings.iter().any(|(_, reading)| reading.doubted) {
        return Err(Still::Doubted);
    }
    let is_no_number = |reading: &Corrected| reading.corrected.number().is_none();
    let numbers = readings.rsplit(|(_, reading)| is_no_number(reading)).next().unwrap_or_default();
    let Some((first, _)) = numbers.first() else { return Err(Still::PastScale) };
    if days_read(numbers) < 2 {
        return Err(Still::TooFew);
    }
    let day_of = |at: Time| days_between(*first, at);
    let days: Vec<_> = numbers.iter().map(|(at, reading)| (day_of(*at), reading.corrected.bound())).collect();
    paces(end, &days)
}

fn days_between(from: Time, to: Time) -> f64 {
    (to - from).num_minutes() as f64 / (24.0 * 60.0)
}

/// So many days on, if a day can be named there.
fn day(from: Time, days: f64) -> Option<Time> {
    (days <= FARTHEST_DAYS).then(|| from + TimeDelta::minutes(libm::round(days * 24.0 * 60.0) as i64))
}

/// For the order: what never gets there comes first, what is there last.
fn lateness(forecast: &Forecast) -> (u8, i64, EntryId) {
    let (rank, day) = match forecast.outlook {
        Outlook::Never => (5, 0),
        Outlook::Unknown(_) => (4, 0),
        Outlook::Between(first, None) => (3, first.timestamp()),
        Outlook::Between(_, Some(last)) => (2, last.timestamp()),
        Outlook::Close => (1, 0),
        Outlook::There => (0, 0),
    };
    (rank, day, forecast.place)
}

/// Air that is drier than this one, and by when all would be dry in it.
fn other_air(temperature: Temperature, now: MoistureContent, places: &[Forecast]) -> Vec<OtherAir> {
    let all = [("the soil covered, crawl air at 65 %", COVERED), ("a dehumidifier, crawl air at 50 %", DEHUMIDIFIED)];
    let air = all.into_iter().map(|(with, humidity)| (with, equilibrium_moisture(temperature, humidity)));
    let is_over = |place: &&Forecast| !matches!(place.outlook, Outlook::There | Outlook::Close);
    let all_by = |end| {
        let days: Option<Vec<_>> = places.iter().filter(is_over).map(|place| in_air(place, now, end)).collect();
        days?.into_iter().max()
    };
    air.filter(|(_, end)| *end < now).map(|(with, end)| OtherAir { with, end, all_by: all_by(end) }).collect()
}

/// By when a place would be at its limit if its air held wood at `end` from its last
/// reading on: at the pace that it was seen to dry at.
fn in_air(forecast: &Forecast, now: MoistureContent, end: MoistureContent) -> Option<Time> {
    let (at, last) = forecast.readings.last()?;
    let paces = pace(now, &forecast.readings).ok()?.in_other_air(now, end);
    day(*at, days_at_most(&paces, forecast.limit, last)?)
}
