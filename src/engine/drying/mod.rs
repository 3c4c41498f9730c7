//! Drying: where wood is heading, how fast, and when it gets there.
//!
//! [`fit`](fit()) is the sum of one place and knows no job; [`forecasts`] is the job's places.

pub mod fit;
pub mod forecast;

pub use fit::{Drying, Still, fit};
pub use forecast::{Forecast, Forecasts, OtherAir, Outlook, forecasts};
