//! The harness tried out on a page of its own: that it does what a person would, and
//! that each of its guards really bites.

use super::{Phone, Screen, Server, root};
use std::time::Duration;

async fn practice(screen: Screen) -> (Server, Phone) {
    let server = Server::start_with(&root().join("tests/browser/practice"), "").await;
    let phone = Phone::open(screen, server.address()).await;
    (server, phone)
}

/// For what is waited for in vain: no longer than is needed to see that it is.
async fn practice_in_vain() -> (Server, Phone) {
    let (server, mut phone) = practice(Screen::Tall).await;
    phone.patience = Duration::from_secs(2);
    (server, phone)
}

#[tokio::test]
async fn a_thumb_taps_types_sends_and_receives() {
    let (_server, mut phone) = practice(Screen::Small).await;
    phone.tap("Save").await;
    phone.wait_for("saved by touch").await;
    phone.fill("Length", "12' 3 1/2\"").await;
    phone.press("Enter").await;
    phone.wait_for_without("length is 12' 3 1/2\"", "saved by touch").await;
    phone.tap_what("document.querySelector('[role=group] button')").await;
    phone.says_in("[role=status]", "near side").await;

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
        phone.reads("the screen's width", "innerWidth", width).await;
        let fits = |high: &i64| *high <= height && *high > height - 200;
        phone.read(&format!("{screen:?} is as high as it says"), "innerHeight", fits).await;
        phone.reads("whether it is touched", "matchMedia('(pointer: coarse)').matches", screen.is_touch()).await;
        phone.finish().await;
    }
}

#[tokio::test]
async fn in_the_office_a_mouse_clicks() {
    let (server, mut phone) = practice(Screen::Desktop).await;
    phone.tap_role("button", "Save").await;
    phone.wait_for("saved by mouse").await;
    assert!(phone.place_of("Save").await.height >= 64.0);
    phone.sees("button", "Save all").await;
    phone.open_tab(server.address()).await;
    phone.wait_for("nothing yet").await;
    phone.tab(0).await;
    phone.wait_for("saved by mouse").await;
    phone.finish().await;
}

/// The page says at once what it will be asked for, and has it a while later.
#[tokio::test]
async fn what_comes_late_is_read_when_it_is_there_and_not_before() {
    let (_server, mut phone) = practice(Screen::Tall).await;
    phone.tap("Say it late").await;
    phone.wait_for("two lines come late").await;
    phone.reads("the lines", "document.querySelectorAll('#late li').length", 2).await;
    phone.tap("Say it late").await;
    let lines = phone.words_in("#late", &["first", "second"]).await;
    assert_eq!(lines, "first second");
    phone.tap("Say it late").await;
    phone.act("the second line is marked", "document.querySelectorAll('#late li')[1].className = 'marked'").await;
    phone.reads("the mark", "document.querySelector('#late .marked').textContent", "second").await;
    phone.finish().await;
}

#[tokio::test]
#[should_panic(expected = "until the page stands still")]
async fn a_page_on_the_move_is_not_at_rest() {
    let (_server, mut phone) = practice_in_vain().await;
    phone.tap("Be restless").await;
    phone.at_rest().await;
}

#[tokio::test]
#[should_panic(expected = "until the page says “Practice page” and not “Twin”")]
async fn what_must_be_gone_is_seen_to_be_gone() {
    let (_server, mut phone) = practice_in_vain().await;
    phone.wait_for_without("Practice page", "Twin").await;
}

#[tokio::test]
#[should_panic(expected = "until the page says “not drawn yet” and not “Asleep too”")]
async fn nothing_is_gone_from_a_page_that_is_not_there_yet() {
    let (_server, mut phone) = practice_in_vain().await;
    phone.wait_for_without("not drawn yet", "Asleep too").await;
}

#[tokio::test]
#[should_panic(expected = "until the sum, which is 5\n`2 + 2`\nat last was 4\n")]
async fn a_value_read_in_vain_is_told_with_what_was_there() {
    let (_server, mut phone) = practice_in_vain().await;
    phone.reads("the sum", "2 + 2", 5).await;
}

#[tokio::test]
#[should_panic(expected = "at last threw TypeError")]
async fn what_cannot_be_read_is_told_with_why() {
    let (_server, mut phone) = practice_in_vain().await;
    phone.words_in("#nowhere", &[]).await;
}

#[tokio::test]
#[should_panic(expected = "could mean any of: button “Twin”, link “Twin”")]
async fn a_name_for_two_things_is_refused() {
    let (_server, mut phone) = practice_in_vain().await;
    phone.tap("Twin").await;
}

#[tokio::test]
async fn one_name_in_two_groups_is_told_apart_by_the_group() {
    let (_server, mut phone) = practice(Screen::Tall).await;
    phone.tap_in("Far side", "Go").await;
    phone.says_in("[role=status]", "far side").await;
    phone.tap_in("Near side", "Go").await;
    phone.says_in("[role=status]", "near side").await;
    phone.finish().await;
}

#[tokio::test]
#[should_panic(expected = "there is no thing called “Go” in “Upper side”")]
async fn a_group_that_is_not_there_has_nothing_in_it() {
    let (_server, mut phone) = practice_in_vain().await;
    phone.tap_in("Upper side", "Go").await;
}

#[tokio::test]
#[should_panic(expected = "there is no link called “Save all”")]
async fn a_thing_of_another_role_is_not_seen() {
    let (_server, mut phone) = practice_in_vain().await;
    phone.sees("link", "Save all").await;
}

#[tokio::test]
#[should_panic(expected = "button “Asleep” cannot be tapped: it is disabled")]
async fn a_disabled_button_cannot_be_tapped() {
    let (_server, mut phone) = practice_in_vain().await;
    phone.tap("Asleep").await;
}

#[tokio::test]
#[should_panic(expected = "button “Buried” cannot be tapped: it is covered by")]
async fn a_covered_button_cannot_be_tapped() {
    let (_server, mut phone) = practice_in_vain().await;
    phone.tap("Buried").await;
}

#[tokio::test]
#[should_panic(expected = "the page says:\nPractice page")]
async fn a_failure_shows_what_was_on_the_page() {
    let (_server, mut phone) = practice_in_vain().await;
    phone.wait_for("no such words").await;
}

#[tokio::test]
async fn broken_rules_are_named_with_the_element() {
    let (_server, mut phone) = practice(Screen::Tall).await;
    phone.act("the list has no name", "document.getElementById('list').removeAttribute('aria-label')").await;
    phone.act("the length has no name", "document.getElementById('length').labels[0].remove()").await;
    let violations = phone.violations().await.join("\n");
    assert!(violations.contains("label (critical)") && violations.contains("id=\"length\""), "{violations}");
    phone.finish().await;
}

#[tokio::test]
async fn a_request_to_another_origin_and_an_error_are_reported() {
    let (_server, mut phone) = practice(Screen::Tall).await;
    let other = Server::start_with(&root().join("tests/browser/practice"), "").await;
    for address in [&format!("{}?leak", other.address()), "https://elsewhere.example/"] {
        phone.act("another origin is asked", &format!("await fetch('{address}').catch(() => {{}})")).await;
    }
    phone.act("the page complains", "console.error('by the page')").await;
    let report = phone.quit().await;
    let foreign = report.foreign_requests.join("\n");
    assert!(foreign.contains("?leak") && foreign.contains("elsewhere.example"), "{foreign}");
    assert!(report.console_errors.join("\n").contains("by the page"), "{:?}", report.console_errors);
}
