//! What laying a floor takes beside sheets: blocks under open edges, fasteners, glue.
//! Counted piece by piece on the joists that are there.

pub mod adhesive;
pub mod blocking;
pub mod fasteners;
mod lines;
mod sticks;

pub use adhesive::Adhesive;
pub use blocking::{Block, Blocking};
pub use fasteners::Fasteners;
pub use sticks::{Bought, LONGEST_SOLD, Stick, cut_from_sticks};

use super::CutList;
use super::layout::Case;
use super::stock::Stock;
use crate::engine::sources::Source;
use lines::{Line, lines_of};

/// What laying takes beside sheets.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TakeOff {
    /// Blocks between joists.
    pub blocking: Blocking,
    /// What those are cut of.
    pub block_lumber: String,
    /// Nails or screws.
    pub fasteners: Fasteners,
    /// Glue.
    pub adhesive: Adhesive,
}

/// What everything here rests on.
pub const SOURCES: [Source; 9] = [
    Source::PanelLaying,
    Source::Blocks,
    Source::LumberLengths,
    Source::FastenerSchedule,
    Source::EdgeDistance,
    Source::FastenerWaste,
    Source::GlueBead,
    Source::GlueUnderEnds,
    Source::Corrosion,
];

impl TakeOff {
    /// For a layout of these sheets.
    pub fn of(case: &Case, list: &CutList, stock: &Stock) -> Self {
        let lines: Vec<Line> = list.pieces.iter().flat_map(|piece| lines_of(case, piece, stock.edge)).collect();
        Self {
            blocking: Blocking::under(&lines),
            block_lumber: stock.block_lumber.clone(),
            fasteners: Fasteners::along(&lines, stock.thickness),
            adhesive: Adhesive::along(&lines),
        }
    }
}
