//! Files of other versions.

use crate::job_samples::*;
use crate::{faults, file_of, reread};
use duckboard::engine::entry::EntryId;
use duckboard::engine::framing::schedule;
use duckboard::engine::job::{Book, Content};
use duckboard::engine::take::Units;
use duckboard::file::{JobFile, Refusal, Version, read};

#[test]
fn a_newer_major_version_is_refused_in_words() {
    let refusal = read(file_of("2.0", &[]).as_bytes()).unwrap_err();
    assert_eq!(refusal, Refusal::Newer { found: Version { major: 2, minor: 0 } });
    assert!(refusal.to_string().contains("Update Duckboard"));
    assert!(matches!(read(file_of("0.9", &[]).as_bytes()), Err(Refusal::Older { .. })));
    assert!(faults(&file_of("one", &[]))[0].starts_with("version: not a version"));
}

#[test]
fn a_newer_minor_version_is_carried_through_again_and_again() {
    // A fact that a later version may know: this one cannot read it.
    let later = titled(EntryId { count: 5, device: SECOND_PHONE }, "x").json().replace("\"title\"", "\"weather\"");
    assert!(faults(&file_of("1.0", &[&later]))[0].starts_with("entries[0].act.record.fact"));
    let once = read(file_of("1.9", &[&later]).as_bytes()).unwrap();
    let twice = read(text(&once).as_bytes()).unwrap();
    assert!(text(&twice).contains(&later));
    assert_eq!(twice.version.to_string(), "1.9");
    // A phone keeps the entry without the version it came in.
    let anew = JobFile::of(&twice.book(), JOB, 1, made());
    assert_eq!(reread(&anew).records[0].json(), later);
}

#[test]
fn an_unknown_kind_needs_no_newer_version() {
    let later = titled(EntryId { count: 5, device: SECOND_PHONE }, "x").json().replace("\"fact\"", "\"fathom\"");
    let file = read(file_of("1.0", &[&later]).as_bytes()).unwrap();
    assert_eq!(file.records[0].content(), &Content::Unknown { kind: "fathom".into() });
    assert_eq!(file.version, Version::CURRENT);
}

#[test]
fn even_a_newer_version_needs_ids() {
    assert!(faults(&file_of("1.9", &[r#"{"act":{"x":1}}"#]))[0].starts_with("entries[0]: missing field `id`"));
}

/// It opens, every entry is known, and goes on letter for letter.
fn opened_as_it_was(version: &str, kept: &str) -> Book {
    let file = read(kept.as_bytes()).unwrap();
    assert!(kept.contains(&format!("\"version\": \"{version}\"")));
    let book = file.book();
    assert!(book.job().faults.is_empty() && book.job().unknown.is_empty());
    let mut lines = kept.lines().filter(|line| line.starts_with("{\"id\""));
    let written = text(&file);
    assert!(lines.all(|line| written.contains(line.trim_end_matches(','))));
    book
}

/// A file of before an entry that was left out said whether anything is decided by it.
#[test]
fn a_file_of_1_6_opens_as_it_was() {
    opened_as_it_was("1.6", include_str!("../fixtures/job_files/1.6.json"));
}

/// A file of before a withdrawal said what it had seen: it takes back all that was said before
/// it.
#[test]
fn a_file_of_1_5_opens_as_it_was() {
    let kept = include_str!("../fixtures/job_files/1.5.json");
    let book = opened_as_it_was("1.5", kept);
    assert!(kept.contains("\"withdraw\"") && !kept.contains("\"seen\""));
    assert!(book.job().conflicts.is_empty() && !book.job().withdrawn.is_empty());
}

/// A file of before soft spots, notches and holes were entries of their own: it opens, says
/// what it said, and goes on letter for letter.
#[test]
fn a_file_of_1_4_opens_as_it_was() {
    let book = opened_as_it_was("1.4", include_str!("../fixtures/job_files/1.4.json"));
    // Joist 3 was soft by particulars; that is still its soft spot.
    let judged = schedule(book.job(), Units::default());
    let third = judged.value().unwrap()[2].clone();
    assert!(third.reasons.iter().any(|reason| reason.words.starts_with("soft 1 1/4")), "{:?}", third.reasons);
}

/// What this version writes, kept to be read by every later one. When kinds or fields are
/// added, the version goes up and a new file is kept beside this one:
/// `KEEP_JOB_FILE=1 cargo test --test job_file as_it_was_kept`.
#[test]
fn a_file_of_this_version_is_written_as_it_was_kept() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/fixtures/job_files/1.7.json");
    let written = text(&first_file());
    if std::env::var_os("KEEP_JOB_FILE").is_some() {
        std::fs::write(path, &written).unwrap();
    }
    let kept = std::fs::read_to_string(path).unwrap();
    assert_eq!(Version::CURRENT.to_string(), "1.7");
    assert!(written == kept, "this build writes another file than the one that is kept");
    assert!(read(kept.as_bytes()).is_ok());
}
