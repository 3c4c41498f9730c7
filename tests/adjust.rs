//! Outlines adjusted from what was measured.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "tests may fail loudly")]

#[path = "adjust/laws.rs"]
mod laws;
#[path = "adjust/oracle.rs"]
mod oracle;
#[path = "adjust/rooms.rs"]
mod rooms;
#[path = "adjust/traverses.rs"]
mod traverses;
#[path = "adjust/curve/trial.rs"]
mod trial;
#[path = "adjust/two_hundred.rs"]
mod two_hundred;
#[path = "adjust/words.rs"]
mod words;
