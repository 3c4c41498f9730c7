//! How long ago was looked at what the floor is closed by. Wood that was sound years ago may have
//! been wet and dry again since.

use super::asked::{Asked, asked};
use super::carriers::looked_at_before;
use super::decision::{Condition, InTheWay};
use super::near::Near;
use super::trust::words_of;
use super::water::{BARE_SOIL, Water};
use crate::engine::entry::Time;
use crate::engine::figure::Figure;
use crate::engine::framing::schedule::named;
use crate::engine::framing::{Judged, is_probed_before};
use crate::engine::job::Job;
use crate::engine::moisture::Answer;
use crate::engine::particular::{Part, list};
use chrono::TimeDelta;

/// What was looked at so long before this visit was begun is looked at again (judgement: within
/// a season damp comes and goes).
pub const OLDEST_LOOK: TimeDelta = TimeDelta::days(92);

/// Joists, what carries them, the ground and what was dealt with were looked at not long before
/// this visit.
pub(super) fn looked_at_lately(job: &Job, schedule: &Figure<Vec<Judged>>, near: &Near, water: &Water<'_>) -> Condition {
    let what = "what counts was looked at in the three months before this visit, or in it";
    let visit = job.current_visit().and_then(|(visit, _)| Some(job.now.visits().get(&visit)?.stamp.at));
    let then = visit.map(|begun| begun - OLDEST_LOOK);
    let lines = then.map_or_else(Vec::new, |then| long_ago(job, schedule, (near, water), then));
    Condition::of(what, lines, "all was")
}

/// What was looked at, and last before then.
fn long_ago(
    job: &Job,
    schedule: &Figure<Vec<Judged>>,
    (near, water): (&Near, &Water<'_>),
    then: Time,
) -> Vec<InTheWay> {
    let line = |what: &[String], ends: &str| {
        let what = format!("looked at more than three months before this visit: {}", what.join("; "));
        InTheWay::unknown(what, ends)
    };
    let is_near = |judged: &&Judged| near.joists().contains(&judged.joist.number.get());
    let judged = schedule.value().into_iter().flatten();
    let old = judged.filter(is_near).filter(|judged| is_probed_before(&judged.joist, then));
    let joists: Vec<_> = old.map(|judged| judged.joist.number.get().to_string()).collect();
    let joists = (!joists.is_empty()).then(|| line(&[named(&joists)], "probe each again, and say how the awl does"));
    let mut members = looked_at_before(job, near, then);
    let no_girder = words_of(job, &Part::House, &list::GIRDER_NEAR);
    if no_girder.is_some_and(|(when, words)| words == "no" && when.at < then) {
        members.push("that no girder is near".to_owned());
    }
    let members = (!members.is_empty()).then(|| line(&members, "look again, and say it again"));
    let asked = asked(job, schedule, water).into_iter().filter(Asked::is_of_a_season);
    let answers = asked.filter(|asked| is_answered_before(job, &asked.name, Answer::Yes, then));
    let mut answers: Vec<_> = answers.map(|asked| format!("\"{}\"", asked.asks)).collect();
    // Where no soil was bare, and none had to be covered.
    if !water.asks_for_cover() && is_answered_before(job, BARE_SOIL, Answer::No, then) {
        answers.push("whether soil is bare".to_owned());
    }
    let answers = (!answers.is_empty()).then(|| line(&answers, "look again, and answer the check again"));
    [joists, members, answers].into_iter().flatten().collect()
}

/// Was a question of the checklist last answered so before then?
fn is_answered_before(job: &Job, name: &str, answer: Answer, then: Time) -> bool {
    let all = job.now.checks().values().filter(|it| it.value.answer == answer && it.value.of.as_str() == name);
    all.map(|it| it.said).max().is_some_and(|said| said < then)
}
