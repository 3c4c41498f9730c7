//! What became of each mutant, a line at a time, the latest last:
//! `2026-11-27 caught unit 3f9c2a71d0aa src/engine/a.rs:+3:18: replace > with >= in f`.

use super::copy::text_of;
use super::judge::ROUNDS;
use super::names::Mutant;
use anyhow::{Context, Result};
use std::collections::BTreeMap;
use std::fs::{self, OpenOptions};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;

/// What comes of judging a mutant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// A test failed.
    Caught,
    /// The tests did not end in time.
    TimedOut,
    /// It does not compile.
    NotViable,
    /// All tests passed.
    Missed,
    /// What was said before counts no longer.
    Again,
}

impl Outcome {
    /// Each with its word in the text.
    pub const ALL: [(Self, &'static str); 5] = [
        (Self::Caught, "caught"),
        (Self::TimedOut, "timeout"),
        (Self::NotViable, "unviable"),
        (Self::Missed, "missed"),
        (Self::Again, "again"),
    ];

    fn word(self) -> &'static str {
        Self::ALL.iter().find(|(outcome, _)| *outcome == self).map_or("", |(_, word)| word)
    }
}

/// How far a mutant has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// So many rounds have missed it, and another one will judge it.
    Open(usize),
    /// This is what became of it.
    Settled(Outcome),
}

impl State {
    /// What the round with this number judges.
    pub fn missed_before(round: usize) -> Self {
        Self::Open(round)
    }

    fn after(outcome: Outcome, round: usize) -> Self {
        match outcome {
            Outcome::Again => Self::Open(0),
            Outcome::Missed if round + 1 < ROUNDS.len() => Self::Open(round + 1),
            settled => Self::Settled(settled),
        }
    }
}

/// All verdicts, on the functions as they are now and as they were.
pub struct Verdicts {
    path: PathBuf,
    /// By the mutant's lasting name: what was said of a function as it was before it was changed
    /// is said of another one.
    states: BTreeMap<String, State>,
    today: String,
}

impl Verdicts {
    /// Reads what was judged.
    pub fn read(path: &Path) -> Result<Self> {
        let text = fs::read_to_string(path).unwrap_or_default();
        let today = text_of(Command::new("date").args(["-u", "+%F"]))?;
        let lines = text.lines().filter(|line| !line.starts_with('#') && !line.trim().is_empty());
        let states = lines.map(|line| parsed(line).with_context(|| format!("{}: `{line}`", path.display())));
        Ok(Self { path: path.to_owned(), states: states.collect::<Result<_>>()?, today })
    }

    pub fn state(&self, mutant: &Mutant) -> State {
        self.states.get(&mutant.lasting_name()).copied().unwrap_or(State::Open(0))
    }

    /// How many of these need no more judging.
    pub fn settled(&self, mutants: &[&Mutant]) -> usize {
        mutants.iter().filter(|mutant| matches!(self.state(mutant), State::Settled(_))).count()
    }

    /// Adds what a round has said of a mutant.
    pub fn add(&mut self, mutant: &Mutant, outcome: Outcome, round: usize) -> Result<()> {
        let by = ROUNDS.get(round).map_or("-", |round| round.name);
        let mut text = OpenOptions::new().create(true).append(true).open(&self.path)?;
        writeln!(text, "{} {} {by} {}", self.today, outcome.word(), mutant.lasting_name())?;
        self.states.insert(mutant.lasting_name(), State::after(outcome, round));
        Ok(())
    }

    /// From now on those that were missed are not judged yet: tests were added.
    pub fn forget_the_missed(&mut self, mutants: &[&Mutant]) -> Result<()> {
        let missed = |mutant: &&&Mutant| self.state(mutant) == State::Settled(Outcome::Missed);
        let missed: Vec<_> = mutants.iter().filter(missed).copied().collect();
        missed.into_iter().try_for_each(|mutant| self.add(mutant, Outcome::Again, 0))
    }

    /// The day of the last verdict.
    pub fn last_day(&self) -> Option<String> {
        let text = fs::read_to_string(&self.path).ok()?;
        let days = text.lines().filter(|line| !line.starts_with('#')).filter_map(|line| line.split_once(' '));
        days.map(|(day, _)| day.to_owned()).max()
    }
}

fn parsed(line: &str) -> Result<(String, State)> {
    let mut words = line.splitn(4, ' ').skip(1);
    let mut word = || words.next().context("too few words");
    let (outcome, by, name) = (word()?, word()?, word()?);
    let outcome = Outcome::ALL.iter().find(|(_, word)| *word == outcome).context("no such outcome")?.0;
    let round = ROUNDS.iter().position(|round| round.name == by).context("no such round")?;
    let (digest, place) = name.split_once(' ').context("no place")?;
    let is_place = place.contains(".rs:+") && digest.chars().all(|it| it.is_ascii_hexdigit());
    is_place.then(|| (name.to_owned(), State::after(outcome, round))).context("no place in a function")
}

#[cfg(test)]
mod tests {
    use super::super::names::tests::mutant;
    use super::*;

    const NAME: &str = "src/a.rs:4:18: replace > with >= in f";

    fn path() -> PathBuf {
        static COUNT: std::sync::atomic::AtomicUsize = std::sync::atomic::AtomicUsize::new(0);
        let number = COUNT.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
        std::env::temp_dir().join(format!("xtask-verdicts-{}-{number}", std::process::id()))
    }

    fn read(lines: &[String]) -> Result<Verdicts> {
        let path = path();
        fs::write(&path, lines.join("\n") + "\n").unwrap();
        let verdicts = Verdicts::read(&path);
        fs::remove_file(path).unwrap();
        verdicts
    }

    fn state_after(said: &[&str]) -> State {
        let mutant = mutant(NAME);
        let lines: Vec<_> = said.iter().map(|said| format!("2026-01-02 {said} {}", mutant.lasting_name())).collect();
        read(&lines).unwrap().state(&mutant)
    }

    #[test]
    fn the_latest_verdict_counts() {
        assert_eq!(state_after(&[]), State::Open(0));
        assert_eq!(state_after(&["missed concern"]), State::Open(1));
        assert_eq!(state_after(&["missed concern", "missed unit"]), State::Open(2));
        assert_eq!(state_after(&["missed unit", "missed conclusion"]), State::Settled(Outcome::Missed));
        assert_eq!(state_after(&["missed conclusion", "again concern"]), State::Open(0));
        assert_eq!(state_after(&["missed concern", "timeout unit"]), State::Settled(Outcome::TimedOut));
    }

    #[test]
    fn what_was_said_of_a_function_before_it_was_changed_does_not_count() {
        let line = format!("2026-01-02 caught unit {}", mutant(NAME).lasting_name());
        let older = line.replace(" src/", "0 src/");
        assert_eq!(read(std::slice::from_ref(&older)).unwrap().state(&mutant(NAME)), State::Open(0));
        assert_eq!(read(&[line, older]).unwrap().state(&mutant(NAME)), State::Settled(Outcome::Caught));
    }

    #[test]
    fn what_was_added_is_there_after_a_new_start() {
        let path = path();
        let (first, second) = (mutant(NAME), mutant("src/a.rs:5:1: delete ! in g"));
        let mut verdicts = Verdicts::read(&path).unwrap();
        verdicts.add(&first, Outcome::Missed, 2).unwrap();
        verdicts.add(&second, Outcome::Caught, 0).unwrap();
        let mut again = Verdicts::read(&path).unwrap();
        assert_eq!(again.settled(&[&first, &second]), 2);
        again.forget_the_missed(&[&first, &second]).unwrap();
        let last = Verdicts::read(&path).unwrap();
        assert_eq!((last.state(&first), last.state(&second)), (State::Open(0), State::Settled(Outcome::Caught)));
        fs::remove_file(path).unwrap();
    }

    #[test]
    fn a_line_that_says_nothing_is_refused_and_not_passed_over() {
        for line in [
            "2026-01-02 caught unit d1",
            "2026-01-02 fine unit d1 src/a.rs:+1:1: x",
            "2026-01-02 caught unit d1 src/a.rs:1:1: x",
            "caught",
        ] {
            assert!(read(&[line.to_owned()]).is_err(), "{line}");
        }
        assert!(read(&["# a remark".to_owned(), String::new()]).is_ok());
    }
}
