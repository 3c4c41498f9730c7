//! Where a piece stands in what was typed.

use crate::engine::units::decimal::Spot;

/// Characters `start..end` of the text as handed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Span {
    pub(super) start: usize,
    pub(super) end: usize,
}

impl Span {
    /// From the start of this to the end of `last`.
    pub(super) const fn to(self, last: Self) -> Self {
        Self { start: self.start, end: last.end }
    }

    /// What stands there in `text`.
    pub(super) fn spot(self, text: &str) -> Spot {
        let piece = text.chars().take(self.end).skip(self.start).collect();
        Spot { at: self.start, piece }
    }
}
