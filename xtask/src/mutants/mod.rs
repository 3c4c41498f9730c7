//! `cargo xtask mutants`: does a test stand on each side of every decision? cargo-mutants
//! changes the engine in one small place, and some test has to fail.
//!
//! Each mutant is judged first by the tests of its concern, what they miss by the unit tests of
//! its own module, and what those miss by the tests of what is concluded from it
//! ([`judge::ROUNDS`]).
//! Every verdict goes at once into `tests/mutants/verdicts.txt`, with the digest of the function
//! that it is about: a run may be stopped at any time, the next one goes on from there, and
//! a function that was changed is judged anew. (Whoever takes a test away, or changes a constant
//! or a function that others go by, judges those anew by taking their verdicts out.) What is
//! committed is judged, in a copy of its own below `target/mutants`.

mod copy;
mod judge;
mod names;
mod report;
mod verdicts;

use crate::args::MutantsOptions;
use crate::{paths, tools};
use anyhow::{Context, Result, bail};
use copy::Copy;
use judge::{Concern, Lane, ROUNDS};
use names::Mutant;
use report::Report;
use sha2::{Digest, Sha256};
use std::path::PathBuf;
use std::sync::Mutex;
use std::thread;
use std::time::{Duration, Instant};
use verdicts::{State, Verdicts};

/// Mutants that are judged together.
struct Piece {
    name: &'static str,
    folders: &'static [&'static str],
    /// So many of them, drawn by lot; all if it does not say.
    sample: Option<usize>,
}

const PIECES: [Piece; 4] = [
    Piece { name: "closing", folders: &["src/engine/closing/"], sample: None },
    Piece { name: "framing", folders: &["src/engine/framing/"], sample: None },
    Piece { name: "moisture", folders: &["src/engine/moisture/"], sample: None },
    Piece {
        name: "sample",
        folders: &[
            "src/engine/extent/",
            "src/engine/sheets/layout/",
            "src/engine/ground/",
            "src/engine/survey/adjust/",
            "src/engine/job/",
            "src/file/",
            "src/store/",
        ],
        sample: Some(300),
    },
];

/// What no native test can judge: code for the browser, and the contract, which is a test.
const NOT_JUDGED: [&str; 3] = ["src/store/contract/**", "src/store/indexed_db/**", "**/tests.rs"];

/// Which sample is drawn.
const SEED: &str = "duckboard 1";

/// Each folder and the tests in `tests/` that hold its concern.
const CONCERNS: [Concern; 10] = [
    Concern { folder: "src/engine/closing/", tests: &["closing"], conclusion: &[] },
    Concern { folder: "src/engine/framing/", tests: &["framing", "under"], conclusion: &["closing"] },
    Concern { folder: "src/engine/moisture/", tests: &["moisture", "worked"], conclusion: &[] },
    Concern { folder: "src/engine/extent/", tests: &["extent", "water", "calibrated"], conclusion: &[] },
    Concern { folder: "src/engine/sheets/layout/", tests: &["layout", "sheets"], conclusion: &[] },
    Concern { folder: "src/engine/ground/", tests: &["under"], conclusion: &[] },
    Concern { folder: "src/engine/survey/adjust/", tests: &["adjust"], conclusion: &[] },
    Concern { folder: "src/engine/job/", tests: &["log_laws", "job_file"], conclusion: &[] },
    Concern { folder: "src/file/", tests: &["job_file"], conclusion: &[] },
    Concern { folder: "src/store/", tests: &[], conclusion: &[] },
];

/// Judges mutants until the time is over or all are judged, then writes the report.
pub fn mutants(options: &MutantsOptions) -> Result<()> {
    let pieces = chosen(options.piece.as_deref())?;
    let tool = tools::cargo_mutants()?;
    let copies = (1..=options.jobs).map(Copy::make).collect::<Result<Vec<_>>>()?;
    let first = copies.first().context("at least one job is needed")?;
    let verdicts = Mutex::new(Verdicts::read(&folder().join("verdicts.txt"))?);
    let all = PIECES.iter().map(|piece| drawn(piece, &tool, first)).collect::<Result<Vec<_>>>()?;
    if !options.only_report {
        let is_chosen = |piece: &Piece| pieces.iter().any(|chosen| chosen.name == piece.name);
        let chosen = PIECES.iter().zip(&all).filter(|(piece, _)| is_chosen(piece)).flat_map(|(_, mutants)| mutants);
        let wanted = |mutant: &&Mutant| options.only.as_ref().is_none_or(|part| mutant.name().contains(part));
        let wanted: Vec<&Mutant> = chosen.filter(wanted).collect();
        if options.again {
            lock(&verdicts)?.forget_the_missed(&wanted)?;
        }
        judge_all(&wanted, &tool, &copies, &verdicts, options.time)?;
    }
    let verdicts = verdicts.into_inner().map_err(|_| anyhow::anyhow!("a job has panicked"))?;
    let named: Vec<_> = PIECES.iter().map(|piece| piece.name).zip(&all).collect();
    let report = Report::of(&named, &verdicts, &report::reasons(&folder().join("reasons.txt"))?, first)?;
    std::fs::write(folder().join("report.txt"), &report.text)?;
    print!("{}", report.text);
    if options.only_report { report.check() } else { Ok(()) }
}

/// Every round over what the rounds before have missed.
fn judge_all(
    wanted: &[&Mutant],
    tool: &std::path::Path,
    copies: &[Copy],
    verdicts: &Mutex<Verdicts>,
    time: Option<Duration>,
) -> Result<()> {
    let start = Instant::now();
    // Without a limit: longer than any run.
    let end = start + time.unwrap_or(Duration::from_secs(30 * 24 * 3600));
    let before = lock(verdicts)?.settled(wanted);
    for (at, round) in ROUNDS.iter().enumerate() {
        for concern in &CONCERNS {
            let state = State::missed_before(at);
            let open: Vec<&Mutant> = {
                let verdicts = lock(verdicts)?;
                let is_open = |mutant: &&Mutant| concern.holds(mutant) && verdicts.state(mutant) == state;
                wanted.iter().copied().filter(is_open).collect()
            };
            if open.is_empty() {
                continue;
            }
            println!("   {}: {} mutants, {}", round.name, open.len(), concern.folder);
            thread::scope(|scope| {
                let lanes = copies.iter().enumerate().map(|(number, copy)| {
                    let share = open.iter().copied().skip(number).step_by(copies.len()).collect();
                    let lane = Lane { tool, copy, verdicts, round, concern, end };
                    scope.spawn(move || lane.judge(share))
                });
                let lanes: Vec<_> = lanes.collect();
                lanes.into_iter().try_for_each(|lane| lane.join().unwrap_or_else(|_| bail!("a job has panicked")))
            })?;
            if Instant::now() >= end {
                break;
            }
        }
    }
    let judged = lock(verdicts)?.settled(wanted) - before;
    let seconds = start.elapsed().as_secs_f64();
    println!("   {judged} mutants judged in {seconds:.0} s, {:.1} s each", seconds / judged.max(1) as f64);
    Ok(())
}

fn lock(verdicts: &Mutex<Verdicts>) -> Result<std::sync::MutexGuard<'_, Verdicts>> {
    verdicts.lock().map_err(|_| anyhow::anyhow!("a job has panicked"))
}

fn chosen(name: Option<&str>) -> Result<Vec<&'static Piece>> {
    let pieces: Vec<_> = PIECES.iter().filter(|piece| name.is_none_or(|name| name == piece.name)).collect();
    if pieces.is_empty() {
        let names: Vec<_> = PIECES.iter().map(|piece| piece.name).collect();
        bail!("there is no piece `{}`: {}", name.unwrap_or_default(), names.join(", "));
    }
    Ok(pieces)
}

/// A piece's mutants, or those of its sample.
fn drawn(piece: &Piece, tool: &std::path::Path, copy: &Copy) -> Result<Vec<Mutant>> {
    let globs: Vec<_> = piece.folders.iter().map(|folder| format!("{folder}**")).collect();
    let mutants = judge::list(tool, copy, globs.iter().map(String::as_str), &NOT_JUDGED)?;
    Ok(match piece.sample {
        Some(most) => by_lot(mutants, most),
        None => mutants,
    })
}

/// By a digest of what is changed and not of the line it stands on, so that what is written
/// above a mutant draws no other.
fn by_lot(mut mutants: Vec<Mutant>, most: usize) -> Vec<Mutant> {
    mutants.sort_by_cached_key(|mutant| Sha256::digest(format!("{SEED} {} {}", mutant.file, mutant.what)));
    mutants.truncate(most);
    mutants
}

/// What is committed: verdicts, reasons, report.
fn folder() -> PathBuf {
    paths::root().join("tests/mutants")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::files;
    use names::tests::mutant;
    use std::collections::BTreeSet;

    /// The tests in `tests/`, by their names.
    fn engine_tests() -> Result<BTreeSet<String>> {
        let mut found = Vec::new();
        files::walk(&paths::root().join("tests"), &mut found);
        let tests = paths::root().join("tests");
        let own = found.iter().filter_map(|file| file.strip_prefix(&tests).ok()?.to_str());
        let name = |path: &str| {
            let name = path.strip_suffix("/main.rs").or_else(|| path.strip_suffix(".rs"))?;
            (!name.contains('/')).then(|| name.to_owned())
        };
        Ok(own.filter_map(name).collect())
    }

    #[test]
    fn every_concern_names_tests_that_are_there() {
        let there = engine_tests().unwrap();
        assert!(there.contains("job_file") && there.contains("moisture"), "{there:?}");
        for Concern { folder, tests, conclusion } in CONCERNS {
            assert!(paths::root().join(folder).is_dir(), "{folder}");
            assert!(tests.iter().chain(conclusion).all(|name| there.contains(*name)), "{folder}: {tests:?}");
        }
    }

    #[test]
    fn every_folder_of_a_piece_has_its_concern() {
        for folder in PIECES.iter().flat_map(|piece| piece.folders) {
            assert_eq!(CONCERNS.iter().filter(|concern| folder.starts_with(concern.folder)).count(), 1, "{folder}");
        }
    }

    #[test]
    fn a_sample_stays_the_same_when_lines_move_and_is_no_longer_than_it_may_be() {
        let mutants = |line: usize| -> Vec<Mutant> {
            let name = |at| format!("src/a.rs:{}:9: replace > with >= in f{at}", line + at);
            (0..40).map(|at| mutant(&name(at))).collect()
        };
        let whats = |mutants: Vec<Mutant>| -> Vec<_> { mutants.into_iter().map(|mutant| mutant.what).collect() };
        let drawn = whats(by_lot(mutants(1), 12));
        assert_eq!(drawn, whats(by_lot(mutants(700), 12)));
        assert_eq!(drawn.len(), 12);
        assert_ne!(drawn, whats(mutants(1))[..12]);
        assert_eq!(by_lot(mutants(1), 99).len(), 40);
    }

    #[test]
    fn an_unknown_piece_is_refused_with_those_there_are() {
        let error = chosen(Some("roof")).err().unwrap().to_string();
        assert!(error.contains("`roof`") && error.contains("closing, framing, moisture, sample"), "{error}");
    }
}
