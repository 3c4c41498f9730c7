//! Ground and air under the house: covers, vents, fans, and the water of the roof.
//!
//! Each rule names its section and edition; states differ, and local code decides.

pub mod checks;
pub mod cover;
pub mod plan;
pub mod rain;
pub mod roof;
pub mod vents;
mod worse;

pub use checks::Check;
pub use cover::{Cover, Roll, cover};
pub use plan::{AirWay, Covered};
pub use roof::{Runoff, runoff};
pub use vents::{Unvented, Vents, unvented, vents};
