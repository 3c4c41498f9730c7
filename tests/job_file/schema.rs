//! The published schema against the types, the writer and the reader.

use crate::file_of;
use crate::job_samples::*;
use duckboard::engine::entry::EntryId;
use duckboard::file::{invitation, read, without_client, without_photos};
use serde_json::{Value, json};

const PATH: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/public/duckboard-job.schema.json");

fn problems(instance: &str) -> Vec<String> {
    let schema: Value = serde_json::from_str(&duckboard::file::schema::text()).unwrap();
    let validator = jsonschema::draft202012::new(&schema).unwrap();
    let instance = serde_json::from_str(instance).unwrap();
    validator.iter_errors(&instance).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

#[test]
fn the_published_schema_is_the_one_of_the_types() {
    let published = std::fs::read_to_string(PATH).unwrap_or_default();
    let hint = duckboard::file::schema::REGENERATE;
    assert!(published == duckboard::file::schema::text(), "the schema has changed; write it anew: {hint}");
}

#[test]
fn the_schema_is_itself_valid() {
    let schema: Value = serde_json::from_str(&duckboard::file::schema::text()).unwrap();
    assert!(jsonschema::meta::is_valid(&schema));
}

#[test]
fn written_files_are_valid() {
    let file = first_file();
    let invited = invitation(&first_book(), JOB, 2, made());
    for file in [without_photos(file.clone()), without_client(file.clone()), invited, file] {
        assert_eq!(problems(&text(&file)), [""; 0]);
    }
}

#[test]
fn every_field_that_is_written_is_described() {
    let schema: Value = serde_json::from_str(&duckboard::file::schema::text()).unwrap();
    let written: Value = serde_json::from_str(&text(&first_file())).unwrap();
    let described = |at: &str| schema.pointer(at).unwrap().as_object().unwrap().keys().cloned().collect::<Vec<_>>();
    let fields = |at: &str| written.pointer(at).unwrap().as_object().unwrap().keys().cloned().collect::<Vec<_>>();
    assert_eq!(fields(""), described("/properties"));
    assert_eq!(fields("/job"), described("/$defs/JobHead/properties"));
    assert_eq!(fields("/photos/0"), described("/$defs/FilePhoto/properties"));
    assert_eq!(fields("/results"), described("/$defs/Results/properties"));
}

#[test]
fn the_schema_is_as_open_as_the_reader_and_no_more() {
    let good = titled(EntryId { count: 1, device: FIRST_PHONE }, "x").json().to_owned();
    let alter = |from: &str, to: &str| {
        let altered = good.replace(from, to);
        assert_ne!(altered, good, "{from} is in the entry");
        let whole = file_of("1.0", &[&altered]);
        (problems(&whole).is_empty(), read(whole.as_bytes()).is_ok())
    };
    // A later kind, a later act, a later field.
    assert_eq!(alter("\"fact\"", "\"fathom\""), (true, true));
    assert_eq!(alter("\"record\"", "\"annotate\""), (true, true));
    assert_eq!(alter("{\"at\"", "{\"later\":1,\"at\""), (true, true));
    // A known kind that is wrong, an id that is none, a text that is too long.
    assert_eq!(alter("\"title\"", "\"weather\""), (false, false));
    assert_eq!(alter("\"id\":\"1.", "\"id\":\"one."), (false, false));
    assert_eq!(alter("\"x\"", &json!("y".repeat(81)).to_string()), (false, false));
    assert_eq!(alter("\"VK\"", "null"), (false, false));
}
