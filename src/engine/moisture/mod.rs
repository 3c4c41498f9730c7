//! Moisture readings of wood: what a meter shows, and what that means.

pub mod reading;

pub use reading::{Answer, Material, Meter, Reading, Sensing, Shown, Species, Wood};
