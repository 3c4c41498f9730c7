//! Job files that come from elsewhere: damaged, hostile, or by a later Duckboard.

use crate::carpenter::{JOB, phone_with_a_job};
use crate::samples;
use duckboard::file::read;
use std::fs;

#[tokio::test]
async fn a_damaged_file_is_refused_with_its_faults_and_changes_nothing() {
    let (server, mut phone) = phone_with_a_job().await;
    phone.goto(server.address()).await;
    let before = phone.list_with(JOB).await;
    let picture = fs::read(phone.picture().await).unwrap();
    let sound = samples::sound(&picture);

    let twice = samples::instead(&sound, r#""initials":"#, r#""initials":5,"ink":"#);
    let twice = samples::instead(&twice, r#""sha256": ""#, r#""sha256": "00"#);
    let half = sound.as_bytes().split_at(sound.len() / 2).0;
    let deep = "[".repeat(1_000_000);
    let later = samples::instead(&sound, &samples::current_version(), r#""version": "2.0""#);
    for (name, text, words) in [
        (
            "damaged.json",
            twice.as_bytes(),
            &["The file has 2 faults", "entries[0].stamp.by.initials: ", "photos[0].sha256: "][..],
        ),
        ("cut.json", half, &["The file ends too early", "Send it again."]),
        ("deep.json", deep.as_bytes(), &["This is not a Duckboard job file."]),
        ("page.txt", b"<!doctype html><title>Not found</title>", &["This is not a Duckboard job file."]),
        ("later.json", later.as_bytes(), &["The file is of version 2.0", "Update Duckboard"]),
    ] {
        // On a page that says nothing yet of the file before.
        phone.reload().await;
        phone.lists(&before).await;
        let file = phone.file(name, text);
        phone.open_job_file(&file).await;
        let told = [&["Not opened, and nothing was changed."], words].concat();
        phone.words_in(".refused.faults", &told).await;
        phone.lists(&before).await;
    }
    phone.check_accessible().await;
    phone.screenshot("opening-damaged").await;
    phone.reload().await;
    phone.lists(&before).await;
    phone.finish().await;
}

#[tokio::test]
async fn what_a_later_duckboard_logged_goes_through_untouched() {
    let (_server, mut phone) = phone_with_a_job().await;
    let picture = fs::read(phone.picture().await).unwrap();
    let newer = samples::newer(&picture);
    let known = read(newer.as_bytes()).unwrap();
    let file = phone.file("newer.json", newer.as_bytes());
    phone.go_to("Hand over").await;
    phone.open_job_file(&file).await;
    phone.all_saved(known.records.len()).await;
    phone.go_to("Log").await;
    phone.wait_for("2 entries that this Duckboard cannot read wholly").await;
    phone.screenshot("opening-newer").await;
    // What was opened must be kept, not only held: it goes out again from a new page.
    phone.reload().await;
    phone.wait_until_started().await;

    let sent = fs::read_to_string(phone.hand_over(1).await).unwrap();
    let again = read(sent.as_bytes()).unwrap_or_else(|refusal| panic!("{refusal}"));
    assert_eq!(again.records.len(), known.records.len() + 1, "and the hand-over");
    for record in &known.records {
        assert!(sent.contains(record.json()), "not the same to the byte: {}", record.json());
    }
    for unknown in [samples::unknown_entry().as_str(), r#""weather": {"sky":  "clear"}"#, r#""ward": [ 1,2 ]"#] {
        assert!(sent.contains(unknown), "{unknown} is lost");
    }
    phone.finish().await;
}

#[tokio::test]
async fn a_photo_that_only_a_later_duckboard_understands_goes_along() {
    let (_server, mut phone) = phone_with_a_job().await;
    let picture = fs::read(phone.picture().await).unwrap();
    let newer = samples::photo_of_a_later_kind(&picture);
    let file = phone.file("photo.json", newer.as_bytes());
    phone.go_to("Hand over").await;
    phone.open_job_file(&file).await;
    phone.all_saved(read(newer.as_bytes()).unwrap().records.len()).await;
    let sent = fs::read(phone.hand_over(1).await).unwrap();
    let sent = read(&sent).unwrap_or_else(|refusal| panic!("{refusal}"));
    let photos: Vec<_> = sent.photos.iter().filter_map(|photo| photo.bytes.as_deref()).collect();
    assert_eq!(photos.len(), 1, "the photo is lost");
    assert!(photos[0] == picture, "the photo is another");
    assert!(sent.photos[0].extra.iter().any(|(name, _)| name == "lens"), "what was said of the photo is lost");
    phone.finish().await;
}

/// Nothing of what [`samples::with_markup`] says has become an element.
const NO_MARKUP: &str = "document.querySelector('[onerror], .entry b b') === null";

#[tokio::test]
async fn markup_in_a_file_is_shown_as_what_it_is() {
    let (_server, mut phone) = phone_with_a_job().await;
    let picture = fs::read(phone.picture().await).unwrap();
    let file = phone.file("markup.json", samples::with_markup(&picture).as_bytes());
    phone.go_to("Hand over").await;
    phone.open_job_file(&file).await;
    for place in ["Take", "Answers", "Log", "Hand over"] {
        phone.go_to(place).await;
        phone.wait_for(samples::MARKUP).await;
        phone.at_rest().await;
        phone.wait_until(&format!("no markup is markup on {place}"), NO_MARKUP).await;
    }
    phone.reads("the title", "document.title", "Duckboard").await;
    phone.finish().await;
}
