//! The job file: what goes out comes back, and nothing that comes in does harm.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "tests may fail loudly")]

mod hostile;
#[path = "../job_samples/mod.rs"]
mod job_samples;
mod kept;
mod leaving_out;
mod merging;
mod reading;
mod schema;
mod versions;
mod writing;

use duckboard::file::{Fault, JobFile, Refusal, read};
use job_samples::text;

fn faults(text: &str) -> Vec<String> {
    match read(text.as_bytes()) {
        Err(Refusal::Faults(faults)) => faults.iter().map(Fault::to_string).collect(),
        other => panic!("expected faults, got {other:?}"),
    }
}

fn reread(file: &JobFile) -> JobFile {
    read(text(file).as_bytes()).unwrap()
}

/// The text with a field more at its end.
fn with_field(text: &str, field: &str) -> String {
    let body = text.trim_end().strip_suffix('}').unwrap();
    format!("{body}, {field}}}")
}

/// A file with these entries, written as given.
fn file_of(version: &str, entries: &[&str]) -> String {
    let head = format!(r#"{{"format":"duckboard-job","version":"{version}","revision":1,"#);
    let made = r#""made":{"at":"2026-10-05T08:00:00Z","engine":"x"},"job":{"id":"0000000000000000000000000000000b"},"#;
    format!(r#"{head}{made}"entries":[{}]}}"#, entries.join(","))
}
