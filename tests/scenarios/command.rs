//! Ranks every scenario of a file and prints how often the true cause came first:
//! `cargo run --release --example scenarios -- FILE.jsonl`. The format is explained in
//! `src/engine/origin/README.md`.
//!
//! Ends with 1 when a true cause comes first in fewer than four of five or is called
//! unlikely, and with 2 when the file cannot be read. Where lines say `"use"`, only those
//! that were held out are judged.

mod scenario;
mod tally;

use duckboard::engine::origin::{Evidence, rank};
use scenario::Scenario;
use std::process::ExitCode;
use tally::Tally;

fn main() -> ExitCode {
    let Some(path) = std::env::args().nth(1) else { return told("scenarios FILE.jsonl") };
    let text = match std::fs::read_to_string(&path) {
        Ok(text) => text,
        Err(error) => return told(&format!("{path}: {error}")),
    };
    let scenarios = match Scenario::all(&text) {
        Ok(scenarios) => scenarios,
        Err(problem) => return told(&format!("{path}, {problem}")),
    };
    let evidence = Evidence::standard();
    let (mut all, mut held_out) = (Tally::default(), Tally::default());
    for scenario in &scenarios {
        let ranking = rank(&evidence, &scenario.scene);
        println!("{}", tally::line(scenario, &ranking));
        all.count(scenario, &ranking);
        if scenario.is_held_out {
            held_out.count(scenario, &ranking);
        }
    }
    let (judged, of) = if held_out.scenarios > 0 { (&held_out, "held out") } else { (&all, "all") };
    println!(
        "\nall: {all}\n{of}: {judged}\n\nwhat holds (down) and what came first (across), of those {of}:\n{}",
        judged.table()
    );
    if judged.is_good() { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

fn told(problem: &str) -> ExitCode {
    eprintln!("{problem}");
    ExitCode::from(2)
}
