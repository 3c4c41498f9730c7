//! The log: entries by id, merged by union.

use super::entry::{Content, Record};
use crate::engine::entry::{DeviceId, EntryId};
use litemap::LiteMap;

/// Every entry known here. Adding is idempotent and order-free: any permutation, any
/// duplication and either order of a merge give an equal log.
#[derive(Debug, Clone, Default)]
pub struct Log {
    /// Under each id the one entry there should be; more than one when two say
    /// different things under the same id, sorted by their canonical text.
    entries: LiteMap<EntryId, Vec<Record>>,
}

/// What adding a record did.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Added {
    /// It was new.
    New,
    /// It was there already.
    Known,
    /// Another entry has the same id. Both are kept, and it is reported.
    Clash,
}

impl Log {
    /// Adds a record, unless it is there. That an entry is not here yields to the entry, and to
    /// somebody who knew that nothing is decided by it.
    pub fn add(&mut self, record: Record) -> Added {
        let same_id = self.entries.entry(record.id()).or_default();
        let is_lost = |record: &Record| matches!(record.content(), Content::Absent);
        let is_told = matches!(record.content(), Content::LeftOut) && same_id.iter().all(is_lost);
        if record.is_absent() && !same_id.is_empty() && !is_told {
            return Added::Known;
        }
        same_id.retain(|there| !there.is_absent());
        let canonical = record.canonical();
        match same_id.binary_search_by(|there| there.canonical().cmp(&canonical)) {
            Ok(_) => Added::Known,
            Err(at) => {
                same_id.insert(at, record);
                if same_id.len() == 1 { Added::New } else { Added::Clash }
            }
        }
    }

    /// The records in canonical order, the ones of a clash beside each other.
    pub fn records(&self) -> impl Iterator<Item = &Record> {
        self.entries.values().flatten()
    }

    /// The record that counts under an id: in a clash the first by its text, which is
    /// the same on every phone.
    pub fn get(&self, id: EntryId) -> Option<&Record> {
        self.entries.get(&id)?.first()
    }

    /// Ids under which two entries say different things.
    pub fn clashes(&self) -> impl Iterator<Item = EntryId> {
        self.entries.iter().filter(|(_, records)| records.len() > 1).map(|(id, _)| *id)
    }

    /// The id that a device gives its next entry.
    pub fn next_id(&self, device: DeviceId) -> EntryId {
        let last = self.entries.last().map_or(0, |(id, _)| id.count);
        EntryId { count: last.saturating_add(1), device }
    }

    /// How many entries there are, of those that are here.
    pub fn len(&self) -> usize {
        self.records().filter(|record| !record.is_absent()).count()
    }

    /// Is there none?
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }
}

impl PartialEq for Log {
    /// Equal when they hold the same entries, however those were laid out.
    fn eq(&self, other: &Self) -> bool {
        let canonical = |log: &Self| log.records().map(Record::canonical).collect::<Vec<_>>();
        canonical(self) == canonical(other)
    }
}
