//! Judging by cargo-mutants: which tests judge, in which round, and what came of it.

use super::copy::{Copy, text_of};
use super::lock;
use super::names::{Listed, Mutant};
use super::verdicts::{Outcome, Verdicts};
use crate::run;
use anyhow::{Context, Result, bail};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::Mutex;
use std::time::Instant;

/// So many cases of each property: what a few do not catch counts as missed.
const CASES: &str = "16";

/// A test that takes so many times as long as without the change hangs.
const SLOWER: &str = "5";
/// And no shorter than this, in seconds: the machine may be busy.
const AT_LEAST: &str = "60";
/// Building takes longer only for a constant that never comes out. In seconds.
const BUILDING: &str = "600";

/// One test that fails is enough. Rust's test harness knows this option, but not as a stable one
/// yet: it is told to take it all the same (`RUSTC_BOOTSTRAP`), here and nowhere else.
const STOP_AT_ONCE: [&str; 2] = ["-Zunstable-options", "--fail-fast"];

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
    /// The tests in `tests/` of what is concluded from it.
    OfConclusion,
}

/// First what catches most. What none catches counts as missed, though a test of another
/// concern might: a decision is to be held where it belongs, or where it decides.
pub const ROUNDS: [Round; 3] = [
    Round { name: "concern", tests: Tests::OfConcern },
    Round { name: "unit", tests: Tests::Unit },
    Round { name: "conclusion", tests: Tests::OfConclusion },
];

/// What is judged in one go: a folder by its tests.
pub struct Concern {
    pub folder: &'static str,
    /// Those in `tests/`.
    pub tests: &'static [&'static str],
    /// Those of another concern, which concludes from this one.
    pub conclusion: &'static [&'static str],
}

impl Concern {
    pub fn holds(&self, mutant: &Mutant) -> bool {
        mutant.file.starts_with(self.folder)
    }
}

impl Round {
    /// What is built, as cargo is told; nothing if there is no such test.
    fn targets(&self, concern: &Concern) -> Vec<String> {
        match self.tests {
            Tests::Unit => vec!["--lib".to_owned()],
            Tests::OfConcern => named(concern.tests),
            Tests::OfConclusion => named(concern.conclusion),
        }
    }

    /// Which of the tests in there are run, if not all.
    fn filter(&self, concern: &Concern) -> Option<String> {
        (self.tests == Tests::Unit).then(|| module(concern.folder))
    }
}

fn named(tests: &[&str]) -> Vec<String> {
    tests.iter().map(|name| format!("--test={name}")).collect()
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
    command.args(["--list", "--json", "--line-col=true"]);
    files.into_iter().for_each(|file| {
        command.args(["--file", file]);
    });
    but_not.iter().for_each(|file| {
        command.args(["--exclude", file]);
    });
    let listed: Vec<Listed> = serde_json::from_str(&text_of(&mut command)?).context("what cargo-mutants lists")?;
    let files: BTreeSet<&str> = listed.iter().map(|listed| listed.file.as_str()).collect();
    let texts = files.into_iter().map(|file| Ok((file, copy.text(file)?))).collect::<Result<BTreeMap<_, _>>>()?;
    let text = |listed: &Listed| texts.get(listed.file.as_str()).map_or("", String::as_str);
    listed.iter().map(|listed| Mutant::of(listed, text(listed))).collect()
}

fn mutants(tool: &Path, copy: &Copy) -> Command {
    let mut command = Command::new(tool);
    command.args(["mutants", "--colors", "never", "--dir"]).arg(&copy.folder);
    command.env("CARGO_TARGET_DIR", copy.folder.join("target"));
    // Nobody steps through a mutant.
    command.env("CARGO_PROFILE_DEV_DEBUG", "0").env("CARGO_INCREMENTAL", "1");
    // Optimized, the tests would take a fifth of the time; but one change would then be compiled
    // into much else, or keep the optimizer busy for longer than that saves.
    command.env("CARGO_PROFILE_DEV_OPT_LEVEL", "0").env("RUSTC_BOOTSTRAP", "1");
    // What one mutant's failure has left would help to catch the next, here and nowhere else.
    command.env("PROPTEST_DISABLE_FAILURE_PERSISTENCE", "true").env("PROPTEST_CASES", CASES);
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
        let targets = self.round.targets(self.concern);
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
        command.args(["--", "--"]).args(STOP_AT_ONCE).args(self.round.filter(self.concern));
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
    use super::super::names::tests::mutant;
    use super::*;

    const ADJUST: Concern =
        Concern { folder: "src/engine/survey/adjust/", tests: &["under", "framing"], conclusion: &["closing"] };

    #[test]
    fn the_tests_of_the_concern_judge_first_then_the_unit_tests_of_its_folder_and_then_its_conclusion() {
        assert_eq!(ROUNDS[0].targets(&ADJUST), ["--test=under", "--test=framing"]);
        assert_eq!(ROUNDS[0].filter(&ADJUST), None);
        assert_eq!(ROUNDS[1].targets(&ADJUST), ["--lib"]);
        assert_eq!(ROUNDS[1].filter(&ADJUST).as_deref(), Some("engine::survey::adjust::"));
        assert_eq!(ROUNDS[2].targets(&ADJUST), ["--test=closing"]);
        assert_eq!(ROUNDS[2].filter(&ADJUST), None);
    }

    #[test]
    fn a_folder_holds_the_mutants_of_its_files() {
        let holds = |name: &str| ADJUST.holds(&mutant(name));
        assert!(holds("src/engine/survey/adjust/x.rs:1:1: delete !"));
        assert!(!holds("src/engine/survey/x.rs:1:1: delete !"));
    }
}
