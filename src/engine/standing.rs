//! Which readings of a place stand: a later one takes an earlier one's place, but not within a
//! visit or a day where the two contradict each other.

use super::entry::EntryId;
use super::framing::Done;
use super::framing::joist::done;
use super::framing::since::Since;
use super::job::{Job, Seen, When};
use super::moisture::{Corrected, Reading};
use super::particular::{Part, Particulars};
use super::place::{Element, JoistNumber, Position, SpotKey};
use chrono::TimeDelta;
use litemap::LiteMap;

/// No wood dries within a day by more than a meter can be off: of two readings that say so one is
/// wrong, and nobody knows which (judgement).
const A_DAY: TimeDelta = TimeDelta::hours(24);

/// A reading among the others of its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing {
    /// When it was first logged.
    pub when: When,
    /// In which visit.
    pub visit: Option<EntryId>,
    /// What it comes to.
    pub now: Corrected,
}

impl Standing {
    /// A reading that was begun under this id.
    pub const fn of(id: EntryId, reading: &Seen<'_, Reading>, now: Corrected) -> Self {
        Self { when: reading.begun(id), visit: reading.stamp.visit, now }
    }

    /// Does a later reading of the place stand for this one? A drier one of the same visit or day
    /// that contradicts it does not: both stand, and the worse one tells. So do two that nobody
    /// believes, and a number beside what is only relative. Of two phones the later is told by
    /// [`When`], and where neither is, both stand.
    pub fn is_superseded_by(&self, other: &Self) -> bool {
        let is_one_believed = !self.now.doubted || !other.now.doubted;
        let is_as_good = self.now.relative || !other.now.relative;
        is_one_believed && is_as_good && other.when.is_after(self.when) && !self.contradicts(other)
    }

    /// Is it wetter than that one of the same visit or day, by more than a meter can be off?
    pub fn contradicts(&self, other: &Self) -> bool {
        let apart = (other.when.at - self.when.at).abs();
        (self.visit == other.visit || apart < A_DAY) && self.now.contradicts(&other.now)
    }
}

/// Where readings were taken: two phones may each have logged one spot as a place of its own. And
/// which were taken of a joist that was replaced since.
pub struct Spots<'a> {
    job: &'a Job,
    first: LiteMap<EntryId, EntryId>,
    replaced: Vec<(JoistNumber, Since)>,
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
        Self { job, first, replaced: replaced(job) }
    }

    /// The place that was logged first at that spot.
    pub fn first(&self, place: EntryId) -> EntryId {
        self.first.get(&place).copied().unwrap_or(place)
    }

    /// Was that taken of a joist which was surely replaced after it?
    pub fn is_of_what_is_gone(&self, place: EntryId, taken: When) -> bool {
        let Some(place) = self.job.now.places().get(&place).map(|place| place.value) else { return false };
        let Position::OnJoist { joist, .. } = place.position else { return false };
        let is_this = |(replaced, new): &(JoistNumber, Since)| *replaced == joist && new.is_after(Since::when(taken));
        place.element == Element::Joist && self.replaced.iter().any(is_this)
    }
}

/// The joists that were replaced, and since when.
fn replaced(job: &Job) -> Vec<(JoistNumber, Since)> {
    let said = Particulars::of(job);
    let of_joist = |part: &Part| match part {
        Part::Joist(number) => Some(*number),
        _ => None,
    };
    let parts = said.parts(|part| of_joist(part).is_some());
    let done = parts.into_iter().filter_map(|part| Some((of_joist(part)?, done(said, part))));
    let each = done.flat_map(|(number, done)| done.into_iter().map(move |(what, since)| (number, what, since)));
    each.filter(|(_, what, _)| *what == Done::Replaced).map(|(number, _, since)| (number, since)).collect()
}
