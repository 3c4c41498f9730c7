//! Blocks between joists, under every edge that neither a joist nor a tongue carries.

use super::lines::{Bay, Line};
use crate::engine::sheets::to_lay::length;
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// A block is as thick as lumber of two inches by name: edges closer than that share
/// one, and no gap narrower than that takes one ([`Source::Blocks`]).
const THICKNESS: i32 = 24;

/// The rule in words.
pub const RULE: &str = "Under every edge that neither a joist nor a tongue carries, and along walls where no plate or \
                        ledger does; 2 in by name. Treated ones get a preservative brushed on where they are cut.";

/// Blocks. The lumber that they are cut from is the order list's: all that is cut of one kind
/// is cut together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Blocking {
    /// Each, course by course from the lowest edge up.
    pub blocks: Vec<Block>,
}

/// A block.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Block {
    /// How high in the layout its edge lies.
    pub y: Length,
    /// Where it begins.
    pub x: Length,
    /// How long it is: what is free between the joists.
    pub length: Length,
}

impl Blocking {
    pub(super) fn under(lines: &[Line]) -> Self {
        let mut bays: Vec<Bay> =
            lines.iter().filter_map(|line| if let Line::Open(bay) = line { Some(*bay) } else { None }).collect();
        bays.retain(|bay| bay.clear >= THICKNESS);
        bays.sort_unstable();
        // Two courses meet over one block.
        bays.dedup_by(|next, before| {
            (next.from, next.to) == (before.from, before.to) && next.y - before.y <= THICKNESS
        });
        let block = |bay: &Bay| Block { y: length(bay.y), x: length(bay.from), length: length(bay.clear) };
        let mut blocks: Vec<_> = bays.iter().map(block).collect();
        blocks.sort_unstable();
        Self { blocks }
    }
}
