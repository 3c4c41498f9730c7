//! The office's desk: the `office` command, and a judge of the file format that is not
//! ours.

use crate::harness::{root, target};
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::OnceLock;

/// What an `office` task prints that goes well.
pub fn office(arguments: &[&str]) -> String {
    let output = Command::new(program()).args(arguments).output().expect("office starts");
    let said = String::from_utf8(output.stderr).expect("text");
    assert!(output.status.success(), "office {arguments:?}: {said}");
    String::from_utf8(output.stdout).expect("text")
}

/// Built on first use, so that it can never be older than the code it is tried with.
fn program() -> &'static Path {
    static PROGRAM: OnceLock<PathBuf> = OnceLock::new();
    PROGRAM.get_or_init(|| {
        let mut build = Command::new(env!("CARGO"));
        build.args(["build", "--quiet", "--package", "duckboard", "--bin", "office", "--target-dir"]).arg(target());
        assert!(build.current_dir(root()).status().expect("cargo starts").success(), "office does not build");
        target().join("debug/office")
    })
}

/// What the published schema has against a job file, as an independent validator tells it.
pub fn against_the_schema(file: &[u8]) -> Vec<String> {
    let schema = std::fs::read_to_string(root().join("public/duckboard-job.schema.json")).expect("the schema");
    let schema: Value = serde_json::from_str(&schema).expect("the schema is JSON");
    let file: Value = serde_json::from_slice(file).expect("the file is JSON");
    let validator = jsonschema::draft202012::new(&schema).expect("the schema is one");
    validator.iter_errors(&file).map(|error| format!("{}: {error}", error.instance_path())).collect()
}
