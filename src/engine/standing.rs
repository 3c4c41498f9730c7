//! Which readings of a place stand: a later one takes an earlier one's place, but not where no
//! wood dries so fast.

use super::entry::EntryId;
use super::framing::Done;
use super::framing::done::done;
use super::framing::joist::number_of;
use super::framing::since::Since;
use super::framing::supports::carrier;
use super::job::{Job, Seen, When};
use super::moisture::{Corrected, Reading};
use super::particular::{Part, Particulars};
use super::place::{Element, Place, Position, SpotKey};
use super::survey::{Floor, Framing};
use super::units::MoistureContent;
use chrono::TimeDelta;
use litemap::LiteMap;

/// No wood in a floor dries within a day by more than a meter can be off, nor from then on by more
/// than so many points a day: of two readings that say so one is wrong, and nobody knows which
/// (judgement).
const A_DAY: TimeDelta = TimeDelta::hours(24);
/// So many points of moisture content: see [`A_DAY`].
pub const POINTS_A_DAY: i32 = 3;

/// A reading among the others of its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing {
    /// When it was first logged.
    pub when: When,
    /// What it comes to.
    pub now: Corrected,
}

impl Standing {
    /// A reading that was begun under this id.
    pub const fn of(id: EntryId, reading: &Seen<'_, Reading>, now: Corrected) -> Self {
        Self { when: reading.begun(id), now }
    }

    /// Does a later reading of the place stand for this one? A drier one that contradicts it does
    /// not: both stand, and the worse one tells. So do two that nobody believes, and a number beside
    /// what is only relative. Of two phones the later is told by [`When`], and where neither is, both
    /// stand.
    pub fn is_superseded_by(&self, other: &Self) -> bool {
        let is_one_believed = !self.now.doubted || !other.now.doubted;
        let is_as_good = self.now.relative || !other.now.relative;
        is_one_believed && is_as_good && other.when.is_after(self.when) && !self.contradicts(other)
    }

    /// Is it wetter than that one by more than a meter can be off and wood can dry in between?
    pub fn contradicts(&self, other: &Self) -> bool {
        match dried_by(other.when.at - self.when.at) {
            Dried::Not => self.now.contradicts(&other.now),
            Dried::UpTo(points) => self.now.contradicts_after(&other.now, points),
            Dried::OrWetted => false,
        }
    }
}

/// What may have become of wood in between.
enum Dried {
    Not,
    UpTo(MoistureContent),
    /// It had a day and more to get wet.
    OrWetted,
}

fn dried_by(since: TimeDelta) -> Dried {
    if since.abs() < A_DAY {
        return Dried::Not;
    }
    let days = f64::from(i32::try_from(since.num_minutes()).unwrap_or(i32::MAX)) / 1440.0;
    if days < 0.0 {
        return Dried::OrWetted;
    }
    Dried::UpTo(MoistureContent::from_percent_f64(f64::from(POINTS_A_DAY) * days))
}

/// Where readings were taken: two phones may each have logged one spot as a place of its own. And
/// which were taken of a member that was replaced since.
pub struct Spots<'a> {
    job: &'a Job,
    first: LiteMap<EntryId, EntryId>,
    read: LiteMap<EntryId, Vec<When>>,
    replaced: Vec<(Part, Since)>,
    framing: Option<Framing>,
}

impl<'a> Spots<'a> {
    /// Of a job.
    pub fn of(job: &'a Job) -> Self {
        let mut at: LiteMap<SpotKey, EntryId> = LiteMap::new();
        let mut first = LiteMap::new();
        for (id, place) in job.now.places().iter() {
            let here = *at.entry(place.value.spot_key()).or_insert(*id);
            first.insert(*id, here);
        }
        let mut spots = Self { job, first, read: LiteMap::new(), replaced: replaced(job), framing: None };
        if !spots.replaced.is_empty() {
            spots.framing = Floor::of(job).and_then(|floor| floor.joists);
        }
        for (id, reading) in job.now.readings().iter() {
            let at = spots.first(reading.value.place);
            spots.read.entry(at).or_default().push(reading.begun(*id));
        }
        spots
    }

    /// The place that was logged first at that spot.
    pub fn first(&self, place: EntryId) -> EntryId {
        self.first.get(&place).copied().unwrap_or(place)
    }

    /// Was that taken of a joist which was surely replaced after it? Of sill, rim joist and girder
    /// nobody says how much was replaced: what was read there before is gone once the spot was
    /// read again.
    pub fn is_of_what_is_gone(&self, place: EntryId, taken: When) -> bool {
        let Some(part) = self.job.now.places().get(&place).and_then(|place| self.member(place.value)) else {
            return false;
        };
        let is_joist = matches!(part, Part::Joist(_));
        let is_after = |new: Since| new.is_after(Since::when(taken)) && (is_joist || self.is_read_since(place, new));
        self.replaced.iter().any(|(replaced, new)| *replaced == part && is_after(*new))
    }

    fn is_read_since(&self, place: EntryId, new: Since) -> bool {
        let here = self.read.get(&self.first(place)).into_iter().flatten();
        here.copied().any(|when| Since::when(when).is_after(new))
    }

    /// The member that a place is on. Places do not tell one girder from another.
    fn member(&self, place: &Place) -> Option<Part> {
        match (place.element, &place.position) {
            (Element::Joist, Position::OnJoist { joist, .. }) => Some(Part::Joist(*joist)),
            (Element::Joist, _) => number_of(place, self.framing.as_ref()?).map(Part::Joist),
            (Element::Girder, _) if self.has_several_girders() => None,
            (element, _) => carrier(element),
        }
    }

    fn has_several_girders(&self) -> bool {
        Particulars::of(self.job).parts(|part| matches!(part, Part::Girder(_))).len() > 1
    }
}

/// The members that were replaced, and since when.
fn replaced(job: &Job) -> Vec<(Part, Since)> {
    let said = Particulars::of(job);
    let mut replaced = Vec::new();
    for part in said.parts(|part| !matches!(part, Part::House | Part::Order(_))) {
        for (_, since) in done(said, part).into_iter().filter(|(what, _)| *what == Done::Replaced) {
            replaced.push((part.clone(), since));
        }
    }
    replaced
}
