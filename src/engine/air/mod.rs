//! Air and surfaces: what was read.

pub mod reading;

pub use reading::{AirLocation, AirReading, SurfaceReading};
