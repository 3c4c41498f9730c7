//! A store whose commits fail to order, for the tests of whatever saves.

use super::{Batch, Blob, BlobKey, BlobKind, JobKey, Line, NoteKey, NoteScope, Store, StoreError};
use std::cell::RefCell;
use std::collections::VecDeque;

/// How one commit fails.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Fault {
    /// Nothing is saved, and the store says why.
    Refused(StoreError),
    /// Everything is saved, but the word of it is lost with the connection.
    Unheard,
}

impl Fault {
    /// The phone is full.
    pub(crate) fn full() -> Self {
        Self::Refused(StoreError::QuotaExceeded)
    }

    /// The connection went before anything was written.
    pub(crate) fn lost() -> Self {
        Self::Refused(lost_connection())
    }
}

/// Hands everything on to the store within, save the commits that are to fail.
#[derive(Debug, Default)]
pub(crate) struct Faulty<S> {
    inner: S,
    plan: RefCell<VecDeque<Option<Fault>>>,
}

impl<S> Faulty<S> {
    /// The coming commits fail as planned, `None` being one that works; after them
    /// all work.
    pub(crate) fn new(inner: S, plan: impl IntoIterator<Item = Option<Fault>>) -> Self {
        let plan = RefCell::new(plan.into_iter().collect());
        Self { inner, plan }
    }
}

impl<S: Store> Store for Faulty<S> {
    async fn commit(&self, batch: &Batch) -> Result<(), StoreError> {
        let fault = self.plan.borrow_mut().pop_front().flatten();
        match fault {
            None => self.inner.commit(batch).await,
            Some(Fault::Refused(why)) => Err(why),
            Some(Fault::Unheard) => {
                self.inner.commit(batch).await?;
                Err(lost_connection())
            }
        }
    }

    async fn jobs(&self) -> Result<Vec<JobKey>, StoreError> {
        self.inner.jobs().await
    }

    async fn lines(&self, job: &JobKey) -> Result<Vec<Line>, StoreError> {
        self.inner.lines(job).await
    }

    async fn note(&self, key: &NoteKey) -> Result<Option<String>, StoreError> {
        self.inner.note(key).await
    }

    async fn notes(&self, scope: &NoteScope) -> Result<Vec<(NoteKey, String)>, StoreError> {
        self.inner.notes(scope).await
    }

    async fn put_blob(&self, kind: BlobKind, key: &BlobKey, blob: &Blob) -> Result<(), StoreError> {
        self.inner.put_blob(kind, key, blob).await
    }

    async fn blob(&self, kind: BlobKind, key: &BlobKey) -> Result<Option<Blob>, StoreError> {
        self.inner.blob(kind, key).await
    }

    async fn remove_blob(&self, key: &BlobKey) -> Result<(), StoreError> {
        self.inner.remove_blob(key).await
    }

    async fn blob_keys(&self, kind: BlobKind) -> Result<Vec<BlobKey>, StoreError> {
        self.inner.blob_keys(kind).await
    }
}

fn lost_connection() -> StoreError {
    StoreError::ConnectionLost { said: "a planned fault".to_owned() }
}
