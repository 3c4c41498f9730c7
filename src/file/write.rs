//! Writing a job file in parts: the browser makes a blob of them and never holds the
//! whole text at once, nor more than one photo in base64.
//!
//! The same file gives the same bytes. Entries and unknown fields are written exactly
//! as they came.

use super::limits::{ENTRIES, FILE_BYTES, PHOTOS};
use super::model::{ENGINE, FORMAT, JobFile};
use super::photo::{self, FilePhoto};
#[cfg(not(target_arch = "wasm32"))]
use super::snapshot::SnapshotFigure;
use super::snapshot::{NOTE, Snapshot};
use crate::engine::entry::Time;
use serde::Serialize;
use std::fmt::Write as _;

/// The whole file in parts: its head, its entries, each photo, its foot.
pub fn parts<'a>(file: &'a JobFile, figures: &'a Snapshot) -> impl Iterator<Item = String> + 'a {
    let photos = file.photos.iter().enumerate().map(|(nth, photo)| photo_part(photo, nth));
    [head(file), entries(file)].into_iter().chain(photos).chain(std::iter::once_with(move || foot(file, figures)))
}

/// Everything before the entries.
pub fn head(file: &JobFile) -> String {
    let mut head = String::from("{");
    let _ = write!(head, "\"format\": {},\n\"version\": {},\n", json(FORMAT), json(&file.version));
    let _ = write!(head, "\"revision\": {},\n\"made\": {},\n", file.revision, json(&file.made));
    let heading = file.book().job().heading();
    let _ = write!(head, "\"job\": {{\"id\": {}, \"heading\": {}", json(&file.job.id), json(&heading));
    file.job.extra.write(&mut head);
    let _ = write!(head, "}},\n\"left_out\": {},\n", json(&file.left_out));
    head
}

/// The entries, each on its own line, and the beginning of the photos.
pub fn entries(file: &JobFile) -> String {
    let texts: usize = file.records.iter().map(|record| record.json().len() + 2).sum();
    let mut entries = String::with_capacity(texts + 64);
    entries.push_str("\"entries\": [");
    for (nth, record) in file.records.iter().enumerate() {
        entries.push_str(between(nth));
        entries.push_str(record.json());
    }
    entries.push_str("\n],\n\"photos\": [");
    entries
}

/// One photo, the `nth` counted from zero. A phone that keeps photos in its database
/// loads, writes and forgets them one after the other.
pub fn photo_part(photo: &FilePhoto, nth: usize) -> String {
    let mut part = String::from(between(nth));
    let _ = write!(part, "{{\"sha256\": {}, \"type\": {}, ", json(&photo.sha256), json(&photo.media_type));
    let _ = write!(part, "\"size\": {}, \"at\": {}", photo.size, json(&photo.at));
    photo.extra.write(&mut part);
    if let Some(bytes) = &photo.bytes {
        // Base64 needs no escapes.
        let _ = write!(part, ", \"base64\": \"{}\"", photo::encode(bytes));
    }
    part.push('}');
    part
}

/// The end of the photos, the snapshot, and the fields that this build does not know.
pub fn foot(file: &JobFile, figures: &Snapshot) -> String {
    let results = Results { note: NOTE, engine: ENGINE, made_at: file.made.at, figures };
    let mut foot = format!("\n],\n\"results\": {}", json(&results));
    file.extra.write(&mut foot);
    foot.push_str("\n}\n");
    foot
}

/// Why the file would be refused by its own reader, in words. A phone asks before it
/// hands one over.
pub fn too_large(file: &JobFile) -> Option<String> {
    if file.records.len() > ENTRIES {
        return Some(format!("The job has {} entries; a file carries up to {ENTRIES}.", file.records.len()));
    }
    if file.photos.len() > PHOTOS {
        return Some(format!("The job has {} photos; a file carries up to {PHOTOS}.", file.photos.len()));
    }
    let entries: usize = file.records.iter().map(|record| record.json().len()).sum();
    let photos: usize = file.photos.iter().filter_map(|photo| photo.bytes.as_ref()).map(|bytes| bytes.len()).sum();
    let about = photos.div_ceil(3).saturating_mul(4).saturating_add(entries);
    // A tenth is left for what stands around them.
    let most = FILE_BYTES / 10 * 9;
    (about > most).then(|| {
        format!("The file would have {} MB; it may have {} MB. Send it without photos.", about >> 20, most >> 20)
    })
}

/// The snapshot as it stands in the file.
#[derive(Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub(super) struct Results<'a> {
    /// Says that this is a snapshot.
    note: &'a str,
    /// The engine that computed it.
    engine: &'a str,
    /// When.
    #[cfg_attr(not(target_arch = "wasm32"), schemars(with = "String", extend("format" = "date-time")))]
    made_at: Time,
    /// The figures.
    #[cfg_attr(not(target_arch = "wasm32"), schemars(with = "Vec<SnapshotFigure>"))]
    figures: &'a Snapshot,
}

const fn between(nth: usize) -> &'static str {
    if nth == 0 { "\n" } else { ",\n" }
}

/// Text, numbers and structs of them always have a JSON form.
fn json(value: &(impl Serialize + ?Sized)) -> String {
    serde_json::to_string(value).unwrap_or_else(|_| "null".to_owned())
}
