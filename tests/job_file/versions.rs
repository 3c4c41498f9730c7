//! Files of other versions.

use crate::job_samples::*;
use crate::{faults, file_of, reread};
use duckboard::engine::entry::EntryId;
use duckboard::engine::job::Content;
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
