//! Where things are in a room: points, walks along its walls, outlines.
//!
//! Job coordinates: `x` runs to the right and `y` down the page, of a plan seen
//! from above. So a right turn is clockwise on the page, and an area walked
//! clockwise counts positive. All predicates are exact in whole nanometres; only
//! the length of a slanting line is rounded, to the nearest nanometre.
//!
//! It must never know what a wall, a joist or a reading is, how a length was
//! measured or what is drawn of it.
//!
//! Start with [`walk`] (sides as they are measured) and [`outline`] (what they
//! become when they come round).

mod chords;
mod closing;
mod contains;
pub mod heading;
pub mod outline;
pub mod point;
pub mod rect;
mod segment;
pub mod walk;

#[cfg(test)]
mod naive;
#[cfg(test)]
pub(crate) mod rooms;

pub use chords::Chord;
pub use closing::ClosingError;
pub use heading::{Axis, Heading, Turn};
pub use outline::{Closed, MOST_CORNERS, Outline, Problem};
pub use point::{Point, Vector};
pub use rect::Rect;
pub use segment::{Meeting, Segment};
pub use walk::{COME_ROUND_TOLERANCE, ROUND_TOLERANCE, Step, Walk};
