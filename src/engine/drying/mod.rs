//! Drying: where wood is heading, how fast, and when it gets there.
//!
//! [`fit`](fit()) is the sum of one place and knows no job, [`paces`](paces()) what the meter's
//! error leaves of it; [`forecasts`] is the job's places.

pub mod fit;
pub mod forecast;
pub mod paces;

pub use fit::{Drying, Still, fit};
pub use forecast::{Forecast, Forecasts, OtherAir, Outlook, forecasts};
pub use paces::{Paces, paces};
