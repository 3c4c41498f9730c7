//! What takes long or weighs much, for a worker of the browser's: the sheet search and
//! pages of cards, in a module of its own, built for speed, that a phone loads when
//! somebody first asks for one of them.
//!
//! It is handed a job file's text and hands back pages ready to be shown; it keeps
//! nothing, and a fault in it costs no more than its worker.

#[cfg(target_arch = "wasm32")]
mod pages;
#[cfg(target_arch = "wasm32")]
mod search;

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    eprintln!("This is built for browsers: `cargo xtask serve`. At a desk it is `cargo office layout`.");
}

#[cfg(target_arch = "wasm32")]
fn main() {}
