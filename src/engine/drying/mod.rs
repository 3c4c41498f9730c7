//! Drying: where wood is heading, how fast, and when it gets there.
//!
//! [`fit`](fit()) is the sum of one place and knows no job, [`paces`](paces()) what the meter's
//! error leaves of it; [`forecasts`] is the job's places. [`air`] is the one rule for which air of a
//! visit counts, here and for every other page.

pub mod air;
pub mod fit;
pub mod forecast;
pub mod mould;
pub mod paces;
pub mod ventilating;
mod ways;

pub use air::{Settles, VisitAir};
pub use fit::{Drying, Still, fit};
pub use forecast::{Forecast, Forecasts, OtherAir, Outlook, forecasts};
pub use mould::{Mould, mould};
pub use paces::{Paces, paces};
pub use ventilating::{Dries, Ventilating, ventilating};
