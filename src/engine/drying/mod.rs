//! Drying: where wood is heading, how fast, and when it gets there.
//!
//! It knows moisture contents and days, and no job: [`fit`] is the sum of one place.

pub mod fit;

pub use fit::{Drying, Still, fit};
