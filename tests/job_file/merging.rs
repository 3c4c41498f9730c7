//! The laws of merging.

use crate::job_samples::*;
use crate::{file_of, reread, with_field};
use duckboard::engine::entry::{DeviceId, EntryId, JobId};
use duckboard::engine::job::Record;
use duckboard::file::{FilePhoto, JobFile, LeftOut, merge, read};
use proptest::prelude::*;

/// Entries that agree, clash, and differ only in layout; photos with and without
/// bytes; fields that agree and disagree.
fn any_file() -> impl Strategy<Value = JobFile> {
    let entry = (1_u32..6, 0_u8..2, "[ab]", any::<bool>()).prop_map(|(count, device, title, spaced)| {
        let id = EntryId { count, device: DeviceId::new(u128::from(device)) };
        let json = titled(id, &title).json().to_owned();
        if spaced { json.replace("{\"id\":", "{ \"id\" : ") } else { json }
    });
    let photo = (0_u8..3, any::<bool>(), 0_u8..2).prop_map(|(which, here, minute)| {
        let mut photo = photo(&[0xff, 0xd8, 0xff, which]);
        photo.at = time(&format!("2026-10-05T08:0{minute}:00Z"));
        if here { photo } else { FilePhoto { bytes: None, ..photo } }
    });
    let extra = prop::collection::btree_map("[xyz]", 0_u8..3, 0..3);
    let lists = (prop::collection::vec(entry, 0..6), prop::collection::vec(photo, 0..4));
    (lists, extra, 0_u32..3, 0_u8..3, 0_u8..3).prop_map(|((entries, photos), extra, revision, hour, marks)| {
        let entries: Vec<&str> = entries.iter().map(String::as_str).collect();
        let mut whole = file_of("1.0", &entries);
        for (name, value) in extra {
            whole = with_field(&whole, &format!("\"{name}\": {value}.0"));
        }
        let mut file = read(whole.as_bytes()).unwrap().with_photos(photos);
        file.revision = revision;
        file.made.at = time(&format!("2026-10-05T0{hour}:00:00+0{hour}:00"));
        file.left_out.extend([LeftOut::Photos, LeftOut::Client].into_iter().take(usize::from(marks)));
        file
    })
}

fn merged(one: &JobFile, other: &JobFile) -> JobFile {
    merge(one.clone(), other.clone()).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn merging_with_itself_changes_nothing(file in any_file()) {
        prop_assert_eq!(text(&merged(&file, &file)), text(&file));
    }

    #[test]
    fn it_does_not_matter_which_comes_first(one in any_file(), other in any_file()) {
        prop_assert_eq!(text(&merged(&one, &other)), text(&merged(&other, &one)));
    }

    #[test]
    fn it_does_not_matter_which_two_are_merged_first(a in any_file(), b in any_file(), c in any_file()) {
        prop_assert_eq!(text(&merged(&merged(&a, &b), &c)), text(&merged(&a, &merged(&b, &c))));
    }

    #[test]
    fn nothing_is_lost(one in any_file(), other in any_file()) {
        let both = merged(&one, &other);
        let canonical = |file: &JobFile| file.records.iter().map(Record::canonical).collect::<Vec<_>>();
        let kept = canonical(&both);
        for entry in canonical(&one).iter().chain(&canonical(&other)) {
            prop_assert!(kept.contains(entry));
        }
        for photo in one.photos.iter().chain(&other.photos) {
            let there = both.photo(photo.sha256).unwrap();
            prop_assert!(there.bytes.is_some() || photo.bytes.is_none());
        }
        for (name, _) in one.extra.iter().chain(other.extra.iter()) {
            prop_assert!(both.extra.iter().any(|(kept, _)| kept == name));
        }
    }

    #[test]
    fn any_file_reads_back_the_same(file in any_file()) {
        prop_assert_eq!(text(&reread(&file)), text(&file));
    }
}

#[test]
fn files_of_two_jobs_are_not_merged() {
    let mut other = first_file();
    other.job.id = JobId::new(1);
    let refused = merge(first_file(), other).unwrap_err();
    assert!(refused.to_string().contains("two jobs"));
}
