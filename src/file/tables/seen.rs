//! Conditions, air and photos as rows.

use super::{Logged, place_words};
use crate::engine::air::SurfaceReading;
use crate::engine::describe::spot_words;
use crate::engine::job::Job;
use crate::engine::photo::Digest;
use crate::engine::take::Units;

/// A condition found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ConditionRow {
    /// Where, in words; empty if nowhere in particular.
    pub place: String,
    /// What was found.
    pub finding: &'static str,
    /// More, in the words of whoever found it.
    pub note: String,
    /// Who, when, in which visit.
    pub logged: Logged,
}

/// A soft spot, a notch or a hole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SpotRow {
    /// The member that it is on.
    pub member: String,
    /// What it is, from where to where and how deep.
    pub says: String,
    /// Who, when, in which visit.
    pub logged: Logged,
}

/// An air reading or a surface temperature.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AirRow {
    /// What was read: which air, or what surface and where.
    pub what: String,
    /// Its temperature as typed.
    pub temperature: String,
    /// The relative humidity as typed; empty for a surface.
    pub humidity: String,
    /// Who, when, in which visit.
    pub logged: Logged,
}

/// A photo.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhotoRow {
    /// Where, in words; empty if nowhere in particular.
    pub place: String,
    /// What it shows, in the words of whoever took it.
    pub caption: String,
    /// The digest under which its bytes are kept.
    pub sha256: Digest,
    /// Who, when, in which visit.
    pub logged: Logged,
}

/// Every condition that stands, in log order.
pub fn conditions(job: &Job) -> Vec<ConditionRow> {
    let rows = job.now.conditions().iter().map(|(id, thing)| ConditionRow {
        place: place_words(job, thing.value.place),
        finding: thing.value.finding.label(),
        note: thing.value.note.as_ref().map(ToString::to_string).unwrap_or_default(),
        logged: Logged::of(job, *id, thing.stamp, thing.head),
    });
    rows.collect()
}

/// Every soft spot, notch and hole that stands, in log order.
pub fn spots(job: &Job, units: Units) -> Vec<SpotRow> {
    let rows = job.now.damages().iter().map(|(id, thing)| SpotRow {
        member: thing.value.of.name(),
        says: spot_words(thing.value, units),
        logged: Logged::of(job, *id, thing.stamp, thing.head),
    });
    rows.collect()
}

/// Every air reading and surface temperature that stands, in log order of each.
pub fn air(job: &Job) -> Vec<AirRow> {
    let air = job.now.air().iter().map(|(id, thing)| AirRow {
        what: thing.value.location.label().to_owned(),
        temperature: thing.value.temperature.typed.clone(),
        humidity: thing.value.humidity.typed.clone(),
        logged: Logged::of(job, *id, thing.stamp, thing.head),
    });
    let surfaces = job.now.surfaces().iter().map(|(id, thing)| AirRow {
        what: surface(job, thing.value),
        temperature: thing.value.temperature.typed.clone(),
        humidity: String::new(),
        logged: Logged::of(job, *id, thing.stamp, thing.head),
    });
    air.chain(surfaces).collect()
}

/// Every photo that stands, in log order.
pub fn photos(job: &Job) -> Vec<PhotoRow> {
    let rows = job.now.photos().iter().map(|(id, thing)| PhotoRow {
        place: place_words(job, thing.value.place),
        caption: thing.value.caption.to_string(),
        sha256: thing.value.sha256,
        logged: Logged::of(job, *id, thing.stamp, thing.head),
    });
    rows.collect()
}

fn surface(job: &Job, reading: &SurfaceReading) -> String {
    match place_words(job, reading.place) {
        place if place.is_empty() => reading.what.to_string(),
        place => format!("{}, {place}", reading.what),
    }
}
