//! Ranks every scenario of some files and prints how often the true cause came first, and
//! what one wrong answer does to that:
//! `cargo run --release --example scenarios -- FILE.jsonl ...`. The format is explained in
//! `src/engine/origin/README.md`.
//!
//! Ends with 1 when in a file a true cause comes first in fewer than four of five or is
//! called unlikely, and with 2 when a file cannot be read. Where lines say `"use"`, only
//! those that were held out are judged.

mod flips;
mod scenario;
mod tally;

use duckboard::engine::origin::{Evidence, rank};
use flips::Flips;
use scenario::Scenario;
use std::process::ExitCode;
use tally::Tally;

fn main() -> ExitCode {
    let paths: Vec<String> = std::env::args().skip(1).collect();
    if paths.is_empty() {
        return told("scenarios FILE.jsonl ...");
    }
    let evidence = Evidence::standard();
    let mut is_good = true;
    for path in paths {
        let text = match std::fs::read_to_string(&path) {
            Ok(text) => text,
            Err(error) => return told(&format!("{path}: {error}")),
        };
        let scenarios = match Scenario::all(&text) {
            Ok(scenarios) => scenarios,
            Err(problem) => return told(&format!("{path}, {problem}")),
        };
        println!("{path}");
        is_good &= judge(&evidence, &scenarios);
    }
    if is_good { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

/// Prints all that is to be said of a file's scenarios. Is it good?
fn judge(evidence: &Evidence, scenarios: &[Scenario]) -> bool {
    let (mut all, mut held_out) = (Tally::default(), Tally::default());
    for scenario in scenarios {
        let ranking = rank(evidence, &scenario.scene);
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
    let (out, tuned): (Vec<_>, Vec<_>) = scenarios.iter().partition(|scenario| scenario.is_held_out);
    let flips = Flips::of(evidence, scenarios);
    println!("one wrong answer misleads\n{}\nall\n{flips}", flips.misled.join("\n"));
    println!("of these for choosing weights\n{}", Flips::of(evidence, tuned));
    println!("of these held out\n{}\n", Flips::of(evidence, out));
    judged.is_good()
}

fn told(problem: &str) -> ExitCode {
    eprintln!("{problem}");
    ExitCode::from(2)
}
