//! The phone app's entry point.

#[cfg(target_arch = "wasm32")]
fn main() {
    duckboard::app::start();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    eprintln!("The app runs in a browser: `cargo xtask serve` builds and serves it.");
    eprintln!("The office command is `cargo office --help`.");
}
