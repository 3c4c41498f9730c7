//! Where the next value belongs: places move on in the direction of travel, and on a
//! later visit through the places that were read before.

use super::draft::Draft;
use crate::engine::entry::EntryId;
use crate::engine::job::{Entry, Observation};
use crate::engine::job::{Job, Pen};
use crate::engine::place::{Place, Position};
use std::collections::BTreeSet;
use std::ops::Bound::{Excluded, Unbounded};

/// The place at `spot`: the one the job knows, or a new one with the entry that says it.
pub fn place_at(job: &Job, pen: &mut Pen, spot: &Place) -> (EntryId, Option<Entry>) {
    let known = job.now.places().iter().find(|(_, place)| place.value.same_spot(spot));
    match known {
        Some((id, _)) => (*id, None),
        None => {
            let entry = pen.record(Observation::Place(spot.clone()));
            (entry.id, Some(entry))
        }
    }
}

/// The spot after `here` in this visit: on a re-reading the next place of earlier visits
/// that has not been read yet, else the next joist at the same distance.
pub(super) fn next_spot(job: &Job, visit: Option<EntryId>, draft: &Draft, here: EntryId) -> Place {
    unread(job, visit, here).unwrap_or_else(|| step(&draft.spot, draft.travel))
}

/// The spot `joists` further on. What is chalked at one place is not chalked at the next.
pub fn step(spot: &Place, joists: i16) -> Place {
    let mut spot = spot.clone();
    if let Position::OnJoist { joist, .. } = &mut spot.position {
        *joist = joist.step(joists);
        spot.chalk = None;
    }
    spot
}

/// The next place that an earlier visit read and this one has not, after `here` and then
/// from the first; none unless `here` was such a place itself. Two phones may each have
/// logged one spot as a place: reading either has read the spot.
fn unread(job: &Job, visit: Option<EntryId>, here: EntryId) -> Option<Place> {
    let (mut earlier, mut now) = (BTreeSet::new(), BTreeSet::from([here]));
    for reading in job.now.readings().values() {
        let read = if reading.stamp.visit == visit { &mut now } else { &mut earlier };
        read.insert(reading.value.place);
    }
    // A place that was taken back is no place to go to.
    let place = |id: &EntryId| job.now.places().get(id).map(|place| place.value);
    let is_among = |spot: &Place, read: &BTreeSet<EntryId>| read.iter().filter_map(place).any(|it| it.same_spot(spot));
    if !is_among(place(&here)?, &earlier) {
        return None;
    }
    let in_turn = earlier.range((Excluded(here), Unbounded)).chain(earlier.range(..here));
    in_turn.filter_map(place).find(|spot| !is_among(spot, &now)).cloned()
}
