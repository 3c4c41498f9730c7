//! `--watch`: builds again when a source file has changed.

use crate::tools::Optimise;
use crate::{dist, files, paths};
use std::path::{Path, PathBuf};
use std::thread::sleep;
use std::time::{Duration, SystemTime};

/// Between two looks at the files' times.
const PAUSE: Duration = Duration::from_secs(1);

/// What the app is made of.
const SOURCES: [&str; 5] = ["src", "public", "index.html", "Cargo.toml", "Cargo.lock"];

/// Looks and builds for ever. A build that fails says why and waits for a change.
pub fn build_on_change() {
    let mut seen = state();
    loop {
        sleep(PAUSE);
        let now = state();
        if now != seen {
            seen = now;
            println!("changed: building");
            match dist::make(Optimise::IfPossible) {
                Ok(_) => println!("built: reload the page"),
                Err(error) => eprintln!("not built: {error:#}"),
            }
        }
    }
}

/// Every source file with the time of its last change.
fn state() -> Vec<(PathBuf, Option<SystemTime>)> {
    let mut found = Vec::new();
    for source in SOURCES {
        files::walk(&paths::root().join(source), &mut found);
    }
    found.sort();
    found.into_iter().map(|file| (file.clone(), changed(&file))).collect()
}

fn changed(file: &Path) -> Option<SystemTime> {
    file.metadata().and_then(|meta| meta.modified()).ok()
}
