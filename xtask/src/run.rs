//! Child processes that always end: each has a time limit, and none can hang on a
//! full pipe, because its output goes to the terminal or to a file, never to a pipe.

use anyhow::{Context, Result, bail};
use std::fs::{self, File};
use std::path::Path;
use std::process::{Child, Command, ExitStatus, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

/// How often a running child is looked at.
const LOOK: Duration = Duration::from_millis(50);
/// How often what a watched command has done is looked at.
const SEEN_ANEW: Duration = Duration::from_secs(1);
/// How much of a failed command's log is worth showing.
const LAST_LINES: usize = 40;

/// A time limit in minutes.
pub const fn minutes(count: u64) -> Duration {
    Duration::from_secs(count * 60)
}

/// Runs a command with its output on the terminal.
pub fn aloud(command: &mut Command, limit: Duration) -> Result<()> {
    let status = finish(command.stdin(Stdio::null()), limit)?;
    check(command, status)
}

/// Runs a command with its output in a file; shows the end of it when it fails.
pub fn quietly(command: &mut Command, limit: Duration, log: &Path) -> Result<()> {
    fs::create_dir_all(log.parent().unwrap_or(log))?;
    let out = File::create(log).with_context(|| format!("cannot write {}", log.display()))?;
    let errors = out.try_clone()?;
    let status = finish(command.stdin(Stdio::null()).stdout(out).stderr(errors), limit);
    let outcome = status.and_then(|status| check(command, status));
    if outcome.is_err() {
        eprintln!("{}", end_of_file(log));
    }
    outcome
}

/// Runs a command with its output in a file and looks again and again at what it has done
/// so far. It is ended when its time is over; then there is no status.
pub fn watched(
    command: &mut Command,
    limit: Duration,
    log: &Path,
    mut look: impl FnMut() -> Result<()>,
) -> Result<Option<ExitStatus>> {
    let out = File::create(log).with_context(|| format!("cannot write {}", log.display()))?;
    let errors = out.try_clone()?;
    let child = command.stdout(out).stderr(errors).spawn();
    let mut child = child.with_context(|| format!("cannot start `{}`", shown(command)))?;
    let start = Instant::now();
    loop {
        let left = limit.saturating_sub(start.elapsed());
        let status = wait(&mut child, left.min(SEEN_ANEW));
        let looked = look();
        let is_over = left.is_zero() || status.is_err() || looked.is_err();
        match status {
            Ok(Some(status)) => return looked.map(|()| Some(status)),
            _ if !is_over => {}
            other => {
                end_with_descendants(&mut child);
                return looked.and(other);
            }
        }
    }
}

fn finish(command: &mut Command, limit: Duration) -> Result<ExitStatus> {
    let mut child = command.spawn().with_context(|| format!("cannot start `{}`", shown(command)))?;
    match wait(&mut child, limit)? {
        Some(status) => Ok(status),
        None => {
            end_with_descendants(&mut child);
            bail!("`{}` took more than {} s and was stopped", shown(command), limit.as_secs())
        }
    }
}

fn wait(child: &mut Child, limit: Duration) -> Result<Option<ExitStatus>> {
    let start = Instant::now();
    loop {
        if let Some(status) = child.try_wait()? {
            return Ok(Some(status));
        }
        if start.elapsed() > limit {
            return Ok(None);
        }
        sleep(LOOK);
    }
}

fn check(command: &Command, status: ExitStatus) -> Result<()> {
    if status.success() { Ok(()) } else { bail!("`{}` failed ({status})", shown(command)) }
}

/// The command as one would type it.
pub fn shown(command: &Command) -> String {
    let words = std::iter::once(command.get_program()).chain(command.get_args());
    words.map(|word| word.to_string_lossy()).collect::<Vec<_>>().join(" ")
}

/// The end of a log.
pub fn end_of_file(log: &Path) -> String {
    end_of(&fs::read_to_string(log).unwrap_or_default())
}

fn end_of(text: &str) -> String {
    let lines: Vec<_> = text.lines().collect();
    lines.iter().skip(lines.len().saturating_sub(LAST_LINES)).map(|line| format!("  | {line}\n")).collect()
}

/// A child alone is not enough: `cargo test` stopped leaves its test, that leaves its
/// browser. A process group would catch them but would also keep Ctrl-C from them.
fn end_with_descendants(child: &mut Child) {
    let mut doomed = vec![child.id()];
    let parents = parents();
    let mut next = 0;
    while let Some(&parent) = doomed.get(next) {
        doomed.extend(parents.iter().filter(|(_, of)| *of == parent).map(|(id, _)| *id));
        next += 1;
    }
    for id in doomed {
        end(id);
    }
    let _ = child.wait();
}

fn end(id: u32) {
    let id = i32::try_from(id).ok().and_then(rustix::process::Pid::from_raw);
    if let Some(id) = id {
        let _ = rustix::process::kill_process(id, rustix::process::Signal::KILL);
    }
}

/// Every process with its parent; none where there is no `/proc`.
fn parents() -> Vec<(u32, u32)> {
    let Ok(entries) = fs::read_dir("/proc") else {
        return Vec::new();
    };
    let ids = entries.flatten().filter_map(|entry| entry.file_name().to_str()?.parse().ok());
    ids.filter_map(|id: u32| {
        let stat = fs::read_to_string(format!("/proc/{id}/stat")).ok()?;
        Some((id, parent_in(&stat)?))
    })
    .collect()
}

/// `4711 (name) S 4242 …`: the name may itself hold blanks and brackets.
fn parent_in(stat: &str) -> Option<u32> {
    let (_, after_name) = stat.rsplit_once(") ")?;
    after_name.split(' ').nth(1)?.parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shell(script: &str) -> Command {
        let mut command = Command::new("sh");
        command.args(["-c", script]);
        command
    }

    #[test]
    fn a_failure_names_the_command() {
        let error = aloud(&mut shell("exit 3"), minutes(1)).unwrap_err().to_string();
        assert!(error.contains("sh -c exit 3") && error.contains('3'), "{error}");
    }

    #[test]
    fn more_output_than_a_pipe_holds_does_not_hang() {
        let log = std::env::temp_dir().join(format!("xtask-run-{}.log", std::process::id()));
        let script = "i=0; while [ $i -lt 20000 ]; do echo 0123456789; i=$((i+1)); done";
        quietly(&mut shell(script), minutes(1), &log).unwrap();
        assert_eq!(fs::metadata(&log).unwrap().len(), 20_000 * 11);
        fs::remove_file(log).unwrap();
    }

    #[test]
    fn what_a_watched_command_has_done_is_seen_before_it_ends_and_when_it_is_ended() {
        let log = std::env::temp_dir().join(format!("xtask-watched-{}.log", std::process::id()));
        let mut seen = Vec::new();
        let look = || {
            seen.push(fs::read_to_string(&log)?);
            Ok(())
        };
        let status = watched(&mut shell("echo one; sleep 1.5; echo two; exit 3"), minutes(1), &log, look).unwrap();
        assert_eq!(status.and_then(|status| status.code()), Some(3));
        assert!(seen.len() > 1 && seen[0] == "one\n" && seen.last().unwrap() == "one\ntwo\n", "{seen:?}");

        let status = watched(&mut shell("sleep 60"), Duration::from_millis(200), &log, || Ok(())).unwrap();
        assert!(status.is_none());
        let failed = watched(&mut shell("sleep 60"), minutes(1), &log, || bail!("cannot look")).unwrap_err();
        assert!(failed.to_string().contains("cannot look"));
        fs::remove_file(log).unwrap();
    }

    #[test]
    fn what_takes_too_long_is_ended_with_its_children() {
        let mark = std::env::temp_dir().join(format!("xtask-child-{}", std::process::id()));
        // The grandchild would write its mark after the limit, were it still alive.
        let script = format!("(sleep 1; touch {}) & wait", mark.display());
        let error = aloud(&mut shell(&script), Duration::from_millis(300)).unwrap_err();
        assert!(error.to_string().contains("was stopped"), "{error}");
        sleep(Duration::from_millis(1200));
        assert!(!mark.exists());
    }

    #[test]
    fn a_parent_is_read_past_a_name_with_brackets() {
        assert_eq!(parent_in("7 (a) b) S 4242 7 7 0"), Some(4242));
        assert_eq!(parent_in("nonsense"), None);
    }
}
