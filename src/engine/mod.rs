//! The engine: what was seen, what it adds up to, and what follows from it.
//!
//! It never knows a browser, a clock, a store or randomness: ids and times are
//! handed in. It does not panic and does not fail on bad data: it answers, and
//! says what is missing, assumed or doubtful.
//!
//! Start with [`units`] (quantities), then [`entry`], and how results answer: [`figure`].

pub mod air;
pub mod cautions;
pub mod closing;
pub mod condition;
pub mod describe;
pub mod drying;
pub mod entry;
pub mod extent;
pub mod figure;
pub mod framing;
pub mod geometry;
pub mod ground;
pub mod job;
pub mod moisture;
pub mod orders;
pub mod origin;
pub mod particular;
pub mod photo;
pub mod place;
pub mod results;
pub mod sample;
pub mod sheets;
pub mod sources;
pub mod standing;
pub mod survey;
pub mod take;
pub mod units;
pub mod warmth;
