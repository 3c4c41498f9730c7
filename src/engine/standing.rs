//! Which readings of a place stand: a later one takes an earlier one's place, but not within a
//! visit where the two contradict each other.

use super::entry::EntryId;
use super::job::{Seen, When};
use super::moisture::{Corrected, Reading};

/// A reading among the others of its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing {
    /// When it was first logged.
    pub when: When,
    /// In which visit.
    pub visit: Option<EntryId>,
    /// What it comes to.
    pub now: Corrected,
}

impl Standing {
    /// A reading that was begun under this id.
    pub const fn of(id: EntryId, reading: &Seen<'_, Reading>, now: Corrected) -> Self {
        Self { when: reading.begun(id), visit: reading.stamp.visit, now }
    }

    /// Does a later reading of the place stand for this one? Two of one visit that contradict
    /// each other do not: both stand, and the worse one tells. A number that nobody believes
    /// gives way to one that is believed, and what is only relative stands for no number. Of two
    /// phones the later is told by [`When`], and where neither is, both stand.
    pub fn is_superseded_by(&self, other: &Self) -> bool {
        let stands_for = match self.now.doubted {
            true => !other.now.doubted,
            false => self.visit != other.visit || !self.now.contradicts(&other.now),
        };
        let is_as_good = self.now.relative || !other.now.relative;
        stands_for && is_as_good && other.when.is_after(self.when)
    }
}
