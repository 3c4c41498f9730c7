//! A room's outline from everything that was measured of it: least squares.
//!
//! Sides, diagonals, turns and offsets are observations, each with the standard
//! deviation that its instrument is known for. The outline that fits them best has the
//! least sum of squared residuals, each over its standard deviation; a right angle is
//! an observation like any other, and how square the house is comes out of the room
//! ([`Squareness`]). A reading that is likelier wrong than that is named
//! ([`Verdict`]), and with it whatever cannot be told apart from it.
//!
//! It knows no job and no entry: callers number their observations. Begin with
//! [`Network`], then [`adjust()`].

mod accuracy;
mod compass;
mod equations;
mod matrix;
mod network;
mod rest;
mod snoop;
mod solve;
mod squareness;
mod weigh;
mod words;

pub use accuracy::Accuracy;
pub use compass::{Leg, compass};
pub use network::{Measured, Network, Observation, Off};
pub use rest::Unfixed;
pub use snoop::{MOST_NAMED, Suspect, Verdict};
pub use solve::{Adjusted, Checked, adjust};
pub use squareness::{House, Squareness};
