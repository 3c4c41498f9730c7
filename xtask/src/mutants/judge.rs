//! Judging by cargo-mutants: which tests judge, in which round, and what came of it.

use super::copy::{Copy, text_of};
use super::names::Mutant;
use super::verdicts::{Outcome, Verdicts};
use super::{engine_tests, lock};
use crate::run;
use anyhow::{Context, Result, bail};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::Mutex;
use std::time::Instant;

/// Tests of the source text would fail for what cargo-mutants writes beside a change.
const READS_THE_SOURCE: &str = "tidy";

/// Minutes of damaged files, merged logs and searches: they judge their own concern, and of
/// another one they would catch next to nothing. To leave them out errs on the safe side.
const ONLY_THEIR_CONCERN: [&str; 3] = ["job_file", "layout", "log_laws"];

/// A test that takes so many times as long as without the change hangs.
const SLOWER: &str = "5";
/// And no shorter than this, in seconds: the machine may be busy.
const AT_LEAST: &str = "60";
/// Building takes longer only for a constant that never comes out. In seconds.
const BUILDING: &str = "600";

/// How cargo-mutants ends when it has judged: all caught, some missed, some timed out.
const JUDGED: [i32; 3] = [0, 2, 3];

/// One go at the mutants that the goes before have missed.
pub struct Round {
    pub name: &'static str,
    tests: Tests,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Tests {
    /// The tests in `tests/` that hold the folder's concern.
    OfConcern,
    /// The unit tests of the folder.
    Unit,
    /// All of the engine's but for the slow ones of another concern.
    All,
}

/// From what catches most in the fewest seconds to all there is.
pub const ROUNDS: [Round; 3] = [
    Round { name: "concern", tests: Tests::OfConcern },
    Round { name: "unit", tests: Tests::Unit },
    Round { name: "all", tests: Tests::All },
];

/// What is judged in one go: a folder, or everything.
pub struct Concern {
    folder: Option<(&'static str, &'static [&'static str])>,
}

impl Concern {
    pub fn holds(&self, mutant: &Mutant) -> bool {
        self.folder.is_none_or(|(folder, _)| mutant.file.starts_with(folder))
    }

    pub fn name(&self) -> &'static str {
        self.folder.map_or("everything", |(folder, _)| folder)
    }
}

impl Round {
    /// What this round judges one after the other.
    pub fn concerns(&self, all: &[(&'static str, &'static [&'static str])]) -> Vec<Concern> {
        match self.tests {
            Tests::All => vec![Concern { folder: None }],
            Tests::Unit | Tests::OfConcern => all.iter().map(|folder| Concern { folder: Some(*folder) }).collect(),
        }
    }

    /// What is built, as cargo is told; nothing if there is no such test.
    fn targets(&self, concern: &Concern, there: &BTreeSet<String>) -> Vec<String> {
        let named = |name: &str| format!("--test={name}");
        match (self.tests, concern.folder) {
            (Tests::Unit, _) => vec!["--lib".to_owned()],
            (Tests::OfConcern, Some((_, names))) => names.iter().copied().map(named).collect(),
            (Tests::OfConcern | Tests::All, _) => {
                let left_out = [&ONLY_THEIR_CONCERN[..], &[READS_THE_SOURCE]].concat();
                let tests = there.iter().filter(|name| !left_out.contains(&name.as_str())).map(|name| named(name));
                ["--lib".to_owned(), "--bins".to_owned()].into_iter().chain(tests).collect()
            }
        }
    }

    /// Which of the tests in there are run, if not all.
    fn filter(&self, concern: &Concern) -> Option<String> {
        let (folder, _) = concern.folder?;
        (self.tests == Tests::Unit).then(|| module(folder))
    }
}

/// `src/engine/closing/` as the names of its unit tests begin.
fn module(folder: &str) -> String {
    folder.trim_start_matches("src/").replace('/', "::")
}

/// The mutants of these files but not of those, in their order.
pub fn list<'a>(
    tool: &Path,
    copy: &Copy,
    files: impl IntoIterator<Item = &'a str>,
    but_not: &[&str],
) -> Result<Vec<Mutant>> {
    let mut command = mutants(tool, copy);
    command.args(["--list", "--line-col=true"]);
    files.into_iter().for_each(|file| {
        command.args(["--file", file]);
    });
    but_not.iter().for_each(|file| {
        command.args(["--exclude", file]);
    });
    text_of(&mut command)?.lines().map(str::parse).collect()
}

fn mutants(tool: &Path, copy: &Copy) -> Command {
    let mut command = Command::new(tool);
    command.args(["mutants", "--colors", "never", "--dir"]).arg(&copy.folder);
    command.env("CARGO_TARGET_DIR", copy.folder.join("target"));
    // Nobody steps through a mutant.
    command.env("CARGO_PROFILE_DEV_DEBUG", "0").env("CARGO_INCREMENTAL", "1");
    // Hardly slower to build, as long as units are not optimized together again and again; and
    // the tests take a fifth of the time.
    command.env("CARGO_PROFILE_DEV_OPT_LEVEL", "1").env("CARGO_PROFILE_DEV_LTO", "off");
    // What one mutant's failure has left would help to catch the next, here and nowhere else.
    command.env("PROPTEST_DISABLE_FAILURE_PERSISTENCE", "true");
    command
}

/// One job: a copy of its own, and a share of what is open.
pub struct Lane<'a> {
    pub tool: &'a Path,
    pub copy: &'a Copy,
    pub verdicts: &'a Mutex<Verdicts>,
    pub round: &'a Round,
    pub concern: &'a Concern,
    pub end: Instant,
}

impl Lane<'_> {
    /// Judges these until the time is over.
    pub fn judge(&self, share: Vec<&Mutant>) -> Result<()> {
        let targets = self.round.targets(self.concern, &engine_tests()?);
        let is_asked = |mutant: &&Mutant| {
            !targets.is_empty() && (self.round.tests != Tests::Unit || self.copy.has_unit_tests(&mutant.file))
        };
        // What no test of this round can catch need not be built.
        let (share, missed): (Vec<_>, Vec<_>) = share.into_iter().partition(is_asked);
        missed.into_iter().try_for_each(|mutant| self.add(mutant, Outcome::Missed))?;
        if share.is_empty() {
            return Ok(());
        }
        let files: BTreeSet<&str> = share.iter().map(|mutant| mutant.file.as_str()).collect();
        let wanted: BTreeMap<String, &Mutant> = share.iter().map(|mutant| (mutant.name(), *mutant)).collect();
        let out = self.out()?;
        self.pass_over(&files, &wanted, &out)?;
        let mut command = mutants(self.tool, self.copy);
        // In place: the copy is there to be changed, and is built once and not each time.
        command.args(["--in-place", "--iterate", "--no-times", "--output"]).arg(&self.copy.logs);
        command.args(["--timeout-multiplier", SLOWER, "--minimum-test-timeout", AT_LEAST, "--build-timeout", BUILDING]);
        files.iter().for_each(|file| {
            command.args(["--file", file]);
        });
        // For building too, which what stands behind `--` is not.
        command.args(targets.iter().map(|target| format!("--cargo-arg={target}")));
        if let Some(filter) = self.round.filter(self.concern) {
            command.args(["--", "--", &filter]);
        }
        command.stdin(self.copy.hold()?);
        let left = self.end.saturating_duration_since(Instant::now());
        let log = self.copy.logs.join("log.txt");
        let mut said = BTreeSet::new();
        let status = run::watched(&mut command, left, &log, || self.note(&out, &wanted, &mut said))?;
        match status.map(|status| status.code()) {
            None => Ok(()),
            Some(Some(code)) if JUDGED.contains(&code) => Ok(()),
            Some(_) => bail!("cargo-mutants could not judge: see {}\n{}", log.display(), run::end_of_file(&log)),
        }
    }

    fn out(&self) -> Result<PathBuf> {
        let out = self.copy.logs.join("mutants.out");
        for old in [&out, &self.copy.logs.join("mutants.out.old")] {
            if old.is_dir() {
                fs::remove_dir_all(old)?;
            }
        }
        fs::create_dir_all(&out)?;
        Ok(out)
    }

    /// Tells cargo-mutants what it need not judge: with `--iterate` it passes over what is
    /// written there.
    fn pass_over(&self, files: &BTreeSet<&str>, wanted: &BTreeMap<String, &Mutant>, out: &Path) -> Result<()> {
        let all = list(self.tool, self.copy, files.iter().copied(), &[])?;
        let others = all.iter().map(Mutant::name).filter(|name| !wanted.contains_key(name));
        let text: String = others.map(|name| name + "\n").collect();
        fs::write(out.join("caught.txt"), text).context("what is passed over")
    }

    /// Notes what was judged since the last time.
    fn note(&self, out: &Path, wanted: &BTreeMap<String, &Mutant>, said: &mut BTreeSet<String>) -> Result<()> {
        for (outcome, word) in Outcome::ALL {
            let text = fs::read_to_string(out.join(format!("{word}.txt"))).unwrap_or_default();
            let whole_lines = text.rsplit_once('\n').map_or("", |(lines, _)| lines);
            for name in whole_lines.lines() {
                if let Some(mutant) = wanted.get(name)
                    && said.insert(name.to_owned())
                {
                    self.add(mutant, outcome)?;
                }
            }
        }
        Ok(())
    }

    fn add(&self, mutant: &Mutant, outcome: Outcome) -> Result<()> {
        let round = ROUNDS.iter().position(|round| round.name == self.round.name).unwrap_or_default();
        lock(self.verdicts)?.add(mutant, outcome, round)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_tests_of_the_concern_are_asked_first_and_all_of_them_last() {
        let there = ["framing", "layout", "tidy", "under"].map(str::to_owned).into();
        let targets = |round: usize, concern| ROUNDS[round].targets(concern, &there).join(" ");
        let adjust = Concern { folder: Some(("src/engine/survey/adjust/", &["under", "framing"])) };
        let everything = Concern { folder: None };
        assert_eq!(targets(0, &adjust), "--test=under --test=framing");
        assert_eq!(targets(1, &adjust), "--lib");
        assert_eq!(
            targets(2, &everything),
            "--lib --bins --test=framing --test=under",
            "neither slow nor the source's own"
        );
        assert_eq!(ROUNDS[1].filter(&adjust).as_deref(), Some("engine::survey::adjust::"));
        assert_eq!((ROUNDS[0].filter(&adjust), ROUNDS[2].filter(&everything)), (None, None));
    }

    #[test]
    fn all_tests_are_asked_once_and_not_for_each_folder() {
        let folders: [(&str, &[&str]); 2] = [("src/a/", &[]), ("src/b/", &[])];
        assert_eq!(ROUNDS.map(|round| round.concerns(&folders).len()), [2, 2, 1]);
        assert!(ROUNDS[0].concerns(&folders)[0].holds(&"src/a/x.rs:1:1: delete !".parse().unwrap()));
        assert!(!ROUNDS[0].concerns(&folders)[1].holds(&"src/a/x.rs:1:1: delete !".parse().unwrap()));
    }
}
