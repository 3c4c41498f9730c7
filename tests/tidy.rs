//! Laws of the source tree that neither the compiler nor a lint can hold, read from
//! its files. Whatever fails here says what to do.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "tests may fail loudly")]

#[path = "tidy/code.rs"]
mod code;
#[path = "tidy/documents.rs"]
mod documents;

use std::fs;
use std::path::{Path, PathBuf};

/// Where the repository is.
fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// A file of the repository, by its path from the root.
fn read(path: &str) -> String {
    fs::read_to_string(root().join(path)).unwrap_or_else(|error| panic!("{path}: {error}"))
}

/// What a folder holds, by paths from the root, sorted.
fn inside(folder: &str) -> Vec<String> {
    let entries = fs::read_dir(root().join(folder)).unwrap_or_else(|error| panic!("{folder}: {error}"));
    let mut paths: Vec<PathBuf> = entries.map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths.iter().map(|path| path.strip_prefix(root()).unwrap().to_str().unwrap().to_owned()).collect()
}

fn is_folder(path: &str) -> bool {
    root().join(path).is_dir()
}

/// Every file below a folder whose name has one of these endings, with its text.
fn files(folder: &str, endings: &[&str]) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for path in inside(folder) {
        if is_folder(&path) {
            found.extend(files(&path, endings));
        } else if endings.iter().any(|ending| path.ends_with(ending)) {
            let text = read(&path);
            found.push((path, text));
        }
    }
    found
}

/// Fails with what is to be done and where.
fn hold(to_do: &str, faults: &[String]) {
    assert!(faults.is_empty(), "{to_do}\n  {}\n", faults.join("\n  "));
}
