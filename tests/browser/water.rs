//! Where the water comes from, how far it goes, when it is gone: on the phone and
//! without a host, over two visits.

use crate::phone::{Phone, Screen};
use crate::server::Server;
use serde_json::json;

const STATE: &str = "document.getElementById('water')?.dataset.state";

#[tokio::test]
async fn the_sample_tells_ground_moisture_from_the_washer_above_and_decides() {
    let mut server = Server::start().await;
    let mut phone = Phone::open(Screen::Tall, server.address()).await;
    phone.introduce("QZ").await;
    phone.tap("Open the invented sample job").await;
    phone.wait_until_kept().await;
    phone.wait_until("the worker answers for the page", "navigator.serviceWorker.controller !== null").await;
    server.kill();
    phone.go_to("Answers").await;
    phone.tap("Where water comes from, and when to close").await;
    phone.wait_until("the page is there", &format!("{STATE} === 'done'")).await;
    phone.wait_for("Ground moisture: likely").await;
    phone.wait_for("the wettest spot is under plumbing").await;
    phone.wait_for("Next check").await;
    phone.wait_for("Not yet").await;
    phone.wait_for("Next reading: joist").await;
    phone.js("document.querySelectorAll('#water details').forEach(details => { details.open = true; })").await;
    phone.wait_for("common practice, no source").await;
    phone.wait_until("the map is drawn", "document.querySelectorAll('#water svg .map-cell').length > 50").await;
    phone.check_accessible().await;
    phone.screenshot("water").await;
    phone.tap_in("Is all decayed wood cut out, or probed sound?", "yes").await;
    phone.wait_for("cut out, or probed sound.").await;
    phone.tap_in("Is it dealt with: ground moisture?", "yes").await;
    phone.wait_until("the answer stands", "document.querySelector('#water [aria-pressed=true]') !== null").await;
    phone.cdp("Emulation.setEmulatedMedia", json!({ "media": "print" })).await;
    phone.screenshot("water-printed").await;
    phone.finish().await;
}
