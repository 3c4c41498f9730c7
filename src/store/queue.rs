//! What is not saved yet, in order, and the truth about it for the screen.
//!
//! The queue itself is plain data: it knows no store, no time and no browser, and
//! whoever drives it decides when to try again. [`drain`] is the driver over any
//! [`Store`].
//!
//! Invariants: a batch leaves only after the store has said that it is safe; batches
//! are sent in the order in which they came, one at a time; none is dropped.

use super::{Batch, Store, StoreError};
use std::cell::RefCell;
use std::collections::VecDeque;
use std::rc::Rc;

/// How things stand between the screen and the storage.
///
/// Counts are of batches, which is of things that somebody did.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SaveState {
    /// Everything is safe.
    Saved,
    /// So many changes are under way.
    Saving(usize),
    /// The last attempt failed. It stays so until one succeeds, also while the next
    /// one is under way.
    Failed {
        /// What the store said.
        why: StoreError,
        /// How many changes are not safe.
        unsaved: usize,
    },
}

/// The batches that are not safe yet.
#[derive(Debug, Default)]
pub struct SaveQueue {
    waiting: VecDeque<Rc<Batch>>,
    in_flight: bool,
    failure: Option<StoreError>,
}

/// A batch on its way to the store. There is one at most, and it ends by being
/// handed to [`SaveQueue::settle`].
#[derive(Debug)]
#[must_use = "the queue stands still until it is settled"]
pub struct Sending {
    batch: Rc<Batch>,
}

impl Sending {
    /// What is to be saved.
    pub fn batch(&self) -> &Batch {
        &self.batch
    }
}

impl SaveQueue {
    /// A queue with nothing in it.
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds what is to be saved after everything else.
    pub fn push(&mut self, batch: Batch) {
        self.waiting.push_back(Rc::new(batch));
    }

    /// Takes up the oldest batch, after a failure the same one once more; `None` if
    /// all is saved or if one is on its way already.
    pub fn start(&mut self) -> Option<Sending> {
        if self.in_flight {
            return None;
        }
        let batch = Rc::clone(self.waiting.front()?);
        self.in_flight = true;
        Some(Sending { batch })
    }

    /// Hears how it went. Only a batch that is safe leaves the queue.
    pub fn settle(&mut self, sending: Sending, outcome: Result<(), StoreError>) {
        let Some(head) = self.waiting.front() else {
            return;
        };
        if !Rc::ptr_eq(head, &sending.batch) {
            // It was started by another queue, and says nothing of this one.
            return;
        }
        self.in_flight = false;
        self.failure = outcome.err();
        if self.failure.is_none() {
            self.waiting.pop_front();
        }
    }

    /// How things stand.
    pub fn state(&self) -> SaveState {
        let unsaved = self.waiting.len();
        match &self.failure {
            Some(why) => SaveState::Failed { why: why.clone(), unsaved },
            None if unsaved == 0 => SaveState::Saved,
            None => SaveState::Saving(unsaved),
        }
    }

    /// What is not safe yet, oldest first, so that it can be shown and copied by
    /// hand when the storage is beyond help.
    pub fn unsaved(&self) -> impl Iterator<Item = &Batch> {
        self.waiting.iter().map(Rc::as_ref)
    }
}

/// Saves what waits, oldest first, until all is safe or one attempt fails; tells
/// `changed` the state after every step.
///
/// Call it after every push, and to try again. While one call is at work another
/// one returns at once: what it came for is taken along.
pub async fn drain(queue: &RefCell<SaveQueue>, store: &impl Store, mut changed: impl FnMut(SaveState)) {
    loop {
        // Each borrow ends with its line: while the store works, others may push.
        let started = queue.borrow_mut().start();
        let Some(sending) = started else { return };
        let outcome = store.commit(sending.batch()).await;
        let failed = outcome.is_err();
        queue.borrow_mut().settle(sending, outcome);
        let state = queue.borrow().state();
        changed(state);
        if failed {
            return;
        }
    }
}

#[cfg(test)]
mod tests;
