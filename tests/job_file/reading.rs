//! What is read, and what is refused in which words.

use crate::job_samples::*;
use crate::{faults, file_of, reread, with_field};
use duckboard::engine::entry::EntryId;
use duckboard::engine::photo::Digest;
use duckboard::file::limits::{ENTRIES, FILE_BYTES, LONGEST_ENTRY};
use duckboard::file::{FilePhoto, JobFile, Refusal, read, salvage};

#[test]
fn a_byte_order_mark_is_no_fault() {
    let whole = format!("\u{feff}{}", text(&first_file()));
    assert!(read(whole.as_bytes()).is_ok());
}

#[test]
fn a_file_is_known_by_its_content() {
    for not_ours in ["", "hello", "[]", "{}", r#"{"format":"other","version":"1.0"}"#, "\u{0}", r#"{"entries":[]}"#] {
        assert_eq!(read(not_ours.as_bytes()).unwrap_err(), Refusal::NotAJobFile, "{not_ours:?}");
    }
    assert_eq!(read(b"\xff\xd8\xff\xe0").unwrap_err(), Refusal::NotAJobFile);
}

#[test]
fn a_file_cut_short_says_so_wherever_it_was_cut() {
    let whole = text(&first_file());
    let whole = whole.trim_end();
    // Every place near the start, where each kind of value is cut in each way.
    for cut in (40..9_000).chain((9_000..whole.len()).step_by(97)) {
        assert_eq!(read(&whole.as_bytes()[..cut]).unwrap_err(), Refusal::CutShort, "cut at {cut}");
    }
}

#[test]
fn a_file_cut_inside_a_letter_is_cut_short_too() {
    let whole = with_field(&text(&first_file()), "\"note\": \"é\"");
    let cut = whole.find('é').unwrap() + 1;
    assert_eq!(read(&whole.as_bytes()[..cut]).unwrap_err(), Refusal::CutShort);
}

#[test]
fn damaged_json_says_where() {
    let whole = text(&first_file()).replacen("\"revision\": 3", "\"revision\": 3 3", 1);
    assert_eq!(read(whole.as_bytes()).unwrap_err(), Refusal::NotJson { line: 3, column: 15 });
}

#[test]
fn a_file_that_is_too_long_is_not_even_looked_at() {
    let bytes = vec![b' '; FILE_BYTES + 1];
    assert_eq!(read(&bytes).unwrap_err(), Refusal::TooLong { bytes: FILE_BYTES + 1, most: FILE_BYTES });
}

#[test]
fn too_many_entries_are_refused() {
    let many = vec!["1"; ENTRIES + 1].join(",");
    assert_eq!(faults(&file_of("1.0", &[&many])), ["entries: more than 100000 elements"]);
}

#[test]
fn every_fault_is_told_with_its_path() {
    let good = titled(EntryId { count: 1, device: FIRST_PHONE }, "x").json().to_owned();
    let (bad_text, bad_id) = (good.replace("\"VK\"", "7"), good.replace("\"1.", "\"01."));
    let long = format!("{}{}", " ".repeat(LONGEST_ENTRY), good.replace("\"1.", "\"2."));
    let padded = good.replace("\"act\":", &format!("\"pad\":\"{}\",\"act\":", "x".repeat(LONGEST_ENTRY)));
    let photos = r#""photos": [{"sha256": "00", "type": "image/gif", "at": "2026-10-05T08:00:00Z", "base64": "?"}, 5]"#;
    let whole = with_field(&file_of("1.0", &[&good, &bad_text, &bad_id, "17", &long, &padded]), photos);
    let whole = with_field(&whole.replace("\"revision\":1", "\"revision\":-1"), "\"left_out\": [3]");
    let told = faults(&whole).join("\n");
    for start in [
        "revision: invalid value: integer `-1`",
        "left_out[0]: invalid type: integer `3`",
        "entries[1].stamp.by.initials: invalid type: integer `7`",
        "entries[2].id: ",
        "entries[3]: invalid type: integer `17`",
        "entries[5]: ",
        "photos[0].sha256: not a SHA-256",
        "photos[0].type: unknown variant `image/gif`",
        "photos[0].size: is missing",
        "photos[0].base64: is not base64",
        "photos[1]: invalid type: integer `5`",
    ] {
        assert!(told.lines().any(|line| line.starts_with(start)), "{start} is not among\n{told}");
    }
    assert_eq!(told.lines().count(), 11, "{told}");
}

#[test]
fn what_is_missing_is_told_by_name() {
    let told = faults(r#"{"format":"duckboard-job","version":"1.0"}"#);
    let expected = ["revision", "made", "job", "entries"].map(|name| format!("{name}: is missing"));
    assert_eq!(told, expected);
}

#[test]
fn a_field_that_stands_twice_is_a_fault() {
    let whole = with_field(&file_of("1.0", &[]), r#""x": 1, "\u0078": 1, "revision": 2"#);
    assert_eq!(faults(&whole), ["x: stands twice; once is accepted", "revision: stands twice; once is accepted"]);
}

#[test]
fn a_photo_is_believed_only_if_its_bytes_agree() {
    let whole = text(&first_file());
    let sound = first_photo();
    let digest = sound.sha256.to_string();
    let other = "0".repeat(64);
    assert!(
        faults(&whole.replace(&format!("\"sha256\": \"{digest}\""), &format!("\"sha256\": \"{other}\"")))[0]
            .contains(".sha256: says 000")
    );
    assert!(
        faults(&whole.replacen("\"type\": \"image/jpeg\"", "\"type\": \"image/webp\"", 1))[0]
            .contains("the bytes are image/jpeg")
    );
    let size = format!("\"size\": {}, \"at\"", sound.size);
    assert!(faults(&whole.replacen(&size, "\"size\": 1, \"at\"", 1))[0].contains(".size: says 1, but there are"));
}

#[test]
fn a_picture_of_another_kind_is_no_photo() {
    assert!(FilePhoto::of(&b"<svg onload=alert(1)>"[..], time("2026-10-05T08:00:00Z")).is_err());
    // "<svg>" and its own SHA-256: all agrees but the kind.
    let svg = b"<svg>";
    let item = format!(
        r#""photos": [{{"sha256": "{}", "type": "image/png", "size": 5, "at": "2026-10-05T08:00:00Z", "base64": "PHN2Zz4="}}]"#,
        Digest::of(svg)
    );
    let told = faults(&with_field(&file_of("1.0", &[]), &item));
    assert_eq!(told, ["photos[0].type: the bytes are neither JPEG nor PNG nor WebP"]);
}

#[test]
fn a_photo_without_bytes_is_fine() {
    let file = JobFile { photos: vec![FilePhoto { bytes: None, ..first_photo() }], ..first_file() };
    assert_eq!(reread(&file).photos, file.photos);
}

#[test]
fn one_damaged_photo_does_not_cost_the_readings() {
    let whole = text(&first_file()).replacen("\"type\": \"image/jpeg\"", "\"type\": \"image/webp\"", 1);
    let salvaged = salvage(whole.as_bytes()).unwrap();
    assert_eq!(salvaged.faults.len(), 1);
    assert_eq!(salvaged.file.records.len(), first_file().records.len());
    assert_eq!(salvaged.file.photos.len(), 1);
}
