//! A copy of what is committed, to be changed and built without touching the tree that
//! somebody works in. It stays, and what was built in it too, so that the next run need
//! build little.

use crate::{paths, run};
use anyhow::{Context, Result, bail};
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::Command;

pub struct Copy {
    /// Where the copy is.
    pub folder: PathBuf,
    /// What is said while it is worked on.
    pub logs: PathBuf,
    /// Locked for as long as anybody works in the copy: whoever holds it open.
    lock: File,
}

impl Copy {
    /// The copy of one job, as it was committed last.
    pub fn make(job: usize) -> Result<Self> {
        let home = paths::target().join(format!("mutants/job-{job}"));
        let (folder, logs) = (home.join("tree"), home);
        let root = paths::root();
        let changed = text_of(git(&root).args(["status", "--porcelain", "--", "src", "tests", ":!tests/mutants"]))?;
        if !changed.is_empty() {
            bail!("commit first: the mutants of what is committed are judged\n{changed}");
        }
        fs::create_dir_all(&folder)?;
        let lock = File::create(logs.join("lock"))?;
        if lock.try_lock().is_err() {
            bail!("somebody still works in {}: end that first", folder.display());
        }
        if !folder.join(".git").is_dir() {
            text_of(git(&folder).args(["init", "--quiet"]))?;
        }
        text_of(git(&folder).args(["fetch", "--quiet"]).arg(&root).arg("HEAD"))?;
        // Also what a run that was stopped has left.
        text_of(git(&folder).args(["reset", "--quiet", "--hard", "FETCH_HEAD"]))?;
        text_of(git(&folder).args(["clean", "--quiet", "--force", "-d"]))?;
        let manifest = folder.join("Cargo.toml");
        fs::write(&manifest, without_commands(&fs::read_to_string(&manifest)?))?;
        Ok(Self { folder, logs, lock })
    }

    /// What a command is given as its input, so that the copy stays locked until it ends,
    /// whatever becomes of us.
    pub fn hold(&self) -> Result<File> {
        Ok(self.lock.try_clone()?)
    }

    /// Does a file hold unit tests, or stand below a folder that keeps them in `tests`?
    pub fn has_unit_tests(&self, file: &str) -> bool {
        let is_test = |file: &Path| fs::read_to_string(file).is_ok_and(|text| text.contains("#[test]"));
        let above = Path::new(file).ancestors().skip(1).filter(|above| above.starts_with("src"));
        is_test(&self.folder.join(file))
            || above
                .map(|above| self.folder.join(above))
                .any(|above| above.join("tests").is_dir() || above.join("tests.rs").is_file())
    }

    /// What a file holds.
    pub fn text(&self, file: &str) -> Result<String> {
        fs::read_to_string(self.folder.join(file)).with_context(|| file.to_owned())
    }

    /// The line of a file, counted from 1, without the space around it.
    pub fn line(&self, file: &str, line: usize) -> Result<String> {
        let text = self.text(file)?;
        let line = text.lines().nth(line.saturating_sub(1));
        Ok(line.with_context(|| format!("{file} has no such line"))?.trim().to_owned())
    }
}

/// A manifest of the library alone. Cargo builds the commands for every test that could call one,
/// with every mutant; the tests that judge call none.
fn without_commands(manifest: &str) -> String {
    let mut is_command = false;
    let kept = manifest.lines().filter(|line| {
        if line.starts_with('[') {
            is_command = *line == "[[bin]]";
        }
        !is_command && !line.starts_with("default-run")
    });
    kept.map(|line| if line == "[package]" { "[package]\nautobins = false" } else { line }.to_owned() + "\n").collect()
}

fn git(folder: &Path) -> Command {
    let mut git = Command::new("git");
    git.arg("-C").arg(folder);
    git
}

/// What a short command prints.
pub fn text_of(command: &mut Command) -> Result<String> {
    let output = command.output().with_context(|| format!("cannot start `{}`", run::shown(command)))?;
    if !output.status.success() {
        bail!("`{}`: {}", run::shown(command), String::from_utf8_lossy(&output.stderr));
    }
    Ok(String::from_utf8(output.stdout)?.trim().to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_manifest_is_left_with_the_library() {
        let manifest = "[package]\nname = \"a\"\ndefault-run = \"a\"\n\n[[bin]]\nname = \"a\"\n\n[lib]\nname = \"a\"\n";
        let kept = without_commands(manifest);
        assert_eq!(kept, "[package]\nautobins = false\nname = \"a\"\n\n[lib]\nname = \"a\"\n");
    }

    #[test]
    fn a_file_has_unit_tests_of_its_own_or_of_a_folder_above_it() {
        let logs = paths::target().join("mutants");
        fs::create_dir_all(&logs).unwrap();
        let lock = File::create(logs.join("of-a-test")).unwrap();
        let copy = Copy { folder: paths::root(), logs, lock };
        let has = |file| copy.has_unit_tests(file);
        assert!(has("src/engine/moisture/chart.rs"), "in it");
        assert!(has("src/store/queue/mod.rs") && has("src/engine/sheets/layout/search/group.rs"), "above it");
        assert!(!has("src/engine/closing/limits.rs") && !has("src/nowhere.rs"));
    }

    #[test]
    fn a_failed_command_says_why() {
        let error = text_of(git(Path::new("/nowhere/at/all")).arg("status")).unwrap_err().to_string();
        assert!(error.contains("git -C /nowhere/at/all status"), "{error}");
    }
}
