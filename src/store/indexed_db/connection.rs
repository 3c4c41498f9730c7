//! One connection to the database.

use super::super::StoreError;
use super::events::{OPENING_PATIENCE, first_event, first_event_ever};
use super::schema;
use gloo_events::EventListener;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::spawn_local;
use web_sys::{IdbDatabase, IdbFactory, IdbOpenDbRequest};

/// An open connection, until somebody outside closes it or it is dropped.
#[derive(Debug)]
pub(super) struct Connection {
    database: IdbDatabase,
    is_open: Rc<Cell<bool>>,
    _listeners: [EventListener; 2],
}

impl Connection {
    /// Opens the database, making it if there is none and then saying so in
    /// `made_new`.
    pub(super) async fn open(name: &str, made_new: &Rc<Cell<bool>>) -> Result<Self, StoreError> {
        let opening = Opening::begin(name, made_new)?;
        let events = ["success", "error", "blocked"];
        match first_event(&opening.request, &events, OPENING_PATIENCE).await {
            Some("success") => Ok(Self::over(opening.database()?)),
            Some("error") => Err(opening.error()),
            // Held by another tab, or nobody answers. Both may go on for ever.
            _ => {
                opening.abandon();
                Err(StoreError::Blocked)
            }
        }
    }

    pub(super) fn database(&self) -> &IdbDatabase {
        &self.database
    }

    /// Is it still of use, as far as is known?
    pub(super) fn is_open(&self) -> bool {
        self.is_open.get()
    }

    fn over(database: IdbDatabase) -> Self {
        let is_open = Rc::new(Cell::new(true));
        let ended = Rc::clone(&is_open);
        let on_close = EventListener::once(&database, "close", move |_| ended.set(false));
        // Somebody wants to delete or to upgrade the database, and waits for us.
        // What is under way still completes.
        let (ended, ending) = (Rc::clone(&is_open), database.clone());
        let on_version_change = EventListener::once(&database, "versionchange", move |_| {
            ended.set(false);
            ending.close();
        });
        Self { database, is_open, _listeners: [on_close, on_version_change] }
    }
}

impl Drop for Connection {
    /// Closes it; what is under way still completes.
    fn drop(&mut self) {
        self.database.close();
    }
}

/// A request to open the database. Its listener must live until the request has
/// ended: a new database that nobody gives its object stores would stay without.
struct Opening {
    request: IdbOpenDbRequest,
    _on_upgrade: EventListener,
}

impl Opening {
    fn begin(name: &str, made_new: &Rc<Cell<bool>>) -> Result<Self, StoreError> {
        let request = factory()?.open_with_u32(name, schema::VERSION)?;
        let (making, made_new) = (request.clone(), Rc::clone(made_new));
        let on_upgrade = EventListener::once(&request, "upgradeneeded", move |_| {
            made_new.set(true);
            if create(&making).is_err() {
                // Better none than half of one. The request then ends with an error.
                let _ = making.transaction().map(|upgrade| upgrade.abort());
            }
        });
        Ok(Self { request, _on_upgrade: on_upgrade })
    }

    fn database(&self) -> Result<IdbDatabase, StoreError> {
        Ok(self.request.result()?.unchecked_into())
    }

    fn error(&self) -> StoreError {
        match self.request.error() {
            Ok(error) => JsValue::from(error).into(),
            Err(thrown) => thrown.into(),
        }
    }

    /// Closes the connection if it opens after all, since it would stand in the way
    /// of others.
    fn abandon(self) {
        spawn_local(async move {
            let end = first_event_ever(&self.request, &["success", "error"]).await;
            if let (Some("success"), Ok(database)) = (end, self.database()) {
                database.close();
            }
        });
    }
}

fn create(request: &IdbOpenDbRequest) -> Result<(), JsValue> {
    schema::create(&request.result()?.unchecked_into())
}

fn factory() -> Result<IdbFactory, StoreError> {
    let window = web_sys::window().ok_or(StoreError::Unavailable)?;
    window.indexed_db()?.ok_or(StoreError::Unavailable)
}
