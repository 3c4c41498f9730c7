//! The figures that a report and a written file show: the one place that asks for them.
//! Everything else in the command takes them as they come.

use duckboard::draw::orders::quantity;
use duckboard::engine::figure::{Figure, Why};
use duckboard::engine::job::{Book, Job};
use duckboard::engine::orders::order_list;
use duckboard::engine::results::{Answer, Said, answers};
use duckboard::engine::take::Units;
use duckboard::file::SnapshotFigure;

/// Every figure of the job by its name in a job file's snapshot, computed now, and then
/// every line of the order list.
pub(crate) fn snapshot(book: &Book) -> Vec<SnapshotFigure> {
    let lines = order_list(book, Units::default()).lines;
    let orders = lines.iter().map(|line| {
        let why = Why::rule(line.needed.from.join("; "), &line.needed.sources);
        SnapshotFigure::of(format!("order: {}", line.needed.name), &Figure::known(quantity(line), why), String::clone)
    });
    figures(book.job(), |answer| answer.name).into_iter().chain(orders).collect()
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
