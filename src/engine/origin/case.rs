//! The case for and against one cause, and the word that it comes to.

use super::cause::Cause;
use super::evidence::{Evidence, Observation};
use super::rank::Word;
use crate::engine::moisture::Answer;
use std::collections::BTreeSet;

/// From this score on a cause is likely, if no single answer carries it (odds of e to 1).
const LIKELY: f64 = 1.0;
/// Without its weightiest reason a likely cause still scores no less than this (even odds).
const LIKELY_STILL: f64 = 0.0;
/// Below this score, the weightiest answer against it left out, a cause is unlikely.
const UNLIKELY: f64 = -1.5;
/// So many answers have to speak against what is called unlikely.
const AGAINST: usize = 2;
/// A reason weighs at least this much.
const REASON: f64 = 0.3;
/// What an answer still weighs beside a weightier one of the same look and direction.
const SAME_LOOK: f64 = 0.5;

/// One answer, as far as it bears on a cause.
struct Said<'a> {
    look: &'a str,
    says: &'a str,
    weight: f64,
}

/// All that was said, as it bears on one cause: the weightiest first.
pub(super) struct Case<'a> {
    prior: f64,
    said: Vec<Said<'a>>,
    /// Was a sign of the cause itself seen, now or at any time?
    is_seen: bool,
}

impl<'a> Case<'a> {
    pub(super) fn of(evidence: &Evidence, cause: Cause, known: &[(&'a Observation, Answer)], seen: &[String]) -> Self {
        let is_so = |name: &String| known.iter().any(|(it, answer)| it.name == *name && *answer == Answer::Yes);
        let telling = known.iter().filter(|(it, answer)| !it.explained_by(*answer, cause).iter().any(is_so));
        let said = telling.filter_map(|(it, answer)| {
            Some(Said { look: it.look(), says: it.says(*answer)?, weight: it.weight(*answer, cause) })
        });
        let mut said: Vec<_> = said.collect();
        said.sort_by(|a, b| b.weight.abs().total_cmp(&a.weight.abs()));
        let is_sign = |name: &String| evidence.signs(cause).contains(name);
        let is_yes = |(it, answer): &(&Observation, Answer)| *answer == Answer::Yes && is_sign(&it.name);
        let is_seen = known.iter().any(is_yes) || seen.iter().any(is_sign);
        Self { prior: evidence.prior(cause), said, is_seen }
    }

    pub(super) fn score(&self) -> f64 {
        self.score_without(None)
    }

    /// The score with one answer left out.
    fn score_without(&self, left_out: Option<usize>) -> f64 {
        let mut said_before: BTreeSet<(&str, bool)> = BTreeSet::new();
        let mut score = self.prior;
        for (place, said) in self.said.iter().enumerate() {
            if Some(place) == left_out || said.weight == 0.0 {
                continue;
            }
            let is_further = !said_before.insert((said.look, said.weight > 0.0));
            score += if is_further { said.weight * SAME_LOOK } else { said.weight };
        }
        score
    }

    /// The score without the weightiest answer of those for the cause, or against it.
    fn score_without_weightiest(&self, is_one: impl Fn(f64) -> bool) -> f64 {
        self.score_without(self.said.iter().position(|said| is_one(said.weight)))
    }

    /// How a cause stands. Nothing is likely, and nothing unlikely, by one answer alone, for
    /// any single answer may be wrong; nothing is likely of which no sign was seen, and nothing
    /// unlikely of which one was, whatever speaks against it.
    pub(super) fn word(&self) -> Word {
        let score = self.score();
        if self.is_seen && score >= LIKELY && self.score_without_weightiest(|weight| weight > 0.0) >= LIKELY_STILL {
            return Word::Likely;
        }
        let is_struck_out = !self.is_seen && self.score_without_weightiest(|weight| weight < 0.0) < UNLIKELY;
        if is_struck_out && self.against().count() >= AGAINST { Word::Unlikely } else { Word::Possible }
    }

    pub(super) fn reasons(&self) -> impl Iterator<Item = &str> {
        self.said.iter().filter(|said| said.weight >= REASON).map(|said| said.says)
    }

    pub(super) fn against(&self) -> impl Iterator<Item = &str> {
        self.said.iter().filter(|said| said.weight <= -REASON).map(|said| said.says)
    }
}
