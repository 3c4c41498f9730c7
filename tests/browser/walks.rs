//! Walks through the app in a real browser, as a thumb and two eyes would take them.
//!
//! `cargo xtask test` builds the app and runs them. To run one again and again:
//!
//! ```text
//! cargo xtask test dist browser-tools store-page
//! cargo test -p xtask --test browser offline
//! ```
//!
//! A walk is a test in a module of its own below. It has a [`Server`](harness::Server)
//! and one or more [`Phone`](harness::Phone)s, and ends with `finish`, which holds it to
//! the two laws of every walk: no request left our origin, nothing was in the console.
//!
//! ```ignore
//! #[tokio::test]
//! async fn a_reading_is_there_after_the_browser_dies() {
//!     let server = Server::start().await;
//!     let mut phone = Phone::open(Screen::Tall, server.address()).await;
//!     phone.tap("Tape").await;           // by the name a screen reader would say
//!     phone.type_keys("12' 3").await;    // into whatever has the focus
//!     phone.tap("Save").await;
//!     phone.wait_for("last: 12' 3\"").await;
//!     phone.kill().await;                // SIGKILL, the whole browser
//!     phone.start_again(server.address()).await;
//!     phone.wait_for("12' 3\"").await;
//!     phone.check_accessible().await;
//!     phone.screenshot("reading").await; // target/shots/reading.png
//!     phone.finish().await;
//! }
//! ```
//!
//! Nothing is read at once, nor after a wait for something else: `read`, `reads`, `says_in`,
//! `words_in` and `wait_for_without` wait until what they read is as it should be, and then
//! that is what was read. A look at the page that waits for nothing does not leave `harness`.
//!
//! Whatever does not come in time fails with what was there instead, a screenshot, and the
//! text and the things to tap that were on the screen. A failed walk leaves its folder (profile,
//! downloads, logs) in `target/browser`.

#![allow(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "in a test crate a broken expectation is a failed test"
)]

mod harness;

mod builds;
mod carpenter;
mod desk;
mod samples;

mod access;
mod faults;
mod meter;
mod offline;
mod old_floor;
mod opening;
mod places;
mod print;
mod sheets;
mod small;
mod store;
mod two_phones;
mod under;
mod walk;
mod water;
