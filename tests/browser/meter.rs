//! The meter's numbers: one that is not believed is asked about once, and the wood stands
//! where it is read.

use crate::carpenter::phone_with_a_job;

#[tokio::test]
async fn a_number_that_is_not_believed_is_asked_about_and_none_of_the_answers_loses_it() {
    let (_server, mut phone) = phone_with_a_job().await;
    phone.take_up("Meter").await;
    phone.keypad("1 8 0 save").await;
    phone.wait_for("Is it right?").await;
    phone.check_accessible().await;
    phone.tap("type it again").await;
    phone.wait_for_without("Joist 1, lower edge", "Is it right?").await;
    phone.keypad("1 8 save").await;
    phone.said_back("Joist 1, lower edge", "18 %").await;

    phone.keypad("1 8 0 save").await;
    phone.tap("keep 180, doubted").await;
    phone.said_back("Joist 2, lower edge", "180 %, doubted").await;

    phone.keypad("1 8 0 save").await;
    phone.tap("over the meter's maximum").await;
    phone.said_back("Joist 3, lower edge", "over maximum").await;

    phone.keypad("2 save").await;
    phone.tap("under the meter's minimum").await;
    phone.said_back("Joist 4, lower edge", "under minimum").await;

    phone.go_to("Log").await;
    for line in ["180 %, doubted", "over the meter's maximum", "under the meter's minimum"] {
        phone.wait_for(line).await;
    }
    phone.finish().await;
}

#[tokio::test]
async fn the_wood_is_said_where_it_is_read_and_a_dry_panel_gives_the_spot_back() {
    let (_server, mut phone) = phone_with_a_job().await;
    phone.take_up("Meter").await;
    phone.ask_for("Wood", "hem-fir").await;
    phone.wait_for("hem-fir").await;
    phone.keypad("1 5 save").await;
    phone.is_asked("Joist 2, lower edge").await;
    phone.ask_for("Wood", "dry plywood elsewhere: holds the others").await;
    phone.is_asked("dry plywood, elsewhere").await;
    phone.keypad("8 save").await;
    phone.is_asked("Joist 2, lower edge").await;
    phone.wait_for("hem-fir").await;
    phone.check_accessible().await;
    phone.finish().await;
}
