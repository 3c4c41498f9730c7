//! The store of tests and of the sample job: it keeps its promises for as long as
//! the process lives.

use super::{Batch, Blob, BlobKey, BlobKind, JobKey, Line, NoteKey, NoteScope, Store, StoreError};
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

/// A store in memory. A clone opens the same storage once more.
#[derive(Debug, Clone, Default)]
pub struct Memory {
    shelves: Rc<RefCell<Shelves>>,
}

#[derive(Debug, Default)]
struct Shelves {
    lines: BTreeMap<JobKey, BTreeSet<Line>>,
    notes: BTreeMap<NoteKey, String>,
    blobs: BTreeMap<(BlobKind, BlobKey), Blob>,
}

impl Store for Memory {
    async fn commit(&self, batch: &Batch) -> Result<(), StoreError> {
        let mut shelves = self.shelves.borrow_mut();
        for (job, line) in &batch.lines {
            let lines = shelves.lines.entry(job.clone()).or_default();
            lines.insert(line.clone());
        }
        for (key, text) in &batch.notes {
            match text {
                Some(text) => shelves.notes.insert(key.clone(), text.clone()),
                None => shelves.notes.remove(key),
            };
        }
        Ok(())
    }

    async fn jobs(&self) -> Result<Vec<JobKey>, StoreError> {
        Ok(self.shelves.borrow().lines.keys().cloned().collect())
    }

    async fn lines(&self, job: &JobKey) -> Result<Vec<Line>, StoreError> {
        let shelves = self.shelves.borrow();
        let lines = shelves.lines.get(job).into_iter().flatten();
        Ok(lines.cloned().collect())
    }

    async fn note(&self, key: &NoteKey) -> Result<Option<String>, StoreError> {
        Ok(self.shelves.borrow().notes.get(key).cloned())
    }

    async fn notes(&self, scope: &NoteScope) -> Result<Vec<(NoteKey, String)>, StoreError> {
        let shelves = self.shelves.borrow();
        let of_scope = shelves.notes.iter().filter(|(key, _)| key.scope == *scope);
        Ok(of_scope.map(|(key, text)| (key.clone(), text.clone())).collect())
    }

    async fn put_blob(&self, kind: BlobKind, key: &BlobKey, blob: &Blob) -> Result<(), StoreError> {
        let mut shelves = self.shelves.borrow_mut();
        shelves.blobs.insert((kind, key.clone()), blob.clone());
        Ok(())
    }

    async fn blob(&self, kind: BlobKind, key: &BlobKey) -> Result<Option<Blob>, StoreError> {
        let shelves = self.shelves.borrow();
        Ok(shelves.blobs.get(&(kind, key.clone())).cloned())
    }

    async fn remove_blob(&self, key: &BlobKey) -> Result<(), StoreError> {
        let mut shelves = self.shelves.borrow_mut();
        for kind in BlobKind::ALL {
            shelves.blobs.remove(&(kind, key.clone()));
        }
        Ok(())
    }

    async fn blob_keys(&self, kind: BlobKind) -> Result<Vec<BlobKey>, StoreError> {
        let shelves = self.shelves.borrow();
        let of_kind = shelves.blobs.keys().filter(|(of, _)| *of == kind);
        Ok(of_kind.map(|(_, key)| key.clone()).collect())
    }
}

#[cfg(test)]
mod tests {
    use super::super::contract;
    use super::*;
    use pollster::block_on;
    use proptest::prelude::*;

    impl contract::Storage for Memory {
        type Store = Self;
        fn open(&self) -> Self {
            self.clone()
        }
    }

    #[test]
    fn memory_keeps_the_contract() {
        for (name, check) in contract::checks::<Memory>() {
            let outcome = block_on(check(&Memory::default()));
            assert_eq!(outcome, Ok(()), "{name}");
        }
    }

    fn any_lines() -> impl Strategy<Value = Vec<(JobKey, Line)>> {
        let line =
            (0_u128..2, "[ab]", "[01]").prop_map(|(job, id, json)| (JobKey::from_bits(job), Line::new(id, json)));
        prop::collection::vec(line, 0..12)
    }

    fn stored(batches: &[Vec<(JobKey, Line)>]) -> Vec<(JobKey, Vec<Line>)> {
        let store = Memory::default();
        for lines in batches {
            let batch = Batch { lines: lines.clone(), notes: Vec::new() };
            block_on(store.commit(&batch)).unwrap();
        }
        let jobs = block_on(store.jobs()).unwrap();
        let lines_of = |job: JobKey| {
            let lines = block_on(store.lines(&job)).unwrap();
            (job, lines)
        };
        jobs.into_iter().map(lines_of).collect()
    }

    proptest! {
        /// Two phones' logs meet in any order, and a batch may arrive twice.
        #[test]
        fn lines_are_a_union(first in any_lines(), second in any_lines()) {
            let once = stored(&[first.clone(), second.clone()]);
            prop_assert_eq!(&once, &stored(&[second.clone(), first.clone()]));
            prop_assert_eq!(&once, &stored(&[first.clone(), second.clone(), first.clone()]));
            prop_assert_eq!(&once, &stored(&[[first, second].concat()]));
        }
    }
}
