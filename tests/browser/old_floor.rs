//! What an old floor asks of the tape: joists one by one, a cut back to a rip, layers,
//! and what is there already to lay.

use crate::carpenter::phone_with_a_job;
use crate::harness::Phone;

/// An invented room of 10 × 8 ft on joists that only look evenly spaced.
#[tokio::test]
async fn joists_are_measured_one_by_one_and_the_floor_is_cut_back_to_a_rip() {
    let (_server, mut phone) = phone_with_a_job().await;
    phone.take_up("Tape").await;
    for keys in ["1 0 feet save", "8 feet save", "1 0 feet save", "8 feet save"] {
        phone.keypad(keys).await;
    }
    place_an_opening(&mut phone).await;
    lay_out_joists_and_move_one(&mut phone).await;
    put_a_corner_beside_a_line(&mut phone).await;
    cut_it_back(&mut phone).await;
    put_a_caliper_to_the_layers(&mut phone).await;
    log_what_is_on_hand(&mut phone).await;
    north_is_up(&mut phone).await;
    // Joists of 17 1/2 in lie between the fourth and the fifth.
    phone.go_to("Answers").await;
    phone.is_answered("Old floor", "15/16\" thick: cut no deeper").await;
    phone.tap("Lay sheets on the joists").await;
    phone.wait_for("no layout takes fewer").await;
    phone.wait_for("0 sheets").await;
    phone.wait_for("1 of 1 on hand used").await;
    phone.wait_for("On hand 1 (6' 0\" × 4' 0\")").await;
    phone.wait_for("rated for joists 17 1/2\" on center or more").await;
    phone.wait_for("blade 15/16\" deep").await;
    phone.check_accessible().await;
    phone.screenshot("old-floor").await;
    phone.finish().await;
}

async fn place_an_opening(phone: &mut Phone) {
    phone.is_asked("Opening: along side 1 from its corner").await;
    phone.keypad("2 4 save 1 2 save 4 0 save 3 0 save").await;
    phone.said_back("Opening size into the room", "2' 6\"").await;
}

async fn lay_out_joists_and_move_one(phone: &mut Phone) {
    phone.is_asked("Joist 1: center from corner 1").await;
    phone.keypad("8 save 1 6 save 7 save").await;
    phone.said_back("Joists", "7").await;
    phone.take_up("Tape").await;
    phone.ask_for("What is measured", "Joist by joist").await;
    phone.ask_for("Which joist", "joist 5").await;
    phone.is_asked("Joist 5: center from corner 1").await;
    phone.wait_for("6' 0\" by spacing").await;
    phone.keypad("7 3 fractions 1/2 inches save").await;
    phone.said_back("Joist 5 from corner 1", "6' 1 1/2\"").await;
    phone.is_asked("Joist 6: center from corner 1").await;
}

async fn put_a_corner_beside_a_line(phone: &mut Phone) {
    phone.ask_for("What is measured", "Off a line").await;
    phone.ask_for("At which corner", "corner 3").await;
    phone.ask_for("To which corner", "corner 2").await;
    phone.is_asked("Corner 3: along the line").await;
    phone.keypad("1 0 feet save").await;
    phone.is_asked("Corner 3: out from the line").await;
    phone.keypad("8 feet save").await;
    phone.said_back("Corner 3 out from the line", "8' 0\"").await;
}

async fn cut_it_back(phone: &mut Phone) {
    phone.ask_for("What is measured", "Cut back").await;
    phone.is_asked("Opening 1: cut to, along the joists").await;
    phone.keypad("4 8 save").await;
    phone.is_asked("Opening 1: finished floor, beyond that").await;
    phone.keypad("3 save").await;
    phone.said_back("Opening 1 finished floor", "3\"").await;
}

async fn put_a_caliper_to_the_layers(phone: &mut Phone) {
    phone.ask_for("What is measured", "Floor layers").await;
    phone.keypad("fractions 3/16 inches save").await;
    phone.is_asked("Layer 2 from the top: thickness").await;
    phone.ask_for("Which layer", "boards, diagonal").await;
    phone.keypad("fractions 3/4 inches save").await;
    phone.said_back("boards, diagonal", "3/4\"").await;
}

async fn log_what_is_on_hand(phone: &mut Phone) {
    phone.ask_for("What is measured", "Piece on hand").await;
    phone.is_asked("On hand 1: along the strong axis").await;
    phone.keypad("6 feet save").await;
    phone.is_asked("On hand 1: across").await;
    phone.keypad("4 feet save").await;
    phone.said_back("Piece on hand across", "4' 0\"").await;
}

async fn north_is_up(phone: &mut Phone) {
    phone.go_to_the_facts().await;
    phone.say_to("On the plan", "north up").await;
    phone.tap_role("link", "Report").await;
    phone.wait_until("north is on the plan", "document.querySelector('.plan .north') !== null").await;
}
