//! Air: what it holds, where it sweats, and how wet it leaves wood in the end.
//!
//! It knows temperatures, humidities and pressures. It must never know what wood was
//! measured (that is [`moisture`](crate::engine::moisture)) nor what a job holds:
//! whoever calls it adds the entries that went in.
//!
//! Start with [`reading`] (what is logged) and [`Air`]; then [`emc`](emc()),
//! [`dew_point`](dew_point()), [`in_air`] and [`venting`](venting()). All vapor sums
//! are over liquid water.

pub mod dehumidifier;
pub mod dew_point;
pub mod emc;
pub mod mould;
pub mod pressure;
pub mod reading;
pub(in crate::engine) mod shown;
pub mod surface;
pub mod vapour;
pub mod venting;

pub use dew_point::dew_point;
pub use emc::{emc, equilibrium_moisture};
pub use pressure::{Altitude, Pressure};
pub use reading::{Air, AirLocation, AirReading, SurfaceReading};
pub use surface::{SurfaceInAir, in_air};
pub use vapour::{HumidityRatio, humidity_ratio, saturation_pressure, vapour_pressure};
pub use venting::{AtSurface, Venting, venting};
