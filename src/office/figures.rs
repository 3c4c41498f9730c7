//! The figures that a report and a written file show: the one place that asks for them.
//! Everything else in the command takes them as they come.

use duckboard::engine::job::Job;
use duckboard::engine::results::{Answer, Said, answers};
use duckboard::engine::take::Units;
use duckboard::file::SnapshotFigure;

/// Every figure of the job by its name in a job file's snapshot, computed now.
pub(crate) fn snapshot(job: &Job) -> Vec<SnapshotFigure> {
    figures(job, |answer| answer.name)
}

/// Every figure of the job by its name for people, computed now.
pub(crate) fn told(job: &Job) -> Vec<SnapshotFigure> {
    figures(job, |answer| answer.title)
}

fn figures(job: &Job, name: impl Fn(&Answer) -> &'static str) -> Vec<SnapshotFigure> {
    let all = answers(job, Units::default());
    all.iter().map(|answer| SnapshotFigure::of(name(answer), &answer.said, in_words)).collect()
}

fn in_words(said: &Said) -> String {
    [said.headline.as_str(), said.line.as_str()]
        .into_iter()
        .filter(|words| !words.is_empty())
        .collect::<Vec<_>>()
        .join("; ")
}
