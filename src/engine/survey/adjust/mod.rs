//! A room's outline from everything that was measured of it: least squares.
//!
//! Sides, diagonals, turns and offsets are observations, each with the standard
//! deviation that its instrument is known for. The outline that fits them best has the
//! least sum of squared residuals, each over its standard deviation; a right angle is
//! an observation like any other. What fits worse than chance allows is named
//! ([`Verdict`]), and with it whatever cannot be told apart from it.
//!
//! It knows no job and no entry: callers number their observations. Begin with
//! [`Network`], then [`adjust()`].

mod accuracy;
mod compass;
mod equations;
mod matrix;
mod network;
mod normal;
mod snoop;
mod solve;
mod words;

pub use accuracy::Accuracy;
pub use compass::{Leg, compass};
pub use network::{Measured, Network, Observation, Off};
pub use snoop::{SIGNIFICANCE, Suspect, Verdict, critical_value};
pub use solve::{Adjusted, Checked, Unfixed, adjust};
