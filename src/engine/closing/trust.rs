//! What cannot be relied on: answers older than what they answer, and entries that this
//! build cannot read.

use super::decision::{Condition, InTheWay};
use crate::engine::describe::{counted, observation};
use crate::engine::entry::EntryId;
use crate::engine::job::{InVisit, Job, When};
use crate::engine::moisture::Answer;
use crate::engine::particular::{Item, Part};
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
    if !job.absent.is_empty() {
        let what = format!("{} not here: left out of a file, or damaged", counted(job.absent.iter().count(), "entry"));
        lines.push(InTheWay::unknown(what, "open the file of the phone that has the rest"));
    }
    if !job.faults.is_empty() {
        let what = format!("{} that could not be followed", counted(job.faults.len(), "entry"));
        lines.push(InTheWay::unknown(what, "open the file that holds the rest of the job"));
    }
    // Taken back, neither counts.
    let clashes: Vec<_> = job.clashes.iter().filter(|id| !job.withdrawn.contains(id)).collect();
    if !clashes.is_empty() {
        let says = |id: &EntryId| job.now.get(*id).map(|it| observation(job, &it.value, units).says);
        let names: Vec<_> = clashes.iter().map(|id| says(id).unwrap_or_else(|| id.to_string())).collect();
        let what = format!(
            "{} said twice in different words under one id: {}",
            counted(clashes.len(), "entry"),
            names.join("; ")
        );
        lines.push(InTheWay::unknown(what, "take it back under Log, and say again what is so"));
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
