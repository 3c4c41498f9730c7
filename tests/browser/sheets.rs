//! Sheets laid on the joists, on the phone and without a host.

use crate::phone::{Phone, Screen};
use crate::server::Server;
use serde_json::json;

const STATE: &str = "document.getElementById('sheets')?.dataset.state";
const DRAWN: &str = "document.querySelectorAll('#sheets svg').length > 1";

#[tokio::test]
async fn the_samples_opening_is_laid_and_cut_without_a_host() {
    let mut server = Server::start().await;
    let mut phone = Phone::open(Screen::Tall, server.address()).await;
    phone.introduce("QZ").await;
    phone.tap("Open the invented sample job").await;
    phone.wait_until_kept().await;
    phone.wait_until("the worker answers for the page", "navigator.serviceWorker.controller !== null").await;
    server.kill();
    phone.go_to("Answers").await;
    phone.tap("Lay sheets on the joists").await;
    phone.wait_until("the search has ended", &format!("{STATE} === 'done'")).await;
    phone.wait_for("no layout takes fewer").await;
    phone.wait_for("Invented sample").await;
    phone.wait_for("At the saw").await;
    phone.wait_until("plan and cut sheets are drawn", DRAWN).await;
    phone.check_accessible().await;
    phone.screenshot("sheets").await;
    phone.cdp("Emulation.setEmulatedMedia", json!({ "media": "print" })).await;
    phone.wait_for_no("Print").await;
    phone.screenshot("sheets-printed").await;
    phone.finish().await;
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
