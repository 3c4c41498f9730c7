//! Laws of the documents: what they say is there is there.

use crate::{hold, inside, is_folder, read, root};
use std::collections::BTreeSet;
use std::process::{Command, Stdio};

const DOCUMENTS: [&str; 2] = ["README.md", "DEVELOPERS.md"];

/// The folders whose content the map tells, a line each.
const MAPPED: [&str; 7] = ["src", "src/app", "src/draw", "src/engine", "src/file", "src/office", "src/store"];

#[test]
fn the_map_is_the_tree() {
    let map = read("DEVELOPERS.md");
    let drawn: Vec<String> = map.lines().filter_map(place_on_the_map).collect();
    let distinct: BTreeSet<String> = drawn.iter().cloned().collect();
    assert_eq!(distinct.len(), drawn.len(), "DEVELOPERS.md maps something twice");
    let there: BTreeSet<String> = MAPPED.iter().flat_map(|folder| places_in(folder)).collect();
    let unmapped = there.difference(&distinct).map(|place| format!("not on the map: {place}"));
    let gone = distinct.difference(&there).map(|place| format!("no longer there: {place}"));
    let faults: Vec<_> = unmapped.chain(gone).collect();
    hold("Give every place its one line in the map of DEVELOPERS.md, and no other:", &faults);
}

/// `src/engine/air/` of a line "src/engine/air/   what is there".
fn place_on_the_map(line: &str) -> Option<String> {
    let (place, about) = line.split_once("  ")?;
    (place.starts_with("src/") && !about.trim().is_empty()).then(|| place.to_owned())
}

/// A folder's files and folders. Its `mod.rs` is the folder itself, and a folder beside
/// a file of its name is that file's.
fn places_in(folder: &str) -> Vec<String> {
    let all = inside(folder);
    let counts = |path: &&String| !path.ends_with("/mod.rs") && !all.contains(&format!("{path}.rs"));
    let place = |path: &String| if is_folder(path) { format!("{path}/") } else { path.clone() };
    all.iter().filter(counts).map(place).collect()
}

#[test]
fn every_path_that_a_document_names_is_there() {
    let mut faults = Vec::new();
    for document in DOCUMENTS {
        let text = read(document);
        let quoted = text.split('`').skip(1).step_by(2);
        let paths = quoted.filter(|quoted| is_path(quoted)).filter(|path| !root().join(path).exists());
        faults.extend(paths.map(|path| format!("{document}: {path}")));
    }
    hold("Correct the path, or the tree:", &faults);
}

fn is_path(quoted: &str) -> bool {
    let begins = ["src/", "tests/", "public/", "xtask/"].iter().any(|start| quoted.starts_with(start));
    begins && !quoted.contains([' ', '*', '…', '<'])
}

#[test]
fn every_command_that_a_document_gives_exists() {
    let tasks = read("xtask/src/args.rs");
    let mut faults = Vec::new();
    for document in DOCUMENTS {
        let text = read(document);
        let missing =
            words_after(&text, "cargo xtask ").into_iter().filter(|task| !tasks.contains(&format!("\n  {task} ")));
        faults.extend(missing.map(|task| format!("{document}: cargo xtask {task}")));
        let missing = words_after(&text, "cargo office ").into_iter().filter(|task| !office_knows(task));
        faults.extend(missing.map(|task| format!("{document}: cargo office {task}")));
    }
    hold("Correct the document, or the command's help:", &faults);
    let readme = words_after(&read("README.md"), "cargo xtask ");
    for task in ["serve", "test"] {
        assert!(readme.iter().any(|word| word == task), "README.md has to give `cargo xtask {task}`");
    }
}

/// The words that follow `command`, options left out.
fn words_after(text: &str, command: &str) -> BTreeSet<String> {
    let rests = text.split(command).skip(1);
    let word = |rest: &str| rest.chars().take_while(char::is_ascii_lowercase).collect::<String>();
    rests.map(word).filter(|word| !word.is_empty()).collect()
}

fn office_knows(task: &str) -> bool {
    let mut office = Command::new(env!("CARGO_BIN_EXE_office"));
    office.args([task, "--help"]).stdout(Stdio::null()).stderr(Stdio::null()).status().unwrap().success()
}
