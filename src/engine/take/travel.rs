//! Where the next value belongs: places move on in the direction of travel, and on a
//! later visit through the places that were read before.

use super::draft::Draft;
use super::settings::Units;
use crate::engine::entry::EntryId;
use crate::engine::job::{Entry, Observation};
use crate::engine::job::{Job, Pen};
use crate::engine::place::{Face, JoistNumber, Place, Position};
use crate::engine::survey::inside;
use crate::engine::units::{Length, Typed};
use crate::order::Set;

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
    unread(job, visit, here).unwrap_or_else(|| step(job, &draft.spot, draft.travel))
}

/// The spot `joists` further on, held between the first joist and the last that is laid
/// out. What is chalked at one place is not chalked at the next. Where the next joist starts
/// at another wall, the row goes straight on: the distance is from that wall then, and unsaid
/// if the joist is not there.
pub fn step(job: &Job, spot: &Place, joists: i16) -> Place {
    let mut moved = spot.clone();
    let Position::OnJoist { joist, along } = &mut moved.position else { return moved };
    let floor = inside::floor(job);
    let (before, last) = (*joist, floor.as_ref().and_then(|floor| Some(floor.joists.as_ref()?.count())));
    *joist = joist.step(joists).min(last.and_then(JoistNumber::new).unwrap_or(JoistNumber::LAST));
    if *joist == before {
        return moved;
    }
    moved.chalk = None;
    if let (Some(floor), Some(here)) = (&floor, along.clone()) {
        let ahead = floor.starts(*joist).0 - floor.starts(before).0;
        if ahead.abs() > inside::BEYOND_A_WALL {
            let length = here.value - ahead;
            *along = (length >= Length::ZERO).then(|| as_typed(length));
        }
    }
    let is_there = floor.is_none_or(|floor| inside::refuses_place(&floor, &moved, Units::default()).is_none());
    if let (false, Position::OnJoist { along, .. }) = (is_there, &mut moved.position) {
        *along = None;
    }
    moved
}

/// A length as somebody would type it: to the sixty-fourth if it is one, else to the
/// millimetre, so that text and value agree.
fn as_typed(length: Length) -> Typed<Length> {
    if length.to_nm() % Length::SIXTY_FOURTH.to_nm() == 0 {
        return Typed::new(Units::default().read(length), length);
    }
    let whole = length.to_nearest(Length::MILLIMETRE);
    Typed::new(format!("{} mm", whole.to_nm() / Length::MILLIMETRE.to_nm()), whole)
}

/// The spot at another face. An end lies at no distance along: none is inherited.
pub fn faced(spot: &Place, face: Option<Face>) -> Place {
    let mut turned = Place { face, ..spot.clone() };
    if let (true, Position::OnJoist { along, .. }) = (face.is_some_and(Face::is_end), &mut turned.position) {
        *along = None;
    }
    turned
}

/// Why nothing can be logged at a spot, in a sentence that names it. A place that the job
/// knows can be read again wherever it is.
///
/// # Errors
/// The sentence.
pub fn standing(job: &Job, spot: &Place, units: Units) -> Result<(), String> {
    if job.now.places().values().any(|place| place.value.same_spot(spot)) {
        return Ok(());
    }
    let floor = inside::floor(job);
    if spot.face == Some(Face::End) {
        let joist = match &spot.position {
            Position::OnJoist { joist, .. } => Some(*joist),
            Position::OnPlan { .. } | Position::Named => None,
        };
        return Err(format!("{}: {}", spot.name(), inside::which_end(floor.as_ref(), joist)));
    }
    let why = floor.and_then(|floor| inside::refuses_place(&floor, spot, units));
    why.map_or(Ok(()), |why| Err(format!("{}: {why}", spot.name())))
}

/// The next place that an earlier visit read and this one has not, after `here` and then
/// from the first; none unless `here` was such a place itself. Two phones may each have
/// logged one spot as a place: reading either has read the spot.
fn unread(job: &Job, visit: Option<EntryId>, here: EntryId) -> Option<Place> {
    let (mut earlier, mut now) = (Set::default(), Set::of(here));
    for reading in job.now.readings().values() {
        let read = if reading.stamp.visit == visit { &mut now } else { &mut earlier };
        read.insert(reading.value.place);
    }
    // A place that was taken back is no place to go to.
    let place = |id: &EntryId| job.now.places().get(id).map(|place| place.value);
    let is_among = |spot: &Place, read: &Set<EntryId>| read.iter().filter_map(place).any(|it| it.same_spot(spot));
    if !is_among(place(&here)?, &earlier) {
        return None;
    }
    let in_turn = earlier.iter().filter(|id| **id > here).chain(earlier.iter().filter(|id| **id < here));
    in_turn.filter_map(place).find(|spot| !is_among(spot, &now)).cloned()
}
