//! Works out every case of a file of worked cases, a line each:
//! `cargo run --release --example worked_cases -- FILE.jsonl`.
//!
//! `ID ok`, or `ID FAIL field got expected tolerance` for each field that comes out
//! otherwise. Ends with 1 when any does, and with 2 when the file cannot be read.

mod case;
mod floor;
mod moisture;

use case::Case;
use std::process::ExitCode;

fn main() -> ExitCode {
    let Some(path) = std::env::args().nth(1) else { return told("worked_cases FILE.jsonl") };
    let text = match std::fs::read_to_string(&path) {
        Ok(text) => text,
        Err(error) => return told(&format!("{path}: {error}")),
    };
    let mut all_hold = true;
    for (number, line) in (1..).zip(text.lines()).filter(|(_, line)| !line.trim().is_empty()) {
        match Case::read(line) {
            Err(problem) => return told(&format!("{path}, line {number}: {problem}")),
            Ok(case) => all_hold &= holds(&case),
        }
    }
    if all_hold { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

/// Works one case out and prints what became of it.
fn holds(case: &Case) -> bool {
    let failures = match moisture::work_out(case).or_else(|| floor::work_out(case)) {
        Some(Ok(got)) => case.failures(&got),
        Some(Err(problem)) => vec![format!("input {problem}")],
        None => vec![format!("kind {} is not known", case.kind)],
    };
    match failures.as_slice() {
        [] => println!("{} ok", case.id),
        some => some.iter().for_each(|failure| println!("{} FAIL {failure}", case.id)),
    }
    failures.is_empty()
}

fn told(problem: &str) -> ExitCode {
    eprintln!("{problem}");
    ExitCode::from(2)
}
