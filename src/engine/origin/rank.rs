//! The ranking: every cause with its word and its reasons, and the next check.

use super::cause::Cause;
use super::evidence::{Evidence, Observation};
use super::patterns;
use super::scene::Scene;
use crate::engine::moisture::Answer;

/// From this score on a cause is likely.
const LIKELY: f64 = 1.0;
/// Below this one it is unlikely, if enough speaks against it.
const UNLIKELY: f64 = -1.5;
/// So many answers have to speak against what is called unlikely.
const AGAINST: usize = 2;
/// With fewer answers than this there is not enough to say.
const FEWEST_ANSWERS: usize = 3;
/// A reason weighs at least this much.
const REASON: f64 = 0.3;

/// How a cause stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Word {
    /// Much speaks for it.
    Likely,
    /// It cannot be told.
    Possible,
    /// Much speaks against it.
    Unlikely,
}

/// A cause in its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranked {
    /// Which.
    pub cause: Cause,
    /// How it stands.
    pub word: Word,
    /// What speaks for it, the weightiest first.
    pub reasons: Vec<String>,
    /// What speaks against it.
    pub against: Vec<String>,
    score: f64,
}

/// All causes, the likeliest first.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranking {
    /// Every cause.
    pub causes: Vec<Ranked>,
    /// Is there enough to say which?
    pub is_enough: bool,
    /// The question, by its name, that would change the ranking most.
    pub next: Option<String>,
}

impl Word {
    /// The word.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Likely => "likely",
            Self::Possible => "possible",
            Self::Unlikely => "unlikely",
        }
    }
}

/// What the evidence says of a scene. Source: `evidence.json`, each weight with its own.
pub fn rank(evidence: &Evidence, scene: &Scene) -> Ranking {
    let answers: Vec<_> = evidence.observations.iter().map(|it| (it, answer(scene, it))).collect();
    let known: Vec<_> = answers.iter().filter(|(_, answer)| *answer != Answer::Unknown).copied().collect();
    let mut causes: Vec<_> = Cause::ALL.into_iter().map(|cause| ranked(evidence, cause, &known)).collect();
    causes.sort_by(|a, b| b.score.total_cmp(&a.score).then(a.cause.cmp(&b.cause)));
    let best = causes.first().map_or(f64::NEG_INFINITY, |best| best.score);
    let is_enough = known.len() >= FEWEST_ANSWERS && best >= 0.0;
    let open = answers.iter().filter(|(it, answer)| it.asks.is_some() && *answer == Answer::Unknown);
    let open = open.filter(|(it, _)| !scene.answers.contains_key(&it.name)).map(|(it, _)| (tells(it, &causes), *it));
    let next = open.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, it)| it.name.clone());
    Ranking { causes, is_enough, next }
}

/// What is said of an observation: by somebody, or else by readings and air.
fn answer(scene: &Scene, observation: &Observation) -> Answer {
    let read_off = || {
        let pattern = patterns::ALL.iter().find(|(name, _)| *name == observation.name);
        pattern.map_or(Answer::Unknown, |(_, pattern)| patterns::answer(pattern(scene)))
    };
    scene.answers.get(&observation.name).copied().unwrap_or_else(read_off)
}

fn ranked(evidence: &Evidence, cause: Cause, known: &[(&Observation, Answer)]) -> Ranked {
    let mut weights: Vec<_> = known.iter().map(|(it, answer)| (it.weight(*answer, cause), it.says(*answer))).collect();
    let score = evidence.prior(cause) + weights.iter().map(|(weight, _)| weight).sum::<f64>();
    weights.sort_by(|a, b| b.0.abs().total_cmp(&a.0.abs()));
    let said = |is_reason: fn(f64) -> bool| {
        let reasons = weights.iter().filter(move |(weight, _)| is_reason(*weight));
        reasons.filter_map(|(_, says)| says.map(str::to_owned)).collect::<Vec<_>>()
    };
    let (reasons, against) = (said(|weight| weight >= REASON), said(|weight| weight <= -REASON));
    let word = match score {
        _ if score >= LIKELY => Word::Likely,
        _ if score < UNLIKELY && against.len() >= AGAINST => Word::Unlikely,
        _ => Word::Possible,
    };
    Ranked { cause, word, reasons, against, score }
}

/// How far an answer would bring the ranking's entropy down, on average.
fn tells(observation: &Observation, causes: &[Ranked]) -> f64 {
    let now = shares(causes.iter().map(|ranked| ranked.score));
    let yes: f64 =
        causes.iter().zip(&now).map(|(ranked, share)| share * chance_of_yes(observation, ranked.cause)).sum();
    let after = |answer: Answer| {
        entropy(&shares(causes.iter().map(|ranked| ranked.score + observation.weight(answer, ranked.cause))))
    };
    entropy(&now) - yes * after(Answer::Yes) - (1.0 - yes) * after(Answer::No)
}

/// How likely a yes is where a cause holds. Both weights and the chance elsewhere hang
/// together: `b e^yes + (1 - b) e^no = 1`, which gives `b`, the chance where it does not.
fn chance_of_yes(observation: &Observation, cause: Cause) -> f64 {
    /// Where the cause has nothing to do with it.
    const ELSEWHERE: f64 = 0.3;
    let [yes, no] = [Answer::Yes, Answer::No].map(|answer| libm::exp(observation.weight(answer, cause)));
    if (yes - no).abs() < 1e-9 {
        return ELSEWHERE;
    }
    ((1.0 - no) / (yes - no) * yes).clamp(0.02, 0.98)
}

/// Scores as shares of one.
fn shares(scores: impl Iterator<Item = f64>) -> Vec<f64> {
    let weights: Vec<_> = scores.map(libm::exp).collect();
    let all: f64 = weights.iter().sum();
    weights.into_iter().map(|weight| weight / all).collect()
}

fn entropy(shares: &[f64]) -> f64 {
    shares.iter().filter(|share| **share > 0.0).map(|share| -share * libm::log(*share)).sum()
}
