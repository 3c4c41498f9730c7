//! How long ago was looked at what the floor is closed by. Wood that was sound years ago may have
//! been wet and dry again since.

use super::decision::{Condition, InTheWay};
use super::near::Near;
use super::trust::words_of;
use crate::engine::describe::in_sentence;
use crate::engine::entry::Time;
use crate::engine::framing::past::{PAST_SPANS, asks_for_past_spans};
use crate::engine::framing::schedule::named;
use crate::engine::job::{Job, When};
use crate::engine::moisture::Answer;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::place::JoistNumber;
use chrono::TimeDelta;

/// What was looked at so long before this visit was begun is looked at again (judgement: within
/// a season damp comes and goes).
pub const OLDEST_LOOK: TimeDelta = TimeDelta::days(92);

/// Joists, what carries them, the ground and what was dealt with were looked at not long before
/// this visit.
pub(super) fn looked_at_lately(job: &Job, near: &Near) -> Condition {
    let what = "what counts was looked at in the three months before this visit, or in it";
    let visit = job.current_visit().and_then(|(visit, _)| Some(job.now.visits().get(&visit)?.stamp.at));
    let old = visit.map_or_else(Vec::new, |begun| long_ago(job, near, begun));
    let line = |old: &[String]| {
        let what = format!("looked at more than three months before this visit: {}", old.join("; "));
        InTheWay::unknown(what, "look again, and say it again")
    };
    Condition::of(what, (!old.is_empty()).then(|| line(&old)).into_iter().collect(), "all was")
}

fn long_ago(job: &Job, near: &Near, begun: Time) -> Vec<String> {
    let is_old = |when: Option<When>| when.is_some_and(|when| begun - when.at > OLDEST_LOOK);
    let joists = near.joists().iter().copied().filter_map(JoistNumber::new);
    let joists: Vec<_> =
        joists.filter(|joist| is_old(probed(job, *joist))).map(|joist| joist.get().to_string()).collect();
    let mut old: Vec<_> = (!joists.is_empty()).then(|| named(&joists)).into_iter().collect();
    let carries = |part: &Part| matches!(part, Part::RimJoist | Part::Sill | Part::Girder(_));
    let carriers = Particulars::of(job).parts(carries).into_iter();
    old.extend(carriers.filter(|part| is_old(told(job, part))).map(|part| in_sentence(&part.name())));
    if words_of(job, &Part::House, &list::GIRDER_NEAR).is_some_and(|(when, words)| words == "no" && is_old(Some(when)))
    {
        old.push("that no girder is near".to_owned());
    }
    let is_past = |name: &str| name == PAST_SPANS && asks_for_past_spans(job);
    old.extend(answered_long_ago(job, begun, is_past).then(|| "what lies past the joists' measured spans".to_owned()));
    if answered_long_ago(job, begun, is_dealt_with) {
        old.push("what the checklist says is dealt with, gone or covered".to_owned());
    }
    old
}

/// When an awl was last pushed into a joist, or it was seen to.
fn probed(job: &Job, joist: JoistNumber) -> Option<When> {
    let part = Part::Joist(joist);
    let said = [(&part, &list::AWL), (&Part::Joists, &list::AWL), (&part, &list::DONE)];
    latest(said.into_iter().filter_map(|(part, item)| words_of(job, part, item)))
}

/// When the state of a member was last told, or it was seen to.
fn told(job: &Job, part: &Part) -> Option<When> {
    latest([&list::STATE, &list::DONE].into_iter().filter_map(|item| words_of(job, part, item)))
}

fn latest<'a>(said: impl Iterator<Item = (When, &'a str)>) -> Option<When> {
    said.map(|(when, _)| when).max_by_key(|when| when.at)
}

fn is_dealt_with(name: &str) -> bool {
    ["dealt_with.", "gone."].iter().any(|begins| name.starts_with(begins))
        || [super::water::COVERED_NOW, super::members::DECAY_IS_OUT].contains(&name)
}

/// Was a yes of the checklist to one of these last said long ago?
fn answered_long_ago(job: &Job, begun: Time, is_one: impl Fn(&str) -> bool) -> bool {
    let answers = || job.now.checks().values().filter(|it| it.value.answer == Answer::Yes);
    let is_old = |at: Time| begun - at > OLDEST_LOOK;
    let old = answers().filter(|it| is_one(it.value.of.as_str()) && is_old(it.said));
    let is_said_again = |name: &str| answers().any(|it| it.value.of.as_str() == name && !is_old(it.said));
    old.into_iter().any(|it| !is_said_again(it.value.of.as_str()))
}
