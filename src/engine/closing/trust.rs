//! What cannot be relied on: answers older than what they answer, and entries that this
//! build cannot read.

use super::decision::{Condition, InTheWay, READ_AT_DEPTH};
use super::hazards::is_of_a_hazard;
use super::members::DECAY_IS_OUT;
use super::room::SAME_JOISTS;
use super::water::COVERED_NOW;
use crate::engine::describe::{counted, observation};
use crate::engine::entry::EntryId;
use crate::engine::framing::done::SISTERS_BEYOND;
use crate::engine::framing::headers::HEADER_DONE;
use crate::engine::framing::past::PAST_SPANS;
use crate::engine::job::{InVisit, Job, When};
use crate::engine::moisture::Answer;
use crate::engine::origin::{Cause, Evidence, dealt_with_name};
use crate::engine::particular::{Item, Part, Particular, item_of};
use crate::engine::take::Units;

/// What was answered to one question of the checklist, in log order.
pub(super) struct Answers(Vec<(When, InVisit, Answer)>);

impl Answers {
    pub(super) fn to(job: &Job, name: &str) -> Self {
        let checks = job.now.checks().values().filter(|check| check.value.of.as_str() == name);
        Self(checks.map(|check| (check.when(), check.in_visit(), check.value.answer)).collect())
    }

    /// What was answered last.
    pub(super) fn last(&self) -> Option<Answer> {
        self.0.last().map(|(_, _, answer)| *answer)
    }

    /// Is it yes, and was that said after every other answer and after all of `since`?
    pub(super) fn is_yes_since(&self, since: &[When]) -> bool {
        self.is_since(Answer::Yes, since)
    }

    /// Is it no, and was that said after every other answer?
    pub(super) fn is_no(&self) -> bool {
        self.is_since(Answer::No, &[])
    }

    /// Is there a no that nothing else was surely said after?
    pub(super) fn may_be_no(&self) -> bool {
        let others: Vec<_> = self.of(|answer| answer != Answer::No).collect();
        self.of(|answer| answer == Answer::No).any(|no| !others.iter().any(|other| other.is_after(no)))
    }

    fn is_since(&self, wanted: Answer, since: &[When]) -> bool {
        let others: Vec<_> = self.of(|answer| answer != wanted).chain(since.iter().copied()).collect();
        self.of(|answer| answer == wanted).any(|said| said.is_after_all(&others))
    }

    /// Every yes that was not put right by a no in the same visit. A no in a later visit puts
    /// none right: water that is gone for now is not dealt with.
    pub(super) fn standing_yes(&self) -> Vec<When> {
        let is_put_right = |(yes, visit, _): &&(When, InVisit, Answer)| {
            self.0
                .iter()
                .any(|(no, in_visit, answer)| *answer == Answer::No && in_visit.is_same(*visit) && no.is_after(*yes))
        };
        let yes = self.0.iter().filter(|(_, _, answer)| *answer == Answer::Yes);
        yes.filter(|said| !is_put_right(said)).map(|(when, _, _)| *when).collect()
    }

    fn of(&self, is_one: impl Fn(Answer) -> bool) -> impl Iterator<Item = When> {
        self.0.iter().filter(move |(_, _, answer)| is_one(*answer)).map(|(when, _, _)| *when)
    }
}

/// What was said last of a part, in words, and when.
pub(super) fn words_of<'a>(job: &'a Job, part: &Part, item: &Item) -> Option<(When, &'a str)> {
    let all = job.now.particulars().values().rev();
    let mut like = all.filter(|it| it.value.of == *part && it.value.what.as_str() == item.what);
    like.find(|it| item.allows(&it.value.is)).map(|it| (it.when(), it.value.is.typed()))
}

/// What is said of things in words that no list has, and questions that nobody asks here: a later
/// build may know what they mean.
fn beyond_the_lists(job: &Job) -> Vec<String> {
    let said = job.now.particulars().values().map(|it| it.value).filter(|it| !matches!(it.of, Part::Order(_)));
    let is_listed = |it: &&Particular| item_of(it.what.as_str()).is_some_and(|item| item.allows(&it.is));
    let said = said.filter(|it| !is_listed(it)).map(|it| format!("{}, {}: {}", it.of.name(), it.what, it.is.typed()));
    let observations = Evidence::standard().observations;
    let is_asked = |name: &str| {
        observations.iter().any(|asked| asked.name == name)
            || Cause::ALL.into_iter().any(|cause| dealt_with_name(cause) == name)
            || is_asked_for_closing(name)
    };
    let answered = job.now.checks().values().map(|check| check.value.of.as_str());
    said.chain(answered.filter(|name| !is_asked(name)).map(ToOwned::to_owned)).collect()
}

fn is_asked_for_closing(name: &str) -> bool {
    [COVERED_NOW, SAME_JOISTS, DECAY_IS_OUT, READ_AT_DEPTH].contains(&name)
        || [PAST_SPANS, SISTERS_BEYOND, HEADER_DONE].contains(&name)
        || is_of_a_hazard(name)
}

/// Every entry is here, could be read and followed, and no two of them disagree.
pub(super) fn everything_read(job: &Job, units: Units) -> Condition {
    let mut lines = Vec::new();
    if !job.unknown.is_empty() {
        let mut kinds: Vec<_> = job.unknown.values().map(String::as_str).collect();
        kinds.sort_unstable();
        kinds.dedup();
        let what = format!(
            "{} that this build cannot read wholly, for it does not know: {}",
            counted(job.unknown.len(), "entry"),
            kinds.join(", ")
        );
        lines.push(InTheWay::unknown(what, "open the job with the newer Duckboard"));
    }
    let beyond = beyond_the_lists(job);
    if let Some(first) = beyond.first() {
        let what = format!("{} that no list of this build has: {first}", counted(beyond.len(), "word"));
        lines.push(InTheWay::unknown(what, "open the job with the newer Duckboard, or take it back under Log"));
    }
    if job.missing() > 0 {
        let what = format!("{} not here: left out of a file, or damaged", counted(job.missing(), "entry"));
        lines.push(InTheWay::unknown(what, "open the file of the phone that has the rest"));
    }
    if !job.faults.is_empty() {
        let what = format!("{} that could not be followed", counted(job.faults.len(), "entry"));
        lines.push(InTheWay::unknown(what, "open the file that holds the rest of the job"));
    }
    let clashes: Vec<_> = job.clashes.iter().collect();
    if !clashes.is_empty() {
        let says = |id: &EntryId| job.now.get(*id).map(|it| observation(job, &it.value, units).says);
        let names: Vec<_> = clashes.iter().map(|id| says(id).unwrap_or_else(|| id.to_string())).collect();
        let what = format!(
            "{} said twice in different words under one id: {}",
            counted(clashes.len(), "entry"),
            names.join("; ")
        );
        let ends = "take it back under Log, or bring it back there first, and say again what is so";
        lines.push(InTheWay::unknown(what, ends));
    }
    if !job.conflicts.is_empty() {
        let what = format!(
            "{} that two people corrected differently, or one took back",
            counted(job.conflicts.len(), "entry")
        );
        lines.push(InTheWay::unknown(what, "pick one of each under Log"));
    }
    Condition::of("every entry of the job can be read", lines, "all can")
}
