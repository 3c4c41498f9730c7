//! The figures that a report shows: the one place that asks for them. Everything else in
//! the command takes them as they come.

use duckboard::engine::job::Job;
use duckboard::engine::results::{Said, every_answer};
use duckboard::engine::take::Units;
use duckboard::file::{Snapshot, SnapshotFigure, figures};

/// Every figure of the job as a job file's snapshot has it, computed now.
pub(crate) fn snapshot(job: &Job) -> Snapshot {
    Snapshot::of(&figures(job, Units::default()))
}

/// Every figure of the job by its name for people, computed now.
pub(crate) fn told(job: &Job) -> Vec<SnapshotFigure> {
    let all = every_answer(job, Units::default());
    all.iter().map(|answer| SnapshotFigure::of(answer.title, &answer.said, Said::words)).collect()
}
