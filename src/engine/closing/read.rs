//! Every place that was read, as it stands in this visit.

use super::limits::{Limit, Limits, Verdict, verdict};
use super::near::{Near, Reach};
use super::stays::DRIEST_PANEL;
use crate::engine::describe::place_name;
use crate::engine::entry::EntryId;
use crate::engine::job::{Job, Seen};
use crate::engine::moisture::{Corrected, Material, Reading, Sensing, Stands};
use crate::engine::place::Place;
use crate::engine::results::corrected;
use crate::engine::standing::{Spots, Standing};
use crate::engine::take::Units;
use litemap::LiteMap;

/// Every place that was read, as it stands.
pub(super) struct Read {
    pub(super) places: Vec<Latest>,
    pub(super) is_first_visit: bool,
    /// How many readings hang on a place that was taken back.
    pub(super) unplaced: usize,
}

/// A place, how it stands and how it was read before.
pub(super) struct Latest {
    reading: EntryId,
    pub(super) place: Place,
    pub(super) name: String,
    pub(super) material: Material,
    pub(super) meter: Option<EntryId>,
    pub(super) now: Corrected,
    /// The driest that it read since it was last too wet.
    pub(super) before: Option<Stands>,
    /// Was it ever too wet, or not surely dry?
    pub(super) was_not_dry: bool,
    pub(super) is_of_this_visit: bool,
    /// Is any reading of it of this visit, or not surely older?
    counts: bool,
    /// Is the meter said, and does it read by pins?
    pub(super) is_by_pins: bool,
}

/// One reading of a place.
struct Taken<'a> {
    id: EntryId,
    reading: &'a Reading,
    standing: Standing,
    is_of_this_visit: bool,
    /// Does it count: is it of this visit, or not surely older than it?
    counts: bool,
}

impl Read {
    /// Of a job. What counts is of its last visit.
    pub(super) fn of(job: &Job, limits: &Limits, near: &Near, units: Units) -> Self {
        let mut places: LiteMap<EntryId, Vec<Taken<'_>>> = LiteMap::new();
        let mut unplaced = 0;
        let spots = Spots::of(job);
        for (id, reading) in job.now.readings().iter() {
            let at = spots.first(reading.value.place);
            match job.now.places().get(&at) {
                None => unplaced += 1,
                Some(_) if spots.is_of_what_is_gone(at, reading.begun(*id)) => {}
                Some(place) => {
                    let taken = Taken::of(job, *id, reading);
                    if !(is_elsewhere(reading.value, place.value, near) && taken.is_dry_panel()) {
                        places.entry(at).or_default().push(taken);
                    }
                }
            }
        }
        let latest = places.iter().filter_map(|(place, taken)| {
            let place = job.now.places().get(place)?.value;
            Latest::of(job, place, taken, limit_of(place, limits), units)
        });
        Self { places: latest.collect(), is_first_visit: job.now.visits().len() <= 1, unplaced }
    }

    /// The readings that count.
    pub(super) fn entries(&self) -> impl Iterator<Item = EntryId> {
        self.places.iter().map(|place| place.reading)
    }

    /// Was any of it read on treated lumber?
    pub(super) fn is_of_treated(&self) -> bool {
        self.places.iter().any(|place| place.now.may_read_high.is_some())
    }

    /// Joists, sills and girders as they stand in this visit, or after it.
    pub(super) fn framing(&self) -> Vec<&Latest> {
        self.places.iter().filter(|place| place.place.element.is_framing()).collect()
    }

    /// The same of the floor on them, all its layers.
    pub(super) fn floor(&self) -> Vec<&Latest> {
        self.places.iter().filter(|place| !place.place.element.is_framing()).collect()
    }
}

/// Was it read on dry panel elsewhere in the house, for readings here to be held against?
/// Framing is no panel, and what lies within a bay of what comes out is not elsewhere.
fn is_elsewhere(reading: &Reading, place: &Place, near: &Near) -> bool {
    reading.reference && is_reference_place(place, near)
}

/// Can dry panel be read here as the reference?
pub(super) fn is_reference_place(place: &Place, near: &Near) -> bool {
    let is_here = |reach: &Reach| reach.holds(place);
    !place.element.is_framing() && !near.reach().is_some_and(is_here)
}

const fn limit_of(place: &Place, limits: &Limits) -> Limit {
    if place.element.is_framing() { limits.framing } else { limits.subfloor }
}

impl<'a> Taken<'a> {
    fn of(job: &Job, id: EntryId, reading: Seen<'a, Reading>) -> Self {
        let visit =
            job.current_visit().and_then(|(visit, _)| Some((visit, job.now.visits().get(&visit)?.begun(visit))));
        let when = reading.begun(id);
        let this = visit.map(|(visit, _)| visit);
        let is_of_this_visit = job.is_of_visit(this, reading.stamp.visit, reading.stamp.at);
        let is_older = visit.is_some_and(|(_, begun)| begun.is_after(when));
        Self {
            id,
            reading: reading.value,
            standing: Standing::of(id, &reading, corrected(job, id, reading).value),
            is_of_this_visit,
            counts: is_of_this_visit || !is_older,
        }
    }

    const fn now(&self) -> Corrected {
        self.standing.now
    }

    /// What is meant as the reference and is wet is a place that is wet.
    fn is_dry_panel(&self) -> bool {
        !self.now().corrected.is_above(DRIEST_PANEL)
    }
}

impl Latest {
    fn of(job: &Job, place: &Place, all: &[Taken<'_>], limit: Limit, units: Units) -> Option<Self> {
        // What a drier reading of the same day contradicts counts, however old its visit.
        let is_contradicted =
            |taken: &Taken<'_>| all.iter().any(|other| other.counts && taken.standing.contradicts(&other.standing));
        let counting: Vec<_> = all.iter().filter(|taken| taken.counts || is_contradicted(taken)).collect();
        let is_superseded = |taken: &Taken<'_>| counting.iter().any(|by| taken.standing.is_superseded_by(&by.standing));
        let standing = counting.iter().copied().filter(|taken| !is_superseded(taken));
        let worst = standing.max_by_key(|taken| (verdict(&taken.now(), limit.at), taken.now().corrected, taken.id));
        let now = worst.or(all.last())?;
        let meter = now.reading.meter.and_then(|meter| job.now.meters().get(&meter));
        Some(Self {
            reading: now.id,
            name: place_name(place, units),
            place: place.clone(),
            material: now.reading.wood.material,
            meter: now.reading.meter,
            before: driest_since_wet(all, now, limit),
            was_not_dry: all.iter().any(|taken| {
                let says = verdict(&taken.now(), limit.at);
                taken.now().corrected.is_above(limit.at) || !matches!(says, Verdict::Dry | Verdict::Relative)
            }),
            now: now.now(),
            is_of_this_visit: all.iter().any(|taken| taken.is_of_this_visit),
            counts: !counting.is_empty(),
            is_by_pins: meter.is_some_and(|meter| meter.value.sensing == Sensing::Pin),
        })
    }

    /// What it says against its limit.
    pub(super) fn verdict(&self, limit: Limit) -> Verdict {
        verdict(&self.now, limit.at)
    }

    /// Does it say something of this visit? One that may be younger than the visit speaks
    /// against closing, and never for it.
    pub(super) fn speaks(&self, limit: Limit) -> bool {
        self.is_of_this_visit || self.counts && self.verdict(limit) != Verdict::Dry
    }

    /// Can a limit be held to it: pins, in lumber, at a number that is believed?
    pub(super) fn is_measured(&self) -> bool {
        self.is_of_this_visit && self.now.is_firm() && self.is_by_pins && self.material.is_lumber()
    }
}

/// The driest believed reading of a place since it was last too wet; none that came after this one.
fn driest_since_wet(all: &[Taken<'_>], now: &Taken<'_>, limit: Limit) -> Option<Stands> {
    let mut driest: Option<Stands> = None;
    let is_later = |taken: &Taken<'_>| taken.standing.when.is_after(now.standing.when);
    for taken in all.iter().filter(|taken| taken.id != now.id && !taken.now().doubted && !is_later(taken)) {
        let reads = taken.now().corrected;
        driest = Some(match driest {
            Some(before) if !reads.is_above(limit.at) => before.min(reads),
            _ => reads,
        });
    }
    driest
}
