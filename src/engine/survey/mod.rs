//! The room as measured: sides, opening, joists, other lengths and levels, and the
//! figures that follow from them.
//!
//! It knows nothing of moisture, and draws nothing.

pub mod adjust;
pub mod figures;
pub mod floor;
pub mod measured;

pub use figures::{closing_error, opening_area, room_area};
pub use floor::Floor;
pub use measured::{Joists, Level, Measure, Opening, Room, Run, Side};
