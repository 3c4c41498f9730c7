//! What the verdicts come to: how many were caught, and which were not, each with why.

use super::copy::{Copy, text_of};
use super::names::Mutant;
use super::verdicts::{Outcome, State, Verdicts};
use crate::paths;
use anyhow::{Context, Result, bail};
use std::collections::BTreeMap;
use std::fmt::Write;
use std::fs;
use std::path::Path;
use std::process::Command;

/// Of a hundred that compile, so many must be caught.
const ENOUGH: usize = 90;

/// A mutant where it stands, whatever the number of its line: file, change, text of the line.
type Key = (String, String, String);

/// Why mutants may go on living.
pub type Reasons = BTreeMap<Key, String>;

/// Reads reasons, one a line: `file | what is changed | the line's text | why`.
pub fn reasons(path: &Path) -> Result<Reasons> {
    let text = fs::read_to_string(path).unwrap_or_default();
    let lines = text.lines().filter(|line| !line.starts_with('#') && !line.trim().is_empty());
    lines.map(|line| reason(line).with_context(|| format!("{}: `{line}`", path.display()))).collect()
}

/// The line's text may hold bars itself.
fn reason(line: &str) -> Result<(Key, String)> {
    let parts = || {
        let (rest, why) = line.rsplit_once(" | ")?;
        let mut rest = rest.splitn(3, " | ");
        let (file, what, text) = (rest.next()?, rest.next()?, rest.next()?);
        (!why.trim().is_empty()).then(|| ((file.to_owned(), what.to_owned(), text.to_owned()), why.trim().to_owned()))
    };
    parts().context("should read `file | what is changed | the line's text | why`")
}

#[derive(Default)]
struct Count {
    caught: usize,
    timed_out: usize,
    missed: usize,
    not_viable: usize,
    open: usize,
}

impl Count {
    fn add(&mut self, state: State) {
        *match state {
            State::Settled(Outcome::Caught) => &mut self.caught,
            State::Settled(Outcome::TimedOut) => &mut self.timed_out,
            State::Settled(Outcome::Missed) => &mut self.missed,
            State::Settled(Outcome::NotViable) => &mut self.not_viable,
            State::Settled(Outcome::Again) | State::Open(_) => &mut self.open,
        } += 1;
    }

    /// A test that hangs is one that does not pass.
    fn stopped(&self) -> usize {
        self.caught + self.timed_out
    }

    fn judged(&self) -> usize {
        self.stopped() + self.missed
    }

    /// Judged as far as that goes, and enough of them caught?
    fn is_enough(&self) -> bool {
        self.stopped() * 100 >= self.judged() * ENOUGH
    }

    fn row(&self, name: &str) -> String {
        let share = match self.judged() {
            // What the rounds so far have missed is open: a share of the rest would flatter.
            _ if self.open > 0 => "not yet".to_owned(),
            0 => "-".to_owned(),
            judged => format!("{:.1} %", 100.0 * self.stopped() as f64 / judged as f64),
        };
        let Self { caught, timed_out, missed, not_viable, open } = self;
        format!("{name:10} {caught:>7} {timed_out:>9} {missed:>7} {share:>8} {not_viable:>15} {open:>9}\n")
    }
}

pub struct Report {
    pub text: String,
    /// What does not hold.
    faults: Vec<String>,
}

impl Report {
    pub fn of(pieces: &[(&str, &Vec<Mutant>)], verdicts: &Verdicts, reasons: &Reasons, copy: &Copy) -> Result<Self> {
        let mut text = heading(verdicts)?;
        let mut faults = Vec::new();
        for (name, mutants) in pieces {
            let mut count = Count::default();
            mutants.iter().for_each(|mutant| count.add(verdicts.state(mutant)));
            text += &count.row(name);
            if count.open > 0 {
                faults.push(format!("{name}: {} are not judged yet", count.open));
            }
            if !count.is_enough() {
                faults.push(format!("{name}: fewer than {ENOUGH} % are caught"));
            }
        }
        let in_state = |outcome| {
            let all = pieces.iter().flat_map(|(_, mutants)| mutants.iter());
            all.filter(|mutant| verdicts.state(mutant) == State::Settled(outcome)).collect::<Vec<_>>()
        };
        let mut unused = reasons.clone();
        text += "\nNot caught, and why that may be:\n";
        for mutant in in_state(Outcome::Missed) {
            let line = copy.line(&mutant.file, mutant.line)?;
            let key = (mutant.file.clone(), mutant.what.clone(), line);
            let why = reasons.get(&key).map_or("(no reason is given)", String::as_str);
            writeln!(text, "- {}\n      {}\n      {why}", mutant.name(), key.2)?;
            if unused.remove(&key).is_none() && !reasons.contains_key(&key) {
                faults.push(format!("no reason: {} | {} | {} | ", key.0, key.1, key.2));
            }
        }
        text += "\nTimed out, and counted as caught:\n";
        in_state(Outcome::TimedOut).iter().try_for_each(|mutant| writeln!(text, "- {}", mutant.name()))?;
        faults
            .extend(unused.keys().map(|(file, what, line)| format!("a reason for nothing: {file} | {what} | {line}")));
        Ok(Self { text, faults })
    }

    /// Fails with everything that does not hold.
    pub fn check(&self) -> Result<()> {
        if self.faults.is_empty() { Ok(()) } else { bail!("it does not hold:\n  {}", self.faults.join("\n  ")) }
    }
}

fn heading(verdicts: &Verdicts) -> Result<String> {
    let commit = text_of(Command::new("git").current_dir(paths::root()).args(["rev-parse", "--short=12", "HEAD"]))?;
    let day = verdicts.last_day().unwrap_or_else(|| "no day yet".to_owned());
    let columns = "piece       caught timed out  missed   caught does not compile not judged\n";
    Ok(format!("Mutants of commit {commit}, last judged {day}. Written by `cargo xtask mutants`.\n\n{columns}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn count(caught: usize, timed_out: usize, missed: usize) -> Count {
        Count { caught, timed_out, missed, not_viable: 7, open: 0 }
    }

    #[test]
    fn nine_in_ten_of_those_that_compile_are_enough() {
        assert!(count(90, 0, 10).is_enough());
        assert!(count(80, 10, 10).is_enough(), "one that hangs is caught");
        assert!(!count(89, 0, 10).is_enough());
        assert!(count(0, 0, 0).is_enough());
    }

    #[test]
    fn each_state_is_counted_where_it_belongs() {
        let mut count = Count::default();
        for outcome in [Outcome::Caught, Outcome::Caught, Outcome::TimedOut, Outcome::Missed, Outcome::NotViable] {
            count.add(State::Settled(outcome));
        }
        count.add(State::Open(2));
        assert_eq!((count.caught, count.timed_out, count.missed, count.not_viable, count.open), (2, 1, 1, 1, 1));
        assert!(count.row("closing").contains(" not yet "), "{}", count.row("closing"));
        count.open = 0;
        assert!(count.row("closing").contains(" 75.0 %"), "{}", count.row("closing"));
    }

    #[test]
    fn a_reason_is_told_from_bars_in_the_line() {
        let ((file, what, text), why) =
            reason("src/a.rs | replace || with && in f | if a || b | c > 2 { | they are equal").unwrap();
        assert_eq!((file.as_str(), what.as_str()), ("src/a.rs", "replace || with && in f"));
        assert_eq!((text.as_str(), why.as_str()), ("if a || b | c > 2 {", "they are equal"));
    }

    #[test]
    fn a_reason_must_give_one() {
        for line in ["src/a.rs | replace x with y | if x { | ", "src/a.rs | replace x with y | why"] {
            assert!(reason(line).is_err(), "{line}");
        }
    }
}
