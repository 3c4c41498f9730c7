//! What goes wrong on a phone and in a hand. It is said in words, and nothing that was
//! entered is lost.

use crate::carpenter::{JOB, origin, phone_with_a_job};
use serde_json::json;

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
    phone.wait_for_without("Joist 1, lower edge", "no picture").await;
    phone.finish().await;
}

#[tokio::test]
async fn a_full_phone_says_so_until_what_was_entered_is_safe() {
    let (server, mut phone) = phone_with_a_job().await;
    phone.start_full(&server).await;
    phone.take_up("Tape").await;
    phone.keypad("9 feet save").await;
    phone.wait_for("NOT SAVED").await;
    phone.wait_for("the phone's storage is full").await;
    phone.said_back("Side 1", "9' 0\"").await;
    phone.check_accessible().await;
    phone.screenshot("faults-full").await;

    // It stays wherever one goes, and whatever is entered next.
    phone.keypad("8 feet save").await;
    phone.said_back("Side 2", "8' 0\"").await;
    for place in ["Answers", "Log", "Hand over", "Take"] {
        phone.go_to(place).await;
        phone.wait_for("NOT SAVED").await;
    }

    phone.has_room_again(&server).await;
    phone.tap("Try again").await;
    // The job's two entries, the room, two sides.
    phone.wait_for_without("5 saved", "NOT SAVED").await;
    phone.kill().await;
    phone.start_again(server.address()).await;
    phone.open_job(JOB).await;
    phone.go_to("Log").await;
    phone.wait_for("8' 0\", then right").await;
    phone.wait_for("9' 0\", then right").await;
    phone.finish_despite_errors().await;
}

#[tokio::test]
async fn a_full_phone_takes_no_photo_until_there_is_room_again() {
    let (server, mut phone) = phone_with_a_job().await;
    phone.take_up("Photo").await;
    phone.all_saved(2).await;
    phone.start_full(&server).await;
    let picture = phone.picture().await;
    phone.take_photo(&picture).await;
    phone.wait_for("Photo: not saved: the phone's storage is full").await;
    phone.all_saved(2).await;
    phone.has_room_again(&server).await;
    phone.take_photo(&picture).await;
    phone.all_saved(4).await;
    phone.finish_despite_errors().await;
}

#[tokio::test]
async fn a_refused_length_stays_with_its_reason_until_the_next_one_is_typed() {
    let (_server, mut phone) = phone_with_a_job().await;
    phone.take_up("Tape").await;
    phone.type_value("3,745mm").await;
    phone.press("Enter").await;
    // The field, the value, what is wrong, what would do.
    phone
        .wait_for("Side 1: “3,745mm”: is the comma a decimal comma or a thousands mark? Type 3745 mm or 3.745 mm")
        .await;
    phone.half_typed("3,745mm").await;
    phone.all_saved(2).await;
    phone.screenshot("faults-refused").await;
    phone.type_value("9").await;
    phone.half_typed("9").await;
    phone.wait_for_without("Side 1", "3,745mm").await;

    // The same when a thumb goes on where the keyboard stopped.
    phone.press("Backspace").await;
    phone.half_typed("").await;
    phone.type_value("3,745mm").await;
    phone.press("Enter").await;
    phone.wait_for("Side 1: “3,745mm”").await;
    phone.keypad("8 feet").await;
    phone.half_typed("8' ").await;
    phone.keypad("save").await;
    phone.said_back("Side 1", "8' 0\"").await;
    phone.all_saved(4).await;
    phone.finish().await;
}

/// The one promise: what was shown as saved is there, however soon the phone dies.
#[tokio::test]
async fn what_is_shown_as_saved_outlives_sigkill_in_that_moment() {
    let (server, mut phone) = phone_with_a_job().await;
    phone.take_up("Meter").await;
    for (reading, saved) in [("18", 4), ("19", 6), ("21", 8)] {
        phone.type_value(reading).await;
        phone.press("Enter").await;
        phone.all_saved(saved).await;
        phone.kill().await;
        phone.start_again(server.address()).await;
        phone.open_job(JOB).await;
        phone.all_saved(saved).await;
    }
    phone.go_to("Log").await;
    for line in ["18 % at Joist 1", "19 % at Joist 2", "21 % at Joist 3"] {
        phone.wait_for(line).await;
    }
    phone.finish().await;
}

/// What is shown as saved after the storage was emptied must be there again, and not only
/// what came after.
#[tokio::test]
async fn a_storage_that_was_emptied_under_the_app_is_filled_again() {
    let (server, mut phone) = phone_with_a_job().await;
    phone.take_up("Tape").await;
    phone.keypad("9 feet save").await;
    phone.all_saved(4).await;
    let emptied = json!({ "origin": origin(&server), "storageTypes": "indexeddb" });
    phone.command("Storage.clearDataForOrigin", emptied).await;
    phone.keypad("8 feet save").await;
    phone.wait_for("The browser emptied its storage while Duckboard was open").await;
    phone.check_accessible().await;
    phone.screenshot("faults-emptied").await;
    phone.wait_for_without("5 saved", "NOT SAVED").await;
    phone.tap("understood").await;
    phone.kill().await;
    phone.start_again(server.address()).await;
    phone.open_job(JOB).await;
    phone.all_saved(5).await;
    phone.go_to("Log").await;
    phone.wait_for("9' 0\", then right").await;
    phone.wait_for("8' 0\", then right").await;
    phone.finish_despite_errors().await;
}

#[tokio::test]
async fn a_second_tab_waits_until_the_first_is_closed() {
    let (server, mut phone) = phone_with_a_job().await;
    phone.open_tab(server.address()).await;
    phone.wait_for("Duckboard is open in another tab").await;
    phone.tap("Go on here").await;
    phone.wait_for("Duckboard is open in another tab").await;
    phone.tab(0).await;
    phone.close_tab().await;
    phone.tab(0).await;
    phone.tap("Go on here").await;
    phone.open_job(JOB).await;
    phone.all_saved(2).await;
    phone.finish().await;
}
