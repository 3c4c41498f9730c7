//! Job files to be opened: the invented sample job, as another phone would send it, and
//! what may have become of it on the way.

use duckboard::engine::entry::{DeviceId, EntryId, JobId};
use duckboard::engine::job::{Book, Record};
use duckboard::engine::sample;
use duckboard::file::{FilePhoto, JobFile, Made, Snapshot, Version, write};

/// The phone that is said to have logged it.
const PHONE: DeviceId = DeviceId::new(7);

/// How a file of this build names its version.
pub fn current_version() -> String {
    format!(r#""version": "{}""#, Version::CURRENT)
}

/// An entry of a kind that no version has yet. It is indented as nobody's computer would.
pub fn unknown_entry() -> String {
    let id = EntryId { count: 900, device: PHONE };
    format!(r#"{{ "id":"{id}",  "mood": "odd", "act":{{"record": {{"smell":{{"strength":3}}}} }} }}"#)
}

/// The sample job with a picture.
pub fn sound(picture: &[u8]) -> String {
    let records: Vec<Record> = sample::entries(PHONE).into_iter().map(|entry| Record::of(entry).unwrap()).collect();
    let at = "2026-10-27T16:40:00-05:00".parse().unwrap();
    let file = JobFile::of(&Book::of(records), JobId::new(0xb), 1, Made::here(at));
    let file = file.with_photos([FilePhoto::of(picture, at).unwrap()]);
    write::parts(&file, &Snapshot::none()).collect()
}

/// The same by a later Duckboard: with an entry of an unknown kind, and unknown fields in
/// the file, in the job and in an entry.
pub fn newer(picture: &[u8]) -> String {
    let text = sound(picture);
    let text = instead(&text, &current_version(), r#""version": "1.9""#);
    let text = instead(&text, r#""job": {"#, r#""job": {"ward": [ 1,2 ], "#);
    let text = instead(&text, r#""left_out""#, "\"weather\": {\"sky\":  \"clear\"},\n\"left_out\"");
    let text = instead(&text, "\"entries\": [\n{", "\"entries\": [\n{\"barometer\" : 1013, ");
    instead(&text, "\n],\n\"photos\"", &format!(",\n{}\n],\n\"photos\"", unknown_entry()))
}

/// The same by somebody who means ill: markup wherever a text is shown.
pub fn with_markup(picture: &[u8]) -> String {
    let text = sound(picture).replace("Laundry and mud room", MARKUP);
    text.replace(r#""initials":"#, r#""initials":"<b>i","was":"#)
}

/// As a title it would load a picture, fail, and run what is in it.
pub const MARKUP: &str = "<img src=x onerror=document.title=1>&amp;</svg>";

/// A photo that only an entry of an unknown kind speaks of, so that this Duckboard cannot
/// know what it is for.
pub fn photo_of_a_later_kind(picture: &[u8]) -> String {
    instead(
        &newer(picture),
        r#""photos": [
{"#,
        r#""photos": [
{"lens" : "wide", "#,
    )
}

/// The text with one thing in place of another, which must be there.
pub fn instead(text: &str, of: &str, that: &str) -> String {
    assert!(text.contains(of), "{of} is not in the file");
    text.replacen(of, that, 1)
}
