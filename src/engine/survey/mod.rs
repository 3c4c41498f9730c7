//! The room as measured: sides, opening, joists, other lengths and levels, and the
//! figures that follow from them.
//!
//! It knows nothing of moisture, and draws nothing.

pub mod adjust;
pub mod agreement;
mod bays;
pub mod build_up;
pub mod cut_back;
pub mod disagreement;
pub mod figures;
pub mod flat;
pub mod floor;
pub mod framing;
pub mod inside;
mod level_again;
pub mod level_plan;
pub mod levels;
pub mod measured;
pub mod propose;
pub mod reach;
pub mod shape;
pub mod traverse;

pub use agreement::agreement;
pub use build_up::{Layer, LayerKind, build_up};
pub use cut_back::{CutBack, CutLines};
pub use disagreement::{Disagreement, disagreement};
pub use figures::{areas_without, closing_error, opening_area, room_area};
pub use floor::Floor;
pub use framing::{AlongFrom, Framing, JoistCenter, Joists, Run};
pub use level_plan::{LevelPlan, Station, level_plan};
pub use measured::{
    Corner, Level, Measure, Obstacle, ObstacleKind, Offset, Opening, Room, Ruler, Side, Tie, Trust, WholeFloor,
};
pub use propose::{as_opening, propose};
pub use reach::Stretch;
pub use shape::Shape;
