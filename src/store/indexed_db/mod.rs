//! The store in the browser's database (wasm32 only).
//!
//! - `schema`: the database's name, its object stores and their keys.
//! - `connection`: opening it, and hearing that it was closed from outside.
//! - `transaction`: writes that count only once they are flushed, and reads.
//! - `records`: what stands in a record.
//! - `events`: waiting for the browser's answer, and not for ever.
//!
//! It never knows what an entry means, asks nobody for a network, and leaves the
//! question of how much room there is to the app.

mod connection;
mod events;
mod records;
mod schema;
mod transaction;

use super::{Batch, Blob, BlobKey, BlobKind, JobKey, Line, NoteKey, NoteScope, Store, StoreError};
use crate::order;
use connection::Connection;
use js_sys::{Array, Reflect};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use transaction::{read, write};
use wasm_bindgen::JsValue;
use web_sys::{IdbDatabase, IdbObjectStore};

/// A store in the browser's database, opened when it is first needed.
///
/// A connection that breaks, as they do when a phone puts the page to sleep, is
/// replaced by a new one and the work done once more; only a second failure reaches
/// the caller. If the new connection finds the database gone, the next commit says
/// so ([`StoreError::Emptied`]) instead of starting a fresh one in silence.
///
/// Dropping the store closes its connection.
#[derive(Debug)]
pub struct IndexedDb {
    name: String,
    connection: RefCell<Option<Rc<Connection>>>,
    was_open: Cell<bool>,
    made_new: Rc<Cell<bool>>,
    emptied: Cell<bool>,
}

impl IndexedDb {
    /// The app's own database.
    pub fn new() -> Self {
        Self::named(schema::DATABASE)
    }

    /// A database of its own, for tests.
    pub fn named(name: impl Into<String>) -> Self {
        Self {
            name: name.into(),
            connection: RefCell::new(None),
            was_open: Cell::new(false),
            made_new: Rc::default(),
            emptied: Cell::new(false),
        }
    }

    /// Does the work, a second time on a new connection if the first one is lost.
    async fn run<T>(&self, work: impl AsyncFn(&IdbDatabase) -> Result<T, StoreError>) -> Result<T, StoreError> {
        match self.attempt(&work).await {
            Err(error) if error.is_lost_connection() => self.attempt(&work).await,
            outcome => outcome,
        }
    }

    async fn attempt<T>(&self, work: &impl AsyncFn(&IdbDatabase) -> Result<T, StoreError>) -> Result<T, StoreError> {
        let connection = self.connection().await?;
        let outcome = work(connection.database()).await;
        if outcome.as_ref().is_err_and(StoreError::is_lost_connection) {
            self.forget(&connection);
        }
        outcome
    }

    async fn connection(&self) -> Result<Rc<Connection>, StoreError> {
        if let Some(open) = self.open_connection() {
            return Ok(open);
        }
        let opened = Connection::open(&self.name, &self.made_new).await?;
        let made_new = self.made_new.take();
        if self.was_open.replace(true) && made_new {
            self.emptied.set(true);
        }
        // Two calls may have found it closed and opened one each: the later one stays,
        // and the other one closes with its call.
        let opened = Rc::new(opened);
        self.connection.replace(Some(Rc::clone(&opened)));
        Ok(opened)
    }

    fn open_connection(&self) -> Option<Rc<Connection>> {
        let connection = self.connection.borrow();
        connection.as_ref().filter(|it| it.is_open()).cloned()
    }

    /// Drops a connection, unless a new one has taken its place already.
    fn forget(&self, lost: &Rc<Connection>) {
        let mut current = self.connection.borrow_mut();
        if current.as_ref().is_some_and(|it| Rc::ptr_eq(it, lost)) {
            *current = None;
        }
    }
}

impl Default for IndexedDb {
    fn default() -> Self {
        Self::new()
    }
}

impl Store for IndexedDb {
    async fn commit(&self, batch: &Batch) -> Result<(), StoreError> {
        if batch.is_empty() {
            return Ok(());
        }
        self.run(async |database| {
            if self.emptied.take() {
                return Err(StoreError::Emptied);
            }
            write(database, &[schema::LINES, schema::NOTES], |transaction| {
                let lines = transaction.object_store(schema::LINES)?;
                for (job, line) in &batch.lines {
                    lines.put_with_key(&records::line(line)?, &schema::line_key(job, line))?;
                }
                let notes = transaction.object_store(schema::NOTES)?;
                for (key, text) in &batch.notes {
                    let place = schema::note_key(key);
                    match text {
                        Some(text) => notes.put_with_key(&records::note(key, text)?, &place)?,
                        None => notes.delete(&place)?,
                    };
                }
                Ok(())
            })
            .await
        })
        .await
    }

    async fn jobs(&self) -> Result<Vec<JobKey>, StoreError> {
        self.run(async |database| {
            let mut jobs = Vec::new();
            loop {
                // One look a job, however many lines it has.
                let beyond = schema::beyond_job(jobs.last())?;
                let key = read(database, schema::LINES, |lines| lines.get_key(&beyond)).await?;
                if key.is_undefined() {
                    return Ok(jobs);
                }
                jobs.push(schema::job_of_line_key(&key)?);
            }
        })
        .await
    }

    async fn lines(&self, job: &JobKey) -> Result<Vec<Line>, StoreError> {
        self.run(async |database| {
            let of_job = schema::starting_with(job.as_str())?;
            let found = read(database, schema::LINES, |lines| lines.get_all_with_key(&of_job)).await?;
            let mut lines = each(&found, records::read_line)?;
            // The browser compares UTF-16 units, a line compares bytes.
            order::sort(&mut lines);
            Ok(lines)
        })
        .await
    }

    async fn note(&self, key: &NoteKey) -> Result<Option<String>, StoreError> {
        let place = schema::note_key(key);
        self.run(async |database| {
            let found = read(database, schema::NOTES, |notes| notes.get(&place)).await?;
            let note = present(found, |found| records::read_note(&key.scope, &found))?;
            Ok(note.map(|(_, text)| text))
        })
        .await
    }

    async fn notes(&self, scope: &NoteScope) -> Result<Vec<(NoteKey, String)>, StoreError> {
        self.run(async |database| {
            let of_scope = schema::starting_with(schema::scope_text(scope))?;
            let found = read(database, schema::NOTES, |notes| notes.get_all_with_key(&of_scope)).await?;
            let mut notes = each(&found, |record| records::read_note(scope, &record))?;
            order::sort(&mut notes);
            Ok(notes)
        })
        .await
    }

    async fn put_blob(&self, kind: BlobKind, key: &BlobKey, blob: &Blob) -> Result<(), StoreError> {
        let place = JsValue::from_str(key.as_str());
        self.run(async |database| {
            let shelf = schema::blobs(kind);
            write(database, &[shelf], |transaction| {
                let blobs = transaction.object_store(shelf)?;
                blobs.put_with_key(&records::blob(blob)?, &place)?;
                Ok(())
            })
            .await
        })
        .await
    }

    async fn blob(&self, kind: BlobKind, key: &BlobKey) -> Result<Option<Blob>, StoreError> {
        let place = JsValue::from_str(key.as_str());
        self.run(async |database| {
            let found = read(database, schema::blobs(kind), |blobs| blobs.get(&place)).await?;
            present(found, |found| records::read_blob(&found))
        })
        .await
    }

    async fn remove_blob(&self, key: &BlobKey) -> Result<(), StoreError> {
        let place = JsValue::from_str(key.as_str());
        self.run(async |database| {
            let shelves = BlobKind::ALL.map(schema::blobs);
            write(database, &shelves, |transaction| {
                for shelf in shelves {
                    transaction.object_store(shelf)?.delete(&place)?;
                }
                Ok(())
            })
            .await
        })
        .await
    }

    async fn blob_keys(&self, kind: BlobKind) -> Result<Vec<BlobKey>, StoreError> {
        self.run(async |database| {
            let found = read(database, schema::blobs(kind), IdbObjectStore::get_all_keys).await?;
            each(&found, |key| schema::read_blob_key(&key))
        })
        .await
    }
}

/// What was found, `undefined` being the browser's word for nothing.
fn present<T>(found: JsValue, read: impl FnOnce(JsValue) -> Result<T, StoreError>) -> Result<Option<T>, StoreError> {
    (!found.is_undefined()).then(|| read(found)).transpose()
}

/// Everything that was found.
fn each<T>(found: &JsValue, read: impl FnMut(JsValue) -> Result<T, StoreError>) -> Result<Vec<T>, StoreError> {
    Array::from(found).iter().map(read).collect()
}

impl From<JsValue> for StoreError {
    /// Sorts whatever the browser has thrown.
    fn from(thrown: JsValue) -> Self {
        let field = |name: &str| {
            let value = Reflect::get(&thrown, &JsValue::from_str(name));
            value.ok().and_then(|value| value.as_string())
        };
        match (field("name"), field("message")) {
            (Some(name), message) => Self::from_browser(&name, &message.unwrap_or_default()),
            (None, _) => Self::from_browser("", &format!("{thrown:?}")),
        }
    }
}
