//! Drying: where wood is heading, how fast, and when it gets there.
//!
//! [`fit`](fit()) is the sum of one place and knows no job; [`forecasts`] is the job's places.

pub mod fit;
pub mod forecast;

pub use forecast::{Forecast, Forecasts, Outlook, forecasts};
pub use fit::{Drying, Still, fit};
