//! Lays and proves every case of a folder: `layout_cases CASES_DIR OUT_DIR [--seconds S] [--most N]`.
//!
//! Writes `OUT_DIR/ID.json` for each and prints a line a case, then the totals. A case
//! takes no longer than `S` seconds, 5 unless said. Fails if a case is not proven by then, or if
//! all take more than `N` sheets together.

mod format;
mod solution;

use duckboard::engine::sheets::layout::{Layout, Search, Step, check};
use format::CaseFile;
use solution::SolutionFile;
use std::error::Error;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use std::{env, fs};

type Result<T> = std::result::Result<T, Box<dyn Error>>;

const USAGE: &str = "usage: layout_cases CASES_DIR OUT_DIR [--seconds S] [--most N]";

struct Asked {
    cases: PathBuf,
    out: PathBuf,
    most: Duration,
    most_sheets: u32,
}

/// One case's outcome.
struct Outcome {
    layout: Layout,
    cut: i64,
    bound: u32,
    first: Duration,
    proof: Option<Duration>,
}

fn main() -> Result<()> {
    let asked = arguments(env::args().skip(1))?;
    fs::create_dir_all(&asked.out)?;
    let mut files: Vec<_> = fs::read_dir(&asked.cases)?.map(|file| Ok(file?.path())).collect::<Result<_>>()?;
    files.retain(|file| file.extension().is_some_and(|ending| ending == "json"));
    files.sort();
    let mut outcomes = Vec::new();
    for file in files {
        outcomes.push(run(&file, &asked).map_err(|error| format!("{}: {error}", file.display()))?);
    }
    print_totals(&outcomes);
    hold(&outcomes, asked.most_sheets)
}

/// Fails with what does not hold.
fn hold(outcomes: &[Outcome], most_sheets: u32) -> Result<()> {
    let open = outcomes.iter().filter(|outcome| outcome.proof.is_none()).count();
    let sheets: u32 = outcomes.iter().map(|outcome| outcome.layout.sheets()).sum();
    let is_past = outcomes.iter().any(|outcome| outcome.bound > outcome.layout.sheets());
    match () {
        () if is_past => Err("a bound is past its layout".into()),
        () if open > 0 => Err(format!("not proven: {open}").into()),
        () if sheets > most_sheets => Err(format!("{sheets} sheets, and {most_sheets} would do").into()),
        () => Ok(()),
    }
}

fn arguments(mut given: impl Iterator<Item = String>) -> Result<Asked> {
    let (mut folders, mut most, mut most_sheets) = (Vec::new(), 5.0, u32::MAX);
    while let Some(argument) = given.next() {
        match argument.as_str() {
            "--seconds" => most = given.next().ok_or(USAGE)?.parse()?,
            "--most" => most_sheets = given.next().ok_or(USAGE)?.parse()?,
            _ => folders.push(PathBuf::from(argument)),
        }
    }
    let Ok([cases, out]) = <[PathBuf; 2]>::try_from(folders) else { return Err(USAGE.into()) };
    Ok(Asked { cases, out, most: Duration::try_from_secs_f64(most)?, most_sheets })
}

fn run(file: &Path, asked: &Asked) -> Result<Outcome> {
    let case: CaseFile = serde_json::from_str(&fs::read_to_string(file)?)?;
    let outcome = lay(&case, asked.most)?;
    let solution = serde_json::to_string(&SolutionFile::of(&case.id, &outcome.layout))?;
    fs::write(asked.out.join(format!("{}.json", case.id)), solution)?;
    println!("{} {}", case.id, outcome.line());
    Ok(outcome)
}

fn lay(case: &CaseFile, most: Duration) -> Result<Outcome> {
    let began = Instant::now();
    let faults = |faults: Vec<_>| faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("; ");
    let mut search = Search::new(case.case().map_err(faults)?);
    let (mut first, mut proof) = (None, None);
    while search.step() != Step::Done && began.elapsed() < most {
        if first.is_none() && search.best().is_some() {
            first = Some(began.elapsed());
        }
        if proof.is_none() && search.is_proven() {
            proof = Some(began.elapsed());
        }
    }
    let proof = proof.or_else(|| search.is_proven().then(|| began.elapsed()));
    let layout = search.best().ok_or("no layout keeps the rules")?.clone();
    let broken = |broken: Vec<_>| broken.iter().map(ToString::to_string).collect::<Vec<_>>().join("; ");
    let cut = check(search.case(), &layout).map_err(broken)?;
    Ok(Outcome { cut, bound: search.bound(), first: first.unwrap_or_else(|| began.elapsed()), proof, layout })
}

impl Outcome {
    fn line(&self) -> String {
        let proof = self.proof.map_or("open".to_owned(), |proof| milliseconds(proof).to_string());
        format!(
            "sheets {} pieces {} cut {} bound {} first_ms {} proof_ms {proof}",
            self.layout.sheets(),
            self.layout.pieces.len(),
            self.cut,
            self.bound,
            milliseconds(self.first),
        )
    }
}

/// Rounded up: nothing takes no time.
fn milliseconds(took: Duration) -> u128 {
    took.as_micros().div_ceil(1000)
}

fn print_totals(outcomes: &[Outcome]) {
    let sheets: u32 = outcomes.iter().map(|outcome| outcome.layout.sheets()).sum();
    let pieces: usize = outcomes.iter().map(|outcome| outcome.layout.pieces.len()).sum();
    let mut proofs: Vec<_> = outcomes.iter().filter_map(|outcome| outcome.proof).collect();
    proofs.sort_unstable();
    let first = outcomes.iter().map(|outcome| outcome.first).max().unwrap_or_default();
    let time = |at: Option<&Duration>| at.map_or("none".to_owned(), |took| milliseconds(*took).to_string());
    println!("cases {} sheets {sheets} pieces {pieces} proven {}", outcomes.len(), proofs.len());
    println!(
        "slowest first_ms {} median proof_ms {} slowest proof_ms {}",
        milliseconds(first),
        time(proofs.get(proofs.len() / 2)),
        time(proofs.last())
    );
    if let Some(peak) = peak_memory() {
        println!("peak memory {peak}");
    }
}

/// What Linux says of this process.
fn peak_memory() -> Option<String> {
    let status = fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    Some(line.trim().to_owned())
}
