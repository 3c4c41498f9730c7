//! What goes wrong: on the phone, in a hand, in a file. It is said in words, and nothing
//! that was entered is lost.

use crate::phone::{Phone, Screen};
use crate::samples;
use crate::server::Server;
use duckboard::file::read;
use serde_json::json;
use std::fs;

const JOB: &str = "Faulty day";

async fn phone_with_a_job() -> (Server, Phone) {
    let server = Server::start().await;
    let mut phone = Phone::open(Screen::Tall, server.address()).await;
    phone.introduce("QX").await;
    phone.begin_job(JOB).await;
    (server, phone)
}

/// Says how much the phone has room for; none: as much as it really has.
async fn has_room_for(phone: &mut Phone, server: &Server, bytes: Option<u32>) {
    let origin = server.address().trim_end_matches('/');
    let mut quota = json!({ "origin": origin });
    if let Some(bytes) = bytes {
        quota["quotaSize"] = json!(bytes);
    }
    phone.cdp("Storage.overrideQuotaForOrigin", quota).await;
}

/// In a browser just started, since one that has saved keeps for a while what it knew of
/// the room left.
async fn start_with_a_full_phone(phone: &mut Phone, server: &Server) {
    phone.kill().await;
    phone.start_again(server.address()).await;
    phone.open_job(JOB).await;
    has_room_for(phone, server, Some(1)).await;
}

#[tokio::test]
async fn a_photo_that_is_none_is_refused_in_words_and_loses_nothing() {
    let (_server, mut phone) = phone_with_a_job().await;
    phone.take_up("Photo").await;
    let text = phone.file("holiday.jpg", b"Dear diary, it rained again.");
    phone.take_photo(&text).await;
    phone.wait_for("Photo: This file is no picture that the phone can read").await;
    phone.wait_for("A JPEG or PNG will do.").await;
    phone.all_saved(2).await;
    phone.screenshot("faults-no-photo").await;
    // The place is as it was, and so is the key.
    phone.is_asked("Joist 1, lower edge").await;
    let picture = phone.picture().await;
    phone.take_photo(&picture).await;
    phone.all_saved(4).await;
    phone.wait_for_no("no picture").await;
    phone.finish().await;
}

#[tokio::test]
async fn a_full_phone_says_so_until_what_was_entered_is_safe() {
    let (server, mut phone) = phone_with_a_job().await;
    start_with_a_full_phone(&mut phone, &server).await;
    phone.take_up("Tape").await;
    phone.keypad("9 feet save").await;
    phone.wait_for("NOT SAVED").await;
    phone.wait_for("the phone's storage is full").await;
    phone.said_back("Side 1", "9' 0\"").await;
    phone.screenshot("faults-full").await;

    // It stays wherever one goes, and whatever is entered next.
    phone.keypad("8 feet save").await;
    phone.said_back("Side 2", "8' 0\"").await;
    for place in ["Answers", "Log", "Hand over", "Take"] {
        phone.go_to(place).await;
        phone.wait_for("NOT SAVED").await;
    }

    has_room_for(&mut phone, &server, None).await;
    phone.tap("Try again").await;
    phone.wait_for_no("NOT SAVED").await;
    // The job's two entries, the room, two sides.
    phone.all_saved(5).await;
    phone.kill().await;
    phone.start_again(server.address()).await;
    phone.open_job(JOB).await;
    phone.go_to("Log").await;
    phone.wait_for("8' 0\", then right").await;
    phone.wait_for("9' 0\", then right").await;
    let _expected = phone.take_console_errors().await;
    phone.finish().await;
}

#[tokio::test]
async fn a_full_phone_takes_no_photo_until_there_is_room_again() {
    let (server, mut phone) = phone_with_a_job().await;
    phone.take_up("Photo").await;
    phone.all_saved(2).await;
    start_with_a_full_phone(&mut phone, &server).await;
    let picture = phone.picture().await;
    phone.take_photo(&picture).await;
    phone.wait_for("Photo: not saved: the phone's storage is full").await;
    phone.all_saved(2).await;
    has_room_for(&mut phone, &server, None).await;
    phone.take_photo(&picture).await;
    phone.all_saved(4).await;
    let _expected = phone.take_console_errors().await;
    phone.finish().await;
}

#[tokio::test]
async fn a_refused_length_stays_with_its_reason_until_the_next_one_is_typed() {
    let (_server, mut phone) = phone_with_a_job().await;
    phone.take_up("Tape").await;
    phone.type_keys("3,745mm").await;
    phone.press("Enter").await;
    // The field, the value, what is wrong, what would do.
    phone
        .wait_for("Side 1: “3,745mm”: is the comma a decimal comma or a thousands mark? Type 3745 mm or 3.745 mm")
        .await;
    phone.half_typed("3,745mm").await;
    phone.all_saved(2).await;
    phone.screenshot("faults-refused").await;
    phone.type_keys("9").await;
    phone.half_typed("9").await;
    phone.wait_for_no("3,745mm").await;

    // The same when a thumb goes on where the keyboard stopped.
    phone.press("Backspace").await;
    phone.type_keys("3,745mm").await;
    phone.press("Enter").await;
    phone.wait_for("Side 1: “3,745mm”").await;
    phone.keypad("8 feet").await;
    phone.half_typed("8' ").await;
    phone.keypad("save").await;
    phone.said_back("Side 1", "8' 0\"").await;
    phone.all_saved(4).await;
    phone.finish().await;
}

#[tokio::test]
async fn a_damaged_file_is_refused_with_its_faults_and_changes_nothing() {
    let (server, mut phone) = phone_with_a_job().await;
    phone.goto(server.address()).await;
    phone.wait_until_started().await;
    let before = phone.words_of(".job-list").await;
    let picture = fs::read(phone.picture().await).unwrap();
    let sound = samples::sound(&picture);

    let twice = samples::instead(&sound, r#""initials":"#, r#""initials":5,"ink":"#);
    let twice = samples::instead(&twice, r#""sha256": ""#, r#""sha256": "00"#);
    let half = &sound[..sound.len() / 2];
    let deep = "[".repeat(1_000_000);
    let later = samples::instead(&sound, r#""version": "1.0""#, r#""version": "2.0""#);
    for (name, text, words) in [
        (
            "damaged.json",
            twice.as_str(),
            &["The file has 2 faults", "entries[0].stamp.by.initials: ", "photos[0].sha256: "][..],
        ),
        ("cut.json", half, &["The file ends too early", "Send it again."]),
        ("deep.json", &deep, &["This is not a Duckboard job file."]),
        ("page.txt", "<!doctype html><title>Not found</title>", &["This is not a Duckboard job file."]),
        ("later.json", &later, &["The file is of version 2.0", "Update Duckboard"]),
    ] {
        let file = phone.file(name, text.as_bytes());
        phone.open_job_file(&file).await;
        phone.wait_for("Not opened, and nothing was changed.").await;
        for word in words {
            phone.wait_for(word).await;
        }
    }
    phone.screenshot("faults-damaged").await;
    assert_eq!(phone.words_of(".job-list").await, before);
    phone.reload().await;
    phone.wait_until_started().await;
    assert_eq!(phone.words_of(".job-list").await, before);
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
    phone.wait_for("1 entry of a kind that this Duckboard does not know").await;
    phone.screenshot("faults-newer").await;
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
