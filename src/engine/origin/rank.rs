//! The ranking: every cause with its word and its reasons, and the next check.

use super::case::Case;
use super::cause::Cause;
use super::evidence::{Evidence, Observation};
use super::patterns;
use super::scene::Scene;
use crate::engine::moisture::Answer;

/// With fewer answers than this there is not enough to say.
const FEWEST_ANSWERS: usize = 3;
/// The observation that liquid water lies below.
const WATER_STANDS: &str = "water_on_soil";

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

impl Ranking {
    /// The causes that it is sure of: likely, where there is enough to say.
    pub fn sure(&self) -> impl Iterator<Item = &Ranked> {
        self.causes.iter().filter(|ranked| self.is_enough && ranked.word == Word::Likely)
    }
}

/// What the evidence says of a scene. Source: `evidence.json`, each weight with its own.
pub fn rank(evidence: &Evidence, scene: &Scene) -> Ranking {
    let answers: Vec<_> = evidence.observations.iter().map(|it| (it, answer(scene, it))).collect();
    let known: Vec<_> = answers.iter().filter(|(_, answer)| *answer != Answer::Unknown).copied().collect();
    let mut causes: Vec<_> = Cause::ALL.into_iter().map(|cause| ranked(evidence, cause, &known, &scene.seen)).collect();
    causes.sort_by(|a, b| b.score.total_cmp(&a.score).then(a.cause.cmp(&b.cause)));
    if known.iter().any(|(it, answer)| it.name == WATER_STANDS && *answer == Answer::Yes) {
        put_water_before_soil(&mut causes);
    }
    // Something else weighs the same whatever is seen: what ranks below it explains too little.
    let is_told = causes.first().is_some_and(|first| first.cause != Cause::Other || first.word == Word::Likely);
    let is_enough = known.len() >= FEWEST_ANSWERS && is_told;
    let open = answers.iter().filter(|(it, answer)| it.asks.is_some() && *answer == Answer::Unknown);
    let open = open.filter(|(it, _)| !scene.answers.contains_key(&it.name)).map(|(it, _)| (tells(it, &causes), *it));
    let next = open.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, it)| it.name.clone());
    Ranking { causes, is_enough, next }
}

/// While water stands on it, soil is not covered: the water is found and led away first.
fn put_water_before_soil(causes: &mut Vec<Ranked>) {
    let of = |is_one: fn(Cause) -> bool| causes.iter().position(|ranked| is_one(ranked.cause));
    let (Some(soil), Some(water)) = (of(|it| it == Cause::Ground), of(Cause::is_liquid_below)) else { return };
    if soil < water {
        let ground = causes.remove(soil);
        causes.insert(water, ground);
    }
}

/// What is said of an observation: by somebody, or else by readings and air.
fn answer(scene: &Scene, observation: &Observation) -> Answer {
    let read_off = || {
        let pattern = patterns::ALL.iter().find(|(name, _)| *name == observation.name);
        pattern.map_or(Answer::Unknown, |(_, pattern)| patterns::answer(pattern(scene)))
    };
    scene.answers.get(&observation.name).copied().unwrap_or_else(read_off)
}

fn ranked(evidence: &Evidence, cause: Cause, known: &[(&Observation, Answer)], seen: &[String]) -> Ranked {
    let case = Case::of(evidence, cause, known, seen);
    Ranked {
        cause,
        word: case.word(),
        reasons: case.reasons().map(str::to_owned).collect(),
        against: case.against().map(str::to_owned).collect(),
        score: case.score(),
    }
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
