//! Wood moisture: what a meter showed, and what that says once the corrections that
//! the meter has not made are made.
//!
//! It knows meters, woods and readings. It must never know the air that the wood
//! stands in (that is [`air`](crate::engine::air)), nor decide what a moisture content
//! means for the job.
//!
//! Start with [`reading`] and [`meter`] (what is logged), then [`correction`], which
//! rests on two tables: [`chart`] (temperature) and [`resistance`] (species).

mod beyond;
pub mod bounds;
pub mod chart;
pub mod correction;
pub mod flooring;
pub mod high;
mod kept;
pub mod low;
pub mod meter;
pub mod reading;
pub mod resistance;
pub mod said;
pub mod species;
mod steps;

pub use bounds::{Bounds, Outside};
pub use correction::{Corrected, Stands, Step, WoodTemperature, correct};
pub use flooring::FlooringGate;
pub use kept::Unsaid;
pub use low::MayReadLow;
pub use meter::{Answer, Meter, Sensing};
pub use reading::{Material, Reading, Shown, Wood};
pub use resistance::Resistance;
pub use species::Species;

#[cfg(test)]
mod tests;
