//! Where the water comes from, and the soil below.

use super::decision::{Condition, InTheWay};
use super::trust::answer;
use crate::engine::job::Job;
use crate::engine::moisture::Answer;
use crate::engine::origin::{Cause, Ranking, Word, dealt_with, is_answered, origin};

/// The name of the check that says that no soil is bare any more. It never changes.
pub const COVERED_NOW: &str = "ground_covered_now";

fn ranking(job: &Job) -> Option<Ranking> {
    origin(job).value().filter(|ranking| ranking.is_enough).cloned()
}

/// Every likely source is known and dealt with.
pub(super) fn sources(job: &Job) -> Condition {
    let what = "where the water comes from is known and dealt with";
    let open = |lines| Condition::of(what, lines, "");
    let Some(ranking) = ranking(job) else {
        return open(vec![InTheWay::unknown("where the water comes from is not known", "answer the checklist")]);
    };
    let likely: Vec<_> = ranking.causes.iter().filter(|ranked| ranked.word == Word::Likely).collect();
    if likely.is_empty() {
        return open(vec![InTheWay::unknown("no source is likely yet", "answer the next check")]);
    }
    let left = likely.iter().filter(|ranked| dealt_with(job, ranked.cause) != Some(Answer::Yes));
    let lines = left.map(|ranked| {
        InTheWay::known(
            format!("{} is not dealt with", ranked.cause.label()),
            format!("{}, and answer the check", ranked.cause.remedy()),
        )
    });
    Condition::of(what, lines.collect(), "it is")
}

/// Does it have to be said that the soil is covered? Where it was seen bare, and where
/// ground moisture is likely.
pub fn asks_for_cover(job: &Job) -> bool {
    let is_likely = || {
        let ranking = ranking(job);
        let mut causes = ranking.iter().flat_map(|ranking| &ranking.causes);
        causes.any(|ranked| ranked.cause == Cause::Ground && ranked.word == Word::Likely)
    };
    is_answered(job, "bare_soil") == Some(Answer::Yes) || is_likely()
}

/// The soil is covered where it was bare or where ground moisture is likely.
pub(super) fn ground(job: &Job) -> Condition {
    let what = "no bare soil is left below";
    if !asks_for_cover(job) {
        return Condition::of(what, Vec::new(), "none was seen, and ground moisture is not likely");
    }
    let bare = answer(job, "bare_soil").filter(|(_, answer)| *answer == Answer::Yes).map(|(id, _)| id);
    let ends = "cover all of it, laps and edges sealed, and answer the check";
    let lines = match answer(job, COVERED_NOW) {
        Some((said, Answer::Yes)) if bare.is_none_or(|bare| bare < said) => Vec::new(),
        Some((_, Answer::Yes)) => vec![InTheWay::known("soil was seen bare again after it was covered", ends)],
        Some((_, Answer::No)) => vec![InTheWay::known("the soil is not covered", ends)],
        None if bare.is_some() => vec![InTheWay::known("the soil was bare, and nobody said that it is covered", ends)],
        Some((_, Answer::Unknown)) | None => vec![InTheWay::unknown("nobody said that the soil is covered", ends)],
    };
    Condition::of(what, lines, "it is covered")
}
