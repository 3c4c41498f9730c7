//! A thing on one of the job's shelves.

use crate::engine::entry::{EntryId, Stamp};
use litemap::LiteMap;

/// Things of one kind, each under the id of the entry that began it, in log order.
pub type Shelf<T> = LiteMap<EntryId, Thing<T>>;

/// A value as it stands after corrections, with the stamp of the entry that began it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Thing<T> {
    /// The value as it stands.
    pub value: T,
    /// Who, when, in which visit: of the first entry.
    pub stamp: Stamp,
    /// The entry that the value is from: the first, or the latest correction. A new
    /// correction supersedes this one.
    pub head: EntryId,
}
