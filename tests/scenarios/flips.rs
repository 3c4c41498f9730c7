//! What one wrong answer does, and one that is missing: every stated answer of every
//! scenario is turned round once, and left out once. Nothing is drawn at random.

use crate::scenario::Scenario;
use duckboard::engine::moisture::Answer;
use duckboard::engine::origin::{Evidence, Ranked, Ranking, Word, rank};
use std::fmt;

/// Of so many rankings so many.
#[derive(Debug, Default, Clone, Copy, PartialEq, Eq)]
pub struct Counts {
    pub rankings: usize,
    /// A cause that holds is called unlikely.
    pub true_unlikely: usize,
    /// A cause that does not hold is called likely, and there is enough to say.
    pub wrong_sure: usize,
    /// The same, and it stands first.
    pub wrong_first: usize,
    /// A cause that holds stands first.
    pub right_first: usize,
    /// The same, it is likely, and there is enough to say.
    pub right_sure: usize,
    pub not_enough: usize,
}

/// As stated, with one answer turned round, with one left out.
#[derive(Debug, Default)]
pub struct Flips {
    pub stated: Counts,
    pub flipped: Counts,
    pub left_out: Counts,
    /// Each wrong answer after which a wrong cause is sure or a true one unlikely.
    pub misled: Vec<String>,
}

impl Flips {
    pub fn of<'a>(evidence: &Evidence, scenarios: impl IntoIterator<Item = &'a Scenario>) -> Self {
        let mut flips = Self::default();
        for scenario in scenarios {
            let mut scene = scenario.scene.clone();
            flips.stated.count(scenario, &rank(evidence, &scene));
            for (name, answer) in scenario.scene.answers.iter() {
                let Some(turned) = turned(*answer) else { continue };
                scene.answers.insert(name.clone(), turned);
                let ranking = rank(evidence, &scene);
                flips.flipped.count(scenario, &ranking);
                flips.misled.extend(misled(scenario, name, turned, &ranking));
                scene.answers.remove(name);
                flips.left_out.count(scenario, &rank(evidence, &scene));
                scene.answers.insert(name.clone(), *answer);
            }
        }
        flips
    }
}

/// A line of what an answer misled the ranking to, if to anything.
fn misled(scenario: &Scenario, name: &str, turned: Answer, ranking: &Ranking) -> Option<String> {
    let sure = ranking.sure().filter(|ranked| !scenario.holds(ranked.cause));
    let sure = sure.map(|ranked| format!("{} sure", ranked.cause.name()));
    let struck = ranking.causes.iter().filter(|it| scenario.holds(it.cause) && it.word == Word::Unlikely);
    let struck = struck.map(|ranked| format!("{} unlikely", ranked.cause.name()));
    let what: Vec<String> = sure.chain(struck).collect();
    let says = || format!("  {}, {name} {}: {}", scenario.id, turned.label(), what.join(", "));
    (!what.is_empty()).then(says)
}

/// The other way round; nothing of what nobody knows.
const fn turned(answer: Answer) -> Option<Answer> {
    match answer {
        Answer::Yes => Some(Answer::No),
        Answer::No => Some(Answer::Yes),
        Answer::Unknown => None,
    }
}

impl Counts {
    fn count(&mut self, scenario: &Scenario, ranking: &Ranking) {
        let Some(first) = ranking.causes.first() else { return };
        let first_holds = scenario.holds(first.cause);
        let is_first_sure = ranking.sure().any(|ranked| ranked.cause == first.cause);
        let is_struck_out = |it: &Ranked| scenario.holds(it.cause) && it.word == Word::Unlikely;
        self.rankings += 1;
        self.true_unlikely += usize::from(ranking.causes.iter().any(is_struck_out));
        self.wrong_sure += usize::from(ranking.sure().any(|ranked| !scenario.holds(ranked.cause)));
        self.wrong_first += usize::from(!first_holds && is_first_sure);
        self.right_first += usize::from(first_holds);
        self.right_sure += usize::from(first_holds && is_first_sure);
        self.not_enough += usize::from(!ranking.is_enough);
    }
}

impl fmt::Display for Counts {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { rankings, true_unlikely, wrong_sure, wrong_first, right_first, right_sure, not_enough } = self;
        write!(
            f,
            "{rankings:>4} rankings: true cause unlikely {true_unlikely:>3}, a wrong one sure {wrong_sure:>3} \
             (first {wrong_first:>3}), true cause first {right_first:>3} (sure {right_sure:>3}), \
             not enough to say {not_enough:>3}"
        )
    }
}

impl fmt::Display for Flips {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "  as stated           {}", self.stated)?;
        writeln!(f, "  one answer flipped  {}", self.flipped)?;
        write!(f, "  one left out        {}", self.left_out)
    }
}
