//! Conditions, air and photos as rows.

use super::growing::{everything, named};
use super::{Logged, place_words};
use crate::engine::job::Job;
use crate::engine::photo::Digest;

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

/// An air reading or a surface temperature.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AirRow {
    /// What was read: air, or a surface and where.
    pub what: String,
    /// The values as typed.
    pub said: String,
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
    let rows = job.now.conditions.iter().map(|(id, thing)| ConditionRow {
        place: place_words(job, thing.value.place),
        finding: thing.value.finding.label(),
        note: thing.value.note.as_ref().map(ToString::to_string).unwrap_or_default(),
        logged: Logged::of(job, *id, &thing.stamp, thing.head),
    });
    rows.collect()
}

/// Every air reading and surface temperature that stands, in log order of each.
pub fn air(job: &Job) -> Vec<AirRow> {
    let air = job.now.air.iter().map(|(id, thing)| AirRow {
        what: "Air".to_owned(),
        said: everything(&thing.value),
        logged: Logged::of(job, *id, &thing.stamp, thing.head),
    });
    let surfaces = job.now.surfaces.iter().map(|(id, thing)| AirRow {
        what: format!("Surface, {}", place_words(job, named(&thing.value, "place"))),
        said: everything(&thing.value),
        logged: Logged::of(job, *id, &thing.stamp, thing.head),
    });
    air.chain(surfaces).collect()
}

/// Every photo that stands, in log order.
pub fn photos(job: &Job) -> Vec<PhotoRow> {
    let rows = job.now.photos.iter().map(|(id, thing)| PhotoRow {
        place: place_words(job, thing.value.place),
        caption: thing.value.caption.to_string(),
        sha256: thing.value.sha256,
        logged: Logged::of(job, *id, &thing.stamp, thing.head),
    });
    rows.collect()
}
