//! Which air of a visit counts. Whoever asks for the air of this visit asks here.
//!
//! Air is read more than once in a visit: by the hatch and by the wet wall, or on two phones.
//! All of it stands, and for each question that one counts which decides against.

use crate::engine::air::{Air, AirLocation, HumidityRatio, Pressure, equilibrium_moisture, shown};
use crate::engine::describe::capital;
use crate::engine::entry::{EntryId, Time};
use crate::engine::job::{InVisit, Job, Kind, Seen, When};
use crate::engine::moisture::WoodTemperature;
use crate::engine::moisture::correction::METER_ERROR;
use crate::engine::place::Element;
use crate::engine::units::{MoistureContent, RelativeHumidity, Temperature};
use crate::engine::warmth::{WOOD, wood_temperature};

/// Drier air under a house was seldom read: a digit may be lost (judgement).
const DRY_FOR_A_CRAWL: RelativeHumidity = RelativeHumidity::percent(30);

/// What was read of the air in this visit, and of how warm things are in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct VisitAir {
    /// Under the floor.
    pub crawl: Airs,
    /// Outside, while the crawl space was read.
    pub outdoors: Airs,
    /// What is under the floor, read at that time.
    pub surfaces: Vec<Surface>,
}

/// Readings of one air, each with its entry, in log order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Airs {
    location: AirLocation,
    all: Vec<(EntryId, Air)>,
}

/// How warm something under the floor is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Surface {
    /// The entry that says it.
    pub id: EntryId,
    /// How warm it is.
    pub warmth: Temperature,
    /// Was it said to be wood? What was not may be a pipe or a duct.
    pub is_wood: bool,
}

impl VisitAir {
    /// That of the current visit: what it read, and what another phone may have read since it was
    /// begun. Nothing else makes an air known that this visit did not read.
    pub fn of(job: &Job) -> Self {
        let air = |location: AirLocation| {
            let there = job.now.air().iter().filter(move |(_, air)| air.value.location == location);
            of_this_visit(job, there.map(|(id, air)| Then::of(*id, &air, air.value.air())).collect())
        };
        let mut crawl = air(AirLocation::Crawl);
        let all = crawl.clone();
        crawl.retain(|this| !all.iter().any(|later| later.when.is_after(this.when) && later.is_days_from(this)));
        let airs = |location, of: Vec<Then<Air>>| Airs { location, all: of.into_iter().map(Then::read).collect() };
        let outdoors = at_the_time_of(&crawl, air(AirLocation::Outdoors));
        let warmth = at_the_time_of(&crawl, of_this_visit(job, warmth(job)));
        let surface =
            |it: Then<(Temperature, bool)>| Surface { id: it.when.id, warmth: it.value.0, is_wood: it.value.1 };
        Self {
            crawl: airs(AirLocation::Crawl, crawl),
            outdoors: airs(AirLocation::Outdoors, outdoors),
            surfaces: warmth.into_iter().map(surface).collect(),
        }
    }

    /// The coldest surface, whatever it is.
    pub fn coldest(&self) -> Option<Surface> {
        self.surfaces.iter().copied().min_by_key(|surface| (surface.warmth, surface.id))
    }

    /// The coldest that was said to be wood.
    pub fn coldest_wood(&self) -> Option<Surface> {
        self.surfaces.iter().copied().filter(|it| it.is_wood).min_by_key(|surface| (surface.warmth, surface.id))
    }
}

impl Airs {
    /// Was it read at all?
    pub fn is_read(&self) -> bool {
        !self.all.is_empty()
    }

    /// Each that was read.
    pub fn each(&self) -> impl Iterator<Item = (EntryId, Air)> {
        self.all.iter().copied()
    }

    /// The one in which wood ends wettest.
    pub fn dampest(&self) -> Option<(EntryId, Air)> {
        dampest(self.each())
    }

    /// The one that holds most vapor: it condenses first.
    pub fn fullest(&self) -> Option<(EntryId, Air)> {
        fullest(self.each())
    }

    /// The one that holds least.
    pub fn emptiest(&self) -> Option<(EntryId, Air)> {
        self.each().min_by_key(|(id, air)| (vapor(*air), *id))
    }

    /// How often it was read, if not alike.
    pub fn times_unlike(&self) -> Option<usize> {
        let is_unlike = self.all.iter().any(|(_, air)| Some(air) != self.all.first().map(|(_, first)| first));
        is_unlike.then_some(self.all.len())
    }

    /// What is to be borne in mind of it: that it was not read alike, and which counts; that it is
    /// unlikely.
    pub fn doubts(&self, counts: &str) -> impl Iterator<Item = String> + use<> {
        let unlikely = self
            .unlikely()
            .map(|says| format!("{}: take it back if it was typed wrong, or read it so once more.", capital(&says)));
        self.differ(counts).into_iter().chain(unlikely)
    }

    /// That crawl air was read once drier than it is likely to be.
    pub fn unlikely(&self) -> Option<String> {
        let read = shown::humidity(self.one_off()?.humidity);
        Some(format!("crawl air reads {read}, drier than air under a house is likely to be"))
    }

    /// Each but the one that is unlikely.
    pub fn likely(&self) -> impl Iterator<Item = (EntryId, Air)> {
        let one_off = self.one_off();
        self.each().filter(move |(_, air)| Some(*air) != one_off)
    }

    fn one_off(&self) -> Option<Air> {
        one_off(self.each().map(|(_, air)| air)).filter(|_| self.location == AirLocation::Crawl)
    }

    fn differ(&self, counts: &str) -> Option<String> {
        let times = self.times_unlike()?;
        let said = |air: Air| format!("{} at {}", shown::humidity(air.humidity), shown::temperature(air.temperature));
        let (least, most) = (self.emptiest()?.1, self.fullest()?.1);
        let (location, least, most) = (capital(self.location.label()), said(least), said(most));
        Some(format!("{location} air was read {times} times in this visit, from {least} to {most}: {counts} counts."))
    }
}

/// Of a visit's crawl airs the one that is drier than it is likely to be, where no other reading says
/// so too.
pub fn one_off(airs: impl Iterator<Item = Air>) -> Option<Air> {
    let mut dry = airs.filter(|air| air.humidity < DRY_FOR_A_CRAWL);
    dry.next().filter(|_| dry.next().is_none())
}

/// Of airs the one in which wood ends wettest; of two alike the one that was read later.
pub fn dampest(airs: impl IntoIterator<Item = (EntryId, Air)>) -> Option<(EntryId, Air)> {
    let end = |air: Air| equilibrium_moisture(air.temperature, air.humidity);
    airs.into_iter().max_by_key(|(id, air)| (end(*air), air.humidity, *id))
}

/// Of airs the one that holds most vapor; of two alike the one that was read later.
pub fn fullest(airs: impl IntoIterator<Item = (EntryId, Air)>) -> Option<(EntryId, Air)> {
    airs.into_iter().max_by_key(|(id, air)| (vapor(*air), *id))
}

/// Altitude moves every air alike.
#[inline(never)]
fn vapor(air: Air) -> HumidityRatio {
    HumidityRatio::of(air, Pressure::SEA_LEVEL)
}

/// How an air that holds wood at its end stands to a limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Settles {
    /// Over it.
    Over,
    /// At or under it, by less than a reading has to be under it (judgement: a hygrometer is no
    /// surer than a meter).
    Close,
    /// Under it by as much.
    Under,
}

impl Settles {
    /// Where wood ends against its limit.
    pub fn of(end: MoistureContent, limit: MoistureContent) -> Self {
        let (end, limit) = (end.to_percent(), limit.to_percent());
        match () {
            () if end > limit => Self::Over,
            () if end > limit - METER_ERROR => Self::Close,
            () => Self::Under,
        }
    }
}

/// Something that was read, and when.
#[derive(Debug, Clone, Copy)]
struct Then<T> {
    when: When,
    visit: Option<EntryId>,
    in_visit: InVisit,
    value: T,
}

impl<T> Then<T> {
    fn of<K: Kind>(id: EntryId, seen: &Seen<'_, K>, value: T) -> Self {
        Self { when: seen.begun(id), visit: seen.stamp.visit, in_visit: seen.in_visit(), value }
    }

    fn read(self) -> (EntryId, T) {
        (self.when.id, self.value)
    }

    /// Were both said in a visit that nobody ended, more days apart than a visit may last?
    fn is_days_from<U>(&self, other: &Then<U>) -> bool {
        self.visit == other.visit && !self.in_visit.is_same(other.in_visit)
    }
}

/// What counts as read in the current visit: its own, and with it what is of no surely older time.
fn of_this_visit<T>(job: &Job, mut all: Vec<Then<T>>) -> Vec<Then<T>> {
    let now = ThisVisit::of(job);
    if !all.iter().any(|it| now.holds(job, it.visit, it.when)) {
        return Vec::new();
    }
    all.retain(|it| now.may_hold(it.visit, it.when));
    all
}

/// The current visit.
pub(super) struct ThisVisit {
    visit: Option<EntryId>,
    begun: Option<When>,
}

impl ThisVisit {
    pub(super) fn of(job: &Job) -> Self {
        let visit = job.current_visit().map(|(visit, _)| visit);
        Self { visit, begun: visit.and_then(|visit| Some(job.now.visits().get(&visit)?.begun(visit))) }
    }

    /// When it was begun.
    pub(super) fn begun(&self) -> Option<Time> {
        self.begun.map(|begun| begun.at)
    }

    /// Was something said in it, or in one of another phone's that is the same?
    fn holds(&self, job: &Job, visit: Option<EntryId>, when: When) -> bool {
        job.is_of_visit(self.visit, visit, when.at)
    }

    /// Was something said in it, or is it of no surely older time?
    pub(super) fn may_hold(&self, visit: Option<EntryId>, when: When) -> bool {
        visit == self.visit || self.begun.is_none_or(|begun| !begun.is_after(when))
    }
}

/// What was read while one of these airs was: of another day it says nothing of them.
fn at_the_time_of<T>(airs: &[Then<Air>], mut all: Vec<Then<T>>) -> Vec<Then<T>> {
    all.retain(|it| airs.is_empty() || airs.iter().any(|air| !air.is_days_from(it)));
    all
}

/// Everything under the floor whose warmth was read, and whether it was said to be wood.
fn warmth(job: &Job) -> Vec<Then<(Temperature, bool)>> {
    let is_below = |place: Option<EntryId>| {
        let element = place.and_then(|place| job.now.places().get(&place)).map(|place| place.value.element);
        !matches!(element, Some(Element::SubfloorAbove | Element::FinishedFloor))
    };
    let surfaces = job.now.surfaces().iter().filter(|(_, it)| is_below(it.value.place));
    let surfaces =
        surfaces.map(|(id, it)| Then::of(*id, &it, (it.value.temperature.value, is_wood(it.value.what.as_str()))));
    let readings = job.now.readings().iter().filter(|(_, it)| is_below(Some(it.value.place)));
    let wood = readings.filter_map(|(id, it)| match wood_temperature(job, *id, &it) {
        WoodTemperature::Measured(warmth) => Some(Then::of(*id, &it, (warmth, true))),
        WoodTemperature::Assumed { .. } | WoodTemperature::NotRead => None,
    });
    // A probe's reading goes with every reading of the wood that follows: once is enough.
    let mut warmth: Vec<Then<(Temperature, bool)>> = surfaces.collect();
    for this in wood {
        let is_told = |that: &Then<(Temperature, bool)>| that.value == this.value && that.visit == this.visit;
        if !warmth.iter().any(|that| is_told(that) && !that.is_days_from(&this)) {
            warmth.push(this);
        }
    }
    warmth
}

/// Does what was read say that it is wood, or a part of the floor?
fn is_wood(what: &str) -> bool {
    let begins = |with: &str| what.get(..with.len()).is_some_and(|begins| begins.eq_ignore_ascii_case(with));
    begins(WOOD) || Element::ALL.into_iter().any(|element| begins(element.label()))
}
