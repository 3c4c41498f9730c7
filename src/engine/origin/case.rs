//! The case for and against one cause, and the word that it comes to.

use super::cause::Cause;
use super::evidence::{Evidence, Observation};
use super::rank::Word;
use crate::engine::moisture::Answer;
use std::collections::BTreeSet;

/// From this score on a cause is likely, if no single answer carries it (odds of e to 1).
const LIKELY: f64 = 1.0;
/// Without its weightiest answer a likely cause still scores no less than this (even odds).
const LIKELY_STILL: f64 = 0.0;
/// Below this score, the weightiest look against it left out, a cause is unlikely.
const UNLIKELY: f64 = -1.5;
/// So many looks have to speak against what is called unlikely, one of them somebody's answer.
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
    /// Did somebody answer it? Or was it read off the readings and the air?
    is_answer: bool,
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
            let (look, is_answer) = (it.look(), it.asks.is_some());
            Some(Said { look, says: it.says(*answer)?, weight: it.weight(*answer, cause), is_answer })
        });
        let mut said: Vec<_> = said.collect();
        said.sort_by(|a, b| b.weight.abs().total_cmp(&a.weight.abs()));
        let is_sign = |name: &String| evidence.signs(cause).contains(name);
        let is_yes = |(it, answer): &(&Observation, Answer)| *answer == Answer::Yes && is_sign(&it.name);
        let is_seen = known.iter().any(is_yes) || seen.iter().any(is_sign);
        Self { prior: evidence.prior(cause), said, is_seen }
    }

    pub(super) fn score(&self) -> f64 {
        self.score_of(|_, _| true)
    }

    /// The score of those answers alone that are counted, each by its place.
    fn score_of(&self, counts: impl Fn(usize, &Said<'a>) -> bool) -> f64 {
        let mut said_before: BTreeSet<(&str, bool)> = BTreeSet::new();
        let mut score = self.prior;
        for (place, said) in self.said.iter().enumerate() {
            if said.weight == 0.0 || !counts(place, said) {
                continue;
            }
            let is_further = !said_before.insert((said.look, said.weight > 0.0));
            score += if is_further { said.weight * SAME_LOOK } else { said.weight };
        }
        score
    }

    /// The score without the weightiest answer of those for the cause.
    fn score_without_weightiest(&self) -> f64 {
        let left_out = self.said.iter().position(|said| said.weight > 0.0);
        self.score_of(|place, _| Some(place) != left_out)
    }

    /// How a cause stands. Nothing is likely by one answer alone, and nothing unlikely by one look
    /// alone, for any single one may be wrong; nothing is likely of which no sign was seen, and
    /// nothing unlikely of which one was, whatever speaks against it, nor by readings and air
    /// beside which nobody answered a question.
    pub(super) fn word(&self) -> Word {
        if self.is_seen && self.score() >= LIKELY && self.score_without_weightiest() >= LIKELY_STILL {
            return Word::Likely;
        }
        if !self.is_seen && self.is_struck_out() { Word::Unlikely } else { Word::Possible }
    }

    /// Is it unlikely still, whichever look against it is left out?
    fn is_struck_out(&self) -> bool {
        let looks: BTreeSet<_> = self.said.iter().filter(|said| said.is_against()).map(|said| said.look).collect();
        let is_against = |said: &Said<'_>, look| said.look == look && said.weight < 0.0;
        looks.len() >= AGAINST
            && self.said.iter().any(|said| said.is_against() && said.is_answer)
            && looks.iter().all(|look| self.score_of(|_, said| !is_against(said, *look)) < UNLIKELY)
    }

    pub(super) fn reasons(&self) -> impl Iterator<Item = &str> {
        self.said.iter().filter(|said| said.weight >= REASON).map(|said| said.says)
    }

    pub(super) fn against(&self) -> impl Iterator<Item = &str> {
        self.said.iter().filter(|said| said.is_against()).map(|said| said.says)
    }
}

impl Said<'_> {
    fn is_against(&self) -> bool {
        self.weight <= -REASON
    }
}
