//! How dry a subfloor has to be under nailed wood flooring.

#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::units::{Length, MoistureContent};

/// The wettest that a subfloor may be ([`Source::FlooringGuide`]).
pub const SUBFLOOR: MoistureContent = MoistureContent::percent(12);

/// Boards from this width on are planks ([`Source::FlooringGuide`]).
const PLANK: Length = Length::inches(3);

/// How a subfloor stands against the flooring that goes on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FlooringGate {
    /// The most that the two may differ by.
    pub most_apart: MoistureContent,
    /// Is the subfloor dry enough?
    pub is_dry: bool,
    /// Are the two near enough to each other?
    pub is_near: bool,
}

impl FlooringGate {
    /// A subfloor under flooring whose boards are so wide. Source:
    /// [`Source::FlooringGuide`], which others quote with other widths.
    pub fn of(subfloor: MoistureContent, flooring: MoistureContent, board: Length) -> Self {
        let most_apart = MoistureContent::percent(if board < PLANK { 4 } else { 2 });
        let apart = (subfloor.to_percent() - flooring.to_percent()).abs();
        Self { most_apart, is_dry: subfloor <= SUBFLOOR, is_near: apart <= most_apart.to_percent() }
    }

    /// May the flooring be nailed down?
    pub const fn is_open(&self) -> bool {
        self.is_dry && self.is_near
    }
}
