//! A page that runs the storage contract on the browser's own database.
//!
//! It writes a line for each check, `pass: law` or `fail: law: why`, and a last line
//! `contract passed` or `contract failed`, which is the page's title too. A browser
//! test opens it and waits for the title.
//!
//! With `#write` it saves a few things instead and titles itself `written` in the very
//! moment in which the store calls the last of them safe; with `#read`, opened on the
//! same profile after the browser was killed, it titles itself `kept` or `lost`.

#[cfg(target_arch = "wasm32")]
#[path = "store_contract/browser.rs"]
mod browser;
#[cfg(target_arch = "wasm32")]
#[path = "store_contract/faults.rs"]
mod faults;
#[cfg(target_arch = "wasm32")]
#[path = "store_contract/kill.rs"]
mod kill;
#[cfg(target_arch = "wasm32")]
#[path = "store_contract/page.rs"]
mod page;

#[cfg(target_arch = "wasm32")]
fn main() {
    page::start();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    eprintln!("This page runs in a browser: build it for wasm32-unknown-unknown.");
}
