//! Sheets laid on joists: the search held to brute force, to laws, and to cases.

#![allow(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test fails by panicking"
)]

#[path = "layout/rooms/bounded.rs"]
mod bounded;
#[path = "layout/brute.rs"]
mod brute;
#[path = "layout/rooms/drawn.rs"]
mod drawn;
#[path = "layout/cases/format.rs"]
mod format;
#[path = "layout/rooms/large.rs"]
mod large;
#[path = "layout/laws.rs"]
mod laws;
#[path = "layout/rooms/random.rs"]
mod random;
#[path = "layout/rules.rs"]
mod rules;
#[path = "layout/samples.rs"]
mod samples;
#[path = "layout/small.rs"]
mod small;
