//! What is under the house: joists judged, levels, ground, roof water, and what to order.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "tests may fail loudly")]

#[path = "under/again.rs"]
mod again;
#[path = "under/agree.rs"]
mod agree;
#[path = "under/capacity.rs"]
mod capacity;
#[path = "under/carriers.rs"]
mod carriers;
#[path = "under/cuts.rs"]
mod cuts;
mod desk;
#[path = "under/flat.rs"]
mod flat;
#[path = "under/found.rs"]
mod found;
#[path = "under/framing.rs"]
mod framing;
#[path = "under/ground.rs"]
mod ground;
#[path = "under/house.rs"]
mod house;
#[path = "under/joists.rs"]
mod joists;
#[path = "under/levels.rs"]
mod levels;
#[path = "under/makers.rs"]
mod makers;
#[path = "under/new_joists.rs"]
mod new_joists;
#[path = "under/not_counted.rs"]
mod not_counted;
#[path = "under/orders.rs"]
mod orders;
#[path = "under/phones.rs"]
mod phones;
#[path = "under/planing.rs"]
mod planing;
#[path = "under/probed.rs"]
mod probed;
#[path = "under/read.rs"]
mod read;
#[path = "under/said_again.rs"]
mod said_again;
#[path = "under/settled.rs"]
mod settled;
#[path = "under/sisters.rs"]
mod sisters;
#[path = "under/spans.rs"]
mod spans;
#[path = "under/visits.rs"]
mod visits;
#[path = "under/wing.rs"]
mod wing;
