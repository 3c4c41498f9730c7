//! Saying where, in every way that the app knows, and finding it again.

use crate::carpenter::{phone_with_a_job, phone_with_the_sample};
use crate::harness::Phone;
use serde_json::json;

/// Taps a length that says where, behind the question.
async fn ask_where(phone: &mut Phone, what: &str) {
    phone.open_question().await;
    phone.tap_role("button", what).await;
    phone.is_asked(&what.to_lowercase()).await;
}

#[tokio::test]
async fn a_distance_half_typed_outlives_the_browser_and_is_read_to_the_end() {
    let (server, mut phone) = phone_with_a_job().await;
    phone.take_up("Meter").await;
    phone.keypad("1").await;
    phone.tap("anywhere along it").await;
    phone.is_asked("Joist 1, lower edge: distance along").await;
    phone.keypad("8 feet").await;
    phone.half_typed("8' ").await;
    phone.kill().await;
    phone.start_again(server.address()).await;
    phone.open_job("Soft corner").await;
    phone.is_asked("Joist 1, lower edge: distance along").await;
    phone.keypad("2 save").await;
    phone.said_back("Distance along", "8' 2\"").await;
    phone.half_typed("1").await;
    phone.keypad("8 save").await;
    phone.said_back("Joist 1, lower edge", "18 %").await;
    phone.wait_for("8' 2\" along").await;
    phone.finish().await;
}

#[tokio::test]
async fn height_and_chalk_go_with_the_place_and_the_chalk_stays_there() {
    let (_server, mut phone) = phone_with_a_job().await;
    phone.take_up("Meter").await;
    ask_where(&mut phone, "Height").await;
    phone.keypad("2 fractions 1/2 save").await;
    phone.open_question().await;
    // Nobody presses Enter with gloves on.
    phone.fill("Chalk mark", "A3").await;
    phone.tap("done").await;
    phone.wait_for("anywhere along it · 2 1/2\" up · \"A3\"").await;
    phone.keypad("1 8 save").await;
    phone.is_asked("Joist 2, lower edge").await;
    phone.wait_for_without("anywhere along it · 2 1/2\" up", "A3").await;
    phone.go_behind_the_title("Report").await;
    phone.wait_for("Joist 1, lower edge, 2 1/2 in up, chalked \"A3\"").await;
    phone.finish().await;
}

#[tokio::test]
async fn a_point_on_the_plan_is_two_lengths() {
    let (_server, mut phone) = phone_with_a_job().await;
    phone.take_up("Meter").await;
    phone.open_question().await;
    phone.tap_in("Element", "Subfloor, from above").await;
    phone.tap_in("Face", "no face").await;
    phone.tap_in("Where it is", "on the plan").await;
    phone.tap("done").await;
    phone.tap("0\" right, 0\" down").await;
    phone.is_asked("Subfloor, from above: right of corner 1").await;
    phone.keypad("5 feet save").await;
    phone.is_asked("Subfloor, from above: down from corner 1").await;
    phone.keypad("4 feet 6 save").await;
    phone.wait_for("5' 0\" right, 4' 6\" down").await;
    phone.keypad("2 1 save").await;
    phone.go_behind_the_title("Report").await;
    phone.wait_for("Subfloor, from above, 5' right and 4' 6 down of the first corner").await;
    phone.finish().await;
}

#[tokio::test]
async fn a_place_by_its_mark_alone_is_chosen_again_from_the_places_so_far() {
    let (_server, mut phone) = phone_with_a_job().await;
    phone.take_up("Meter").await;
    phone.open_question().await;
    phone.tap_in("Element", "Sill").await;
    phone.tap_in("Where it is", "by its mark").await;
    phone.fill("Chalk mark", &"A very long tale on a sill. ".repeat(4)).await;
    phone.tap("done").await;
    phone.wait_for("Chalk mark: ").await;
    // The text that will not do is still there.
    phone.sees("button", "done").await;
    phone.fill("Chalk mark", "B").await;
    phone.tap("done").await;
    phone.is_asked("Sill, lower edge, \"B\"").await;
    phone.keypad("2 2 save").await;
    phone.all_saved(4).await;
    phone.open_question().await;
    phone.tap_in("Element", "Joist").await;
    phone.tap_in("Where it is", "at a joist").await;
    phone.tap("Places so far: 1").await;
    phone.tap_role("button", "Sill, lower edge, \"B\"").await;
    phone.is_asked("Sill, lower edge, \"B\"").await;
    phone.keypad("2 3 save").await;
    // The same place: one entry more, not two.
    phone.all_saved(5).await;
    phone.finish().await;
}

#[tokio::test]
async fn the_place_moves_on_the_way_that_was_chosen() {
    let (_server, mut phone) = phone_with_a_job().await;
    phone.take_up("Meter").await;
    phone.open_question().await;
    for _ in 0..3 {
        phone.tap("joist +").await;
    }
    phone.tap_in("After a save", "joist before").await;
    phone.tap("done").await;
    phone.is_asked("Joist 4, lower edge").await;
    phone.keypad("1 8 save").await;
    phone.is_asked("Joist 3, lower edge").await;
    phone.finish().await;
}

#[tokio::test]
async fn a_forgotten_side_is_put_in() {
    let (_server, mut phone) = phone_with_a_job().await;
    phone.take_up("Tape").await;
    for (side, keys) in ["1 0 feet save", "8 feet save", "1 0 feet save"].into_iter().enumerate() {
        phone.is_asked(&format!("Side {}", side + 1)).await;
        phone.keypad(keys).await;
    }
    phone.ask_for("The next side goes", "after side 1").await;
    phone.is_asked("Side 2, put in after side 1").await;
    phone.keypad("3 feet save").await;
    phone.said_back("Side 2", "3' 0\"").await;
    phone.is_asked("Side 5").await;
    phone.finish().await;
}

/// The sample's one reading of 20 %, as it stands on the plan.
const TWENTY: &str = "[...document.querySelectorAll('.plan text')].find(text => text.textContent === '20')";

/// The invented sample's readings stand on its plan.
#[tokio::test]
async fn a_tap_on_the_plan_finds_a_place_that_was_read_before() {
    let (_server, mut phone) = phone_with_the_sample().await;
    phone.go_to("Take").await;
    phone.take_up("Meter").await;
    phone.tap_what(TWENTY).await;
    phone.is_asked("Joist 4, lower edge").await;
    phone.wait_for("8' 1\" from north wall").await;
    phone.finish().await;
}

/// How many times as wide as its window the plan is, in percent.
const ENLARGED: &str = "(() => {
  const plan = document.querySelector('.plan');
  return Math.round(100 * plan.scrollWidth / plan.clientWidth);
})()";

/// By its key and by two fingers; a tap on it still finds what lies there.
#[tokio::test]
async fn the_plan_is_looked_at_from_nearer_by() {
    let (_server, mut phone) = phone_with_the_sample().await;
    phone.go_to("Take").await;
    phone.take_up("Meter").await;
    phone.reads("how large the plan is", ENLARGED, 100).await;
    phone.tap("nearer").await;
    phone.reads("how near the plan is", NEARNESS, "1").await;
    phone.reads("how large the plan is", ENLARGED, 180).await;
    phone.wait_until("its middle stays in the middle", "document.querySelector('.plan').scrollTop > 0").await;
    // One finger would move it there.
    phone.tap_what(TWENTY).await;
    phone.is_asked("Joist 4, lower edge").await;

    phone.tap("nearer").await;
    phone.reads("how near the plan is", NEARNESS, "2").await;
    phone.tap("whole plan").await;
    phone.reads("how near the key leaves the plan", NEARNESS, "0").await;
    spread_two_fingers(&mut phone, 40, 60).await;
    phone.reads("how near two fingers bring it", NEARNESS, "1").await;
    spread_two_fingers(&mut phone, 90, 40).await;
    phone.reads("how far two fingers take it back", NEARNESS, "0").await;
    phone.check_accessible().await;
    phone.finish().await;
}

/// From how many steps nearer the plan is looked at.
const NEARNESS: &str = "document.querySelector('.plan').dataset.nearness";

/// Two fingers on the plan, first and last so far from its middle.
async fn spread_two_fingers(phone: &mut Phone, from: i32, to: i32) {
    phone.at_rest().await;
    let fingers = |apart: i32| json!([{ "x": 160 - apart, "y": 160 }, { "x": 160 + apart, "y": 160 }]);
    let steps = [("touchStart", fingers(from)), ("touchMove", fingers((from + to) / 2)), ("touchMove", fingers(to))];
    for (kind, points) in steps.into_iter().chain([("touchEnd", json!([]))]) {
        phone.command("Input.dispatchTouchEvent", json!({ "type": kind, "touchPoints": points })).await;
    }
}
