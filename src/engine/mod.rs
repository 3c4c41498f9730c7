//! The engine: what was seen, what it adds up to, and what follows from it.
//!
//! It never knows a browser, a clock, a store or randomness: ids and times are
//! handed in. It does not panic and does not fail on bad data: it answers, and
//! says what is missing, assumed or doubtful.
//!
//! Start with [`units`] (quantities), then [`entry`], and how results answer: [`figure`].

pub mod air;
pub mod entry;
pub mod figure;
pub mod moisture;
pub mod sources;
pub mod survey;
pub mod take;
pub mod units;
