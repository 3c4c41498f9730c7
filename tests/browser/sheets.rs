//! Sheets laid on the joists, on the phone and without a host.

use crate::carpenter::sample_without_a_host;
use crate::harness::Phone;

const DRAWN: &str = "document.querySelectorAll('#sheets svg').length > 1";

#[tokio::test]
async fn the_samples_opening_is_laid_and_cut_without_a_host() {
    let mut phone = sample_without_a_host().await;
    phone.open_page("Lay sheets on the joists", "sheets").await;
    phone.wait_for("no layout takes fewer").await;
    phone.wait_for("Invented sample").await;
    phone.wait_for("Blocking").await;
    phone.wait_for("At the saw").await;
    phone.wait_until("plan and cut sheets are drawn", DRAWN).await;
    phone.check_accessible().await;
    phone.screenshot("sheets").await;
    phone.put_on_paper().await;
    phone.wait_for_without("At the saw", "Print").await;
    phone.screenshot("sheets-printed").await;
    phone.finish().await;
}

#[tokio::test]
async fn a_search_that_dies_leaves_the_layout_that_it_had_found() {
    let mut phone = sample_without_a_host().await;
    let keep =
        "window.Worker = class extends Worker { constructor(...of) { super(...of); window.lastWorker = this; } }";
    phone.act("a worker can be reached", keep).await;
    phone.open_page("Lay sheets on the joists", "sheets").await;
    phone.wait_until("plan and cut sheets are drawn", DRAWN).await;
    phone.act("the search dies", "window.lastWorker.onerror()").await;
    phone.wait_for("The search has ended early").await;
    phone.wait_for("At the saw").await;
    phone.wait_until("plan and cut sheets are drawn", DRAWN).await;
    phone.finish().await;
}

/// An invented L out of square, as in `tests/floor/shape.rs`: its fourth side is
/// 5' 11 3/4" and is read 3 1/8 in too long.
#[tokio::test]
async fn a_room_out_of_square_is_measured_corrected_laid_and_cut() {
    let (mut server, mut phone) = crate::carpenter::phone_with_a_job().await;
    walk_round_the_room(&mut phone).await;
    phone.ask_for("What is measured", "Corner to corner").await;
    for (to, keys) in [
        ("3", "1 7 feet 1 0 fractions 3/16 inches"),
        ("4", "1 2 feet 9 fractions 7/16 inches"),
        ("5", "1 7 feet 2 inches"),
    ] {
        phone.ask_for("To which corner", &format!("corner {to}")).await;
        phone.is_asked(&format!("Corner 1 to corner {to}")).await;
        phone.keypad(&format!("{keys} save")).await;
    }
    phone.is_asked("side 4 (by 3").await;
    phone.wait_for("Stop: cut nothing yet.").await;
    phone.screenshot("sheets-wrong-side").await;

    phone.go_to("Answers").await;
    phone.is_answered("Do the measurements agree?", "side 4 (by 3").await;
    phone.wait_for("Stop: cut nothing yet.").await;
    phone.go_to("Log").await;
    phone.open_entry(r#"6' 2 7/8", then right"#).await;
    phone.fill("Length, rightly", "5' 11 3/4\"").await;
    phone.press("Enter").await;
    phone.wait_for("corrected to 5' 11 3/4").await;
    phone.go_to("Answers").await;
    phone.is_answered("Do the measurements agree?", "Yes").await;

    all_comes_out(&mut phone).await;
    lay_out_the_joists(&mut phone).await;
    phone.nothing_is_unsaved().await;
    phone.wait_until_kept().await;
    server.kill();
    phone.open_page("Lay sheets on the joists", "sheets").await;
    phone.wait_for("The whole floor: sheets laid on the joists").await;
    phone.wait_until("plan and cut sheets are drawn", DRAWN).await;
    phone.wait_for("6 or more are needed; whether fewer than 7 do is not known").await;
    // The walls slant: ends are trimmed along a line.
    phone.wait_for("Trim piece").await;
    phone.check_accessible().await;
    phone.screenshot("sheets-whole-floor").await;
    phone.put_on_paper().await;
    phone.wait_for_without("At the saw", "Print").await;
    phone.screenshot("sheets-whole-floor-printed").await;
    phone.finish().await;
}

async fn walk_round_the_room(phone: &mut Phone) {
    phone.take_up("Tape").await;
    phone.is_asked("Side 1").await;
    phone.keypad("1 6 feet save 8 feet save").await;
    phone.said_back("Side 2", "8' 0\"").await;
    phone.tap("then right ↱").await;
    phone.wait_for("then left ↰").await;
    phone.keypad("6 feet save").await;
    phone.said_back("Side 3", "6' 0\"").await;
    phone.keypad("6 feet 2 fractions 7/8 inches save").await;
    phone.said_back("Side 4", "6' 2 7/8\"").await;
    phone.keypad("9 feet 1 1 fractions 3/4 inches save").await;
    phone.keypad("1 4 feet fractions 1/4 inches save").await;
    phone.said_back("Side 6", "14' 0 1/4\"").await;
}

async fn all_comes_out(phone: &mut Phone) {
    phone.go_to("Take").await;
    phone.ask_for("What is measured", "Opening").await;
    phone.ask_for("What comes out", "the whole floor").await;
}

async fn lay_out_the_joists(phone: &mut Phone) {
    phone.ask_for("What is measured", "Joists").await;
    phone.keypad("1 6 save 1 6 save 1 1 save").await;
    phone.said_back("Joists", "11").await;
}

#[tokio::test]
async fn before_anything_is_measured_the_sheets_say_what_to_measure() {
    let (_server, mut phone) = crate::carpenter::phone_with_a_job().await;
    phone.go_to("Answers").await;
    phone.tap("Lay sheets on the joists").await;
    phone.wait_for("place the opening").await;
    phone.wait_for("lay out the joists").await;
    phone.check_accessible().await;
    phone.finish().await;
}
