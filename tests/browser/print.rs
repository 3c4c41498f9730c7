//! What comes out of the printer.

use crate::harness::{Phone, Screen, Server};
use serde_json::json;

/// Whatever on the page is there for a thumb, and is seen. An answer that was given is a key
/// too, and stands on paper as the answer.
const CONTROLS: &str = "[...document.querySelectorAll('nav, button, .job-header, [role=alert]')]
    .filter(element => !element.matches('.check [aria-pressed=true]'))
    .filter(element => element.getClientRects().length > 0).map(element => element.outerHTML.slice(0, 80))";

#[tokio::test]
async fn the_report_is_printed_without_the_keys_around_it() {
    let server = Server::start().await;
    let mut phone = Phone::open(Screen::Desktop, server.address()).await;
    phone.introduce("OFF").await;
    phone.open_the_sample().await;
    phone.go_behind_the_title("Report").await;
    phone.wait_for("Missing and assumed").await;
    for part in ["water", "under", "orders"] {
        phone.is_worked_out(part).await;
    }
    phone.check_accessible().await;
    phone.screenshot("report").await;
    phone.put_on_paper().await;
    phone.reads("what a thumb could tap", CONTROLS, json!([])).await;
    phone.wait_for("Invented sample").await;
    phone.screenshot("report-printed").await;
    phone.finish().await;
}
