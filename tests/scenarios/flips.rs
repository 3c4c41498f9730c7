//! What one wrong answer does, and one that is missing: every stated answer of every
//! scenario is turned round once, and left out once. Nothing is drawn at random.

use crate::scenario::Scenario;
use duckboard::engine::moisture::Answer;
use duckboard::engine::origin::{Evidence, Ranking, Word, rank};
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
                flips.flipped.count(scenario, &rank(evidence, &scene));
                scene.answers.remove(name);
                flips.left_out.count(scenario, &rank(evidence, &scene));
                scene.answers.insert(name.clone(), *answer);
            }
        }
        flips
    }
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
        let is_sure = |word: Word| word == Word::Likely && ranking.is_enough;
        let mut causes = ranking.causes.iter().map(|ranked| (scenario.holds(ranked.cause), ranked.word));
        let Some((first_holds, first)) = causes.clone().next() else { return };
        self.rankings += 1;
        self.true_unlikely += usize::from(causes.clone().any(|(holds, word)| holds && word == Word::Unlikely));
        self.wrong_sure += usize::from(causes.any(|(holds, word)| !holds && is_sure(word)));
        self.wrong_first += usize::from(!first_holds && is_sure(first));
        self.right_first += usize::from(first_holds);
        self.right_sure += usize::from(first_holds && is_sure(first));
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
