//! What is written, and that it reads back the same.

use crate::job_samples::*;
use crate::{file_of, reread, with_field};
use duckboard::engine::entry::EntryId;
use duckboard::engine::job::{Act, Observation};
use duckboard::file::limits::ENTRIES;
use duckboard::file::{JobFile, Snapshot, read, write};
use std::collections::BTreeSet;

#[test]
fn what_is_written_reads_back_the_same() {
    let file = first_file();
    let back = reread(&file);
    assert_eq!(text(&back), text(&file));
    assert_eq!(back.book().job(), first_book().job());
    assert_eq!(back.photos, file.photos);
}

#[test]
fn every_photo_is_a_part_of_its_own() {
    let parts: Vec<String> = write::parts(&first_file(), &Snapshot::none()).collect();
    assert_eq!(parts.len(), 2 + 2 + 1);
    assert!(parts[2].contains("base64") && parts[3].contains("base64"));
    assert!(!parts[0].contains("base64") && !parts[1].contains("base64"));
}

#[test]
fn entries_and_unknown_fields_keep_their_bytes() {
    let odd = titled(EntryId { count: 900, device: SECOND_PHONE }, "x")
        .json()
        .replace(r#""act":"#, "\"later\" : [1.50,\n\t2e0], \"act\" :  ");
    let field = "\"\\u0078_site\" :  {\"a\": 1.00,\n \"b\":[ ]}";
    let whole = with_field(&file_of("1.0", &[&odd]), field);
    let back = text(&read(whole.as_bytes()).unwrap());
    assert!(back.contains(&odd), "{back}");
    assert!(back.contains("\"\\u0078_site\": {\"a\": 1.00,\n \"b\":[ ]}"), "{back}");
}

#[test]
fn unknown_fields_of_a_photo_and_of_the_job_survive() {
    let whole = text(&first_file()).replacen(r#"{"sha256""#, r#"{"lens": {"f": 1.80}, "sha256""#, 1).replacen(
        r#""heading""#,
        r#""colour": "ochre", "heading""#,
        1,
    );
    let back = text(&read(whole.as_bytes()).unwrap());
    assert!(back.contains(r#""lens": {"f": 1.80}"#));
    assert!(back.contains(r#""colour": "ochre""#));
}

#[test]
fn a_snapshot_is_labelled_and_not_read_back() {
    let whole = text(&first_file());
    assert!(whole.contains("A snapshot of what the engine computed"));
    let forged = whole.replace(" sq ft\"", "1 sq ft\"");
    assert_ne!(forged, whole);
    assert_eq!(text(&read(forged.as_bytes()).unwrap()), whole);
}

#[test]
fn a_file_too_large_for_its_reader_is_not_handed_over() {
    assert_eq!(write::too_large(&first_file()), None);
    let record = titled(EntryId { count: 1, device: FIRST_PHONE }, "x");
    let file = JobFile { records: vec![record; ENTRIES + 1], ..first_file() };
    assert!(write::too_large(&file).unwrap().contains("100001 entries"));
}

#[test]
fn every_kind_of_entry_goes_out_and_comes_back() {
    let said = first_book()
        .log()
        .records()
        .filter_map(|record| match &record.entry()?.act {
            Act::Record(observation) => Some(observation.label()),
            Act::Correct { .. } | Act::Withdraw { .. } => None,
        })
        .collect::<BTreeSet<_>>();
    assert_eq!(said.len(), Observation::NAMES.len(), "the samples lack a kind: add it there; they have {said:?}");
    // That they come back is `what_is_written_reads_back_the_same`.
}
