//! The harness tried out on a page of its own: that it does what a person would, and
//! that each of its guards really bites.

use crate::phone::{Phone, Screen};
use crate::server::{Server, root};
use std::time::Duration;

async fn practice(screen: Screen) -> (Server, Phone) {
    let server = Server::start_with(&root().join("tests/browser/practice"), "").await;
    let mut phone = Phone::open(screen, server.address()).await;
    phone.patience = Duration::from_secs(5);
    (server, phone)
}

#[tokio::test]
async fn a_thumb_taps_types_sends_and_receives() {
    let (_server, mut phone) = practice(Screen::Small).await;
    phone.tap("Save").await;
    phone.wait_for("saved by touch").await;
    phone.fill("Length", "12' 3 1/2\"").await;
    phone.press("Enter").await;
    phone.wait_for("length is 12' 3 1/2\"").await;
    phone.wait_for_no("saved by touch").await;

    let page = root().join("tests/browser/practice/index.html");
    phone.choose_files("#photos", &[&page, &root().join("index.html")]).await;
    phone.wait_for("2 photos, index.html").await;
    // Far down the page, and called by what it does rather than by its arrow.
    phone.tap("Fetch the list").await;
    let list = phone.wait_for_download("list.txt").await;
    assert_eq!(std::fs::read_to_string(list).unwrap(), "one\ntwo\n");
    phone.check_accessible().await;
    phone.finish().await;
}

#[tokio::test]
async fn the_screens_are_as_large_as_they_say() {
    for (screen, width, height) in [(Screen::Tall, 390, 844), (Screen::Small, 360, 640), (Screen::Desktop, 1280, 900)] {
        let (_server, mut phone) = practice(screen).await;
        let wide = phone.js("innerWidth").await;
        assert_eq!(wide, width);
        let high = phone.js("innerHeight").await.as_i64().unwrap();
        assert!(high <= height && high > height - 200, "{screen:?} is {high} high");
        let touch = phone.js("matchMedia('(pointer: coarse)').matches").await;
        assert_eq!(touch, screen.is_touch());
        phone.finish().await;
    }
}

#[tokio::test]
async fn in_the_office_a_mouse_clicks() {
    let (server, mut phone) = practice(Screen::Desktop).await;
    phone.tap_role("button", "Save").await;
    phone.wait_for("saved by mouse").await;
    assert!(phone.place_of("Save").await.height >= 64.0);
    assert!(phone.has("button", "Save all").await && !phone.has("link", "Save all").await);
    phone.open_tab(server.address()).await;
    phone.wait_for("nothing yet").await;
    phone.tab(0).await;
    phone.wait_for("saved by mouse").await;
    phone.finish().await;
}

#[tokio::test]
#[should_panic(expected = "could mean any of: button “Twin”, link “Twin”")]
async fn a_name_for_two_things_is_refused() {
    let (_server, mut phone) = practice(Screen::Tall).await;
    phone.tap("Twin").await;
}

#[tokio::test]
async fn one_name_in_two_groups_is_told_apart_by_the_group() {
    let (_server, mut phone) = practice(Screen::Tall).await;
    phone.tap_in("Far side", "Go").await;
    phone.wait_for("far side").await;
    phone.tap_in("Near side", "Go").await;
    phone.wait_for("near side").await;
    phone.finish().await;
}

#[tokio::test]
#[should_panic(expected = "there is no thing called “Go” in “Upper side”")]
async fn a_group_that_is_not_there_has_nothing_in_it() {
    let (_server, mut phone) = practice(Screen::Tall).await;
    phone.tap_in("Upper side", "Go").await;
}

#[tokio::test]
#[should_panic(expected = "button “Asleep” cannot be tapped: it is disabled")]
async fn a_disabled_button_cannot_be_tapped() {
    let (_server, mut phone) = practice(Screen::Tall).await;
    phone.tap("Asleep").await;
}

#[tokio::test]
#[should_panic(expected = "button “Buried” cannot be tapped: it is covered by")]
async fn a_covered_button_cannot_be_tapped() {
    let (_server, mut phone) = practice(Screen::Tall).await;
    phone.tap("Buried").await;
}

#[tokio::test]
#[should_panic(expected = "the page says:\nPractice page")]
async fn a_failure_shows_what_was_on_the_page() {
    let (_server, mut phone) = practice(Screen::Tall).await;
    phone.wait_for("no such words").await;
}

#[tokio::test]
async fn broken_rules_are_named_with_the_element() {
    let (_server, mut phone) = practice(Screen::Tall).await;
    phone.js("document.getElementById('list').removeAttribute('aria-label')").await;
    phone.js("document.getElementById('length').labels[0].remove()").await;
    let violations = phone.violations().await.join("\n");
    assert!(violations.contains("label (critical)") && violations.contains("id=\"length\""), "{violations}");
    phone.finish().await;
}

#[tokio::test]
async fn a_request_to_another_origin_and_an_error_are_reported() {
    let (_server, mut phone) = practice(Screen::Tall).await;
    let other = Server::start_with(&root().join("tests/browser/practice"), "").await;
    phone.js(&format!("fetch('{}?leak').catch(() => {{}}).then(() => 0)", other.address())).await;
    phone.js("fetch('https://elsewhere.example/').catch(() => {}).then(() => 0)").await;
    phone.js("console.error('by the page')").await;
    let report = phone.quit().await;
    let foreign = report.foreign_requests.join("\n");
    assert!(foreign.contains("?leak") && foreign.contains("elsewhere.example"), "{foreign}");
    assert!(report.console_errors.join("\n").contains("by the page"), "{:?}", report.console_errors);
}
