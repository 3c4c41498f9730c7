//! The database's name, its object stores, and the keys of their records.

use super::super::keys::sha256_hex;
use super::super::{BlobKey, BlobKind, JobKey, Line, NoteKey, NoteScope, StoreError};
use js_sys::Array;
use wasm_bindgen::JsValue;
use web_sys::{IdbDatabase, IdbKeyRange};

/// The app's database. It never changes: under another name the app would find
/// nothing, and everything saved before would be lost to it.
pub(super) const DATABASE: &str = "duckboard";

/// The database's version. It never changes: a new version cannot be opened while
/// an old tab holds the old one. Records may gain fields instead.
pub(super) const VERSION: u32 = 1;

/// Entry lines, under `[job, id, digest of the JSON text]`: other JSON under the same
/// id gets a place of its own, and the same line falls on its own place.
pub(super) const LINES: &str = "lines";

/// Notes, under `[scope, name]`.
pub(super) const NOTES: &str = "notes";

/// Where pictures are kept, each in a record of its own under its key and apart
/// from the entries, so that a picture that cannot be stored takes no entry along.
pub(super) fn blobs(kind: BlobKind) -> &'static str {
    match kind {
        BlobKind::Photo => "photos",
        BlobKind::Thumbnail => "thumbnails",
    }
}

/// Makes the object stores of a database that is new.
pub(super) fn create(database: &IdbDatabase) -> Result<(), JsValue> {
    let [photos, thumbnails] = BlobKind::ALL.map(blobs);
    for store in [LINES, NOTES, photos, thumbnails] {
        database.create_object_store(store)?;
    }
    Ok(())
}

pub(super) fn line_key(job: &JobKey, line: &Line) -> JsValue {
    compound(&[job.as_str(), &line.id, &sha256_hex(line.json.as_bytes())])
}

pub(super) fn note_key(key: &NoteKey) -> JsValue {
    compound(&[scope_text(&key.scope), &key.name])
}

/// How a scope stands in a note's key; no job is called "phone".
pub(super) fn scope_text(scope: &NoteScope) -> &str {
    match scope {
        NoteScope::Phone => "phone",
        NoteScope::Job(job) => job.as_str(),
    }
}

/// All compound keys whose first part is this text.
pub(super) fn starting_with(first: &str) -> Result<IdbKeyRange, JsValue> {
    IdbKeyRange::bound(&compound(&[first]), &end_of(first))
}

/// All line keys of the jobs after this one, or of all jobs.
pub(super) fn beyond_job(job: Option<&JobKey>) -> Result<IdbKeyRange, JsValue> {
    match job {
        Some(job) => IdbKeyRange::lower_bound(&end_of(job.as_str())),
        None => IdbKeyRange::lower_bound(&compound(&[])),
    }
}

pub(super) fn job_of_line_key(key: &JsValue) -> Result<JobKey, StoreError> {
    let first = Array::from(key).get(0).as_string().unwrap_or_default();
    JobKey::parse(&first).map_err(|error| damaged(LINES, &error))
}

pub(super) fn read_blob_key(key: &JsValue) -> Result<BlobKey, StoreError> {
    let text = key.as_string().unwrap_or_default();
    BlobKey::parse(&text).map_err(|error| damaged("photos or thumbnails", &error))
}

fn compound(parts: &[&str]) -> JsValue {
    let parts = parts.iter().map(|part| JsValue::from_str(part));
    parts.collect::<Array>().into()
}

/// The end of the keys that start with a text: in a key an array sorts after every
/// text, so `[first, []]` follows `[first, anything]`.
fn end_of(first: &str) -> JsValue {
    Array::of2(&JsValue::from_str(first), &Array::new()).into()
}

fn damaged(store: &str, error: &super::super::BadKey) -> StoreError {
    StoreError::Damaged { what: format!("in {store}: {error}") }
}
