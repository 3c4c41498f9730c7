//! What cannot be relied on: answers older than what they answer, and entries that this
//! build cannot read.

use super::decision::{Condition, InTheWay};
use crate::engine::describe::counted;
use crate::engine::entry::EntryId;
use crate::engine::job::Job;
use crate::engine::moisture::Answer;

/// The last answer to a question of the checklist, and the entry that says so.
pub(super) fn answer(job: &Job, name: &str) -> Option<(EntryId, Answer)> {
    let mut checks = job.now.checks().iter().rev();
    let (id, check) = checks.find(|(_, check)| check.value.of.as_str() == name)?;
    Some((check.head.max(*id), check.value.answer))
}

/// Every entry could be read and followed, and no two corrections disagree.
pub(super) fn everything_read(job: &Job) -> Condition {
    let mut lines = Vec::new();
    if !job.unknown.is_empty() {
        let mut kinds: Vec<_> = job.unknown.values().map(String::as_str).collect();
        kinds.sort_unstable();
        kinds.dedup();
        let what = format!(
            "{} of a kind that this build cannot read: {}",
            counted(job.unknown.len(), "entry"),
            kinds.join(", ")
        );
        lines.push(InTheWay::unknown(what, "open the job with the newer Duckboard"));
    }
    if !job.faults.is_empty() {
        let what = format!("{} that could not be followed", counted(job.faults.len(), "entry"));
        lines.push(InTheWay::unknown(what, "open the file that holds the rest of the job"));
    }
    if !job.conflicts.is_empty() {
        let what = format!("{} that two people corrected differently", counted(job.conflicts.len(), "entry"));
        lines.push(InTheWay::unknown(what, "pick one of each under Log"));
    }
    Condition::of("every entry of the job can be read", lines, "all can")
}
