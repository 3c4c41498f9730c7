//! When each place reaches its limit, as a range of days; and what other air would do.

use super::air::{ThisVisit, VisitAir};
use super::fit::Still;
use super::ways::Ways;
use crate::engine::air::equilibrium_moisture;
use crate::engine::closing::{Limits, Verdict, verdict};
use crate::engine::entry::{EntryId, Time};
use crate::engine::extent::Group;
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::job::{Job, LONGEST_VISIT};
use crate::engine::moisture::{Corrected, Wood};
use crate::engine::results::{Taken, readings, standing, worst_of_each};
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

/// On no more days than this a place was read that reads under its limit: of invented wood, read on
/// so many by a meter that is off by itself and from reading to reading, 23 of 172 in three sets
/// were still over it, 10 of 59 in the worst (`tests/calibration`); of wood that was read once more,
/// one in thirty.
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
    /// Was it last read before this visit? What became of it since nobody knows.
    pub is_old: bool,
}

impl Forecast {
    /// Is it at its limit, in air that brings wood above that again?
    pub fn would_not_stay(&self, end: MoistureContent) -> bool {
        end > self.limit && matches!(self.outlook, Outlook::There | Outlook::Close)
    }

    /// Was it last read before this visit, and not under its limit?
    pub fn is_to_be_read_again(&self) -> bool {
        self.is_old && self.outlook != Outlook::There
    }
}

/// When a place reaches its limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outlook {
    /// It has, by more than a meter can be off.
    There,
    /// It reads at or under its limit, by less than a meter can be off.
    Close,
    /// Between these days, neither before the job's latest entry; the second is open when
    /// nobody can say how late.
    Between(Time, Option<Time>),
    /// By its readings it would be there before the job's latest entry: nobody looked.
    Passed,
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
    /// When the job's latest entry was made: what is before that is no more to come.
    pub now: Time,
    /// Where wood ends in the dampest crawl air of this visit.
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
    let crawl = VisitAir::of(job).crawl;
    let Some((air_id, air)) = crawl.dampest() else { return Figure::Missing(vec![Need::CrawlAir]) };
    let end = equilibrium_moisture(air.temperature, air.humidity);
    let Series { of, used, relative } = Series::of(job);
    if !of.values().any(|place| days_read(&place.readings) > 1) {
        return Figure::Missing(vec![Need::SecondReading]);
    }
    let Some(clock) = Clock::of(job) else { return Figure::Missing(vec![Need::SecondReading]) };
    let forecast = |(place, of): (EntryId, OfPlace)| {
        let (outlook, ways) = of.outlook(end, clock);
        let is_old = clock.is_old(&of.readings);
        (Forecast { place, readings: of.readings, limit: of.limit, outlook, is_old }, ways)
    };
    let mut places: Vec<_> = of.into_iter().map(forecast).collect();
    places.sort_by_key(|(place, _)| std::cmp::Reverse(lateness(place)));
    let other_air = other_air(air.temperature, end, &places, clock);
    let places: Vec<_> = places.into_iter().map(|(place, _)| place).collect();
    let mut doubts = vec!["Thick or covered wood dries slower inside than pins at its face say.".to_owned()];
    doubts.extend(crawl.doubts("the dampest"));
    doubts.extend(counted_doubts(&places, relative));
    let value = Forecasts { now: clock.now, end, places, other_air };
    let why = Why::rule("Each day a part of what is left above the wood's end in this air goes.", &SOURCES)
        .with("wood ends in this air at", format!("{:.1} %", end.to_percent()))
        .using([air_id])
        .using(used);
    let assumed = vec!["the crawl air stays as it was read in this visit".to_owned()];
    Figure::Known(Known { value, assumed, doubts, why })
}

/// What is not told of all places alike, with how many they are.
fn counted_doubts(places: &[Forecast], relative: usize) -> Vec<String> {
    let count = |is: &dyn Fn(&Forecast) -> bool| places.iter().filter(|place| is(place)).count();
    let low = count(&|place| place.readings.iter().any(|(_, reading)| reading.may_read_low.is_some()));
    let seldom = count(&|place| place.outlook == Outlook::There && days_read(&place.readings) <= SELDOM);
    let old = count(&Forecast::is_to_be_read_again);
    let mut doubts = Vec::new();
    if relative > 0 {
        doubts.push(format!("Places that were read only relatively are not in this: {relative}."));
    }
    if low > 0 {
        doubts.push(format!(
            "Places that may read low: {low}. Their last day is that of wood as wet as it may be: say species, meter and how warm the wood is."
        ));
    }
    if old > 0 {
        doubts.push(format!(
            "Places over their limits that were last read before this visit: {old}. What became of them since nobody knows: their last \
             day counts from this visit, as if they had not dried since."
        ));
    }
    if seldom > 0 {
        doubts.push(format!(
            "Places that read under their limits and were read on one or two days: {seldom}. One in six such, perhaps more, may still be over: \
             read them once more."
        ));
    }
    doubts
}

/// From when days count.
#[derive(Debug, Clone, Copy)]
struct Clock {
    /// When this visit was begun.
    visit: Option<Time>,
    /// When the job's latest entry was made.
    now: Time,
}

impl Clock {
    fn of(job: &Job) -> Option<Self> {
        let now = job.now.things().map(|thing| thing.stamp.at.max(thing.said)).max()?;
        Some(Self { visit: ThisVisit::of(job).begun(), now })
    }

    /// From when on wood is in the air of this visit: from the visit, or the last reading if that
    /// is later.
    fn start(self, last_read: Time) -> Time {
        self.visit.map_or(last_read, |visit| visit.max(last_read))
    }

    /// Were they all taken before this visit?
    fn is_old(self, readings: &[(Time, Corrected)]) -> bool {
        let is_before = |at: Time| self.start(at) > at || self.now - at > LONGEST_VISIT;
        readings.last().is_some_and(|(at, _)| is_before(*at))
    }
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
    /// With which meters it was read, and as which wood.
    by: Vec<(Option<EntryId>, Wood)>,
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
                of.entry(place).or_insert_with(|| OfPlace {
                    limit,
                    readings: Vec::new(),
                    by: Vec::new(),
                    stands: None,
                });
            }
            !known.value.relative
        });
        for (id, reading, known) in all.iter().filter(|taken| !is_contradicted(taken, &all, &spots)) {
            if let Some(place) = of.get_mut(&spots.first(reading.value.place)) {
                used.push(*id);
                place.readings.push((reading.stamp.at, known.value));
                place.by.push((reading.value.meter, reading.value.wood));
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

    fn outlook(&self, end: MoistureContent, clock: Clock) -> (Outlook, Option<Ways>) {
        let (Some((last_read, _)), Some((_, stands))) = (self.readings.last(), self.stands) else {
            return (Outlook::Unknown(Still::TooFew), None);
        };
        let here = match verdict(&stands, self.limit) {
            Verdict::Dry => Some(Outlook::There),
            Verdict::Close | Verdict::CloseByWood => Some(Outlook::Close),
            Verdict::Loose => Some(Outlook::Unknown(Still::Loose)),
            Verdict::Doubted => Some(Outlook::Unknown(Still::Doubted)),
            Verdict::Relative | Verdict::OverBySalts | Verdict::Over | Verdict::Wet | Verdict::Soaked => None,
        };
        let is_alike = self.by.iter().all(|by| self.by.first() == Some(by));
        match (here, Ways::of(end, &self.readings, is_alike)) {
            (Some(here), ways) => (here, ways.ok()),
            (None, ways) if self.limit <= end => (Outlook::Never, ways.ok()),
            (None, Err(still)) => (Outlook::Unknown(still), None),
            (None, Ok(ways)) => (between(&ways, self.limit, *last_read, clock), Some(ways)),
        }
    }
}

/// From the first day that its readings allow, though nobody looked then, to the last, had it not
/// dried since it was read.
fn between(ways: &Ways, limit: MoistureContent, last_read: Time, clock: Clock) -> Outlook {
    let Some(first) = day(last_read, ways.days_at_least(limit)) else { return Outlook::Unknown(Still::NotDrying) };
    let latest = ways.days_at_most(limit).and_then(|days| day(clock.start(last_read), days));
    if latest.is_some_and(|latest| latest < clock.now) {
        return Outlook::Passed;
    }
    Outlook::Between(first.max(clock.now), latest)
}

/// On how many days a place was read.
pub(super) fn days_read(readings: &[(Time, Corrected)]) -> usize {
    readings.iter().map(|(at, _)| at.date_naive()).collect::<BTreeSet<_>>().len()
}

/// So many days on, if a day can be named there.
fn day(from: Time, days: f64) -> Option<Time> {
    (days <= FARTHEST_DAYS).then(|| from + TimeDelta::minutes(libm::round(days * 24.0 * 60.0) as i64))
}

/// For the order: what never gets there comes first, what is there last.
fn lateness(forecast: &Forecast) -> (u8, i64, EntryId) {
    let (rank, day) = match forecast.outlook {
        Outlook::Never => (6, 0),
        Outlook::Unknown(_) => (5, 0),
        Outlook::Passed => (4, 0),
        Outlook::Between(first, None) => (3, first.timestamp()),
        Outlook::Between(_, Some(last)) => (2, last.timestamp()),
        Outlook::Close => (1, 0),
        Outlook::There => (0, 0),
    };
    (rank, day, forecast.place)
}

/// Air that is drier than this one, and by when all would be dry in it.
fn other_air(
    temperature: Temperature,
    now: MoistureContent,
    places: &[(Forecast, Option<Ways>)],
    clock: Clock,
) -> Vec<OtherAir> {
    let all = [("the soil covered, crawl air at 65 %", COVERED), ("a dehumidifier, crawl air at 50 %", DEHUMIDIFIED)];
    let air = all.into_iter().map(|(with, humidity)| (with, equilibrium_moisture(temperature, humidity)));
    let is_over = |(place, _): &&(Forecast, Option<Ways>)| !matches!(place.outlook, Outlook::There | Outlook::Close);
    let all_by = |end| {
        let over = places.iter().filter(is_over);
        let days: Option<Vec<_>> =
            over.map(|(place, ways)| in_air(place, &ways.as_ref()?.in_other_air(now, end), clock)).collect();
        days?.into_iter().max()
    };
    air.filter(|(_, end)| *end < now).map(|(with, end)| OtherAir { with, end, all_by: all_by(end) }).collect()
}

/// By when a place would be at its limit in other air, which nobody made before the job's latest
/// entry: at the pace that it was seen to dry at. Drier air makes it no later than it is.
fn in_air(forecast: &Forecast, ways: &Ways, clock: Clock) -> Option<Time> {
    let by = day(clock.now, ways.days_at_most(forecast.limit)?)?;
    match forecast.outlook {
        Outlook::Passed => None,
        Outlook::Between(_, Some(latest)) => Some(by.min(latest)),
        _ => Some(by),
    }
}
