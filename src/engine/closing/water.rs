//! Where the water comes from, and the soil below.

use super::decision::{Condition, InTheWay};
use super::trust::Answers;
use crate::engine::job::{Job, When};
use crate::engine::moisture::Answer;
use crate::engine::origin::{Cause, Evidence, Observation, Word, dealt_with_name, origin};

/// The name of the check that says that no soil is bare any more. It never changes.
pub const COVERED_NOW: &str = "ground_covered_now";

/// Whether soil is bare, as the checklist asks it.
pub const BARE_SOIL: &str = "bare_soil";

/// Signs of a cause that are no water: bare soil is covered by a condition of its own, vents
/// are meant to be open, and a cooled room is what the owners want.
const NO_WATER: [&str; 3] = [BARE_SOIL, "vents_open", "cooled_above"];

/// What is known of the water, looked up once.
pub(super) struct Water<'a> {
    job: &'a Job,
    evidence: Evidence,
    /// The likely causes; none where there is not enough to say.
    likely: Option<Vec<Cause>>,
}

impl<'a> Water<'a> {
    /// Of a job.
    pub(super) fn of(job: &'a Job) -> Self {
        let figure = origin(job);
        let ranking = figure.value().filter(|ranking| ranking.is_enough);
        let likely = ranking.map(|ranking| {
            let likely = ranking.causes.iter().filter(|ranked| ranked.word == Word::Likely);
            likely.map(|ranked| ranked.cause).collect()
        });
        Self { job, evidence: Evidence::standard(), likely }
    }

    fn is_likely(&self, cause: Cause) -> bool {
        self.likely.as_ref().is_some_and(|likely| likely.contains(&cause))
    }

    /// Every source that is likely, and every one of which a sign was seen, is dealt with.
    pub(super) fn sources(&self) -> Condition {
        let mut lines = Vec::new();
        match self.likely.as_deref() {
            None => lines.push(InTheWay::unknown("where the water comes from is not known", "answer the checklist")),
            Some([]) => lines.push(InTheWay::unknown("no source is likely yet", "answer the next check")),
            Some(_) => {}
        }
        let likely = self.likely.iter().flatten().copied();
        let left = likely.filter(|cause| !is_dealt_with(self.job, *cause, &self.speaks_for(*cause)));
        lines.extend(left.map(|cause| not_dealt_with(self.job, cause)));
        let signs = self.signs().into_iter().filter(|sign| !sign.causes.iter().any(|cause| self.is_likely(*cause)));
        lines.extend(signs.filter(|sign| !sign.is_dealt_with(self.job)).map(|sign| sign.in_the_way()));
        Condition::of("where the water comes from is known and dealt with", lines, "it is")
    }

    /// Each time that something was answered with yes that speaks for a cause.
    fn speaks_for(&self, cause: Cause) -> Vec<When> {
        let observations = self.evidence.observations.iter().filter(|it| it.weight(Answer::Yes, cause) > 0.0);
        observations.flat_map(|it| Answers::to(self.job, &it.name).standing_yes()).collect()
    }

    fn signs(&self) -> Vec<Sign<'_>> {
        let shows = |name: &String, cause: Cause| self.evidence.signs(cause).contains(name);
        let all = self.evidence.observations.iter().filter(|it| !NO_WATER.contains(&it.name.as_str()));
        let signs = all.map(|observation| Sign {
            observation,
            causes: Cause::ALL.into_iter().filter(|cause| shows(&observation.name, *cause)).collect(),
            seen: Answers::to(self.job, &observation.name).standing_yes(),
        });
        signs.filter(|sign| !sign.causes.is_empty() && !sign.seen.is_empty()).collect()
    }

    /// The causes of which it has to be said that they are dealt with: the likely ones, and those
    /// of which a sign was seen.
    pub(super) fn to_deal_with(&self) -> Vec<Cause> {
        let signs = self.signs();
        let has_sign = |cause: &Cause| signs.iter().any(|sign| sign.causes.contains(cause));
        Cause::ALL.into_iter().filter(|cause| self.is_likely(*cause) || has_sign(cause)).collect()
    }

    pub(super) fn asks_for_cover(&self) -> bool {
        !Answers::to(self.job, BARE_SOIL).is_no() || self.is_likely(Cause::Ground)
    }

    /// The soil is covered, or somebody looked and it is not bare.
    pub(super) fn ground(&self) -> Condition {
        let what = "no bare soil is left below";
        if !self.asks_for_cover() {
            return Condition::of(what, Vec::new(), "it was looked at, and ground moisture is not likely");
        }
        let bare = Answers::to(self.job, BARE_SOIL).standing_yes();
        let covered = Answers::to(self.job, COVERED_NOW);
        if covered.is_yes_since(&bare) {
            return Condition::of(what, Vec::new(), "it was said to be covered");
        }
        let ends = "cover all of it, laps and edges sealed, and answer the check";
        let line = match covered.last() {
            Some(Answer::Yes) => InTheWay::known("soil was seen bare again after it was covered", ends),
            Some(Answer::No) => InTheWay::known("the soil is not covered", ends),
            None if !bare.is_empty() => InTheWay::known("the soil was bare, and nobody said that it is covered", ends),
            None if !self.is_likely(Cause::Ground) => InTheWay::unknown(
                "nobody looked at the soil",
                "look whether it is bare, or its cover torn or short of the walls, and answer the check",
            ),
            Some(Answer::Unknown) | None => InTheWay::unknown("nobody said that the soil is covered", ends),
        };
        Condition::of(what, vec![line], "")
    }
}

/// Was it said that a cause is dealt with, after all of this?
fn is_dealt_with(job: &Job, cause: Cause, since: &[When]) -> bool {
    Answers::to(job, &dealt_with_name(cause)).is_yes_since(since)
}

fn not_dealt_with(job: &Job, cause: Cause) -> InTheWay {
    let is_said = Answers::to(job, &dealt_with_name(cause)).last() == Some(Answer::Yes);
    let more = if is_said { ": more speaks for it since that was said" } else { "" };
    InTheWay::known(
        format!("{} is not dealt with{more}", cause.label()),
        format!("{}, and answer the check", cause.remedy()),
    )
}

/// A sign of water from some cause, seen at least once: it need not make that cause likely.
struct Sign<'a> {
    observation: &'a Observation,
    causes: Vec<Cause>,
    seen: Vec<When>,
}

impl Sign<'_> {
    /// Is one of the causes that it may come from dealt with, after it was seen last?
    fn is_dealt_with(&self, job: &Job) -> bool {
        self.causes.iter().any(|cause| is_dealt_with(job, *cause, &self.seen))
    }

    fn in_the_way(&self) -> InTheWay {
        let causes: Vec<_> = self.causes.iter().map(|cause| cause.label()).collect();
        let remedies: Vec<_> = self.causes.iter().map(|cause| cause.remedy()).collect();
        InTheWay::known(
            format!(
                "{}, and {} is not dealt with",
                self.observation.says(Answer::Yes).unwrap_or(&self.observation.name),
                causes.join(" or ")
            ),
            format!("{}; then answer the check", remedies.join(", or ")),
        )
    }
}

/// Does it have to be said that the soil is covered? Where it was seen bare, where ground
/// moisture is likely, and where nobody looked.
pub fn asks_for_cover(job: &Job) -> bool {
    Water::of(job).asks_for_cover()
}

/// Is all soil covered, its laps and edges sealed? Only as somebody saw it: the check says so,
/// and was answered surely after all soil that was seen bare. Of two phones that did not know of
/// each other neither may be the later one: then bare soil stands. None where nobody looked.
pub fn is_covered_now(job: &Job) -> Option<bool> {
    let bare = Answers::to(job, BARE_SOIL).standing_yes();
    let covered = Answers::to(job, COVERED_NOW);
    if covered.is_yes_since(&bare) {
        return Some(true);
    }
    (!bare.is_empty() || covered.may_be_no()).then_some(false)
}
