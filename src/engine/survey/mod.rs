//! The room as measured: sides, opening, joists, other lengths and levels, and the
//! figures that follow from them.
//!
//! It knows nothing of moisture, and draws nothing.

pub mod measured;

pub use measured::{Joists, Level, Measure, Opening, Room, Run, Side};
