//! The questions that closing hangs on beside readings: those that this job has to answer.

use super::decision::READ_AT_DEPTH;
use super::hazards::hazards;
use super::members::DECAY_IS_OUT;
use super::room::{SAME_JOISTS, asks_for_same_joists};
use super::water::{COVERED_NOW, Water};
use crate::engine::figure::Figure;
use crate::engine::framing::Judged;
use crate::engine::framing::done::SISTERS_BEYOND;
use crate::engine::framing::headers::{HEADER_DONE, asks_for_header_done};
use crate::engine::framing::joist::is_grave;
use crate::engine::framing::past::{PAST_SPANS, asks_for_past_spans};
use crate::engine::framing::schedule::asks_for_sisters_beyond;
use crate::engine::job::Job;
use crate::engine::origin::dealt_with_name;

/// A question, and the name of the check that answers it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Asked {
    /// The check's name. It never changes: jobs hold it.
    pub name: String,
    /// What is asked.
    pub asks: String,
}

/// Those whose answers stand for ever: what was built so stays so, and what was measured so was.
const FOR_EVER: [&str; 4] = [SAME_JOISTS, HEADER_DONE, SISTERS_BEYOND, READ_AT_DEPTH];

impl Asked {
    /// May the answer be another one after a season?
    pub(super) fn is_of_a_season(&self) -> bool {
        !FOR_EVER.contains(&self.name.as_str())
    }
}

/// What a job has to answer before its floor is closed, by its joists as they are judged.
pub fn asked_for_closing(job: &Job, schedule: &Figure<Vec<Judged>>) -> Vec<Asked> {
    asked(job, schedule, &Water::of(job))
}

pub(super) fn asked(job: &Job, schedule: &Figure<Vec<Judged>>, water: &Water<'_>) -> Vec<Asked> {
    let asked = |name: &str, asks: &str| Asked { name: name.to_owned(), asks: asks.to_owned() };
    let causes = water.to_deal_with().into_iter();
    let mut all: Vec<_> =
        causes.map(|cause| asked(&dealt_with_name(cause), &format!("Is it dealt with: {}?", cause.label()))).collect();
    all.extend(hazards(job).into_iter().map(|hazard| asked(hazard.check, hazard.asks)));
    let others = [
        (water.asks_for_cover(), COVERED_NOW, "Is all soil covered now, laps and edges sealed?"),
        (
            asks_for_same_joists(job),
            SAME_JOISTS,
            "Joists were laid out anew: does every number still mean the same joist?",
        ),
        (
            asks_for_header_done(job),
            HEADER_DONE,
            "Is the header doubled where it is over 4 ft, hung or on a wall or beam where it is over 6 ft, and are tail \
             joists over 12 ft held by hangers or a ledger?",
        ),
        (
            asks_for_past_spans(job),
            PAST_SPANS,
            "What comes out reaches past the joists' measured spans: is what carries the floor there sound and dry, by a \
             job of its own that is ready to close, or by an engineer?",
        ),
        (
            asks_for_sisters_beyond(schedule),
            SISTERS_BEYOND,
            "Sisters of joists that go through over the girder: does one lie along the span past it, from bearing to \
             bearing, wherever that is asked for?",
        ),
        (
            job.now.conditions().values().any(|it| is_grave(it.value.finding)),
            DECAY_IS_OUT,
            "Is all decayed or broken wood out of the floor, or probed sound?",
        ),
        (!job.now.readings().is_empty(), READ_AT_DEPTH, "Were the wettest places read at depth, with insulated pins?"),
    ];
    all.extend(others.into_iter().filter(|(is_asked, ..)| *is_asked).map(|(_, name, asks)| asked(name, asks)));
    all
}
