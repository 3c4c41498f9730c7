//! How often the ranking was right.

use crate::scenario::Scenario;
use duckboard::engine::origin::{Cause, Ranking, Word};
use std::collections::BTreeMap;
use std::fmt;

/// Of so many scenarios so many.
#[derive(Default)]
pub struct Tally {
    pub scenarios: usize,
    pub first: usize,
    pub unlikely: usize,
    /// What holds and what came first.
    taken_for: BTreeMap<(Cause, Cause), usize>,
}

impl Tally {
    pub fn count(&mut self, scenario: &Scenario, ranking: &Ranking) {
        let Some(first) = ranking.causes.first() else { return };
        let is_right = scenario.holds(first.cause);
        self.scenarios += 1;
        self.first += usize::from(is_right);
        let true_ones = ranking.causes.iter().filter(|ranked| scenario.holds(ranked.cause));
        self.unlikely += true_ones.filter(|ranked| ranked.word == Word::Unlikely).count();
        let holds = if is_right { Some(first.cause) } else { scenario.causes.first().copied() };
        if let Some(holds) = holds {
            *self.taken_for.entry((holds, first.cause)).or_default() += 1;
        }
    }

    /// Right in four of five, and no true cause called unlikely?
    pub fn is_good(&self) -> bool {
        self.first * 5 >= self.scenarios * 4 && self.unlikely == 0
    }

    /// Which cause was taken for which.
    pub fn table(&self) -> String {
        let cell = |text: &str| format!("{text:>12}");
        let head: String = Cause::ALL.iter().map(|cause| cell(cause.name())).collect();
        let row = |holds: &Cause| {
            let of = |came: &Cause| self.taken_for.get(&(*holds, *came)).copied().unwrap_or(0);
            let shown = |count: usize| cell(&if count == 0 { ".".to_owned() } else { count.to_string() });
            let counts: String = Cause::ALL.iter().map(of).map(shown).collect();
            format!("{:>12}{counts}\n", holds.name())
        };
        format!("{:>12}{head}\n{}", "", Cause::ALL.iter().map(row).collect::<String>())
    }
}

/// A scenario's ranking in one line.
#[allow(dead_code, reason = "the command prints it")]
pub fn line(scenario: &Scenario, ranking: &Ranking) -> String {
    let right = ranking.causes.first().is_some_and(|first| scenario.holds(first.cause));
    let holds: Vec<_> = scenario.causes.iter().map(|cause| cause.name()).collect();
    let named: Vec<_> = ranking
        .causes
        .iter()
        .take(3)
        .map(|ranked| format!("{} {}", ranked.cause.name(), ranked.word.label()))
        .collect();
    let enough = if ranking.is_enough { "" } else { ", not enough to say" };
    let next = ranking.next.as_deref().unwrap_or("none");
    let verdict = if right { "right" } else { "WRONG" };
    format!("{} {verdict}: holds {}; ranked {}{enough}; next {next}", scenario.id, holds.join(" + "), named.join(", "))
}

impl fmt::Display for Tally {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { scenarios, first, unlikely, .. } = self;
        let percent = if *scenarios == 0 { 0 } else { first * 100 / scenarios };
        write!(f, "{first} of {scenarios} right ({percent} %), {unlikely} true causes called unlikely")
    }
}
