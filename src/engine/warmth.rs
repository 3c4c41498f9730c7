//! How warm the wood was of which a reading was taken: by the probe that was held to it in that
//! visit. A reading carries the number that was typed; what became of that entry since, and on
//! which member it was, is looked up here.

use super::air::SurfaceReading;
use super::describe::place_name;
use super::entry::EntryId;
use super::job::{Job, Seen, Shelf};
use super::moisture::{Reading, WoodTemperature};
use super::place::{Place, Position};
use super::take::Units;

/// The name of the surface that is the wood itself. It never changes: jobs hold it.
pub const WOOD: &str = "Wood temperature";

/// How warm the wood was, and how that is known. A probe on one member says nothing of a member of
/// another kind: a sill by a cold wall is no joist. Of one member of a kind it tells of the next, with
/// a margin.
pub fn wood_temperature(job: &Job, id: EntryId, reading: &Seen<'_, Reading>) -> WoodTemperature {
    let Some(typed) = &reading.value.wood_temperature else { return WoodTemperature::NotRead };
    match probe(job, id, reading) {
        // As files say it that no probe's entry came with.
        None => WoodTemperature::Measured(typed.value),
        Some(Probe::TakenBack) => WoodTemperature::NotRead,
        Some(Probe::Stands(surface)) => on_member(job, surface, reading.value.place),
    }
}

/// What became of the entry of the probe.
enum Probe<'a> {
    TakenBack,
    Stands(&'a SurfaceReading),
}

/// The last one of the wood that the phone logged before that reading, in its visit.
fn probe<'a>(job: &'a Job, reading_id: EntryId, reading: &Seen<'_, Reading>) -> Option<Probe<'a>> {
    let is_it = |id: EntryId, surface: &Seen<'_, SurfaceReading>| {
        surface.value.what.as_str() == WOOD
            && id.device == reading_id.device
            && id < reading_id
            && surface.in_visit().is_same(reading.in_visit())
    };
    let last = |of: Shelf<'a, SurfaceReading>| of.iter().rfind(|(id, it)| is_it(**id, it));
    match (last(job.now.surfaces()), last(job.gone.surfaces())) {
        (Some((stands, surface)), gone) if gone.is_none_or(|(gone, _)| gone < stands) => {
            Some(Probe::Stands(surface.value))
        }
        (_, gone) => gone.map(|_| Probe::TakenBack),
    }
}

fn on_member(job: &Job, surface: &SurfaceReading, at: EntryId) -> WoodTemperature {
    let temperature = surface.temperature.value;
    let place = |id: EntryId| job.now.places().get(&id).map(|place| place.value);
    match (surface.place.and_then(place), place(at)) {
        (Some(probed), Some(read)) if is_one_member(probed, read) => WoodTemperature::Measured(temperature),
        (Some(probed), Some(read)) if probed.element == read.element => {
            WoodTemperature::Assumed { temperature, from: place_name(probed, Units::default()) }
        }
        _ => WoodTemperature::NotRead,
    }
}

fn is_one_member(one: &Place, other: &Place) -> bool {
    let joist = |place: &Place| match &place.position {
        Position::OnJoist { joist, .. } => Some(*joist),
        Position::OnPlan { .. } | Position::Named => None,
    };
    let is_one_spot = one.spot_key() == other.spot_key();
    one.element == other.element && (is_one_spot || joist(one).is_some() && joist(one) == joist(other))
}
