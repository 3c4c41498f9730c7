//! Ending what a walk has started, and only that: processes are known by the walk's
//! own folder in their command line, and by their parents.

use rustix::process::{Pid, Signal, kill_process};
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

/// SIGKILLs every process that names the folder in its command line, with all their
/// descendants; returns how many there were. This process itself is spared.
pub fn kill_all_of(folder: &Path) -> usize {
    let mut doomed: BTreeSet<i32> = all().into_iter().filter(|id| names(*id, folder)).collect();
    loop {
        let children: Vec<i32> =
            all().into_iter().filter(|id| parent(*id).is_some_and(|of| doomed.contains(&of))).collect();
        let before = doomed.len();
        doomed.extend(children);
        if doomed.len() == before {
            break;
        }
    }
    let own = std::process::id().cast_signed();
    for id in doomed.iter().filter(|id| **id != own) {
        if let Some(id) = Pid::from_raw(*id) {
            let _ = kill_process(id, Signal::KILL);
        }
    }
    doomed.len()
}

/// Is any process left that names the folder and is more than a zombie?
pub fn any_of(folder: &Path) -> bool {
    all().into_iter().any(|id| names(id, folder))
}

fn all() -> Vec<i32> {
    let entries = fs::read_dir("/proc").expect("the walks need Linux's /proc");
    entries.flatten().filter_map(|entry| entry.file_name().to_str()?.parse().ok()).collect()
}

/// A zombie's command line is empty, so it names nothing.
fn names(id: i32, folder: &Path) -> bool {
    let line = fs::read(format!("/proc/{id}/cmdline")).unwrap_or_default();
    let folder = folder.to_string_lossy();
    line.split(|byte| *byte == 0).any(|word| String::from_utf8_lossy(word).contains(&*folder))
}

fn parent(id: i32) -> Option<i32> {
    let stat = fs::read_to_string(format!("/proc/{id}/stat")).ok()?;
    stat.rsplit_once(") ")?.1.split(' ').nth(1)?.parse().ok()
}
