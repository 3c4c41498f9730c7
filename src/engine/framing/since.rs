//! Since when something is so: what was said later is told from what was said before.

use crate::engine::entry::{EntryId, Time};
use crate::engine::job::Job;
use crate::engine::job::thing::Seen;
use crate::engine::particular::{Item, Part, Particulars};
#[cfg(doc)]
use crate::engine::sources::Source;

/// The latest of the entries that something rests on: by their ids, and by their clocks. Of
/// two phones that did not know of each other neither order says by itself who was first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Since {
    by: Option<EntryId>,
    at: Option<Time>,
}

impl Since {
    /// It rests on nothing that anybody said.
    pub const ALWAYS: Self = Self { by: None, at: None };

    /// By what a thing says as it stands.
    pub fn of<T>(thing: &Seen<'_, T>) -> Self {
        Self { by: Some(thing.head), at: Some(thing.stamp.at) }
    }

    /// What rests on both is so since the later one.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self { by: self.by.max(other.by), at: self.at.max(other.at) }
    }

    /// What rests on all of them.
    pub fn all(all: impl IntoIterator<Item = Self>) -> Self {
        all.into_iter().fold(Self::ALWAYS, Self::and)
    }

    /// Was this said after all that: with a greater id, and no earlier by the clock? What
    /// only one of the two says counts as said before, which settles nothing.
    pub fn is_after(self, other: Self) -> bool {
        self.by > other.by && self.at >= other.at
    }

    /// Since an item of a part was last said.
    pub(super) fn said(said: Particulars<'_>, part: &Part, item: &Item) -> Self {
        said.thing(part, item).map_or(Self::ALWAYS, |thing| Self::of(&thing))
    }

    /// The same of a joist, or else of all joists.
    pub(super) fn said_of_joist(said: Particulars<'_>, joist: &Part, item: &Item) -> Self {
        match said.thing(joist, item) {
            Some(thing) => Self::of(&thing),
            None => Self::said(said, &Part::Joists, item),
        }
    }

    /// Since the joists were laid out: what was said of one by its number before that may be
    /// of another.
    pub(super) fn laid_out(job: &Job) -> Self {
        Self::all(job.now.joists().values().map(|thing| Self::of(&thing)))
    }
}
